//! How long a section takes to put on: stated, or its foils times the minutes for one. Every sum is done by hand.

use super::base::{changed, fine, near, only_lightener, texts, verdicts};
use foilwork::{
    finding::Verdict::{NotJudged, Note},
    quantity::Duration,
    reader::Format,
    service::{AppliedBy, Applying, Evidence, FoilPace, Plan, ServiceFile, parse, plan, plan_with},
    source::{Basis, Interval},
};

fn minutes(time: Interval<Duration>) -> [f64; 3] {
    time.to_array().map(Duration::min)
}

/// Ten foils, whose minutes are not stated.
fn ten_foils(change: impl Fn(&mut ServiceFile)) -> ServiceFile {
    let mut file = only_lightener();
    (file.section[0].apply_min, file.section[0].foils) = (None, Some(10));
    change(&mut file);
    file
}

fn of(plan: &Plan) -> &Applying {
    &plan.head.sections[0].applying
}

/// Refused, with the field and the words.
fn refused(file: &ServiceFile) -> String {
    plan(file).unwrap_err().to_string()
}

#[test]
fn a_section_takes_its_foils_times_its_own_minutes() {
    let plan = plan(&ten_foils(|file| {
        file.section[0].foil_min = Some(1.5);
        file.salon.foil_min = Some(3.0);
    }))
    .unwrap();
    assert_eq!(
        (minutes(of(&plan).time), of(&plan).by, of(&plan).basis),
        ([15.0; 3], AppliedBy::Section, Basis::Stated)
    );
    near(plan.order[0].applied.min() - plan.order[0].begin.min(), 15.0, 1e-9);
    let used = plan.defaults.iter().find(|one| one.field == "section[1].apply_min").unwrap();
    assert_eq!((used.value.to_string().as_str(), used.basis), ("15 min", Basis::Stated));
    assert!(plan.to_string().contains("put on in 15 min by its own `foil_min`"), "{plan}");
}

/// Measured before stated, stated before assumed; without any 10 foils at 1.3 min (0.8 to 2.2).
#[test]
fn minutes_for_a_foil_come_from_records_then_the_salon_then_an_assumption() {
    let file = ten_foils(|file| file.salon.foil_min = Some(2.0));
    let salon = plan(&file).unwrap();
    assert_eq!((minutes(of(&salon).time), of(&salon).by), ([20.0; 3], AppliedBy::Salon));
    let foil = Interval::ordered(1.0, 1.2, 1.4).map(|min| Duration::from_min(min).unwrap());
    let evidence = Evidence { foil_pace: Some(FoilPace { foil, sections: 5 }), ..Evidence::default() };
    let records = plan_with(&file, &evidence).unwrap();
    assert_eq!((of(&records).by, of(&records).basis), (AppliedBy::Records, Basis::Measured));
    minutes(of(&records).time).into_iter().zip([10.0, 12.0, 14.0]).for_each(|(got, want)| near(got, want, 1e-9));
    near(records.order[0].applied.min() - records.order[0].begin.min(), 12.0, 1e-9);
    let assumed = plan(&ten_foils(|_| ())).unwrap();
    assert_eq!((of(&assumed).by, of(&assumed).basis), (AppliedBy::Assumed, Basis::Assumed));
    minutes(of(&assumed).time).into_iter().zip([8.0, 13.0, 22.0]).for_each(|(got, want)| near(got, want, 1e-9));
}

/// Ten foils at 1.5 min are 15 min, and 20 are stated for the same section.
#[test]
fn two_times_of_one_section_are_refused_by_both_fields() {
    let both =
        |apply: f64| ten_foils(|file| (file.section[0].apply_min, file.section[0].foil_min) = (Some(apply), Some(1.5)));
    let told = refused(&both(20.0));
    let words =
        "section[1].apply_min: is 20 min, but by `foil_min` (1.5 min a foil) the foils of this section take 15 min";
    assert!(told.contains(words), "{told}");
    assert!(plan(&both(15.0)).is_ok());
}

/// The salon's 2 min make 20 of ten foils, and 30 are stated: the section's own counts, and both are named.
#[test]
fn a_stated_time_wins_over_the_salon_and_is_named_beside_it() {
    let told = |apply: f64| {
        let file = ten_foils(|file| {
            file.section[0].apply_min = Some(apply);
            file.salon.foil_min = Some(2.0);
        });
        plan(&file).unwrap()
    };
    let plan = told(30.0);
    assert_eq!((minutes(of(&plan).time), of(&plan).by), ([30.0; 3], AppliedBy::Stated));
    assert_eq!(verdicts(&plan, "pace"), [Note]);
    let said = texts(&plan, "pace");
    assert!(
        said.contains("by `section[1].apply_min` it takes 30 min, by `salon.foil_min` (2 min a foil) 20 min"),
        "{said}"
    );
    assert!(verdicts(&told(20.0), "pace").is_empty());
    // What is assumed contradicts nobody.
    let file = ten_foils(|file| file.section[0].apply_min = Some(60.0));
    assert!(verdicts(&super::base::changed(file, |_| ()), "pace").is_empty());
}

