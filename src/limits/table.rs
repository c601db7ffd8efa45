use super::{Audience, Conversion, Jurisdiction, Limit, Obtained, Purpose, TableError, Use, fit::Fit, parse};
use crate::{mix::Cas, text};
use std::sync::LazyLock;

/// Rows of `limits.csv`, each with its own source, date and basis.
const BUILT_IN: &str = include_str!("data/limits.csv");

static TABLES: LazyLock<Vec<Table>> = LazyLock::new(|| {
    // The text is part of the program and every row of it is read by the tests. If it could not be read, an empty
    // table would leave every substance unjudged, never within.
    let mut rows = parse::rows(BUILT_IN).unwrap_or_default();
    let mut rows_of = |jurisdiction: Jurisdiction| -> Vec<Limit> {
        rows.extract_if(.., |(code, _)| code == jurisdiction.code()).map(|(_, limit)| limit).collect()
    };
    let union = rows_of(Jurisdiction::EuropeanUnion);
    let table = |jurisdiction: Jurisdiction| {
        let rows = match jurisdiction {
            Jurisdiction::EuropeanUnion => union.clone(),
            // A member of the union: its law holds, and the country may add to it.
            Jurisdiction::Poland => union.iter().cloned().chain(rows_of(jurisdiction)).collect(),
            other => rows_of(other),
        };
        Table::new(jurisdiction.words().to_owned(), rows)
    };
    Jurisdiction::ALL.iter().copied().map(table).collect()
});

/// Limits of one jurisdiction, or the user's own.
///
/// No table is complete. A substance that is not in it is not judged; it is never "without limit".
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    title: String,
    rows: Vec<Limit>,
    /// CAS key and row, sorted, so that looking up an ingredient does not read the whole table.
    by_cas: Vec<(u32, u32)>,
}

impl Table {
    fn new(title: String, rows: Vec<Limit>) -> Self {
        let keys = rows.iter().zip(0..).flat_map(|(row, at)| row.cas.iter().map(move |cas| (cas.key(), at)));
        let mut by_cas: Vec<(u32, u32)> = keys.collect();
        by_cas.sort_unstable();
        Self { title, rows, by_cas }
    }

