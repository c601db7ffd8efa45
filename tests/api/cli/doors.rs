//! What holds for every command: width, help, data, pipes, bytes that are no text, and any words at all.

use super::{EVERY, data, fine, foilwork};
use proptest::prelude::*;
use std::process::{Command, Stdio};

const COMMANDS: [&str; 19] = [
    "plan",
    "schema",
    "convert",
    "dilute",
    "table",
    "blend",
    "titrate",
    "scale",
    "level",
    "swatch",
    "toner",
    "limits",
    "price",
    "cost",
    "business",
    "chart",
    "worksheet",
    "checklist",
    "sources",
];

#[test]
fn no_line_is_wider_than_80_columns() {
    for args in EVERY {
        for line in fine(args).lines() {
            assert!(line.chars().count() <= 80, "{args:?}: {} columns: {line}", line.chars().count());
            assert_eq!(line.trim_end(), line, "{args:?}: blanks at the end");
        }
    }
}

/// Names as long as a shelf and a chart may have them.
#[test]
fn no_line_is_wider_than_80_columns_with_long_names() {
    let name = "x".repeat(40);
    let stock = format!("{name}=40 vol label, 123456.5 g, 99999.99/kg");
    let args = ["blend", "--stock", &stock, "--stock", "water=0 % w/w", "--target", "5 % w/w", "--total", "99999"];
    for line in fine(&[&args[..], &["--currency", "EUR", "--objective", "least-leftover"]].concat()).lines() {
        assert!(line.chars().count() <= 80, "{} columns: {line}", line.chars().count());
    }
}

#[test]
fn help_of_every_command_fits_and_says_the_units() {
    // `start` writes files, so that it is not among those that are given any words.
    for command in COMMANDS.into_iter().chain(["start"]) {
        let help = fine(&[command, "--help"]);
        for line in help.lines() {
            assert!(line.chars().count() <= 80, "{command}: {} columns: {line}", line.chars().count());
        }
        // A citation has no unit.
        assert!(command == "sources" || help.contains("Units: "), "{command}: no word on units");
    }
}

#[test]
fn help_lists_every_command() {
    let help = fine(&["--help"]);
    for command in COMMANDS {
        assert!(help.lines().any(|line| line.trim_start().starts_with(&format!("{command} "))), "{command}");
    }
}

/// All commands with data also write it as JSON, and to a file the same bytes as to the terminal.
#[test]
fn json_is_read_back_and_a_file_holds_the_same_bytes() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("answer.json");
    let with_data =
        ["table", "titrate", "blend", "level", "swatch", "toner", "limits", "price", "cost", "business", "sources"];
    for args in EVERY.iter().filter(|args| with_data.contains(&args[0])) {
        assert!(data(args).is_object() || data(args).is_array(), "{args:?}");
        for form in [&[][..], &["--json"]] {
            let args = [args, form].concat();
            assert_eq!(fine(&[&args[..], &["--output", path.to_str().unwrap()]].concat()), "", "{args:?}");
            assert_eq!(std::fs::read_to_string(&path).unwrap(), fine(&args), "{args:?}");
        }
    }
}

/// `foilwork ... | head -1`: the reader closes the pipe before anything is written.
#[test]
fn a_reader_that_goes_away_is_no_error() {
    for args in [&["limits", "-j", "EU"][..], &["schema"], &["sources", "--json"]] {
        let mut child = Command::new(env!("CARGO_BIN_EXE_foilwork"))
            .args(args)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        drop(child.stdout.take());
        let output = child.wait_with_output().unwrap();
        assert_eq!((output.status.code(), output.stderr), (Some(0), Vec::new()), "{args:?}");
    }
}

#[cfg(unix)]
#[test]
fn arguments_that_are_no_text_are_bad_input() {
    use std::{ffi::OsStr, os::unix::ffi::OsStrExt};
    let broken = OsStr::from_bytes(b"6 \xff w/w");
    for before in [&["convert"][..], &["swatch"], &["table", "--stocks"], &["blend", "--stock"], &["plan"], &["toner"]]
    {
        let output = Command::new(env!("CARGO_BIN_EXE_foilwork")).args(before).arg(broken).output().unwrap();
        assert_eq!((output.status.code(), output.stdout), (Some(2), Vec::new()), "{before:?}");
        assert!(output.stderr.starts_with(b"error: "), "{before:?}");
    }
}

