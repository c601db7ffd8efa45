use super::Picture;
use crate::{
    colour::AnyLevel,
    error::{FoilworkError, raise},
    exact::Number,
    money::{PyMoney, table::PyCostTable},
    sequence::Sequence,
};
use foilwork::{
    chart::{self, CostChart, DilutionChart, HueWheel, MOST_GRID, MarginChart, PigmentChart},
    colour::{Hue, Naming},
    money::Margin,
    peroxide::dilution_table,
    quantity::{Mass, MassFraction},
    source::Interval,
    text::number,
};
use pyo3::prelude::*;

fn percent(value: f64) -> PyResult<Interval<MassFraction>> {
    MassFraction::from_ww_percent(value).map(Interval::exact).map_err(raise)
}

fn named(percents: &[f64]) -> Vec<String> {
    percents.iter().map(|percent| format!("{} %", number(*percent, 2))).collect()
}

/// A dilution grid: a line for each bottle, a column for each strength wanted, in each cell the grams of both parts.
///
/// Args:
///     stocks_ww_percent: the bottles, at most 12, in % w/w.
///     targets_ww_percent: the strengths wanted, at most 12, in % w/w.
///     total_g: what every mix comes to.
///     division_g: the scale's division.
///     weaker_ww_percent: what is added: 0 for a diluent, or a weaker developer.
///     title: what stands above it.
///
/// Returns:
///     The picture.
///
/// Raises:
///     FoilworkError: a value out of range, or more lines or columns than can be read.
///
/// Examples:
///     >>> from foilwork.chart import dilution_chart
///     >>> "15 g + 45 g" in dilution_chart([12], [3], 60).svg
///     True
#[pyfunction]
#[pyo3(signature = (stocks_ww_percent, targets_ww_percent, total_g, division_g = 1.0, *, weaker_ww_percent = 0.0, title = "Dilution"))]
pub fn dilution_chart(
    stocks_ww_percent: Sequence<f64>,
    targets_ww_percent: Sequence<f64>,
    total_g: f64,
    division_g: f64,
    weaker_ww_percent: f64,
    title: &str,
) -> PyResult<Picture> {
    let (stocks, targets) = (stocks_ww_percent.0, targets_ww_percent.0);
    if [&stocks, &targets].iter().any(|list| list.is_empty() || list.len() > MOST_GRID) {
        let told = format!("{} bottles and {} targets: give 1 to {MOST_GRID} of each", stocks.len(), targets.len());
        return Err(FoilworkError::new_err(told));
    }
    let of = |list: &[f64]| list.iter().map(|value| percent(*value)).collect::<PyResult<Vec<_>>>();
    let (total, division) = (Mass::from_g(total_g).map_err(raise)?, Mass::from_g(division_g).map_err(raise)?);
    let table =
        dilution_table(&of(&stocks)?, &of(&targets)?, percent(weaker_ww_percent)?, total, division).map_err(raise)?;
    let weaker = if weaker_ww_percent == 0.0 { "diluent".to_owned() } else { named(&[weaker_ww_percent]).concat() };
    let (stocks, targets) = (named(&stocks), named(&targets));
    let drawn = DilutionChart { title, stocks: &stocks, targets: &targets, weaker: &weaker, table: &table };
    Ok(Picture { svg: chart::dilution_chart(&drawn) })
}

/// Levels 1 to 10: natural hair, hair lightened to the level, the warmth that shows and the hue that neutralises it.
///
/// Args:
///     natural_level: the level from which hair is lightened.
///     names: whose names the levels have besides: ``"european"`` or ``"us"``.
///     title: what stands above it.
///
/// Returns:
///     The picture; its swatches are a model, not a photograph.
///
/// Raises:
///     FoilworkError: a level that is not on the scale, or other names.
///
/// Examples:
///     >>> from foilwork.chart import pigment_chart
///     >>> "yellow-orange" in pigment_chart(4).svg
///     True
#[pyfunction]
#[pyo3(signature = (natural_level, names = "european", *, title = "Levels and their warmth"))]
pub fn pigment_chart(natural_level: AnyLevel, names: &str, title: &str) -> PyResult<Picture> {
    let naming: Naming = names.parse().map_err(raise)?;
    Ok(Picture { svg: chart::pigment_chart(&PigmentChart { title, natural: natural_level.0, naming }) })
}

/// The wheel of twelve hues; a marked one is joined to the one that neutralises it.
///
/// Args:
///     marked: a hue such as ``"orange"``.
///     title: what stands above it.
///
/// Returns:
///     The picture.
///
/// Raises:
///     FoilworkError: a hue that is not on the wheel.
///
/// Examples:
///     >>> from foilwork.chart import hue_wheel
///     >>> "orange is neutralised by blue" in hue_wheel("orange").svg
///     True
#[pyfunction]
#[pyo3(signature = (marked = None, *, title = "Twelve hues"))]
pub fn hue_wheel(marked: Option<&str>, title: &str) -> PyResult<Picture> {
    let marked = marked.map(str::parse::<Hue>).transpose().map_err(raise)?;
    Ok(Picture { svg: chart::hue_wheel(&HueWheel { title, marked }) })
}

/// What a service costs, kind by kind, with the share of each.
///
/// Args:
///     table: the costs, a :class:`foilwork.money.CostTable`.
///     title: what stands above it.
///     left_out: what the costs leave out, in words; without any they are all there is.
///
/// Returns:
///     The picture.
///
/// Examples:
///     >>> from foilwork.chart import cost_chart
///     >>> from foilwork.money import CostTable, Money
///     >>> table = CostTable("EUR")
///     >>> table.add("product", "lightener", Money("10.00", "EUR"))
///     >>> table.add("labour", "hands-on time", Money("30.00", "EUR"))
///     >>> "30.00 EUR, 75.0 %" in cost_chart(table).svg
///     True
#[pyfunction]
#[pyo3(signature = (table, *, title = "Cost", left_out = Sequence(Vec::new())), text_signature = "(table, *, title='Cost', left_out=())")]
pub fn cost_chart(table: PyRef<'_, PyCostTable>, title: &str, left_out: Sequence<String>) -> Picture {
    Picture { svg: chart::cost_chart(&CostChart { title, table: &table.0, left_out: &left_out.0, style: None }) }
}

/// Net price against margin for a cost; a marked margin says its price and its mark-up.
///
/// Args:
///     cost: what the service costs, a :class:`foilwork.money.Money`.
///     marked_percent: a margin that is marked, in percent of the net price, 0 to 95.
///     title: what stands above it.
///
/// Returns:
///     The picture.
///
/// Raises:
///     FoilworkError: a cost that is not above zero, or a margin outside 0 to 95 %.
///
/// Examples:
///     >>> from foilwork.chart import margin_chart
///     >>> from foilwork.money import Money
///     >>> "margin 40 %: 100.00 EUR, mark-up 66.7 %" in margin_chart(Money("60.00", "EUR"), 40).svg
///     True
#[pyfunction]
#[pyo3(signature = (cost, marked_percent = None, *, title = "Net price against margin"))]
pub fn margin_chart(cost: PyMoney, marked_percent: Option<Number>, title: &str) -> PyResult<Picture> {
    let marked = marked_percent.map(|percent| Margin::from_percent(percent.0)).transpose().map_err(raise)?;
    let drawn = MarginChart::new(title, cost.0).and_then(|drawn| drawn.marking(marked)).map_err(raise)?;
    Ok(Picture { svg: chart::margin_chart(&drawn) })
}
