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
    let (lists, others) = records::lists(&args.paths)?;
    let mut text = String::new();
    let mut removed = 0;
    for path in &lists {
        let before = bytes(path)?;
        let found = forget(&before, guest);
        removed += found.removed.len();
        if !found.removed.is_empty() && !args.look {
            // A line that was appended since would be lost: then nothing is changed.
            if bytes(path)? != before {
                return Err(Refusal(format!("{}: it was written to just now: try again", path.display())));
            }
            replace(path, &found.kept).map_err(|why| Refusal(format!("cannot write {}: {why}", path.display())))?;
        }
        let shown = path.display();
        if !found.removed.is_empty() {
            let word = if args.look { "would be removed" } else { "removed" };
            let lines: Vec<String> = found.removed.iter().map(u64::to_string).collect();
            text += &format!("{shown}: {word}: line {}\n", lines.join(", "));
        }
        for line in found.unsure {
            text += &format!("{shown}: line {line} cannot be read and holds the code: look at it yourself\n");
        }
    }
    for path in others {
        let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        if name.contains(guest) || holds(&path, guest) {
            text += &format!(
                "{}: holds the code and is no list: remove it yourself if it is of the guest\n",
                path.display()
            );
        }
    }
    text += &match (removed, args.look) {
        (0, _) => format!("no line of {guest} in {}\n", count(lists.len(), "file", "files")),
        (lines, true) => format!("{} of {guest}; nothing is changed\n", count(lines, "line", "lines")),
        (lines, false) => {
            format!("{} of {guest} removed; copies elsewhere are yours to remove\n", count(lines, "line", "lines"))
        }
    };
    output::deliver(text, 0, &args.output)
}

fn bytes(path: &Path) -> Result<Vec<u8>, Refusal> {
    let failed = |error: std::io::Error| Refusal(format!("cannot read {}: {error}", path.display()));
    if fs::metadata(path).map_err(failed)?.len() > MOST_BYTES {
        return Err(Refusal(format!(
            "cannot read {}: it is longer than {} MiB: split it",
            path.display(),
            MOST_BYTES >> 20
        )));
    }
    fs::read(path).map_err(failed)
}

/// Whether a file that is no list holds the code; one that cannot be read, or is long, does not count.
fn holds(path: &Path, guest: &str) -> bool {
    let short = fs::metadata(path).is_ok_and(|there| there.len() <= MOST_BYTES >> 3);
    short && fs::read(path).is_ok_and(|bytes| String::from_utf8_lossy(&bytes).contains(guest))
}
