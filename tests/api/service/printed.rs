//! What the sheets print, held against the plan that they print: which sentence, how many rows, what stands above what.

use super::{
    base::{changed, fine, only_lightener},
    consult::{consulted, staged, with},
};
use foilwork::{
    finding::{Finding, Reason, Rule, Verdict},
    service::{
        Plan, ServiceFile, plan,
        shape::{AgreedEntry, Party},
    },
    sheet::{SheetPart, bench_sheet, bench_sheet_of, consultation_sheet, day_sheet, guest_page},
};
use rstest::rstest;

fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The base with these findings and no others.
fn found(verdicts: &[(Rule, Verdict)]) -> Plan {
    let mut plan = changed(fine(), |_| ());
    plan.findings = verdicts
        .iter()
        .map(|(rule, verdict)| Finding::new(*rule, *verdict, format!("told of {rule}"), Reason::assumed()))
        .collect();
    plan.blocked = verdicts.iter().any(|(_, verdict)| *verdict == Verdict::Stop);
    plan
}

const STOP: (Rule, Verdict) = (Rule::Scalp, Verdict::Stop);
const WARN: (Rule, Verdict) = (Rule::Lift, Verdict::Warning);
const OPEN: (Rule, Verdict) = (Rule::Law, Verdict::NotJudged);
const NOTE: (Rule, Verdict) = (Rule::Pace, Verdict::Note);
const PASSED: (Rule, Verdict) = (Rule::Law, Verdict::Passed);

/// What stands above the checks is what the sheet has above them: stops always, warnings where the chair is on it.
#[rstest]
#[case(&[STOP, WARN], true, "What says STOP or WARN stands above.")]
#[case(&[STOP, WARN], false, "What says STOP stands above.")]
#[case(&[STOP], true, "What says STOP stands above.")]
#[case(&[WARN], true, "What says WARN stands above.")]
#[case(&[WARN], false, "")]
#[case(&[OPEN], true, "")]
fn what_stands_above_the_checks(#[case] of: &[(Rule, Verdict)], #[case] chair: bool, #[case] want: &str) {
    let parts = if chair { vec![SheetPart::Chair, SheetPart::Checks] } else { vec![SheetPart::Checks] };
    let sheet = flat(&bench_sheet_of(&found(of), &parts));
    assert_eq!(sheet.contains("stands above."), !want.is_empty(), "{sheet}");
    assert!(sheet.contains(want), "{sheet}");
    for (rule, verdict) in of {
        let said = flat(&format!("[{verdict}] {rule}: told of {rule}"));
        // An open question is one line at the chair, and itself among the checks.
        assert_eq!(sheet.matches(&said).count(), 1, "{said}: {sheet}");
    }
}

/// What a choice of parts leaves out is counted, one or many, and nothing is counted that is there.
#[rstest]
#[case(&[WARN], &[SheetPart::Money], "1 warning of the checks")]
#[case(&[WARN, WARN], &[SheetPart::Money], "2 warnings of the checks")]
#[case(&[OPEN], &[SheetPart::Money], "1 open question of the checks")]
#[case(&[NOTE], &[SheetPart::Money], "1 note of the checks")]
#[case(&[WARN, OPEN, NOTE], &[SheetPart::Money], "1 warning, 1 open question and 1 note of the checks")]
#[case(&[WARN, OPEN, NOTE], &[SheetPart::Checks], "")]
#[case(&[WARN, OPEN, NOTE], &[SheetPart::Chair], "")]
#[case(&[WARN, NOTE], &[SheetPart::Chair], "1 note of the checks")]
#[case(&[WARN, NOTE], &[SheetPart::Chair, SheetPart::Checks], "")]
#[case(&[PASSED], &[SheetPart::Money], "")]
fn what_is_left_out_is_counted(#[case] of: &[(Rule, Verdict)], #[case] parts: &[SheetPart], #[case] want: &str) {
    let sheet = flat(&bench_sheet_of(&found(of), parts));
    assert_eq!(sheet.contains("Not on this sheet: "), !want.is_empty(), "{sheet}");
    assert!(want.is_empty() || sheet.contains(&format!("Not on this sheet: {want} (part `checks`).")), "{sheet}");
}

