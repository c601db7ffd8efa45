use super::{
    COLUMNS, Packs, ServiceLine,
    line::{check_names, read_line},
    place::Place,
};
use crate::{
    reader::{Format, Kind, Node, Problems, tree},
    text::Position,
};

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
pub fn parse_json(text: &str, packs: impl Into<Packs>) -> Result<Vec<ServiceLine>, Problems> {
    let packs = packs.into();
    let (root, problems) = tree(text, Format::Json);
    if !problems.is_empty() {
        return Err(Problems(problems));
    }
    let mut problems = Problems::default();
    if !matches!(root.kind, Kind::List(_)) {
        let message = format!("{} where a list belongs: write the services in [ ]", root.kind_name());
        Place::Whole.say(&mut problems, "", message);
        return Err(problems);
    }
    if root.items().is_empty() {
        Place::Whole.say(&mut problems, "", "the list has no services: give at least one item");
    }
    let mut lines = Vec::new();
    for (place, item) in root.items().iter().enumerate() {
        let place = Place::Item(place + 1);
        let Kind::Table(entries) = &item.kind else {
            let message = format!("{} where a service belongs: write its fields in {{ }}", item.kind_name());
            place.say(&mut problems, "service", message);
            continue;
        };
        check_names(place, entries.iter().map(|(key, ..)| key.as_str()), COLUMNS, &mut problems);
        let texts = texts(place, entries, &mut problems);
        let get = |key: &str| texts.iter().find(|(name, _)| *name == key).map(|(_, text)| *text);
        lines.extend(read_line(place, &packs, get, &mut problems));
    }
    problems.or(lines)
}

/// Every value as the text a user would have typed.
fn texts<'n>(
    place: Place,
    entries: &'n [(String, Option<Position>, Node)],
    problems: &mut Problems,
) -> Vec<(&'n str, &'n str)> {
    let mut texts = Vec::with_capacity(entries.len());
    for (key, _, value) in entries {
        match &value.kind {
            Kind::Null => {}
            Kind::Text(text) | Kind::Number(_, Some(text)) => texts.push((key.as_str(), text.as_str())),
            _ => place.say(problems, key, "must be a text or a number"),
        }
    }
    texts
}
