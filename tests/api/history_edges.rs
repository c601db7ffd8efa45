//! Kept records at their edges: what care says, what sums and lessons leave out, and how their figures are worked.

use super::{
    history::soft,
    record::{min, of},
};
use foilwork::{
    colour::Level,
    history::{
        GroupBy, KeptPart, KeptRecord, KeptSection, home_care, keep, left_over_wrong, lessons, read_records,
        read_records_csv, strand_readings, summarise, trace_lessons, trace_summaries,
    },
    quantity::Mass,
    record::{FoilHeat, LogEntry, Noted, replay},
    service::{
        Plan,
        shape::{Elasticity, Porosity},
    },
};
use rstest::rstest;

const RECORDS: &str = include_str!("../../examples/juniper_and_tide_records.jsonl");

fn strand(elasticity: Elasticity, section: &str) -> LogEntry {
    LogEntry { elasticity: Some(elasticity), ..of(50.0, Noted::Elasticity, section) }
}

fn empty() -> KeptRecord {
    read_records("{\"format\":1,\"on\":\"2026-01-01\",\"title\":\"none\"}\n").records.remove(0)
}

fn nape() -> KeptSection {
    KeptSection { name: "nape".to_owned(), ..KeptSection::default() }
}

fn line(section: KeptSection) -> KeptRecord {
    KeptRecord { section: vec![section], ..empty() }
}

const ALONE: &str = "Dry in the air, or at low heat from a distance.";
const GENTLY: &str = "Little heat: dry gently, iron seldom and not hot.";
const DOCTOR: &str = "Have the skin seen by a doctor, and put no colour on it until then.";

/// What is said follows from the strand that was worst, from the strain and from what happened to the guest; a foil that swelled is no
/// matter of the skin, and a strand of what is not of the service says nothing.
#[rstest]
#[case::nothing(&[], None, &[GENTLY, "Stretch a damp strand at the next visit before anything else."], &[ALONE, DOCTOR])]
#[case::good(&[strand(Elasticity::Good, "nape")], Some(Elasticity::Good), &[GENTLY], &[ALONE, DOCTOR, "Stretch a damp"])]
#[case::reduced(
    &[strand(Elasticity::Good, "nape"), strand(Elasticity::Reduced, "crown")], Some(Elasticity::Reduced),
    &[ALONE, "No second service with peroxide"], &[GENTLY, "No lightener", "Stretch a damp"]
)]
#[case::poor(
    &[strand(Elasticity::Poor, "nape"), strand(Elasticity::Good, "crown")], Some(Elasticity::Poor),
    &[ALONE, "No lightener", "No hot iron"], &[GENTLY, "No second service", "Stretch a damp", DOCTOR]
)]
#[case::of_something_else(&[strand(Elasticity::Poor, "beard")], None, &[GENTLY], &[ALONE, "No lightener"])]
#[case::foil(
    &[LogEntry { foil: Some(FoilHeat::Swollen), ..of(20.0, Noted::Foil, "nape") }], None, &[GENTLY], &[DOCTOR]
)]
#[case::burning(
    &[LogEntry { comfort: Some(foilwork::record::Comfort::Burning), ..LogEntry::new(min(20.0), Noted::Comfort) }], None,
    &[DOCTOR], &["No lightener"]
)]
#[case::incident(
    &[LogEntry { note: Some("a drop in the eye".to_owned()), ..LogEntry::new(min(20.0), Noted::Incident) }], None,
    &[DOCTOR], &["No lightener"]
)]
fn care_follows_from_what_was_noted(
    #[case] log: &[LogEntry],
    #[case] worst: Option<Elasticity>,
    #[case] said: &[&str],
    #[case] unsaid: &[&str],
) {
    let care = home_care(&soft(), &replay(log));
    let has = |text: &&&str| care.advice.iter().any(|one| one.text.starts_with(**text));
    assert_eq!(care.elasticity, worst);
    assert_eq!(said.iter().find(|text| !has(text)), None, "{:?}", care.advice);
    assert_eq!(unsaid.iter().find(|text| has(text)), None, "{:?}", care.advice);
    assert_eq!(care.advice[0].text == DOCTOR, said.contains(&DOCTOR), "the most urgent first");
}

