//! The visits of a staged series, on a sheet.

use crate::{
    lift::Visit,
    text::{Sheet, in_hundred, number, span},
};

/// What is said below every such table, or once below several.
pub(crate) const BETWEEN_VISITS: &str = "Weeks between visits: common practice after a usual application, assumed beyond it; \
     regrowth counts from the first. Waiting does not undo oxidation, so the strain of all visits adds up: test elasticity \
     before each, and stop there if it is not good.";

/// A line for each visit.
pub(crate) fn table(sheet: &mut Sheet, visits: &[Visit]) {
    let absent = || "-".to_owned();
    let rows = visits.iter().zip(1..).map(|(visit, place)| {
        vec![
            place.to_string(),
            visit.after.map_or_else(absent, |weeks| span(&weeks, |weeks| number(weeks.weeks(), 0))),
            visit.regrowth.map_or_else(absent, |grown| span(&grown, |length| number(length.cm(), 1))),
            span(&visit.level, |level| number(level.number(), 1)),
            span(&visit.chance, in_hundred),
            visit.strain.code().to_owned(),
        ]
    });
    sheet.table(&["visit", "weeks later", "regrowth cm", "level", "in 100", "strain"], &[0], rows.collect());
}
