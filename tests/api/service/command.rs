//! The command line: exit statuses, the two forms of a plan, and files that are replaced whole or not at all.

use super::base::example;
use rstest::rstest;
use std::{
    fs,
    io::Write,
    path::{Path, PathBuf},
    process::{Command, Output, Stdio},
};

fn examples() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("examples")
}

fn foilwork(args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_foilwork")).current_dir(examples()).args(args).output().unwrap()
}

fn out(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap()
}

fn err(output: &Output) -> String {
    String::from_utf8(output.stderr.clone()).unwrap()
}

/// An example with one finding that says stop.
fn blocked(folder: &Path) -> PathBuf {
    let path = folder.join("blocked.toml");
    let text = example("soft-gradient.toml");
    assert!(text.contains("scalp = \"intact\""));
    fs::write(&path, text.replace("scalp = \"intact\"", "scalp = \"broken\"")).unwrap();
    path
}

#[rstest]
fn status_0_for_a_plan_without_stops(
    #[values("soft-gradient.toml", "grey-blend.toml", "lowlights.json")] name: &str,
    #[values(&[], &["--json"])] extra: &[&str],
) {
    let output = foilwork(&[&["plan", name], extra].concat());
    assert_eq!((output.status.code(), err(&output).as_str()), (Some(0), ""));
    assert!(!output.stdout.is_empty());
}

#[test]
fn status_1_for_a_plan_that_says_stop_which_is_printed_all_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let path = blocked(folder.path());
    let output = foilwork(&["plan", path.to_str().unwrap()]);
    assert_eq!((output.status.code(), err(&output).as_str()), (Some(1), ""));
    assert!(out(&output).contains("DO NOT BEGIN: 1 finding says STOP"));
    assert!(out(&output).contains("[STOP] scalp: broken"));
    let sheet = folder.path().join("sheet.txt");
    let output = foilwork(&["plan", path.to_str().unwrap(), "--output", sheet.to_str().unwrap()]);
    assert_eq!(output.status.code(), Some(1));
    assert!(fs::read_to_string(sheet).unwrap().contains("DO NOT BEGIN"));
}

#[rstest]
#[case::no_such_file(&["plan", "no-such-file.toml"], "error: cannot read no-such-file.toml: ")]
#[case::a_folder(&["plan", "broken"], "error: cannot read broken: ")]
#[case::no_file_named(&["plan"], "error: ")]
#[case::unknown_option(&["plan", "soft-gradient.toml", "--colour"], "error: ")]
#[case::unknown_command(&["brew"], "error: ")]
fn status_2_for_bad_input(#[case] args: &[&str], #[case] begins: &str) {
    let output = foilwork(args);
    assert_eq!((output.status.code(), out(&output).as_str()), (Some(2), ""));
    assert!(err(&output).starts_with(begins), "{}", err(&output));
}

#[test]
fn help_tells_the_exit_statuses() {
    let output = foilwork(&["--help"]);
    assert_eq!(output.status.code(), Some(0));
    assert!(out(&output).contains("Exit status: 0 fine, 1 the plan or the log says stop, 2 bad input."));
}

#[test]
fn a_file_that_is_not_text_is_bad_input() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("photo.toml");
    fs::write(&path, [0xff, 0xd8, 0xff, 0xe0]).unwrap();
    let output = foilwork(&["plan", path.to_str().unwrap()]);
    assert_eq!((output.status.code(), out(&output).as_str()), (Some(2), ""));
    assert!(err(&output).contains("cannot read"), "{}", err(&output));
}

