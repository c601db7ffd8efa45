use super::{Comfort, FoilHeat, SectionSoFar, SoFar, replay::LEAST_MIN};
use crate::{
    finding::Verdict,
    quantity::Duration,
    service::shape::Elasticity,
    source::{Basis, Sourced},
    text::{amount, number},
};
use schemars::JsonSchema;
use serde::Serialize;

/// The guest is asked no later than after so many minutes.
const ASK_EVERY_MIN: Sourced<f64> = Sourced::assumed(10.0);

/// What follows from the log.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Instruction {
    /// How urgent it is.
    pub verdict: Verdict,
    /// The section, where it is about one.
    pub section: Option<String>,
    /// What to do, and why.
    pub text: String,
    /// What it rests on.
    pub basis: Basis,
}

/// What an itch asks for, wherever it is told.
pub(super) fn itching(at: Duration) -> String {
    format!("rinse now: itching at minute {}; look at the scalp", amount(at, 0))
}

impl Instruction {
    /// In words, with the section that it concerns.
    pub(crate) fn told(&self) -> String {
        match &self.section {
            Some(section) => format!("{section}: {}", self.text),
            None => self.text.clone(),
        }
    }
}

/// What follows from the log, the worst first. Where there is none, it does not say that anything is safe.
///
/// # Example
///
/// ```
/// use foilwork::{finding::Verdict, record::{instructions, read_log, replay}};
///
/// let line = "{\"format\":1,\"at_min\":20,\"what\":\"comfort\",\"comfort\":\"burning\"}\n";
/// let found = instructions(&replay(&read_log(line).entries));
/// assert_eq!(found[0].verdict, Verdict::Stop);
/// ```
#[must_use]
pub fn instructions(so_far: &SoFar) -> Vec<Instruction> {
    let of_incident = |(at, note): &(Duration, String)| Instruction {
        verdict: Verdict::Stop,
        section: None,
        text: format!(
            "{note} (minute {}): rinse with plenty of water, put nothing more on; where it is a reaction, have it seen by a \
             doctor and plan no colour until then",
            amount(*at, 0)
        ),
        basis: Basis::CommonPractice,
    };
    let mut found: Vec<Instruction> = so_far.incidents.iter().map(of_incident).collect();
    found.extend(of_signs(so_far));
    found.sort_by_key(|one| one.verdict);
    found
}

/// What follows from comfort, foils and strands.
pub(super) fn of_signs(so_far: &SoFar) -> Vec<Instruction> {
    let mut found = Vec::new();
    let said = |verdict, section: Option<&str>, text: String, basis| Instruction {
        verdict,
        section: section.map(str::to_owned),
        text,
        basis,
    };
    let on = || so_far.sections.iter().filter(|one| one.is_on());
    // A scalp that burned is not well because it feels well after the rinse.
    match (so_far.comfort_worst, so_far.comfort) {
        (Some((at, Comfort::Burning)), _) => {
            let text = format!(
                "burning or pain at minute {}: rinse everything now, and put no more lightener or peroxide on today, however it \
                 feels later",
                amount(at, 0)
            );
            found.push(said(Verdict::Stop, None, text, Basis::CommonPractice));
        }
        (_, Some((at, Comfort::Itching))) => {
            found.push(said(Verdict::Warning, None, itching(at), Basis::CommonPractice));
        }
        _ => {}
    }
    let asked = so_far.comfort.map_or(Duration::ZERO, |(at, _)| at);
    let first = on().filter_map(|one| one.begun.or(one.applied)).map(Duration::min).fold(f64::INFINITY, f64::min);
    let silent = so_far.now.min() - asked.min().max(first);
    if silent > ASK_EVERY_MIN.value {
        let text = format!("the guest was not asked for {silent:.0} min: ask how the scalp feels");
        found.push(said(Verdict::Warning, None, text, ASK_EVERY_MIN.basis));
    }
    for one in &so_far.sections {
        let name = Some(one.name.as_str());
        found.extend(swelling(one));
        if one.foil_is_hot() {
            let text = "a foil is hot: open it, let it cool, rinse it if it stays hot".to_owned();
            found.push(stop_of(one, text));
        }
        let mut goes_on = None;
        for earlier in &one.earlier {
            let first = goes_on.unwrap_or(earlier.begun);
            goes_on = Some(first).filter(|_| !earlier.rinse_noted);
            if earlier.rinse_noted {
                continue;
            }
            let [again, first, before] = [earlier.rinsed, first, earlier.begun].map(|at| amount(at, 0));
            let mend = if earlier.begin_noted {
                format!(
                    "if minute {again} was to correct minute {before}, take the line of minute {before} out of the log: a begin \
                     corrects by itself only one that is no more than {} min earlier",
                    number(LEAST_MIN, 0)
                )
            } else {
                "note its begin too: before the end of its application nobody noted one".to_owned()
            };
            let text = format!(
                "no rinse was noted before minute {again}, when it was begun again: it is counted as on from minute {first}, for \
                 the longer time is the safe side, and as put on once (note the rinse if there was one; {mend})"
            );
            found.push(said(Verdict::Warning, name, text, Basis::Assumed));
        }
        match one.elasticity {
            Some(Elasticity::Poor) => {
                let text =
                    "a strand stays stretched or breaks: rinse, no more lightener, no heat; treat only".to_owned();
                found.push(stop_of(one, text));
            }
            Some(Elasticity::Reduced) => {
                // Without a plan nobody knows here whether it is a toner.
                let rinse = if one.is_on() { "rinse what lightens now; " } else { "" };
                let text = format!(
                    "a strand returns slowly: {rinse}no second application today; tone gently, treat, test again"
                );
                found.push(said(Verdict::Warning, name, text, Basis::CommonPractice));
            }
            _ => {}
        }
    }
    found
}

/// What a foil that swelled says to do; none where none did.
pub(super) fn swelling(one: &SectionSoFar) -> Option<Instruction> {
    let text = if one.rinsed.is_none() {
        "a foil swells or bubbles: open and rinse it at once; think of metal salts"
    } else {
        "a foil swelled or bubbled: think of metal salts; nothing with peroxide goes on before an incompatibility test of cut \
         hair is clear"
    };
    (one.foil_worst == Some(FoilHeat::Swollen)).then(|| stop_of(one, text.to_owned()))
}

/// Whether what is said concerns all that is on: the guest, or a foil that swelled, for salts may be in all of the hair.
pub(super) fn concerns_all(so_far: &SoFar, one: &Instruction) -> bool {
    let is_that = |section: &SectionSoFar| swelling(section).is_some_and(|swelled| swelled == *one);
    one.section.is_none() || so_far.sections.iter().any(is_that)
}

fn stop_of(one: &SectionSoFar, text: String) -> Instruction {
    Instruction { verdict: Verdict::Stop, section: Some(one.name.clone()), text, basis: Basis::CommonPractice }
}

impl SectionSoFar {
    /// Whether a foil of it is hot now, and not swollen, which is worse.
    pub(crate) fn foil_is_hot(&self) -> bool {
        self.foil == Some(FoilHeat::Hot) && self.foil_worst != Some(FoilHeat::Swollen) && self.rinsed.is_none()
    }
}
