//! Lines of a log of the nape, and the program that is told them: what the tests of a service in its midst share.

use foilwork::{
    colour::Level,
    quantity::Duration,
    record::{Comfort, FoilHeat, LogEntry, Noted},
    service::shape::Elasticity,
};
use std::process::Command;

pub(super) fn of(at: f64, what: Noted) -> LogEntry {
    LogEntry { section: Some("nape".to_owned()), ..LogEntry::new(Duration::from_min(at).unwrap(), what) }
}

pub(super) fn seen(at: f64, level: f64) -> LogEntry {
    LogEntry { level: Some(Level::new(level).unwrap()), ..of(at, Noted::Seen) }
}

pub(super) fn feels(at: f64, comfort: Comfort) -> LogEntry {
    LogEntry { section: None, comfort: Some(comfort), ..of(at, Noted::Comfort) }
}

pub(super) fn strand(at: f64, elasticity: Elasticity) -> LogEntry {
    LogEntry { elasticity: Some(elasticity), ..of(at, Noted::Elasticity) }
}

pub(super) fn foil(at: f64, foil: FoilHeat) -> LogEntry {
    LogEntry { foil: Some(foil), ..of(at, Noted::Foil) }
}

/// Its status and all that it says.
pub(super) fn run(args: &[&str]) -> (i32, String) {
    let done = Command::new(env!("CARGO_BIN_EXE_foilwork")).args(args).output().unwrap();
    (done.status.code().unwrap(), String::from_utf8([done.stdout, done.stderr].concat()).unwrap())
}
