//! Files of records: which of a folder's files hold them, read one after the other.

use super::{Refusal, input};
use crate::history::{CountedOnce, KeptRecord, counted_once, read_records, read_records_csv};
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

/// What the paths hold.
#[derive(Default)]
pub(super) struct Found {
    /// Files that are named, and of a folder all that end as lists do, in the order of their names.
    pub(super) lists: Vec<PathBuf>,
    /// Its other files.
    pub(super) others: Vec<PathBuf>,
    /// Folders in it, links that lead nowhere, devices: nobody looks into them.
    pub(super) passed: Vec<PathBuf>,
}

/// The files of the paths; links are followed.
pub(super) fn files(paths: &[PathBuf]) -> Result<Found, Refusal> {
    let mut found = Found::default();
    for path in paths {
        if !path.is_dir() {
            found.lists.push(path.clone());
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
        let (files, passed): (Vec<_>, Vec<_>) = inside.into_iter().partition(|path| path.is_file());
        let (own, rest): (Vec<_>, Vec<_>) = files.into_iter().partition(|path| ends(path));
        found.lists.extend(own);
        found.others.extend(rest);
        found.passed.extend(passed);
    }
    Ok(found)
}

/// All records of the paths, and what could not be read or does not count, each with its file: a service that is kept twice, in one
/// file or in two, counts once.
pub(super) fn read(paths: &[PathBuf]) -> Result<(Vec<KeptRecord>, Vec<String>), Refusal> {
    let found = files(paths)?;
    let passed = found.passed.iter().map(|path| format!("{}: not looked into: name it as well", path.display()));
    let (mut all, mut problems, mut ends) = (Vec::new(), passed.collect::<Vec<_>>(), Vec::new());
    for path in found.lists {
        let text = input::read_grown(&path)?;
        let found = match holds(&text) {
            Holds::Records => read_records(&text),
            Holds::Table => read_records_csv(&text),
            // Of a folder other lists are passed over; a file that is named should be one of records.
            Holds::Other if paths.contains(&path) => read_records(&text),
            Holds::Other => continue,
        };
        problems.extend(found.problems.iter().map(|problem| format!("{}: {problem}", path.display())));
        all.extend(found.records);
        ends.push((all.len(), path));
    }
    let CountedOnce { repeats, .. } = counted_once(&all);
    problems.extend(repeats.iter().filter_map(|repeat| {
        let (record, (_, path)) = (all.get(repeat.place)?, ends.iter().find(|(end, _)| repeat.place < *end)?);
        let what = format!("{}: {} of {}", path.display(), record.title, record.on);
        Some(if repeat.is_equal {
            format!("{what} is there already, equal in all: it counts once")
        } else {
            format!(
                "{what} is kept twice, not alike: the later line counts, with what went wrong by the earlier one (take that line out \
                 where it was a slip)"
            )
        })
    }));
    Ok((all, problems))
}

fn holds(text: &str) -> Holds {
    let first = text.trim_start_matches('\u{feff}').lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    match first.trim_start() {
        first if first.starts_with('{') && !first.contains("\"at_min\"") && !first.contains("\"before_level\"") => {
            Holds::Records
        }
        first => {
            let has = |name: &str| first.split(',').any(|cell| cell.trim().trim_matches('"') == name);
            if has("title") && has("on") { Holds::Table } else { Holds::Other }
        }
    }
}
