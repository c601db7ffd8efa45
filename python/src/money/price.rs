use super::rule::{direction, tax};
use super::{HALF_UP, PyMoney, rounding};
use crate::answer::answer;
use crate::error::raise;
use crate::exact::Number;
use crate::source::TracedResult;
use foilwork::money::{self, Margin, Markup, PriceEnding};
use pyo3::prelude::*;
use rust_decimal::Decimal;

answer! {
    in "foilwork.money";
    /// A price with its tax: ``net + tax == gross``, always.
    TaxedPrice {
        /// Without the tax.
        net: PyMoney,
        /// The tax.
        tax: PyMoney,
        /// With the tax.
        gross: PyMoney,
    }
}

answer! {
    in "foilwork.money";
    /// A net price over a cost, with both percentages, so that neither is taken for the other.
    SetPrice {
        /// What the service costs.
        cost: PyMoney,
        /// The net price.
        price: PyMoney,
        /// Price less cost.
        profit: PyMoney,
        /// Profit in percent of the price.
        margin_percent: Decimal,
        /// Profit in percent of the cost.
        markup_percent: Decimal,
    }
    impl {
        /// How the price came about, where it was set to reach something, and what it leaves.
        ///
        /// Args:
        ///     margin_percent: the margin that was asked for.
        ///     markup_percent: or the mark-up.
        ///
        /// Returns:
        ///     A :class:`foilwork.source.TracedResult` for each.
        ///
        /// Raises:
        ///     FoilworkError: a percentage out of range.
        ///
        /// Examples:
        ///     >>> from foilwork.money import Money, price_from_margin
        ///     >>> found = price_from_margin(Money("75.00", "EUR"), 25).trail(margin_percent=25)
        ///     >>> found[0].value, found[0].formula
        ///     ('100.00', 'cost / (1 - margin)')
        #[pyo3(signature = (*, margin_percent = None, markup_percent = None))]
        fn trail(&self, margin_percent: Option<Number>, markup_percent: Option<Number>) -> PyResult<Vec<TracedResult>> {
            let asked = match (margin_percent, markup_percent) {
                (Some(margin), _) => Some(money::PriceTarget::Margin(Margin::from_percent(margin.0).map_err(raise)?)),
                (None, Some(markup)) => Some(money::PriceTarget::Markup(Markup::from_percent(markup.0).map_err(raise)?)),
                (None, None) => None,
            };
            let set = money::SetPrice::of(self.cost.0, self.price.0).map_err(raise)?;
            Ok(set.trail(asked).into_iter().map(Into::into).collect())
        }
    }
}

answer! {
    in "foilwork.money";
    /// A price, its tax, and what it really leaves after rounding, price ending and card fee.
    ServicePrice {
        /// Net, tax and gross.
        taxed: TaxedPrice,
        /// What the card terminal keeps.
        card_fee: PyMoney,
        /// Net price over full cost, card fee included.
        set_price: SetPrice,
        /// Net price at which the target is met exactly.
        target_net: PyMoney,
        /// Whether the price ending moved the price with its tax.
        moved: bool,
        /// What the price leaves for an hour of the chair, unrounded; ``None`` without a time.
        per_chair_hour: Option<Decimal>,
    }
}

impl From<money::TaxedPrice> for TaxedPrice {
    fn from(price: money::TaxedPrice) -> Self {
        Self { net: PyMoney(price.net), tax: PyMoney(price.tax), gross: PyMoney(price.gross) }
    }
}

impl From<money::SetPrice> for SetPrice {
    fn from(set: money::SetPrice) -> Self {
        Self {
            cost: PyMoney(set.cost),
            price: PyMoney(set.price),
            profit: PyMoney(set.profit),
            margin_percent: set.margin.percent(),
            markup_percent: set.markup.percent(),
        }
    }
}

impl From<money::ServicePrice> for ServicePrice {
    fn from(price: money::ServicePrice) -> Self {
        Self {
            taxed: price.taxed.into(),
            card_fee: PyMoney(price.card_fee),
            set_price: price.set.into(),
            target_net: PyMoney(price.target_net),
            moved: price.moved,
            per_chair_hour: price.per_chair_hour.map(|hour| hour.per_unit),
        }
    }
}

/// Net price at which profit is the stated part of the price: ``cost / (1 - margin)``.
///
/// Args:
///     cost: what the service costs.
///     margin_percent: profit in percent of the net price, below 100.
///     rounding: how the price becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: a margin of 100 or more, a cost of nothing.
///
/// Examples:
///     >>> from foilwork.money import Money, price_from_margin
///     >>> set_price = price_from_margin(Money("75.00", "EUR"), 25)
///     >>> set_price.price, round(set_price.markup_percent, 2)
///     (Money('100.00', 'EUR'), Decimal('33.33'))
#[pyfunction]
#[pyo3(signature = (cost, margin_percent, *, rounding = HALF_UP), text_signature = "(cost, margin_percent, *, rounding='midpoint-away-from-zero')")]
pub fn price_from_margin(cost: PyMoney, margin_percent: Number, rounding: &str) -> PyResult<SetPrice> {
    let margin = Margin::from_percent(margin_percent.0).map_err(raise)?;
    money::price_from_margin(cost.0, margin, self::rounding(rounding)?).map(Into::into).map_err(raise)
}

