use super::{Outcome, args::SchemaArgs, output};
use crate::{history, service, shop};

/// `foilwork schema`: the JSON Schema of a service file, a shop file, a plan or a record.
pub(super) fn run(args: &SchemaArgs) -> Outcome {
    let schema = match (args.shop, args.plan) {
        (true, _) => shop::shop_schema(),
        (_, true) => service::plan_schema(),
        _ if args.record => history::record_schema(),
        _ if args.history => history::history_schema(),
        _ => service::service_schema(),
    };
    output::deliver(output::json(&schema)?, 0, &args.output)
}
