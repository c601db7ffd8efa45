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

/// The quantile: which `z` a standard normal variable stays below with this chance.
///
/// Abramowitz and Stegun 26.2.23 as a start (error below 4.5e-4), then two of Newton's steps on [`chance_below`].
pub(super) fn quantile(chance: f64) -> f64 {
    let inside = chance.clamp(1e-12, 1.0 - 1e-12);
    let tail = inside.min(1.0 - inside);
    let t = (-2.0 * tail.ln()).sqrt();
    let start = t
        - (2.515_517 + t * (0.802_853 + t * 0.010_328)) / (1.0 + t * (1.432_788 + t * (0.189_269 + t * 0.001_308)));
    let mut z = if inside < 0.5 { -start } else { start };
    for _ in 0..2 {
        let density = (-z * z / 2.0).exp() / (2.0 * std::f64::consts::PI).sqrt();
        if density > 1e-9 {
            z -= (chance_below(z) - inside) / density;
        }
    }
    z
}
