//! What strand readings teach: the most likely rates, and how well they are known now.

use super::{
    Belief, StrandReading,
    arrow::inverse,
    belief::{CEILING_SD, GUEST_SD, OXIDANT_SD, PRODUCT_SD, SALON_SD},
    factors::{LEVERS, Spreads},
    fit::{CEILING, Fit, Fitted, LOSS, RATE, SHARED, Seen},
};

/// All that a salon's strand readings say, ready to be asked about any guest and product.
#[derive(Debug, Clone)]
pub struct Experience {
    fitted: Fitted,
    guests: Vec<Option<String>>,
    products: Vec<Option<String>>,
    /// Guest and product of each reading by their places, and what the levers' unknowns were worth in it.
    counted: Vec<(usize, usize, Spreads)>,
}

/// The most products that are told apart; a book with more is no salon's, and each costs as much as all before it.
const MOST_PRODUCTS: usize = 300;

impl Experience {
    /// Learns from readings: the most likely values (Gauss and Newton's steps, damped) and their covariance (Laplace).
    ///
    /// The logarithm of the rate is the salon's, plus the product's, plus the guest's; each deviation is drawn to zero as
    /// strongly as people and products are alike. So a guest without readings profits from the salon's, and a guest with
    /// many is hardly moved by it. Of a book with more than 300 products those that are read most count.
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
        let products = most_read(readings.iter().map(|reading| reading.product.as_deref()));
        let (mut counted, mut seen) = (Vec::with_capacity(readings.len()), Vec::with_capacity(readings.len()));
        for reading in readings {
            let guest = place(&guests, reading.guest.as_deref());
            let product = place(&products, reading.product.as_deref());
            let (Some(guest), Some(product)) = (guest, product) else { continue };
            let shift = reading.situation.shift();
            counted.push((guest, product, shift.spreads));
            seen.push(Seen::new(reading, &shift).of(guest, SHARED + product));
        }
        let sds = [SALON_SD, OXIDANT_SD, CEILING_SD].into_iter().chain(products.iter().map(|_| PRODUCT_SD));
        let mut centre = Belief::untested().mean.to_vec();
        centre.resize(SHARED + products.len(), 0.0);
        let mut precision = vec![0.0; centre.len() * centre.len()];
        for (i, sd) in sds.enumerate() {
            if let Some(cell) = precision.get_mut(i * centre.len() + i) {
                *cell = 1.0 / (sd * sd);
            }
        }
        let fit = Fit { centre, precision, tip_precision: 1.0 / (GUEST_SD * GUEST_SD), seen };
        Self { fitted: fit.solve(guests.len()), guests, products, counted }
    }

    /// What is believed of one guest's hair and one product. A name without readings, or none, is as uncertain as any new
    /// guest or product of this salon.
    #[must_use]
    pub fn of(&self, guest: Option<&str>, product: Option<&str>) -> Belief {
        let (guest, product) = (place(&self.guests, guest), place(&self.products, product));
        let new = |known: Option<usize>, sd: f64| if known.is_some() { 0.0 } else { sd * sd };
        let Fitted { corner, tips, .. } = &self.fitted;
        let at = |of: &[f64], i: Option<usize>| i.and_then(|i| of.get(i)).copied().unwrap_or_default();
        let asked = |corner: &[f64], tips: &[f64]| {
            let rate = at(corner, Some(RATE)) + at(corner, product.map(|i| SHARED + i)) + at(tips, guest);
            [rate, at(corner, Some(LOSS)), at(corner, Some(CEILING))]
        };
        let mut covariance = [RATE, LOSS, CEILING].map(|what| {
            let (mut right, mut tip) = (vec![0.0; corner.len()], vec![0.0; tips.len()]);
            let places = [Some(what), product.filter(|_| what == RATE).map(|i| SHARED + i)];
            for cell in places.into_iter().flatten() {
                if let Some(cell) = right.get_mut(cell) {
                    *cell = 1.0;
                }
            }
            if let Some(cell) = guest.filter(|_| what == RATE).and_then(|i| tip.get_mut(i)) {
                *cell = 1.0;
            }
            self.fitted.curvature.solve(&self.fitted.factored, &mut right, &mut tip);
            asked(&right, &tip)
        });
        let [[rate, ..], ..] = &mut covariance;
        *rate += new(guest, GUEST_SD) + new(product, PRODUCT_SD);
        // Without a reading of this guest, or of this product on any guest, nothing counts as tested.
        let own = |(g, p, _): &&(usize, usize, Spreads)| match (guest, product) {
            (Some(guest), _) => *g == guest,
            (None, Some(product)) => *p == product,
            (None, None) => false,
        };
        let readings = self.counted.iter().filter(own).count();
        let mut tested = [0.0; LEVERS];
        for (_, _, spreads) in self.counted.iter().filter(own) {
            for (cell, sd) in tested.iter_mut().zip(spreads) {
                *cell += sd / readings as f64;
            }
        }
        Belief { mean: asked(corner, tips), covariance, readings, tested }
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
        let shifts: Vec<_> = readings.iter().map(|reading| reading.situation.shift()).collect();
        let seen = readings.iter().zip(&shifts).map(|(reading, shift)| Seen::new(reading, shift)).collect();
        let precision = inverse(&self.covariance).concat();
        let fitted = Fit { centre: self.mean.to_vec(), precision, tip_precision: 0.0, seen }.solve(0);
        let mean = [RATE, LOSS, CEILING].map(|i| fitted.corner.get(i).copied().unwrap_or_default());
        let covariance = inverse(&fitted.curvature.shared());
        let (old, new) = (self.readings as f64, readings.len() as f64);
        let mut tested = self.tested.map(|sd| sd * old);
        for shift in &shifts {
            for (cell, sd) in tested.iter_mut().zip(shift.spreads) {
                *cell += sd;
            }
        }
        let tested = tested.map(|sum| sum / (old + new));
        Self { mean, covariance, readings: self.readings + readings.len(), tested }
    }
}

fn named<'a>(names: impl Iterator<Item = Option<&'a str>>) -> Vec<Option<String>> {
    let mut known: Vec<Option<&str>> = names.collect();
    known.sort_unstable();
    known.dedup();
    known.into_iter().map(|name| name.map(str::to_owned)).collect()
}

/// Those that are named most often where they are too many, in order.
fn most_read<'a>(names: impl Iterator<Item = Option<&'a str>> + Clone) -> Vec<Option<String>> {
    let mut known = named(names.clone());
    if known.len() > MOST_PRODUCTS {
        let mut times = vec![0_usize; known.len()];
        for at in names.filter_map(|name| place(&known, name)) {
            if let Some(times) = times.get_mut(at) {
                *times += 1;
            }
        }
        let mut counted: Vec<_> = times.into_iter().zip(known).collect();
        counted.sort_by(|a, b| b.0.cmp(&a.0).then_with(|| a.1.cmp(&b.1)));
        known = counted.into_iter().take(MOST_PRODUCTS).map(|(_, name)| name).collect();
        known.sort_unstable();
    }
    known
}

fn place(names: &[Option<String>], name: Option<&str>) -> Option<usize> {
    names.binary_search_by(|known| known.as_deref().cmp(&name)).ok()
}
