use crate::{
    choice::nearest,
    money::{Currency, PackPrice},
};

/// The packs that a list may name instead of repeating their prices, and the currency of all amounts.
///
/// A [`Currency`] alone makes one without packs.
#[derive(Debug, Clone, PartialEq)]
pub struct Packs {
    pub(super) currency: Currency,
    packs: Vec<(String, PackPrice)>,
}

impl Packs {
    /// The packs of a shop, each under its name there.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{
    ///     business::list::{Packs, parse_csv},
    ///     money::{Currency, Money, PackPrice},
    ///     quantity::Mass,
    /// };
    ///
    /// let eur = Currency::from_code("EUR")?;
    /// let powder = PackPrice::new(Money::parse("31.50", eur)?, Mass::from_g(500.0)?)?;
    /// let packs = Packs::new(eur, [("powder".to_owned(), powder)]);
    /// let list = parse_csv("service,product,product_g,hands_on_min,chair_min\nfoils,powder,40,70,120\n", packs)?;
    /// assert_eq!(list[0].product.map(|product| product.pack), Some(powder));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(currency: Currency, packs: impl IntoIterator<Item = (String, PackPrice)>) -> Self {
        Self { currency, packs: packs.into_iter().collect() }
    }

    /// The pack of this name, or what to write instead.
    pub(super) fn named(&self, name: &str) -> Result<PackPrice, String> {
        let found = self.packs.iter().find(|(known, _)| known == name);
        found.map(|(_, pack)| *pack).ok_or_else(|| {
            let near = nearest(name, self.packs.iter().map(|(known, _)| known.as_str()));
            let way_out = match near {
                Some(known) => format!("did you mean {known:?}?"),
                None => "add it to the shop with `pack_g` and `price`, or give the price and the mass of its pack here"
                    .to_owned(),
            };
            format!("the shop has no {name:?} with a price: {way_out}")
        })
    }
}

impl From<Currency> for Packs {
    fn from(currency: Currency) -> Self {
        Self { currency, packs: Vec::new() }
    }
}
