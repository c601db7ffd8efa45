//! What every page of every workbook has in common.

use super::{
    book::Book,
    books::{self, bench, chart, exact, recipe, services, table},
    formula::Value,
    looks::{self, Layout, Look},
};
use foilwork::teach::SheetHalf;
use rstest::rstest;
use std::io::{Cursor, Read};
use zip::ZipArchive;

const INPUT: &str = "FFFFF2CC";
const LOUD: &str = "FFC00000";

fn letters(column: u32) -> String {
    char::from(b'A' + column as u8).to_string()
}

/// The widths of the columns that are printed, from the left.
fn widths(layout: &Layout) -> Vec<f64> {
    let columns = layout.text("cols");
    let of = |piece: &str, name: &str| {
        piece.split_once(&format!(" {name}=\"")).unwrap().1.split('"').next().unwrap().parse::<f64>().unwrap()
    };
    let pieces = columns.split("<col").skip(1);
    pieces.flat_map(|one| vec![of(one, "width"); (of(one, "max") - of(one, "min")) as usize + 1]).collect()
}

fn pages(bytes: &[u8]) -> (Book, Vec<Layout>) {
    (Book::of(bytes), Layout::of(bytes))
}

#[rstest]
#[case::dilution(chart(&table(&exact(&[12.0, 9.0]), &[6.0, 3.0], exact(&[0.0])[0], (60.0, 1.0))))]
#[case::recipe(recipe("30 g a + 60.5 g b", 75, 0.5))]
#[case::services(services())]
#[case::plan(bench("grey-blend.toml", &[]))]
#[case::blocked(bench("grey-blend.toml", &[("result = \"clear\"", "result = \"reaction\"")]))]
#[case::stages(bench("staged-lightening.toml", &[]))]
#[case::problems(books::problems(3, 8, SheetHalf::Both))]
fn every_page_is_checked_locked_and_printed(#[case] bytes: Vec<u8>) {
    let (book, layouts) = pages(&bytes);
    assert_eq!((book.sheets.len(), book.sheets.last().map(String::as_str)), (layouts.len(), Some("Sources")));
    for (sheet, layout) in book.sheets.iter().zip(&layouts) {
        let rows = book.rows(sheet);
        let widths = widths(layout);
        page(layout, &widths);
        // All rows are printed, and what stands in the columns beside is not.
        assert_eq!(
            layout.area,
            format!("$A$1:${}${}", letters(widths.len() as u32 - 1), last_printed(&rows, widths.len()))
        );
        let checks = layout.checks();
        let title = &layout.looks[&(0, 0)];
        assert!(title.bold && title.size == 14.0 && title.quoted, "{sheet}: {title:?}");
        paragraphs(&rows, layout, &widths);
        assert!(sheet == "Key" || !layout.merged().is_empty(), "{sheet}");
        for (row, cells) in rows.iter().enumerate() {
            for (column, value) in cells.iter().enumerate() {
                let cell = (row as u32, column as u32);
                // Room for an answer is beside each number of a problem.
                let answer = sheet == "Problems" && column == 2 && matches!(cells[0], Value::Number(_));
                let told = format!("{sheet} {cell:?} {value}");
                match layout.looks.get(&cell) {
                    Some(look) => one(&told, value, look, checks.get(&cell), answer),
                    None => assert!(!answer, "{told}"),
                }
            }
        }
        // The names of columns are grey, two lines high, and printed on every page.
        let grey = |row: usize| layout.looks.get(&(row as u32, 0)).is_some_and(|look| look.fill == "FFDDDDDD");
        let heading = layout
            .titles
            .as_ref()
            .map(|told| told.trim_start_matches('$').split(':').next().unwrap().parse::<usize>().unwrap());
        if let Some(row) = heading {
            assert!(grey(row - 1), "{sheet}, row {row}");
        }
        assert!(heading.is_some() || sheet == "Bench");
        for row in (0..rows.len()).filter(|row| grey(*row)) {
            assert_eq!(layout.height(row + 1), 30.0);
            assert!(layout.looks[&(row as u32, 0)].bold);
        }
    }
    for (name, (sheet, (row, column))) in book.name_places() {
        if !name.starts_with("_xlnm") {
            let words = book.at((sheet, (row, if column == 2 { 1 } else { 0 })));
            assert!(matches!(words, Value::Text(_)), "{name} stands beside {words:?}");
            assert!(book.at((sheet, (row, column))).number().is_some(), "{name}");
        }
    }
}

