//! Files of records: which of a folder's files hold them, read one after the other.

use super::{Refusal, input};
use crate::history::{KeptRecord, KeptRecords, read_records, read_records_csv, record_line};
use std::{
    collections::{HashMap, HashSet},
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

/// All records of the paths, and what could not be read or does not count, each with its file. A service that is kept twice, in one
/// file or in two, counts once: of one guest, day and title the line that was read last.
pub(super) fn read(paths: &[PathBuf]) -> Result<(KeptRecords, Vec<String>), Refusal> {
    let found = files(paths)?;
    let passed = found.passed.iter().map(|path| format!("{}: not looked into: name it as well", path.display()));
    let (mut all, mut problems, mut known) = (KeptRecords::default(), passed.collect::<Vec<_>>(), HashSet::new());
    let mut places = HashMap::new();
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
        for record in found.records {
            let of_guest = record.guest.clone().map(|guest| (record.on.clone(), guest, record.title.clone()));
            if known.insert(record_line(&record)) {
                let place = of_guest.map_or(all.records.len(), |key| *places.entry(key).or_insert(all.records.len()));
                if let Some(before) = all.records.get_mut(place) {
                    let text = format!("{}: {} of {} is kept twice", path.display(), record.title, record.on);
                    problems.push(format!(
                        "{text}, not alike: the later line counts, with what went wrong by the earlier one (take that line out where \
                         it was a slip)"
                    ));
                    let earlier = std::mem::replace(before, record);
                    remember(before, &earlier);
                } else {
                    all.records.push(record);
                }
            } else {
                let text =
                    format!("{}: {} of {} is there already, equal in all", path.display(), record.title, record.on);
                problems.push(format!("{text}: it counts once"));
            }
        }
        all.problems.extend(found.problems);
    }
    Ok((all, problems))
}

/// What went wrong by a record of the same service that no longer counts is never forgotten: incidents, and weak strands.
fn remember(later: &mut KeptRecord, earlier: &KeptRecord) {
    for incident in &earlier.incident {
        if !later.incident.contains(incident) {
            later.incident.push(incident.clone());
        }
    }
    for section in &mut later.section {
        let before = earlier.section.iter().find(|one| one.name == section.name);
        section.elasticity = section.elasticity.max(before.and_then(|one| one.elasticity));
    }
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
