//! A template of one's own: with places for its regions the map and the part line work as with foilwork's.

use super::base::fine;
use foilwork::{
    head::{PartLine, Technique},
    service::{Plan, ServiceFile, plan},
    sheet::head_map,
};
use rstest::rstest;
use serde_json::{Value, json};

/// Two regions over each other, the map of 12 by 16 in halves: the face above, the back below.
fn halves(change: impl FnOnce(&mut Value)) -> ServiceFile {
    let mut file = fine();
    let mut regions = json!([
        {"name": "face", "area_percent": 40, "outline": true, "front": true,
         "place": {"left_percent": 0, "top_percent": 0, "width_percent": 100, "height_percent": 25}},
        {"name": "rest", "area_percent": 60,
         "place": {"left_percent": 0, "top_percent": 25, "width_percent": 100, "height_percent": 75}},
    ]);
    change(&mut regions);
    file.service.part = Some(PartLine::Left);
    file.region = serde_json::from_value(regions).unwrap();
    file.section[0].share_percent = Some(10.0);
    file.section[0].regions = serde_json::from_value(json!([{"name": "face"}])).unwrap();
    file
}

fn planned(change: impl FnOnce(&mut Value)) -> Plan {
    plan(&halves(change)).unwrap()
}

/// A quarter of 16 units is 4: the face ends before the part does, at 7.5, and the rest is not seen from the front.
#[test]
fn its_part_line_and_its_map() {
    let plan = planned(|_| ());
    let look = plan.head.look.as_ref().unwrap();
    assert_eq!(look.part.as_ref().unwrap().regions, ["face"]);
    assert_eq!(look.template.regions()[0].place, Some([0.0, 0.0, 12.0, 4.0]));
    assert_eq!(look.template.regions()[1].place, Some([0.0, 4.0, 12.0, 12.0]));
    // A unit is 56 px, under 64 px of title.
    let map = head_map(&plan).unwrap();
    assert!(map.contains("width=\"672\" height=\"224\"") && map.contains("width=\"672\" height=\"672\""), "{map}");
    let sheet = plan.to_string();
    assert!(sheet.contains("parted left, through face") && !sheet.contains("does not say which"), "{sheet}");
}

fn refused(change: impl FnOnce(&mut Value)) -> String {
    plan(&halves(change)).unwrap_err().to_string()
}

#[rstest]
#[case::over_each_other(
    |regions: &mut Value| regions[1]["place"]["top_percent"] = json!(20),
    "region[2].place: \"rest\" lies over `region[1].place`, \"face\", on the map (move one of the two)"
)]
#[case::beyond(
    |regions: &mut Value| regions[1]["place"]["height_percent"] = json!(80),
    "region[2].place: `top_percent` and `height_percent` end at 105 %, beyond the map (no more than 100 together)"
)]
#[case::one_of_two(
    |regions: &mut Value| { regions[1].as_object_mut().unwrap().remove("place"); },
    "region[2].place: missing: `region[1].place` of \"face\" is given (give all of them, or none)"
)]
#[case::second_of_two(
    |regions: &mut Value| { regions[0].as_object_mut().unwrap().remove("place"); },
    "region[1].place: missing: `region[2].place` of \"rest\" is given (give all of them, or none)"
)]
// The checks of areas and sections stay.
#[case::areas(
    |regions: &mut Value| regions[1]["area_percent"] = json!(50),
    "the regions' `area_percent` add up to 90 %, not to 100 %"
)]
fn places_that_cannot_be_name_both_fields(#[case] change: fn(&mut Value), #[case] want: &str) {
    let said = refused(change);
    assert!(said.contains(want), "{said}");
}

/// The part shows regrowth as early as the first of the sections that it runs through, whichever the file names first.
#[rstest]
fn a_part_shows_the_earliest_line(#[values(false, true)] turned: bool) {
    let mut file = halves(|_| ());
    file.section[0].regions[0].percent = Some(50.0);
    let mut soft = file.section[0].clone();
    (soft.name, soft.technique, soft.foils) = ("soft".to_owned(), Technique::Freehand, None);
    file.section.push(soft);
    if turned {
        file.section.reverse();
    }
    let head = plan(&file).unwrap().head;
    let weeks: Vec<f64> = head.sections.iter().map(|one| one.line_shows_after.best().weeks()).collect();
    let earliest = weeks.iter().copied().fold(f64::MAX, f64::min);
    assert!(weeks.len() == 2 && weeks[0] != weeks[1], "{weeks:?}");
    let part = head.look.unwrap().part.unwrap();
    assert_eq!(part.line_shows_after.map(|line| line.best().weeks()), Some(earliest));
}
