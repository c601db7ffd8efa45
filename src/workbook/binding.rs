use super::{WorkbookError, page::Page};
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Workbook};

/// The pages in their order, as the bytes of a file; the same pages are the same bytes.
pub(super) fn bound(pages: Vec<Page>) -> Result<Vec<u8>, WorkbookError> {
    let mut book = Workbook::new();
    let begun = ExcelDateTime::from_ymd(2000, 1, 1)?;
    book.set_properties(&DocProperties::new().set_creation_datetime(&begun));
    for page in pages {
        for (name, place) in page.names() {
            book.define_name(name, &place)?;
        }
        book.push_worksheet(page.finish()?);
    }
    Ok(book.save_to_buffer()?)
}
