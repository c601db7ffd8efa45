//! The price rule of a salon.

use super::price::ServicePrice;
use super::{HALF_UP, PyMoney, minutes, rounding};
use crate::error::{FoilworkError, raise};
use crate::exact::Number;
use foilwork::money::{CardFee, CardRate, Margin, Markup, Money, PriceEnding, PriceRule, PriceTarget, TaxRate, Toward};
use pyo3::{
    prelude::*,
    types::{PyDict, PyTuple},
};
use rust_decimal::Decimal;

/// How prices are set in a salon: one target, tax, card fee, price ending; apply it to the cost of each service.
///
/// Args:
///     margin_percent: profit in percent of the net price. Give one of the three targets.
///     markup_percent: profit in percent of the cost, card fee included.
///     per_chair_hour: amount over the cost for an hour of the chair; the cost is the variable cost then.
///     tax_percent: tax in percent of the net price.
///     card_percent: what the card terminal keeps, in percent of the gross price.
///     card_fixed: what it keeps of each payment.
///     price_step: how far apart allowed gross prices are.
///     price_ending: where they start, below the step.
///     price_toward: ``"up"``, ``"down"`` or ``"nearest"``.
///     rounding: how price, tax and fee become whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: no target or several, a value out of its range.
///
/// Examples:
///     >>> from foilwork.money import Money, PriceRule
///     >>> rule = PriceRule(margin_percent=30, tax_percent=19, price_step=Money("1.00", "EUR"))
///     >>> price = rule.price(Money("61.20", "EUR"))
///     >>> price.taxed.gross, round(price.set_price.margin_percent, 2)
///     (Money('105.00', 'EUR'), Decimal('30.64'))
#[pyclass(name = "PriceRule", frozen, eq, from_py_object, module = "foilwork.money")]
#[derive(Clone, PartialEq)]
pub struct PyPriceRule(pub PriceRule);

#[pymethods]
impl PyPriceRule {
    #[new]
    #[pyo3(signature = (*, margin_percent = None, markup_percent = None, per_chair_hour = None, tax_percent = Number(Decimal::ZERO), card_percent = Number(Decimal::ZERO), card_fixed = None, price_step = None, price_ending = None, price_toward = "up", rounding = HALF_UP), text_signature = "(*, margin_percent=None, markup_percent=None, per_chair_hour=None, tax_percent=0, card_percent=0, card_fixed=None, price_step=None, price_ending=None, price_toward='up', rounding='midpoint-away-from-zero')")]
    fn new(
        margin_percent: Option<Number>,
        markup_percent: Option<Number>,
        per_chair_hour: Option<PyMoney>,
        tax_percent: Number,
        card_percent: Number,
        card_fixed: Option<PyMoney>,
        price_step: Option<PyMoney>,
        price_ending: Option<PyMoney>,
        price_toward: &str,
        rounding: &str,
    ) -> PyResult<Self> {
        let target = match (margin_percent, markup_percent, per_chair_hour) {
            (Some(margin), None, None) => PriceTarget::Margin(Margin::from_percent(margin.0).map_err(raise)?),
            (None, Some(markup), None) => PriceTarget::Markup(Markup::from_percent(markup.0).map_err(raise)?),
            (None, None, Some(target)) => PriceTarget::PerChairHour(target.0),
            _ => {
                let told = "give exactly one of margin_percent, markup_percent and per_chair_hour";
                return Err(FoilworkError::new_err(told));
            }
        };
        let fixed = card_fixed.or(price_step).or(per_chair_hour);
        let card = match (card_fixed, fixed) {
            (Some(fixed), _) => Some(card_fee(card_percent, fixed.0)?),
            (None, _) if card_percent.0.is_zero() => None,
            (None, Some(any)) => Some(card_fee(card_percent, Money::zero(any.0.currency()))?),
            (None, None) => {
                return Err(FoilworkError::new_err(
                    "card_percent needs card_fixed too, since it states the currency: give Money('0', 'EUR') for no fixed part",
                ));
            }
        };
        let ending = match (price_step, price_ending) {
            (None, None) => None,
            (None, Some(_)) => {
                return Err(FoilworkError::new_err("price_ending needs price_step, the step it repeats in"));
            }
            (Some(step), ending) => {
                let start = ending.map_or(Money::zero(step.0.currency()), |ending| ending.0);
                Some((PriceEnding::new(step.0, start).map_err(raise)?, direction(price_toward)?))
            }
        };
        Ok(Self(PriceRule { target, tax: tax(tax_percent)?, card, ending, rounding: self::rounding(rounding)? }))
    }

