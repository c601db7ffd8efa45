use super::{Outcome, Refusal, args::TableArgs, grid::Grid, output, workbook};
use crate::{
    peroxide::{WeighedDilution, cautions, resting_on, stronger, trace_blend, trace_mixture},
    source::TracedResult,
    text::{Sheet, number},
    workbook::{DilutionNames, dilution_workbook},
};
use serde::Serialize;

/// The most cells of a table.
const MOST_CELLS: usize = 1_000;

/// `foilwork table`: what to weigh from every stock for every target, for the wall.
pub(super) fn run(args: &TableArgs) -> Outcome {
    let chart = Grid::read(&args.grid, MOST_CELLS, MOST_CELLS)?;
    if let Some(path) = &args.xlsx {
        let names = chart.stocks.iter().flat_map(|stock| chart.targets.iter().map(|_| stock.text.clone()));
        let names = DilutionNames { bottles: names.collect(), weaker: chart.added().to_owned() };
        return workbook::deliver(path, &dilution_workbook(&chart.table, &names)?, 0);
    }
    if let Some(told) = output::traced((&args.trail, &args.report), 0, || trail(&chart)) {
        return told;
    }
    if args.csv {
        return output::deliver(csv(&chart)?, 0, &args.report.output);
    }
    output::report(&args.report, &chart.table, || text(&chart))
}

/// How the grams of every cell come about, before rounding, and the strength that the weighed grams give; first how each strength
/// gets to % w/w.
fn trail(chart: &Grid) -> Result<Vec<TracedResult>, Refusal> {
    let table = &chart.table;
    let stated = chart.stocks.iter().chain(&chart.targets).chain(&chart.weaker);
    let mut all: Vec<TracedResult> = Vec::new();
    for step in stated.filter_map(|one| one.by_mass.as_ref()) {
        if !all.contains(step) {
            all.push(step.clone());
        }
    }
    let steps = all.len();
    let pairs = chart.stocks.iter().flat_map(|stock| chart.targets.iter().map(move |target| (stock, target)));
    for (row, (stock, target)) in table.rows.iter().zip(pairs) {
        let Some(weigh) = &row.weigh else { continue };
        let (bottle, added) = ((stock.text.as_str(), row.stock), (chart.added(), table.weaker));
        let parts = trace_blend(bottle, added, row.target, table.total)?;
        let mixed = trace_mixture(&[(bottle, weigh.stock), (added, weigh.diluent)])?;
        let of_cell = [Some(stock), Some(target), chart.weaker.as_ref()];
        let named = |one: TracedResult| {
            let own = of_cell.iter().flatten().filter_map(|stated| stated.by_mass.as_ref());
            resting_on(TracedResult { what: format!("{} to {}: {}", stock.text, target.text, one.what), ..one }, own)
        };
        all.extend(parts.into_iter().chain([mixed]).map(named));
    }
    // Strengths alone are no grams.
    if all.len() == steps {
        all.clear();
    }
    Ok(all)
}

/// Three grids of stocks by targets: what to weigh, parts to mix, and what it really gives.
fn text(chart: &Grid) -> String {
    let mut sheet = Sheet::default();
    let table = &chart.table;
    let (total, division) = (number(table.total.g(), 3), number(table.division.g(), 4));
    sheet.title(&format!("DILUTION  {total} g in all, on a scale of {division} g"));
    let with = chart.added();
    let grams = |weigh: &WeighedDilution| format!("{} + {}", number(weigh.stock.g(), 4), number(weigh.diluent.g(), 4));
    let parts = |weigh: &WeighedDilution| match weigh.parts {
        Some([stock, diluent]) => format!("{stock} + {diluent}"),
        None => weigh.diluent_parts.map_or_else(|| "0 + 1".to_owned(), |parts| format!("1 + {}", number(parts, 2))),
    };
    let gives = |weigh: &WeighedDilution| {
        let [low, best, high] = weigh.strength.to_array().map(|strength| format!("{:.2}", strength.ww_percent()));
        if low == high { best } else { format!("{best} ({low}-{high})") }
    };
    grid(&mut sheet, &format!("g of bottle + g of {with}"), chart, grams);
    grid(&mut sheet, &format!("parts of bottle + parts of {with}, by mass"), chart, parts);
    grid(&mut sheet, "really gives, in % w/w", chart, gives);
    let mut refused: Vec<&str> = table.rows.iter().filter_map(|row| row.refused.as_deref()).collect();
    refused.sort_unstable();
    refused.dedup();
    for refused in refused {
        sheet.paragraph(&format!("-: {refused}"), 3);
    }
    let strongest = chart.stocks.iter().map(|stock| stock.strength).reduce(stronger);
    for paragraph in strongest.map(cautions).unwrap_or_default() {
        sheet.paragraph(&paragraph, 0);
    }
    sheet.finish()
}

fn grid(sheet: &mut Sheet, title: &str, chart: &Grid, cell: impl Fn(&WeighedDilution) -> String) {
    sheet.line(title);
    let names: Vec<&str> =
        std::iter::once("bottle").chain(chart.targets.iter().map(|target| target.text.as_str())).collect();
    let numbers: Vec<usize> = (1..names.len()).collect();
    let rows = chart.stocks.iter().zip(chart.table.rows.chunks(chart.targets.len().max(1))).map(|(stock, rows)| {
        let cells = rows.iter().map(|row| row.weigh.as_ref().map_or_else(|| "-".to_owned(), &cell));
        std::iter::once(stock.text.clone()).chain(cells).collect()
    });
    sheet.table(&names, &numbers, rows.collect());
    sheet.blank();
}

/// A row of the table for a spreadsheet: nothing nested.
#[derive(Serialize)]
struct FlatRow<'a> {
    stock: &'a str,
    target: &'a str,
    stock_ww_percent: f64,
    target_ww_percent: f64,
    stock_g: Option<f64>,
    diluent_g: Option<f64>,
    strength_ww_percent: Option<f64>,
    strength_low_ww_percent: Option<f64>,
    strength_high_ww_percent: Option<f64>,
    diluent_parts: Option<f64>,
    refused: Option<&'a str>,
}

fn csv(chart: &Grid) -> Result<String, Refusal> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    let pairs = chart.stocks.iter().flat_map(|stock| chart.targets.iter().map(move |target| (stock, target)));
    for (row, (stock, target)) in chart.table.rows.iter().zip(pairs) {
        let weigh = row.weigh.as_ref();
        writer.serialize(FlatRow {
            stock: &stock.text,
            target: &target.text,
            stock_ww_percent: row.stock.best().ww_percent(),
            target_ww_percent: row.target.best().ww_percent(),
            stock_g: weigh.map(|weigh| weigh.stock.g()),
            diluent_g: weigh.map(|weigh| weigh.diluent.g()),
            strength_ww_percent: weigh.map(|weigh| weigh.strength.best().ww_percent()),
            strength_low_ww_percent: weigh.map(|weigh| weigh.strength.low().ww_percent()),
            strength_high_ww_percent: weigh.map(|weigh| weigh.strength.high().ww_percent()),
            diluent_parts: weigh.and_then(|weigh| weigh.diluent_parts),
            refused: row.refused.as_deref(),
        })?;
    }
    Ok(String::from_utf8(writer.into_inner()?)?)
}
