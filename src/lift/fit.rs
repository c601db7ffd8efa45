//! The most likely rates of all hair that was read: Gauss and Newton's steps, damped, on normal equations that are written
//! anew in the same memory at each step.

use super::{StrandReading, arrow::Arrow, dose::Rates, factors::Shift, pigment};

/// Readings far from what all others say lose weight as those of a Student distribution with four degrees of freedom do,
/// so that one bad reading does not carry the fit away.
const STUDENT: f64 = 4.0;
/// The longest fit takes this many steps; an ordinary one about twenty.
const STEPS: usize = 200;
/// A step that gains less than this share of the cost is the last: it moved the values by some millionths of their spread, times the
/// root of the cost.
const ENOUGH: f64 = 1e-12;

/// Places of the numbers that all readings share; those of the products follow.
pub(super) const RATE: usize = 0;
pub(super) const LOSS: usize = 1;
pub(super) const CEILING: usize = 2;
pub(super) const SHARED: usize = 3;

/// One reading, reduced to what the fit needs.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seen {
    start: f64,
    after: f64,
    per_sd: f64,
    minutes: f64,
    /// By what its situation multiplies both rates.
    times: Rates,
    /// The place of its product in the corner, and its guest with the arm that leads to the product.
    product: Option<usize>,
    guest: Option<(usize, usize)>,
}

impl Seen {
    pub(super) fn new(reading: &StrandReading, shift: &Shift) -> Self {
        Self {
            start: reading.before.number(),
            after: reading.after.number(),
            // Both levels were read, so the error of the lift is that of two readings.
            per_sd: 1.0 / (reading.reader.sd_levels() * std::f64::consts::SQRT_2),
            minutes: reading.time.min(),
            times: Rates { pigment: shift.pigment.exp(), oxidant: shift.oxidant.exp() },
            product: None,
            guest: None,
        }
    }

    /// The same reading of a guest and a product: the guest's place among the tips, the product's in the corner.
    pub(super) fn of(self, guest: usize, product: usize) -> Self {
        Self { product: Some(product), guest: Some((guest, 0)), ..self }
    }
}

/// What is believed before the readings, and the readings.
pub(super) struct Fit {
    /// The middle of the corner's unknowns; that of the tips is zero.
    pub(super) centre: Vec<f64>,
    /// Inverse of their covariance, row by row.
    pub(super) precision: Vec<f64>,
    /// Inverse of the variance of each tip.
    pub(super) tip_precision: f64,
    pub(super) seen: Vec<Seen>,
}

/// The most likely values, and the curvature there, made ready to be solved.
#[derive(Debug, Clone)]
pub(super) struct Fitted {
    pub(super) corner: Vec<f64>,
    pub(super) tips: Vec<f64>,
    pub(super) curvature: Arrow,
    pub(super) factored: Vec<f64>,
}

/// A point, and what the cost is there.
struct At {
    corner: Vec<f64>,
    tips: Vec<f64>,
    cost: f64,
    curvature: Arrow,
    /// The gradient.
    down: (Vec<f64>, Vec<f64>),
}

impl Fit {
    pub(super) fn solve(mut self, guests: usize) -> Fitted {
        let curvature = self.arrow(guests);
        let (size, zeros) = (self.centre.len(), vec![0.0; guests]);
        let at = || At {
            corner: self.centre.clone(),
            tips: zeros.clone(),
            cost: 0.0,
            curvature: curvature.clone(),
            down: (vec![0.0; size], zeros.clone()),
        };
        let (mut now, mut tried) = (at(), at());
        let mut rates = (vec![0.0; size], zeros.clone());
        let mut factored = Vec::with_capacity(size * size);
        let mut step = (vec![0.0; size], zeros.clone());
        self.look(&mut now, &mut rates);
        let mut damping = 0.0;
        for _ in 0..STEPS {
            let damped = (damping > 0.0).then(|| self.damped(&now.curvature, damping));
            let curvature = damped.as_ref().unwrap_or(&now.curvature);
            curvature.factor(&mut factored);
            step.0.clone_from(&now.down.0);
            step.1.clone_from(&now.down.1);
            curvature.solve(&factored, &mut step.0, &mut step.1);
            let moved = |to: &mut [f64], from: &[f64], step: &[f64]| {
                for ((to, from), step) in to.iter_mut().zip(from).zip(step) {
                    *to = from - step;
                }
            };
            moved(&mut tried.corner, &now.corner, &step.0);
            moved(&mut tried.tips, &now.tips, &step.1);
            self.look(&mut tried, &mut rates);
            if tried.cost <= now.cost {
                let gained = now.cost - tried.cost;
                std::mem::swap(&mut now, &mut tried);
                damping = if damping > 1e-6 { damping / 10.0 } else { 0.0 };
                if gained < ENOUGH * (1.0 + now.cost) {
                    break;
                }
            } else if tried.cost - now.cost < ENOUGH * (1.0 + now.cost) {
                // Worse by what adding up costs: there is no better place.
                break;
            } else {
                damping = (damping * 10.0).max(1e-3);
            }
        }
        now.curvature.factor(&mut factored);
        Fitted { corner: now.corner, tips: now.tips, curvature: now.curvature, factored }
    }

