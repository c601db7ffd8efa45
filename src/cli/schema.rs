use super::{Outcome, args::SchemaArgs, output};
use crate::service;

/// `foilwork schema`: the JSON Schema of a service file, or of a plan.
pub(super) fn run(args: &SchemaArgs) -> Outcome {
    let schema = if args.plan { service::plan_schema() } else { service::schema() };
    output::deliver(serde_json::to_string_pretty(&schema)? + "\n", 0, &args.output)
}
