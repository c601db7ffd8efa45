//! A service that was kept twice counts once.

use super::{KeptRecord, lines::record_line};
use std::collections::{HashMap, HashSet};

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
    /// Whether it says the very same; else the later counts.
    pub(crate) is_equal: bool,
}

/// Each service once: of one guest, day and title the record that was read last; without a guest only what is equal in all is the same.
pub(crate) fn counted_once(records: &[KeptRecord]) -> CountedOnce {
    let mut found = CountedOnce::default();
    let (mut lines, mut services) = (HashMap::new(), HashMap::new());
    for (place, record) in records.iter().enumerate() {
        let line = record_line(record);
        if let Some(of) = lines.get(&line) {
            found.repeats.push(Repeat { place, of: *of, is_equal: true });
            continue;
        }
        let new = found.records.len();
        let of_guest = record.guest.as_deref().map(|guest| (record.on.as_str(), guest, record.title.as_str()));
        let of = of_guest.map_or(new, |key| *services.entry(key).or_insert(new));
        lines.insert(line, of);
        if let Some(before) = found.records.get_mut(of) {
            found.repeats.push(Repeat { place, of, is_equal: false });
            let earlier = std::mem::replace(before, record.clone());
            remember(before, &earlier);
        } else {
            found.records.push(record.clone());
        }
    }
    found
}

/// What went wrong by a record of the same service that no longer counts is never forgotten: incidents, and weak strands.
fn remember(later: &mut KeptRecord, earlier: &KeptRecord) {
    let known: HashSet<String> = later.incident.iter().cloned().collect();
    later.incident.extend(earlier.incident.iter().filter(|incident| !known.contains(*incident)).cloned());
    for section in &mut later.section {
        let before = earlier.section.iter().find(|one| one.name == section.name);
        section.elasticity = section.elasticity.max(before.and_then(|one| one.elasticity));
    }
}
