//! What the pages to sign have in common: why not yet, and the lines to sign.

use crate::{page::Html, service::NOT_YET};

/// Why there is no price and nothing to sign; `names` are what has to be settled, where there are words for it.
pub(super) fn not_yet(html: &mut Html, names: &[&str]) {
    let settled = if names.is_empty() { String::new() } else { format!(" To settle: {}.", names.join(", ")) };
    html.open("section", &[("class", "stop"), ("aria-label", "not yet")]);
    html.element("p", &[], &format!("{NOT_YET}{settled}"));
    html.close("section");
}

/// Why there is no price and nothing to sign, where no check says stop.
pub(super) fn settle_first(html: &mut Html) {
    html.open("section", &[("class", "stop"), ("aria-label", "not yet")]);
    let why = "Not to be signed yet: what stands under \u{201c}Before we begin\u{201d} has to be settled first.";
    html.element("p", &[], why);
    html.close("section");
}

/// The agreement and who signs it.
pub(super) fn to_sign(html: &mut Html) {
    html.element("h2", &[], "Agreement");
    html.element("p", &[], "I have read this page, my questions were answered, and what I said about my hair and my health is true. I may stop at any time.");
    html.open("div", &[("class", "sign")]);
    for line in ["Date", "Guest", "Colourist"] {
        html.element("p", &[], line);
    }
    html.close("div");
}
