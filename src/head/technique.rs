use super::Profile;
use crate::{
    choice::choice,
    quantity::{Length, Quantity, Share},
    source::{Basis, COMMON_PRACTICE, Interval, Sourced},
};

choice! {
    /// How the hair of a section is taken.
    Technique: "technique" {
        /// Fine strands picked out, in foil.
        Weave = "weave",
        /// A thin whole section, in foil.
        Slice = "slice",
        /// Shorter hair pushed to the root first, in foil.
        BackComb = "back-comb" => "back comb",
        /// A whole panel in one shade.
        Block = "block",
        /// Painted on the surface, open air.
        Freehand = "freehand",
        /// Painted, then wrapped.
        FreehandInFoil = "freehand-in-foil" => "freehand in foil",
        /// On the new growth, at the scalp.
        Regrowth = "regrowth",
    }
}

/// Length up to which the start of a technique moves to the scalp with the hair, in cm (assumed).
const SHORT: f64 = 20.0;

impl Technique {
    /// Whether the hair lies in foil.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::head::Technique;
    ///
    /// assert!(Technique::Weave.is_in_foil());
    /// ```
    #[must_use]
    pub const fn is_in_foil(self) -> bool {
        matches!(self, Self::Weave | Self::Slice | Self::BackComb | Self::FreehandInFoil)
    }

    /// How much of a strand is covered, from where on, when nothing else is stated: shares and lengths are assumed from
    /// common practice, for hair of 20 cm and longer; on shorter hair start and transition shrink with it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::Technique, quantity::Length};
    ///
    /// let length = Length::from_cm(30.0)?;
    /// let (weave, combed) = (Technique::Weave.profile(length).value, Technique::BackComb.profile(length).value);
    /// assert!(combed.start.best() > weave.start.high());
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn profile(self, length: Length) -> Sourced<Profile> {
        let (covered, start, transition) = match self {
            Self::Weave | Self::Slice => ((100.0, 100.0, 100.0), (0.2, 0.3, 0.6), (0.0, 0.2, 0.5)),
            // At least 40 % of the panel is pushed away, and not much more.
            Self::BackComb => ((50.0, 60.0, 70.0), (3.0, 5.0, 8.0), (2.0, 4.0, 6.0)),
            Self::Block => ((100.0, 100.0, 100.0), (0.3, 0.5, 1.0), (0.0, 0.2, 0.5)),
            Self::Freehand => ((30.0, 50.0, 70.0), (4.0, 6.0, 9.0), (3.0, 5.0, 8.0)),
            Self::FreehandInFoil => ((50.0, 70.0, 90.0), (3.0, 5.0, 8.0), (2.0, 4.0, 7.0)),
            Self::Regrowth => ((100.0, 100.0, 100.0), (0.0, 0.0, 0.0), (0.0, 0.0, 0.2)),
        };
        let shrunk = (length.cm() / SHORT).min(1.0);
        let span = |(low, best, high)| Interval::ordered(low, best, high).map(|cm: f64| Length::nearest(cm * shrunk));
        let (low, best, high) = covered;
        let covered = Interval::ordered(low, best, high).map(Share::nearest);
        let value = Profile { covered, start: span(start), transition: span(transition) };
        Sourced { value, basis: Basis::Assumed, citation: Some(&COMMON_PRACTICE) }
    }
}
