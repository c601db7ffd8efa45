//! What is needed at the chair, in full, on the clock and in minutes; the opening of the sheet.

use super::{base, exact, flat, part, q, weighing::three};
use foilwork::{
    finding::Rule,
    service::{Agreed, Caution, ChairClock, Lapsed, Plan, SaidBefore, Start, shape::Party},
    sheet::{SheetPart, bench_page, bench_sheet_of},
};
use jiff::civil::date;
use rstest::rstest;

fn caution(text: &'static str, reminder: Option<&'static str>) -> Caution {
    Caution { text, reminder, sources: Vec::new() }
}

fn minded() -> Plan {
    let mut plan = three();
    plan.cautions = vec![
        caution("Wear gloves.", Some("gloves")),
        caution("Open a window.", None),
        caution("Never close a mixed bowl.", Some("never close a bowl")),
    ];
    plan
}

/// From 10:00 on. The first rinse is planned for minute 50, so what comes after it counts from 10:50.
#[test]
fn the_chair_on_the_clock() {
    let plan = minded();
    let want = "AT THE CHAIR | \
        10:03 1. top: a bowl of 45 g, 4 (3.94 to 4.06) % w/w on the hair weigh 15 g powder, 30 g developer (45 g) all on by 10:20; \
        PLANNED RINSE 10:50, LATEST 10:55; this bowl until 10:32 look 10:15 10:30 10:50; last strand from 10:40 \
        After rinsing; these times are the earliest, as if rinsing took none: \
        10:50 2. veil: 2 fresh bowls of 10 g each, mixed 10:50 11:05, 0 % w/w on the hair weigh 10 g J9 all on by 10:55; RINSE BY \
        11:05; each bowl for 20 min \
        10:55 3. root shadow: a bowl of 12 g, 1.55 % w/w on the hair weigh 12 g J6 all on by 10:58; RINSE BY 11:05; this bowl until \
        11:15 look 11:02 11:05 \
        Times are those of the clock (minutes in a warning count from the first brush), as planned; write down the real ones. In \
        brackets: what the scale then shows. Rinse a strand when it is there, not by the clock; at LATEST whatever it shows. \
        Mind: gloves; never close a bowl (in full: part `cautions`).";
    assert_eq!(part(&plan, SheetPart::Chair), want);
    let both = flat(&bench_sheet_of(&plan, &[SheetPart::Chair, SheetPart::Cautions]));
    assert!(both.contains("Mind: gloves; never close a bowl (in full: under CAUTIONS)."), "{both}");
    assert!(both.contains(" - Wear gloves. - Open a window. - Never close a mixed bowl. foilwork "), "{both}");
}

/// On a bare day the same in minutes; what comes after the rinse counts from its end.
#[test]
fn the_chair_in_minutes() {
    let mut plan = minded();
    plan.start = Start::Day(date(2026, 11, 25));
    plan.order[0].off_by = q(50.0);
    let want = "AT THE CHAIR | \
        3 1. top: a bowl of 45 g, 4 (3.94 to 4.06) % w/w on the hair weigh 15 g powder, 30 g developer (45 g) all on by 20; \
        RINSE BY 50; this bowl until 32 look 15 30 50; last strand from 40 \
        After rinsing, counted anew from its end: \
        0 2. veil: 2 fresh bowls of 10 g each, mixed 0 15, 0 % w/w on the hair weigh 10 g J9 all on by 5; RINSE BY 15; each bowl \
        for 20 min \
        5 3. root shadow: a bowl of 12 g, 1.55 % w/w on the hair weigh 12 g J6 all on by 8; RINSE BY 15; this bowl until 25 \
        look 12 15 \
        Times are minutes from the first brush: the file states no time of day, as planned; write down the real ones. In \
        brackets: what the scale then shows. Rinse a strand when it is there, not by the clock. \
        Mind: gloves; never close a bowl (in full: part `cautions`).";
    assert_eq!(part(&plan, SheetPart::Chair), want);
}

/// Toners count from the last of the rinses, wherever in the order that is: of rinses at 40 and 50 min, from 10:50.
#[rstest]
#[case([50.0, 40.0])]
#[case([40.0, 50.0])]
#[case([50.0, 50.0])]
fn toners_count_from_the_last_rinse(#[case] rinses: [f64; 2]) {
    let mut plan = three();
    plan.order.insert(1, plan.order[0].clone());
    plan.mixes.insert(1, plan.mixes[0].clone());
    for (step, rinse) in plan.order.iter_mut().zip(rinses) {
        (step.rinse_by, step.off_by) = (q(rinse), q(rinse));
    }
    let told = part(&plan, SheetPart::Chair);
    assert!(told.contains("10:50 2. veil: 2 fresh bowls"), "{told}");
}

const WORK: &str = "bowls, looks, walks and rinses";
const UNKNOWN: &str = "consultation, drying, for which the file states no `other_work_min`";

