//! The bowl: ratios, recipes, weighing on a real scale, bowls over time, what is on the hair.
//!
//! Ratios and recipes are exact decimals; masses that reach the scale are whole numbers of its division. Nothing here
//! says that a mixture is safe: it says what is in the bowl.

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
mod minimum;
mod pace;
mod parse_error;
mod product;
mod ratio;
mod recipe;
mod rounding;
mod scale;
mod unit;

pub use applied::{AsAppliedError, as_applied};
pub use bowls::{BowlError, BowlPlan, BowlRequest, FreshBowl, bowls};
pub use card::{Card, CardError, CardLine, CardRequest};
pub use cas::{Cas, InvalidCas};
pub use composition::{Composition, Constituent, Portion};
pub use dose::{Addition, Dose, Leftover};
pub use form::Form;
pub use grey::{NaturalShare, natural_share};
pub use handling::{Advice, Stage, handling_advice};
pub use hazard::Hazard;
pub use minimum::{MinimumBowl, MinimumError, minimum_bowl, minimum_mass};
pub use pace::Pace;
pub use parse_error::ParseError;
pub use product::{Ingredient, Product};
pub use ratio::{Ratio, RatioError};
pub use recipe::{Part, Recipe, RecipeError};
pub use rounding::{StrengthShift, TareStep};
pub use unit::{ConvertAmountError, Converted, RecipeAmount, Unit};
