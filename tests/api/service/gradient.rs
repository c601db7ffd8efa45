//! A gradient in the service file: share, start and foils of the sections from the regions in which they lie.

use super::base::{changed, fine, near};
use foilwork::{
    colour::{Level, Swatch},
    head::Technique,
    service::{Plan, SectionPlan, ServiceFile, plan},
};
use rstest::rstest;
use serde_json::json;

fn blended(file: &mut ServiceFile) {
    file.analysis.length_cm = Some(30.0);
    file.gradient = serde_json::from_value(json!({
        "start_outline_cm": 1, "start_interior_cm": 5, "share_outline_percent": 70, "share_interior_percent": 20, "foils": 30,
    }))
    .unwrap();
    let regions = |names: &[&str]| {
        serde_json::from_value(json!(names.iter().map(|name| json!({ "name": name })).collect::<Vec<_>>())).unwrap()
    };
    let crown = &mut file.section[0];
    (crown.share_percent, crown.foils, crown.mix_g) = (None, None, None);
    crown.regions = regions(&["crown"]);
    let mut edge = crown.clone();
    edge.name = "edge".to_owned();
    edge.regions = regions(&["front hairline", "nape line"]);
    file.section.push(edge);
}

fn of<'p>(plan: &'p Plan, name: &str) -> &'p SectionPlan {
    plan.head.sections.iter().find(|section| section.section == name).unwrap()
}

/// By hand: the crown bears 12 % of the area at 1.05 of the mean density, of a sum of 92.92 (the areas times their
/// densities): 13.56 % of the hair, of which 20 % is 2.71 %. The outline's 5 and 3 % at 0.9 and 0.7: 7.10 %, of which 70 %
/// is 4.97 %. Thirty foils in that proportion: 10.6 and 19.4, so 11 and 19.
#[test]
fn shares_starts_and_foils_by_hand() {
    let plan = changed(fine(), blended);
    let sum =
        5.0 * 0.9 + 15.0 + 13.0 * 1.05 + 12.0 * 1.05 + 7.0 * 0.66 + 20.0 * 0.79 + 20.0 * 1.02 + 5.0 * 0.85 + 3.0 * 0.7;
    let (crown, edge) = (of(&plan, "top"), of(&plan, "edge"));
    near(crown.share.percent(), 0.2 * 100.0 * 12.6 / sum, 1e-9);
    near(edge.share.percent(), 0.7 * 100.0 * 6.6 / sum, 1e-9);
    assert_eq!((crown.start.best().cm(), edge.start.best().cm()), (5.0, 1.0));
    let foils = |section: &SectionPlan| section.foils.unwrap().best();
    let exact = 30.0 * 12.6 * 0.2 / (12.6 * 0.2 + 6.6 * 0.7);
    near(f64::from(foils(crown)), exact, 0.5);
    assert_eq!(foils(crown) + foils(edge), 30);
    // The outline is done last, and brighter and closer to the scalp than the crown.
    let laid = &plan.head.gradient;
    let region = |name: &str| laid.iter().find(|region| region.region == name).unwrap();
    assert!(
        region("nape line").order < region("crown").order && region("crown").order < region("front hairline").order
    );
    assert!(region("front hairline").taken > region("crown").taken);
    // All thirty lie where the two sections lie: the edge has no more of its 19 in the nape line than there is hair.
    assert_eq!(laid.iter().filter_map(|region| region.foils).sum::<u32>(), 30);
    assert_eq!(region("crown").foils, Some(11));
    assert_eq!((region("front hairline").foils, region("nape line").foils), (Some(13), Some(6)));
    assert_eq!(region("back").foils, None);
}

/// What a section states counts before the gradient.
#[test]
fn what_is_stated_counts_first() {
    let plan = changed(fine(), |file| {
        blended(file);
        file.section[0].share_percent = Some(4.0);
        file.section[0].start_cm = Some(3.0);
        file.section[0].foils = Some(5);
    });
    let crown = of(&plan, "top");
    assert_eq!((crown.share.percent(), crown.start.best().cm()), (4.0, 3.0));
    assert_eq!((crown.foils.unwrap().best(), of(&plan, "edge").foils.unwrap().best()), (5, 30));
    let no_regions = changed(fine(), |file| {
        blended(file);
        file.section.truncate(1);
        file.section[0].regions.clear();
        file.section[0].share_percent = Some(4.0);
    });
    assert!(no_regions.stated_not_used.iter().any(|fact| fact.field == "gradient"));
}

