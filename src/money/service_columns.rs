use super::{
    block_costing::{BLOCK, FilledUp, Rows},
    row_costing::Row,
};
use std::ops::Range;

/// A long list of services as columns of equal length: amounts in whole minor units, masses in g, times in min.
#[derive(Debug, Clone, Copy)]
pub struct ServiceColumns<'a> {
    /// Price of the pack the product came from.
    pub pack_price_minor: &'a [i64],
    /// What that pack holds.
    pub pack_g: &'a [f64],
    /// Product on the head.
    pub used_g: &'a [f64],
    /// Product mixed and thrown away.
    pub wasted_g: &'a [f64],
    /// Foils, gloves, towels and the like.
    pub consumables_minor: &'a [i64],
    /// Time with hands on the guest.
    pub hands_on_min: &'a [f64],
    /// Time the chair is taken.
    pub chair_min: &'a [f64],
}

impl ServiceColumns<'_> {
    /// One row.
    pub(super) fn row(&self, place: usize) -> Option<Row> {
        Some(Row {
            pack_price: *self.pack_price_minor.get(place)?,
            pack_g: *self.pack_g.get(place)?,
            used_g: *self.used_g.get(place)?,
            wasted_g: *self.wasted_g.get(place)?,
            consumables: *self.consumables_minor.get(place)?,
            hands_on_min: *self.hands_on_min.get(place)?,
            chair_min: *self.chair_min.get(place)?,
        })
    }

    /// A block of rows where they lie, unless they are too few.
    pub(super) fn block(&self, from: usize) -> Option<Rows<'_>> {
        fn block<T>(column: &[T], from: usize) -> Option<&[T; BLOCK]> {
            column.get(from..)?.first_chunk()
        }
        Some(Rows {
            prices: block(self.pack_price_minor, from)?,
            packs: block(self.pack_g, from)?,
            used: block(self.used_g, from)?,
            wasted: block(self.wasted_g, from)?,
            consumables: block(self.consumables_minor, from)?,
            hands_on: block(self.hands_on_min, from)?,
            chair: block(self.chair_min, from)?,
        })
    }

    /// Rows that are too few for a block.
    pub(super) fn filled_up(&self, places: Range<usize>) -> FilledUp {
        fn filled<T: Copy>(column: &[T], places: &Range<usize>, up_with: T) -> [T; BLOCK] {
            let mut block = [up_with; BLOCK];
            for (slot, value) in block.iter_mut().zip(column.get(places.clone()).unwrap_or_default()) {
                *slot = *value;
            }
            block
        }
        FilledUp {
            prices: filled(self.pack_price_minor, &places, 0),
            packs: filled(self.pack_g, &places, 1.0),
            used: filled(self.used_g, &places, 0.0),
            wasted: filled(self.wasted_g, &places, 0.0),
            consumables: filled(self.consumables_minor, &places, 0),
            hands_on: filled(self.hands_on_min, &places, 0.0),
            chair: filled(self.chair_min, &places, 0.0),
        }
    }
}
