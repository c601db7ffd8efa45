use super::{Difficulty, ExercisePicture, Mistake, Topic};
use crate::source::Basis;
use rust_decimal::Decimal;
use serde::Serialize;
use std::collections::BTreeMap;

/// A problem with its one answer, the way there, and the answers that usual errors lead to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Exercise {
    /// Its place on the sheet, from one.
    pub number: usize,
    /// What it practises.
    pub topic: Topic,
    /// How much it asks for.
    pub difficulty: Difficulty,
    /// Which problem of the topic it is, such as `dilute-to-total`.
    pub kind: &'static str,
    /// The problem in words, with its numbers and how to round.
    pub question: String,
    /// The picture it is read from or that stands beside it.
    pub picture: Option<ExercisePicture>,
    /// What is given, by names that end with the unit; numbers as exact decimals.
    pub given: BTreeMap<&'static str, String>,
    /// The answer.
    pub answer: ExerciseAnswer,
    /// The way there.
    pub steps: Vec<Working>,
    /// The answer among wrong ones, in an order drawn with the rest.
    pub options: Vec<OfferedAnswer>,
    /// What the rule rests on.
    pub basis: Basis,
    /// The citations of the rule, by their ids in the register; none where it is arithmetic.
    pub sources: Vec<&'static str>,
}

/// An answer: a number with its unit, a time of the clock, or words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ExerciseAnswer {
    /// As it is to be written.
    pub text: String,
    /// The number alone, where it is one.
    pub value: Option<Decimal>,
    /// Its unit.
    pub unit: Option<String>,
}

/// One step of the way: what is looked for, the formula with the numbers in it, and what the library makes of them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Working {
    /// What is looked for.
    pub what: &'static str,
    /// The formula with its numbers.
    pub formula: String,
    /// What it comes to.
    pub result: String,
}

/// One of the answers to choose from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct OfferedAnswer {
    /// Its letter.
    pub letter: char,
    /// The answer.
    pub answer: ExerciseAnswer,
    /// The error that leads to it; none for the right one.
    pub mistake: Option<Mistake>,
}

impl Exercise {
    /// The problem with what its picture says, for a form that has no pictures.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::teach::{Topic, WorksheetRequest, worksheet};
    ///
    /// let request = WorksheetRequest { topics: vec![Topic::Pigment], count: 20, ..WorksheetRequest::new(1) };
    /// let sheet = worksheet(&request)?;
    /// let pictured = sheet.exercises.iter().find(|exercise| exercise.picture.is_some()).ok_or("one has a picture")?;
    /// assert!(pictured.in_words().starts_with(&pictured.question) && pictured.in_words().contains("[picture: "));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn in_words(&self) -> String {
        match &self.picture {
            Some(picture) => format!("{} [picture: {}]", self.question, picture.says),
            None => self.question.clone(),
        }
    }

    /// The letter of the right answer.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::teach::{WorksheetRequest, worksheet};
    ///
    /// let sheet = worksheet(&WorksheetRequest::new(1))?;
    /// let first = &sheet.exercises[0];
    /// let right = first.options.iter().find(|option| option.letter == first.letter()).ok_or("one is right")?;
    /// assert_eq!(right.answer, first.answer);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn letter(&self) -> char {
        self.options.iter().find(|option| option.mistake.is_none()).map_or('?', |option| option.letter)
    }
}