#[test]
fn files_that_are_no_text_are_bad_input() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("photo.toml");
    std::fs::write(&path, [0xff, 0xd8, 0xff, 0xe0]).unwrap();
    let photo = path.to_str().unwrap();
    let lifted = ["--natural", "5", "--lifted", "9", "--target", "8"];
    for args in [
        [&["toner", photo][..], &lifted].concat(),
        vec!["blend", photo, "--target", "6 % w/w", "--total", "60"],
        vec!["cost", photo, "--shop", "juniper_and_tide.toml"],
        vec!["cost", "juniper_and_tide_services.csv", "--shop", photo],
    ] {
        let output = foilwork(&args);
        assert_eq!((output.status.code(), output.stdout), (Some(2), Vec::new()), "{args:?}");
        let complaint = String::from_utf8(output.stderr).unwrap();
        assert!(complaint.starts_with(&format!("error: cannot read {photo}: ")), "{complaint}");
    }
}

/// Words that mean something somewhere, and any others. None of them writes a file.
fn word() -> impl Strategy<Value = String> {
    let option = prop::sample::select(vec![
        "--stock",
        "--stocks",
        "--target",
        "--targets",
        "--total",
        "--division",
        "--json",
        "--csv",
        "--natural",
        "--lifted",
        "--applied",
        "--from",
        "--tone",
        "--titrant",
        "--aliquot",
        "--titre",
        "--expect",
        "--taken",
        "--made-up-to",
        "--objective",
        "--currency",
        "--most-shades",
        "--bowl",
        "--shades",
        "--cost",
        "--margin",
        "--shop",
        "-j",
        "--temperature",
        "--density",
        "--with",
        "--factor",
        "--part",
    ]);
    let value = prop::sample::select(vec![
        "6 % w/w",
        "12, 9 % w/w",
        "40 vol label",
        "a=12 % w/w, 30 g, 9/kg",
        "60",
        "0",
        "-1",
        "1e308",
        "nan",
        "5",
        "9",
        "violet",
        "neutral",
        "0.02 mol/L",
        "0.1+-0.01 N",
        "10+-0.02",
        "least-leftover",
        "EUR",
        "EU",
        ",",
        "=",
        "",
        "juniper_and_tide.toml",
        "juniper_and_tide_services.csv",
        "30 g J7-mist + 60 g 6%",
        "±",
        "J7-mist=60",
    ]);
    prop_oneof![
        4 => option.prop_map(str::to_owned),
        4 => value.prop_map(str::to_owned),
        // Not `-o...`, which would write a file of that name.
        1 => "[^-\\x00]\\PC{0,12}",
        1 => any::<f64>().prop_map(|number| number.to_string()),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    /// Whatever is typed, the answer is one of the three documented statuses, never a panic (status 101).
    #[test]
    fn any_words_are_answered(
        command in prop::sample::select(COMMANDS.to_vec()),
        words in prop::collection::vec(word(), 0..12),
    ) {
        let examples = concat!(env!("CARGO_MANIFEST_DIR"), "/examples");
        let output = Command::new(env!("CARGO_BIN_EXE_foilwork"))
            .current_dir(examples)
            .arg(command)
            .args(&words)
            .stdin(Stdio::null())
            .output()
            .unwrap();
        let status = output.status.code();
        prop_assert!(matches!(status, Some(0..=2)), "{command} {words:?}: {status:?}");
        prop_assert_eq!(status == Some(2), !output.stderr.is_empty());
    }

    /// The same with all the options that a command needs, so that the values are reached.
    #[test]
    fn any_values_are_answered(values in prop::collection::vec(word(), 4), strength in -1.0..101.0_f64) {
        let [a, b, c, d] = values.iter().map(|value| format!("={value}")).collect::<Vec<_>>().try_into().unwrap();
        let strength = format!("{strength} % w/w");
        let option = |name: &str, value: &str| format!("--{name}{value}");
        for args in [
            vec!["table".to_owned(), option("stocks", &a), option("targets", &b), option("total", &c)],
            vec!["titrate".into(), option("titrant", &a), option("aliquot", &b), option("titre", &c)],
            vec!["titrate".into(), "--titrant=0.1 N".into(), option("aliquot", &a), option("expect", &b)],
            vec!["blend".into(), option("stock", &a), "--stock".into(), strength.clone(), option("target", &b),
                option("total", &c), option("division", &d)],
            vec!["level".into(), option("natural", &a), option("target", &b)],
            vec!["swatch".into(), values[0].clone(), option("tone", &b)],
            vec!["toner".into(), "juniper_and_tide.toml".into(), option("natural", "=5"), option("lifted", "=9"),
                option("target", "=8"), "--shades=J9-mist,J8".into(), option("tone", &a), option("bowl", &b),
                option("division", &c)],
        ] {
            let words: Vec<&str> = args.iter().map(String::as_str).collect();
            let status = foilwork(&words).status.code();
            prop_assert!(matches!(status, Some(0 | 2)), "{args:?}: {status:?}");
        }
    }
}
