//! Regions and their light worked a second way: shares of the hair, foils by it, gradients, mixtures of light, lowlights, shadows.

use super::head::{cm, level, percent, span};
use foilwork::{
    colour::Swatch,
    head::{
        Change, Gradient, GradientError, LightFoils, Placed, Placement, Profile, Region, Rest, Template, Wish,
        level_along, lowlight_places, lowlights, partition, read_head, shadow_steps,
    },
    quantity::{Length, Share},
    source::{Basis, Interval},
};
use rstest::rstest;

/// Three regions of 20, 30 and 50 % of the hair, at the outline, half way and at the crown.
fn three(densities: [[f64; 3]; 3]) -> Template {
    let regions = [("edge", 20.0, 0.0), ("side", 30.0, 50.0), ("crown", 50.0, 100.0)].into_iter().zip(densities);
    let region = |((name, area, inward), [low, best, high]): ((&str, f64, f64), [f64; 3])| Region {
        name: name.into(),
        area: percent(area),
        density_percent: Interval::ordered(low, best, high),
        outline: inward == 0.0,
        inward: percent(inward),
        front: name != "crown",
        place: None,
    };
    Template::new(regions.map(region).collect(), Basis::Stated).unwrap()
}

fn blend(start: (f64, f64), share: (f64, f64)) -> Result<Gradient, GradientError> {
    Gradient::new((cm(start.0), cm(start.1)), (percent(share.0), percent(share.1)), cm(30.0))
}

/// By hand from 1 to 5 cm and from 70 to 20 %: the side begins at 3 cm and is taken to 45 %. Of all the hair 14, 13.5 and 10 % are taken; of 30
/// foils that is 11.2, 10.8 and 8, and the one that is left over goes to the largest remainder.
#[test]
fn foils_are_shared_out_by_the_hair_that_is_taken() {
    let (template, gradient) = (three([[100.0; 3]; 3]), blend((1.0, 5.0), (70.0, 20.0)).unwrap());
    let laid = gradient.lay(&template, 30);
    let told: Vec<_> =
        laid.iter().map(|one| (one.region.as_str(), one.start.cm(), one.taken.percent(), one.foils.unwrap())).collect();
    assert_eq!(told, [("edge", 1.0, 70.0, 11), ("side", 3.0, 45.0, 11), ("crown", 5.0, 20.0, 8)]);
    for (one, want) in laid.iter().zip([14.0, 13.5, 10.0]) {
        assert!((one.of_head.percent() - want).abs() < 1e-9, "{one:?}");
    }
    // Behind first, then the front inside, then its outline; no place is stated, so nothing else orders them.
    assert_eq!(laid.iter().map(|one| one.order).collect::<Vec<_>>(), [3, 2, 1]);
    let foils = |gradient: &Gradient, count: u32| {
        gradient.lay(&template, count).iter().map(|one| one.foils.unwrap()).collect::<Vec<_>>()
    };
    // 7.5 divides 30 four times: 11.2 of 30 is 2.8 of 7.5; 8, 5.6 and 2.4 of alike rest go to the earlier.
    assert_eq!((foils(&gradient, 0), foils(&gradient, 1)), (vec![0; 3], vec![1, 0, 0]));
    assert_eq!(foils(&gradient, 75), [28, 27, 20], "exactly so many of each");
    let even = blend((1.0, 1.0), (50.0, 50.0)).unwrap();
    assert_eq!(foils(&even, 5), [1, 2, 2], "of 1, 1.5 and 2.5 the earlier of two alike");
    let none = blend((1.0, 1.0), (0.0, 0.0)).unwrap();
    assert_eq!(foils(&none, 12), [0; 3], "nothing is taken, so nothing lies anywhere");
    let outside = blend((1.0, 1.0), (80.0, 0.0)).unwrap();
    // 16 and 12 % of the head, none at the crown: of 7 foils 4 and 3.
    assert_eq!(foils(&outside, 7), [4, 3, 0]);
}

