use crate::{
    finding::Verdict,
    lift::Strain,
    record::{SoFar, Undergone, instructions},
    service::{
        Plan,
        shape::{Elasticity, Porosity},
    },
    source::Basis,
    text::number,
};
use schemars::JsonSchema;
use serde::Serialize;

/// What to mind at home, by what the hair went through.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct HomeCare {
    /// The condition in words: what was tested after the service, and how the strain compares.
    pub condition: String,
    /// The worst that a strand showed; absent where none was tested.
    pub elasticity: Option<Elasticity>,
    /// The strain by the model of what was noted, all applications together, of the section that had most; as planned where
    /// its times are not noted, and absent where nothing was lightened. Sections that were not begun have none.
    pub strain: Option<Strain>,
    /// What to do, the most urgent first.
    pub advice: Vec<CareAdvice>,
}

/// A piece of advice.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CareAdvice {
    /// What to do.
    pub text: String,
    /// Why.
    pub why: String,
    /// What it rests on.
    pub basis: Basis,
}

/// What to mind at home. General advice: no product is named, and none of it says that anything is safe.
///
/// # Example
///
/// ```
/// use foilwork::{history::home_care, reader::Format, record::replay, service::plan_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let care = home_care(&plan, &replay(&[]));
/// assert!(care.condition.starts_with("no strand was tested after the service"));
/// assert!(care.advice.len() > 4);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Common practice; that lightened hair is weaker when wet is the reason of the comb.
#[must_use]
pub fn home_care(plan: &Plan, so_far: &SoFar) -> HomeCare {
    // A strand of a section that is not of this service says nothing of it.
    let planned = so_far.sections.iter().filter(|one| plan.mixes.iter().any(|mix| mix.name == one.name));
    let worst = planned.filter_map(|one| one.elasticity).max();
    let most = Undergone::all(plan, so_far).into_iter().max_by_key(|(_, one)| one.strain);
    let strain = most.as_ref().map(|(_, one)| one.strain);
    let lightened = strain.is_some();
    let mut advice = Vec::new();
    let mut say = |text: &str, why: &str| {
        advice.push(CareAdvice { text: text.to_owned(), why: why.to_owned(), basis: Basis::CommonPractice });
    };
    let skin = instructions(so_far).iter().any(|one| one.verdict == Verdict::Stop && one.section.is_none());
    if skin || !so_far.incidents.is_empty() {
        say(
            "Have the skin seen by a doctor, and put no colour on it until then.",
            "a reaction or an accident was noted during the service",
        );
    }
    say(
        "Wash it out and see a doctor if the skin itches, swells or blisters in the next days; tell the salon.",
        "a reaction can come two days late",
    );
    match worst {
        Some(Elasticity::Poor) => {
            say(
                "No lightener, colour with peroxide, straightening or perm until a strand stretches and returns again.",
                "a strand stayed stretched or broke",
            );
            say(
                "No hot iron and no tight tie; have broken ends cut.",
                "hair that stays stretched breaks under pull and heat",
            );
        }
        Some(Elasticity::Reduced) => say(
            "No second service with peroxide before a strand is tested again, at the earliest in the weeks of the plan.",
            "a strand returned slowly",
        ),
        None if lightened => say(
            "Stretch a damp strand at the next visit before anything else.",
            "no strand was tested after the service, so its condition is not known",
        ),
        Some(_) | None => {}
    }
    if lightened {
        say("Comb it wet with a wide comb only, from the ends up.", "lightened hair is weaker when it is wet");
        say("A rich conditioner at each wash, and left on longer once a week.", "lightened hair is rough and dry");
    }
    if strain.is_some_and(|strain| strain >= Strain::High) || worst.is_some_and(|worst| worst >= Elasticity::Reduced) {
        say(
            "Dry in the air, or at low heat from a distance.",
            "the fibre has been through more than a usual application",
        );
    } else {
        say("Little heat: dry gently, iron seldom and not hot.", "heat dries coloured hair and fades it");
    }
    say("Wait two days before the first wash; lukewarm water, mild shampoo.", "colour fades most in the first washes");
    if matches!(plan.hair.porosity, Some(Porosity::High | Porosity::Uneven)) {
        say("Wash less often, and refresh the tone sooner.", "porous hair lets colour go sooner");
    }
    say(
        "Cover it in strong sun; rinse with clear water before and after a pool or the sea.",
        "sun, chlorine and salt change colour",
    );
    HomeCare { condition: condition(worst, most.as_ref()), elasticity: worst, strain, advice }
}

fn condition(worst: Option<Elasticity>, most: Option<&(&str, Undergone)>) -> String {
    let tested = match worst {
        Some(Elasticity::Good) => "every strand that was tested stretched and returned".to_owned(),
        Some(worst) => format!("elasticity {worst} on the worst strand that was tested"),
        None => "no strand was tested after the service".to_owned(),
    };
    let Some((section, one)) = most else { return format!("{tested}; nothing was lightened") };
    let (strain, minutes) = (one.strain, number(one.minutes(), 0));
    let by = match (one.carried.len(), one.is_noted) {
        (1, true) => format!("{minutes} min on {section}"),
        (1, false) => format!("{minutes} min on {section}, as its times are not noted"),
        (times, true) => format!("{minutes} min on {section} in {times} applications"),
        (times, false) => format!("{minutes} min on {section} in {times} applications, the last rinse not noted"),
    };
    format!("{tested}; strain by the model: {strain} ({by})")
}
