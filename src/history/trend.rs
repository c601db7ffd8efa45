use super::{KeptRecord, day::day, spread::student};
use crate::text::number;
use schemars::JsonSchema;
use serde::Serialize;

/// What is thrown away over time.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct WasteTrend {
    /// How many services say what was weighed and what was left over.
    pub services: usize,
    /// What was left over of all that was weighed.
    pub waste_percent: f64,
    /// By how much that share changes in thirty days, by the line of least squares; absent for fewer than three services, or
    /// where all are of one day.
    pub change_percent_points: Option<f64>,
    /// The same in 80 of 100 cases, at least.
    pub change_low_percent_points: Option<f64>,
    /// The same, at most.
    pub change_high_percent_points: Option<f64>,
    /// In words.
    pub text: String,
}

/// The days that a change counts for.
const DAYS: f64 = 30.0;

impl WasteTrend {
    pub(super) fn of(records: &[KeptRecord]) -> Option<Self> {
        let points: Vec<(f64, f64, f64)> = records.iter().filter_map(point).collect();
        let (weighed, left) = points.iter().fold((0.0, 0.0), |(w, l), (_, weighed, left)| (w + weighed, l + left));
        if weighed <= 0.0 {
            return None;
        }
        let shares: Vec<(f64, f64)> = points.iter().map(|(on, weighed, left)| (*on, 100.0 * left / weighed)).collect();
        let slope = slope(&shares);
        let at = |place: usize| slope.and_then(|slope| slope.get(place).copied());
        let text = match (at(1), at(2)) {
            (Some(low), _) if low > 0.0 => "waste rises",
            (_, Some(high)) if high < 0.0 => "waste falls",
            (Some(_), _) => "whether waste rises or falls cannot be told yet",
            _ => "too few services for a trend: three on different days at least",
        };
        Some(Self {
            services: points.len(),
            waste_percent: 100.0 * left / weighed,
            change_percent_points: at(0),
            change_low_percent_points: at(1),
            change_high_percent_points: at(2),
            text: format!("{text}; {} % of what was weighed was left over", number(100.0 * left / weighed, 1)),
        })
    }
}

/// Day, grams weighed and grams left over of a service, of the sections that say both.
fn point(record: &KeptRecord) -> Option<(f64, f64, f64)> {
    let on = day(&record.on).ok()?;
    let days = on.duration_since(jiff::civil::Date::ZERO).as_hours() as f64 / 24.0;
    let said = record.section.iter().filter_map(|one| Some((one.weighed_g?, one.left_over_g?)));
    let (weighed, left) = said.fold((0.0, 0.0), |(w, l), (weighed, left)| (w + weighed, l + left));
    (weighed > 0.0).then_some((days, weighed, left))
}

/// Slope for thirty days with its 80 % interval, by least squares.
fn slope(points: &[(f64, f64)]) -> Option<[f64; 3]> {
    let n = points.len();
    if n < 3 {
        return None;
    }
    let count = n as f64;
    let mean = |of: fn(&(f64, f64)) -> f64| points.iter().map(of).sum::<f64>() / count;
    let (x, y) = (mean(|point| point.0), mean(|point| point.1));
    let xx: f64 = points.iter().map(|point| (point.0 - x).powi(2)).sum();
    if xx <= 0.0 {
        return None;
    }
    let slope = points.iter().map(|point| (point.0 - x) * (point.1 - y)).sum::<f64>() / xx;
    let rest: f64 = points.iter().map(|point| (point.1 - y - slope * (point.0 - x)).powi(2)).sum();
    let off = student(n - 2) * (rest / (count - 2.0) / xx).sqrt();
    Some([slope, slope - off, slope + off].map(|slope| slope * DAYS))
}

#[cfg(test)]
mod tests {
    use super::slope;

    /// By hand: the points (0, 0), (1, 2), (2, 1), (3, 5) and (4, 2) lie about (2, 2); their line rises by 7 of 10 and leaves 9.1 in squares,
    /// with three degrees of freedom: t = 1.6377 (`SciPy`, stats.t.ppf(0.9, 3)).
    #[test]
    fn a_slope_has_the_bounds_of_its_residuals() {
        let points = [(0.0, 0.0), (1.0, 2.0), (2.0, 1.0), (3.0, 5.0), (4.0, 2.0)];
        let off = 1.637_744_353_696_209 * (9.1_f64 / 3.0 / 10.0).sqrt();
        let want = [0.7, 0.7 - off, 0.7 + off].map(|slope| slope * 30.0);
        let got = slope(&points).unwrap();
        assert!(got.iter().zip(want).all(|(got, want)| (got - want).abs() < 1e-8), "{got:?} for {want:?}");
        assert!(slope(&points[..2]).is_none() && slope(&[(1.0, 1.0), (1.0, 2.0), (1.0, 3.0)]).is_none());
        // Off the origin it is the same.
        let moved = points.map(|(x, y)| (x + 1000.0, y + 50.0));
        assert!(slope(&moved).unwrap().iter().zip(want).all(|(got, want)| (got - want).abs() < 1e-8));
    }
}
