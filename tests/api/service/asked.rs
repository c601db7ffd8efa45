//! Who has agreed, who has still to, and what keeps a page from being signed: every mixture of findings against every mixture of
//! agreements, held against what they are said to be.

use super::{
    base::{changed, fine},
    consult::{consulted, with},
};
use foilwork::{
    finding::{Finding, Reason, Rule, Verdict},
    service::{
        Agreed, Consent, Go, Lapsed, Plan, Start, decide,
        shape::{HistoryFlag, Party, Test, TestResult},
    },
    sheet::consultation_sheet,
};
use jiff::civil::date;
use std::collections::BTreeMap;

/// Health is for doctor and guest, age for the guardian, how far the hair lightens for the guest, the law for nobody.
const RULES: [(Rule, &[Party]); 5] = [
    (Rule::Health, &[Party::Doctor, Party::Guest]),
    (Rule::Airways, &[Party::Doctor, Party::Guest]),
    (Rule::Age, &[Party::Guardian]),
    (Rule::Lift, &[Party::Guest]),
    (Rule::Law, &[]),
];
const PARTIES: [Party; 3] = [Party::Guest, Party::Guardian, Party::Doctor];

/// An agreement of a day of November, no two of which are the same; those of its rules that are `gone` it no longer settles.
fn agreed(who: Party, day: i8, rules: &[Rule], gone: &[Rule]) -> Agreed {
    let why = |rule: &Rule| Lapsed { rule: *rule, why: format!("what is new to {rule}") };
    Agreed {
        who,
        on: Start::Day(date(2026, 11, day)),
        to: Some(format!("the words of {day}")),
        rules: rules.to_vec(),
        lapsed: gone.iter().map(why).collect(),
    }
}

fn given() -> Vec<Vec<Agreed>> {
    use Party::{Doctor, Guardian, Guest};
    use Rule::{Age, Airways, Health, Law, Lift};
    vec![
        Vec::new(),
        vec![agreed(Doctor, 3, &[Health], &[])],
        vec![agreed(Doctor, 3, &[Health, Airways], &[Health]), agreed(Guest, 9, &[Health, Lift], &[])],
        vec![agreed(Doctor, 9, &[Health], &[]), agreed(Doctor, 3, &[Health, Airways], &[])],
        vec![agreed(Doctor, 3, &[Health, Airways], &[]), agreed(Doctor, 9, &[Airways], &[])],
        vec![agreed(Guest, 4, &[], &[]), agreed(Guest, 5, &[Law], &[]), agreed(Doctor, 6, &[Lift], &[])],
        vec![
            agreed(Guest, 4, &[Lift, Health, Airways], &[Lift, Health]),
            agreed(Guest, 5, &[Lift], &[Lift]),
            agreed(Guardian, 6, &[Age], &[]),
        ],
        vec![agreed(Guardian, 6, &[Age], &[Age]), agreed(Guardian, 7, &[Health], &[]), agreed(Guest, 8, &[Age], &[])],
        vec![agreed(Doctor, 2, &[Airways], &[Airways]), agreed(Doctor, 8, &[Health, Airways], &[])],
    ]
}

/// A plan that finds this of each rule: nothing, a warning, a stop, or two of either.
fn found(plan: &Plan, kinds: [usize; 5]) -> Plan {
    let mut plan = plan.clone();
    plan.findings.clear();
    for ((rule, _), kind) in RULES.iter().zip(kinds) {
        let verdicts: &[Verdict] = match kind {
            0 => &[],
            1 => &[Verdict::Warning],
            2 => &[Verdict::Stop],
            3 => &[Verdict::Warning, Verdict::Warning],
            _ => &[Verdict::Warning, Verdict::Stop],
        };
        let of = |verdict: &Verdict| Finding::new(*rule, *verdict, "told", Reason::assumed());
        plan.findings.extend(verdicts.iter().map(of));
    }
    plan
}

/// The findings of a mixture counted on, in the number system of five.
fn mixtures() -> impl Iterator<Item = [usize; 5]> {
    (0..5_usize.pow(5)).map(|number| [1, 5, 25, 125, 625].map(|place| number / place % 5))
}

