//! The stage after the timeline: how light each lightened section gets, how fast, how sure, and what a look has changed.

use super::{
    Evidence, Mix, SeenLevel, Step,
    check::most_lightening,
    sections::{Sections, Work},
    situation::situation,
    timeline::Timeline,
};
use crate::{
    colour::Level,
    lift::{
        self, Condition, Cover, Experience, Factor, Lightening, Look, MOST_VISITS, Next, OFTEN, Ph, Reader, Situation,
        Strain, StrandReading, TimeTo, Visit, advice, after_look, at_the_limit, chance_of_fresh, condition, series,
    },
    quantity::{Duration, MassFraction, Quantity, Share, Temperature},
    reader::{InField, Problems},
    service::request::{Request, guest},
    source::{Citation, Interval},
};
use schemars::JsonSchema;
use serde::Serialize;

/// Lift against time of one lightened section. Times count from its own first strand unless they say otherwise.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SectionLift {
    /// The section.
    pub section: String,
    /// The level it starts from: the darkest stretch, as far as its reading may be off.
    pub from_level: Interval<Level>,
    /// The level wanted.
    pub target_level: Level,
    /// Strength on the hair, as weighed.
    #[serde(rename = "on_hair_ww_percent")]
    pub on_hair: Interval<MassFraction>,
    /// Temperature of the mix: the room's, or what is assumed at the scalp.
    #[serde(rename = "temperature_c")]
    pub temperature: Temperature,
    /// What lies over the mix.
    pub cover: Cover,
    /// pH of the mixed bowl, where its maker states it.
    pub mixed_ph: Option<Ph>,
    /// Readings of this guest, or of this product where none is of this guest, that the forecast rests on. Without any it
    /// spans two levels either way.
    pub readings: usize,
    /// How long its first strand carries the mix when it is rinsed as planned.
    #[serde(rename = "limit_min")]
    pub limit: Duration,
    /// Its first strand when it is rinsed as planned: median and 80 % interval.
    #[serde(rename = "first_strand_level")]
    pub first_strand: Interval<Level>,
    /// Its last strand then.
    #[serde(rename = "last_strand_level")]
    pub last_strand: Interval<Level>,
    /// What the trade's rule for the developer gives, two levels either way.
    #[serde(rename = "rule_level")]
    pub rule: Interval<Level>,
    /// When the first strand reaches the target.
    pub reached: TimeTo,
    /// The same on the clock of the sheet.
    pub reached_on_clock: TimeTo,
    /// The chance that the first strand reaches the target as planned, with what it is from either bound of the start.
    #[serde(rename = "chance_percent")]
    pub chance: Interval<Share>,
    /// The same after a second, fresh application of the same time.
    #[serde(rename = "chance_with_a_fresh_mix_percent")]
    pub chance_fresh: Interval<Share>,
    /// Such visits one after another, up to the first that reaches it in 80 of 100 cases or the fourth.
    pub visits: Vec<Visit>,
    /// What to expect at each look at the first strand.
    pub looks: Vec<ExpectedLook>,
    /// What was seen in mid-service, and what follows.
    pub seen: Vec<SeenNow>,
    /// What the readings have and have not pinned down.
    pub known: String,
    /// When to read the next test strand to learn most.
    #[serde(rename = "next_strand_test_min")]
    pub next_strand_test: Duration,
    /// What it does to the fibre, in words: a comparison with a usual application.
    pub strain: Strain,
    /// The same as an index: 1 for 40 min at 4 % on the hair.
    pub strain_index: Interval<f64>,
    /// What the strain rests on.
    pub strain_sources: [&'static Citation; 3],
    /// The mix and the hair, as the law of lift takes them. Not part of the plain data.
    #[serde(skip)]
    #[schemars(skip)]
    pub situation: Situation,
    /// The same made ready, with what is believed of this hair. Not part of the plain data.
    #[serde(skip)]
    #[schemars(skip)]
    pub lightening: Lightening,
    /// The levers that move the rates off those of the reference mix.
    pub levers: Vec<Factor>,
}

/// What to expect at a look.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct ExpectedLook {
    /// On the clock of the sheet.
    #[serde(rename = "at_min")]
    pub at: Duration,
    /// How long the first strand has carried the mix.
    #[serde(rename = "on_hair_min")]
    pub on_hair: Duration,
    /// Its level: median and 80 % interval.
    pub level: Interval<Level>,
}

