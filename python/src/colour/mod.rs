//! Wrappers of `foilwork::colour`.

mod level;
mod shade;
mod space;
mod swatches;

pub use level::AnyLevel;
pub use shade::{Shade, tone_of};
pub use swatches::{Difference, Swatch, white};

crate::room::room! {
    /// Colour: levels, tones, shades, CIELAB and its differences, modelled swatches.
    colour {
        level { Level, UnderlyingPigment, PrePigmentation, complement, formula_level, level_from_reading, lift_needed, pre_pigmentation, result_level, shade_level }
        shade { Shade, read_shades }
        space { ciede2000, lab_to_lch, lab_to_srgb, lab_to_xyz, lch_to_lab, reflectance_to_lab, srgb_to_lab, xyz_to_lab }
        swatches { Difference, SectionLook, Swatch, section_look, swatch }
    }
}
