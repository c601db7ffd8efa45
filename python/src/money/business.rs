use super::{HALF_UP, PyMoney, answer::answer, cost::measure, exact::Number, hours, minutes, rounding};
use crate::error::{FoilworkError, raise};
use foilwork::money::{
    self, ChairService, CommissionRate, CommissionRule, CommissionTier, Denominator, MixItem, Money, ProfitTax,
    RentOrWage, Stock,
};
use pyo3::prelude::*;
use rust_decimal::Decimal;

answer! {
    /// How much must be sold to reach a goal.
    SalesNeeded {
        /// How many sales, unrounded.
        count_exact: Decimal,
        /// How many whole sales, rounded up.
        count: i64,
        /// The net takings of the whole sales.
        sales: PyMoney,
        /// The net takings at which the goal is met exactly.
        sales_exact: PyMoney,
    }
}

answer! {
    /// How far sales can fall before there is a loss.
    MarginOfSafety {
        /// Sales less break-even sales.
        amount: PyMoney,
        /// The same in percent of the sales.
        percent_of_sales: Decimal,
    }
}

answer! {
    /// One service of a mix that reaches a goal.
    MixLine {
        /// The service.
        what: String,
        /// How many.
        count: i64,
        /// Their net takings.
        sales: PyMoney,
        /// What they leave.
        contribution: PyMoney,
    }
}

answer! {
    /// How many of each service reach a goal.
    MixPlan {
        /// What the average service leaves, unrounded.
        average_contribution: Decimal,
        /// How many services in all, unrounded.
        count_exact: Decimal,
        /// How many whole services in all, so that the goal is met.
        count: i64,
        /// Each service.
        services: Vec<MixLine>,
        /// Net takings of all of them.
        sales: PyMoney,
        /// What they leave beyond the goal.
        left_over: PyMoney,
    }
}

answer! {
    /// A service with what it earns for an hour of the chair.
    RankedService {
        /// The service.
        what: String,
        /// Net price less variable cost.
        contribution: PyMoney,
        /// The contribution for one hour of the chair, unrounded.
        per_chair_hour: Decimal,
    }
}

answer! {
    /// What someone is paid for a period.
    Pay {
        /// The wage or retainer.
        base: PyMoney,
        /// The commission.
        commission: PyMoney,
        /// Both.
        total: PyMoney,
    }
}

answer! {
    /// Chair rent against wage.
    RentOrWageAnswer {
        /// Net takings above which renting leaves more.
        break_even_takings: PyMoney,
        /// What is left when renting, at the takings given.
        renting: PyMoney,
        /// What is earned when employed, at the takings given.
        employed: PyMoney,
        /// Renting less employed.
        difference: PyMoney,
    }
}

answer! {
    /// When to order, and how much.
    Reorder {
        /// Order at this stock or below, in the unit of the stock.
        reorder_point: Decimal,
        /// Whether that is the case now.
        due: bool,
        /// How many whole packs to order; 0 while nothing is due.
        packs: i64,
        /// How many days the stock on hand lasts; ``None`` when nothing is used.
        stock_days: Option<Decimal>,
    }
}

impl From<money::SalesNeeded> for SalesNeeded {
    fn from(needed: money::SalesNeeded) -> Self {
        Self {
            count_exact: needed.count_exact,
            count: needed.count,
            sales: PyMoney(needed.sales),
            sales_exact: PyMoney(needed.sales_exact),
        }
    }
}

/// How many sales cover the fixed costs and leave a profit before tax: ``(fixed + profit) / (price - variable)``.
///
/// Args:
///     fixed: fixed costs of a period. Wages by the hour belong here, not among the variable costs.
///     price: net price of one sale.
///     variable: what one more sale costs.
///     profit: profit wanted before tax; nothing when left out.
///     rounding: how ``sales_exact`` becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: a sale that leaves nothing, a negative amount, two currencies.
///
/// Source:
///     OpenStax, Principles of Accounting, Volume 2, module m68116.
///
/// Examples:
///     >>> from foilwork.money import Money, break_even
///     >>> usd = lambda text: Money(text, "USD")
///     >>> break_even(usd("3000"), usd("35"), usd("20")).count
///     200
#[pyfunction]
#[pyo3(signature = (fixed, price, variable, *, profit = None, rounding = HALF_UP), text_signature = "(fixed, price, variable, *, profit=None, rounding='midpoint_away_from_zero')")]
pub fn break_even(
    fixed: PyMoney,
    price: PyMoney,
    variable: PyMoney,
    profit: Option<PyMoney>,
    rounding: &str,
) -> PyResult<SalesNeeded> {
    let profit = profit.map_or(Money::zero(fixed.0.currency()), |profit| profit.0);
    money::target_profit(fixed.0, price.0, variable.0, profit, self::rounding(rounding)?).map(Into::into).map_err(raise)
}

