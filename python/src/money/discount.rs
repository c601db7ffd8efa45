//! A price with a discount, and the price before one.

use super::{HALF_UP, PyMoney, rounding};
use crate::{answer::answer, error::raise, exact::Number, source::TracedResult};
use foilwork::money::{self, Discount};
use pyo3::prelude::*;
use rust_decimal::Decimal;

answer! {
    in "foilwork.money";
    /// A price with a discount: ``before - off == after``, always.
    DiscountedPrice {
        /// The full price.
        before: PyMoney,
        /// What is taken off.
        off: PyMoney,
        /// What is left to pay.
        after: PyMoney,
        /// The discount, in percent of the full price.
        discount_percent: Decimal,
        /// Whether the full price was found from the discounted one; else it was given.
        full_price_found: bool,
    }
    impl {
        /// How what is taken off, and what is left to pay, come about from the full price; of one that was found from what is left
        /// to pay how it was, and what is taken off.
        ///
        /// Returns:
        ///     A :class:`foilwork.source.TracedResult` for each.
        ///
        /// Examples:
        ///     >>> from foilwork.money import Money, apply_discount
        ///     >>> off, after = apply_discount(Money("80.00", "USD"), 30).trail()
        ///     >>> off.worked, after.value
        ///     ('80.00 x (30 / 100)', '56.00')
        fn trail(&self) -> PyResult<Vec<TracedResult>> {
            let price = money::DiscountedPrice {
                before: self.before.0,
                off: self.off.0,
                after: self.after.0,
                discount: Discount::from_percent(self.discount_percent).map_err(raise)?,
                full_price_found: self.full_price_found,
            };
            Ok(price.trail().into_iter().map(Into::into).collect())
        }
    }
}

impl From<money::DiscountedPrice> for DiscountedPrice {
    fn from(price: money::DiscountedPrice) -> Self {
        Self {
            before: PyMoney(price.before),
            off: PyMoney(price.off),
            after: PyMoney(price.after),
            discount_percent: price.discount.percent(),
            full_price_found: price.full_price_found,
        }
    }
}

/// Take a discount off a price.
///
/// Args:
///     price: the full price.
///     discount_percent: what is taken off, in percent of the full price, below 100.
///     rounding: how the discount becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: a discount outside 0 to below 100.
///
/// Examples:
///     >>> from foilwork.money import Money, apply_discount
///     >>> apply_discount(Money("80.00", "USD"), 30).after
///     Money('56.00', 'USD')
#[pyfunction]
#[pyo3(signature = (price, discount_percent, *, rounding = HALF_UP), text_signature = "(price, discount_percent, *, rounding='midpoint-away-from-zero')")]
pub fn apply_discount(price: PyMoney, discount_percent: Number, rounding: &str) -> PyResult<DiscountedPrice> {
    let discount = Discount::from_percent(discount_percent.0).map_err(raise)?;
    money::apply_discount(price.0, discount, self::rounding(rounding)?).map(Into::into).map_err(raise)
}

/// The full price under a discounted one.
///
/// Args:
///     after: the price after the discount.
///     discount_percent: what was taken off, in percent of the full price, below 100.
///     rounding: how the full price becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: a discount outside 0 to below 100.
///
/// Examples:
///     >>> from foilwork.money import Money, price_before_discount
///     >>> price_before_discount(Money("450.00", "USD"), 10).before
///     Money('500.00', 'USD')
#[pyfunction]
#[pyo3(signature = (after, discount_percent, *, rounding = HALF_UP), text_signature = "(after, discount_percent, *, rounding='midpoint-away-from-zero')")]
pub fn price_before_discount(after: PyMoney, discount_percent: Number, rounding: &str) -> PyResult<DiscountedPrice> {
    let discount = Discount::from_percent(discount_percent.0).map_err(raise)?;
    money::price_before_discount(after.0, discount, self::rounding(rounding)?).map(Into::into).map_err(raise)
}
