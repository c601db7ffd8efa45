//! Every file of `examples/broken`: the exact messages, the lines they name, and that nothing else happens.

use foilwork::{reader::Format, service::plan_text};
use std::{
    collections::BTreeSet,
    fs,
    path::{Path, PathBuf},
    process::Command,
};

/// In TOML files, a comment on every line that a message must name.
const MARK: &str = "# <--";

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/broken")
}

/// The broken files by name, and the names of the expected texts without their ending.
fn names() -> (BTreeSet<String>, BTreeSet<String>) {
    let (mut broken, mut expected) = (BTreeSet::new(), BTreeSet::new());
    for entry in fs::read_dir(folder()).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        match name.strip_suffix(".expected") {
            Some(of) => expected.insert(of.to_owned()),
            None => name != "README.md" && broken.insert(name),
        };
    }
    (broken, expected)
}

fn text(name: &str) -> String {
    fs::read_to_string(folder().join(name)).unwrap()
}

#[test]
fn every_broken_file_has_its_message_and_every_message_its_file() {
    let (broken, expected) = names();
    assert_eq!(broken, expected);
    assert!(broken.len() >= 36, "only {} broken files", broken.len());
}

#[test]
fn the_library_gives_exactly_the_expected_messages() {
    for name in names().0 {
        let problems = plan_text(&text(&name), Format::of_name(&name)).expect_err(&name);
        let lines: String = problems.0.iter().map(|problem| format!("error: {name}: {problem}\n")).collect();
        assert_eq!(lines, text(&format!("{name}.expected")));
    }
}

#[test]
fn the_command_prints_the_messages_and_nothing_else() {
    for name in names().0 {
        for extra in [&[][..], &["--json"]] {
            let out = foilwork(&name, extra);
            assert_eq!(out.status.code(), Some(2), "{name}");
            assert!(out.stdout.is_empty(), "{name}");
            assert_eq!(String::from_utf8(out.stderr).unwrap(), text(&format!("{name}.expected")));
        }
    }
}

#[test]
fn a_broken_file_writes_nothing() {
    let target = tempfile::tempdir().unwrap();
    for name in names().0 {
        let output = target.path().join("sheet.txt");
        let out = foilwork(&name, &["--output", output.to_str().unwrap()]);
        assert_eq!(out.status.code(), Some(2), "{name}");
        assert_eq!(fs::read_dir(target.path()).unwrap().count(), 0, "{name} left something behind");
    }
}

/// The marks were set by hand where the mistakes are, so that the lines are not checked against the program's own.
#[test]
fn the_messages_name_the_marked_lines() {
    for name in names().0 {
        let text = text(&name);
        let marked: BTreeSet<usize> =
            text.lines().enumerate().filter(|(_, line)| line.contains(MARK)).map(|(i, _)| i + 1).collect();
        let problems = plan_text(&text, Format::of_name(&name)).expect_err(&name);
        let named: BTreeSet<usize> = problems.0.iter().filter_map(|problem| Some(problem.at?.line)).collect();
        if marked.is_empty() {
            // JSON has no comments, and what is missing from the file as a whole has no line of its own.
            let whole = problems.0.iter().all(|problem| problem.message.starts_with("missing"));
            assert!(name.ends_with(".json") || whole, "{name} marks no line");
        } else {
            assert_eq!(named, marked, "{name}");
        }
    }
}

#[test]
fn every_message_is_one_line_in_lower_case_with_a_way_out() {
    for name in names().0 {
        for problem in plan_text(&text(&name), Format::of_name(&name)).expect_err(&name).0 {
            let message = problem.message;
            let first = message.chars().next().unwrap();
            assert!(!first.is_uppercase() && !message.ends_with('.') && !message.contains('\n'), "{name}: {message}");
            let syntax = message.starts_with("not valid ");
            assert!(syntax || message.contains(':') || message.contains(';'), "{name}: no way out: {message}");
            assert!(problem.at.is_some(), "{name}: no line: {message}");
            assert!(syntax || !problem.field.is_empty() || name == "list-at-top.json", "{name}: no field: {message}");
        }
    }
}

fn foilwork(name: &str, extra: &[&str]) -> std::process::Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_foilwork"));
    command.current_dir(folder()).args(["plan", name]).args(extra).output().unwrap()
}
