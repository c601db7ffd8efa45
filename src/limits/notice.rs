use super::{Limit, Table, finding::Percent, level::Level};
use crate::{quantity::MassFraction, source::Interval};
use std::fmt;

/// A row that is no ceiling but bears on what is in the bowl: a warning duty, a schedule, a conclusion.
#[derive(Debug, Clone, PartialEq)]
pub struct Notice<'a> {
    /// The substance.
    pub substance: &'a str,
    /// The product whose level was compared as supplied; nothing when the mixed bowl was.
    pub product: Option<&'a str>,
    /// The level in the form the row counts.
    pub level: Interval<MassFraction>,
    /// The row.
    pub limit: &'a Limit,
    /// Whether the level meets the row's condition; nothing when the bounds do not tell or the row has no figure.
    pub applies: Option<bool>,
}

impl fmt::Display for Notice<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.substance)?;
        if let Some(product) = self.product {
            write!(f, " in {product} as supplied")?;
        }
        let side = if self.limit.above { "above" } else { "up to" };
        match (self.applies, self.limit.concentration) {
            (Some(true), Some(_)) => write!(f, ": {} is {side} {}", Percent(self.level), self.limit.figure)?,
            (Some(false), Some(_)) => write!(f, ": {} is not {side} {}", Percent(self.level), self.limit.figure)?,
            (None, Some(_)) => write!(f, ": {} may be {side} {}", Percent(self.level), self.limit.figure)?,
            (_, None) => {}
        }
        write!(f, ": {}; {}", self.limit.conditions, self.limit)
    }
}

/// Compares a level with a threshold.
pub(super) fn crossed<'a>(table: &'a Table, level: &Level<'a>) -> Option<Notice<'a>> {
    let limit = table.rows().get(level.row)?;
    let applies = limit.concentration.and_then(|threshold| {
        let threshold = threshold.percent_ww() * (1.0 + 1e-9);
        let (low_above, high_above) = (level.low > threshold, level.high > threshold || level.open);
        match (low_above, high_above) {
            (true, _) => Some(limit.above),
            (false, false) => Some(!limit.above),
            (false, true) => None,
        }
    });
    let substance = if level.also == 0 { level.name } else { &limit.substance };
    (level.high > 0.0).then_some(Notice { substance, product: None, level: level.interval(), limit, applies })
}
