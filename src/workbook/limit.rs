//! The ceiling that a page holds its strengths against while they are changed.
//!
//! A page says when a strength is above it. It never says that one below is safe: then the cell only says what it was held
//! against.

use super::{WorkbookError, page::Page, sources::Rests};
use crate::{
    limits::{Jurisdiction, Limit, Purpose, Use, check_peroxide},
    quantity::MassFraction,
    source::Interval,
    text::number,
};

/// Stands under what may be changed where strength or mass is among it.
const UNCHECKED: &str = "A CHANGED NUMBER IS NOT CHECKED against law, hair, history or the products' instructions: what follows \
                         from it is arithmetic only.";

/// The least ceiling on peroxide that a table has for work on the hair in a salon.
#[derive(Clone, Copy)]
pub(super) struct Ceiling {
    pub(super) ww_percent: f64,
    row: &'static Limit,
    of: Jurisdiction,
    /// Whose law was asked for.
    asked: Option<Jurisdiction>,
}

impl Ceiling {
    /// That of the law stated; the one of the European Union where none is, or where its table has none.
    pub(super) fn of(asked: Option<Jurisdiction>) -> Option<Self> {
        let found = |of: Jurisdiction| least(of).map(|(strength, row)| (strength.ww_percent(), row, of));
        let (ww_percent, row, of) = asked.and_then(found).or_else(|| found(Jurisdiction::EuropeanUnion))?;
        Some(Self { ww_percent, row, of, asked })
    }

    /// Its figure, as it stands in the words of a cell.
    pub(super) fn figure(self) -> String {
        format!("{} % w/w", number(self.ww_percent, 2))
    }

    /// Whether a formula in % w/w passes it, as a formula.
    pub(super) fn passed_by(strength: &str) -> String {
        // The ninth decimal is as far as numbers of a spreadsheet are trusted.
        format!("ROUND({strength},9)>limit_ww_percent")
    }

    /// Whether a strength passes it.
    pub(super) fn is_passed_by(self, ww_percent: f64) -> bool {
        (ww_percent * 1e9).round() / 1e9 > self.ww_percent
    }

    /// The row that names it, and whose it is.
    pub(super) fn named(self, page: &mut Page) -> Result<(), WorkbookError> {
        page.named_number("limit_ww_percent", "ceiling held against, % w/w", self.ww_percent, 2)?;
        let memory = if self.row.obtained.is_verified() { "" } else { ", from memory and unverified" };
        let whose = match self.asked {
            Some(asked) if asked == self.of => format!("{asked}{memory}"),
            Some(asked) => {
                format!("{}: the table has none for {asked}, which does not mean that there is none", self.of)
            }
            None => format!("{}: no jurisdiction is stated, and yours may have another", self.of),
        };
        page.paragraph(&format!(
            "Peroxide on the hair, as ready for use: at most {} ({whose}; {}). Only the peroxide of the bottles is counted, not \
             what a powder may release. Below a ceiling nothing is said of hair, skin or product.",
            self.figure(),
            self.row.legal_reference
        ))
    }

    pub(super) fn rests(self) -> Rests {
        Rests::new(format!("ceiling of {}", self.figure()), "law", self.row)
    }
}

fn least(of: Jurisdiction) -> Option<(MassFraction, &'static Limit)> {
    // Which rows bear on a use does not depend on the strength.
    let probe = Interval::exact(MassFraction::from_ww_percent(1.0).ok()?);
    let rows = [Purpose::Lightening, Purpose::OxidativeColour].into_iter().flat_map(|purpose| {
        let report = check_peroxide(of, probe, Use::professional(purpose));
        report.judgements.into_iter().filter_map(|judgement| judgement.limit).filter(|row| row.is_ceiling())
    });
    let known = rows.filter_map(|row| Some((row.concentration?, row)));
    known.min_by(|(one, _), (other, _)| one.ww_percent().total_cmp(&other.ww_percent()))
}

/// Says under what may be changed that nobody checks it again.
pub(super) fn unchecked(page: &mut Page, more: &str) -> Result<(), WorkbookError> {
    let told = if more.is_empty() { UNCHECKED.to_owned() } else { format!("{UNCHECKED} {more}") };
    page.paragraph(&told)?;
    page.row += 1;
    Ok(())
}
