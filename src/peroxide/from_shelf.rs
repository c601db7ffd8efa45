use super::{
    blend::BlendError,
    fill::{Entry, Fill, Filled, cheapest},
    mixing::mean_strength,
    search::{fewest, least_left},
    shelf::{Shelf, ShelfError, Stock},
};
use crate::{
    choice::choice,
    quantity::{Mass, MassFraction, PricePerKg, Quantity},
    source::Interval,
};

choice! {
    /// What makes one blend better than another.
    #[derive(Default)]
    Objective: "objective" {
        /// Least cost, at the prices of the shelf.
        #[default]
        LeastCost = "least-cost" => "least cost",
        /// Fewest bottles used; among those, least cost.
        FewestBottles = "fewest-bottles" => "fewest bottles",
        /// Least left over in the bottles used (a stock without an amount in hand leaves none); then fewest bottles, then
        /// least cost.
        LeastLeftover = "least-leftover" => "least leftover",
    }
}

/// What to take from one bottle.
#[derive(Debug, Clone, PartialEq)]
pub struct Portion {
    /// The bottle.
    pub stock: Stock,
    /// How much of it.
    pub mass: Mass,
}

/// A blend from the shelf: only the bottles that are used, in the order of the shelf.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{Objective, Shelf, Stock, blend_shelf}, quantity::{Mass, MassFraction, PricePerKg}};
///
/// let (ww, g) = (MassFraction::from_ww_percent, Mass::from_g);
/// let strong = Stock::new("12 %", ww(12.0)?).with_price(PricePerKg::from_per_kg(9.0)?).with_in_hand(g(30.0)?);
/// let shelf = Shelf::new(vec![strong, Stock::new("3 %", ww(3.0)?)])?;
/// let blend = blend_shelf(&shelf, ww(6.0)?, g(60.0)?, Objective::LeastCost)?; // 20 g and 40 g
/// assert_eq!((blend.total(), blend.leftover()), (g(60.0)?, g(10.0)?));
/// assert_eq!(blend.strength().map(|strength| strength.best()), Some(ww(6.0)?));
/// assert!((blend.cost() - 0.18).abs() < 1e-12); // 20 g at 9.00 a kilogram
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct ShelfBlend {
    /// The bottles used.
    pub portions: Vec<Portion>,
}

impl ShelfBlend {
    /// Everything together.
    #[must_use]
    pub fn total(&self) -> Mass {
        self.portions.iter().map(|portion| portion.mass).sum()
    }

    /// The strength of the whole, with the bounds of the bottles; none when it weighs nothing.
    #[must_use]
    pub fn strength(&self) -> Option<Interval<MassFraction>> {
        mean_strength(self.portions.iter().map(|portion| (portion.stock.strength, portion.mass)))
    }

    /// What it costs, in the currency of the prices.
    #[must_use]
    pub fn cost(&self) -> f64 {
        self.portions.iter().map(|p| p.mass.g() / 1000.0 * p.stock.price.map_or(0.0, PricePerKg::per_kg)).sum()
    }

    /// What stays in the bottles that were used and whose amount is known.
    #[must_use]
    pub fn leftover(&self) -> Mass {
        let left = |portion: &Portion| Some(portion.stock.in_hand?.minus_or_zero(portion.mass));
        self.portions.iter().filter_map(left).sum()
    }
}

