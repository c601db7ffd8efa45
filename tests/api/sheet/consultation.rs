//! A consultation come to its decision, and the agreement that the guest signs: both in full.

use super::{about, eur, finding, fine, flat, level, money::between, q};
use foilwork::{
    colour::LevelChange,
    finding::{Rule, Verdict},
    lift::TimeTo,
    quantity::Duration,
    service::{
        Agreed, AgreedPrice, Agreement, Alternative, AlternativeKind, Consent, ConsultationPlan, DatedVisit, Decision,
        Evidence, Go, HistoryGap, LapsedAgreement, LeftOut, LeftOutCost, PastService, SaidBefore, Start, TestEffect,
        TestKind, WishHeld, consult,
        shape::{Party, PastWork, Zone},
    },
    sheet::{agreement_page, consultation_sheet},
    source::Basis,
};
use jiff::civil::date;
use rstest::rstest;

fn day(year: i16, month: i8, day: i8) -> Start {
    Start::Day(date(year, month, day))
}

fn texts(all: &[&str]) -> Vec<String> {
    all.iter().map(|one| (*one).to_owned()).collect()
}

fn agreed(who: Party, on: Start, to: Option<&str>, rules: &[Rule]) -> Agreed {
    Agreed { who, on, to: to.map(str::to_owned), rules: rules.to_vec(), lapsed: Vec::new() }
}

/// A consultation in which nothing was said, asked or found.
fn empty() -> ConsultationPlan {
    let made = consult(&fine(), &Evidence::default()).unwrap();
    ConsultationPlan {
        title: "Fine".to_owned(),
        guest: None,
        start: Start::At(date(2026, 11, 25).at(10, 0, 0, 0)),
        said: None,
        decision: Decision {
            go: Go::Proceed,
            text: "nothing speaks against it".to_owned(),
            stops: Vec::new(),
            restrictions: Vec::new(),
            open: Vec::new(),
            consents: Vec::new(),
            for_the_bench: 0,
        },
        tests: Vec::new(),
        visits: Vec::new(),
        alternatives: Vec::new(),
        not_tried: 0,
        agreement: Agreement {
            planned: Vec::new(),
            visits: Vec::new(),
            not_promised: Vec::new(),
            risks: Vec::new(),
            warned: Vec::new(),
            open: Vec::new(),
            before: Vec::new(),
            price: None,
            who: Vec::new(),
            may_be_signed: true,
        },
        ..made
    }
}

fn told(found: &ConsultationPlan) -> String {
    let (rule, double) = ("-".repeat(80), "=".repeat(80));
    flat(&consultation_sheet(found)).replace(&rule, "|").replace(&double, "||")
}

const TESTS: &str = "WHAT EACH TEST CHANGES | + comes with that result, - goes with it.";
const ELSE: &str = "WHAT ELSE WAS CONSIDERED |";
const AGREE: &str = "TO AGREE WITH THE GUEST |";

#[test]
fn a_consultation_in_which_nothing_was_said() {
    let want =
        format!("CONSULTATION Fine || for 2026-11-25 10:00 [proceed] nothing speaks against it {TESTS} {ELSE} {AGREE}");
    assert_eq!(told(&empty()), want);
}

