//! What speaks against more lightener on a section today, and what nobody knows.

use super::{
    Comfort, FoilHeat, Instruction, SectionSoFar,
    again::{Asked, Fresh},
    instructions::{concerns_all, itching},
    replay::LEAST_MIN,
    toned::toned_at,
    too_long::{RETURNS_SLOWLY, over, time_on, too_long_on},
};
use crate::{
    finding::{Finding, Verdict},
    lift::{Strain, TimeOn, is_worth_it},
    quantity::{Duration, Quantity},
    service::{Mix, shape::Elasticity},
    source::Sourced,
    text::{amount, of_hundred, whole_minutes},
};

/// How often lightener goes on the same hair in one visit.
const MOST_APPLICATIONS: Sourced<usize> = Sourced::assumed(2);

impl Asked<'_> {
    /// What forbids peroxide here whatever the level: the log first, then the plan, as far as it speaks of no other mix.
    pub(super) fn stops(&self) -> Vec<String> {
        let of_log = self.follows.iter().filter(|one| one.verdict == Verdict::Stop);
        // What is on comes off where a foil swelled elsewhere; what is rinsed is tested first.
        let of_here = |one: &&Instruction| match &one.section {
            Some(section) if *section == self.one.name => true,
            Some(_) => self.one.rinsed.is_none() && concerns_all(self.so_far, one),
            None => true,
        };
        let here = of_log.filter(of_here);
        let mixes = &self.moved.mixes;
        let of_plan = self.plan_stops(|place| {
            let concerns = |mix: &Mix| mix.findings.contains(&place);
            !mixes.iter().any(concerns) || mixes.iter().any(|mix| mix.name == self.one.name && concerns(mix))
        });
        let stayed = too_long_on(self.moved, self.so_far, self.one);
        let told = |one: &Instruction| {
            let own = one.section.as_ref() == Some(&self.one.name);
            if own { one.text.clone() } else { one.told() }
        };
        here.map(told).chain(stayed).chain(of_plan.map(|one| format!("the plan says stop: {}", one.text))).collect()
    }

    /// What the plan says stop to, by the places of the findings.
    fn plan_stops(&self, wanted: impl Fn(usize) -> bool) -> impl Iterator<Item = &Finding> {
        let all = self.moved.findings.iter().enumerate();
        all.filter(move |(place, one)| one.verdict == Verdict::Stop && wanted(*place)).map(|(_, one)| one)
    }

    /// How long what is not rinsed is on, from the application before where no rinse was noted between the two.
    pub(super) fn still_on(&self) -> Option<TimeOn> {
        self.one.begun?;
        time_on(self.moved, self.so_far, self.one)
    }

    /// A minute from the first strand of what is on, on the clock of the log.
    pub(super) fn on_clock(&self, at: Duration) -> Option<Duration> {
        let on = self.one.on_now(self.so_far.now)?;
        Some(Duration::nearest(on.begun.min() + at.min()))
    }

    /// What is left of the planned time or of what the products allow, whichever ends first; of the latter once the former is up.
    pub(super) fn time_left(&self, time: &TimeOn) -> String {
        let begun = self.one.on_now(self.so_far.now).map_or(Duration::ZERO, |on| on.begun);
        let left = |end: Duration| whole_minutes(Duration::nearest((end.min() - time.on.min()).max(0.0)));
        time.told(begun).unwrap_or_else(|| match time.longest.filter(|longest| *longest < time.planned) {
            Some(longest) => format!(
                "less is left than was planned; {} min are left of the longest that the product allows: look every five minutes, and \
                 rinse within them whatever the level",
                left(longest)
            ),
            None => format!("{} min are left of the planned time", left(time.planned)),
        })
    }

    /// Why what is on comes off now, the level aside. The planned time alone does not say so where the products' own is known.
    pub(super) fn rinse_now(&self, time: &TimeOn) -> Vec<String> {
        let mut why: Vec<String> = over(time).into_iter().collect();
        if self.one.elasticity == Some(Elasticity::Reduced) {
            why.push(RETURNS_SLOWLY.to_owned());
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
        self.swollen_elsewhere().into_iter().chain(self.toner_stops()).chain(of_hair).collect()
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
        if !is_worth_it(fresh.chance.best()) {
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
        // A toner has peroxide too.
        let since = toned_at(self.moved, self.so_far, self.one).filter(|toned| *toned > since).unwrap_or(since);
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
        hot.into_iter().chain(self.swollen_elsewhere()).collect()
    }

    /// Foils that swelled elsewhere on the head: metal salts are seldom in one strand alone.
    pub(super) fn swollen_elsewhere(&self) -> Vec<String> {
        let swollen = |one: &&SectionSoFar| one.name != self.one.name && one.foil_worst == Some(FoilHeat::Swollen);
        let told = |one: &SectionSoFar| format!("a foil of {} swelled: test cut hair for metal salts first", one.name);
        self.so_far.sections.iter().filter(swollen).map(told).collect()
    }
}
