use super::{
    COMMON_PRACTICE, Citation,
    citations::{colour, hair, lift, limits, mix, money, peroxide, trade},
};

/// Every citation in use, room by room.
///
/// # Example
///
/// ```
/// let units = foilwork::source::register().find(|citation| citation.id == "codata-2022");
/// assert!(units.is_some_and(|citation| citation.is_verified()));
/// ```
pub fn register() -> impl Iterator<Item = &'static Citation> {
    [
        peroxide::CITATIONS,
        mix::CITATIONS,
        hair::CITATIONS,
        lift::CITATIONS,
        limits::CITATIONS,
        colour::CITATIONS,
        money::CITATIONS,
        trade::CITATIONS,
        std::slice::from_ref(&COMMON_PRACTICE),
    ]
    .into_iter()
    .flatten()
}
