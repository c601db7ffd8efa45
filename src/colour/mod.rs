//! Levels, tones, underlying pigment, CIELAB and the melanin model of a swatch.
//!
//! A **level** says how light hair is, a **tone** which way its hue leans; the two are separate. Level arithmetic and
//! the colour wheel are rules of the trade and carry that basis. Colour coordinates and differences are the standards
//! of the CIE. A swatch is a model, not a photograph, and always says so; where it does not fit is told in [`misfits`].
//!
//! # Levels
//!
//! [`Level`] and [`LevelChange`]; [`LevelName`] in the words of a [`Naming`]. A number read on another [`Scale`] is a [`ScaleReading`]
//! until a [`ScaleMapping`] says which level it is; [`level_from_reading`] takes an instrument's.
//!
//! # Tones
//!
//! [`Hue`] on the wheel, [`Tone`] of one or more hues, [`Shade`] of a chart.
//!
//! # The trade's arithmetic
//!
//! [`lift_needed`], [`formula_level`] and [`result_level`]; [`blended_level`] and [`shade_level`] of a mix, [`white_blend`] beside
//! white hair. [`pre_pigmentation`] before going darker; [`transition_between`], [`contrast_between`], [`check_hairline`] and
//! [`check_depth_at_root`] judge a gradient.
//!
//! # Exposed pigment
//!
//! [`underlying_pigment`] of a level with its neutralising hue, or [`SeenPigment`] as somebody named it.
//!
//! # Colours and swatches
//!
//! [`Lab`], [`Lch`], [`Xyz`], [`Srgb`] under a [`White`], [`Difference`] between two. [`Swatch`] models hair or holds what was
//! measured; [`section_look`] and [`strip`] show a section.

mod arithmetic;
mod assumptions;
mod bands;
mod chebyshev;
mod coordinate;
mod coordinate_lanes;
mod difference;
mod difference_lanes;
mod dye;
mod fibre;
mod gradient;
mod html;
mod hue;
mod lab_text;
mod lanes;
mod level;
mod level_change;
mod level_name;
mod observer;
#[doc = include_str!("misfits.md")]
pub mod misfits {}
mod pigment;
mod product;
mod reading;
mod reflectance;
mod scale;
mod screen_byte;
mod section_look;
mod seen;
mod sets;
mod shade;
mod solve;
mod space;
mod srgb;
mod swatch;
mod swatch_bounds;
mod table;
mod tone;
mod trace;
mod underlying;
mod white;

pub use arithmetic::{
    ArithmeticError, WhiteBlend, blended_level, formula_level, lift_needed, result_level, shade_level, white_blend,
};
pub use coordinate::{Chroma, Lightness, Redness, Yellowness};
pub use difference::{Difference, MixedWhites};
pub use gradient::{
    PRE_PIGMENTATION_LEVELS, PrePigmentation, TRANSITION_LEVELS, Transition, check_depth_at_root, check_hairline,
    contrast_between, pre_pigmentation, transition_between,
};
pub use hue::{Hue, Temper};
pub use lab_text::ParseLabError;
pub use level::{InvalidLevel, Level};
pub use level_change::LevelChange;
pub use level_name::{LevelName, Naming};
pub use product::{Canvas, ProductKind};
pub use reading::{Instrument, ReadingError, level_from_reading};
pub(crate) use reading::{level_of_luminance, levels_of, natural_luminance};
pub use reflectance::Reflectance;
pub(crate) use scale::Stretch;
pub use scale::{MappedLevel, Scale, ScaleError, ScaleMapping, ScaleReading};
pub use section_look::{SectionLook, section_look, strip};
pub use seen::SeenPigment;
pub use shade::{Shade, ShadeError};
pub use space::{InvalidColour, Lab, Lch, Xyz};
pub use srgb::{NotHex, Srgb};
pub use swatch::Swatch;
pub use tone::{Tone, TonePart};
#[cfg(feature = "cli")]
pub(crate) use trace::shade_levels;
pub use trace::{
    trace_lift, trace_reading, trace_result_level, trace_shade_level, trace_swatch, trace_underlying_pigment,
};
pub use underlying::{UnderlyingPigment, Visibility, underlying_pigment};
pub use white::White;

pub(crate) use assumptions::SETS;
pub(crate) use bands::Bands;
pub(crate) use coordinate_lanes::{lab_to_lch_lanes, lab_to_xyz_lanes, lch_to_lab_lanes, xyz_to_lab_lanes};
pub(crate) use difference::ciede2000;
pub(crate) use difference_lanes::ciede2000_lanes;
pub(crate) use fibre::{Fibre, MODELS};
pub(crate) use lanes::{Lanes, Ranges};
pub(crate) use observer::white_point;
pub(crate) use pigment::Melanin;
pub(crate) use seen::spectrum_of;
pub(crate) use space::lab_of;
