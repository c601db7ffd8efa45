//! Wrapper of `foilwork::mix`: the mixing card.

use super::{recipe::Recipe, weighing::mass};
use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    error::raise,
    sequence::Sequence,
};
use foilwork::{
    mix::{self, CardRequest},
    quantity::{Duration, MassFraction},
};
use pyo3::prelude::*;

/// How a salon clock is read: a card needs no seconds.
const CLOCK: &str = "%Y-%m-%d %H:%M";

answer! {
    in "foilwork.mix";
    /// One product on a :class:`Card`.
    CardLine {
        /// The product.
        product: String,
        /// Mass to weigh, in g.
        mass_g: f64,
        /// How far its share is from the recipe, in percent of the share.
        ratio_error_percent: f64,
    }
}

answer! {
    in "foilwork.mix";
    /// The card to lay beside a bowl; made by :func:`mixing_card`.
    Card {
        /// Guest or column.
        who: String,
        /// What the bowl is for.
        what: String,
        /// The recipe as written.
        recipe: String,
        /// What to weigh.
        lines: Vec<CardLine>,
        /// The total on the scale in g.
        total_g: f64,
        /// Peroxide on the hair in % w/w; None when a part's strength is not known.
        strength_as_applied_ww_percent: Option<Estimate<f64>>,
        /// The parts whose strength is not known.
        strength_unknown_in: Vec<String>,
        /// What rounding does to the strength, in percentage points w/w.
        strength_shift_percentage_points: Option<f64>,
        /// When it was mixed, on the salon clock.
        mixed_at: String,
        /// When it must no longer be used.
        use_by: String,
        /// Lines added.
        remarks: Vec<String>,
        /// The card to print.
        text: String,
    }
    impl {
        fn __str__(&self) -> &str {
            &self.text
        }
    }
}

impl From<mix::Card> for Card {
    fn from(card: mix::Card) -> Self {
        let text = card.to_string();
        let line = |line: mix::CardLine| CardLine {
            product: line.product,
            mass_g: line.mass.g(),
            ratio_error_percent: line.ratio_error_percent,
        };
        Self {
            lines: card.lines.into_iter().map(line).collect(),
            total_g: card.total.g(),
            strength_as_applied_ww_percent: card.strength_as_applied.map(Into::into),
            strength_unknown_in: card.strength_unknown_in,
            strength_shift_percentage_points: card.strength_shift_percentage_points,
            mixed_at: card.mixed_at.strftime(CLOCK).to_string(),
            use_by: card.use_by.strftime(CLOCK).to_string(),
            remarks: card.remarks,
            who: card.who,
            what: card.what,
            recipe: card.recipe,
            text,
        }
    }
}

/// The card to lay beside a bowl: who, what, grams, strength as applied, time mixed, use-by.
///
/// Args:
///     who: guest or column.
///     what: what the bowl is for.
///     recipe: the recipe of this bowl, in g.
///     strengths_ww_percent: hydrogen peroxide in each part in % w/w, as a number or (low, best, high); None where not known.
///     division_g: division of the scale in g.
///     mixed_at: date and time on the salon clock, for example ``"2026-11-25T10:05"``.
///     working_life_min: how long it may be used, in min.
///     remarks: lines to add, for example an exceeded limit.
///
/// Returns:
///     The card; ``str()`` of it is the card to print.
///
/// Raises:
///     FoilworkError: when the recipe is not in g, cannot be weighed on the scale, or has no working life.
///
/// Examples:
///     >>> from foilwork.mix import Recipe, mixing_card
///     >>> card = mixing_card("chair 2", "roots", Recipe("30 g J7-mist + 45 g 6%"), [0, 6], 1, "2026-11-25T10:05", 40)
///     >>> card.use_by, card.strength_as_applied_ww_percent.best
///     ('2026-11-25 10:45', 3.6)
#[pyfunction]
#[pyo3(signature = (who, what, recipe, strengths_ww_percent, division_g, mixed_at, working_life_min, *, remarks = Sequence(vec![])), text_signature = "(who, what, recipe, strengths_ww_percent, division_g, mixed_at, working_life_min, *, remarks=())")]
pub fn mixing_card(
    who: &str,
    what: &str,
    recipe: &Recipe,
    strengths_ww_percent: Sequence<Option<Stated<MassFraction>>>,
    division_g: f64,
    mixed_at: &str,
    working_life_min: f64,
    remarks: Sequence<String>,
) -> PyResult<Card> {
    let strengths_ww_percent = strengths_ww_percent.0;
    let remarks = remarks.0;
    let strengths: Vec<_> = strengths_ww_percent.into_iter().map(|s| s.map(|s| s.0)).collect();
    let request = CardRequest {
        who,
        what,
        recipe: &recipe.0,
        strengths: &strengths,
        division: mass(division_g)?,
        mixed_at: mixed_at.parse().map_err(raise)?,
        working_life: Duration::from_min(working_life_min).map_err(raise)?,
    };
    let card = mix::Card::new(&request).map_err(raise)?;
    let card = remarks.into_iter().fold(card, mix::Card::with_remark);
    Ok(card.into())
}
