//! Which facts take an agreement to a rule away: every rule in a table. Whom each concerns is in `consult_by_hand`.

use super::base::{changed, fine};
use foilwork::finding::Rule;
use serde_json::{Value, json};

/// Which facts that came after it an agreement to a rule does not outlive: what findings of the rule rest on.
fn rests_on(rule: Rule, fact: &str) -> bool {
    let skin = [Rule::SkinTest, Rule::SkinTestAge, Rule::EarlierReaction].contains(&rule);
    let none = [Rule::Health, Rule::Airways, Rule::Age, Rule::BlackHenna, Rule::Scalp].contains(&rule);
    let metal = rule == Rule::MetalSalts;
    match fact {
        "skin test" => skin,
        "incompatibility test" => metal,
        "strand test" => !skin && !none && !metal,
        _ => !skin && !none,
    }
}

/// The facts with their days; an agreement of 1 June to every rule.
fn lapsed(facts: &[(&str, &str)]) -> Vec<(Rule, String)> {
    let mut file = serde_json::to_value(fine()).unwrap();
    for test in ["skin_test", "strand_test", "incompatibility_test"] {
        file["analysis"][test] = Value::Null;
    }
    let mut past = Vec::new();
    for (fact, day) in facts {
        match *fact {
            "skin test" | "strand test" | "incompatibility test" => {
                file["analysis"][fact.replace(' ', "_")] = json!({ "applied": day, "result": "clear" });
            }
            what => past.push(json!({ "on": day, "what": what, "formula": "known" })),
        }
    }
    let rules: Vec<&str> = Rule::ALL.iter().map(|rule| rule.code()).collect();
    file["consultation"] = json!({
        "known_since": "2000-01-01", "past": past, "agreed": [{ "who": "guest", "on": "2026-06-01", "rules": rules }],
    });
    let text = crate::api::service::field_use::without_nulls(file).to_string();
    let plan = foilwork::service::plan_text(&text, foilwork::reader::Format::Json).unwrap();
    let agreed = plan.consulted.unwrap().agreed;
    agreed[0].lapsed.iter().map(|one| (one.rule, one.why.clone())).collect()
}

#[test]
fn an_agreement_lapses_by_the_facts_that_its_rule_rests_on() {
    for fact in ["skin test", "strand test", "incompatibility test", "toner", "permed"] {
        let found = lapsed(&[(fact, "2026-09-03")]);
        let want = Rule::ALL.iter().copied().filter(|rule| rests_on(*rule, fact));
        let want: Vec<_> = want.map(|rule| (rule, format!("{fact} of 2026-09-03 came after it"))).collect();
        assert_eq!(found, want, "{fact}");
        // What came before it, or on the same day, takes nothing away.
        assert_eq!(lapsed(&[(fact, "2026-05-31")]), []);
        assert_eq!(lapsed(&[(fact, "2026-06-01")]), []);
    }
    // Of several the latest is told, whichever is named first.
    let told = |facts: &[(&str, &str)], rule: Rule| lapsed(facts).into_iter().find(|one| one.0 == rule).unwrap().1;
    for (first, second) in [("2026-08-01", "2026-10-01"), ("2026-10-01", "2026-08-01")] {
        let late = if first > second { "toner" } else { "permed" };
        let want = format!("{late} of 2026-10-01 came after it");
        assert_eq!(told(&[("toner", first), ("permed", second)], Rule::Elasticity), want);
        let late = if first > second { "strand test" } else { "permed" };
        let want = format!("{late} of 2026-10-01 came after it");
        assert_eq!(told(&[("strand test", first), ("permed", second)], Rule::Lift), want);
    }
}

/// Forty sections have a day, one more has none (what a search can prove is bounded there).
#[test]
fn a_day_is_laid_out_for_forty_sections_at_most() {
    for (sections, want) in [(40, true), (41, false)] {
        let plan = changed(fine(), |file| {
            file.root_shadow = None;
            let mut first = file.section.remove(0);
            (first.share_percent, first.apply_min, first.develop_min) = (Some(1.0), Some(1.0), 5.0);
            first.mix_g = Some(6.0);
            file.section = (0..sections)
                .map(|place| {
                    let mut one = first.clone();
                    one.name = format!("part {place}");
                    one
                })
                .collect();
        });
        assert_eq!(plan.day.is_some(), want, "{sections}");
        assert_eq!(plan.order.len(), sections + 1);
    }
}
