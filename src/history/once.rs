//! A service that was kept twice counts once.

use super::{KeptRecord, KeptSection, lines::record_line};
use crate::service::shape::Elasticity;
use std::collections::{HashMap, HashSet, hash_map::Entry};

/// Records of which each service is there once.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct CountedOnce {
    /// Those that count, in the order in which their services were first kept.
    pub(crate) records: Vec<KeptRecord>,
    /// Those that were kept of a service that was there already.
    pub(crate) repeats: Vec<Repeat>,
}

/// A record of a service that was there already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Repeat {
    /// Its place among all that were read, from none.
    pub(crate) place: usize,
    /// The place of its service among those that count.
    pub(crate) of: usize,
    /// Whether it says the very same as the one that counts until then; else the later counts.
    pub(crate) is_equal: bool,
}

/// Each service once: of one guest, day and title the record that was read last, also where it takes back the one before it; without a
/// guest only what is equal in all is the same.
pub(crate) fn counted_once(records: &[KeptRecord]) -> CountedOnce {
    let mut found = CountedOnce::default();
    // Of each service its place among those that count, and the line that counts as it was read.
    let mut services = HashMap::new();
    for (place, record) in records.iter().enumerate() {
        let line = record_line(record);
        let of_guest = record.guest.as_deref().map(|guest| (record.on.as_str(), guest, record.title.as_str()));
        let key = of_guest.ok_or_else(|| line.clone());
        match services.entry(key) {
            Entry::Vacant(new) => {
                new.insert((found.records.len(), line));
                found.records.push(record.clone());
            }
            Entry::Occupied(mut known) => {
                let (of, counts) = known.get_mut();
                let is_equal = *counts == line;
                found.repeats.push(Repeat { place, of: *of, is_equal });
                if let Some(before) = found.records.get_mut(*of).filter(|_| !is_equal) {
                    *counts = line;
                    let earlier = std::mem::replace(before, record.clone());
                    remember(before, earlier);
                }
            }
        }
    }
    found
}

/// What went wrong by a record of the same service that no longer counts is never forgotten: incidents, and weak strands,
/// those of sections that are gone by their names alone.
fn remember(later: &mut KeptRecord, earlier: KeptRecord) {
    let known: HashSet<String> = later.incident.iter().cloned().collect();
    later.incident.extend(earlier.incident.into_iter().filter(|incident| !known.contains(incident)));
    for before in earlier.section {
        let mut same = later.section.iter_mut().filter(|one| one.name == before.name).peekable();
        if same.peek().is_some() {
            same.for_each(|section| section.elasticity = section.elasticity.max(before.elasticity));
        } else if before.elasticity.is_some_and(|strand| strand != Elasticity::Good) {
            let (name, elasticity) = (before.name, before.elasticity);
            later.section.push(KeptSection { name, elasticity, ..KeptSection::default() });
        }
    }
}
