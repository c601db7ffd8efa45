//! Levels, tones, underlying pigment, CIELAB and the melanin model of a swatch.
//!
//! A **level** says how light hair is, a **tone** which way its hue leans; the two are separate. Level arithmetic and
//! the colour wheel are rules of the trade and carry that basis. Colour coordinates and differences are the standards
//! of the CIE. A swatch is a model, not a photograph, and always says so.

mod arithmetic;
mod chart;
mod chart_error;
mod chart_row;
mod hue;
mod level;
mod level_change;
mod level_name;
mod product;
mod scale;
mod shade;
mod tone;
mod underlying;

pub use arithmetic::{
    ArithmeticError, WhiteBlend, blended_level, formula_level, lift_needed, result_level, white_blend,
};
pub use chart::Chart;
pub use chart_error::{ChartError, ChartProblem};
pub use chart_row::ShelfFacts;
pub use hue::{Hue, Temper, UnknownHue};
pub use level::{InvalidLevel, Level};
pub use level_change::LevelChange;
pub use level_name::{LevelName, Naming};
pub use product::{Canvas, Product};
pub use scale::{MappedLevel, Scale, ScaleError, ScaleMapping, ScaleReading};
pub use shade::{Shade, ShadeError};
pub use tone::{Tone, TonePart};
pub use underlying::{Strength, UnderlyingPigment, underlying_pigment};
