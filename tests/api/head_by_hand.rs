//! Foils and techniques worked a second way: whole numbers for layouts, a table for techniques, what a decision was made of.

use super::head::{cm, level, percent};
use foilwork::{
    colour::ProductKind,
    hair::{GrowthRate, Weeks},
    head::{
        ClassQuestion, ExtraStep, InFoils, Layout, LayoutError, Panel, Practice, Profile, ServiceClass, Softness,
        Taking, Technique, TechniqueQuestion, Treated, by_hand, choose_technique, line_shows_after, service_class,
        trace_product_class, trace_service_class, trace_technique,
    },
    quantity::{Length, Quantity, Share},
    source::Interval,
};

/// A size and its bounds in thousandths of a millimetre, so that a division leaves its true rest.
type Um = [u64; 3];

fn length(um: u64) -> Length {
    Length::from_mm(um as f64 / 1000.0).unwrap()
}

fn sizes(um: Um) -> Interval<Length> {
    let [low, best, high] = um.map(length);
    Interval::ordered(low, best, high)
}

fn hull<T: Copy + PartialOrd>(mut of: [T; 3], best: T) -> [T; 3] {
    of.sort_by(|a, b| a.partial_cmp(b).unwrap());
    [of[0], best, of[2]]
}

/// What the guide to foils says, in whole numbers: floor((W + g) / (p + g)) strands, floor((H + U) / (D + U)) rows.
fn by_counting(width: u64, height: u64, [pick, gap, depth, thick, left]: [u64; 5], slice: bool) -> [f64; 5] {
    let pick = pick.min(width);
    let picks = if slice { 1 } else { (width + gap) / (pick + gap) };
    let lifted = if slice { width * thick } else { picks * pick * depth.min(thick) } as f64;
    let (of_subsection, of_panel) = (lifted / (width * thick) as f64, lifted / (width * (thick + left)) as f64);
    [picks as f64, lifted / 1e8, 100.0 * of_subsection, 100.0 * of_panel, ((height + left) / (thick + left)) as f64]
}

/// Every column of a layout with its bounds, over sizes that divide the panel exactly and sizes that do not. The most hair of the panel is in
/// thick strands with small gaps, deep in thin subsections that leave little between; that of one subsection in thick ones.
#[test]
fn a_layout_is_what_counting_in_whole_numbers_gives() {
    let about = |um: u64| [um / 4 * 3, um, um / 4 * 5];
    let mut cases = 0;
    for (width, height) in [(80_000, 60_000), (81_000, 57_000), (24_000, 12_000), (5_000, 3_200)] {
        for pick in [about(3_000), [3_000; 3], [2_400, 3_000, 6_000]] {
            for gap in [about(3_000), [0; 3], [1_000, 4_000, 4_000]] {
                for (thick, depth) in [
                    (about(3_200), about(3_200)),
                    ([3_000; 3], [3_000; 3]),
                    ([2_000, 3_000, 3_000], [1_000, 2_500, 5_000]),
                ] {
                    for left in [about(3_200), [0; 3], [3_000; 3]] {
                        for slice in [false, true] {
                            for foil in [None, Some(width), Some(width / 3), Some(width / 3 - 1_000)] {
                                let weave = Taking::Weave { pick: sizes(pick), gap: sizes(gap), depth: sizes(depth) };
                                let taking = if slice { Taking::Slice } else { weave };
                                let layout = Layout {
                                    subsection: sizes(thick),
                                    left_between: sizes(left),
                                    taking,
                                    foil_width: foil.map(length),
                                };
                                let found = layout.on(Panel { width: length(width), height: length(height) }).unwrap();
                                let of = |[p, g, d, t, u]: [usize; 5]| {
                                    by_counting(width, height, [pick[p], gap[g], depth[d], thick[t], left[u]], slice)
                                };
                                let across = foil.map_or(1, |foil| width.div_ceil(foil));
                                is_counted(&found, of, across as u32);
                                cases += 1;
                            }
                        }
                    }
                }
            }
        }
    }
    assert!(cases > 2_000, "{cases}");
}

