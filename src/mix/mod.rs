//! The bowl: ratios, recipes, bowls over time, what is on the hair.
//!
//! Ratios and recipes are exact decimals; masses that reach the scale are whole numbers of its division, by
//! [`scale::weigh`](crate::scale::weigh). Nothing here says that a mixture is safe: it says what is in the bowl.
//!
//! # Write a recipe
//!
//! [`Ratio`] reads `1:1.5`, [`Recipe`] reads `30 g J7-mist + 45 g 6%`; a recipe is scaled by total ([`Recipe::to_total`]), part,
//! packs or factor, combined, split over bowls and dosed with additives ([`Recipe::with_additives`]).
//!
//! # Weigh it
//!
//! [`minimum_bowl`] and [`minimum_mass`] say what a scale can weigh at all; a
//! [`Weighing`](crate::scale::Weighing) has [`tare_order`](crate::scale::Weighing::tare_order) and
//! [`strength_shift`](crate::scale::Weighing::strength_shift).
//!
//! # Plan the bowls
//!
//! [`bowls`] says how many fresh bowls, how big and when; [`Card`] is what lies beside one.
//!
//! # What is on the hair
//!
//! [`as_applied`] is the strength of the mixed bowl, [`Composition::mix`] everything in it, with what is not known kept as
//! unknown.
//!
//! # Judge and handle it
//!
//! [`check_lightener`] finds a ratio written the wrong way round, [`natural_share`] is the trade's convention for white hair, [`handling_advice`] the checklist for what is in the bowl.

mod applied;
mod bowls;
mod card;
mod cas;
mod composition;
mod decimal;
mod dose;
mod form;
mod grey;
mod handling;
mod hazard;
mod lightener;
mod minimum;
mod names;
mod pace;
mod parse_error;
mod product;
mod ratio;
mod recipe;
mod rounding;
mod scale;
mod trace;
mod unit;

/// Numbers in, numbers out: for kernels over columns.
pub(crate) mod kernel {
    pub(crate) use super::minimum::{FINEST_TOLERANCE, least_g};
    pub(crate) use crate::scale::FINEST_G;
}

pub use applied::{AsAppliedError, as_applied};
pub use bowls::{BowlError, BowlPlan, BowlRequest, FreshBowl, bowls};
pub use card::{Card, CardError, CardLine, CardRequest};
pub use cas::{Cas, InvalidCas};
pub use composition::{BowlPortion, Composition, Constituent};
pub use dose::{Addition, Dose, Leftover};
pub use form::Form;
pub use grey::{NaturalShare, natural_share};
pub use handling::{HandlingAdvice, Stage, handling_advice};
pub use hazard::Hazard;
pub use lightener::check_lightener;
pub use minimum::{MinimumBowl, MinimumError, minimum_bowl, minimum_mass};
pub use pace::Pace;
pub use parse_error::ParseError;
pub use product::{Ingredient, Product};
pub use ratio::{Ratio, RatioError};
pub use recipe::{Part, Recipe, RecipeError};
pub use rounding::{StrengthShift, TareStep};
pub use unit::{ConvertAmountError, Converted, RecipeAmount, Unit};
