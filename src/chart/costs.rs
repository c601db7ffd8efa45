use super::{Anchor, Paint, Svg};
use crate::{
    money::{CostTable, Money, MoneyStyle},
    text::list,
};
use rust_decimal::{Decimal, prelude::ToPrimitive};

/// What a chart of costs shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CostChart<'a> {
    /// What stands above it.
    pub title: &'a str,
    /// The costs.
    pub table: &'a CostTable,
    /// What they leave out, in words; empty where they hold everything.
    pub left_out: &'a [String],
    /// How amounts are written; with the code of their currency where it is not said.
    pub style: Option<MoneyStyle>,
}

const WIDTH: f64 = 640.0;
const ABOVE: f64 = 50.0;
const ROW: f64 = 30.0;
/// A line of what is left out, and how many letters it holds.
const LINE: f64 = 16.0;
const LETTERS: usize = 90;
/// Where bars begin and end.
const BARS: (f64, f64) = (130.0, 430.0);

/// What a service costs, kind by kind: a bar for each with its amount and its share of the whole as text.
///
/// # Example
///
/// ```
/// use foilwork::{chart::{CostChart, cost_chart}, money::{CostKind, CostLine, CostTable, Currency, Money}, source::Basis};
///
/// let eur = Currency::from_code("EUR")?;
/// let mut table = CostTable::new(eur);
/// table.push(CostLine::new(CostKind::Product, "lightener", Basis::Stated, Money::parse("10.00", eur)?))?;
/// table.push(CostLine::new(CostKind::Labour, "hands-on time", Basis::Stated, Money::parse("30.00", eur)?))?;
/// let chart = CostChart { title: "gloss", table: &table, left_out: &["foils".to_owned()], style: None };
/// let svg = cost_chart(&chart);
/// assert!(svg.contains("30.00 EUR, 75.0 %") && svg.contains("not counted: foils"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn cost_chart(chart: &CostChart<'_>) -> String {
    let total = chart.table.total();
    let kinds: Vec<(String, Money, Decimal)> = chart
        .table
        .by_kind()
        .into_iter()
        .map(|(kind, amount)| (kind.to_string(), amount, share(amount, total)))
        .collect();
    let said = kinds.iter().map(|(kind, amount, share)| format!("{kind} {}", chart.told(*amount, *share)));
    let counted = if chart.left_out.is_empty() { "in all" } else { "counted" };
    let without = format!("not counted: {}", chart.left_out.join("; "));
    let missing = if chart.left_out.is_empty() { Vec::new() } else { textwrap::wrap(&without, LETTERS) };
    let total = chart.amount(total);
    let mut about = format!("{total} {counted}: {}.", list(said.collect::<Vec<_>>(), "and"));
    if !missing.is_empty() {
        about += &format!(" {without}.");
    }
    let rows = |count: usize| f64::from(u32::try_from(count).unwrap_or(1));
    let height = ABOVE + ROW * rows(kinds.len()) + 36.0 + LINE * rows(missing.len());
    let mut svg = Svg::new((WIDTH, height), chart.title, &about);
    svg.rect((0.0, 0.0), (WIDTH, height), &Paint::area("#fff"));
    svg.text((12.0, 24.0), Anchor::Start, 15.0, chart.title);
    let most = kinds.iter().map(|(_, _, share)| *share).max().unwrap_or_default();
    for (place, (kind, amount, share)) in (0_u32..).zip(&kinds) {
        let top = ABOVE + ROW * f64::from(place);
        svg.text((BARS.0 - 8.0, top + 18.0), Anchor::End, 13.0, kind);
        let long = if most.is_zero() { Decimal::ZERO } else { *share / most };
        let long = (BARS.1 - BARS.0) * long.to_f64().unwrap_or(0.0);
        svg.rect((BARS.0, top + 4.0), (long, 20.0), &Paint::area("#5b7f95").outlined("#223", 1.0));
        svg.text((BARS.0 + long + 8.0, top + 18.0), Anchor::Start, 13.0, &chart.told(*amount, *share));
    }
    let below = height - 12.0 - LINE * rows(missing.len());
    svg.text((12.0, below), Anchor::Start, 13.0, &format!("{counted} {total}"));
    for (place, what) in (1_u32..).zip(&missing) {
        svg.text((12.0, below + LINE * f64::from(place)), Anchor::Start, 12.0, what);
    }
    svg.finish()
}

fn share(amount: Money, total: Money) -> Decimal {
    amount.percent_of(total).unwrap_or_default()
}

impl CostChart<'_> {
    fn amount(&self, amount: Money) -> String {
        self.style.map_or_else(|| amount.to_string(), |style| style.write(amount))
    }

    fn told(&self, amount: Money, share: Decimal) -> String {
        format!("{}, {:.1} %", self.amount(amount), share.round_dp(1))
    }
}