/// A level seen in mid-service and what follows from it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SeenNow {
    /// When, on the clock of the sheet.
    #[serde(rename = "at_min")]
    pub at: Duration,
    /// What was seen.
    pub level: Level,
    /// What to do.
    pub next: Next,
    /// Why.
    pub why: String,
    /// When to look again, on the clock of the sheet.
    #[serde(rename = "look_again_min")]
    pub look_again: Option<Duration>,
}

/// All readings that bear on this guest, before any look.
pub(super) fn readings(request: &Request, evidence: &Evidence) -> Vec<StrandReading> {
    let book = evidence.book.iter().flat_map(|book| &book.readings);
    request.strands.iter().chain(book).cloned().collect()
}

/// The lightened sections, in the order of the work.
pub(super) fn lift(
    request: &Request,
    sections: &Sections<'_>,
    (mixes, timeline): (&[Mix], &Timeline),
    evidence: &Evidence,
) -> Result<Vec<SectionLift>, Problems> {
    let works: Vec<Lit> = sections
        .iter()
        .zip(mixes)
        .filter(|(work, _)| work.is_section() && work.lightens() && work.has_peroxide())
        .filter_map(|(work, mix)| {
            let step = timeline.at(work)?;
            Some(Lit { work, mix, step, situation: situation(request, work, mix.on_hair) })
        })
        .collect();
    let looks: Result<Vec<(usize, Look)>, Problems> = evidence.seen.iter().map(|seen| looked(&works, seen)).collect();
    let looks = looks?;
    let mut known = readings(request, evidence);
    let strands = known.len();
    let guest = guest(&request.file);
    for (i, look) in &looks {
        known.extend(works.get(*i).map(|lit| lit.reading(look, guest)));
    }
    let all = Experience::from_readings(&known);
    let sections = works.iter().enumerate().map(|(place, lit)| {
        let seen = looks.iter().enumerate().filter(|(_, (i, _))| *i == place).map(|(k, (_, look))| {
            // The look itself is weighed by the rule that reads it; all others are known already.
            let mut others = known.clone();
            others.remove(strands + k);
            let before = Experience::from_readings(&others).of(Some(guest), lit.product());
            (*look, after_look(&before, look))
        });
        lit.forecast(&all, guest, &seen.collect::<Vec<_>>())
    });
    Ok(sections.collect())
}

/// A lightened section with all that the law needs.
struct Lit<'s, 'r> {
    work: &'s Work<'r>,
    mix: &'s Mix,
    step: &'s Step,
    situation: Situation,
}

fn looked(works: &[Lit<'_, '_>], seen: &SeenLevel) -> Result<(usize, Look), Problems> {
    let found = works.iter().position(|lit| lit.work.name() == seen.section);
    let names = || works.iter().map(|lit| lit.work.name()).collect::<Vec<_>>().join(", ");
    let missing = || format!("no lightened section is called \"{}\": the plan has {}", seen.section, names());
    let place = found.ok_or_else(missing).in_field("seen")?;
    let lit = works.get(place).ok_or_else(missing).in_field("seen")?;
    let on_hair = seen.at.min() - lit.step.begin.min();
    if on_hair <= 0.0 {
        let text = format!(
            "{} is not on the hair at minute {}: it begins at {}",
            seen.section,
            crate::text::amount(seen.at, 0),
            crate::text::amount(lit.step.begin, 0)
        );
        return Err(text).in_field("seen");
    }
    Ok((place, lit.look(Duration::nearest(on_hair), seen.level)))
}

impl Lit<'_, '_> {
    fn product(&self) -> Option<&str> {
        self.work.products.first().map(|(item, _)| item.name.as_str())
    }

    fn limit(&self) -> Duration {
        Duration::nearest(self.step.rinse_by.min() - self.step.begin.min())
    }

    fn start(&self) -> Level {
        self.work.darkest.best()
    }

    fn target(&self) -> Level {
        self.work.task.target.unwrap_or_else(|| self.start())
    }

    fn look(&self, at: Duration, seen: Level) -> Look {
        let (situation, start, target, limit) = (self.situation, self.start(), self.target(), self.limit());
        let longest = self.step.longest_known(self.step.begin, Some(self.step.applied));
        Look { situation, start, target, at, seen, reader: Reader::Eye, limit, longest }
    }