#[test]
fn a_dash_reads_the_standard_input() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_foilwork"))
        .args(["plan", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    child.stdin.take().unwrap().write_all(example("soft-gradient.toml").as_bytes()).unwrap();
    let output = child.wait_with_output().unwrap();
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(out(&output), out(&foilwork(&["plan", "soft-gradient.toml"])));
}

#[rstest]
fn no_line_is_wider_than_80_columns(#[values("soft-gradient.toml", "grey-blend.toml", "lowlights.json")] name: &str) {
    for line in out(&foilwork(&["plan", name])).lines() {
        assert!(line.chars().count() <= 80, "{} columns: {line}", line.chars().count());
        assert_eq!(line.trim_end(), line, "blanks at the end");
    }
}

/// The longest names that a file may have.
#[test]
fn no_line_is_wider_than_80_columns_with_long_names() {
    let mut text = example("soft-gradient.toml");
    let long = |word: &str, length: usize| format!("{word}{}", "x".repeat(length - word.len()));
    for (old, length) in
        [("Foam Line powder", 60), ("developer 6", 60), ("bond additive", 60), ("J9-mist", 20), ("crown", 60)]
    {
        text = text.replace(&format!("\"{old}\""), &format!("\"{}\"", long(old, length)));
    }
    text = text.replace("Soft gradient with a brighter hairline", &"light ".repeat(16));
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("long.toml");
    fs::write(&path, text).unwrap();
    let output = foilwork(&["plan", path.to_str().unwrap()]);
    assert_eq!((output.status.code(), err(&output).as_str()), (Some(0), ""));
    for line in out(&output).lines() {
        assert!(line.chars().count() <= 80, "{} columns: {line}", line.chars().count());
    }
}

/// The same numbers in both forms: every mass, strength, time, amount and finding of the data is on the sheet.
#[rstest]
fn json_and_sheet_agree(#[values("soft-gradient.toml", "grey-blend.toml", "lowlights.json")] name: &str) {
    let sheet = out(&foilwork(&["plan", name]));
    let words: String = sheet.split_whitespace().collect::<Vec<_>>().join(" ");
    let data: serde_json::Value = serde_json::from_str(&out(&foilwork(&["plan", name, "--json"]))).unwrap();
    let list = |value: &serde_json::Value| value.as_array().unwrap().clone();
    for mix in list(&data["mixes"]) {
        for bowl in list(&mix["bowls"]) {
            for part in list(&bowl["parts"]) {
                let (product, grams) = (part["product"].as_str().unwrap(), part["weigh_g"].as_f64().unwrap());
                assert!(words.contains(&format!("{product} {grams} g")), "{product} {grams} g");
            }
        }
        // A strength by label or sheet is not known to two decimals.
        let known_to = if mix["strength_basis"] == "measured" { 100.0 } else { 10.0 };
        let on_hair = (mix["on_hair_ww_percent"]["best"].as_f64().unwrap() * known_to).round() / known_to;
        assert!(words.contains(&format!("ON THE HAIR {on_hair}")), "{on_hair}");
    }
    for step in list(&data["order"]) {
        let line = format!(
            "{} {} {} to {}",
            step["number"],
            step["name"].as_str().unwrap(),
            step["begin_min"],
            step["applied_min"]
        );
        assert!(words.contains(&line.replace(".0", "")), "{line}");
    }
    for finding in list(&data["findings"]) {
        let text = finding["text"].as_str().unwrap().split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(words.contains(&text), "{text}");
    }
    for default in list(&data["defaults"]) {
        let line = format!("{} = {}", default["field"].as_str().unwrap(), default_value(&default["value"]));
        assert!(words.contains(&line), "{line}");
    }
    let total = &data["money"]["cost"]["total"];
    let amount = format!("cost {} {}", total["amount"].as_str().unwrap(), total["currency"].as_str().unwrap());
    assert!(words.contains(&amount), "{amount}");
}

/// What stands on the sheet for the value of a default.
fn default_value(value: &serde_json::Value) -> String {
    let (kind, value) = value.as_object().unwrap().iter().next().unwrap();
    match value {
        serde_json::Value::Object(range) => {
            let (each, unit) = match kind.as_str() {
                "share_percent" => ("", " %"),
                "length_cm" => ("", " cm"),
                _ => (" g", ""),
            };
            let bound = |bound: &str| format!("{:.0}{each}", range[bound].as_f64().unwrap());
            format!("{} ({} to {}){unit}", bound("best"), bound("low"), bound("high"))
        }
        value => value.to_string().trim_end_matches(".0").to_owned(),
    }
}

/// Everything in a folder but the file named.
fn others(folder: &Path, name: &str) -> Vec<String> {
    let names = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    names.filter(|other| other != name).collect()
}

#[test]
fn output_replaces_the_file_and_leaves_nothing_beside_it() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("sheet.txt");
    fs::write(&path, "the sheet of yesterday\n".repeat(10_000)).unwrap();
    let output = foilwork(&["plan", "soft-gradient.toml", "--output", path.to_str().unwrap()]);
    assert_eq!((output.status.code(), out(&output).as_str(), err(&output).as_str()), (Some(0), "", ""));
    assert_eq!(fs::read_to_string(&path).unwrap(), out(&foilwork(&["plan", "soft-gradient.toml"])));
    assert_eq!(others(folder.path(), "sheet.txt"), Vec::<String>::new());
}

#[test]
fn output_keeps_the_old_file_when_the_input_is_bad() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("sheet.txt");
    fs::write(&path, "the sheet of yesterday").unwrap();
    let output = foilwork(&["plan", "broken/many.toml", "--output", path.to_str().unwrap()]);
    assert_eq!(output.status.code(), Some(2));
    assert_eq!(fs::read_to_string(&path).unwrap(), "the sheet of yesterday");
    assert_eq!(others(folder.path(), "sheet.txt"), Vec::<String>::new());
}

#[test]
fn output_into_a_folder_that_does_not_exist_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("nowhere").join("sheet.txt");
    let output = foilwork(&["plan", "soft-gradient.toml", "--output", path.to_str().unwrap()]);
    assert_eq!((output.status.code(), out(&output).as_str()), (Some(2), ""));
    assert!(err(&output).starts_with(&format!("error: cannot write {}: ", path.display())), "{}", err(&output));
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}

/// The name of a folder: the text is written beside it, cannot take its place, and is cleared away.
#[test]
fn output_onto_a_folder_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("sheets");
    fs::create_dir(&path).unwrap();
    let output = foilwork(&["plan", "soft-gradient.toml", "--output", path.to_str().unwrap()]);
    assert_eq!((output.status.code(), out(&output).as_str()), (Some(2), ""));
    assert_eq!(others(folder.path(), "sheets"), Vec::<String>::new());
}

/// A folder of the system that nobody, not even its owner, may write to.
#[cfg(target_os = "linux")]
#[test]
fn output_into_a_folder_that_cannot_be_written_is_refused() {
    let output = foilwork(&["plan", "soft-gradient.toml", "--output", "/proc/sheet.txt"]);
    assert_eq!((output.status.code(), out(&output).as_str()), (Some(2), ""));
    assert!(err(&output).starts_with("error: cannot write /proc/sheet.txt: "), "{}", err(&output));
}

#[test]
fn the_same_file_gives_the_same_bytes() {
    for extra in [&[][..], &["--json"]] {
        let args = [&["plan", "soft-gradient.toml"], extra].concat();
        assert_eq!(foilwork(&args).stdout, foilwork(&args).stdout);
    }
}
