use super::{
    Evenness, Instruction, SectionSoFar, SoFar,
    begun::step_of,
    evenness::evenness,
    repeat::{mix_of, to_repeat},
    toned::{CameTo, came_to},
    too_long::{instructed, is_more},
};
use crate::{
    choice::choice,
    colour::Level,
    quantity::{Duration, Mass},
    service::{Plan, SectionLift, Step},
    source::{Interval, Sourced},
    text::{amount, list, number},
};
use schemars::JsonSchema;
use serde::Serialize;

/// Grams and levels that lie less apart are the same: a scale shows the tenth of a gram, and no eye reads a tenth of a level.
const SAME_WITHIN: Sourced<f64> = Sourced::assumed(0.05);

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
    /// Levels that came out, less the median of the forecast for the minutes that the first strand carried the mix: the mean
    /// over the sections.
    pub model_error_levels: Option<f64>,
    /// How many of them lie inside the interval that holds 80 of 100.
    pub inside_interval: usize,
    /// How many there are.
    pub forecasts: usize,
    /// Sections among them whose begin or rinse is not noted: held against the forecast for the time planned.
    pub for_planned_time: Vec<String>,
    /// Sections that came to a level and whose forecast is not judged, with the reason.
    pub not_judged: Vec<String>,
    /// Lines that the plan does not know, in words.
    pub left_out: Vec<String>,
    /// What it takes to repeat the result, a line for each section; what was on and is not repeated where a stop is among the
    /// instructions.
    pub to_repeat: Vec<String>,
    /// What follows from the log and from what its plan allows.
    pub instructions: Vec<Instruction>,
}

/// Holds what happened against the plan, which is best the one made before the service: levels seen since then move a forecast.
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
    let (mut for_planned_time, mut not_judged, mut repeated) = (Vec::new(), Vec::new(), Vec::new());
    for one in &so_far.sections {
        let (mix, step) = (mix_of(plan, one), step_of(plan, &one.name));
        let beyond = step.and_then(|step| too_long(one, step));
        let beyond = beyond.as_deref();
        let came_to = came_to(plan, so_far, one);
        let toned = came_to.lifted.is_none() && came_to.toned.is_some();
        let how = format!("; {}", came_to.how());
        let level = came_to.lifted.or(came_to.toned).map(|(_, level)| level.number());
        let mut pair = |what: Compared, planned: Option<f64>, actual: Option<f64>| {
            if let (Some(planned), Some(actual)) = (planned, actual) {
                pairs.push(PlannedActual {
                    section: one.name.clone(),
                    what,
                    planned,
                    actual,
                    words: words(actual - planned, what)
                        + match what {
                            Compared::OnHair => beyond.unwrap_or_default(),
                            Compared::Level if toned => &how,
                            _ => "",
                        },
                });
            }
        };
        pair(Compared::Mass, mix.map(|mix| mix.made().g()), one.weighed.map(Mass::g));
        let took = |from: Option<Duration>, to: Option<Duration>| Some(to?.min() - from?.min());
        let planned = step.map(|step| step.applied.min() - step.begin.min());
        let (begun, applied, _) = one.first();
        pair(Compared::Applying, planned, took(begun, applied));
        let planned = step.map(|step| step.rinse_by.min() - step.begin.min());
        let carried = one.carried().map(Duration::min);
        pair(Compared::OnHair, planned, carried);
        let lift = plan.lift.iter().find(|lift| lift.section == one.name);
        pair(Compared::Level, lift.map(|lift| lift.target_level.number()), level);
        match judged_one(plan, one, &came_to) {
            Some((result, Ok(forecast))) => {
                errors.push(result.number() - forecast.best().number());
                inside += usize::from(forecast.contains(result));
                for_planned_time.extend(carried.is_none().then(|| one.name.clone()));
            }
            Some((_, Err(why))) => not_judged.push(format!("{}: {why}", one.name)),
            None => {}
        }
        repeated.extend(to_repeat(plan, one, came_to));
    }
    let count = errors.len();
    let follows = instructed(plan, so_far);
    Record {
        format: 1,
        title: plan.title.clone(),
        guest: plan.guest.clone(),
        colourist: plan.colourist.clone(),
        pairs,
        evenness: evenness(plan, so_far, &follows),
        model_error_levels: (count > 0).then(|| errors.iter().sum::<f64>() / count as f64),
        inside_interval: inside,
        forecasts: count,
        for_planned_time,
        not_judged,
        left_out: strange(plan, so_far),
        to_repeat: repeated,
        instructions: follows,
    }
}

/// The sections whose forecast is judged: what each came to, and what was forecast for the time that it had.
pub(super) fn judged(plan: &Plan, so_far: &SoFar) -> Vec<(String, Level, Interval<Level>)> {
    let of = |one: &SectionSoFar| {
        let (result, forecast) = judged_one(plan, one, &came_to(plan, so_far, one))?;
        Some((one.name.clone(), result, forecast.ok()?))
    };
    so_far.sections.iter().filter_map(of).collect()
}