/// On A4, one page wide, lying where it is wide; protected, with its name and its number below.
fn page(layout: &Layout, widths: &[f64]) {
    let wide = widths.iter().sum::<f64>() > 105.0;
    let lying = layout.says("pageSetup", "orientation").is_some_and(|told| told == "landscape");
    assert_eq!(lying, wide, "{widths:?}");
    assert_eq!(layout.says("pageSetup", "paperSize").as_deref(), Some("9"));
    assert_eq!(layout.says("pageSetup", "fitToHeight").as_deref(), Some("0"));
    assert_eq!(layout.says("sheetProtection", "sheet").as_deref(), Some("1"));
    assert_eq!(layout.text("oddFooter"), "&amp;C&amp;A, page &amp;P of &amp;N");
}

fn last_printed(rows: &[Vec<Value>], columns: usize) -> usize {
    let filled = |row: &Vec<Value>| row.iter().take(columns).any(|value| *value != Value::Empty);
    rows.iter().rposition(filled).unwrap() + 1
}

/// A sentence goes over the whole width, on enough lines and hardly one too many: a line holds about as many characters as wide.
fn paragraphs(rows: &[Vec<Value>], layout: &Layout, widths: &[f64]) {
    let width: f64 = widths.iter().map(|width| width - 0.71).sum();
    let last = letters(widths.len() as u32 - 1);
    let merged = layout.merged();
    for told in &merged {
        let row: usize = told.trim_start_matches('A').split(':').next().unwrap().parse().unwrap();
        assert_eq!(*told, format!("A{row}:{last}{row}"));
        let Value::Text(text) = &rows[row - 1][0] else { panic!("row {row} is no text") };
        let (long, height) = (text.chars().count() as f64, layout.height(row));
        let lines = height / 15.0;
        assert!(lines * width >= long && (lines - 1.0) * width < 1.11 * long, "{lines} lines of {width} for {long}");
        assert!(lines.fract() == 0.0 && lines >= 1.0);
        let look = &layout.looks[&(row as u32 - 1, 0)];
        assert!(look.wrapped && look.top && look.quoted, "{look:?}");
        // Loud is what stops, and what comes before the colour.
        let loud = text.starts_with("***") || text.starts_with("[STOP]") || text.starts_with("FIRST: ");
        assert_eq!((look.fill == LOUD, look.bold, look.font == "FFFFFFFF"), (loud, loud, loud), "{text}");
    }
}

fn one(told: &str, value: &Value, look: &Look, check: Option<&(f64, f64, String)>, answer: bool) {
    assert_eq!(look.open, check.is_some() || answer, "{told}");
    assert_eq!(look.open, look.fill == INPUT, "{told}");
    if look.open {
        assert!(look.border && look.top && !look.quoted, "{told}");
    }
    if let Some((low, high, said)) = check {
        let number = value.number().unwrap();
        assert!(*low <= number && number <= *high && low < high, "{told}: {low} to {high}");
        assert!(said.starts_with("Give a number from "), "{said}");
    }
    if let Value::Number(_) = value {
        assert!(look.border && look.top && (look.shown == "0" || look.shown.starts_with("0.0")), "{told}: {look:?}");
    }
}

/// What stands in a table is framed, wraps, begins at the top and is no formula, whatever it begins with; it is neither bold nor coloured.
#[test]
fn texts_of_a_table_are_framed() {
    let (book, layouts) = pages(&chart(&table(&exact(&[12.0, 9.0]), &[6.0], exact(&[0.0])[0], (60.0, 1.0))));
    let beside = |name: &str| {
        let (sheet, (row, _)) = book.place(name);
        (sheet, (row, 0))
    };
    for place in [beside("total_g"), beside("weaker_ww_percent"), (0, (book.row("Dilution", "bottle") as u32, 0))] {
        assert!(matches!(book.at(place), Value::Text(_)), "{place:?}");
        let look = &layouts[place.0].looks[&place.1];
        assert!(look.border && look.wrapped && look.top && look.quoted, "{place:?}: {look:?}");
        assert!(!look.bold && !look.open && look.fill != INPUT && look.fill != LOUD, "{place:?}: {look:?}");
    }
}

