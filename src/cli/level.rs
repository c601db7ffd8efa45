use super::{Outcome, Refusal, args::LevelArgs, output, read};
use crate::{
    colour::{
        Canvas, Hue, Instrument, Lab, Level, Naming, ProductKind, Scale, level_from_reading, lift_needed, result_level,
        shade_levels, trace_lift, trace_reading, trace_result_level, trace_shade_level, trace_underlying_pigment,
        underlying_pigment,
    },
    source::{Basis, Interval, Sourced, TracedResult},
    text::{Sheet, number, span},
};
use serde::Serialize;

/// Level arithmetic, as data.
#[derive(Serialize)]
struct Report {
    /// As stated, or as the reading has it.
    natural_level: Interval<Level>,
    reading: Option<ReadingReport>,
    target: Option<TargetReport>,
    applied: Option<AppliedReport>,
}

#[derive(Serialize)]
struct ReadingReport {
    measured: Lab,
    measured_with: Instrument,
    /// The level whose natural hair is as light.
    level: Interval<Level>,
    basis: Basis,
}

#[derive(Serialize)]
struct TargetReport {
    target_level: Level,
    /// Above 0 lighter, below 0 darker.
    lift_levels: Interval<f64>,
    formula_level: Option<Interval<Level>>,
    /// Why there is no formula level.
    no_formula: Option<String>,
    /// What shows when the hair is lightened that far; missing when it is not lightened.
    exposed: Option<ExposedReport>,
}

#[derive(Serialize)]
struct ExposedReport {
    words: String,
    exposed_hues: (Hue, Hue),
    neutralising_hues: Option<(Hue, Hue)>,
    basis: Basis,
}

#[derive(Serialize)]
struct AppliedReport {
    applied_level: Level,
    result_level: Interval<Level>,
}

/// `foilwork level`: lift, formula level, result and the warmth that shows.
pub(super) fn run(args: &LevelArgs) -> Outcome {
    let reading = args.measured.as_ref().map(|lab| reading(lab, args)).transpose()?;
    let natural = match (&args.natural, &reading) {
        (Some(natural), _) => read::option::<Level>("--natural", natural)?.into(),
        // A tenth of a level is finer than any reading.
        (None, Some(reading)) => reading.level.map(|level| Level::clamped((level.number() * 10.0).round() / 10.0)),
        (None, None) => return Err(Refusal("give --natural or --measured".to_owned())),
    };
    if args.target.is_none() && args.applied.is_none() && reading.is_none() {
        let way_out = "give --target (the level wanted) or --applied (the level of a permanent shade)";
        return Err(Refusal(way_out.to_owned()));
    }
    let wanted = |target: &String| Ok::<_, Refusal>(target_report(natural, read::option("--target", target)?, args));
    let report = Report {
        natural_level: natural,
        reading,
        target: args.target.as_ref().map(wanted).transpose()?,
        applied: args.applied.as_ref().map(|applied| applied_report(natural, applied, args)).transpose()?,
    };
    if args.trail.trail {
        let found = trail(&report, args)?;
        return output::deliver(output::trail(&found, args.report.json)?, 0, &args.report.output);
    }
    output::report(&args.report, &report, || text(&report))
}

fn reading(lab: &str, args: &LevelArgs) -> Result<ReadingReport, Refusal> {
    let measured: Lab = read::option("--measured", lab)?;
    let measured_with: Instrument = read::option("--measured-with", &args.measured_with)?;
    let level = level_from_reading(measured, measured_with)?;
    Ok(ReadingReport { measured, measured_with, level: level.value, basis: level.basis })
}

fn scene(args: &LevelArgs) -> (Canvas, Scale) {
    let canvas = if args.coloured { Canvas::Coloured } else { Canvas::Natural };
    (canvas, if args.twelve { Scale::Twelve } else { Scale::European10 })
}

/// How each of these came about; a shade that does not exist has no way to it.
fn trail(report: &Report, args: &LevelArgs) -> Result<Vec<TracedResult>, Refusal> {
    let mut found = Vec::new();
    // Stated, or what the model of hair reads from the instrument.
    let basis = report.reading.as_ref().map_or(Basis::Stated, |reading| reading.basis);
    let natural = Sourced { value: report.natural_level, basis, citation: None };
    if let Some(reading) = &report.reading {
        found.push(trace_reading(reading.measured, reading.measured_with)?);
    }
    if let Some(target) = &report.target {
        let (canvas, scale) = scene(args);
        let wanted = target.target_level;
        found.push(trace_lift(natural, wanted));
        if target.formula_level.is_some() {
            found.push(trace_shade_level(natural, wanted, canvas, scale)?);
        }
        found.extend(target.exposed.as_ref().map(|_| trace_underlying_pigment(wanted)));
    }
    if let Some(applied) = &report.applied {
        found.push(trace_result_level(natural, applied.applied_level)?);
    }
    Ok(found)
}

