use super::{Anchor, Paint, Svg};
use crate::{
    money::{Margin, Money, MoneyError, Rounding, SetPrice, price_from_margin},
    text::number,
};
use rust_decimal::{Decimal, prelude::ToPrimitive};

/// What a chart of price against margin shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MarginChart<'a> {
    title: &'a str,
    cost: Money,
    marked: Option<Margin>,
}

impl<'a> MarginChart<'a> {
    /// What stands above it, and what the service costs.
    ///
    /// # Errors
    ///
    /// [`MoneyError::AmountOutOfRange`] unless the cost is more than nothing.
    pub fn new(title: &'a str, cost: Money) -> Result<Self, MoneyError> {
        if cost.minor() > 0 {
            return Ok(Self { title, cost, marked: None });
        }
        let allowed = "more than nothing: without a cost there is no margin to speak of";
        Err(MoneyError::AmountOutOfRange { field: "cost", value: cost, allowed })
    }

    /// The same with a margin that is marked, or with none.
    ///
    /// # Errors
    ///
    /// [`MoneyError::OutOfRange`] outside of what the axis holds, 0 to 95 % of the price.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{chart::MarginChart, money::{Currency, Margin, Money}};
    ///
    /// let cost = Money::parse("60.00", Currency::from_code("EUR")?)?;
    /// let error = MarginChart::new("gloss", cost)?.marking(Some(Margin::from_percent(96.into())?)).unwrap_err();
    /// assert_eq!(error.to_string(), "invalid margin (got 96 % of the price): must be from 0 to 95 % of the price");
    /// # Ok::<(), foilwork::money::MoneyError>(())
    /// ```
    pub fn marking(self, marked: Option<Margin>) -> Result<Self, MoneyError> {
        match marked.map(Margin::percent) {
            Some(value) if value < Decimal::ZERO || value > LAST.into() => {
                let allowed = "from 0 to 95 % of the price";
                Err(MoneyError::OutOfRange { field: "margin", value, unit: "% of the price", allowed })
            }
            _ => Ok(Self { marked, ..self }),
        }
    }
}

const SIZE: (f64, f64) = (640.0, 400.0);
/// The plot: left, top, right, bottom.
const PLOT: (f64, f64, f64, f64) = (96.0, 84.0, 620.0, 340.0);
/// The largest margin of the axis; a marked one beyond it stretches the axis up to the last.
const USUAL: i64 = 70;
const LAST: i64 = 95;

/// Net price against margin for a cost: the curve that bends upward, because a margin counts from the price. Marks say the
/// mark-up beside the margin.
///
/// # Example
///
/// ```
/// use foilwork::{chart::{MarginChart, margin_chart}, money::{Currency, Margin, Money}};
///
/// let cost = Money::parse("60.00", Currency::from_code("EUR")?)?;
/// let chart = MarginChart::new("gloss", cost)?.marking(Some(Margin::from_percent(40.into())?))?;
/// assert!(margin_chart(&chart).contains("margin 40 %: 100.00 EUR, mark-up 66.7 %"));
/// # Ok::<(), foilwork::money::MoneyError>(())
/// ```
#[must_use]
pub fn margin_chart(chart: &MarginChart<'_>) -> String {
    let marked = chart.marked.map(Margin::percent);
    let end = marked.map_or(USUAL, |percent| (percent.ceil().to_i64().unwrap_or(USUAL) + 5).clamp(USUAL, LAST));
    let curve: Vec<(i64, SetPrice)> =
        (0..=end).filter_map(|percent| Some((percent, priced(chart, percent.into())?))).collect();
    let most = curve.last().map_or(1.0, |(_, set)| amount(set.price)).max(f64::MIN_POSITIVE);
    let place = |percent: f64, price: f64| {
        let (left, top, right, bottom) = PLOT;
        let along = (percent / end as f64).clamp(0.0, 1.0);
        (left + along * (right - left), bottom - (price / most).clamp(0.0, 1.0) * (bottom - top))
    };
    let found = marked.and_then(|percent| Some((percent, priced(chart, percent)?)));
    let said = found.map(|(percent, set)| told(percent, &set));
    let about = format!(
        "Net price against margin for a cost of {}. {}.",
        chart.cost,
        said.as_deref().unwrap_or("no margin is marked")
    );
    let mut svg = Svg::new(SIZE, chart.title, &about);
    svg.rect((0.0, 0.0), SIZE, &Paint::area("#fff"));
    svg.text((12.0, 24.0), Anchor::Start, 15.0, chart.title);
    svg.text(
        (12.0, 44.0),
        Anchor::Start,
        12.0,
        &format!("cost {}; margin is part of the price, mark-up of the cost", chart.cost),
    );
    let (left, top, right, bottom) = PLOT;
    for step in 0..=4_u8 {
        let price = most * f64::from(step) / 4.0;
        let (_, y) = place(0.0, price);
        svg.line([(left, y), (right, y)], &Paint::line("#ddd", 1.0));
        svg.text((left - 8.0, y + 4.0), Anchor::End, 12.0, &number(price, 2));
    }
    for percent in (0..=end).step_by(10) {
        let (x, _) = place(percent as f64, 0.0);
        svg.line([(x, bottom), (x, bottom + 5.0)], &Paint::line("#222", 1.0));
        svg.text((x, bottom + 20.0), Anchor::Middle, 12.0, &percent.to_string());
    }
    svg.rect((left, top), (right - left, bottom - top), &Paint::line("#222", 1.0));
    let (cost_at, cost_y) = place(0.0, amount(chart.cost));
    svg.line([(cost_at, cost_y), (right, cost_y)], &Paint::line("#222", 1.2).dashed());
    svg.text((right - 6.0, cost_y + 14.0), Anchor::End, 12.0, "cost");
    svg.line(
        curve.iter().map(|(percent, set)| place(*percent as f64, amount(set.price))),
        &Paint::line("#7a4b00", 2.5),
    );
    svg.text((f64::midpoint(left, right), bottom + 40.0), Anchor::Middle, 12.0, "margin in % of the net price");
    svg.text((12.0, top - 14.0), Anchor::Start, 12.0, &format!("net price, {}", chart.cost.currency()));
    if let (Some((percent, set)), Some(said)) = (found, said) {
        let (x, y) = place(percent.to_f64().unwrap_or(0.0), amount(set.price));
        svg.circle((x, y), 5.0, &Paint::area("#fff").outlined("#0072b2", 2.5));
        svg.text((left + 10.0, top + 18.0), Anchor::Start, 13.0, &said);
    }
    svg.finish()
}

fn priced(chart: &MarginChart<'_>, percent: Decimal) -> Option<SetPrice> {
    price_from_margin(chart.cost, Margin::from_percent(percent).ok()?, Rounding::MidpointAwayFromZero).ok()
}

fn told(percent: Decimal, set: &SetPrice) -> String {
    format!(
        "margin {} %: {}, mark-up {} %",
        percent.normalize(),
        set.price,
        set.markup.percent().round_dp(1).normalize()
    )
}

fn amount(money: Money) -> f64 {
    money.decimal().to_f64().unwrap_or(0.0)
}
