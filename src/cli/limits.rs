use super::{Outcome, args::LimitsArgs, output};
use crate::limits::{Jurisdiction, Table};

/// `foilwork limits`: every row of a jurisdiction's table, what is checked and what is not.
pub(super) fn run(args: &LimitsArgs) -> Outcome {
    let jurisdiction: Jurisdiction = args.jurisdiction.parse()?;
    let listing = Table::of(jurisdiction).listing();
    let text = if args.json { serde_json::to_string_pretty(&listing)? + "\n" } else { format!("{listing}\n") };
    output::deliver(text, 0, &args.output)
}
