//! Kept records: what a line leaves out, what two lines of one service come to, and what nobody is forgotten for.

use foilwork::history::{GroupBy, KeptRecord, KeptSection, forget, lessons, read_records, record_line, summarise};
use foilwork::service::shape::Elasticity;

fn record(fields: &str) -> KeptRecord {
    let read = read_records(&format!("{{\"format\":1,\"on\":\"2026-01-05\",\"title\":\"gloss\"{fields}}}\n"));
    assert!(read.problems.is_empty(), "{:?}", read.problems);
    read.records.into_iter().next().unwrap()
}

/// What is not known is left out, in the record and in each of its sections; an empty list is no word either.
#[test]
fn a_line_says_only_what_is_known() {
    assert_eq!(record_line(&record("")), "{\"format\":1,\"on\":\"2026-01-05\",\"title\":\"gloss\"}\n");
    let nape = KeptSection { name: "nape".to_owned(), weighed_g: Some(30.5), ..KeptSection::default() };
    let line = record_line(&KeptRecord { section: vec![nape], ..record("") });
    assert!(line.contains("\"section\":[{\"name\":\"nape\",\"weighed_g\":30.5}]"), "{line}");
    assert!(!line.contains("null") && !line.contains("[]"), "{line}");
    // All that was weighed may be left over, and no more.
    let left = |left: f64| {
        let line = format!(
            "{{\"format\":1,\"on\":\"2026-01-05\",\"title\":\"a\",\"section\":[{{\"name\":\"b\",\"weighed_g\":40,\"left_over_g\":{left}}}]}}\n"
        );
        read_records(&line).problems.len()
    };
    assert_eq!([left(39.0), left(40.0), left(40.1)], [0, 0, 1]);
}

/// Of a service that was kept twice the later line counts, with what went wrong by the earlier one, each thing once: of "a", "b" and "c" the later
/// line knows "b".
#[test]
fn what_went_wrong_is_not_lost_with_an_earlier_line() {
    let of = |incident: &[&str]| {
        let list: Vec<String> = incident.iter().map(|one| format!("\"{one}\"")).collect();
        record(&format!(",\"guest\":\"J-1\",\"incident\":[{}]", list.join(",")))
    };
    let incidents = |records: &[KeptRecord]| summarise(records, GroupBy::All)[0].incidents;
    assert_eq!(incidents(&[of(&["a", "b", "c"]), of(&["b"])]), 3);
    assert_eq!(incidents(&[of(&["b"]), of(&["a", "b", "c"])]), 3);
    assert_eq!(incidents(&[of(&["b"]), of(&["b"])]), 1);
    // Sections of one name are one, whichever line says more of the strand; those of other names stay what they are.
    let with = |name: &str, elasticity: Elasticity| KeptRecord {
        section: vec![KeptSection { name: name.to_owned(), elasticity: Some(elasticity), ..KeptSection::default() }],
        ..of(&["x"])
    };
    let foils = |records: &[KeptRecord]| summarise(records, GroupBy::All)[0].services;
    assert_eq!(foils(&[with("nape", Elasticity::Poor), with("crown", Elasticity::Good)]), 1);
}

/// Nobody is forgotten by an empty code, and whose line cannot be read is named where the code stands in it.
#[test]
fn nobody_is_forgotten_for_an_empty_code() {
    let file =
        "{\"guest\":\"J-1\",\"format\":1}\n{\"guest\":\"\",\"format\":1}\n{\"format\":1}\n{\"guest\":\"J-1\",\"for\n";
    for empty in ["", "  "] {
        let found = forget(file.as_bytes(), empty);
        assert_eq!((found.kept.as_slice(), found.removed.len(), found.unsure.len()), (file.as_bytes(), 0, 0));
    }
    let found = forget(file.as_bytes(), " J-1 ");
    let kept = file.split_once('\n').unwrap().1;
    assert_eq!((found.kept.as_slice(), found.removed, found.unsure), (kept.as_bytes(), vec![1], vec![4]));
    let other = forget(file.as_bytes(), "J-2");
    assert_eq!((other.kept.as_slice(), other.removed.len(), other.unsure.len()), (file.as_bytes(), 0, 0));
}

/// By hand: 10 % on each of three days neither rise nor fall, without any doubt about it.
#[test]
fn waste_that_stays_neither_rises_nor_falls() {
    let on = |day: &str| {
        let section = KeptSection {
            name: "nape".to_owned(),
            weighed_g: Some(100.0),
            left_over_g: Some(10.0),
            ..KeptSection::default()
        };
        KeptRecord { on: day.to_owned(), section: vec![section], ..record("") }
    };
    let found = lessons(&["2026-01-01", "2026-01-31", "2026-03-02"].map(on)).waste.unwrap();
    assert_eq!(found.change_percent_points, Some(0.0));
    assert_eq!(found.text, "whether waste rises or falls cannot be told yet; 10 % of what was weighed was left over");
}
