//! Wrappers of `foilwork::colour` and `foilwork::toner`.

mod level;
mod shade;
mod space;
mod swatches;
mod toners;

pub use level::{Level, complement, formula_level, lift_needed, pre_pigmentation, result_level};
pub use shade::{Shade, read_shades};
pub use space::{ciede2000, lab_to_lch, lab_to_srgb, lab_to_xyz, lch_to_lab, srgb_to_lab, xyz_to_lab};
pub use swatches::{Swatch, swatch};
pub use toners::{TonerAnswer, toner};
