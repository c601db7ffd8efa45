use super::{Limit, Table, judgement::Percent, level::Level};
use crate::{
    finding::{Finding, Rule, Verdict},
    quantity::MassFraction,
    source::Interval,
};
use serde::Serialize;
use std::fmt;

/// A row that is no ceiling but bears on what is in the bowl: a warning duty, a schedule, a conclusion.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Notice<'a> {
    /// The substance.
    pub substance: &'a str,
    /// The product whose level was compared as supplied; none when the mixed bowl was.
    pub product: Option<&'a str>,
    /// The level in the form the row counts.
    #[serde(rename = "level_ww_percent")]
    pub level: Interval<MassFraction>,
    /// The row.
    pub limit: &'a Limit,
    /// Whether the level meets the row's condition; none when the bounds do not tell or the row has no figure.
    pub applies: Option<bool>,
}

impl Notice<'_> {
    /// The same as a finding: worth knowing, never a judgement.
    #[must_use]
    pub(super) fn finding(&self) -> Finding {
        Finding::new(Rule::Law, Verdict::Note, self.to_string(), self.limit)
    }
}

impl fmt::Display for Notice<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.substance)?;
        if let Some(product) = self.product {
            write!(f, " in {product} as supplied")?;
        }
        let side = if self.limit.above { "above" } else { "up to" };
        let band = self.limit.band_from.map(|from| format!("above {} % and ", from.ww_percent())).unwrap_or_default();
        let range = format!("{band}{side} {}", self.limit.figure);
        match (self.applies, self.limit.concentration) {
            (Some(true), Some(_)) => write!(f, ": {} is {range}", Percent(self.level))?,
            (Some(false), Some(_)) => write!(f, ": {} is not {range}", Percent(self.level))?,
            (None, Some(_)) => write!(f, ": {} may be {range}", Percent(self.level))?,
            (_, None) => {}
        }
        write!(f, ": {}; {}", self.limit.conditions, self.limit)
    }
}

/// Compares a level with a threshold.
pub(super) fn crossed<'a>(table: &'a Table, level: &Level<'a>) -> Option<Notice<'a>> {
    let limit = table.rows().get(level.row)?;
    let above = |threshold: MassFraction| {
        let threshold = threshold.ww_percent() * (1.0 + 1e-9);
        match (level.level.low() > threshold, level.level.high() + level.open > threshold) {
            (true, _) => Some(true),
            (false, false) => Some(false),
            (false, true) => None,
        }
    };
    let beyond = limit.concentration.map(above);
    let within_figure = beyond.map(|is| if limit.above { is } else { is.map(|above| !above) });
    let applies = match (within_figure, limit.band_from.map(above)) {
        (Some(Some(false)), _) | (_, Some(Some(false))) => Some(false),
        (Some(top), None) => top,
        (Some(Some(true)), Some(Some(true))) => Some(true),
        _ => None,
    };
    let substance = if level.also == 0 { level.name } else { &limit.substance };
    (level.level.high() > 0.0).then_some(Notice { substance, product: None, level: level.interval(), limit, applies })
}
