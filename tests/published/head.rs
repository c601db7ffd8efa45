//! Geometry of the head against values worked out by hand or by plain integration, and the trade's own figures.

use crate::api::common::near;
use foilwork::{
    colour::{Level, Swatch},
    hair::{Cut, DensityFact, Diameter, HairDensity, HairFacts, ThreadFact},
    head::{
        Curvature, Layout, OverDirection, Panel, Profile, Taking, Technique, Template, by_hand, demand, film,
        level_along, take_up,
    },
    quantity::{Area, Length, Quantity, Share},
    source::Interval,
};
use rstest::rstest;

fn cm(value: f64) -> Length {
    Length::from_cm(value).unwrap()
}

fn mm(value: f64) -> Interval<Length> {
    Interval::exact(Length::from_mm(value).unwrap())
}

fn percent(value: f64) -> Interval<Share> {
    Interval::exact(Share::from_percent(value).unwrap())
}

/// By hand: (80 + 3) / 6 is 13 picks and a bit; 13 x 3 x 6 = 234 mm2 of 80 x 6 = 480 mm2 are 48.75 %, of 80 x 12 mm2
/// 24.375 %; (60 + 6) / 12 is 5 foils and a bit.
#[test]
fn weave_by_hand() {
    let taking = Taking::Weave { pick: mm(3.0), gap: mm(3.0), depth: mm(6.0) };
    let weave = Layout { subsection: mm(6.0), left_between: mm(6.0), taking, foil_width: None };
    let panel = Panel { width: cm(8.0), height: cm(6.0) };
    let found = weave.on(panel).unwrap();
    assert_eq!((found.picks.best(), found.foils.best()), (13, 5));
    near(found.lifted.best().cm2(), 2.34, 1e-12);
    near(found.share_of_subsection.best().percent(), 48.75, 1e-9);
    near(found.share_of_panel.best().percent(), 24.375, 1e-9);
    // Foils of 3 cm: 80 / 30 needs three beside each other.
    let narrow = Layout { foil_width: Some(cm(3.0)), ..weave }.on(panel).unwrap();
    assert_eq!((narrow.across, narrow.foils.best()), (3, 15));
}

/// By hand: strands and gaps of 3 mm are 2.25 to 3.75 mm, so of 80 mm there are whole 83.75 / 7.5 = 11 strands at the fewest
/// and whole 82.25 / 4.5 = 18 at the most.
#[test]
fn strands_by_hand_are_fewest_thick_and_far_apart() {
    let size = by_hand(Length::from_mm(3.0).unwrap());
    let picks = Layout::weave(size, size).on(Panel { width: cm(8.0), height: cm(6.0) }).unwrap().picks;
    assert_eq!((picks.low(), picks.best(), picks.high()), (11, 13, 18));
}

/// By hand: a slice as wide as the panel, 80 mm, and 6 mm thick, by hand 4.5 to 7.5 mm, is 3.6, 4.8 and 6 cm2 of scalp.
#[test]
fn a_thicker_slice_holds_more_hair() {
    let subsection = by_hand(Length::from_mm(6.0).unwrap());
    let slices = Layout { subsection, left_between: mm(6.0), taking: Taking::Slice, foil_width: None };
    let lifted = slices.on(Panel { width: cm(8.0), height: cm(6.0) }).unwrap().lifted;
    for (got, want) in lifted.to_array().into_iter().zip([3.6, 4.8, 6.0]) {
        near(got.cm2(), want, 1e-9);
    }
}

