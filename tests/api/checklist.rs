//! The checklist names only elements whose text was read, and every form of it holds every point.

use foilwork::{
    source::register,
    teach::{TrainingUnit, checklist},
};
use std::collections::BTreeSet;

/// Source: `tests/data/teach/sources.csv`.
fn read_elements() -> BTreeSet<(String, String)> {
    let mut rows = csv::Reader::from_reader(&include_bytes!("../data/teach/elements.csv")[..]);
    rows.records().map(|row| row.unwrap()).map(|row| (row[0].to_owned(), row[1].to_owned())).collect()
}

/// `1.2, 1.3` are two elements, `4.1 to 4.7` names its ends.
fn each(element: &str) -> Vec<&str> {
    let numbered = element.starts_with(|sign: char| sign.is_ascii_digit());
    if numbered {
        element.split(", ").flat_map(|part| part.split(" to ")).collect()
    } else {
        element.split(", ").collect()
    }
}

#[test]
fn no_element_is_made_up_and_none_that_was_read_is_left_out() {
    let read = read_elements();
    let list = checklist(&[]);
    let named: BTreeSet<(String, String)> = list
        .points
        .iter()
        .flat_map(|point| &point.answers)
        .flat_map(|one| each(one.element).into_iter().map(|element| (one.unit.code().to_owned(), element.to_owned())))
        .collect();
    assert_eq!(named.difference(&read).collect::<Vec<_>>(), Vec::<&(String, String)>::new());
    assert_eq!(read.difference(&named).collect::<Vec<_>>(), Vec::<&(String, String)>::new());
}

#[test]
fn a_unit_has_its_own_points_and_no_others() {
    for unit in TrainingUnit::ALL {
        let list = checklist(&[*unit]);
        assert!(!list.points.is_empty() && list.units == [*unit], "{unit}");
        assert!(
            list.points
                .iter()
                .all(|point| !point.answers.is_empty() && point.answers.iter().all(|one| one.unit == *unit))
        );
        assert!(list.points.iter().zip(1..).all(|(point, number)| point.number == number));
        assert!(register().any(|citation| citation.id == unit.citation().id), "{unit}");
    }
}

#[test]
fn every_form_holds_every_point() {
    let list = checklist(&[]);
    let (text, page, table) = (list.text(), list.html(), list.csv());
    let words = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for point in &list.points {
        for held in [point.watch_for, point.evidence] {
            assert!(words.contains(held) && page.contains(held) && table.contains(held), "{held}");
        }
    }
    assert_eq!(page.matches("type=\"checkbox\"").count(), list.points.len());
    assert_eq!(text.matches("[ ]").count(), list.points.len());
    assert_eq!(table.lines().count(), 1 + list.points.iter().map(|point| point.answers.len()).sum::<usize>());
    assert!(text.lines().all(|line| line.chars().count() <= 80));
    for form in [text, page] {
        assert!(form.contains("a unit may ask") && !form.contains("safe"), "{form}");
    }
}

/// Every stage that has a point has its heading, once: in capitals on paper, with a capital on the page.
#[test]
fn every_stage_has_its_heading() {
    let list = checklist(&[]);
    let (text, page) = (list.text(), list.html());
    let stages: BTreeSet<String> = list.points.iter().map(|point| point.stage.to_string()).collect();
    assert!(stages.len() > 2);
    for stage in stages {
        let capital = stage[..1].to_uppercase() + &stage[1..];
        assert_eq!(page.matches(&format!("<h2>{capital}</h2>")).count(), 1, "{capital}");
        assert_eq!(text.lines().filter(|line| *line == stage.to_uppercase()).count(), 1, "{stage}");
    }
    for point in &list.points {
        for one in &point.answers {
            assert!(page.contains(&format!("{} {}", one.unit, one.element)), "{}", point.number);
        }
    }
}
