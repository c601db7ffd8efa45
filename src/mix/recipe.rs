use super::{
    ConvertAmountError, Ratio, RatioError, RecipeAmount, Unit, decimal,
    parse_error::{Cursor, ParseError},
};
use crate::quantity::{Density, Mass};
use crate::source::Sourced;
use crate::text::is_shown;
use rust_decimal::Decimal;
use std::{fmt, str::FromStr};

/// One line of a recipe: how much of what.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// How much.
    pub amount: RecipeAmount,
    /// What, by the user's own name for it.
    pub product: String,
}

impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match f.precision() {
            Some(digits) => write!(f, "{:.digits$} {}", self.amount, self.product),
            None => write!(f, "{} {}", self.amount, self.product),
        }
    }
}

/// A written recipe, kept in exact decimals: `30 g J7-mist + 15 g J8-oat + 67.5 g 6%`.
///
/// Each part is a number, a unit (`g`, `mL`, `US fl oz`, `UK fl oz`) and a name; parts are joined by ` + ` with a blank
/// on both sides. What was read prints back the same. `{:.1}` prints every amount with one decimal.
///
/// # Example
///
/// ```
/// use foilwork::mix::Recipe;
///
/// let recipe: Recipe = "30 g J7-mist + 15 g J8-oat + 67.5 g 6%".parse()?;
/// assert_eq!(recipe.to_string(), "30 g J7-mist + 15 g J8-oat + 67.5 g 6%");
/// assert_eq!(recipe.ratio()?.to_string(), "30:15:67.5");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recipe {
    pub(super) parts: Vec<Part>,
}

/// A recipe that cannot be built, scaled or combined as asked.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum RecipeError {
    /// Nothing in it.
    #[error("a recipe needs at least one part, for example 30 g J7-mist")]
    Empty,
    /// An amount that is nothing or less.
    #[error("the amount of {product} is {amount}: must be above 0")]
    Amount {
        /// The product.
        product: String,
        /// The amount.
        amount: RecipeAmount,
    },
    /// A name that would not read back.
    #[error(
        "invalid product name (got \"{0}\"): must not be empty, and must hold no \"+\", no line break and nothing that acts \
         on a terminal"
    )]
    Name(String),
    /// No such part.
    #[error("there is no \"{asked}\" in the recipe {recipe}")]
    NoSuchPart {
        /// The name asked for.
        asked: String,
        /// The recipe.
        recipe: Box<Recipe>,
    },
    /// Amounts in different units have no common total.
    #[error("the recipe mixes {one} and {other}: convert all parts to one unit first (a density is needed)")]
    MixedUnits {
        /// One unit.
        one: Unit,
        /// Another unit.
        other: Unit,
    },
    /// Nothing to scale to.
    #[error("cannot scale by or to {0}: must be above 0")]
    Factor(Decimal),
    /// The numbers leave the range of a decimal.
    #[error("the numbers are too large or too fine for 28 digits: use fewer digits")]
    OutOfRange,
    /// A part that cannot be converted.
    #[error("{product}: {source}")]
    Conversion {
        /// The product.
        product: String,
        /// Why not.
        source: ConvertAmountError,
    },
    /// A ratio that cannot be formed from the amounts.
    #[error(transparent)]
    Ratio(#[from] RatioError),
}

impl Recipe {
    /// A recipe from its parts.
    ///
    /// # Errors
    ///
    /// [`RecipeError::Empty`], [`RecipeError::Amount`] or [`RecipeError::Name`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::{Part, Recipe, RecipeAmount, Unit};
    ///
    /// let part = Part { amount: RecipeAmount { value: 30.into(), unit: Unit::Gram }, product: "J7-mist".into() };
    /// assert_eq!(Recipe::new(vec![part])?.to_string(), "30 g J7-mist");
    /// # Ok::<(), foilwork::mix::RecipeError>(())
    /// ```
    pub fn new(parts: Vec<Part>) -> Result<Self, RecipeError> {
        if parts.is_empty() {
            return Err(RecipeError::Empty);
        }
        for part in &parts {
            if part.amount.value <= Decimal::ZERO {
                return Err(RecipeError::Amount { product: part.product.clone(), amount: part.amount });
            }
            let trimmed = part.product.trim();
            if trimmed.is_empty() || trimmed != part.product || !part.product.chars().all(is_of_a_name) {
                return Err(RecipeError::Name(part.product.clone()));
            }
        }
        Ok(Self { parts })
    }

