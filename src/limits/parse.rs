use super::{AppliesTo, Limit, LimitRule, Obtained};
use crate::{
    choice::Choice,
    mix::Cas,
    quantity::MassFraction,
    source::{self, Citation},
    text::{Lines, inert},
};
use csv::{ReaderBuilder, StringRecord};
use std::str::FromStr;

/// A table that cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum TableError {
    /// Not comma-separated values with one header line.
    #[error("invalid limit table: {0}")]
    Csv(String),
    /// A column that must be there.
    #[error(
        "invalid limit table: the column \"{0}\" is missing (needed: id, rule, substance, applies_to, user, figure, \
         unit, measured)"
    )]
    MissingColumn(&'static str),
    /// A field that cannot be read.
    #[error("invalid limit table, line {line}: {column} is \"{value}\", must be {allowed}")]
    Field {
        /// Line of the text, counted from 1.
        line: usize,
        /// Column name.
        column: &'static str,
        /// What is there.
        value: String,
        /// What could be there.
        allowed: String,
    },
    /// Two rows with one key.
    #[error("invalid limit table, line {line}: the id \"{id}\" is used twice")]
    Duplicate {
        /// Line of the second one.
        line: usize,
        /// The key.
        id: String,
    },
}

const NEEDED: [&str; 8] = ["id", "rule", "substance", "applies_to", "user", "figure", "unit", "measured"];

/// Reads the rows of a table; each comes with the text of its `jurisdiction` column.
pub(super) fn rows(text: &str) -> Result<Vec<(String, Limit)>, TableError> {
    let lines = Lines::of(text);
    let broken = |error: csv::Error| match error.kind() {
        csv::ErrorKind::UnequalLengths { pos, expected_len, len } => TableError::Csv(format!(
            "line {}: {len} fields under {expected_len} column names (quote a field that holds a comma)",
            lines.of_record(pos.as_ref())
        )),
        _ => TableError::Csv(error.to_string()),
    };
    let mut reader = ReaderBuilder::new().trim(csv::Trim::All).from_reader(text.as_bytes());
    let header = reader.headers().map_err(broken)?.clone();
    if let Some(missing) = NEEDED.into_iter().find(|name| !header.iter().any(|h| h == *name)) {
        return Err(TableError::MissingColumn(missing));
    }
    let mut rows: Vec<(String, Limit)> = Vec::new();
    let mut ids = std::collections::HashSet::new();
    for record in reader.records() {
        let record = record.map_err(broken)?;
        let line = lines.of_record(record.position());
        // What is shown of a row stays on its line, and nothing in it acts.
        let record: StringRecord = record.iter().map(|cell| inert(cell).replace('\n', " ")).collect();
        let row = Row { line, header: &header, record: &record };
        let limit = row.limit()?;
        if !ids.insert(limit.id.clone()) {
            return Err(TableError::Duplicate { line: row.line, id: limit.id });
        }
        rows.push((row.text("jurisdiction").to_owned(), limit));
    }
    Ok(rows)
}

struct Row<'r> {
    line: usize,
    header: &'r StringRecord,
    record: &'r StringRecord,
}

impl Row<'_> {
    fn text(&self, column: &str) -> &str {
        let at = self.header.iter().position(|name| name == column);
        at.and_then(|at| self.record.get(at)).unwrap_or_default()
    }

    fn bad(&self, column: &'static str, allowed: impl Into<String>) -> TableError {
        TableError::Field { line: self.line, column, value: self.text(column).to_owned(), allowed: allowed.into() }
    }

    fn choice<C: Choice + FromStr>(&self, column: &'static str) -> Result<C, TableError> {
        self.text(column).parse().map_err(|_| self.bad(column, format!("one of {}", C::CODES.join(", "))))
    }

    fn words(&self, column: &str) -> Vec<String> {
        self.text(column).split_whitespace().map(str::to_owned).collect()
    }

    fn limit(&self) -> Result<Limit, TableError> {
        let owned = |column: &str| self.text(column).to_owned();
        if self.text("id").is_empty() || self.text("substance").is_empty() {
            return Err(self.bad("id", "a key, and substance a name"));
        }
        let rule: LimitRule = self.choice("rule")?;
        let scopes = self.text("applies_to").split_whitespace().map(|code| code.parse().ok());
        let applies_to: Option<Vec<AppliesTo>> = scopes.collect();
        let expressed = match self.text("expressed_as") {
            "" | "as-stated" => None,
            form => Some(form.parse().map_err(|e| self.bad("expressed_as", format!("as-stated or a form; {e}")))?),
        };
        let obtained = match self.text("how") {
            "" => Obtained::Stated,
            _ => self.choice("how")?,
        };
        let concentration = self.concentration()?;
        if matches!(rule, LimitRule::Maximum | LimitRule::SupplyLimit | LimitRule::LicenceCeiling)
            && concentration.is_none()
        {
            return Err(self.bad("figure", "a number from 0 to 100 with the unit % or % w/w"));
        }
        Ok(Limit {
            id: owned("id"),
            issued_by: owned("issued_by"),
            rule,
            substance: owned("substance"),
            cas: self.cas()?,
            groups: self.words("group"),
            applies_to: applies_to.filter(|a| !a.is_empty()).ok_or_else(|| {
                self.bad("applies_to", format!("one or more of {}", <AppliesTo as Choice>::CODES.join(", ")))
            })?,
            use_as_worded: owned("use_as_worded"),
            users: self.choice("user")?,
            concentration: if rule == LimitRule::Prohibited { Some(MassFraction::ZERO) } else { concentration },
            figure: format!("{} {}", self.text("figure"), self.text("unit")).trim().to_owned(),
            unit_reading: owned("unit_reading"),
            above: self.text("comparison") == ">",
            band_from: self.percent("band_from")?,
            measured: self.choice("measured")?,
            basis_as_worded: owned("basis_as_worded"),
            expressed_as: expressed,
            sum_group: Some(owned("sum_group")).filter(|g| !g.is_empty()),
            conditions: owned("conditions"),
            legal_reference: owned("legal_reference"),
            list_date: owned("list_date"),
            citations: self.text("sources").split_whitespace().filter_map(citation).collect(),
            sources: owned("sources"),
            obtained,
            cross_check: owned("cross_check"),
            names: self.text("substance").split(';').map(|name| name.trim().to_lowercase()).collect(),
        })
    }

    /// The numbers of the row; without any, those of its names.
    fn cas(&self) -> Result<Vec<Cas>, TableError> {
        let numbers = self.text("cas");
        if numbers.is_empty() {
            return Ok(self.text("substance").split(';').filter_map(Cas::of_name).collect());
        }
        let read: Result<Vec<Cas>, _> = numbers.split_whitespace().map(str::parse).collect();
        read.map_err(|error| self.bad("cas", error.to_string()))
    }

    fn concentration(&self) -> Result<Option<MassFraction>, TableError> {
        let percent = matches!(self.text("unit"), "%" | "% w/w");
        if percent { self.percent("figure") } else { Ok(None) }
    }

    fn percent(&self, column: &'static str) -> Result<Option<MassFraction>, TableError> {
        if self.text(column).is_empty() {
            return Ok(None);
        }
        let value = self.text(column).parse().ok().and_then(|v| MassFraction::from_ww_percent(v).ok());
        value.map(Some).ok_or_else(|| self.bad(column, "a number from 0 to 100"))
    }
}

fn citation(id: &str) -> Option<&'static Citation> {
    source::register().find(|citation| citation.id == id)
}
