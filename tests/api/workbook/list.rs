//! Lists read back from workbooks: what stands where, what a cell becomes, and what no list is.

use foilwork::workbook::{ListError, ListInWorkbook, list_in_workbook};
use rstest::rstest;
use rust_xlsxwriter::{ExcelDateTime, Format, Formula, Workbook, Worksheet};
use std::io::{Cursor, Read, Write};
use zip::{ZipArchive, ZipWriter, write::SimpleFileOptions};

fn book(fill: impl FnOnce(&mut Worksheet)) -> Vec<u8> {
    let mut book = Workbook::new();
    fill(book.add_worksheet().set_name("My list").unwrap());
    book.save_to_buffer().unwrap()
}

fn list(fill: impl FnOnce(&mut Worksheet)) -> Result<ListInWorkbook, ListError> {
    list_in_workbook(&book(fill))
}

/// A table from C3 on, with an empty row, a gap and nothing in its last column but the name.
#[test]
fn a_list_stands_where_it_stands() {
    let list = list(|sheet| {
        for (column, name) in (2..).zip(["service", "Hands-on min", "sold"]) {
            sheet.write_string(2, column, name).unwrap();
        }
        sheet.write_string(3, 2, "toner").unwrap();
        sheet.write_number(3, 3, 15.0).unwrap();
        sheet.write_number(5, 3, 0.1 + 0.2).unwrap();
        sheet.write_string(6, 1, " ").unwrap().write_string(7, 0, "").unwrap();
    })
    .unwrap();
    assert_eq!(list.sheet, "My list");
    assert_eq!(list.csv, ",service,Hands-on min,sold\n,toner,15,\n\n,,0.3,\n\n");
    assert_eq!((list.cell(1, 0), list.cell(4, 2)), ("B3".to_owned(), "D6".to_owned()));
    assert_eq!(list.place(4, "hands_on_min"), "sheet My list, cell D6");
    assert_eq!(list.place(2, " SOLD "), "sheet My list, cell E4");
    assert_eq!(list.place(2, "price"), "sheet My list, row 4");
    // No cell is beyond the last one that a sheet has.
    assert_eq!(list.cell(usize::MAX, usize::MAX), "XFD1048576");
}

/// Numbers as a spreadsheet shows them, texts on one line, formulas by what was saved of them.
#[rstest]
#[case("12.5", |sheet: &mut Worksheet| { sheet.write_number(1, 0, 12.5).unwrap(); })]
#[case("1000000", |sheet: &mut Worksheet| { sheet.write_number(1, 0, 1e6).unwrap(); })]
#[case("0.123456789012346", |sheet: &mut Worksheet| { sheet.write_number(1, 0, 0.123_456_789_012_345_67).unwrap(); })]
#[case("one two  three", |sheet: &mut Worksheet| { sheet.write_string(1, 0, "one\r\ntwo\n\rthree").unwrap(); })]
#[case("\"a, b\"", |sheet: &mut Worksheet| { sheet.write_string(1, 0, "a, b").unwrap(); })]
#[case("7", |sheet: &mut Worksheet| { sheet.write_formula(1, 0, Formula::new("3+4").set_result("7")).unwrap(); })]
fn a_cell_becomes_a_field(#[case] want: &str, #[case] fill: fn(&mut Worksheet)) {
    let list = list(|sheet| {
        sheet.write_string(0, 0, "name").unwrap();
        fill(sheet);
    });
    assert_eq!(list.unwrap().csv, format!("name\n{want}\n"));
}

#[rstest]
#[case("a truth value", |sheet: &mut Worksheet| { sheet.write_boolean(1, 1, true).unwrap(); })]
#[case("a date or a time", |sheet: &mut Worksheet| {
    let day = ExcelDateTime::from_ymd(2026, 11, 25).unwrap();
    sheet.write_datetime_with_format(1, 1, &day, &Format::new().set_num_format("yyyy-mm-dd")).unwrap();
})]
#[case("the error #DIV/0!", |sheet: &mut Worksheet| {
    sheet.write_formula(1, 1, Formula::new("1/0").set_result("#DIV/0!")).unwrap();
})]
fn what_is_no_field_is_told_with_its_cell(#[case] want: &str, #[case] fill: fn(&mut Worksheet)) {
    let told = list(|sheet| {
        sheet.write_string(0, 0, "name").unwrap();
        fill(sheet);
    });
    let told = told.unwrap_err().to_string();
    assert!(told.contains("sheet My list, cell B2: ") && told.contains(want), "{told}");
}

