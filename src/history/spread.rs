//! What a handful of figures says: their centre, how well it is known, and where the next will lie.

use schemars::JsonSchema;
use serde::Serialize;

/// What figures of many services say, each with its 80 % interval.
///
/// A factor or a rate has no upper end, so it is judged by logarithms and its centre is the geometric mean; a difference is judged
/// as it is, by the arithmetic mean. The bounds are those of Student's distribution.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Learned {
    /// How many figures there are.
    pub count: usize,
    /// Their mean: the geometric one of factors and rates, the arithmetic one of differences.
    pub mean: f64,
    /// Where the true mean lies in 80 of 100 cases, at least; absent for a single figure, which says nothing of the spread.
    pub mean_low: Option<f64>,
    /// The same, at most.
    pub mean_high: Option<f64>,
    /// Where the next figure will lie in 80 of 100 cases, at least.
    pub next_low: Option<f64>,
    /// The same, at most.
    pub next_high: Option<f64>,
}

impl Learned {
    /// From figures above zero; none without any.
    pub(super) fn of(figures: &[f64]) -> Option<Self> {
        let logs: Vec<f64> = figures.iter().filter(|figure| **figure > 0.0).map(|figure| figure.ln()).collect();
        let of = Self::of_differences(&logs)?;
        let back = |log: Option<f64>| log.map(f64::exp);
        Some(Self {
            count: of.count,
            mean: of.mean.exp(),
            mean_low: back(of.mean_low),
            mean_high: back(of.mean_high),
            next_low: back(of.next_low),
            next_high: back(of.next_high),
        })
    }

    /// From figures of either sign; none without any.
    pub(super) fn of_differences(figures: &[f64]) -> Option<Self> {
        let count = figures.len();
        if count == 0 {
            return None;
        }
        let n = count as f64;
        let mean = figures.iter().sum::<f64>() / n;
        let bounds = (count > 1).then(|| {
            let variance = figures.iter().map(|figure| (figure - mean).powi(2)).sum::<f64>() / (n - 1.0);
            let t = student(count - 1);
            let (of_mean, of_next) = (t * (variance / n).sqrt(), t * (variance * (1.0 + 1.0 / n)).sqrt());
            [mean - of_mean, mean + of_mean, mean - of_next, mean + of_next]
        });
        let [mean_low, mean_high, next_low, next_high] = bounds.map_or([None; 4], |all| all.map(Some));
        Some(Self { count, mean, mean_low, mean_high, next_low, next_high })
    }
}

/// Degrees of freedom beyond which the finite sums are replaced by the expansion about the normal distribution.
const MANY: usize = 400;
/// The quantile of the normal distribution that leaves a tenth above it.
const Z: f64 = 1.281_551_565_544_600_4;

/// The quantile of Student's distribution that leaves a tenth above it, so that 80 of 100 lie within.
///
/// By bisection in the closed form of the distribution for whole degrees of freedom, a finite sum of powers of a cosine
/// (Abramowitz and Stegun, 26.7.3 and 26.7.4); for many degrees of freedom by the expansion 26.7.5. Both from memory, and held
/// against SciPy in the tests.
pub(super) fn student(freedom: usize) -> f64 {
    if freedom > MANY {
        let (z, v) = (Z, freedom as f64);
        let z2 = z * z;
        return z
            + z * (z2 + 1.0) / (4.0 * v)
            + z * ((5.0 * z2 + 16.0) * z2 + 3.0) / (96.0 * v * v)
            + z * (((3.0 * z2 + 19.0) * z2 + 17.0) * z2 - 15.0) / (384.0 * v * v * v);
    }
    // Half of the circle less a hair's breadth: one degree of freedom has its quantile at 3.08.
    let (mut low, mut high) = (0.0_f64, 10.0_f64);
    for _ in 0..80 {
        let middle = 0.5 * (low + high);
        if within(middle, freedom) < 0.8 {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

/// The chance that Student's t lies within so much of zero, either way.
fn within(t: f64, freedom: usize) -> f64 {
    let angle = (t / (freedom as f64).sqrt()).atan();
    let (sine, cosine) = angle.sin_cos();
    let square = cosine * cosine;
    // The terms of the sum, each made of the one before.
    let sum = |first: f64, from: usize| {
        let (mut term, mut sum, mut k) = (first, 0.0, from);
        while k < freedom {
            sum += term;
            term *= square * k as f64 / (k as f64 + 1.0);
            k += 2;
        }
        sum
    };
    if freedom % 2 == 1 {
        let rest = if freedom == 1 { 0.0 } else { sine * sum(cosine, 2) };
        std::f64::consts::FRAC_2_PI * (angle + rest)
    } else {
        sine * sum(1.0, 1)
    }
}

#[cfg(test)]
mod tests {
    use super::student;

    /// Source: SciPy 1.17, `scipy.stats.t.ppf(0.9, freedom)`.
    #[test]
    fn quantiles_of_student_are_those_of_scipy() {
        for (freedom, want) in [
            (1, 3.077_683_537_175_254_4),
            (2, 1.885_618_083_164_127),
            (3, 1.637_744_353_696_209),
            (4, 1.533_206_274_058_944),
            (7, 1.414_923_927_650_508_6),
            (30, 1.310_415_025_391_395_5),
            (400, 1.283_671_599_570_304_5),
            (401, 1.283_666_303_806_591_2),
            (1000, 1.282_398_721_460_924_7),
        ] {
            let got = student(freedom);
            assert!((got - want).abs() < 1e-11, "{freedom}: {got} for {want}");
        }
    }
}
