use super::{
    ClassCost, QuotePart,
    list::{
        field::Fields,
        place::Place,
        rows::{Row, each_row},
    },
};
use crate::{
    money::{Currency, Money},
    quantity::Duration,
    reader::Problems,
    source::{Basis, Interval},
};

/// The columns of a list of cost ranges, in any order. `service`, `part`, `low`, `best` and `high` must be there.
pub const COST_RANGE_COLUMNS: &[&str] =
    &["service", "class", "part", "low", "best", "high", "basis", "chair_low_min", "chair_best_min", "chair_high_min"];

/// Reads what services cost, part by part and from-to, from comma-separated text with a header row.
///
/// A row is one part of one service: what it costs at the least, as expected, and at the most. Rows of the same service
/// and class belong together; the time in the chair stands in one of them.
///
/// # Units
///
/// Amounts in units of the currency, times in min.
///
/// # Errors
///
/// Everything that is wrong, together, each with its line and column.
///
/// # Example
///
/// ```
/// use foilwork::{business::read_cost_ranges, money::Currency};
///
/// let text = "service,class,part,low,best,high,basis\n\
///             half head of foils,long,lightener,4.00,6.00,10.00,assumed\n\
///             half head of foils,long,hands-on time,30.00,34.00,44.00,stated\n";
/// let classes = read_cost_ranges(text, Currency::from_code("EUR")?)?;
/// assert_eq!((classes.len(), classes[0].parts.len()), (1, 2));
/// assert_eq!(classes[0].parts[1].cost.high().to_string(), "44.00 EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn read_cost_ranges(text: &str, currency: Currency) -> Result<Vec<ClassCost>, Problems> {
    let mut classes: Vec<ClassCost> = Vec::new();
    each_row(text, COST_RANGE_COLUMNS, "parts", |place, row, problems| {
        let Some((service, class, part, in_chair)) = read(place, row, currency, problems) else { return };
        let same = |known: &&mut ClassCost| (&known.service, &known.class) == (&service, &class);
        match classes.iter_mut().find(same) {
            Some(known) => {
                known.parts.push(part);
                known.in_chair = known.in_chair.or(in_chair);
            }
            None => classes.push(ClassCost { service, class, parts: vec![part], in_chair }),
        }
    })?;
    Ok(classes)
}

type Part = (String, String, QuotePart, Option<Interval<Duration>>);

fn read(place: Place, row: Row<'_>, currency: Currency, problems: &mut Problems) -> Option<Part> {
    let mut fields = Fields::new(place, |column: &str| row.get(column));
    let mut words = |column: &str| {
        let text = fields.text(column).map(str::to_owned);
        fields.required(column, text)
    };
    let (service, what) = (words("service"), words("part"));
    let class = fields.text("class").unwrap_or_default().to_owned();
    let mut money = |column: &'static str| {
        let amount: Option<Money> = fields.money(column, currency);
        fields.required(column, amount)
    };
    let amounts = (money("low"), money("best"), money("high"));
    let basis = match fields.text("basis").map(str::parse::<Basis>) {
        None => Basis::Stated,
        Some(Ok(basis)) => basis,
        Some(Err(unknown)) => {
            fields.problem("basis", unknown);
            Basis::Stated
        }
    };
    let mut minutes = |column: &'static str| fields.quantity(column, Duration::from_min);
    let times = (minutes("chair_low_min"), minutes("chair_best_min"), minutes("chair_high_min"));
    let cost = match amounts {
        (Some(low), Some(best), Some(high)) => Interval::new(low, best, high)
            .map_err(|_| fields.problem("best", "the three costs must rise: low, best, high"))
            .ok(),
        _ => None,
    };
    let in_chair = match times {
        (Some(low), Some(best), Some(high)) => Interval::new(low, best, high)
            .map_err(|_| fields.problem("chair_best_min", "the three times must rise: low, best, high"))
            .ok(),
        (None, None, None) => None,
        _ => {
            fields.problem("chair_best_min", "give all three times in the chair, or none");
            None
        }
    };
    problems.0.append(&mut fields.problems.0);
    Some((service?, class, QuotePart { what: what?, cost: cost?, basis }, in_chair))
}
