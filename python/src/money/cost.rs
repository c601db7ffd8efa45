use super::{HALF_UP, PyMoney, grams, hours, minutes, rounding};
use crate::answer::answer;
use crate::error::{FoilworkError, raise};
use crate::exact::Number;
use crate::sequence::Sequence;
use foilwork::money::{self, CostKind, CostTable, Labour, Measure, OnCosts, Overhead, PackPrice};
use foilwork::{quantity::Volume, source::Basis};
use pyo3::prelude::*;
use rust_decimal::Decimal;

/// Cost of what was taken from a pack, waste included, at its unrounded price: by mass, by volume or as a count.
///
/// Args:
///     pack_price: what a pack costs.
///     pack: what it holds, in ``unit``.
///     used: what was used and thrown away, in ``unit``.
///     unit: ``"g"``, ``"mL"`` or ``"piece"``.
///     rounding: how the cost becomes whole minor units, once; see :class:`Money`.
///
/// Raises:
///     FoilworkError: an empty pack, a price below nothing, a value out of range, an unknown unit.
///
/// Examples:
///     >>> from foilwork.money import Money, supply_cost
///     >>> supply_cost(Money("18.90", "EUR"), 1000, 42, unit="g")
///     Money('0.79', 'EUR')
///     >>> supply_cost(Money("24.00", "EUR"), 500, 42, unit="piece")
///     Money('2.02', 'EUR')
#[pyfunction]
#[pyo3(signature = (pack_price, pack, used, *, unit, rounding = HALF_UP), text_signature = "(pack_price, pack, used, *, unit, rounding='midpoint-away-from-zero')")]
pub fn supply_cost(pack_price: PyMoney, pack: f64, used: f64, unit: &str, rounding: &str) -> PyResult<PyMoney> {
    let pack = PackPrice::new(pack_price.0, measure(pack, unit)?).map_err(raise)?;
    money::supply_cost(pack, measure(used, unit)?, self::rounding(rounding)?).map(PyMoney).map_err(raise)
}

/// Price of one gram, millilitre or piece, unrounded to 28 significant digits.
///
/// Args:
///     pack_price: what a pack costs.
///     pack: what it holds, in ``unit``.
///     unit: ``"g"``, ``"mL"`` or ``"piece"``.
///
/// Raises:
///     FoilworkError: as :func:`supply_cost`.
///
/// Source:
///     OpenStax, Prealgebra 2e, module m81303.
///
/// Examples:
///     >>> from foilwork.money import Money, unit_price
///     >>> unit_price(Money("3.99", "USD"), 24, unit="piece")
///     Decimal('0.16625')
#[pyfunction]
#[pyo3(signature = (pack_price, pack, *, unit))]
pub fn unit_price(pack_price: PyMoney, pack: f64, unit: &str) -> PyResult<Decimal> {
    let pack = PackPrice::new(pack_price.0, measure(pack, unit)?).map_err(raise)?;
    money::unit_price(pack).map(|price| price.per_unit).map_err(raise)
}

/// How many whole packs cover the need: always rounded up.
///
/// Args:
///     need: what is needed, in ``unit``.
///     pack: what a pack holds, in ``unit``.
///     unit: ``"g"``, ``"mL"`` or ``"piece"``.
///
/// Raises:
///     FoilworkError: an empty pack, a value out of range, an unknown unit.
///
/// Examples:
///     >>> from foilwork.money import packs_needed
///     >>> packs_needed(17_500, 12, unit="g")
///     1459
#[pyfunction]
#[pyo3(signature = (need, pack, *, unit))]
pub fn packs_needed(need: f64, pack: f64, unit: &str) -> PyResult<i64> {
    money::packs_needed(measure(need, unit)?, measure(pack, unit)?).map_err(raise)
}

