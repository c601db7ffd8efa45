use super::{hair, mixes, money};
use crate::{
    colour::{Level, LevelChange, UnderlyingPigment},
    finding::{Reason, Rule, Verdict},
    quantity::Duration,
    service::{Contrast, Mix, PartKind, Plan, SectionColour, WorkStage},
    source::Interval,
    text::{Sheet, amount, number, span},
};
use std::fmt;

/// The plan as plain text for the bench: 80 columns, aligned, readable without colour.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{parse, plan}, sheet::bench_sheet};
///
/// let file = parse(include_str!("../../examples/soft-gradient.toml"), Format::Toml)?;
/// let text = bench_sheet(&plan(&file)?);
/// assert!(text.lines().all(|line| line.chars().count() <= 80));
/// # Ok::<(), foilwork::reader::Problems>(())
/// ```
#[must_use]
pub fn bench_sheet(plan: &Plan) -> String {
    let mut sheet = Sheet::default();
    head(&mut sheet, plan);
    findings(&mut sheet, plan);
    hair::hair(&mut sheet, plan);
    order(&mut sheet, plan);
    colour(&mut sheet, plan);
    mixes::mixes(&mut sheet, plan);
    money::money(&mut sheet, plan);
    cautions(&mut sheet, plan);
    bases(&mut sheet, plan);
    sheet.finish()
}

/// The bench sheet.
impl fmt::Display for Plan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&bench_sheet(self))
    }
}

fn head(sheet: &mut Sheet, plan: &Plan) {
    sheet.title(&format!("BENCH SHEET  {}", plan.title));
    let mut facts = vec![format!("starts {}", plan.start)];
    facts.extend(plan.guest.as_ref().map(|guest| format!("guest {guest}")));
    facts.extend(plan.colourist.as_ref().map(|colourist| format!("colourist {colourist}")));
    facts.push(match &plan.jurisdiction {
        Some(jurisdiction) => format!("law of {jurisdiction}"),
        None => "no jurisdiction stated".to_owned(),
    });
    sheet.paragraph(&facts.join("   "), 0);
    if let Some(notes) = &plan.notes {
        sheet.paragraph(&format!("Notes: {notes}"), 7);
    }
    if plan.blocked {
        let stops = plan.findings.iter().filter(|finding| finding.verdict == Verdict::Stop).count();
        let text = if stops == 1 { "1 finding says".to_owned() } else { format!("{stops} findings say") };
        sheet.blank();
        sheet.paragraph(&format!("*** DO NOT BEGIN: {text} STOP. Resolve it first. ***"), 4);
    }
}

fn findings(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Checks");
    for finding in plan.findings.iter().filter(|finding| finding.verdict != Verdict::Passed) {
        let mark = format!("[{}]", finding.verdict);
        sheet.paragraph(&format!("{mark:<7}{}: {}", finding.rule, finding.text), 7);
    }
    // What passed is said once for each rule, so that it does not drown the rest.
    let passed: Vec<_> = plan.findings.iter().filter(|finding| finding.verdict == Verdict::Passed).collect();
    let mut rules: Vec<Rule> = Vec::new();
    for finding in &passed {
        if rules.contains(&finding.rule) {
            continue;
        }
        rules.push(finding.rule);
        let texts = passed.iter().filter(|other| other.rule == finding.rule).map(|other| other.text.as_str());
        let mark = format!("[{}]", finding.verdict);
        sheet.paragraph(&format!("{mark:<7}{}: {}", finding.rule, texts.collect::<Vec<_>>().join("; ")), 7);
    }
    sheet.blank();
    sheet.paragraph("OPEN means unknown, never passed. \"ok\" means nothing was found, not that anything is safe.", 0);
}

fn order(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Order, in minutes from the first brush");
    let minutes = |list: &[Duration]| list.iter().map(|at| amount(*at, 0)).collect::<Vec<_>>().join(" ");
    for (stage, note) in [(WorkStage::Section, ""), (WorkStage::Toner, "After rinsing, counted anew:")] {
        let steps: Vec<_> = plan
            .order
            .iter()
            .filter(|step| (step.stage == WorkStage::Section) == (stage == WorkStage::Section))
            .collect();
        if steps.is_empty() {
            continue;
        }
        if !note.is_empty() {
            sheet.blank();
            sheet.line(note);
        }
        let rows = steps
            .into_iter()
            .map(|step| {
                vec![
                    step.number.to_string(),
                    step.name.clone(),
                    format!("{} to {}", amount(step.begin, 0), amount(step.applied, 0)),
                    minutes(&step.look_at),
                    step.look_at_last.map_or_else(|| "-".to_owned(), |at| amount(at, 0)),
                    amount(step.rinse_by, 0),
                ]
            })
            .collect();
        sheet.table(&["#", "what", "apply", "look at", "last strand", "rinse by"], &[0, 4, 5], rows);
    }
    sheet.blank();
    sheet.paragraph(&format!("The order is {}.", plan.order_basis), 0);
    let text = "Times on the hair count from the first strand; from \"last strand\" on look at that one too. Rinse a \
                strand when it is there, not when the clock says so. One pair of hands is assumed.";
    sheet.paragraph(text, 0);
}