    /// The keywords that make this rule.
    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyTuple>, Bound<'py, PyDict>)> {
        let rule = self.0;
        let keywords = PyDict::new(py);
        match rule.target {
            PriceTarget::Margin(margin) => keywords.set_item("margin_percent", margin.percent())?,
            PriceTarget::Markup(markup) => keywords.set_item("markup_percent", markup.percent())?,
            PriceTarget::PerChairHour(amount) => keywords.set_item("per_chair_hour", PyMoney(amount))?,
        }
        keywords.set_item("tax_percent", rule.tax.percent())?;
        if let Some(card) = rule.card {
            keywords.set_item("card_percent", card.rate().percent())?;
            keywords.set_item("card_fixed", PyMoney(card.fixed()))?;
        }
        if let Some((ending, toward)) = rule.ending {
            keywords.set_item("price_step", PyMoney(ending.step()))?;
            keywords.set_item("price_ending", PyMoney(ending.ending()))?;
            keywords.set_item("price_toward", toward.code())?;
        }
        keywords.set_item("rounding", rule.rounding.code())?;
        Ok((PyTuple::empty(py), keywords))
    }

    fn __hash__(slf: &Bound<'_, Self>) -> PyResult<isize> {
        let (_, keywords) = slf.get().__getnewargs_ex__(slf.py())?;
        PyTuple::new(slf.py(), keywords.items())?.hash()
    }

    fn __repr__(slf: &Bound<'_, Self>) -> PyResult<String> {
        let (_, keywords) = slf.get().__getnewargs_ex__(slf.py())?;
        let shown: PyResult<Vec<_>> =
            keywords.iter().map(|(name, value)| Ok(format!("{}={}", name.str()?, value.repr()?))).collect();
        Ok(format!("PriceRule({})", shown?.join(", ")))
    }

    /// The price for a cost; ``chair_min`` is needed for a target by the hour.
    #[pyo3(signature = (cost, chair_min = None))]
    fn price(&self, cost: PyMoney, chair_min: Option<f64>) -> PyResult<ServicePrice> {
        let time = chair_min.map(minutes).transpose()?;
        self.0.price(cost.0, time).map(Into::into).map_err(raise)
    }

    /// What a gross price that is already on the list leaves, by the same tax and card fee.
    #[pyo3(signature = (cost, gross, chair_min = None))]
    fn check(&self, cost: PyMoney, gross: PyMoney, chair_min: Option<f64>) -> PyResult<ServicePrice> {
        let time = chair_min.map(minutes).transpose()?;
        self.0.check(cost.0, gross.0, time).map(Into::into).map_err(raise)
    }
}

pub(super) fn tax(percent: Number) -> PyResult<TaxRate> {
    TaxRate::from_percent(percent.0).map_err(raise)
}

fn card_fee(percent: Number, fixed: Money) -> PyResult<CardFee> {
    CardRate::from_percent(percent.0).and_then(|rate| CardFee::new(rate, fixed)).map_err(raise)
}

pub(super) fn direction(name: &str) -> PyResult<Toward> {
    match name {
        "up" => Ok(Toward::Up),
        "down" => Ok(Toward::Down),
        "nearest" => Ok(Toward::Nearest),
        _ => Err(FoilworkError::new_err(format!("unknown direction {name:?}: give \"up\", \"down\" or \"nearest\""))),
    }
}
