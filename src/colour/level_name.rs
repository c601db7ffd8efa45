use super::Level;
use crate::{
    choice::choice,
    source::{Sourced, citations::colour::LEVEL_NAMES_US},
};
use std::fmt;

choice! {
    /// Which words a scale uses for its numbers.
    ///
    /// The two differ by one step at levels 5 to 7: "light brown" is 5 in one and 6 in the other. A name is therefore
    /// never turned into a number here, only a number into the name its own scale prints.
    Naming: "naming" {
        /// European usage.
        European = "european" => "European",
        /// US variant.
        Us = "us" => "US",
    }
}

const EUROPEAN: [&str; 10] = [
    "black",
    "darkest brown",
    "dark brown",
    "medium brown",
    "light brown",
    "dark blond",
    "medium blond",
    "light blond",
    "very light blond",
    "lightest blond",
];

const US: [&str; 10] = [
    "black",
    "very dark brown",
    "dark brown",
    "brown",
    "medium brown",
    "light brown",
    "dark blond",
    "light blond",
    "very light blond",
    "light platinum blond",
];

/// The name of a level; a decimal level lies between two names.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct LevelName {
    /// The name of the whole level at or below.
    pub darker: &'static str,
    /// The name of the next whole level, for a decimal level.
    pub lighter: Option<&'static str>,
}

impl Level {
    /// The name of this level, or nothing above 10, where no naming could be found.
    ///
    /// ```
    /// use foilwork::colour::{Level, Naming};
    ///
    /// let five = Level::new(5.0)?;
    /// let name = |naming| five.name(naming).map(|name| name.value.to_string());
    /// assert_eq!(name(Naming::European).as_deref(), Some("light brown"));
    /// assert_eq!(name(Naming::Us).as_deref(), Some("medium brown"));
    /// # Ok::<(), foilwork::colour::InvalidLevel>(())
    /// ```
    ///
    /// # Source
    ///
    /// European names: common practice. US names: see [`LEVEL_NAMES_US`].
    #[must_use]
    pub fn name(self, naming: Naming) -> Option<Sourced<LevelName>> {
        let names = match naming {
            Naming::European => &EUROPEAN,
            Naming::Us => &US,
        };
        let name_of = |whole: f64| names.get(whole as usize - 1).copied();
        let below = self.number().floor();
        let lighter = if below < self.number() { Some(name_of(below + 1.0)?) } else { None };
        let name = LevelName { darker: name_of(below)?, lighter };
        Some(match naming {
            Naming::European => Sourced::common_practice(name),
            Naming::Us => Sourced::published(name, &LEVEL_NAMES_US),
        })
    }
}

impl fmt::Display for LevelName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.lighter {
            Some(lighter) => write!(f, "between {} and {lighter}", self.darker),
            None => f.write_str(self.darker),
        }
    }
}
