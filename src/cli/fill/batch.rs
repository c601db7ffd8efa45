//! Some rows at a time: their values out of the fields, through the rule, into the output or apart.

use super::{
    number::{guarded, number_in},
    rule::Rule,
};
use crate::{
    cli::Refusal,
    column::Cells,
    peroxide::stronger,
    quantity::MassFraction,
    source::Interval,
    text::{cell, shortened},
    workbook::ListInWorkbook,
};
use csv::ByteRecord;
use std::io::Write;

/// The most rows worked on at a time.
const ROWS: usize = 4_096;

/// The bytes of their fields that fill a batch before that many rows do.
const BYTES: usize = 16 << 20;

/// How many refused rows are listed on the terminal.
const LISTED: usize = 10;

/// Where a value of a rule comes from.
#[derive(Debug, Clone, Copy)]
pub(super) enum Source {
    /// A column of the table.
    Column(usize),
    /// One number for all rows.
    Number(f64),
}

/// What became of the rows so far.
#[derive(Debug, Default)]
pub(super) struct Tally {
    /// Rows with results, or with an empty one where a value is missing.
    pub(super) done: usize,
    /// Of these, those with an empty result.
    pub(super) missing: usize,
    /// Rows kept apart.
    pub(super) refused: usize,
    /// The first of them: line and reason.
    pub(super) listed: Vec<String>,
    /// The strongest peroxide in a row with a result of a rule whose results are poured from it.
    pub(super) strongest: Option<Interval<MassFraction>>,
}

/// Rows of the table that were not worked on yet.
pub(super) struct Batch<'a> {
    rule: &'a Rule<'a>,
    sources: &'a [Source],
    width: usize,
    rows: Vec<ByteRecord>,
    bytes: usize,
    lines: Vec<u64>,
    values: Vec<Vec<f64>>,
    results: Vec<Vec<f64>>,
    /// What is wrong with a row, with the column where it is of one.
    wrong: Vec<Option<(Option<usize>, String)>>,
    workbook: Option<&'a ListInWorkbook>,
}

impl<'a> Batch<'a> {
    pub(super) fn new(
        rule: &'a Rule<'a>,
        sources: &'a [Source],
        width: usize,
        workbook: Option<&'a ListInWorkbook>,
    ) -> Self {
        let (values, results) = (vec![Vec::new(); sources.len()], vec![Vec::new(); rule.results.len()]);
        Self {
            rule,
            sources,
            width,
            rows: Vec::new(),
            bytes: 0,
            lines: Vec::new(),
            values,
            results,
            wrong: Vec::new(),
            workbook,
        }
    }

    pub(super) fn is_full(&self) -> bool {
        self.rows.len() >= ROWS || self.bytes >= BYTES
    }

    /// Takes a row and reads its values; what cannot be read is told when the batch is worked off.
    pub(super) fn push(&mut self, row: ByteRecord, line: u64) {
        let mut wrong = (row.len() != self.width)
            .then(|| (None, format!("{} fields where the names are {}", row.len(), self.width)));
        for (values, source) in self.values.iter_mut().zip(self.sources) {
            values.push(match source {
                Source::Number(number) => *number,
                Source::Column(place) => number_in(row.get(*place).unwrap_or_default()).unwrap_or_else(|reason| {
                    wrong.get_or_insert((Some(*place), reason));
                    f64::NAN
                }),
            });
        }
        // Where a field ends is kept as well.
        self.bytes += row.as_slice().len() + row.len() * size_of::<usize>();
        self.rows.push(row);
        self.lines.push(line);
        self.wrong.push(wrong);
    }

