//! What a schema cannot say of the names in a shop, and of fields that need or exclude each other.

use crate::reader::{Kind, Node, Problems};
use std::collections::HashMap;

/// Whatever goes into a bowl, with the field that names it.
const KINDS: [(&str, &str); 6] = [
    ("developer", "name"),
    ("lightener", "name"),
    ("shade", "code"),
    ("additive", "name"),
    ("diluent", "name"),
    ("remover", "name"),
];

pub(super) fn check(shop: &Node, prefix: &str, problems: &mut Problems) {
    let items = |kind: &str| shop.get(kind).map(Node::items).unwrap_or_default();
    for (i, shade) in items("shade").iter().enumerate() {
        let class = shade.get("class").and_then(Node::text);
        if class.is_some_and(|class| class != "semi") && shade.get("ratio").is_none() {
            let message = "missing: say how many parts colour to developer, for example 1:1.5";
            problems.say(shade.at, &format!("{prefix}shade[{}].ratio", i + 1), message);
        }
    }
    for (kind, key) in KINDS {
        unique(&format!("{prefix}{kind}"), items(kind), key, problems);
    }
    unique(&format!("{prefix}consumable"), items("consumable"), "name", problems);
    unique(&format!("{prefix}class_price"), items("class_price"), "class", problems);
    clash(&items, prefix, problems);
    tones(shop, items("shade"), prefix, problems);
}

/// Names that are given twice in one list.
pub(crate) fn unique(field: &str, items: &[Node], key: &str, problems: &mut Problems) {
    let mut seen: HashMap<&str, &Node> = HashMap::new();
    for (i, item) in items.iter().enumerate() {
        let Some((name, text)) = item.get(key).and_then(|name| Some((name, name.text()?))) else { continue };
        let Some(first) = seen.get(text) else {
            seen.insert(text, name);
            continue;
        };
        let place = first.at.map_or("further up".to_owned(), |at| format!("in line {}", at.line));
        let message = format!("\"{text}\" is already taken {place}: give each its own {key}");
        problems.say(name.at, &format!("{field}[{}].{key}", i + 1), message);
    }
}

/// Whatever goes into a bowl is found by its name alone, so that no two kinds may share one.
fn clash<'n>(items: &impl Fn(&str) -> &'n [Node], prefix: &str, problems: &mut Problems) {
    let mut seen: HashMap<&str, &str> = HashMap::new();
    for (kind, key) in KINDS.into_iter().skip(1) {
        for (i, item) in items(kind).iter().enumerate() {
            let Some((node, name)) = item.get(key).and_then(|node| Some((node, node.text()?))) else { continue };
            let other = *seen.entry(name).or_insert(kind);
            if other != kind {
                let message =
                    format!("\"{name}\" is already the name of {} {other}: rename one of them", article(other));
                problems.say(node.at, &format!("{prefix}{kind}[{}].{key}", i + 1), message);
            }
        }
    }
}

const fn article(kind: &str) -> &'static str {
    if matches!(kind.as_bytes().first(), Some(b'a')) { "an" } else { "a" }
}

/// A tone is given once, and every digit has a meaning.
fn tones(shop: &Node, shades: &[Node], prefix: &str, problems: &mut Problems) {
    let known: Vec<&str> = match shop.get("digits").map(|digits| &digits.kind) {
        Some(Kind::Table(entries)) => entries.iter().map(|(digit, ..)| digit.as_str()).collect(),
        _ => Vec::new(),
    };
    if let Some(Kind::Table(entries)) = shop.get("digits").map(|digits| &digits.kind) {
        for (digit, at, _) in entries.iter().filter(|(digit, ..)| digit.chars().count() != 1) {
            let message = "is no digit: one character stands for one tone";
            problems.say(*at, &format!("{prefix}digits.{digit}"), message);
        }
    }
    for (i, shade) in shades.iter().enumerate() {
        let Some(digits) = shade.get("tone_digits") else { continue };
        let field = format!("{prefix}shade[{}]", i + 1);
        if shade.get("tones").is_some_and(|tones| !tones.items().is_empty()) {
            let message = "both `tones` and `tone_digits` are given: keep one of them";
            problems.say(digits.at, &field, message);
        }
        for digit in digits.text().unwrap_or_default().chars() {
            if !known.iter().any(|one| one.chars().eq([digit])) {
                let there = if known.is_empty() { "none".to_owned() } else { known.join(", ") };
                let message = format!(
                    "\"{digit}\" has no meaning in this shop: add it under `digits`, for example {digit} = \
                     [\"violet\"] (known: {there})"
                );
                problems.say(digits.at, &format!("{field}.tone_digits"), message);
            }
        }
    }
}
