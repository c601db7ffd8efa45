//! Which levels were read with a toner on the hair, which darkens.

use super::{SectionSoFar, SoFar, so_far::read_last};
use crate::{
    colour::Level,
    quantity::Duration,
    service::{Plan, WorkStage},
};

/// Why a level teaches nothing of lifting.
const TONED: &str = "read after the toner, which is no level of lifting";
const MAY_BE_TONED: &str = "read after the rinse, and when the toner went on is not noted";

/// What a section came to: lifted, and with its toner on it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct CameTo {
    /// The result that was read last before its toner went on, and when.
    pub(crate) lifted: Option<(Duration, Level)>,
    /// The last result, where it was read with the toner on, or may have been.
    pub(crate) toned: Option<(Duration, Level)>,
    /// Why that decides nothing.
    pub(super) why: Option<&'static str>,
}

impl CameTo {
    /// How the last result was read, where a toner was on it or may have been.
    pub(super) fn how(&self) -> &'static str {
        if self.why == Some(MAY_BE_TONED) { MAY_BE_TONED } else { "read with the toner on" }
    }
}

pub(crate) fn came_to(plan: &Plan, so_far: &SoFar, one: &SectionSoFar) -> CameTo {
    let why = |(at, _): &(Duration, Level)| why_not_bare(plan, so_far, one, *at);
    let lifted = one.results().filter(|read| why(read).is_none()).last();
    let toned = one.results().last().filter(|read| why(read).is_some());
    CameTo { lifted, toned, why: toned.as_ref().and_then(why) }
}

/// The level known last that no toner can have darkened: what more lightener is decided by.
pub(super) fn level_without_toner(plan: &Plan, so_far: &SoFar, one: &SectionSoFar) -> Option<(Duration, Level)> {
    let bare = |(at, _): &(Duration, Level)| !toned_by(plan, so_far, one, *at, Unnoted::FromTheRinse);
    read_last(one.results().filter(bare).last(), one.seen.iter().copied().rfind(bare))
}

/// Whether it is a toner, or what else comes after the sections.
pub(super) fn goes_on_after(plan: &Plan, name: &str) -> bool {
    plan.mixes.iter().any(|mix| mix.name == name && mix.stage != WorkStage::Section)
}

/// Why no more lightener is decided by what was read of a section at a minute; none where no toner can have darkened it.
pub(super) fn why_not_bare(plan: &Plan, so_far: &SoFar, one: &SectionSoFar, at: Duration) -> Option<&'static str> {
    let toned = |unnoted: Unnoted| toned_by(plan, so_far, one, at, unnoted);
    let may_be = || toned(Unnoted::FromTheRinse).then_some(MAY_BE_TONED);
    toned(Unnoted::FromWhatIsNoted).then_some(TONED).or_else(may_be)
}

/// When the last toner of a section went on it, as far as it is noted.
pub(super) fn toned_at(plan: &Plan, so_far: &SoFar, one: &SectionSoFar) -> Option<Duration> {
    let all = toners(plan, so_far, one).into_iter().flat_map(|toner| begins(toner, None));
    all.reduce(|a, b| if b > a { b } else { a })
}

/// From when on a toner is on whose begin nobody noted.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Unnoted {
    /// From the end of its application, or else from its rinse.
    FromWhatIsNoted,
    /// From the rinse of the section: nothing read after that is taken as bare.
    FromTheRinse,
}

/// Once a section is rinsed, a toner that goes on it darkens what is read; what is on lightens on while another section is toned,
/// and what is put on again after a toner lightens that too.
fn toned_by(plan: &Plan, so_far: &SoFar, one: &SectionSoFar, at: Duration, unnoted: Unnoted) -> bool {
    let of_first = one.earlier.iter().any(|earlier| earlier.rinse_noted && earlier.rinsed <= at);
    let again = one.begun.filter(|begun| of_first && *begun <= at);
    let of_now = one.rinsed.filter(|rinsed| *rinsed <= at);
    let of_earlier = one.earlier.iter().rev().find(|earlier| earlier.rinse_noted && earlier.rinsed <= at);
    let since = of_now.or(of_earlier.map(|earlier| earlier.rinsed)).filter(|_| unnoted == Unnoted::FromTheRinse);
    let rinsed = of_now.is_some() || of_first && again.is_none();
    let on = |begun: Duration| begun < at && again.is_none_or(|again| again <= begun);
    rinsed && toners(plan, so_far, one).into_iter().any(|toner| begins(toner, since).any(on))
}

/// The toners of the log that go on a section; of a root shadow nobody knows on which it ends.
fn toners<'l>(plan: &Plan, so_far: &'l SoFar, one: &SectionSoFar) -> Vec<&'l SectionSoFar> {
    let goes_on = |toner: &&SectionSoFar| {
        let mut steps = plan.order.iter().filter(|step| step.name == toner.name && step.stage != WorkStage::Section);
        steps.any(|step| step.goes_on.is_empty() || step.goes_on.contains(&one.name))
    };
    so_far.sections.iter().filter(goes_on).collect()
}

/// When it went on, each time; a begin that nobody noted was at the rinse of the section, where that is given.
fn begins(toner: &SectionSoFar, since: Option<Duration>) -> impl Iterator<Item = Duration> {
    let known = toner.applied.or(toner.rinsed);
    let last = toner.begun.or(known.map(|known| since.filter(|since| *since < known).unwrap_or(known)));
    toner.earlier.iter().map(|earlier| earlier.begun).chain(last)
}
