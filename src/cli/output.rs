use super::{
    Answer, Outcome, Refusal,
    args::{OutputArgs, ReportArgs},
};
use serde::Serialize;
use std::{
    fs,
    io::{Read, Write, stdin},
    path::Path,
};

/// The text of a file, or of the standard input for `-`.
pub(super) fn read(path: &Path) -> Result<String, Refusal> {
    let failed = |error: std::io::Error| Refusal(format!("cannot read {}: {error}", path.display()));
    if path == Path::new("-") {
        let mut text = String::new();
        stdin().read_to_string(&mut text).map_err(failed)?;
        return Ok(text);
    }
    fs::read_to_string(path).map_err(failed)
}

/// Prints the text, or writes it to the file asked for; the status stays what it is.
pub(super) fn deliver(text: String, status: u8, output: &OutputArgs) -> Outcome {
    let Some(path) = &output.output else { return Ok(Answer { text, status }) };
    replace(path, &text).map_err(|error| Refusal(format!("cannot write {}: {error}", path.display())))?;
    Ok(Answer { text: String::new(), status })
}

/// Prints or writes the data as JSON, or else the text made of it.
pub(super) fn report(args: &ReportArgs, data: &impl Serialize, text: impl FnOnce() -> String) -> Outcome {
    let text = if args.json { serde_json::to_string_pretty(data)? + "\n" } else { text() };
    deliver(text, 0, &args.output)
}

/// Writes beside the target and renames: whoever looks sees the old file or the new one, never half of one.
fn replace(path: &Path, text: &str) -> std::io::Result<()> {
    let folder = path.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut file = tempfile::Builder::new()
        .prefix(".foilwork-")
        .make_in(folder, |name| fs::OpenOptions::new().write(true).create_new(true).open(name))?;
    file.write_all(text.as_bytes())?;
    file.as_file().sync_all()?;
    file.persist(path).map_err(|error| error.error)?;
    Ok(())
}
