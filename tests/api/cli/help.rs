//! The help tells the truth: every example runs, and every value it shows in backticks is taken.

use super::foilwork;
use std::{
    fs,
    path::{Path, PathBuf},
    process::{Command, Output},
};

/// A run of each command to which one option at a time is added; where two lines begin alike, the second holds for the
/// options that its first word names, because they exclude what the first has.
pub(super) const RUNS: &[(&str, &str, &[&str])] = &[
    ("start", "", &["my-salon", "--jurisdiction", "EU", "--currency", "EUR"]),
    ("plan", "", &["soft-gradient.toml"]),
    ("consult", "", &["staged-lightening.toml"]),
    ("schema", "", &[]),
    ("convert", "", &["6 % w/w"]),
    ("convert", "density", &["6 % w/v"]),
    ("dilute", "", &["--stock", "12 % w/w", "--target", "3 % w/w", "--total", "80"]),
    ("table", "", &["--stocks", "12 % w/w", "--targets", "3 % w/w", "--total", "80"]),
    (
        "fill",
        "",
        &["density", "juniper_and_tide_bottles.csv", "--strength", "target_ww_percent", "--output", "filled.csv"],
    ),
    ("blend", "", &["--stock", "12 % w/w", "--stock", "0 % w/w", "--target", "6 % w/w", "--total", "80"]),
    ("blend", "argument", &["juniper_and_tide.toml", "--target", "6 % w/w", "--total", "80"]),
    (
        "blend",
        "stock",
        &["--currency", "EUR", "--stock", "12 % w/w", "--stock", "0 % w/w", "--target", "6 % w/w", "--total", "80"],
    ),
    ("titrate", "", &["--titrant", "0.02 mol/L", "--aliquot", "10", "--titre", "12"]),
    ("titrate", "expect", &["--titrant", "0.02 mol/L", "--aliquot", "10"]),
    ("scale", "", &["30 g J7-mist + 60 g 6%", "--factor", "2"]),
    ("scale", "part", &["30 g J7-mist + 60 g 6%"]),
    ("hair", "", &["--length", "25"]),
    ("hair", "gathered", &["--length", "25", "--girth", "9.5"]),
    ("hair", "used-on", &["--length", "25", "--used", "60"]),
    ("hair", "used-technique", &["--length", "25", "--used", "120", "--regrowth", "2"]),
    ("hair", "used-lightener", &["--length", "25", "--used", "60"]),
    ("head", "", &["soft-gradient.toml"]),
    ("day", "", &["soft-gradient.toml"]),
    ("note", "", &["new.jsonl", "--at", "3", "--section", "nape", "--begun"]),
    ("note", "comfort", &["new.jsonl", "--at", "3"]),
    ("note", "foil", &["new.jsonl", "--at", "3", "--section", "nape"]),
    ("note", "elasticity", &["new.jsonl", "--at", "3", "--section", "nape"]),
    ("record", "", &["soft-gradient.toml", "soft-gradient.jsonl"]),
    ("choose", "", &["--start", "soft", "--upkeep", "6", "--length", "30"]),
    ("choose", "from", &["--to", "9"]),
    ("choose", "to", &["--from", "5"]),
    ("choose", "artificial", &["--from", "5", "--to", "7"]),
    ("choose", "lightened", &["--from", "5", "--to", "7"]),
    ("choose", "white", &["--from", "5", "--to", "7"]),
    ("choose", "planned", &["--from", "5", "--to", "7"]),
    ("choose", "treats", &[]),
    ("history", "", &["juniper_and_tide_records.jsonl"]),
    ("forget", "", &["juniper_and_tide_records.jsonl", "--guest", "J-088", "--look"]),
    ("foils", "", &["--width", "8", "--height", "6", "--length", "30"]),
    ("foils", "gathered", &["--width", "8", "--height", "6", "--length", "30", "--girth", "9.5"]),
    ("level", "", &["--natural", "5", "--target", "8"]),
    ("lift", "", &["--from", "4", "--developer", "6 % w/w", "--ratio", "1:2"]),
    ("lift", "shelf", &["--from", "4", "--developer", "6 % w/w", "--ratio", "1:2", "--target", "8"]),
    ("lift", "on-hair", &["--from", "4"]),
    (
        "strand-test",
        "",
        &[
            "strands.csv",
            "--before",
            "4",
            "--after",
            "8",
            "--minutes",
            "30",
            "--developer",
            "6 % w/w",
            "--ratio",
            "1:2",
        ],
    ),
    ("strand-test", "on-hair", &["strands.csv", "--before", "4", "--after", "8", "--minutes", "30"]),
    ("swatch", "", &["7"]),
    ("toner", "", &["juniper_and_tide.toml", "--natural", "5", "--lifted", "9", "--target", "8"]),
    ("limits", "", &["--jurisdiction", "EU"]),
    ("price", "", &["--cost", "61.20", "--currency", "EUR", "--margin", "40"]),
    ("cost", "", &["juniper_and_tide_services.csv", "--shop", "juniper_and_tide.toml"]),
    ("price", "sold", &["--cost", "61.20", "--currency", "EUR", "--margin", "40", "--discount", "5"]),
    ("business", "", &["tips", "--tips", "50", "--hours", "8,5", "--currency", "EUR"]),
    ("chart", "", &["wheel"]),
    ("worksheet", "", &[]),
    ("checklist", "", &[]),
    ("sources", "", &[]),
];

