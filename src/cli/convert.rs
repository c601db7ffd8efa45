use super::{Answer, Outcome, args::ConvertArgs, read};
use crate::{
    peroxide::{Conditions, StatedStrength, Strength, StrengthUnit, convert_interval, read_label},
    quantity::{MassFraction, TradeLabel},
    source::Interval,
    text::significant,
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
        return label_readings(label, &conditions);
    }
    let strength: Strength = args.strength.parse()?;
    let mut text = format!("{strength} of hydrogen peroxide at {} is\n", conditions.temperature);
    for unit in units {
        match convert_interval(strength, unit, &conditions) {
            Ok(interval) => writeln!(text, "  {}", line(&interval))?,
            Err(error) if args.to.is_some() => return Err(error.into()),
            Err(error) => writeln!(text, "  {unit}: not known ({error})")?,
        }
    }
    let oxygen = conditions.molar_volume.code();
    writeln!(text, "density: {}; oxygen in volumes: {oxygen}", conditions.density.basis())?;
    Ok(Answer::fine(text))
}

fn line(interval: &Interval<Strength>) -> String {
    let best = interval.best();
    let number = |strength: Strength| short(strength.number());
    if interval.is_exact() {
        format!("{} {}", number(best), best.unit())
    } else {
        format!("{} {}  ({} to {})", number(best), best.unit(), number(interval.low()), number(interval.high()))
    }
}

fn label_readings(label: TradeLabel, conditions: &Conditions) -> Outcome {
    let readings = read_label(label, conditions)?;
    let mut text = format!("{label} can mean three strengths; the label does not say which\n");
    let ww = |strength: MassFraction| short(strength.percent_ww());
    writeln!(text, "  read as w/w: {} % w/w, really {:.1}", ww(readings.as_ww), readings.volumes_if_ww.best())?;
    let wv = readings.as_wv;
    writeln!(
        text,
        "  read as w/v: {} % w/w ({} to {}), really {:.1}",
        ww(wv.best()),
        ww(wv.low()),
        ww(wv.high()),
        readings.volumes_if_wv
    )?;
    let volumes = readings.as_volumes;
    writeln!(
        text,
        "  read as oxygen volumes: {} % w/w ({} to {})",
        ww(volumes.best()),
        ww(volumes.low()),
        ww(volumes.high())
    )?;
    Ok(Answer::fine(text))
}

/// Five digits: more than any bottle is worth.
fn short(value: f64) -> String {
    significant(value, 5)
}
