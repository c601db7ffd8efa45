//! Wrappers of `foilwork::colour`: how colours lie beside each other, on a section, along a strand, across a head.

use super::{
    level::AnyLevel,
    shade::tone_of,
    swatches::{Difference, Swatch},
};
use crate::{answer::answer, bounds::Estimate, error::raise, finding::Finding, sequence::Sequence};
use foilwork::{
    colour::{self, Tone},
    quantity::Share,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.colour";
    /// How a section with lightened strands reads from a distance; made by ``section_look``.
    SectionLook {
        /// The colour that the eye mixes.
        mixed: Swatch,
        /// The level that natural hair as light as this has.
        perceived_level: Estimate<f64>,
        /// From the strands left to the lightened ones.
        contrast: Difference,
        /// Whether the strands do not show: two readings of one tress differ as much.
        reads_as_one: bool,
        /// What the figures leave out.
        caveat: String,
    }
}

/// The look of a section: a share of its hair lightened (and toned), the rest left.
///
/// Args:
///     rest: the hair that is left.
///     lightened: the lightened or toned hair.
///     share_percent: share of the lightened hair, from 0 to 100 %.
///
/// Returns:
///     A ``SectionLook``.
///
/// Raises:
///     FoilworkError: a share outside 0 to 100 %.
///
/// Examples:
///     >>> from foilwork.colour import section_look, swatch
///     >>> look = section_look(swatch(6), swatch(9, lightened_from=6), 50)
///     >>> look.perceived_level.best > 6.5, look.reads_as_one
///     (True, False)
#[pyfunction]
pub fn section_look(rest: &Swatch, lightened: &Swatch, share_percent: f64) -> PyResult<SectionLook> {
    let share = Share::from_percent(share_percent).map_err(raise)?;
    let label = format!("{} with {share} of {}", rest.label, lightened.label);
    let look = colour::section_look(&rest.swatch, &lightened.swatch, share);
    Ok(SectionLook {
        mixed: Swatch { swatch: look.mixed, label },
        perceived_level: Estimate::by(look.perceived_level, colour::Level::number),
        contrast: look.contrast.into(),
        reads_as_one: look.reads_as_one,
        caveat: look.caveat.to_owned(),
    })
}

/// Swatches side by side, for a notebook or a page: for a section its natural, exposed and toned hair.
///
/// Args:
///     swatches: the swatches, each with its own label.
///
/// Returns:
///     A piece of HTML, each colour with its facts in words.
///
/// Examples:
///     >>> from foilwork.colour import strip, swatch
///     >>> strip([swatch(5), swatch(9, lightened_from=5)]).count("model, not a photograph")
///     2
#[pyfunction]
pub fn strip(swatches: Sequence<Swatch>) -> String {
    let swatches = swatches.0;
    colour::strip(swatches.iter().map(|each| (each.label.as_str(), &each.swatch)))
}

/// Hues with their shares in percent, largest first.
pub fn parts_of(tone: &Tone) -> Vec<(String, f64)> {
    tone.parts().iter().map(|part| (part.hue.words().to_owned(), part.share_percent)).collect()
}

answer! {
    in "foilwork.colour";
    /// What to put back before lightened hair is taken darker; made by ``pre_pigmentation``.
    PrePigmentation {
        /// The hues of the tone with their shares in percent, largest first.
        tone: Vec<(String, f64)>,
        /// The level to put it on at.
        level: f64,
        /// What to say about it.
        finding: Finding,
    }
}

impl From<&colour::PrePigmentation> for PrePigmentation {
    fn from(advice: &colour::PrePigmentation) -> Self {
        let (tone, level) = (parts_of(&advice.tone), advice.level.number());
        Self { tone, level, finding: (&advice.finding).into() }
    }
}

/// What to put back before lightened hair is taken darker; ``None`` for less than two levels.
///
/// Args:
///     lightened_level: level of the lightened hair.
///     target_level: darker level wanted.
///
/// Returns:
///     A ``PrePigmentation``, or ``None``. Which shade and how much of it is ``foilwork.toner.pre_pigment``.
///
/// Raises:
///     FoilworkError: a level outside 1 to 12.
///
/// Source:
///     Common practice.
///
/// Examples:
///     >>> from foilwork.colour import pre_pigmentation
///     >>> advice = pre_pigmentation(9, 6)
///     >>> advice.level, advice.finding.rule
///     (7.0, 'pre-pigmentation')
#[pyfunction]
pub fn pre_pigmentation(lightened_level: AnyLevel, target_level: AnyLevel) -> Option<PrePigmentation> {
    colour::pre_pigmentation(lightened_level.0, target_level.0).as_ref().map(Into::into)
}

