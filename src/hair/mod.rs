//! How much hair there is, how fast it grows, and what colour lies where along a strand.
//!
//! People differ: what is not measured spans the published spread between people, as 80 of 100 of them lie (log-normal).
//! Independent factors are multiplied as such, so a product is not wider than it has to be.
//!
//! # State what is known
//!
//! [`HairFacts`], with a [`Group`] whose means are published, [`DensityFact`] and [`ThreadFact`] counted, measured or by eye,
//! and a [`Ponytail`]; [`HairFacts::plausible`] refuses what is on no head.
//!
//! # Get hairs and grams
//!
//! [`HairFacts::head`] gives the [`HeadOfHair`], and that of any part of it a [`Tress`]: hairs, grams, square centimetres of
//! surface.
//!
//! # Calibrate
//!
//! [`calibrated`] by what was really used, and all the hair with it by [`HairFacts::by_use`]; [`white_share`] from counts.
//!
//! # Along the strand
//!
//! [`BandedStrand`] of [`Band`]s, [`growth`], [`grown`] and [`weeks_to_grow`], [`warm_band`].

mod calibrate;
mod facts;
mod fibre;
mod group;
mod growth;
mod head;
mod plausible;
mod ponytail;
mod quantities;
mod spread;
mod strand;
mod texture;
mod trace;
mod tress;
mod white;

/// The arithmetic on plain numbers, for the columns.
pub(crate) mod kernel {
    pub(crate) use super::{
        growth::{cm_grown, weeks_for},
        quantities::{DAYS_OF_MONTH, weekly},
    };
}

pub(crate) use calibrate::as_used;
pub use calibrate::calibrated;
pub use facts::{DensityFact, HairFacts, ThreadFact};
pub use fibre::{Cut, DiameterMethod, fibre_density};
pub use group::Group;
pub use growth::{grown, growth, weeks_to_grow};
pub use head::HeadOfHair;
pub use plausible::{ImplausibleFact, MeasuredFact};
pub use ponytail::Ponytail;
pub use quantities::{
    Age, CrossSection, Diameter, GrowthRate, HairCount, HairDensity, LinearDensity, MassPerLength, Weeks,
};
pub(crate) use spread::product;
pub use strand::{Band, BandedStrand, StrandError, warm_band};
pub use texture::{DensityByEye, Texture};
pub use trace::trace_growth;
pub use tress::Tress;
pub use white::{WhiteCount, WhiteShare, white_share};
