//! The register: every citation in use, one file for each room that cites.

pub mod colour;
pub mod hair;
pub mod lift;
pub mod limits;
pub mod mix;
pub mod money;
pub mod peroxide;
pub mod trade;