/// The chord on a scalp of 9 cm radius, by hand: 4 cm back along it the root lies 9 sin(4/9) = 3.869 cm back and
/// 9 (1 - cos(4/9)) = 0.874 cm lower, so that its colour begins sqrt(5.869^2 + 5.874^2) = 8.303 cm down.
#[test]
fn an_over_directed_panel_begins_at_many_heights() {
    let plan = changed(fine(), |file| {
        file.analysis.length_cm = Some(30.0);
        file.section[0].over_directed =
            serde_json::from_value(json!({ "ahead_cm": 2, "out_cm": 5, "panel_depth_cm": 4 })).ok();
    });
    let top = of(&plan, "top");
    near(top.start.best().cm(), (4.0_f64 + 25.0).sqrt(), 1e-9);
    // The drop of 2.9 cm widens the transition of a weave, 0.2 cm: what was a line is none any more.
    assert_eq!(top.softness.to_string(), "diffuse");
    let straight = changed(fine(), |file| {
        file.analysis.length_cm = Some(30.0);
        file.section[0].start_cm = Some((4.0_f64 + 25.0).sqrt());
    });
    // Half of the drop carries no colour: (8.303 - 5.385) / 2 cm of 30 less 5.385 and half of 0.2.
    let less = top.hair.unwrap().best().g() / of(&straight, "top").hair.unwrap().best().g();
    near(less, 1.0 - (8.303 - 5.385) / 2.0 / (30.0 - 5.385 - 0.1), 1e-3);
}

#[test]
fn lowlights_for_the_depth_that_is_wanted() {
    let plan = changed(fine(), |file| {
        file.section[0].taken_percent = Some(100.0);
        file.section[0].lowlights = serde_json::from_value(json!({ "level": 6.5, "reads_as_level": 8 })).ok();
    });
    let depth = of(&plan, "top").lowlights.unwrap();
    // Light adds up: (now - wanted) / (now - lowlight) in reflectance.
    let y = |level: f64| Swatch::natural(Level::new(level).unwrap()).samples()[0][1];
    let now = y(plan.colour[0].look.as_ref().unwrap().perceived_level.best().number());
    near(depth.share.best().percent(), 100.0 * (now - y(8.0)) / (now - y(6.5)), 1e-6);
    // Ten foils of a tenth of the section each.
    near(f64::from(depth.foils.unwrap().best()), depth.share.best().percent() / 10.0, 1.0);
    let flat: String = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("depth:") && flat.contains("foils of level 6.5"), "{flat}");
}

/// A contrast is counted down from the light strands: 9 less 2.5 is 6.5. The ten light foils of the section have places between.
#[test]
fn lowlights_for_a_contrast_lie_between_the_light_foils() {
    let with = |lowlights: serde_json::Value| {
        changed(fine(), |file| {
            file.section[0].taken_percent = Some(100.0);
            file.section[0].lowlights = serde_json::from_value(lowlights).ok();
        })
    };
    let (stated, plan) = (
        with(json!({ "level": 6.5, "reads_as_level": 8 })),
        with(json!({ "contrast_levels": 2.5, "reads_as_level": 8 })),
    );
    let (top, depth) = (of(&plan, "top"), of(&plan, "top").lowlights.unwrap());
    assert_eq!(Some(depth), of(&stated, "top").lowlights);
    let [place] = top.lowlight_places.as_slice() else { panic!("{:?}", top.lowlight_places) };
    assert_eq!((place.region.as_ref(), place.foils), (None, depth.foils.unwrap().best()));
    // Each lies behind another of the ten, in order.
    let behind = &place.behind_foils;
    assert!(behind.windows(2).all(|two| two[0] < two[1]) && *behind.last().unwrap() <= 10, "{behind:?}");
    let flat: String = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    // By hand: two among ten, in the middle of five each.
    assert_eq!((depth.foils.unwrap().best(), behind.as_slice()), (2, [3, 8].as_slice()));
    assert!(flat.contains("they go behind light foils 3, 8"), "{flat}");
}

/// The 14 light foils lie in top and crown, 13 of 25 parts of the area and 12: 7 each. Weighted by how far inside they lie, 80 and
/// 100 %, the lowlights are shared out 10.4 to 12, and the map says behind which foils they go.
#[test]
fn lowlights_are_on_the_map() {
    let plan = changed(fine(), |file| {
        let top = &mut file.section[0];
        top.regions = serde_json::from_value(json!([{ "name": "top" }, { "name": "crown" }])).unwrap();
        (top.foils, top.share_percent, top.taken_percent) = (Some(14), Some(20.0), Some(100.0));
        top.lowlights = serde_json::from_value(json!({ "contrast_levels": 2.5, "reads_as_level": 7.5 })).ok();
    });
    let top = of(&plan, "top");
    let count = top.lowlights.unwrap().foils.unwrap().best();
    assert_eq!(top.lowlight_places.iter().map(|place| place.foils).sum::<u32>(), count);
    let exact = |part: f64| f64::from(count) * part / (10.4 + 12.0);
    for (place, (region, part)) in top.lowlight_places.iter().zip([("top", 10.4), ("crown", 12.0)]) {
        assert_eq!(place.region.as_deref(), Some(region));
        near(f64::from(place.foils), exact(part), 1.0);
    }
    for map in [foilwork::sheet::head_map(&plan).unwrap(), foilwork::sheet::head_map_text(&plan).unwrap()] {
        assert!(map.contains("lowlights behind "), "{map}");
    }
}

