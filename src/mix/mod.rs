//! The bowl: ratios, recipes, weighing on a real scale, bowls over time, what is on the hair.
//!
//! Ratios and recipes are exact decimals; masses that reach the scale are whole numbers of its division. Nothing here
//! says that a mixture is safe: it says what is in the bowl.

mod applied;
mod bowls;
mod cas;
mod composition;
mod decimal;
mod form;
mod pace;
mod parse_error;
mod product;
mod ratio;
mod weigh;

pub use applied::{AsAppliedError, as_applied};
pub use bowls::{Bowl, BowlError, BowlPlan, BowlRequest, bowls};
pub use cas::{Cas, InvalidCas};
pub use composition::{Composition, Constituent};
pub use form::{Form, InvalidForm};
pub use pace::Pace;
pub use parse_error::ParseError;
pub use product::{Ingredient, Product};
pub use ratio::{Ratio, RatioError};
pub use weigh::{WeighError, Weighed, Weighing, weigh};