    /// The built-in table of a jurisdiction; it is read once, on first use.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Jurisdiction, Table};
    ///
    /// assert_eq!(Table::of(Jurisdiction::GreatBritain).title(), "Great Britain");
    /// ```
    #[must_use]
    pub fn of(jurisdiction: Jurisdiction) -> &'static Self {
        static NONE: Table = Table { title: String::new(), rows: Vec::new(), by_cas: Vec::new() };
        let at = Jurisdiction::ALL.iter().position(|j| *j == jurisdiction);
        at.and_then(|at| TABLES.get(at)).unwrap_or(&NONE)
    }

    /// Reads a table of the user's own, in the shape of the built-in one.
    ///
    /// Comma-separated, one header line. Needed: `id`, `rule`, `substance`, `applies_to`, `user`, `figure`, `unit`,
    /// `measured`; helpful: `cas`, `group`, `expressed_as`, `sum_group`, `conditions`, `legal_reference`, `list_date`,
    /// `sources`, `how`. Without `how` a row counts as stated by the user.
    ///
    /// # Errors
    ///
    /// [`TableError`] with the line, the column, what is there and what could be.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::Table;
    ///
    /// let house = Table::from_csv("house rule", "\
    /// id,rule,substance,cas,applies_to,user,figure,unit,measured,expressed_as,legal_reference
    /// house-1,maximum,Hydrogen peroxide,7722-84-1,hair,professional,9,%,as-applied,h2o2-released,our insurer 2026
    /// ")?;
    /// assert_eq!(house.rows()[0].figure, "9 %");
    /// # Ok::<(), foilwork::limits::TableError>(())
    /// ```
    pub fn from_csv(title: impl Into<String>, csv: &str) -> Result<Self, TableError> {
        // The title heads every listing and report: one line, in which nothing acts.
        let title = text::inert(&title.into()).replace('\n', " ");
        Ok(Self::new(title, parse::rows(csv)?.into_iter().map(|(_, limit)| limit).collect()))
    }

    /// This table with the rows of another: a row with a known id replaces the old one, the others are added.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Jurisdiction, Table};
    ///
    /// let house = Table::from_csv("house", "\
    /// id,rule,substance,cas,applies_to,user,figure,unit,measured
    /// EU-III-22-ox,maximum,Resorcinol,108-46-3,oxidative,all,1,%,as-applied
    /// ")?;
    /// let eu = Table::of(Jurisdiction::EuropeanUnion);
    /// assert_eq!(eu.overlaid(&house).rows().len(), eu.rows().len()); // one row replaced, none added
    /// # Ok::<(), foilwork::limits::TableError>(())
    /// ```
    #[must_use]
    pub fn overlaid(&self, other: &Self) -> Self {
        let replaced = |row: &&Limit| !other.rows.iter().any(|new| new.id == row.id);
        let rows = self.rows.iter().filter(replaced).chain(&other.rows).cloned().collect();
        Self::new(format!("{} with {}", self.title, other.title), rows)
    }

    /// The rows that concern a substance, a kind of product, a kind of user, or all of these together; none leaves open.
    ///
    /// A substance is a CAS number, a name or part of a name; what sets it free or is its salt leads to its row too.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Audience, Jurisdiction, Purpose, Table};
    ///
    /// let eu = Table::of(Jurisdiction::EuropeanUnion);
    /// let rows = eu.concerning(Some("sodium percarbonate"), Some(Purpose::Lightening), Some(Audience::Professional));
    /// assert_eq!(rows.rows()[0].id, "EU-III-12-hair");
    /// ```
    #[must_use]
    pub fn concerning(&self, substance: Option<&str>, purpose: Option<Purpose>, audience: Option<Audience>) -> Self {
        let used = |row: &Limit| {
            let purposes = Purpose::ALL.iter().filter(|of| purpose.is_none_or(|asked| asked == **of));
            let audiences = || Audience::ALL.iter().filter(|who| audience.is_none_or(|asked| asked == **who));
            let mut uses = purposes.flat_map(|p| audiences().map(|a| Use { purpose: *p, audience: *a }));
            uses.any(|of| of.fit(row) == Fit::Applies)
        };
        let any_use = purpose.is_none() && audience.is_none();
        let named =
            substance.map(|text| (text.trim().to_lowercase(), text.parse().ok().or_else(|| Cas::of_name(text))));
        let names = |row: &Limit| match &named {
            None => true,
            Some((_, Some(cas))) => {
                let counted = |known: &Conversion| known.from == *cas && row.expressed_as == Some(known.to);
                let mut of_row = Conversion::all().iter().filter(|known| counted(known));
                row.cas.contains(cas) || of_row.any(|known| row.cas.contains(&known.counted))
            }
            Some((text, None)) => row.substance.to_lowercase().contains(text.as_str()),
        };
        let rows = self.rows.iter().filter(|row| names(row) && (any_use || used(row))).cloned().collect();
        Self::new(self.title.clone(), rows)
    }

    /// The name of the jurisdiction, or what the user calls the table.
    #[must_use]
    pub fn title(&self) -> &str {
        &self.title
    }

    /// Every row, judged or not.
    #[must_use]
    pub fn rows(&self) -> &[Limit] {
        &self.rows
    }

    /// How many rows are from memory, and so never make a finding green.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Jurisdiction, Table};
    ///
    /// let japan = Table::of(Jurisdiction::Japan);
    /// assert_eq!((japan.rows().len(), japan.unverified()), (1, 1));
    /// ```
    #[must_use]
    pub fn unverified(&self) -> usize {
        self.rows.iter().filter(|row| row.obtained == Obtained::FromMemory).count()
    }

    /// Rows that name this CAS number.
    pub(super) fn naming(&self, cas: Cas) -> impl Iterator<Item = usize> + '_ {
        let start = self.by_cas.partition_point(|(key, _)| *key < cas.key());
        let from = self.by_cas.get(start..).unwrap_or_default();
        from.iter().take_while(move |(key, _)| *key == cas.key()).map(|(_, row)| *row as usize)
    }
}
