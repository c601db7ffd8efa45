use super::shape::{Declared, EntryFacts, SubstanceEntry};
use crate::{
    mix::{Ingredient, Product},
    money::{Currency, Money, MoneyError, PackPrice, parse_decimal, unit_price},
    peroxide::Stock,
    quantity::{Mass, MassFraction, PricePerKg},
    reader::{InField, Problems},
    source::Interval,
};
use rust_decimal::{Decimal, prelude::ToPrimitive};

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
            (Some(pack_g), Some(price), Some(currency)) => {
                let pack = Mass::from_g(pack_g).in_field(&format!("{field}.pack_g"))?;
                let price = Money::parse(price, currency).in_field(&format!("{field}.price"))?;
                Some(PackPrice::new(price, pack).in_field(&format!("{field}.pack_g"))?)
            }
            _ => None,
        };
        let ingredient = |(i, substance): (usize, &SubstanceEntry)| {
            let field = format!("{field}.composition[{}]", i + 1);
            let level = level(substance.ww_percent).in_field(&format!("{field}.ww_percent"))?;
            ingredient(substance, level).in_field(&field)
        };
        let ingredients = entry.composition.iter().enumerate().map(ingredient).collect::<Result<_, _>>()?;
        let declared = Product { name: name.to_owned(), ingredients, fully_declared: entry.declared_in_full };
        Ok(Self { in_hand, pack_price, declared })
    }

    /// What a kilogram costs, exactly; `None` without a price, or where no decimal holds it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, shop::{Shop, parse_shop}};
    ///
    /// let text = "currency = \"EUR\"\n[[diluent]]\nname = \"base\"\npack_g = 500\nprice = \"7.90\"";
    /// let shop = Shop::new(&parse_shop(text, Format::Toml)?)?;
    /// assert_eq!(shop.diluents[0].facts.price_per_kg(), Some("15.8".parse()?));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn price_per_kg(&self) -> Option<Decimal> {
        let per_g = unit_price(self.pack_price?).ok()?.per_unit;
        per_g.checked_mul(Decimal::ONE_THOUSAND)
    }

    /// The product as one of the stocks of a blend.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::MassFraction, reader::Format, shop::{Shop, parse_shop}};
    ///
    /// let text = "[[diluent]]\nname = \"base\"\nin_hand_g = 250";
    /// let shop = Shop::new(&parse_shop(text, Format::Toml)?)?;
    /// let stock = shop.diluents[0].facts.stock(MassFraction::ZERO);
    /// assert_eq!((stock.name.as_str(), stock.in_hand.map(|mass| mass.g())), ("base", Some(250.0)));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn stock(&self, strength: impl Into<Interval<MassFraction>>) -> Stock {
        let mut stock = Stock::new(self.declared.name.as_str(), strength);
        stock.in_hand = self.in_hand;
        stock.price = self.price_per_kg().and_then(|price| PricePerKg::from_per_kg(price.to_f64()?).ok());
        stock
    }
}

fn level(declared: Declared) -> Result<Interval<MassFraction>, Box<dyn std::error::Error>> {
    let percent = MassFraction::from_ww_percent;
    Ok(match declared {
        Declared::Exact(value) => percent(value)?.into(),
        Declared::Range { low, best, high } => Interval::new(percent(low)?, percent(best)?, percent(high)?)?,
    })
}

fn ingredient(entry: &SubstanceEntry, level: Interval<MassFraction>) -> Result<Ingredient, Box<dyn std::error::Error>> {
    let mut ingredient = Ingredient::named(entry.substance.as_str(), level);
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
