//! Wrappers of `foilwork::colour`.

mod gradient;
mod level;
mod reading;
mod shade;
mod space;
mod swatches;
mod trace;

pub use gradient::PrePigmentation;
pub use level::{AnyLevel, StatedLevel, product_of};
pub use shade::{Shade, tone_of};
pub use swatches::{Difference, Swatch, white};

crate::room::room! {
    /// Colour: levels, tones, shades, CIELAB and its differences, modelled swatches.
    colour {
        gradient {
            Contrast, PrePigmentation, SectionLook, Transition, check_depth_at_root, check_hairline, contrast_between,
            pre_pigmentation, section_look, strip, transition_between,
        }
        level {
            Level, UnderlyingPigment, complement, formula_level, lift_needed, result_level, shade_level, underlying_pigment,
        }
        reading { WhiteBlend, blended_level, level_from_reading, level_on_scale, white_blend }
        shade { Shade, read_shades }
        space {
            Srgb, ciede2000, lab_to_lch, lab_to_srgb, lab_to_xyz, lch_to_lab, reflectance_to_lab, srgb_to_lab,
            xyz_to_lab,
        }
        swatches { Difference, Swatch, swatch }
        trace {
            trace_lift, trace_reading, trace_result_level, trace_shade_level, trace_swatch, trace_underlying_pigment,
        }
    }
}
