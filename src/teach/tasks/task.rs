use crate::{
    money::Currency,
    teach::{Difficulty, draft::Draft, draw::Draw},
};

/// One problem: where it belongs, and how it is made from drawn numbers; none when they do not suit.
#[derive(Clone, Copy)]
pub(in crate::teach) struct Task {
    pub(in crate::teach) kind: &'static str,
    pub(super) difficulty: Difficulty,
    pub(in crate::teach) make: fn(&mut Draw, Currency) -> Option<Draft>,
}

impl Task {
    pub(super) const fn gentle(kind: &'static str, make: fn(&mut Draw, Currency) -> Option<Draft>) -> Self {
        Self { kind, difficulty: Difficulty::Gentle, make }
    }

    pub(super) const fn steady(kind: &'static str, make: fn(&mut Draw, Currency) -> Option<Draft>) -> Self {
        Self { kind, difficulty: Difficulty::Steady, make }
    }

    pub(super) const fn stretch(kind: &'static str, make: fn(&mut Draw, Currency) -> Option<Draft>) -> Self {
        Self { kind, difficulty: Difficulty::Stretch, make }
    }
}
