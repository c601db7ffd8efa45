//! What makes a mixture on a hair faster or slower than the reference: each lever is a stated factor with its basis.

use super::Cover;
use crate::{
    choice::choice,
    hair::{Diameter, Texture},
    quantity::{MassFraction, Quantity, Temperature},
    source::{Basis, Citation, Interval, citations::lift as cited},
};

choice! {
    /// What oxidises beside the developer's peroxide.
    Booster: "booster" {
        /// Powder with persulfate, the usual lightener.
        Persulfate = "persulfate",
        /// Lightener without persulfate, or with little.
        Mild = "mild",
        /// High-lift or permanent colour: alkali only.
        None = "none",
    }
}

choice! {
    /// How readily the hair takes up liquid.
    Uptake: "uptake" {
        /// Closed cuticle: water beads.
        Low = "low",
        /// Neither.
        Normal = "normal",
        /// Open cuticle, lightened or damaged.
        High = "high",
    }
}

/// A mixture and the hair it lies on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Situation {
    /// Strength of the peroxide on the hair, after mixing.
    pub on_hair: Interval<MassFraction>,
    /// Temperature of the mixture on the hair; the room's, or more near the scalp.
    pub temperature: Temperature,
    /// What oxidises beside the peroxide.
    pub booster: Booster,
    /// pH of the mixed bowl, where its product states it or it was measured.
    pub ph: Option<Ph>,
    /// How readily the hair takes up liquid.
    pub uptake: Uptake,
    /// How thick the fibre is.
    pub texture: Texture,
    /// What lies over the mixture.
    pub cover: Cover,
}

/// Acidity of a mixed bowl, from 0 to 14.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, serde::Serialize, schemars::JsonSchema)]
#[serde(transparent)]
#[schemars(inline, extend("minimum" = 0.0, "maximum" = 14.0))]
pub struct Ph(f64);

/// A number that is no pH.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("invalid pH (got {0}): must be from 0 to 14")]
pub struct InvalidPh(f64);

impl Ph {
    /// Takes a pH from 0 to 14.
    ///
    /// # Errors
    ///
    /// [`InvalidPh`] outside that range.
    pub fn new(value: f64) -> Result<Self, InvalidPh> {
        if (0.0..=14.0).contains(&value) { Ok(Self(value)) } else { Err(InvalidPh(value)) }
    }

    /// The number.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }

    /// Share of the peroxide that is perhydroxyl, the form that bleaches: `1 / (1 + 10^(pKa - pH))`.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::lift::Ph;
    ///
    /// let alkaline = Ph::new(11.6)?; // at the pKa, half of it is
    /// assert_eq!((alkaline.value(), alkaline.perhydroxyl_share()), (11.6, 0.5));
    /// assert!(Ph::new(15.0).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Source
    ///
    /// pKa 11.6 of hydrogen peroxide, citation `perhydroxyl-pka`.
    #[must_use]
    pub fn perhydroxyl_share(self) -> f64 {
        1.0 / (1.0 + 10f64.powf(11.6 - self.0))
    }
}

/// One lever: by what it multiplies a rate, and what that rests on.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize, schemars::JsonSchema)]
pub struct Factor {
    /// The lever, in words.
    pub lever: &'static str,
    /// The multiplier: median and 80 % interval.
    pub times: Interval<f64>,
    /// What it rests on.
    pub basis: Basis,
    /// Where it is printed, when it is.
    pub citation: Option<&'static Citation>,
}

/// The strength on the hair at which the rates of [`Belief`](super::Belief) hold: one part of powder and two of a 6 %
/// developer, as in the published series.
pub(super) const REFERENCE_WW_PERCENT: f64 = 4.0;
/// The temperature at which they hold. Assumed of that series, which was done without heat.
const REFERENCE_C: f64 = 25.0;
/// The pH at which they hold: that of a usual powder mixture, from memory.
const REFERENCE_PH: f64 = 10.0;
/// Middle of the loss of the oxidant, from the same series; a bath without persulfate loses 0.0015 to 0.0044 per minute
/// (citation `peroxide-in-bath`), a thin layer of lightener far more.
pub(super) const OXIDANT_PER_MIN: f64 = 0.030;
/// Gas constant in kJ/(mol K): CODATA.
const GAS: f64 = 8.314_462_618e-3;

