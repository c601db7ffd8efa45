use super::{Exercise, Worksheet};
use crate::{
    choice::choice,
    source::COMMON_PRACTICE,
    text::{Sheet, list},
};

choice! {
    /// What of a worksheet is written.
    SheetHalf: "half of the sheet" {
        /// The problems, then the key.
        Both = "both",
        /// The problems alone, to hand out.
        Problems = "problems",
        /// The key alone.
        Key = "key",
    }
}

impl Worksheet {
    /// The sheet as plain text in 80 columns; with `choices` each problem shows its answers to choose from.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::teach::{SheetHalf, WorksheetRequest, worksheet};
    ///
    /// let sheet = worksheet(&WorksheetRequest::new(3))?;
    /// let handed_out = sheet.text(SheetHalf::Problems, true);
    /// assert!(handed_out.contains("  A  ") && !handed_out.contains("KEY"));
    /// # Ok::<(), foilwork::teach::WorksheetError>(())
    /// ```
    #[must_use]
    pub fn text(&self, half: SheetHalf, choices: bool) -> String {
        let mut sheet = Sheet::default();
        if half != SheetHalf::Key {
            sheet.title(&format!("WORKSHEET {}  {}", self.seed, self.title));
            sheet.paragraph("Name: ______________________________   Date: ______________", 0);
            for exercise in &self.exercises {
                problem(&mut sheet, exercise, choices);
            }
        }
        if half == SheetHalf::Both {
            sheet.blank();
        }
        if half != SheetHalf::Problems {
            sheet.title(&format!("KEY TO WORKSHEET {}  {}", self.seed, self.title));
            for exercise in &self.exercises {
                key(&mut sheet, exercise, choices);
            }
            sheet.blank();
            sheet.paragraph(&self.origin(), 0);
        }
        sheet.finish()
    }

    /// Where the sheet is from, so that it can be made again.
    pub(super) fn origin(&self) -> String {
        format!(
            "foilwork {}, problems of version {}, seed {}. Sums for a class: no product's instructions, no law and no test on a \
             strand or on skin is replaced by them.",
            self.foilwork, self.format, self.seed
        )
    }
}

fn problem(sheet: &mut Sheet, exercise: &Exercise, choices: bool) {
    sheet.blank();
    sheet.paragraph(&format!("{:>2}. {}", exercise.number, exercise.in_words()), 4);
    if choices {
        for option in &exercise.options {
            sheet.paragraph(&format!("      {}  {}", option.letter, option.answer.text), 9);
        }
    } else {
        sheet.blank();
        sheet.line("    Answer: ____________________");
    }
}

fn key(sheet: &mut Sheet, exercise: &Exercise, choices: bool) {
    sheet.blank();
    let letter = if choices { format!("{}  ", exercise.letter()) } else { String::new() };
    let head = format!(
        "{:>2}. {letter}{}   ({}, {})",
        exercise.number, exercise.answer.text, exercise.topic, exercise.difficulty
    );
    sheet.paragraph(&head, 4);
    for step in &exercise.steps {
        sheet.paragraph(&format!("    {}: {} = {}", step.what, step.formula, step.result), 6);
    }
    for option in &exercise.options {
        if let Some(mistake) = option.mistake {
            let letter = if choices { format!("{} ", option.letter) } else { String::new() };
            sheet.paragraph(&format!("    not {letter}{}: {mistake}", option.answer.text), 6);
        }
    }
    sheet.paragraph(&format!("    [{}]", exercise.rests_on()), 5);
}

impl Exercise {
    /// The basis of the rule and its citations.
    pub(super) fn rests_on(&self) -> String {
        match self.sources.as_slice() {
            [] => format!("{}: arithmetic", self.basis),
            [id] if *id == COMMON_PRACTICE.id => self.basis.to_string(),
            ids => format!("{}: {}", self.basis, list(ids, "and")),
        }
    }
}
