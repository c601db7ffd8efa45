/// One complete set of the numbers that the hair model rests on.
///
/// Published, except where the field says assumed or fitted. The model is run once for each set, so that every colour it
/// gives carries an interval. *Fitted* means: to the published tresses and to the trade's list of exposed pigment, by
/// `python/tools/fit_hair.py`, with the numbers that the comment of the set names held fixed.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Assumptions {
    /// Reflectance of the surface alone at 550 nm: what black hair still reflects (published L\* of black hair).
    pub surface: f64,
    /// Exponent of the wavelength in it: below 0 a bluish gloss, as published b\* of black hair (fitted).
    pub surface_tilt: f64,
    /// Reflectance of hair without pigment at the red end (fitted to white hair, itself estimated).
    pub keratin: f64,
    /// How much of the violet its slight yellow takes (fitted).
    pub keratin_violet: f64,
    /// Exponent of the wavelength in it (assumed).
    pub keratin_warmth: f64,
    /// Multiplies the absorption in the reflectance (fitted).
    pub gain: f64,
    /// Exponent of the absorption; 0.5 to 0.7 fitted measured tresses equally well.
    pub power: Power,
    /// Absorption of the melanin of level 1 at 550 nm (fitted).
    pub melanin_of_black: f64,
    /// Levels over which melanin halves (fitted).
    pub levels_per_halving: f64,
    /// Pheomelanin as a share of all melanin in natural hair (published, 1 to 17 %).
    pub pheomelanin: f64,
    /// Rate at which lightener removes pheomelanin, relative to eumelanin (fitted; at most 1 by published sign).
    pub resistance: f64,
    /// Absorption at 400 nm of the oxidised melanin that a unit of eumelanin leaves: fitted; that there is such a step is
    /// [`BLEACHING_STEPS`](crate::source::citations::colour::BLEACHING_STEPS).
    pub oxidised: f64,
    /// Rate at which lightener removes oxidised melanin, relative to eumelanin (fitted).
    pub survival: f64,
    /// Wavelengths over which its absorption falls to 1/e, in nm (fitted).
    pub tail_nm: f64,
    /// How far off a level read by eye may be, in levels (assumed).
    pub reading: f64,
    /// Share of a shade's full depth that a toner deposits on lightened hair (assumed).
    pub uptake: f64,
    /// Share of a shade's depth made up by its tone, the rest being neutral (assumed).
    pub tone_share: f64,
}

/// The exponents of the absorption that are used, in the form of [`TRESS_MODEL`](crate::source::citations::colour::TRESS_MODEL); roots of roots, so that none needs a logarithm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Power {
    /// 1/2.
    Half,
    /// 5/8.
    FiveEighths,
    /// 3/4.
    ThreeQuarters,
}

impl Power {
    /// The exponent.
    pub(crate) const fn exponent(self) -> f64 {
        match self {
            Self::Half => 0.5,
            Self::FiveEighths => 0.625,
            Self::ThreeQuarters => 0.75,
        }
    }
}

/// How many sets there are.
pub(crate) const SETS: usize = 16;

