//! The decision on a second application, told.

use crate::{
    record::{Again, SecondApplication},
    source::Interval,
    text::{Sheet, amount, number, range},
};

/// A paragraph for the decision on each section, with its reasons and what was not taken.
pub(super) fn told(sheet: &mut Sheet, all: &[SecondApplication]) {
    for one in all {
        sheet.paragraph(&format!("{}: {}{} [{}]", one.section, one.decision, when(one), one.basis), 2);
        sheet.paragraph(&format!("  why: {}", one.reasons.join("; ")), 7);
        for other in &one.rejected {
            sheet.paragraph(&format!("  not {}: {}", other.what, other.why), 6);
        }
    }
}

/// How long, or from when.
fn when(one: &SecondApplication) -> String {
    match one.decision {
        Again::FreshMix | Again::TestFirst => {
            let minutes = |minutes: &Interval<_>| format!(", {} min of a fresh mix", range(minutes, 0));
            let so_far = format!("; on the hair for {} min so far", amount(one.on_hair, 0));
            one.fresh.as_ref().map(minutes).unwrap_or_default() + &so_far
        }
        Again::NextVisit | Again::TreatOnly => {
            let visits = match one.visits.len() {
                0 => String::new(),
                1 => "; one visit should do then".to_owned(),
                several => format!("; it may take {}", number(several as f64, 0)) + " visits",
            };
            format!(", not before {} ({} weeks){visits}", one.not_before, range(&one.wait, 0))
        }
        _ => String::new(),
    }
}
