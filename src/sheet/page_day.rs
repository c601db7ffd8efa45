use super::{day, pictures};
use crate::{page::Html, service::Plan};

/// Hands, looks and basin as a picture, and in words what the day comes to.
pub(super) fn day(html: &mut Html, plan: &Plan) {
    let (Some(picture), Some(planned)) = (pictures::day_picture(plan), plan.day.as_ref()) else { return };
    html.element("h2", &[], "The day");
    html.open("div", &[("class", "day")]);
    html.picture(&picture);
    html.close("div");
    let said = match &planned.proposed {
        Some(best) => day::summary(plan, planned, best),
        None => planned.proposed_why_not.iter().map(|why| format!("No best order: {why}.")).collect(),
    };
    html.list("small columns", said);
}
