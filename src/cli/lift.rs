//! `foilwork lift`: how light, how fast, how sure.

use super::{
    Outcome, Refusal,
    args::{LiftArgs, SituationArgs},
    output, read,
    situation::situation,
};
use crate::{
    chart::{LevelChart, level_chart},
    colour::Level,
    lift::{
        Advice, AfterLook, Belief, Condition, Experience, Factor, LIGHTER, LOOK_FOR, Lightening, Look, MOST_VISITS,
        OFTEN, Reader, Situation, StrengthChance, Visit, advice, after_look, chances, condition, gentlest, looks,
        read_strand_book, series,
    },
    peroxide::too_strong,
    quantity::{Duration, MassFraction, Quantity, Share},
    sheet::{BETWEEN_VISITS, visits_table},
    source::Interval,
    text::{Sheet, in_hundred, span, whole_minutes},
};
use serde::Serialize;

/// Everything the command has to say, as data.
#[derive(Serialize)]
struct Report {
    from_level: Level,
    on_hair_ww_percent: Interval<f64>,
    strand_readings: usize,
    levels: Vec<Row>,
    target: Option<Target>,
    /// Developers to choose from, weakest first.
    shelf: Vec<Bottle>,
    /// Such visits one after another, up to the first that reaches the target in 80 of 100 cases or the fourth.
    visits: Vec<Visit>,
    looks_min: Vec<Duration>,
    look_for: [&'static str; 5],
    seen: Vec<Seen>,
    levers: Vec<Lever>,
    known: String,
    next_strand_test_min: Duration,
    strain: &'static str,
    strain_index: Interval<f64>,
    basis: &'static str,
    /// Said of a strength that is no hair product's.
    too_strong: Option<&'static str>,
    book_problems: Vec<String>,
}

#[derive(Serialize)]
struct Row {
    min: Duration,
    level: Interval<Level>,
}

#[derive(Serialize)]
struct Target {
    target_level: Level,
    /// Absent where the mixture is spent before.
    reached_early_min: Option<Duration>,
    reached_median_min: Option<Duration>,
    reached_late_min: Option<Duration>,
    chance_by_limit_percent: Share,
    limit_min: Duration,
    chance_with_a_fresh_mix_percent: Share,
}

/// What a developer of the shelf does.
#[derive(Serialize)]
struct Bottle {
    developer: String,
    on_hair_ww_percent: Interval<f64>,
    level: Interval<Level>,
    chance_by_limit_percent: Share,
    /// The weakest that reaches the target within the limit in 80 of 100 cases.
    gentlest: bool,
}

#[derive(Serialize)]
struct Seen {
    at_min: Duration,
    level: Level,
    next: &'static str,
    why: String,
    look_again_min: Option<Duration>,
}

#[derive(Serialize)]
struct Lever {
    lever: &'static str,
    times: Interval<f64>,
    basis: &'static str,
    source: Option<&'static str>,
}

const BASIS: &str = "model: rates assumed near the one published series of levels (lightening-series), levers as listed; \
                     bounds hold 80 of 100 cases if the assumptions hold";

/// Minutes of the table.
const STEP_MIN: f64 = 5.0;

pub(super) fn run(args: &LiftArgs) -> Outcome {
    let mix = situation(&args.situation)?;
    let from: Level = read::option("--from", &args.from)?;
    let target = args.target.as_deref().map(|text| read::option::<Level>("--target", text)).transpose()?;
    if let Some(target) = target.filter(|target| *target < from) {
        return Err(Refusal(format!("--target {target} is darker than --from {from}: {LIGHTER}")));
    }
    let limit = Duration::from_min(args.limit).map_err(|error| read::about("--limit", error))?;
    if !(1.0..=180.0).contains(&limit.min()) {
        return Err(Refusal(format!("--limit: {limit} is out of range: give 1 to 180 min (the product's own limit)")));
    }
    let (mut belief, book_problems) = learned(args)?;
    let wanted = target.unwrap_or(Level::LIGHTEST);
    let mut seen = Vec::new();
    let mut readings = Vec::new();
    for text in &args.seen {
        let look = look(text, mix, (from, wanted), limit)?;
        readings.push((look.at, look.seen));
        let after = after_look(&belief, &look);
        belief = after.belief;
        if target.is_some() {
            seen.push(row(&look, after));
        }
    }
    let lightening = Lightening::new(&belief, &mix, from);
    if let Some(path) = &args.svg {
        let title = args.situation.guest.as_deref().unwrap_or("Level against time");
        let (lightening, readings) = (&lightening, readings.as_slice());
        let picture = level_chart(&LevelChart { title, lightening, limit, target, readings });
        output::write(path, &picture)?;
    }
    if args.trail.trail {
        let trail = output::trail(&[lightening.trail(limit, belief.readings())], args.report.json)?;
        return output::deliver(trail, 0, &args.report.output);
    }
    let report = Report {
        from_level: from,
        on_hair_ww_percent: mix.on_hair.map(MassFraction::ww_percent),
        strand_readings: belief.readings(),
        levels: rows(&lightening, limit),
        target: target.map(|target| reached(&lightening, target, limit)),
        shelf: shelf(args, &belief, (from, target), limit)?,
        visits: target.map(|target| series(&lightening, target, limit, OFTEN, MOST_VISITS)).unwrap_or_default(),
        looks_min: looks(mix.texture, limit),
        look_for: LOOK_FOR,
        seen,
        levers: mix.on_pigment().iter().chain(&mix.on_oxidant()).map(lever).collect(),
        basis: BASIS,
        too_strong: too_strong(mix.on_hair),
        book_problems,
        ..said(&advice(&belief, &mix, from, limit), &condition(&[(mix, limit)]), from)
    };
    output::report(&args.report, &report, || text(&report))
}

/// The parts of the report that are words about the rest.
fn said(advice: &Advice, condition: &Condition, from: Level) -> Report {
    Report {
        from_level: from,
        on_hair_ww_percent: Interval::exact(0.0),
        strand_readings: 0,
        levels: Vec::new(),
        target: None,
        shelf: Vec::new(),
        visits: Vec::new(),
        looks_min: Vec::new(),
        look_for: LOOK_FOR,
        seen: Vec::new(),
        levers: Vec::new(),
        known: advice.known.clone(),
        next_strand_test_min: advice.read_at,
        strain: condition.strain.words(),
        strain_index: condition.index,
        basis: BASIS,
        too_strong: None,
        book_problems: Vec::new(),
    }
}

fn learned(args: &LiftArgs) -> Result<(Belief, Vec<String>), Refusal> {
    let Some(path) = &args.strands else { return Ok((Belief::untested(), Vec::new())) };
    let book = read_strand_book(&output::read_grown(path)?);
    let experience = Experience::from_readings(&book.readings);
    let belief = experience.of(args.situation.guest.as_deref(), args.situation.product.as_deref());
    Ok((belief, book.problems.iter().map(ToString::to_string).collect()))
}

fn look(text: &str, situation: Situation, (start, target): (Level, Level), limit: Duration) -> Result<Look, Refusal> {
    let way_out = || Refusal(format!("--seen {text:?}: write the minute and the level, for example 20=6.5"));
    let (at, level) = text.split_once('=').ok_or_else(way_out)?;
    let at = at.trim().trim_end_matches("min").trim().parse::<f64>().map_err(|_| way_out())?;
    Ok(Look {
        situation,
        start,
        target,
        at: Duration::from_min(at).map_err(|error| read::about("--seen", error))?,
        seen: read::option("--seen", level)?,
        reader: Reader::Eye,
        limit,
        longest: None,
    })
}

fn row(look: &Look, after: AfterLook) -> Seen {
    Seen {
        at_min: look.at,
        level: look.seen,
        next: after.next.words(),
        why: after.why,
        look_again_min: after.look_again,
    }
}

fn rows(lightening: &Lightening, limit: Duration) -> Vec<Row> {
    let row = |min: Duration| Row { min, level: lightening.level_after(min) };
    let steps = (0..=36u8).map(|i| f64::from(i) * STEP_MIN).take_while(|at| *at < limit.min());
    steps.map(Duration::nearest).chain([limit]).map(row).collect()
}

fn reached(lightening: &Lightening, target: Level, limit: Duration) -> Target {
    let time = lightening.time_to(target);
    Target {
        target_level: target,
        reached_early_min: time.early,
        reached_median_min: time.median,
        reached_late_min: time.late,
        chance_by_limit_percent: lightening.chance_by(target, limit),
        limit_min: limit,
        chance_with_a_fresh_mix_percent: lightening.after(limit).chance_by(target, limit),
    }
}

/// Each developer that `--shelf` names, mixed as the ratio says.
fn shelf(
    args: &LiftArgs,
    belief: &Belief,
    (from, target): (Level, Option<Level>),
    limit: Duration,
) -> Result<Vec<Bottle>, Refusal> {
    let Some(target) = target else { return Ok(Vec::new()) };
    let mut bottles = Vec::new();
    for text in &args.shelf {
        let mix = SituationArgs { on_hair: None, developer: Some(text.clone()), ..args.situation.clone() };
        let mix = situation(&mix)?;
        if let Some(said) = too_strong(mix.on_hair) {
            return Err(Refusal(format!("--shelf {text:?}: {said}")));
        }
        let rows = chances(belief, &mix, &[mix.on_hair], (from.into(), target), limit);
        bottles.extend(rows.into_iter().map(|row| (text.clone(), row)));
    }
    bottles.sort_by(|(_, a), (_, b)| a.on_hair.best().ww_percent().total_cmp(&b.on_hair.best().ww_percent()));
    let rows: Vec<StrengthChance> = bottles.iter().map(|(_, row)| *row).collect();
    let best = gentlest(&rows, OFTEN).copied();
    let bottle = |(developer, row): (String, StrengthChance)| Bottle {
        developer,
        on_hair_ww_percent: row.on_hair.map(MassFraction::ww_percent),
        level: row.level,
        chance_by_limit_percent: row.chance.best(),
        gentlest: best == Some(row),
    };
    Ok(bottles.into_iter().map(bottle).collect())
}

fn lever(factor: &Factor) -> Lever {
    Lever {
        lever: factor.lever,
        times: factor.times,
        basis: factor.basis.words(),
        source: factor.citation.map(|citation| citation.id),
    }
}

/// The shelf, and a staged series where one visit is not enough.
fn choices(sheet: &mut Sheet, report: &Report) {
    let levels = |level: &Interval<Level>| span(level, |level| crate::text::number(level.number(), 1));
    if !report.shelf.is_empty() {
        sheet.blank();
        let rows = report.shelf.iter().map(|bottle| {
            let on_hair = span(&bottle.on_hair_ww_percent, |percent| crate::text::number(percent, 2));
            let chance = in_hundred(bottle.chance_by_limit_percent);
            vec![bottle.developer.clone(), on_hair, levels(&bottle.level), chance]
        });
        sheet.table(&["developer", "on hair %", "level at the limit", "in 100"], &[3], rows.collect());
        let gentlest = match report.shelf.iter().find(|bottle| bottle.gentlest) {
            Some(bottle) => format!("{} is the gentlest that reaches it in 80 of 100 cases", bottle.developer),
            None => "none of these reaches it in 80 of 100 cases: plan more visits or a darker target".to_owned(),
        };
        sheet.paragraph(&gentlest, 2);
    }
    if report.visits.len() > 1 {
        sheet.blank();
        visits_table(sheet, &report.visits);
        sheet.paragraph(BETWEEN_VISITS, 2);
    }
}

fn text(report: &Report) -> String {
    let mut sheet = Sheet::default();
    if let Some(said) = report.too_strong {
        sheet.paragraph(&format!("*** {said} ***"), 4);
    }
    sheet.line(&format!(
        "from {} with {} % w/w on the hair; {}",
        report.from_level,
        span(&report.on_hair_ww_percent, |percent| crate::text::number(percent, 2)),
        match report.strand_readings {
            0 => "no strand test, so at least two levels either way".to_owned(),
            count => crate::text::count(count, "strand reading", "strand readings"),
        }
    ));
    let level = |level: &Interval<Level>| level.to_array().map(|level| crate::text::number(level.number(), 1)).to_vec();
    let rows = report.levels.iter().map(|row| {
        let mut cells = vec![crate::text::number(row.min.min(), 0)];
        cells.extend(level(&row.level));
        cells
    });
    sheet.table(&["min", "at least", "level", "at most"], &[0, 1, 2, 3], rows.collect());
    if let Some(target) = &report.target {
        sheet.blank();
        let minutes = |time: Option<Duration>| time.map_or("never".to_owned(), |time| format!("{:.0} min", time.min()));
        let after = match target.reached_median_min {
            Some(_) => format!("reached after {}", minutes(target.reached_median_min)),
            None => "never reached by the median".to_owned(),
        };
        sheet.paragraph(
            &format!(
                "{}: {} ({} to {}), within {} in {} of 100 cases, with a second fresh mix in {}",
                target.target_level,
                after,
                minutes(target.reached_early_min),
                minutes(target.reached_late_min),
                target.limit_min,
                in_hundred(target.chance_by_limit_percent),
                in_hundred(target.chance_with_a_fresh_mix_percent),
            ),
            2,
        );
    }
    choices(&mut sheet, report);
    for seen in &report.seen {
        let again =
            seen.look_again_min.map(|at| format!("; look again at minute {}", whole_minutes(at))).unwrap_or_default();
        sheet.paragraph(&format!("minute {:.0}: {}: {}{again}", seen.at_min.min(), seen.next, seen.why), 2);
    }
    let minutes: Vec<String> = report.looks_min.iter().map(|at| crate::text::number(at.min(), 0)).collect();
    sheet.paragraph(&format!("look at minute {} from the first strand, for:", minutes.join(", ")), 2);
    for what in report.look_for {
        sheet.paragraph(&format!("- {what}"), 2);
    }
    sheet.blank();
    let next = report.next_strand_test_min.min();
    sheet.paragraph(&format!("known: {}; the strand that teaches most is read at minute {next:.0}", report.known), 2);
    sheet.paragraph(
        &format!(
            "strain on the fibre at the limit: {} (index {}; compared with 40 min at 4 % w/w; an elasticity test decides)",
            report.strain,
            span(&report.strain_index, |index| crate::text::number(index, 1))
        ),
        2,
    );
    for lever in report.levers.iter().filter(|lever| !(lever.times.is_exact() && lever.times.best() == 1.0)) {
        let source = lever.source.map(|id| format!(", {id}")).unwrap_or_default();
        let times = span(&lever.times, |times| crate::text::number(times, 2));
        sheet.paragraph(&format!("{}: times {times} [{}{source}]", lever.lever, lever.basis), 2);
    }
    sheet.paragraph(report.basis, 2);
    for problem in &report.book_problems {
        sheet.paragraph(&format!("not read from the book: {problem}"), 2);
    }
    sheet.finish()
}