#[test]
fn each_party_is_asked_for_each_rule_once_and_its_latest_agreement_that_counts_is_told() {
    let base = changed(fine(), |_| ());
    let clean = with(|_| ());
    let consultation = foilwork::service::plan(&clean).unwrap().consulted;
    for kinds in mixtures() {
        let mut plan = Plan { consulted: consultation.clone(), ..found(&base, kinds) };
        for agreements in given() {
            plan.consulted.as_mut().unwrap().agreed.clone_from(&agreements);
            let consents = decide(&plan).consents;
            let told: Vec<(Party, Rule)> =
                consents.iter().flat_map(|one| one.to.iter().map(|rule| (one.who, *rule))).collect();
            let mut want = BTreeMap::new();
            for ((rule, who), kind) in RULES.iter().zip(kinds).filter(|(_, kind)| *kind > 0) {
                let stops = kind == 2 || kind == 4;
                want.extend(who.iter().map(|who| ((*who, *rule), stops)));
            }
            assert_eq!(told.len(), want.len(), "each once: {kinds:?}, {agreements:?}");
            assert!(told.iter().all(|one| want.contains_key(one)), "{kinds:?}, {agreements:?}: {told:?}");
            for one in &consents {
                held(one, &consents, &agreements, &want);
            }
            // Party by party, the latest first, what is still to be asked for last.
            for pair in consents.windows(2) {
                assert!(pair[0].who <= pair[1].who, "{consents:?}");
                let day = |one: &Consent| one.agreed_on.map(Start::earliest);
                assert!(pair[0].who < pair[1].who || day(&pair[0]) > day(&pair[1]), "{consents:?}");
            }
        }
    }
}

fn held(one: &Consent, all: &[Consent], agreements: &[Agreed], want: &BTreeMap<(Party, Rule), bool>) {
    let asked = |rule: &Rule| want.contains_key(&(one.who, *rule));
    let of_party = || agreements.iter().filter(|given| given.who == one.who);
    let counts = |given: &Agreed, rule: Rule| {
        given.rules.contains(&rule) && given.lapsed.iter().all(|lapsed| lapsed.rule != rule)
    };
    for rule in &one.to {
        let latest = of_party().filter(|given| counts(given, *rule)).max_by_key(|given| given.on.earliest());
        assert_eq!(one.agreed_on, latest.map(|given| given.on), "{rule}: {agreements:?}");
        assert_eq!(one.words, latest.and_then(|given| given.to.clone()), "{rule}: {agreements:?}");
    }
    assert_eq!(one.stop_stands, one.to.iter().any(|rule| want[&(one.who, *rule)]), "{all:?}");
    if one.agreed_on.is_some() {
        assert!(one.noted.is_empty() && one.lapsed.is_empty(), "{one:?}");
        return;
    }
    // Noted is what names nothing that is asked of the party; what lapsed is told once for each rule that is asked anew.
    let noted: Vec<&Agreed> = of_party().filter(|given| !given.rules.iter().any(asked)).collect();
    assert_eq!(one.noted.iter().collect::<Vec<_>>(), noted);
    let mut lapsed: Vec<(Start, Rule)> = one.lapsed.iter().map(|lapsed| (lapsed.on, lapsed.rule)).collect();
    let mut gone: Vec<(Start, Rule)> = of_party()
        .flat_map(|given| given.lapsed.iter().map(|lapsed| (given.on, lapsed.rule)))
        .filter(|(_, rule)| one.to.contains(rule))
        .collect();
    let by_day = |one: &(Start, Rule)| (one.0.earliest(), one.1);
    lapsed.sort_by_key(by_day);
    gone.sort_by_key(by_day);
    assert_eq!(lapsed, gone, "{agreements:?}");
    assert!(one.lapsed.iter().all(|lapsed| lapsed.why == format!("what is new to {}", lapsed.rule)));
}

/// The decision in words: stop before restrict before neither, what to keep to, what to settle, whose agreement is missing.
#[test]
fn the_words_of_the_decision_name_just_what_speaks_against_it() {
    let base = changed(fine(), |_| ());
    for kinds in mixtures() {
        for open in [false, true] {
            let mut plan = found(&base, kinds);
            if open {
                plan.findings.push(Finding::new(Rule::StrandTest, Verdict::NotJudged, "told", Reason::assumed()));
            }
            let decision = decide(&plan);
            let of = |verdict: Verdict| -> Vec<&Finding> {
                plan.findings.iter().filter(|found| found.verdict == verdict).collect()
            };
            let (stops, warnings) = (of(Verdict::Stop), of(Verdict::Warning));
            let names = |found: &[&Finding]| {
                let mut names: Vec<&str> = Vec::new();
                for one in found {
                    if names.last() != Some(&one.rule.words()) {
                        names.push(one.rule.words());
                    }
                }
                match names.split_last() {
                    Some((last, [])) => (*last).to_owned(),
                    Some((last, others)) => format!("{} and {last}", others.join(", ")),
                    None => String::new(),
                }
            };
            let (go, text) = if !stops.is_empty() {
                (Go::Stop, format!("do not begin: {}; no agreement lifts that", names(&stops)))
            } else if warnings.is_empty() && !open {
                let text = "no check speaks against it; that does not say that anything is safe";
                (Go::Proceed, text.to_owned())
            } else {
                let keep = match warnings.len() {
                    0 => None,
                    1 => Some(format!("keep to 1 restriction ({})", names(&warnings))),
                    many => Some(format!("keep to {many} restrictions ({})", names(&warnings))),
                };
                let settle = open.then(|| "settle what is not known first (strand test)".to_owned());
                let asked = |who: &&Party| {
                    RULES.iter().zip(kinds).any(|((_, parties), kind)| kind > 0 && parties.contains(who))
                };
                let who: Vec<String> = PARTIES.iter().filter(asked).map(ToString::to_string).collect();
                let agree = match who.as_slice() {
                    [] => None,
                    [one] => Some(format!("still to agree: {one}")),
                    [others @ .., last] => Some(format!("still to agree: {} and {last}", others.join(", "))),
                };
                (Go::Restrict, [keep, settle, agree].into_iter().flatten().collect::<Vec<_>>().join("; "))
            };
            assert_eq!((decision.go, decision.text), (go, text), "{kinds:?}");
        }
    }
}

