use super::{Outcome, Refusal, args::LevelArgs, output, read};
use crate::{
    colour::{
        Canvas, Hue, Instrument, Lab, Level, Naming, ProductKind, Scale, level_from_reading, lift_needed, result_level,
        shade_level, underlying_pigment,
    },
    source::{Basis, Interval},
    text::{Sheet, number, span},
};
use serde::Serialize;

/// Level arithmetic, as data.
#[derive(Serialize)]
struct Report {
    natural_level: Level,
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
    lift_levels: f64,
    formula_level: Option<Level>,
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
    result_level: Level,
}

/// `foilwork level`: lift, formula level, result and the warmth that shows.
pub(super) fn run(args: &LevelArgs) -> Outcome {
    let reading = args.measured.as_ref().map(|lab| reading(lab, args)).transpose()?;
    let natural = match (&args.natural, &reading) {
        (Some(natural), _) => read::option("--natural", natural)?,
        // A tenth of a level is finer than any reading.
        (None, Some(reading)) => Level::clamped((reading.level.best().number() * 10.0).round() / 10.0),
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
    output::report(&args.report, &report, || text(&report))
}

fn reading(lab: &str, args: &LevelArgs) -> Result<ReadingReport, Refusal> {
    let measured: Lab = read::option("--measured", lab)?;
    let measured_with: Instrument = read::option("--measured-with", &args.measured_with)?;
    let level = level_from_reading(measured, measured_with)?;
    Ok(ReadingReport { measured, measured_with, level: level.value, basis: level.basis })
}

fn target_report(natural: Level, target: Level, args: &LevelArgs) -> TargetReport {
    let canvas = if args.coloured { Canvas::Coloured } else { Canvas::Natural };
    let scale = if args.twelve { Scale::Twelve } else { Scale::European10 };
    let lift = lift_needed(natural, target);
    let formula = shade_level(natural, target, ProductKind::PermanentColour, canvas, scale);
    let exposed = lift.is_lift().then(|| {
        let found = underlying_pigment(target);
        ExposedReport {
            words: found.value.to_string(),
            exposed_hues: found.value.exposed,
            neutralising_hues: found.value.neutraliser,
            basis: found.basis,
        }
    });
    let (formula_level, no_formula) = match formula {
        Ok(level) => (Some(level.value), None),
        Err(error) => (None, Some(error.to_string())),
    };
    TargetReport { target_level: target, lift_levels: lift.levels(), formula_level, no_formula, exposed }
}

/// The mean rule is one of natural hair, so it says nothing of coloured hair.
fn applied_report(natural: Level, applied: &str, args: &LevelArgs) -> Result<AppliedReport, Refusal> {
    if args.coloured {
        let way_out = "the mean of natural and applied level holds only for natural hair (leave one of them out)";
        return Err(Refusal(format!("--applied with --coloured: {way_out}")));
    }
    let applied = read::option("--applied", applied)?;
    // The mean rule is one of lifting: a shade as deep as the hair or deeper deposits its own level.
    let result =
        if applied > natural { result_level(natural, applied, ProductKind::PermanentColour)?.value } else { applied };
    Ok(AppliedReport { applied_level: applied, result_level: result })
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
    sheet.line(&format!("natural level  {}", named(report.natural_level)));
    if let Some(target) = &report.target {
        sheet.line(&format!("wanted level   {}", named(target.target_level)));
        sheet.line(&format!("the way there  {}", lift_needed(report.natural_level, target.target_level)));
        match (&target.formula_level, &target.no_formula) {
            (Some(level), _) => {
                sheet.line(&format!("formula level  {} of permanent colour", named(*level)));
                if target.target_level < report.natural_level {
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
        sheet.line(&format!("gives level    {}", named(applied.result_level)));
    }
    sheet.paragraph("Rules of thumb for permanent colour on natural hair: a strand test decides.", 0);
    sheet.finish()
}
