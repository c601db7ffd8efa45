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
    let told = |unit: &str| {
        let output = foilwork(&["checklist", "--units", unit]);
        assert_eq!(output.status.code(), Some(2));
        String::from_utf8(output.stderr).unwrap()
    };
    let of_the_country =
        "error: --units: unknown unit \"nz-1\" (give nz-12313, nz-2889, nz-19792, nz-28835 or nz-28846)\n";
    assert_eq!(told("nz-1"), of_the_country);
    let all = told("levels");
    assert!(all.contains("(give au-shbhcls002, ") && all.contains(" or ca-red-seal-f)"), "{all}");
}
