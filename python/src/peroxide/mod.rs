//! Wrappers of `foilwork::peroxide`.

mod ageing;
mod assay;
mod conditions;
mod dilution;
mod handling;
mod mixing;
mod shelf;
mod strength;
mod trace;
mod volume;

crate::room::room! {
    /// Hydrogen peroxide: strength in every unit, density, dilution and blending, titration, ageing.
    peroxide {
        ageing { half_life_days, loss_rate, loss_rate_from_half_life, strength_after, time_until }
        assay { permanganate_strength, permanganate_titre, trace_titration, trace_titre }
        dilution {
            Dilution, DilutionRow, Mixture, RoundedBlend, TwoPartBlend, blend_two, dilute, dilution_table, mix_strengths,
            round_to_scale,
        }
        handling { HandlingFact, StrengthBound, handling_facts }
        mixing { mix_two }
        shelf { Portion, ShelfBlend, Stock, blend_shelf }
        strength {
            LabelReadings, convert, convert_interval, density, density_interval, molar_volumes, read_label, strength_units,
            strength_ww_percent,
        }
        trace { trace_blend, trace_conversion, trace_mixture }
        volume { MakeUp, PouredMixture, VolumeDilution, dilute_volume, strength_after_make_up, make_up, mix_volumes }
    }
}
