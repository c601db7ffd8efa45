//! What speaks against more lightener on a section today, and what nobody knows.

use super::{
    Comfort, FoilHeat, SectionSoFar,
    again::{Asked, Fresh, LEAST_MIN, WORTH_PERCENT, of_hundred},
};
use crate::{
    finding::Verdict,
    lift::Strain,
    quantity::{Duration, Quantity},
    service::shape::Elasticity,
    source::Sourced,
    text::{amount, number},
};

/// How often lightener goes on the same hair in one visit.
const MOST_APPLICATIONS: Sourced<usize> = Sourced::assumed(2);

impl Asked<'_> {
    /// What forbids peroxide whatever the level: the log first, then the plan.
    pub(super) fn stops(&self) -> Vec<String> {
        let of_log = self.follows.iter().filter(|one| one.verdict == Verdict::Stop);
        let here = of_log.filter(|one| one.section.as_ref().is_none_or(|name| *name == self.one.name));
        let of_plan = self.moved.findings.iter().filter(|one| one.verdict == Verdict::Stop);
        here.map(|one| one.text.clone()).chain(of_plan.map(|one| format!("the plan says stop: {}", one.text))).collect()
    }

    /// How long what is not rinsed is on, from the application before where no rinse was noted between the two.
    pub(super) fn still_on(&self, carried: &[Duration]) -> Option<Duration> {
        if self.one.begun.is_none() || self.one.rinsed.is_some() {
            return None;
        }
        let unrinsed = self.one.earlier.iter().rev().take_while(|earlier| !earlier.rinse_noted).count();
        Some(Duration::nearest(carried.iter().rev().take(unrinsed + 1).map(|time| time.min()).sum()))
    }

    /// Why what is on comes off now, the level aside.
    pub(super) fn rinse_now(&self, on: Duration) -> Vec<String> {
        let mut why = Vec::new();
        let over = on.min() - self.lift.limit.min();
        if over >= 0.5 {
            why.push(format!("rinse now: {} min beyond the longest time", number(over, 0)));
        } else if over >= 0.0 {
            why.push("rinse now: the longest time is up".to_owned());
        }
        if self.one.elasticity == Some(Elasticity::Reduced) {
            why.push("rinse now: a strand returns slowly".to_owned());
        }
        if let Some((at, Comfort::Itching)) = self.so_far.comfort {
            why.push(format!("rinse now: itching at minute {}", amount(at, 0)));
        }
        why
    }

    /// What is minded before the toner.
    pub(super) fn before_toner(&self) -> Vec<String> {
        let strand = match self.one.elasticity {
            None => Some("elasticity is not noted: test a damp strand before the toner"),
            Some(Elasticity::Reduced) => Some("a strand returns slowly: tone gently, treat, test again"),
            Some(_) => None,
        };
        let itches = matches!(self.so_far.comfort, Some((_, Comfort::Itching)));
        let scalp = itches.then_some("the scalp itches: look at it before the toner");
        strand.into_iter().chain(scalp).map(str::to_owned).collect()
    }

    /// All that speaks against a fresh mix today, hair and scalp first.
    pub(super) fn against_fresh(&self, carried: &[Duration], fresh: &Fresh) -> Vec<String> {
        let mut against = Vec::new();
        if self.one.elasticity == Some(Elasticity::Reduced) {
            against.push("a strand returns slowly: no second application today".to_owned());
        }
        if let Some(stated) = self.moved.hair.elasticity.filter(|stated| *stated != Elasticity::Good) {
            against.push(format!("elasticity was {stated} before the service: no second application today"));
        }
        if let Some((at, Comfort::Itching)) = self.so_far.comfort_worst {
            let still = matches!(self.so_far.comfort, Some((_, Comfort::Itching)));
            let itches = if still { "itches since" } else { "itched at" };
            against.push(format!("the scalp {itches} minute {}", amount(at, 0)));
        }
        let most = MOST_APPLICATIONS.value;
        if carried.len() >= most {
            against.push(format!("it was put on {} times today: {most} are the most in a visit", carried.len()));
        }
        for earlier in self.one.earlier.iter().filter(|earlier| !earlier.rinse_noted) {
            against.push(format!("no rinse was noted before minute {}", amount(earlier.rinsed, 0)));
        }
        if fresh.strain == Strain::Severe {
            against.push("with a fresh mix today the strain would be severe: breaking has to be expected".to_owned());
        }
        let (chance, limit) = (of_hundred(&fresh.chance), amount(self.lift.limit, 0));
        if fresh.chance.best().percent() < WORTH_PERCENT.value {
            against.push(format!("even a fresh mix reaches it within {limit} min in {chance} cases only"));
        }
        against
    }

    /// What nobody noted or what was noted too early, without which a fresh mix is not put on.
    pub(super) fn not_known(&self) -> Vec<String> {
        let mut open = self.foils();
        match (self.one.begun, self.one.rinsed) {
            (_, Some(_)) => {}
            (Some(_), None) => open.push("it is not rinsed: test and read it on rinsed hair".to_owned()),
            (None, None) => {
                open.push("neither its begin nor its rinse is noted: it is taken as on as planned".to_owned());
            }
        }
        // What was found before the rinse, or before the look where no rinse is noted, is not what the hair is like now.
        let seen = self.one.seen.last().map(|(at, _)| *at);
        let since = self.one.rinsed.or(seen).or(self.one.result_at).unwrap_or(Duration::ZERO);
        match (self.one.elasticity, self.one.elasticity_at) {
            (None, _) => open.push("elasticity is not noted: stretch a damp strand".to_owned()),
            (_, Some(at)) if at < since => {
                let (at, since) = (amount(at, 0), amount(since, 0));
                open.push(format!("elasticity was tested at minute {at}, before minute {since}: test again"));
            }
            _ => {}
        }
        match self.so_far.comfort {
            None => open.push("nobody asked how the scalp feels".to_owned()),
            Some((at, _)) if at < since => {
                let (at, since) = (amount(at, 0), amount(since, 0));
                open.push(format!("the scalp was asked about at minute {at}, before minute {since}: ask again"));
            }
            Some(_) => {}
        }
        let read = seen.filter(|at| self.one.result_at.is_none_or(|result| result < *at));
        if let (Some(seen), Some(rinsed)) = (read, self.one.rinsed)
            && rinsed.min() - seen.min() > LEAST_MIN
        {
            let before = amount(Duration::nearest(rinsed.min() - seen.min()), 0);
            open.push(format!("the level was seen {before} min before the rinse: read it on a clean strand"));
        }
        open
    }

    /// Foils that were hot here, or that swelled elsewhere on the head.
    fn foils(&self) -> Vec<String> {
        let hot = self.one.foil_worst == Some(FoilHeat::Hot);
        let hot = hot.then(|| "a foil was hot: find out why, and look at scalp and strands below it".to_owned());
        let swollen = |one: &&SectionSoFar| one.name != self.one.name && one.foil_worst == Some(FoilHeat::Swollen);
        let swollen = self
            .so_far
            .sections
            .iter()
            .filter(swollen)
            .map(|one| format!("a foil of {} swelled: test cut hair for metal salts first", one.name));
        hot.into_iter().chain(swollen).collect()
    }
}
