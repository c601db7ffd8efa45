use super::{BowlError, Recipe, RecipeError};
use crate::{
    quantity::{Duration, Mass, MassFraction},
    scale::{WeighError, Weighed, weigh},
    source::Interval,
};
use jiff::{SignedDuration, civil::DateTime};
use serde::Serialize;
use std::fmt;

/// What a mixing card is made from.
#[derive(Debug, Clone, Copy)]
pub struct CardRequest<'a> {
    /// Guest or column, as the user writes it.
    pub who: &'a str,
    /// What the bowl is for.
    pub what: &'a str,
    /// The recipe of this bowl, in grams.
    pub recipe: &'a Recipe,
    /// Hydrogen peroxide in each part, in the order of the recipe; none where it is not known.
    pub strengths: &'a [Option<Interval<MassFraction>>],
    /// Division of the scale.
    pub division: Mass,
    /// When it was mixed, on the salon clock.
    pub mixed_at: DateTime,
    /// How long it may be used.
    pub working_life: Duration,
}

/// A card that cannot be written.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum CardError {
    /// The recipe is not in grams.
    #[error(transparent)]
    Recipe(#[from] RecipeError),
    /// The bowl cannot be weighed.
    #[error(transparent)]
    Weigh(#[from] WeighError),
    /// The mixture is spent at once, or lasts beyond the calendar.
    #[error(transparent)]
    WorkingLife(#[from] BowlError),
}

/// One line of a card.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CardLine {
    /// The product.
    pub product: String,
    /// What to put on the scale.
    #[serde(rename = "mass_g")]
    pub mass: Mass,
    /// How far its share of the bowl is from the recipe, in percent of the share.
    pub ratio_error_percent: f64,
}

/// A card to lay beside the bowl: who, what, grams, strength as applied, time mixed, use-by.
///
/// Print it, or serialise it with `serde`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Card {
    /// Guest or column.
    pub who: String,
    /// What the bowl is for.
    pub what: String,
    /// Recipe as written.
    pub recipe: String,
    /// What to put on the scale, in the order of the recipe.
    pub lines: Vec<CardLine>,
    /// Their sum.
    #[serde(rename = "total_g")]
    pub total: Mass,
    /// Hydrogen peroxide on the hair; none when a part is not known.
    #[serde(rename = "strength_as_applied_ww_percent")]
    pub strength_as_applied: Option<Interval<MassFraction>>,
    /// Products whose strength is not known.
    pub strength_unknown_in: Vec<String>,
    /// Change of the strength by rounding to the scale, in percentage points.
    pub strength_shift_percentage_points: Option<f64>,
    /// When it was mixed, on the salon clock.
    #[serde(serialize_with = "clock")]
    pub mixed_at: DateTime,
    /// When it must no longer be used.
    #[serde(serialize_with = "clock")]
    pub use_by: DateTime,
    /// Findings and warnings the user wants on the card, as text.
    pub remarks: Vec<String>,
}

