//! Workbooks out of the commands, and lists in .xlsx back in, with errors that name sheet and cell.

use super::{fine, foilwork};
use rust_xlsxwriter::Workbook;
use std::{fs, path::Path};
use tempfile::TempDir;

fn said(args: &[&str]) -> (Option<i32>, String, String) {
    let output = foilwork(args);
    let text = |bytes| String::from_utf8(bytes).unwrap();
    (output.status.code(), text(output.stdout), text(output.stderr))
}

/// A workbook with one sheet; what reads as a number is one.
fn book(path: &Path, sheet: &str, rows: &[&[&str]]) {
    let mut book = Workbook::new();
    let page = book.add_worksheet().set_name(sheet).unwrap();
    for (row, fields) in (0..).zip(rows) {
        for (column, field) in (0..).zip(*fields) {
            match field.parse::<f64>() {
                Ok(number) => page.write_number(row, column, number).unwrap(),
                Err(_) => page.write_string(row, column, *field).unwrap(),
            };
        }
    }
    book.save(path).unwrap();
}

#[test]
fn every_table_goes_into_a_workbook() {
    let folder = TempDir::new().unwrap();
    let path = folder.path().join("book.xlsx");
    let path = path.to_str().unwrap();
    let shop = ["--shop", "juniper_and_tide.toml"];
    let commands: [&[&str]; 5] = [
        &["table", "--stocks", "12, 9 % w/w", "--targets", "6, 3 % w/w", "--total", "60"],
        &["scale", "30 g J7-mist + 60 g 6%", "--factor", "0.5"],
        &["plan", "soft-gradient.toml"],
        &["cost", "juniper_and_tide_services.csv", shop[0], shop[1]],
        &["worksheet", "--half", "problems"],
    ];
    for command in commands {
        let told = fine(&[command, &["--xlsx", path]].concat());
        assert_eq!(told, format!("workbook in {path}\n"));
        assert!(fs::read(path).unwrap().starts_with(b"PK"), "{command:?}");
        fs::remove_file(path).unwrap();
    }
    let (status, out, complaint) = said(&["worksheet", "--xlsx", "/nowhere/at/all.xlsx"]);
    assert_eq!((status, out.as_str()), (Some(2), ""));
    assert!(complaint.contains("cannot write /nowhere/at/all.xlsx: there is no such folder"), "{complaint}");
}

#[test]
fn a_list_may_be_a_workbook() {
    let folder = TempDir::new().unwrap();
    let path = folder.path().join("list.xlsx");
    let name = path.to_str().unwrap();
    let csv =
        fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/juniper_and_tide_services.csv")).unwrap();
    let rows: Vec<Vec<&str>> = csv.lines().map(|line| line.split(',').collect()).collect();
    let rows: Vec<&[&str]> = rows.iter().map(Vec::as_slice).collect();
    book(&path, "Services", &rows);
    let shop = ["--shop", "juniper_and_tide.toml", "--csv"];
    let from_text = fine(&[&["cost", "juniper_and_tide_services.csv"], &shop[..]].concat());
    assert_eq!(fine(&[&["cost", name], &shop[..]].concat()), from_text);

    book(
        &path,
        "My list",
        &[
            &["service", "hands_on_min", "chair_min"],
            &["toner", "15", "40"],
            &["", "", ""],
            &["gloss", "fifteen", "40"],
            &["cut", "15", ""],
        ],
    );
    let (status, _, complaint) = said(&["cost", name, "--shop", "juniper_and_tide.toml"]);
    assert_eq!(status, Some(2));
    assert!(complaint.contains("list.xlsx: sheet My list, cell B4: hands_on_min: number \"fifteen\""), "{complaint}");
    assert!(complaint.contains("list.xlsx: sheet My list, cell C5: chair_min: is missing"), "{complaint}");

    fs::write(&path, b"PK\x03\x04 and no more").unwrap();
    let (status, _, complaint) = said(&["cost", name, "--shop", "juniper_and_tide.toml"]);
    assert_eq!(status, Some(2));
    assert!(complaint.contains("it cannot be read as a workbook"), "{complaint}");
}