/// Days are counted to 25 November 2026: from the 20th five, from the 24th one.
#[test]
fn a_decision_in_full() {
    let mut found = empty();
    found.guest = Some("J-014".to_owned());
    let yes = agreed(Party::Guest, day(2026, 11, 20), Some("yes"), &[Rule::Age, Rule::Law]);
    let other = agreed(Party::Guardian, day(2026, 11, 24), None, &[]);
    found.said = Some(SaidBefore {
        past: Vec::new(),
        oldest: None,
        gaps: Vec::new(),
        wishes: Vec::new(),
        agreed: vec![yes.clone(), other],
    });
    let consent = |who, to: &[Rule], agreed_on, words: Option<&str>| Consent {
        who,
        to: to.to_vec(),
        agreed_on,
        words: words.map(str::to_owned),
        noted: Vec::new(),
        lapsed: Vec::new(),
        stop_stands: false,
    };
    found.decision = Decision {
        go: Go::Restrict,
        text: "settle some first".to_owned(),
        stops: vec![finding(Rule::Scalp, Verdict::Stop, "broken")],
        restrictions: vec![
            finding(Rule::Lift, Verdict::Warning, "slow"),
            finding(Rule::Pace, Verdict::Warning, "quick"),
        ],
        open: vec![finding(Rule::Law, Verdict::NotJudged, "whose?")],
        consents: vec![
            Consent {
                noted: vec![yes],
                lapsed: vec![LapsedAgreement {
                    on: day(2026, 11, 1),
                    rule: Rule::Age,
                    why: "it is too old".to_owned(),
                }],
                stop_stands: true,
                ..consent(Party::Guest, &[Rule::EarlierReaction, Rule::Age], Some(day(2026, 11, 20)), Some("all of it"))
            },
            consent(Party::Doctor, &[Rule::Health], None, None),
        ],
        for_the_bench: 2,
    };
    let want = format!(
        "CONSULTATION Fine || for 2026-11-25 10:00 guest J-014 [RESTRICT] settle some first [STOP] scalp: broken [WARN] lift: slow [WARN] \
         pace: quick [OPEN] law: whose? guest has to agree: earlier reaction, age: agreed on 2026-11-20 (5 days before) (\"all of it\"); \
         the stop stands all the same An agreement of 2026-11-01 (age) no longer counts: it is too old. Ask anew. An agreement of \
         2026-11-20 (5 days before) to \"yes\" (for age and law) is noted: check that it covers this, then name what it covers under \
         `rules`. doctor has to agree: health: still to ask Stated, not used: an agreement of the guardian of 2026-11-24 (1 day before). \
         2 more concern the work at the bench: see foilwork plan. EARLIER SERVICES | None is stated. {TESTS} {ELSE} {AGREE}"
    );
    assert_eq!(told(&found), want);
}

/// What was done, wished and left unknown.
#[test]
fn what_was_said_in_full() {
    let mut found = empty();
    let past = |on, what, zone, grown_out, formula: Option<&str>| PastService {
        on,
        what,
        formula: formula.map(str::to_owned),
        zone,
        place: None,
        ago: None,
        grown_out,
    };
    let wish =
        |zone, at: f64, within: f64, tone: Option<&str>, dislikes: Option<&str>, why_not: Option<&str>| WishHeld {
            zone,
            level: level(at),
            tolerance_levels: LevelChange::from_levels(within).unwrap(),
            tone: tone.map(str::to_owned),
            dislikes: dislikes.map(str::to_owned),
            now_level: level(6.5).into(),
            sections: Vec::new(),
            why_not: why_not.map(str::to_owned),
            is_sure: true,
        };
    let gap = |text: &str| HistoryGap { since: None, until: None, text: text.to_owned() };
    let past = vec![
        past(
            Some(day(2026, 1, 5)),
            PastWork::PermanentColour,
            Some(Zone::Lengths),
            Some(about([8.0, 10.0, 12.0])),
            Some("J6 and J7"),
        ),
        past(None, PastWork::Henna, None, None, None),
    ];
    let wishes = vec![
        wish(Zone::Lengths, 9.0, 0.5, Some("ash"), Some("brass"), None),
        wish(Zone::Roots, 7.0, 0.0, None, None, Some("it gets too dark")),
    ];
    let gaps = vec![gap("before 2026"), gap("in June")];
    found.said = Some(SaidBefore { past, oldest: None, gaps, wishes, agreed: Vec::new() });
    let want = format!(
        "nothing speaks against it EARLIER SERVICES | on what zone now from cm formula 2026-01-05 permanent colour lengths 10 (8 to 12) J6 \
         and J7 unknown henna unknown unknown Unknown: before 2026. Unknown: in June. WISHES | lengths: level 9 within 0.5, ash; dislikes \
         now: brass; now 6.5: held roots: level 7 within 0; now 6.5: not held: it gets too dark {TESTS} {ELSE} {AGREE}"
    );
    let told = told(&found);
    assert!(told.ends_with(&want), "{told}");
}

