use super::{Sheet, list, significant};
use crate::{
    quantity::Quantity,
    source::{Basis, Interval, TracedInput, TracedResult},
};
use std::borrow::Cow;

/// How results came about, as plain text: value, formula, inputs, basis, sources, version.
///
/// An estimate is shown in six significant digits at most; the results themselves hold all of them.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::plan_text, text::trail_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// assert!(trail_text(&plan.trail()).contains("formula: sum of grams times % w/w"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn trail_text(results: &[TracedResult]) -> String {
    let mut sheet = Sheet::default();
    for result in results {
        let value = told(&result.value, result.bounds.as_ref(), &result.unit);
        sheet.paragraph(&format!("{} = {value}", result.what), 2);
        sheet.paragraph(&format!("  formula: {}", result.formula), 4);
        if let Some(worked) = &result.worked {
            sheet.paragraph(&format!("  worked: {worked}"), 4);
        }
        let inputs = result.inputs.iter().map(|input: &TracedInput| {
            let basis = input.basis.map(|basis| format!(" [{basis}]")).unwrap_or_default();
            format!("{} {}{basis}", input.what, told(&input.value, input.bounds.as_ref(), &input.unit))
        });
        sheet.paragraph(&format!("  from: {}", inputs.collect::<Vec<_>>().join("; ")), 4);
        let sources = match (result.sources.as_slice(), result.basis) {
            // What is assumed or common practice is a model or a figure that nobody published.
            ([], Basis::Derived | Basis::Stated) => "arithmetic".to_owned(),
            ([], _) => "no source".to_owned(),
            (ids, _) => list(ids, "and"),
        };
        sheet.paragraph(&format!("  rests on: {}; {sources}; foilwork {}", result.basis, result.foilwork), 4);
        sheet.blank();
    }
    sheet.finish()
}

fn told(value: &str, bounds: Option<&[String; 2]>, unit: &str) -> String {
    // A word has no unit.
    let unit = if unit == "word" { "" } else { unit };
    let told = match bounds {
        Some([low, high]) => {
            let [value, low, high] = [value, low, high].map(|number| shown(number, ESTIMATE));
            format!("{value} ({low} to {high}) {unit}")
        }
        None => format!("{} {unit}", shown(value, EXACT)),
    };
    told.trim_end().to_owned()
}

/// Significant digits of an estimate, and of a number without bounds: a float has noise after some fifteen.
const ESTIMATE: u8 = 6;
const EXACT: u8 = 12;

/// A number in at most so many significant digits; what is no number, or has no more digits, stays as it is.
fn shown(text: &str, digits: u8) -> Cow<'_, str> {
    let given = text.chars().filter(char::is_ascii_digit).skip_while(|digit| *digit == '0').count();
    match text.parse::<f64>() {
        Ok(number) if text.contains('.') && given > usize::from(digits) => significant(number, digits).into(),
        _ => text.into(),
    }
}

/// A quantity that goes into a result.
pub(crate) fn traced<Q: Quantity>(what: impl Into<String>, value: Interval<Q>) -> TracedInput {
    TracedInput::new(what, value.map(Q::in_unit), Q::UNIT)
}