/// The share of a weave against the measure of the picks on a fine grid of the panel's width.
#[rstest]
#[case(80.0, 3.0, 3.0)]
#[case(77.0, 2.5, 4.0)]
#[case(120.0, 5.0, 1.5)]
fn weave_by_counting_points(#[case] width: f64, #[case] pick: f64, #[case] gap: f64) {
    let n = 400_000_u32;
    let mut inside = 0_u32;
    for i in 0..n {
        let at = (f64::from(i) + 0.5) / f64::from(n) * width;
        let (whole, rest) = ((at / (pick + gap)).floor(), at % (pick + gap));
        // A strand counts when it lies in the panel as a whole.
        if rest < pick && whole * (pick + gap) + pick <= width + 1e-9 {
            inside += 1;
        }
    }
    let taking = Taking::Weave { pick: mm(pick), gap: mm(gap), depth: mm(3.0) };
    let weave = Layout { subsection: mm(3.0), left_between: mm(3.0), taking, foil_width: None };
    let share = weave.on(Panel { width: mm(width).best(), height: cm(6.0) }).unwrap().share_of_subsection.best();
    near(share.fraction(), f64::from(inside) / f64::from(n), 1e-5);
}

/// A slice is a strand as wide as the panel, back to back leaves nothing between.
#[test]
fn slices_and_back_to_back() {
    let slice = Layout { subsection: mm(3.0), left_between: mm(3.0), taking: Taking::Slice, foil_width: None };
    let panel = Panel { width: cm(8.0), height: cm(6.0) };
    let found = slice.on(panel).unwrap();
    near(found.share_of_subsection.best().percent(), 100.0, 1e-12);
    near(found.share_of_panel.best().percent(), 50.0, 1e-12);
    assert_eq!(found.foils.best(), 10);
    let all = slice.back_to_back().on(panel).unwrap();
    near(all.share_of_panel.best().percent(), 100.0, 1e-12);
    assert_eq!(all.foils.best(), 20);
}

/// Subsections of 1/8 inch for lightening and 1/4 inch for colour (review questions of a training text): on 6 inches of
/// head, with as much left between, 24 and 12 foils.
#[test]
fn subsections_as_published() {
    near(Layout::usual_subsection().value.best().cm(), 2.54 / 8.0, 1e-12);
    let panel = Panel { width: cm(8.0), height: cm(6.0 * 2.54) };
    let foils = |inch: f64| {
        let thick = Interval::exact(cm(2.54 * inch));
        let layout = Layout { left_between: thick, ..Layout::slice().with_subsection(thick) };
        layout.on(panel).unwrap().foils.best()
    };
    assert_eq!((foils(1.0 / 8.0), foils(1.0 / 4.0)), (24, 12));
}

/// By hand: 200 hairs/cm2 on 2.34 cm2 are 468 hairs; of 55 ug/cm they weigh 0.0257 g/cm, on 40 cm 1.03 g.
/// 55 ug/cm at 1.32 g/cm3 is a hair of 4166.7 um2, a circle of 72.84 um.
#[test]
fn hair_in_a_foil_by_hand() {
    let facts = HairFacts {
        density: Some(DensityFact::Counted(Interval::exact(HairDensity::from_hairs_per_cm2(200.0).unwrap()))),
        thread: Some(ThreadFact::Cut(Cut::round(Diameter::from_um(72.84).unwrap()))),
        ..HairFacts::default()
    };
    let foil = facts.head().on(Interval::exact(Area::from_cm2(2.34).unwrap()));
    near(foil.hairs.best().hairs(), 468.0, 1e-9);
    near(foil.mass_per_length.best().g_per_cm(), 0.0257, 5e-5);
    near(foil.mass(cm(40.0).into()).best().g(), 1.03, 0.005);
}

/// By hand: 0.6 x clamp((s - 5) / 4): 0, 0, 0.15, 0.3, 0.6, 0.6 at 4, 5, 6, 7, 9 and 12 cm.
#[test]
fn back_comb_by_hand() {
    let combed = Profile { covered: percent(60.0), start: cm(5.0).into(), transition: cm(4.0).into() };
    for (at, want) in [(4.0, 0.0), (5.0, 0.0), (6.0, 0.15), (7.0, 0.3), (9.0, 0.6), (12.0, 0.6)] {
        near(combed.covered_at(cm(at)).best().fraction(), want, 1e-12);
    }
    // The painted length against the sum of the shares on a fine grid.
    for length in [4.0, 6.5, 9.0, 30.0] {
        let n = 100_000_u32;
        let step = length / f64::from(n);
        let places = (0..n).map(|i| (f64::from(i) + 0.5) * step);
        let sum: f64 = places.map(|at| combed.covered_at(cm(at)).best().fraction() * step).sum();
        near(combed.painted(cm(length).into()).best().cm(), sum, 1e-4);
    }
}

