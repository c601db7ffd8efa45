use super::Worksheet;
use crate::text::cell;
use std::borrow::Cow;

/// The columns of [`Worksheet::csv`].
const COLUMNS: [&str; 14] = [
    "seed",
    "number",
    "topic",
    "difficulty",
    "kind",
    "question",
    "picture",
    "answer",
    "value",
    "unit",
    "letter",
    "options",
    "mistakes",
    "steps",
];

impl Worksheet {
    /// The sheet as a table, a line for each problem: for a learning platform, or a mail merge.
    ///
    /// Lists stand in one cell, separated by ` | `: `options` by their letters, `mistakes` in the same order with `right` for
    /// the right one. No cell begins with what a spreadsheet would take for a formula.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::teach::{WorksheetRequest, worksheet};
    ///
    /// let table = worksheet(&WorksheetRequest { count: 2, ..WorksheetRequest::new(1) })?.csv();
    /// assert!(table.starts_with("seed,number,topic,difficulty,kind,question,picture,answer,value,unit,letter"));
    /// # Ok::<(), foilwork::teach::WorksheetError>(())
    /// ```
    #[must_use]
    pub fn csv(&self) -> String {
        let mut writer = csv::Writer::from_writer(Vec::new());
        // Writing to memory does not fail.
        let _ = writer.write_record(COLUMNS);
        for exercise in &self.exercises {
            let joined = |texts: Vec<String>| texts.join(" | ");
            let options = exercise.options.iter();
            let record = [
                self.seed.to_string(),
                exercise.number.to_string(),
                exercise.topic.code().to_owned(),
                exercise.difficulty.code().to_owned(),
                exercise.kind.to_owned(),
                exercise.question.clone(),
                exercise.picture.as_ref().map(|picture| picture.says.clone()).unwrap_or_default(),
                exercise.answer.text.clone(),
                exercise.answer.value.map(|value| value.to_string()).unwrap_or_default(),
                exercise.answer.unit.clone().unwrap_or_default(),
                exercise.letter().to_string(),
                joined(options.clone().map(|option| format!("{} {}", option.letter, option.answer.text)).collect()),
                joined(options.map(|option| option.mistake.map_or("right", super::Mistake::code).to_owned()).collect()),
                joined(
                    exercise
                        .steps
                        .iter()
                        .map(|step| format!("{}: {} = {}", step.what, step.formula, step.result))
                        .collect(),
                ),
            ];
            let _ = writer.write_record(record.map(|text| plain(&text).into_owned()));
        }
        finished(writer)
    }
}

/// What a writer to memory has written.
pub(super) fn finished(writer: csv::Writer<Vec<u8>>) -> String {
    writer.into_inner().ok().and_then(|bytes| String::from_utf8(bytes).ok()).unwrap_or_default()
}

/// A dash alone is no formula.
fn plain(text: &str) -> Cow<'_, str> {
    if text == "-" { text.into() } else { cell(text) }
}
