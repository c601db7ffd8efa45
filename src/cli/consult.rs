//! `foilwork consult`: from consultation to decision.

use super::{BLOCKED, Outcome, Refusal, args::ConsultArgs, output, plan::Loaded};
use crate::{
    service::{self, Go},
    sheet,
};

pub(super) fn run(args: &ConsultArgs) -> Outcome {
    let found = Loaded::read(&args.file)?.made(&[], service::consult)?;
    let status = if found.decision.go == Go::Stop { BLOCKED } else { 0 };
    if let Some(told) = output::traced((&args.trail, &args.report), status, || Ok::<_, Refusal>(found.trail())) {
        return told;
    }
    let text = match (args.agreement, args.report.json) {
        (true, _) => sheet::agreement_page(&found),
        (false, true) => output::json(&found)?,
        (false, false) => sheet::consultation_sheet(&found),
    };
    output::deliver(text, status, &args.report.output)
}