/// By hand: half of the edge and all of the side are 10 and 30 % of the hair; 70 and 45 % of them are 20.5 % of the head, and they begin at 1 and
/// 3 cm, by hair at 2.5.
#[test]
fn a_section_in_several_regions_takes_what_each_takes() {
    let (template, gradient) = (three([[100.0; 3]; 3]), blend((1.0, 5.0), (70.0, 20.0)).unwrap());
    let at =
        |region: &str, share: f64| Placement { section: "halo".into(), region: region.into(), share: percent(share) };
    let asked = |placed: &[Placement]| gradient.of_section(&template, placed);
    let found = asked(&[at("edge", 50.0), at("side", 100.0)]).unwrap();
    assert!((found.of_head.percent() - 20.5).abs() < 1e-9, "{found:?}");
    let start = found.start.to_array().map(Length::cm);
    assert!(start.iter().zip([1.0, 2.5, 3.0]).all(|(got, want)| (got - want).abs() < 1e-9), "{start:?}");
    // In another order the same.
    let turned = asked(&[at("side", 100.0), at("edge", 50.0)]).unwrap().start.to_array().map(Length::cm);
    assert!(turned.iter().zip([1.0, 2.5, 3.0]).all(|(got, want)| (got - want).abs() < 1e-9), "{turned:?}");
    assert!(
        asked(&[]).is_none()
            && asked(&[at("side", 0.0)]).is_none()
            && asked(&[at("side", 10.0), at("top", 5.0)]).is_none()
    );
    let part = asked(&[at("side", 0.0), at("crown", 10.0)]).unwrap();
    assert!((part.of_head.percent() - 1.0).abs() < 1e-9 && (part.start.best().cm() - 5.0).abs() < 1e-9, "{part:?}");
}

/// Alike at both ends is no contradiction; at the very ends of the hair nothing begins.
#[test]
fn a_gradient_may_be_level_and_ends_before_the_ends() {
    assert!(blend((2.0, 2.0), (40.0, 40.0)).is_ok() && blend((0.0, 29.9), (40.0, 40.0)).is_ok());
    let names = ["O", "I", "OS", "IS", "L"];
    let told = |start, share| blend(start, share).unwrap_err().told_with(names);
    assert_eq!(told((0.0, 30.0), (40.0, 40.0)), "I 30 cm is not within the hair's L 30 cm (start at less than 30 cm)");
    assert_eq!(
        told((2.1, 2.0), (40.0, 40.0)),
        "O 2.1 cm is further from the scalp than I 2 cm: the outline would be the quieter one (swap them, or give both 2 cm)"
    );
    assert_eq!(
        told((2.0, 2.0), (40.0, 41.0)),
        "OS 40 % is less than IS 41 %: the crown would be the brighter one (swap them, or give both 40 %)"
    );
}

/// At every whole centimetre, the ends as well where they are one. By hand: half of the hair is taken and 60 % of it covered, so 30 % of the light is
/// light hair's; where none is covered it is as it was.
#[test]
fn levels_along_a_strand_stand_at_every_centimetre() {
    let combed = Profile { covered: percent(60.0).into(), start: cm(5.0).into(), transition: cm(4.0).into() };
    let along = |length: f64| level_along(&combed, percent(50.0).into(), (level(5.0), level(9.0)), cm(length));
    let levels = along(12.0);
    assert_eq!(levels.iter().map(|(at, _)| at.cm()).collect::<Vec<_>>(), (0..=12).map(f64::from).collect::<Vec<_>>());
    assert_eq!(along(11.9).len(), 12);
    assert!(levels[..=5].iter().all(|(_, level)| level.to_array().iter().all(|one| one.number() == 5.0)));
    let y = |swatch: Swatch| swatch.samples()[0][1];
    let want = 0.7 * y(Swatch::natural(level(5.0))) + 0.3 * y(Swatch::lightened(level(5.0), level(9.0)));
    let got = y(Swatch::natural(levels[12].1.best()));
    assert!((got / want - 1.0).abs() < 1e-3, "{got} for {want}");
}

