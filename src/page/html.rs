use crate::text::{escaped, inert};

/// HTML as it grows: elements are known names, every text and every value is escaped.
///
/// # Example
///
/// ```
/// use foilwork::page::Html;
///
/// let mut html = Html::default();
/// html.open("section", &[("class", "bowl")]);
/// html.element("h2", &[], "<nape> & \"crown\"");
/// html.close("section");
/// assert_eq!(html.finish(), "<section class=\"bowl\">\n<h2>&lt;nape&gt; &amp; &quot;crown&quot;</h2>\n</section>\n");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Html(String);

/// The cells of one line of a table, from the left.
type Row = Vec<String>;

impl Html {
    /// Opens an element.
    pub fn open(&mut self, tag: &'static str, attributes: &[(&'static str, &str)]) {
        self.start(tag, attributes);
        self.0.push('\n');
    }

    /// Closes it.
    pub fn close(&mut self, tag: &'static str) {
        self.0.push_str(&format!("</{tag}>\n"));
    }

    /// An element that holds a text.
    pub fn element(&mut self, tag: &'static str, attributes: &[(&'static str, &str)], text: &str) {
        self.start(tag, attributes);
        self.0.push_str(&words(text));
        self.close(tag);
    }

    /// A paragraph that begins with words that stand out.
    pub fn marked(&mut self, tag: &'static str, attributes: &[(&'static str, &str)], strong: &str, text: &str) {
        self.start(tag, attributes);
        self.0.push_str(&format!("<strong>{}</strong> {}", words(strong), words(text)));
        self.close(tag);
    }

    /// A table with a caption; the columns listed in `numbers` are set to the right, the first cell of a row names it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::page::Html;
    ///
    /// let mut html = Html::default();
    /// html.marked("p", &[], "STOP", "no peroxide before the test is read");
    /// html.noted("p", "6 % on the bottle", ("note-1", "1"), "the label");
    /// html.table("To weigh", &["what", "g"], &[1], &[vec!["powder".to_owned(), "20".to_owned()]]);
    /// html.list("mind", ["gloves".to_owned()]);
    /// html.tick("10:15", "look at the nape");
    /// let text = html.finish();
    /// assert!(text.contains("<strong>STOP</strong>") && text.contains("href=\"#note-1\""));
    /// assert!(text.contains("<caption>To weigh</caption>") && text.contains("gloves") && text.contains("type=\"checkbox\""));
    /// ```
    pub fn table(&mut self, caption: &str, names: &[&str], numbers: &[usize], rows: &[Row]) {
        // A wide table scrolls in a frame of its own, which the keyboard reaches; the page never does.
        self.open("div", &[("class", "scroll"), ("role", "region"), ("aria-label", caption), ("tabindex", "0")]);
        self.open("table", &[]);
        self.element("caption", &[], caption);
        let class = |column: usize| if numbers.contains(&column) { "number" } else { "words" };
        self.open("thead", &[]);
        self.open("tr", &[]);
        for (column, name) in names.iter().enumerate() {
            self.element("th", &[("scope", "col"), ("class", class(column))], name);
        }
        self.close("tr");
        self.close("thead");
        self.open("tbody", &[]);
        for row in rows {
            self.open("tr", &[]);
            for (column, cell) in row.iter().enumerate() {
                match column {
                    0 => self.element("th", &[("scope", "row"), ("class", class(column)), ("dir", "auto")], cell),
                    _ => self.element("td", &[("class", class(column)), ("dir", "auto")], cell),
                }
            }
            self.close("tr");
        }
        self.close("tbody");
        self.close("table");
        self.close("div");
    }

    /// A list of texts.
    pub fn list(&mut self, class: &str, items: impl IntoIterator<Item = String>) {
        self.open("ul", &[("class", class)]);
        for item in items {
            self.element("li", &[("dir", "auto")], &item);
        }
        self.close("ul");
    }

    /// A picture of the room [`chart`](crate::chart), as it is: a caller's own markup is not for this place.
    pub(crate) fn picture(&mut self, svg: &str) {
        self.open("figure", &[]);
        self.0.push_str(svg);
        self.close("figure");
    }

    /// A text with the number of a note, which leads to the note by its name, and what the note says: shown beside the number
    /// while that is pointed at or has the focus.
    pub fn noted(&mut self, tag: &'static str, text: &str, (note, number): (&str, &str), says: &str) {
        self.start(tag, &[("dir", "auto")]);
        let (note, number) = (words(note), words(number));
        self.0.push_str(&format!(
            "{} <sup><a href=\"#{note}\" aria-label=\"note {number}\" aria-describedby=\"{note}\">{number}</a></sup>\
             <span class=\"basis\"> {}</span>",
            words(text),
            words(says)
        ));
        self.close(tag);
    }

    /// Something to tick off: a time that stands out, and what is due.
    pub fn tick(&mut self, time: &str, what: &str) {
        let (time, what) = (words(time), words(what));
        self.0.push_str(&format!(
            "<label><input type=\"checkbox\"> <span class=\"clock\">{time}</span> {what}</label>\n"
        ));
    }

    /// The text.
    #[must_use]
    pub fn finish(self) -> String {
        self.0
    }

    fn start(&mut self, tag: &'static str, attributes: &[(&'static str, &str)]) {
        self.0.push('<');
        self.0.push_str(tag);
        for (name, value) in attributes {
            self.0.push_str(&format!(" {name}=\"{}\"", words(value)));
        }
        self.0.push('>');
    }
}

/// Text that is no markup, and turns nothing around.
pub(super) fn words(text: &str) -> String {
    escaped(&inert(text))
}
