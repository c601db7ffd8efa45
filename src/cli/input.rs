//! Reading what a command is given: a file, or the standard input.

use super::Refusal;
use std::{
    cell::RefCell,
    fs::File,
    io::{self, Read, stdin},
    path::{Path, PathBuf},
};

/// The most bytes that are read from one file: a list of a hundred thousand services is a tenth of it.
const MOST_BYTES: u64 = 64 << 20;

thread_local! {
    /// Which files this command has read, so that it does not write over one of them.
    static READ: RefCell<Vec<PathBuf>> = const { RefCell::new(Vec::new()) };
}

/// Forgets what an earlier command has read: one process may run many.
pub(super) fn begin() {
    READ.with_borrow_mut(Vec::clear);
}

/// Whether this command has read this file, by whatever name. `path` is absolute, without links.
pub(super) fn was_read(path: &Path) -> bool {
    READ.with_borrow(|read| read.iter().any(|one| one == path))
}

/// The text of a file that grows line by line; what a crash has left of a character counts as a torn character.
pub(super) fn read_grown(path: &Path) -> Result<String, Refusal> {
    Ok(String::from_utf8_lossy(&bytes(path)?).into_owned())
}

/// The text of a file, or of the standard input for `-`.
pub(super) fn read(path: &Path) -> Result<String, Refusal> {
    utf8(path, bytes(path)?)
}

/// What was read from a file, as text.
pub(super) fn utf8(path: &Path, bytes: Vec<u8>) -> Result<String, Refusal> {
    String::from_utf8(bytes).map_err(|error| {
        let good = error.as_bytes().get(..error.utf8_error().valid_up_to()).unwrap_or_default();
        let line = good.split(|byte| *byte == b'\n').count();
        Refusal(format!(
            "cannot read {}: line {line} is not UTF-8 text: save the file as plain text in UTF-8",
            path.display()
        ))
    })
}

/// A file of any length, or the standard input for `-`, to be read bit by bit.
pub(super) fn open(path: &Path) -> Result<Box<dyn Read>, Refusal> {
    if path == Path::new("-") {
        return Ok(Box::new(stdin()));
    }
    READ.with_borrow_mut(|read| read.extend(path.canonicalize()));
    let file = File::open(path).map_err(|error| failed(path, error))?;
    if file.metadata().is_ok_and(|there| there.is_dir()) {
        return Err(failed(path, io::ErrorKind::IsADirectory.into()));
    }
    Ok(Box::new(file))
}

pub(super) fn failed(path: &Path, error: io::Error) -> Refusal {
    let why = match error.kind() {
        io::ErrorKind::NotFound => "there is no such file: check the name and the folder".to_owned(),
        io::ErrorKind::IsADirectory => "it is a folder: name a file in it".to_owned(),
        io::ErrorKind::PermissionDenied => "it may not be read by you: change its permissions".to_owned(),
        _ => error.to_string(),
    };
    Refusal(format!("cannot read {}: {why}", path.display()))
}

/// The bytes of a file, or of the standard input for `-`.
pub(super) fn bytes(path: &Path) -> Result<Vec<u8>, Refusal> {
    let bytes = if path == Path::new("-") {
        bytes_of(stdin().lock())
    } else {
        READ.with_borrow_mut(|read| read.extend(path.canonicalize()));
        File::open(path).and_then(bytes_of)
    };
    bounded(path, bytes.map_err(|error| failed(path, error))?)
}

pub(super) fn bounded(path: &Path, bytes: Vec<u8>) -> Result<Vec<u8>, Refusal> {
    if bytes.len() as u64 > MOST_BYTES {
        let most = MOST_BYTES >> 20;
        return Err(Refusal(format!("cannot read {}: it is longer than {most} MiB: split it", path.display())));
    }
    Ok(bytes)
}

/// One byte more than the most is enough to know that there are too many.
pub(super) fn bytes_of(source: impl Read) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    source.take(MOST_BYTES + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}