/// What stands in backticks and is no value: files of the user, names of fields and commands.
const NO_VALUES: &[&str] = &[
    "-",
    "foilwork strand-test",
    "foilwork lift --svg",
    "foilwork head --svg",
    "mix_g",
    "develop_min",
    "terms",
    "regions",
];

pub(super) fn help(command: &str) -> String {
    String::from_utf8(foilwork(&[command, "--help"]).stdout).unwrap()
}

pub(super) fn commands() -> Vec<String> {
    let help = String::from_utf8(foilwork(&["--help"]).stdout).unwrap();
    let listed = help.split("Commands:\n").nth(1).unwrap().split("\n\n").next().unwrap();
    let names = listed.lines().filter(|line| line.starts_with("  ") && !line.starts_with("   "));
    names.map(|line| line.split_whitespace().next().unwrap().to_owned()).filter(|name| name != "help").collect()
}

/// A folder of its own with the examples, so that a command may write there.
pub(super) fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("help").join(name);
    let examples = folder.join("examples");
    fs::create_dir_all(&examples).unwrap();
    for entry in fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/examples")).unwrap() {
        let path = entry.unwrap().path();
        if path.is_file() {
            for beside in [&folder, &examples] {
                fs::copy(&path, beside.join(path.file_name().unwrap())).unwrap();
            }
        }
    }
    folder
}

fn run(folder: &Path, args: &[String]) -> Output {
    let strands = folder.join("strands.csv");
    let _ = fs::remove_file(strands);
    let _ = fs::remove_file(folder.join("new.jsonl"));
    let _ = fs::remove_dir_all(folder.join("my-salon"));
    Command::new(env!("CARGO_BIN_EXE_foilwork")).current_dir(folder).args(args).output().unwrap()
}

fn assert_runs(folder: &Path, args: &[String]) {
    let output = run(folder, args);
    let complaint = String::from_utf8_lossy(&output.stderr);
    // A note of something that burns is taken and says stop.
    let stops = args.iter().any(|word| ["burning", "hot", "swollen", "poor", "--incident"].contains(&word.as_str()));
    let status = i32::from(args[0] == "note" && stops);
    assert!(output.status.code() == Some(status) && complaint.is_empty(), "{args:?}: {complaint}");
}

/// The words of a command line, with its double quotes.
fn words(line: &str) -> Vec<String> {
    let mut words = Vec::new();
    for (i, part) in line.split('"').enumerate() {
        match i % 2 {
            0 => words.extend(part.split_whitespace().filter(|word| *word != "\\").map(str::to_owned)),
            _ => words.push(part.to_owned()),
        }
    }
    words
}