    /// The parts in the order written.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::{Recipe, Unit};
    ///
    /// let recipe: Recipe = "30 g J7-mist + 45 g 6%".parse()?;
    /// assert_eq!(recipe.parts()[1].product, "6%");
    /// assert_eq!(recipe.unit()?, Unit::Gram);
    /// assert!("30 g J7-mist + 2 US fl oz 6%".parse::<Recipe>()?.unit().is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn parts(&self) -> &[Part] {
        &self.parts
    }

    /// The one unit of all parts.
    ///
    /// # Errors
    ///
    /// [`RecipeError::MixedUnits`] when there is more than one.
    pub fn unit(&self) -> Result<Unit, RecipeError> {
        let one = self.parts.first().ok_or(RecipeError::Empty)?.amount.unit;
        match self.parts.iter().find(|p| p.amount.unit != one) {
            Some(part) => Err(RecipeError::MixedUnits { one, other: part.amount.unit }),
            None => Ok(one),
        }
    }

    /// The sum of all parts.
    ///
    /// # Errors
    ///
    /// [`RecipeError::MixedUnits`] when the parts are not in one unit, [`RecipeError::OutOfRange`] beyond 28 digits.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Recipe;
    ///
    /// assert_eq!("30 g J7-mist + 45 g 6%".parse::<Recipe>()?.total()?.to_string(), "75 g");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn total(&self) -> Result<RecipeAmount, RecipeError> {
        let unit = self.unit()?;
        let sum = self.parts.iter().try_fold(Decimal::ZERO, |sum, part| sum.checked_add(part.amount.value));
        Ok(RecipeAmount { value: sum.ok_or(RecipeError::OutOfRange)?, unit })
    }

    /// The parts as a ratio.
    ///
    /// # Errors
    ///
    /// [`RecipeError::MixedUnits`] when the parts are not in one unit, [`RecipeError::Ratio`] for a single part or one
    /// with more than 12 digits.
    pub fn ratio(&self) -> Result<Ratio, RecipeError> {
        self.unit()?;
        Ok(Ratio::new(self.parts.iter().map(|p| p.amount.value.normalize()).collect())?)
    }

    /// The masses of the parts.
    ///
    /// # Errors
    ///
    /// [`RecipeError::Conversion`] when a part is a volume; see [`in_grams`](Self::in_grams).
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Recipe;
    ///
    /// assert_eq!("30 g J7-mist + 45 g 6%".parse::<Recipe>()?.masses()?[1].g(), 45.0);
    /// assert!("2 US fl oz 6%".parse::<Recipe>()?.masses().is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn masses(&self) -> Result<Vec<Mass>, RecipeError> {
        let mass = |part: &Part| part.amount.mass(None).map_err(|e| part.cannot(e));
        self.parts.iter().map(mass).collect()
    }

    /// The recipe with every volume turned into grams by the density of its product.
    ///
    /// # Errors
    ///
    /// [`RecipeError::Conversion`] when the density of a volume is not known.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::Recipe, quantity::Density, source::Sourced};
    ///
    /// let density = Density::from_g_per_ml(1.02).map(Sourced::stated)?;
    /// let recipe = "50 mL 6%".parse::<Recipe>()?.in_grams(|_| Some(density))?;
    /// assert_eq!(recipe.to_string(), "51 g 6%");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn in_grams(&self, density: impl Fn(&str) -> Option<Sourced<Density>>) -> Result<Self, RecipeError> {
        let weigh = |part: &Part| {
            let converted = part.amount.convert(Unit::Gram, density(&part.product)).map_err(|e| part.cannot(e))?;
            Ok(Part { amount: converted.amount, product: part.product.clone() })
        };
        Ok(Self { parts: self.parts.iter().map(weigh).collect::<Result<_, RecipeError>>()? })
    }
}

