use super::{
    WorkbookError,
    binding::bound,
    cells::{at, fixed},
    page::{Came, Page},
    sources::{Rests, sources},
};
use crate::{
    source::register,
    teach::{Exercise, SheetHalf, Worksheet},
};
use rust_decimal::{Decimal, prelude::ToPrimitive};

/// Columns of the key that the problems look into.
const VALUE: u16 = 2;
const WITHIN: u16 = 4;

/// A worksheet as a workbook: problems with room for the answers, and the key on a page of its own. Where both are there, an
/// answer is marked as it is written: a number right to the last decimal of the key, a word as the key has it.
///
/// # Errors
///
/// [`WorkbookError`] when there are more rows than a sheet holds.
///
/// # Example
///
/// ```
/// use foilwork::{money::Currency, teach::{SheetHalf, WorksheetRequest, worksheet}, workbook::worksheet_workbook};
///
/// let currency = Currency::from_code("EUR")?;
/// let request = WorksheetRequest { seed: 4, topics: vec![], difficulty: None, count: 3, currency };
/// let sheet = worksheet(&request)?;
/// assert!(worksheet_workbook(&sheet, SheetHalf::Both)?.starts_with(b"PK"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn worksheet_workbook(sheet: &Worksheet, half: SheetHalf) -> Result<Vec<u8>, WorkbookError> {
    let mut pages = Vec::new();
    let first = 3;
    if half != SheetHalf::Key {
        pages.push(problems(sheet, first, half == SheetHalf::Both)?);
    }
    if half != SheetHalf::Problems {
        pages.push(key(sheet, first)?);
    }
    let rests: Vec<Rests> = sheet
        .exercises
        .iter()
        .map(|exercise| Rests::new(format!("problem {}", exercise.number), exercise.basis, cited(exercise)))
        .collect();
    pages.push(sources(&rests)?);
    bound(pages)
}

fn problems(sheet: &Worksheet, first: u32, marked: bool) -> Result<Page, WorkbookError> {
    let title = format!("Problems: {} (sheet {})", sheet.title, sheet.seed);
    let mut page = Page::new("Problems", &title, &[6.0, 80.0, 18.0, 10.0, 12.0])?;
    page.heading(&["", "problem", "your answer", "unit", ""])?;
    page.repeat_heading()?;
    page.row = first;
    for exercise in &sheet.exercises {
        page.number(0, exercise.number as f64, 0)?;
        page.text(1, &exercise.in_words())?;
        page.answer(2)?;
        page.text(3, exercise.answer.unit.as_deref().unwrap_or_default())?;
        if marked {
            let (own, key) = (at(page.row, 2), format!("Key!{}", fixed(page.row, VALUE)));
            let right = match exercise.answer.value {
                // The spreadsheet's own subtraction is good to a billionth here.
                Some(_) => {
                    format!("AND(ISNUMBER({own}),ABS(N({own})-{key})<=Key!{}+0.000000001)", fixed(page.row, WITHIN))
                }
                None => format!("TRIM({own})={key}"),
            };
            page.formula(
                4,
                &format!("IF({own}=\"\",\"open\",IF({right},\"right\",\"not yet\"))"),
                Came::Text("open"),
                0,
            )?;
        }
        page.row += 1;
    }
    if marked && !sheet.exercises.is_empty() {
        let marks = format!("$E${}:$E${}", first + 1, page.row);
        page.text(1, "right so far")?;
        page.formula(2, &format!("SUMPRODUCT(({marks}=\"right\")*1)"), 0.0, 0)?;
        page.call("right_so_far", 2);
        page.row += 1;
    }
    page.row += 1;
    page.paragraph("Coloured cells are for your answers; a number is written without its unit.")?;
    page.paragraph(
        "Exercises on paper: on hair, the product's own instructions, a skin test and a strand test come first.",
    )?;
    Ok(page)
}

fn key(sheet: &Worksheet, first: u32) -> Result<Page, WorkbookError> {
    let title = format!("Key: {} (sheet {})", sheet.title, sheet.seed);
    let mut page = Page::new("Key", &title, &[6.0, 30.0, 16.0, 10.0, 10.0, 80.0])?;
    page.heading(&["", "answer", "value", "unit", "within", "working"])?;
    page.repeat_heading()?;
    page.row = first;
    for exercise in &sheet.exercises {
        page.number(0, exercise.number as f64, 0)?;
        page.text(1, &exercise.answer.text)?;
        match exercise.answer.value {
            Some(value) => {
                page.number(VALUE, value.to_f64().unwrap_or(0.0), value.scale() as usize)?;
                page.number(WITHIN, within(value), value.scale() as usize + 1)?;
            }
            None => {
                page.text(VALUE, &exercise.answer.text)?;
                page.text(WITHIN, "")?;
            }
        }
        page.text(3, exercise.answer.unit.as_deref().unwrap_or_default())?;
        page.text(5, &working(exercise))?;
        page.row += 1;
    }
    Ok(page)
}

/// Half of the last decimal: what an answer may be off that was rounded as the key is. A whole number is met or missed.
fn within(value: Decimal) -> f64 {
    if value.scale() == 0 { 0.0 } else { Decimal::new(5, value.scale() + 1).to_f64().unwrap_or(0.0) }
}

fn cited(exercise: &Exercise) -> String {
    let words = |id: &&str| {
        register().find(|citation| citation.id == *id).map_or_else(|| (*id).to_owned(), ToString::to_string)
    };
    match exercise.sources.as_slice() {
        [] => "arithmetic".to_owned(),
        ids => ids.iter().map(words).collect::<Vec<_>>().join("; "),
    }
}

fn working(exercise: &Exercise) -> String {
    let steps = exercise.steps.iter().map(|step| format!("{}: {} = {}", step.what, step.formula, step.result));
    steps.collect::<Vec<_>>().join("\n")
}
