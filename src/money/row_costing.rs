use super::{CostSource, Currency, Labour, Money, MoneyError, Overhead, PackPrice, Rounding, cost_line, exact};
use crate::quantity::{Duration, Mass};

/// One row of the columns: amounts in minor units, masses in g, times in min.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Row {
    pub(crate) pack_price: i64,
    pub(crate) pack_g: f64,
    pub(crate) used_g: f64,
    pub(crate) wasted_g: f64,
    pub(crate) consumables: i64,
    pub(crate) hands_on_min: f64,
    pub(crate) chair_min: f64,
}

/// Product, consumables, labour, overhead, and all of it.
pub(crate) type Costs = [i64; 5];

/// What is the same for every row.
#[derive(Debug)]
pub(crate) struct RowCosting<'a> {
    labour: &'a Labour,
    overhead: &'a Overhead,
    labour_rate: Option<exact::Rate>,
    overhead_rate: Option<exact::Rate>,
    currency: Currency,
    rounding: Rounding,
}

impl<'a> RowCosting<'a> {
    pub(crate) fn new(labour: &'a Labour, overhead: &'a Overhead, currency: Currency, rounding: Rounding) -> Self {
        let (labour_rate, overhead_rate) = (labour.rate(), overhead.rate());
        Self { labour, overhead, labour_rate, overhead_rate, currency, rounding }
    }

    /// Labour and overhead for a thousandth of a minute, where they fit into 64 bits.
    pub(crate) const fn rates(&self) -> (Option<exact::Rate>, Option<exact::Rate>) {
        (self.labour_rate, self.overhead_rate)
    }

    pub(crate) const fn rounding(&self) -> Rounding {
        self.rounding
    }

    /// The same answer in 64-bit whole numbers, for a row whose masses and times have at most three decimals and
    /// whose products fit; `None` for any other row, good or bad.
    #[inline]
    pub(crate) fn quick(&self, row: &Row) -> Option<Costs> {
        let pack = exact::thousandths(row.pack_g)?;
        let (used, wasted) = (exact::thousandths(row.used_g)?, exact::thousandths(row.wasted_g)?);
        let (hands_on, in_chair) = (exact::thousandths(row.hands_on_min)?, exact::thousandths(row.chair_min)?);
        let smallest = row.pack_price.min(pack).min(used).min(wasted).min(row.consumables).min(hands_on).min(in_chair);
        let taken = used + wasted;
        // At the most itself a value may be beyond it by less than is seen here.
        if smallest < 0 || pack.max(taken).max(hands_on).max(in_chair) >= exact::MOST_THOUSANDTHS {
            return None;
        }
        let product = exact::divide_64(row.pack_price.checked_mul(taken)?, pack, self.rounding)?;
        let labour = self.labour_rate?.times(hands_on, self.rounding)?;
        let overhead = self.overhead_rate?.times(in_chair, self.rounding)?;
        let cost = product.checked_add(row.consumables)?.checked_add(labour)?.checked_add(overhead)?;
        Some([product, row.consumables, labour, overhead, cost])
    }

    /// A row line by line, as [`cost_line`] gives it.
    #[cold]
    pub(crate) fn careful(&self, row: &Row) -> Result<Costs, MoneyError> {
        let used = Mass::from_g(row.used_g)?;
        let pack = PackPrice::new(Money::from_minor(row.pack_price, self.currency), Mass::from_g(row.pack_g)?)?;
        let product = CostSource::Supply { pack, used: used.into(), wasted: Some(Mass::from_g(row.wasted_g)?.into()) };
        let consumables = Money::from_minor(row.consumables, self.currency).not_negative("consumables")?;
        let hands_on = Duration::from_min(row.hands_on_min)?;
        let in_chair = Duration::from_min(row.chair_min)?;
        let sources = [
            product,
            CostSource::Stated(consumables),
            CostSource::Labour { labour: *self.labour, hands_on },
            CostSource::Overhead { overhead: *self.overhead, in_chair },
        ];
        let mut costs = [0; 5];
        let mut total = Money::zero(self.currency);
        for (cost, source) in costs.iter_mut().zip(&sources) {
            let amount = cost_line(source, self.rounding)?;
            *cost = amount.minor();
            total = total.plus(amount)?;
        }
        if let Some(cost) = costs.last_mut() {
            *cost = total.minor();
        }
        Ok(costs)
    }
}
