//! Hydrogen peroxide: strength in every unit, density, dilution and blending, titration, ageing.
//!
//! A strength always says which it is: % w/w, % w/v, oxygen volumes or a trade label. Mass-based and volume-based
//! strengths meet only through a density, which is that of a clear solution, of an emulsion (with wide bounds), or the
//! user's own measurement.
//!
//! # Read a strength
//!
//! - [`StatedStrength`]: what a bottle says, and [`StatedStrength::mass_fraction`], what that is in % w/w with its bounds.
//! - [`read_label`]: the three strengths that a label such as 20 vol can mean.
//! - [`Strength`], [`StrengthUnit`]: a number with a unit chosen while the program runs.
//!
//! # Convert
//!
//! - [`convert_to`] between two types, [`convert`] between units named at run time.
//! - [`convert_interval`] and [`convert_interval_to`] with the bounds; [`Conditions`] says under which conditions.
//! - [`density`]: aqueous peroxide from 0 to 70 % w/w; [`MolarVolume`]: how oxygen is counted.
//!
//! # Dilute
//!
//! - [`dilute`], [`dilute_known`]: by mass, from any one known amount; [`dilution_table`] for the wall.
//! - [`make_up`], [`strength_after_make_up`]: to the mark of a flask; [`dilute_volume`]: by measuring cylinder.
//! - [`round_to_scale`]: what a scale can weigh, and the strength that it really gives.
//!
//! # Blend
//!
//! - [`blend_two`]: two strengths to a third; [`mix_strengths`], [`mix_volumes`]: what parts come to.
//! - [`blend_shelf`]: from all the bottles of a [`Shelf`], by an [`Objective`].
//!
//! # Assay
//!
//! - [`Titration`]: with permanganate, both ways; [`read_glass`]: a reading with the tolerance of its glass.
//!
//! # Store
//!
//! - [`loss_rate`] from two assays, [`strength_after`] and [`time_until`] with it.
//! - [`handling_facts`]: what classification, transport and precursor law say about a strength.

mod ageing;
mod blend;
mod by_volume;
mod conditions;
mod convert;
mod cubic;
mod density;
mod dilute;
mod exponent;
mod fill;
mod formula;
mod from_shelf;
mod handling;
mod handling_facts;
mod handling_table;
mod hazard;
mod label;
mod mixing;
mod molar;
mod round;
mod search;
mod shelf;
mod stated;
mod strength;
mod table;
mod titration;
mod tolerance;
mod trace;
mod trace_titration;
mod unit;

/// The arithmetic on plain numbers, for the columns.
pub(crate) mod kernel {
    pub(crate) use super::{
        ageing::{aged, left, lost, rate_of},
        blend::shares,
        cubic::Cubic,
        density::{MAX_CELSIUS, MAX_STRENGTH_WW, half_width},
        formula::{Ratio, from_ww_percent, g_per_l, g_per_l_each, max_g_per_l, to_ww_percent, ww_percent},
    };
}

pub use ageing::{AgeingError, loss_rate, strength_after, time_until};
pub use blend::{BlendError, KnownMass, TwoPartBlend, blend_two};
pub use by_volume::{
    KnownVolume, MakeUp, MakeUpError, VolumeDilution, VolumeStrength, dilute_volume, make_up, strength_after_make_up,
};
pub use conditions::{Conditions, SolutionDensity, SolutionKind};
pub use convert::{ConversionError, convert, convert_interval, convert_interval_to, convert_to};
pub use density::{DensityError, density};
pub use dilute::{Dilution, dilute, dilute_known};
pub use from_shelf::{Objective, Portion, ShelfBlend, blend_shelf, blend_shelf_to_scale};
pub use handling::{Bearing, HandlingFact, StrengthBound};
pub use handling_facts::handling_facts;
pub use handling_table::HANDLING_FACTS;
#[cfg(feature = "cli")]
pub(crate) use hazard::too_strong;
pub(crate) use hazard::{cautions, stronger};
pub use label::{LabelReadings, read_label};
pub(crate) use mixing::mean_strength;
pub use mixing::{Mixture, PourError, PouredMixture, mix_strengths, mix_two, mix_volumes};
pub use molar::MolarVolume;
pub use round::{RoundedBlend, round_to_scale};
pub use shelf::{Shelf, ShelfError, Stock};
pub use stated::{ParseStrengthError, StatedStrength};
pub use strength::{Strength, StrengthQuantity};
pub use table::{DilutionRow, DilutionTable, WeighedDilution, dilution_table};
pub use titration::{PreDilution, Titration, TitrationError, permanganate, read_glass};
pub(crate) use tolerance::as_labelled;
#[cfg(feature = "cli")]
pub(crate) use trace::converted;
pub use trace::{NamedStrength, trace_blend, trace_conversion, trace_mixture};
pub(crate) use trace::{STRENGTH_FORMULA, bottle_converted, resting_on};
pub use trace_titration::{trace_titration, trace_titre};
pub use unit::{ParseUnitError, StrengthUnit};
