//! Results of the money room.

pub(super) use crate::answer::answer;
