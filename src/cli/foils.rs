//! `foilwork foils`: foils of a panel, the share that is picked, grams in a foil and grams on it.

use super::{Outcome, Refusal, args::FoilsArgs, hair, output, read};
use crate::{
    hair::{HairCount, Weeks, growth},
    head::{
        Demand, InFoils, Layout, Panel, Profile, Softness, Taking, Technique, by_hand, demand, line_shows_after,
        take_up,
    },
    quantity::{Area, Duration, Length, Quantity},
    source::Interval,
    text::{Sheet, range, span},
};
use serde::Serialize;

/// What a panel takes, as data.
#[derive(Serialize)]
struct Report {
    technique: Technique,
    foils: InFoils,
    hairs_in_a_foil: Interval<HairCount>,
    profile: Profile,
    softness: Softness,
    demand: Demand,
    apply_min: Interval<Duration>,
    line_shows_after_weeks: Interval<Weeks>,
    basis: &'static str,
}

const BASIS: &str = "plane geometry of the sizes stated; hair as `foilwork hair` estimates it; take-up and minutes for a \
                     foil are assumed until you enter your own";

/// The options that a layout is told with.
const OPTIONS: [&str; 6] = ["--foil-width", "--width", "--height", "--subsection", "--pick", "--depth"];

pub(super) fn run(args: &FoilsArgs) -> Outcome {
    let technique: Technique = read::option("--technique", &args.technique)?;
    if !technique.is_in_foil() {
        let way_out = "give weave, slice, back-comb or freehand-in-foil";
        return Err(Refusal(format!("--technique: {technique} takes no foils ({way_out})")));
    }
    let length = cm("--length", args.length)?;
    let layout = layout(args, technique)?;
    let panel = Panel { width: cm("--width", args.width)?, height: cm("--height", args.height)? };
    let foils = layout.on(panel).map_err(|error| Refusal(error.told_with(OPTIONS)))?;
    if args.trail.trail {
        let trail = layout.trail_on(panel).map_err(|error| Refusal(error.told_with(OPTIONS)))?;
        return output::deliver(output::trail(&trail, args.report.json)?, 0, &args.report.output);
    }
    let mut profile = technique.profile(length).value;
    if let Some(start) = args.start.map(|start| cm("--start", start)).transpose()? {
        if start >= length {
            return Err(Refusal(format!(
                "--start {start} is not within --length {length} (start nearer to the scalp)"
            )));
        }
        profile.start = start.into();
    }
    let facts = hair::facts(&args.facts)?;
    let head = facts.head();
    let area = Area::nearest(panel.width.cm() * panel.height.cm());
    let needed = demand(
        &head.on(area.into()),
        foils.share_of_panel,
        &profile,
        length.into(),
        take_up(technique, !args.colour).value,
        None,
        Some(foils.foils),
    );
    let in_a_foil = foils.lifted.map(|lifted| Area::nearest(lifted.cm2() / f64::from(foils.across)));
    let report = Report {
        technique,
        foils,
        hairs_in_a_foil: head.on(in_a_foil).hairs,
        profile,
        softness: profile.softness(),
        apply_min: foils.apply(),
        demand: needed,
        line_shows_after_weeks: line_shows_after(&profile, growth(facts.group).value).value,
        basis: BASIS,
    };
    output::report(&args.report, &report, || text(&report))
}

fn cm(name: &str, value: f64) -> Result<Length, Refusal> {
    Length::from_cm(value).map_err(|error| read::about(name, error))
}

fn mm(name: &str, value: f64) -> Result<Length, Refusal> {
    Length::from_mm(value).map_err(|error| read::about(name, error))
}

fn layout(args: &FoilsArgs, technique: Technique) -> Result<Layout, Refusal> {
    let mut layout = match technique {
        Technique::Weave => Layout::weave(by_hand(mm("--pick", args.pick)?), by_hand(mm("--gap", args.gap)?)),
        _ => Layout::slice(),
    };
    if let Some(thick) = args.subsection.map(|thick| mm("--subsection", thick)).transpose()? {
        layout = Layout { left_between: by_hand(thick), ..layout.with_subsection(by_hand(thick)) };
    }
    if let (Some(depth), Taking::Weave { pick, gap, .. }) = (args.depth, layout.taking) {
        layout.taking = Taking::Weave { pick, gap, depth: by_hand(mm("--depth", depth)?) };
    }
    if let Some(left) = args.left.map(|left| mm("--left", left)).transpose()? {
        layout.left_between = by_hand(left);
    }
    layout.foil_width = args.foil_width.map(|width| cm("--foil-width", width)).transpose()?;
    Ok(layout)
}

fn text(report: &Report) -> String {
    let mut sheet = Sheet::default();
    let (foils, demand) = (&report.foils, &report.demand);
    let count = |count: &Interval<u32>| span(count, |count| count.to_string());
    let mut line = |what: &str, value: String| sheet.line(&format!("{what:<18}{value}"));
    line("foils", format!("{} ({} in a row)", count(&foils.foils), foils.across));
    if report.technique == Technique::Weave {
        line("strands in a row", count(&foils.picks));
    }
    line("of a subsection", format!("{} %", range(&foils.share_of_subsection, 0)));
    line("of the panel", format!("{} %", range(&foils.share_of_panel, 0)));
    line("hairs in a foil", range(&report.hairs_in_a_foil, 0));
    let profile = &report.profile;
    line(
        "begins at",
        format!(
            "{} cm from the scalp, over {} cm: {}",
            range(&profile.start, 1),
            range(&profile.transition, 1),
            report.softness
        ),
    );
    line("hair covered", format!("{} g", range(&demand.hair, 2)));
    line("mix", format!("{} g", range(&demand.mix, 1)));
    if let Some(per_foil) = &demand.mix_per_foil {
        line("mix for a foil", format!("{} g", range(per_foil, 1)));
    }
    line("minutes", range(&report.apply_min, 0));
    line("line shows after", format!("{} weeks", range(&report.line_shows_after_weeks, 0)));
    sheet.paragraph(report.basis, 0);
    sheet.finish()
}