/// Tests with what they add and lift, visits, and what else was considered.
#[test]
fn tests_visits_and_alternatives_in_full() {
    let mut found = empty();
    let effect = |test, result: Option<&str>, stated, go| TestEffect {
        test,
        result: result.map(str::to_owned),
        stated,
        go,
        adds: Vec::new(),
        lifts: Vec::new(),
        slowest: Some(TimeTo { early: Some(q(20.0)), median: Some(q::<Duration>(30.0)), late: None }),
        time_factor: Some(1.25),
    };
    found.tests = vec![
        TestEffect {
            adds: vec![
                finding(Rule::SkinTest, Verdict::Stop, "reacted"),
                finding(Rule::Age, Verdict::Stop, "too young"),
            ],
            lifts: vec![finding(Rule::Law, Verdict::NotJudged, "whose?")],
            ..effect(TestKind::Skin, Some("reaction"), false, Go::Stop)
        },
        effect(TestKind::Strand, Some("clear"), true, Go::Proceed),
        TestEffect { time_factor: None, ..effect(TestKind::Porosity, None, false, Go::Restrict) },
    ];
    let visit = |number, after, sections: &[&str], reached: &[&str]| DatedVisit {
        number,
        after,
        after_basis: None,
        earliest: day(2026, 12, 23),
        usual: day(2027, 1, 6),
        latest: day(2027, 1, 20),
        sections: texts(sections),
        reached: texts(reached),
    };
    found.visits =
        vec![visit(1, None, &["top"], &[]), visit(2, Some(about([4.0, 6.0, 8.0])), &["top", "nape"], &["top", "nape"])];
    let other = |section: Option<&str>, option: &str, taken, why: &str, basis| Alternative {
        about: AlternativeKind::ALL[0],
        section: section.map(str::to_owned),
        option: option.to_owned(),
        taken,
        why: why.to_owned(),
        basis,
    };
    found.alternatives = vec![
        other(Some("top"), "9 % w/w", false, "stronger than it needs", Basis::Assumed),
        other(None, "foils", true, "as wished", Basis::Stated),
    ];
    found.not_tried = 3;
    let want = format!(
        "WHAT EACH TEST CHANGES | skin reaction: STOP; slowest section at minute 30 (20 to never), 1.25 times as long by the median + [STOP] \
         skin test: reacted + [STOP] age: too young - [OPEN] law: whose? strand clear (as stated): proceed porosity not done: RESTRICT + \
         comes with that result, - goes with it. VISITS | 1. 2027-01-06; lightened: top; none of them reaches its target in 80 of 100 cases \
         2. 6 (4 to 8) weeks after the one before: 2026-12-23 at the earliest, usually 2027-01-06, to 2027-01-20; lightened: top, nape; 80 \
         of 100 reach their target: top, nape {ELSE} top: 9 % w/w (not taken): stronger than it needs [assumed] foils (taken): as wished \
         [stated by you] 3 more developers were not tried. {AGREE}"
    );
    let told = told(&found);
    assert!(told.ends_with(&want), "{told}");
}

fn price(visits: usize, range: bool, tax_included: bool, whole: bool) -> AgreedPrice {
    let left_out = LeftOut { what: LeftOutCost::Labour, of: None };
    AgreedPrice {
        low: eur(if range { "50.00" } else { "60.00" }),
        planned: eur("60.00"),
        high: eur(if range { "70.00" } else { "60.00" }),
        all_visits_high: eur("140.00"),
        visits,
        tax_included,
        left_out: if whole { Vec::new() } else { vec![left_out] },
    }
}

