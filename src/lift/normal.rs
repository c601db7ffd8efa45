//! The normal distribution, as far as chances and intervals need it.

/// Half the width of an 80 % interval in standard deviations: the 90 % quantile of the normal distribution.
///
/// Source: any table of the normal distribution; SciPy `norm.ppf(0.9)` agrees to the last digit shown.
pub(super) const Z80: f64 = 1.281_551_565_544_600_4;

/// The chance that a standard normal variable lies below `z`.
///
/// Abramowitz and Stegun, Handbook of Mathematical Functions (1964), formula 26.2.17; error below 7.5e-8, far less than
/// what any chance of this room is good for.
pub(super) fn chance_below(z: f64) -> f64 {
    let t = 1.0 / (1.0 + 0.231_641_9 * z.abs());
    let tail = (-z * z / 2.0).exp() / (2.0 * std::f64::consts::PI).sqrt()
        * t
        * (0.319_381_530 + t * (-0.356_563_782 + t * (1.781_477_937 + t * (-1.821_255_978 + t * 1.330_274_429))));
    if z > 0.0 { 1.0 - tail } else { tail }
}
