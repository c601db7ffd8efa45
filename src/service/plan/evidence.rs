//! What is known beside the file: the salon's strand book and records, and levels seen while the service runs.

use crate::{
    colour::Level,
    lift::StrandBook,
    quantity::{Duration, InvalidQuantity},
    service::request::FoilPace,
};
use std::str::FromStr;

/// What is known beside the service file.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Evidence {
    /// The strand book that the file names, where it was read; foilwork's core reads no files.
    pub book: Option<StrandBook>,
    /// Levels seen in mid-service, in the order of the looks.
    pub seen: Vec<SeenLevel>,
    /// Minutes for a foil of the one who works, from the records that the file names, where they were read.
    pub foil_pace: Option<FoilPace>,
}

/// A level seen on a section in mid-service, on its first strand.
#[derive(Debug, Clone, PartialEq)]
pub struct SeenLevel {
    /// The section, by its name.
    pub section: String,
    /// When, on the clock of the sheet: minutes from the first brush of the service.
    pub at: Duration,
    /// What was seen.
    pub level: Level,
}

/// What is no level seen.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum InvalidSeenLevel {
    /// It is not written as section, level and minute.
    #[error("\"{0}\" is no level seen: write section, level and minute, for example nape=7.5@40")]
    Form(String),
    /// The level is not on the scale.
    #[error(transparent)]
    Level(#[from] crate::colour::InvalidLevel),
    /// The minute is none.
    #[error(transparent)]
    Minute(#[from] InvalidQuantity),
}

impl FromStr for SeenLevel {
    type Err = InvalidSeenLevel;

    /// Reads `nape=7.5@40`: section, level, and minute from the first brush.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::service::SeenLevel;
    ///
    /// let seen: SeenLevel = "nape = 7.5 @ 40".parse()?;
    /// assert_eq!((seen.section.as_str(), seen.at.min()), ("nape", 40.0));
    /// assert!("nape 7.5".parse::<SeenLevel>().is_err());
    /// # Ok::<(), foilwork::service::InvalidSeenLevel>(())
    /// ```
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let form = || InvalidSeenLevel::Form(text.to_owned());
        let (section, rest) = text.rsplit_once('=').ok_or_else(form)?;
        let (level, at) = rest.split_once('@').ok_or_else(form)?;
        let at = at.trim().trim_end_matches("min").trim().parse::<f64>().map_err(|_| form())?;
        let section = section.trim();
        if section.is_empty() {
            return Err(form());
        }
        Ok(Self { section: section.to_owned(), level: level.trim().parse()?, at: Duration::from_min(at)? })
    }
}

impl std::fmt::Display for SeenLevel {
    /// As it is read: `nape=7.5@40`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}={}@{}", self.section, self.level.number(), self.at.min())
    }
}
