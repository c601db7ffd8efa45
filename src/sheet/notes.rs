use crate::page::Html;

/// What numbers rest on, as footnotes: each said once, under one number.
#[derive(Default)]
pub(super) struct Notes(Vec<String>);

impl Notes {
    /// The number of a note.
    pub(super) fn number(&mut self, text: String) -> usize {
        let known = self.0.iter().position(|note| *note == text);
        known.unwrap_or_else(|| {
            self.0.push(text);
            self.0.len() - 1
        }) + 1
    }

    /// The notes, each under the name by which it is found.
    pub(super) fn write(&self, html: &mut Html) {
        if self.0.is_empty() {
            return;
        }
        html.element("h2", &[], "What the numbers rest on");
        html.open("ol", &[("class", "small columns")]);
        for (place, note) in self.0.iter().enumerate() {
            html.element("li", &[("id", &name(place + 1)), ("dir", "auto")], note);
        }
        html.close("ol");
    }
}

/// By what a note is found on the page.
fn name(number: usize) -> String {
    format!("note-{number}")
}

/// A paragraph with its note.
pub(super) fn noted(html: &mut Html, tag: &'static str, text: &str, number: usize) {
    html.noted(tag, text, &name(number), &number.to_string());
}
