//! Wrappers of `foilwork::teach`.

mod checklist;
mod exercise;
mod sheet;

pub use sheet::Worksheet;

crate::room::room! {
    /// Worksheets for a class: problems in words, worked by the library, with a key and the usual wrong answers.
    teach {
        checklist { Checklist, ChecklistPoint, MappedElement, checklist }
        exercise { Exercise, ExerciseAnswer, ExercisePicture, OfferedAnswer, Working }
        sheet { Worksheet, worksheet }
    }
}
