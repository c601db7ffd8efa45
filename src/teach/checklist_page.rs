use super::{Checklist, ChecklistPoint, ObservedStage, checklist::CAUTION};
use crate::page::{Html, Page};

impl Checklist {
    /// The checklist as a page of its own, without network: to tick off on a phone, or to print and write on.
    ///
    /// # Example
    ///
    /// ```
    /// let page = foilwork::teach::checklist(&[]).html();
    /// assert!(page.contains("type=\"checkbox\"") && page.contains("A/600/8630"));
    /// ```
    #[must_use]
    pub fn html(&self) -> String {
        let title = "Observation of a colour service";
        let mut page = Page::new(title);
        let html = page.body();
        html.element("h1", &[], title);
        html.open("div", &[("class", "sign")]);
        for line in ["Learner", "Observer", "Date"] {
            html.element("p", &[], line);
        }
        html.close("div");
        for stage in ObservedStage::ALL {
            let points: Vec<&ChecklistPoint> = self.points.iter().filter(|point| point.stage == *stage).collect();
            if !points.is_empty() {
                html.element("h2", &[], &capital(&stage.to_string()));
                for point in points {
                    one(html, point);
                }
            }
        }
        html.element("h2", &[], "Units");
        html.list("small", self.units.iter().map(|unit| format!("{unit}: {}", unit.citation().text)));
        html.element("p", &[("class", "small")], CAUTION);
        html.element("p", &[("class", "soft small")], &format!("foilwork {}", self.foilwork));
        page.finish()
    }
}

fn one(html: &mut Html, point: &ChecklistPoint) {
    html.open("section", &[("class", "problem")]);
    html.tick(&format!("{}.", point.number), point.watch_for);
    html.element("p", &[("class", "small")], &format!("Write down: {}", point.evidence));
    html.element("span", &[("class", "answer")], "");
    html.element("p", &[("class", "soft small")], &format!("for {}", point.elements()));
    html.close("section");
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
