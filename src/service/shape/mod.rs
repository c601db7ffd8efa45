//! The shape of a service file: plain fields whose names carry the unit, exactly as TOML and JSON write them.
//!
//! The shape is said once, here. The JSON Schema is derived from it, the file is checked against that schema, and
//! editors can use the same schema while the file is written. `x-unit` names the unit in messages, `x-parse` the reader
//! of a text field.

mod after_rinse;
mod analysis;
mod choices;
mod consultation;
mod foils;
mod head;
mod strand;
mod work;

pub use after_rinse::{Application, MixPart, RootShadow, ToneTarget, Toner};
pub use analysis::{Analysis, ExistingColour, Test, WhiteCountEntry};
pub use choices::{
    Curl, Elasticity, HistoryFlag, HouseRule, Party, PastPlace, PastWork, Porosity, Scalp, TestResult, WaitFor, Zone,
};
pub use consultation::{AgreedEntry, ConsultationEntry, PastEntry, WishEntry};
pub use foils::{
    EndsBetweenEntry, FoilPanel, GradientEntry, InRegion, LowlightsEntry, OverDirectedEntry, RegionEntry, RegionPlace,
    TechniqueWishEntry,
};
pub use head::{Head, Salon, ServiceFile};
pub use strand::{Finish, Strand};
pub use work::{After, Section};
