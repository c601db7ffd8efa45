use super::{Measure, Money, MoneyError, Rounding, UnitPrice, exact};
use crate::quantity::Mass;
use rust_decimal::Decimal;

/// What the product that was used, waste included, costs at its pack price.
///
/// `cost = pack price · used / pack`, at the unrounded unit price and rounded once. Rounding the price per gram first
/// is a printed error: 3.99 for 24 is 0.166 25 each, and 0.17 overstates a hundred of them by 37 cents.
///
/// # Units
///
/// Masses in g, each read to 15 significant digits; the price in any currency.
///
/// # Errors
///
/// [`MoneyError::OutOfRange`] for an empty pack, [`MoneyError::AmountOutOfRange`] for a price below nothing.
///
/// # Example
///
/// ```
/// use foilwork::{money::{Currency, Money, Rounding, product_cost}, quantity::Mass};
///
/// let price = Money::parse("18.90", Currency::from_code("EUR")?)?;
/// let cost = product_cost(price, Mass::from_g(1000.0)?, Mass::from_g(42.0)?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!(cost.to_string(), "0.79 EUR"); // 0.7938
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Unit price from the price of a pack: OpenStax, Prealgebra 2e, module m81303.
pub fn product_cost(pack_price: Money, pack: Mass, used: Mass, rounding: Rounding) -> Result<Money, MoneyError> {
    supply_cost(pack_price, Measure::Mass(pack), Measure::Mass(used), rounding)
}

/// [`product_cost`] for anything bought in packs: by mass, by volume or as a count.
///
/// # Errors
///
/// As [`product_cost`], and [`MoneyError::DifferentMeasures`] when pack and use are measured differently.
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Measure, Money, Rounding, supply_cost};
///
/// let foils = Money::parse("24.00", Currency::from_code("EUR")?)?;
/// let cost = supply_cost(foils, Measure::Count(500), Measure::Count(42), Rounding::MidpointAwayFromZero)?;
/// assert_eq!(cost.to_string(), "2.02 EUR"); // 2.016
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn supply_cost(pack_price: Money, pack: Measure, used: Measure, rounding: Rounding) -> Result<Money, MoneyError> {
    let (used, pack) = used.beside(pack)?;
    let price = pack_price.not_negative("pack price")?;
    holds_something(pack)?;
    Money::rounded(&[price.decimal(), used], &[pack], price.currency(), rounding, "product cost")
}

/// The price of one gram, millilitre or piece, unrounded.
///
/// # Errors
///
/// As [`product_cost`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Measure, Money, unit_price};
///
/// let pack = Money::parse("3.99", Currency::from_code("USD")?)?;
/// assert_eq!(unit_price(pack, Measure::Count(24))?.to_string(), "0.16625 USD/piece");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// OpenStax, Prealgebra 2e, module m81303.
pub fn unit_price(pack_price: Money, pack: Measure) -> Result<UnitPrice, MoneyError> {
    let price = pack_price.not_negative("pack price")?;
    let contents = pack.decimal()?;
    holds_something(contents)?;
    let per_unit = exact::ratio(&[price.decimal()], &[contents], "unit price")?;
    Ok(UnitPrice { per_unit, currency: price.currency(), unit: pack.unit() })
}

/// How many whole packs cover the need: always rounded up, since the last pack is bought whole.
///
/// # Errors
///
/// [`MoneyError::DifferentMeasures`], [`MoneyError::OutOfRange`] for an empty pack, [`MoneyError::TooLarge`].
///
/// # Source
///
/// OpenStax, Contemporary Mathematics, module m00072, whose printed answer (1458 for 1458.33) is rounded down by
/// mistake.
pub fn packs_needed(need: Measure, pack: Measure) -> Result<i64, MoneyError> {
    let (need, pack) = need.beside(pack)?;
    holds_something(pack)?;
    exact::quotient(&[need], &[pack], 0, Rounding::ToPositiveInfinity, "number of packs")
}

fn holds_something(pack: Decimal) -> Result<(), MoneyError> {
    if pack > Decimal::ZERO {
        return Ok(());
    }
    let allowed = "more than nothing";
    Err(MoneyError::OutOfRange { field: "pack contents", value: pack, unit: "g, mL or pieces", allowed })
}
