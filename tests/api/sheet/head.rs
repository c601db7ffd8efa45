//! Hair and foils in full: each optional line of the head and of a section there and absent.

use super::{about, base, exact, level, part, q};
use foilwork::{
    colour::{ProductKind, Tone},
    head::{
        ClassDecision, ExtraStep, LowlightPlace, RegionFoils, Rejected, ServiceClass, ShadowStep, Softness, Technique,
        lowlights,
    },
    service::{
        AppliedBy, Applying, EndsPlan, LevelStretch, LevelsAlong, Meeting, MeetingShade, Plan, RootShadowPlan,
        SectionPlan, ShadowLength, ZoneHair, shape::Zone,
    },
    sheet::SheetPart,
    source::{Basis, Interval},
};
use rstest::rstest;

fn zone(zone: Zone, hair: [f64; 3], surface: f64) -> ZoneHair {
    ZoneHair { zone, hair: about(hair), surface: exact(surface) }
}

/// One section in foils, of which nothing optional is known.
fn section(plan: &Plan) -> SectionPlan {
    let made = plan.head.sections[0].clone();
    SectionPlan {
        section: "top".to_owned(),
        technique: Technique::Weave,
        hairs: exact(12_345.0),
        surface: None,
        applying: Applying {
            time: exact(20.0),
            by: AppliedBy::Stated,
            basis: Basis::Stated,
            foil: None,
            by_foils: None,
            foil_basis: None,
        },
        hair: None,
        takes: None,
        foils: None,
        mix_per_foil: None,
        start: exact(0.5),
        softness: Softness::Line,
        line_shows_after: exact(4.0),
        root_shadow: None,
        zones: vec![zone(Zone::Lengths, [3.0, 4.0, 5.0], 100.0)],
        along: None,
        ends_between: None,
        lowlights: None,
        lowlight_places: Vec::new(),
        product_class: ClassDecision {
            product: ProductKind::Lightener,
            why: "lifts three levels",
            rejected: vec![
                Rejected { product: ProductKind::SemiPermanentColour, why: "cannot lighten" },
                Rejected { product: ProductKind::HighLiftTint, why: "a gentler class does it as well" },
            ],
            before: Vec::new(),
            ..made.product_class
        },
        planned_class: Some(ProductKind::Lightener),
        ..made
    }
}

fn bare() -> Plan {
    let mut plan = base();
    plan.lift.clear();
    plan.head.sections = vec![section(&plan)];
    let head = &mut plan.head;
    (head.hairs, head.mass_per_length) = (about([87_654.0, 100_000.0, 123_456.0]), about([1.4, 1.5, 1.6]));
    (head.by_use, head.hair, head.basis, head.service_class) = (None, None, Basis::Assumed, ServiceClass::Partial);
    (head.natural, head.regrowth, head.warm_band) = (None, None, exact(2.5));
    (head.look, head.root_shadow) = (None, None);
    head.zones.clear();
    head.gradient.clear();
    head.meetings.clear();
    plan
}

const NAMES: &str = "section taken by hair g takes g foils g a foil begins cm";
const HAIRS: &str = "100000 (87700 to 123000) hairs";
const REJECTED: &str =
    "not taken: semi-permanent colour (cannot lighten); high-lift tint (a gentler class does it as well)";

#[test]
fn a_head_of_which_little_is_known() {
    let want = format!(
        "HEAD AND FOILS | 1.5 (1.4 to 1.6) g for each cm of length of hair in all, {HAIRS} [assumed]; booked as: partial {NAMES} top \
         weave ? ? - - 0.5 top: a line, regrowth shows after 4 weeks; the gentlest class is lightener, which lifts three levels \
         12300 hairs; put on in 20 min by `apply_min` [stated by you] {REJECTED}"
    );
    assert_eq!(part(&bare(), SheetPart::Head), want);
}

