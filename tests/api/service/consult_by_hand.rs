//! A consultation worked a second way: every rule and verdict alone, gaps between visits, what tests change, how it is traced.

use super::{
    base::{changed, fine, only_lightener},
    consult::{consulted, staged},
};
use foilwork::{
    finding::{
        Finding, Reason, Rule,
        Verdict::{NotJudged, Note, Passed, Stop, Warning},
    },
    hair::Weeks,
    lift::Visit,
    quantity::{Duration, Quantity},
    service::{
        Concern, Consent, ServiceFile, TestKind, dated_visits, decide,
        shape::{HistoryFlag, Party},
    },
    source::{Basis, Interval},
};

/// Whom each rule concerns, as the guide to a consultation lists them; what is not listed concerns the hair, so that it counts.
const LISTED: [(Concern, &[Rule]); 3] = [
    (
        Concern::Guest,
        &[
            Rule::History,
            Rule::EarlierReaction,
            Rule::Airways,
            Rule::Age,
            Rule::BlackHenna,
            Rule::Health,
            Rule::Scalp,
            Rule::SkinTest,
            Rule::SkinTestAge,
            Rule::Wish,
        ],
    ),
    (Concern::Limits, &[Rule::Law, Rule::Developer, Rule::Time, Rule::OnScalp, Rule::Alkalinity]),
    (
        Concern::Work,
        &[
            Rule::Look,
            Rule::Sequence,
            Rule::Rinse,
            Rule::FinishTogether,
            Rule::LevelSeen,
            Rule::StrandBook,
            Rule::Ratio,
            Rule::Amount,
            Rule::Stock,
            Rule::ListPrice,
            Rule::Scale,
            Rule::Pace,
            Rule::TonerFound,
        ],
    ),
];

/// Every rule with every verdict alone: what it comes to, in which list it stands, and who has to agree.
#[test]
fn every_rule_counts_by_whom_it_concerns() {
    let mut plan = changed(only_lightener(), |_| ());
    for rule in Rule::ALL {
        let listed = LISTED.iter().find(|(_, rules)| rules.contains(rule));
        let concern = listed.map_or(Concern::Hair, |(concern, _)| *concern);
        assert_eq!(Concern::of(*rule), concern, "{rule}");
        // The doctor where the body may suffer, a guardian for the young; the law and the work nobody can agree away.
        let parties: Vec<Party> = match rule {
            Rule::Age => vec![Party::Guardian],
            Rule::EarlierReaction | Rule::Airways | Rule::Health | Rule::Scalp => vec![Party::Guest, Party::Doctor],
            _ if matches!(concern, Concern::Limits | Concern::Work) => Vec::new(),
            _ => vec![Party::Guest],
        };
        for verdict in [Stop, Warning, NotJudged, Note, Passed] {
            plan.findings = vec![Finding::new(*rule, verdict, "told", Reason::assumed())];
            let found = decide(&plan);
            let work = concern == Concern::Work;
            let counted = [found.stops.len(), found.restrictions.len(), found.open.len(), found.for_the_bench];
            let want = match verdict {
                Stop => [1, 0, 0, 0],
                Warning => [0, usize::from(!work), 0, usize::from(work)],
                NotJudged => [0, 0, usize::from(!work), usize::from(work)],
                _ => [0; 4],
            };
            assert_eq!(counted, want, "{rule}: {verdict}");
            let go = if want[0] > 0 {
                "stop"
            } else if want[1] + want[2] > 0 {
                "restrict"
            } else {
                "proceed"
            };
            assert_eq!(found.go.code(), go, "{rule}: {verdict}");
            let asked: Vec<Party> = found.consents.iter().map(|one| one.who).collect();
            let mut named = if want[0] + want[1] > 0 { parties.clone() } else { Vec::new() };
            named.sort();
            assert_eq!(asked, named, "{rule}: {verdict}");
            let all =
                |one: &Consent| one.to == [*rule] && one.agreed_on.is_none() && one.stop_stands == (verdict == Stop);
            assert!(found.consents.iter().all(all), "{rule}: {verdict}");
            let words = match (go, verdict) {
                ("stop", _) => format!("do not begin: {}; no agreement lifts that", rule.words()),
                ("restrict", Warning) => format!("keep to 1 restriction ({})", rule.words()),
                ("restrict", _) => format!("settle what is not known first ({})", rule.words()),
                _ => "no check speaks against it; that does not say that anything is safe".to_owned(),
            };
            let words = if asked.is_empty() || go == "stop" {
                words
            } else {
                let names: Vec<String> = asked.iter().map(ToString::to_string).collect();
                format!("{words}; still to agree: {}", names.join(" and "))
            };
            assert_eq!(found.text, words);
        }
    }
}

