use super::{Outcome, Refusal, args::SwatchArgs, output, read};
use crate::{
    colour::{Hue, Level, Naming, Swatch, Tone},
    service::Range,
    sheet::layout::{Sheet, range},
    source::Basis,
};
use serde::Serialize;

/// A modelled colour, as data.
#[derive(Serialize)]
pub(super) struct SwatchReport {
    /// CIELAB for D65 and 2 degrees.
    pub(super) lab_l: Range,
    pub(super) lab_a: Range,
    pub(super) lab_b: Range,
    pub(super) srgb_hex: String,
    pub(super) hue: Option<Hue>,
    pub(super) uncertainty_ciede2000: f64,
    pub(super) basis: Basis,
    pub(super) notice: &'static str,
}

#[derive(Serialize)]
struct Report {
    level: Level,
    name: Option<String>,
    from_level: Option<Level>,
    tone: Option<Tone>,
    #[serde(flatten)]
    swatch: SwatchReport,
}

/// `foilwork swatch`: the colour of a level, natural, lightened or toned.
pub(super) fn run(args: &SwatchArgs) -> Outcome {
    let level: Level = read::option("LEVEL", &args.level)?;
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
    let name = level.name(Naming::European).map(|name| name.value.to_string());
    let report = Report { level, name, from_level: from, tone, swatch: SwatchReport::of(&swatch) };
    output::report(&args.report, &report, || text(&report))
}

impl SwatchReport {
    pub(super) fn of(swatch: &Swatch) -> Self {
        let (lab, bounds) = (swatch.lab(), swatch.bounds());
        let range = |best: f64, (low, high): (f64, f64)| Range { low: low.min(best), best, high: high.max(best) };
        Self {
            lab_l: range(lab.l(), bounds.l),
            lab_a: range(lab.a(), bounds.a),
            lab_b: range(lab.b(), bounds.b),
            srgb_hex: swatch.srgb().to_string(),
            hue: swatch.hue(),
            uncertainty_ciede2000: swatch.uncertainty(),
            basis: swatch.basis(),
            notice: swatch.notice(),
        }
    }

    /// `#c09060, yellow-orange, L* 63 (57 to 70), a* 8 (5 to 12), b* 24 (17 to 30)`.
    pub(super) fn line(&self) -> String {
        let hue = self.hue.map_or("too grey to name a hue", Hue::words);
        let [l, a, b] = [&self.lab_l, &self.lab_a, &self.lab_b].map(|value| range(value, 0));
        format!("{}, {hue}, L* {l}, a* {a}, b* {b}", self.srgb_hex)
    }
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
    sheet.line(&format!("  screen  {}", swatch.srgb_hex));
    sheet.line(&format!("  hue     {}", swatch.hue.map_or("too grey to name", Hue::words)));
    for (name, value) in [("L*", &swatch.lab_l), ("a*", &swatch.lab_a), ("b*", &swatch.lab_b)] {
        sheet.line(&format!("  {name}      {}", range(value, 1)));
    }
    sheet.paragraph(
        &format!(
            "A {}. CIELAB for D65 and 2 degrees [{}]; the model may be off by CIEDE2000 {:.0}.",
            swatch.notice, swatch.basis, swatch.uncertainty_ciede2000
        ),
        0,
    );
    sheet.finish()
}