/// What the help says about an option or a positional argument, as `(name, text)`; the rest is under the empty name.
fn entries(help: &str) -> Vec<(String, String)> {
    let mut found: Vec<(String, String)> = vec![(String::new(), String::new())];
    for line in help.lines() {
        let trimmed = line.trim_start();
        let option = trimmed.split_once("--").filter(|(before, _)| before.len() <= 4 && !before.contains('`'));
        if line.is_empty() || line.ends_with(':') && !line.starts_with(' ') {
            found.push((String::new(), String::new()));
        } else if let (Some((_, name)), true) = (option, line.starts_with(' ') && trimmed.starts_with('-')) {
            let name: String = name.chars().take_while(|c| c.is_alphanumeric() || *c == '-').collect();
            found.push((name, trimmed.to_owned()));
        } else if trimmed.starts_with(['<', '[']) && line.starts_with("  ") && !line.starts_with("   ") {
            found.push(("argument".to_owned(), trimmed.to_owned()));
        } else {
            let text = &mut found.last_mut().unwrap().1;
            text.push(' ');
            text.push_str(trimmed);
        }
    }
    found
}

fn values(text: &str) -> Vec<String> {
    let shown = text.split('`').skip(1).step_by(2).map(str::to_owned);
    let default = text.split("[default: ").nth(1).and_then(|rest| rest.split(']').next()).map(str::to_owned);
    shown.chain(default).filter(|value| !NO_VALUES.contains(&value.as_str())).collect()
}

fn base(command: &str, option: &str) -> Vec<String> {
    let runs = || RUNS.iter().filter(|(name, ..)| *name == command);
    let found = runs().find(|(_, of, _)| *of == option).or_else(|| runs().find(|(_, of, _)| of.is_empty()));
    let (.., args) = found.unwrap_or_else(|| panic!("add a run of `{command}`, so that its help can be tried"));
    std::iter::once(command).chain(args.iter().copied()).map(str::to_owned).collect()
}

/// The run with one value set: an option that is there gets it, another is added.
fn with(command: &str, name: &str, value: &str) -> Vec<String> {
    let mut args = base(command, name);
    if name == "argument" {
        // It takes the place of the one that is there, or stands before the options.
        if args.get(1).is_some_and(|first| !first.starts_with("--")) {
            args.remove(1);
        }
        args.insert(1, value.to_owned());
        return args;
    }
    let option = format!("--{name}");
    match args.iter().position(|arg| *arg == option) {
        Some(at) => args[at + 1] = value.to_owned(),
        None => args.extend([option, value.to_owned()]),
    }
    args
}

/// What a value in the closing lines of the help belongs to.
fn closing(command: &str, value: &str) -> Option<Vec<String>> {
    match command {
        "convert" => Some(with(command, "to", value)),
        "scale" => Some(with(command, "argument", &format!("30 {value} ash + 60 {value} developer"))),
        "titrate" => Some(with(command, "titre", value)),
        // What a shelf file holds, and what a plan writes its strengths as.
        "blend" => ["currency", "name", "strength", "in_hand_g", "price", "pack_g"].contains(&value).then(Vec::new),
        "plan" => value.ends_with("% w/w").then(Vec::new),
        _ => None,
    }
}

#[test]
fn every_command_has_a_run_that_succeeds() {
    let folder = folder("runs");
    for command in commands() {
        assert_runs(&folder, &base(&command, ""));
    }
}

#[test]
fn every_example_in_a_help_runs() {
    let folder = folder("examples");
    let mut tried = 0;
    for command in commands() {
        let help = help(&command);
        for example in help.split("Example: ").skip(1) {
            let line = words(&example.split("\n\n").next().unwrap().replace('\n', " "));
            assert_eq!(line.first().map(String::as_str), Some("foilwork"), "{command}");
            assert_runs(&folder, &line[1..]);
            tried += 1;
        }
    }
    assert!(tried >= 5, "only {tried} examples were found");
}

#[test]
fn every_value_that_a_help_lists_is_taken() {
    let folder = folder("values");
    let mut tried = 0;
    for command in commands() {
        let help = help(&command);
        let help = help.split("Example: ").next().unwrap();
        // A flag takes no value; what its text shows is something else.
        let takes_one =
            |(name, text): &(String, String)| name.is_empty() || text.contains('<') || text.starts_with('[');
        for (name, text) in entries(help).into_iter().filter(takes_one) {
            for value in values(&text) {
                let args = match name.as_str() {
                    "" => closing(&command, &value)
                        .unwrap_or_else(|| panic!("{command}: nothing says what `{value}` in the closing lines is")),
                    name => with(&command, name, &value),
                };
                if !args.is_empty() {
                    assert_runs(&folder, &args);
                }
                tried += 1;
            }
        }
    }
    assert!(tried >= 60, "only {tried} values were found");
}