fn colour(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Level and tone, section by section");
    let row = |section: &SectionColour| {
        let mix = plan.mixes.iter().find(|mix| mix.name == section.section);
        let pigment = section.exposed.as_ref().map(|pigment| &pigment.value);
        let dash = || "-".to_owned();
        vec![
            section.section.clone(),
            mix.map(with).unwrap_or_default(),
            format!("{} to {}", levels(section.from_level), number(section.target_level.number(), 1)),
            change(section.change_levels),
            pigment.map_or_else(dash, exposed),
            pigment.and_then(neutralised_by).unwrap_or_else(dash),
            section.target_tone.clone().unwrap_or_else(dash),
        ]
    };
    let rows = plan.colour.iter().map(row).collect();
    sheet.table(&["section", "with", "level", "levels", "exposes", "neutralise", "wanted"], &[], rows);
    if !plan.contrasts.is_empty() {
        let pair =
            |contrast: &Contrast| format!("{} / {} {}", contrast.first, contrast.second, number(contrast.ciede2000, 1));
        let pairs: Vec<_> = plan.contrasts.iter().map(pair).collect();
        sheet.blank();
        sheet.paragraph(&format!("Contrast by the colour model (CIEDE2000): {}.", pairs.join("; ")), 0);
    }
    for section in &plan.colour {
        let Some(rule) = &section.level_rule else { continue };
        sheet.blank();
        let text = format!(
            "{}: by the mean rule the shade (level {}) leaves white hair at about {} and pigmented hair at about {}; for \
             the target the rule asks for: {}. A rule of thumb; the strand decides.",
            section.section,
            number(rule.shade_level.number(), 1),
            number(rule.white_hair_level.number(), 1),
            number(rule.pigmented_hair_level.number(), 1),
            match (rule.shade_for_target_level, &rule.no_shade_for_target) {
                (Some(level), _) => level.number().to_string(),
                (None, why) => why.clone().unwrap_or_default(),
            }
        );
        sheet.paragraph(&text, 0);
    }
    if plan.colour.iter().any(|section| section.exposed.is_some()) {
        sheet.blank();
        sheet.paragraph("Exposed pigment and its neutralising tone: common practice, hue by hue; read the strand.", 0);
    }
}

/// The products of a mix and what they are mixed with.
fn with(mix: &Mix) -> String {
    let products: Vec<&str> = mix.products().map(|part| part.product.as_str()).collect();
    let oxidant: Vec<_> = mix.oxidant().collect();
    let products = products.join(" + ");
    match oxidant.as_slice() {
        [] => products,
        [bottle] if bottle.kind == PartKind::Developer => format!("{products}, {}", bottle.product),
        _ => format!("{products}, {} % w/w blended", number(mix.developer.best().ww_percent(), 2)),
    }
}

fn levels(levels: Interval<Level>) -> String {
    span(&levels, |level| number(level.number(), 1))
}

fn change(change: Interval<LevelChange>) -> String {
    let words = |change: LevelChange| number(change.levels(), 1);
    if change.best().is_deposit() {
        format!("deposit {}", span(&change.map(|change| -change), words))
    } else {
        format!("lift {}", span(&change, words))
    }
}

fn exposed(pigment: &UnderlyingPigment) -> String {
    from_to(pigment.words)
}

fn neutralised_by(pigment: &UnderlyingPigment) -> Option<String> {
    pigment.neutraliser.map(|(a, b)| from_to((a.words(), b.words())))
}

/// `orange` for a whole level, `orange to yellow-orange` between two.
fn from_to((darker, lighter): (&str, &str)) -> String {
    if darker == lighter { darker.to_owned() } else { format!("{darker} to {lighter}") }
}

fn sources(sources: &[Reason]) -> String {
    sources.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ")
}

fn cautions(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Cautions");
    for caution in &plan.cautions {
        sheet.paragraph(&format!("- {}", caution.text), 2);
    }
}

/// Where the numbers come from: defaults, what is not computed, sources of the checks.
fn bases(sheet: &mut Sheet, plan: &Plan) {
    if !plan.defaults.is_empty() {
        sheet.heading("Defaults used; say it in the file to replace it");
        for default in &plan.defaults {
            let sources = sources(&default.sources);
            let text = format!("- {} = {}  [{}] {sources}", default.field, default.value, default.basis);
            sheet.paragraph(&text, 2);
        }
    }
    sheet.heading("Not computed");
    for missing in &plan.not_computed {
        sheet.paragraph(&format!("- {}: {}", missing.what, missing.why), 2);
    }
    if !plan.stated_not_used.is_empty() {
        sheet.heading("Stated, not used");
        for fact in &plan.stated_not_used {
            sheet.paragraph(&format!("- {}: {}", fact.field, fact.why), 2);
        }
    }
    sheet.heading("Sources of the checks");
    let mut seen: Vec<String> = Vec::new();
    for finding in &plan.findings {
        let text = sources(&finding.sources);
        if !seen.contains(&text) {
            sheet.paragraph(&format!("- {}: {text}", finding.rule), 2);
            seen.push(text);
        }
    }
    sheet.blank();
    sheet.line(&format!("foilwork {}", plan.foilwork));
}
