use crate::page::Html;

/// What numbers rest on, as footnotes: each said once, under one number.
#[derive(Default)]
pub(super) struct Notes(Vec<String>);

impl Notes {
    /// A paragraph with the note of what it rests on.
    pub(super) fn noted(&mut self, html: &mut Html, tag: &'static str, text: &str, rests_on: &str) {
        let known = self.0.iter().position(|note| note == rests_on);
        let place = known.unwrap_or_else(|| {
            self.0.push(rests_on.to_owned());
            self.0.len() - 1
        });
        let number = place + 1;
        html.noted(tag, text, (&name(number), &number.to_string()), rests_on);
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