/// Blends any number of stocks to a strength and a total, by the objective asked for.
///
/// The best estimate of each strength decides what is taken; [`ShelfBlend::strength`] has the bounds of the result.
///
/// # Units
///
/// Strengths in % w/w, masses in g, prices per kg in any one currency. Nothing is rounded:
/// see [`round_to_scale`](super::round_to_scale).
///
/// # Errors
///
/// [`ShelfError`] when the target or the total is out of reach (the text says what is reachable), the amount asked for is zero,
/// or there are more than 16 bottles for an objective that needs a search.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{Objective, Shelf, Stock, blend_shelf}, quantity::{Mass, MassFraction, PricePerKg}};
///
/// let ww = MassFraction::from_ww_percent;
/// let shelf = Shelf::new(vec![
///     Stock::new("12 %", ww(12.0)?).with_price(PricePerKg::from_per_kg(9.0)?).with_in_hand(Mass::from_g(30.0)?),
///     Stock::new("9 %", ww(9.0)?).with_price(PricePerKg::from_per_kg(8.0)?),
///     Stock::new("3 %", ww(3.0)?).with_price(PricePerKg::from_per_kg(5.0)?),
/// ])?;
/// let blend = blend_shelf(&shelf, ww(6.0)?, Mass::from_g(60.0)?, Objective::LeastCost)?;
/// let taken: Vec<_> = blend.portions.iter().map(|p| (p.stock.name.as_str(), p.mass.g())).collect();
/// assert_eq!(taken, [("12 %", 20.0), ("3 %", 40.0)]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of mass and of peroxide. Least cost is a linear programme with two equations, solved exactly by its dual
/// and compared with the HiGHS solver of SciPy in the tests; the other two search all combinations of bottles.
pub fn blend_shelf(
    shelf: &Shelf,
    target: MassFraction,
    total: Mass,
    objective: Objective,
) -> Result<ShelfBlend, ShelfError> {
    blend(shelf, target, total, objective, None)
}

/// [`blend_shelf`] for a scale: of blends that are equal otherwise, the one that weighing moves least off its target.
///
/// Matters with [`Objective::FewestBottles`], where several pairs of bottles may serve as well. The masses are still not
/// rounded: see [`ShelfBlend::round_to_scale`].
///
/// # Errors
///
/// As [`blend_shelf`].
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{Objective, Shelf, Stock, blend_shelf_to_scale}, quantity::{Mass, MassFraction}};
///
/// let (ww, g) = (MassFraction::from_ww_percent, Mass::from_g);
/// let shelf = Shelf::new(vec![Stock::new("12 %", ww(12.0)?), Stock::new("6 %", ww(6.0)?), Stock::new("3 %", ww(3.0)?)])?;
/// let blend = blend_shelf_to_scale(&shelf, ww(4.5)?, g(80.0)?, Objective::FewestBottles, g(1.0)?)?;
/// let taken: Vec<_> = blend.portions.iter().map(|p| (p.stock.name.as_str(), p.mass.g())).collect();
/// assert_eq!(taken, [("6 %", 40.0), ("3 %", 40.0)]); // 12 % with 3 % would be 13.3 g and 66.7 g
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn blend_shelf_to_scale(
    shelf: &Shelf,
    target: MassFraction,
    total: Mass,
    objective: Objective,
    division: Mass,
) -> Result<ShelfBlend, ShelfError> {
    blend(shelf, target, total, objective, Some(division))
}

fn blend(
    shelf: &Shelf,
    target: MassFraction,
    total: Mass,
    objective: Objective,
    division: Option<Mass>,
) -> Result<ShelfBlend, ShelfError> {
    let off = |fill: &Fill| -> f64 {
        let weighed = |division| portions(shelf, fill, total).ok()?.round_to_scale(division).ok();
        division
            .and_then(weighed)
            .map_or(0.0, |weighed| (weighed.strength.best().ww_percent() - target.ww_percent()).abs())
    };
    let mut entries = entries(shelf, target, total)?;
    let places = shelf.stocks().len();
    let fill = match objective {
        Objective::LeastCost => match cheapest(&mut entries, total.g(), places) {
            Filled::Best(fill) => Some(fill),
            Filled::OutOfReach { .. } => None,
        },
        Objective::FewestBottles => fewest(&entries, total.g(), places, &off)?,
        Objective::LeastLeftover => {
            let bounded: Vec<bool> = shelf.stocks().iter().map(|stock| stock.in_hand.is_some()).collect();
            least_left(&entries, &bounded, total.g(), places)?
        }
    };
    match fill {
        Some(fill) => portions(shelf, &fill, total),
        None => Err(out_of_reach(shelf, &mut entries, target, total)),
    }
}

