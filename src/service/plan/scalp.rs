//! How strong a developer may be where it touches the scalp.

use super::sections::Work;
use crate::{
    quantity::{MassFraction, Quantity},
    service::request::{Item, ItemKind, Request},
    source::{Interval, Sourced},
};

/// Lightener on the scalp is mixed with no stronger developer, 20 volumes.
const USUAL: Sourced<f64> = Sourced::common_practice(6.0);
/// A developer that is called 6 % may be a little more.
pub(super) const NEARLY_WW_PERCENT: f64 = 0.05;

/// The most that somebody allows there.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Ceiling {
    /// Who.
    pub(super) whose: String,
    pub(super) most: MassFraction,
    /// Whether it is the trade's: nobody states one.
    pub(super) is_usual: bool,
}

impl Ceiling {
    /// Whether a developer keeps to it: one that is stated with its upper bound, the trade's as it is called.
    pub(super) fn allows(&self, strength: &Interval<MassFraction>) -> bool {
        if self.is_usual {
            return strength.best().ww_percent() <= self.most.ww_percent() + NEARLY_WW_PERCENT;
        }
        strength.high() <= self.most
    }
}

/// The least of what the house and the products state; none where neither does.
pub(super) fn stated<'r>(items: impl Iterator<Item = &'r Item>, request: &Request) -> Option<Ceiling> {
    let of_house = request.strongest_on_scalp.map(|most| ("the rule of the house".to_owned(), most));
    let of_items = items.filter_map(|item| Some((format!("\"{}\"", item.name), own(item)?)));
    let all = of_house.into_iter().chain(of_items).map(|(whose, most)| Ceiling { whose, most, is_usual: false });
    all.min_by(|a, b| a.most.ww_percent().total_cmp(&b.most.ww_percent()))
}

/// What the trade keeps to with a lightener whose own instructions nobody entered.
pub(super) fn usual() -> Ceiling {
    Ceiling { whose: "the trade".to_owned(), most: MassFraction::nearest(USUAL.value), is_usual: true }
}

/// Whether a lightener may go there, and nobody entered how strong its developer may be.
pub(super) fn is_unsaid(item: &Item) -> bool {
    matches!(item.kind, ItemKind::Lightener { on_scalp: true, strongest_on_scalp: None, .. })
}

fn own(item: &Item) -> Option<MassFraction> {
    match item.kind {
        ItemKind::Lightener { strongest_on_scalp, .. } => strongest_on_scalp,
        _ => None,
    }
}

impl Work<'_> {
    /// What a developer that is chosen for these keeps to here: none of it where they are kept off the scalp. What may touch it,
    /// as foil at the roots does where no gap is left, is chosen as what does.
    pub(super) fn scalp_ceilings<'i>(
        &self,
        items: impl Iterator<Item = &'i Item> + Clone,
        request: &Request,
    ) -> Vec<Ceiling> {
        if self.task.on_scalp == Some(false) {
            return Vec::new();
        }
        let unsaid = items.clone().any(is_unsaid);
        stated(items, request).into_iter().chain(unsaid.then(usual)).collect()
    }
}
