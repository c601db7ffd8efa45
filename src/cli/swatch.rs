use super::{Outcome, Refusal, args::SwatchArgs, output, read};
use crate::{
    colour::{Hue, Level, Lightness, Naming, Redness, Swatch, Yellowness, trace_swatch},
    source::Interval,
    text::{Sheet, number, span},
};
use serde::Serialize;

/// A modelled colour, as data.
#[derive(Serialize)]
struct Report {
    level: Level,
    name: Option<String>,
    from_level: Option<Level>,
    tone: Option<String>,
    #[serde(flatten)]
    swatch: Swatch,
}

/// `foilwork swatch`: the colour of a level, natural, lightened or toned.
pub(super) fn run(args: &SwatchArgs) -> Outcome {
    let level: Level = args.level.parse()?;
    let from: Option<Level> = args.from.as_ref().map(|from| read::option("--from", from)).transpose()?;
    let tone = args.tone.as_ref().map(|tone| read::tone("--tone", tone)).transpose()?;
    let swatch = match (from, &tone) {
        (Some(from), _) if from >= level => {
            let way_out = "nothing is lightened (leave --from out)";
            return Err(Refusal(format!("--from {from} is not darker than {level}: {way_out}")));
        }
        (Some(from), _) => Swatch::lightened(from, level),
        (None, Some(tone)) => Swatch::of_look(level, tone),
        (None, None) => Swatch::natural(level),
    };
    if args.trail.trail {
        let trail = trace_swatch(level, from, tone.as_ref());
        return output::deliver(output::trail(&trail, args.report.json)?, 0, &args.report.output);
    }
    let report = Report {
        level,
        name: level.name(Naming::European).map(|name| name.value.to_string()),
        from_level: from,
        tone: tone.map(|tone| tone.to_string()),
        swatch,
    };
    output::report(&args.report, &report, || text(&report))
}

fn text(report: &Report) -> String {
    let mut sheet = Sheet::default();
    let what = match (&report.from_level, &report.tone) {
        (Some(from), _) => format!("lightened from natural {from}"),
        (None, Some(tone)) => format!("a shade of it on white hair, {tone}"),
        (None, None) => "natural hair".to_owned(),
    };
    let name = report.name.as_ref().map(|name| format!(" ({name})")).unwrap_or_default();
    sheet.paragraph(&format!("{}{name}: {what}", report.level), 2);
    let swatch = &report.swatch;
    sheet.line(&format!("  screen  {}", swatch.srgb()));
    sheet.line(&format!("  hue     {}", hue(swatch)));
    for (name, value) in ["L*", "a*", "b*"].into_iter().zip(coordinates(swatch)) {
        sheet.line(&format!("  {name}      {}", words(&value, 1)));
    }
    sheet.paragraph(
        &format!(
            "A {}. CIELAB for {} [{}]; the model may be off by CIEDE2000 {:.0}.",
            swatch.notice(),
            swatch.lab().white(),
            swatch.basis(),
            swatch.uncertainty()
        ),
        0,
    );
    sheet.finish()
}

const TOO_GREY: &str = "too grey to name";

fn hue(swatch: &Swatch) -> &'static str {
    swatch.hue().map_or(TOO_GREY, Hue::words)
}

/// L\*, a\* and b\* with their bounds.
fn coordinates(swatch: &Swatch) -> [Interval<f64>; 3] {
    [
        swatch.lightness().map(Lightness::lab_l),
        swatch.redness().map(Redness::lab_a),
        swatch.yellowness().map(Yellowness::lab_b),
    ]
}

/// `#8a7453, yellow-orange, L* 50 (44 to 57), a* 4 (3 to 5), b* 22 (18 to 23)`.
pub(super) fn line(swatch: &Swatch) -> String {
    let [l, a, b] = coordinates(swatch).map(|value| words(&value, 0));
    format!("{}, {}, L* {l}, a* {a}, b* {b}", swatch.srgb(), hue(swatch))
}

fn words(found: &Interval<f64>, decimals: usize) -> String {
    span(found, |value| number(value, decimals))
}
