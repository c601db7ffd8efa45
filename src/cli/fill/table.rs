//! The table from its first line to its last: rows stream through, and the files appear when all went well.

use super::{
    batch::{Batch, Source, Tally},
    number::{guarded, number_for_all_rows},
    rule::Rule,
};
use crate::{
    cli::{
        Answer, Outcome, Refusal,
        args::{FillArgs, TableFileArgs},
        replace::Pending,
        workbook::open_list,
    },
    peroxide::cautions,
    text::{count, wrapped},
};
use csv::{ByteRecord, ReaderBuilder, WriterBuilder};
use std::{
    cell::Cell,
    fmt::Write as _,
    io::{self, BufWriter, Read},
    path::{Path, PathBuf},
    rc::Rc,
};

/// The most bytes of one row: a quotation mark that is not closed would swallow the rest of the file.
const MOST_BYTES_OF_A_ROW: u64 = 16 << 20;

/// `foilwork fill`: further columns for a table of any length; memory does not grow with it.
pub(crate) fn run(args: &FillArgs) -> Outcome {
    let rule = Rule::of(&args.rule)?;
    let separator = separator(rule.file)?;
    let wrong = |error: csv::Error| cannot_read(&rule.file.table, error);
    let since_row = Rc::new(Cell::new(0));
    let (source, workbook) = open_list(&rule.file.table)?;
    for (option, path) in [("--output", Some(&rule.file.output)), ("--refused", rule.file.refused.as_ref())] {
        written_as_csv(option, path.map(PathBuf::as_path))?;
    }
    let source = Bounded { source, since_row: Rc::clone(&since_row) };
    let between = if workbook.is_some() { b',' } else { separator };
    let mut reader = ReaderBuilder::new().flexible(true).delimiter(between).from_reader(source);
    let names = reader.byte_headers().map_err(wrong)?.clone();
    let sources = sources(&rule, &names)?;

    let output = Pending::begin(&rule.file.output)?;
    let refused = rule.file.refused.as_deref().map(Pending::begin).transpose()?;
    if refused.as_ref().is_some_and(|refused| refused.same_target(&output)) {
        return Err(Refusal("--refused: it is the output: name another file".to_owned()));
    }
    let writer = |pending: &Pending| {
        Ok::<_, Refusal>(
            WriterBuilder::new().flexible(true).delimiter(separator).from_writer(BufWriter::new(pending.file()?)),
        )
    };
    let (mut good, mut apart) = (writer(&output)?, refused.as_ref().map(writer).transpose()?);
    let shown: ByteRecord = if rule.file.guard { names.iter().map(guarded).collect() } else { names.clone() };
    good.write_byte_record(&with(shown.iter(), rule.results.iter().map(String::as_bytes)))?;
    if let Some(apart) = &mut apart {
        apart.write_byte_record(&with([&b"line"[..], b"reason"].into_iter(), shown.iter()))?;
    }

    let (mut batch, mut tally) = (Batch::new(&rule, &sources, names.len(), workbook.as_ref()), Tally::default());
    let mut row = ByteRecord::new();
    while reader.read_byte_record(&mut row).map_err(wrong)? {
        since_row.set(0);
        let line = row.position().map_or(0, csv::Position::line);
        batch.push(std::mem::take(&mut row), line);
        if batch.is_full() {
            batch.work(&mut good, &mut apart, &mut tally)?;
        }
    }
    batch.work(&mut good, &mut apart, &mut tally)?;
    if tally.refused > 0 && apart.is_none() {
        let list = listed(&tally);
        let rows = count(tally.refused, "row", "rows");
        let them = if tally.refused == 1 { "it" } else { "them" };
        return Err(Refusal(format!("{list}{rows} cannot be: mend {them}, or keep {them} apart with --refused")));
    }
    good.flush()?;
    drop(good);
    // First what was kept apart: a table without it would have lost rows.
    if let (Some(mut apart), Some(refused)) = (apart, refused) {
        apart.flush()?;
        drop(apart);
        refused.finish()?;
    }
    output.finish()?;
    Ok(Answer::fine(summary(&rule, &tally)?))
}

