//! The names that most programs use: `use foilwork::prelude::*;`.
//!
//! # Example
//!
//! ```
//! use foilwork::prelude::*;
//!
//! let strength = "20 vol label".parse::<StatedStrength>()?.mass_fraction(Temperature::REFERENCE)?;
//! assert_eq!(format!("{:.1}", strength.high()), "6.0 % w/w");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub use crate::{
    colour::{Hue, Level, Shade, Tone},
    finding::{Finding, Rule, Verdict},
    mix::{Ratio, Recipe, as_applied},
    money::{Currency, Money},
    peroxide::{StatedStrength, Strength, StrengthUnit, convert, dilute},
    quantity::{Duration, Mass, MassFraction, Share, Temperature, Volume},
    reader::Format,
    service::{Plan, parse, plan},
    sheet::bench_sheet,
    source::{Basis, Interval},
};