/// Warn of depth at the root that is darker than the natural base: new growth would show lighter than it.
///
/// Args:
///     natural_level: natural level.
///     depth_level: level put at the root.
///
/// Returns:
///     A warning, or None.
///
/// Raises:
///     FoilworkError: a level outside 1 to 12.
///
/// Source:
///     Common practice.
///
/// Examples:
///     >>> from foilwork.colour import check_depth_at_root
///     >>> check_depth_at_root(6, 5).verdict, check_depth_at_root(6, 6.5)
///     ('warning', None)
#[pyfunction]
pub fn check_depth_at_root(natural_level: AnyLevel, depth_level: AnyLevel) -> Option<Finding> {
    colour::check_depth_at_root(natural_level.0, depth_level.0).as_ref().map(Into::into)
}

/// Warn of a hairline that is darker than what lies beside it.
///
/// Args:
///     hairline_level: level of the hairline.
///     neighbours: (name, level) of each section beside it.
///
/// Returns:
///     A warning that names the lightest neighbour, or None.
///
/// Raises:
///     FoilworkError: a level outside 1 to 12.
///
/// Source:
///     Common practice.
///
/// Examples:
///     >>> from foilwork.colour import check_hairline
///     >>> "crown" in check_hairline(8, [("crown", 9)]).text
///     True
#[pyfunction]
pub fn check_hairline(hairline_level: AnyLevel, neighbours: Sequence<(String, AnyLevel)>) -> Option<Finding> {
    let neighbours = neighbours.0;
    let neighbours = neighbours.iter().map(|(name, level)| (name.as_str(), level.0));
    colour::check_hairline(hairline_level.0, neighbours).as_ref().map(Into::into)
}

answer! {
    in "foilwork.colour";
    /// A tone to paint where two formulas meet in one foil; made by ``transition_between``.
    Transition {
        /// Half way between the two levels.
        level: f64,
        /// Both tones in equal parts: hues with their shares in percent, largest first.
        tone: Vec<(String, f64)>,
        /// What to say about it.
        finding: Finding,
    }
}

/// Whether two formulas that meet in one foil need a tone between them.
///
/// They do when their levels differ by more than two, or when one leans warm and the other cool.
///
/// Args:
///     first_level: level of the first formula.
///     second_level: level of the second formula.
///     first_tones: its hue words, the main one first; empty is neutral.
///     second_tones: the same for the second.
///
/// Returns:
///     A ``Transition``, or None.
///
/// Raises:
///     FoilworkError: a level outside 1 to 12, or a word that is not one of the twelve hues.
///
/// Source:
///     Two levels are assumed.
///
/// Examples:
///     >>> from foilwork.colour import transition_between
///     >>> transition_between(6, 9).level
///     7.5
#[pyfunction]
#[pyo3(signature = (first_level, second_level, *, first_tones = Sequence(vec![]), second_tones = Sequence(vec![])), text_signature = "(first_level, second_level, *, first_tones=(), second_tones=())")]
pub fn transition_between(
    first_level: AnyLevel,
    second_level: AnyLevel,
    first_tones: Sequence<String>,
    second_tones: Sequence<String>,
) -> PyResult<Option<Transition>> {
    let first_tones = first_tones.0;
    let second_tones = second_tones.0;
    let (first, second) = (tone_of(&first_tones)?, tone_of(&second_tones)?);
    let found = colour::transition_between((first_level.0, &first), (second_level.0, &second));
    Ok(found.map(|between| Transition {
        level: between.level.number(),
        tone: parts_of(&between.tone),
        finding: (&between.finding).into(),
    }))
}

answer! {
    in "foilwork.colour";
    /// How far two sections are apart; made by ``contrast_between``.
    Contrast {
        /// From the first to the second.
        difference: Difference,
        /// A note when the two read as one colour.
        finding: Option<Finding>,
    }
}

/// How far two sections are apart, and a note when repeated readings could not tell them.
///
/// Args:
///     first: the first section.
///     second: the second.
///
/// Returns:
///     The difference and the note.
///
/// Source:
///     The spread of repeated readings of one tress is assumed.
///
/// Examples:
///     >>> from foilwork.colour import contrast_between, swatch
///     >>> found = contrast_between(swatch(7), swatch(5))
///     >>> found.difference.lighter < 0, found.finding
///     (True, None)
#[pyfunction]
pub fn contrast_between(first: &Swatch, second: &Swatch) -> Contrast {
    let (difference, finding) = colour::contrast_between(&first.swatch, &second.swatch);
    Contrast { difference: difference.into(), finding: finding.as_ref().map(Into::into) }
}
