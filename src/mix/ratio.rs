use super::{
    decimal,
    parse_error::{Cursor, ParseError},
};
use crate::quantity::{InvalidQuantity, Mass};
use rust_decimal::Decimal;
use std::{fmt, str::FromStr};

/// Parts by mass, kept as the exact decimals that were written: `1:1`, `1:1.5`, `1+2`, `3:1:6`.
///
/// Two ratios are equal when they are written with equal numbers; [`same_mix`](Self::same_mix) asks whether they weigh
/// out alike, as `1:1.5` and `2:3` do.
///
/// # Example
///
/// ```
/// use foilwork::{mix::Ratio, quantity::Mass};
///
/// let ratio: Ratio = "1:1.5".parse()?;
/// let parts = ratio.split_total(Mass::from_g(75.0)?)?;
/// assert_eq!((parts[0].g(), parts[1].g()), (30.0, 45.0));
/// assert_eq!("1:x".parse::<Ratio>().unwrap_err().to_string(),
///     r#"invalid ratio (got "1:x"): "x" at character 3, expected a number above 0 such as 1 or 1.5"#);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ratio {
    parts: Vec<Decimal>,
    separator: char,
}

/// A ratio that cannot be built or used as asked.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum RatioError {
    /// One part is no ratio.
    #[error("a ratio needs two parts or more (got {0}): write it as 1:1.5")]
    TooFewParts(usize),
    /// A part that is nothing or less.
    #[error("part {part} of the ratio is {value}: every part must be above 0 and have at most 12 digits")]
    Part {
        /// Counted from 1.
        part: usize,
        /// The part.
        value: Decimal,
    },
    /// There is no such part.
    #[error("there is no part {asked} in a ratio of {parts} (parts are counted from 0)")]
    NoSuchPart {
        /// The part asked for, counted from 0.
        asked: usize,
        /// How many there are.
        parts: usize,
    },
    /// The numbers leave the range of a decimal with 28 digits.
    #[error("the numbers are too large or too fine for 28 digits: use fewer digits")]
    OutOfRange,
    /// A share that is no mass.
    #[error(transparent)]
    Mass(#[from] InvalidQuantity),
}

impl Ratio {
    /// A ratio from its parts.
    ///
    /// # Errors
    ///
    /// [`RatioError::TooFewParts`] below two parts, [`RatioError::Part`] for a part that is not above 0 or has more
    /// than 12 digits.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Ratio;
    ///
    /// assert_eq!(Ratio::new(vec![1.into(), 2.into()])?.to_string(), "1:2");
    /// assert!(Ratio::new(vec![1.into()]).is_err());
    /// # Ok::<(), foilwork::mix::RatioError>(())
    /// ```
    pub fn new(parts: Vec<Decimal>) -> Result<Self, RatioError> {
        if parts.len() < 2 {
            return Err(RatioError::TooFewParts(parts.len()));
        }
        let fits = |p: &Decimal| *p > Decimal::ZERO && p.scale() <= 12 && p.mantissa() < 1_000_000_000_000;
        match parts.iter().position(|p| !fits(p)) {
            Some(at) => Err(RatioError::Part { part: at + 1, value: parts.get(at).copied().unwrap_or_default() }),
            None => Ok(Self { parts, separator: ':' }),
        }
    }