/// What lapsed is said once on the sheet, however many findings of its rule there are: medicine and pregnancy are both health.
#[test]
fn an_agreement_that_lapsed_is_told_once() {
    let mut file = with(|entry| {
        let on = |day: &str| foilwork::service::shape::AgreedEntry {
            who: Party::Doctor,
            on: day.to_owned(),
            to: None,
            rules: vec![Rule::Health],
        };
        entry.agreed = vec![on("2026-01-05")];
    });
    file.analysis.history = Some(vec![HistoryFlag::Medicine, HistoryFlag::Pregnancy]);
    file.salon.agreed_valid_days = Some(90.0);
    let found = consulted(&file);
    let sheet = consultation_sheet(&found).split_whitespace().collect::<Vec<_>>().join(" ");
    assert_eq!(sheet.matches("An agreement of 2026-01-05 (health) no longer counts").count(), 1, "{sheet}");
    let anew = "The doctor has to agree again, for something has changed or it was long ago (your health).";
    assert!(found.agreement.before.iter().any(|said| said == anew), "{:?}", found.agreement.before);
}

/// Line by line what a page waits for, from the facts of the file: 48 h and 7 days are the house's rule, the start is 25 November at
/// 10:00. After a reaction to the test no other test is asked for, and the guest's own agreement is the page.
#[test]
fn a_page_waits_for_what_is_open_and_for_nothing_else() {
    const STOP: &str = "We cannot begin yet. Your colourist explains what has to change first.";
    const TEST: &str = "A skin test is made and read first.";
    const PAST: &str = "Tell us all that was done to your hair before; what nobody knows we test on a strand.";
    const YOUNG: &str = "For anyone under sixteen the labels and a guardian decide.";
    let tests = [
        Some(("2026-11-23T10:00", TestResult::Clear)),
        Some(("2026-11-23T10:00", TestResult::Reaction)),
        Some(("2026-11-10T10:00", TestResult::Clear)),
        None,
    ];
    for test in tests {
        for history in [None, Some(vec![]), Some(vec![HistoryFlag::UnderSixteen]), Some(vec![HistoryFlag::Asthma])] {
            let mut file = with(|_| ());
            file.analysis.skin_test = test.map(|(applied, result)| Test { applied: applied.to_owned(), result });
            file.analysis.history.clone_from(&history);
            let flag = history.as_ref().and_then(|flags| flags.first());
            let found = consulted(&file);
            let reaction = test.is_some_and(|test| test.1 == TestResult::Reaction);
            let clear = test == tests[0];
            // There is oxidative colour in the bowls: a test that is missing stops, and who is too young for it as well.
            let stops = found.decision.go == Go::Stop;
            assert!(stops || (clear && flag != Some(&HistoryFlag::UnderSixteen)), "{test:?}, {history:?}");
            let mut want = Vec::new();
            want.extend(stops.then_some(STOP));
            match flag {
                Some(HistoryFlag::UnderSixteen) => want.push("The guardian has to agree (your age)."),
                Some(HistoryFlag::Asthma) => want.push("The doctor has to agree (asthma)."),
                _ => {}
            }
            want.extend((!clear && !reaction).then_some(TEST));
            want.extend(history.is_none().then_some(PAST));
            want.extend((flag == Some(&HistoryFlag::UnderSixteen)).then_some(YOUNG));
            assert_eq!(found.agreement.before, want, "{test:?}, {history:?}");
            assert_eq!(found.agreement.may_be_signed, want.is_empty());
        }
    }
}