fn is_counted(found: &InFoils, of: impl Fn([usize; 5]) -> [f64; 5], across: u32) {
    let (best, most, least) = (of([1; 5]), of([2, 0, 2, 0, 0]), of([0, 2, 0, 2, 2]));
    let near = |got: [f64; 3], want: [f64; 3]| {
        assert!(got.iter().zip(want).all(|(got, want)| (got - want).abs() < 1e-9), "{got:?} for {want:?}");
    };
    let column = |i: usize| hull([least[i], best[i], most[i]], best[i]);
    near(found.share_of_subsection.to_array().map(Share::percent), column(2));
    near(found.share_of_panel.to_array().map(Share::percent), column(3));
    near(found.foils.to_array().map(f64::from), column(4).map(|rows| rows * f64::from(across)));
    let picks = hull([of([2; 5])[0], best[0], of([0; 5])[0]], best[0]);
    near(found.picks.to_array().map(f64::from), picks);
    // Of one subsection: thin strands with wide gaps, shallow in thin subsections, and the other way round.
    let lifted = hull([of([0, 2, 0, 0, 2])[1], best[1], of([2, 0, 2, 2, 0])[1]], best[1]);
    near(found.lifted.to_array().map(|area| area.cm2()), lifted);
    assert_eq!(found.across, across);
}

/// What fits exactly is taken, and of every size that is needed some; each refusal by its name, in the caller's words where there are any.
#[test]
fn a_layout_fits_to_the_last_millimetre() {
    let panel = Panel { width: cm(8.0), height: cm(6.0) };
    let weave = Layout::weave(cm(0.3).into(), cm(0.3).into()).with_subsection(cm(0.6).into());
    for fits in [
        Layout { foil_width: Some(cm(8.0)), ..weave },
        Layout::slice().with_subsection(cm(6.0).into()),
        Layout::weave(cm(8.0).into(), cm(0.3).into()).with_subsection(cm(0.6).into()),
        weave.with_subsection(cm(6.0).into()),
    ] {
        assert!(fits.on(panel).is_ok(), "{fits:?}");
    }
    let deep = |depth: f64| {
        let taking = Taking::Weave { pick: cm(0.3).into(), gap: cm(0.0).into(), depth: cm(depth).into() };
        Layout { taking, ..weave }
    };
    assert!(deep(0.6).on(panel).is_ok() && deep(0.601).on(panel).is_err());
    let zero = |layout: Layout, panel: Panel| layout.on(panel).unwrap_err();
    for (refused, field) in [
        (zero(weave, Panel { width: cm(0.0), ..panel }), "panel_width"),
        (zero(weave, Panel { height: cm(0.0), ..panel }), "panel_height"),
        (zero(weave.with_subsection(cm(0.0).into()), panel), "subsection"),
        (zero(Layout { foil_width: Some(cm(0.0)), ..weave }, panel), "foil_width"),
        (zero(Layout::weave(cm(0.0).into(), cm(0.3).into()), panel), "pick"),
        (zero(deep(0.0), panel), "depth"),
    ] {
        assert_eq!(refused, LayoutError::Zero { field });
        assert_eq!(refused.to_string(), format!("`{field}` is 0: a foil needs some (leave it out for the usual one)"));
    }
    let names = ["F", "W", "H", "S", "P", "D"];
    let told = |layout: Layout| layout.on(panel).unwrap_err().told_with(names);
    assert_eq!(
        told(Layout { foil_width: Some(cm(9.0)), ..weave }),
        "F 9 cm is wider than W 8 cm: it would lie on its neighbour (fold the foil to 8 cm)"
    );
    assert_eq!(
        told(Layout::slice().with_subsection(cm(6.1).into())),
        "S 61 mm is thicker than H 6 cm: not one foil fits (take thinner subsections)"
    );
    assert_eq!(told(deep(0.7)), "D 7 mm is more than S 6 mm: the comb would lift the hair behind it (at most 6 mm)");
}

/// By hand: a quarter off either way; an eighth of an inch is 3.175 mm. What is made of a layout keeps what it does not change.
#[test]
fn layouts_are_made_of_one_another() {
    let mm = |of: Interval<Length>| of.to_array().map(|size| (size.mm() * 1e6).round() / 1e6);
    let strand = by_hand(cm(0.4));
    assert_eq!(mm(strand), [3.0, 4.0, 5.0]);
    let weave = Layout::weave(strand, cm(0.2).into());
    let eighth = [2.38125, 3.175, 3.96875];
    assert_eq!((mm(weave.subsection), mm(weave.left_between), weave.foil_width), (eighth, eighth, None));
    let Taking::Weave { pick, gap, depth } = weave.taking else { panic!("a weave") };
    assert_eq!((mm(pick), mm(gap), mm(depth)), ([3.0, 4.0, 5.0], [2.0; 3], eighth));
    let wide = Layout { foil_width: Some(cm(7.0)), ..weave }.with_subsection(cm(0.6).into());
    assert_eq!((mm(wide.subsection), mm(wide.left_between), wide.foil_width), ([6.0; 3], eighth, Some(cm(7.0))));
    let Taking::Weave { pick, gap, depth } = wide.taking else { panic!("a weave") };
    assert_eq!((mm(pick), mm(gap), mm(depth)), ([3.0, 4.0, 5.0], [2.0; 3], [6.0; 3]));
    let tight = wide.back_to_back();
    assert_eq!((mm(tight.left_between), tight.subsection, tight.taking), ([0.0; 3], wide.subsection, wide.taking));
    assert_eq!(Layout::slice().with_subsection(cm(0.6).into()).taking, Taking::Slice);
    // Foils and strands of a row come about one by one; slices have no strands.
    let panel = Panel { width: cm(8.0), height: cm(6.0) };
    let told = |layout: Layout| {
        let trail = layout.trail_on(panel).unwrap();
        trail.iter().map(|one| (one.what.clone(), one.value.clone(), one.inputs.len())).collect::<Vec<_>>()
    };
    let found = weave.on(panel).unwrap();
    let (foils, strands) = (found.foils.best().to_string(), found.picks.best().to_string());
    assert_eq!(told(weave), [("foils".to_owned(), foils, 5), ("strands in a row".to_owned(), strands, 3)]);
    assert_eq!(told(Layout::slice()).len(), 1);
    assert!(Layout::slice().trail_on(Panel { width: cm(0.0), ..panel }).is_err());
}

