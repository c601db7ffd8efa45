//! Laws of foils, regions and looks.

use foilwork::{
    colour::{Level, Swatch},
    hair::{DensityFact, HairDensity, HairFacts, growth},
    head::{
        Curvature, Gradient, Layout, OverDirection, Panel, Placed, Placement, Profile, Rest, Taking, Technique,
        Template, Wish, demand, line_shows_after, partition, read_head, take_up,
    },
    quantity::{Length, Quantity, Share},
    source::Interval,
};
use proptest::prelude::*;

fn cm(value: f64) -> Length {
    Length::from_cm(value).unwrap()
}

fn percent(value: f64) -> Share {
    Share::from_percent(value).unwrap()
}

fn technique() -> impl Strategy<Value = Technique> {
    prop::sample::select(Technique::ALL)
}

proptest! {
    #[test]
    fn shares_of_a_layout_are_shares(
        width in 2.0..20.0, height in 2.0..20.0, pick in 0.1..1.0, gap in 0.0..1.0, thick in 0.1..1.0, left in 0.0..1.0,
    ) {
        let sure = |value| Interval::exact(cm(value));
        let taking = Taking::Weave { pick: sure(pick), gap: sure(gap), depth: sure(thick) };
        let weave = Layout { subsection: sure(thick), left_between: sure(left), taking, foil_width: None };
        let panel = Panel { width: cm(width), height: cm(height) };
        let found = weave.on(panel).unwrap();
        prop_assert!(found.share_of_panel.best() <= found.share_of_subsection.best());
        prop_assert!(found.foils.best() >= 1 && found.picks.best() >= 1);
        // The foils fit: their subsections and what is between are no higher than the panel.
        let rows = f64::from(found.foils.best());
        prop_assert!(rows * thick + (rows - 1.0) * left <= height + 1e-6);
        let slice = Layout { taking: Taking::Slice, ..weave }.on(panel).unwrap();
        prop_assert!(found.share_of_panel.best().percent() <= slice.share_of_panel.best().percent() + 1e-9);
        let tight = weave.back_to_back().on(panel).unwrap();
        prop_assert!(tight.foils.best() >= found.foils.best());
    }

    #[test]
    fn more_hair_never_needs_less(
        technique in technique(), density in 60.0..300.0, more in 1.0..1.6, taken in 1.0..60.0, length in 10.0..40.0,
    ) {
        let needed = |density: f64, taken: f64, length: f64| {
            let counted = Interval::exact(HairDensity::from_hairs_per_cm2(density).unwrap());
            let facts = HairFacts { density: Some(DensityFact::Counted(counted)), ..HairFacts::default() };
            let profile = technique.profile(cm(40.0)).value;
            let all = facts.head().part(Share::ALL);
            demand(&all, percent(taken).into(), &profile, cm(length).into(), take_up(technique, true).value, None, Some(10.into())).mix
        };
        let base = needed(density, taken, length);
        for bigger in [needed(density * more, taken, length), needed(density, taken * more, length), needed(density, taken, length * more)] {
            prop_assert!(bigger.best() >= base.best() && bigger.high() >= base.high() && bigger.low() >= base.low());
        }
    }

    #[test]
    fn a_back_combed_section_starts_no_closer_to_the_scalp_than_a_woven_one(length in 1.0..80.0, at in 0.0..80.0) {
        let (weave, combed) = (Technique::Weave.profile(cm(length)).value, Technique::BackComb.profile(cm(length)).value);
        prop_assert!(combed.start.best() >= weave.start.best() && combed.start.low() >= weave.start.low());
        prop_assert!(combed.covered_at(cm(at)).best() <= weave.covered_at(cm(at)).best());
        let rate = growth(None).value;
        prop_assert!(line_shows_after(&combed, rate).value.best() >= line_shows_after(&weave, rate).value.best());
    }

    #[test]
    fn cover_rises_towards_the_ends(technique in technique(), length in 5.0..60.0, at in 0.0..60.0, more in 0.0..20.0) {
        let profile: Profile = technique.profile(cm(length)).value;
        let (here, below) = (profile.covered_at(cm(at)), profile.covered_at(cm(at + more)));
        prop_assert!(below.best() >= here.best() && below.low() >= here.low() && below.high() >= here.high());
        let painted = profile.painted(Interval::exact(cm(length)));
        prop_assert!(painted.high().cm() <= length + 1e-9);
    }

    #[test]
    fn sections_partition_the_head(cuts in prop::collection::vec(1.0..99.0, 11)) {
        let template = Template::standard();
        let mut placements = Vec::new();
        for (region, cut) in template.regions().iter().zip(&cuts) {
            for (section, share) in [("bright", *cut), ("quiet", 100.0 - cut)] {
                placements.push(Placement { section: section.into(), region: region.name.clone(), share: percent(share) });
            }
        }
        let shares = partition(&template, &placements, Rest::Refused).unwrap();
        let sum: f64 = shares.iter().map(|(_, share)| share.best().percent()).sum();
        prop_assert!((sum - 100.0).abs() < 1e-6, "{sum}");
        placements[0].share = percent(cuts[0] + 0.5);
        prop_assert!(partition(&template, &placements, Rest::Refused).is_err());
        placements[0].share = percent(cuts[0] - 0.5);
        prop_assert!(partition(&template, &placements, Rest::Refused).is_err());
        prop_assert!(partition(&template, &placements, Rest::Natural).is_ok());
    }

    #[test]
    fn a_region_lies_between_its_two_colours(from in 1.0..7.0, up in 0.5..4.0, share in 0.0..100.0, area in 0.0..100.0) {
        let (from, to) = (Level::new(from).unwrap(), Level::new(from + up).unwrap());
        let (rest, light) = (Swatch::natural(from), Swatch::lightened(from, to));
        let placed = Placed { section: "top", region: 2, of_region: percent(area), lightened: percent(share), rest, light };
        let look = read_head(&Template::standard(), &[placed], &rest, Some(Wish::Even));
        let l = look.regions[2].lab_l.best().lab_l();
        prop_assert!(l >= rest.lab().l() - 1e-6 && l <= light.lab().l() + 1e-6);
        let untouched = look.regions[0].lab_l.best().lab_l();
        prop_assert!((untouched - rest.lab().l()).abs() < 1e-6);
    }

    #[test]
    fn a_gradient_grows_quieter_inward(outline in 0.0..5.0, more in 0.0..5.0, share in 0.0..50.0, brighter in 0.0..50.0) {
        let blend = Gradient::new((cm(outline), cm(outline + more)), (percent(share + brighter), percent(share)), cm(30.0)).unwrap();
        let template = Template::standard();
        let mut regions: Vec<_> = template.regions().iter().collect();
        regions.sort_by(|a, b| a.inward.partial_cmp(&b.inward).unwrap());
        for pair in regions.windows(2) {
            prop_assert!(blend.start(pair[0]) <= blend.start(pair[1]) && blend.share(pair[0]) >= blend.share(pair[1]));
        }
    }

    /// All foils are laid, more where more hair is taken, and every region has its own place in the work.
    #[test]
    fn foils_follow_the_hair_that_is_taken(outline in 1.0..100.0, less in 0.0..1.0, foils in 0u32..300) {
        let share = (percent(outline), percent(outline * less));
        let blend = Gradient::new((cm(0.5), cm(4.0)), share, cm(30.0)).unwrap();
        let laid = blend.lay(&Template::standard(), foils);
        prop_assert_eq!(laid.iter().map(|region| region.foils.unwrap()).sum::<u32>(), foils);
        for one in &laid {
            for other in &laid {
                // Rounding to whole foils moves a region by less than one.
                prop_assert!(one.of_head > other.of_head || one.foils.unwrap() <= other.foils.unwrap() + 1);
            }
        }
        let mut orders: Vec<u32> = laid.iter().map(|region| region.order).collect();
        orders.sort_unstable();
        prop_assert_eq!(orders, (1..=11).collect::<Vec<u32>>());
        let last = laid.iter().max_by_key(|region| region.order).unwrap();
        prop_assert!(last.region.as_str() == "front hairline");
    }

    #[test]
    fn a_start_drops_the_further_back_the_root(ahead in 0.0..8.0, out in 0.1..8.0, behind in 0.0..6.0, more in 0.01..3.0) {
        for scalp in [Curvature::Flat, Curvature::Round(cm(9.0))] {
            let held = OverDirection { ahead: cm(ahead), out: cm(out), scalp };
            prop_assert!(held.start(cm(behind + more)) > held.start(cm(behind)));
        }
    }

    /// What is advised is enough, or says that it is not.
    #[test]
    fn the_change_makes_the_head_read_as_wanted(outline in 0.0..60.0, inside in 0.0..60.0) {
        let (from, to) = (Level::new(5.0).unwrap(), Level::new(9.5).unwrap());
        let (rest, light) = (Swatch::natural(from), Swatch::lightened(from, to));
        let template = Template::standard();
        let read = |outline: f64| {
            let placed: Vec<_> = template.regions().iter().enumerate().map(|(region, of)| Placed {
                section: if of.outline { "outline" } else { "inside" },
                region,
                of_region: Share::ALL,
                lightened: percent(if of.outline { outline } else { inside }),
                rest,
                light,
            }).collect();
            read_head(&template, &placed, &rest, Some(Wish::BrightOutline))
        };
        let look = read(outline);
        prop_assert_eq!(look.as_wanted, Some(look.change.is_none()));
        if let Some(change) = look.change {
            prop_assert_eq!(change.section.as_str(), "outline");
            prop_assert!(!change.enough || read(change.wanted.percent() + 1e-6).as_wanted == Some(true));
        }
    }
}

#[test]
fn a_quantity_of_a_head_is_never_below_zero() {
    assert_eq!(Length::nearest(-1.0), cm(0.0));
}
