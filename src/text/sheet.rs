use comfy_table::{CellAlignment, ColumnConstraint, ContentArrangement, Table, Width, presets::NOTHING};

/// The width of a sheet, in characters.
pub const WIDTH: usize = 80;

/// Blanks between two columns of a table.
const GAP: u16 = 2;

/// A paragraph in lines of at most 80 characters.
///
/// # Example
///
/// ```
/// use foilwork::text::{WIDTH, wrapped};
///
/// let text = wrapped("Weigh it; volumes add up only nearly. Blend developers with developers or with a diluent.");
/// assert!(text.len() == 2 && text.iter().all(|line| line.chars().count() <= WIDTH));
/// ```
#[must_use]
pub fn wrapped(text: &str) -> Vec<String> {
    textwrap::wrap(text, options()).into_iter().map(std::borrow::Cow::into_owned).collect()
}

/// Lines break between words only: a code such as `J9-mist` stays whole.
fn options<'a>() -> textwrap::Options<'a> {
    textwrap::Options::new(WIDTH).word_splitter(textwrap::WordSplitter::NoHyphenation)
}

/// Plain text in 80 columns: headings, paragraphs, tables. No colour, no box drawing, nothing that a printer could lose.
///
/// # Example
///
/// ```
/// use foilwork::text::Sheet;
///
/// let mut sheet = Sheet::default();
/// sheet.heading("What to weigh");
/// sheet.table(&["part", "g"], &[1], vec![vec!["powder".to_owned(), "15".to_owned()]]);
/// assert!(sheet.finish().ends_with("part     g\npowder  15\n"));
/// ```
#[derive(Debug, Default)]
pub struct Sheet(String);

impl Sheet {
    /// The name of the sheet, underlined twice.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::text::Sheet;
    ///
    /// let mut sheet = Sheet::default();
    /// sheet.title("Crown");
    /// sheet.blank();
    /// sheet.paragraph("Weigh it.", 2);
    /// sheet.indented("15 g powder", 4);
    /// sheet.line("https://example.org/a/line/as/long/as/it/likes");
    /// let text = sheet.finish();
    /// assert!(text.starts_with("Crown\n====") && text.contains("\n    15 g powder\n"));
    /// ```
    pub fn title(&mut self, text: &str) {
        self.paragraph(text, 2);
        self.line(&"=".repeat(WIDTH));
    }

    /// A heading in capitals, underlined, after a blank line.
    pub fn heading(&mut self, text: &str) {
        self.blank();
        self.line(&text.to_uppercase());
        self.line(&"-".repeat(WIDTH));
    }

    /// A blank line.
    pub fn blank(&mut self) {
        self.0.push('\n');
    }

    /// A paragraph; lines after the first are indented by `hang` spaces.
    pub fn paragraph(&mut self, text: &str, hang: usize) {
        let indent = " ".repeat(hang);
        for line in textwrap::wrap(text, options().subsequent_indent(&indent)) {
            self.line(&line);
        }
    }

    /// A paragraph all of whose lines are indented.
    pub fn indented(&mut self, text: &str, indent: usize) {
        let indent = " ".repeat(indent);
        let options = options().initial_indent(&indent).subsequent_indent(&indent);
        for line in textwrap::wrap(text, options) {
            self.line(&line);
        }
    }

    /// A table with a row of names; the columns listed in `numbers` are set to the right.
    pub fn table(&mut self, names: &[&str], numbers: &[usize], rows: Vec<Vec<String>>) {
        let mut table = Table::new();
        table.load_style(NOTHING).set_content_arrangement(ContentArrangement::Dynamic).set_width(WIDTH as u16);
        if names.iter().any(|name| !name.is_empty()) {
            table.set_header(names.to_vec());
        }
        let widths = narrowest(names, &rows);
        table.add_rows(rows);
        for (i, column) in table.column_iter_mut().enumerate() {
            column.set_padding((0, GAP));
            if let Some(width) = widths.get(i).copied().and_then(|width| u16::try_from(width).ok()) {
                column.set_constraint(ColumnConstraint::LowerBoundary(Width::Fixed(width + GAP)));
            }
            if numbers.contains(&i) {
                column.set_cell_alignment(CellAlignment::Right);
            }
        }
        for line in table.to_string().lines() {
            self.line(line);
        }
    }

    /// A line as it is, however long.
    pub fn line(&mut self, text: &str) {
        self.0.push_str(text.trim_end());
        self.0.push('\n');
    }

    /// The whole text.
    #[must_use]
    pub fn finish(self) -> String {
        self.0
    }
}

/// How narrow each column may become, so that no word is broken: its longest word, of the names alone where there is not
/// room for all.
fn narrowest(names: &[&str], rows: &[Vec<String>]) -> Vec<usize> {
    let longest = |text: &str| text.split_whitespace().map(|word| word.chars().count()).max().unwrap_or_default();
    let of_names: Vec<usize> = names.iter().map(|name| longest(name)).collect();
    let with_cells = of_names
        .iter()
        .enumerate()
        .map(|(i, name)| rows.iter().filter_map(|row| row.get(i)).map(|cell| longest(cell)).fold(*name, usize::max));
    let with_cells: Vec<usize> = with_cells.collect();
    let total = with_cells.iter().map(|width| width + usize::from(GAP)).sum::<usize>();
    if total <= WIDTH { with_cells } else { of_names }
}
