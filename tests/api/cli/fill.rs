//! A table of any length, filled row by row: every row is done, or kept apart with its reason, or nothing is written.

use super::foilwork;
use foilwork::peroxide::{Conditions, Strength, StrengthUnit, convert, convert_interval};
use rstest::rstest;
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

/// The table is the reader's own: no cell of it is touched, not even one from which a spreadsheet would calculate.
#[test]
fn cells_come_back_as_they_are() {
    let folder = TempDir::new().unwrap();
    let table = written(folder.path(), "bottles.csv", "bottle,stock,target\n=1+1,12,3\n@SUM(A1), 12 ,3\n-weak,3,6\n");
    let (output, refused) = (in_folder(&folder, "weighed.csv"), in_folder(&folder, "apart.csv"));
    let (status, _, complaint) = said(&foilwork(&dilute_file(&table, &output, &["--refused", &refused])));
    assert_eq!((status, complaint.as_str()), (Some(0), ""));
    // 60 x 3 / 12.
    let want = "bottle,stock,target,stock_g,diluent_g\n=1+1,12,3,15,45\n@SUM(A1), 12 ,3,15,45\n";
    assert_eq!(fs::read_to_string(&output).unwrap(), want);
    assert!(fs::read_to_string(&refused).unwrap().ends_with(",-weak,3,6\n"));
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
    assert_eq!(lines.next(), Some("row,ww,low_strength_volumes,strength_volumes,high_strength_volumes"));
    for (row, line) in lines.by_ref().take(50_000).enumerate() {
        let fields: Vec<&str> = line.split(',').collect();
        let strength = Strength::of(fields[1].parse().unwrap(), StrengthUnit::WwPercent).unwrap();
        let want = convert(strength, StrengthUnit::Volumes, &Conditions::default()).unwrap().number();
        assert_eq!(
            (fields[0], fields[3].parse::<f64>().unwrap().to_bits()),
            (row.to_string().as_str(), want.to_bits())
        );
        let bounds = convert_interval(strength, StrengthUnit::Volumes, &Conditions::default()).unwrap();
        let got = [2, 4].map(|place| fields[place].parse::<f64>().unwrap().to_bits());
        assert_eq!(got, [bounds.low(), bounds.high()].map(|bound| bound.number().to_bits()));
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
    let density = fill(&["density", "--strength", "a"]);
    let [low, best, high] =
        bounds_in(&density, "a;b;low_density_g_per_ml;density_g_per_ml;high_density_g_per_ml\n12;3;");
    assert!(best.to_string().starts_with("1.041") && low < 1.0415 && 1.0415 < high, "{density}");
    assert_eq!(fill(&["lift", "--from", "b", "--target", "a"]), "a;b;lift_levels\n12;3;9\n");
    assert_eq!(
        fill(&["convert", "--value", "a", "--from", "% w/v", "--to", "g/L"]),
        "a;b;strength_g_per_l\n12;3;120\n"
    );
    // Worked by hand: a cream's density is assumed to lie from 8 % below to 2 % above that of the clear solution, and g/L
    // go with it; what the tables leave open of that adds less than 0.5 %.
    let cream = fill(&["convert", "--value", "a", "--from", "% w/w", "--to", "g/L", "--cream"]);
    let names = "a;b;low_strength_g_per_l;strength_g_per_l;high_strength_g_per_l\n12;3;";
    let [low, best, high] = bounds_in(&cream, names);
    assert!((best - 124.98).abs() < 0.01, "{cream}"); // 12 % of 1041.5 g
    assert!((low / best - 0.92).abs() < 0.005 && (high / best - 1.02).abs() < 0.005, "{cream}");
    // Worked by hand: 50 x 3 / 12.
    assert_eq!(
        fill(&["dilute", "--stock", "a", "--target", "b", "--total", "50"]),
        "a;b;stock_g;diluent_g\n12;3;12.5;37.5\n"
    );
}

/// The three numbers after a beginning that must be there.
fn bounds_in(text: &str, beginning: &str) -> [f64; 3] {
    let rest = text.strip_prefix(beginning).unwrap_or_else(|| panic!("{text}"));
    let numbers: Vec<f64> = rest.trim_end().split(';').map(|number| number.parse().unwrap()).collect();
    numbers.try_into().unwrap()
}

/// What `foilwork dilute` warns of, a table of bottles warns of: the strongest of them counts.
#[test]
fn strong_bottles_bring_their_cautions() {
    let folder = TempDir::new().unwrap();
    let output = in_folder(&folder, "out.csv");
    let fill = |rows: &str, more: &[&str]| {
        let table = written(folder.path(), "t.csv", &format!("stock,target\n{rows}"));
        let (status, out, complaint) = said(&foilwork(&dilute_file(&table, &output, more)));
        assert_eq!((status, complaint.as_str()), (Some(0), ""));
        out
    };
    let strong = fill("35,6\n50,6\n12,\n", &[]);
    assert!(strong.starts_with(&format!("3 rows in {output}, 1 of them without a result")), "{strong}");
    assert!(strong.contains("Hazard classes at 50 % w/w:"), "{strong}");
    assert!(strong.contains("no advice on handling it in a salon"), "{strong}");
    let second = fill("6,9\n", &["--with", "18"]);
    assert!(second.starts_with(&format!("1 row in {output}\nHazard classes at 18 % w/w:")), "{second}");
    let usual = fill("6,3\n", &[]);
    assert!(!usual.contains("Hazard classes") && usual.contains("Never close the container."), "{usual}");
    // A row that was kept apart tells nobody to pour anything.
    let refused = in_folder(&folder, "apart.csv");
    let apart = fill("6,3\n50,60\n", &["--refused", &refused]);
    assert!(apart.contains("\n1 row kept apart in ") && !apart.contains("Hazard classes"), "{apart}");
}

/// One file under two names would lose the rows that were kept apart.
#[cfg(unix)]
#[test]
fn the_output_under_another_name_is_not_overwritten() {
    let folder = TempDir::new().unwrap();
    let table = written(folder.path(), "t.csv", TABLE);
    let output = in_folder(&folder, "out.csv");
    let link = in_folder(&folder, "link.csv");
    std::os::unix::fs::symlink(&output, &link).unwrap();
    let detour = folder.path().join("./out.csv").to_str().unwrap().to_owned();
    let complaint = |refused: &str| {
        let (status, out, complaint) = said(&foilwork(&dilute_file(&table, &output, &["--refused", refused])));
        assert_eq!((status, out.as_str()), (Some(2), ""), "{refused}");
        complaint
    };
    for refused in [&detour, &link] {
        assert!(complaint(refused).contains("--refused: it is the output: name another file"), "{refused}");
        assert!(!Path::new(&output).exists());
    }
    fs::write(&output, "what stood here").unwrap();
    for refused in [&detour, &link] {
        assert!(complaint(refused).contains("--refused: it is the output: name another file"), "{refused}");
        assert_eq!(fs::read_to_string(&output).unwrap(), "what stood here");
    }
    // In the folder of the command, with a name only.
    let run = Command::new(env!("CARGO_BIN_EXE_foilwork"))
        .args(dilute_file(&table, "new.csv", &["--refused", "./new.csv"]))
        .current_dir(folder.path())
        .output()
        .unwrap();
    assert_eq!(run.status.code(), Some(2));
    assert!(!folder.path().join("new.csv").exists());
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
    for number in ["nan", "inf", "-inf"] {
        let endless = complaint(&[&[table.as_str()], &lift("a", number)[..], &to].concat());
        assert!(
            endless.to_lowercase().contains(&format!("--target: {number} is no number (give a column")),
            "{endless}"
        );
    }
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

/// CSV under the name of another format is a file that no program opens.
#[rstest]
#[case("o.parquet", &[], "error: --output o.parquet: rows of a CSV file or a workbook are written as CSV")]
#[case("o.xlsx", &[], "error: --output o.xlsx: rows of a CSV file or a workbook are written as CSV")]
#[case("o.csv", &["--refused", "o.ODS"], "error: --refused o.ODS: rows of a CSV file")]
#[case("o.csv", &["--refused", "o.Feather"], "error: --refused o.Feather: rows of a CSV file")]
fn no_name_promises_another_format(#[case] output: &str, #[case] more: &[&str], #[case] want: &str) {
    let folder = TempDir::new().unwrap();
    written(folder.path(), "bottles.csv", TABLE);
    let run = Command::new(env!("CARGO_BIN_EXE_foilwork"))
        .current_dir(folder.path())
        .args(dilute_file("bottles.csv", output, more))
        .output()
        .unwrap();
    let (status, _, complaint) = said(&run);
    assert!(status == Some(2) && complaint.starts_with(want), "{complaint}");
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

/// Arrow files begin with `ARROW1` and two zeros, Parquet files with `PAR1` and what is no text; a first column may be named so.
#[rstest]
#[case("ARROW_speed,ww\n1,6\n", true)]
#[case("ARROW1,ww\n1,6\n", true)]
#[case("PAR1,ww\n1,6\n", true)]
#[case("PAR1_g,ww\n1,6\n", true)]
#[case("PAR1\u{e9},ww\n1,6\n", true)]
#[case("PAR1\u{15}ww\n", false)]
#[case("ARROW1\0\0ww\n", false)]
fn a_first_column_may_be_named_as_a_format_begins(#[case] text: &str, #[case] is_csv: bool) {
    let folder = TempDir::new().unwrap();
    let table = written(folder.path(), "t.csv", text);
    let output = in_folder(&folder, "o.csv");
    let run = foilwork(&["fill", "density", &table, "--strength", "ww", "--temperature", "20", "--output", &output]);
    let (status, _, complaint) = said(&run);
    assert_eq!(status == Some(0), is_csv, "{complaint}");
    assert!(is_csv || complaint.contains("which this program does not read"), "{complaint}");
}
