use super::{InvalidColour, Lab, White};
use std::str::FromStr;

/// Text that is not a measured colour.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ParseLabError {
    /// Not three numbers.
    #[error("invalid colour {0:?}: write L*, a* and b* as the instrument shows them, for example \"57.0, 4.5, 28.6\"")]
    NotThreeNumbers(String),
    /// A number out of range.
    #[error(transparent)]
    Range(#[from] InvalidColour),
}

/// Reads L\*, a\* and b\* of an instrument for D65 and 10 degrees: `57.0, 4.5, 28.6`, or with spaces alone.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Lab, White};
///
/// let measured: Lab = "57, 4.5, 28.6".parse()?;
/// assert_eq!((measured.b(), measured.white()), (28.6, White::D65TenDegree));
/// # Ok::<(), foilwork::colour::ParseLabError>(())
/// ```
impl FromStr for Lab {
    type Err = ParseLabError;

    fn from_str(text: &str) -> Result<Self, ParseLabError> {
        let wrong = || ParseLabError::NotThreeNumbers(text.to_owned());
        let words = text.split(|c: char| c == ',' || c == ';' || c.is_whitespace()).filter(|word| !word.is_empty());
        let numbers: Vec<f64> = words.map(str::parse).collect::<Result<_, _>>().map_err(|_| wrong())?;
        let [l, a, b] = numbers[..] else { return Err(wrong()) };
        Ok(Self::new(l, a, b, White::default())?)
    }
}