    /// Works the rows off and writes each to where it belongs.
    pub(super) fn work(
        &mut self,
        good: &mut csv::Writer<impl Write>,
        apart: &mut Option<csv::Writer<impl Write>>,
        tally: &mut Tally,
    ) -> Result<(), Refusal> {
        for results in &mut self.results {
            results.clear();
            results.resize(self.rows.len(), f64::NAN);
        }
        let cells: Vec<Cells<'_>> = self.values.iter().map(Cells::from).collect();
        let own = if self.rule.file.guard { guarded } else { <[u8]>::to_vec };
        let _counted = (self.rule.kernel)(&cells, &mut self.results)?;
        for (place, (row, line)) in self.rows.iter().zip(&self.lines).enumerate() {
            let at = |column: &Vec<f64>| column.get(place).copied().unwrap_or(f64::NAN);
            let values: Vec<f64> = self.values.iter().map(at).collect();
            let results: Vec<f64> = self.results.iter().map(at).collect();
            let missing = results.iter().any(|result| result.is_nan());
            let mut wrong = self.wrong.get_mut(place).and_then(Option::take);
            if wrong.is_none() && missing && !values.iter().any(|value| value.is_nan()) {
                wrong = (self.rule.why)(&values).err().map(|Refusal(reason)| (None, reason));
            }
            let Some((column, reason)) = wrong else {
                let results =
                    results.iter().map(|result| if result.is_nan() { String::new() } else { result.to_string() });
                good.write_byte_record(&row.iter().map(own).chain(results.map(String::into_bytes)).collect())?;
                tally.done += 1;
                tally.missing += usize::from(missing);
                if !missing {
                    let poured = values.iter().take(self.rule.poured).copied().map(MassFraction::from_ww_percent);
                    tally.strongest = poured.flatten().map(Interval::exact).chain(tally.strongest).reduce(stronger);
                }
                continue;
            };
            if tally.listed.len() < LISTED {
                let place = match (self.workbook, column) {
                    (None, _) => format!("line {line}"),
                    (Some(list), None) => list.place(*line as usize, ""),
                    (Some(list), Some(column)) => {
                        format!("sheet {}, cell {}", list.sheet, list.cell(*line as usize, column))
                    }
                };
                tally.listed.push(shortened(&format!("{place}: {reason}")).into_owned());
            }
            tally.refused += 1;
            if let Some(apart) = apart {
                // Where the row stands in what was given: a table in a workbook need not begin in its first row.
                let stands = self.workbook.map_or(*line, |list| list.row(*line as usize) as u64);
                let at = self.workbook.zip(column).map(|(list, column)| list.cell(*line as usize, column));
                let reason = at.map_or_else(|| reason.clone(), |at| format!("cell {at}: {reason}"));
                // A reason repeats the field: where a spreadsheet would calculate from that, it would from the reason.
                let field = column.and_then(|column| row.get(column)).unwrap_or_default();
                let reason = if guarded(field) == field { reason } else { cell(&reason).into_owned() };
                let told = [stands.to_string().into_bytes(), reason.into_bytes()];
                apart.write_byte_record(&told.into_iter().chain(row.iter().map(own)).collect())?;
            }
        }
        self.rows.clear();
        self.bytes = 0;
        self.lines.clear();
        self.wrong.clear();
        self.values.iter_mut().for_each(Vec::clear);
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{cli::args::TableFileArgs, column::ColumnOutcome};

    /// Few long rows fill a batch, so that memory is bounded by more than their number.
    #[test]
    fn a_batch_is_full_by_bytes_too() {
        let file = TableFileArgs {
            table: "t.csv".into(),
            output: "o.csv".into(),
            refused: None,
            separator: ",".to_owned(),
            guard: false,
        };
        let rule = Rule {
            file: &file,
            inputs: Vec::new(),
            results: Vec::new(),
            poured: 0,
            kernel: Box::new(|_, _| Ok(ColumnOutcome::default())),
            why: Box::new(|_| Ok(())),
        };
        let mut batch = Batch::new(&rule, &[], 1, None);
        let long = "x".repeat(9 << 20);
        batch.push(ByteRecord::from(vec![long.as_str()]), 2);
        assert!(!batch.is_full());
        batch.push(ByteRecord::from(vec![long.as_str()]), 3);
        assert!(batch.is_full());
        let worked = batch.work(
            &mut csv::Writer::from_writer(Vec::new()),
            &mut None::<csv::Writer<Vec<u8>>>,
            &mut Tally::default(),
        );
        assert!(worked.is_ok());
        assert!(!batch.is_full());
    }
}
