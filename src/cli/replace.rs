//! Writing a file so that nobody loses one: a reader sees the old text or the new one, never half of one.

use super::input::was_read;
use std::{
    fs::{self, Metadata, OpenOptions},
    io::{self, ErrorKind, Write},
    path::{Path, PathBuf},
    time::{Duration, SystemTime},
};

/// What a file is called while it is being written.
const PREFIX: &str = ".foilwork-";
/// And its ending: both together are ours alone.
const SUFFIX: &str = ".part";
/// A part that is older than this belongs to a command that was killed.
const STALE: Duration = Duration::from_secs(3_600);

/// Writes the text to a path.
///
/// A regular file is written beside the old one and renamed over it, with the permissions of the old one; a link is
/// followed. A device or a pipe is written into. A file that this command has read, or that is read-only, is refused.
pub(super) fn replace(path: &Path, text: &str) -> Result<(), String> {
    match fs::metadata(path) {
        Ok(there) if there.is_dir() => Err("it is a folder: name a file in it".to_owned()),
        Ok(there) if !there.is_file() || is_of_the_system(path) => into_what_is_there(path, text).map_err(words),
        Ok(there) => over_a_file(path, &there, text),
        Err(error) if error.kind() == ErrorKind::NotFound => {
            let target = end_of_links(path);
            write_beside(&target, None, text).map_err(words)
        }
        Err(error) => Err(words(error)),
    }
}

fn over_a_file(path: &Path, there: &Metadata, text: &str) -> Result<(), String> {
    let target = path.canonicalize().map_err(words)?;
    if was_read(&target) {
        return Err("this command reads it: name another file".to_owned());
    }
    if there.permissions().readonly() {
        return Err("it is read-only: name another file, or change its permissions".to_owned());
    }
    write_beside(&target, Some(there), text).map_err(words)
}

/// `/dev/stdout` may stand for a regular file that a shell has opened: it must be written into, not replaced.
fn is_of_the_system(path: &Path) -> bool {
    ["/dev", "/proc"].iter().any(|folder| path.starts_with(folder))
}

fn into_what_is_there(path: &Path, text: &str) -> io::Result<()> {
    let mut file = OpenOptions::new().append(true).open(path)?;
    file.write_all(text.as_bytes())?;
    file.flush()
}

/// Where a link leads whose target is not there yet.
fn end_of_links(path: &Path) -> PathBuf {
    let mut end = path.to_path_buf();
    // As many steps as common systems follow.
    for _ in 0..40 {
        let Ok(next) = fs::read_link(&end) else { break };
        end = end.parent().unwrap_or(Path::new("")).join(next);
    }
    end
}

fn write_beside(target: &Path, old: Option<&Metadata>, text: &str) -> io::Result<()> {
    let folder = target.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
    clear_stale(folder);
    let mut file = tempfile::Builder::new()
        .prefix(PREFIX)
        .suffix(SUFFIX)
        .make_in(folder, |name| OpenOptions::new().write(true).create_new(true).open(name))?;
    file.write_all(text.as_bytes())?;
    if let Some(old) = old {
        file.as_file().set_permissions(old.permissions())?;
    }
    file.as_file().sync_all()?;
    file.persist(target).map_err(|error| error.error)?;
    Ok(())
}

/// Removes what killed commands have left; that it cannot be removed is no reason not to write.
fn clear_stale(folder: &Path) {
    let now = SystemTime::now();
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = entry.file_name();
        let ours = name.to_str().is_some_and(|name| name.starts_with(PREFIX) && name.ends_with(SUFFIX));
        let is_stale = || {
            let there = entry.metadata().ok().filter(Metadata::is_file)?;
            now.duration_since(there.modified().ok()?).ok().filter(|age| *age > STALE)
        };
        if ours && is_stale().is_some() {
            let _ = fs::remove_file(entry.path());
        }
    }
}

fn words(error: io::Error) -> String {
    match error.kind() {
        ErrorKind::NotFound => "there is no such folder: make it first".to_owned(),
        ErrorKind::PermissionDenied => "the folder or the file may not be written by you".to_owned(),
        // A temporary file's name says nothing to anyone.
        ErrorKind::StorageFull => "the disk is full: nothing was changed".to_owned(),
        _ => error.to_string(),
    }
}
