//! Wrappers of `foilwork::lift`: a mixture on a hair, and its levers.

use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    error::raise,
};
use foilwork::{
    lift::{self, Ph},
    quantity::{Duration, MassFraction, Temperature},
    source::Interval,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.lift";
    /// One lever on a rate: by what it multiplies the rate of the reference mixture.
    Factor {
        /// The lever, in words.
        lever: String,
        /// The multiplier: median and 80 % interval.
        times: Estimate<f64>,
        /// What it rests on: ``"published"``, ``"assumed"`` and so on.
        basis: String,
        /// The id of its citation in ``foilwork.source.register()``.
        source: Option<String>,
    }
}

impl From<lift::Factor> for Factor {
    fn from(factor: lift::Factor) -> Self {
        Self {
            lever: factor.lever.to_owned(),
            times: Estimate(factor.times.to_array()),
            basis: factor.basis.code().to_owned(),
            source: factor.citation.map(|citation| citation.id.to_owned()),
        }
    }
}

answer! {
    in "foilwork.lift";
    /// A mixture and the hair it lies on.
    ///
    /// Args:
    ///     on_hair_ww_percent: peroxide on the hair after mixing, in % w/w, or its bounds.
    ///     temperature_c: temperature of the mixture on the hair.
    ///     booster: ``"persulfate"``, ``"mild"`` or ``"none"``.
    ///     ph: pH of the mixed bowl, where its product states it; never assumed.
    ///     uptake: how readily the hair takes up liquid: ``"low"``, ``"normal"`` or ``"high"``.
    ///     texture: ``"fine"``, ``"medium"`` or ``"coarse"``.
    ///     cover: ``"foil"`` (or film: it stays moist) or ``"open-air"`` (it dries, which ends the action).
    ///
    /// Raises:
    ///     FoilworkError: a value out of range, or a word that is none of these.
    ///
    /// Examples:
    ///     >>> from foilwork.lift import Situation
    ///     >>> mix = Situation(4, temperature_c=30)
    ///     >>> [factor.lever for factor in mix.on_pigment()][:2]
    ///     ['strength on the hair', 'temperature']
    Situation {
        /// Peroxide on the hair after mixing, in % w/w.
        on_hair_ww_percent: Estimate<f64>,
        /// Temperature of the mixture on the hair, in C.
        temperature_c: f64,
        /// What oxidises beside the peroxide.
        booster: String,
        /// pH of the mixed bowl, where it is stated.
        ph: Option<f64>,
        /// How readily the hair takes up liquid.
        uptake: String,
        /// How thick the fibre is.
        texture: String,
        /// What lies over the mixture.
        cover: String,
    }
    impl {
        #[new]
        #[pyo3(signature = (on_hair_ww_percent, *, temperature_c = 25.0, booster = "persulfate", ph = None, uptake = "normal", texture = "medium", cover = "foil"))]
        fn new(
            on_hair_ww_percent: Stated<MassFraction>,
            temperature_c: f64,
            booster: &str,
            ph: Option<f64>,
            uptake: &str,
            texture: &str,
            cover: &str,
        ) -> PyResult<Self> {
            let made = Self {
                on_hair_ww_percent: on_hair_ww_percent.0.into(),
                temperature_c,
                booster: booster.to_owned(),
                ph,
                uptake: uptake.to_owned(),
                texture: texture.to_owned(),
                cover: cover.to_owned(),
            };
            made.core()?;
            Ok(made)
        }

        /// The levers on the rate of pigment loss.
        fn on_pigment(&self) -> PyResult<Vec<Factor>> {
            Ok(self.core()?.on_pigment().into_iter().map(Into::into).collect())
        }

        /// The levers on the loss of the oxidant.
        fn on_oxidant(&self) -> PyResult<Vec<Factor>> {
            Ok(self.core()?.on_oxidant().into_iter().map(Into::into).collect())
        }
    }
}

impl Situation {
    pub fn core(&self) -> PyResult<lift::Situation> {
        let [low, best, high] = self.on_hair_ww_percent.0.map(MassFraction::from_ww_percent);
        Ok(lift::Situation {
            on_hair: Interval::new(low.map_err(raise)?, best.map_err(raise)?, high.map_err(raise)?).map_err(raise)?,
            temperature: Temperature::from_celsius(self.temperature_c).map_err(raise)?,
            booster: self.booster.parse().map_err(raise)?,
            ph: self.ph.map(Ph::new).transpose().map_err(raise)?,
            uptake: self.uptake.parse().map_err(raise)?,
            texture: self.texture.parse().map_err(raise)?,
            cover: self.cover.parse().map_err(raise)?,
        })
    }
}

/// Minutes of an argument.
pub fn minutes(value: f64) -> PyResult<Duration> {
    Duration::from_min(value).map_err(raise)
}