/// Shares and practice of each technique: common practice. Regrowth is no choice for lengths.
const REACH: [(Technique, f64, f64, Practice); 6] = [
    (Technique::Weave, 5.0, 60.0, Practice::Practised),
    (Technique::Slice, 30.0, 100.0, Practice::Plain),
    (Technique::BackComb, 10.0, 70.0, Practice::Practised),
    (Technique::Block, 90.0, 100.0, Practice::Plain),
    (Technique::Freehand, 10.0, 70.0, Practice::Demanding),
    (Technique::FreehandInFoil, 20.0, 90.0, Practice::Demanding),
];

fn sharp(softness: Softness) -> u8 {
    match softness {
        Softness::Line => 2,
        Softness::Soft => 1,
        _ => 0,
    }
}

/// Every wish by the rule said again: what starts too sharp, shows too soon or does not take such a share is out, and of the rest the
/// plainest is taken, the first of two alike; each other one has its reason.
#[test]
fn the_plainest_technique_that_does_it_is_taken() {
    let growth = Interval::exact(GrowthRate::nearest(1.25));
    let shares = [
        None,
        Some(4.9),
        Some(5.0),
        Some(10.0),
        Some(29.9),
        Some(30.0),
        Some(60.0),
        Some(60.1),
        Some(70.0),
        Some(90.0),
        Some(100.0),
    ];
    let own = Profile { covered: percent(40.0).into(), start: cm(6.0).into(), transition: cm(5.0).into() };
    let (mut none, mut kept) = (0, 0);
    for start in [Softness::Line, Softness::Soft, Softness::Diffuse] {
        // By hand: at 1.25 cm in a month 1, 2.5 and 6 cm take so many weeks; these and a little more.
        let shows = [0.0, 0.5, 4.0]
            .map(|over| line_shows_after(&Profile { transition: cm(over).into(), ..own }, growth).value.best());
        for upkeep in shows
            .into_iter()
            .flat_map(|weeks| [weeks, Weeks::nearest(weeks.weeks() + 0.01)])
            .chain([Weeks::nearest(0.0)])
        {
            for taken in shares {
                for (length, planned) in [
                    (40.0, None),
                    (10.0, None),
                    (40.0, Some((Technique::Weave, own))),
                    (40.0, Some((Technique::Regrowth, own))),
                ] {
                    let taken = taken.map(percent);
                    let wish = TechniqueQuestion { start, upkeep, taken, length: cm(length), growth, planned };
                    let found = choose_technique(&wish);
                    let why = |(technique, least, most, _): (Technique, f64, f64, Practice)| {
                        let planned = planned.filter(|(planned, _)| *planned == technique);
                        let profile = planned.map_or_else(|| technique.profile(cm(length)).value, |(_, own)| own);
                        let shows = line_shows_after(&profile, growth).value.best();
                        let softness = profile.softness();
                        if sharp(softness) > sharp(start) {
                            return Some(format!("its start is a sharper one, {softness}"));
                        }
                        if shows.weeks() < upkeep.weeks() {
                            return Some(format!("its regrowth shows after {shows:.0}"));
                        }
                        let outside = taken.is_some_and(|taken| taken.percent() < least || taken.percent() > most);
                        outside.then(|| format!("it takes {least} to {most} % of the hair"))
                    };
                    let mut able: Vec<_> = REACH.into_iter().filter(|one| why(*one).is_none()).collect();
                    able.sort_by_key(|(.., practice)| Practice::ALL.iter().position(|one| one == practice));
                    let best = able.first().map(|(technique, .., practice)| (*technique, *practice));
                    assert_eq!(
                        (found.technique, found.practice),
                        (best.map(|one| one.0), best.map(|one| one.1)),
                        "{wish:?}"
                    );
                    assert_eq!(found.rejected.len(), if best.is_some() { 5 } else { 6 });
                    for one in &found.rejected {
                        let reach = REACH.into_iter().find(|reach| reach.0 == one.technique).unwrap();
                        let told = why(reach);
                        assert_eq!(one.does_it, told.is_none(), "{one:?}: {wish:?}");
                        assert_eq!(one.why, told.unwrap_or_else(|| "a plainer one does it as well".to_owned()));
                    }
                    assert_eq!(found.line_shows_after.is_some(), best.is_some());
                    if best.is_some() { kept += 1 } else { none += 1 }
                }
            }
        }
    }
    assert!(none > 20 && kept > 20, "{none} {kept}");
}

