//! The shape of a service file: plain fields whose names carry the unit, exactly as TOML and JSON write them.
//!
//! The shape is said once, here. The JSON Schema is derived from it, the file is checked against that schema, and
//! editors can use the same schema while the file is written. `x-unit` names the unit in messages, `x-parse` the reader
//! of a text field.

mod analysis;
mod head;
mod prices;
mod shelf;
mod work;

pub use analysis::{
    Amount, Analysis, Elasticity, ExistingColour, HistoryFlag, Porosity, Scalp, Test, TestResult, Texture,
};
pub use head::{Head, Salon, ServiceFile};
pub use prices::{Consumable, Per, Prices};
pub use shelf::{Additive, Developer, Diluent, Lightener, Shade, ShadeClass, Shelf, StrengthBasis};
pub use work::{MixPart, RootShadow, Section, Technique, Toner, Zone};
