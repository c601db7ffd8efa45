//! What porous hair asks of a toner that is meant for other hair: less time, or less dye, or a filler first.

use super::{
    ToningPorosity,
    exposed::{MOST_UPTAKE, POROUS_UPTAKE},
};
use crate::{
    quantity::{Mass, Quantity, Share},
    source::{Basis, Interval, Sourced, citations::colour::DYE_DIFFUSION},
};
use schemars::JsonSchema;
use serde::Serialize;

/// A toner for porous hair, beside one for hair that is not: either its time or its dye is less, never both.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct PorousToning {
    /// Of the usual time, at the usual strength.
    #[serde(rename = "time_percent")]
    pub time: Interval<Share>,
    /// Of the shades, at the usual time; the rest of the bowl is clear.
    #[serde(rename = "dyed_percent")]
    pub dyed: Interval<Share>,
    /// Clear shade of the same kind in this bowl, in place of so much of the shades.
    #[serde(rename = "clear_g")]
    pub clear: Interval<Mass>,
    /// What the bounds rest on: assumed, between none of it and the fastest diffusion of dye that was published.
    pub basis: Basis,
}

impl ToningPorosity {
    /// Of a mix that is meant for unremarkable hair, how much stays shade at the usual time, so that as much is taken up; the rest is
    /// clear. Uptake goes with the strength of the dye.
    ///
    /// It is a range to test strands in, not a promise: nobody published how much a porous head takes up.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::toner::ToningPorosity;
    ///
    /// let dyed = ToningPorosity::Porous.dilution().value;
    /// // Two thirds, from between a quarter and a third up to all of it.
    /// assert!((dyed.best().fraction() - 2.0 / 3.0).abs() < 1e-9);
    /// assert!(dyed.low().percent() > 25.0 && dyed.low().percent() < 100.0 / 3.0 && dyed.high().percent() == 100.0);
    /// assert!(ToningPorosity::Normal.dilution().value.is_exact());
    /// ```
    ///
    /// # Source
    ///
    /// [`DYE_DIFFUSION`]: the square root of 12.6 bounds it; which porosity a head has, and the best estimate, are assumed. That a
    /// clear shade dilutes is common practice.
    #[must_use]
    pub fn dilution(self) -> Sourced<Interval<Share>> {
        let share = |uptake: f64| Share::from_fraction(1.0 / uptake).unwrap_or(Share::ALL);
        let value = match self {
            Self::Porous => Interval::ordered(share(MOST_UPTAKE), share(POROUS_UPTAKE), Share::ALL),
            Self::Normal => Interval::exact(Share::ALL),
        };
        Sourced { value, basis: Basis::Assumed, citation: Some(&DYE_DIFFUSION) }
    }
}

impl PorousToning {
    /// For a bowl of shades; none on unremarkable hair.
    pub(super) fn of(porosity: ToningPorosity, bowl: Mass) -> Option<Self> {
        let Sourced { value: dyed, basis, .. } = porosity.dilution();
        let clear = |dyed: Share| Mass::nearest(bowl.g() * (1.0 - dyed.fraction()));
        (porosity == ToningPorosity::Porous).then(|| Self {
            time: porosity.time(),
            dyed,
            clear: Interval::ordered(clear(dyed.high()), clear(dyed.best()), clear(dyed.low())),
            basis,
        })
    }
}
