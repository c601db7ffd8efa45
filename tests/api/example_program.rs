//! The program under `examples/` runs and adds up.

#[expect(dead_code, reason = "the test calls what main calls")]
#[path = "../../examples/trolley.rs"]
mod program;

fn example(name: &str) -> String {
    format!("{}/examples/{name}", env!("CARGO_MANIFEST_DIR"))
}

fn grams(list: &str, product: &str) -> f64 {
    let line = list.lines().find(|line| line.ends_with(&format!(" g  {product}"))).unwrap();
    line.split_whitespace().next().unwrap().parse().unwrap()
}

#[test]
fn the_trolley_holds_what_the_services_of_a_day_need() {
    let once = program::trolley(&[example("soft-gradient.toml")]).unwrap();
    assert!(once.starts_with("on the trolley\n"));
    let twice = program::trolley(&[example("soft-gradient.toml"), example("soft-gradient.toml")]).unwrap();
    // Of the bond additive the sheet of one service says 1.4 g for the nape alone.
    assert!(grams(&once, "bond additive") >= 1.4);
    for product in ["Foam Line powder", "developer 6", "bond additive"] {
        assert!((grams(&twice, product) - 2.0 * grams(&once, product)).abs() < 0.11, "{product}\n{twice}");
    }
}

#[test]
fn services_of_either_format_are_added_up() {
    let both = program::trolley(&[example("soft-gradient.toml"), example("lowlights.json")]).unwrap();
    let one = program::trolley(&[example("soft-gradient.toml")]).unwrap();
    assert!(both.lines().count() > one.lines().count(), "{both}");
}

#[test]
fn a_file_that_is_not_there_is_an_error() {
    assert!(program::trolley(&[example("nowhere.toml")]).is_err());
}
