//! `foilwork forget`: takes the lines of a guest out of records and strand books.

use super::{Outcome, Refusal, args::ForgetArgs, output, records, replace::replace};
use crate::{history::forget, text::count};
use std::{fs, path::Path};

/// The most bytes of a file that is written anew.
const MOST_BYTES: u64 = 64 << 20;

pub(super) fn run(args: &ForgetArgs) -> Outcome {
    let guest = args.guest.trim();
    if guest.is_empty() {
        return Err(Refusal("--guest: an empty code is nobody's (give the code of the guest)".to_owned()));
    }
    let found = records::files(&args.paths)?;
    // Before anything is changed.
    found.lists.iter().try_for_each(|path| short(path))?;
    let mut text = String::new();
    let mut removed = 0;
    for path in &found.lists {
        let before = bytes(path)?;
        let left = forget(&before, guest);
        removed += left.removed.len();
        if !left.removed.is_empty() && !args.look {
            // A line that was appended since would be lost: then nothing is changed.
            if bytes(path)? != before {
                return Err(Refusal(format!("{}: it was written to just now: try again", path.display())));
            }
            replace(path, &left.kept).map_err(|why| Refusal(format!("cannot write {}: {why}", path.display())))?;
        }
        let shown = path.display();
        if !left.removed.is_empty() {
            let word = if args.look { "would be removed" } else { "removed" };
            let lines: Vec<String> = left.removed.iter().map(u64::to_string).collect();
            text += &format!("{shown}: {word}: line {}\n", lines.join(", "));
        }
        for line in left.unsure {
            text += &format!("{shown}: line {line} cannot be read and holds the code: look at it yourself\n");
        }
        if named(path, guest) {
            text += &format!("{shown}: its name holds the code: remove it yourself if it is of the guest\n");
        }
    }
    for path in &found.others {
        let shown = path.display();
        match holds(path, guest) {
            _ if named(path, guest) => {
                text += &format!("{shown}: its name holds the code: remove it yourself if it is of the guest\n");
            }
            Some(true) => {
                text += &format!("{shown}: holds the code and is no list: remove it yourself if it is of the guest\n");
            }
            Some(false) => {}
            None => text += &format!("{shown}: not looked into, too long or not to be read: look at it yourself\n"),
        }
    }
    for path in &found.passed {
        text += &format!("{}: not looked into, no file: name what is in it as well\n", path.display());
    }
    text += &match (removed, args.look) {
        (0, _) => format!("no line of {guest} in {}\n", count(found.lists.len(), "file", "files")),
        (lines, true) => format!("{} of {guest}; nothing is changed\n", count(lines, "line", "lines")),
        (lines, false) => {
            format!("{} of {guest} removed; copies elsewhere are yours to remove\n", count(lines, "line", "lines"))
        }
    };
    output::deliver(text, 0, &args.output)
}

fn failed(path: &Path, error: &std::io::Error) -> Refusal {
    Refusal(format!("cannot read {}: {error}", path.display()))
}

fn bytes(path: &Path) -> Result<Vec<u8>, Refusal> {
    fs::read(path).map_err(|error| failed(path, &error))
}

/// Refuses a list that is too long to be written anew.
fn short(path: &Path) -> Result<(), Refusal> {
    if fs::metadata(path).map_err(|error| failed(path, &error))?.len() <= MOST_BYTES {
        return Ok(());
    }
    let most = MOST_BYTES >> 20;
    Err(Refusal(format!("cannot read {}: it is longer than {most} MiB: split it", path.display())))
}

/// Whether the name of the file holds the code.
fn named(path: &Path, guest: &str) -> bool {
    path.file_name().is_some_and(|name| name.to_string_lossy().contains(guest))
}

/// Whether a file that is no list holds the code; none where it is too long to look, or cannot be read.
fn holds(path: &Path, guest: &str) -> Option<bool> {
    let length = fs::metadata(path).ok()?.len();
    let bytes = (length <= MOST_BYTES >> 3).then(|| fs::read(path).ok()).flatten()?;
    Some(String::from_utf8_lossy(&bytes).contains(guest))
}