/// Cost of labour for one productive minute, on-costs and idle hours included, unrounded.
///
/// Args:
///     wage_per_h: wage for one paid hour.
///     on_costs_percent: what the employer pays on top, in percent of the wage.
///     paid_h: paid hours of a period.
///     productive_h: hours of the same period with hands on a guest.
///
/// Raises:
///     FoilworkError: a negative wage, on-costs out of range, productive hours above paid ones.
///
/// Examples:
///     >>> from foilwork.money import Money, labour_per_minute
///     >>> labour_per_minute(Money("15.00", "EUR"), 20, paid_h=40, productive_h=30)
///     Decimal('0.4')
#[pyfunction]
pub fn labour_per_minute(
    wage_per_h: PyMoney,
    on_costs_percent: Number,
    paid_h: f64,
    productive_h: f64,
) -> PyResult<Decimal> {
    let labour = labour(wage_per_h, on_costs_percent, paid_h, productive_h)?;
    money::labour_per_minute(&labour).map(|price| price.per_unit).map_err(raise)
}

/// Cost of so much hands-on time, rounded once from the exact value.
///
/// Args:
///     hands_on_min: hands-on time, in min.
///     wage_per_h: wage for one paid hour.
///     on_costs_percent: what the employer pays on top, in percent of the wage.
///     paid_h: paid hours of a period.
///     productive_h: hours of the same period with hands on a guest.
///     rounding: how the cost becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: as :func:`labour_per_minute`.
///
/// Examples:
///     >>> from foilwork.money import Money, labour_cost
///     >>> labour_cost(75, Money("16.00", "EUR"), 25, paid_h=38, productive_h=28.5)
///     Money('33.33', 'EUR')
#[pyfunction]
#[pyo3(signature = (hands_on_min, wage_per_h, on_costs_percent, paid_h, productive_h, *, rounding = HALF_UP), text_signature = "(hands_on_min, wage_per_h, on_costs_percent, paid_h, productive_h, *, rounding='midpoint-away-from-zero')")]
pub fn labour_cost(
    hands_on_min: f64,
    wage_per_h: PyMoney,
    on_costs_percent: Number,
    paid_h: f64,
    productive_h: f64,
    rounding: &str,
) -> PyResult<PyMoney> {
    let labour = labour(wage_per_h, on_costs_percent, paid_h, productive_h)?;
    labour.cost(minutes(hands_on_min)?, self::rounding(rounding)?).map(PyMoney).map_err(raise)
}

/// Overhead for one productive hour of one chair, unrounded.
///
/// Args:
///     overhead: overhead of a period.
///     chairs: how many chairs carry it.
///     productive_h_per_chair: hours of one chair in that period with a guest in it. Opening hours understate it.
///
/// Raises:
///     FoilworkError: a negative overhead, no chair, no productive hours.
///
/// Source:
///     Overhead rate per hour of activity: OpenStax, Principles of Accounting, Volume 2, module m68135.
///
/// Examples:
///     >>> from foilwork.money import Money, overhead_per_chair_hour
///     >>> overhead_per_chair_hour(Money("60000", "EUR"), chairs=4, productive_h_per_chair=1500)
///     Decimal('10')
#[pyfunction]
pub fn overhead_per_chair_hour(overhead: PyMoney, chairs: u32, productive_h_per_chair: f64) -> PyResult<Decimal> {
    let overhead = Overhead::new(overhead.0, chairs, hours(productive_h_per_chair)?).map_err(raise)?;
    money::overhead_per_chair_hour(&overhead).map(|price| price.per_unit).map_err(raise)
}

/// Overhead of so much time in the chair, rounded once from the exact value.
///
/// Args:
///     chair_min: time in the chair, in min.
///     overhead: overhead of a period.
///     chairs: how many chairs carry it.
///     productive_h_per_chair: hours of one chair in that period with a guest in it.
///     rounding: how the cost becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: as :func:`overhead_per_chair_hour`.
///
/// Examples:
///     >>> from foilwork.money import Money, overhead_cost
///     >>> overhead_cost(100, Money("60000", "EUR"), chairs=4, productive_h_per_chair=1500)
///     Money('16.67', 'EUR')
#[pyfunction]
#[pyo3(signature = (chair_min, overhead, chairs, productive_h_per_chair, *, rounding = HALF_UP), text_signature = "(chair_min, overhead, chairs, productive_h_per_chair, *, rounding='midpoint-away-from-zero')")]
pub fn overhead_cost(
    chair_min: f64,
    overhead: PyMoney,
    chairs: u32,
    productive_h_per_chair: f64,
    rounding: &str,
) -> PyResult<PyMoney> {
    let overhead = Overhead::new(overhead.0, chairs, hours(productive_h_per_chair)?).map_err(raise)?;
    overhead.cost(minutes(chair_min)?, self::rounding(rounding)?).map(PyMoney).map_err(raise)
}

