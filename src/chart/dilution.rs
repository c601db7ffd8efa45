use super::{Anchor, Paint, Svg};
use crate::{
    peroxide::{DilutionTable, WeighedDilution, cautions, stronger},
    text::{list, number},
};

/// What a dilution grid shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DilutionChart<'a> {
    /// What stands above it.
    pub title: &'a str,
    /// The bottles as they are named, in the order of the table.
    pub stocks: &'a [String],
    /// The strengths wanted as they are named, in the order of the table.
    pub targets: &'a [String],
    /// What is added to each bottle.
    pub weaker: &'a str,
    /// What to weigh.
    pub table: &'a DilutionTable,
}

/// The most lines, and the most columns, of a grid that can be read on a wall.
pub const MOST_GRID: usize = 12;

const NAMES: f64 = 150.0;
const CELL: (f64, f64) = (128.0, 72.0);
const ABOVE: f64 = 92.0;
/// The least width, a line of small text, and about the width of a letter in it.
const LEAST: f64 = 440.0;
const LINE: f64 = 15.0;
const LETTER: f64 = 5.7;

/// A grid for the wall: a line for each bottle, a column for each strength wanted, in each cell the grams of both parts, the
/// strength they give with its bounds, and a bar of their shares; under it the cautions for the strongest bottle.
///
/// # Example
///
/// ```
/// use foilwork::{chart::{DilutionChart, dilution_chart}, peroxide::dilution_table};
/// use foilwork::{quantity::{Mass, MassFraction}, source::Interval};
///
/// let of = |percent| MassFraction::from_ww_percent(percent).map(Interval::exact);
/// let table = dilution_table(&[of(12.0)?], &[of(3.0)?], of(0.0)?, Mass::from_g(60.0)?, Mass::from_g(1.0)?)?;
/// let (stocks, targets) = (["12 %".to_owned()], ["3 %".to_owned()]);
/// let chart = DilutionChart { title: "60 g", stocks: &stocks, targets: &targets, weaker: "water", table: &table };
/// assert!(dilution_chart(&chart).contains("15 g + 45 g"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn dilution_chart(chart: &DilutionChart<'_>) -> String {
    let (columns, lines) = (count(chart.targets.len()), count(chart.stocks.len()));
    let strongest = chart.table.rows.iter().map(|row| row.stock).reduce(stronger);
    let below: Vec<String> = strongest.map(cautions).unwrap_or_default();
    let width = (NAMES + CELL.0 * columns + 12.0).max(LEAST);
    let letters = ((width - 24.0) / LETTER) as usize;
    let dark = "dark: from the bottle; below the grams what it gives, in % w/w; stir, use at once";
    let texts = std::iter::once(dark).chain(below.iter().map(String::as_str));
    let told: Vec<_> = texts.flat_map(|text| textwrap::wrap(text, letters)).collect();
    let size = (width, ABOVE + CELL.1 * lines + 12.0 + LINE * count(told.len()));
    let mut svg = Svg::new(size, chart.title, &format!("{} {}", words(chart), below.join(" ")));
    svg.rect((0.0, 0.0), size, &Paint::area("#fff"));
    svg.text((12.0, 24.0), Anchor::Start, 15.0, chart.title);
    let (total, division) = (number(chart.table.total.g(), 3), number(chart.table.division.g(), 4));
    let what = format!("g of bottle + g of {}, {total} g in all, on a scale of {division} g", chart.weaker);
    svg.text((12.0, 46.0), Anchor::Start, 12.0, &what);
    for (column, target) in (0_u32..).zip(chart.targets) {
        let x = NAMES + CELL.0 * (f64::from(column) + 0.5);
        svg.text((x, ABOVE - 12.0), Anchor::Middle, 13.0, target);
    }
    let rows = chart.table.rows.chunks(chart.targets.len().max(1));
    for ((line, stock), cells) in (0_u32..).zip(chart.stocks).zip(rows) {
        let top = ABOVE + CELL.1 * f64::from(line);
        svg.text((12.0, top + CELL.1 / 2.0 + 5.0), Anchor::Start, 13.0, stock);
        for (column, cell) in (0_u32..).zip(cells) {
            let left = NAMES + CELL.0 * f64::from(column);
            svg.rect((left, top), CELL, &Paint::area("#fff").outlined("#888", 1.0));
            let middle = left + CELL.0 / 2.0;
            let Some(weigh) = &cell.weigh else {
                svg.text((middle, top + CELL.1 / 2.0 + 5.0), Anchor::Middle, 13.0, "not from this");
                continue;
            };
            let (stock, weaker) = (weigh.stock.g(), weigh.diluent.g());
            svg.text((middle, top + 22.0), Anchor::Middle, 14.0, &grams(stock, weaker));
            svg.text((middle, top + 40.0), Anchor::Middle, 11.0, &gives(weigh));
            let share = (stock / (stock + weaker).max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
            let (from, width) = (left + 8.0, CELL.0 - 16.0);
            svg.rect((from, top + 50.0), (width, 12.0), &Paint::area("#dfe9f5").outlined("#345", 1.0));
            svg.rect((from, top + 50.0), (width * share, 12.0), &Paint::area("#345"));
        }
    }
    let under = ABOVE + CELL.1 * lines + 20.0;
    for (place, line) in (0_u32..).zip(&told) {
        svg.text((12.0, under + LINE * f64::from(place)), Anchor::Start, 11.0, line);
    }
    svg.finish()
}

fn grams(stock: f64, weaker: f64) -> String {
    format!("{} g + {} g", number(stock, 4), number(weaker, 4))
}

/// What lies in the bowl, as far as the bottle is known.
fn gives(weigh: &WeighedDilution) -> String {
    let [low, best, high] = weigh.strength.to_array().map(|strength| format!("{:.1}", strength.ww_percent()));
    if low == high { format!("{best} %") } else { format!("{best} % ({low}-{high})") }
}

fn words(chart: &DilutionChart<'_>) -> String {
    let rows = chart.table.rows.chunks(chart.targets.len().max(1));
    let said = chart.stocks.iter().zip(rows).map(|(stock, cells)| {
        let cells = chart.targets.iter().zip(cells).map(|(target, cell)| match &cell.weigh {
            Some(weigh) => {
                format!("{target} from {}, which gives {}", grams(weigh.stock.g(), weigh.diluent.g()), gives(weigh))
            }
            None => format!("{target} not from this"),
        });
        format!("{stock}: {}", list(cells.collect::<Vec<_>>(), "and"))
    });
    format!("{}.", said.collect::<Vec<_>>().join("; "))
}

/// A wall holds no more than some hundreds.
fn count(number: usize) -> f64 {
    f64::from(u32::try_from(number).unwrap_or(u32::MAX).max(1))
}
