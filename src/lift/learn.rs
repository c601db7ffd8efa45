//! What strand readings teach: the most likely rates, and how well they are known now.

use super::{
    Belief, StrandReading,
    belief::{CEILING_SD, GUEST_SD, OXIDANT_SD, PRODUCT_SD, SALON_SD},
    dense::Symmetric,
    dose::Rates,
    factors::{Shift, Spreads},
    pigment,
};

/// Readings far from what all others say lose weight as those of a Student distribution with four degrees of freedom do,
/// so that one bad reading does not carry the fit away.
const STUDENT: f64 = 4.0;
/// The longest fit takes this many steps; an ordinary one five.
const STEPS: usize = 60;

/// All that a salon's strand readings say, ready to be asked about any guest and product.
#[derive(Debug, Clone)]
pub struct Experience {
    mean: Vec<f64>,
    covariance: Symmetric,
    guests: Vec<Option<String>>,
    products: Vec<Option<String>>,
    /// Guest and product of each reading by their places, and what the levers' unknowns were worth in it.
    counted: Vec<(usize, usize, Spreads)>,
}

/// Places of the numbers that all readings share.
const RATE: usize = 0;
const LOSS: usize = 1;
const CEILING: usize = 2;
const SHARED: usize = 3;

impl Experience {
    /// Learns from readings: the most likely values (Gauss and Newton's steps, damped) and their covariance (Laplace).
    ///
    /// The logarithm of the rate is the salon's, plus the product's, plus the guest's; each deviation is drawn to zero as
    /// strongly as people and products are alike. So a guest without readings profits from the salon's, and a guest with
    /// many is hardly moved by it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, lift::{Experience, Reader, Situation, StrandReading}};
    /// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
    ///
    /// let strand = StrandReading {
    ///     situation: Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?)),
    ///     time: Duration::from_min(30.0)?,
    ///     before: Level::new(4.0)?,
    ///     after: Level::new(8.5)?,
    ///     reader: Reader::Eye,
    ///     guest: Some("J-014".to_owned()),
    ///     product: None,
    /// };
    /// let learned = Experience::from_readings(&[strand]).of(Some("J-014"), None);
    /// assert!(learned.pigment_per_min().best() > 0.041, "it lifted more than most hair does");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn from_readings(readings: &[StrandReading]) -> Self {
        let guests = named(readings.iter().map(|reading| reading.guest.as_deref()));
        let products = named(readings.iter().map(|reading| reading.product.as_deref()));
        let counted: Vec<_> = readings
            .iter()
            .filter_map(|r| {
                let (guest, product) = (place(&guests, r.guest.as_deref())?, place(&products, r.product.as_deref())?);
                Some((guest, product, r.situation.shift().spreads))
            })
            .collect();
        let prior = Belief::untested();
        let mut centre = prior.mean.to_vec();
        centre.resize(SHARED + guests.len() + products.len(), 0.0);
        let mut sds = vec![SALON_SD, OXIDANT_SD, CEILING_SD];
        sds.resize(SHARED + guests.len(), GUEST_SD);
        sds.resize(centre.len(), PRODUCT_SD);
        let precision = Symmetric::diagonal(&sds.iter().map(|sd| 1.0 / (sd * sd)).collect::<Vec<_>>());
        let seen: Vec<Seen> = readings
            .iter()
            .zip(&counted)
            .map(|(reading, (guest, product, _))| {
                Seen::new(reading, vec![SHARED + guest, SHARED + guests.len() + product])
            })
            .collect();
        let fit = Fit { centre, precision, seen };
        let (mean, covariance) = fit.solve();
        Self { mean, covariance, guests, products, counted }
    }

    /// What is believed of one guest's hair and one product. A name without readings, or none, is as uncertain as any new
    /// guest or product of this salon.
    #[must_use]
    pub fn of(&self, guest: Option<&str>, product: Option<&str>) -> Belief {
        let (guest, product) = (place(&self.guests, guest), place(&self.products, product));
        let mut places = vec![RATE];
        let mut extra = 0.0;
        match guest {
            Some(i) => places.push(SHARED + i),
            None => extra += GUEST_SD * GUEST_SD,
        }
        match product {
            Some(i) => places.push(SHARED + self.guests.len() + i),
            None => extra += PRODUCT_SD * PRODUCT_SD,
        }
        let at = |i: usize| self.mean.get(i).copied().unwrap_or_default();
        let sum = |column: usize| places.iter().map(|row| self.covariance.get(*row, column)).sum::<f64>();
        let rate: f64 = places.iter().map(|column| sum(*column)).sum::<f64>() + extra;
        let get = |row, column| self.covariance.get(row, column);
        // Without a reading of this guest, or of this product on any guest, nothing counts as tested.
        let own = |(g, p, _): &&(usize, usize, Spreads)| match (guest, product) {
            (Some(guest), _) => *g == guest,
            (None, Some(product)) => *p == product,
            (None, None) => false,
        };
        let readings = self.counted.iter().filter(own).count();
        let mut tested = [0.0; 7];
        for (_, _, spreads) in self.counted.iter().filter(own) {
            for (cell, sd) in tested.iter_mut().zip(spreads) {
                *cell += sd / readings as f64;
            }
        }
        Belief {
            mean: [places.iter().map(|i| at(*i)).sum(), at(LOSS), at(CEILING)],
            covariance: [
                [rate, sum(LOSS), sum(CEILING)],
                [sum(LOSS), get(LOSS, LOSS), get(LOSS, CEILING)],
                [sum(CEILING), get(CEILING, LOSS), get(CEILING, CEILING)],
            ],
            readings,
            tested,
        }
    }
}

