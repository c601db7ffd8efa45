//! What was said before the service, typed: days are days, levels are levels.

use super::defaults::{self, Defaults};
use crate::{
    colour::{Level, LevelChange},
    reader::{InField, Problems},
    service::{
        file::Moment,
        shape::{AgreedEntry, ConsultationEntry, PastEntry, WishEntry},
    },
};

/// The consultation of a file with every text read.
#[derive(Debug, Clone)]
pub(in crate::service) struct Asked {
    pub(in crate::service) known_since: Option<Moment>,
    pub(in crate::service) past: Vec<(Option<Moment>, PastEntry)>,
    pub(in crate::service) wishes: Vec<(Level, LevelChange, WishEntry)>,
    pub(in crate::service) agreed: Vec<(Moment, AgreedEntry)>,
}

impl Asked {
    /// Reads what the schema has let through.
    pub(super) fn of(entry: &ConsultationEntry, start: Moment, used: &mut Defaults) -> Result<Self, Problems> {
        let day = |text: &str, field: &str| -> Result<Moment, Problems> {
            let moment: Moment = text.parse().in_field(field)?;
            if moment.earliest > start.latest {
                let message = format!("\"{text}\" is after the start of the service: give the day it was");
                return Err(message).in_field(field);
            }
            Ok(moment)
        };
        let maybe = |text: Option<&String>, field: &str| text.map(|text| day(text, field)).transpose();
        let known_since = maybe(entry.known_since.as_ref(), "consultation.known_since")?;
        let mut past = Vec::with_capacity(entry.past.len());
        for (i, one) in entry.past.iter().enumerate() {
            let on = maybe(one.on.as_ref(), &format!("consultation.past[{}].on", i + 1))?;
            past.push((on, one.clone()));
        }
        // The latest first, as one tells it; what has no day comes last.
        past.sort_by_key(|(on, _)| std::cmp::Reverse(on.map(|on| on.earliest)));
        let mut wishes = Vec::with_capacity(entry.wish.len());
        for (i, wish) in entry.wish.iter().enumerate() {
            let field = format!("consultation.wish[{}]", i + 1);
            let level = Level::new(wish.level).in_field(&format!("{field}.level"))?;
            let tolerance = format!("{field}.tolerance_levels");
            let stated = wish.tolerance_levels.map(LevelChange::from_levels).transpose().in_field(&tolerance)?;
            let why = "a level is read to the half step";
            let tolerance = used.stated_or(stated, &tolerance, defaults::tolerance().in_field(&tolerance)?, why);
            wishes.push((level, tolerance.value, wish.clone()));
        }
        let mut agreed = Vec::with_capacity(entry.agreed.len());
        for (i, one) in entry.agreed.iter().enumerate() {
            agreed.push((day(&one.on, &format!("consultation.agreed[{}].on", i + 1))?, one.clone()));
        }
        Ok(Self { known_since, past, wishes, agreed })
    }
}
