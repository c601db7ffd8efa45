//! From when the longest times of products count.

use super::{
    Item, Task,
    defaults::{DefaultValue, Defaults},
};
use crate::{
    shop::{CountsFrom, Shop},
    source::Basis,
};

/// Notes from when the longest times of the products used count, where the shop does not say.
pub(super) fn note(shop: &Shop, tasks: &[Task], items: &[Item], defaults: &mut Defaults) {
    // Any shade may be found for a look that is wanted.
    let searched = tasks.iter().any(|task| task.wanted.is_some());
    let lighteners = shop.lighteners.iter().enumerate().map(|(i, one)| (format!("lightener[{}]", i + 1), one.limits));
    let shades = shop.shades.iter().enumerate().map(|(i, one)| (format!("shade[{}]", i + 1), one.limits));
    for (place, (field, limits)) in lighteners.chain(shades).enumerate() {
        let named = tasks.iter().any(|task| task.products.iter().any(|(i, _)| *i == place));
        let found = searched && items.get(place).is_some_and(|item| !item.lightens());
        if (named || found) && limits.longest.is_some() && limits.counts_from.is_none() {
            let value = DefaultValue::CountsFrom(CountsFrom::default());
            let why = "the stricter reading: no strand carries the mix longer; the product's leaflet wins";
            defaults.note(&format!("shop.{field}.longest_counts_from"), value, Basis::Assumed, None, why);
        }
    }
}