#[test]
fn without_foils_or_minutes_nothing_is_made_up() {
    let told = refused(&ten_foils(|file| file.section[0].foils = None));
    assert!(told.contains("section[1].apply_min: missing: give it, or `foils` or a `panel`"), "{told}");
    let told = refused(&ten_foils(|file| {
        (file.section[0].foils, file.section[0].foil_min) = (None, Some(1.5));
    }));
    assert!(told.contains("section[1].foil_min: no foils are counted here"), "{told}");
    // 400 foils at 15 min.
    let told = refused(&ten_foils(|file| (file.section[0].foils, file.section[0].foil_min) = (Some(400), Some(15.0))));
    assert!(
        told.contains("its foils would take 6000 min, a section takes 240 min at most: split the section"),
        "{told}"
    );
}

#[test]
fn records_that_are_named_and_not_read_are_told() {
    let plan = plan(&ten_foils(|file| file.records = Some("kept.jsonl".to_owned()))).unwrap();
    assert_eq!(verdicts(&plan, "pace"), [NotJudged]);
    assert!(texts(&plan, "pace").starts_with("kept.jsonl was not read"));
    assert!(verdicts(&changed(fine(), |file| file.records = Some("kept.jsonl".to_owned())), "pace").is_empty());
}

#[test]
fn the_path_of_the_records_is_read_with_the_colourist() {
    let text = "{\"records\": \"kept.jsonl\", \"service\": {}}";
    assert_eq!(foilwork::service::records_named(text, Format::Json), Some(("kept.jsonl".to_owned(), None)));
    assert!(parse(text, Format::Json).is_err());
    // The one who works is named in the service, not beside it.
    let text = "records = \"kept.jsonl\"\ncolourist = \"nobody\"\n[service]\ncolourist = \"W.\"";
    let named = Some(("kept.jsonl".to_owned(), Some("W.".to_owned())));
    assert_eq!(foilwork::service::records_named(text, Format::Toml), named);
}

/// Two sections of ten foils in 9 and 16 min are 1.2 min a foil, the geometric mean of 0.9 and 1.6: the nape's 12 take 14.4 min. Of records that
/// name another colourist or nobody, nothing is taken.
#[test]
fn the_command_reads_the_records_of_the_colourist_who_is_named() {
    let folder = tempfile::tempdir().unwrap();
    let example = std::fs::read_to_string("examples/soft-gradient.toml").unwrap();
    let (apply, format) = ("foils = 12\napply_min = 18", "\nformat = 1\n");
    assert!(example.contains(apply) && example.contains(format));
    let told = |by: Option<&str>| {
        let by = by.map(|name| format!("\"colourist\":\"{name}\",")).unwrap_or_default();
        let line = |min: u32| {
            format!(
                "{{\"format\":1,\"on\":\"2026-10-25\",\"title\":\"foils\",{by}\"section\":[{{\"name\":\"nape\",\"foils\":10,\
                 \"apply_min\":{min}}}]}}\n"
            )
        };
        // Records that name nobody are nobody's own.
        let kept = foilwork::history::read_records(&(line(9) + &line(16))).records;
        assert!(kept.len() == 2 && foilwork::history::foil_pace(&kept, None).is_none());
        std::fs::write(folder.path().join("kept.jsonl"), line(9) + &line(16)).unwrap();
        let text =
            example.replacen(apply, "foils = 12", 1).replacen(format, "\nformat = 1\nrecords = \"kept.jsonl\"\n", 1);
        let file = folder.path().join("service.toml");
        std::fs::write(&file, &text).unwrap();
        let run = std::process::Command::new(env!("CARGO_BIN_EXE_foilwork"))
            .args(["plan", file.to_str().unwrap(), "--json"])
            .output()
            .unwrap();
        assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
        let plan: serde_json::Value = serde_json::from_slice(&run.stdout).unwrap();
        let applying = &plan["head"]["sections"][0]["applying"];
        (applying["by"].as_str().unwrap().to_owned(), applying["apply_min"]["best"].as_f64().unwrap())
    };
    let (by, min) = told(Some("W."));
    assert_eq!(by, "records");
    near(min, 14.4, 1e-6);
    assert_eq!(told(Some("M.")).0, "assumed");
    assert_eq!(told(None).0, "assumed");
}
