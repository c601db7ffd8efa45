//! What is made of a plan: for the hunt of hostile texts, and for fuzzing.

use foilwork::{
    service::{Plan, mixing_cards},
    sheet, text,
};

/// Makes everything of a plan that is text; none of it may show a number that is none.
#[allow(unreachable_pub, reason = "the fuzz targets take it from another crate")]
pub fn show_everything(plan: &Plan) {
    let shown = [
        sheet::bench_sheet(plan),
        sheet::bench_page(plan),
        sheet::guest_page(plan),
        sheet::day_sheet(plan),
        sheet::card_sheet(&mixing_cards(plan), &plan.habits),
        text::trail_text(&plan.trail()),
        sheet::day_picture(plan).unwrap_or_default(),
        sheet::cost_picture(plan, "cost").unwrap_or_default(),
        sheet::head_map(plan).unwrap_or_default(),
        sheet::head_map_text(plan).unwrap_or_default(),
        serde_json::to_string(plan).expect("a plan is plain data"),
    ];
    assert!(shown.iter().all(|text| !text.contains("NaN")), "not-a-number on a sheet");
}
