//! Wrappers of `foilwork::day`: the arranged day.

use super::work::minutes;
use crate::{answer::answer, error::raise, source::TracedResult};
use foilwork::{
    chart::{DayChart, day_chart},
    day,
    quantity::Duration,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.day";
    /// Foils that are closed in one go, numbered within their section.
    FoilGroup {
        /// The first of them, from 1.
        first: u32,
        /// The last.
        last: u32,
    }
}

answer! {
    in "foilwork.day";
    /// A piece of work of one person, without a break.
    Piece {
        /// What is done: ``"mix"``, ``"apply"``, ``"look"``, ``"walk"`` or ``"rinse"``.
        kind: String,
        /// The place of the section, from 0; ``None`` for a look, which is at all that is on, and for a walk.
        section: Option<usize>,
        /// Who does it, from 0.
        person: usize,
        /// When it begins, in min from the first work on the guest.
        from_min: f64,
        /// When it ends, in min.
        to_min: f64,
        /// The foils that are closed in it.
        foils: Option<FoilGroup>,
    }
}

impl From<&day::Piece> for Piece {
    fn from(piece: &day::Piece) -> Self {
        Self {
            kind: piece.kind.code().to_owned(),
            section: piece.section,
            person: piece.person,
            from_min: piece.from.min(),
            to_min: piece.to.min(),
            foils: piece.foils.map(|foils| FoilGroup { first: foils.first, last: foils.last }),
        }
    }
}

impl Piece {
    fn core(&self) -> PyResult<day::Piece> {
        Ok(day::Piece {
            kind: self.kind.parse().map_err(raise)?,
            section: self.section,
            person: self.person,
            from: minutes(self.from_min)?,
            to: minutes(self.to_min)?,
            foils: self.foils.as_ref().map(|foils| day::FoilGroup { first: foils.first, last: foils.last }),
        })
    }
}

answer! {
    in "foilwork.day";
    /// The times of one section, in min from the first work on the guest.
    SectionTimes {
        /// Its place in the list of the work, from 0.
        section: usize,
        /// Its name.
        name: String,
        /// At which visit to the basin it is rinsed, from 1.
        visit: usize,
        /// Who puts it on, from 0.
        person: usize,
        /// When each of its bowls is begun.
        mix_at_min: Vec<f64>,
        /// Its first strand.
        start_min: f64,
        /// Its last strand is on, its last foil closed.
        applied_min: f64,
        /// When it is looked at.
        look_at_min: Vec<f64>,
        /// When it is rinsed.
        rinse_min: f64,
        /// When it is rinsed out.
        rinsed_min: f64,
        /// How long its first strand carries the mix.
        on_hair_min: f64,
        /// How much longer it might.
        spare_min: f64,
    }
}

impl From<&day::SectionTimes> for SectionTimes {
    fn from(one: &day::SectionTimes) -> Self {
        let all = |times: &[Duration]| times.iter().map(|at| at.min()).collect();
        Self {
            section: one.section,
            name: one.name.clone(),
            visit: one.visit,
            person: one.person,
            mix_at_min: all(&one.mix_at),
            start_min: one.start.min(),
            applied_min: one.applied.min(),
            look_at_min: all(&one.looks),
            rinse_min: one.rinse.min(),
            rinsed_min: one.rinsed.min(),
            on_hair_min: one.on_hair.min(),
            spare_min: one.spare.min(),
        }
    }
}

impl SectionTimes {
    fn core(&self) -> PyResult<day::SectionTimes> {
        let all = |times: &[f64]| times.iter().map(|at| minutes(*at)).collect::<PyResult<Vec<_>>>();
        Ok(day::SectionTimes {
            section: self.section,
            name: self.name.clone(),
            visit: self.visit,
            person: self.person,
            mix_at: all(&self.mix_at_min)?,
            start: minutes(self.start_min)?,
            applied: minutes(self.applied_min)?,
            looks: all(&self.look_at_min)?,
            rinse: minutes(self.rinse_min)?,
            rinsed: minutes(self.rinsed_min)?,
            on_hair: minutes(self.on_hair_min)?,
            spare: minutes(self.spare_min)?,
        })
    }
}

answer! {
    in "foilwork.day";
    /// When everything is done. Minutes count from the first work on the guest.
    Timeline {
        /// The sections in the order in which they are put on.
        sections: Vec<SectionTimes>,
        /// Every piece of work, in the order of its begin.
        pieces: Vec<Piece>,
        /// How often the guest goes to the basin.
        visits: usize,
        /// When the last section is rinsed, in min.
        finish_min: f64,
        /// How long nobody works on the guest, in min.
        idle_min: f64,
        /// How long each person works on the guest, in min.
        hands_min: Vec<f64>,
        /// A finish that no order of these people can beat, in min.
        bound_min: f64,
        /// Whether this finish is proven to be the earliest.
        proven: bool,
    }
    impl {
        /// The day as a picture.
        ///
        /// Args:
        ///     title: what stands above it.
        ///
        /// Returns:
        ///     SVG text, without scripts.
        ///
        /// Raises:
        ///     FoilworkError: a time out of range.
        ///
        /// Examples:
        ///     >>> from foilwork.day import SectionWork, arrange
        ///     >>> nape = SectionWork("nape", apply_min=15, develop_min=35, longest_min=60)
        ///     >>> arrange([nape]).svg("one section")[:4]
        ///     '<svg'
        #[pyo3(signature = (title = "The day"))]
        fn svg(&self, title: &str) -> PyResult<String> {
            Ok(day_chart(&DayChart { title, timeline: &self.core()? }))
        }

        /// How the finish, and the time that each section carries its mixture, came about.
        ///
        /// Returns:
        ///     A :class:`foilwork.source.TracedResult` for each.
        ///
        /// Examples:
        ///     >>> from foilwork.day import SectionWork, arrange
        ///     >>> nape = SectionWork("nape", apply_min=15, develop_min=35, longest_min=60)
        ///     >>> [one.what for one in arrange([nape]).trail()]
        ///     ['nape: time of the first strand', 'finish']
        fn trail(&self) -> PyResult<Vec<TracedResult>> {
            Ok(self.core()?.trail().into_iter().map(Into::into).collect())
        }

        /// The picture, for notebooks.
        fn _repr_svg_(&self) -> PyResult<String> {
            self.svg("The day")
        }
    }
}

impl From<&day::Timeline> for Timeline {
    fn from(found: &day::Timeline) -> Self {
        Self {
            sections: found.sections.iter().map(Into::into).collect(),
            pieces: found.pieces.iter().map(Into::into).collect(),
            visits: found.visits,
            finish_min: found.finish.min(),
            idle_min: found.idle.min(),
            hands_min: found.hands.iter().map(|hands| hands.min()).collect(),
            bound_min: found.bound.min(),
            proven: found.proven,
        }
    }
}

impl Timeline {
    pub fn core(&self) -> PyResult<day::Timeline> {
        Ok(day::Timeline {
            sections: self.sections.iter().map(SectionTimes::core).collect::<PyResult<_>>()?,
            pieces: self.pieces.iter().map(Piece::core).collect::<PyResult<_>>()?,
            visits: self.visits,
            finish: minutes(self.finish_min)?,
            idle: minutes(self.idle_min)?,
            hands: self.hands_min.iter().map(|hands| minutes(*hands)).collect::<PyResult<_>>()?,
            bound: minutes(self.bound_min)?,
            proven: self.proven,
        })
    }
}