impl Part {
    fn cannot(&self, source: ConvertAmountError) -> RecipeError {
        RecipeError::Conversion { product: self.product.clone(), source }
    }
}

impl FromStr for RecipeAmount {
    type Err = ParseError;

    /// Reads a number and a unit, as in a recipe: `60 g`.
    fn from_str(text: &str) -> Result<Self, ParseError> {
        let mut cursor = Cursor::new("amount", text);
        cursor.blanks();
        let value = decimal::read(&mut cursor)?;
        cursor.blanks();
        let unit = unit(&mut cursor)?;
        cursor.blanks();
        match cursor.peek() {
            None => Ok(Self { value, unit }),
            Some(_) => Err(cursor.expected("the end of the amount")),
        }
    }
}

impl FromStr for Recipe {
    type Err = ParseError;

    fn from_str(text: &str) -> Result<Self, ParseError> {
        let mut cursor = Cursor::new("recipe", text);
        let mut parts = Vec::new();
        loop {
            cursor.blanks();
            let value = decimal::read(&mut cursor)?;
            cursor.blanks();
            let unit = unit(&mut cursor)?;
            if !cursor.blanks() {
                return Err(cursor.expected("a blank and a product name after the unit"));
            }
            let start = cursor.mark();
            let written = cursor.take_while(is_of_a_name);
            let product = written.trim_end();
            if product.is_empty() {
                return Err(cursor.expected_at(start, "a product name"));
            }
            parts.push(Part { amount: RecipeAmount { value, unit }, product: product.to_owned() });
            match cursor.peek() {
                None => return Ok(Self { parts }),
                Some('+') if product.len() < written.len() => {
                    let sign = cursor.mark();
                    cursor.bump();
                    if cursor.peek().is_some() && !cursor.blanks() {
                        return Err(cursor.expected_at(sign, JOINT));
                    }
                }
                Some('+') => return Err(cursor.expected(JOINT)),
                Some(_) => {
                    return Err(cursor.expected("a recipe on one line, with no character that acts on a terminal"));
                }
            }
        }
    }
}

/// What a product's name may hold, so that it reads back and acts on nothing.
fn is_of_a_name(character: char) -> bool {
    character != '+' && is_shown(character)
}

const JOINT: &str = "\" + \" between parts, with a blank on both sides";

fn unit(cursor: &mut Cursor<'_>) -> Result<Unit, ParseError> {
    // Longer symbols first would matter only if one began another; none does.
    let rest = cursor.rest();
    let written = |symbol: &str| {
        let ahead = rest.get(..symbol.len()).is_some_and(|head| head.eq_ignore_ascii_case(symbol));
        ahead && !rest.get(symbol.len()..).is_some_and(|tail| tail.starts_with(char::is_alphanumeric))
    };
    match Unit::ALL.iter().copied().find(|unit| written(unit.words())) {
        Some(unit) => {
            unit.words().chars().for_each(|_| cursor.bump());
            Ok(unit)
        }
        None if written("fl oz") || written("oz") => {
            Err(cursor.expected("US fl oz or UK fl oz (they differ by 4 %), g or mL"))
        }
        None => Err(cursor.expected("a unit: g, mL, US fl oz or UK fl oz")),
    }
}

impl fmt::Display for Recipe {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, part) in self.parts.iter().enumerate() {
            if at > 0 {
                f.write_str(" + ")?;
            }
            part.fmt(f)?;
        }
        Ok(())
    }
}
