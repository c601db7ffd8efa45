//! How what a record says comes about.

use super::{Compared, PlannedActual, SoFar, compare::judged, evenness::shortfalls, record};
use crate::{
    colour::Level,
    service::Plan,
    source::{Basis, Interval, TracedInput, TracedResult},
};

const MORE: &str = "actual - planned";
const SPREAD: &str = "furthest below its target - least far below its target";
const OFF: &str = "mean of the levels that came out less the medians of their forecasts";

/// How the differences from the plan, the spread of the levels and the error of the forecast come about.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, record::{read_log, replay, trace_record}, service::plan_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let log = read_log("{\"format\":1,\"at_min\":1,\"what\":\"weighed\",\"section\":\"nape\",\"mass_g\":52}\n");
/// let first = &trace_record(&plan, &replay(&log.entries))[0];
/// assert_eq!((first.what.as_str(), first.unit.as_str()), ("nape: mix, more than planned", "g"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn trace_record(plan: &Plan, so_far: &SoFar) -> Vec<TracedResult> {
    let found = record(plan, so_far);
    let pairs = found.pairs.iter().map(pair);
    let short = shortfalls(plan, so_far);
    let spread = found.evenness.as_ref().and_then(|even| {
        let ends = short.first().zip(short.last())?;
        Some(spread(even.spread_levels, ends))
    });
    let off = found.model_error_levels.map(|off| {
        let judged = judged(plan, so_far);
        let parts: Vec<String> = judged
            .iter()
            .map(|(_, result, forecast)| format!("({} - {})", result.number(), forecast.best().number()))
            .collect();
        let inputs = judged.iter().flat_map(|(section, result, forecast)| {
            [
                level(format!("{section}, level that came out"), Interval::exact(*result)).resting(Basis::Measured),
                level(format!("{section}, forecast"), *forecast),
            ]
        });
        TracedResult::new("error of the forecast", Interval::exact(off), "levels", OFF, Basis::Measured)
            .working(format!("({}) / {}", parts.join(" + "), judged.len()))
            .made_of(inputs)
    });
    pairs.chain(spread).chain(off).collect()
}

fn level(what: String, level: Interval<Level>) -> TracedInput {
    TracedInput::new(what, level.map(Level::number), "level")
}

fn pair(pair: &PlannedActual) -> TracedResult {
    let (what, unit) = match pair.what {
        Compared::Mass => ("mix", "g"),
        Compared::Applying => ("putting on", "min"),
        Compared::OnHair => ("first strand", "min"),
        Compared::Level => ("level", "levels"),
    };
    let number = |what: &str, value: f64| TracedInput::new(what, Interval::exact(value), unit);
    let more = Interval::exact(pair.actual - pair.planned);
    TracedResult::new(format!("{}: {what}, more than planned", pair.section), more, unit, MORE, Basis::Measured)
        .made_of([number("actual", pair.actual).resting(Basis::Measured), number("planned", pair.planned)])
}

fn spread(spread: f64, (most, least): (&(String, f64), &(String, f64))) -> TracedResult {
    let short = |what: &str, (section, levels): &(String, f64)| {
        TracedInput::new(format!("{what}, {section}"), Interval::exact(*levels), "levels").resting(Basis::Measured)
    };
    TracedResult::new("spread against the targets", Interval::exact(spread), "levels", SPREAD, Basis::Measured)
        .made_of([short("furthest below its target", most), short("least far below its target", least)])
}
