use super::blend::BlendError;
use crate::{
    quantity::{Mass, MassFraction, PricePerKg},
    source::Interval,
};

/// One bottle on the shelf.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::Stock, quantity::{Mass, MassFraction, PricePerKg}};
///
/// let bottle = Stock::new("9 %", MassFraction::from_ww_percent(9.0)?)
///     .with_in_hand(Mass::from_g(420.0)?)
///     .with_price(PricePerKg::from_per_kg(8.0)?);
/// assert_eq!(bottle.in_hand, Some(Mass::from_g(420.0)?));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Stock {
    /// What the user calls it; no two bottles share a name.
    pub name: String,
    /// Its strength, with the bounds that its label leaves.
    pub strength: Interval<MassFraction>,
    /// How much is in hand; `None` when there is always enough, as of tap water.
    pub in_hand: Option<Mass>,
    /// What a kilogram costs; `None` counts as free.
    pub price: Option<PricePerKg>,
}

impl Stock {
    /// A bottle with enough in it and no price.
    pub fn new(name: impl Into<String>, strength: impl Into<Interval<MassFraction>>) -> Self {
        Self { name: name.into(), strength: strength.into(), in_hand: None, price: None }
    }

    /// The same with an amount in hand.
    #[must_use]
    pub fn with_in_hand(self, mass: Mass) -> Self {
        Self { in_hand: Some(mass), ..self }
    }

    /// The same with a price.
    #[must_use]
    pub fn with_price(self, price: PricePerKg) -> Self {
        Self { price: Some(price), ..self }
    }
}

/// The bottles that a blend may draw on: at least one, each with its own name.
#[derive(Debug, Clone, PartialEq)]
pub struct Shelf(Vec<Stock>);

/// Why a shelf gives no blend.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ShelfError {
    /// No bottle.
    #[error("the shelf is empty: list at least one stock")]
    Empty,
    /// Two bottles of one name.
    #[error("two stocks are called {name:?}: give each bottle its own name, or add their amounts")]
    Duplicate {
        /// The name.
        name: String,
    },
    /// Not enough altogether.
    #[error("{wanted} are wanted and only {in_hand} are in hand: ask for less, or add a stock")]
    NotEnough {
        /// Total asked for.
        wanted: Mass,
        /// Sum of the amounts in hand.
        in_hand: Mass,
    },
    /// The right bottles, too little in them.
    #[error(
        "cannot make {total} of {target} from the amounts in hand: {total} can be anything from {weakest:.2} to \
         {strongest:.2}, and at most {most:.1} of {target} can be made"
    )]
    AmountsInHand {
        /// Strength asked for.
        target: MassFraction,
        /// Total asked for.
        total: Mass,
        /// Weakest blend of that total.
        weakest: MassFraction,
        /// Strongest blend of that total.
        strongest: MassFraction,
        /// Largest total of that strength.
        most: Mass,
    },
    /// Too many bottles for a search through all their combinations.
    #[error(
        "{got} stocks are too many to search for {objective}: at most {limit} (leave some out, or ask for least cost)"
    )]
    TooMany {
        /// How many there are.
        got: usize,
        /// How many are searched.
        limit: usize,
        /// What was searched for.
        objective: &'static str,
    },
    /// Beyond what any amount could reach, or an amount of zero asked for.
    #[error(transparent)]
    Blend(#[from] BlendError),
}

impl Shelf {
    /// The bottles at hand.
    ///
    /// # Errors
    ///
    /// [`ShelfError::Empty`] without a bottle, [`ShelfError::Duplicate`] when two share a name.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::{Shelf, Stock}, quantity::MassFraction};
    ///
    /// let bottle = Stock::new("9 %", MassFraction::from_ww_percent(9.0)?);
    /// assert_eq!(Shelf::new(vec![bottle.clone()])?.stocks(), [bottle.clone()]);
    /// assert!(Shelf::new(vec![bottle.clone(), bottle]).is_err()); // two bottles of one name
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(stocks: Vec<Stock>) -> Result<Self, ShelfError> {
        if stocks.is_empty() {
            return Err(ShelfError::Empty);
        }
        let mut names: Vec<&str> = stocks.iter().map(|stock| stock.name.trim()).collect();
        names.sort_unstable();
        let twice = names.iter().zip(names.iter().skip(1)).find(|(name, next)| name == next);
        match twice {
            Some((name, _)) => Err(ShelfError::Duplicate { name: (*name).to_owned() }),
            None => Ok(Self(stocks)),
        }
    }

    /// The bottles in the order given.
    #[must_use]
    pub fn stocks(&self) -> &[Stock] {
        &self.0
    }
}
