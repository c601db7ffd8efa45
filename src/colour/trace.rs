//! How levels and modelled colours come about.

use super::{
    ArithmeticError, Canvas, Instrument, Lab, Level, LevelChange, ProductKind, ReadingError, Scale, Swatch, Tone,
    level_from_reading, lift_needed, result_level, shade_level, underlying_pigment,
};
use crate::{
    quantity::Quantity,
    source::{
        Basis, Citation, Interval, Sourced, TracedInput, TracedResult,
        citations::colour::{
            BLEACHING_STEPS, D65_SPECTRUM, MELANIN_SPECTRUM, MUNSELL, OBSERVERS, PHEOMELANIN_SPECTRUM, PHOTOGRAPHS,
            TRESS_COLOUR, TRESS_MODEL,
        },
    },
};

const LIFT: &str = "wanted level - natural level";
const SHADE: &str = "2 x wanted level - natural level";
const DEPOSIT: &str = "wanted level";
const RESULT: &str = "(natural level + level of the shade) / 2";
const OWN_LEVEL: &str = "level of the shade";
const READING: &str = "level whose natural hair is as light by the model of hair; bounds by two standard deviations of a reading and its spread";
const PIGMENT: &str = "pigment that the trade lists for the level";
const NATURAL: &str =
    "spectrum of a hair with the pigment of its level, in daylight D65 for the observer of 10 degrees, as CIELAB";
const LIGHTENED: &str = "spectrum of a hair with the pigment that is left where it is as light as the level, in daylight D65 for the observer \
     of 10 degrees, as CIELAB";
const TONED: &str =
    "spectrum of white hair with the dye of a shade, in daylight D65 for the observer of 10 degrees, as CIELAB";

fn levels(what: &str, level: Interval<Level>) -> TracedInput {
    level_of(what, Sourced::stated(level))
}

fn level_of(what: &str, level: Sourced<Interval<Level>>) -> TracedInput {
    TracedInput::new(what, level.value.map(Level::number), "level").resting(level.basis)
}

fn id(citation: Option<&'static Citation>) -> Vec<&'static str> {
    citation.map(|one| one.id).into_iter().collect()
}

/// How far hair has to go, above 0 lighter. The natural level rests on what its basis says: stated, or read and modelled.
///
/// # Example
///
/// ```
/// use foilwork::{colour::{Level, trace_lift}, source::Sourced};
///
/// let found = trace_lift(Sourced::stated(Level::new(5.0)?.into()), Level::new(9.0)?);
/// assert_eq!((found.value.as_str(), found.worked.as_deref()), ("4", Some("9 - 5")));
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn trace_lift(natural: Sourced<Interval<Level>>, wanted: Level) -> TracedResult {
    let way = natural.value.map(|natural| lift_needed(natural, wanted)).map(LevelChange::levels);
    TracedResult::new("way to the wanted level", way, "levels", LIFT, natural.basis)
        .made_of([levels("wanted level", wanted.into()), level_of("natural level", natural)])
}

/// The level of the shade for a natural level as far as it is known. Beyond the end of the scale for a bound, the end is meant.
pub(crate) fn shade_levels(
    natural: Interval<Level>,
    wanted: Level,
    canvas: Canvas,
    scale: Scale,
) -> Result<(Interval<Level>, Sourced<Level>), ArithmeticError> {
    let formula = |from| shade_level(from, wanted, ProductKind::PermanentColour, canvas, scale);
    let best = formula(natural.best())?;
    let bound = |from, end| formula(from).map_or(end, |level| level.value);
    let lightest = if scale == Scale::Twelve { Level::LIGHTEST } else { Level::LIGHTEST_OF_TEN };
    let (darker, lighter) = (bound(natural.low(), lightest), bound(natural.high(), Level::DARKEST));
    Ok((Interval::ordered(darker, best.value, lighter), best))
}

/// How the level of a permanent shade comes about that brings hair to a level.
///
/// # Errors
///
/// [`ArithmeticError`], as of [`shade_level`].
///
/// # Example
///
/// ```
/// use foilwork::{colour::{Canvas, Level, Scale, trace_shade_level}, source::Sourced};
///
/// let six = Sourced::stated(Level::new(6.0)?.into());
/// let found = trace_shade_level(six, Level::new(8.0)?, Canvas::Natural, Scale::European10)?;
/// assert_eq!((found.value.as_str(), found.worked.as_deref()), ("10", Some("2 x 8 - 6")));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_shade_level(
    natural: Sourced<Interval<Level>>,
    wanted: Level,
    canvas: Canvas,
    scale: Scale,
) -> Result<TracedResult, ArithmeticError> {
    let (shade, best) = shade_levels(natural.value, wanted, canvas, scale)?;
    let formula = if lift_needed(natural.value.best(), wanted).is_lift() { SHADE } else { DEPOSIT };
    let basis = best.basis.weaker(natural.basis);
    Ok(TracedResult::new("formula level", shade.map(Level::number), "level", formula, basis)
        .made_of([levels("wanted level", wanted.into()), level_of("natural level", natural)])
        .resting_on(&id(best.citation)))
}

