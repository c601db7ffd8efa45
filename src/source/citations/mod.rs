//! The register: every citation in use, one file for each room that cites.

pub mod colour;
pub mod lift;
pub mod limits;
pub mod mix;
pub mod money;
pub mod peroxide;
pub mod trade;

use super::Citation;

/// Every citation in use, room by room.
pub fn register() -> impl Iterator<Item = &'static Citation> {
    [
        peroxide::CITATIONS,
        mix::CITATIONS,
        lift::CITATIONS,
        limits::CITATIONS,
        colour::CITATIONS,
        money::CITATIONS,
        trade::CITATIONS,
        std::slice::from_ref(&super::COMMON_PRACTICE),
    ]
    .into_iter()
    .flatten()
}