impl Belief {
    /// The same belief after more readings of this hair and product, for example a level seen during the service.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, lift::{Belief, Reader, Situation, StrandReading}};
    /// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
    ///
    /// let seen = StrandReading {
    ///     situation: Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?)),
    ///     time: Duration::from_min(20.0)?,
    ///     before: Level::new(4.0)?,
    ///     after: Level::new(5.0)?,
    ///     reader: Reader::Eye,
    ///     guest: None,
    ///     product: None,
    /// };
    /// let (before, after) = (Belief::untested(), Belief::untested().after_readings(&[seen]));
    /// assert!(after.pigment_per_min().best() < before.pigment_per_min().best(), "this hair is slow");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn after_readings(&self, readings: &[StrandReading]) -> Self {
        if readings.is_empty() {
            return *self;
        }
        let mut covariance = Symmetric::diagonal(&[0.0; SHARED]);
        for (i, row) in self.covariance.iter().enumerate() {
            for (j, cell) in row.iter().enumerate() {
                covariance.add(i, j, *cell);
            }
        }
        let seen = readings.iter().map(|reading| Seen::new(reading, Vec::new())).collect();
        let (mean, known) = Fit { centre: self.mean.to_vec(), precision: covariance.inverse(), seen }.solve();
        let at = |i: usize| mean.get(i).copied().unwrap_or_default();
        let row = |i| [known.get(i, RATE), known.get(i, LOSS), known.get(i, CEILING)];
        let (old, new) = (self.readings as f64, readings.len() as f64);
        let mut tested = self.tested.map(|sd| sd * old);
        for reading in readings {
            for (cell, sd) in tested.iter_mut().zip(reading.situation.shift().spreads) {
                *cell += sd;
            }
        }
        Self {
            mean: [at(RATE), at(LOSS), at(CEILING)],
            covariance: [row(RATE), row(LOSS), row(CEILING)],
            readings: self.readings + readings.len(),
            tested: tested.map(|sum| sum / (old + new)),
        }
    }
}

fn named<'a>(names: impl Iterator<Item = Option<&'a str>>) -> Vec<Option<String>> {
    let mut known: Vec<Option<String>> = names.map(|name| name.map(str::to_owned)).collect();
    known.sort_unstable();
    known.dedup();
    known
}

fn place(names: &[Option<String>], name: Option<&str>) -> Option<usize> {
    names.iter().position(|known| known.as_deref() == name)
}

/// One reading, reduced to what the fit needs.
struct Seen {
    start: f64,
    after: f64,
    sd: f64,
    time: crate::quantity::Duration,
    pigment_shift: f64,
    oxidant_shift: f64,
    /// Places of the deviations in the vector of unknowns.
    places: Vec<usize>,
}