/// By hand from 25 November 2026: three weeks are 16 December, ten weeks after that 24 February; a part of a day counts as the whole of it. The gap is
/// the longest that a section needs, at each of its bounds, and what it rests on the weaker of both.
#[test]
fn visits_are_as_far_apart_as_the_section_that_needs_most() {
    let mut plan = changed(only_lightener(), |file| {
        let mut nape = file.section[0].clone();
        nape.name = "nape".to_owned();
        nape.develop_min = 25.0;
        file.section.push(nape);
    });
    let first = plan.lift[0].visits[0];
    let weeks = |of: [f64; 3]| Some(Interval::ordered(of[0], of[1], of[2]).map(Weeks::nearest));
    let percent = |of: f64| Interval::exact(Quantity::nearest(of));
    let visit = |after, after_basis, chance| Visit { after, after_basis, chance, ..first };
    plan.lift[0].visits = vec![
        visit(None, None, percent(10.0)),
        visit(weeks([3.0, 4.0, 6.0]), Some(Basis::CommonPractice), percent(79.9)),
        visit(weeks([10.0, 10.1, 12.0]), Some(Basis::Assumed), percent(80.0)),
    ];
    plan.lift[1].visits =
        vec![visit(None, None, percent(10.0)), visit(weeks([2.0, 5.0, 5.5]), Some(Basis::Assumed), percent(90.0))];
    let told: Vec<_> = dated_visits(&plan)
        .iter()
        .map(|one| {
            let days = [one.earliest, one.usual, one.latest].map(|day| day.to_string()).join(" ");
            format!(
                "{} {days} {:?} {} | {}",
                one.number,
                one.after_basis,
                one.sections.join("+"),
                one.reached.join("+")
            )
        })
        .collect();
    assert_eq!(
        told,
        [
            "1 2026-11-25 2026-11-25 2026-11-25 None top+nape | ",
            "2 2026-12-16 2026-12-30 2027-01-06 Some(Assumed) top+nape | nape",
            // 70, 70.7 and 84 days later.
            "3 2027-02-24 2027-03-11 2027-03-31 Some(Assumed) top | top",
        ]
    );
}

/// The slowest section is the one that reaches its target last, wherever it stands; a result that is stated changes nothing of it.
#[test]
fn the_slowest_section_is_the_last_to_be_there() {
    for targets in [[7.0, 7.5], [7.5, 7.0], [7.2, 7.2]] {
        let two = |file: &mut ServiceFile| {
            let mut nape = file.section[0].clone();
            (nape.name, nape.target_level) = ("nape".to_owned(), targets[1]);
            file.section[0].target_level = targets[0];
            file.section.push(nape);
        };
        let mut file = only_lightener();
        two(&mut file);
        let plan = changed(file.clone(), |_| ());
        let medians: Vec<f64> = plan.lift.iter().map(|lift| lift.reached.median.unwrap().min()).collect();
        let last = medians.iter().copied().fold(0.0, f64::max);
        for effect in consulted(&file).tests.iter().filter(|one| one.stated) {
            assert_eq!(effect.slowest.unwrap().median.map(Duration::min), Some(last), "{effect:?}");
            assert_eq!(effect.time_factor, Some(1.0));
        }
        // Open hair is quicker by the same factor wherever it is asked about: the quotient of both times.
        let high =
            changed(file.clone(), |file| file.analysis.porosity = Some(foilwork::service::shape::Porosity::High));
        let then = high.lift.iter().map(|lift| lift.reached.median.unwrap().min()).fold(0.0, f64::max);
        let found = consulted(&file);
        let effect =
            found.tests.iter().find(|one| one.test == TestKind::Porosity && one.result.as_deref() == Some("high"));
        assert!((effect.unwrap().time_factor.unwrap() - then / last).abs() < 1e-9);
    }
}

/// A test for metal salts that nobody needs is told by its failure alone, and as it is stated; where the history holds any, by each result.
#[test]
fn a_test_that_nobody_needs_is_told_by_its_failure() {
    let told = |flags: &[HistoryFlag]| {
        let mut file = fine();
        file.analysis.history = Some(flags.to_vec());
        let found = consulted(&file).tests;
        let of = found.into_iter().filter(|one| one.test == TestKind::Incompatibility);
        of.map(|one| (one.result.unwrap_or_default(), one.stated)).collect::<Vec<_>>()
    };
    let rare = told(&[]);
    assert_eq!(rare, [("reaction".to_owned(), false), (String::new(), true)]);
    for flag in [HistoryFlag::MetallicSalts, HistoryFlag::Henna] {
        assert_eq!(told(&[flag]).len(), 4, "clear, reaction, pending, and none");
    }
    assert_eq!(told(&[HistoryFlag::Medicine]), rare);
}

/// By the page of the same service: 174.50 to 197.50 for this visit and 790.00 for four at most. What the decision was made of is counted and
/// named, and where it comes from.
#[test]
fn a_decision_and_a_price_are_traced() {
    let found = consulted(&staged());
    let trail = found.trail();
    let told: Vec<_> = trail.iter().map(|one| (one.what.as_str(), one.value.as_str())).collect();
    assert_eq!(told[0], ("decision", "restrict"));
    assert_eq!(told[1..], [("price of this visit", "174.50"), ("price of all visits at most", "790.00")]);
    assert_eq!(trail[1].bounds, Some(["174.50".to_owned(), "197.50".to_owned()]));
    assert_eq!((trail[1].basis, trail[2].bounds.is_none()), (Basis::Assumed, true));
    let counts: Vec<_> = trail[0].inputs[..3].iter().map(|one| (one.what.clone(), one.value.clone())).collect();
    let decision = &found.decision;
    let want = [
        ("checks that say stop", 0),
        ("checks that warn", decision.restrictions.len()),
        ("checks that do not know", decision.open.len()),
    ];
    assert_eq!(counts, want.map(|(what, count)| (what.to_owned(), count.to_string())));
    assert_eq!(trail[0].inputs.len(), 3 + decision.restrictions.len() + decision.open.len());
    assert!(trail[0].sources.contains(&"common-practice"), "{:?}", trail[0].sources);
}