impl Card {
    /// Writes the card of one bowl.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{Card, CardRequest}, quantity::{Duration, Mass, MassFraction}, source::Interval};
    ///
    /// let strength = |percent| MassFraction::from_ww_percent(percent).map(Interval::exact);
    /// let card = Card::new(&CardRequest {
    ///     who: "chair 2",
    ///     what: "roots",
    ///     recipe: &"30 g J7-mist + 45 g 6%".parse()?,
    ///     strengths: &[Some(strength(0.0)?), Some(strength(6.0)?)],
    ///     division: Mass::from_g(1.0)?,
    ///     mixed_at: jiff::civil::date(2026, 11, 25).at(10, 5, 0, 0),
    ///     working_life: Duration::from_min(40.0)?,
    /// })?;
    /// assert_eq!(card.use_by, jiff::civil::date(2026, 11, 25).at(10, 45, 0, 0));
    /// assert_eq!(card.strength_as_applied, Some(strength(3.6)?));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`CardError`] when the recipe is not in grams, cannot be weighed on the scale, or has no working life.
    pub fn new(request: &CardRequest<'_>) -> Result<Self, CardError> {
        let CardRequest { who, what, recipe, strengths, division, mixed_at, working_life } = *request;
        let weighing = weigh(&recipe.masses()?, division)?;
        let known = |at: usize| strengths.get(at).copied().flatten();
        let unknown = recipe.parts().iter().enumerate().filter(|(at, _)| known(*at).is_none());
        let strength_unknown_in: Vec<String> = unknown.map(|(_, part)| part.product.clone()).collect();
        let shift = if strength_unknown_in.is_empty() {
            let strengths: Vec<_> = strengths.iter().flatten().copied().collect();
            weighing.strength_shift(&strengths).ok()
        } else {
            None
        };
        let seconds = SignedDuration::try_from_secs_f64(working_life.min() * 60.0).ok();
        let use_by = seconds.filter(jiff::SignedDuration::is_positive).and_then(|s| mixed_at.checked_add(s).ok());
        let use_by = use_by.ok_or(BowlError::WorkingLife(working_life))?;
        let line = |(part, weighed): (&super::Part, &Weighed)| CardLine {
            product: part.product.clone(),
            mass: weighed.weighed,
            ratio_error_percent: weighed.ratio_error_percent(),
        };
        Ok(Self {
            who: who.to_owned(),
            what: what.to_owned(),
            recipe: recipe.to_string(),
            lines: recipe.parts().iter().zip(weighing.parts()).map(line).collect(),
            total: weighing.total(),
            strength_as_applied: shift.map(|s| s.weighed),
            strength_unknown_in,
            strength_shift_percentage_points: shift.map(|s| s.percentage_points()),
            mixed_at,
            use_by,
            remarks: Vec::new(),
        })
    }

    /// The same card with a remark, for example an exceeded limit.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{Card, CardRequest}, quantity::{Duration, Mass}};
    ///
    /// let card = Card::new(&CardRequest {
    ///     who: "chair 2",
    ///     what: "roots",
    ///     recipe: &"30 g J7-mist + 45 g 6%".parse()?,
    ///     strengths: &[None, None],
    ///     division: Mass::from_g(1.0)?,
    ///     mixed_at: jiff::civil::date(2026, 11, 25).at(10, 5, 0, 0),
    ///     working_life: Duration::from_min(40.0)?,
    /// })?;
    /// assert_eq!(card.with_remark("gloves").remarks, ["gloves"]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn with_remark(mut self, remark: impl fmt::Display) -> Self {
        self.remarks.push(remark.to_string());
        self
    }
}

/// Names longer than this stand out of the column rather than widen it.
const WIDEST: usize = 60;

/// Date, hours and minutes: what is written on a card.
const CLOCK: &str = "%Y-%m-%d %H:%M";

fn clock<S: serde::Serializer>(at: &DateTime, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_str(&at.strftime(CLOCK))
}

impl fmt::Display for Card {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let width = self.lines.iter().map(|l| l.product.chars().count()).max().unwrap_or(0).clamp(5, WIDEST);
        writeln!(f, "{}: {}", self.who, self.what)?;
        for line in &self.lines {
            writeln!(f, "  {:width$} {:>8} g", line.product, line.mass.g())?;
        }
        writeln!(f, "  {:width$} {:>8} g", "total", self.total.g())?;
        match (self.strength_as_applied, &self.strength_unknown_in) {
            (Some(level), _) if level.high().ww_percent() - level.low().ww_percent() > 0.005 => {
                writeln!(f, "peroxide on the hair {:.2} to {:.2}", level.low().ww_percent(), level.high())?;
            }
            (Some(level), _) => writeln!(f, "peroxide on the hair {:.2}", level.best())?,
            (None, unknown) => writeln!(f, "peroxide on the hair unknown (not stated: {})", unknown.join(", "))?,
        }
        let worst = self.lines.iter().map(|l| l.ratio_error_percent.abs()).fold(0.0, f64::max);
        if worst >= 0.05 {
            write!(f, "rounding to the scale moves a part by up to {worst:.1} %")?;
            match self.strength_shift_percentage_points {
                Some(shift) => writeln!(f, ", the strength by {shift:+.2} percentage points")?,
                None => writeln!(f)?,
            }
        }
        write!(f, "mixed {}, use by {}", self.mixed_at.strftime(CLOCK), self.use_by.strftime(CLOCK))?;
        self.remarks.iter().try_for_each(|remark| write!(f, "\n! {remark}"))
    }
}
