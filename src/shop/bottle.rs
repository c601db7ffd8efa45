use super::{StockFacts, StrengthBasis, shape::DeveloperEntry};
use crate::{
    money::Currency,
    peroxide::{Conditions, ConversionError, SolutionDensity, StatedStrength, Stock},
    quantity::{Density, MassFraction, Temperature},
    reader::{InField, Problems},
    source::{Basis, Interval},
};

/// A developer of the shop.
#[derive(Debug, Clone, PartialEq)]
pub struct Bottle {
    /// Your name for it.
    pub name: String,
    /// Its strength as stated.
    pub stated: StatedStrength,
    /// How the strength is known.
    pub strength_basis: StrengthBasis,
    /// Its density where it was measured.
    pub density: Option<Density>,
    /// Whether it is a cream or emulsion, where that is said.
    pub cream: Option<bool>,
    /// What is in hand, what it costs, what is in it.
    pub facts: StockFacts,
}

impl Bottle {
    pub(super) fn read(entry: &DeveloperEntry, currency: Option<Currency>, field: &str) -> Result<Self, Problems> {
        let density = entry.density_g_per_ml.map(Density::from_g_per_ml).transpose();
        Ok(Self {
            name: entry.name.clone(),
            stated: entry.strength.parse().in_field(&format!("{field}.strength"))?,
            strength_basis: entry.strength_basis,
            density: density.in_field(&format!("{field}.density_g_per_ml"))?,
            cream: entry.cream,
            facts: StockFacts::read(&entry.name, entry.facts(), currency, field)?,
        })
    }

    /// What stands between its volume and its mass; that of an emulsion where the shop says neither.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::SolutionDensity, reader::Format, shop::{Shop, parse_shop}};
    ///
    /// let text = "[[developer]]\nname = \"deep\"\nstrength = \"12 % w/v\"\nstrength_basis = \"label\"\ncream = false";
    /// let shop = Shop::new(&parse_shop(text, Format::Toml)?)?;
    /// assert_eq!(shop.bottles[0].solution_density(), SolutionDensity::Aqueous);
    /// # Ok::<(), foilwork::reader::Problems>(())
    /// ```
    #[must_use]
    pub fn solution_density(&self) -> SolutionDensity {
        match (self.density, self.cream) {
            (Some(density), _) => SolutionDensity::measured(density),
            (None, Some(false)) => SolutionDensity::Aqueous,
            (None, _) => SolutionDensity::Emulsion,
        }
    }

    /// Whether its strength depends on a density that nobody stated.
    #[must_use]
    pub const fn density_is_assumed(&self) -> bool {
        self.density.is_none() && self.cream.is_none() && !matches!(self.stated, StatedStrength::Ww(_))
    }

    /// Its strength by mass at a temperature, with the bounds that a label or a strength by volume brings.
    ///
    /// # Errors
    ///
    /// [`ConversionError`] when it cannot be converted.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Temperature, reader::Format, shop::{Shop, parse_shop}};
    ///
    /// let text = "[[developer]]\nname = \"deep\"\nstrength = \"12 % w/w\"\nstrength_basis = \"label\"";
    /// let shop = Shop::new(&parse_shop(text, Format::Toml)?)?;
    /// assert_eq!(shop.bottles[0].strength(Temperature::REFERENCE)?.best().ww_percent(), 12.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn strength(&self, room: Temperature) -> Result<Interval<MassFraction>, ConversionError> {
        self.stated.mass_fraction_under(&self.conditions(room))
    }

    /// Under which its strength is read.
    pub(crate) fn conditions(&self, room: Temperature) -> Conditions {
        Conditions::at(room).with_density(self.solution_density())
    }

    /// The basis of its strength.
    #[must_use]
    pub const fn basis(&self) -> Basis {
        match self.strength_basis {
            StrengthBasis::Measured => Basis::Measured,
            StrengthBasis::SupplierSheet | StrengthBasis::Label => Basis::Stated,
        }
    }

    /// The bottle as the blend sees it.
    ///
    /// # Errors
    ///
    /// As [`Bottle::strength`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Temperature, reader::Format, shop::{Shop, parse_shop}, source::Basis};
    ///
    /// let text = "[[developer]]\nname = \"deep\"\nstrength = \"12 % w/w\"\nstrength_basis = \"label\"\nin_hand_g = 420";
    /// let bottle = &Shop::new(&parse_shop(text, Format::Toml)?)?.bottles[0];
    /// let stock = bottle.stock(Temperature::REFERENCE)?;
    /// assert_eq!((stock.name.as_str(), stock.in_hand.map(|mass| mass.g())), ("deep", Some(420.0)));
    /// assert_eq!(bottle.basis(), Basis::Stated);
    /// assert!(!bottle.density_is_assumed()); // by mass already
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn stock(&self, room: Temperature) -> Result<Stock, ConversionError> {
        Ok(self.facts.stock(self.strength(room)?))
    }
}
