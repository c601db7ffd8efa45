use super::shape::{EntryFacts, SubstanceEntry};
use crate::{
    mix::{Ingredient, Product},
    money::{Currency, Money, MoneyError, parse_decimal},
    quantity::{Mass, MassFraction, PricePerKg},
    reader::{InField, Problems},
    source::Interval,
};
use rust_decimal::{Decimal, prelude::ToPrimitive};

/// What a full pack holds and costs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PackPrice {
    /// Mass of a full pack.
    pub pack: Mass,
    /// Its price.
    pub price: Money,
}

impl PackPrice {
    /// What a kilogram costs, exactly as a decimal; `None` when no decimal holds it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{money::{Currency, Money}, quantity::Mass, shop::PackPrice};
    ///
    /// let price = Money::parse("7.90", Currency::from_code("EUR")?)?;
    /// let pack = PackPrice { pack: Mass::from_g(500.0)?, price };
    /// assert_eq!(pack.per_kg_decimal(), Some("15.8".parse()?));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn per_kg_decimal(&self) -> Option<Decimal> {
        let pack = Decimal::try_from(self.pack.g()).ok()?;
        self.price.decimal().checked_mul(Decimal::ONE_THOUSAND)?.checked_div(pack)
    }

    /// What a kilogram costs, for a search.
    #[must_use]
    pub fn per_kg(&self) -> Option<PricePerKg> {
        PricePerKg::from_per_kg(self.per_kg_decimal()?.to_f64()?).ok()
    }
}

/// What is known of every product of the shop.
#[derive(Debug, Clone, PartialEq)]
pub struct StockFacts {
    /// How much is in hand; `None` when there is always enough, as of tap water.
    pub in_hand: Option<Mass>,
    /// Pack and price, where both are known.
    pub pack_price: Option<PackPrice>,
    /// What its maker declares to be in it, under the name it has in the shop.
    pub declared: Product,
}

impl StockFacts {
    /// Reads the fields that every product has; `field` is the path of its table.
    pub(super) fn read(
        name: &str,
        entry: EntryFacts<'_>,
        currency: Option<Currency>,
        field: &str,
    ) -> Result<Self, Problems> {
        let in_hand = entry.in_hand_g.map(Mass::from_g).transpose().in_field(&format!("{field}.in_hand_g"))?;
        let pack_price = match (entry.pack_g, entry.price, currency) {
            (Some(pack_g), Some(price), Some(currency)) => Some(PackPrice {
                pack: Mass::from_g(pack_g).in_field(&format!("{field}.pack_g"))?,
                price: Money::parse(price, currency).in_field(&format!("{field}.price"))?,
            }),
            _ => None,
        };
        let ingredient = |(i, substance): (usize, &SubstanceEntry)| {
            ingredient(substance).in_field(&format!("{field}.composition[{}]", i + 1))
        };
        let ingredients = entry.composition.iter().enumerate().map(ingredient).collect::<Result<_, _>>()?;
        let declared = Product { name: name.to_owned(), ingredients, fully_declared: entry.declared_in_full };
        Ok(Self { in_hand, pack_price, declared })
    }
}

fn ingredient(entry: &SubstanceEntry) -> Result<Ingredient, Box<dyn std::error::Error>> {
    let percent = MassFraction::from_percent_ww;
    let best = percent(entry.ww_percent)?;
    let low = entry.low_ww_percent.map(percent).transpose()?.unwrap_or(best);
    let high = entry.high_ww_percent.map(percent).transpose()?.unwrap_or(best);
    let mut ingredient = Ingredient::named(entry.substance.as_str(), Interval::new(low, best, high)?);
    if let Some(cas) = &entry.cas {
        ingredient = ingredient.with_cas(cas.parse()?);
    }
    match &entry.stated_as {
        Some(form) => Ok(ingredient.stated_as(form.parse()?)),
        None => Ok(ingredient),
    }
}

/// An amount of the terms.
pub(super) fn amount(text: &str, currency: Currency) -> Result<Money, MoneyError> {
    Money::from_decimal_exact(parse_decimal("amount", text)?, currency)
}
