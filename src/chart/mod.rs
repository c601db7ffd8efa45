//! Pictures as SVG text: a small writer, and a file for each kind of chart.
//!
//! # Draw
//!
//! [`Svg`] with lines, areas, circles, sectors and text, each in a [`Paint`]. Text is escaped, there are no scripts
//! and nothing is loaded; a title and a description say in words what the picture shows.
//!
//! # Charts of hair
//!
//! [`level_chart`], level against time; [`head_chart`], the map of the head, and [`head_text`] for a terminal; [`day_chart`], who does what when; [`pigment_chart`], levels and
//! their warmth; [`hue_wheel`]; [`swatch_strip`], hair now and on the way; [`look_chart`], what to expect at each look.
//!
//! # Charts of bowls and money
//!
//! [`dilution_chart`], [`cost_chart`], [`margin_chart`].

mod costs;
mod day;
mod dilution;
mod head;
mod head_text;
mod level;
mod looks;
mod margin;
mod paint;
mod pigment;
mod strip;
mod svg;
mod wheel;

pub use costs::{CostChart, cost_chart};
pub use day::{DayChart, day_chart};
pub use dilution::{DilutionChart, MOST_GRID, dilution_chart};
pub use head::{HeadChart, head_chart};
pub use head_text::head_text;
pub use level::{LevelChart, level_chart};
pub use looks::{LookChart, look_chart};
pub use margin::{MarginChart, margin_chart};
pub use paint::Paint;
pub use pigment::{PigmentChart, pigment_chart};
pub use strip::{SwatchStrip, swatch_strip};
pub use svg::{Anchor, Svg};
pub use wheel::{HueWheel, hue_wheel};
