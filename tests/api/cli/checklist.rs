//! `foilwork checklist`: one list in four forms.

use super::{fine, foilwork};

#[test]
fn a_list_comes_in_four_forms() {
    let of = |form: &[&str]| fine(&[&["checklist", "--units", "nz-12313"], form].concat());
    assert!(of(&[]).contains("NZ 12313 note 3") && !of(&[]).contains("Red Seal"));
    assert!(of(&["--html"]).starts_with("<!doctype html>"));
    assert!(of(&["--csv"]).lines().skip(1).all(|line| line.contains("nz-12313")));
    let data: serde_json::Value = serde_json::from_str(&of(&["--json"])).unwrap();
    assert_eq!(data["units"], serde_json::json!(["nz-12313"]));
}

#[test]
fn a_unit_that_is_not_known_is_refused() {
    let output = foilwork(&["checklist", "--units", "nz-12314"]);
    assert!(
        String::from_utf8(output.stderr).unwrap().starts_with("error: --units: ") && output.status.code() == Some(2)
    );
}
