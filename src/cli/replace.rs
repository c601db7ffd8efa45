//! Writing a file so that nobody loses one: a reader sees the old text or the new one, never half of one.

use super::{Refusal, input::was_read};
use std::{
    fs::{self, File, Metadata, OpenOptions, Permissions},
    io::{self, ErrorKind, Write},
    path::{Path, PathBuf},
    time::{Duration, SystemTime},
};
use tempfile::NamedTempFile;

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
pub(super) fn replace(path: &Path, text: &[u8]) -> Result<(), String> {
    let mut pending = Pending::of(path)?;
    pending.place.file_mut().write_all(text).map_err(words)?;
    pending.end()
}

/// A file that is being written: it stands under its name when it is finished, and leaves no trace before.
pub(super) struct Pending {
    path: PathBuf,
    place: Place,
}

enum Place {
    /// A device or a pipe.
    There(File),
    /// A new file beside the target, with what the old one may do.
    Beside(Box<NamedTempFile>, PathBuf, Option<Permissions>),
}

impl Place {
    fn file_mut(&mut self) -> &mut File {
        match self {
            Self::There(file) => file,
            Self::Beside(file, ..) => file.as_file_mut(),
        }
    }
}

impl Pending {
    /// Makes ready to write to a path, by the rules of [`replace`].
    pub(super) fn begin(path: &Path) -> Result<Self, Refusal> {
        Self::of(path).map_err(|why| Refusal(format!("cannot write {}: {why}", path.display())))
    }

    /// The file to write into.
    pub(super) fn file(&self) -> Result<File, Refusal> {
        let file = match &self.place {
            Place::There(file) => file.try_clone(),
            Place::Beside(file, ..) => file.as_file().try_clone(),
        };
        file.map_err(|why| Refusal(format!("cannot write {}: {}", self.path.display(), words(why))))
    }

    /// Whether both would stand under one name, however it is written.
    pub(super) fn same_target(&self, other: &Self) -> bool {
        self.target() == other.target()
    }

    /// The name in its folder, without links and detours; the file itself may not be there yet.
    fn target(&self) -> PathBuf {
        let Place::Beside(_, target, _) = &self.place else {
            return self.path.canonicalize().unwrap_or_else(|_| self.path.clone());
        };
        match (folder_of(target).canonicalize(), target.file_name()) {
            (Ok(folder), Some(name)) => folder.join(name),
            _ => target.clone(),
        }
    }

    /// Puts the file under its name.
    pub(super) fn finish(self) -> Result<(), Refusal> {
        let path = self.path.clone();
        self.end().map_err(|why| Refusal(format!("cannot write {}: {why}", path.display())))
    }

    fn of(path: &Path) -> Result<Self, String> {
        let place = match fs::metadata(path) {
            Ok(there) if there.is_dir() => return Err("it is a folder: name a file in it".to_owned()),
            Ok(there) if !there.is_file() || is_of_the_system(path) => {
                OpenOptions::new().append(true).open(path).map(Place::There).map_err(words)?
            }
            Ok(there) => over_a_file(path, &there)?,
            Err(error) if error.kind() == ErrorKind::NotFound => beside(end_of_links(path), None).map_err(words)?,
            Err(error) => return Err(words(error)),
        };
        Ok(Self { path: path.to_path_buf(), place })
    }

    fn end(self) -> Result<(), String> {
        match self.place {
            Place::There(mut file) => file.flush().map_err(words),
            Place::Beside(file, target, permissions) => under_its_name(*file, &target, permissions).map_err(words),
        }
    }
}

fn over_a_file(path: &Path, there: &Metadata) -> Result<Place, String> {
    let target = path.canonicalize().map_err(words)?;
    if was_read(&target) {
        return Err("this command reads it: name another file".to_owned());
    }
    if there.permissions().readonly() {
        return Err("it is read-only: name another file, or change its permissions".to_owned());
    }
    beside(target, Some(there.permissions())).map_err(words)
}

/// `/dev/stdout` may stand for a regular file that a shell has opened: it must be written into, not replaced.
fn is_of_the_system(path: &Path) -> bool {
    ["/dev", "/proc"].iter().any(|folder| path.starts_with(folder))
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

fn folder_of(target: &Path) -> &Path {
    target.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

fn beside(target: PathBuf, permissions: Option<Permissions>) -> io::Result<Place> {
    let folder = folder_of(&target);
    clear_stale(folder);
    let file = tempfile::Builder::new()
        .prefix(PREFIX)
        .suffix(SUFFIX)
        .make_in(folder, |name| OpenOptions::new().write(true).create_new(true).open(name))?;
    Ok(Place::Beside(Box::new(file), target, permissions))
}

fn under_its_name(file: NamedTempFile, target: &Path, permissions: Option<Permissions>) -> io::Result<()> {
    if let Some(permissions) = permissions {
        file.as_file().set_permissions(permissions)?;
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