/// Net price with the stated part of the cost on top: ``cost * (1 + mark-up)``.
///
/// Args:
///     cost: what the service costs.
///     markup_percent: profit in percent of the cost, above -100.
///     rounding: how the price becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: a mark-up of -100 or less, a cost of nothing.
///
/// Source:
///     OpenStax, Contemporary Mathematics, module m00058.
///
/// Examples:
///     >>> from foilwork.money import Money, price_from_markup
///     >>> price_from_markup(Money("750.00", "USD"), 45).price
///     Money('1087.50', 'USD')
#[pyfunction]
#[pyo3(signature = (cost, markup_percent, *, rounding = HALF_UP), text_signature = "(cost, markup_percent, *, rounding='midpoint-away-from-zero')")]
pub fn price_from_markup(cost: PyMoney, markup_percent: Number, rounding: &str) -> PyResult<SetPrice> {
    let markup = Markup::from_percent(markup_percent.0).map_err(raise)?;
    money::price_from_markup(cost.0, markup, self::rounding(rounding)?).map(Into::into).map_err(raise)
}

/// Margin and mark-up of a net price that is already there.
///
/// Args:
///     cost: what the service costs.
///     price: its net price.
///
/// Raises:
///     FoilworkError: a cost or a price of nothing, two currencies.
///
/// Examples:
///     >>> from foilwork.money import Money, margin_and_markup
///     >>> both = margin_and_markup(Money("60.00", "EUR"), Money("80.00", "EUR"))
///     >>> both.margin_percent, round(both.markup_percent, 2)
///     (Decimal('25'), Decimal('33.33'))
#[pyfunction]
pub fn margin_and_markup(cost: PyMoney, price: PyMoney) -> PyResult<SetPrice> {
    money::SetPrice::of(cost.0, price.0).map(Into::into).map_err(raise)
}

/// The mark-up that sets the same price as a margin: ``m / (100 - m)``, in percent.
///
/// Args:
///     margin_percent: profit in percent of the price, below 100.
///
/// Raises:
///     FoilworkError: a margin of 100 or more.
///
/// Examples:
///     >>> from foilwork.money import margin_to_markup
///     >>> margin_to_markup(20)
///     Decimal('25')
#[pyfunction]
pub fn margin_to_markup(margin_percent: Number) -> PyResult<Decimal> {
    Margin::from_percent(margin_percent.0).and_then(Margin::markup).map(Markup::percent).map_err(raise)
}

/// The margin that sets the same price as a mark-up: ``k / (100 + k)``, in percent.
///
/// Args:
///     markup_percent: profit in percent of the cost, above -100.
///
/// Raises:
///     FoilworkError: a mark-up of -100 or less.
///
/// Examples:
///     >>> from foilwork.money import markup_to_margin
///     >>> markup_to_margin(25)
///     Decimal('20')
#[pyfunction]
pub fn markup_to_margin(markup_percent: Number) -> PyResult<Decimal> {
    Markup::from_percent(markup_percent.0).and_then(Markup::margin).map(Margin::percent).map_err(raise)
}

/// How the mark-up that sets the same price as a margin comes about.
///
/// Args:
///     margin_percent: profit in percent of the price, below 100.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: a margin of 100 or more.
///
/// Examples:
///     >>> from foilwork.money import trace_markup
///     >>> trace_markup(20).worked
///     '(20 / 100) / (1 - (20 / 100)) x 100'
#[pyfunction]
pub fn trace_markup(margin_percent: Number) -> PyResult<TracedResult> {
    Margin::from_percent(margin_percent.0).and_then(money::trace_markup).map(Into::into).map_err(raise)
}

/// How the margin that sets the same price as a mark-up comes about.
///
/// Args:
///     markup_percent: profit in percent of the cost, above -100.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: a mark-up of -100 or less.
///
/// Examples:
///     >>> from foilwork.money import trace_margin
///     >>> trace_margin(25).worked
///     '(25 / 100) / (1 + (25 / 100)) x 100'
#[pyfunction]
pub fn trace_margin(markup_percent: Number) -> PyResult<TracedResult> {
    Markup::from_percent(markup_percent.0).and_then(money::trace_margin).map(Into::into).map_err(raise)
}

