use crate::{
    answer::answer,
    error::{FoilworkError, raise},
    sequence::Sequence,
};
use foilwork::teach::{self, TrainingUnit};
use pyo3::prelude::*;

answer! {
    in "foilwork.teach";
    /// An element of a published unit.
    MappedElement {
        /// The unit, by its code.
        unit: String,
        /// Its element, criterion, note or list, as the unit numbers it.
        element: String,
    }
}

answer! {
    in "foilwork.teach";
    /// One point of a checklist.
    ChecklistPoint {
        /// Its place, from one.
        number: usize,
        /// When in the service.
        stage: String,
        /// What is watched for.
        watch_for: String,
        /// What the observer writes down.
        evidence: String,
        /// The published elements that it answers.
        answers: Vec<MappedElement>,
    }
}

answer! {
    in "foilwork.teach";
    /// A checklist for watching practical work, mapped to published units; made by :func:`checklist`.
    Checklist {
        /// The units that it is mapped to.
        units: Vec<String>,
        /// What is watched for.
        points: Vec<ChecklistPoint>,
    }
    impl {
        /// The checklist as plain text in 80 columns, with room to write.
        fn text(&self) -> PyResult<String> {
            Ok(of(&self.units)?.text())
        }

        /// The checklist as a page without network, to tick off or to print.
        fn html(&self) -> PyResult<String> {
            Ok(of(&self.units)?.html())
        }

        /// The checklist as CSV, a line for each point and element.
        fn csv(&self) -> PyResult<String> {
            Ok(of(&self.units)?.csv())
        }

        /// Points and elements as JSON text.
        fn json(&self) -> PyResult<String> {
            serde_json::to_string(&of(&self.units)?).map_err(|error| FoilworkError::new_err(error.to_string()))
        }
    }
}

fn of(units: &[String]) -> PyResult<teach::Checklist> {
    let units = units.iter().map(|word| word.parse()).collect::<Result<Vec<TrainingUnit>, _>>().map_err(raise)?;
    Ok(teach::checklist(&units))
}

impl From<teach::MappedElement> for MappedElement {
    fn from(one: teach::MappedElement) -> Self {
        Self { unit: one.unit.code().to_owned(), element: one.element.to_owned() }
    }
}

impl From<teach::ChecklistPoint> for ChecklistPoint {
    fn from(point: teach::ChecklistPoint) -> Self {
        Self {
            number: point.number,
            stage: point.stage.code().to_owned(),
            watch_for: point.watch_for.to_owned(),
            evidence: point.evidence.to_owned(),
            answers: point.answers.into_iter().map(Into::into).collect(),
        }
    }
}

/// Make a checklist for watching practical work, mapped to published units.
///
/// The points are in foilwork's own words. They name the elements whose text was read: a unit may ask for more, and its
/// version in force and its assessor decide.
///
/// Args:
///     units: the units it is for: ``"au-shbhcls002"``, ``"au-shbhcls004"``, ``"au-shbhcls006"``, ``"uk-skahdbr6"``,
///         ``"uk-skahdbr7"``, ``"uk-d6001010"``, ``"uk-a6008630"``, ``"nz-12313"``, ``"nz-2889"``, ``"nz-19792"``,
///         ``"nz-28835"``, ``"nz-28846"``, ``"ca-red-seal-f"``; all of them when left out.
///
/// Returns:
///     The checklist.
///
/// Raises:
///     FoilworkError: a unit that is not known.
///
/// Source:
///     The units, as far as they were read: ``foilwork.source.resolve("nz-12313")``.
///
/// Examples:
///     >>> from foilwork.teach import checklist
///     >>> point = checklist(["nz-12313"]).points[0]
///     >>> point.watch_for
///     'Estimates white hair area by area, not as one glance'
///     >>> [(one.unit, one.element) for one in point.answers]
///     [('nz-12313', '1.2')]
///     >>> "[ ]" in checklist(["nz-12313"]).text()
///     True
#[pyfunction]
#[pyo3(signature = (units = None))]
pub fn checklist(units: Option<Sequence<String>>) -> PyResult<Checklist> {
    let list = of(&units.map(|units| units.0).unwrap_or_default())?;
    Ok(Checklist {
        units: list.units.iter().map(|unit| unit.code().to_owned()).collect(),
        points: list.points.into_iter().map(Into::into).collect(),
    })
}