/// The profit before tax that leaves a profit after it.
///
/// Args:
///     after_tax: profit wanted after tax.
///     tax_percent: tax on the profit, in percent of the profit, below 100.
///     rounding: how the profit becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: a tax outside 0 to below 100.
///
/// Examples:
///     >>> from foilwork.money import Money, profit_before_tax
///     >>> profit_before_tax(Money("24000", "USD"), 40)
///     Money('40000.00', 'USD')
#[pyfunction]
#[pyo3(signature = (after_tax, tax_percent, *, rounding = HALF_UP), text_signature = "(after_tax, tax_percent, *, rounding='midpoint_away_from_zero')")]
pub fn profit_before_tax(after_tax: PyMoney, tax_percent: Number, rounding: &str) -> PyResult<PyMoney> {
    let tax = ProfitTax::from_percent(tax_percent.0).map_err(raise)?;
    money::profit_before_tax(after_tax.0, tax, self::rounding(rounding)?).map(PyMoney).map_err(raise)
}

/// How far sales can fall before there is a loss.
///
/// Args:
///     sales: net takings.
///     break_even_sales: net takings at which there is neither profit nor loss.
///
/// Raises:
///     FoilworkError: no sales, two currencies.
///
/// Examples:
///     >>> from foilwork.money import Money, margin_of_safety
///     >>> margin_of_safety(Money("225000", "USD"), Money("153000", "USD")).percent_of_sales
///     Decimal('32')
#[pyfunction]
pub fn margin_of_safety(sales: PyMoney, break_even_sales: PyMoney) -> PyResult<MarginOfSafety> {
    let safety = money::margin_of_safety(sales.0, break_even_sales.0).map_err(raise)?;
    Ok(MarginOfSafety { amount: PyMoney(safety.amount), percent_of_sales: safety.percent_of_sales })
}

/// How many services, sold in a given mix, cover the fixed costs and leave a profit before tax.
///
/// Args:
///     fixed: fixed costs of a period.
///     profit: profit wanted before tax.
///     items: ``(what, price, variable, weight)`` for each service; weights are proportions.
///
/// Raises:
///     FoilworkError: no services, a mix that leaves nothing, a negative weight, two currencies.
///
/// Examples:
///     >>> from foilwork.money import Money, mix_target
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> mix = [("foils", eur("120"), eur("30"), 1), ("gloss", eur("45"), eur("10"), 3)]
///     >>> plan = mix_target(eur("4000"), eur("0"), mix)
///     >>> plan.count, [line.count for line in plan.services]
///     (83, [21, 62])
#[pyfunction]
pub fn mix_target(
    fixed: PyMoney,
    profit: PyMoney,
    items: Vec<(String, PyMoney, PyMoney, Number)>,
) -> PyResult<MixPlan> {
    let items: Vec<_> = items
        .into_iter()
        .map(|(what, price, variable, weight)| MixItem { what, price: price.0, variable: variable.0, weight: weight.0 })
        .collect();
    let plan = money::mix_target(fixed.0, profit.0, &items).map_err(raise)?;
    let line = |line: money::MixLine| MixLine {
        what: line.what,
        count: line.count,
        sales: PyMoney(line.sales),
        contribution: PyMoney(line.contribution),
    };
    Ok(MixPlan {
        average_contribution: plan.average_contribution.per_unit,
        count_exact: plan.count_exact,
        count: plan.count,
        services: plan.services.into_iter().map(line).collect(),
        sales: PyMoney(plan.sales),
        left_over: PyMoney(plan.left_over),
    })
}

/// Rank services by what they leave for an hour of the chair, the best first.
///
/// Args:
///     services: ``(what, price, variable, chair_min)`` for each: net price, cost of one more, chair time in min.
///
/// Raises:
///     FoilworkError: no time, two currencies.
///
/// Examples:
///     >>> from foilwork.money import Money, rank_by_chair_hour
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> foils, toner = ("foils", eur("140"), eur("20"), 180), ("toner", eur("35"), eur("5"), 40)
///     >>> [(service.what, str(service.per_chair_hour)) for service in rank_by_chair_hour([foils, toner])]
///     [('toner', '45'), ('foils', '40')]
#[pyfunction]
pub fn rank_by_chair_hour(services: Vec<(String, PyMoney, PyMoney, f64)>) -> PyResult<Vec<RankedService>> {
    let services = services
        .into_iter()
        .map(|(what, price, variable, chair_min)| {
            Ok(ChairService { what, price: price.0, variable: variable.0, in_chair: minutes(chair_min)? })
        })
        .collect::<PyResult<Vec<_>>>()?;
    let ranked = money::rank_by_chair_hour(&services).map_err(raise)?;
    Ok(ranked
        .into_iter()
        .map(|service| RankedService {
            what: service.what,
            contribution: PyMoney(service.contribution),
            per_chair_hour: service.per_chair_hour.per_unit,
        })
        .collect())
}

