//! Files of records: which of a folder's files hold them, read one after the other.

use super::{Refusal, input};
use crate::history::{KeptRecords, read_records, read_records_csv};
use std::{
    fs,
    path::{Path, PathBuf},
};

/// The most files that are read of a folder.
const MOST_FILES: usize = 10_000;

/// What a list holds, by its first line.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Holds {
    Records,
    Table,
    Other,
}

/// The lists among the paths: a file as it is, of a folder all that end as lists do, in the order of their names; and its other
/// files.
pub(super) fn lists(paths: &[PathBuf]) -> Result<(Vec<PathBuf>, Vec<PathBuf>), Refusal> {
    let (mut lists, mut others) = (Vec::new(), Vec::new());
    for path in paths {
        if !path.is_dir() {
            lists.push(path.clone());
            continue;
        }
        let failed = |error: std::io::Error| Refusal(format!("cannot read {}: {error}", path.display()));
        let mut inside: Vec<PathBuf> = Vec::new();
        for entry in fs::read_dir(path).map_err(failed)? {
            inside.push(entry.map_err(failed)?.path());
            if inside.len() > MOST_FILES {
                let text = format!("{}: more than {MOST_FILES} files: name those that count", path.display());
                return Err(Refusal(text));
            }
        }
        inside.sort();
        let ends = |path: &Path| path.extension().is_some_and(|end| ["jsonl", "csv"].iter().any(|one| end == *one));
        let (own, rest): (Vec<_>, Vec<_>) =
            inside.into_iter().filter(|path| path.is_file()).partition(|path| ends(path));
        lists.extend(own);
        others.extend(rest);
    }
    Ok((lists, others))
}

/// All records of the paths, and what could not be read, each with its file.
pub(super) fn read(paths: &[PathBuf]) -> Result<(KeptRecords, Vec<String>), Refusal> {
    let (lists, _) = lists(paths)?;
    let (mut all, mut problems) = (KeptRecords::default(), Vec::new());
    for path in lists {
        let text = input::read_grown(&path)?;
        let found = match holds(&text) {
            Holds::Records => read_records(&text),
            Holds::Table => read_records_csv(&text),
            // Of a folder other lists are passed over; a file that is named should be one of records.
            Holds::Other if paths.contains(&path) => read_records(&text),
            Holds::Other => continue,
        };
        problems.extend(found.problems.iter().map(|problem| format!("{}: {problem}", path.display())));
        all.records.extend(found.records);
        all.problems.extend(found.problems);
    }
    Ok((all, problems))
}

fn holds(text: &str) -> Holds {
    let first = text.trim_start_matches('\u{feff}').lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    match first.trim_start() {
        first if first.starts_with('{') && !first.contains("\"at_min\"") && !first.contains("\"before_level\"") => {
            Holds::Records
        }
        first if first.starts_with("record,") || first.contains(",title,") => Holds::Table,
        _ => Holds::Other,
    }
}
