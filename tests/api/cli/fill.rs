//! A table of any length, filled row by row: every row is done, or kept apart with its reason, or nothing is written.

use super::foilwork;
use foilwork::{
    peroxide::{Conditions, Strength, StrengthUnit, convert, dilute},
    quantity::{Mass, MassFraction},
};
use std::{
    fs,
    io::Write,
    path::Path,
    process::{Command, Output, Stdio},
};
use tempfile::TempDir;

/// The words of `fill dilute` on columns of a table of our own.
fn dilute_file<'a>(table: &'a str, output: &'a str, more: &[&'a str]) -> Vec<&'a str> {
    let words =
        ["fill", "dilute", table, "--stock", "stock", "--target", "target", "--total", "60", "--output", output];
    [&words[..], more].concat()
}

fn written(folder: &Path, name: &str, text: &str) -> String {
    let path = folder.join(name);
    fs::write(&path, text).unwrap();
    path.to_str().unwrap().to_owned()
}

fn in_folder(folder: &TempDir, name: &str) -> String {
    folder.path().join(name).to_str().unwrap().to_owned()
}

fn said(output: &Output) -> (Option<i32>, String, String) {
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
    (output.status.code(), text(&output.stdout), text(&output.stderr))
}

const TABLE: &str = "bottle,stock,target\n\"a, b\",12,3\nno label,,3\nweak,3,6\ncomma,\"12,5\",3\nshort,12\nlast,9,6\n";

#[test]
fn rows_that_cannot_be_are_kept_apart_with_line_and_reason() {
    let folder = TempDir::new().unwrap();
    let table = written(folder.path(), "bottles.csv", TABLE);
    let (output, refused) = (in_folder(&folder, "weighed.csv"), in_folder(&folder, "apart.csv"));
    let (status, out, complaint) = said(&foilwork(&dilute_file(&table, &output, &["--refused", &refused])));
    assert_eq!((status, complaint.as_str()), (Some(0), ""));
    // Worked by hand: 60 x 3 / 12, 60 x 6 / 9.
    let want = "bottle,stock,target,stock_g,diluent_g\n\"a, b\",12,3,15,45\nno label,,3,,\nlast,9,6,40,20\n";
    assert_eq!(fs::read_to_string(&output).unwrap(), want);
    let apart = fs::read_to_string(&refused).unwrap();
    let lines: Vec<&str> = apart.lines().collect();
    assert_eq!(lines[0], "line,reason,bottle,stock,target");
    assert!(lines[1].starts_with("4,\"cannot reach 6 % w/w: the strongest stock is 3 % w/w,"), "{}", lines[1]);
    assert_eq!(lines[2], "5,\"\"\"12,5\"\" is no number (write the point, 12.5)\",comma,\"12,5\",3");
    assert_eq!(lines[3], "6,2 fields where the names are 3,short,12");
    assert_eq!(lines.len(), 4);
    assert!(
        out.starts_with(&format!(
            "3 rows in {output}, 1 of them without a result: a value is missing\n3 rows kept apart in"
        )),
        "{out}"
    );
    assert!(out.contains("\n  line 4: cannot reach"), "{out}");
}

#[test]
fn without_a_place_for_them_nothing_is_written() {
    let folder = TempDir::new().unwrap();
    let table = written(folder.path(), "bottles.csv", TABLE);
    let output = written(folder.path(), "weighed.csv", "what stood here");
    let (status, out, complaint) = said(&foilwork(&dilute_file(&table, &output, &[])));
    assert_eq!((status, out.as_str()), (Some(2), ""));
    assert!(complaint.starts_with("error: line 4: cannot reach 6 % w/w"), "{complaint}");
    assert!(
        complaint.ends_with("error: 3 rows cannot be: mend them, or keep them apart with --refused\n"),
        "{complaint}"
    );
    assert_eq!(fs::read_to_string(&output).unwrap(), "what stood here");
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2, "a part was left behind");
}

/// Fifty thousand rows go through a pipe; each is what the scalar function gives.
#[test]
fn a_long_table_comes_out_row_by_row() {
    let folder = TempDir::new().unwrap();
    let output = in_folder(&folder, "out.csv");
    let words = ["fill", "convert", "-", "--value", "ww", "--from", "% w/w", "--to", "volumes", "--output", &output];
    let mut run = Command::new(env!("CARGO_BIN_EXE_foilwork"))
        .args(words)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut table = String::from("row,ww\n");
    for row in 0..50_000 {
        table.push_str(&format!("{row},{}\n", f64::from(row % 700) / 10.0));
    }
    run.stdin.take().unwrap().write_all(table.as_bytes()).unwrap();
    assert_eq!(run.wait_with_output().unwrap().status.code(), Some(0));
    let text = fs::read_to_string(&output).unwrap();
    let mut lines = text.lines();
    assert_eq!(lines.next(), Some("row,ww,strength_volumes"));
    for (row, line) in lines.by_ref().take(50_000).enumerate() {
        let fields: Vec<&str> = line.split(',').collect();
        let strength = Strength::of(fields[1].parse().unwrap(), StrengthUnit::WwPercent).unwrap();
        let want = convert(strength, StrengthUnit::Volumes, &Conditions::default()).unwrap().number();
        assert_eq!(
            (fields[0], fields[2].parse::<f64>().unwrap().to_bits()),
            (row.to_string().as_str(), want.to_bits())
        );
    }
    assert_eq!(lines.next(), None);
}