/// The shelf as the solver sees it, after the checks that need no solver.
fn entries(shelf: &Shelf, target: MassFraction, total: Mass) -> Result<Vec<Entry>, ShelfError> {
    if total == Mass::ZERO {
        return Err(BlendError::Nothing { what: "total" }.into());
    }
    let mut weakest = MassFraction::ZERO;
    let mut strongest = MassFraction::ZERO;
    for (place, stock) in shelf.stocks().iter().enumerate() {
        let strength = stock.strength.best();
        weakest = if place == 0 || strength < weakest { strength } else { weakest };
        strongest = if strength > strongest { strength } else { strongest };
    }
    if target > strongest {
        return Err(BlendError::AboveStrongest { target, strongest, weakest }.into());
    }
    if target < weakest {
        return Err(BlendError::BelowWeakest { target, weakest, strongest }.into());
    }
    let limit = |stock: &Stock| stock.in_hand.map_or(total.g(), Mass::g);
    if shelf.stocks().iter().map(limit).sum::<f64>() < total.g() * (1.0 - 1e-12) {
        return Err(ShelfError::NotEnough {
            wanted: total,
            in_hand: shelf.stocks().iter().filter_map(|s| s.in_hand).sum(),
        });
    }
    let entry = |(place, stock): (usize, &Stock)| Entry {
        stock: place,
        excess: stock.strength.best().ww_percent() - target.ww_percent(),
        cost: stock.price.map_or(0.0, PricePerKg::per_kg),
        cap: limit(stock).min(total.g()),
        in_hand: limit(stock),
    };
    Ok(shelf.stocks().iter().enumerate().map(entry).collect())
}

/// The bottles that the fill uses.
fn portions(shelf: &Shelf, fill: &Fill, total: Mass) -> Result<ShelfBlend, ShelfError> {
    // Less than this is a rounding of the solver, not a portion.
    let crumb = 1e-12 * total.g();
    let mut portions = Vec::new();
    for (stock, &mass) in shelf.stocks().iter().zip(&fill.masses) {
        if mass > crumb {
            let mass = Mass::from_g(mass).map_err(BlendError::from)?;
            portions.push(Portion { stock: stock.clone(), mass });
        }
    }
    Ok(ShelfBlend { portions })
}

/// What can be had instead: the strengths of this total, and the most of this strength.
fn out_of_reach(shelf: &Shelf, entries: &mut [Entry], target: MassFraction, total: Mass) -> ShelfError {
    let ends = match cheapest(entries, total.g(), shelf.stocks().len()) {
        Filled::OutOfReach { weakest, strongest } => [weakest, strongest],
        Filled::Best(_) => [0.0, 0.0],
    };
    let [weakest, strongest] = ends.map(|excess| MassFraction::nearest(target.ww_percent() + excess));
    ShelfError::AmountsInHand { target, total, weakest, strongest, most: Mass::nearest(most(entries)) }
}

/// The largest total on target, in grams: one side is used up, the other balances it with its mildest bottles first.
fn most(entries: &mut [Entry]) -> f64 {
    let pull = |sign: f64| entries.iter().map(|e| (sign * e.excess).max(0.0) * e.cap).sum::<f64>();
    let balance = pull(1.0).min(pull(-1.0));
    entries.sort_unstable_by(|a, b| a.excess.abs().total_cmp(&b.excess.abs()));
    let side = |sign: f64| -> f64 {
        let mut left = balance;
        let mut mass = 0.0;
        for entry in entries.iter().filter(|e| sign * e.excess > 0.0) {
            let take = entry.cap.min(left / entry.excess.abs());
            left -= take * entry.excess.abs();
            mass += take;
        }
        mass
    };
    let exact: f64 = entries.iter().filter(|e| e.excess == 0.0).map(|e| e.cap).sum();
    exact + side(1.0) + side(-1.0)
}
