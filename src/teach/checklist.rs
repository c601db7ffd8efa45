use super::{ObservedStage, TrainingUnit, csv::finished, observed::OBSERVED};
use crate::text::{Sheet, cell, list};
use serde::Serialize;

/// A checklist for watching practical work, mapped to published units.
///
/// The points are in our own words and in the order of the job. It names the elements whose text was read; a unit may ask for
/// more, and its version in force and its assessor decide. It is nobody's assessment form.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Checklist {
    /// The units that it is mapped to.
    pub units: Vec<TrainingUnit>,
    /// What is watched for.
    pub points: Vec<ChecklistPoint>,
    /// The version of foilwork that made it.
    pub foilwork: &'static str,
}

/// One point of a checklist.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ChecklistPoint {
    /// Its place, from one.
    pub number: usize,
    /// When.
    pub stage: ObservedStage,
    /// What is watched for.
    pub watch_for: &'static str,
    /// What the observer writes down as evidence.
    pub evidence: &'static str,
    /// The published elements that it answers.
    pub answers: Vec<MappedElement>,
}

/// An element of a unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct MappedElement {
    /// The unit.
    pub unit: TrainingUnit,
    /// Its element, criterion, note or list, as the unit numbers it.
    pub element: &'static str,
}

/// The points that answer any of these units; all units when none is named.
///
/// # Example
///
/// ```
/// use foilwork::teach::{TrainingUnit, checklist};
///
/// let list = checklist(&[TrainingUnit::Nz12313]);
/// assert!(list.points.iter().any(|point| point.watch_for.contains("foil") && point.answers[0].element == "note 3"));
/// assert!(list.points.len() < checklist(&[]).points.len());
/// ```
///
/// # Source
///
/// The units themselves, as far as they were read: [`TrainingUnit::citation`].
#[must_use]
pub fn checklist(units: &[TrainingUnit]) -> Checklist {
    let units: Vec<TrainingUnit> =
        TrainingUnit::ALL.iter().copied().filter(|unit| units.is_empty() || units.contains(unit)).collect();
    let mut points = Vec::new();
    for observed in OBSERVED {
        let answers = observed.answers.iter().filter(|(unit, _)| units.contains(unit));
        let answers: Vec<_> = answers.map(|(unit, element)| MappedElement { unit: *unit, element }).collect();
        if !answers.is_empty() {
            let (number, stage) = (points.len() + 1, observed.stage);
            let (watch_for, evidence) = (observed.watch_for, observed.evidence);
            points.push(ChecklistPoint { number, stage, watch_for, evidence, answers });
        }
    }
    Checklist { units, points, foilwork: env!("CARGO_PKG_VERSION") }
}

/// What stands under every checklist.
pub(super) const CAUTION: &str = "The points are foilwork's own words. They name the elements whose text was read: a unit may ask \
                                  for more, and its version in force and its assessor decide.";

impl ChecklistPoint {
    /// The elements in words.
    pub(super) fn elements(&self) -> String {
        list(self.answers.iter().map(|one| format!("{} {}", one.unit, one.element)).collect::<Vec<_>>(), "and")
    }
}

impl Checklist {
    /// The checklist as plain text in 80 columns, with room to write.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::teach::{TrainingUnit, checklist};
    ///
    /// let text = checklist(&[TrainingUnit::D6001010]).text();
    /// assert!(text.contains("[ ] ") && text.contains("D/600/1010 1.11"));
    /// ```
    #[must_use]
    pub fn text(&self) -> String {
        let mut sheet = Sheet::default();
        sheet.title("OBSERVATION OF A COLOUR SERVICE");
        sheet.paragraph("Learner: ____________________  Observer: ____________________  Date: __________", 0);
        let mut stage = None;
        for point in &self.points {
            if stage != Some(point.stage) {
                sheet.heading(&point.stage.to_string());
                stage = Some(point.stage);
            }
            sheet.paragraph(&format!("[ ] {}. {}", point.number, point.watch_for), 8);
            sheet.paragraph(&format!("        {}: ______________________________", point.evidence), 10);
            sheet.paragraph(&format!("        for {}", point.elements()), 12);
        }
        sheet.heading("Units");
        for unit in &self.units {
            sheet.paragraph(&format!("{unit}: {}", unit.citation().text), 2);
        }
        sheet.blank();
        sheet.paragraph(CAUTION, 0);
        sheet.line(&format!("foilwork {}", self.foilwork));
        sheet.finish()
    }

    /// The same as a table: a line for each point and element, with empty cells for what was seen.
    ///
    /// # Example
    ///
    /// ```
    /// assert!(foilwork::teach::checklist(&[]).csv().starts_with("number,stage,watch_for,evidence,unit,element,seen,date"));
    /// ```
    #[must_use]
    pub fn csv(&self) -> String {
        let mut writer = csv::Writer::from_writer(Vec::new());
        // Writing to memory does not fail.
        let _ = writer.write_record(["number", "stage", "watch_for", "evidence", "unit", "element", "seen", "date"]);
        for point in &self.points {
            for one in &point.answers {
                let number = point.number.to_string();
                let record = [
                    number.as_str(),
                    point.stage.code(),
                    point.watch_for,
                    point.evidence,
                    one.unit.code(),
                    one.element,
                    "",
                    "",
                ];
                let _ = writer.write_record(record.map(|text| cell(text).into_owned()));
            }
        }
        finished(writer)
    }
}