#[test]
fn a_workbook_is_filled_like_a_table() {
    let folder = TempDir::new().unwrap();
    let path = folder.path().join("bottles.xlsx");
    let output = folder.path().join("out.csv");
    let (name, output) = (path.to_str().unwrap(), output.to_str().unwrap());
    let fill = |more: &[&str]| {
        let rule = ["fill", "dilute", name, "--stock", "12", "--target", "wanted", "--total", "60", "--output", output];
        said(&[&rule, more].concat())
    };
    book(&path, "Bottles", &[&["bottle", "wanted"], &["a", "3"], &["b", "6"]]);
    assert_eq!(fill(&[]).0, Some(0));
    // Worked by hand: 60 x 3 / 12, 60 x 6 / 12.
    assert_eq!(fs::read_to_string(output).unwrap(), "bottle,wanted,stock_g,diluent_g\na,3,15,45\nb,6,30,30\n");
    book(&path, "Bottles", &[&["bottle", "wanted"], &["a", "three"], &["b", "14"]]);
    let (status, _, complaint) = fill(&[]);
    assert_eq!(status, Some(2));
    assert!(complaint.contains("sheet Bottles, cell B2: "), "{complaint}");
    assert!(complaint.contains("sheet Bottles, row 3: cannot reach 14 % w/w"), "{complaint}");
}

#[test]
fn refused_rows_stand_where_they_stand_in_the_sheet() {
    let folder = TempDir::new().unwrap();
    let place = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    let (name, output, apart) = (place("bottles.xlsx"), place("out.csv"), place("apart.csv"));
    // The table begins in the third row.
    let rows: [&[&str]; 5] = [&["", ""], &["", ""], &["bottle", "wanted"], &["a", "three"], &["b", "14"]];
    book(Path::new(&name), "Bottles", &rows);
    let to = ["--output", &output, "--refused", &apart];
    let rule = ["fill", "dilute", &name, "--stock", "12", "--target", "wanted", "--total", "60"];
    let told = fine(&[&rule[..], &to[..]].concat());
    assert!(told.contains("sheet Bottles, cell B4: \"three\""), "{told}");
    assert!(told.contains("sheet Bottles, row 5: cannot reach"), "{told}");
    let apart = fs::read_to_string(&apart).unwrap();
    let lines: Vec<&str> = apart.lines().collect();
    assert_eq!((lines.len(), lines[0]), (3, "line,reason,bottle,wanted"), "{apart}");
    assert!(lines[1].starts_with("4,\"cell B4: "), "{apart}");
    assert!(lines[2].starts_with("5,\"cannot reach"), "{apart}");
}

#[test]
fn a_blocked_plan_says_so_where_its_workbook_is_made() {
    let folder = TempDir::new().unwrap();
    let [file, path] = ["over.toml", "over.xlsx"].map(|name| folder.path().join(name).to_str().unwrap().to_owned());
    let text = fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/grey-blend.toml")).unwrap();
    fs::write(&file, text.replace("result = \"clear\"", "result = \"reaction\"")).unwrap();
    let (status, out, _) = said(&["plan", &file, "--xlsx", &path]);
    assert_eq!(status, Some(1));
    let banner = "*** DO NOT BEGIN: 1 finding says STOP. Resolve it first. ***";
    assert_eq!(out, format!("{banner}\nworkbook in {path}\n"));
    let (status, _, complaint) = said(&["plan", &file, "--xlsx", &place_of(&path, "txt")]);
    assert_eq!(status, Some(2));
    assert!(complaint.contains("does not end in .xlsx"), "{complaint}");
    let (status, _, complaint) = said(&["plan", &file, "--xlsx", &path, "--trail"]);
    assert_eq!(status, Some(2));
    assert!(complaint.contains("cannot be used with"), "{complaint}");
}

fn place_of(path: &str, ending: &str) -> String {
    Path::new(path).with_extension(ending).to_string_lossy().into_owned()
}
