//! `scale` and `limits` from outside.

use super::{data, fine, foilwork};
use rstest::rstest;

fn refused(args: &[&str]) -> String {
    let output = foilwork(args);
    assert_eq!(output.status.code(), Some(2), "{args:?}");
    String::from_utf8(output.stderr).unwrap()
}

/// The units that the help lists, read from the help itself.
fn listed_units() -> Vec<String> {
    let help = fine(&["scale", "--help"]);
    let line = help.split("whole recipe, ").nth(1).and_then(|rest| rest.split(';').next()).unwrap();
    line.split('`').skip(1).step_by(2).map(str::to_owned).collect()
}

#[test]
fn every_unit_that_the_help_lists_works() {
    let units = listed_units();
    assert_eq!(units, ["g", "mL", "US fl oz", "UK fl oz"]);
    for unit in units {
        let recipe = format!("1 {unit} J7-mist + 2 {unit} 6%");
        let scaled = fine(&["scale", &recipe, "--total", &format!("6 {unit}")]);
        assert!(scaled.contains(&format!("becomes 2.00 {unit} J7-mist + 4.00 {unit} 6%")), "{scaled}");
    }
}

#[rstest]
#[case("90")]
#[case("90 g")]
fn a_total_is_read_with_and_without_its_unit(#[case] total: &str) {
    // 30 : 15 : 67.5 is 112.5 in all; 90 is four fifths of it.
    let scaled = fine(&["scale", "30 g J7-mist + 15 g J8-oat + 67.5 g 6%", "--total", total]);
    assert!(scaled.contains("becomes 24.00 g J7-mist + 12.00 g J8-oat + 54.00 g 6%"), "{scaled}");
}

#[rstest]
#[case::comma("60,5", "give digits with a point")]
#[case::bare_ounces("3 oz", "US fl oz or UK fl oz (they differ by 4 %)")]
#[case::other_unit("3 mL", "mixes g and mL")]
fn a_total_that_cannot_be_read_says_the_way_out(#[case] total: &str, #[case] want: &str) {
    let said = refused(&["scale", "30 g J7-mist + 45 g 6%", "--total", total]);
    assert!(said.contains(want), "{said}");
}

/// Source: Regulation (EC) No 1223/2009, Annex III, entry 12: hair 12 %, skin 4 %, eyelashes 2 % for professionals.
#[rstest]
#[case(&["--substance", "hydrogen peroxide", "--product", "lightening", "--use", "professional"], &["EU-III-12-hair"], &["EU-III-12-lash", "EU-2019"])]
#[case(&["--substance", "7722-84-1", "--product", "lash-colour", "--use", "professional"], &["EU-III-12-lash"], &["EU-III-12-hair"])]
#[case(&["--substance", "sodium percarbonate"], &["EU-III-12-hair", "EU-III-12-lash"], &["EU-III-22"])]
#[case(&["--substance", "resorc", "--product", "oxidative-colour"], &["EU-III-22-ox"], &["EU-III-22-lash"])]
#[case(&["--use", "general", "--substance", "PPD"], &["EU-III-8a-ox-gen"], &["EU-III-8a-ox-prof", "EU-III-8b-lash"])]
fn limits_are_filtered(#[case] filter: &[&str], #[case] shown: &[&str], #[case] hidden: &[&str]) {
    let text = fine(&[&["limits", "--jurisdiction", "EU"], filter].concat());
    assert!(shown.iter().all(|id| text.contains(&format!("{id} |"))), "{text}");
    assert!(!hidden.iter().any(|id| text.contains(id)), "{text}");
    assert!(text.lines().count() < 60 && text.contains("not complete"), "{text}");
}

/// Every value that the help of the filters lists.
#[test]
fn every_choice_that_the_help_of_limits_lists_works() {
    let help = fine(&["limits", "--help"]).split_whitespace().collect::<Vec<_>>().join(" ");
    let listed = |before: &str, after: &str| {
        let rest = help.split(before).nth(1).and_then(|rest| rest.split(after).next()).unwrap();
        rest.split('`').skip(1).step_by(2).map(str::to_owned).collect::<Vec<_>>()
    };
    let (products, uses) = (listed("concerns this product: ", " --use"), listed("concerns this use: ", " --json"));
    assert_eq!((products.len(), uses.len()), (4, 2), "{products:?} {uses:?}");
    for product in products {
        fine(&["limits", "-j", "EU", "--product", &product]);
    }
    for who in uses {
        fine(&["limits", "-j", "EU", "--use", &who]);
    }
    for place in listed("Whose law: ", " --substance") {
        fine(&["limits", "-j", &place]);
    }
    let said = refused(&["limits", "-j", "EU", "--product", "lightning"]);
    assert!(said.contains("did you mean lightening?"), "{said}");
}

/// No entry without a figure is left out in silence.
#[test]
fn a_trail_of_limits_says_what_has_none() {
    let said = refused(&["limits", "-j", "CA", "--trail"]);
    assert!(said.contains("no figure in percent to follow"), "{said}");
    let said = refused(&["limits", "-j", "EU", "--substance", "nonsense", "--trail", "--json"]);
    assert!(said.contains("nothing in the table of European Union is as asked for"), "{said}");
    let (all, shown) = (data(&["limits", "-j", "EU"]), data(&["limits", "-j", "EU", "--trail"]));
    let all = all["limits"].as_array().unwrap().len();
    let without = all - shown.as_array().unwrap().len();
    assert!(without > 0);
    let text = fine(&["limits", "-j", "EU", "--trail"]);
    assert!(text.contains(&format!("so without a trail: {without} of {all}.")), "{text}");
}
