//! The linear programme behind a blend of many stocks, solved exactly.
//!
//! Minimise `sum(cost m)` over `0 <= m <= cap`, `sum(m) = total`, `sum(excess m) = 0`, where the excess of a stock is its
//! strength above the target. Two equalities only, so one multiplier is enough: for a fixed price `lambda` of excess the
//! best fill takes the stocks in the order of `cost - lambda excess`. Two fills, one too weak and one too strong, give
//! the next multiplier as the slope between them; when the fill at that slope is no better than both, they are the two
//! ends of the optimal edge, and the blend lies between them where the excess vanishes. Every step finds a new vertex
//! strictly below the last edge, so it ends.

/// One stock as the programme sees it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Entry {
    /// Place on the shelf.
    pub stock: usize,
    /// Strength above the target, in percent.
    pub excess: f64,
    /// Cost of so much, in any unit of mass: of bottles only which is the dearer counts.
    pub cost: f64,
    /// Most that can be taken, in grams.
    pub cap: f64,
    /// What is in the bottle, in grams; the total where that is not counted.
    pub in_hand: f64,
}

/// A way to fill the bowl, and what comes of it.
#[derive(Debug, Clone)]
pub(crate) struct Fill {
    /// Grams of each stock, by its place on the shelf.
    pub masses: Vec<f64>,
    /// Sum of mass times excess: zero at the target.
    pub excess: f64,
    /// Sum of mass times cost.
    pub cost: f64,
}

/// What the stocks allow.
#[derive(Debug, Clone)]
pub(crate) enum Filled {
    /// The optimal blend.
    Best(Fill),
    /// Even the weakest fill is too strong, or the strongest too weak: the two ends, as excess per gram.
    OutOfReach { weakest: f64, strongest: f64 },
}

/// Fills `total` in the order the entries are in.
fn fill(entries: &[Entry], total: f64, places: usize) -> Fill {
    let mut fill = Fill { masses: vec![0.0; places], excess: 0.0, cost: 0.0 };
    let mut left = total;
    for entry in entries {
        let mass = entry.cap.min(left);
        left -= mass;
        fill.excess += mass * entry.excess;
        fill.cost += mass * entry.cost;
        if let Some(slot) = fill.masses.get_mut(entry.stock) {
            *slot = mass;
        }
    }
    fill
}

/// The cheapest fill with no excess. The caps must sum to at least `total`.
pub(crate) fn cheapest(entries: &mut [Entry], total: f64, places: usize) -> Filled {
    let size = entries.iter().fold(0.0_f64, |size, entry| size.max(entry.excess.abs()));
    // Rounding of the sums: a fill is on target when its mean strength is within a few last bits.
    let zero = 8.0 * f64::EPSILON * total * (size + f64::MIN_POSITIVE);

    entries.sort_unstable_by(|a, b| a.excess.total_cmp(&b.excess).then(a.cost.total_cmp(&b.cost)));
    let mut weak = fill(entries, total, places);
    entries.sort_unstable_by(|a, b| b.excess.total_cmp(&a.excess).then(a.cost.total_cmp(&b.cost)));
    let mut strong = fill(entries, total, places);
    if weak.excess > zero || strong.excess < -zero {
        return Filled::OutOfReach { weakest: weak.excess / total, strongest: strong.excess / total };
    }
    if strong.excess <= zero {
        return Filled::Best(strong);
    }
    while weak.excess < -zero {
        let lambda = (strong.cost - weak.cost) / (strong.excess - weak.excess);
        let reduced = |entry: &Entry| entry.cost - lambda * entry.excess;
        entries.sort_unstable_by(|a, b| reduced(a).total_cmp(&reduced(b)));
        let next = fill(entries, total, places);
        let below = weak.cost - lambda * weak.excess - (next.cost - lambda * next.excess);
        let scale = weak.cost.abs() + strong.cost.abs() + (lambda * weak.excess).abs() + (lambda * strong.excess).abs();
        if below <= 16.0 * f64::EPSILON * scale {
            return Filled::Best(between(&weak, &strong));
        }
        if next.excess > 0.0 {
            strong = next;
        } else {
            weak = next;
        }
    }
    Filled::Best(weak)
}

/// The point of the edge between two fills where the excess vanishes.
fn between(weak: &Fill, strong: &Fill) -> Fill {
    let share = -weak.excess / (strong.excess - weak.excess);
    let mix = |a: f64, b: f64| a + share * (b - a);
    Fill {
        masses: weak.masses.iter().zip(&strong.masses).map(|(&a, &b)| mix(a, b)).collect(),
        excess: 0.0,
        cost: mix(weak.cost, strong.cost),
    }
}
