//! The shades of the shop that look near to something.

use crate::{colour::Swatch, service::request::Request, shop::StockedShade, source::Interval};

/// Shades farther than this in CIEDE2000 look like another colour, and are no help (assumed).
const FARTHEST: f64 = 10.0;

/// Those that fit and are no farther off, on white hair by the model, the nearest first, each with how far it is.
pub(super) fn near<'r>(
    request: &'r Request,
    looks: &Swatch,
    fits: impl Fn(&StockedShade) -> bool,
) -> Vec<(&'r StockedShade, Interval<f64>)> {
    let stocked = request.shop.shades.iter().filter(|stocked| fits(stocked));
    let apart = |stocked: &'r StockedShade| (stocked, looks.difference_bounds(&Swatch::of_shade(&stocked.shade)));
    let mut found: Vec<_> = stocked.map(apart).filter(|(_, apart)| apart.best() <= FARTHEST).collect();
    found.sort_by(|(_, a), (_, b)| a.best().total_cmp(&b.best()));
    found
}
