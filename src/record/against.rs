//! What speaks against more lightener on a section today, and what nobody knows.

use super::{
    Comfort, FoilHeat, SectionSoFar,
    again::{Asked, Fresh, WORTH_PERCENT, of_hundred},
    instructions::itching,
    replay::LEAST_MIN,
};
use crate::{
    finding::{Finding, Verdict},
    lift::Strain,
    quantity::{Duration, Quantity},
    service::{Mix, shape::Elasticity},
    source::Sourced,
    text::{amount, number},
};

/// How often lightener goes on the same hair in one visit.
const MOST_APPLICATIONS: Sourced<usize> = Sourced::assumed(2);

impl Asked<'_> {
    /// What forbids peroxide here whatever the level: the log first, then the plan, as far as it speaks of no other mix.
    pub(super) fn stops(&self) -> Vec<String> {
        let of_log = self.follows.iter().filter(|one| one.verdict == Verdict::Stop);
        let here = of_log.filter(|one| one.section.as_ref().is_none_or(|name| *name == self.one.name));
        let mixes = &self.moved.mixes;
        let of_plan = self.plan_stops(|place| {
            let concerns = |mix: &Mix| mix.findings.contains(&place);
            !mixes.iter().any(concerns) || mixes.iter().any(|mix| mix.name == self.one.name && concerns(mix))
        });
        here.map(|one| one.text.clone()).chain(of_plan.map(|one| format!("the plan says stop: {}", one.text))).collect()
    }

    /// What the plan says stop to, by the places of the findings.
    fn plan_stops(&self, wanted: impl Fn(usize) -> bool) -> impl Iterator<Item = &Finding> {
        let all = self.moved.findings.iter().enumerate();
        all.filter(move |(place, one)| one.verdict == Verdict::Stop && wanted(*place)).map(|(_, one)| one)
    }

    /// How long what is not rinsed is on, from the application before where no rinse was noted between the two.
    pub(super) fn still_on(&self, carried: &[Duration]) -> Option<Duration> {
        if self.one.begun.is_none() || self.one.rinsed.is_some() {
            return None;
        }
        let unrinsed = self.unrinsed();
        Some(Duration::nearest(carried.iter().rev().take(unrinsed + 1).map(|time| time.min()).sum()))
    }

    /// How many applications before the last may still be on, as no rinse of them was noted.
    fn unrinsed(&self) -> usize {
        self.one.earlier.iter().rev().take_while(|earlier| !earlier.rinse_noted).count()
    }

    /// The longest that the products allow what is on, from its first strand; none unless they state it.
    fn allowed_min(&self) -> Option<f64> {
        let oldest = self.unrinsed().checked_sub(1).and_then(|place| self.one.earlier.iter().rev().nth(place));
        let (begun, applied) =
            oldest.map_or((self.one.begun, self.one.applied), |oldest| (Some(oldest.begun), oldest.applied));
        let planned = self.moved.order.iter().find(|step| step.name == self.one.name);
        // Where nobody noted when all of it was on, it took as long as planned.
        let noted = begun.zip(applied).or(planned.map(|step| (step.begin, step.applied)));
        let applying = noted.map_or(0.0, |(begun, applied)| (applied.min() - begun.min()).max(0.0));
        self.lift.longest_from_first_strand(Duration::nearest(applying)).map(Duration::min)
    }

    /// What is left of the planned time, or else of what the products allow.
    pub(super) fn time_left(&self, on: Duration) -> String {
        let planned = self.lift.limit.min() - on.min();
        match self.allowed_min() {
            Some(allowed) if planned <= 0.0 => {
                let left = (allowed - on.min()).max(0.0).floor();
                format!(
                    "the planned time is up; {} min are left of the longest that the product allows: look every five minutes, \
                     and rinse within them whatever the level",
                    number(left, 0)
                )
            }
            _ => format!("{} min are left of the planned time", number(planned, 0)),
        }
    }

    /// Why what is on comes off now, the level aside. The planned time alone does not say so where the products' own is known.
    pub(super) fn rinse_now(&self, on: Duration) -> Vec<String> {
        let mut why = Vec::new();
        let (most, which, aside) = match self.allowed_min() {
            Some(allowed) => (allowed, "longest that the product allows", ""),
            None => (self.lift.limit.min(), "planned time", ", and the product's longest is not on the shelf"),
        };
        let over = on.min() - most;
        if over >= 0.5 {
            why.push(format!("rinse now: {} min beyond the {which}{aside}", number(over, 0)));
        } else if over >= 0.0 {
            why.push(format!("rinse now: the {which} is up{aside}"));
        }
        if self.one.elasticity == Some(Elasticity::Reduced) {
            why.push("rinse now: a strand returns slowly".to_owned());
        }
        if let Some((at, Comfort::Itching)) = self.so_far.comfort {
            why.push(itching(at));
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
        let of_hair = strand.into_iter().chain(scalp).map(str::to_owned);
        self.toner_stops().into_iter().chain(of_hair).collect()
    }

    /// What the plan says stop to in the toner of this section, and so to toning it as planned.
    fn toner_stops(&self) -> Vec<String> {
        let of_section = self.moved.colour.iter().find(|colour| colour.section == self.one.name);
        let toner = of_section.and_then(|colour| colour.toner.as_deref());
        let Some(mix) = self.moved.mixes.iter().find(|mix| Some(mix.name.as_str()) == toner) else { return Vec::new() };
        let stops = self.plan_stops(|place| mix.findings.contains(&place));
        stops.map(|one| format!("the plan says stop to its toner: {}", one.text)).collect()
    }

    /// All that speaks against a fresh mix today, hair and scalp first.
    pub(super) fn against_fresh(&self, fresh: &Fresh) -> Vec<String> {
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
        let (times, most) = (self.one.applications(), MOST_APPLICATIONS.value);
        if times >= most {
            against.push(format!("it was put on {times} times today: {most} are the most in a visit"));
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
        for earlier in self.one.earlier.iter().filter(|earlier| !earlier.rinse_noted) {
            open.push(format!(
                "no rinse was noted before minute {}: if there was one, note it, for it was put on {} times then, and {} are the \
                 most in a visit",
                amount(earlier.rinsed, 0),
                self.one.earlier.len() + 1,
                MOST_APPLICATIONS.value
            ));
        }
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
