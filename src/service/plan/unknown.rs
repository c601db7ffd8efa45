//! What a reader of the sheet might look for and will not find. Unknown is an answer.

use super::NotComputed;
use crate::service::request::Request;

/// The list for one request.
pub(super) fn not_computed(request: &Request, has_money: bool) -> Vec<NotComputed> {
    let mut list = vec![
        missing("lift against time", "no lift model in this release; check times are the trade's, the strand decides"),
        missing("strengths that make all sections finish together", "needs the lift model; the strengths are yours"),
        missing("mass of the hair and product demand from it", "amounts are yours or the trade's full-head figures"),
        missing("foil count and layout", "the counts are yours"),
        missing(
            "dye and ammonia limits, peroxide released by lighteners",
            "the products' compositions are not in a service file; the law is checked for the developers' peroxide",
        ),
        missing("pH of the mixes", "no data of the products; nothing is invented"),
    ];
    if !has_money {
        list.push(missing("cost and price", "the shop states no `currency`"));
    }
    if request.file.toner.is_empty() && request.tasks.iter().any(|task| task.lightens) {
        list.push(missing("toner", "the file names none; choose it on the lifted hair"));
    }
    list
}

fn missing(what: &str, why: &str) -> NotComputed {
    NotComputed { what: what.to_owned(), why: why.to_owned() }
}