/// By hand: the root of the squares; straight out, forward, flat forward.
#[rstest]
#[case(0.0, 6.0, [6.0, 6.08, 6.32, 6.71])]
#[case(3.0, 6.0, [6.71, 7.21, 7.81, 8.49])]
#[case(6.0, 0.0, [6.0, 7.0, 8.0, 9.0])]
fn over_direction_by_hand(#[case] ahead: f64, #[case] out: f64, #[case] want: [f64; 4]) {
    let held = OverDirection { ahead: cm(ahead), out: cm(out), scalp: Curvature::Flat };
    for (behind, want) in [0.0, 1.0, 2.0, 3.0].into_iter().zip(want) {
        near(held.start(cm(behind)).cm(), want, 0.005);
    }
}

/// On a circle: the root is found by walking along the arc in small steps, and the distance is that of the two points.
#[rstest]
#[case(9.0, 3.0, 6.0)]
#[case(7.5, 0.0, 4.0)]
fn over_direction_on_a_curved_scalp(#[case] radius: f64, #[case] ahead: f64, #[case] out: f64) {
    let held = OverDirection { ahead: cm(ahead), out: cm(out), scalp: Curvature::Round(cm(radius)) };
    for behind in [0.0, 2.0, 5.0, 8.0] {
        let n = 200_000_u32;
        let step = behind / f64::from(n);
        // Back and down along the arc, starting along the tangent.
        let (mut back, mut down) = (0.0_f64, 0.0_f64);
        for i in 0..n {
            let angle = (f64::from(i) + 0.5) * step / radius;
            back += step * angle.cos();
            down += step * angle.sin();
        }
        let want = ((back + ahead).powi(2) + (down + out).powi(2)).sqrt();
        near(held.start(cm(behind)).cm(), want, 1e-6);
    }
    // A huge head is flat.
    let flat = OverDirection { scalp: Curvature::Flat, ..held };
    let huge = OverDirection { scalp: Curvature::Round(cm(1e5)), ..held };
    near(huge.start(cm(5.0)).cm(), flat.start(cm(5.0)).cm(), 1e-3);
}

/// The trade's amounts (common practice) for an average head of 20 cm: lightener for a full head of fine weaves 180 g (120
/// to 300), colour on shoulder length 120 g (90 to 180), on 2.5 cm of regrowth 60 g (40 to 90).
#[test]
fn amounts_of_the_trade_lie_within() {
    let head = HairFacts::default().head();
    let all = head.part(Share::ALL);
    let needed = |technique: Technique, lightens, share, length: f64, scalp| {
        let profile = technique.profile(cm(20.0)).value;
        demand(&all, percent(share), &profile, cm(length).into(), take_up(technique, lightens).value, scalp, None).mix
    };
    let holds = |mix: Interval<foilwork::quantity::Mass>, figure: f64, low: f64, high: f64| {
        assert!(mix.contains(Quantity::nearest(figure)), "{figure} g in {mix:?}");
        assert!(low <= mix.best().g() && mix.best().g() <= high, "{mix:?} from {low} to {high}");
    };
    holds(needed(Technique::Weave, true, 45.0, 20.0, None), 180.0, 120.0, 300.0);
    let colour = needed(Technique::Block, false, 100.0, 20.0, None);
    holds(colour, 120.0, 90.0, 180.0);
    holds(needed(Technique::Regrowth, false, 100.0, 2.5, Some(head.scalp.value)), 60.0, 40.0, 90.0);
    assert!(film().value.best().g_per_cm2() > 0.0);
}