/// Commission on the net takings of one period, with the base pay beside it.
///
/// Args:
///     takings: net takings of the period.
///     percent: one rate on everything, or on what exceeds ``threshold``.
///     threshold: nothing is paid up to here.
///     tiers: ``(up_to, percent)`` for each slice, rising; the last has ``None`` and no end. Instead of ``percent``.
///     base: wage or retainer; nothing when left out.
///     rounding: how the commission becomes whole minor units, once; see :class:`Money`.
///
/// Raises:
///     FoilworkError: no rule or two, a rate outside 0 to 100, tiers that do not rise, negative takings.
///
/// Source:
///     Yale-New Haven Teachers Institute, unit 80.07.07, 1980, examples 1-3.
///
/// Examples:
///     >>> from foilwork.money import Money, commission_pay
///     >>> commission_pay(Money("1300", "USD"), tiers=[(Money("800", "USD"), 8), (None, 14)]).commission
///     Money('134.00', 'USD')
///     >>> week, base = Money("1540", "USD"), Money("120", "USD")
///     >>> commission_pay(week, percent=5, threshold=Money("500", "USD"), base=base).total
///     Money('172.00', 'USD')
#[pyfunction]
#[pyo3(signature = (takings, *, percent = None, threshold = None, tiers = None, base = None, rounding = HALF_UP), text_signature = "(takings, *, percent=None, threshold=None, tiers=None, base=None, rounding='midpoint_away_from_zero')")]
pub fn commission_pay(
    takings: PyMoney,
    percent: Option<Number>,
    threshold: Option<PyMoney>,
    tiers: Option<Vec<(Option<PyMoney>, Number)>>,
    base: Option<PyMoney>,
    rounding: &str,
) -> PyResult<Pay> {
    let rate = |percent: Number| CommissionRate::from_percent(percent.0).map_err(raise);
    let rule = match (percent, threshold, tiers) {
        (Some(percent), None, None) => CommissionRule::Flat(rate(percent)?),
        (Some(percent), Some(threshold), None) => {
            CommissionRule::OverThreshold { threshold: threshold.0, rate: rate(percent)? }
        }
        (None, None, Some(tiers)) => {
            let tier = |(up_to, percent): (Option<PyMoney>, Number)| {
                Ok(CommissionTier { up_to: up_to.map(|end| end.0), rate: rate(percent)? })
            };
            CommissionRule::Tiered(tiers.into_iter().map(tier).collect::<PyResult<_>>()?)
        }
        _ => return Err(FoilworkError::new_err("give percent, percent with threshold, or tiers")),
    };
    let base = base.map_or(Money::zero(takings.0.currency()), |base| base.0);
    let pay = money::commission_pay(base, &rule, takings.0, self::rounding(rounding)?).map_err(raise)?;
    Ok(Pay { base: PyMoney(pay.base), commission: PyMoney(pay.commission), total: PyMoney(pay.total) })
}

/// Share pooled tips by time worked, and lose no minor unit.
///
/// Args:
///     tips: all tips.
///     worked_h: hours of each person.
///
/// Raises:
///     FoilworkError: nobody, or nobody worked; tips below nothing.
///
/// Examples:
///     >>> from foilwork.money import Money, share_tips
///     >>> [str(share) for share in share_tips(Money("50.00", "EUR"), [8, 8, 5])]
///     ['19.05 EUR', '19.05 EUR', '11.90 EUR']
#[pyfunction]
pub fn share_tips(tips: PyMoney, worked_h: Vec<f64>) -> PyResult<Vec<PyMoney>> {
    let worked = worked_h.into_iter().map(hours).collect::<PyResult<Vec<_>>>()?;
    let shares = money::share_tips(tips.0, &worked).map_err(raise)?;
    Ok(shares.into_iter().map(PyMoney).collect())
}

