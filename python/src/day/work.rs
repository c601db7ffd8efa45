//! Wrappers of `foilwork::day`: the work, its rules, and the floor.

use crate::{answer::answer, error::raise};
use foilwork::{day, quantity::Duration};
use pyo3::prelude::*;

/// Minutes of Python as a duration of the core.
pub fn minutes(value: f64) -> PyResult<Duration> {
    Duration::from_min(value).map_err(raise)
}

answer! {
    in "foilwork.day";
    /// A section as work on the clock.
    ///
    /// Args:
    ///     name: your name for it.
    ///     apply_min: how long one pair of hands puts it on, without mixing.
    ///     develop_min: how long its last strand develops at least.
    ///     longest_min: the longest that its first strand may carry the mix.
    ///     bowls: fresh bowls that it takes.
    ///     foils: how many foils it has, where it is worked in foils.
    ///     same_foil: sections with the same number share their foils.
    ///
    /// Raises:
    ///     FoilworkError: a time out of range.
    ///
    /// Examples:
    ///     >>> from foilwork.day import SectionWork
    ///     >>> SectionWork("nape", apply_min=18, develop_min=30, longest_min=50).bowls
    ///     1
    SectionWork {
        /// Your name for it.
        name: String,
        /// How long one pair of hands puts it on, without mixing, in min.
        apply_min: f64,
        /// How long its last strand develops at least, in min.
        develop_min: f64,
        /// The longest that its first strand may carry the mix, in min.
        longest_min: f64,
        /// Fresh bowls that it takes.
        bowls: u32,
        /// How many foils it has.
        foils: Option<u32>,
        /// Sections with the same number share their foils.
        same_foil: Option<u32>,
    }
    impl {
        #[new]
        #[pyo3(signature = (name, *, apply_min, develop_min, longest_min, bowls = 1, foils = None, same_foil = None))]
        fn new(
            name: String,
            apply_min: f64,
            develop_min: f64,
            longest_min: f64,
            bowls: u32,
            foils: Option<u32>,
            same_foil: Option<u32>,
        ) -> PyResult<Self> {
            let made = Self { name, apply_min, develop_min, longest_min, bowls, foils, same_foil };
            made.core()?;
            Ok(made)
        }
    }
}

impl SectionWork {
    pub fn core(&self) -> PyResult<day::SectionWork> {
        Ok(day::SectionWork {
            name: self.name.clone(),
            apply: minutes(self.apply_min)?,
            develop: minutes(self.develop_min)?,
            longest: minutes(self.longest_min)?,
            bowls: self.bowls,
            foils: self.foils,
            same_foil: self.same_foil,
        })
    }
}

answer! {
    in "foilwork.day";
    /// One section comes before another.
    ///
    /// Args:
    ///     first: the place of the section that comes first, from 0.
    ///     then: the place of the one that waits, from 0.
    ///     until: what of the first must be over: ``"applied"`` or ``"rinsed"``.
    ///     rule: why: ``"stated"``, ``"darkest-first"``, ``"slowest-first"``, ``"mid-lengths-first"`` or ``"outline-first"``.
    ///
    /// Raises:
    ///     FoilworkError: a word that is none of these.
    ///
    /// Examples:
    ///     >>> from foilwork.day import Before
    ///     >>> Before(0, 1).until
    ///     'applied'
    Before {
        /// The place of the section that comes first, from 0.
        first: usize,
        /// The place of the one that waits, from 0.
        then: usize,
        /// What of the first must be over.
        until: String,
        /// Why.
        rule: String,
    }
    impl {
        #[new]
        #[pyo3(signature = (first, then, *, until = "applied", rule = "stated"))]
        fn new(first: usize, then: usize, until: &str, rule: &str) -> PyResult<Self> {
            let made = Self { first, then, until: until.to_owned(), rule: rule.to_owned() };
            made.core()?;
            Ok(made)
        }
    }
}

impl Before {
    pub fn core(&self) -> PyResult<day::Before> {
        let (until, rule) = (self.until.parse().map_err(raise)?, self.rule.parse().map_err(raise)?);
        Ok(day::Before { first: self.first, then: self.then, until, rule })
    }
}

answer! {
    in "foilwork.day";
    /// What the salon has for this guest: hands, basins, and how long the small work takes.
    ///
    /// Args:
    ///     people: pairs of hands.
    ///     basins: basins.
    ///     mix_min: weighing and mixing a bowl; assumed.
    ///     look_min: a look over all that is on; zero where nothing has to be looked at; assumed.
    ///     first_look_min: the first look that counts for a section, from its first strand.
    ///     look_every_min: how long hands work or rest between two looks.
    ///     rinse_min: rinsing a section; assumed.
    ///     walk_min: bringing the guest to the basin; assumed.
    ///
    /// Raises:
    ///     FoilworkError: a time out of range.
    ///
    /// Source:
    ///     First look after 15 to 20 min, then every 5 to 10 (``"check-interval"``).
    ///
    /// Examples:
    ///     >>> from foilwork.day import Floor
    ///     >>> Floor(people=2).rinse_min
    ///     3.0
    Floor {
        /// Pairs of hands.
        people: u32,
        /// Basins.
        basins: u32,
        /// Weighing and mixing a bowl, in min.
        mix_min: f64,
        /// A look over all that is on, in min.
        look_min: f64,
        /// The first look, in min from the first strand.
        first_look_min: f64,
        /// How long hands work or rest between two looks, in min.
        look_every_min: f64,
        /// Rinsing a section, in min.
        rinse_min: f64,
        /// Bringing the guest to the basin, in min.
        walk_min: f64,
    }
    impl {
        #[new]
        #[pyo3(signature = (*, people = 1, basins = 1, mix_min = 3.0, look_min = 1.0, first_look_min = 15.0, look_every_min = 5.0, rinse_min = 3.0, walk_min = 2.0))]
        fn new(
            people: u32,
            basins: u32,
            mix_min: f64,
            look_min: f64,
            first_look_min: f64,
            look_every_min: f64,
            rinse_min: f64,
            walk_min: f64,
        ) -> PyResult<Self> {
            let made = Self { people, basins, mix_min, look_min, first_look_min, look_every_min, rinse_min, walk_min };
            made.core()?;
            Ok(made)
        }
    }
}

impl Floor {
    pub fn core(&self) -> PyResult<day::Floor> {
        Ok(day::Floor {
            people: self.people,
            basins: self.basins,
            mix: minutes(self.mix_min)?,
            look: minutes(self.look_min)?,
            first_look: minutes(self.first_look_min)?,
            look_every: minutes(self.look_every_min)?,
            rinse: minutes(self.rinse_min)?,
            walk: minutes(self.walk_min)?,
        })
    }
}

/// The floor given, or the usual one.
pub fn floor_of(floor: Option<Floor>) -> PyResult<day::Floor> {
    floor.map_or_else(|| Ok(day::Floor::default()), |floor| floor.core())
}
