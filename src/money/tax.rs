use super::{Money, MoneyError, Rounding, TaxRate, exact, exact::HUNDRED};
use serde::Serialize;

/// A price with its tax: `net + tax = gross`, always.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, schemars::JsonSchema)]
pub struct TaxedPrice {
    /// Without the tax.
    pub net: Money,
    /// The tax.
    pub tax: Money,
    /// With the tax: what the guest pays.
    pub gross: Money,
}

/// Puts tax on a net price. The tax is rounded; the gross price is the sum.
///
/// # Errors
///
/// [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Money, Rounding, TaxRate, add_tax};
///
/// let net = Money::parse("34.88", Currency::from_code("USD")?)?;
/// let price = add_tax(net, TaxRate::from_percent("8.25".parse()?)?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!((price.tax.to_string(), price.gross.to_string()), ("2.88 USD".into(), "37.76 USD".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Contemporary Mathematics](crate::source::citations::money::CONTEMPORARY_MATHEMATICS), module m00058; [HM Revenue & Customs, Calculating VAT](crate::source::citations::money::CALCULATING_VAT).
pub fn add_tax(net: Money, rate: TaxRate, rounding: Rounding) -> Result<TaxedPrice, MoneyError> {
    let tax = net.percent(rate.percent(), rounding)?;
    Ok(TaxedPrice { net, tax, gross: net.plus(tax)? })
}

/// Takes the tax out of a gross price: `tax = gross · rate / (100 + rate)`, rounded; net is what is left.
///
/// It undoes [`add_tax`] to the minor unit when both round to the nearest (any of the three `Midpoint` roundings). The
/// other way round need not hold: not every gross price can be reached from a whole net price.
///
/// # Errors
///
/// [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Money, Rounding, TaxRate, take_tax_out};
///
/// let gross = Money::parse("120.00", Currency::from_code("GBP")?)?;
/// let price = take_tax_out(gross, TaxRate::from_percent(20.into())?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!((price.net.to_string(), price.tax.to_string()), ("100.00 GBP".into(), "20.00 GBP".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [HM Revenue & Customs, Calculating VAT](crate::source::citations::money::CALCULATING_VAT): the fraction of a gross price that is tax (1/6 at 20 %).
pub fn take_tax_out(gross: Money, rate: TaxRate, rounding: Rounding) -> Result<TaxedPrice, MoneyError> {
    let (over, under) = ([gross.decimal(), rate.percent()], [HUNDRED + rate.percent()]);
    let tax = Money::rounded(&over, &under, gross.currency(), rounding, "tax")?;
    Ok(TaxedPrice { net: gross.minus(tax)?, tax, gross })
}

/// The fraction of a gross price that is tax, in lowest terms: (1, 6) at 20 %, (7, 47) at 17.5 %.
///
/// # Errors
///
/// [`MoneyError::TooLarge`] for a rate with more decimals than 128 bits hold.
///
/// # Example
///
/// ```
/// use foilwork::money::{TaxRate, tax_fraction};
///
/// assert_eq!(tax_fraction(TaxRate::from_percent("17.5".parse()?)?)?, (7, 47));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn tax_fraction(rate: TaxRate) -> Result<(i128, i128), MoneyError> {
    let too_large = MoneyError::TooLarge { field: "tax fraction" };
    let whole = (HUNDRED + rate.percent()).normalize();
    let scale = whole.scale();
    let over = rate.percent().normalize();
    let power = 10_i128.checked_pow(scale.saturating_sub(over.scale())).ok_or_else(|| too_large.clone())?;
    let (over, under) = (over.mantissa().checked_mul(power).ok_or_else(|| too_large.clone())?, whole.mantissa());
    let divisor = exact::greatest_common_divisor(over.unsigned_abs(), under.unsigned_abs());
    let divisor = i128::try_from(divisor).map_err(|_| too_large)?;
    Ok((over / divisor, under / divisor))
}

/// The tax rate that turns a net price into a gross one, in percent with 28 significant digits.
///
/// # Errors
///
/// [`MoneyError::AmountOutOfRange`] when the net price is zero, [`MoneyError::OutOfRange`] when gross is below net.
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Money, tax_rate};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// assert_eq!(tax_rate(euros("100.00")?, euros("119.00")?)?.to_string(), "19 % of the net price");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Contemporary Mathematics](crate::source::citations::money::CONTEMPORARY_MATHEMATICS), module m00058.
pub fn tax_rate(net: Money, gross: Money) -> Result<TaxRate, MoneyError> {
    let tax = gross.minus(net)?;
    net.positive("net price")?;
    TaxRate::from_percent(exact::ratio(&[tax.decimal(), HUNDRED], &[net.decimal()], "tax rate")?)
}