/// Open hair lets colour go sooner; what was not lightened is not combed as if it were.
#[test]
fn care_follows_from_the_hair() {
    let says =
        |plan: &Plan, text: &str| home_care(plan, &replay(&[])).advice.iter().any(|one| one.text.starts_with(text));
    for (porosity, sooner) in [
        (None, false),
        (Some(Porosity::Low), false),
        (Some(Porosity::Normal), false),
        (Some(Porosity::High), true),
        (Some(Porosity::Uneven), true),
    ] {
        let mut plan = soft();
        plan.hair.porosity = porosity;
        assert_eq!(says(&plan, "Wash less often"), sooner, "{porosity:?}");
    }
    let mut plain = soft();
    assert!(says(&plain, "Comb it wet") && says(&plain, "A rich conditioner"));
    plain.lift.clear();
    let care = home_care(&plain, &replay(&[]));
    assert!(!says(&plain, "Comb it wet") && !says(&plain, "A rich conditioner") && !says(&plain, "Stretch a damp"));
    assert_eq!(care.condition, "no strand was tested after the service; nothing was lightened");
    let good = home_care(&plain, &replay(&[strand(Elasticity::Good, "nape")]));
    assert_eq!(good.condition, "every strand that was tested stretched and returned; nothing was lightened");
    let weak = home_care(&plain, &replay(&[strand(Elasticity::Reduced, "nape")]));
    assert_eq!(weak.condition, "elasticity reduced on the worst strand that was tested; nothing was lightened");
}

/// A scale shows hundredths: as much left over as was weighed, and what rounding adds, is no slip of the pen; the next hundredth is. By
/// the plan 46.4 g are made for the nape.
#[rstest]
#[case(Some(50.0), 50.0, false)]
#[case(Some(50.0), 50.004, false)]
#[case(Some(50.0), 50.01, true)]
#[case(None, 46.4, false)]
#[case(None, 46.42, true)]
fn more_left_over_than_was_mixed_is_told(#[case] weighed: Option<f64>, #[case] left: f64, #[case] wrong: bool) {
    let grams = |what, g: f64| LogEntry { mass: Some(Mass::from_g(g).unwrap()), ..of(1.0, what, "nape") };
    let mut log: Vec<LogEntry> = weighed.map(|g| grams(Noted::Weighed, g)).into_iter().collect();
    log.push(grams(Noted::LeftOver, left));
    let (plan, so_far) = (soft(), replay(&log));
    assert_eq!(left_over_wrong(&plan, &so_far).len(), usize::from(wrong));
    let kept = keep(&plan, &so_far);
    assert_eq!(kept.left_over_cost.is_none() && kept.section[0].left_over_g.is_none(), wrong, "{kept:?}");
}

/// A foil that was hot and cooled is remembered, and what the plan said stop to; a text is cut at two hundred signs, and shows it.
#[test]
fn what_is_minded_the_next_time_is_kept() {
    let foil = |at, heat| LogEntry { foil: Some(heat), ..of(at, Noted::Foil, "nape") };
    let kept = |log: &[LogEntry]| keep(&soft(), &replay(log)).incident;
    assert_eq!(kept(&[foil(5.0, FoilHeat::Hot), foil(9.0, FoilHeat::Cool)]), ["nape: a foil was hot"]);
    assert!(kept(&[foil(5.0, FoilHeat::Cool)]).is_empty());
    let hot = kept(&[foil(5.0, FoilHeat::Hot)]);
    assert!(hot.iter().all(|text| !text.ends_with(": a foil was hot")), "one that is hot now is stopped for: {hot:?}");
    let note = |signs: usize| LogEntry { note: Some("é".repeat(signs)), ..LogEntry::new(min(9.0), Noted::Incident) };
    assert_eq!(kept(&[note(200)])[0], "é".repeat(200));
    assert_eq!(kept(&[note(201)])[0], "é".repeat(199) + "…");
}

