use super::{
    COLUMNS, ServiceLine,
    line::{check_names, read_line},
    place::Place,
};
use crate::{money::Currency, reader::Problems};
use serde_json::{Map, Value};

/// Reads a list of services from JSON: an array of objects with the keys of [`COLUMNS`](super::COLUMNS).
///
/// Values are texts (`"12.50"`) or numbers; a text keeps every digit. `null` is the same as leaving the key out.
///
/// # Errors
///
/// Everything that is wrong, together, each with its item and key.
///
/// # Example
///
/// ```
/// use foilwork::{business::list::parse_json, money::Currency};
///
/// let text = r#"[{"service": "toner", "hands_on_min": 15, "chair_min": 40, "price": "35.00", "sold": 6}]"#;
/// let list = parse_json(text, Currency::from_code("EUR")?)?;
/// assert_eq!(list[0].price.map(|price| price.to_string()), Some("35.00 EUR".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn parse_json(text: &str, currency: Currency) -> Result<Vec<ServiceLine>, Problems> {
    let mut problems = Problems::default();
    let items: Vec<Map<String, Value>> = match serde_json::from_str(text) {
        Ok(items) => items,
        Err(error) => {
            Place::Whole.say(&mut problems, "", error);
            return Err(problems);
        }
    };
    if items.is_empty() {
        Place::Whole.say(&mut problems, "", "the list has no services: give at least one item");
    }
    let mut lines = Vec::new();
    for (place, item) in items.iter().enumerate() {
        let place = Place::Item(place + 1);
        check_names(place, item.keys().map(String::as_str), COLUMNS, &mut problems);
        let texts = texts(place, item, &mut problems);
        let get = |key: &str| texts.iter().find(|(name, _)| *name == key).map(|(_, text)| text.as_str());
        lines.extend(read_line(place, currency, get, &mut problems));
    }
    problems.or(lines)
}

/// Every value as the text a user would have typed.
fn texts<'a>(place: Place, item: &'a Map<String, Value>, problems: &mut Problems) -> Vec<(&'a str, String)> {
    let mut texts = Vec::with_capacity(item.len());
    for (key, value) in item {
        match value {
            Value::Null => {}
            Value::String(text) => texts.push((key.as_str(), text.clone())),
            Value::Number(number) => texts.push((key.as_str(), number.to_string())),
            _ => place.say(problems, key, "must be a text or a number"),
        }
    }
    texts
}
