use std::{fmt, str::FromStr};

/// A CAS registry number whose check digit has been verified.
///
/// # Example
///
/// ```
/// use foilwork::mix::Cas;
///
/// assert_eq!("7722-84-1".parse::<Cas>()?, Cas::HYDROGEN_PEROXIDE);
/// assert!("7722-48-1".parse::<Cas>().is_err()); // two digits swapped
/// # Ok::<(), foilwork::mix::InvalidCas>(())
/// ```
///
/// # Source
///
/// [CAS, Check Digit Verification](crate::source::citations::mix::CAS_CHECK_DIGIT) of CAS Registry Numbers: digits weighted by their place, modulo 10 (from memory).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Cas(u32);

/// Text that is no CAS registry number.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum InvalidCas {
    /// Not two to seven digits, two digits and one digit.
    #[error("invalid CAS number (got \"{0}\"): must look like 7722-84-1")]
    Shape(String),
    /// The last digit does not belong to the others.
    #[error("invalid CAS number (got \"{text}\"): its check digit should be {expected} (look for a mistyped digit)")]
    CheckDigit {
        /// The text as given.
        text: String,
        /// The digit that would fit the others.
        expected: u32,
    },
}

impl Cas {
    /// Hydrogen peroxide, 7722-84-1.
    pub const HYDROGEN_PEROXIDE: Self = Self(7_722_841);
    /// Water, 7732-18-5.
    pub const WATER: Self = Self(7_732_185);
    /// Ammonia, 7664-41-7.
    pub const AMMONIA: Self = Self(7_664_417);

    /// The digits without the dashes, a dense key.
    pub(crate) const fn key(self) -> u32 {
        self.0
    }
}

impl FromStr for Cas {
    type Err = InvalidCas;

    fn from_str(text: &str) -> Result<Self, InvalidCas> {
        let shape = || InvalidCas::Shape(text.to_owned());
        let mut fields = text.split('-');
        let (Some(first), Some(second), Some(check), None) =
            (fields.next(), fields.next(), fields.next(), fields.next())
        else {
            return Err(shape());
        };
        let lengths_fit = (2..=7).contains(&first.len()) && second.len() == 2 && check.len() == 1;
        let digits = || first.bytes().chain(second.bytes());
        if !lengths_fit || !digits().chain(check.bytes()).all(|b| b.is_ascii_digit()) || first.starts_with('0') {
            return Err(shape());
        }
        // Each digit times its distance from the check digit, summed, modulo ten.
        let count = first.len() + second.len();
        let sum: usize = digits().enumerate().map(|(at, b)| usize::from(b - b'0') * (count - at)).sum();
        let (expected, body) = (sum % 10, digits().fold(0, |n: u32, b| n * 10 + u32::from(b - b'0')));
        if check == expected.to_string() {
            Ok(Self(body * 10 + expected as u32))
        } else {
            Err(InvalidCas::CheckDigit { text: text.to_owned(), expected: expected as u32 })
        }
    }
}

impl fmt::Display for Cas {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{:02}-{}", self.0 / 1000, self.0 / 10 % 100, self.0 % 10)
    }
}

impl serde::Serialize for Cas {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}