/// From 10:00: 90 min are booked, of which 35 are other work; what is not booked takes 80 as planned.
#[rstest]
#[case(
    ChairClock::Day,
    Some(35.0),
    Some(90.0),
    true,
    "finished at 11:30, if all goes as planned: book 90 min, with bowls, looks, walks, rinses and 35 min of other work; the times \
     below count none of these"
)]
#[case(
    ChairClock::Day,
    Some(35.0),
    Some(90.0),
    false,
    "book 90 min, with bowls, looks, walks, rinses and 35 min of other work; the times below count none of these"
)]
#[case(
    ChairClock::Day,
    None,
    Some(90.0),
    true,
    "book 90 min and {UNKNOWN}, with {WORK}; the times below count none of these"
)]
#[case(
    ChairClock::Sheet,
    Some(35.0),
    None,
    true,
    "finished at 11:20, if all goes as planned: book 80 min, with 35 min of other work; {WORK} are not in it"
)]
#[case(ChairClock::Sheet, None, None, true, "book 80 min and {UNKNOWN}; {WORK} are not in it")]
fn how_long_the_chair_is_taken(
    #[case] clock: ChairClock,
    #[case] other: Option<f64>,
    #[case] book: Option<f64>,
    #[case] timed: bool,
    #[case] want: &str,
) {
    let mut plan = base();
    (plan.chair.clock, plan.chair.other_work, plan.chair.total) = (clock, other.map(q), q(80.0));
    plan.booking.book = book.map(q);
    if !timed {
        plan.start = Start::Day(date(2026, 11, 25));
    }
    let opening = flat(&bench_sheet_of(&plan, &[]));
    let start = if timed { "2026-11-25 10:00" } else { "2026-11-25" };
    let want = want.replace("{UNKNOWN}", UNKNOWN).replace("{WORK}", WORK);
    let rule = "=".repeat(80);
    assert_eq!(
        opening,
        format!("BENCH SHEET Fine {rule} starts {start} law of European Union {want} foilwork {}", plan.foilwork)
    );
}

/// Who, and under whose law, where it is stated; seconds are shown where there are some.
#[test]
fn the_opening_says_who_and_under_whose_law() {
    let mut plan = base();
    (plan.guest, plan.colourist) = (Some("J-014".to_owned()), Some("Ada".to_owned()));
    (plan.jurisdiction, plan.notes) = (None, Some("a quiet seat".to_owned()));
    plan.start = Start::At(date(2026, 11, 25).at(10, 0, 30, 0));
    let opening = flat(&bench_sheet_of(&plan, &[]));
    let said = "starts 2026-11-25 10:00:30 guest J-014 colourist Ada no jurisdiction stated ";
    assert!(opening.contains(said) && opening.contains(" Notes: a quiet seat foilwork "), "{opening}");
}

/// Agreements that no longer count, reason by reason, before any part.
#[test]
fn agreements_that_no_longer_count_are_told() {
    let mut plan = base();
    let lapsed = |rule, why: &str| Lapsed { rule, why: why.to_owned() };
    let agreed = Agreed {
        who: Party::Guest,
        on: Start::Day(date(2026, 11, 20)),
        to: None,
        rules: vec![Rule::Age],
        lapsed: vec![
            lapsed(Rule::Age, "it is too old"),
            lapsed(Rule::Scalp, "a test came after it"),
            lapsed(Rule::Law, "it is too old"),
        ],
    };
    let (past, gaps, wishes) = (Vec::new(), Vec::new(), Vec::new());
    plan.consulted = Some(SaidBefore { past, oldest: None, gaps, wishes, agreed: vec![agreed] });
    let of = "Agreement of the guest of 2026-11-20";
    let want = format!(
        "{of} (for scalp) no longer counts: a test came after it; see `foilwork consult`. {of} (for age and law) no longer counts: it is \
         too old; see `foilwork consult`."
    );
    let opening = flat(&bench_sheet_of(&plan, &[]));
    assert!(opening.ends_with(&format!("{want} foilwork {}", plan.foilwork)), "{opening}");
    let page = bench_page(&plan);
    assert!(page.contains(&format!("{of} (for scalp) no longer counts")), "{page}");
}

/// A country has its own hours: half past two in the afternoon.
#[rstest]
#[case("US", "11/25/2026 2:30 pm")]
#[case("CA", "2026-11-25 2:30 pm")]
#[case("DK", "25.11.2026 14.30")]
#[case("DE", "25.11.2026 14:30")]
fn hours_are_those_of_the_country(#[case] country: &str, #[case] want: &str) {
    let mut plan = base();
    plan.habits.country = Some(country.parse().unwrap());
    plan.start = Start::At(date(2026, 11, 25).at(14, 30, 0, 0));
    let opening = flat(&bench_sheet_of(&plan, &[]));
    assert!(opening.contains(&format!("starts {want} law of")), "{opening}");
}

/// Two of what is on the hair at once: the weakest strength of a bowl is no matter, it is the bowl's own.
#[test]
fn each_bowl_has_its_own_strength() {
    let mut plan = three();
    let mut other = plan.mixes[0].bowls[0].clone();
    other.on_hair = exact(2.5);
    plan.mixes[0].bowls.push(other);
    let told = part(&plan, SheetPart::Chair);
    assert!(
        told.contains("a bowl of 45 g, 4 (3.94 to 4.06) % w/w") && told.contains("a bowl of 45 g, 2.5 % w/w"),
        "{told}"
    );
}
