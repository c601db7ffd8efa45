use super::{Outcome, Refusal, args::LimitsArgs, output};
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
        return output::deliver(traced(&table, args.report.json)?, 0, &args.report.output);
    }
    let listing = table.listing();
    output::report(&args.report, &listing, || {
        let mut sheet = Sheet::default();
        listing.to_string().lines().for_each(|line| sheet.paragraph(line, 4));
        sheet.finish()
    })
}

/// Every figure in percent with where it comes from; what has none is counted.
fn traced(table: &Table, as_json: bool) -> Result<String, Refusal> {
    let (found, all) = (table.trail(), table.rows().len());
    if all == 0 {
        let way_out = "give less of the name or a CAS number; what is not in the table is not judged";
        return Err(Refusal(format!("--trail: nothing in the table of {} is as asked for ({way_out})", table.title())));
    }
    if found.is_empty() {
        let title = table.title();
        return Err(Refusal(format!(
            "--trail: no figure in percent to follow in the entries of {title}: {all} without one (read them without --trail)"
        )));
    }
    let text = output::trail(&found, as_json)?;
    if as_json || found.len() == all {
        return Ok(text);
    }
    let mut sheet = Sheet::default();
    let without = all - found.len();
    sheet.paragraph(
        &format!(
            "Entries without a figure in percent, so without a trail: {without} of {all}. Read them without --trail."
        ),
        0,
    );
    Ok(text + &sheet.finish())
}