/// The most used first, as much of each as in all its sections; planned grams count where nobody weighed, and are counted.
#[test]
fn what_was_used_is_added_by_product() {
    let part = |product: &str, mass_g| KeptPart { product: product.to_owned(), mass_g };
    let section = |weighed_g, part| KeptSection { weighed_g, part, ..nape() };
    let records = [
        line(section(Some(30.0), vec![part("powder", 10.0), part("developer", 20.0)])),
        KeptRecord { title: "two".to_owned(), ..line(section(None, vec![part("powder", 15.0), part("bond", 1.0)])) },
        KeptRecord { title: "three".to_owned(), ..line(section(None, vec![])) },
    ];
    let found = summarise(&records, GroupBy::All).remove(0);
    assert_eq!(found.used, [part("powder", 25.0), part("developer", 20.0), part("bond", 1.0)]);
    assert_eq!((found.services, found.as_planned, found.weighed_g, found.without_guest), (3, 1, Some(30.0), 3));
}

/// Waste is of the sections that say both: grams weighed alone, or left over alone, say nothing of it, and nothing weighed has none.
#[test]
fn waste_is_of_sections_that_say_both() {
    let section = |weighed_g, left_over_g| KeptSection { weighed_g, left_over_g, ..nape() };
    let all = |section: Vec<KeptSection>| summarise(&[KeptRecord { section, ..empty() }], GroupBy::All).remove(0);
    let found = all(vec![section(Some(80.0), Some(4.0)), section(Some(100.0), None), section(None, Some(7.0))]);
    assert_eq!((found.weighed_g, found.left_over_g, found.waste_percent), (Some(180.0), Some(11.0), Some(5.0)));
    assert_eq!(all(vec![section(Some(0.0), Some(0.0))]).waste_percent, None);
    let record = |on: &str, section| KeptRecord { on: on.to_owned(), ..line(section) };
    let of = |records: &[KeptRecord]| lessons(records).waste;
    assert!(of(&[line(section(Some(0.0), Some(0.0)))]).is_none() && of(&[line(section(Some(9.0), None))]).is_none());
    // What weighed nothing is no service of the trend.
    let found = of(&[
        record("2026-01-01", section(Some(0.0), Some(0.0))),
        record("2026-01-02", section(Some(50.0), Some(5.0))),
    ]);
    let found = found.unwrap();
    assert_eq!((found.services, found.waste_percent), (1, 10.0));
    // Three of one day have no slope.
    let day =
        [1.0, 2.0, 3.0].map(|left| KeptRecord { title: format!("{left}"), ..line(section(Some(50.0), Some(left))) });
    let found = of(&day).unwrap();
    assert_eq!((found.services, found.change_percent_points), (3, None));
    assert!(found.text.starts_with("too few services for a trend"));
}

