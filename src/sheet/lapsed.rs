//! Agreements that were stated and no longer count: nobody at the chair may lean on them.

use crate::{service::Plan, text::list};

/// A sentence for each reason.
pub(super) fn lapsed(plan: &Plan) -> Vec<String> {
    let mut said = Vec::new();
    for one in plan.consulted.iter().flat_map(|consulted| &consulted.agreed) {
        let mut reasons: Vec<&str> = one.lapsed.iter().map(|lapsed| lapsed.why.as_str()).collect();
        reasons.sort_unstable();
        reasons.dedup();
        for why in reasons {
            let rules = one.lapsed.iter().filter(|lapsed| lapsed.why == why).map(|lapsed| lapsed.rule.words());
            let rules = list(rules.collect::<Vec<_>>(), "and");
            let of = format!("Agreement of the {} of {} (for {rules})", one.who, one.on);
            said.push(format!("{of} no longer counts: {why}; see `foilwork consult`."));
        }
    }
    said
}
