use super::{Anchor, Paint, Svg};
use crate::{
    colour::{Hue, Swatch},
    text::number,
};

/// Swatches side by side, each with its words.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SwatchStrip<'a> {
    /// What stands above it.
    pub title: &'a str,
    /// What each swatch is, and the swatch.
    pub swatches: &'a [(&'a str, &'a Swatch)],
}

const CELL: (f64, f64) = (176.0, 46.0);
const ABOVE: f64 = 26.0;

/// How hair looks now and on the way, side by side: each swatch with what it is, its lightness and its hue as text.
///
/// # Example
///
/// ```
/// use foilwork::{chart::{SwatchStrip, swatch_strip}, colour::{Level, Swatch}};
///
/// let now = Swatch::natural(Level::new(5.0)?);
/// let svg = swatch_strip(&SwatchStrip { title: "nape", swatches: &[("now", &now)] });
/// assert!(svg.contains("now") && svg.contains("not a photograph"));
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn swatch_strip(strip: &SwatchStrip<'_>) -> String {
    let count = u32::try_from(strip.swatches.len()).unwrap_or(1).max(2);
    let size = (CELL.0 * f64::from(count) + 8.0, ABOVE + CELL.1 + 54.0);
    let said: Vec<String> = strip.swatches.iter().map(|(what, swatch)| format!("{what}: {}", words(swatch))).collect();
    let mut svg = Svg::new(size, strip.title, &format!("{}. A model, not a photograph.", said.join("; ")));
    svg.rect((0.0, 0.0), size, &Paint::area("#fff"));
    svg.text((6.0, 18.0), Anchor::Start, 13.0, strip.title);
    for (place, (what, swatch)) in (0_u32..).zip(strip.swatches) {
        let left = 4.0 + CELL.0 * f64::from(place);
        let colour = swatch.srgb().to_string();
        svg.rect((left, ABOVE), (CELL.0 - 6.0, CELL.1), &Paint::area(&colour).outlined("#444", 1.0));
        svg.text((left, ABOVE + CELL.1 + 16.0), Anchor::Start, 12.0, what);
        svg.text((left, ABOVE + CELL.1 + 31.0), Anchor::Start, 11.0, &words(swatch));
    }
    svg.text((6.0, size.1 - 8.0), Anchor::Start, 10.0, "a model, not a photograph");
    svg.finish()
}

fn words(swatch: &Swatch) -> String {
    let hue = swatch.hue().map_or("grey", Hue::words);
    format!("L* {} +/- {}, {hue}", number(swatch.lab().l(), 0), number(swatch.uncertainty(), 0))
}
