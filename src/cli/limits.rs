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
    let table = Table::of(jurisdiction).concerning(args.substance.as_deref(), product, audience);
    if args.trail.trail {
        let trail = output::trail(&table.trail(), args.report.json)?;
        return output::deliver(trail, 0, &args.report.output);
    }
    let listing = table.listing();
    output::report(&args.report, &listing, || {
        let mut sheet = Sheet::default();
        listing.to_string().lines().for_each(|line| sheet.paragraph(line, 4));
        sheet.finish()
    })
}
