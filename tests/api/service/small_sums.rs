//! Dates, margins and shared foils, by hand.

use super::base::{changed, near, only_lightener};
use foilwork::{
    colour::Level,
    service::{
        ServiceFile,
        shape::{HouseRule, Section},
    },
};
use serde_json::json;

/// A second section like the first under another name.
fn also(file: &mut ServiceFile, name: &str, change: impl FnOnce(&mut Section)) {
    let mut other = file.section[0].clone();
    other.name = name.to_owned();
    change(&mut other);
    file.section.push(other);
}

/// 14 days are two weeks, in which 0.37 mm a day (`hair-growth-1986`) are 5.2 mm.
#[test]
fn what_has_grown_since_an_earlier_service() {
    let plan = changed(only_lightener(), |file| {
        let past = json!([
            { "on": "2026-11-11", "what": "toner", "formula": "J9" }, { "what": "henna" },
            { "on": "2026-11-24T18:00", "what": "permed", "formula": "lotion" },
        ]);
        file.consultation = serde_json::from_value(json!({ "known_since": "2020-01-01", "past": past })).unwrap();
    });
    let past = plan.consulted.unwrap().past;
    let weeks: Vec<Option<f64>> = past.iter().map(|one| one.ago.map(|ago| ago.weeks())).collect();
    assert_eq!(weeks.len(), 3);
    near(weeks[0].unwrap(), 1.0 / 7.0, 1e-9);
    near(weeks[1].unwrap(), 2.0, 1e-9);
    assert_eq!((weeks[2], past[2].grown_out), (None, None));
    near(past[1].grown_out.unwrap().best().cm(), 14.0 * 0.037, 0.002);
}

/// Sections that share a foil by way of a third are one foil; one that shares none has none.
#[test]
fn foils_are_shared_along_a_chain() {
    let plan = changed(only_lightener(), |file| {
        file.salon.order_rules = Some(vec![HouseRule::DarkestFirst]);
        also(file, "b", |one| one.same_foil_as = vec!["c".to_owned()]);
        also(file, "c", |_| ());
        also(file, "d", |_| ());
        also(file, "e", |one| one.same_foil_as = vec!["c".to_owned(), "top".to_owned()]);
        also(file, "f", |one| one.same_foil_as = vec!["d".to_owned()]);
        also(file, "g", |_| ());
        for section in &mut file.section {
            (section.share_percent, section.apply_min, section.develop_min) = (Some(5.0), Some(4.0), 10.0);
        }
    });
    let groups: Vec<Option<u32>> = plan.day.unwrap().work.iter().map(|work| work.same_foil).collect();
    let same = |a: usize, b: usize| groups[a].is_some() && groups[a] == groups[b];
    assert!(same(0, 1) && same(1, 2) && same(2, 4) && same(3, 5) && !same(0, 3), "{groups:?}");
    assert_eq!(groups[6], None);
}

/// Hair that is read off half a level, within the margin: its bounds are a level apart, and none where it is read for sure.
#[test]
fn a_reading_is_off_as_far_as_its_margin_says() {
    let of = |margin: Option<f64>| {
        let hair = changed(only_lightener(), |file| file.analysis.natural_level_plus_minus = margin).hair;
        (hair.natural_level.to_array().map(Level::number), hair.natural_level_margin_levels.map(|off| off.levels()))
    };
    assert_eq!(of(None), ([6.0; 3], None));
    assert_eq!(of(Some(0.0)), ([6.0; 3], None));
    assert_eq!(of(Some(0.5)), ([5.5, 6.0, 6.5], Some(0.5)));
}
