use super::Technique;
use crate::{choice::choice, quantity::Share};

choice! {
    /// What to call a service when booking and pricing it.
    ServiceClass: "service class" {
        /// New growth only.
        Regrowth = "regrowth",
        /// Less than two fifths of the head.
        Partial = "partial",
        /// Up to three quarters of it.
        Half = "half" => "half head",
        /// Nearly all of it.
        Full = "full" => "full head",
    }
}

/// Less of the hair than this is partial (assumed).
pub(crate) const PARTIAL_BELOW_PERCENT: f64 = 40.0;

/// Less than this is half, and from it on full (assumed).
pub(crate) const HALF_BELOW_PERCENT: f64 = 75.0;

/// A part of the head that is worked on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Treated {
    /// How.
    pub technique: Technique,
    /// The share of all the hair that lies in the area worked on, lightened or not.
    pub area: Share,
}

/// The class of a service from the areas it works on: regrowth when nothing else is done; partial below 40 % of the hair,
/// full from 75 %, half between. The bounds are assumed, training units name the classes only.
///
/// # Example
///
/// ```
/// use foilwork::{head::{ServiceClass, Technique, Treated, service_class}, quantity::Share};
///
/// let sides = Treated { technique: Technique::Weave, area: Share::from_percent(55.0)? };
/// assert_eq!(service_class(&[sides]), ServiceClass::Half);
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn service_class(treated: &[Treated]) -> ServiceClass {
    if !treated.is_empty() && treated.iter().all(|part| part.technique == Technique::Regrowth) {
        return ServiceClass::Regrowth;
    }
    match treated.iter().map(|part| part.area.percent()).sum::<f64>() {
        area if area < PARTIAL_BELOW_PERCENT => ServiceClass::Partial,
        area if area < HALF_BELOW_PERCENT => ServiceClass::Half,
        _ => ServiceClass::Full,
    }
}
