use super::{Outcome, Refusal, args::TonerArgs, output, read, shop::read_with, swatch};
use crate::{
    colour::{Instrument, Level, ReadingError, Shade, Swatch, Tone},
    quantity::Mass,
    shop::Shop,
    text::{Sheet, number},
    toner::{
        Exposed, ExposedBasis, KnownStart, Outcome as Reach, StartError, Target, TonerAnswer, TonerPart, TonerRequest,
        ToningPorosity, find_toner,
    },
};
use serde::Serialize;

/// A toner search, as data.
#[derive(Serialize)]
struct Report<'a> {
    shop: Option<&'a str>,
    start: ExposedBasis,
    lifted_level: Level,
    exposed: &'a Swatch,
    target_level: Level,
    target_tone: String,
    summary: String,
    #[serde(flatten)]
    answer: &'a TonerAnswer,
    notice: &'static str,
}

/// `foilwork toner`: which of your own shades, how much of each, and what that cannot do.
pub(super) fn run(args: &TonerArgs) -> Outcome {
    let exposed = exposed(args)?;
    let target: Level = read::option("--target", &args.target)?;
    let tone: Tone = read::tone("--tone", &args.tone)?;
    let (shop, ()) = read_with(&args.shop, |_| Ok(()))?;
    let porosity = if args.porous { ToningPorosity::Porous } else { ToningPorosity::Normal };
    let answer = find_toner(&TonerRequest {
        exposed: exposed.with_porosity(porosity),
        target: Target::Look { level: target, tone: tone.clone() },
        shades: chosen(&shop, args)?,
        most_shades: args.most_shades,
        bowl: Mass::from_g(args.bowl)?,
        division: Mass::from_g(args.division)?,
    })?;
    if args.trail.trail {
        return output::deliver(output::trail(&answer.trail(), args.report.json)?, 0, &args.report.output);
    }
    let report = Report {
        shop: shop.name.as_deref(),
        start: exposed.start(),
        lifted_level: exposed.level(),
        exposed: exposed.look(),
        target_level: target,
        target_tone: tone.to_string(),
        summary: answer.summary(),
        answer: &answer,
        notice: Swatch::NOTICE,
    };
    output::report(&args.report, &report, || text(&report, &answer, &shop))
}

/// The hair, from what is known best.
fn exposed(args: &TonerArgs) -> Result<Exposed, Refusal> {
    if args.white {
        return Ok(Exposed::white());
    }
    let Some(lifted) = &args.lifted else {
        return Err(Refusal("give --lifted (the level it was lifted to), or --white for white hair".to_owned()));
    };
    let lifted = read::option("--lifted", lifted)?;
    let natural = args.natural.as_ref().map(|level| read::option("--natural", level)).transpose()?;
    let seen = args.seen.as_ref().map(|words| read::option("--seen", words)).transpose()?;
    let with: Instrument = read::option("--measured-with", &args.measured_with)?;
    if args.measured.is_some() && with == Instrument::Photograph {
        return Err(ReadingError::Photograph.into());
    }
    let measured = args.measured.as_ref().map(|lab| read::option("--measured", lab)).transpose()?;
    KnownStart { measured, seen }.exposed(natural, lifted).map_err(|error| match error {
        StartError::Darker { natural, lifted } => {
            let way_out = "lifting makes it lighter (swap the two?)";
            Refusal(format!("--lifted {lifted} is darker than --natural {natural}: {way_out}"))
        }
        other => other.into(),
    })
}

/// The shades named, or all of the shop.
fn chosen<'a>(shop: &'a Shop, args: &TonerArgs) -> Result<Vec<&'a Shade>, Refusal> {
    let Some(codes) = &args.shades else { return Ok(shop.colours().collect()) };
    let find = |code: &str| {
        let unknown = || Refusal(format!("--shades: the shop has no shade {code:?} (write codes as the shop does)"));
        shop.shade(code).map(|one| &one.shade).ok_or_else(unknown)
    };
    codes.split(',').map(|code| find(code.trim())).collect()
}