impl Seen {
    fn new(reading: &StrandReading, places: Vec<usize>) -> Self {
        // Both levels were read, so the error of the lift is that of two readings.
        let sd = reading.reader.sd_levels() * std::f64::consts::SQRT_2;
        let Shift { pigment, oxidant, .. } = reading.situation.shift();
        Self {
            start: reading.before.number(),
            after: reading.after.number(),
            sd,
            time: reading.time,
            pigment_shift: pigment,
            oxidant_shift: oxidant,
            places,
        }
    }

    /// The residual in standard deviations, and how it answers to the unknowns that bear on it.
    fn residual(&self, x: &[f64]) -> (f64, Vec<(usize, f64)>) {
        let at = |i: usize| x.get(i).copied().unwrap_or_default();
        let rate = at(RATE) + self.pigment_shift + self.places.iter().map(|i| at(*i)).sum::<f64>();
        let rates = Rates { pigment: rate.exp(), oxidant: (at(LOSS) + self.oxidant_shift).exp() };
        let dose = rates.dose(self.time);
        let way = at(CEILING) - self.start;
        let gone = 1.0 - pigment::left(dose);
        let by_rate = -way * pigment::slope(dose) * dose / self.sd;
        let mut slopes =
            vec![(RATE, by_rate), (LOSS, by_rate * rates.loss_sensitivity(self.time)), (CEILING, gone / self.sd)];
        slopes.extend(self.places.iter().map(|i| (*i, by_rate)));
        ((self.start + way * gone - self.after) / self.sd, slopes)
    }
}

struct Fit {
    centre: Vec<f64>,
    precision: Symmetric,
    seen: Vec<Seen>,
}

impl Fit {
    fn solve(&self) -> (Vec<f64>, Symmetric) {
        let mut x = self.centre.clone();
        let (mut cost, mut damping) = (self.cost(&x), 1e-6);
        for _ in 0..STEPS {
            let (curvature, gradient) = self.system(&x);
            let mut damped = curvature;
            for i in 0..x.len() {
                damped.add(i, i, damping * self.precision.get(i, i));
            }
            let step = damped.solve(&gradient);
            let tried: Vec<f64> = x.iter().zip(&step).map(|(now, change)| now - change).collect();
            let new = self.cost(&tried);
            if new <= cost {
                let gained = cost - new;
                (x, cost, damping) = (tried, new, damping / 10.0);
                if gained < 1e-13 * (1.0 + cost) {
                    break;
                }
            } else {
                damping = (damping * 10.0).max(1e-3);
            }
        }
        let (curvature, _) = self.system(&x);
        (x, curvature.inverse())
    }

    /// Minus the logarithm of the posterior, up to a constant.
    fn cost(&self, x: &[f64]) -> f64 {
        let away: Vec<f64> = x.iter().zip(&self.centre).map(|(now, centre)| now - centre).collect();
        let prior: f64 = self.precision.times(&away).iter().zip(&away).map(|(pull, away)| pull * away / 2.0).sum();
        let readings = self.seen.iter().map(|seen| {
            let (residual, _) = seen.residual(x);
            STUDENT / 2.0 * (residual * residual / STUDENT).ln_1p()
        });
        prior + readings.sum::<f64>()
    }

    /// Curvature and gradient of the cost; a far reading's curvature is down-weighted as its pull is.
    fn system(&self, x: &[f64]) -> (Symmetric, Vec<f64>) {
        let mut curvature = self.precision.clone();
        let away: Vec<f64> = x.iter().zip(&self.centre).map(|(now, centre)| now - centre).collect();
        let mut gradient = self.precision.times(&away);
        for seen in &self.seen {
            let (residual, slopes) = seen.residual(x);
            let weight = 1.0 / (1.0 + residual * residual / STUDENT);
            curvature.add_square(&slopes, weight);
            for (i, slope) in slopes {
                if let Some(cell) = gradient.get_mut(i) {
                    *cell += weight * residual * slope;
                }
            }
        }
        (curvature, gradient)
    }
}
