use super::{Outcome, Refusal, args::TableArgs, output, read};
use crate::{
    peroxide::{DilutionRow, DilutionTable, StatedStrength, dilution_table},
    quantity::{Mass, MassFraction, Temperature},
    text::{Sheet, number},
};
use serde::Serialize;

/// `foilwork table`: what to weigh from every stock for every target, for the wall.
pub(super) fn run(args: &TableArgs) -> Outcome {
    let (stocks, targets) = (strengths("--stocks", &args.stocks)?, strengths("--targets", &args.targets)?);
    let table = dilution_table(&stocks, &targets, Mass::from_g(args.total)?, Mass::from_g(args.division)?)?;
    if args.csv {
        return output::deliver(csv(&table)?, 0, &args.report.output);
    }
    output::report(&args.report, &table, || text(&table))
}

/// A chart states each strength once, without bounds, so a strength that has bounds has no place on it.
fn strengths(name: &str, text: &str) -> Result<Vec<MassFraction>, Refusal> {
    let one = |item: String| {
        let strength = read::option::<StatedStrength>(name, &item)?
            .mass_fraction(Temperature::REFERENCE)
            .map_err(|error| read::about(name, error))?;
        if strength.is_exact() {
            return Ok(strength.best());
        }
        let (low, high) = (strength.low(), strength.high());
        let way_out = "a chart needs it in % w/w (see `foilwork convert`)";
        Err(Refusal(format!("{name}: {item} can be anything from {low:.2} to {high:.2}: {way_out}")))
    };
    read::with_units(text).into_iter().map(one).collect()
}

fn text(table: &DilutionTable) -> String {
    let mut sheet = Sheet::default();
    sheet.title(&format!(
        "DILUTION  {} g in all, on a scale of {} g",
        number(table.total.g(), 3),
        number(table.division.g(), 4)
    ));
    let names = ["bottle", "target", "weigh", "diluent", "parts", "really gives"];
    sheet.table(&names, &[0, 1, 2, 3, 4, 5], table.rows.iter().map(cells).collect());
    if table.rows.iter().any(|row| row.refused.is_some()) {
        sheet.paragraph("-: a diluent never makes it stronger than the bottle.", 3);
    }
    sheet.blank();
    sheet.paragraph("Strengths in % w/w; parts of diluent to one part of bottle, by mass, before rounding.", 0);
    sheet.paragraph(super::dilute::CAUTION, 0);
    sheet.finish()
}

fn cells(row: &DilutionRow) -> Vec<String> {
    let percent = |value: f64| format!("{} %", number(value, 2));
    let mut cells = vec![percent(row.stock.percent_ww()), percent(row.target.percent_ww())];
    match &row.weigh {
        Some(weigh) => cells.extend([
            format!("{} g", number(weigh.stock.g(), 4)),
            format!("{} g", number(weigh.diluent.g(), 4)),
            weigh.diluent_parts.map_or_else(|| "all".to_owned(), |parts| number(parts, 2)),
            format!("{:.2} %", weigh.strength.percent_ww()),
        ]),
        None => cells.extend(["-"; 4].map(str::to_owned)),
    }
    cells
}

/// A row of the table for a spreadsheet: nothing nested.
#[derive(Serialize)]
struct FlatRow<'a> {
    stock_ww_percent: f64,
    target_ww_percent: f64,
    stock_g: Option<f64>,
    diluent_g: Option<f64>,
    strength_ww_percent: Option<f64>,
    diluent_parts: Option<f64>,
    refused: Option<&'a str>,
}

fn csv(table: &DilutionTable) -> Result<String, Refusal> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    for row in &table.rows {
        let weigh = row.weigh.as_ref();
        writer.serialize(FlatRow {
            stock_ww_percent: row.stock.percent_ww(),
            target_ww_percent: row.target.percent_ww(),
            stock_g: weigh.map(|weigh| weigh.stock.g()),
            diluent_g: weigh.map(|weigh| weigh.diluent.g()),
            strength_ww_percent: weigh.map(|weigh| weigh.strength.percent_ww()),
            diluent_parts: weigh.and_then(|weigh| weigh.diluent_parts),
            refused: row.refused.as_deref(),
        })?;
    }
    Ok(String::from_utf8(writer.into_inner()?)?)
}
