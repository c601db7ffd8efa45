use super::{Outcome, Refusal, args::TonerArgs, output, read, swatch::SwatchReport};
use crate::{
    colour::{Chart, ColourFinding, Difference, Level, Shade, Tone},
    quantity::Mass,
    sheet::layout::{Sheet, number},
    toner::{self, Exposed, Porosity, Target, TonerAnswer, TonerMix, TonerRequest, find_toner},
};
use serde::Serialize;

/// A toner search, as data.
#[derive(Serialize)]
struct Report<'a> {
    chart: &'a str,
    natural_level: Level,
    lifted_level: Level,
    target_level: Level,
    target_tone: Tone,
    /// Whether the best mix is predicted within repeated readings of the target.
    reached: bool,
    target: SwatchReport,
    /// From the untoned hair to the target.
    before: Difference,
    best: MixReport,
    alternatives: Vec<MixReport>,
    findings: &'a [ColourFinding],
    notice: &'static str,
}

#[derive(Serialize)]
struct MixReport {
    recipe: String,
    parts: Vec<PartReport>,
    level: f64,
    tone: Tone,
    predicted: SwatchReport,
    /// From the prediction to the target.
    residual: Difference,
}

#[derive(Serialize)]
struct PartReport {
    code: String,
    mass_g: f64,
    share_percent: f64,
}

/// `foilwork toner`: which of your own shades, how much of each, and what that cannot do.
pub(super) fn run(args: &TonerArgs) -> Outcome {
    let natural: Level = read::option("--natural", &args.natural)?;
    let lifted: Level = read::option("--lifted", &args.lifted)?;
    let target: Level = read::option("--target", &args.target)?;
    let tone = read::tone("--tone", &args.tone)?;
    if lifted < natural {
        let way_out = "lifting makes it lighter (swap the two?)";
        return Err(Refusal(format!("--lifted {lifted} is darker than --natural {natural}: {way_out}")));
    }
    let text_of_chart = output::read(&args.chart)?;
    let name = args.chart.to_string_lossy();
    let chart = Chart::from_toml(&text_of_chart).map_err(|error| Refusal(format!("{name}: {error}")))?;
    let porosity = if args.porous { Porosity::Porous } else { Porosity::Normal };
    let answer = find_toner(&TonerRequest {
        exposed: Exposed::lightened(natural, lifted).with_porosity(porosity),
        target: Target::Look { level: target, tone: tone.clone() },
        shades: chosen(&chart, args)?,
        most_shades: args.most_shades,
        bowl: Mass::from_g(args.bowl)?,
        division: Mass::from_g(args.division)?,
    })?;
    let report = Report {
        chart: chart.name(),
        natural_level: natural,
        lifted_level: lifted,
        target_level: target,
        target_tone: tone,
        reached: answer.outcome == toner::Outcome::Reached,
        target: SwatchReport::of(&answer.target),
        before: answer.before,
        best: MixReport::of(&answer.best),
        alternatives: answer.alternatives.iter().map(MixReport::of).collect(),
        findings: &answer.findings,
        notice: crate::colour::Swatch::NOTICE,
    };
    output::report(&args.report, &report, || text(&report, &answer, &chart))
}

/// The shades named, or all of the chart.
fn chosen<'a>(chart: &'a Chart, args: &TonerArgs) -> Result<Vec<&'a Shade>, Refusal> {
    let Some(codes) = &args.shades else { return Ok(chart.shades().collect()) };
    let find = |code: &str| {
        let unknown = || Refusal(format!("--shades: the chart has no shade {code:?} (write codes as the chart does)"));
        chart.shade(code).ok_or_else(unknown)
    };
    codes.split(',').map(|code| find(code.trim())).collect()
}

impl MixReport {
    fn of(mix: &TonerMix) -> Self {
        let part = |part: &toner::MixPart| PartReport {
            code: part.code.clone(),
            mass_g: part.mass.g(),
            share_percent: part.share.percent(),
        };
        Self {
            recipe: mix.recipe(),
            parts: mix.parts.iter().map(part).collect(),
            level: mix.level.number(),
            tone: mix.tone.clone(),
            predicted: SwatchReport::of(&mix.predicted),
            residual: mix.residual,
        }
    }
}

fn text(report: &Report<'_>, answer: &TonerAnswer, chart: &Chart) -> String {
    let mut sheet = Sheet::default();
    sheet.title(&format!("TONER  {}", report.chart));
    let (natural, lifted) = (report.natural_level, report.lifted_level);
    sheet.paragraph(&format!("natural {natural}, lifted to {lifted}"), 2);
    sheet.paragraph(&format!("wanted {}, {}: {}", report.target_level, report.target_tone, report.target.line()), 2);
    sheet.blank();
    if report.reached {
        sheet.line("best mix");
    } else {
        sheet.line("*** CANNOT BE REACHED from these shades on this hair; the nearest is ***");
    }
    sheet.table(&["  ", "shade", "weigh", "what the chart says"], &[2], weigh(report, chart));
    sheet.paragraph(&format!("  predicted {}", report.best.predicted.line()), 4);
    sheet.paragraph(&format!("  left to the target: CIEDE2000 {}", answer.best.residual), 4);
    let off = report.best.predicted.uncertainty_ciede2000;
    sheet.paragraph(&format!("  the model may be off by CIEDE2000 {off:.0}"), 4);
    sheet.paragraph(&format!("  without toner: CIEDE2000 {}", answer.before), 4);
    if !report.alternatives.is_empty() {
        sheet.heading("Alternatives");
        let row = |mix: &MixReport| vec![mix.recipe.clone(), mix.residual.to_string()];
        sheet.table(&["mix", "left, CIEDE2000"], &[], report.alternatives.iter().map(row).collect());
    }
    sheet.heading("Findings");
    if report.findings.is_empty() {
        sheet.line("none of the rules of the trade has anything to say");
    }
    for finding in report.findings {
        sheet.paragraph(&format!("- {finding}"), 2);
    }
    sheet.blank();
    sheet.paragraph(
        &format!(
            "A {}: how much hair takes up is assumed. Developer comes on top. A strand test decides.",
            report.notice
        ),
        0,
    );
    sheet.finish()
}

/// What to weigh, with the developer that the chart allows.
fn weigh(report: &Report<'_>, chart: &Chart) -> Vec<Vec<String>> {
    let row = |part: &PartReport| {
        let entry = chart.entries().iter().find(|(shade, _)| shade.code() == part.code);
        let mut says = Vec::new();
        if let Some((shade, facts)) = entry {
            says.push(format!("{}, {}", shade.level(), shade.tone()));
            says.extend(facts.developer_parts.map(|parts| format!("1:{}", parts.normalize())));
            if !facts.developers.is_empty() {
                let strengths: Vec<_> = facts.developers.iter().map(|one| number(one.percent_ww(), 2)).collect();
                says.push(format!("developer {} % w/w", strengths.join(" or ")));
            }
        }
        vec![String::new(), part.code.clone(), format!("{} g", number(part.mass_g, 3)), says.join("; ")]
    };
    report.best.parts.iter().map(row).collect()
}
