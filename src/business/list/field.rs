use super::place::Place;
use crate::{
    money::{Currency, Money, MoneyError, parse_decimal},
    quantity::InvalidQuantity,
    reader::Problems,
    text::is_active,
};
use rust_decimal::prelude::ToPrimitive;

/// The most characters of a name in a list.
const LONGEST_NAME: usize = 200;

/// Reads the fields of one row by name, and collects all that is wrong with them.
pub(in crate::business) struct Fields<'a, F: Fn(&str) -> Option<&'a str>> {
    get: F,
    place: Place,
    pub(in crate::business) problems: Problems,
}

impl<'a, F: Fn(&str) -> Option<&'a str>> Fields<'a, F> {
    pub(in crate::business) fn new(place: Place, get: F) -> Self {
        Self { get, place, problems: Problems::default() }
    }

    /// The trimmed text of a field; `None` when it is absent or empty.
    pub(in crate::business) fn text(&self, column: &str) -> Option<&'a str> {
        (self.get)(column).map(str::trim).filter(|text| !text.is_empty())
    }

    /// A text that stands in a table: short, on one line, and with nothing that a terminal obeys.
    pub(in crate::business) fn name(&mut self, column: &str) -> Option<String> {
        let text = self.text(column)?;
        let characters = text.chars().count();
        if characters > LONGEST_NAME {
            self.problem(column, format!("the text has {characters} characters: give at most {LONGEST_NAME}"));
        } else if text.contains(|c| is_active(c) || c == '\n') {
            self.problem(column, "has a line break or a character that acts instead of being shown: remove it");
        }
        Some(text.to_owned())
    }

    pub(in crate::business) fn problem(&mut self, column: &str, problem: impl std::fmt::Display) {
        self.place.say(&mut self.problems, column, problem);
    }

    /// A field that must be there.
    pub(in crate::business) fn required<T>(&mut self, column: &str, value: Option<T>) -> Option<T> {
        if value.is_none() && self.text(column).is_none() {
            self.problem(column, "is missing: give a value");
        }
        value
    }

    pub(in crate::business) fn money(&mut self, column: &'static str, currency: Currency) -> Option<Money> {
        let amount = self.read(column, |text| Money::parse(text, currency))?;
        if amount.is_negative() {
            self.problem(column, format!("invalid amount (got {amount}): must be nothing or more"));
            return None;
        }
        Some(amount)
    }

    /// A measured value through its checked constructor.
    pub(in crate::business) fn quantity<Q>(
        &mut self,
        column: &'static str,
        take: impl Fn(f64) -> Result<Q, InvalidQuantity>,
    ) -> Option<Q> {
        self.read(column, |text| {
            let decimal = parse_decimal("number", text)?;
            let value = decimal.to_f64().ok_or(MoneyError::TooLarge { field: "number" })?;
            take(value).map_err(MoneyError::from)
        })
    }

    pub(in crate::business) fn count(&mut self, column: &'static str) -> Option<u32> {
        self.read(column, |text| {
            let number = parse_decimal("count", text)?;
            let allowed = "a whole number from 0 to 4294967295";
            let whole = number.fract().is_zero().then(|| number.to_u32()).flatten();
            whole.ok_or(MoneyError::OutOfRange { field: "count", value: number, unit: "services", allowed })
        })
    }

    fn read<T>(&mut self, column: &'static str, take: impl FnOnce(&'a str) -> Result<T, MoneyError>) -> Option<T> {
        match take(self.text(column)?) {
            Ok(value) => Some(value),
            Err(problem) => {
                self.problem(column, problem);
                None
            }
        }
    }
}