fn text(report: &Report<'_>, answer: &TonerAnswer, shop: &Shop) -> String {
    let best = &answer.best;
    let mut sheet = Sheet::default();
    sheet.title(format!("TONER  {}", report.shop.unwrap_or_default()).trim_end());
    let level = match report.start {
        ExposedBasis::White => String::new(),
        _ => format!(" at {}", report.lifted_level),
    };
    sheet.paragraph(&format!("hair{level}, {}: {}", report.start, swatch::line(report.exposed)), 2);
    let wanted = format!("wanted {}, {}: {}", report.target_level, report.target_tone, swatch::line(&answer.target));
    sheet.paragraph(&wanted, 2);
    sheet.blank();
    sheet.paragraph(&report.summary, 0);
    sheet.blank();
    let nearer = answer.nearer();
    let taken = if nearer.is_some() { "taken is" } else { "the nearest is" };
    sheet.line(&match answer.outcome {
        Reach::Reached => "best mix".to_owned(),
        Reach::NearestOnly => format!("*** CANNOT BE REACHED from these shades on this hair; {taken} ***"),
        Reach::AlreadyNearer if answer.asks_to_lighten() => {
            format!("*** LIFT FURTHER OR LEAVE IT; {taken} ***")
        }
        Reach::AlreadyNearer => format!("*** LEAVE IT: untoned it is nearer than under any mix; {taken} ***"),
        Reach::TooCloseToTell => "mix to try on a strand: the model cannot tell it from untoned hair".to_owned(),
    });
    let rows = best.parts.iter().map(|part| weigh(part, shop)).collect();
    sheet.table(&["  ", "shade", "weigh", "what the shop says"], &[2], rows);
    sheet.paragraph(&format!("  predicted {}", swatch::line(&best.predicted)), 4);
    sheet.paragraph(&format!("  left to the target: CIEDE2000 {}", best.residual), 4);
    if let Some((other, why)) = nearer {
        let text = format!(
            "  taken {why}; nearer by the model, which cannot tell the two apart: {}, CIEDE2000 {:.1}",
            other.recipe(),
            other.residual.ciede2000
        );
        sheet.paragraph(&text, 4);
    }
    sheet.paragraph(&format!("  without toner: CIEDE2000 {}", answer.before), 4);
    sheet.paragraph(&format!("  the model may be off by CIEDE2000 {:.0}", best.predicted.uncertainty()), 4);
    if !answer.alternatives.is_empty() {
        sheet.heading("Alternatives");
        let rows = answer.alternatives.iter().map(|mix| vec![mix.recipe(), mix.residual.to_string()]).collect();
        sheet.table(&["mix", "left, CIEDE2000"], &[], rows);
    }
    sheet.heading("Findings");
    if answer.findings.is_empty() {
        sheet.line("none of the rules of the trade has anything to say");
    }
    for finding in &answer.findings {
        sheet.paragraph(&format!("- {finding}"), 2);
    }
    sheet.blank();
    let limits = "how much hair takes up is assumed. Developer comes on top. A strand test decides.";
    sheet.paragraph(&format!("A {}: {limits}", report.notice), 0);
    sheet.finish()
}

/// What to weigh, with the developer that its own instructions allow.
fn weigh(part: &TonerPart, shop: &Shop) -> Vec<String> {
    let mut says = Vec::new();
    if let Some(one) = shop.shade(&part.code) {
        says.push(format!("{}, {}", one.shade.level(), one.shade.tone()));
        says.extend(one.ratio.as_ref().map(ToString::to_string));
        says.extend(one.limits.strongest.map(|strongest| format!("developer up to {strongest}")));
    }
    vec![String::new(), part.code.clone(), format!("{} g", number(part.mass.g(), 3)), says.join("; ")]
}