fn with<'a>(first: impl Iterator<Item = &'a [u8]>, then: impl Iterator<Item = &'a [u8]>) -> ByteRecord {
    first.chain(then).collect()
}

/// No name may promise another format: every program that opens such a file would refuse it.
fn written_as_csv(option: &str, path: Option<&Path>) -> Result<(), Refusal> {
    let Some(path) = path else { return Ok(()) };
    let ending = path.extension().map(|ending| ending.to_string_lossy().to_lowercase()).unwrap_or_default();
    if ["parquet", "arrow", "feather", "ipc", "xlsx", "xlsm", "xls", "ods"].contains(&ending.as_str()) {
        let why = "rows of a CSV file or a workbook are written as CSV (give it another ending, such as .csv)";
        return Err(Refusal(format!("{option} {}: {why}", path.display())));
    }
    Ok(())
}

fn separator(file: &TableFileArgs) -> Result<u8, Refusal> {
    match file.separator.as_bytes() {
        [sign] if sign.is_ascii() && !matches!(sign, b'"' | b'\n' | b'\r') => Ok(*sign),
        _ if file.separator == "\\t" => Ok(b'\t'),
        _ => Err(Refusal(format!("--separator {:?}: give one character, such as ; or \\t", file.separator))),
    }
}

/// Where each value of the rule comes from.
fn sources(rule: &Rule<'_>, names: &ByteRecord) -> Result<Vec<Source>, Refusal> {
    let known: Vec<String> = names.iter().map(|name| String::from_utf8_lossy(name).trim().to_owned()).collect();
    for result in &rule.results {
        if known.contains(result) {
            return Err(Refusal(format!("the table has a column {result} already: rename it")));
        }
    }
    let source = |(option, value): &(&str, &str)| {
        let places: Vec<usize> =
            known.iter().enumerate().filter(|(_, name)| *name == value).map(|(place, _)| place).collect();
        match places.as_slice() {
            [place] => Ok(Source::Column(*place)),
            [] => number_for_all_rows(option, value, &known).map(Source::Number).map_err(Refusal),
            _ => Err(Refusal(format!("{option}: the table has {} columns {value:?}: rename them", places.len()))),
        }
    };
    rule.inputs.iter().map(source).collect()
}

fn listed(tally: &Tally) -> String {
    let mut text = String::new();
    for problem in &tally.listed {
        text.push_str(problem);
        text.push('\n');
    }
    text
}

fn summary(rule: &Rule<'_>, tally: &Tally) -> Result<String, Refusal> {
    let mut text = format!("{} in {}", count(tally.done, "row", "rows"), rule.file.output.display());
    if tally.missing > 0 {
        write!(text, ", {} of them without a result: a value is missing", tally.missing)?;
    }
    text.push('\n');
    if let Some(path) = &rule.file.refused {
        writeln!(text, "{} kept apart in {}", count(tally.refused, "row", "rows"), path.display())?;
    }
    for line in listed(tally).lines() {
        writeln!(text, "  {line}")?;
    }
    if tally.refused > tally.listed.len() {
        writeln!(text, "  and {} more", tally.refused - tally.listed.len())?;
    }
    if let Some(strongest) = tally.strongest {
        for paragraph in cautions(strongest) {
            for line in wrapped(&paragraph) {
                writeln!(text, "{line}")?;
            }
        }
    }
    Ok(text)
}

fn cannot_read(path: &Path, error: csv::Error) -> Refusal {
    Refusal(format!("cannot read {}: {error}", path.display()))
}

/// A reader that stops in a row that is too long to be one.
struct Bounded {
    source: Box<dyn Read>,
    since_row: Rc<Cell<u64>>,
}

impl Read for Bounded {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let count = self.source.read(buffer)?;
        self.since_row.set(self.since_row.get() + count as u64);
        if self.since_row.get() > MOST_BYTES_OF_A_ROW {
            let most = MOST_BYTES_OF_A_ROW >> 20;
            return Err(io::Error::other(format!("a row is longer than {most} MiB: is a quotation mark not closed?")));
        }
        Ok(count)
    }
}
