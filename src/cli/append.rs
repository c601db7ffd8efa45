//! A line at the end of a file that grows.

use std::{
    fs::OpenOptions,
    io::{Read, Seek, SeekFrom, Write},
    path::Path,
};

/// One write at the end of the file, after a line break if the last line was torn; what stands there is never touched.
pub(super) fn append(path: &Path, heading: &str, line: &str) -> std::io::Result<()> {
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
