//! What stands in the cells of a table that is filled: numbers as people write them, and texts that a spreadsheet would run.

use super::foilwork;
use rstest::rstest;
use std::fs;
use tempfile::TempDir;

/// The table of rows after its names, filled with densities; what was kept apart, and what the command printed.
fn filled(names: &str, rows: &[u8], more: &[&str]) -> (Vec<u8>, Vec<u8>, String) {
    let folder = TempDir::new().unwrap();
    let path = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    let (table, output, refused) = (path("t.csv"), path("o.csv"), path("apart.csv"));
    fs::write(&table, [names.as_bytes(), b"\n", rows].concat()).unwrap();
    let words =
        ["fill", "lift", &table, "--from", "level", "--target", "9", "--output", &output, "--refused", &refused];
    let run = foilwork(&[&words[..], more].concat());
    assert_eq!(run.status.code(), Some(0), "{}", String::from_utf8_lossy(&run.stderr));
    (fs::read(&output).unwrap(), fs::read(&refused).unwrap(), String::from_utf8(run.stdout).unwrap())
}

/// A way out leads to what the command takes: the point for a comma, both where a comma may part thousands, an empty cell.
#[rstest]
#[case("\"6,5\"", r#""6,5" is no number (write the point, 6.5)"#)]
#[case("\"-6,5\"", r#""-6,5" is no number (write the point, -6.5)"#)]
#[case("\"0,125\"", r#""0,125" is no number (write the point, 0.125)"#)]
#[case("\"6,5000\"", r#""6,5000" is no number (write the point, 6.5000)"#)]
#[case("\"1,234\"", r#""1,234" is no number (write 1.234 or 1234, whichever it is)"#)]
#[case(
    "1e309",
    r#""1e309" is beyond the numbers that can be held, from -1.79e308 to 1.79e308 (mend it, or leave the cell empty)"#
)]
#[case(
    "-1e309",
    r#""-1e309" is beyond the numbers that can be held, from -1.79e308 to 1.79e308 (mend it, or leave the cell empty)"#
)]
#[case("inf", r#""inf" is no number (leave the cell empty where there is none)"#)]
#[case("NaN", r#""NaN" is no number (leave the cell empty where there is none)"#)]
#[case(
    "\"1,5e309\"",
    r#""1,5e309" is no number (write digits with a point and no unit, such as 12.5, or leave the cell empty)"#
)]
#[case(
    "\"1,000,5\"",
    r#""1,000,5" is no number (write digits with a point and no unit, such as 12.5, or leave the cell empty)"#
)]
#[case("12 %", r#""12 %" is no number (write digits with a point and no unit, such as 12.5, or leave the cell empty)"#)]
fn what_is_no_number_says_what_to_write(#[case] field: &str, #[case] want: &str) {
    let (_, apart, out) = filled("level", format!("{field}\n").as_bytes(), &[]);
    let mut rows = csv::Reader::from_reader(apart.as_slice());
    let row = rows.records().next().unwrap().unwrap();
    assert_eq!(&row[1], want);
    assert!(out.contains(&format!("line 2: {want}")), "{out}");
}

#[test]
fn bytes_that_are_no_text_say_how_to_save_the_table() {
    let (_, apart, _) = filled("level", b"\xfc\n", &[]);
    assert_eq!(apart, b"line,reason,level\n2,a field that is no UTF-8 text (save the table as UTF-8),\xfc\n");
}

/// The same of a value that holds for all rows: what was given is said, not what became of it.
#[rstest]
#[case(
    "1e309",
    "--target: 1e309 is beyond the numbers that can be held, from -1.79e308 to 1.79e308 (give a column, or a"
)]
#[case("-inf", "--target: -inf is no number (give a column, or a number for all rows)")]
#[case("9,5", "--target: no column \"9,5\": the table has level; a number holds for all rows (write the point, 9.5)")]
#[case("1,234", "the table has level; a number holds for all rows (write 1.234 or 1234, whichever it is)")]
#[case("goal", "--target: no column \"goal\": the table has level; a number holds for all rows\n")]
fn a_number_for_all_rows_is_told_as_it_was_given(#[case] value: &str, #[case] want: &str) {
    let folder = TempDir::new().unwrap();
    let path = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    fs::write(path("t.csv"), "level\n6\n").unwrap();
    let target = format!("--target={value}");
    let run = foilwork(&["fill", "lift", &path("t.csv"), "--from", "level", &target, "--output", &path("o.csv")]);
    let complaint = String::from_utf8(run.stderr).unwrap();
    assert!(run.status.code() == Some(2) && complaint.contains(want), "{complaint}");
}

const OWN: &str = "=1+1,6\n\"mist;@SUM(A1)\",6\n-3.5,6\n\"-3,5\",6\n-weak,6\n\"+1e9\",6\n\u{ff1d}1,6\ncool,6\n";

/// Own cells stay as they are unless guarding is asked for; then texts get the apostrophe and numbers stay.
#[test]
fn own_cells_are_guarded_where_that_is_asked_for() {
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    let (output, _, _) = filled("=name,level", OWN.as_bytes(), &[]);
    // The same cells: only those are in quotes that have to be.
    let want = "=name,level,lift_levels\n=1+1,6,3\nmist;@SUM(A1),6,3\n-3.5,6,3\n\"-3,5\",6,3\n-weak,6,3\n+1e9,6,3\n\u{ff1d}1,6,3\ncool,6,3\n";
    assert_eq!(text(output), want);
    let (output, _, _) = filled("=name,level", OWN.as_bytes(), &["--guard"]);
    let want = "'=name,level,lift_levels\n'=1+1,6,3\nmist;'@SUM(A1),6,3\n-3.5,6,3\n\"-3,5\",6,3\n'-weak,6,3\n+1e9,6,3\n'\u{ff1d}1,6,3\ncool,6,3\n";
    assert_eq!(text(output), want);
    // Bytes of another encoding stay what they are behind the apostrophe.
    let (output, apart, _) = filled("name,level", b"=\xfc,6\nm\xfc,x\n", &["--guard"]);
    assert_eq!(output, b"name,level,lift_levels\n'=\xfc,6,3\n");
    assert!(apart.ends_with(b",m\xfc,x\n"));
}

/// The reason is a column of foilwork's own and repeats what stands in a row: in it nothing is run, whatever is asked for.
#[test]
fn a_reason_repeats_nothing_that_a_spreadsheet_would_run() {
    let rows = b"\"a;=cmd|' /C calc'!A0\"\n=1+1\n";
    let (_, apart, _) = filled("level", rows, &[]);
    let records: Vec<csv::StringRecord> =
        csv::Reader::from_reader(apart.as_slice()).into_records().map(Result::unwrap).collect();
    assert!(records[0][1].starts_with("\"a;'=cmd|' /C calc'!A0\" is no number"), "{:?}", records[0]);
    assert_eq!(&records[0][2], "a;=cmd|' /C calc'!A0");
    assert!(records[1][1].starts_with("\"'=1+1\" is no number"), "{:?}", records[1]);
    let (_, apart, _) = filled("level", rows, &["--guard"]);
    let records: Vec<csv::StringRecord> =
        csv::Reader::from_reader(apart.as_slice()).into_records().map(Result::unwrap).collect();
    assert_eq!((&records[0][2], &records[1][2]), ("a;'=cmd|' /C calc'!A0", "'=1+1"));
}