/// By hand from areas and densities: 20 x 0.5, 30 x 1 and 50 x 1.2 are 10, 30 and 60, all of the hair. Where the crown has 90 to 150 hairs for each
/// hundred it bears 45 of 85 or 75 of 115.
#[test]
fn regions_bear_hair_by_area_and_density() {
    let template = three([[50.0; 3], [100.0; 3], [90.0, 120.0, 150.0]]);
    let want = [[10.0; 3], [30.0; 3], [4500.0 / 85.0, 60.0, 7500.0 / 115.0]];
    for (hair, want) in template.hair().iter().zip(want) {
        let got = hair.to_array().map(Share::percent);
        assert!(got.iter().zip(want).all(|(got, want)| (got - want).abs() < 1e-9), "{got:?} for {want:?}");
    }
    // Drawn in a list where a place is not stated; by name its place, or the names there are.
    let rows: Vec<[f64; 4]> = (0..3).map(|row| [0.0, f64::from(row), 12.0, 1.0]).collect();
    assert_eq!(template.drawn(), rows);
    assert_eq!(["edge", "side", "crown"].map(|name| template.position(name).unwrap()), [0, 1, 2]);
    let unknown = template.position("tops").unwrap_err().to_string();
    assert_eq!(unknown, "no region \"tops\" in the template: it has edge, side, crown");
}

/// Shares by hand: 60 % of the crown's 50 and all of the edge's 20 are 50; what no longer fits is told with the room that is left, or with none.
#[test]
fn sections_share_the_head_by_its_hair() {
    let template = three([[100.0; 3]; 3]);
    let at = |section: &str, region: &str, share: f64| Placement {
        section: section.into(),
        region: region.into(),
        share: percent(share),
    };
    let shares = |placed: &[Placement], rest| partition(&template, placed, rest);
    let found = shares(
        &[at("veil", "side", 50.0), at("halo", "crown", 60.0), at("halo", "edge", 100.0), at("veil", "crown", 40.0)],
        Rest::Natural,
    )
    .unwrap();
    let told: Vec<_> =
        found.iter().map(|(name, share)| (name.as_str(), (share.best().percent() * 1e6).round() / 1e6)).collect();
    assert_eq!(told, [("veil", 35.0), ("halo", 50.0)]);
    let refused = |placed: &[Placement], rest| shares(placed, rest).unwrap_err().to_string();
    assert_eq!(
        refused(&[at("halo", "crown", 100.0), at("veil", "crown", 12.344)], Rest::Natural),
        "crown: \"halo\" and \"veil\" overlap, together the sections take 112.34 % of it (take crown out of \"veil\")"
    );
    assert_eq!(
        refused(&[at("halo", "crown", 99.0), at("veil", "crown", 12.0)], Rest::Natural),
        "crown: \"halo\" and \"veil\" overlap, together the sections take 111 % of it (give \"veil\" 1 % or less)"
    );
    // Three thirds are all, to the last digit; where nothing lies the first section is offered it, else the last that lies there.
    let thirds = |rest| {
        shares(&[at("a", "edge", 100.0 / 3.0), at("b", "edge", 100.0 / 3.0), at("c", "edge", 100.0 / 3.0)], rest)
    };
    assert!(thirds(Rest::Natural).is_ok());
    assert_eq!(
        refused(&[at("veil", "edge", 100.0), at("halo", "crown", 60.0)], Rest::Refused),
        "side: 100 % of it belongs to no section (add them to \"veil\", or say that the rest stays natural)"
    );
    assert_eq!(
        refused(
            &[
                at("veil", "edge", 100.0),
                at("veil", "side", 100.0),
                at("halo", "crown", 60.0),
                at("bar", "crown", 20.0)
            ],
            Rest::Refused
        ),
        "crown: 20 % of it belongs to no section (add them to \"bar\", or say that the rest stays natural)"
    );
    assert!(
        shares(&[at("veil", "edge", 100.0), at("veil", "side", 100.0), at("halo", "crown", 100.0)], Rest::Refused)
            .is_ok()
    );
    assert!(refused(&[], Rest::Refused).contains("(add them to \"\""));
}

