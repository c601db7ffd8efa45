//! Wrappers of `foilwork::peroxide`.

mod assay;
mod conditions;
mod dilution;
mod handling;
mod shelf;
mod strength;
mod volume;

crate::room::room! {
    /// Hydrogen peroxide: strength in every unit, density, dilution and blending, titration, ageing.
    peroxide {
        assay {
            half_life_days, loss_rate, loss_rate_from_half_life, permanganate_strength, permanganate_titre,
            strength_after, time_until,
        }
        dilution { blend_two, dilute, dilution_table, mix_strengths, round_to_scale }
        handling { HandlingFact, handling_facts }
        shelf { ShelfBlend, Stock, blend_shelf }
        strength {
            LabelReadings, convert, convert_bounds, density, density_bounds, molar_volumes, read_label, strength_units,
            strength_ww,
        }
        volume { dilute_volume, strength_after_make_up, make_up, mix_volumes }
    }
}