/// A scalp and a law, as a guest reads of them.
fn to_agree() -> ConsultationPlan {
    let mut found = empty();
    found.agreement = Agreement {
        planned: texts(&["top: to level 9", "veil: toner"]),
        visits: texts(&["one visit"]),
        not_promised: texts(&["an even result"]),
        risks: texts(&["it may break"]),
        warned: vec![Rule::Scalp, Rule::Stock],
        open: vec![Rule::Law],
        before: texts(&["We cannot begin yet. Your colourist explains what has to change first.", "A test is read."]),
        price: Some(price(2, true, true, true)),
        ..found.agreement
    };
    found
}

/// In words of the guest; the grams of the stock are none of theirs.
#[rstest]
#[case(
    price(2, true, true, true),
    "50.00 EUR to 70.00 EUR for this visit, 60.00 EUR as planned; 2 visits like this one would come to up to 140.00 EUR, and more may be \
     needed, tax included. More product, more time or a second application cost more: we ask before."
)]
#[case(
    price(1, false, false, false),
    "60.00 EUR for this visit, before tax. The price is not whole yet: something in it is not known."
)]
fn what_is_to_be_agreed(#[case] price: AgreedPrice, #[case] want: &str) {
    let mut found = to_agree();
    found.agreement.price = Some(price);
    let agree = format!(
        "{AGREE} Planned: top: to level 9 Planned: veil: toner Visits: one visit Not promised: an even result To know: Your scalp is sore or \
         broken: it has to heal first. To know: not yet settled: what the law allows Risks: it may break Before we begin: We cannot begin \
         yet. Your colourist explains what has to change first. Before we begin: A test is read. {want}"
    );
    let told = told(&found);
    assert!(told.ends_with(&agree), "{told}");
    let page = between(&agreement_page(&found), "<main>", "</main>");
    assert!(page.contains(&format!(" Price {want} Agreement I have read this page")), "{page}");
}

const SAID: &str = "What we plan top: to level 9 veil: toner Visits one visit What we do not promise an even result What you should know Your \
    scalp is sore or broken: it has to heal first. Not yet settled: what the law allows; ask your colourist. What may go wrong it may break \
    Before we begin A test is read.";
const CANNOT: &str = "We cannot begin yet. Your colourist explains what has to change first.";

/// Nothing to sign and no price where a check says stop, or where something has to be settled first.
#[rstest]
#[case(true, Go::Restrict, "")]
#[case(false, Go::Stop, CANNOT)]
#[case(
    false,
    Go::Restrict,
    "Not to be signed yet: what stands under \u{201c}Before we begin\u{201d} has to be settled first."
)]
fn the_agreement_as_a_page(#[case] signed: bool, #[case] go: Go, #[case] why_not: &str) {
    let mut found = to_agree();
    (found.guest, found.decision.go, found.agreement.may_be_signed) = (Some("J-014".to_owned()), go, signed);
    let page = between(&agreement_page(&found), "<main>", "</main>");
    let opening = flat(&format!("Fine 2026-11-25 10:00 for J-014 {why_not} {SAID}"));
    let sign = "my health is true. I may stop at any time. Date Guest Colourist";
    if signed {
        assert!(page.starts_with(&format!("{opening} Price 50.00 EUR to")) && page.ends_with(sign), "{page}");
    } else {
        assert_eq!(page, opening);
    }
}

/// What there is nothing of has no heading.
#[test]
fn an_agreement_of_little() {
    let mut found = empty();
    found.agreement.may_be_signed = true;
    let page = between(&agreement_page(&found), "<main>", "</main>");
    assert!(page.starts_with("Fine 2026-11-25 10:00 Agreement I have read"), "{page}");
    found.agreement.planned = texts(&["top"]);
    let page = between(&agreement_page(&found), "<main>", "</main>");
    assert!(page.starts_with("Fine 2026-11-25 10:00 What we plan top Agreement I have read"), "{page}");
}