/// Everything is known: figures are three digits of each where they are rough.
#[test]
fn a_head_of_which_all_is_known() {
    let mut plan = bare();
    let head = &mut plan.head;
    (head.hair, head.by_use) = (Some(about([30.0, 40.0, 50.0])), Some(about([1.45, 1.5, 1.7])));
    (head.natural, head.regrowth) = (Some(q(2.0)), Some(about([1.0, 2.0, 3.0])));
    head.zones = vec![zone(Zone::Roots, [8.0, 10.0, 12.0], 300.0), zone(Zone::Ends, [5.0; 3], 151.4)];
    let region = |region: &str, order, taken: f64, start: f64, foils| RegionFoils {
        region: region.to_owned(),
        order,
        start: q(start),
        taken: q(taken),
        of_head: q(10.0),
        foils,
    };
    head.gradient = vec![region("crown", 2, 25.0, 2.5, None), region("nape", 1, 50.0, 1.0, Some(12))];
    let one = &mut head.sections[0];
    (one.surface, one.hair, one.takes) =
        (Some(exact(512.3)), Some(about([3.0, 4.0, 5.0])), Some(about([40.0, 45.0, 50.0])));
    (one.foils, one.mix_per_foil) = (Some(Interval::exact(10)), Some(exact(4.5)));
    (one.softness, one.line_shows_after) = (Softness::Soft, about([6.0, 8.0, 10.0]));
    one.root_shadow = Some(exact(3.0));
    one.product_class.before = vec![ExtraStep::PreSoften, ExtraStep::PrePigment];
    one.zones = vec![
        zone(Zone::Roots, [0.0; 3], 0.0),
        zone(Zone::MidLengths, [0.0, 1.0, 2.0], 40.0),
        zone(Zone::Ends, [2.0, 3.0, 4.0], 60.0),
    ];
    one.ends_between = Some(EndsPlan { share: q(20.0), from: q(12.0), hair: exact(5.0), takes: exact(6.0) });
    let made = lowlights(level(9.0).into(), level(8.0), level(7.0), level(6.0), None).unwrap();
    let mut depth = made;
    (depth.level, depth.share, depth.foils) = (level(7.0), exact(20.0), Some(Interval::exact(5)));
    depth.light_foils_between = Some(3);
    one.lowlights = Some(depth);
    let place = |region: Option<&str>, foils, behind: &[u32]| LowlightPlace {
        region: region.map(str::to_owned),
        foils,
        behind_foils: behind.to_vec(),
    };
    one.lowlight_places = vec![place(Some("crown"), 2, &[3, 6]), place(None, 1, &[4])];
    let want = format!(
        "HEAD AND FOILS | 40 (30 to 50) g of hair in all, {HAIRS} [assumed, narrowed by what was used before]; booked as: partial \
         by zone: roots 10 (8 to 12) g, 300 cm2; ends 5 g, 151 cm2 \
         natural hair for the first 2 cm; 2 (1 to 3) cm grown in since the last colour; the scalp warms the first 2.5 cm \
         order gradient in % taken begins cm foils 1 nape 50 1.0 12 2 crown 25 2.5 - \
         {NAMES} top weave 4 (3 to 5) 45 (40 to 50) 10 4.5 0.5 \
         top: a soft start, regrowth shows after 8 (6 to 10) weeks; a root shadow of 3 cm; the gentlest class is lightener, which \
         lifts three levels; before it: pre-soften; before it: pre-pigment \
         12300 hairs, 512 cm2 of surface; put on in 20 min by `apply_min` [stated by you] \
         of its hair, mixture lies on: mid lengths 1 (0 to 2) g, 40 cm2; ends 3 (2 to 4) g, 60 cm2 \
         {REJECTED} \
         of that, ends between the foils from 12 cm: 5 g of hair take 6 g \
         depth: 5 foils of level 7, 20 % of the hair there, one after every 3 light foils \
         they go in crown, 2 of them, behind light foils 3, 6; behind light foil 4"
    );
    assert_eq!(part(&plan, SheetPart::Head), want);
}

