//! A line at the end of a file that grows.

use std::{
    fs::{File, OpenOptions},
    io::{Error, Read, Seek, SeekFrom, Write},
    path::Path,
};

/// So much of a file is looked at for what it holds.
const LOOKED_AT: u64 = 65_536;

/// One write at the end of the file, after a line break if the last line was torn; what stands there is never touched. Nothing is
/// written to a file that holds something else: no line of its begin has `every`, which each line of such a file has.
pub(super) fn append(path: &Path, heading: &str, line: &str, every: &str) -> std::io::Result<()> {
    let mut begin = Vec::new();
    if let Ok(file) = File::open(path) {
        file.take(LOOKED_AT).read_to_end(&mut begin)?;
    }
    let begin = String::from_utf8_lossy(&begin);
    // A first line that was torn may not have come that far.
    let lines = begin.trim_end().contains('\n');
    let json = begin.trim_start_matches('\u{feff}').trim_start();
    let torn = !lines && (json.is_empty() || json.starts_with('{'));
    if !begin.contains(every) && !torn {
        return Err(Error::other(format!("it holds something else, no line with {every} (nothing is written)")));
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