/// Light side by side adds up: each sample is the sum of its parts by area, those of the regions by hair; L* is 116 times the cube root, less 16.
#[test]
fn a_head_reads_as_its_light_adds_up() {
    let template = three([[100.0; 3]; 3]);
    let natural = Swatch::natural(level(5.0));
    let (rest, light) = (Swatch::natural(level(6.0)), Swatch::lightened(level(6.0), level(9.0)));
    let part = |section: &'static str, region, of_region: f64, lightened: f64| Placed {
        section,
        region,
        of_region: percent(of_region),
        lightened: percent(lightened),
        rest,
        light,
    };
    // The crown is given out twice over: what no longer fits is left out.
    let placed = [
        part("a", 0, 80.0, 50.0),
        part("b", 1, 30.0, 20.0),
        part("c", 1, 40.0, 70.0),
        part("d", 2, 70.0, 10.0),
        part("e", 2, 70.0, 90.0),
    ];
    let look = read_head(&template, &placed, &natural, None);
    let samples = |i: usize, k: usize| {
        let [of, dark, bright] = [&natural, &rest, &light].map(|swatch| swatch.samples()[i][k]);
        let both = |lightened: f64| dark * (1.0 - lightened) + bright * lightened;
        [0.8 * both(0.5) + 0.2 * of, 0.3 * both(0.2) + 0.4 * both(0.7) + 0.3 * of, 0.7 * both(0.1) + 0.3 * both(0.9)]
    };
    let count = natural.samples().len();
    for (region, found) in look.regions.iter().enumerate() {
        for i in 0..count {
            for k in 0..3 {
                let (got, want) = (found.colour.samples()[i][k], samples(i, k)[region]);
                assert!((got - want).abs() < 1e-12, "{region}, {i}, {k}: {got} for {want}");
            }
        }
    }
    let l = |y: f64| 116.0 * y.cbrt() - 16.0;
    // Edge against side and crown, 30 and 50; edge and side, 20 and 30, are seen from the front.
    let outline: Vec<f64> =
        (0..count).map(|i| l(samples(i, 1)[0]) - l((3.0 * samples(i, 1)[1] + 5.0 * samples(i, 1)[2]) / 8.0)).collect();
    let front: Vec<f64> =
        (0..count).map(|i| l((2.0 * samples(i, 1)[0] + 3.0 * samples(i, 1)[1]) / 5.0) - l(samples(i, 1)[2])).collect();
    for (found, want) in [(look.outline_over_interior, outline), (look.front_over_behind, front)] {
        let found = found.unwrap().to_array();
        let bounds = [
            want.iter().copied().fold(f64::INFINITY, f64::min),
            want[0],
            want.iter().copied().fold(f64::NEG_INFINITY, f64::max),
        ];
        assert!(found.iter().zip(bounds).all(|(got, want)| (got - want).abs() < 1e-6), "{found:?} for {bounds:?}");
    }
    assert_eq!((look.as_wanted, look.change), (None, None));
}

/// A region that is given out to the last digit of a sum has nothing natural in it; one without hair is no outline; hair that is as it was changes
/// nothing.
#[test]
fn what_is_nothing_adds_nothing() {
    let template = three([[100.0; 3]; 3]);
    let natural = Swatch::natural(level(5.0));
    let seen = Swatch::from_samples(Swatch::natural(level(7.0)).samples(), Basis::Measured).unwrap();
    let part = |section, region, of_region: f64| Placed {
        section,
        region,
        of_region: percent(of_region),
        lightened: percent(50.0),
        rest: seen,
        light: seen,
    };
    let whole = [part("a", 0, 70.0), part("b", 0, 29.999_999_999_999_99), part("c", 1, 99.0)];
    let look = read_head(&template, &whole, &natural, Some(Wish::BrightOutline));
    assert_eq!(look.regions[0].colour.basis(), Basis::Measured);
    assert_eq!((look.regions[1].colour.basis(), look.regions[2].colour), (natural.basis(), natural));
    // The outline is the lighter by far already.
    assert_eq!((look.as_wanted, look.change), (Some(true), None));
    let dull = read_head(&template, &[part("b", 0, 100.0)], &Swatch::natural(level(7.5)), Some(Wish::BrightOutline));
    assert_eq!(
        (dull.as_wanted, dull.change),
        (Some(false), None),
        "light and rest are alike: no share of it does anything"
    );
    let bald = Template::new(
        vec![
            Region { area: percent(0.0), ..template.regions()[0].clone() },
            Region { area: percent(100.0), ..template.regions()[1].clone() },
        ],
        Basis::Stated,
    );
    let look = read_head(&bald.unwrap(), &[], &natural, Some(Wish::Even));
    assert_eq!((look.outline_lab_l, look.outline_over_interior, look.as_wanted), (None, None, Some(true)));
    assert!(look.interior_lab_l.is_some());
}