/// Chair rent against wage for the same chair and period, seen by the one who works at it.
///
/// Args:
///     takings: net takings of the period.
///     rent: rent of the chair.
///     own_costs: what else a self-employed stylist pays for.
///     variable_percent: what the work itself costs, in percent of the takings.
///     wage: the wage when employed.
///     commission_percent: commission when employed, in percent of the takings.
///     rounding: how amounts become whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: shares that take all of the takings, a value out of range, two currencies.
///
/// Examples:
///     >>> from foilwork.money import Money, rent_or_wage
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> renting = {"rent": eur("200"), "own_costs": eur("50"), "variable_percent": 12}
///     >>> choice = rent_or_wage(eur("1500"), **renting, wage=eur("480"), commission_percent=15)
///     >>> choice.break_even_takings, choice.difference
///     (Money('1000.00', 'EUR'), Money('365.00', 'EUR'))
#[pyfunction]
#[pyo3(signature = (takings, *, rent, own_costs, variable_percent, wage, commission_percent, rounding = HALF_UP), text_signature = "(takings, *, rent, own_costs, variable_percent, wage, commission_percent, rounding='midpoint_away_from_zero')")]
pub fn rent_or_wage(
    takings: PyMoney,
    rent: PyMoney,
    own_costs: PyMoney,
    variable_percent: Number,
    wage: PyMoney,
    commission_percent: Number,
    rounding: &str,
) -> PyResult<RentOrWageAnswer> {
    let rounding = self::rounding(rounding)?;
    let choice = RentOrWage {
        rent: rent.0,
        own_costs: own_costs.0,
        variable_percent: variable_percent.0,
        wage: wage.0,
        commission: CommissionRate::from_percent(commission_percent.0).map_err(raise)?,
    };
    let at = choice.at(takings.0, rounding).map_err(raise)?;
    Ok(RentOrWageAnswer {
        break_even_takings: PyMoney(choice.break_even_takings(rounding).map_err(raise)?),
        renting: PyMoney(at.renting),
        employed: PyMoney(at.employed),
        difference: PyMoney(at.difference),
    })
}

/// Productive time in percent of a stated other time.
///
/// Args:
///     productive_h: hours with a client in the chair.
///     of_h: the hours to compare with.
///     denominator: what these are: ``"recorded time"``, ``"paid time"``, ``"rostered time"``, ``"opening time"`` or
///         ``"standard time"``. The same week reads 75 or 125, so it must be said.
///
/// Returns:
///     The percentage, unrounded, and the denominator again.
///
/// Raises:
///     FoilworkError: no hours to compare with, an unknown denominator.
///
/// Examples:
///     >>> from foilwork.money import productivity
///     >>> productivity(30, 40, denominator="recorded time")
///     (Decimal('75'), 'recorded time')
#[pyfunction]
#[pyo3(signature = (productive_h, of_h, *, denominator))]
pub fn productivity(productive_h: f64, of_h: f64, denominator: &str) -> PyResult<(Decimal, &'static str)> {
    let of = Denominator::ALL.into_iter().find(|known| known.words() == denominator).ok_or_else(|| {
        let known = Denominator::ALL.map(Denominator::words).join(", ");
        FoilworkError::new_err(format!("unknown denominator {denominator:?}: give one of {known}"))
    })?;
    let found = money::productivity(hours(productive_h)?, hours(of_h)?, of).map_err(raise)?;
    Ok((found.percent, of.words()))
}

/// When to order a product, how many packs, and how long the stock lasts.
///
/// Args:
///     on_hand: on the shelf now, in ``unit``.
///     daily_use: used on an average day.
///     pack: what a pack holds.
///     unit: ``"g"``, ``"mL"`` or ``"piece"`` for all of them.
///     lead_days: days from order to delivery.
///     cover_days: days the delivery should last.
///     reserve: kept for bad days.
///     on_order: ordered and not yet delivered.
///
/// Raises:
///     FoilworkError: a value out of range, an empty pack, an unknown unit.
///
/// Examples:
///     >>> from foilwork.money import reorder
///     >>> reorder(900, 120, 500, unit="g", lead_days=5, cover_days=14, reserve=300)
///     Reorder(reorder_point=Decimal('900'), due=True, packs=4, stock_days=Decimal('7.5'))
#[pyfunction]
#[pyo3(signature = (on_hand, daily_use, pack, *, unit, lead_days, cover_days, reserve = 0.0, on_order = 0.0))]
#[expect(clippy::too_many_arguments, reason = "keywords of one Python function")]
pub fn reorder(
    on_hand: f64,
    daily_use: f64,
    pack: f64,
    unit: &str,
    lead_days: u32,
    cover_days: u32,
    reserve: f64,
    on_order: f64,
) -> PyResult<Reorder> {
    let stock = Stock {
        on_hand: measure(on_hand, unit)?,
        on_order: measure(on_order, unit)?,
        daily_use: measure(daily_use, unit)?,
        reserve: measure(reserve, unit)?,
    };
    let reorder = stock.reorder(lead_days, cover_days, measure(pack, unit)?).map_err(raise)?;
    Ok(Reorder {
        reorder_point: reorder.reorder_point,
        due: reorder.due,
        packs: reorder.packs,
        stock_days: stock.days().map_err(raise)?,
    })
}