/// Put tax on a net price. The tax is rounded; the gross price is the sum.
///
/// Args:
///     net: the price without tax.
///     tax_percent: tax in percent of the net price.
///     rounding: how the tax becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: a tax rate outside 0 to 1000.
///
/// Source:
///     OpenStax, Contemporary Mathematics, module m00058; HM Revenue & Customs, Calculating VAT.
///
/// Examples:
///     >>> from foilwork.money import Money, add_tax
///     >>> add_tax(Money("34.88", "USD"), "8.25")
///     TaxedPrice(net=Money('34.88', 'USD'), tax=Money('2.88', 'USD'), gross=Money('37.76', 'USD'))
#[pyfunction]
#[pyo3(signature = (net, tax_percent, *, rounding = HALF_UP), text_signature = "(net, tax_percent, *, rounding='midpoint-away-from-zero')")]
pub fn add_tax(net: PyMoney, tax_percent: Number, rounding: &str) -> PyResult<TaxedPrice> {
    money::add_tax(net.0, tax(tax_percent)?, self::rounding(rounding)?).map(Into::into).map_err(raise)
}

/// Take the tax out of a gross price; net is what is left.
///
/// Undoes :func:`add_tax` to the minor unit when both round to the nearest.
///
/// Args:
///     gross: the price with tax.
///     tax_percent: tax in percent of the net price.
///     rounding: how the tax becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: a tax rate outside 0 to 1000.
///
/// Source:
///     HM Revenue & Customs, Calculating VAT.
///
/// Examples:
///     >>> from foilwork.money import Money, take_tax_out
///     >>> take_tax_out(Money("120.00", "GBP"), 20).tax
///     Money('20.00', 'GBP')
#[pyfunction]
#[pyo3(signature = (gross, tax_percent, *, rounding = HALF_UP), text_signature = "(gross, tax_percent, *, rounding='midpoint-away-from-zero')")]
pub fn take_tax_out(gross: PyMoney, tax_percent: Number, rounding: &str) -> PyResult<TaxedPrice> {
    money::take_tax_out(gross.0, tax(tax_percent)?, self::rounding(rounding)?).map(Into::into).map_err(raise)
}

/// Move a price to one that the price list allows: every ``step``, starting from ``ending``.
///
/// Args:
///     price: the price.
///     step: how far apart allowed prices are.
///     ending: where they start, below ``step``.
///     toward: ``"up"``, ``"down"`` or ``"nearest"``.
///
/// Raises:
///     FoilworkError: an ending outside the step, an unknown direction, two currencies.
///
/// Examples:
///     >>> from foilwork.money import Money, end_price
///     >>> end_price(Money("48.13", "EUR"), Money("1.00", "EUR"), Money("0.90", "EUR"))
///     Money('48.90', 'EUR')
#[pyfunction]
#[pyo3(signature = (price, step, ending, toward = "up"))]
pub fn end_price(price: PyMoney, step: PyMoney, ending: PyMoney, toward: &str) -> PyResult<PyMoney> {
    let list = PriceEnding::new(step.0, ending.0).map_err(raise)?;
    list.apply(price.0, direction(toward)?).map(PyMoney).map_err(raise)
}

/// The tax rate that turns a net price into a gross one, in percent.
///
/// Args:
///     net: the price without tax.
///     gross: the price with tax.
///
/// Raises:
///     FoilworkError: no net price, or a gross price below it.
///
/// Examples:
///     >>> from foilwork.money import Money, tax_rate
///     >>> tax_rate(Money("100", "EUR"), Money("119", "EUR"))
///     Decimal('19')
#[pyfunction]
pub fn tax_rate(net: PyMoney, gross: PyMoney) -> PyResult<Decimal> {
    money::tax_rate(net.0, gross.0).map(foilwork::money::TaxRate::percent).map_err(raise)
}

/// The cost under a price that was set by a mark-up.
///
/// Args:
///     price: the net price.
///     markup_percent: profit in percent of the cost.
///     rounding: how the cost becomes whole minor units; see :class:`Money`.
///
/// Raises:
///     FoilworkError: no price, a mark-up of -100 or below.
///
/// Examples:
///     >>> from foilwork.money import Money, cost_from_markup
///     >>> cost_from_markup(Money("150", "EUR"), 50).cost
///     Money('100.00', 'EUR')
#[pyfunction]
#[pyo3(signature = (price, markup_percent, *, rounding = HALF_UP), text_signature = "(price, markup_percent, *, rounding='midpoint-away-from-zero')")]
pub fn cost_from_markup(price: PyMoney, markup_percent: Number, rounding: &str) -> PyResult<SetPrice> {
    let markup = Markup::from_percent(markup_percent.0).map_err(raise)?;
    money::cost_from_markup(price.0, markup, self::rounding(rounding)?).map(Into::into).map_err(raise)
}
