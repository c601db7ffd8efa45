//! Hydrogen peroxide: strength in every unit, density, dilution and blending, titration, ageing.
//!
//! A strength always says which it is: % w/w, % w/v, oxygen volumes or a trade label. Mass-based and volume-based
//! strengths meet only through a density, which is that of a clear solution, of an emulsion (with wide bounds), or the
//! user's own measurement.

mod blend;
mod conditions;
mod convert;
mod cubic;
mod density;
mod dilute;
mod formula;
mod label;
mod molar;
mod stated;
mod strength;
mod unit;

/// The arithmetic on plain numbers, for the columns.
pub(crate) mod kernel {
    pub(crate) use super::{
        cubic::Cubic,
        formula::{from_percent_ww, g_per_l, g_per_l_each, percent_ww, to_percent_ww},
    };
}

pub use blend::{Amount, BlendError, TwoPartBlend, blend_two};
pub use conditions::{Conditions, SolutionDensity};
pub use convert::{ConversionError, convert, convert_interval, convert_to};
pub use density::{DensityError, density};
pub use dilute::{Dilution, dilute, dilute_known};
pub use label::{LabelReadings, read_label};
pub use molar::{MolarVolume, UnknownMolarVolume};
pub use stated::{ParseStrengthError, StatedStrength};
pub use strength::{Strength, StrengthQuantity};
pub use unit::{ParseUnitError, StrengthUnit};
