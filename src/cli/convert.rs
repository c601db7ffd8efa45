use super::{Answer, Outcome, Refusal, args::ConvertArgs, output, read};
use crate::{
    peroxide::{Conditions, StatedStrength, Strength, StrengthUnit, convert_interval, read_label, trace_conversion},
    quantity::{MassFraction, TradeLabel},
    source::Interval,
    text::{significant, wrapped},
};
use std::fmt::Write;

/// `foilwork convert`: one strength in every unit, with the bounds that the density brings.
pub(super) fn run(args: &ConvertArgs) -> Outcome {
    let conditions = read::conditions(&args.conditions)?;
    let units = match &args.to {
        Some(unit) => vec![unit.parse::<StrengthUnit>()?],
        None => StrengthUnit::ALL.to_vec(),
    };
    // A label is no strength yet: every reading of it is shown.
    if let Ok(StatedStrength::TradeLabel(label)) = args.strength.parse() {
        if args.trail.of.trail {
            let way_out = "write it as it is read: 6 % w/w, 6 % w/v or 20 volumes";
            return Err(Refusal(format!("--trail: {label} is a label and no strength ({way_out})")));
        }
        return label_readings(label, &conditions);
    }
    let strength: Strength = args.strength.parse()?;
    if args.trail.of.trail {
        let found = units.into_iter().map(|unit| trace_conversion(strength, unit, &conditions));
        let found: Vec<_> = match args.to {
            Some(_) => found.collect::<Result<_, _>>()?,
            // Of all units those that are known.
            None => found.filter_map(Result::ok).collect(),
        };
        return Ok(Answer::fine(output::trail(&found, args.trail.json)?));
    }
    let mut text = format!("{strength} of hydrogen peroxide at {} is\n", conditions.temperature);
    for unit in units {
        match convert_interval(strength, unit, &conditions) {
            Ok(interval) => writeln!(text, "  {}", line(&interval))?,
            Err(error) if args.to.is_some() => return Err(error.into()),
            Err(error) => writeln!(text, "  {unit}: not known ({error})")?,
        }
    }
    for note in notes(strength) {
        for line in wrapped(note) {
            writeln!(text, "{line}")?;
        }
    }
    let oxygen = conditions.molar_volume.code();
    writeln!(text, "density: {}; oxygen in volumes: {oxygen}", conditions.density.basis())?;
    Ok(Answer::fine(text))
}

/// What a reader may take the strength for.
fn notes(strength: Strength) -> Vec<&'static str> {
    let is = |number: f64, unit: StrengthUnit| strength.unit() == unit && (strength.number() - number).abs() < 1e-9;
    let mut notes = Vec::new();
    if strength.unit() == StrengthUnit::Volumes {
        notes.push("taken as measured oxygen; the number on a bottle is a label and is written 20 vol");
    }
    if is(6.0, StrengthUnit::WvPercent) {
        notes.push(PHARMACOPOEIAL);
    }
    notes
}

/// See [`BP_LIMITS`](crate::source::citations::peroxide::BP_LIMITS) and `IP_LIMITS` beside it.
const PHARMACOPOEIAL: &str = "a solution of the pharmacopoeias under that name may hold from 5.0 to 7.0 % w/v (British, 6 \
                              per cent; Indian, 20 vol)";

/// Five digits: more than any bottle is worth.
fn line(interval: &Interval<Strength>) -> String {
    let best = interval.best();
    let number = |strength: Strength| significant(strength.number(), 5);
    if interval.is_exact() {
        format!("{} {}", number(best), best.unit())
    } else {
        format!("{} {}  ({} to {})", number(best), best.unit(), number(interval.low()), number(interval.high()))
    }
}

fn label_readings(label: TradeLabel, conditions: &Conditions) -> Outcome {
    let readings = read_label(label, conditions)?;
    // Three digits: a label is worth no more.
    let ww = |strength: &Interval<MassFraction>| {
        let [low, best, high] = strength.to_array().map(|strength| significant(strength.ww_percent(), 3));
        if low == high { format!("{best} % w/w") } else { format!("{best} % w/w ({low} to {high})") }
    };
    let mut text = format!("{label} can mean three strengths; the label does not say which\n");
    let as_ww = ww(&readings.as_ww.into());
    writeln!(text, "  read as w/w: {as_ww}, really {:.1}", readings.volumes_if_ww.best())?;
    writeln!(text, "  read as w/v: {}, really {:.1}", ww(&readings.as_wv), readings.volumes_if_wv)?;
    writeln!(text, "  read as oxygen volumes: {}", ww(&readings.as_volumes))?;
    let spread = readings.spread();
    let [low, high] = [spread.low(), spread.high()].map(|x| significant(x.ww_percent(), 3));
    writeln!(text, "so from {low} to {high} % w/w; `foilwork titrate` tells which")?;
    if label == TradeLabel::VOL_20 {
        for line in wrapped(PHARMACOPOEIAL) {
            writeln!(text, "{line}")?;
        }
    }
    Ok(Answer::fine(text))
}
