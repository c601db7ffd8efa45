//! How strong a developer may be where it touches the scalp.

use super::sections::Work;
use crate::{
    quantity::MassFraction,
    service::request::{Item, ItemKind, Request},
};

/// The least of what a house and the products allow on the scalp, and who says so; none where nobody does.
pub(super) fn ceiling<'r>(items: impl Iterator<Item = &'r Item>, request: &Request) -> Option<(String, MassFraction)> {
    let of_house = request.strongest_on_scalp.map(|most| ("the rule of the house".to_owned(), most));
    let of_items = items.filter_map(|item| match item.kind {
        ItemKind::Lightener { strongest_on_scalp, .. } => Some((format!("\"{}\"", item.name), strongest_on_scalp?)),
        _ => None,
    });
    of_house.into_iter().chain(of_items).min_by(|a, b| a.1.ww_percent().total_cmp(&b.1.ww_percent()))
}

impl Work<'_> {
    /// The same for what is put on here, where it touches the scalp.
    pub(super) fn scalp_ceiling(&self, request: &Request) -> Option<(String, MassFraction)> {
        self.task.on_scalp.filter(|touches| *touches)?;
        ceiling(self.products.iter().map(|(item, _)| *item), request)
    }
}