impl Situation {
    /// A usual powder lightener on medium, normal hair at 25 C, covered so that it stays moist.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{lift::Situation, quantity::{MassFraction, Temperature}, source::Interval};
    ///
    /// let usual = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
    /// let warm = Situation { temperature: Temperature::from_celsius(35.0)?, ..usual };
    /// let at = |of: &Situation, lever: usize| of.on_pigment()[lever].times.best();
    /// assert!((0..usual.on_pigment().len()).any(|lever| at(&warm, lever) > at(&usual, lever)));
    /// assert!(!usual.on_oxidant().is_empty());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn usual(on_hair: Interval<MassFraction>) -> Self {
        Self {
            on_hair,
            temperature: Quantity::nearest(REFERENCE_C),
            booster: Booster::Persulfate,
            ph: None,
            uptake: Uptake::Normal,
            texture: Texture::default(),
            cover: Cover::Foil,
        }
    }

    /// The levers on the rate of pigment loss.
    #[must_use]
    pub fn on_pigment(&self) -> Vec<Factor> {
        self.gains().into_iter().flatten().collect()
    }

    /// The levers on the loss of the oxidant.
    #[must_use]
    pub fn on_oxidant(&self) -> Vec<Factor> {
        self.losses().to_vec()
    }

    fn losses(&self) -> [Factor; ON_OXIDANT] {
        let to_persulfate = Factor {
            lever: "loss of oxidant to persulfate",
            times: self.booster.loss(),
            basis: Basis::Assumed,
            citation: Some(&cited::PERHYDROXYL_PERSULFATE),
        };
        [to_persulfate, self.drying()]
    }

    fn gains(&self) -> [Option<Factor>; ON_PIGMENT] {
        let always = [self.strength(), self.heat(), self.boost(), self.fibre(), self.opening()].map(Some);
        let [strength, heat, boost, fibre, opening] = always;
        [strength, heat, boost, fibre, opening, self.alkali()]
    }

    /// Two losses add up, so the factor is their sum over the one without drying, which is slower without persulfate.
    fn drying(&self) -> Factor {
        let used_up = OXIDANT_PER_MIN * self.booster.loss().best();
        Factor {
            lever: "drying in open air",
            times: self.cover.dried_per_min().map(|dried| 1.0 + dried / used_up),
            basis: Basis::Assumed,
            citation: Some(&cited::DRYING_IN_OPEN_AIR),
        }
    }

    /// Between the square root and proportional: the order in total peroxide is 0.5 to 1.
    fn strength(&self) -> Factor {
        let power = |strength: MassFraction, order: f64| (strength.ww_percent() / REFERENCE_WW_PERCENT).powf(order);
        let (low, best, high) = (self.on_hair.low(), self.on_hair.best(), self.on_hair.high());
        let times = Interval::ordered(power(low, 0.75), power(best, 0.75), power(high, 0.75))
            .widened_to(Interval::ordered(power(best, 0.5), power(best, 0.75), power(best, 1.0)));
        Factor {
            lever: "strength on the hair",
            times,
            basis: Basis::Assumed,
            citation: Some(&cited::PERHYDROXYL_ORDER),
        }
    }

    /// Arrhenius; the activation energy shrinks where the cuticle is open, because transport no longer waits for heat.
    fn heat(&self) -> Factor {
        let (low, best, high) = match self.uptake {
            Uptake::High => (0.0, 25.0, 50.0),
            _ => (30.0, 50.0, 75.0),
        };
        let inverse = 1.0 / (REFERENCE_C + 273.15) - 1.0 / self.temperature.kelvin().max(1.0);
        let times = |kj_per_mol: f64| (kj_per_mol / GAS * inverse).clamp(-20.0, 20.0).exp();
        Factor {
            lever: "temperature",
            times: Interval::ordered(times(low), times(best), times(high)),
            basis: Basis::Assumed,
            citation: Some(&cited::BLEACHING_ACTIVATION),
        }
    }

    fn boost(&self) -> Factor {
        let (low, best, high) = match self.booster {
            Booster::Persulfate => (1.0, 1.0, 1.0),
            Booster::Mild => (0.3, 0.55, 1.0),
            Booster::None => (0.1, 0.22, 0.5),
        };
        Factor { lever: "booster", times: Interval::ordered(low, best, high), basis: Basis::Assumed, citation: None }
    }

    /// If transport into the fibre sets the pace, time grows with the square of the radius; if chemistry does, not at all.
    fn fibre(&self) -> Factor {
        let across = |texture: Texture| Diameter::um(texture.diameter().value.best());
        let times = |order: f64| (across(Texture::Medium) / across(self.texture)).powf(order);
        Factor {
            lever: "thickness of the fibre",
            times: Interval::ordered(times(0.0), times(1.0), times(2.0)),
            basis: Basis::Derived,
            citation: Some(&cited::PROBE_DIFFUSION),
        }
    }

    fn opening(&self) -> Factor {
        let (low, best, high) = match self.uptake {
            Uptake::Low => (0.5, 0.75, 1.0),
            Uptake::Normal => (1.0, 1.0, 1.0),
            Uptake::High => (1.0, 1.6, 2.7),
        };
        let times = Interval::ordered(low, best, high);
        Factor { lever: "porosity", times, basis: Basis::Assumed, citation: Some(&cited::DIFFUSION_AFTER_BLEACHING) }
    }

    /// Only where the pH is stated: it is never invented.
    fn alkali(&self) -> Option<Factor> {
        let ratio = self.ph?.perhydroxyl_share() / Ph(REFERENCE_PH).perhydroxyl_share();
        Some(Factor {
            lever: "pH",
            times: Interval::ordered(ratio.powf(0.5), ratio.powf(0.75), ratio),
            basis: Basis::Assumed,
            citation: Some(&cited::PERHYDROXYL_PKA),
        })
    }
}