/// By hand: figures without a time, without foils or of no gram expected are none; a level read with its toner on counts as such only
/// where nothing was read before it, and where it was lightened.
#[test]
fn figures_that_say_nothing_are_no_lessons() {
    let of = |section: KeptSection| lessons(&[line(section)]);
    let timed = |foils, apply_min| of(KeptSection { foils, apply_min, ..nape() }).foils.len();
    assert_eq!(
        [timed(Some(0), Some(9.0)), timed(Some(3), None), timed(None, Some(9.0)), timed(Some(3), Some(0.0))],
        [0; 4]
    );
    assert_eq!(timed(Some(1), Some(9.0)), 1);
    let used = |expected_g, weighed_g, left_over_g| {
        of(KeptSection { expected_g, weighed_g, left_over_g, ..nape() })
            .demand
            .iter()
            .map(|one| one.factor.mean)
            .collect::<Vec<_>>()
    };
    assert_eq!(used(Some(40.0), Some(50.0), Some(2.0)), [1.2]);
    assert!(used(Some(0.0), Some(50.0), Some(2.0)).is_empty() && used(Some(40.0), Some(2.0), Some(2.0)).is_empty());
    assert!(used(Some(40.0), None, Some(2.0)).is_empty() && used(Some(40.0), Some(50.0), None).is_empty());
    let lit =
        read_records(RECORDS).records.into_iter().flat_map(|record| record.section).find(|one| one.mixture.is_some());
    let lit = lit.unwrap();
    let read = |mixture: bool, result_level, toned_level| {
        let mixture = lit.mixture.clone().filter(|_| mixture);
        of(KeptSection { mixture, result_level, toned_level, ..nape() }).read_toned
    };
    assert_eq!(
        [read(true, None, Some(8.0)), read(true, Some(8.5), Some(8.0)), read(false, None, Some(8.0))],
        [1, 0, 0]
    );
    assert_eq!(read(true, None, None), 0);
    let off = |target_level, result_level| {
        of(KeptSection { target_level, result_level, ..nape() }).level_off.map(|one| one.mean)
    };
    assert_eq!([off(Some(9.0), Some(8.5)), off(None, Some(8.5)), off(Some(9.0), None)], [Some(-0.5), None, None]);
}

/// What is worked with a figure each comes to its mean; of more than a hundred the number alone is told.
#[test]
fn lessons_list_their_figures_up_to_a_hundred() {
    let of = |count: u32| {
        let one = |place: u32| KeptRecord {
            title: format!("{place}"),
            ..line(KeptSection {
                foils: Some(10),
                apply_min: Some(13.0),
                target_level: Some(9.0),
                result_level: Some(8.5),
                ..nape()
            })
        };
        trace_lessons(&(0..count).map(one).collect::<Vec<_>>())
    };
    for (count, listed) in [(1, 1), (2, 2), (100, 100), (101, 0)] {
        let trail = of(count);
        let [foils, off] = trail.as_slice() else { panic!("{trail:?}") };
        assert_eq!((foils.inputs.len(), off.inputs.len()), (1 + listed, 1 + listed), "{count}");
        assert_eq!(foils.worked.is_some(), listed > 0);
        assert_eq!(foils.inputs[0].value, count.to_string());
        assert!(
            foils.what == "minutes for a foil, nobody named" && off.what == "level that came out less level wanted"
        );
    }
    let two = of(2);
    assert_eq!(two[0].worked.as_deref(), Some("(1.3 x 1.3) ^ (1 / 2)"));
    assert_eq!(two[1].worked.as_deref(), Some("((-0.5) + (-0.5)) / 2"));
    assert_eq!(of(1)[1].worked.as_deref(), Some("-0.5"));
    assert!(of(1)[0].bounds.is_none() && two[0].formula != two[1].formula && of(1)[0].formula == of(1)[1].formula);
}

/// A figure of zero has no logarithm: it is no figure of a geometric mean, and is not listed.
#[test]
fn a_figure_of_zero_is_not_listed() {
    let one = |title: &str, apply_min| KeptRecord {
        title: title.to_owned(),
        ..line(KeptSection { foils: Some(10), apply_min: Some(apply_min), ..nape() })
    };
    let trail = trace_lessons(&[one("a", 0.0), one("b", 13.0), one("c", 20.0)]);
    assert_eq!(trail[0].worked.as_deref(), Some("(1.3 x 2) ^ (1 / 2)"));
    assert_eq!(trail[0].inputs.len(), 3);
    // An even level is a difference all the same.
    let level = |title: &str, result| KeptRecord {
        title: title.to_owned(),
        ..line(KeptSection { target_level: Some(9.0), result_level: Some(result), ..nape() })
    };
    assert_eq!(trace_lessons(&[level("a", 9.0), level("b", 9.5)])[0].worked.as_deref(), Some("((0) + (0.5)) / 2"));
}

