use crate::money::{Currency, Labour, Overhead, PriceRule};

/// What a salon pays and how it prices: everything that does not belong to one service.
///
/// A shop gives it: [`Shop::business`](crate::shop::Shop::business).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Business {
    /// The currency of every amount.
    pub currency: Currency,
    /// What hands-on time costs.
    pub labour: Labour,
    /// What chair time costs.
    pub overhead: Overhead,
    /// How prices are set, and the one rounding of every line.
    pub rule: PriceRule,
}