/// Share an amount out in proportion to weights; the shares always add up to the amount.
///
/// Args:
///     amount: what is shared out.
///     weights: one for each share, nothing or more.
///
/// Raises:
///     FoilworkError: no weights, a negative one, or all of them nothing.
///
/// Examples:
///     >>> from foilwork.money import Money, allocate
///     >>> allocate(Money("10.00", "EUR"), [1, 1, 1])
///     [Money('3.34', 'EUR'), Money('3.33', 'EUR'), Money('3.33', 'EUR')]
#[pyfunction]
pub fn allocate(amount: PyMoney, weights: Sequence<Number>) -> PyResult<Vec<PyMoney>> {
    let weights: Vec<_> = weights.0.into_iter().map(|weight| weight.0).collect();
    let shares = money::allocate(amount.0, &weights).map_err(raise)?;
    Ok(shares.into_iter().map(PyMoney).collect())
}

answer! {
    /// One kind of cost, planned against actual.
    Variance {
        /// The kind of cost.
        kind: String,
        /// From the plan.
        planned: PyMoney,
        /// From what was weighed and timed.
        actual: PyMoney,
        /// Actual less planned: above zero, it cost more than planned.
        difference: PyMoney,
    }
}

answer! {
    /// One line of a cost table.
    CostLine {
        /// The kind of cost.
        kind: String,
        /// What it is.
        what: String,
        /// The section of the head it belongs to, where there is one.
        section: Option<String>,
        /// The bowl it belongs to, where there is one.
        bowl: Option<String>,
        /// The amount.
        amount: PyMoney,
        /// Its share of the total in percent, to one decimal.
        share_percent: Option<Decimal>,
    }
}

/// What a service costs, line by line; the total is the sum of the lines, however they are grouped.
///
/// Args:
///     currency: three-letter code of every line.
///
/// Raises:
///     FoilworkError: unknown currency.
///
/// Examples:
///     >>> from foilwork.money import CostTable, Money
///     >>> table = CostTable("EUR")
///     >>> table.add("product", "Pale Drift lightener", Money("2.11", "EUR"), section="crown", bowl="A")
///     >>> table.add("labour", "hands-on time", Money("33.33", "EUR"))
///     >>> table.total
///     Money('35.44', 'EUR')
///     >>> [str(line.share_percent) for line in table.lines]
///     ['6.0', '94.0']
#[pyclass(name = "CostTable", module = "foilwork.money")]
pub struct PyCostTable(pub CostTable);

#[pymethods]
impl PyCostTable {
    #[new]
    fn new(currency: &str) -> PyResult<Self> {
        Ok(Self(CostTable::new(currency.parse().map_err(raise)?)))
    }

    /// Add a line.
    ///
    /// Args:
    ///     kind: one of ``"product"``, ``"additive"``, ``"consumables"``, ``"laundry"``, ``"labour"``, ``"overhead"``,
    ///         ``"card-fee"``, ``"other"``.
    ///     what: what it is, in your words.
    ///     amount: what it costs, nothing or more.
    ///     section: the section of the head it belongs to, where there is one.
    ///     bowl: the bowl it belongs to, where there is one.
    ///
    /// Raises:
    ///     FoilworkError: an unknown kind, a negative amount, another currency.
    #[pyo3(signature = (kind, what, amount, *, section = None, bowl = None))]
    fn add(
        &mut self,
        kind: &str,
        what: &str,
        amount: PyMoney,
        section: Option<&str>,
        bowl: Option<&str>,
    ) -> PyResult<()> {
        let kind: CostKind = kind.parse().map_err(raise)?;
        let line = money::CostLine::new(kind, what, Basis::Stated, amount.0);
        let (section, bowl) = (section.map(str::to_owned), bowl.map(str::to_owned));
        self.0.push(money::CostLine { section, bowl, ..line }).map_err(raise)
    }

