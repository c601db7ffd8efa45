//! Wrappers of `foilwork::lift`: strand readings and books of them.

use super::situation::{Situation, minutes};
use crate::{answer::answer, bounds::Estimate, colour::AnyLevel, error::raise};
use foilwork::{colour::Level, lift, quantity::Quantity};
use pyo3::prelude::*;

answer! {
    in "foilwork.lift";
    /// One reading of a test strand: what lay on it, how long, and the levels before and after.
    ///
    /// Args:
    ///     situation: the mixture and the hair.
    ///     time_min: how long it lay on the strand.
    ///     before_level: the level before, as read.
    ///     after_level: the level after, as read.
    ///     reader: how it was read: ``"eye"`` or ``"instrument"``.
    ///     guest: whose hair, by a code; readings of one guest hang together.
    ///     product: the product; readings of one product hang together.
    ///
    /// Raises:
    ///     FoilworkError: a time or a level out of range, or another reader.
    ///
    /// Examples:
    ///     >>> from foilwork.lift import Situation, StrandReading
    ///     >>> StrandReading(Situation(4), time_min=30, before_level=4, after_level=8, guest="J-014").after_level
    ///     8.0
    StrandReading {
        /// The mixture and the hair.
        situation: Situation,
        /// How long it lay on the strand, in min.
        time_min: f64,
        /// The level before, as read.
        before_level: f64,
        /// The level after, as read.
        after_level: f64,
        /// How it was read.
        reader: String,
        /// Whose hair, by a code.
        guest: Option<String>,
        /// The product.
        product: Option<String>,
    }
    impl {
        #[new]
        #[pyo3(signature = (situation, *, time_min, before_level, after_level, reader = "eye", guest = None, product = None))]
        fn new(
            situation: Situation,
            time_min: f64,
            before_level: AnyLevel,
            after_level: AnyLevel,
            reader: &str,
            guest: Option<String>,
            product: Option<String>,
        ) -> PyResult<Self> {
            let (before_level, after_level) = (before_level.0.number(), after_level.0.number());
            let reader = reader.to_owned();
            let made = Self { situation, time_min, before_level, after_level, reader, guest, product };
            made.core()?;
            Ok(made)
        }
    }
}

impl StrandReading {
    pub fn core(&self) -> PyResult<lift::StrandReading> {
        Ok(lift::StrandReading {
            situation: self.situation.core()?,
            time: minutes(self.time_min)?,
            before: Level::new(self.before_level).map_err(raise)?,
            after: Level::new(self.after_level).map_err(raise)?,
            reader: self.reader.parse().map_err(raise)?,
            guest: self.guest.clone(),
            product: self.product.clone(),
        })
    }
}

impl From<&lift::StrandReading> for StrandReading {
    fn from(reading: &lift::StrandReading) -> Self {
        let mix = &reading.situation;
        Self {
            situation: Situation {
                on_hair_ww_percent: Estimate::from(mix.on_hair),
                temperature_c: mix.temperature.in_unit(),
                booster: mix.booster.code().to_owned(),
                ph: mix.ph.map(lift::Ph::value),
                uptake: mix.uptake.code().to_owned(),
                texture: mix.texture.code().to_owned(),
                cover: mix.cover.code().to_owned(),
            },
            time_min: reading.time.min(),
            before_level: reading.before.number(),
            after_level: reading.after.number(),
            reader: reading.reader.code().to_owned(),
            guest: reading.guest.clone(),
            product: reading.product.clone(),
        }
    }
}

/// Readings of Python as those of the core.
pub fn core(readings: &[StrandReading]) -> PyResult<Vec<lift::StrandReading>> {
    readings.iter().map(StrandReading::core).collect()
}

answer! {
    in "foilwork.lift";
    /// A line of a strand book that cannot be read.
    BookProblem {
        /// The line, counted from one.
        line: u64,
        /// What is wrong, and the way out.
        message: String,
    }
}

answer! {
    in "foilwork.lift";
    /// What a strand book holds, and what could not be read.
    StrandBook {
        /// The readings, in the order of the lines.
        readings: Vec<StrandReading>,
        /// Lines that could not be read; all others count.
        problems: Vec<BookProblem>,
    }
}

/// Read a book of strand readings, as ``strand_line`` and ``foilwork strand-test`` write it.
///
/// Args:
///     text: comma-separated text with a heading, or one JSON object in each line. A line that a crash has torn is
///         reported and kept apart.
///
/// Returns:
///     The readings, and the lines that could not be read.
///
/// Examples:
///     >>> from foilwork.lift import read_strand_book, strand_line
///     >>> text = strand_line(None) + "J-014,,4,8.5,30,4,4,4,25,persulfate,,normal,medium,foil,eye,.\nJ-014,,4,8"
///     >>> book = read_strand_book(text)
///     >>> [reading.after_level for reading in book.readings], [problem.line for problem in book.problems]
///     ([8.5], [3])
#[pyfunction]
pub fn read_strand_book(text: &str) -> StrandBook {
    let book = lift::read_strand_book(text);
    let problem = |problem: lift::BookProblem| BookProblem { line: problem.line, message: problem.message };
    StrandBook {
        readings: book.readings.iter().map(Into::into).collect(),
        problems: book.problems.into_iter().map(problem).collect(),
    }
}

/// The line of one reading as a JSON object, for a book with an object in each line; append it in one write.
///
/// Args:
///     reading: the reading.
///
/// Returns:
///     The line, with its line break.
///
/// Examples:
///     >>> from foilwork.lift import Situation, StrandReading, read_strand_book, strand_json_line
///     >>> strand = StrandReading(Situation(4), time_min=30, before_level=4, after_level=8)
///     >>> read_strand_book(strand_json_line(strand)).readings == [strand]
///     True
#[pyfunction]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn strand_json_line(reading: StrandReading) -> PyResult<String> {
    Ok(lift::strand_json_line(&reading.core()?))
}

/// The line of one reading, with its line break; append it to the book in one write.
///
/// Args:
///     reading: the reading; ``None`` gives the heading.
///
/// Returns:
///     The line.
///
/// Examples:
///     >>> from foilwork.lift import Situation, StrandReading, strand_line
///     >>> strand_line(StrandReading(Situation(4), time_min=30, before_level=4, after_level=8))
///     ',,4,8,30,4,4,4,25,persulfate,,normal,medium,foil,eye,.\n'
#[pyfunction]
pub fn strand_line(reading: Option<StrandReading>) -> PyResult<String> {
    let reading = reading.map(|reading| reading.core()).transpose()?;
    Ok(lift::strand_line(reading.as_ref()))
}
