use super::{
    Bottle, ClassPrice, Consumable, Diluent, Habits, Lightener, Remover, StockFacts, StockedAdditive, StockedShade,
    Terms, shape::ShopFile,
};
use crate::{
    business::list::{Business, Packs},
    colour::Shade,
    money::Currency,
    reader::{self, InField, Problems},
};

/// What the salon has and what it charges, every figure a quantity.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Shop {
    /// What the shop is called.
    pub name: Option<String>,
    /// The currency of every price.
    pub currency: Option<Currency>,
    /// How sheets and cards are written.
    pub habits: Habits,
    /// Developers.
    pub bottles: Vec<Bottle>,
    /// Lighteners.
    pub lighteners: Vec<Lightener>,
    /// Colour shades, toners included.
    pub shades: Vec<StockedShade>,
    /// Bond builders, thickeners and the like.
    pub additives: Vec<StockedAdditive>,
    /// What a developer may be weakened with.
    pub diluents: Vec<Diluent>,
    /// What takes artificial pigment out.
    pub removers: Vec<Remover>,
    /// Foils, gloves, film and the like.
    pub consumables: Vec<Consumable>,
    /// What an hour costs and how prices are set.
    pub terms: Terms,
    /// What the price list says for each class of service.
    pub class_prices: Vec<ClassPrice>,
}

impl Shop {
    /// The shop of a file, which may have been put together in code: it is checked like a text.
    ///
    /// # Errors
    ///
    /// [`Problems`] holds everything that is wrong, each with its field.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, shop::{Shop, parse_shop}};
    ///
    /// let shop = Shop::new(&parse_shop(&std::fs::read_to_string("examples/juniper_and_tide.toml")?, Format::Toml)?)?;
    /// let mist = shop.shade("J9-mist").ok_or("no such shade")?;
    /// assert_eq!(mist.shade.to_string(), "J9-mist (level 9, violet)");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(file: &ShopFile) -> Result<Self, Problems> {
        reader::validate(file)?;
        Self::of_checked(file, "")
    }

    /// What is known of a product that can go into a bowl, by its name.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, shop::{Shop, parse_shop}};
    ///
    /// let text = "[[diluent]]\nname = \"base\"\nin_hand_g = 250";
    /// let shop = Shop::new(&parse_shop(text, Format::Toml)?)?;
    /// assert_eq!(shop.facts("base").and_then(|facts| facts.in_hand).map(|mass| mass.g()), Some(250.0));
    /// # Ok::<(), foilwork::reader::Problems>(())
    /// ```
    #[must_use]
    pub fn facts(&self, name: &str) -> Option<&StockFacts> {
        let bottles = self.bottles.iter().map(|one| (one.name.as_str(), &one.facts));
        let lighteners = self.lighteners.iter().map(|one| (one.name.as_str(), &one.facts));
        let shades = self.shades.iter().map(|one| (one.shade.code(), &one.facts));
        let additives = self.additives.iter().map(|one| (one.name.as_str(), &one.facts));
        let diluents = self.diluents.iter().map(|one| (one.name.as_str(), &one.facts));
        let removers = self.removers.iter().map(|one| (one.name.as_str(), &one.facts));
        let mut all = bottles.chain(lighteners).chain(shades).chain(additives).chain(diluents).chain(removers);
        all.find(|(known, _)| *known == name).map(|(_, facts)| facts)
    }

    /// The shop of a file that is known to fit its schema; `prefix` is the path of its table.
    pub(crate) fn of_checked(file: &ShopFile, prefix: &str) -> Result<Self, Problems> {
        let currency = file.currency.as_deref().map(Currency::from_code).transpose();
        let currency = currency.in_field(&format!("{prefix}currency"))?;
        let mut problems = Problems::default();
        let shop = Self {
            name: file.name.clone(),
            currency,
            habits: file.habits.unwrap_or_default(),
            bottles: each(&file.developer, prefix, "developer", &mut problems, |entry, field| {
                Bottle::read(entry, currency, field)
            }),
            lighteners: each(&file.lightener, prefix, "lightener", &mut problems, |entry, field| {
                Lightener::read(entry, currency, field)
            }),
            shades: each(&file.shade, prefix, "shade", &mut problems, |entry, field| {
                StockedShade::read(entry, &file.digits, currency, field)
            }),
            additives: each(&file.additive, prefix, "additive", &mut problems, |entry, field| {
                StockedAdditive::read(entry, currency, field)
            }),
            diluents: each(&file.diluent, prefix, "diluent", &mut problems, |entry, field| {
                Diluent::read(entry, currency, field)
            }),
            removers: each(&file.remover, prefix, "remover", &mut problems, |entry, field| {
                Remover::read(entry, currency, field)
            }),
            consumables: each(&file.consumable, prefix, "consumable", &mut problems, |entry, field| {
                Consumable::read(entry, currency, field)
            }),
            class_prices: each(&file.class_price, prefix, "class_price", &mut problems, |entry, field| {
                ClassPrice::read(entry, currency, field)
            }),
            terms: match &file.terms {
                None => Terms::default(),
                Some(entry) => Terms::read(entry, currency, &format!("{prefix}terms")).unwrap_or_else(|mut found| {
                    problems.0.append(&mut found.0);
                    Terms::default()
                }),
            },
        };
        problems.or(shop)
    }

    /// The shade with this code.
    #[must_use]
    pub fn shade(&self, code: &str) -> Option<&StockedShade> {
        self.shades.iter().find(|one| one.shade.code() == code)
    }

    /// The colours of the shades alone, as the search for a toner takes them.
    pub fn colours(&self) -> impl Iterator<Item = &Shade> {
        self.shades.iter().map(|one| &one.shade)
    }

    /// The packs that a list of services may name: everything with a price.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, shop::{Shop, parse_shop}};
    ///
    /// let shop = Shop::new(&parse_shop(&std::fs::read_to_string("examples/juniper_and_tide.toml")?, Format::Toml)?)?;
    /// assert!(shop.packs().is_some());
    /// assert!(shop.colours().any(|shade| shade.code() == "J9-mist"));
    /// assert_eq!(shop.business()?.currency.code(), "EUR");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn packs(&self) -> Option<Packs> {
        let bottles = self.bottles.iter().map(|one| (one.name.as_str(), &one.facts));
        let lighteners = self.lighteners.iter().map(|one| (one.name.as_str(), &one.facts));
        let shades = self.shades.iter().map(|one| (one.shade.code(), &one.facts));
        let additives = self.additives.iter().map(|one| (one.name.as_str(), &one.facts));
        let all = bottles.chain(lighteners).chain(shades).chain(additives);
        let priced = all.filter_map(|(name, facts)| Some((name.to_owned(), facts.pack_price?)));
        Some(Packs::new(self.currency?, priced))
    }

    /// The terms for costing a list of services.
    ///
    /// # Errors
    ///
    /// As [`Terms::business`].
    pub fn business(&self) -> Result<Business, Problems> {
        self.terms.business(self.currency)
    }
}

/// Reads every entry of a list, and keeps what is wrong with each.
fn each<E, T>(
    entries: &[E],
    prefix: &str,
    kind: &str,
    problems: &mut Problems,
    read: impl Fn(&E, &str) -> Result<T, Problems>,
) -> Vec<T> {
    let mut all = Vec::with_capacity(entries.len());
    for (i, entry) in entries.iter().enumerate() {
        match read(entry, &format!("{prefix}{kind}[{}]", i + 1)) {
            Ok(one) => all.push(one),
            Err(mut found) => problems.0.append(&mut found.0),
        }
    }
    all
}
