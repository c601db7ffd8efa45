use super::{Outcome, args::SchemaArgs, output};
use crate::{service, shop};

/// `foilwork schema`: the JSON Schema of a service file or a shop file.
pub(super) fn run(args: &SchemaArgs) -> Outcome {
    let schema = if args.shop { shop::schema() } else { service::schema() };
    output::deliver(serde_json::to_string_pretty(&schema)? + "\n", 0, &args.output)
}
