use super::{COLUMNS, Packs, ServiceLine, line::read_line, rows::each_row};
use crate::reader::Problems;

/// Reads a list of services from comma-separated text with a header row.
///
/// Semicolons or tabs instead of commas are recognised by the header; decimals are written with a point all the same.
/// Columns may come in any order, see [`COLUMNS`](super::COLUMNS), and their names in any case, with spaces or hyphens between
/// words. Empty lines are skipped. `packs` are what `product` and `developer` may name; a currency alone has none.
///
/// # Errors
///
/// Everything that is wrong, together, each with its line and column.
///
/// # Example
///
/// ```
/// use foilwork::{business::list::parse_csv, money::Currency};
///
/// let text = "service,product_pack_price,product_pack_g,product_g,hands_on_min,chair_min\n\
///             half head of foils,26.40,500,35,70,120\n\
///             toner,9.80,60,thirty,15,\n";
/// let problems = parse_csv(text, Currency::from_code("EUR")?).unwrap_err();
/// let said: Vec<_> = problems.0.iter().map(ToString::to_string).collect();
/// assert_eq!(said, [
///     r#"line 3: product_g: number "thirty" is not a decimal number: write digits with a point, for example 12.50"#,
///     "line 3: chair_min: is missing: give a value",
/// ]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn parse_csv(text: &str, packs: impl Into<Packs>) -> Result<Vec<ServiceLine>, Problems> {
    let packs = packs.into();
    let mut lines = Vec::new();
    each_row(text, COLUMNS, "services", |place, row, problems| {
        lines.extend(read_line(place, &packs, |column| row.get(column), problems));
    })?;
    Ok(lines)
}