    /// The sum of the lines.
    #[getter]
    fn total(&self) -> PyMoney {
        PyMoney(self.0.total())
    }

    /// The lines. Their shares add up to exactly 100; they are ``None`` when the total is zero.
    #[getter]
    fn lines(&self) -> Vec<CostLine> {
        let shares = self.0.shares();
        let lines = self.0.lines().iter().enumerate();
        lines
            .map(|(place, line)| CostLine {
                kind: line.kind.code().to_owned(),
                what: line.what.clone(),
                section: line.section.clone(),
                bowl: line.bowl.clone(),
                amount: PyMoney(line.amount),
                share_percent: shares.get(place).map(|share| share.share_percent),
            })
            .collect()
    }

    /// This table as planned against another as it really was, for each kind of cost that occurs in either.
    ///
    /// Args:
    ///     actual: the other table.
    ///
    /// Raises:
    ///     FoilworkError: two currencies.
    ///
    /// Examples:
    ///     >>> from foilwork.money import CostTable, Money
    ///     >>> planned, actual = CostTable("EUR"), CostTable("EUR")
    ///     >>> planned.add("product", "toner", Money("4.90", "EUR"))
    ///     >>> actual.add("product", "toner", Money("5.60", "EUR"))
    ///     >>> planned.compare(actual)[0].difference
    ///     Money('0.70', 'EUR')
    fn compare(&self, actual: &Self) -> PyResult<Vec<Variance>> {
        let rows = money::compare(&self.0, &actual.0).map_err(raise)?;
        let row = |row: money::Variance| Variance {
            kind: row.kind.code().to_owned(),
            planned: PyMoney(row.planned),
            actual: PyMoney(row.actual),
            difference: PyMoney(row.difference),
        };
        Ok(rows.into_iter().map(row).collect())
    }

    /// The total of each kind of cost.
    fn by_kind(&self) -> Vec<(&'static str, PyMoney)> {
        self.0.by_kind().into_iter().map(|(part, total)| (part.code(), PyMoney(total))).collect()
    }

    /// The total of each section of the head, of the lines that belong to one.
    fn by_section(&self) -> Vec<(String, PyMoney)> {
        self.0.by_section().into_iter().map(|(section, total)| (section, PyMoney(total))).collect()
    }

    /// The total of each bowl, of the lines that belong to one.
    fn by_bowl(&self) -> Vec<(String, PyMoney)> {
        self.0.by_bowl().into_iter().map(|(bowl, total)| (bowl, PyMoney(total))).collect()
    }
}

pub(super) fn labour(
    wage_per_h: PyMoney,
    on_costs_percent: Number,
    paid_h: f64,
    productive_h: f64,
) -> PyResult<Labour> {
    let on_costs = OnCosts::from_percent(on_costs_percent.0).map_err(raise)?;
    Labour::new(wage_per_h.0, on_costs, hours(paid_h)?, hours(productive_h)?).map_err(raise)
}

pub fn measure(value: f64, unit: &str) -> PyResult<Measure> {
    match unit {
        "g" => grams(value).map(Measure::Mass),
        "mL" => Volume::from_ml(value).map(Measure::Volume).map_err(raise),
        "piece" if value >= 0.0 && value <= f64::from(u32::MAX) && value.fract() == 0.0 =>
        {
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a whole number in range")]
            Ok(Measure::Count(value as u32))
        }
        "piece" => Err(FoilworkError::new_err(format!("invalid count (got {value} pieces): must be a whole number"))),
        _ => Err(FoilworkError::new_err(format!("unknown unit {unit:?}: give \"g\", \"mL\" or \"piece\""))),
    }
}

/// The wage for an hour when a payment covers some hours.
///
/// Args:
///     paid: what was paid.
///     worked_h: the hours that it covers.
///
/// Raises:
///     FoilworkError: no hours.
///
/// Examples:
///     >>> from foilwork.money import Money, pay_per_hour
///     >>> pay_per_hour(Money("684", "EUR"), 38)
///     Decimal('18')
#[pyfunction]
pub fn pay_per_hour(paid: PyMoney, worked_h: f64) -> PyResult<Decimal> {
    money::pay_per_hour(paid.0, hours(worked_h)?).map(|price| price.per_unit).map_err(raise)
}
