use super::{
    Outcome, Refusal,
    args::TableArgs,
    hazard::{cautions, stronger},
    output, read,
};
use crate::{
    peroxide::{DilutionTable, StatedStrength, WeighedDilution, dilution_table},
    quantity::{Mass, MassFraction, Temperature},
    source::Interval,
    text::{Sheet, number},
};
use serde::Serialize;

/// The most cells of a table.
const MOST_CELLS: usize = 1_000;

/// `foilwork table`: what to weigh from every stock for every target, for the wall.
pub(super) fn run(args: &TableArgs) -> Outcome {
    let chart = Chart {
        stocks: strengths("--stocks", &args.stocks)?,
        targets: strengths("--targets", &args.targets)?,
        weaker: args.with.as_deref().map(|text| strength("--with", text)).transpose()?,
    };
    let cells = chart.stocks.len() * chart.targets.len();
    if cells > MOST_CELLS {
        let text =
            format!("--stocks and --targets make {cells} cells: ask for at most {MOST_CELLS}, a wall holds no more");
        return Err(Refusal(text));
    }
    let weaker = chart.weaker.as_ref().map_or(Interval::exact(MassFraction::ZERO), |weaker| weaker.strength);
    let of = |list: &[Stated]| list.iter().map(|stated| stated.strength).collect::<Vec<_>>();
    let (total, division) = (read::grams("--total", &args.total)?, Mass::from_g(args.division)?);
    let table = dilution_table(&of(&chart.stocks), &of(&chart.targets), weaker, total, division)?;
    if args.csv {
        return output::deliver(csv(&chart, &table)?, 0, &args.report.output);
    }
    output::report(&args.report, &table, || text(&chart, &table))
}

/// A strength as it was written, and what it is.
struct Stated {
    text: String,
    strength: Interval<MassFraction>,
}

/// What was asked for.
struct Chart {
    stocks: Vec<Stated>,
    targets: Vec<Stated>,
    weaker: Option<Stated>,
}

fn strength(name: &str, text: &str) -> Result<Stated, Refusal> {
    let stated = read::option::<StatedStrength>(name, text)?;
    let strength = stated.mass_fraction(Temperature::REFERENCE).map_err(|error| read::about(name, error))?;
    Ok(Stated { text: stated.to_string(), strength })
}

fn strengths(name: &str, text: &str) -> Result<Vec<Stated>, Refusal> {
    read::with_units(text).iter().map(|item| strength(name, item)).collect()
}

/// Three grids of stocks by targets: what to weigh, parts to mix, and what it really gives.
fn text(chart: &Chart, table: &DilutionTable) -> String {
    let mut sheet = Sheet::default();
    let (total, division) = (number(table.total.g(), 3), number(table.division.g(), 4));
    sheet.title(&format!("DILUTION  {total} g in all, on a scale of {division} g"));
    let with = chart.weaker.as_ref().map_or("diluent", |weaker| weaker.text.as_str());
    let grams = |weigh: &WeighedDilution| format!("{} + {}", number(weigh.stock.g(), 4), number(weigh.diluent.g(), 4));
    let parts = |weigh: &WeighedDilution| match weigh.parts {
        Some([stock, diluent]) => format!("{stock} + {diluent}"),
        None => weigh.diluent_parts.map_or_else(|| "0 + 1".to_owned(), |parts| format!("1 + {}", number(parts, 2))),
    };
    let gives = |weigh: &WeighedDilution| {
        let [low, best, high] = weigh.strength.to_array().map(|strength| format!("{:.2}", strength.ww_percent()));
        if low == high { best } else { format!("{best} ({low}-{high})") }
    };
    grid(&mut sheet, &format!("g of bottle + g of {with}"), chart, table, grams);
    grid(&mut sheet, &format!("parts of bottle + parts of {with}, by mass"), chart, table, parts);
    grid(&mut sheet, "really gives, in % w/w", chart, table, gives);
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

fn grid(
    sheet: &mut Sheet,
    title: &str,
    chart: &Chart,
    table: &DilutionTable,
    cell: impl Fn(&WeighedDilution) -> String,
) {
    sheet.line(title);
    let names: Vec<&str> =
        std::iter::once("bottle").chain(chart.targets.iter().map(|target| target.text.as_str())).collect();
    let numbers: Vec<usize> = (1..names.len()).collect();
    let rows = chart.stocks.iter().zip(table.rows.chunks(chart.targets.len().max(1))).map(|(stock, rows)| {
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

fn csv(chart: &Chart, table: &DilutionTable) -> Result<String, Refusal> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    let pairs = chart.stocks.iter().flat_map(|stock| chart.targets.iter().map(move |target| (stock, target)));
    for (row, (stock, target)) in table.rows.iter().zip(pairs) {
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
