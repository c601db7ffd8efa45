use crate::money::{Measure, MoneyError, Rounding, exact, packs_needed};
use rust_decimal::Decimal;
use serde::Serialize;

/// A product on the shelf. All four amounts are measured alike (all in g, all in mL, or all counted).
///
/// # Source
///
/// That levels are set and kept is asked for by [`au-sm501`](crate::source::citations::money::STOCK_LEVELS); the arithmetic is derived.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StockLevel {
    /// On the shelf now.
    pub on_hand: Measure,
    /// Ordered and not yet delivered.
    pub on_order: Measure,
    /// Used on an average day.
    pub daily_use: Measure,
    /// Kept for bad days: late deliveries, busy weeks.
    pub reserve: Measure,
}

/// When to order, and how much.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Reorder {
    /// Order when stock on hand and on order falls to this or below: use during the lead time, and the reserve.
    pub reorder_point: Decimal,
    /// Whether that is the case now.
    pub due: bool,
    /// How many whole packs fill up to `lead time + days to cover`, reserve included; none while nothing is due.
    pub packs: i64,
    /// The unit of the reorder point: `g`, `mL` or `piece`.
    pub unit: &'static str,
}

impl StockLevel {
    /// For how many days the stock on hand lasts, unrounded; `None` when nothing is used.
    ///
    /// # Errors
    ///
    /// [`MoneyError::DifferentMeasures`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::StockLevel, money::Measure, quantity::Mass};
    ///
    /// let grams = |g: f64| Mass::from_g(g).map(Measure::Mass);
    /// let toner = StockLevel {
    ///     on_hand: grams(900.0)?,
    ///     on_order: grams(0.0)?,
    ///     daily_use: grams(120.0)?,
    ///     reserve: grams(300.0)?,
    /// };
    /// assert_eq!(toner.days()?, Some("7.5".parse()?));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn days(&self) -> Result<Option<Decimal>, MoneyError> {
        let (on_hand, daily) = self.on_hand.beside(self.daily_use)?;
        if daily.is_zero() {
            return Ok(None);
        }
        exact::ratio(&[on_hand], &[daily], "stock days").map(Some)
    }

    /// When to order, and how many packs.
    ///
    /// # Errors
    ///
    /// [`MoneyError::DifferentMeasures`]; [`MoneyError::OutOfRange`] for an empty pack.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::StockLevel, money::Measure, quantity::Mass};
    ///
    /// let grams = |g: f64| Mass::from_g(g).map(Measure::Mass);
    /// let lightener = StockLevel {
    ///     on_hand: grams(900.0)?,
    ///     on_order: grams(0.0)?,
    ///     daily_use: grams(120.0)?,
    ///     reserve: grams(300.0)?,
    /// };
    /// let reorder = lightener.reorder(5, 14, grams(500.0)?)?;
    /// assert_eq!((reorder.due, reorder.reorder_point.to_string()), (true, "900".into())); // 5 days at 120, and 300
    /// assert_eq!(reorder.packs, 4); // up to 19 days at 120 and 300 = 2580 g: 1680 g short
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn reorder(&self, lead_days: u32, cover_days: u32, pack: Measure) -> Result<Reorder, MoneyError> {
        let (daily, reserve) = self.daily_use.beside(self.reserve)?;
        let (on_hand, on_order) = self.on_hand.beside(self.on_order)?;
        self.on_hand.beside(self.daily_use)?;
        let too_large = || MoneyError::TooLarge { field: "reorder point" };
        let level = |days: u64| daily.checked_mul(days.into()).and_then(|used| used.checked_add(reserve));
        let reorder_point = level(lead_days.into()).ok_or_else(too_large)?;
        let fill_to = level(u64::from(lead_days) + u64::from(cover_days)).ok_or_else(too_large)?;
        let available = on_hand.checked_add(on_order).ok_or_else(too_large)?;
        // Asks for one pack's worth of nothing first, so that a pack measured otherwise or empty is always refused.
        packs_needed(self.on_hand, pack)?;
        let due = available <= reorder_point;
        let short = fill_to - available;
        let packs = if due && short > Decimal::ZERO {
            let up = Rounding::ToPositiveInfinity;
            exact::quotient(&[short], &[pack.decimal()?], 0, up, "number of packs")?
        } else {
            0
        };
        Ok(Reorder { reorder_point: reorder_point.normalize(), due, packs, unit: self.on_hand.unit() })
    }
}
