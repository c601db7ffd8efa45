use super::{
    Fact, Plan, cautions, colour, costs, finding::Findings, gradient, legal, mixes, order, tests_done, unknown,
    work_checks,
};
use crate::{
    reader::Format,
    service::{
        file::{self, Problem, Problems},
        request::Request,
        shape::ServiceFile,
    },
    source::Basis,
};

/// Makes the plan of a service.
///
/// Findings that say stop do not prevent the plan: they are part of it, and [`Plan::is_blocked`] tells.
///
/// # Errors
///
/// [`Problems`] when something cannot be computed at all, for example a strength that the shelf does not reach. The
/// problems of all mixes are reported together.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{parse, plan}};
///
/// let file = parse(include_str!("../../../examples/soft-gradient.toml"), Format::Toml)?;
/// let plan = plan(&file)?;
/// assert_eq!(plan.mixes[0].name, "nape");
/// assert!(plan.mixes[0].on_hair_ww_percent.high < 12.0);
/// # Ok::<(), foilwork::reader::Problems>(())
/// ```
pub fn plan(file: &ServiceFile) -> Result<Plan, Problems> {
    let request = Request::new(file)?;
    let steps = order::steps(&request.tasks);
    let mut mixed = Vec::new();
    let mut problems: Vec<Problem> = Vec::new();
    let order = order::order(&request.tasks);
    for (task, step) in order.iter().filter_map(|i| request.tasks.get(*i)).zip(&steps) {
        match mixes::mix(&request, task, step.begin_min) {
            Ok(mix) => mixed.push((task, mix)),
            Err(Problems(mut found)) => problems.append(&mut found),
        }
    }
    if !problems.is_empty() {
        return Err(Problems(problems));
    }

    let mut findings = Findings::default();
    let pairs: Vec<_> = mixed.iter().map(|(task, mix)| (*task, mix)).collect();
    tests_done::check(&request, &mut findings);
    legal::check(&request, &pairs, &mut findings);
    work_checks::check(&request, &pairs, &mut findings);
    gradient::check(&request, &mut findings);
    let mixed: Vec<_> = mixed.into_iter().map(|(_, mix)| mix).collect();
    let money = costs::money(&request, &steps, &mixed)?;
    let head = &request.file.service;
    Ok(Plan {
        foilwork: env!("CARGO_PKG_VERSION"),
        title: head.title.clone(),
        start: head.start.clone(),
        guest: head.guest.clone(),
        colourist: head.colourist.clone(),
        jurisdiction: request.jurisdiction.map(|jurisdiction| jurisdiction.to_string()),
        notes: head.notes.clone(),
        hair: hair(&request),
        findings: findings.sorted(),
        order: steps,
        colour: colour::sections(&request),
        contrasts: gradient::contrasts(&request),
        mixes: mixed.into_iter().map(|mixed| mixed.mix).collect(),
        cautions: cautions::cautions(&request),
        not_computed: unknown::not_computed(&request, money.is_some()),
        money,
        defaults: request.defaults,
    })
}

/// Reads a service file and makes its plan; every problem names its line, those that show only in planning too.
///
/// # Errors
///
/// [`Problems`], as for [`parse`](crate::service::parse) and [`plan`].
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::plan_text};
///
/// let plan = plan_text(include_str!("../../../examples/lowlights.json"), Format::Json)?;
/// assert!(!plan.is_blocked());
/// # Ok::<(), foilwork::reader::Problems>(())
/// ```
pub fn plan_text(text: &str, format: Format) -> Result<Plan, Problems> {
    plan(&file::parse(text, format)?).map_err(|problems| problems.located(text, format))
}

/// What the file says of the hair, in the order in which it is read.
fn hair(request: &Request) -> Vec<Fact> {
    let analysis = &request.file.analysis;
    let mut facts = Vec::new();
    let mut say = |name: &str, value: String| {
        facts.push(Fact { name: name.to_owned(), value, basis: Basis::Stated });
    };
    let level = match analysis.natural_level_plus_minus {
        Some(off) => format!("{} +/- {off}", analysis.natural_level),
        None => format!(
            "{} (no margin stated; a reading by eye is seldom better than half a level)",
            analysis.natural_level
        ),
    };
    say("natural level", level);
    say("white", format!("{} %", analysis.white_percent));
    let mut word = |name: &str, value: Option<String>| {
        if let Some(value) = value {
            say(name, value);
        }
    };
    word("texture", analysis.texture.map(words));
    word("density", analysis.density.map(words));
    word("porosity", analysis.porosity.map(words));
    word("elasticity", analysis.elasticity.map(words));
    word("scalp", analysis.scalp.map(words));
    word("length", analysis.length_cm.map(|cm| format!("{cm} cm")));
    for existing in &analysis.existing {
        let tone = existing.tone.as_deref().map(|tone| format!(", {tone}")).unwrap_or_default();
        let kind = if existing.artificial { "artificial colour" } else { "natural" };
        say(&words(existing.zone), format!("level {}{tone}, {kind}", existing.level));
    }
    match analysis.history.as_deref() {
        None => {}
        Some([]) => say("history", "nothing to tell".to_owned()),
        Some(flags) => say("history", flags.iter().map(|flag| words(*flag)).collect::<Vec<_>>().join(", ")),
    }
    facts
}

/// The word by which the file names a choice, with spaces.
fn words<T: serde::Serialize>(choice: T) -> String {
    match serde_json::to_value(choice) {
        Ok(serde_json::Value::String(word)) => word.replace('-', " "),
        _ => String::new(),
    }
}
