use super::{Instruction, SectionSoFar, SoFar, instructions};
use crate::{
    choice::choice,
    colour::Level,
    quantity::{Duration, Mass},
    service::{Mix, Plan, Step},
    source::Interval,
    text::{list, number},
};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// What of a section is held against the plan.
    Compared: "what is compared" {
        /// What was weighed, in g.
        Mass = "mass-g" => "mix, g",
        /// How long it took to put on, in min.
        Applying = "applying-min" => "putting on, min",
        /// How long its first strand carried the mix, in min.
        OnHair = "on-hair-min" => "first strand, min",
        /// The level that it came to.
        Level = "level",
    }
}

/// One thing of one section, as planned and as it was.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PlannedActual {
    /// The section.
    pub section: String,
    /// What of it.
    pub what: Compared,
    /// As planned, in the unit of `what`.
    pub planned: f64,
    /// As it was.
    pub actual: f64,
    /// The difference in words.
    pub words: String,
}

/// How even the sections are.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Evenness {
    /// From the section furthest below its target to the one furthest above, in levels.
    pub spread_levels: f64,
    /// The section furthest below its target.
    pub worst: String,
    /// By how much it is below its target; less than none where it is above.
    pub short_levels: f64,
    /// What to do.
    pub text: String,
}

/// What happened, beside what was planned.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Record {
    /// Version of the form of this data.
    pub format: u32,
    /// The service.
    pub title: String,
    /// The guest's code.
    pub guest: Option<String>,
    /// Who works.
    pub colourist: Option<String>,
    /// Planned beside actual, section by section.
    pub pairs: Vec<PlannedActual>,
    /// How even the levels are, where at least two are known.
    pub evenness: Option<Evenness>,
    /// Levels that came out, less the median of the forecast: the mean over the sections, and how many there are.
    pub model_error_levels: Option<f64>,
    /// How many of them lie inside the interval that holds 80 of 100.
    pub inside_interval: usize,
    /// How many there are.
    pub forecasts: usize,
    /// What it takes to repeat the result, a line for each section.
    pub to_repeat: Vec<String>,
    /// What follows from the log.
    pub instructions: Vec<Instruction>,
}

/// Holds what happened against the plan.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, record::{read_log, record, replay}, service::{parse, plan}};
///
/// let plan = plan(&parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?)?;
/// let log = read_log("{\"format\":1,\"at_min\":1,\"what\":\"weighed\",\"section\":\"nape\",\"mass_g\":52}\n");
/// let record = record(&plan, &replay(&log.entries));
/// assert!(record.to_repeat[0].starts_with("nape: 52 g"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn record(plan: &Plan, so_far: &SoFar) -> Record {
    let mut pairs = Vec::new();
    let (mut errors, mut inside) = (Vec::new(), 0);
    for one in &so_far.sections {
        let mut pair = |what: Compared, planned: Option<f64>, actual: Option<f64>| {
            if let (Some(planned), Some(actual)) = (planned, actual) {
                pairs.push(PlannedActual {
                    section: one.name.clone(),
                    what,
                    planned,
                    actual,
                    words: words(actual - planned, what),
                });
            }
        };
        let (mix, step) = (mix_of(plan, one), step_of(plan, one));
        pair(Compared::Mass, mix.map(|mix| made(mix).g()), one.weighed.map(Mass::g));
        let took = |from: Option<Duration>, to: Option<Duration>| Some(to?.min() - from?.min());
        let planned = step.map(|step| step.applied.min() - step.begin.min());
        pair(Compared::Applying, planned, took(one.begun, one.applied));
        let planned = step.map(|step| step.rinse_by.min() - step.begin.min());
        pair(Compared::OnHair, planned, took(one.begun, one.rinsed));
        let lift = plan.lift.iter().find(|lift| lift.section == one.name);
        pair(Compared::Level, lift.map(|lift| lift.target_level.number()), one.result.map(Level::number));
        if let (Some(lift), Some(result)) = (lift, one.result) {
            let forecast: Interval<Level> = lift.first_strand;
            errors.push(result.number() - forecast.best().number());
            inside += usize::from(forecast.contains(result));
        }
    }
    let count = errors.len();
    Record {
        format: 1,
        title: plan.title.clone(),
        guest: plan.guest.clone(),
        colourist: plan.colourist.clone(),
        pairs,
        evenness: evenness(plan, so_far),
        model_error_levels: (count > 0).then(|| errors.iter().sum::<f64>() / count as f64),
        inside_interval: inside,
        forecasts: count,
        to_repeat: so_far.sections.iter().filter_map(|one| to_repeat(plan, one)).collect(),
        instructions: instructions(so_far),
    }
}

