use super::InvalidQuantity;

/// What all checked quantities have in common, for code that works on any of them: bounds, unit, plain number.
///
/// Ordinary code uses the constructors and getters that are named after the unit.
pub trait Quantity: Copy + PartialOrd + std::fmt::Display {
    /// What it is, for example `mass`.
    const WHAT: &'static str;
    /// The unit it is stored, printed and read in.
    const UNIT: &'static str;
    /// How that unit ends the name of a field of plain data, for example `g` in `total_g`.
    const KEY: &'static str;
    /// The smallest allowed value.
    const MIN: Self;
    /// The largest allowed value.
    const MAX: Self;

    /// Takes a number in [`UNIT`](Self::UNIT).
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] outside [`MIN`](Self::MIN) to [`MAX`](Self::MAX).
    fn from_unit(value: f64) -> Result<Self, InvalidQuantity>;

    /// The number in [`UNIT`](Self::UNIT).
    fn in_unit(self) -> f64;

    /// The nearest allowed value: for the last bits that a sum or product may leave its range by, and for bounds of an
    /// estimate that reach beyond what can be. A value that is no number becomes the smallest.
    #[must_use]
    fn nearest(value: f64) -> Self {
        let inside = value.max(Self::MIN.in_unit()).min(Self::MAX.in_unit());
        Self::from_unit(inside).unwrap_or(Self::MIN)
    }
}
