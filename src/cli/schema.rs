use super::{Outcome, args::OutputArgs, output};
use crate::service;

/// `foilwork schema`: the JSON Schema of a service file.
pub(super) fn run(args: &OutputArgs) -> Outcome {
    let text = serde_json::to_string_pretty(&service::schema())? + "\n";
    output::deliver(text, 0, args)
}
