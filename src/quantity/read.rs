use super::{InvalidQuantity, Quantity};

/// Text that is not a number with the unit of the quantity.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ParseQuantityError {
    /// Not a number followed by the unit.
    #[error(
        "cannot read the {quantity} \"{text}\" (write a number with a point and the unit, for example \"{example} \
         {unit}\")"
    )]
    Unreadable {
        /// What the text was meant to be.
        quantity: &'static str,
        /// The text.
        text: String,
        /// A number that could stand there.
        example: f64,
        /// The unit that belongs behind it.
        unit: &'static str,
    },
    /// A number that the quantity cannot be.
    #[error(transparent)]
    Invalid(#[from] InvalidQuantity),
}

/// Reads a number and the unit of `Q`; spaces around and between them are free.
///
/// Only the characters of a decimal number are taken, so that `inf` and `NaN` are no numbers here.
pub(crate) fn read<Q: Quantity>(text: &str) -> Result<Q, ParseQuantityError> {
    let unreadable = || ParseQuantityError::Unreadable {
        quantity: Q::WHAT,
        text: text.to_owned(),
        example: Q::nearest(12.0).in_unit(),
        unit: Q::UNIT,
    };
    let number = text.trim().strip_suffix(Q::UNIT).ok_or_else(unreadable)?.trim_end();
    if !number.bytes().all(|b| b.is_ascii_digit() || b"+-.eE".contains(&b)) {
        return Err(unreadable());
    }
    let value: f64 = number.parse().map_err(|_| unreadable())?;
    Ok(Q::from_unit(value)?)
}