fn target_report(natural: Interval<Level>, target: Level, args: &LevelArgs) -> TargetReport {
    let (canvas, scale) = scene(args);
    let lift = natural.map(|natural| lift_needed(natural, target));
    let exposed = lift.best().is_lift().then(|| {
        let found = underlying_pigment(target);
        ExposedReport {
            words: found.value.to_string(),
            exposed_hues: found.value.exposed,
            neutralising_hues: found.value.neutraliser,
            basis: found.basis,
        }
    });
    let (formula_level, no_formula) = match shade_levels(natural, target, canvas, scale) {
        Ok((level, _)) => (Some(level), None),
        Err(error) => (None, Some(error.to_string())),
    };
    TargetReport {
        target_level: target,
        lift_levels: lift.map(crate::colour::LevelChange::levels),
        formula_level,
        no_formula,
        exposed,
    }
}

/// The mean rule is one of natural hair, so it says nothing of coloured hair.
fn applied_report(natural: Interval<Level>, applied: &str, args: &LevelArgs) -> Result<AppliedReport, Refusal> {
    if args.coloured {
        let way_out = "the mean of natural and applied level holds only for natural hair (leave one of them out)";
        return Err(Refusal(format!("--applied with --coloured: {way_out}")));
    }
    let applied: Level = read::option("--applied", applied)?;
    // The mean rule is one of lifting: a shade as deep as the hair or deeper deposits its own level.
    let result = |from| {
        let lifted = (applied > from).then(|| result_level(from, applied, ProductKind::PermanentColour)).transpose();
        lifted.map(|level| level.map_or(applied, |level| level.value))
    };
    Ok(AppliedReport { applied_level: applied, result_level: natural.try_map(result)? })
}

fn text(report: &Report) -> String {
    let mut sheet = Sheet::default();
    let named = |level: Level| match level.name(Naming::European) {
        Some(name) => format!("{} ({})", number(level.number(), 2), name.value),
        None => number(level.number(), 2),
    };
    if let Some(reading) = &report.reading {
        let level = span(&reading.level, |level| number(level.number(), 1));
        let text = format!(
            "reading        {:.1}, {}: as light as natural level {level}",
            reading.measured, reading.measured_with
        );
        sheet.paragraph(&format!("{text} [{}]", reading.basis), 15);
    }
    sheet.paragraph(&format!("natural level  {}", span(&report.natural_level, named)), 15);
    if let Some(target) = &report.target {
        sheet.line(&format!("wanted level   {}", named(target.target_level)));
        let way = report.natural_level.map(|natural| lift_needed(natural, target.target_level));
        let way = span(&way, |way| way.to_string());
        sheet.paragraph(&format!("the way there  {way}"), 15);
        match (&target.formula_level, &target.no_formula) {
            (Some(level), _) => {
                sheet.paragraph(&format!("formula level  {} of permanent colour", span(level, named)), 15);
                if target.target_level < report.natural_level.best() {
                    let text = "               going darker deposits: the shade has the level wanted, and hair that was \
                                lightened needs warm pigment first; the mean rule is for lifting natural hair";
                    sheet.paragraph(text, 15);
                }
            }
            (None, why) => {
                sheet.paragraph(&format!("formula level  none: {}", why.as_deref().unwrap_or("unknown")), 15);
            }
        }
        if let Some(exposed) = &target.exposed {
            sheet.paragraph(&format!("warmth there   {} [{}]", exposed.words, exposed.basis), 15);
        }
    }
    if let Some(applied) = &report.applied {
        sheet.line(&format!("applied level  {} of permanent colour", named(applied.applied_level)));
        sheet.paragraph(&format!("gives level    {}", span(&applied.result_level, named)), 15);
    }
    sheet.paragraph("Rules of thumb for permanent colour on natural hair: a strand test decides.", 0);
    sheet.finish()
}