/// Alarms get loud at the words that say something is wrong; everything else stays as it is.
#[test]
fn alarms_are_loud() {
    let (book, layouts) = pages(&chart(&table(&exact(&[12.0, 9.0]), &[6.0], exact(&[0.0])[0], (60.0, 1.0))));
    let first = book.row("Dilution", "bottle") as u32;
    let mut loud = layouts[0].loud();
    loud.sort();
    let words = || vec!["ABOVE".to_owned(), "NOTHING".to_owned()];
    let cautions = book.row("Dilution", "cautions") as u32 - 1;
    assert_eq!(loud, [((cautions, 1), words()), ((first, 13), words()), ((first + 1, 13), words())]);
    let loud = looks::loud(&services());
    assert_eq!(loud, "");
    let loud = looks::loud(&recipe("30 g a + 60 g b", 75, 1.0));
    assert!(loud.contains("<b/>") && loud.contains("FFFFFFFF") && loud.contains(LOUD), "{loud}");
    let (book, layouts) = pages(&recipe("30 g a + 60 g b", 75, 1.0));
    assert_eq!(layouts[0].loud(), [((book.row("Recipe", "on this scale") as u32 - 1, 1), words())]);
}

/// What may be typed, with its least and its most.
#[test]
fn inputs_have_bounds_and_decimals() {
    let (book, layouts) = pages(&chart(&table(&exact(&[12.0]), &[6.0], exact(&[0.0])[0], (60.0, 0.05))));
    let checks = layouts[0].checks();
    let of = |name: &str| checks[&book.place(name).1].clone();
    assert_eq!(of("total_g"), (0.001, 1e6, "Give a number from 0.001 to 1000000 g.".to_owned()));
    assert_eq!(of("weaker_ww_percent"), (0.0, 100.0, "Give a number from 0 to 100 % w/w.".to_owned()));
    let shown = |name: &str| layouts[0].looks[&book.place(name).1].shown.clone();
    assert_eq!(["total_g", "division_g", "divisions"].map(shown), ["0.00", "0.00", "0"]);
    let (book, layouts) = pages(&services());
    let at = |told: String| layouts[1].checks()[&book.place(&told).1].clone();
    let row = book.row("Costs", "face-frame");
    assert_eq!(
        at(format!("Costs!C{row}")),
        (0.0, 4_294_967_295.0, "Give a number from 0 to 4294967295 times.".to_owned())
    );
    assert_eq!(at(format!("Costs!L{row}")), (0.0, 1e9, "Give a number from 0 to 1000000000 EUR.".to_owned()));
    assert_eq!(at("tax_percent".to_owned()).1, 100.0);
    for (division, want) in
        [(10.0, "0"), (1.0, "0"), (0.5, "0.0"), (0.25, "0.00"), (0.001, "0.000"), (0.000_002, "0.000000")]
    {
        let (book, layouts) = pages(&recipe("30 g a + 60 g b", 75, division));
        assert_eq!(layouts[0].looks[&book.place("division_g").1].shown, want);
    }
}

/// The same pages are the same bytes, whenever they are made: every time in them is one that is fixed.
#[rstest]
#[case::dilution(|| chart(&table(&exact(&[12.0, 9.0]), &[6.0, 3.0], exact(&[0.0])[0], (60.0, 1.0))))]
#[case::recipe(|| recipe("30 g a + 60.5 g b", 75, 0.5))]
#[case::services(services)]
#[case::plan(|| bench("grey-blend.toml", &[]))]
#[case::problems(|| books::problems(3, 8, SheetHalf::Both))]
fn the_same_is_the_same_bytes(#[case] made: fn() -> Vec<u8>) {
    let bytes = made();
    assert!(bytes == made() && bytes.len() > 5_000);
    let mut all = ZipArchive::new(Cursor::new(bytes)).unwrap();
    let mut told = String::new();
    all.by_name("docProps/core.xml").unwrap().read_to_string(&mut told).unwrap();
    for what in ["created", "modified"] {
        let (_, at) = told.split_once(&format!("<dcterms:{what} ")).unwrap();
        let at = at.split_once('>').unwrap().1.split('<').next().unwrap();
        assert_eq!(at, "2000-01-01T00:00:00Z", "{what}");
    }
    for place in 0..all.len() {
        let piece = all.by_index(place).unwrap();
        let at = piece.last_modified().map(|at| (at.year(), at.month(), at.day(), at.hour(), at.minute()));
        assert_eq!(at, Some((1980, 1, 1, 0, 0)), "{:?}", piece.name());
    }
}
