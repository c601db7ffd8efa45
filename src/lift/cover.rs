use super::{Booster, Factor, belief::OXIDANT_PER_MIN};
use crate::{
    choice::choice,
    source::{Basis, Interval, citations::lift as cited},
};

choice! {
    /// What lies over the mixture, which says whether it dries.
    Cover: "cover" {
        /// Foil, film or a cap: it stays moist.
        Foil = "foil" => "foil or film",
        /// Nothing: it dries from the outside in.
        OpenAir = "open-air" => "open air",
    }
}

/// Loss of action to drying in open air, per minute: not at all for a thick layer on the scalp, half of the water in 70 min
/// as a middle, in 23 min for a thin one painted on the surface.
///
/// Half of the water that a layer holds, over what a still room takes up (citation `drying-in-open-air`); that the action goes
/// as the water does is assumed.
const DRYING_PER_MIN: (f64, f64, f64) = (0.0, 0.010, 0.030);

impl Cover {
    /// By what drying multiplies the loss of the oxidant, where that is slower without persulfate.
    pub(super) fn drying(self, booster: Booster) -> Factor {
        let times = match self {
            Self::Foil => Interval::exact(1.0),
            Self::OpenAir => {
                // Two losses add up, so the factor is their sum over the one without drying.
                let used_up = OXIDANT_PER_MIN * booster.loss().best();
                let (low, best, high) = DRYING_PER_MIN;
                Interval::ordered(low, best, high).map(|dried| 1.0 + dried / used_up)
            }
        };
        Factor { lever: "drying in open air", times, basis: Basis::Assumed, citation: Some(&cited::DRYING_IN_OPEN_AIR) }
    }
}
