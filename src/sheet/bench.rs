use super::{mixes, money};
use crate::{
    service::{Plan, SectionColour, Stage, Verdict},
    text::{Sheet, count, number},
};

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
    hair(&mut sheet, plan);
    order(&mut sheet, plan);
    colour(&mut sheet, plan);
    mixes::mixes(&mut sheet, plan);
    money::money(&mut sheet, plan);
    cautions(&mut sheet, plan);
    grounds(&mut sheet, plan);
    sheet.finish()
}

fn head(sheet: &mut Sheet, plan: &Plan) {
    sheet.title(&format!("BENCH SHEET  {}", plan.title));
    let mut facts = vec![format!("starts {}", plan.start.replace('T', " "))];
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
    if plan.is_blocked() {
        let stops = plan.findings.iter().filter(|finding| finding.verdict == Verdict::Stop).count();
        let text = count(stops, "finding says", "findings say");
        sheet.blank();
        sheet.paragraph(&format!("*** DO NOT BEGIN: {text} STOP. Resolve it first. ***"), 4);
    }
}

fn findings(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Checks");
    for finding in plan.findings.iter().filter(|finding| finding.verdict != Verdict::Passed) {
        let mark = format!("[{}]", finding.verdict.mark());
        sheet.paragraph(&format!("{mark:<7}{}: {}", finding.check, finding.text), 7);
    }
    // What passed is said once for each check, so that it does not drown the rest.
    let passed: Vec<_> = plan.findings.iter().filter(|finding| finding.verdict == Verdict::Passed).collect();
    let mut checks: Vec<&str> = Vec::new();
    for finding in &passed {
        if checks.contains(&finding.check.as_str()) {
            continue;
        }
        checks.push(&finding.check);
        let texts = passed.iter().filter(|other| other.check == finding.check).map(|other| other.text.as_str());
        let mark = format!("[{}]", finding.verdict.mark());
        sheet.paragraph(&format!("{mark:<7}{}: {}", finding.check, texts.collect::<Vec<_>>().join("; ")), 7);
    }
    sheet.blank();
    sheet.paragraph("OPEN means unknown, never passed. \"ok\" means nothing was found, not that anything is safe.", 0);
}

fn hair(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("The hair, as stated by you");
    let rows = plan.hair.iter().map(|fact| vec![fact.name.clone(), fact.value.clone()]).collect();
    sheet.table(&["", ""], &[], rows);
}

fn order(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Order, in minutes from the first brush");
    let minutes = |list: &[f64]| list.iter().map(|at| number(*at, 0)).collect::<Vec<_>>().join(" ");
    for (stage, note) in [(Stage::Section, ""), (Stage::Toner, "After rinsing, counted anew:")] {
        let steps: Vec<_> =
            plan.order.iter().filter(|step| (step.stage == Stage::Section) == (stage == Stage::Section)).collect();
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
                    format!("{} to {}", number(step.begin_min, 0), number(step.applied_min, 0)),
                    minutes(&step.check_min),
                    number(step.rinse_by_min, 0),
                ]
            })
            .collect();
        sheet.table(&["#", "what", "apply", "look at", "rinse by"], &[0, 4], rows);
    }
    sheet.blank();
    sheet.paragraph("Rinse a strand when it is there, not when the clock says so. One pair of hands is assumed.", 0);
}

fn colour(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Level and tone, section by section");
    let row = |section: &SectionColour| {
        let (verb, levels) = if section.change_levels >= 0.0 {
            ("lift", section.change_levels)
        } else {
            ("deposit", -section.change_levels)
        };
        vec![
            section.section.clone(),
            match &section.developer {
                Some(developer) => format!("{}, {developer}", section.product),
                None => section.product.clone(),
            },
            format!("{} to {}", number(section.from_level, 1), number(section.target_level, 1)),
            format!("{verb} {}", number(levels, 1)),
            section.exposed.clone().unwrap_or_else(|| "-".to_owned()),
            section.neutralised_by.clone().unwrap_or_else(|| "-".to_owned()),
            section.target_tone.clone().unwrap_or_else(|| "-".to_owned()),
        ]
    };
    let rows = plan.colour.iter().map(row).collect();
    sheet.table(&["section", "with", "level", "levels", "exposes", "neutralise", "wanted"], &[], rows);
    if !plan.contrasts.is_empty() {
        let pair = |contrast: &crate::service::Contrast| {
            format!("{} / {} {}", contrast.first, contrast.second, number(contrast.ciede2000, 1))
        };
        let pairs: Vec<_> = plan.contrasts.iter().map(pair).collect();
        sheet.blank();
        sheet.paragraph(&format!("Contrast by the colour model (CIEDE2000): {}.", pairs.join("; ")), 0);
        for remark in plan.contrasts.iter().filter_map(|contrast| contrast.remark.as_ref()) {
            sheet.paragraph(&format!("- {remark}"), 2);
        }
    }
    for section in &plan.colour {
        let Some(rule) = &section.level_rule else { continue };
        sheet.blank();
        let text = format!(
            "{}: by the mean rule the shade (level {}) leaves white hair at about {} and pigmented hair at about {}; for \
             the target the rule asks for: {}. A rule of thumb; the strand decides.",
            section.section,
            number(rule.shade_level, 1),
            number(rule.white_level, 1),
            number(rule.pigmented_level, 1),
            rule.shade_for_target
        );
        sheet.paragraph(&text, 0);
    }
    if plan.colour.iter().any(|section| section.exposed.is_some()) {
        sheet.blank();
        sheet.paragraph("Exposed pigment and its neutralising tone: common practice, hue by hue; read the strand.", 0);
    }
}

fn cautions(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Cautions");
    for caution in &plan.cautions {
        sheet.paragraph(&format!("- {}", caution.text), 2);
    }
}

/// Where the numbers come from: defaults, what is not computed, sources of the checks.
fn grounds(sheet: &mut Sheet, plan: &Plan) {
    if !plan.defaults.is_empty() {
        sheet.heading("Defaults used; say it in the file to replace it");
        for default in &plan.defaults {
            let text = format!("- {} = {}  [{}] {}", default.field, default.value, default.basis, default.source);
            sheet.paragraph(&text, 2);
        }
    }
    sheet.heading("Not computed");
    for missing in &plan.not_computed {
        sheet.paragraph(&format!("- {}: {}", missing.what, missing.why), 2);
    }
    sheet.heading("Sources of the checks");
    let mut seen: Vec<&str> = Vec::new();
    for finding in &plan.findings {
        if !seen.contains(&finding.source.as_str()) {
            seen.push(&finding.source);
            sheet.paragraph(&format!("- {}: {}", finding.check, finding.source), 2);
        }
    }
    sheet.blank();
    sheet.line(&format!("foilwork {}", plan.foilwork));
}
