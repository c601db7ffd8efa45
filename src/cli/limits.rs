use super::{Outcome, args::LimitsArgs, output};
use crate::{
    limits::{Audience, Jurisdiction, Purpose, Table},
    text::Sheet,
};

/// `foilwork limits`: the rows of a jurisdiction's table, all or a choice, and what is checked of them.
pub(super) fn run(args: &LimitsArgs) -> Outcome {
    let jurisdiction: Jurisdiction = args.jurisdiction.parse()?;
    let product: Option<Purpose> = args.product.as_deref().map(str::parse).transpose()?;
    let audience: Option<Audience> = args.audience.as_deref().map(str::parse).transpose()?;
    let listing = Table::of(jurisdiction).concerning(args.substance.as_deref(), product, audience).listing();
    output::report(&args.report, &listing, || {
        let mut sheet = Sheet::default();
        listing.to_string().lines().for_each(|line| sheet.paragraph(line, 4));
        sheet.finish()
    })
}