/// The open questions in one line: each rule once, with how often, and the notes beside it where the checks are not on the sheet.
#[rstest]
#[case(&[OPEN], &[SheetPart::Chair], "[OPEN] law: unknown, never passed; in full in the part `checks`")]
#[case(&[OPEN, OPEN], &[SheetPart::Chair], "[OPEN] law (2): unknown, never passed; in full in the part `checks`")]
#[case(&[OPEN, NOTE], &[SheetPart::Chair], "[OPEN] law: unknown, never passed; 1 note; in full in the part `checks`")]
#[case(&[OPEN, NOTE], &[SheetPart::Chair, SheetPart::Checks], "[OPEN] law: unknown, never passed; in full under CHECKS")]
fn open_questions_stand_in_one_line(#[case] of: &[(Rule, Verdict)], #[case] parts: &[SheetPart], #[case] want: &str) {
    let sheet = flat(&bench_sheet_of(&found(of), parts));
    assert!(sheet.contains(want), "{sheet}");
    assert!(!bench_sheet_of(&found(&[NOTE]), parts).contains("[OPEN]"));
}

/// A rule that holds of one bowl and not of another, or is not judged of it, holds in part; a note beside it takes nothing away.
#[rstest]
#[case(&[PASSED], "law")]
#[case(&[PASSED, OPEN], "law (in part)")]
#[case(&[PASSED, (Rule::Law, Verdict::Warning)], "law (in part)")]
#[case(&[PASSED, (Rule::Law, Verdict::Stop)], "law (in part)")]
#[case(&[PASSED, (Rule::Law, Verdict::Note)], "law")]
#[case(&[PASSED, WARN], "law")]
#[case(&[PASSED, PASSED], "law")]
fn a_rule_holds_in_part(#[case] of: &[(Rule, Verdict)], #[case] want: &str) {
    let sheet = bench_sheet_of(&found(of), &[SheetPart::Checks]);
    let line = sheet.lines().find(|line| line.starts_with("[ok]")).unwrap();
    assert_eq!(flat(line), format!("[ok] {want}"));
}

/// How long before the start, 25 November 2026, somebody agreed: in days, and from a whole year on in years.
#[rstest]
#[case("2026-11-25", "on the day")]
#[case("2026-11-24", "1 day before")]
#[case("2026-11-23", "2 days before")]
#[case("2025-11-26", "364 days before")]
#[case("2025-11-25", "1 year before")]
#[case("2024-11-26", "1 year before")]
#[case("2024-11-25", "2 years before")]
fn how_long_before_somebody_agreed(#[case] on: &str, #[case] want: &str) {
    let file = with(|entry| {
        let (on, to, rules) = (on.to_owned(), None, vec![Rule::Age]);
        entry.agreed = vec![AgreedEntry { who: Party::Guardian, on, to, rules }];
    });
    let sheet = flat(&consultation_sheet(&consulted(&file)));
    let said = format!("Stated, not used: an agreement of the guardian of {on} ({want}) (for age).");
    assert!(sheet.contains(&said), "{said}: {sheet}");
}

/// A series has a table of its visits, a single visit none, and what stands between visits is told where there is a second.
#[rstest]
#[case(only_lightener())]
#[case(staged())]
fn a_table_of_visits_is_of_a_series(#[case] file: ServiceFile) {
    let plan = plan(&file).unwrap();
    let sheet = bench_sheet_of(&plan, &[SheetPart::Lift]);
    let series = plan.lift.iter().filter(|lift| lift.visits.len() > 1).count();
    assert_eq!(sheet.lines().filter(|line| flat(line).starts_with("visit weeks later regrowth")).count(), series);
    assert_eq!(sheet.contains("Weeks between visits:"), series > 0);
    for lift in &plan.lift {
        let does = lift.visits.last().is_some_and(|visit| visit.chance.best().percent() >= 80.0);
        let want = match (lift.visits.len(), does) {
            (1, true) => "one visit does in 80 of 100.".to_owned(),
            (many, true) => format!("{many} such visits do in 80 of 100."),
            (many, false) => format!("{many} such visits do not in 80 of 100."),
        };
        assert!(flat(&sheet).contains(&want), "{want}: {sheet}");
        let readings = match lift.readings {
            0 => "no strand of this hair is read".to_owned(),
            1 => "1 reading".to_owned(),
            many => format!("{many} readings"),
        };
        assert!(flat(&sheet).contains(&format!("{}: {readings}", lift.section)), "{sheet}");
    }
}