fn mix_of<'p>(plan: &'p Plan, one: &SectionSoFar) -> Option<&'p Mix> {
    plan.mixes.iter().find(|mix| mix.name == one.name)
}

fn step_of<'p>(plan: &'p Plan, one: &SectionSoFar) -> Option<&'p Step> {
    plan.order.iter().find(|step| step.name == one.name)
}

/// All that the plan makes of a mix.
fn made(mix: &Mix) -> Mass {
    let bowls = mix.bowls.iter().flat_map(|bowl| std::iter::repeat_n(bowl.total, bowl.count));
    bowls.fold(Mass::ZERO, |sum, bowl| sum + bowl)
}

fn words(more: f64, what: Compared) -> String {
    let decimals = if what == Compared::Level { 2 } else { 1 };
    match more {
        more if more.abs() < 0.05 => "as planned".to_owned(),
        more if more > 0.0 => format!("{} more than planned", number(more, decimals)),
        more => format!("{} less than planned", number(-more, decimals)),
    }
}

/// The latest level of each section against its target: sections that are meant to differ are not uneven.
fn evenness(plan: &Plan, so_far: &SoFar) -> Option<Evenness> {
    let of = |one: &SectionSoFar| {
        let level = one.result.or_else(|| one.seen.last().map(|(_, level)| *level))?;
        let lift = plan.lift.iter().find(|lift| lift.section == one.name)?;
        Some((one.name.clone(), lift.target_level.number() - level.number()))
    };
    let mut short: Vec<(String, f64)> = so_far.sections.iter().filter_map(of).collect();
    short.sort_by(|a, b| b.1.total_cmp(&a.1));
    let [(worst, most), .., (_, least)] = short.as_slice() else { return None };
    let spread = most - least;
    let text = if spread < 0.5 {
        "within half a level, which an eye can read".to_owned()
    } else if *most > 0.25 {
        format!(
            "{worst} is behind: leave it on within its limit, or tone the others down to it; no fresh mix on what is there"
        )
    } else {
        "all are there, some beyond: tone the lightest down".to_owned()
    };
    Some(Evenness { spread_levels: spread, worst: worst.clone(), short_levels: *most, text })
}

/// Mix as weighed, strength, minutes and result: what another colourist needs to do the same.
fn to_repeat(plan: &Plan, one: &SectionSoFar) -> Option<String> {
    let mix = mix_of(plan, one)?;
    let (planned, weighed) = (made(mix).g(), one.weighed.map_or(made(mix).g(), Mass::g));
    let factor = if planned > 0.0 { weighed / planned } else { 1.0 };
    let parts = mix.bowls.iter().flat_map(|bowl| {
        bowl.parts.iter().map(move |part| (part.product.as_str(), part.weigh.g() * bowl.count as f64))
    });
    let mut grams: Vec<(&str, f64)> = Vec::new();
    for (product, g) in parts {
        match grams.iter_mut().find(|(known, _)| *known == product) {
            Some((_, sum)) => *sum += g * factor,
            None => grams.push((product, g * factor)),
        }
    }
    let parts: Vec<String> = grams.iter().map(|(product, g)| format!("{} g {product}", number(*g, 1))).collect();
    let basis = if one.weighed.is_some() { "" } else { " as planned, nobody noted what was weighed" };
    let mut said = vec![format!(
        "{} g{basis}: {}; {} % w/w on the hair",
        number(weighed, 1),
        list(&parts, "and"),
        number(mix.on_hair.best().ww_percent(), 2)
    )];
    if let (Some(begun), Some(rinsed)) = (one.begun, one.rinsed) {
        said.push(format!("{} min from the first strand", number(rinsed.min() - begun.min(), 0)));
    }
    if let Some(lift) = plan.lift.iter().find(|lift| lift.section == one.name) {
        said.push(format!("from level {}", number(lift.from_level.best().number(), 1)));
    }
    match (one.result, &one.tone) {
        (Some(level), Some(tone)) => said.push(format!("to level {} {tone}", number(level.number(), 1))),
        (Some(level), None) => said.push(format!("to level {}", number(level.number(), 1))),
        (None, _) => said.push("result unknown".to_owned()),
    }
    Some(format!("{}: {}", one.name, said.join("; ")))
}