/// Painted freehand there is no foil to count: the share is all that is known.
#[test]
fn lowlights_without_foils_are_a_share() {
    let plan = changed(fine(), |file| {
        (file.section[0].technique, file.section[0].foils) = (Technique::Freehand, None);
        (file.section[0].taken_percent, file.section[0].covered_percent) = (Some(100.0), Some(100.0));
        file.section[0].lowlights = serde_json::from_value(json!({ "level": 6.5, "reads_as_level": 8 })).ok();
    });
    let depth = of(&plan, "top").lowlights.unwrap();
    assert_eq!((depth.foils, depth.light_foils_between), (None, None));
    let flat: String = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("depth: strands of level 6.5"), "{flat}");
}

/// Nobody said how many foils: none is invented, and none is printed.
#[test]
fn a_gradient_without_foils_counts_none() {
    let plan = changed(fine(), |file| {
        blended(file);
        file.gradient.as_mut().unwrap().foils = None;
    });
    assert!(plan.head.gradient.iter().all(|region| region.foils.is_none()));
    let flat: String = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("crown 20 5.0 -"), "{flat}");
}

/// The colour of a panel reads by what the panel takes where nothing else is said.
#[test]
fn the_look_falls_back_on_the_panel() {
    let plan = changed(fine(), |file| {
        file.section[0].panel = serde_json::from_value(json!({ "width_cm": 8, "height_cm": 6 })).ok();
    });
    assert!(plan.colour[0].look.is_some());
    assert!(changed(fine(), |_| ()).colour[0].look.is_none());
}

fn refused(change: impl FnOnce(&mut ServiceFile)) -> String {
    let mut file = fine();
    change(&mut file);
    plan(&file).unwrap_err().to_string()
}

#[rstest]
#[case::share_missing(
    |file: &mut ServiceFile| file.section[0].share_percent = None,
    "section[1].share_percent: missing: state it, or a `gradient` and the section's `regions`"
)]
#[case::start(
    |file: &mut ServiceFile| { blended(file); file.gradient.as_mut().unwrap().start_outline_cm = 9.0; },
    "gradient: `start_outline_cm` 9 cm is further from the scalp than `start_interior_cm` 5 cm"
)]
#[case::share(
    |file: &mut ServiceFile| { blended(file); file.gradient.as_mut().unwrap().share_outline_percent = 10.0; },
    "gradient: `share_outline_percent` 10 % is less than `share_interior_percent` 20 %"
)]
#[case::beyond_the_ends(
    |file: &mut ServiceFile| { blended(file); file.analysis.length_cm = Some(4.0); },
    "gradient: `start_interior_cm` 5 cm is not within the hair's `analysis.length_cm` 4 cm"
)]
#[case::gap(
    |file: &mut ServiceFile| { blended(file); file.service.rest = Some(foilwork::head::Rest::Refused); },
    "front: 100 % of it belongs to no section"
)]
#[case::no_regions_to_fill(
    |file: &mut ServiceFile| file.service.rest = Some(foilwork::head::Rest::Refused),
    "service.rest: no section names its `regions`: name them, or leave `rest` out"
)]
#[case::lowlights_darker_than_natural(
    |file: &mut ServiceFile| {
        file.section[0].lowlights = serde_json::from_value(json!({ "level": 5, "reads_as_level": 8 })).ok();
    },
    "section[1].lowlights: `level` level 5 is darker than `natural` level 6"
)]
#[case::a_contrast_below_natural(
    |file: &mut ServiceFile| {
        file.section[0].lowlights = serde_json::from_value(json!({ "contrast_levels": 4, "reads_as_level": 8 })).ok();
    },
    "section[1].lowlights.contrast_levels: 4 levels below the `target_level` level 9 is darker than `natural_level` level 6: \
     new growth would show lighter (give 3 or less)"
)]
#[case::ends_without_a_share(
    |file: &mut ServiceFile| {
        file.analysis.length_cm = Some(30.0);
        file.section[0].ends_between = serde_json::from_value(json!({ "percent": 50, "from_cm": 20 })).ok();
    },
    "section[1].ends_between: how much hair the foils leave is not known: give the section's `taken_percent` or `panel`"
)]
#[case::ends_beyond_the_hair(
    |file: &mut ServiceFile| {
        file.analysis.length_cm = Some(15.0);
        file.section[0].ends_between = serde_json::from_value(json!({ "percent": 50, "from_cm": 20 })).ok();
    },
    "section[1].ends_between.from_cm: 20 cm is not within the hair's `analysis.length_cm`, 15 cm"
)]
#[case::held_beyond_the_ends(
    |file: &mut ServiceFile| {
        file.analysis.length_cm = Some(5.0);
        file.section[0].over_directed =
            serde_json::from_value(json!({ "ahead_cm": 2, "out_cm": 5, "panel_depth_cm": 4 })).ok();
    },
    "section[1].over_directed: 8.3"
)]
fn what_contradicts_itself_is_named(#[case] change: fn(&mut ServiceFile), #[case] want: &str) {
    let message = refused(change);
    assert!(message.contains(want), "{message}");
}

