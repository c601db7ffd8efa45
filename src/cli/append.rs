//! A line at the end of a file that grows.

use std::{
    fs::{File, OpenOptions},
    io::{Error, Read, Seek, SeekFrom, Write},
    path::Path,
};

/// So much of a file is looked at for what it holds.
const LOOKED_AT: u64 = 65_536;

/// One write at the end of the file, after a line break if the last line was torn; what stands there is never touched. Nothing is
/// written to a file that holds something else: `own` finds no line of its kind in the begin of it.
pub(super) fn append(path: &Path, heading: &str, line: &str, own: impl Fn(&str) -> bool) -> std::io::Result<()> {
    let mut begin = Vec::new();
    // A pipe would be waited for.
    if path.is_file() {
        File::open(path)?.take(LOOKED_AT).read_to_end(&mut begin)?;
    }
    let begin = String::from_utf8_lossy(&begin);
    // Lines that were torn before any other came to its end may be of its kind.
    let torn = |line: &str| line.is_empty() || line.starts_with('{') && !line.ends_with('}') && line.len() > 1;
    let all_torn = begin.trim_start_matches('\u{feff}').lines().map(str::trim).all(torn);
    if !all_torn && !own(&begin) {
        return Err(Error::other("it holds something else (nothing is written; name a file of its own)"));
    }
    let mut file = OpenOptions::new().read(true).append(true).create(true).open(path)?;
    let length = file.seek(SeekFrom::End(0))?;
    let mut text = String::new();
    if length == 0 {
        text.push_str(heading);
    } else {
        let mut last = [0];
        file.seek(SeekFrom::End(-1))?;
        file.read_exact(&mut last)?;
        if last != *b"\n" {
            text.push('\n');
        }
    }
    text.push_str(line);
    file.write_all(text.as_bytes())?;
    file.sync_all()
}