/// Only one of the two is enough to tell what has grown.
#[rstest]
#[case(Some(2.0), None, "natural hair for the first 2 cm; the scalp warms the first 2.5 cm")]
#[case(None, Some(1.5), "1.5 cm grown in since the last colour; the scalp warms the first 2.5 cm")]
fn what_has_grown(#[case] natural: Option<f64>, #[case] grown: Option<f64>, #[case] want: &str) {
    let mut plan = bare();
    (plan.head.natural, plan.head.regrowth) = (natural.map(q), grown.map(exact));
    let told = part(&plan, SheetPart::Head);
    assert!(told.contains(&format!("booked as: partial {want} {NAMES}")), "{told}");
}

/// What was used before narrows the estimate from 1.4 to 1.6 g/cm where one of its ends is moved; else it does not fit.
#[rstest]
#[case([1.4, 1.5, 1.6], ", and what was used before does not fit it")]
#[case([1.45, 1.5, 1.55], ", and what was used before does not fit it")]
#[case([1.39, 1.5, 1.6], ", narrowed by what was used before")]
#[case([1.4, 1.5, 1.61], ", narrowed by what was used before")]
fn what_was_used_before(#[case] used: [f64; 3], #[case] want: &str) {
    let mut plan = bare();
    plan.head.by_use = Some(about(used));
    let told = part(&plan, SheetPart::Head);
    assert!(told.contains(&format!("{HAIRS} [assumed{want}]; booked as")), "{told}");
}

/// The classes: what is planned beside the gentlest is told with what speaks against it, and is then no other one.
#[rstest]
#[case(None, "", REJECTED)]
#[case(
    Some(ProductKind::SemiPermanentColour),
    "planned is semi-permanent colour, which cannot lighten ",
    "not taken: high-lift tint (a gentler class does it as well)"
)]
#[case(
    Some(ProductKind::HighLiftTint),
    "a gentler class would do: lightener; planned is high-lift tint ",
    "not taken: semi-permanent colour (cannot lighten)"
)]
fn what_is_planned_beside_the_gentlest(#[case] class: Option<ProductKind>, #[case] said: &str, #[case] others: &str) {
    let mut plan = bare();
    plan.head.sections[0].planned_class = class;
    plan.head.sections[0].softness = Softness::Diffuse;
    let told = part(&plan, SheetPart::Head);
    assert!(told.contains("top: no visible start, regrowth"), "{told}");
    assert!(told.ends_with(&format!("[stated by you] {said}{others}")), "{told}");
}

/// Darker strands: none counted, one after every light foil, and so many that no light hair remains.
#[rstest]
#[case(20.0, None, None, "depth: strands of level 7, 20 % of the hair there")]
#[case(20.0, Some(5), Some(1), "depth: 5 foils of level 7, 20 % of the hair there, one after every light foil")]
#[case(100.0, Some(5), Some(2), "depth: 5 foils of level 7, 100 % of the hair there: no light hair remains there")]
fn darker_strands(#[case] share: f64, #[case] foils: Option<u32>, #[case] between: Option<u32>, #[case] want: &str) {
    let mut plan = bare();
    let mut depth = lowlights(level(9.0).into(), level(8.0), level(7.0), level(6.0), None).unwrap();
    (depth.level, depth.share, depth.foils) = (level(7.0), exact(share), foils.map(Interval::exact));
    depth.light_foils_between = between;
    plan.head.sections[0].lowlights = Some(depth);
    let told = part(&plan, SheetPart::Head);
    assert!(told.ends_with(&format!("{REJECTED} {want}")), "{told}");
}