    fn reading(&self, look: &Look, guest: &str) -> StrandReading {
        StrandReading {
            situation: self.situation,
            time: look.at,
            before: look.start,
            after: look.seen,
            reader: look.reader,
            guest: Some(guest.to_owned()),
            product: self.product().map(str::to_owned),
        }
    }

    fn on_clock(&self, on_hair: Duration) -> Duration {
        Duration::nearest(self.step.begin.min() + on_hair.min())
    }

    fn seen(&self, look: &Look, after: &lift::AfterLook, lightening: &Lightening) -> SeenNow {
        let (next, why) = match after.next {
            // By all that is known by now and from either bound of the start, as beside a log.
            Next::FreshMix | Next::NextVisit => {
                let chance = chance_of_fresh(lightening, &[look.at], look.target, look.limit);
                at_the_limit((look.time().end(), look.seen, look.target), &chance)
            }
            Next::GoOn => {
                let told = look.time().told(self.step.begin);
                (after.next, told.unwrap_or_else(|| after.why.clone()))
            }
            Next::Rinse | Next::LookNow => (after.next, after.why.clone()),
        };
        SeenNow {
            at: self.on_clock(look.at),
            level: look.seen,
            next,
            why,
            look_again: after.look_again.map(|at| self.on_clock(at)),
        }
    }

    fn forecast(&self, known: &Experience, guest: &str, seen: &[(Look, lift::AfterLook)]) -> SectionLift {
        let belief = known.of(Some(guest), self.product());
        let (target, limit) = (self.target(), self.limit());
        let lightening = Lightening::new(&belief, &self.situation, self.work.darkest);
        let last = Duration::nearest((limit.min() - self.work.task.apply.min()).max(0.0));
        let reached = lightening.time_to(target);
        let clock = |time: Option<Duration>| time.map(|time| self.on_clock(time));
        let visits = series(&lightening, target, limit, OFTEN, MOST_VISITS);
        // The first of them is this service, the second a fresh mixture on it.
        let (first, second) = (visits.first(), visits.get(1));
        let Condition { index, strain, citations } = condition(&[(self.situation, limit)]);
        let advice = advice(&belief, &self.situation, self.work.darkest, limit);
        let looks = self.step.look_at.iter().map(|at| {
            let on_hair = Duration::nearest(at.min() - self.step.begin.min());
            ExpectedLook { at: *at, on_hair, level: lightening.level_after(on_hair) }
        });
        let off_reference = |factor: &Factor| !(factor.times.is_exact() && factor.times.best() == 1.0);
        let levers = self.situation.on_pigment().into_iter().chain(self.situation.on_oxidant());
        SectionLift {
            section: self.work.name().to_owned(),
            from_level: self.work.darkest,
            target_level: target,
            on_hair: self.mix.on_hair,
            temperature: self.situation.temperature,
            cover: self.situation.cover,
            mixed_ph: self.situation.ph,
            readings: belief.readings(),
            limit,
            first_strand: first.map_or_else(|| lightening.level_after(limit), |visit| visit.level),
            last_strand: lightening.level_after(last),
            rule: rule(self.work.darkest, most_lightening(self.mix.developer.best())),
            reached,
            reached_on_clock: TimeTo {
                early: clock(reached.early),
                median: clock(reached.median),
                late: clock(reached.late),
            },
            chance: first.map_or_else(|| lightening.chance_between(target, limit), |visit| visit.chance),
            chance_fresh: second
                .map_or_else(|| lightening.after(limit).chance_between(target, limit), |visit| visit.chance),
            visits,
            looks: looks.collect(),
            seen: seen.iter().map(|(look, after)| self.seen(look, after, &lightening)).collect(),
            known: advice.known,
            next_strand_test: advice.read_at,
            strain,
            strain_index: index,
            strain_sources: citations,
            situation: self.situation,
            lightening,
            levers: levers.filter(off_reference).collect(),
        }
    }
}

/// The trade's rule gives what one session reaches, give or take two levels, from where the hair is read to start.
fn rule(start: Interval<Level>, levels: f64) -> Interval<Level> {
    let to = |start: Level, levels: f64| Level::clamped(start.number() + levels.max(0.0));
    Interval::ordered(to(start.low(), levels - 2.0), to(start.best(), levels), to(start.high(), levels + 2.0))
}
