use super::predictor::Predictor;
use crate::colour::Lab;

/// CIEDE2000 by which a further shade must bring a mix nearer (assumed: no eye tells less).
pub(super) const WORTH_A_SHADE: f64 = 0.25;

/// A mix on the scale: places in the list of shades with whole divisions of the scale, each at least one.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Candidate {
    pub(super) parts: Vec<(usize, u32)>,
    pub(super) miss: f64,
}

impl Candidate {
    /// What candidates are ranked by: the miss, and what each further shade must be worth.
    pub(super) fn cost(&self) -> f64 {
        self.miss + WORTH_A_SHADE * self.parts.len() as f64
    }
}

/// The best mix of every choice of up to `most` shades, cheapest in [`Candidate::cost`] first.
///
/// Exhaustive over the choices. Within one choice the masses are found by exchanging whole divisions between two shades
/// at a time, in steps that halve down to one division: what it ends on cannot be improved by moving a single division.
/// For one or two shades the miss has a single minimum along the exchange in all but contrived cases.
pub(super) fn search(predictor: &Predictor, shades: usize, most: usize, divisions: u32, target: Lab) -> Vec<Candidate> {
    let mut found = Vec::new();
    let mut chosen = Vec::with_capacity(most);
    choose(0, shades, most, &mut chosen, &mut |chosen| {
        if chosen.len() <= divisions as usize {
            found.push(settle(predictor, chosen, divisions, target));
        }
    });
    found.sort_by(|a, b| a.cost().total_cmp(&b.cost()));
    found
}

fn choose(from: usize, shades: usize, most: usize, chosen: &mut Vec<usize>, visit: &mut impl FnMut(&[usize])) {
    for place in from..shades {
        chosen.push(place);
        visit(chosen);
        if chosen.len() < most {
            choose(place + 1, shades, most, chosen, visit);
        }
        chosen.pop();
    }
}

fn settle(predictor: &Predictor, chosen: &[usize], divisions: u32, target: Lab) -> Candidate {
    let count = chosen.len() as u32;
    let (each, rest) = (divisions / count, divisions % count);
    let mut parts: Vec<_> =
        chosen.iter().zip(0u32..).map(|(place, turn)| (*place, each + u32::from(turn < rest))).collect();
    let miss_of = |parts: &[(usize, u32)]| {
        predictor.miss(parts.iter().map(|(place, mass)| (*place, f64::from(*mass) / f64::from(divisions))), target)
    };
    let mut miss = miss_of(&parts);
    let mut step = (divisions / 4).max(1);
    while parts.len() > 1 {
        let mut improved = false;
        for giver in 0..parts.len() {
            for taker in 0..parts.len() {
                if giver == taker || !exchange(&mut parts, giver, taker, step) {
                    continue;
                }
                let moved = miss_of(&parts);
                if moved < miss {
                    (miss, improved) = (moved, true);
                } else {
                    exchange(&mut parts, taker, giver, step);
                }
            }
        }
        match (improved, step) {
            (true, _) => {}
            (false, 1) => break,
            (false, _) => step = (step / 2).max(1),
        }
    }
    Candidate { parts, miss }
}

/// Moves so many divisions from one part to another, unless that would leave the giver without any.
fn exchange(parts: &mut [(usize, u32)], giver: usize, taker: usize, step: u32) -> bool {
    let Some((_, has)) = parts.get(giver).copied() else { return false };
    if has <= step {
        return false;
    }
    if let Some(part) = parts.get_mut(taker) {
        part.1 += step;
    }
    if let Some(part) = parts.get_mut(giver) {
        part.1 -= step;
    }
    true
}
