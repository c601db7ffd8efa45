use super::{shape::ClassPriceEntry, stock_facts::amount};
use crate::{
    head::ServiceClass,
    money::{Currency, Money, MoneyError, Rounding},
    quantity::Duration,
    reader::{InField, Problems},
};
use rust_decimal::Decimal;

/// What the price list says for a class of service, tax included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClassPrice {
    /// The class.
    pub class: ServiceClass,
    /// What the guest pays for it.
    pub price: Money,
    /// How long in the chair is in that price, where that is limited.
    pub included: Option<Duration>,
    /// What an hour beyond that costs.
    pub per_extra_h: Option<Money>,
}

impl ClassPrice {
    pub(super) fn read(entry: &ClassPriceEntry, currency: Option<Currency>, field: &str) -> Result<Self, Problems> {
        let money = |text: &str, name: &str| {
            let field = format!("{field}.{name}");
            let currency = currency.ok_or("there is no currency: say it in `currency`").in_field(&field)?;
            amount(text, currency).in_field(&field)
        };
        let included = entry.included_min.map(Duration::from_min).transpose();
        Ok(Self {
            class: entry.class,
            price: money(&entry.price, "price")?,
            included: included.in_field(&format!("{field}.included_min"))?,
            per_extra_h: entry.per_extra_h.as_deref().map(|text| money(text, "per_extra_h")).transpose()?,
        })
    }

    /// What time in the chair beyond the one that is included costs.
    ///
    /// # Errors
    ///
    /// [`MoneyError::TooLarge`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::ServiceClass, money::{Currency, Money, Rounding}, quantity::Duration, shop::ClassPrice};
    ///
    /// let (euros, min) = (|text| Money::parse(text, Currency::from_code("EUR")?), Duration::from_min);
    /// let half = ClassPrice {
    ///     class: ServiceClass::Half, price: euros("150.00")?, included: Some(min(180.0)?), per_extra_h: Some(euros("40.00")?),
    /// };
    /// // Half an hour more at 40.00 an hour.
    /// assert_eq!(half.extra(min(210.0)?, Rounding::MidpointAwayFromZero)?, euros("20.00")?);
    /// assert!(half.extra(min(170.0)?, Rounding::MidpointAwayFromZero)?.is_zero());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn extra(&self, in_chair: Duration, rounding: Rounding) -> Result<Money, MoneyError> {
        let none = Money::zero(self.price.currency());
        let (Some(included), Some(per_h)) = (self.included, self.per_extra_h) else { return Ok(none) };
        let beyond = Decimal::try_from((in_chair.min() - included.min()).max(0.0)).unwrap_or(Decimal::ZERO);
        let owed = per_h.decimal().checked_mul(beyond).unwrap_or(Decimal::MAX) / Decimal::from(60);
        Money::from_decimal(owed, self.price.currency(), rounding)
    }
}
