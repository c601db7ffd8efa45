//! Wrappers of `foilwork::hair`.

mod facts;
mod growth;
mod strand;
mod white;

pub use facts::{HairFacts, interval};
pub use growth::rate_of;

crate::room::room! {
    /// How much hair there is, how fast it grows, and what colour lies where along a strand.
    hair {
        facts { HairFacts, HeadOfHair, Tress, by_caliper, calibrated, fibre_density, hair_cut }
        growth { grown, growth, warm_band, weeks_to_grow }
        strand { Band, BandedStrand }
        white { WhiteShare, white_share }
    }
}