/// What exposure models count for one use lies within the interval of a head of which nothing is known, at 20 cm: colour on all of
/// it, lightener in weaves on 45 %. Source of each figure in `tests/data/head/exposure.csv`; the 100 g are from memory.
#[test]
fn grams_of_exposure_models_lie_within() {
    let all = HairFacts::default().head().part(Share::ALL);
    let rows = csv::Reader::from_path("tests/data/head/exposure.csv").unwrap().into_records();
    let rows: Vec<csv::StringRecord> = rows.map(Result::unwrap).collect();
    assert_eq!(rows.len(), 4);
    for row in rows {
        let (lightens, grams): (bool, f64) = (row[1].parse().unwrap(), row[2].parse().unwrap());
        let (technique, share) = if lightens { (Technique::Weave, 45.0) } else { (Technique::Block, 100.0) };
        let (profile, takes) = (technique.profile(cm(20.0)).value, take_up(technique, lightens).value);
        let mix = demand(&all, percent(share), &profile, cm(20.0).into(), takes, None, None).mix;
        assert!(mix.contains(Quantity::nearest(grams)), "{}: {grams} g in {mix:?}", &row[0]);
    }
}

/// Light adds up in reflectance: at the ends of back-combed hair, 60 % of level 9 beside 40 % of level 5 reads as light as
/// natural hair of the mean reflectance, found here by bisection over natural levels.
#[test]
fn levels_along_the_strand_by_bisection() {
    let level = |number| Level::new(number).unwrap();
    let y = |swatch: Swatch| swatch.samples()[0][1];
    let want_y = 0.4 * y(Swatch::natural(level(5.0))) + 0.6 * y(Swatch::lightened(level(5.0), level(9.0)));
    let (mut low, mut high) = (5.0, 9.0);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if y(Swatch::natural(level(middle))) < want_y { low = middle } else { high = middle }
    }
    let combed = Profile { covered: percent(60.0), start: cm(5.0).into(), transition: cm(4.0).into() };
    let levels = level_along(&combed, Share::ALL.into(), (level(5.0), level(9.0)), cm(12.0));
    near(levels[12].1.best().number(), low, 0.01);
    assert_eq!(levels[5].1.best(), level(5.0));
}

/// The areas of the template are those that were assumed, by hand: front 20, top 25, sides 27, back 20, nape 8 %.
#[test]
fn template_has_the_assumed_areas() {
    let template = Template::standard();
    let sum = |names: &[&str]| -> f64 {
        let of = |region: &&foilwork::head::Region| names.contains(&region.name.as_str());
        template.regions().iter().filter(of).map(|region| region.area.percent()).sum()
    };
    near(sum(&["front hairline", "front"]), 20.0, 1e-9);
    near(sum(&["top", "crown"]), 25.0, 1e-9);
    near(sum(&["left temple", "right temple", "left side", "right side"]), 27.0, 1e-9);
    near(sum(&["back"]), 20.0, 1e-9);
    near(sum(&["nape", "nape line"]), 8.0, 1e-9);
    // Published: the temple peak has 69.82 hairs/cm2, the midline 135.2, between them 112.95: 0.52 and 0.84 of it.
    let temple = template.regions().iter().find(|region| region.name == "left temple").unwrap();
    near(temple.density_percent.low(), 100.0 * 69.82 / 135.2, 0.5);
    near(temple.density_percent.high(), 100.0 * 112.95 / 135.2, 0.5);
    // Summed diameters 9 against 12 mm/cm2, of hairs of 60 against 63 um: 0.79 in hairs.
    let side = template.regions().iter().find(|region| region.name == "left side").unwrap();
    near(side.density_percent.best(), 100.0 * (9.0 / 60.0) / (12.0 / 63.0), 0.5);
}
