//! One sheet of a workbook, written from the top down.

use super::{WorkbookError, cells::fixed, looks};
use crate::text::{inert, number};
use rust_xlsxwriter::{
    ConditionalFormatText, ConditionalFormatTextRule, DataValidation, DataValidationRule, Format, Formula, Worksheet,
};

/// The most characters of a cell, well below what spreadsheets take.
const LONGEST: usize = 30_000;
/// What a line of text is high.
const LINE: f64 = 15.0;
const A4: u8 = 9;

/// What an input may be.
#[derive(Clone, Copy)]
pub(super) struct Allowed {
    pub(super) low: f64,
    pub(super) high: f64,
    pub(super) unit: &'static str,
}

impl Allowed {
    pub(super) const PERCENT: Self = Self { low: 0.0, high: 100.0, unit: "%" };
    pub(super) const WW_PERCENT: Self = Self { low: 0.0, high: 100.0, unit: "% w/w" };
    pub(super) const GRAMS: Self = Self { low: 0.001, high: 1_000_000.0, unit: "g" };
    pub(super) const COUNT: Self = Self { low: 0.0, high: 4_294_967_295.0, unit: "times" };
}

/// What a formula came to.
#[derive(Clone, Copy)]
pub(super) enum Came<'t> {
    To(f64),
    Text(&'t str),
}

impl From<f64> for Came<'_> {
    fn from(number: f64) -> Self {
        Self::To(number)
    }
}

impl<'t> From<&'t str> for Came<'t> {
    fn from(text: &'t str) -> Self {
        Self::Text(text)
    }
}

/// A sheet, and the row that comes next.
pub(super) struct Page {
    sheet: Worksheet,
    name: &'static str,
    widths: Vec<f64>,
    pub(super) row: u32,
    names: Vec<(&'static str, u32, u16)>,
}

impl Page {
    /// A sheet that prints these columns; `name` is a single word.
    pub(super) fn new(name: &'static str, title: &str, widths: &[f64]) -> Result<Self, WorkbookError> {
        let mut sheet = Worksheet::new();
        sheet.set_name(name)?.set_paper_size(A4).set_print_fit_to_pages(1, 0).set_footer("&C&A, page &P of &N");
        if widths.iter().sum::<f64>() > 100.0 {
            sheet.set_landscape();
        }
        for (column, width) in (0..).zip(widths) {
            sheet.set_column_width(column, *width)?;
        }
        let mut page = Self { sheet, name, widths: widths.to_vec(), row: 0, names: Vec::new() };
        page.sheet.write_string_with_format(0, 0, shown(title), &looks::title())?;
        page.row = 2;
        Ok(page)
    }

    /// The last column that is printed.
    fn widest(&self) -> u16 {
        u16::try_from(self.widths.len().saturating_sub(1)).unwrap_or(0)
    }

    /// A text over the whole width, on as many lines as it takes.
    pub(super) fn paragraph(&mut self, text: &str) -> Result<(), WorkbookError> {
        self.across(text, &looks::plain())
    }

    /// What must be seen before anything else.
    pub(super) fn stop(&mut self, text: &str) -> Result<(), WorkbookError> {
        self.across(text, &looks::stop())
    }

    fn across(&mut self, text: &str, format: &Format) -> Result<(), WorkbookError> {
        let text = shown(text);
        let width: f64 = self.widths.iter().sum();
        let lines = (text.chars().count() as f64 * 1.1 / width).ceil().max(1.0);
        self.sheet.set_row_height(self.row, lines * LINE)?;
        // Every page has several columns: there is always something to merge.
        self.sheet.merge_range(self.row, 0, self.row, self.widest(), &text, format)?;
        self.row += 1;
        Ok(())
    }

    /// The names of the columns of a table; they stand on every printed page.
    pub(super) fn heading(&mut self, names: &[&str]) -> Result<(), WorkbookError> {
        for (column, name) in (0..).zip(names) {
            self.sheet.write_string_with_format(self.row, column, shown(name), &looks::names())?;
        }
        self.sheet.set_row_height(self.row, 2.0 * LINE)?;
        self.row += 1;
        Ok(())
    }

    /// The row above the next one is printed again on every page.
    pub(super) fn repeat_heading(&mut self) -> Result<(), WorkbookError> {
        let row = self.row.saturating_sub(1);
        self.sheet.set_repeat_rows(row, row)?;
        Ok(())
    }

    pub(super) fn text(&mut self, column: u16, text: &str) -> Result<(), WorkbookError> {
        self.sheet.write_string_with_format(self.row, column, shown(text), &looks::text())?;
        Ok(())
    }

    /// A number that stays.
    pub(super) fn number(&mut self, column: u16, value: f64, decimals: usize) -> Result<(), WorkbookError> {
        self.sheet.write_number_with_format(self.row, column, value, &looks::number(decimals))?;
        Ok(())
    }

