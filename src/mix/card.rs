use super::{BowlError, Recipe, RecipeError, record::bounds};
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
    /// Hydrogen peroxide in each part, in the order of the recipe; nothing where it is not known.
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
    /// Grams to put on the scale.
    pub mass_g: f64,
    /// How far its share of the bowl is from the recipe, in percent of the share.
    pub ratio_error_percent: f64,
}

/// A card to lay beside the bowl: who, what, grams, strength as applied, time mixed, use-by.
///
/// Plain data: print it, or serialise it with `serde`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Card {
    /// Guest or column.
    pub who: String,
    /// What the bowl is for.
    pub what: String,
    /// Recipe as written.
    pub recipe: String,
    /// Grams on the scale.
    pub lines: Vec<CardLine>,
    /// Their sum.
    pub total_g: f64,
    /// Hydrogen peroxide on the hair in % w/w: lower bound, best, upper bound; nothing when a part is not known.
    pub strength_as_applied_ww_percent: Option<[f64; 3]>,
    /// Products whose strength is not known.
    pub strength_unknown_in: Vec<String>,
    /// Change of the strength by rounding to the scale, in percentage points.
    pub strength_shift_percentage_points: Option<f64>,
    /// When it was mixed.
    pub mixed_at: String,
    /// When it must no longer be used.
    pub use_by: String,
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
    /// let strength = |percent| MassFraction::from_percent_ww(percent).map(Interval::exact);
    /// let card = Card::new(&CardRequest {
    ///     who: "chair 2",
    ///     what: "roots",
    ///     recipe: &"30 g 7.1 + 45 g 6%".parse()?,
    ///     strengths: &[Some(strength(0.0)?), Some(strength(6.0)?)],
    ///     division: Mass::from_g(1.0)?,
    ///     mixed_at: jiff::civil::date(2026, 11, 25).at(10, 5, 0, 0),
    ///     working_life: Duration::from_min(40.0)?,
    /// })?;
    /// assert_eq!(card.use_by, "2026-11-25 10:45");
    /// assert_eq!(card.strength_as_applied_ww_percent, Some([3.6, 3.6, 3.6]));
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
        let use_by = seconds.filter(|s| s.is_positive()).and_then(|s| mixed_at.checked_add(s).ok());
        let use_by = use_by.ok_or(BowlError::WorkingLife(working_life))?;
        let line = |(part, weighed): (&super::Part, &Weighed)| CardLine {
            product: part.product.clone(),
            mass_g: weighed.weighed.g(),
            ratio_error_percent: weighed.ratio_error_percent(),
        };
        Ok(Self {
            who: who.to_owned(),
            what: what.to_owned(),
            recipe: recipe.to_string(),
            lines: recipe.parts().iter().zip(weighing.parts()).map(line).collect(),
            total_g: weighing.total().g(),
            strength_as_applied_ww_percent: shift.map(|s| bounds(s.weighed)),
            strength_unknown_in,
            strength_shift_percentage_points: shift.map(|s| s.percentage_points()),
            mixed_at: clock(mixed_at),
            use_by: clock(use_by),
            remarks: Vec::new(),
        })
    }

    /// The same card with a remark, for example an exceeded limit.
    #[must_use]
    pub fn with_remark(mut self, remark: impl fmt::Display) -> Self {
        self.remarks.push(remark.to_string());
        self
    }
}

fn clock(at: DateTime) -> String {
    at.strftime("%Y-%m-%d %H:%M").to_string()
}

impl fmt::Display for Card {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let width = self.lines.iter().map(|l| l.product.chars().count()).max().unwrap_or(0).max(5);
        writeln!(f, "{}: {}", self.who, self.what)?;
        for line in &self.lines {
            writeln!(f, "  {:width$} {:>8} g", line.product, line.mass_g)?;
        }
        writeln!(f, "  {:width$} {:>8} g", "total", self.total_g)?;
        match (self.strength_as_applied_ww_percent, &self.strength_unknown_in) {
            (Some([low, _, high]), _) if high - low > 0.005 => {
                writeln!(f, "peroxide on the hair {low:.2} to {high:.2} % w/w")?;
            }
            (Some([_, best, _]), _) => writeln!(f, "peroxide on the hair {best:.2} % w/w")?,
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
        write!(f, "mixed {}, use by {}", self.mixed_at, self.use_by)?;
        self.remarks.iter().try_for_each(|remark| write!(f, "\n! {remark}"))
    }
}