    /// The parts as written.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Ratio;
    ///
    /// let ratio: Ratio = "1:1.5".parse()?;
    /// assert_eq!(ratio.parts(), [1.into(), "1.5".parse()?]);
    /// assert_eq!(ratio.sum(), "2.5".parse()?);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn parts(&self) -> &[Decimal] {
        &self.parts
    }

    /// The sum of the parts.
    #[must_use]
    pub fn sum(&self) -> Decimal {
        self.parts.iter().sum()
    }

    /// Whether both weigh out alike.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Ratio;
    ///
    /// assert!("1:1.5".parse::<Ratio>()?.same_mix(&"2:3".parse()?));
    /// # Ok::<(), foilwork::mix::ParseError>(())
    /// ```
    #[must_use]
    pub fn same_mix(&self, other: &Self) -> bool {
        // Twelve digits each, so the cross products stay within 28.
        let pair = |(a, b): (&Decimal, &Decimal)| {
            let (Some(a0), Some(b0)) = (self.parts.first(), other.parts.first()) else { return false };
            a.checked_mul(*b0) == b.checked_mul(*a0)
        };
        self.parts.len() == other.parts.len() && self.parts.iter().zip(&other.parts).all(pair)
    }

    /// The same ratio in the smallest whole numbers: `1:1.5` is 2:3.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Ratio;
    ///
    /// assert_eq!("1:1.5".parse::<Ratio>()?.lowest_terms(), [2, 3]);
    /// # Ok::<(), foilwork::mix::ParseError>(())
    /// ```
    #[must_use]
    pub fn lowest_terms(&self) -> Vec<u128> {
        let scale = self.parts.iter().map(Decimal::scale).max().unwrap_or(0);
        let whole: Vec<u128> =
            self.parts.iter().map(|p| p.mantissa().unsigned_abs() * 10_u128.pow(scale - p.scale())).collect();
        let divisor = whole.iter().copied().fold(0, gcd).max(1);
        whole.iter().map(|w| w / divisor).collect()
    }

    /// Shares of `total`, exact wherever 28 digits are enough; they add up to the total.
    ///
    /// # Errors
    ///
    /// [`RatioError::OutOfRange`] when the products do not fit 28 digits.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Ratio;
    ///
    /// let shares = "1:1.5".parse::<Ratio>()?.split_decimal(75.into())?;
    /// assert_eq!(shares, [30.into(), 45.into()]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn split_decimal(&self, total: Decimal) -> Result<Vec<Decimal>, RatioError> {
        self.scaled(total, self.sum())
    }

    /// All parts when part `known` (counted from 0) is `amount`.
    ///
    /// # Errors
    ///
    /// [`RatioError::NoSuchPart`], or [`RatioError::OutOfRange`] when the products do not fit 28 digits.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Ratio;
    ///
    /// let parts = "1:1.5".parse::<Ratio>()?.given_part_decimal(0, 40.into())?;
    /// assert_eq!(parts, [40.into(), 60.into()]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn given_part_decimal(&self, known: usize, amount: Decimal) -> Result<Vec<Decimal>, RatioError> {
        let part = self.parts.get(known).ok_or(RatioError::NoSuchPart { asked: known, parts: self.parts.len() })?;
        self.scaled(amount, *part)
    }

    /// Splits a total mass by this ratio. Nothing is rounded to a scale: see [`weigh`](crate::scale::weigh).
    ///
    /// # Errors
    ///
    /// [`RatioError::OutOfRange`] when the products do not fit 28 digits.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::Ratio, quantity::Mass};
    ///
    /// let parts = "1:2".parse::<Ratio>()?.split_total(Mass::from_g(90.0)?)?;
    /// assert_eq!((parts[0].g(), parts[1].g()), (30.0, 60.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn split_total(&self, total: Mass) -> Result<Vec<Mass>, RatioError> {
        masses(&self.split_decimal(exact(total)?)?)
    }

    /// All masses when part `known` (counted from 0) weighs `mass`.
    ///
    /// # Errors
    ///
    /// [`RatioError::NoSuchPart`], or [`RatioError::OutOfRange`] when the products do not fit 28 digits.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::Ratio, quantity::Mass};
    ///
    /// // 25 g of powder at 1:2 takes 50 g of developer.
    /// let parts = "1:2".parse::<Ratio>()?.given_part(0, Mass::from_g(25.0)?)?;
    /// assert_eq!(parts[1].g(), 50.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn given_part(&self, known: usize, mass: Mass) -> Result<Vec<Mass>, RatioError> {
        masses(&self.given_part_decimal(known, exact(mass)?)?)
    }

    fn scaled(&self, amount: Decimal, over: Decimal) -> Result<Vec<Decimal>, RatioError> {
        let share = |p: &Decimal| amount.checked_mul(*p)?.checked_div(over);
        self.parts.iter().map(|p| share(p).ok_or(RatioError::OutOfRange)).collect()
    }
}

fn gcd(a: u128, b: u128) -> u128 {
    if b == 0 { a } else { gcd(b, a % b) }
}

fn exact(mass: Mass) -> Result<Decimal, RatioError> {
    decimal::from_f64(mass.g()).ok_or(RatioError::OutOfRange)
}

fn masses(parts: &[Decimal]) -> Result<Vec<Mass>, RatioError> {
    parts.iter().map(|p| Ok(Mass::from_g(decimal::to_f64(*p))?)).collect()
}

impl FromStr for Ratio {
    type Err = ParseError;

    /// Reads parts separated by `:` or by `+`, with or without blanks around the sign.
    fn from_str(text: &str) -> Result<Self, ParseError> {
        let mut cursor = Cursor::new("ratio", text);
        let mut parts = Vec::new();
        let mut separator = None;
        loop {
            cursor.blanks();
            parts.push(decimal::read(&mut cursor)?);
            cursor.blanks();
            match cursor.peek() {
                None => break,
                Some(sign @ (':' | '+')) if separator.is_none_or(|s| s == sign) => {
                    separator = Some(sign);
                    cursor.bump();
                }
                Some(':' | '+') => return Err(cursor.expected("the same sign between all parts")),
                Some(_) => return Err(cursor.expected("\":\" or \"+\" between the parts")),
            }
        }
        match separator {
            Some(separator) => Ok(Self { parts, separator }),
            None => Err(cursor.expected("a second part, as in 1:1.5")),
        }
    }
}

impl fmt::Display for Ratio {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, part) in self.parts.iter().enumerate() {
            if at > 0 {
                write!(f, "{}", self.separator)?;
            }
            write!(f, "{part}")?;
        }
        Ok(())
    }
}
