//! How long a first strand may carry a mix by what its products say themselves.

use super::sections::Work;
use crate::{
    quantity::{Duration, Quantity},
    shop::CountsFrom,
};

/// The longest times that the products of a section state, and from when each counts.
#[derive(Debug, Clone, Default, PartialEq)]
pub(crate) struct OwnTimes {
    stated: Vec<(Duration, CountsFrom)>,
    by_all: bool,
}

impl OwnTimes {
    pub(super) fn of(work: &Work<'_>) -> Self {
        let mut own = work.products.iter().filter_map(|(item, _)| item.own_limits());
        Self {
            stated: work.longest().map(|(_, most, from)| (most, from)).collect(),
            by_all: own.all(|limits| limits.longest.is_some()),
        }
    }

    /// The longest from the first strand, where putting on took so long: by the product that allows least; none where none says.
    pub(crate) fn longest_on_first_strand(&self, applying: Duration) -> Option<Duration> {
        let from_first = |(most, from): &(Duration, CountsFrom)| match from {
            CountsFrom::FirstStrand => *most,
            CountsFrom::EndOfApplication => Duration::nearest(applying.min() + most.min()),
        };
        self.stated.iter().map(from_first).reduce(|a, b| if b < a { b } else { a })
    }

    /// Whether all products state theirs: what one of them leaves open may be shorter.
    pub(crate) const fn by_all(&self) -> bool {
        self.by_all
    }
}