#[test]
fn every_rule_fills_its_columns() {
    let folder = TempDir::new().unwrap();
    let table = written(folder.path(), "t.csv", "a;b\n12;3\n");
    let output = in_folder(&folder, "out.csv");
    let fill = |words: &[&str]| {
        let all = [&["fill", words[0], &table, "--separator", ";", "--output", &output], &words[1..]].concat();
        assert_eq!(foilwork(&all).status.code(), Some(0), "{words:?}");
        fs::read_to_string(&output).unwrap()
    };
    // 6 % w/w of a blend of 12 and 3: (6 - 3) / (12 - 3) of 60 g.
    assert_eq!(
        fill(&["dilute", "--stock", "a", "--with", "b", "--target", "6", "--total", "60"]),
        "a;b;first_g;second_g\n12;3;20;40\n"
    );
    // The density of 12 % w/w at 20 C in the handbook tables: 1.0415 g/mL.
    assert!(fill(&["density", "--strength", "a"]).starts_with("a;b;density_g_per_ml\n12;3;1.041"));
    assert_eq!(fill(&["lift", "--from", "b", "--target", "a"]), "a;b;lift_levels\n12;3;9\n");
    assert_eq!(
        fill(&["convert", "--value", "a", "--from", "% w/v", "--to", "g/L"]),
        "a;b;strength_g_per_l\n12;3;120\n"
    );
    let blend = dilute(
        MassFraction::from_ww_percent(12.0).unwrap(),
        MassFraction::from_ww_percent(3.0).unwrap(),
        Mass::from_g(50.0).unwrap(),
    );
    let want =
        format!("a;b;stock_g;diluent_g\n12;3;{};{}\n", blend.clone().unwrap().stock.g(), blend.unwrap().diluent.g());
    assert_eq!(fill(&["dilute", "--stock", "a", "--target", "b", "--total", "50"]), want);
}

#[test]
fn what_is_wrong_with_the_table_or_the_words_is_said() {
    let folder = TempDir::new().unwrap();
    let table = written(folder.path(), "t.csv", "a,b,b\n12,3,3\n");
    let output = in_folder(&folder, "out.csv");
    let complaint = |words: &[&str]| {
        let (status, out, complaint) = said(&foilwork(&[&["fill", "lift"], words].concat()));
        assert_eq!((status, out.as_str()), (Some(2), ""), "{words:?}");
        assert!(!Path::new(&output).exists());
        complaint
    };
    let lift = |from, target| ["--from", from, "--target", target];
    let to = ["--output", output.as_str()];
    let no_column = complaint(&[&[table.as_str()], &lift("c", "a")[..], &to].concat());
    assert!(no_column.starts_with("error: --from: no column \"c\": the table has a, b, b;"), "{no_column}");
    let twice = complaint(&[&[table.as_str()], &lift("a", "b")[..], &to].concat());
    assert!(twice.starts_with("error: --target: the table has 2 columns \"b\": rename them"), "{twice}");
    let itself = complaint(&[&[table.as_str()], &lift("a", "5")[..], &["--output", &table]].concat());
    assert!(itself.contains("this command reads it: name another file"), "{itself}");
    let missing = complaint(&[&["nowhere.csv"], &lift("a", "5")[..], &to].concat());
    assert!(missing.starts_with("error: cannot read nowhere.csv: there is no such file"), "{missing}");
    let separator = complaint(&[&[table.as_str(), "--separator", "ab"], &lift("a", "5")[..], &to].concat());
    assert!(separator.contains("--separator \"ab\": give one character"), "{separator}");
    let same = complaint(&[&[table.as_str(), "--refused", &output], &lift("a", "5")[..], &to].concat());
    assert!(same.contains("--refused: it is the output: name another file"), "{same}");
}

/// A quotation mark that is not closed would make one field of the rest of the file.
#[test]
fn a_row_without_an_end_is_refused_before_it_fills_the_memory() {
    let folder = TempDir::new().unwrap();
    let mut long = String::from("a\n\"");
    long.push_str(&"x".repeat(17 << 20));
    let table = written(folder.path(), "t.csv", &long);
    let output = in_folder(&folder, "out.csv");
    let words = ["fill", "density", &table, "--strength", "a", "--output", &output];
    let (status, _, complaint) = said(&foilwork(&words));
    assert_eq!(status, Some(2));
    assert!(complaint.contains("a row is longer than 16 MiB: is a quotation mark not closed?"), "{complaint}");
}