/// The best set first, then those that bound it.
pub(crate) const ENSEMBLE: [Assumptions; SETS] = [
    // The best estimate.
    Assumptions {
        surface: 0.0262,
        surface_tilt: -0.1765,
        keratin: 0.44148,
        keratin_violet: 0.73991,
        keratin_warmth: 0.0,
        gain: 1.6281,
        power: Power::FiveEighths,
        melanin_of_black: 12.09,
        levels_per_halving: 1.2786,
        pheomelanin: 0.05,
        resistance: 0.99928,
        oxidised: 2.2851,
        survival: 0.1,
        tail_nm: 71.572,
        reading: 0.0,
        uptake: 0.5,
        tone_share: 0.85,
    },
    // Refitted with the lowest exponent that is published.
    Assumptions {
        surface: 0.025_753,
        surface_tilt: -0.27893,
        keratin: 0.45855,
        keratin_violet: 0.80908,
        keratin_warmth: 0.0,
        gain: 1.9611,
        power: Power::Half,
        melanin_of_black: 12.841,
        levels_per_halving: 1.1016,
        pheomelanin: 0.05,
        resistance: 0.99812,
        oxidised: 2.6878,
        survival: 0.10012,
        tail_nm: 64.742,
        reading: 0.0,
        uptake: 0.25,
        tone_share: 0.85,
    },
    // Refitted with an exponent above the highest published.
    Assumptions {
        surface: 0.0262,
        surface_tilt: -0.069_751,
        keratin: 0.4233,
        keratin_violet: 0.69745,
        keratin_warmth: 0.0,
        gain: 1.46,
        power: Power::ThreeQuarters,
        melanin_of_black: 10.612,
        levels_per_halving: 1.4102,
        pheomelanin: 0.05,
        resistance: 0.99136,
        oxidised: 2.3354,
        survival: 0.10584,
        tail_nm: 76.084,
        reading: 0.0,
        uptake: 1.0,
        tone_share: 0.85,
    },
    // Refitted with the lowest published share of pheomelanin.
    Assumptions {
        surface: 0.0262,
        surface_tilt: -0.18129,
        keratin: 0.44277,
        keratin_violet: 0.74416,
        keratin_warmth: 0.0,
        gain: 1.6349,
        power: Power::FiveEighths,
        melanin_of_black: 11.895,
        levels_per_halving: 1.2847,
        pheomelanin: 0.01,
        resistance: 0.95341,
        oxidised: 2.1846,
        survival: 0.1,
        tail_nm: 72.144,
        reading: 0.0,
        uptake: 0.5,
        tone_share: 0.7,
    },
    // Refitted with the highest published share of pheomelanin.
    Assumptions {
        surface: 0.0262,
        surface_tilt: -0.15629,
        keratin: 0.43801,
        keratin_violet: 0.72677,
        keratin_warmth: 0.0,
        gain: 1.5984,
        power: Power::FiveEighths,
        melanin_of_black: 12.865,
        levels_per_halving: 1.2596,
        pheomelanin: 0.17,
        resistance: 1.0,
        oxidised: 2.6433,
        survival: 0.1,
        tail_nm: 69.956,
        reading: 0.0,
        uptake: 0.5,
        tone_share: 0.95,
    },
    // Refitted with a steep spectrum of oxidised melanin.
    Assumptions {
        surface: 0.0262,
        surface_tilt: -0.22749,
        keratin: 0.40844,
        keratin_violet: 0.78196,
        keratin_warmth: 0.0,
        gain: 1.3868,
        power: Power::FiveEighths,
        melanin_of_black: 16.142,
        levels_per_halving: 1.1947,
        pheomelanin: 0.05,
        resistance: 0.97813,
        oxidised: 2.5769,
        survival: 0.1,
        tail_nm: 55.0,
        reading: 0.0,
        uptake: 0.5,
        tone_share: 0.85,
    },
    // Refitted with a flat spectrum of oxidised melanin.
    Assumptions {
        surface: 0.024_604,
        surface_tilt: -0.48382,
        keratin: 0.524,
        keratin_violet: 0.52592,
        keratin_warmth: 0.0,
        gain: 1.5491,
        power: Power::FiveEighths,
        melanin_of_black: 10.444,
        levels_per_halving: 1.5616,
        pheomelanin: 0.05,
        resistance: 0.83131,
        oxidised: 2.6335,
        survival: 0.10879,
        tail_nm: 95.0,
        reading: 0.0,
        uptake: 0.5,
        tone_share: 0.85,
    },
    // Refitted with levels closer together.
    Assumptions {
        surface: 0.0262,
        surface_tilt: -0.057_555,
        keratin: 0.43322,
        keratin_violet: 0.86192,
        keratin_warmth: 0.0,
        gain: 1.8448,
        power: Power::FiveEighths,
        melanin_of_black: 12.481,
        levels_per_halving: 1.1,
        pheomelanin: 0.05,
        resistance: 0.99257,
        oxidised: 2.0763,
        survival: 0.1,
        tail_nm: 66.905,
        reading: 0.0,
        uptake: 0.5,
        tone_share: 0.85,
    },
    // Refitted with levels further apart.
    Assumptions {
        surface: 0.025_656,
        surface_tilt: -0.37202,
        keratin: 0.44633,
        keratin_violet: 0.64747,
        keratin_warmth: 0.0,
        gain: 1.4658,
        power: Power::FiveEighths,
        melanin_of_black: 11.295,
        levels_per_halving: 1.5,
        pheomelanin: 0.05,
        resistance: 0.99304,
        oxidised: 2.5128,
        survival: 0.1,
        tail_nm: 77.805,
        reading: 0.0,
        uptake: 0.5,
        tone_share: 0.85,
    },
    // Darker, yellower keratin.
    Assumptions {
        surface: 0.0262,
        surface_tilt: -0.1765,
        keratin: 0.36768,
        keratin_violet: 0.77462,
        keratin_warmth: 0.67774,
        gain: 1.6281,
        power: Power::FiveEighths,
        melanin_of_black: 12.09,
        levels_per_halving: 1.2786,
        pheomelanin: 0.05,
        resistance: 0.99928,
        oxidised: 2.2851,
        survival: 0.1,
        tail_nm: 71.572,
        reading: 0.0,
        uptake: 0.5,
        tone_share: 0.85,
    },
    // Lighter, paler keratin.
    Assumptions {
        surface: 0.0262,
        surface_tilt: -0.1765,
        keratin: 0.52703,
        keratin_violet: 0.52226,
        keratin_warmth: 0.056_677,
        gain: 1.6281,
        power: Power::FiveEighths,
        melanin_of_black: 12.09,
        levels_per_halving: 1.2786,
        pheomelanin: 0.05,
        resistance: 0.99928,
        oxidised: 2.2851,
        survival: 0.1,
        tail_nm: 71.572,
        reading: 0.0,
        uptake: 0.5,
        tone_share: 0.85,
    },
    // A surface that reflects little (black hair read as L* 15), on a level read too light.
    Assumptions {
        surface: 0.018_719,
        surface_tilt: -0.5,
        keratin: 0.44148,
        keratin_violet: 0.73991,
        keratin_warmth: 0.0,
        gain: 1.6281,
        power: Power::FiveEighths,
        melanin_of_black: 12.09,
        levels_per_halving: 1.2786,
        pheomelanin: 0.05,
        resistance: 0.99928,
        oxidised: 2.2851,
        survival: 0.1,
        tail_nm: 71.572,
        reading: -0.5,
        uptake: 0.5,
        tone_share: 0.85,
    },
    // A surface that reflects much (black hair read as L* 21.6), on a level read too dark.
    Assumptions {
        surface: 0.033_515,
        surface_tilt: 0.0,
        keratin: 0.44148,
        keratin_violet: 0.73991,
        keratin_warmth: 0.0,
        gain: 1.6281,
        power: Power::FiveEighths,
        melanin_of_black: 12.09,
        levels_per_halving: 1.2786,
        pheomelanin: 0.05,
        resistance: 0.99928,
        oxidised: 2.2851,
        survival: 0.1,
        tail_nm: 71.572,
        reading: 0.5,
        uptake: 0.5,
        tone_share: 0.85,
    },
    // Everything that darkens.
    Assumptions {
        surface: 0.0237,
        surface_tilt: -0.1765,
        keratin: 0.36768,
        keratin_violet: 0.77462,
        keratin_warmth: 0.67774,
        gain: 1.6281,
        power: Power::FiveEighths,
        melanin_of_black: 12.09,
        levels_per_halving: 1.2786,
        pheomelanin: 0.05,
        resistance: 0.99928,
        oxidised: 2.2851,
        survival: 0.1,
        tail_nm: 71.572,
        reading: -1.0,
        uptake: 1.0,
        tone_share: 0.95,
    },
    // Everything that lightens.
    Assumptions {
        surface: 0.0262,
        surface_tilt: 0.15,
        keratin: 0.52703,
        keratin_violet: 0.52226,
        keratin_warmth: 0.056_677,
        gain: 1.6281,
        power: Power::FiveEighths,
        melanin_of_black: 12.09,
        levels_per_halving: 1.2786,
        pheomelanin: 0.05,
        resistance: 0.99928,
        oxidised: 2.2851,
        survival: 0.1,
        tail_nm: 71.572,
        reading: 1.0,
        uptake: 0.25,
        tone_share: 0.7,
    },
    // Refitted with oxidised melanin that goes sooner and pheomelanin that stays longer.
    Assumptions {
        surface: 0.0262,
        surface_tilt: -0.14992,
        keratin: 0.44205,
        keratin_violet: 0.72475,
        keratin_warmth: 0.0,
        gain: 1.7191,
        power: Power::FiveEighths,
        melanin_of_black: 11.08,
        levels_per_halving: 1.2865,
        pheomelanin: 0.05,
        resistance: 0.4,
        oxidised: 3.8795,
        survival: 0.35,
        tail_nm: 70.494,
        reading: 0.0,
        uptake: 0.5,
        tone_share: 0.85,
    },
];
