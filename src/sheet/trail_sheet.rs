use crate::{
    service::{TracedInput, TracedResult},
    text::{Sheet, list},
};

/// How results came about, as plain text: value, formula, inputs, basis, sources, version.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::plan_text, sheet::trail_sheet};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// assert!(trail_sheet(&plan.trail()).contains("formula: sum of grams times % w/w"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn trail_sheet(results: &[TracedResult]) -> String {
    let mut sheet = Sheet::default();
    for result in results {
        let value = told(&result.value, result.bounds.as_ref(), &result.unit);
        sheet.paragraph(&format!("{} = {value}", result.what), 2);
        sheet.paragraph(&format!("  formula: {}", result.formula), 4);
        let inputs = result.inputs.iter().map(|input: &TracedInput| {
            format!("{} {}", input.what, told(&input.value, input.bounds.as_ref(), &input.unit))
        });
        sheet.paragraph(&format!("  from: {}", inputs.collect::<Vec<_>>().join("; ")), 4);
        let sources = if result.sources.is_empty() { "arithmetic".to_owned() } else { list(&result.sources, "and") };
        sheet.paragraph(&format!("  rests on: {}; {sources}; foilwork {}", result.basis, result.foilwork), 4);
        sheet.blank();
    }
    sheet.finish()
}

fn told(value: &str, bounds: Option<&[String; 2]>, unit: &str) -> String {
    match bounds {
        Some([low, high]) => format!("{value} ({low} to {high}) {unit}"),
        None => format!("{value} {unit}"),
    }
}
