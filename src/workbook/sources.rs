use super::{WorkbookError, page::Page};
use crate::source::Basis;

/// What a number of the workbook rests on.
pub(super) struct Rests {
    pub(super) what: String,
    pub(super) basis: String,
    pub(super) source: String,
}

impl Rests {
    pub(super) fn new(what: impl Into<String>, basis: impl ToString, source: impl ToString) -> Self {
        Self { what: what.into(), basis: basis.to_string(), source: source.to_string() }
    }

    /// What goes onto the scale.
    pub(super) fn rounding() -> Self {
        let rule = "whole divisions that add up, with the least harm to the ratio";
        Self::new("rounding to the scale", Basis::Derived, rule)
    }
}

/// The last page: what each kind of number rests on, and the release that made the workbook.
pub(super) fn sources(rests: &[Rests]) -> Result<Page, WorkbookError> {
    let mut page = Page::new("Sources", "What the numbers rest on", &[40.0, 20.0, 70.0])?;
    page.heading(&["what", "basis", "source"])?;
    page.repeat_heading()?;
    for Rests { what, basis, source } in rests {
        page.text(0, what)?;
        page.text(1, basis)?;
        page.text(2, source)?;
        page.row += 1;
    }
    page.row += 1;
    page.paragraph(concat!("foilwork ", env!("CARGO_PKG_VERSION")))?;
    page.paragraph(
        "foilwork never says that anything is safe: the product's own instructions and local law come first.",
    )?;
    Ok(page)
}
