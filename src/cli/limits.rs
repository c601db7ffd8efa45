use super::{Outcome, args::LimitsArgs, output};
use crate::{
    limits::{Jurisdiction, Table},
    text::Sheet,
};

/// `foilwork limits`: every row of a jurisdiction's table, what is checked and what is not.
pub(super) fn run(args: &LimitsArgs) -> Outcome {
    let jurisdiction: Jurisdiction = args.jurisdiction.parse()?;
    let listing = Table::of(jurisdiction).listing();
    output::report(&args.report, &listing, || {
        let mut sheet = Sheet::default();
        listing.to_string().lines().for_each(|line| sheet.paragraph(line, 4));
        sheet.finish()
    })
}
