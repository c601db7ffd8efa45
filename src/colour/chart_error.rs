use super::{InvalidLevel, ShadeError};
use crate::{choice::UnknownChoice, quantity::InvalidQuantity};
use std::fmt;

/// What is wrong with a chart file, and on which line.
#[derive(Debug, Clone, PartialEq)]
pub struct ChartError {
    /// The line in the file, from 1, where known.
    pub line: Option<usize>,
    /// The shade concerned, where there is one.
    pub code: Option<String>,
    /// What is wrong.
    pub problem: ChartProblem,
}

/// The kinds of mistake in a chart file.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ChartProblem {
    /// Not TOML, or a field is missing, misspelt or of the wrong kind.
    #[error("{0}")]
    Syntax(String),
    /// A chart of nothing.
    #[error("the chart has no shades: add a [[shade]] table with code, level and tones")]
    NoShades,
    /// One code, two meanings.
    #[error("the code is used twice (first on line {first_line}): every shade needs its own code")]
    DuplicateCode {
        /// Where it was first used.
        first_line: usize,
    },
    /// The level is off the scale.
    #[error(transparent)]
    Level(#[from] InvalidLevel),
    /// A tone word is not on the wheel.
    #[error(transparent)]
    Hue(#[from] UnknownChoice),
    /// A digit without a meaning.
    #[error(
        "tone digit {digit:?} has no meaning in this chart: add it under [digits], for example {digit} = [\"violet\"] \
             (known: {known})"
    )]
    UnknownDigit {
        /// The digit.
        digit: char,
        /// The digits that the chart explains.
        known: String,
    },
    /// A digit is one character.
    #[error("invalid tone digit {0:?} under [digits]: one character stands for one tone")]
    LongDigit(String),
    /// Either words or digits.
    #[error("give the tone once: either tones = [\"violet\"] or tone_digits = \"6\" ({0})")]
    ToneTwiceOrNever(&'static str),
    /// A quantity is out of range.
    #[error("{field}: {problem}")]
    Quantity {
        /// The field.
        field: &'static str,
        /// What is wrong.
        problem: InvalidQuantity,
    },
    /// A pack of nothing.
    #[error("pack_g must be above 0 g (leave it out when it is not known)")]
    EmptyPack,
    /// The price is not a decimal amount.
    #[error("invalid price {0:?}: write a decimal amount of at least 0 in quotes, for example \"8.40\"")]
    Price(String),
    /// A price without a currency.
    #[error("there is a price but the chart has no currency: add for example currency = \"EUR\" at the top")]
    NoCurrency,
    /// The ratio is not parts to parts.
    #[error("invalid ratio {0:?}: write parts of shade to parts of developer by mass, for example \"1:2\"")]
    Ratio(String),
    /// The shade itself is not valid.
    #[error(transparent)]
    Shade(#[from] ShadeError),
}

impl fmt::Display for ChartError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(line) = self.line {
            write!(f, "line {line}: ")?;
        }
        if let Some(code) = &self.code {
            write!(f, "shade {code:?}: ")?;
        }
        self.problem.fmt(f)
    }
}

impl std::error::Error for ChartError {}
