/// A number that cannot be the quantity it was given for.
///
/// Every checked constructor in [`quantity`](crate::quantity) fails with this one error, so that a caller can report
/// the value, its unit and the allowed range without knowing which quantity it was.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("invalid {quantity} (got {} {unit}): must be {allowed}", written(*value))]
#[non_exhaustive]
pub struct InvalidQuantity {
    /// What the number was meant to be, for example `mass`.
    pub quantity: &'static str,
    /// The number that was given.
    pub value: f64,
    /// The unit it was given in.
    pub unit: &'static str,
    /// The allowed range in words, with its unit.
    pub allowed: &'static str,
}

/// A number as it was written, but for one of more digits than anybody reads.
fn written(value: f64) -> String {
    let size = value.abs();
    if size == 0.0 || !size.is_finite() || (1e-15..1e15).contains(&size) {
        value.to_string()
    } else {
        format!("{value:e}")
    }
}