/// What a section came to, and what was forecast for its time, or why its forecast is not judged.
fn judged_one(
    plan: &Plan,
    one: &SectionSoFar,
    &CameTo { lifted, toned, why }: &CameTo,
) -> Option<(Level, Result<Interval<Level>, String>)> {
    let lift = plan.lift.iter().find(|lift| lift.section == one.name)?;
    let Some((_, result)) = lifted else {
        return toned.zip(why).map(|((_, level), why)| (level, Err(why.to_owned())));
    };
    if one.earlier.is_empty() {
        return Some((result, forecast(lift, one.carried().map(Duration::min))));
    }
    let again = if one.applications() > 1 { "put on more than once" } else { "begun again without a noted rinse" };
    Some((result, Err(format!("{again}, and forecast for one application"))))
}

/// The forecast for so many minutes, from those for the looks and for the planned rinse: between two of them in proportion,
/// for a look comes every few minutes. For a time that is not noted it is that for the planned one.
fn forecast(lift: &SectionLift, carried_min: Option<f64>) -> Result<Interval<Level>, String> {
    let Some(carried) = carried_min else { return Ok(lift.first_strand) };
    let mut known: Vec<(f64, Interval<Level>)> = lift
        .looks
        .iter()
        .map(|look| (look.on_hair.min(), look.level))
        .chain([(lift.limit.min(), lift.first_strand)])
        .collect();
    known.sort_by(|a, b| a.0.total_cmp(&b.0));
    // By a clock that is read to the minute, less than half of one beyond the ends is the end.
    let outside = known.iter().all(|(at, _)| *at < carried) || known.iter().all(|(at, _)| carried < *at);
    let off = |(at, _): &&(f64, Interval<Level>)| (at - carried).abs();
    let is_that = |one: &&(f64, Interval<Level>)| off(one) < 1e-9 || outside && !is_more(off(one), 0.0);
    let exact = known.iter().filter(is_that).min_by(|a, b| off(a).total_cmp(&off(b))).map(|(_, level)| *level);
    let between = || {
        known.iter().zip(known.iter().skip(1)).find(|((from, _), (to, _))| *from < carried && carried < *to).map(
            |((from, a), (to, b))| {
                let part = (carried - from) / (to - from);
                let level = |a: Level, b: Level| Level::clamped(a.number() + part * (b.number() - a.number()));
                Interval::ordered(level(a.low(), b.low()), level(a.best(), b.best()), level(a.high(), b.high()))
            },
        )
    };
    exact.or_else(between).ok_or_else(|| {
        let span = match known.as_slice() {
            [(from, _), .., (to, _)] => format!("from {} to {} min", number(*from, 0), number(*to, 0)),
            _ => format!("for {} min", number(lift.limit.min(), 0)),
        };
        format!("on the hair for {} min, and forecast {span}", number(carried, 1))
    })
}

/// Names of the log that no mix of the plan has, and times at which it was not on, in words.
pub(crate) fn strange(plan: &Plan, so_far: &SoFar) -> Vec<String> {
    let names: Vec<&str> = plan.mixes.iter().map(|mix| mix.name.as_str()).collect();
    let others = so_far.sections.iter().filter(|one| !names.contains(&one.name.as_str()));
    let told = |one: &SectionSoFar| {
        format!("lines of \"{}\", which the plan does not have: it has {}", one.name, list(&names, "and"))
    };
    let not_on = so_far.left_out.iter().map(|line| {
        let name = line.section.as_deref().unwrap_or_default();
        format!("{name}: minute {}, {}: {}", amount(line.at, 0), line.what, line.what.why_left_out())
    });
    others.map(told).chain(not_on).collect()
}

/// That the hair carried it for longer than the products let one application last, in words.
fn too_long(one: &SectionSoFar, step: &Step) -> Option<String> {
    let all = one.carried()?.min();
    let each = one.stretches(one.rinsed?).into_iter();
    let each = each
        .map(|on| Some((on.min(), step.longest_stated(on.begun, on.applied)?.min())))
        .collect::<Option<Vec<_>>>()?;
    let too_long = |(on, most): &(f64, f64)| is_more(*on, *most);
    if let Some((_, most)) = each.iter().find(|one| too_long(one)) {
        return Some(format!("; beyond the longest time, {} min", number(*most, 1)));
    }
    let (times, (_, most)) = (each.len(), each.first()?);
    too_long(&(all, *most))
        .then(|| format!("; {times} applications, and the longest time of one is {} min", number(*most, 1)))
}

fn words(more: f64, what: Compared) -> String {
    let decimals = if what == Compared::Level { 2 } else { 1 };
    let same = match what {
        Compared::Applying | Compared::OnHair => !is_more(more.abs(), 0.0),
        Compared::Mass | Compared::Level => more.abs() < SAME_WITHIN.value,
    };
    match more {
        _ if same => "as planned".to_owned(),
        more if more > 0.0 => format!("{} more than planned", number(more, decimals)),
        more => format!("{} less than planned", number(-more, decimals)),
    }
}
