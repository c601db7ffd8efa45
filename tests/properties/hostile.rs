//! Hostile text: every reader, and the whole way from a text to sheets and pages, on examples that were cut, doubled,
//! swapped and filled with what nobody would write. Nothing may panic, and what was read reads the same when written.
//!
//! `FOILWORK_TRIALS=100000 cargo test --release --features cli --test integration hostile` tries more.

use foilwork::{
    business, colour, history, lift, limits, mix, money, peroxide,
    reader::Format,
    record,
    service::{self, ServiceFile},
    sheet, shop,
};
use std::{
    collections::BTreeSet,
    fs,
    panic::{AssertUnwindSafe, catch_unwind},
    path::Path,
};

pub(crate) mod changed;
mod shown;

use changed::{Dice, changed, words};
use shown::show_everything;

pub(crate) fn trials(usual: u64) -> u64 {
    let asked = std::env::var("FOILWORK_TRIALS").ok().and_then(|count| count.parse().ok());
    asked.map_or(usual, |count: u64| count.max(usual))
}

fn texts(folder: &str, endings: &[&str]) -> Vec<String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let mut paths: Vec<_> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    let wanted = |path: &&std::path::PathBuf| {
        let name = path.file_name().unwrap().to_string_lossy();
        endings.iter().any(|ending| name.ends_with(ending)) && !name.contains("schema")
    };
    paths.iter().filter(wanted).map(|path| fs::read_to_string(path).unwrap()).collect()
}

fn vocabulary(seeds: &[String]) -> Vec<String> {
    let all: BTreeSet<&str> =
        seeds.iter().flat_map(|text| words(text).into_iter().map(move |(start, end)| &text[start..end])).collect();
    all.into_iter().map(str::to_owned).collect()
}

/// Runs `read` on so many changed texts and says which one panicked. Gives how many were accepted.
fn hunt(seeds: &[String], usual: u64, read: impl Fn(&str) -> bool) -> u64 {
    let vocabulary = vocabulary(seeds);
    let mut accepted = 0;
    for trial in 0..trials(usual) {
        let mut dice = Dice(trial);
        let text = changed(dice.pick::<String>(seeds), &vocabulary, &mut dice);
        let outcome = catch_unwind(AssertUnwindSafe(|| read(&text)));
        accepted += u64::from(outcome.unwrap_or_else(|_| panic!("trial {trial} panics on {text:?}")));
    }
    accepted
}

/// Everything that is made of a plan.
fn look_at(file: &ServiceFile) -> bool {
    let Ok(plan) = service::plan(file) else { return false };
    show_everything(&plan);
    true
}

/// A consultation makes many plans, so fewer are made: of each text that can be planned, and what is said of it.
fn consulted(file: &ServiceFile) -> bool {
    let Ok(found) = service::consult(file, &service::Evidence::default()) else { return false };
    let shown = [sheet::consultation_sheet(&found), sheet::agreement_page(&found)];
    assert!(shown.iter().all(|text| !text.contains("NaN")), "not-a-number on a sheet");
    true
}

fn service_hunt(endings: &[&str], format: Format) {
    // What is valid comes up as often as all that is broken already.
    let valid: Vec<String> = texts("examples", endings).into_iter().filter(|text| text.contains("section")).collect();
    let broken = texts("examples/broken", endings);
    let times = broken.len() / valid.len();
    let services: Vec<String> =
        broken.into_iter().chain(valid.iter().cycle().take(valid.len() * times).cloned()).collect();
    let shop = shop::parse_shop(&fs::read_to_string("examples/juniper_and_tide.toml").unwrap(), Format::Toml).unwrap();
    let accepted = hunt(&services, 200, |text| {
        let alone = service::parse(text, format);
        let Ok(file) = alone.or_else(|_| service::parse_with_shop(text, format, &shop)) else { return false };
        // The same file in the other language is the same file.
        let json = serde_json::to_string(&file).unwrap();
        assert_eq!(service::parse(&json, Format::Json).as_ref(), Ok(&file), "another file as JSON");
        look_at(&file)
    });
    assert!(accepted > trials(400) / 50, "hardly any text was accepted: {accepted}");
}

#[test]
fn no_service_file_in_toml_panics() {
    service_hunt(&[".toml"], Format::Toml);
}

#[test]
fn no_consultation_panics() {
    let services: Vec<String> = texts("examples", &["soft-gradient.toml", "grey-blend.toml", "staged-lightening.toml"]);
    let accepted = hunt(&services, 12, |text| service::parse(text, Format::Toml).is_ok_and(|file| consulted(&file)));
    assert!(accepted > 0, "hardly any text was accepted: {accepted}");
}

#[test]
fn no_service_file_in_json_panics() {
    service_hunt(&[".json"], Format::Json);
}