/// Where the factors of a situation put the logarithms of the two rates, and how far they may be off.
///
/// The spreads carry a sign: the same unknown (an order, an activation energy) pushes two situations the same way, so
/// what a strand test in one situation has seen is taken out of the forecast for another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Shift {
    pub(super) pigment: f64,
    pub(super) oxidant: f64,
    pub(super) spreads: Spreads,
}

/// Levers on the rate of pigment loss, and on the loss of the oxidant.
const ON_PIGMENT: usize = 6;
pub(super) const ON_OXIDANT: usize = 2;
pub(super) const LEVERS: usize = ON_PIGMENT + ON_OXIDANT;

/// One signed standard deviation for each lever on the oxidant, then one for each on the pigment.
pub(super) type Spreads = [f64; LEVERS];

impl Situation {
    pub(super) fn shift(&self) -> Shift {
        let mut shift = Shift { pigment: 0.0, oxidant: 0.0, spreads: [0.0; LEVERS] };
        let (on_oxidant, on_pigment) = shift.spreads.split_at_mut(ON_OXIDANT);
        for (cell, factor) in on_oxidant.iter_mut().zip(self.losses()) {
            let (log, sd) = log_of(factor.times);
            shift.oxidant += log;
            *cell = sd;
        }
        for (cell, factor) in on_pigment.iter_mut().zip(self.gains()) {
            let Some(factor) = factor else { continue };
            let (log, sd) = log_of(factor.times);
            shift.pigment += log;
            *cell = sd;
        }
        shift
    }
}

impl Booster {
    /// By what the oxidant's loss differs: perhydroxyl and persulfate destroy each other one to one, so without persulfate
    /// less is lost.
    pub(super) fn loss(self) -> Interval<f64> {
        let (low, best, high) = match self {
            Self::Persulfate => (1.0, 1.0, 1.0),
            Self::Mild => (0.3, 0.6, 1.0),
            Self::None => (0.1, 0.3, 0.8),
        };
        Interval::ordered(low, best, high)
    }
}

/// The logarithm of a multiplier and its standard deviation; positive when the multiplier grows with its unknown.
fn log_of(times: Interval<f64>) -> (f64, f64) {
    let [low, best, high] = times.map(|times| times.max(1e-300).ln()).to_array();
    let sd = (high - low) / (2.0 * super::normal::Z80);
    (best, if best < 0.0 { -sd } else { sd })
}
