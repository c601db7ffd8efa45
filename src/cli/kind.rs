//! What kind of file a text is, for the reader who hands over another than the command takes.

use super::Refusal;
use crate::reader::Problems;
use serde_json::Value;

/// The files of this program.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    Service,
    Shop,
    List,
    Quote,
    Plan,
    Schema,
}

impl Kind {
    const fn words(self) -> &'static str {
        match self {
            Self::Service => "a service file",
            Self::Shop => "a shop file",
            Self::List => "a list of services",
            Self::Quote => "a list of costs from-to",
            Self::Plan => "a plan as data",
            Self::Schema => "a JSON Schema",
        }
    }

    /// Where this kind of file goes, or what the command takes instead.
    const fn way_out(self) -> &'static str {
        match self {
            Self::Service => "`foilwork plan` reads it",
            Self::Shop => "a service names it with `shop_file`; `blend`, `toner` and `cost --shop` read it",
            Self::List => "`foilwork cost` reads it, with `--shop`",
            Self::Quote => "`foilwork business quote` reads it, with `--shop`",
            Self::Plan => "it is what `foilwork plan --json` printed, and nothing reads it back",
            Self::Schema => "it is for editors",
        }
    }

    /// Told by what every file of the kind holds; none when nothing is typical.
    fn of(text: &str) -> Option<Self> {
        let text = text.trim_start_matches('\u{feff}').trim_start();
        match text.chars().next()? {
            '{' => of_keys(&keys(&serde_json::from_str(text).ok()?)),
            '[' if serde_json::from_str::<Value>(text).is_ok_and(|list| list.pointer("/0/service").is_some()) => {
                Some(Self::List)
            }
            _ => of_header(text.lines().next()?).or_else(|| of_keys(&tables(text))),
        }
    }
}

fn keys(value: &Value) -> Vec<String> {
    value.as_object().map(|fields| fields.keys().cloned().collect()).unwrap_or_default()
}

/// The tables and fields at the top of a TOML text, as far as lines tell them.
fn tables(text: &str) -> Vec<String> {
    let table = |line: &str| Some(line.strip_prefix('[')?.trim_start_matches('[').split([']', '.']).next()?.to_owned());
    text.lines().filter_map(table).collect()
}

fn of_keys(keys: &[String]) -> Option<Kind> {
    let has = |names: &[&str]| names.iter().any(|name| keys.iter().any(|key| key == name));
    match () {
        () if has(&["$schema", "$defs"]) => Some(Kind::Schema),
        () if has(&["findings"]) => Some(Kind::Plan),
        () if has(&["service", "analysis", "section"]) => Some(Kind::Service),
        () if has(&[
            "developer",
            "lightener",
            "shade",
            "additive",
            "diluent",
            "remover",
            "consumable",
            "terms",
            "habits",
        ]) =>
        {
            Some(Kind::Shop)
        }
        () => None,
    }
}

fn of_header(line: &str) -> Option<Kind> {
    let columns: Vec<_> = line.split([',', ';', '\t']).map(|name| name.trim().to_ascii_lowercase()).collect();
    let has = |name: &str| columns.iter().any(|column| column == name);
    match columns.len() > 1 {
        true if has("low") && has("best") => Some(Kind::Quote),
        true if has("service") || has("hands_on_min") => Some(Kind::List),
        _ => None,
    }
}

/// What is wrong with a file that should be of a kind: that it is of another, or else every problem of it.
pub(super) fn refused(name: &str, text: &str, wanted: Kind, problems: &Problems) -> Refusal {
    match Kind::of(text) {
        Some(kind) if kind != wanted => {
            let (is, wants) = (kind.words(), wanted.words());
            Refusal(format!("{name} is {is}, and {wants} is wanted here ({})", kind.way_out()))
        }
        _ => located(name, problems),
    }
}

/// Everything that is wrong with a file, a line for each.
pub(super) fn located(name: &str, problems: &Problems) -> Refusal {
    Refusal(problems.lines().map(|line| format!("{name}: {line}")).collect::<Vec<_>>().join("\n"))
}