/// Of two sections that bear as much the first is told; what is not enough says so.
#[test]
fn a_change_that_is_not_enough_says_so() {
    let template = three([[100.0; 3]; 3]);
    let rest = Swatch::natural(level(6.0));
    let part = |section, of_region: f64, to: f64| Placed {
        section,
        region: 0,
        of_region: percent(of_region),
        lightened: percent(1.0),
        rest,
        light: Swatch::lightened(level(6.0), level(to)),
    };
    let change = |placed: &[Placed<'_>]| read_head(&template, placed, &rest, Some(Wish::BrightOutline)).change.unwrap();
    let found = change(&[part("first", 50.0, 9.0), part("second", 50.0, 9.0)]);
    assert!(found.section == "first" && found.enough, "{found:?}");
    let little = change(&[part("edge", 100.0, 6.2)]);
    assert_eq!((little.wanted, little.enough), (Share::ALL, false));
    assert_eq!(
        little.advice(),
        "lighten 100 % of the hair in \"edge\" instead of 1 %, which is not enough: take it to a lighter level too"
    );
    let enough = Change { enough: true, ..little };
    assert_eq!(enough.advice(), "lighten 100 % of the hair in \"edge\" instead of 1 %");
}

/// As dark as is wanted already, by the lower bound of what it reads as, needs none there, also where the strands are that level; the hair of
/// nobody draws no lowlight, nor does a span without a foil.
#[test]
fn lowlights_at_their_edges() {
    let now = Interval::ordered(level(7.0), level(9.0), level(9.5));
    let found = lowlights(now, level(7.0), level(7.0), level(7.0), None).unwrap();
    assert_eq!(found.share.to_array(), [Share::NONE, Share::ALL, Share::ALL]);
    let refused =
        |wanted: f64, lowlight: f64| lowlights(now, level(wanted), level(lowlight), level(5.0), None).is_err();
    assert!(refused(9.0, 6.0) && !refused(8.9, 6.0) && refused(6.9, 7.0) && !refused(7.0, 7.0));
    let told = lowlights(now, level(9.5), level(7.0), level(7.0), None).unwrap_err();
    assert_eq!(
        told.told_with(["READS", "LEVEL"]),
        "READS level 9.5 is not darker than `now`, level 9 (7 to 9.5): lowlights only darken (give less than 9)"
    );
    let places = |light: &[LightFoils<'_>]| {
        let places = lowlight_places(4, light);
        places
            .iter()
            .map(|place| (place.region.clone().unwrap(), place.foils, place.behind_foils.clone()))
            .collect::<Vec<_>>()
    };
    // A crown without hair or without a foil is no other place than the outline.
    let edge = span("edge", 5.0, 0.0, 3, 6);
    for crown in [span("crown", 0.0, 100.0, 1, 2), span("crown", 9.0, 100.0, 2, 1)] {
        assert_eq!(places(&[crown, edge]), [("edge".to_owned(), 4, vec![3, 4, 5, 6])]);
    }
    // One foil is a place too.
    assert_eq!(places(&[span("crown", 9.0, 100.0, 7, 7), edge]), [("crown".to_owned(), 4, vec![7; 4])]);
}

/// No lighter, or lighter by what two formulas may differ by, is one stretch at full depth over all of its length.
#[rstest]
#[case(8.0, 3.0)]
#[case(6.0, 6.0)]
#[case(6.0, 8.0)]
fn a_shadow_with_nothing_to_blend_is_one_stretch(#[case] shadow: f64, #[case] light: f64) {
    let steps = shadow_steps(level(shadow), level(light), cm(4.5));
    let told: Vec<_> = steps.iter().map(|step| (step.from.cm(), step.to.cm(), step.level.number())).collect();
    assert_eq!(told, [(0.0, 4.5, shadow)]);
}