/// Level along the strand, where it is not one level all along.
#[test]
fn level_along_the_strand() {
    let mut plan = bare();
    let stretch = |from: f64, to: f64, at: f64| LevelStretch { from: q(from), to: q(to), level: level(at).into() };
    let mut along = LevelsAlong { taken: None, stretches: vec![stretch(0.0, 2.0, 6.0)], basis: Basis::Assumed };
    let told = |plan: &mut Plan, along: &LevelsAlong| {
        plan.head.sections[0].along = Some(along.clone());
        part(plan, SheetPart::Head)
    };
    assert!(!told(&mut plan, &along).contains("level along the strand"), "one level needs no line");
    along.stretches.push(stretch(2.0, 10.5, 8.25));
    let want = "level along the strand, in cm: 0-2: 6; 2-10.5: 8.2 [of the taken hair alone; assumed]";
    assert!(told(&mut plan, &along).contains(&format!("{want} {REJECTED}")), "{}", told(&mut plan, &along));
    along.taken = Some(q(20.0));
    plan.head.root_shadow = Some(shadow(false, &[("nape", [3.0; 3])], &[]));
    let want = "8.2 [with the hair left between, before the root shadow; assumed] not taken:";
    assert!(told(&mut plan, &along).contains(want), "{}", told(&mut plan, &along));
}

fn shadow(found: bool, lengths: &[(&str, [f64; 3])], blend: &[(f64, f64, f64)]) -> RootShadowPlan {
    RootShadowPlan {
        shades: vec!["J6".to_owned(), "J7".to_owned()],
        found,
        level: level(6.0),
        tone: Tone::neutral(),
        lengths: lengths
            .iter()
            .map(|(region, length)| ShadowLength { region: (*region).to_owned(), length: about(*length) })
            .collect(),
        into_level: Some(level(9.0)),
        blend: blend
            .iter()
            .map(|(from, to, at)| ShadowStep { from: q(*from), to: q(*to), level: level(*at) })
            .collect(),
    }
}

const STEPS: &[(f64, f64, f64)] = &[(0.0, 2.0, 7.0), (2.0, 3.5, 8.0)];

/// One length everywhere is said once, and what is blended in one step needs no steps.
#[rstest]
#[case(true, &[("nape", [3.0; 3]), ("crown", [3.0; 3])], STEPS, "(found on the shelf): level 6, neutral length: 3 cm everywhere \
    blended into level 9, where it is longest: level 7 from 0 to 2 cm, level 8 from 2 to 3.5 cm")]
#[case(false, &[("nape", [3.0; 3]), ("crown", [1.0, 2.0, 3.0])], &STEPS[..1],
    "(as stated): level 6, neutral length: nape 3 cm; crown 2 (1 to 3) cm")]
fn the_root_shadow(
    #[case] found: bool,
    #[case] lengths: &[(&str, [f64; 3])],
    #[case] blend: &[(f64, f64, f64)],
    #[case] want: &str,
) {
    let mut plan = bare();
    plan.head.root_shadow = Some(shadow(found, lengths, blend));
    let told = part(&plan, SheetPart::Head);
    assert!(told.ends_with(&format!("{REJECTED} Root shadow of J6 + J7 {want}")), "{told}");
}

/// Where two formulas meet in a foil, with and without a shade near what shows.
#[test]
fn where_formulas_meet() {
    let mut plan = bare();
    let swatch = plan.colour[0].natural;
    let meets = |shade: Option<MeetingShade>| Meeting {
        first: "crown".to_owned(),
        then: "nape".to_owned(),
        level: level(8.0),
        tone: Tone::neutral(),
        swatch,
        shade,
    };
    let near = MeetingShade { code: "J8".to_owned(), apart_ciede2000: Interval::new(1.0, 2.34, 4.0).unwrap() };
    plan.head.meetings = vec![meets(None), meets(Some(near))];
    let meet = "- crown goes into the foil before nape; where they meet level 8, neutral shows:";
    let want =
        format!("{meet} no shade of the shop is near it {meet} J8 is nearest to it, CIEDE2000 2.3 (1 to 4) apart");
    let told = part(&plan, SheetPart::Head);
    assert!(told.ends_with(&format!("{REJECTED} {want}")), "{told}");
}
