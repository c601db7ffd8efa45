/// One complete set of the numbers that the melanin model rests on.
///
/// Published, except where the field says assumed. The model is run once for the best set and once for each bound, so
/// that every colour it gives carries an interval.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Assumptions {
    /// Exponent of the absorption; 0.5 to 0.7 fitted measured tresses equally well.
    pub exponent: f64,
    /// Linear sRGB reflectance of hair without pigment (assumed).
    pub white: [f64; 3],
    /// Reflectance of the surface alone: what black hair still reflects.
    pub surface: f64,
    /// Pheomelanin as a share of all melanin in natural hair.
    pub pheomelanin: f64,
    /// Rate at which lightener removes pheomelanin, relative to eumelanin (assumed; below 1 by published sign).
    pub resistance: f64,
    /// How far off a level read by eye may be, in levels (assumed).
    pub reading: f64,
    /// Share of a toner's full depth that it deposits on lightened hair (assumed).
    pub uptake: f64,
    /// Share of a shade's depth made up by its tone, the rest being neutral (assumed).
    pub tone_share: f64,
}

/// How many sets there are: the best one and its bounds.
pub(crate) const SETS: usize = 18;

/// Multiplies the absorption to a power in the reflectance; fitted to tresses together with the exponent.
pub(crate) const GAIN: f64 = 2.7;

// White hair, CIELAB 70/0/13 (assumed; bounds 65/0/18 and 76/0/9), as linear sRGB by the matrix of IEC 61966-2-1.
const WHITE: [f64; 3] = [0.460_722, 0.403_057, 0.294_616];
const WHITE_DARK: [f64; 3] = [0.403_118, 0.335_250, 0.207_619];
const WHITE_LIGHT: [f64; 3] = [0.542_401, 0.495_244, 0.406_563];

const BEST: Assumptions = Assumptions {
    exponent: 0.7,
    white: WHITE,
    surface: 0.0252,
    pheomelanin: 0.05,
    resistance: 0.5,
    reading: 0.0,
    uptake: 0.5,
    tone_share: 0.5,
};

/// The best set first, then each number at its bounds, then everything that darkens and everything that lightens.
pub(crate) const ENSEMBLE: [Assumptions; SETS] = [
    BEST,
    Assumptions { exponent: 0.5, ..BEST },
    Assumptions { white: WHITE_DARK, ..BEST },
    Assumptions { white: WHITE_LIGHT, ..BEST },
    Assumptions { surface: 0.0237, ..BEST },
    Assumptions { surface: 0.0260, ..BEST },
    Assumptions { pheomelanin: 0.01, ..BEST },
    Assumptions { pheomelanin: 0.17, ..BEST },
    Assumptions { resistance: 0.2, ..BEST },
    Assumptions { resistance: 1.0, ..BEST },
    Assumptions { reading: -0.5, ..BEST },
    Assumptions { reading: 0.5, ..BEST },
    Assumptions { uptake: 0.25, ..BEST },
    Assumptions { uptake: 1.0, ..BEST },
    Assumptions { tone_share: 0.3, ..BEST },
    Assumptions { tone_share: 0.7, ..BEST },
    Assumptions { white: WHITE_DARK, surface: 0.0237, reading: -0.5, uptake: 1.0, ..BEST },
    Assumptions { white: WHITE_LIGHT, surface: 0.0260, reading: 0.5, uptake: 0.25, ..BEST },
];