    /// Empty normal equations with an arm wherever a guest meets a product, and each reading told its own.
    fn arrow(&mut self, guests: usize) -> Arrow {
        let mut columns: Vec<Vec<usize>> = vec![(0..SHARED).collect(); guests];
        for (guest, product) in self.seen.iter().filter_map(|seen| Some((seen.guest?.0, seen.product?))) {
            if let Some(columns) = columns.get_mut(guest)
                && let Err(place) = columns.binary_search(&product)
            {
                columns.insert(place, product);
            }
        }
        let arrow = Arrow::new(self.centre.len(), &columns);
        for seen in &mut self.seen {
            let product = seen.product;
            if let (Some((guest, arm)), Some(product)) = (&mut seen.guest, product) {
                let place = columns.get(*guest).and_then(|columns| columns.binary_search(&product).ok());
                *arm = arrow.place(*guest).start + place.unwrap_or_default();
            }
        }
        arrow
    }

    fn damped(&self, curvature: &Arrow, damping: f64) -> Arrow {
        let (mut damped, size) = (curvature.clone(), self.centre.len());
        for i in 0..size {
            let pull = self.precision.get(i * size + i).copied().unwrap_or_default();
            damped.add(i, i, damping * pull);
        }
        damped.tips.iter_mut().for_each(|tip| *tip += damping * self.tip_precision);
        damped
    }

    /// Minus the logarithm of the posterior, up to a constant, with its gradient and curvature.
    fn look(&self, at: &mut At, rates: &mut (Vec<f64>, Vec<f64>)) {
        self.prior(at);
        // The exponential of a sum is the product of those of its parts, of which there are fewer than readings.
        let (by_corner, by_tip) = rates;
        by_corner.iter_mut().zip(&at.corner).for_each(|(rate, x)| *rate = x.exp());
        by_tip.iter_mut().zip(&at.tips).for_each(|(rate, x)| *rate = x.exp());
        let ceiling = at.corner.get(CEILING).copied().unwrap_or_default();
        let rate = |of: &[f64], i: Option<usize>| i.and_then(|i| of.get(i)).copied().unwrap_or(1.0);
        let (salon, loss) = (rate(by_corner, Some(RATE)), rate(by_corner, Some(LOSS)));
        for seen in &self.seen {
            let own = rate(by_tip, seen.guest.map(|(guest, _)| guest)) * rate(by_corner, seen.product);
            at.read(seen, Rates { pigment: salon * own, oxidant: loss }, ceiling);
        }
    }

    /// What the point costs before any reading.
    fn prior(&self, at: &mut At) {
        let At { corner, tips, cost, curvature, down } = at;
        curvature.clear();
        *cost = 0.0;
        let rows = self.precision.chunks_exact(self.centre.len());
        for (i, ((row, cell), (x, centre))) in rows.zip(&mut down.0).zip(corner.iter().zip(&self.centre)).enumerate() {
            let away = corner.iter().zip(&self.centre).map(|(x, centre)| x - centre);
            *cell = row.iter().zip(away).map(|(pull, away)| pull * away).sum();
            *cost += *cell * (x - centre) / 2.0;
            row.iter().enumerate().take(i + 1).for_each(|(j, pull)| curvature.add(i, j, *pull));
        }
        for ((x, down), tip) in tips.iter().zip(&mut down.1).zip(&mut curvature.tips) {
            *tip = self.tip_precision;
            *down = self.tip_precision * x;
            *cost += *down * x / 2.0;
        }
    }
}

impl At {
    /// Adds what one reading costs; a far one's curvature is down-weighted as its pull is.
    #[inline]
    fn read(&mut self, seen: &Seen, rates: Rates, ceiling: f64) {
        let At { cost, curvature, down: (down, down_tips), .. } = self;
        let rates = Rates { pigment: rates.pigment * seen.times.pigment, oxidant: rates.oxidant * seen.times.oxidant };
        let dose = rates.dose(seen.minutes);
        let (left, slope) = pigment::left_and_slope(dose.amount);
        let (way, gone) = (ceiling - seen.start, 1.0 - left);
        let residual = (seen.start + way * gone - seen.after) * seen.per_sd;
        let by_rate = -way * slope * dose.amount * seen.per_sd;
        let slopes = [by_rate, by_rate * dose.by_loss, gone * seen.per_sd];
        let far = residual * residual / STUDENT;
        *cost += STUDENT / 2.0 * far.ln_1p();
        let weighted = slopes.map(|slope| slope / (1.0 + far));
        for (i, pull) in weighted.iter().enumerate() {
            slopes.iter().enumerate().take(i + 1).for_each(|(j, slope)| curvature.add(i, j, pull * slope));
            if let Some(cell) = down.get_mut(i) {
                *cell += pull * residual;
            }
        }
        // Product and guest bear on the rate alone, as the salon does.
        let [pull, ..] = weighted;
        if let Some(product) = seen.product {
            weighted.iter().enumerate().for_each(|(j, pull)| curvature.add(product, j, pull * by_rate));
            curvature.add(product, product, pull * by_rate);
            if let Some(cell) = down.get_mut(product) {
                *cell += pull * residual;
            }
        }
        if let Some((guest, to_product)) = seen.guest {
            let first = curvature.place(guest).start;
            let shared = curvature.arms.get_mut(first..first + SHARED).unwrap_or_default();
            shared.iter_mut().zip(weighted).for_each(|((_, arm), pull)| *arm += pull * by_rate);
            if let Some((_, arm)) = curvature.arms.get_mut(to_product) {
                *arm += pull * by_rate;
            }
            if let (Some(tip), Some(cell)) = (curvature.tips.get_mut(guest), down_tips.get_mut(guest)) {
                *tip += pull * by_rate;
                *cell += pull * residual;
            }
        }
    }
}
