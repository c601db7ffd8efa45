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

#[cfg(test)]
mod tests {
    use super::{
        MAY_BE_TONED, Plan, SoFar, TONED, came_to, goes_on_after, level_without_toner, toned_at, why_not_bare,
    };
    use crate::{
        colour::Level,
        quantity::Duration,
        reader::Format,
        record::{LogEntry, Noted, replay},
        service::plan_text,
    };
    use std::sync::LazyLock;

    /// The toner "lengths" goes on nape and hairline, "crown gloss" on the crown; the root shadow says not on what.
    static GRADIENT: LazyLock<Plan> =
        LazyLock::new(|| plan_text(include_str!("../../examples/soft-gradient.toml"), Format::Toml).unwrap());

    /// Words such as `Lb85`: the toner of the lengths, begun in minute 85. `a` is all on, `r` rinsed; the nape has no letter in front, `G` is
    /// the gloss of the crown, `C` the crown, `S` the root shadow. A level is read by `=49`, which is 8.
    fn log(words: &str) -> SoFar {
        let line = |word: &str| {
            let (section, rest) = match &word[..1] {
                "L" => ("lengths", &word[1..]),
                "G" => ("crown gloss", &word[1..]),
                "C" => ("crown", &word[1..]),
                "S" => ("root shadow, 3 cm", &word[1..]),
                _ => ("nape", word),
            };
            let what = match &rest[..1] {
                "b" => Noted::Begun,
                "a" => Noted::Applied,
                "r" => Noted::Rinsed,
                _ => Noted::Seen,
            };
            let at = Duration::from_min(rest[1..].parse().unwrap()).unwrap();
            let level = Some(Level::clamped(8.0));
            LogEntry { section: Some(section.to_owned()), level, ..LogEntry::new(at, what) }
        };
        replay(&words.split_whitespace().map(line).collect::<Vec<_>>())
    }

    /// By hand: what is read of the nape at a minute is `bare`, read `with` the toner on, or it `may` be; in a minute in which the toner is begun
    /// it is not on yet, and what is on does not darken until it is rinsed.
    #[test]
    fn a_reading_is_bare_until_a_toner_went_on() {
        for (words, readings) in [
            ("b0 r45 Lb85", &[(30.0, "bare"), (45.0, "bare"), (85.0, "bare"), (86.0, "with")][..]),
            ("b0 r45 Lr100", &[(45.0, "bare"), (46.0, "may"), (100.0, "may"), (101.0, "with")]),
            ("b0 r45 La100 Lr110", &[(45.0, "bare"), (100.0, "may"), (101.0, "with")]),
            ("b0 r45 Lb80 La100 Lr110", &[(80.0, "bare"), (81.0, "with")]),
            ("b0 r45 Lr45", &[(45.0, "bare"), (46.0, "with")]),
            ("b0 Lb20", &[(30.0, "bare")]),
            ("b0 r45 Lb20", &[(44.0, "bare"), (45.0, "with")]),
            // Put on again: until then the toner is on, and what is read after it was rinsed anew is of the lightener.
            ("b0 r45 Lb50 Lr60 b70", &[(65.0, "with"), (70.0, "bare"), (80.0, "bare")]),
            ("b0 r45 Lb50 Lr60 b70 r90", &[(69.0, "with"), (70.0, "bare"), (90.0, "bare"), (95.0, "bare")]),
            ("b0 r45 Lb50 Lr60 b70 r90 Lb92", &[(92.0, "bare"), (95.0, "with")]),
            ("b0 r45 b70 r90 Lb70", &[(89.0, "bare"), (95.0, "with")]),
            (
                "b0 r45 b70 r90 Lr100",
                &[(45.0, "bare"), (50.0, "may"), (75.0, "bare"), (90.0, "bare"), (95.0, "may"), (101.0, "with")],
            ),
            // Begun again without a rinse it was not rinsed.
            ("b0 b50 Lb60", &[(65.0, "bare")]),
            // Every time that the toner went on.
            ("b0 r45 Lb50 Lr55 Lb85 Lr95", &[(50.0, "bare"), (60.0, "with"), (90.0, "with")]),
            // Another toner, a section that is lightened, and the root shadow.
            ("b0 r45 Gb50 Cb51", &[(60.0, "bare")]),
            ("b0 r45 Sb50", &[(50.0, "bare"), (60.0, "with")]),
        ] {
            let so_far = log(words);
            for (at, want) in readings {
                let why = why_not_bare(&GRADIENT, &so_far, &so_far.sections[0], Duration::from_min(*at).unwrap());
                let got = match why {
                    Some(why) if why == TONED => "with",
                    Some(why) if why == MAY_BE_TONED => "may",
                    _ => "bare",
                };
                assert_eq!(got, *want, "{words} at {at}");
            }
        }
    }

    /// By hand: the last begin of a toner that goes on the nape; the last level before it; and how the last one was read.
    #[test]
    fn the_last_toner_and_the_last_bare_level_are_found() {
        let last = |words: &str| {
            let so_far = log(words);
            toned_at(&GRADIENT, &so_far, &so_far.sections[0]).map(Duration::min)
        };
        assert_eq!(
            [last("b0 Lb50 Lr55 Lb85"), last("b0 Lb50 Sb60"), last("b0 Sb60 Lb50")],
            [Some(85.0), Some(60.0), Some(60.0)]
        );
        assert_eq!([last("b0 La50 Lr55"), last("b0 Lr55"), last("b0 Gb50 Cb60")], [Some(50.0), Some(55.0), None]);
        let bare = |words: &str| {
            let so_far = log(words);
            level_without_toner(&GRADIENT, &so_far, &so_far.sections[0]).map(|(at, _)| at.min())
        };
        assert_eq!(bare("b0 =30 r45 =49 Lb85 =86 =105"), Some(49.0));
        assert_eq!((bare("b0 r45 Lb85 =86"), bare("b0 =30 r45 =46 Lr100")), (None, Some(30.0)));
        let known =
            ["lengths", "crown gloss", "root shadow, 3 cm", "nape", "beard"].map(|name| goes_on_after(&GRADIENT, name));
        assert_eq!(known, [true, true, true, false, false]);
        let result = |words: &str, at: f64| {
            let mut so_far = log(words);
            let one = &mut so_far.sections[0];
            (one.result, one.result_at) = (Some(Level::clamped(8.0)), Some(Duration::from_min(at).unwrap()));
            let found = came_to(&GRADIENT, &so_far, &so_far.sections[0]);
            (found.lifted.map(|(at, _)| at.min()), found.toned.map(|(at, _)| at.min()), found.how())
        };
        assert_eq!(result("b0 r45 Lb85", 50.0), (Some(50.0), None, "read with the toner on"));
        assert_eq!(result("b0 r45 Lb85", 90.0), (None, Some(90.0), "read with the toner on"));
        assert_eq!(result("b0 r45 Lr100", 90.0), (None, Some(90.0), MAY_BE_TONED));
    }
}
