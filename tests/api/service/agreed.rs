//! What is agreed, what is wished, what else was considered: no more is said than is known.

use super::{
    base::{changed, example, texts, verdicts},
    consult::{consulted, staged, with},
};
use foilwork::{
    finding::{Rule, Verdict},
    reader::Format,
    service::{
        Alternative, Consent, ConsultationPlan, ServiceFile, parse,
        shape::{AgreedEntry, ConsultationEntry, Elasticity, HistoryFlag, Party, WishEntry, Zone},
    },
    sheet::{SheetPart, bench_page, bench_sheet_of, consultation_sheet},
};
use serde_json::json;

fn agreed(who: Party, on: &str, rules: &[Rule]) -> AgreedEntry {
    AgreedEntry { who, on: on.to_owned(), to: Some("a letter".to_owned()), rules: rules.to_vec() }
}

/// An agreement to something else than is asked is shown all the same, with its age: 1 to 25 November are 24 days, and from
/// March 2015 on 11 years.
#[test]
fn no_agreement_vanishes() {
    let sheet = |flags: &[HistoryFlag], given: Vec<AgreedEntry>| {
        let mut file = with(|entry| entry.agreed = given);
        file.analysis.history = Some(flags.to_vec());
        consultation_sheet(&consulted(&file)).split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let of_law = || vec![agreed(Party::Doctor, "2026-11-01", &[Rule::Law])];
    let words = "2026-11-01 (24 days before) to \"a letter\" (for law)";
    let open = sheet(&[HistoryFlag::Medicine], of_law());
    assert!(open.contains(&format!("An agreement of {words} is noted: check that it covers this")), "{open}");
    let nothing = sheet(&[], of_law());
    assert!(nothing.contains(&format!("Stated, not used: an agreement of the doctor of {words}.")), "{nothing}");
    // What settles something is not said to be unused, and its age is told.
    let settled = sheet(&[HistoryFlag::Medicine], vec![agreed(Party::Doctor, "2015-03-01", &[Rule::Health])]);
    assert!(settled.contains("agreed on 2015-03-01 (11 years before)"), "{settled}");
    assert!(!settled.contains("not used") && !settled.contains("is noted"), "{settled}");
    // Years are those of the calendar: full on the day itself, not the day after it.
    for (on, age) in [("2024-11-25", "2 years"), ("2024-11-26", "1 year"), ("2025-11-26", "364 days")] {
        let told = sheet(&[HistoryFlag::Medicine], vec![agreed(Party::Doctor, on, &[Rule::Health])]);
        assert!(told.contains(&format!("agreed on {on} ({age} before)")), "{told}");
    }
}

/// What the hair went through after an agreement, or how old the house lets one be, takes it away, rule by rule; by hand, 1 June to
/// 25 November are 177 days. What the guest is has no day: no test takes a doctor's word on medicine away.
#[test]
fn an_agreement_is_bound_to_what_it_was_given_to() {
    let asked = |change: fn(&mut ServiceFile)| {
        let given = vec![
            agreed(Party::Guest, "2026-06-01", &[Rule::Elasticity]),
            agreed(Party::Doctor, "2026-06-01", &[Rule::Health]),
        ];
        let mut file = with(|entry| entry.agreed = given);
        file.analysis.history = Some(vec![HistoryFlag::Medicine]);
        file.analysis.elasticity = Some(Elasticity::Reduced);
        file.analysis.strand_test = None;
        change(&mut file);
        consulted(&file)
    };
    let open = |found: &ConsultationPlan, who: Party, rule: Rule| {
        let same = |one: &&Consent| one.who == who && one.to.contains(&rule);
        let consent = found.decision.consents.iter().find(same).unwrap();
        (consent.agreed_on.is_none(), consent.lapsed.iter().map(|one| one.why.clone()).collect::<Vec<_>>())
    };
    let found = asked(|_| ());
    assert_eq!(open(&found, Party::Guest, Rule::Elasticity), (false, Vec::new()));
    assert_eq!(open(&found, Party::Doctor, Rule::Health), (false, Vec::new()));
    let permed = asked(|file| {
        let entry = json!({ "on": "2026-09-01", "what": "permed" });
        file.consultation.as_mut().unwrap().past = vec![serde_json::from_value(entry).unwrap()];
    });
    let (anew, why) = open(&permed, Party::Guest, Rule::Elasticity);
    assert!(anew && why[0].ends_with("of 2026-09-01 came after it"), "{why:?}");
    // Where both have their hours these count; a bare day is no later than any hour of it.
    for (on, lapsed) in [("2026-06-01T15:00", true), ("2026-06-01T08:00", false), ("2026-06-01", false)] {
        let mut file = with(|entry| entry.agreed = vec![agreed(Party::Guest, "2026-06-01T09:00", &[Rule::Elasticity])]);
        (file.analysis.elasticity, file.analysis.strand_test) = (Some(Elasticity::Reduced), None);
        let entry = json!({ "on": on, "what": "lightener" });
        file.consultation.as_mut().unwrap().past = vec![serde_json::from_value(entry).unwrap()];
        let (anew, why) = open(&consulted(&file), Party::Guest, Rule::Elasticity);
        assert!(anew == lapsed && why.iter().all(|why| why.ends_with("of 2026-06-01 15:00 came after it")), "{why:?}");
    }
    let sheet = consultation_sheet(&permed).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(sheet.contains("An agreement of 2026-06-01 (elasticity) no longer counts: "), "{sheet}");
    assert_eq!(open(&permed, Party::Doctor, Rule::Health), (false, Vec::new()));
    let house = asked(|file| {
        file.salon.agreed_valid_days = Some(176.0);
        file.salon.agreed_source = Some("house rule of 2026".to_owned());
    });
    let (anew, why) = open(&house, Party::Doctor, Rule::Health);
    assert!(anew && why[0].contains("177 days old") && why[0].contains("176 (house rule of 2026)"), "{why:?}");
    assert!(
        house.agreement.before.iter().any(|one| one.starts_with("The doctor has to agree again")),
        "{:?}",
        house.agreement.before
    );
    // Who stands at the chair has the bench sheet alone.
    let mut file = with(|entry| entry.agreed = vec![agreed(Party::Guest, "2026-06-01", &[Rule::Elasticity])]);
    file.salon.agreed_valid_days = Some(176.0);
    for (days, told) in [(176.0, true), (177.0, false)] {
        let plan = changed(file.clone(), |file| file.salon.agreed_valid_days = Some(days));
        for sheet in [bench_sheet_of(&plan, SheetPart::SHORT), bench_page(&plan)] {
            let said = sheet.split_whitespace().collect::<Vec<_>>().join(" ");
            let lapsed = "Agreement of the guest of 2026-06-01 (for elasticity) no longer counts: it is 177 days old";
            assert_eq!(said.contains(lapsed), told, "{said}");
        }
    }
    let young = asked(|file| file.salon.agreed_valid_days = Some(177.0));
    assert_eq!(open(&young, Party::Doctor, Rule::Health), (false, Vec::new()));
}

/// Colour from level 5.5 to 8 has no forecast: that the section aims there is not that the plan holds to it.
#[test]
fn a_wish_for_colour_is_not_judged() {
    let mut file = parse(&example("grey-blend.toml"), Format::Toml).unwrap();
    file.section[0].target_level = 8.0;
    let tolerance_levels = Some(0.5);
    let wish = WishEntry { zone: Zone::Roots, level: 8.0, tone: None, tolerance_levels, dislikes: None };
    file.consultation = Some(ConsultationEntry { wish: vec![wish], ..Default::default() });
    let plan = changed(file, |_| ());
    assert_eq!(verdicts(&plan, "wish"), [Verdict::NotJudged]);
    let said = texts(&plan, "wish");
    assert!(said.contains("regrowth: aimed there, and colour has no forecast"), "{said}");
    let words = plan.consulted.unwrap().wishes[0].in_words();
    assert_eq!(words, "aimed at by regrowth, and colour has no forecast to hold it against");
}

/// Common practice: 3 % has about 3 levels in one session, and both sections want 4. Of `sides`, which has 3 %, that is said
/// already, and what is weaker adds nothing; of `back`, which has 6 %, it is new. The wish is out of reach whatever is taken.
#[test]
fn only_what_is_new_warns_as_well() {
    let found = consulted(&staged());
    let why = |section: &str, option: &str| {
        let same = |one: &&Alternative| one.section.as_deref() == Some(section) && one.option == option;
        found.alternatives.iter().find(same).unwrap().why.clone()
    };
    assert!(why("back", "developer 3").ends_with("warns then as well: lift"), "{}", why("back", "developer 3"));
    let weaker = why("sides", "toner developer");
    assert!(weaker.starts_with("weaker") && !weaker.contains("warns then"), "{weaker}");
}
