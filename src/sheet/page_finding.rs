use crate::{finding::Finding, page::Html};

/// A finding in full, its verdict first.
pub(super) fn told(html: &mut Html, finding: &Finding) {
    html.marked("p", &[("dir", "auto")], &format!("{} {}:", finding.verdict, finding.rule), &finding.text);
}
