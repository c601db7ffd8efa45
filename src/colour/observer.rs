use super::White;

/// How many wavelengths a spectrum has: 400 to 700 nm in steps of 10, as most instruments for hair report.
pub(crate) const BANDS: usize = 31;

/// Relative power of daylight D65. Source: `D65_SPECTRUM` in the register.
const D65: [f64; BANDS] = [
    82.7549, 91.486, 93.4318, 86.6823, 104.865, 117.008, 117.812, 114.861, 115.923, 108.811, 109.354, 107.802, 104.79,
    107.689, 104.405, 104.046, 100.0, 96.3342, 95.788, 88.6856, 90.0062, 89.5991, 87.6987, 83.2886, 83.6992, 80.0268,
    80.2146, 82.2778, 78.2842, 69.7213, 71.6091,
];

/// Colour matching functions of the 2 degree observer. Source: `OBSERVERS` in the register.
const TWO_DEGREE: [[f64; BANDS]; 3] = [
    [
        0.014_31,
        0.043_51,
        0.134_38,
        0.283_9,
        0.348_28,
        0.336_2,
        0.290_8,
        0.195_36,
        0.095_64,
        0.032_01,
        0.004_9,
        0.009_3,
        0.063_27,
        0.165_5,
        0.290_4,
        0.433_449_9,
        0.594_5,
        0.762_1,
        0.916_3,
        1.026_3,
        1.062_2,
        1.002_6,
        0.854_449_9,
        0.642_4,
        0.447_9,
        0.283_5,
        0.164_9,
        0.087_4,
        0.046_77,
        0.022_7,
        0.011_359_16,
    ],
    [
        0.000_396,
        0.001_21,
        0.004,
        0.011_6,
        0.023,
        0.038,
        0.06,
        0.090_98,
        0.139_02,
        0.208_02,
        0.323,
        0.503,
        0.71,
        0.862,
        0.954,
        0.994_950_1,
        0.995,
        0.952,
        0.87,
        0.757,
        0.631,
        0.503,
        0.381,
        0.265,
        0.175,
        0.107,
        0.061,
        0.032,
        0.017,
        0.008_21,
        0.004_102,
    ],
    [
        0.067_850_01,
        0.207_4,
        0.645_6,
        1.385_6,
        1.747_06,
        1.772_11,
        1.669_2,
        1.287_64,
        0.812_950_1,
        0.465_18,
        0.272,
        0.158_2,
        0.078_249_99,
        0.042_16,
        0.020_3,
        0.008_749_999,
        0.003_9,
        0.002_1,
        0.001_650_001,
        0.001_1,
        0.000_8,
        0.000_34,
        0.000_19,
        0.000_05,
        0.000_02,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
    ],
];

/// Colour matching functions of the 10 degree observer. Source: `OBSERVERS` in the register.
const TEN_DEGREE: [[f64; BANDS]; 3] = [
    [
        0.019_109_7,
        0.084_736,
        0.204_492,
        0.314_679,
        0.383_734,
        0.370_702,
        0.302_273,
        0.195_618,
        0.080_507,
        0.016_172,
        0.003_816,
        0.037_465,
        0.117_749,
        0.236_491,
        0.376_772,
        0.529_826,
        0.705_224,
        0.878_655,
        1.014_16,
        1.118_52,
        1.123_99,
        1.030_48,
        0.856_297,
        0.647_467,
        0.431_567,
        0.268_329,
        0.152_568,
        0.081_260_6,
        0.040_850_8,
        0.019_941_3,
        0.009_576_88,
    ],
    [
        0.002_004_4,
        0.008_756,
        0.021_391,
        0.038_676,
        0.062_077,
        0.089_456,
        0.128_201,
        0.185_19,
        0.253_589,
        0.339_133,
        0.460_777,
        0.606_741,
        0.761_757,
        0.875_211,
        0.961_988,
        0.991_761,
        0.997_34,
        0.955_552,
        0.868_934,
        0.777_405,
        0.658_341,
        0.527_963,
        0.398_057,
        0.283_493,
        0.179_828,
        0.107_633,
        0.060_281,
        0.031_800_4,
        0.015_905_1,
        0.007_748_8,
        0.003_717_74,
    ],
    [
        0.086_010_9,
        0.389_366,
        0.972_542,
        1.553_48,
        1.967_28,
        1.994_8,
        1.745_37,
        1.317_56,
        0.772_125,
        0.415_254,
        0.218_502,
        0.112_044,
        0.060_709,
        0.030_451,
        0.013_676,
        0.003_988,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
        0.0,
    ],
];

/// X, Y, Z of a surface that reflects everything, to five decimals as in `D65_WHITES`.
pub(crate) const fn white_point(white: White) -> [f64; 3] {
    match white {
        White::D65TwoDegree => [0.950_47, 1.0, 1.088_83],
        White::D65TenDegree => [0.948_11, 1.0, 1.073_04],
    }
}

/// Light times observer at each wavelength, so that a reflectance summed with it gives X, Y or Z with Y = 1 for white.
pub(crate) const fn weights(white: White) -> [[f64; BANDS]; 3] {
    let (observer, point) = match white {
        White::D65TwoDegree => (TWO_DEGREE, white_point(White::D65TwoDegree)),
        White::D65TenDegree => (TEN_DEGREE, white_point(White::D65TenDegree)),
    };
    let [x, y, z] = observer;
    let [white_x, white_y, white_z] = point;
    [weighted(x, white_x), weighted(y, white_y), weighted(z, white_z)]
}

/// One matching function under daylight, scaled to the value of white: what 10 nm steps and the ends of the range leave
/// out is shared out in proportion.
#[expect(clippy::indexing_slicing, reason = "a constant loop over arrays of one length, checked by the compiler")]
const fn weighted(function: [f64; BANDS], white: f64) -> [f64; BANDS] {
    let mut out = function;
    let (mut sum, mut band) = (0.0, 0);
    while band < BANDS {
        out[band] *= D65[band];
        sum += out[band];
        band += 1;
    }
    band = 0;
    while band < BANDS {
        out[band] *= white / sum;
        band += 1;
    }
    out
}