/// How it was decided on: what was asked, in the order of the question, and what came of it.
#[test]
fn choices_tell_what_they_were_made_of() {
    let wish = TechniqueQuestion {
        start: Softness::Diffuse,
        upkeep: Weeks::nearest(200.0),
        taken: None,
        length: cm(40.0),
        growth: Interval::exact(GrowthRate::nearest(1.25)),
        planned: None,
    };
    let inputs = |of: &foilwork::source::TracedResult| of.inputs.iter().map(|one| one.what.clone()).collect::<Vec<_>>();
    let none = trace_technique(&wish);
    assert_eq!(none.value, "none", "nothing lasts for four years");
    assert_eq!(inputs(&none), ["start at the sharpest", "regrowth must not show for", "length of the hair", "growth"]);
    assert_eq!(
        inputs(&trace_technique(&TechniqueQuestion { taken: Some(percent(50.0)), ..wish }))[2],
        "share to be lighter"
    );
    let class = ClassQuestion {
        from: level(5.0),
        to: level(9.0),
        artificial: true,
        lightened: false,
        white: percent(20.0),
        planned: Some(ProductKind::Lightener),
    };
    let told = trace_product_class(&class);
    let values: Vec<_> = told.inputs.iter().map(|one| one.value.as_str()).collect();
    assert_eq!(
        (told.value.as_str(), values.as_slice()),
        ("lightener", ["5", "9", "yes", "no", "20", "lightener"].as_slice())
    );
    assert_eq!(trace_product_class(&ClassQuestion { planned: None, ..class }).inputs.len(), 5);
    let treated = [Treated { technique: Technique::Weave, area: percent(39.0) }];
    let service = trace_service_class(&treated);
    assert_eq!((service.value.as_str(), inputs(&service)), ("partial", vec!["area, weave".to_owned()]));
    assert_eq!(
        service.formula,
        "regrowth where nothing else is done; else by the sum of the areas: partial below 40 %, half below 75 %, full from there"
    );
    // Nothing is part of a head, and new growth beside anything else is no service of its own.
    assert_eq!(service_class(&[]), ServiceClass::Partial);
    let mixed = [(Technique::Regrowth, 30.0), (Technique::Weave, 20.0)];
    let of = |(technique, area)| Treated { technique, area: percent(area) };
    assert_eq!(service_class(&mixed.map(of)), ServiceClass::Half);
}

/// Which lie in foil and which hold lightener, by their names; on hair of half the length from which a start no longer moves, start and
/// transition are half of what they are on long hair, and what is covered is the same.
#[test]
fn techniques_on_short_hair_shrink_with_it() {
    for technique in Technique::ALL {
        let in_foil = !matches!(technique, Technique::Block | Technique::Freehand | Technique::Regrowth);
        assert_eq!(technique.is_in_foil(), in_foil, "{technique}");
        let [long, longer, half] = [20.0, 55.0, 10.0].map(|length| technique.profile(cm(length)).value);
        assert_eq!(long, longer);
        assert_eq!(half.covered, long.covered);
        for (short, long) in [(half.start, long.start), (half.transition, long.transition)] {
            let both = short.to_array().into_iter().zip(long.to_array());
            assert!(both.into_iter().all(|(short, long)| (2.0 * short.cm() - long.cm()).abs() < 1e-12), "{technique}");
        }
    }
    assert_eq!(Technique::BackComb.profile(cm(30.0)).value.start.to_array().map(Length::cm), [3.0, 5.0, 8.0]);
    for step in [ExtraStep::CleanFirst, ExtraStep::PreLighten, ExtraStep::PreSoften, ExtraStep::PrePigment] {
        assert_eq!(step.lightens(), matches!(step, ExtraStep::CleanFirst | ExtraStep::PreLighten), "{step:?}");
    }
}
