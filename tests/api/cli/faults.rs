//! Faults while something is written: killed at any moment, no room, many writers at once, folders and streams that are gone.
#![cfg(target_os = "linux")]

use super::{fine, foilwork};
use serde_json::Value;
use std::{
    ffi::OsStr,
    fs,
    os::unix::ffi::OsStrExt,
    path::Path,
    process::{Child, Command, Stdio},
    thread,
    time::{Duration, Instant, SystemTime},
};

const OLD: &str = "the sheet of yesterday\n";

/// How often each write is killed: `FOILWORK_TRIALS=1000` for more.
fn trials() -> u64 {
    std::env::var("FOILWORK_TRIALS").ok().and_then(|count| count.parse().ok()).unwrap_or(60)
}

/// The built program in the folder of the examples, with nobody listening.
fn program(args: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_foilwork"));
    command.current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/examples")).args(args);
    command.stdout(Stdio::null()).stderr(Stdio::null());
    command
}

/// Moments in the life of a command, spread evenly and not in order: the golden ratio leaves no gap.
fn moments(usual: Duration) -> impl Iterator<Item = Duration> {
    (0..trials()).map(move |trial| usual.mul_f64((trial as f64 * 0.618_034).fract() * 1.2))
}

/// Whether the command was done before it was killed.
fn done_before_it_is_killed(mut child: Child, moment: Duration) -> bool {
    thread::sleep(moment);
    child.kill().unwrap();
    child.wait().unwrap().code() == Some(0)
}

fn how_long(args: &[&str]) -> Duration {
    let start = Instant::now();
    assert_eq!(program(args).status().unwrap().code(), Some(0), "{args:?}");
    start.elapsed()
}

fn parts(folder: &Path) -> Vec<std::path::PathBuf> {
    let entries = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    entries.filter(|path| path.extension() == Some(OsStr::new("part"))).collect()
}

/// Sheets and cards, and the file of a new salon, are written by the same hand: beside the old one, then renamed.
#[test]
fn a_sheet_killed_at_any_moment_is_the_old_one_or_the_new_one() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("sheet.txt");
    let args = ["plan", "soft-gradient.toml", "--output", path.to_str().unwrap()];
    let new = fine(&args[..2]);
    let usual = how_long(&args);
    let (mut killed, mut left_old) = (0, 0);
    for moment in moments(usual) {
        fs::write(&path, OLD).unwrap();
        let done = done_before_it_is_killed(program(&args).spawn().unwrap(), moment);
        let text = fs::read_to_string(&path).unwrap();
        assert!(text == new || (text == OLD && !done), "neither the old sheet nor the new one: {text}");
        killed += u64::from(!done);
        left_old += u64::from(text == OLD);
    }
    assert!(killed > 0 && left_old > 0, "no command was killed");
    // What they leave beside it is cleared by the first command after an hour.
    for part in parts(folder.path()) {
        fs::File::open(part).unwrap().set_modified(SystemTime::now() - Duration::from_secs(7_200)).unwrap();
    }
    assert_eq!(program(&args).status().unwrap().code(), Some(0));
    assert!(parts(folder.path()).is_empty());
}

/// A log and a strand book are appended to: what was done is there whole, and a torn line costs no other.
#[test]
fn a_log_killed_at_any_moment_keeps_every_line_that_was_done() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("log.jsonl");
    let args = ["note", path.to_str().unwrap(), "--at", "3", "--section", "nape", "--begun"];
    let usual = how_long(&args);
    let line = fs::read_to_string(&path).unwrap();
    let mut done = 1;
    for moment in moments(usual) {
        done += usize::from(done_before_it_is_killed(program(&args).spawn().unwrap(), moment));
    }
    let log = fs::read_to_string(&path).unwrap();
    let whole = log.lines().filter(|text| *text == line.trim_end()).count();
    let torn = log.lines().filter(|text| serde_json::from_str::<Value>(text).is_err()).count();
    assert_eq!(whole + torn, log.lines().count(), "a line that nobody wrote: {log}");
    assert!(whole >= done && whole + torn <= 1 + trials() as usize, "{whole} of {done} lines, {torn} torn");
}

#[test]
fn a_strand_book_killed_at_any_moment_keeps_every_reading_that_was_done() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("strands.csv");
    let book = path.to_str().unwrap();
    let mix = ["--developer", "6 % w/w", "--ratio", "1:2"];
    let args = [&["strand-test", book, "--before", "4", "--after", "8", "--minutes", "30"], mix.as_slice()].concat();
    let usual = how_long(&args);
    let mut done = 1;
    for moment in moments(usual) {
        done += usize::from(done_before_it_is_killed(program(&args).spawn().unwrap(), moment));
    }
    let read = foilwork::lift::read_strand_book(&fs::read_to_string(&path).unwrap());
    assert!(read.readings.len() >= done, "{} of {done}", read.readings.len());
    assert!(read.readings.len() + read.problems.len() <= 1 + trials() as usize);
}

