//! Wrappers of `foilwork::peroxide`.

mod assay;
mod conditions;
mod dilution;
mod handling;
mod shelf;
mod strength;
mod volume;

pub use assay::{
    half_life_days, loss_rate, loss_rate_from_half_life, permanganate_strength, permanganate_titre, strength_after,
    time_until,
};
pub use dilution::{blend_two, dilute, dilution_table, mix_strengths, round_to_scale};
pub use handling::{HandlingFact, handling_facts};
pub use shelf::{ShelfBlend, Stock, blend_shelf};
pub use strength::{
    LabelReadings, convert, convert_bounds, density, density_bounds, molar_volumes, read_label, strength_units,
    strength_ww,
};
pub use volume::{dilute_volume, make_up, mix_volumes, strength_after_make_up};
