//! Looks are those of the target: they hold if it is reached, and how likely that is.

use super::SectionLift;
use crate::{
    quantity::{Quantity, Share},
    text::{in_hundred, span},
};

/// Below this chance of 100 a look that is as wanted is no more than a note.
const AS_LIKELY_AS_NOT: f64 = 50.0;

/// The section that is least likely to reach its target; none where nothing is lifted.
fn least_likely(lift: &[SectionLift]) -> Option<&SectionLift> {
    lift.iter().reduce(|least, other| if other.chance.best() < least.chance.best() { other } else { least })
}

fn of_100(section: &SectionLift) -> String {
    format!("{} of 100", span(&section.chance, in_hundred))
}

/// On what the looks of the head rest; none where nothing is lifted.
pub(crate) fn if_all_reached(lift: &[SectionLift]) -> Option<String> {
    let least = least_likely(lift)?;
    Some(format!("if every section reaches its target ({}: {})", least.section, of_100(least)))
}

/// On what the look of one section rests; none where it is not lifted.
pub(crate) fn if_it_reaches(lift: &[SectionLift], section: &str) -> Option<String> {
    let own = lift.iter().find(|own| own.section == section)?;
    Some(format!("if it reaches its target ({})", of_100(own)))
}

/// Whether it is likelier than not that the least likely section reaches its target, by the best estimate; so it is where nothing is
/// lifted.
pub(super) fn likely_reached(lift: &[SectionLift]) -> bool {
    let likely = |chance: Share| chance.in_unit() >= AS_LIKELY_AS_NOT;
    least_likely(lift).is_none_or(|least| likely(least.chance.best()))
}