/// A file may grow to one block only, as on a disk that is full: the old sheet stays, and nothing is left beside it.
#[test]
fn without_room_the_old_file_stays() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("sheet.txt");
    fs::write(&path, OLD).unwrap();
    let line = "trap '' XFSZ; ulimit -f 1; exec \"$0\" plan soft-gradient.toml --output \"$1\"";
    let mut command = Command::new("sh");
    command.args(["-c", line, env!("CARGO_BIN_EXE_foilwork"), path.to_str().unwrap()]);
    let output = command.current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/examples")).output().unwrap();
    let told = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2), "{told}");
    assert!(told.starts_with("error: cannot write ") && told.lines().count() == 1, "{told}");
    assert_eq!(fs::read_to_string(&path).unwrap(), OLD);
    assert!(parts(folder.path()).is_empty());
}

#[test]
fn of_many_writers_at_once_one_wins_whole() {
    let folder = tempfile::tempdir().unwrap();
    let (sheet, log) = (folder.path().join("sheet.txt"), folder.path().join("log.jsonl"));
    let plan = ["plan", "soft-gradient.toml", "--output", sheet.to_str().unwrap()];
    let note = ["note", log.to_str().unwrap(), "--at", "3", "--section", "nape", "--begun"];
    let children: Vec<_> =
        (0..6).flat_map(|_| [program(&plan).spawn().unwrap(), program(&note).spawn().unwrap()]).collect();
    for mut child in children {
        assert_eq!(child.wait().unwrap().code(), Some(0));
    }
    assert_eq!(fs::read_to_string(&sheet).unwrap(), fine(&plan[..2]));
    let log = fs::read_to_string(&log).unwrap();
    assert_eq!(log.lines().filter(|line| serde_json::from_str::<Value>(line).is_ok()).count(), 6, "{log}");
    assert!(parts(folder.path()).is_empty());
}

#[test]
fn a_folder_that_is_gone_is_named_and_not_made() {
    let folder = tempfile::tempdir().unwrap();
    let gone = folder.path().join("gone");
    let output = foilwork(&["plan", "soft-gradient.toml", "--output", gone.join("sheet.txt").to_str().unwrap()]);
    let told = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(told.contains("gone/sheet.txt") && told.lines().count() == 1, "{told}");
    assert!(!gone.exists());
}

/// A reader that goes away, as `head` does, is no error; closed streams are none either. Nothing panics (status 101).
#[test]
fn streams_that_are_closed_are_no_panic() {
    for line in ["\"$0\" sources >&-", "\"$0\" sources 2>&- >&- <&-", "\"$0\" nonsense 2>&-"] {
        let status = Command::new("sh").args(["-c", line, env!("CARGO_BIN_EXE_foilwork")]).output().unwrap().status;
        assert!(matches!(status.code(), Some(0 | 2)), "{line}: {status}");
    }
    let mut child = program(&["sources"]).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert_eq!((output.status.code(), String::from_utf8(output.stderr).unwrap().as_str()), (Some(0), ""));
}

#[test]
fn a_name_that_is_not_utf_8_is_a_name() {
    let folder = tempfile::tempdir().unwrap();
    let named = |bytes: &[u8]| folder.path().join(OsStr::from_bytes(bytes));
    let (file, sheet) = (named(b"caf\xe9.toml"), named(b"\xff.txt"));
    fs::copy(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/soft-gradient.toml"), &file).unwrap();
    let shop = "juniper_and_tide.toml";
    fs::copy(format!("{}/examples/{shop}", env!("CARGO_MANIFEST_DIR")), folder.path().join(shop)).unwrap();
    let mut command = Command::new(env!("CARGO_BIN_EXE_foilwork"));
    let output = command.arg("plan").arg(&file).arg("--output").arg(&sheet).output().unwrap();
    assert_eq!((output.status.code(), String::from_utf8_lossy(&output.stderr).as_ref()), (Some(0), ""));
    assert_eq!(fs::read_to_string(&sheet).unwrap(), fine(&["plan", "soft-gradient.toml"]));
}

#[test]
fn neither_home_nor_language_changes_a_sheet() {
    let args = ["plan", "soft-gradient.toml"];
    let output = program(&args).env_clear().env("LC_ALL", "tlh_XX.KOI8-R").stdout(Stdio::piped()).output().unwrap();
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(String::from_utf8(output.stdout).unwrap(), fine(&args));
}
