use foilwork::money::{Currency, Money, Rounding};
use rust_decimal::Decimal;

const WORKED_EXAMPLES: &str = include_str!("../../data/money/worked_examples.csv");

/// One worked example as it was published.
pub(crate) struct Row {
    pub id: String,
    pub stated_answer: String,
    pub source_id: String,
}

pub(crate) fn all() -> Vec<Row> {
    let mut reader = csv::Reader::from_reader(WORKED_EXAMPLES.as_bytes());
    let head = reader.headers().unwrap().clone();
    let place = |name: &str| head.iter().position(|column| column == name).unwrap();
    let (id, answer, source) = (place("id"), place("stated_answer"), place("source_id"));
    reader
        .records()
        .map(|record| {
            let record = record.unwrap();
            Row {
                id: record[id].to_owned(),
                stated_answer: record[answer].to_owned(),
                source_id: record[source].to_owned(),
            }
        })
        .collect()
}

pub(crate) fn row(id: &str) -> Row {
    all().into_iter().find(|row| row.id == id).unwrap_or_else(|| panic!("no row {id}"))
}

/// The numbers of a stated answer, in their order: "1,400 cuts (14,000); 1,000" gives 1400, 14000, 1000.
pub(crate) fn stated(id: &str) -> Vec<Decimal> {
    let answer = row(id).stated_answer;
    answer
        .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == ','))
        .map(|word| word.replace(',', ""))
        .filter(|word| word.starts_with(|c: char| c.is_ascii_digit()))
        .map(|word| word.trim_end_matches('.').parse().unwrap())
        .collect()
}

/// Compares with the stated answer, number by number; ours may be printed with trailing zeros.
#[track_caller]
pub(crate) fn check(id: &str, got: &[Decimal]) {
    let want = stated(id);
    assert_eq!(got.len(), want.len(), "{id}: the row states {want:?}, got {got:?}");
    for (got, want) in got.iter().zip(&want) {
        assert_eq!(got, want, "{id} ({}): got {got}, the row states {want}", row(id).source_id);
    }
}

pub(crate) fn usd() -> Currency {
    Currency::from_code("USD").unwrap()
}

/// An amount in a currency with two decimals, exactly.
pub(crate) fn money(text: &str) -> Money {
    Money::parse(text, usd()).unwrap()
}

pub(crate) fn number(text: &str) -> Decimal {
    text.parse().unwrap()
}

/// To the decimals a row prints, half up.
pub(crate) fn to_decimals(value: Decimal, digits: u32) -> Decimal {
    value.round_dp_with_strategy(digits, Rounding::MidpointAwayFromZero.strategy())
}

pub(crate) const HALF_UP: Rounding = Rounding::MidpointAwayFromZero;
