use crate::{choice::choice, source::Interval};

choice! {
    /// What lies over the mixture, which says whether it dries.
    Cover: "cover" {
        /// Foil, film or a cap: it stays moist.
        Foil = "foil" => "foil or film",
        /// Nothing: it dries from the outside in.
        OpenAir = "open-air" => "open air",
    }
}

impl Cover {
    /// Loss of action to drying, per minute.
    ///
    /// In open air none at all for a thick layer on the scalp, half of the water in 70 min as a middle, in 22 min for a thin one
    /// painted on the surface: what a layer holds, over what a still room takes up (citation `drying-in-open-air`). That the
    /// action goes as the water does is assumed.
    pub(super) fn dried_per_min(self) -> Interval<f64> {
        match self {
            Self::Foil => Interval::exact(0.0),
            Self::OpenAir => Interval::ordered(0.0, 0.010, 0.032),
        }
    }
}
