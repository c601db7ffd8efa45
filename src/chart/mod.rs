//! Pictures as SVG text: a small writer, and a file for each kind of chart.
//!
//! **Draw**: [`Svg`] with lines, areas, circles, sectors and text, each in a [`Paint`]. Text is escaped, there are no scripts
//! and nothing is loaded; a title and a description say in words what the picture shows.
//!
//! **Charts**: [`level_chart`], level against time; [`head_chart`], the map of the head.

mod head;
mod level;
mod paint;
mod svg;

pub use head::{HeadChart, head_chart};
pub use level::{LevelChart, level_chart};
pub use paint::Paint;
pub use svg::{Anchor, Svg};