/// Looks stand in the order of the clock, whichever section they are of.
#[test]
fn looks_stand_in_the_order_of_the_clock() {
    let plan = changed(only_lightener(), |file| {
        let mut other = file.section[0].clone();
        (other.name, other.apply_min) = ("nape".to_owned(), Some(12.0));
        file.section.push(other);
    });
    let sheet = bench_sheet_of(&plan, &[SheetPart::Lift]);
    let table = sheet.split("look at").nth(1).unwrap().split("At every look").next().unwrap();
    let minutes: Vec<f64> =
        table.lines().skip(1).filter_map(|line| line.split_whitespace().next()?.parse().ok()).collect();
    let looks: usize = plan.lift.iter().map(|lift| lift.looks.len()).sum();
    assert!(looks > 4 && minutes.len() == looks, "{table}");
    assert!(minutes.windows(2).all(|two| two[0] <= two[1]), "{minutes:?}");
}

/// A first part is put on an empty scale, which needs no word; what follows shows the sum of all that is in.
#[test]
fn the_scale_shows_sums_from_the_second_part_on() {
    let plan = changed(fine(), |_| ());
    let sheet = flat(&bench_sheet_of(&plan, &[SheetPart::Chair]));
    // By hand: 45 g at 1:2 are 15 g and 30 g; 60 g at 1:2 are 20 g and 40 g; 30 g at 1:1 are 15 g each.
    for said in [
        "weigh 15 g powder, 30 g developer (45 g)",
        "weigh 20 g J9, 40 g developer (60 g)",
        "weigh 15 g J6, 15 g developer (30 g)",
    ] {
        assert!(sheet.contains(said), "{said}: {sheet}");
    }
}

/// The guest of lightened hair is told how to comb it, and the first regrowth of all sections is when to come back.
#[test]
fn the_guest_takes_care_of_what_was_done() {
    let tears = |file: ServiceFile| guest_page(&plan(&file).unwrap()).contains("Lightened hair tears when it is wet");
    assert!(tears(fine()) && !tears(super::base::only_colour()));
}

/// Without other work the end of a visit is not known, and with it it is.
#[rstest]
#[case(None, false)]
#[case(Some(35.0), true)]
fn the_end_is_known_with_the_other_work(#[case] other: Option<f64>, #[case] known: bool) {
    let plan = changed(fine(), |file| file.service.other_work_min = other);
    let page = guest_page(&plan);
    assert_eq!(page.contains(", until about "), known);
    assert_eq!(page.contains("consultation, drying"), !known);
    let sheet = flat(&bench_sheet(&plan));
    assert_eq!(sheet.contains("finished at "), known);
    assert_eq!(sheet.contains("and consultation, drying, for which the file states no `other_work_min`"), !known);
}

/// A piece of an application says which foils it is: one by its number, several from the first to the last.
#[rstest]
#[case(1)]
#[case(6)]
fn pieces_name_their_foils(#[case] foils: u32) {
    let plan = changed(only_lightener(), |file| file.section[0].foils = Some(foils));
    let sheet = flat(&day_sheet(&plan));
    let best = plan.day.as_ref().unwrap().proposed.as_ref().unwrap();
    let (mut single, mut several) = (0, 0);
    for foils in best.pieces.iter().filter_map(|piece| piece.foils) {
        let told = if foils.first == foils.last {
            single += 1;
            format!(" foil {}", foils.first)
        } else {
            several += 1;
            format!(" foils {}-{}", foils.first, foils.last)
        };
        assert!(sheet.contains(&told), "{told}: {sheet}");
    }
    assert_eq!([sheet.matches(" foil ").count(), sheet.matches(" foils ").count()], [single, several], "{sheet}");
    assert!(if foils == 1 { single > 0 } else { several > 0 });
}