    /// A number that may be changed within its range.
    pub(super) fn input(
        &mut self,
        column: u16,
        value: f64,
        decimals: usize,
        allowed: Allowed,
    ) -> Result<(), WorkbookError> {
        let Allowed { low, high, unit } = allowed;
        let told = format!("a number from {} to {} {unit}", number(low, 3), number(high, 3));
        let check = DataValidation::new()
            .allow_decimal_number(DataValidationRule::Between(low, high))
            .set_error_title("Out of range")?
            .set_error_message(format!("Give {told}."))?;
        self.sheet.write_number_with_format(self.row, column, value, &looks::input(decimals))?;
        self.sheet.add_data_validation(self.row, column, self.row, column, &check)?;
        Ok(())
    }

    /// An empty cell to write an answer into.
    pub(super) fn answer(&mut self, column: u16) -> Result<(), WorkbookError> {
        self.sheet.write_blank(self.row, column, &looks::answer())?;
        Ok(())
    }

    pub(super) fn formula<'t>(
        &mut self,
        column: u16,
        formula: &str,
        came: impl Into<Came<'t>>,
        decimals: usize,
    ) -> Result<(), WorkbookError> {
        let result = match came.into() {
            Came::To(number) => number.to_string(),
            Came::Text(text) => shown(text),
        };
        let formula = Formula::new(formula).set_result(result);
        self.sheet.write_formula_with_format(self.row, column, formula, &looks::number(decimals))?;
        Ok(())
    }

    /// A formula that says ABOVE or NOTHING when something is wrong, and then shows it loudly.
    pub(super) fn alarm(&mut self, column: u16, formula: &str, came: &str) -> Result<(), WorkbookError> {
        self.formula(column, formula, came, 0)?;
        for word in ["ABOVE", "NOTHING"] {
            let loud = ConditionalFormatText::new()
                .set_rule(ConditionalFormatTextRule::Contains(word.to_owned()))
                .set_format(looks::alarm());
            self.sheet.add_conditional_format(self.row, column, self.row, column, &loud)?;
        }
        Ok(())
    }

    /// A row of a name and a number that stays; the cell has that name in formulas.
    pub(super) fn named_number(
        &mut self,
        name: &'static str,
        words: &str,
        value: f64,
        decimals: usize,
    ) -> Result<(), WorkbookError> {
        self.text(0, words)?;
        self.number(1, value, decimals)?;
        self.call(name, 1);
        self.row += 1;
        Ok(())
    }

    /// A row of a name and a number that may be changed; the cell has that name in formulas.
    pub(super) fn named_input(
        &mut self,
        name: &'static str,
        words: &str,
        value: f64,
        decimals: usize,
        allowed: Allowed,
    ) -> Result<(), WorkbookError> {
        self.text(0, words)?;
        self.input(1, value, decimals, allowed)?;
        self.call(name, 1);
        self.row += 1;
        Ok(())
    }

    /// A row of a name and a formula; the cell has that name in formulas.
    pub(super) fn named_formula<'t>(
        &mut self,
        name: &'static str,
        words: &str,
        formula: &str,
        came: impl Into<Came<'t>>,
        decimals: usize,
    ) -> Result<(), WorkbookError> {
        self.text(0, words)?;
        self.formula(1, formula, came, decimals)?;
        self.call(name, 1);
        self.row += 1;
        Ok(())
    }

    /// Gives a cell of this row a name.
    pub(super) fn call(&mut self, name: &'static str, column: u16) {
        self.names.push((name, self.row, column));
    }

    /// The names, each with its place in the workbook.
    pub(super) fn names(&self) -> Vec<(&'static str, String)> {
        self.names
            .iter()
            .map(|(name, row, column)| (*name, format!("={}!{}", self.name, fixed(*row, *column))))
            .collect()
    }

    /// How the page is meant to be used.
    pub(super) fn how(&mut self) -> Result<(), WorkbookError> {
        self.paragraph(
            "Coloured cells may be changed; formulas follow, and the rest is protected, without a password. Sentences do not \
             follow: they are of what was made.",
        )?;
        self.row += 1;
        Ok(())
    }

    pub(super) fn cautions<'t>(&mut self, cautions: impl IntoIterator<Item = &'t str>) -> Result<(), WorkbookError> {
        self.row += 1;
        for caution in cautions {
            self.paragraph(caution)?;
        }
        Ok(())
    }

    pub(super) fn finish(mut self) -> Result<Worksheet, WorkbookError> {
        self.sheet.set_print_area(0, 0, self.row.saturating_sub(1), self.widest())?;
        self.sheet.protect();
        Ok(self.sheet)
    }
}

/// A text as it is shown: nothing in it acts, and it fits into a cell.
fn shown(text: &str) -> String {
    let text = inert(text);
    match text.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}...", text.get(..end).unwrap_or_default()),
        None => text.into_owned(),
    }
}