/// Waste, profit and margin of each group, each of its own inputs; a group without a name says so.
#[test]
fn sums_are_traced_to_their_inputs() {
    let section = KeptSection { weighed_g: Some(80.0), left_over_g: Some(4.0), ..nape() };
    let paid = |price: &str| KeptRecord {
        currency: Some("EUR".to_owned()),
        cost: Some("40.00".to_owned()),
        price: Some(price.to_owned()),
        ..line(section.clone())
    };
    let trail = trace_summaries(&[paid("50.00")], GroupBy::Colourist);
    let told: Vec<(&str, &str)> = trail.iter().map(|one| (one.what.as_str(), one.value.as_str())).collect();
    assert_eq!(told, [("not stated: waste", "5"), ("not stated: profit", "10.00"), ("not stated: margin", "20")]);
    let inputs: Vec<(&str, &str)> = trail[0].inputs.iter().map(|one| (one.what.as_str(), one.value.as_str())).collect();
    assert_eq!(inputs, [("left over", "4"), ("weighed", "80")]);
    // Of a price of nothing there is no margin.
    assert_eq!(trace_summaries(&[paid("0.00")], GroupBy::Service).len(), 2);
    assert_eq!(summarise(&[paid("0.00")], GroupBy::All)[0].money[0].margin_percent, None);
}

/// A reading needs a time above zero, levels before and after, and one application; its product is the first of the bowl.
#[test]
fn a_reading_of_a_record_needs_all_its_fields() {
    let record =
        read_records(RECORDS).records.into_iter().find(|record| !strand_readings(&[(*record).clone()]).is_empty());
    let record = record.unwrap();
    let of = |change: &dyn Fn(&mut KeptSection)| {
        let mut changed = record.clone();
        changed.section.truncate(1);
        change(&mut changed.section[0]);
        strand_readings(&[changed]).len()
    };
    assert_eq!(of(&|_| {}), 1);
    assert_eq!(of(&|one| one.on_hair_min = Some(0.0)), 0);
    assert_eq!(of(&|one| one.on_hair_min = None), 0);
    assert_eq!(of(&|one| one.result_level = None), 0);
    assert_eq!(of(&|one| one.from_level = None), 0);
    assert_eq!(of(&|one| one.applications = Some(2)), 0);
    assert_eq!(of(&|one| one.applications = Some(1)), 1);
    assert_eq!(of(&|one| one.mixture = None), 0);
    let first = &record.section[0];
    let found = &strand_readings(std::slice::from_ref(&record))[0];
    assert_eq!(found.product.as_deref(), first.part.first().map(|part| part.product.as_str()));
    assert_eq!(
        (found.before, Some(found.after)),
        (Level::new(first.from_level.unwrap()).unwrap(), first.result_level.map(|level| Level::new(level).unwrap()))
    );
}

/// Rows of one number that follow each other are one service; without a number each row is its own, and a row that cannot be read is told
/// with its line.
#[test]
fn rows_of_a_table_hang_together_by_their_number() {
    let of = |rows: &str| read_records_csv(&format!("record,format,on,title,section,weighed_g\n{rows}"));
    let counts = |rows: &str| of(rows).records.iter().map(|one| one.section.len()).collect::<Vec<_>>();
    let row = |number: &str, section: &str| format!("{number},1,2026-11-25,gloss,{section},75\n");
    assert_eq!(counts(&(row("1", "nape") + &row("1", "crown") + &row("2", "nape"))), [2, 1]);
    assert_eq!(counts(&(row("", "nape") + &row("", "crown"))), [1, 1]);
    assert_eq!(counts("1,1,2026-11-25,gloss,,\n"), [0]);
    let wrong = of(&(row("1", "nape") + "2,1,2026-13-25,gloss,nape,75\n" + &row("3", "nape")));
    assert_eq!((wrong.records.len(), wrong.problems.len(), wrong.problems[0].line), (2, 1, 3));
    let text = of("1,1,2026-11-25,gloss,nape,much\n");
    assert!(text.records.is_empty() && text.problems[0].message.contains("much"), "{:?}", text.problems);
}
