//! Plain text in 80 columns: headings, paragraphs, tables. No colour, no box drawing, nothing a printer could lose.

use crate::{quantity::Quantity, source::Interval};
use comfy_table::{CellAlignment, ContentArrangement, Table, presets::NOTHING};

/// The width of a sheet.
pub(crate) const WIDTH: usize = 80;

/// Text under construction.
#[derive(Default)]
pub(crate) struct Sheet(String);

impl Sheet {
    pub(crate) fn title(&mut self, text: &str) {
        self.paragraph(text, 2);
        self.line(&"=".repeat(WIDTH));
    }

    pub(crate) fn heading(&mut self, text: &str) {
        self.blank();
        self.line(&text.to_uppercase());
        self.line(&"-".repeat(WIDTH));
    }

    pub(crate) fn blank(&mut self) {
        self.0.push('\n');
    }

    /// A paragraph; lines after the first are indented by `hang` spaces.
    pub(crate) fn paragraph(&mut self, text: &str, hang: usize) {
        let indent = " ".repeat(hang);
        for line in textwrap::wrap(text, textwrap::Options::new(WIDTH).subsequent_indent(&indent)) {
            self.line(&line);
        }
    }

    /// A paragraph all of whose lines are indented.
    #[cfg(feature = "cli")]
    pub(crate) fn indented(&mut self, text: &str, indent: usize) {
        let indent = " ".repeat(indent);
        let options = textwrap::Options::new(WIDTH).initial_indent(&indent).subsequent_indent(&indent);
        for line in textwrap::wrap(text, options) {
            self.line(&line);
        }
    }

    /// A table with a row of names; the columns listed in `numbers` are set to the right.
    pub(crate) fn table(&mut self, names: &[&str], numbers: &[usize], rows: Vec<Vec<String>>) {
        let mut table = Table::new();
        table.load_style(NOTHING).set_content_arrangement(ContentArrangement::Dynamic).set_width(WIDTH as u16);
        if names.iter().any(|name| !name.is_empty()) {
            table.set_header(names.to_vec());
        }
        table.add_rows(rows);
        for (i, column) in table.column_iter_mut().enumerate() {
            column.set_padding((0, 2));
            if numbers.contains(&i) {
                column.set_cell_alignment(CellAlignment::Right);
            }
        }
        for line in table.to_string().lines() {
            self.line(line);
        }
    }

    pub(crate) fn line(&mut self, text: &str) {
        self.0.push_str(text.trim_end());
        self.0.push('\n');
    }

    pub(crate) fn finish(self) -> String {
        self.0
    }
}

/// A number with at most so many decimals and no trailing zeros.
pub(crate) fn number(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

/// A quantity without its unit, which the words around it say.
pub(crate) fn amount<Q: Quantity>(quantity: Q, decimals: usize) -> String {
    number(quantity.in_unit(), decimals)
}

/// `6` if exact, `6 (5.7 to 6.1)` otherwise.
pub(crate) fn range<Q: Quantity>(range: &Interval<Q>, decimals: usize) -> String {
    numbers(&range.to_array().map(Q::in_unit), decimals)
}

/// The same for three plain numbers: lower bound, best estimate, upper bound.
pub(crate) fn numbers([low, best, high]: &[f64; 3], decimals: usize) -> String {
    let [low, best, high] = [low, best, high].map(|value| number(*value, decimals));
    if low == high { best } else { format!("{best} ({low} to {high})") }
}