/// By hand: 20 % of the hair are 40 % of the area, so 30 % are left; half of that, 15 %, is painted over the last 10 of 30 cm:
/// of the mass of the head, in g for each cm, 0.15 x 10. A gram of it takes 1.5 g of lightener in the open.
#[test]
fn ends_between_the_foils_in_grams() {
    let planned = |ends: bool| {
        changed(fine(), |file| {
            file.analysis.length_cm = Some(30.0);
            file.section[0].taken_percent = Some(40.0);
            file.section[0].mix_g = None;
            file.section[0].ends_between =
                ends.then(|| serde_json::from_value(json!({ "percent": 50, "from_cm": 20 })).unwrap());
        })
    };
    let (with, without) = (planned(true), planned(false));
    let ends = of(&with, "top").ends_between.as_ref().unwrap();
    near(ends.share.percent(), 15.0, 1e-9);
    let hair = with.head.mass_per_length.best().g_per_cm() * 0.15 * 10.0;
    near(ends.hair.best().g(), hair, 1e-6);
    near(ends.takes.best().g(), 1.5 * hair, 1e-6);
    // All of it is in the bowl, and a foil takes what it took.
    let takes = |plan: &Plan| of(plan, "top").takes.unwrap().best().g();
    near(takes(&with) - takes(&without), 1.5 * hair, 1e-6);
    near(with.mixes[0].needed.best().g(), takes(&with), 1e-9);
    let foil = |plan: &Plan| of(plan, "top").mix_per_foil.unwrap().best().g();
    near(foil(&with), foil(&without), 1e-9);
    let flat: String = with.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("of that, ends between the foils from 20 cm"), "{flat}");
}

/// More ends are light, and the roots and the foils are as they were.
#[test]
fn ends_between_the_foils_are_seen_at_the_ends() {
    let planned = |ends: bool| {
        changed(fine(), |file| {
            file.analysis.length_cm = Some(30.0);
            file.section[0].share_percent = Some(5.0);
            file.section[0].taken_percent = Some(40.0);
            file.section[0].regions = serde_json::from_value(json!([{ "name": "crown" }])).unwrap();
            file.section[0].ends_between =
                ends.then(|| serde_json::from_value(json!({ "percent": 50, "from_cm": 20 })).unwrap());
        })
    };
    let crown = |plan: &Plan| {
        let zones = &plan.head.look.as_ref().unwrap().zones;
        let zone = zones.iter().find(|zone| zone.region == "crown").unwrap();
        [zone.roots_lab_l, zone.mid_lengths_lab_l, zone.ends_lab_l].map(|l| l.best().lab_l())
    };
    let ([roots, .., ends], [roots_before, .., ends_before]) = (crown(&planned(true)), crown(&planned(false)));
    near(roots, roots_before, 1e-9);
    assert!(ends > ends_before + 0.5, "{ends} against {ends_before}");
}

/// The gradient is for nothing only where no section with a region takes its share, its start or its foils from it.
#[rstest]
#[case::all_of_it(None, None, None, true)]
#[case::start_and_foils(Some(4.0), None, None, true)]
#[case::start(Some(4.0), None, Some(5), true)]
#[case::share(None, Some(3.0), Some(5), true)]
#[case::foils(Some(4.0), Some(3.0), None, true)]
#[case::nothing(Some(4.0), Some(3.0), Some(5), false)]
fn a_gradient_that_one_section_needs_is_used(
    #[case] share_percent: Option<f64>,
    #[case] start_cm: Option<f64>,
    #[case] foils: Option<u32>,
    #[case] used: bool,
) {
    let plan = changed(fine(), |file| {
        blended(file);
        file.section.truncate(1);
        let section = &mut file.section[0];
        (section.share_percent, section.start_cm, section.foils) = (share_percent, start_cm, foils);
    });
    assert_eq!(plan.stated_not_used.iter().all(|fact| fact.field != "gradient"), used);
}
