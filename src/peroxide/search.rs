//! Objectives that count bottles: every combination is looked at, smallest first.

use super::{
    fill::{Entry, Fill, Filled, cheapest},
    shelf::ShelfError,
};

/// Most bottles for a search: 2^16 combinations take well under a second.
const LIMIT: usize = 16;

/// How far the scale moves a fill off its target, to tell fills apart that are equal otherwise.
pub(crate) type Off<'a> = &'a dyn Fn(&Fill) -> f64;

/// The fill with the fewest stocks, the cheapest of those, and of those the one that the scale moves least.
pub(crate) fn fewest(entries: &[Entry], total: f64, places: usize, off: Off<'_>) -> Result<Option<Fill>, ShelfError> {
    check(entries, "the fewest bottles")?;
    let mut chosen = Vec::with_capacity(entries.len());
    for count in 1..=entries.len() {
        let mut best: Option<(f64, Fill)> = None;
        for mask in combinations(entries.len()).filter(|mask| mask.count_ones() as usize == count) {
            pick(entries, mask, &mut chosen);
            let Some(fill) = solve(&mut chosen, total, places) else { continue };
            let moved = off(&fill);
            let better = best.as_ref().is_none_or(|(least, found)| {
                let tie = 1e-9 * found.cost.abs();
                fill.cost < found.cost - tie || (fill.cost <= found.cost + tie && moved < least - 1e-9)
            });
            if better {
                best = Some((moved, fill));
            }
        }
        if let Some((_, fill)) = best {
            return Ok(Some(fill));
        }
    }
    Ok(None)
}

/// The fill that leaves least in the bottles it uses; ties by their number, then by cost.
///
/// `bounded` says which stocks have an amount in hand, by their place on the shelf.
pub(crate) fn least_left(
    entries: &[Entry],
    bounded: &[bool],
    total: f64,
    places: usize,
) -> Result<Option<Fill>, ShelfError> {
    check(entries, "the least leftover")?;
    let mut chosen = Vec::with_capacity(entries.len());
    let mut best: Option<((f64, u32, f64), Fill)> = None;
    for mask in combinations(entries.len()) {
        pick(entries, mask, &mut chosen);
        // What is left is the amount opened less the amount used: make using a bounded stock pay.
        let mut opened = 0.0;
        for entry in &mut chosen {
            let counts = bounded.get(entry.stock).copied().unwrap_or(false);
            opened += if counts { entry.in_hand } else { 0.0 };
            entry.cost = if counts { -1.0 } else { 0.0 };
        }
        let Some(mut fill) = solve(&mut chosen, total, places) else { continue };
        let left = (opened + fill.cost).max(0.0);
        fill.cost = entries.iter().map(|e| e.cost * fill.masses.get(e.stock).copied().unwrap_or(0.0)).sum();
        let rank = (left, mask.count_ones(), fill.cost);
        // A tie up to rounding counts as a tie.
        let better = best.as_ref().is_none_or(|((least, count, cost), _)| {
            left < least - 1e-9 * total || (left <= least + 1e-9 * total && (rank.1, rank.2) < (*count, *cost))
        });
        if better {
            best = Some((rank, fill));
        }
    }
    Ok(best.map(|(_, fill)| fill))
}

fn check(entries: &[Entry], objective: &'static str) -> Result<(), ShelfError> {
    if entries.len() > LIMIT {
        return Err(ShelfError::TooMany { got: entries.len(), limit: LIMIT, objective });
    }
    Ok(())
}

/// Every choice of at least one stock, a bit for each.
fn combinations(count: usize) -> std::ops::Range<u32> {
    1..1 << count
}

fn pick(entries: &[Entry], mask: u32, chosen: &mut Vec<Entry>) {
    chosen.clear();
    chosen.extend(entries.iter().enumerate().filter(|(bit, _)| mask >> bit & 1 == 1).map(|(_, entry)| *entry));
}

/// The best fill from these stocks alone, if they hold enough and reach the target.
fn solve(chosen: &mut [Entry], total: f64, places: usize) -> Option<Fill> {
    if chosen.iter().map(|entry| entry.cap).sum::<f64>() < total * (1.0 - 1e-12) {
        return None;
    }
    match cheapest(chosen, total, places) {
        Filled::Best(fill) => Some(fill),
        Filled::OutOfReach { .. } => None,
    }
}