/// How the level comes about that a permanent shade gives on natural hair.
///
/// # Errors
///
/// [`ArithmeticError`], as of [`result_level`].
///
/// # Example
///
/// ```
/// use foilwork::{colour::{Level, trace_result_level}, source::Sourced};
///
/// let found = trace_result_level(Sourced::stated(Level::new(5.0)?.into()), Level::new(9.0)?)?;
/// assert_eq!((found.value.as_str(), found.worked.as_deref()), ("7", Some("(5 + 9) / 2")));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_result_level(natural: Sourced<Interval<Level>>, shade: Level) -> Result<TracedResult, ArithmeticError> {
    // The mean rule is one of lifting: a shade as deep as the hair or deeper deposits its own level.
    let found = |from| {
        if shade > from {
            result_level(from, shade, ProductKind::PermanentColour)
        } else {
            Ok(Sourced::common_practice(shade))
        }
    };
    let best = found(natural.value.best())?;
    let level = natural.value.try_map(|from| found(from).map(|one| one.value))?;
    let formula = if shade > natural.value.best() { RESULT } else { OWN_LEVEL };
    let basis = best.basis.weaker(natural.basis);
    Ok(TracedResult::new("resulting level", level.map(Level::number), "level", formula, basis)
        .made_of([level_of("natural level", natural), levels("level of the shade", shade.into())])
        .resting_on(&id(best.citation)))
}

/// How the level of hair comes about that an instrument read.
///
/// # Errors
///
/// [`ReadingError`], as of [`level_from_reading`].
///
/// # Example
///
/// ```
/// use foilwork::colour::{Instrument, Lab, White, trace_reading};
///
/// let tress = Lab::new(22.7, 4.0, 4.8, White::D65TenDegree)?;
/// let found = trace_reading(tress, Instrument::Spectrophotometer)?;
/// assert!(found.bounds.is_some() && found.sources.contains(&"hair-luster-2000"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn trace_reading(reading: Lab, with: Instrument) -> Result<TracedResult, ReadingError> {
    let level = level_from_reading(reading, with)?;
    let spread = if with == Instrument::Spectrophotometer { TRESS_COLOUR.id } else { PHOTOGRAPHS.id };
    let light = TracedInput::new("lightness read", Interval::exact(reading.l()), "L*").resting(Basis::Measured);
    Ok(TracedResult::new("natural level", level.value.map(Level::number), "level", READING, level.basis)
        .made_of([light, TracedInput::exact("instrument", with, "word")])
        .resting_on(&[spread, TRESS_MODEL.id, MELANIN_SPECTRUM.id]))
}

/// Which pigment shows when natural hair is lightened to a level.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Level, trace_underlying_pigment};
///
/// assert_eq!(trace_underlying_pigment(Level::new(8.0)?).value, "yellow, neutralised by violet");
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn trace_underlying_pigment(wanted: Level) -> TracedResult {
    let found = underlying_pigment(wanted);
    TracedResult::exact("exposed pigment", found.value.to_string(), "word", PIGMENT, found.basis)
        .made_of([levels("wanted level", wanted.into())])
        .resting_on(&id(found.citation))
}

/// How L\*, a\* and b\* of a modelled colour come about: of natural hair of the level; of hair of a natural level `from` that was
/// lightened to it; or of a shade of that level and tone on white hair.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Level, Swatch, trace_swatch};
///
/// let level = Level::new(7.0)?;
/// let [l, ..] = trace_swatch(level, None, None);
/// assert_eq!(l.value, Swatch::natural(level).lightness().best().lab_l().to_string());
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn trace_swatch(level: Level, from: Option<Level>, tone: Option<&Tone>) -> [TracedResult; 3] {
    let (swatch, formula, own): (_, _, &[&Citation]) = match (from, tone) {
        (Some(from), _) => (Swatch::lightened(from, level), LIGHTENED, &[&BLEACHING_STEPS]),
        (None, Some(tone)) => (Swatch::of_look(level, tone), TONED, &[&MUNSELL]),
        (None, None) => (Swatch::natural(level), NATURAL, &[]),
    };
    let model = [&TRESS_MODEL, &MELANIN_SPECTRUM, &PHEOMELANIN_SPECTRUM, &D65_SPECTRUM, &OBSERVERS];
    let sources: Vec<&str> = model.into_iter().chain(own.iter().copied()).map(|one| one.id).collect();
    let inputs: Vec<TracedInput> = [
        Some(levels("level", level.into())),
        from.map(|from| levels("natural level", from.into())),
        tone.map(|tone| TracedInput::exact("tone", tone, "word").resting(Basis::Stated)),
    ]
    .into_iter()
    .flatten()
    .collect();
    let one = |what: &str, value: Interval<f64>| {
        TracedResult::new(what, value, what, formula, swatch.basis()).made_of(inputs.clone()).resting_on(&sources)
    };
    [
        one("L*", swatch.lightness().map(Quantity::in_unit)),
        one("a*", swatch.redness().map(Quantity::in_unit)),
        one("b*", swatch.yellowness().map(Quantity::in_unit)),
    ]
}