/// The same archive with one part written otherwise.
fn rewritten(bytes: &[u8], name: &str, change: impl Fn(&str) -> String) -> Vec<u8> {
    let mut archive = ZipArchive::new(Cursor::new(bytes)).unwrap();
    let mut out = ZipWriter::new(Cursor::new(Vec::new()));
    for place in 0..archive.len() {
        let mut part = archive.by_index(place).unwrap();
        let of = part.name().unwrap().into_owned();
        let mut text = String::new();
        part.read_to_string(&mut text).unwrap();
        let text = if of == name { change(&text) } else { text };
        out.start_file(of, SimpleFileOptions::default()).unwrap();
        out.write_all(text.as_bytes()).unwrap();
    }
    out.finish().unwrap().into_inner()
}

/// 32,767 characters, as spreadsheets have it, and no more.
#[rstest]
#[case(32_767, true)]
#[case(32_768, false)]
fn a_cell_is_as_long_as_spreadsheets_have_it(#[case] characters: usize, #[case] fits: bool) {
    let bytes = book(|sheet| {
        sheet.write_string(0, 0, "name").unwrap().write_string(1, 0, "LONG").unwrap();
    });
    let bytes = rewritten(&bytes, "xl/sharedStrings.xml", |text| text.replace("LONG", &"é".repeat(characters)));
    let found = list_in_workbook(&bytes);
    assert_eq!(found.is_ok(), fits);
    if let Err(told) = found {
        assert!(told.to_string().contains("cell A2: holds more than 32767 characters"), "{told}");
    }
}

/// Two cells far apart span more cells than are read: 2,001 rows of 2,000 columns are more than 4,000,000, 10 of 20 are not.
#[rstest]
#[case((9, 19), true)]
#[case((2_000, 1_999), false)]
fn a_list_spans_four_million_cells(#[case] (last_row, last_column): (u32, u16), #[case] fits: bool) {
    let found = list(|sheet| {
        sheet.write_number(0, 0, 1.0).unwrap().write_number(last_row, last_column, 1.0).unwrap();
    });
    assert_eq!(found.is_ok(), fits);
    assert!(fits || matches!(found, Err(ListError::Long { most: 4_000_000, .. })));
}

/// What an archive says that it unpacks to is asked before it is unpacked: 256 MiB at most, over all parts.
#[rstest]
#[case(0x0FF0_0000, true)]
#[case(0x1000_0001, false)]
fn what_unpacks_to_too_much_is_not_unpacked(#[case] says: u32, #[case] fits: bool) {
    let mut bytes = book(|sheet| {
        sheet.write_string(0, 0, "name").unwrap();
    });
    // The size in the directory at the end, of a part that no list needs.
    let name = b"docProps/app.xml";
    let at = (0..bytes.len() - name.len()).rev().find(|at| bytes[*at..].starts_with(name)).unwrap();
    bytes[at - 22..at - 18].copy_from_slice(&says.to_le_bytes());
    let found = list_in_workbook(&bytes);
    assert_eq!(found.is_ok(), fits, "{found:?}");
    assert!(fits || found.unwrap_err().to_string().contains("it unpacks to more than 256 MiB"));
}

#[test]
fn the_first_sheet_that_is_shown_is_the_list() {
    let mut both = Workbook::new();
    both.add_worksheet().set_name("Hidden").unwrap().set_hidden(true).write_string(0, 0, "no").unwrap();
    both.add_worksheet().set_name("Shown").unwrap().set_active(true).write_string(0, 0, "yes").unwrap();
    let list = list_in_workbook(&both.save_to_buffer().unwrap()).unwrap();
    assert_eq!((list.sheet.as_str(), list.csv.as_str()), ("Shown", "yes\n"));
    assert!(matches!(list_in_workbook(&book(|_| ())), Err(ListError::Empty)));
    assert!(matches!(list_in_workbook(b"PK\x03\x04 and no more"), Err(ListError::Broken(_))));
    // A formula that nobody has worked yet.
    let bytes = book(|sheet| {
        sheet.write_formula(0, 0, Formula::new("1+1").set_result("2")).unwrap();
    });
    let unworked = rewritten(&bytes, "xl/worksheets/sheet1.xml", |text| text.replace("<v>2</v>", ""));
    let told = list_in_workbook(&unworked).unwrap_err().to_string();
    assert!(told.contains("cell A1: holds a formula without a result"), "{told}");
}
