use super::{Exercise, SheetHalf, Worksheet};
use crate::page::{Html, Page};

impl Worksheet {
    /// The sheet as a page of its own, without network: the key begins on a new sheet of paper.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::teach::{SheetHalf, WorksheetRequest, worksheet};
    ///
    /// let page = worksheet(&WorksheetRequest::new(3))?.html(SheetHalf::Both, false);
    /// assert!(page.contains("Juniper &amp; Tide") && page.contains("class=\"key\""));
    /// # Ok::<(), foilwork::teach::WorksheetError>(())
    /// ```
    #[must_use]
    pub fn html(&self, half: SheetHalf, choices: bool) -> String {
        let mut page = Page::new(&format!("Worksheet {}: {}", self.seed, self.title));
        let html = page.body();
        if half != SheetHalf::Key {
            html.open("section", &[("class", "problems")]);
            html.element("h1", &[], &format!("Worksheet {}: {}", self.seed, self.title));
            html.element("p", &[("class", "soft")], "Name: ____________________   Date: ____________");
            for exercise in &self.exercises {
                problem(html, exercise, choices);
            }
            html.close("section");
        }
        if half != SheetHalf::Problems {
            html.open("section", &[("class", "key")]);
            let level = if half == SheetHalf::Key { "h1" } else { "h2" };
            html.element(level, &[], &format!("Key to worksheet {}: {}", self.seed, self.title));
            for exercise in &self.exercises {
                key(html, exercise, choices, half);
            }
            html.element("p", &[("class", "soft small")], &self.origin());
            html.close("section");
        }
        page.finish()
    }
}

fn problem(html: &mut Html, exercise: &Exercise, choices: bool) {
    html.open("section", &[("class", "problem")]);
    html.element("h2", &[], &format!("{}. {}", exercise.number, exercise.topic));
    html.element("p", &[], &exercise.question);
    if let Some(picture) = &exercise.picture {
        html.picture(&picture.svg());
        html.open("details", &[("class", "small")]);
        html.element("summary", &[], "The picture in words");
        html.element("p", &[], &picture.says);
        html.close("details");
    }
    if choices {
        html.open("ul", &[("class", "choices")]);
        for option in &exercise.options {
            html.marked("li", &[], &option.letter.to_string(), &option.answer.text);
        }
        html.close("ul");
    } else {
        html.element("p", &[], "Answer:");
        html.element("span", &[("class", "answer")], "");
    }
    html.close("section");
}

fn key(html: &mut Html, exercise: &Exercise, choices: bool, half: SheetHalf) {
    html.open("section", &[("class", "problem")]);
    let letter = if choices { format!("{}  ", exercise.letter()) } else { String::new() };
    let level = if half == SheetHalf::Key { "h2" } else { "h3" };
    html.element(level, &[], &format!("{}. {letter}{}", exercise.number, exercise.answer.text));
    html.open("ol", &[]);
    for step in &exercise.steps {
        html.element("li", &[], &format!("{}: {} = {}", step.what, step.formula, step.result));
    }
    html.close("ol");
    let wrong = exercise.options.iter().filter_map(|option| {
        let letter = if choices { format!("{} ", option.letter) } else { String::new() };
        option.mistake.map(|mistake| format!("not {letter}{}: {mistake}", option.answer.text))
    });
    html.list("small", wrong);
    let about = format!("{}, {}; {}", exercise.topic, exercise.difficulty, exercise.rests_on());
    html.element("p", &[("class", "soft small")], &about);
    html.close("section");
}
