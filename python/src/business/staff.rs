//! Pay, tips and chair rent.

use crate::{
    answer::answer,
    error::{FoilworkError, raise},
    exact::Number,
    money::{HALF_UP, PyMoney, hours, rounding},
    sequence::Sequence,
    source::TracedResult,
};
use foilwork::{
    business::{self, CommissionRule, CommissionTier, RentOrWage},
    money::{CommissionRate, Money},
};
use pyo3::prelude::*;
use rust_decimal::Decimal;

answer! {
    in "foilwork.business";
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
    in "foilwork.business";
    /// Chair rent against wage.
    RentOrWageAt {
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
///     >>> from foilwork.business import commission_pay
///     >>> from foilwork.money import Money
///     >>> commission_pay(Money("1300", "USD"), tiers=[(Money("800", "USD"), 8), (None, 14)]).commission
///     Money('134.00', 'USD')
///     >>> week, base = Money("1540", "USD"), Money("120", "USD")
///     >>> commission_pay(week, percent=5, threshold=Money("500", "USD"), base=base).total
///     Money('172.00', 'USD')
#[pyfunction]
#[pyo3(signature = (takings, *, percent = None, threshold = None, tiers = None, base = None, rounding = HALF_UP), text_signature = "(takings, *, percent=None, threshold=None, tiers=None, base=None, rounding='midpoint-away-from-zero')")]
pub fn commission_pay(
    takings: PyMoney,
    percent: Option<Number>,
    threshold: Option<PyMoney>,
    tiers: Option<Sequence<(Option<PyMoney>, Number)>>,
    base: Option<PyMoney>,
    rounding: &str,
) -> PyResult<Pay> {
    let rule = rule_of(percent, threshold, tiers)?;
    let base = base.map_or(Money::zero(takings.0.currency()), |base| base.0);
    let pay = business::commission_pay(base, &rule, takings.0, self::rounding(rounding)?).map_err(raise)?;
    Ok(Pay { base: PyMoney(pay.base), commission: PyMoney(pay.commission), total: PyMoney(pay.total) })
}

fn rule_of(
    percent: Option<Number>,
    threshold: Option<PyMoney>,
    tiers: Option<Sequence<(Option<PyMoney>, Number)>>,
) -> PyResult<CommissionRule> {
    let rate = |percent: Number| CommissionRate::from_percent(percent.0).map_err(raise);
    Ok(match (percent, threshold, tiers) {
        (Some(percent), None, None) => CommissionRule::Flat(rate(percent)?),
        (Some(percent), Some(threshold), None) => {
            CommissionRule::OverThreshold { threshold: threshold.0, rate: rate(percent)? }
        }
        (None, None, Some(Sequence(tiers))) => {
            let tier = |(up_to, percent): (Option<PyMoney>, Number)| {
                Ok(CommissionTier { up_to: up_to.map(|end| end.0), rate: rate(percent)? })
            };
            CommissionRule::Tiered(tiers.into_iter().map(tier).collect::<PyResult<_>>()?)
        }
        _ => return Err(FoilworkError::new_err("give percent, percent with threshold, or tiers")),
    })
}

/// How commission and pay come about.
///
/// Args:
///     takings: net takings of the period.
///     percent: as of :func:`commission_pay`.
///     threshold: nothing is paid up to here.
///     tiers: ``(up_to, percent)`` for each slice, instead of ``percent``.
///     base: wage or retainer; nothing when left out.
///     rounding: how the commission becomes whole minor units; see :class:`Money`.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for commission and for pay.
///
/// Raises:
///     FoilworkError: as :func:`commission_pay`.
///
/// Examples:
///     >>> from foilwork.business import trace_commission
///     >>> from foilwork.money import Money
///     >>> trace_commission(Money("1540", "USD"), percent=5, threshold=Money("500", "USD"))[0].worked
///     'largest (0, 1540.00 - 500.00) x (5 / 100)'
#[pyfunction]
#[pyo3(signature = (takings, *, percent = None, threshold = None, tiers = None, base = None, rounding = HALF_UP), text_signature = "(takings, *, percent=None, threshold=None, tiers=None, base=None, rounding='midpoint-away-from-zero')")]
pub fn trace_commission(
    takings: PyMoney,
    percent: Option<Number>,
    threshold: Option<PyMoney>,
    tiers: Option<Sequence<(Option<PyMoney>, Number)>>,
    base: Option<PyMoney>,
    rounding: &str,
) -> PyResult<Vec<TracedResult>> {
    let rule = rule_of(percent, threshold, tiers)?;
    let base = base.map_or(Money::zero(takings.0.currency()), |base| base.0);
    let found = business::trace_commission(base, &rule, takings.0, self::rounding(rounding)?).map_err(raise)?;
    Ok(found.into_iter().map(Into::into).collect())
}

/// How each share of pooled tips comes about.
///
/// Args:
///     tips: all tips.
///     worked_h: hours of each person.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each person.
///
/// Raises:
///     FoilworkError: as :func:`share_tips`.
///
/// Examples:
///     >>> from foilwork.business import trace_tips
///     >>> from foilwork.money import Money
///     >>> trace_tips(Money("50.00", "EUR"), [8, 2])[0].worked
///     '50.00 x 8 / (8 + 2)'
#[pyfunction]
pub fn trace_tips(tips: PyMoney, worked_h: Sequence<f64>) -> PyResult<Vec<TracedResult>> {
    let worked = worked_h.0.into_iter().map(hours).collect::<PyResult<Vec<_>>>()?;
    Ok(business::trace_tips(tips.0, &worked).map_err(raise)?.into_iter().map(Into::into).collect())
}

/// How chair rent against wage comes about.
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
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each way, and for the takings at which they are alike.
///
/// Raises:
///     FoilworkError: as :func:`rent_or_wage`.
///
/// Examples:
///     >>> from foilwork.business import trace_rent_or_wage
///     >>> from foilwork.money import Money
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> renting = {"rent": eur("200"), "own_costs": eur("50"), "variable_percent": 12}
///     >>> trace_rent_or_wage(eur("1500"), **renting, wage=eur("480"), commission_percent=15)[1].worked
///     '480.00 + 1500.00 x (15 / 100)'
#[pyfunction]
#[pyo3(signature = (takings, *, rent, own_costs, variable_percent, wage, commission_percent, rounding = HALF_UP), text_signature = "(takings, *, rent, own_costs, variable_percent, wage, commission_percent, rounding='midpoint-away-from-zero')")]
pub fn trace_rent_or_wage(
    takings: PyMoney,
    rent: PyMoney,
    own_costs: PyMoney,
    variable_percent: Number,
    wage: PyMoney,
    commission_percent: Number,
    rounding: &str,
) -> PyResult<Vec<TracedResult>> {
    let choice = RentOrWage {
        rent: rent.0,
        own_costs: own_costs.0,
        variable_percent: variable_percent.0,
        wage: wage.0,
        commission: CommissionRate::from_percent(commission_percent.0).map_err(raise)?,
    };
    let found = choice.trail(takings.0, self::rounding(rounding)?).map_err(raise)?;
    Ok(found.into_iter().map(Into::into).collect())
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
///     >>> from foilwork.business import share_tips
///     >>> from foilwork.money import Money
///     >>> [str(share) for share in share_tips(Money("50.00", "EUR"), [8, 8, 5])]
///     ['19.05 EUR', '19.05 EUR', '11.90 EUR']
#[pyfunction]
pub fn share_tips(tips: PyMoney, worked_h: Sequence<f64>) -> PyResult<Vec<PyMoney>> {
    let worked_h = worked_h.0;
    let worked = worked_h.into_iter().map(hours).collect::<PyResult<Vec<_>>>()?;
    let shares = business::share_tips(tips.0, &worked).map_err(raise)?;
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
///     >>> from foilwork.business import rent_or_wage
///     >>> from foilwork.money import Money
///     >>> eur = lambda text: Money(text, "EUR")
///     >>> renting = {"rent": eur("200"), "own_costs": eur("50"), "variable_percent": 12}
///     >>> choice = rent_or_wage(eur("1500"), **renting, wage=eur("480"), commission_percent=15)
///     >>> choice.break_even_takings, choice.difference
///     (Money('1000.00', 'EUR'), Money('365.00', 'EUR'))
#[pyfunction]
#[pyo3(signature = (takings, *, rent, own_costs, variable_percent, wage, commission_percent, rounding = HALF_UP), text_signature = "(takings, *, rent, own_costs, variable_percent, wage, commission_percent, rounding='midpoint-away-from-zero')")]
pub fn rent_or_wage(
    takings: PyMoney,
    rent: PyMoney,
    own_costs: PyMoney,
    variable_percent: Number,
    wage: PyMoney,
    commission_percent: Number,
    rounding: &str,
) -> PyResult<RentOrWageAt> {
    let rounding = self::rounding(rounding)?;
    let choice = RentOrWage {
        rent: rent.0,
        own_costs: own_costs.0,
        variable_percent: variable_percent.0,
        wage: wage.0,
        commission: CommissionRate::from_percent(commission_percent.0).map_err(raise)?,
    };
    let at = choice.at(takings.0, rounding).map_err(raise)?;
    Ok(RentOrWageAt {
        break_even_takings: PyMoney(choice.break_even_takings(rounding).map_err(raise)?),
        renting: PyMoney(at.renting),
        employed: PyMoney(at.employed),
        difference: PyMoney(at.difference),
    })
}

answer! {
    in "foilwork.business";
    /// What one more stylist brings.
    HiringStep {
        /// How many stylists there are then.
        stylists: usize,
        /// How many more services they do together.
        more_services: i64,
        /// What these leave, before the wage.
        more_contribution: PyMoney,
        /// The same less the wage: below zero, the last one hired does not pay.
        left: PyMoney,
    }
}

/// What each further stylist brings.
///
/// Args:
///     services: how many services one stylist, two, three and so on do together in a period.
///     contribution: what one service leaves.
///     wage: the wage of one stylist for the period.
///
/// Raises:
///     FoilworkError: an empty list, two currencies.
///
/// Examples:
///     >>> from foilwork.business import hiring_steps
///     >>> from foilwork.money import Money
///     >>> [str(step.left) for step in hiring_steps([8, 16, 23], Money("8", "USD"), Money("60", "USD"))]
///     ['4.00 USD', '4.00 USD', '-4.00 USD']
#[pyfunction]
pub fn hiring_steps(services: Sequence<u32>, contribution: PyMoney, wage: PyMoney) -> PyResult<Vec<HiringStep>> {
    let services = services.0;
    let steps = business::hiring_steps(&services, contribution.0, wage.0).map_err(raise)?;
    let step = |step: business::HiringStep| HiringStep {
        stylists: step.stylists,
        more_services: step.more_services,
        more_contribution: PyMoney(step.more_contribution),
        left: PyMoney(step.left),
    };
    Ok(steps.into_iter().map(step).collect())
}

/// How many stylists leave the most in all.
///
/// Args:
///     services: how many services one stylist, two, three and so on do together in a period.
///     contribution: what one service leaves.
///     wage: the wage of one stylist for the period.
///
/// Raises:
///     FoilworkError: an empty list, two currencies.
///
/// Examples:
///     >>> from foilwork.business import best_number_to_hire
///     >>> from foilwork.money import Money
///     >>> best_number_to_hire([8, 16, 23, 29, 34, 38], Money("8", "USD"), Money("60", "USD"))
///     2
#[pyfunction]
pub fn best_number_to_hire(services: Sequence<u32>, contribution: PyMoney, wage: PyMoney) -> PyResult<usize> {
    let services = services.0;
    business::best_number_to_hire(&services, contribution.0, wage.0).map_err(raise)
}

/// The flat rate at which takings earned a commission, in percent.
///
/// Args:
///     earned: the commission.
///     takings: the net takings that it was paid on.
///
/// Raises:
///     FoilworkError: no takings, or a rate outside 0 to 100.
///
/// Examples:
///     >>> from foilwork.business import commission_rate
///     >>> from foilwork.money import Money
///     >>> commission_rate(Money("120", "USD"), Money("1600", "USD"))
///     Decimal('7.5')
#[pyfunction]
pub fn commission_rate(earned: PyMoney, takings: PyMoney) -> PyResult<Decimal> {
    business::commission_rate(earned.0, takings.0).map(foilwork::money::CommissionRate::percent).map_err(raise)
}

/// A tip in percent of the bill, unrounded.
///
/// Args:
///     tip: the tip.
///     bill: the bill.
///
/// Raises:
///     FoilworkError: a negative tip, no bill, two currencies.
///
/// Examples:
///     >>> from foilwork.business import tip_percent
///     >>> from foilwork.money import Money
///     >>> tip_percent(Money("12", "EUR"), Money("80", "EUR"))
///     Decimal('15')
#[pyfunction]
pub fn tip_percent(tip: PyMoney, bill: PyMoney) -> PyResult<Decimal> {
    business::tip_percent(tip.0, bill.0).map_err(raise)
}
