//! The command line beside `plan`: each command as a program of its own, on numbers worked by hand or published.

mod chart;
mod checklist;
mod choose;
mod colour;
mod doors;
mod faults;
mod files;
mod fill;
mod fill_cells;
mod foils;
mod hair;
mod head;
mod help;
mod hostile;
mod journeys;
mod lift;
mod mix;
mod money;
mod noting;
mod peroxide;
mod refusals;
mod sources;
mod workbook;
mod worksheet;

use super::common::near;
use serde_json::Value;
use std::process::{Command, Output};

/// Runs the built program in the folder of the examples.
fn foilwork(args: &[&str]) -> Output {
    let examples = concat!(env!("CARGO_MANIFEST_DIR"), "/examples");
    Command::new(env!("CARGO_BIN_EXE_foilwork")).current_dir(examples).args(args).output().unwrap()
}

/// What it prints when all is fine.
fn fine(args: &[&str]) -> String {
    let output = foilwork(args);
    let complaint = String::from_utf8(output.stderr).unwrap();
    assert_eq!((output.status.code(), complaint.as_str()), (Some(0), ""), "{args:?}");
    String::from_utf8(output.stdout).unwrap()
}

/// The same as data.
fn data(args: &[&str]) -> Value {
    serde_json::from_str(&fine(&[args, &["--json"]].concat())).unwrap()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

/// One run of every command that prints text, with the longest sensible texts.
const EVERY: [&[&str]; 33] = [
    &["convert", "6 % w/w"],
    &[
        "foils",
        "--width",
        "12",
        "--height",
        "15",
        "--length",
        "43.5",
        "--technique",
        "freehand-in-foil",
        "--foil-width",
        "4",
    ],
    &[
        "hair",
        "--length",
        "23.5",
        "--share",
        "37.5",
        "--girth",
        "9.5",
        "--age",
        "50",
        "--white",
        "the two sides=27:60/100",
    ],
    &["convert", "30 % w/w", "--cream", "--molar-volume", "real-1bar", "--temperature", "35.5"],
    &["convert", "40 vol label", "--cream"],
    &["dilute", "--stock", "12 % w/w", "--target", "4.5 % w/w", "--total", "80"],
    &["dilute", "--stock", "40 vol label", "--with", "10 vol label", "--target", "5 % w/w", "--total", "77"],
    &["table", "--stocks", "12, 9, 6, 3 % w/w", "--targets", "7.25, 1.95, 0 % w/w", "--total", "12345.6"],
    &["titrate", "--titrant", "0.02 mol/L", "--aliquot", "10+-0.02", "--titre", "12.0", "--cream"],
    &["titrate", "--titrant", "0.1+-0.001 N", "--aliquot", "10", "--expect", "40 vol label"],
    &[
        "blend",
        "--stock",
        "12 % w/w",
        "--stock",
        "20 vol label",
        "--stock",
        "water=0 % w/w",
        "--target",
        "5 % w/w",
        "--total",
        "100",
    ],
    &["scale", "30 g J7-mist + 15 g J8-oat + 67.5 g 6%", "--part", "J7-mist=61.3"],
    &["level", "--natural", "5.5", "--target", "11", "--applied", "7.5"],
    &["level", "--natural", "6", "--target", "8", "--coloured", "--twelve"],
    &["level", "--natural", "7", "--target", "5"],
    &[
        "lift",
        "--from",
        "4.5",
        "--target",
        "9",
        "--on-hair",
        "4 % w/w",
        "--booster",
        "mild",
        "--uptake",
        "high",
        "--seen",
        "20=5",
    ],
    &["swatch", "6.5"],
    &["swatch", "12", "--from", "1"],
    &["swatch", "7.5", "--tone", "yellow-orange, red-violet, blue-green"],
    &[
        "toner",
        "juniper_and_tide.toml",
        "--natural",
        "5",
        "--lifted",
        "9",
        "--target",
        "8",
        "--tone",
        "violet",
        "--most-shades",
        "3",
        "--porous",
    ],
    &["toner", "juniper_and_tide.toml", "--natural", "5.5", "--lifted", "9.5", "--target", "9"],
    &["limits", "-j", "EU"],
    &["limits", "-j", "US"],
    &["price", "--cost", "61.20", "--currency", "EUR", "--margin", "40", "--tax", "21"],
    &["price", "--cost", "9999999.99", "--currency", "EUR", "--markup", "99.5"],
    &["cost", "juniper_and_tide_services.csv", "--shop", "juniper_and_tide.toml"],
    &["business", "quote", "juniper_and_tide_quote.csv", "--shop", "juniper_and_tide.toml"],
    &[
        "business",
        "reorder",
        "--on-hand",
        "123456.5 mL",
        "--daily",
        "120 mL",
        "--pack",
        "500 mL",
        "--lead-days",
        "5",
        "--cover-days",
        "14",
    ],
    &["business", "rent", "--takings", "9999999", "--rent", "2000", "--wage", "480000", "--currency", "EUR"],
    &["price", "--cost", "99999.99", "--price", "9999999.99", "--currency", "EUR", "--discount", "97.5"],
    &["worksheet", "--count", "60", "--choices"],
    &["checklist"],
    &["sources"],
];
