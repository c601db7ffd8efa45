//! Agreements that settle nothing any more: too old by the house's rule, or given before a fact that the finding rests on.

use super::{Hair, Start, TestDone};
use crate::{
    finding::Rule,
    service::{file::Moment, shape::Salon},
    text::number,
};
use jiff::civil::Date;
use schemars::JsonSchema;
use serde::Serialize;

/// A rule whose findings an agreement no longer settles.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Lapsed {
    /// The rule.
    pub rule: Rule,
    /// Why: what came after it, or how old it is.
    pub why: String,
}

/// What is known of the guest with its day, and the house's rule.
pub(super) struct Facts<'f> {
    pub(super) hair: &'f Hair,
    /// Earlier services that have a day.
    pub(super) past: Vec<(Start, String)>,
    pub(super) salon: &'f Salon,
    pub(super) start: Moment,
}

impl Facts<'_> {
    /// Of the rules that an agreement names, those that it no longer settles.
    pub(super) fn lapsed(&self, on: Moment, rules: &[Rule]) -> Vec<Lapsed> {
        let of = |rule: &Rule| Some(Lapsed { rule: *rule, why: self.too_old(on).or_else(|| self.later(on, *rule))? });
        rules.iter().filter_map(of).collect()
    }

    /// Older than the house lets an agreement stand; without such a rule no age is too great, and the sheet says the age.
    fn too_old(&self, on: Moment) -> Option<String> {
        let valid = self.salon.agreed_valid_days?;
        let days = days(on.earliest.date(), self.start.earliest.date());
        let source = self.salon.agreed_source.as_deref().unwrap_or("stated by you");
        (days as f64 > valid).then(|| {
            format!(
                "it is {days} days old, and `salon.agreed_valid_days` lets it stand for {} ({source})",
                number(valid, 1)
            )
        })
    }

    /// The latest fact after it that findings of the rule rest on.
    fn later(&self, on: Moment, rule: Rule) -> Option<String> {
        let test = |test: Option<TestDone>, name: &'static str| test.map(|test| (test.applied, name.to_owned()));
        let works = || self.past.iter().cloned();
        let mut facts: Vec<(Start, String)> = match rule {
            Rule::SkinTest | Rule::SkinTestAge | Rule::EarlierReaction => {
                test(self.hair.skin_test, "skin test").into_iter().collect()
            }
            Rule::MetalSalts => {
                test(self.hair.incompatibility_test, "incompatibility test").into_iter().chain(works()).collect()
            }
            // What the guest is, no day is noted for.
            Rule::Health | Rule::Airways | Rule::Age | Rule::BlackHenna | Rule::Scalp => Vec::new(),
            _ => test(self.hair.strand_test, "strand test").into_iter().chain(works()).collect(),
        };
        // A bare day is no later than another hour of it.
        facts.retain(|(fact, _)| fact.earliest() > on.latest);
        facts.sort_by_key(|(fact, _)| fact.earliest());
        let (fact, name) = facts.pop()?;
        Some(format!("{name} of {fact} came after it"))
    }
}

fn days(then: Date, now: Date) -> i64 {
    now.duration_since(then).as_hours() / 24
}
