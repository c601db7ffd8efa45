//! Checks of depth and gradient: colours along a strand and across a head, as data for a plan.

use super::{Difference, Hue, Level, Swatch, Tone, lift_needed, underlying_pigment};
use crate::{
    finding::{Finding, Reason, Rule, Verdict},
    quantity::Share,
    source::COMMON_PRACTICE,
};
use schemars::JsonSchema;
use serde::Serialize;

/// Depth put at the root must not be darker than the natural base, or the regrowth comes in lighter than it.
///
/// ```
/// use foilwork::colour::{Level, check_depth_at_root};
///
/// assert!(check_depth_at_root(Level::new(6.0)?, Level::new(6.5)?).is_none());
/// assert!(check_depth_at_root(Level::new(6.0)?, Level::new(5.0)?).is_some());
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn check_depth_at_root(natural: Level, depth: Level) -> Option<Finding> {
    (depth < natural).then(|| {
        Finding::new(
            Rule::DepthAtRoot,
            Verdict::Warning,
            format!(
                "depth of {depth} at the root is {} than the natural base, {natural}: new growth will show lighter \
                 than it (use {natural} or lighter)",
                lift_needed(natural, depth)
            ),
            COMMON_PRACTICE,
        )
    })
}

/// The hairline should be at least as light as the sections beside it.
///
/// Neighbours are named so that the finding can say which one is lighter.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Level, check_hairline};
///
/// let (eight, nine) = (Level::new(8.0)?, Level::new(9.0)?);
/// assert!(check_hairline(eight, [("crown", nine)]).is_some_and(|finding| finding.text.contains("crown")));
/// assert!(check_hairline(nine, [("crown", eight)]).is_none());
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn check_hairline<'a>(hairline: Level, neighbours: impl IntoIterator<Item = (&'a str, Level)>) -> Option<Finding> {
    let (name, lightest) = neighbours.into_iter().reduce(|a, b| if b.1 > a.1 { b } else { a })?;
    (lightest > hairline).then(|| {
        Finding::new(
            Rule::Hairline,
            Verdict::Warning,
            format!(
                "the hairline at {hairline} is darker than {name} beside it at {lightest}: the face will look framed \
                 dark (take the hairline to {lightest} or lighter)"
            ),
            COMMON_PRACTICE,
        )
    })
}

/// A tone to paint where two formulas meet in one foil.
#[derive(Debug, Clone, PartialEq)]
pub struct Transition {
    /// Half way between the two levels.
    pub level: Level,
    /// Both tones in equal parts.
    pub tone: Tone,
    /// What to say about it.
    pub finding: Finding,
}

/// Levels that two formulas in one foil may differ by before their meeting shows as a line (assumed).
pub const TRANSITION_LEVELS: f64 = 2.0;

/// Whether two formulas that meet in one foil need a tone between them: when their levels differ by more than
/// [`TRANSITION_LEVELS`], or when one leans warm and the other cool.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Level, Tone, transition_between};
///
/// let neutral = Tone::neutral();
/// let between = transition_between((Level::new(6.0)?, &neutral), (Level::new(9.0)?, &neutral));
/// assert_eq!(between.map(|tone| tone.level), Some(Level::new(7.5)?));
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn transition_between(first: (Level, &Tone), second: (Level, &Tone)) -> Option<Transition> {
    let step = lift_needed(first.0, second.0).levels().abs();
    let tempers = (first.1.main_hue().map(Hue::temper), second.1.main_hue().map(Hue::temper));
    let clash = matches!(tempers, (Some(one), Some(other)) if one != other);
    if step <= TRANSITION_LEVELS && !clash {
        return None;
    }
    let level = Level::clamped(f64::midpoint(first.0.number(), second.0.number()));
    let half = Share::from_percent(50.0).unwrap_or(Share::ALL);
    let tone = Tone::blend([(first.1, half), (second.1, half)]);
    let why =
        if step > TRANSITION_LEVELS { format!("differ by {step} levels") } else { "lean warm and cool".to_owned() };
    let finding = Finding::new(
        Rule::Transition,
        Verdict::Note,
        format!("two formulas in one foil {why}: blend them over a stretch at about {level}, {tone}"),
        Reason::assumed(),
    );
    Some(Transition { level, tone, finding })
}

/// How far two sections are apart, and a finding when the difference is not one that repeated readings could tell.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Level, Swatch, contrast_between};
///
/// let (crown, nape) = (Swatch::natural(Level::new(7.0)?), Swatch::natural(Level::new(5.0)?));
/// assert!(contrast_between(&crown, &nape).1.is_none());
/// assert!(contrast_between(&crown, &crown).1.is_some());
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn contrast_between(first: &Swatch, second: &Swatch) -> (Difference, Option<Finding>) {
    let difference = first.difference_to(second);
    let finding = difference.is_within_repeat_readings().then(|| {
        Finding::new(
            Rule::Contrast,
            Verdict::Note,
            format!(
                "the two sections differ by {:.1} (CIEDE2000), no more than two readings of one tress: they will read \
                 as one colour",
                difference.ciede2000
            ),
            Reason::assumed(),
        )
    });
    (difference, finding)
}

/// Warm pigment to put back before lightened hair is taken darker.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PrePigmentation {
    /// The tone to put back first: the pigment that natural hair would show between the target and one level above it.
    pub tone: Tone,
    /// The level to put it on at: one level lighter than the target.
    pub level: Level,
    /// What to say about it.
    pub finding: Finding,
}

/// Levels darker from which pre-pigmentation is advised (assumed; practice varies between two and three).
pub const PRE_PIGMENTATION_LEVELS: f64 = 2.0;

/// What to put back before lightened hair goes darker, or nothing for a small step or for hair that keeps its pigment.
///
/// ```
/// use foilwork::colour::{Hue, Level, pre_pigmentation};
///
/// let advice = pre_pigmentation(Level::new(9.0)?, Level::new(6.0)?).ok_or("no advice")?;
/// assert_eq!(advice.tone.main_hue(), Some(Hue::YellowOrange));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn pre_pigmentation(lightened: Level, target: Level) -> Option<PrePigmentation> {
    let change = lift_needed(lightened, target);
    if -change.levels() < PRE_PIGMENTATION_LEVELS {
        return None;
    }
    let level = Level::clamped(target.number() + 1.0);
    let (at_target, above) = (underlying_pigment(target).value, underlying_pigment(level).value);
    let tone = Tone::from_hues([above.exposed.1, at_target.exposed.0]);
    let finding = Finding::new(
        Rule::PrePigmentation,
        Verdict::Warning,
        format!(
            "{lightened} to {target} is {change} on lightened hair: without warm pigment it turns flat or green \
             (pre-pigment at {level} with {tone})"
        ),
        COMMON_PRACTICE,
    );
    Some(PrePigmentation { tone, level, finding })
}
