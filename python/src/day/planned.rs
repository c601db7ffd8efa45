//! A day as a plan holds it, taken where one that is arranged is.

use super::timeline::{FoilGroup, Piece, SectionTimes, Timeline};
use pyo3::{exceptions::PyTypeError, prelude::*};

/// A day that was arranged, or that of a plan: the fields are the same.
pub struct AnyDay(pub Timeline);

impl<'py> FromPyObject<'_, 'py> for AnyDay {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if let Ok(arranged) = obj.extract::<Timeline>() {
            return Ok(Self(arranged));
        }
        let other = |_| {
            let kind = obj.get_type().name().map_or_else(|_| "something else".to_owned(), |name| name.to_string());
            PyTypeError::new_err(format!(
                "a day is a Timeline, not {kind} (give what `arrange` gives, or `plan.day.proposed`, which is None where no \
                 order was found)"
            ))
        };
        let planned: Planned = obj.extract().map_err(other)?;
        Ok(Self(planned.arranged()))
    }
}

#[derive(FromPyObject)]
struct Planned {
    sections: Vec<PlannedSection>,
    pieces: Vec<PlannedPiece>,
    visits: usize,
    finish_min: f64,
    idle_min: f64,
    hands_min: Vec<f64>,
    bound_min: f64,
    proven: bool,
}

#[derive(FromPyObject)]
struct PlannedSection {
    section: usize,
    name: String,
    visit: usize,
    person: usize,
    mix_at_min: Vec<f64>,
    start_min: f64,
    applied_min: f64,
    look_at_min: Vec<f64>,
    rinse_min: f64,
    rinsed_min: f64,
    on_hair_min: f64,
    spare_min: f64,
}

#[derive(FromPyObject)]
struct PlannedPiece {
    kind: String,
    section: Option<usize>,
    person: usize,
    from_min: f64,
    to_min: f64,
    foils: Option<PlannedFoils>,
}

#[derive(FromPyObject)]
struct PlannedFoils {
    first: u32,
    last: u32,
}

impl Planned {
    fn arranged(self) -> Timeline {
        Timeline {
            sections: self.sections.into_iter().map(PlannedSection::arranged).collect(),
            pieces: self.pieces.into_iter().map(PlannedPiece::arranged).collect(),
            visits: self.visits,
            finish_min: self.finish_min,
            idle_min: self.idle_min,
            hands_min: self.hands_min,
            bound_min: self.bound_min,
            proven: self.proven,
        }
    }
}

impl PlannedSection {
    fn arranged(self) -> SectionTimes {
        SectionTimes {
            section: self.section,
            name: self.name,
            visit: self.visit,
            person: self.person,
            mix_at_min: self.mix_at_min,
            start_min: self.start_min,
            applied_min: self.applied_min,
            look_at_min: self.look_at_min,
            rinse_min: self.rinse_min,
            rinsed_min: self.rinsed_min,
            on_hair_min: self.on_hair_min,
            spare_min: self.spare_min,
        }
    }
}

impl PlannedPiece {
    fn arranged(self) -> Piece {
        Piece {
            kind: self.kind,
            section: self.section,
            person: self.person,
            from_min: self.from_min,
            to_min: self.to_min,
            foils: self.foils.map(|foils| FoilGroup { first: foils.first, last: foils.last }),
        }
    }
}