#[test]
fn no_shop_or_list_panics() {
    let euro = money::Currency::from_code("EUR").unwrap();
    let shops = texts("examples", &["juniper_and_tide.toml"]);
    let accepted =
        hunt(&shops, 300, |text| shop::parse_shop(text, Format::Toml).is_ok_and(|file| shop::Shop::new(&file).is_ok()));
    assert!(accepted > 0);
    let lists = texts("examples", &["services.csv"]);
    assert!(hunt(&lists, 700, |text| business::list::parse_csv(text, euro).is_ok()) > 0);
    let lists = texts("examples", &["services.json"]);
    assert!(hunt(&lists, 700, |text| business::list::parse_json(text, euro).is_ok()) > 0);
    hunt(&texts("examples", &["quote.csv"]), 700, |text| business::read_cost_ranges(text, euro).is_ok());
}

#[test]
fn no_table_book_or_log_panics() {
    let limits = texts("src/limits/data", &["limits.csv"]);
    let few: Vec<String> = limits.iter().map(|text| text.lines().take(12).collect::<Vec<_>>().join("\n")).collect();
    assert!(
        hunt(&few, 800, |text| limits::Table::from_csv("house", text)
            .is_ok_and(|table| !table.listing().to_string().is_empty()))
            > 0
    );
    let books = texts("examples", &["strands.csv"]);
    let accepted = hunt(&books, 800, |text| {
        let book = lift::read_strand_book(text);
        let again: String = book.readings.iter().map(|reading| lift::strand_line(Some(reading))).collect();
        assert_eq!(lift::read_strand_book(&(lift::strand_line(None) + &again)).readings, book.readings);
        !book.readings.is_empty()
    });
    assert!(accepted > 0);
    let logs = texts("examples", &[".jsonl"]);
    let accepted = hunt(&logs, 800, |text| {
        let log = record::read_log(text);
        let again: String = log.entries.iter().map(record::log_line).collect();
        assert_eq!(record::read_log(&again).entries, log.entries);
        let told = record::instructions(&record::replay(&log.entries));
        assert!(told.iter().all(|instruction| !instruction.text.is_empty()));
        !log.entries.is_empty()
    });
    assert!(accepted > 0);
}

/// What is kept of services: lines and tables, which write what they read, and all that is summed up from them.
#[test]
fn no_kept_record_panics() {
    let looked = |kept: history::KeptRecords| {
        let again: String = kept.records.iter().map(history::record_line).collect();
        assert_eq!(history::read_records(&again).records, kept.records);
        let _ = (history::lessons(&kept.records), history::strand_readings(&kept.records));
        let _ = history::GroupBy::ALL.iter().map(|by| history::summarise(&kept.records, *by)).collect::<Vec<_>>();
        !kept.records.is_empty()
    };
    let lines = texts("examples", &["_records.jsonl"]);
    assert!(hunt(&lines, 300, |text| looked(history::read_records(text))) > 50);
    let tables: Vec<String> =
        lines.iter().map(|text| history::records_csv(&history::read_records(text).records)).collect();
    assert!(hunt(&tables, 300, |text| looked(history::read_records_csv(text))) > 50);
}

/// What is printed reads back as the same.
#[test]
fn no_short_text_panics() {
    fn reads_back<T: std::str::FromStr + ToString + PartialEq + std::fmt::Debug>(text: &str) -> bool {
        let Ok(value) = text.parse::<T>() else { return false };
        assert_eq!(value.to_string().parse::<T>().ok().as_ref(), Some(&value), "{text:?} is printed otherwise");
        true
    }
    let seeds: Vec<String> = [
        "30 g Foam Line powder + 60 g developer 6",
        "1:1.5",
        "6 % w/w",
        "20 volumes",
        "35.50 EUR",
        "6.5",
        "7/3",
        "pale yellow",
        "#aabbcc",
        "7722-84-1",
        "30 ml water + 1:2 + 5 %",
        "L* 60 a* 10 b* 30",
    ]
    .map(str::to_owned)
    .to_vec();
    let accepted = hunt(&seeds, 6_000, |text| {
        let euro = money::Currency::from_code("EUR").unwrap();
        let _ = money::Money::parse(text, euro);
        let _ = text.parse::<mix::Cas>();
        let _ = text.parse::<colour::SeenPigment>();
        let _ = text.parse::<colour::Lab>();
        let read = [
            reads_back::<mix::Recipe>(text),
            reads_back::<mix::Ratio>(text),
            reads_back::<peroxide::StatedStrength>(text),
            reads_back::<colour::Level>(text),
        ];
        read.contains(&true)
    });
    assert!(accepted > 100, "{accepted}");
}
