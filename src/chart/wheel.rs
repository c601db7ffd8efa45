use super::{Anchor, Paint, Svg};
use crate::colour::{Hue, Temper};

/// What a colour wheel shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HueWheel<'a> {
    /// What stands above it.
    pub title: &'a str,
    /// A hue that is marked with the one opposite.
    pub marked: Option<Hue>,
}

const SIZE: (f64, f64) = (580.0, 500.0);
const CENTRE: (f64, f64) = (290.0, 262.0);
/// Inner and outer edge of the ring, and where the names stand.
const RING: (f64, f64) = (82.0, 150.0);
const NAMES: f64 = 164.0;

/// How each hue is drawn: colours of a screen for words of a wheel, assumed; a hair colour of that tone is duller.
const SHOWN: [&str; 12] = [
    "#c62828", "#d9481c", "#ef7d0a", "#f5a416", "#f4d21f", "#a3bf2f", "#3b8f3e", "#1f8a83", "#2261b5", "#4a3f9f",
    "#6f2f91", "#9c2263",
];

/// The wheel of twelve hues, warm and cool, with every name as text; a marked hue is joined to the one that neutralises it.
///
/// # Example
///
/// ```
/// use foilwork::{chart::{HueWheel, hue_wheel}, colour::Hue};
///
/// let svg = hue_wheel(&HueWheel { title: "Level 6 lifts to orange", marked: Some(Hue::Orange) });
/// assert!(svg.contains("orange is neutralised by blue") && svg.contains("not a photograph"));
/// ```
///
/// # Source
///
/// The order of the hues and their halves are those of [`Hue`]; the screen colours are assumed.
#[must_use]
pub fn hue_wheel(chart: &HueWheel<'_>) -> String {
    let said = chart.marked.map(|hue| format!("{hue} is neutralised by {}", hue.complement()));
    let warm: Vec<&str> = Hue::ALL.iter().filter(|hue| hue.temper() == Temper::Warm).map(|hue| hue.words()).collect();
    let about = format!(
        "Twelve hues in a ring, each opposite the one that neutralises it; warm are {}. {}.",
        warm.join(", "),
        said.as_deref().unwrap_or("none is marked")
    );
    let mut svg = Svg::new(SIZE, chart.title, &about);
    svg.rect((0.0, 0.0), SIZE, &Paint::area("#fff"));
    svg.text((12.0, 24.0), Anchor::Start, 15.0, chart.title);
    svg.text((12.0, 42.0), Anchor::Start, 11.0, "colours are a model, not a photograph; opposite hues neutralise");
    let is_marked = |hue: Hue| chart.marked.is_some_and(|marked| hue == marked || hue == marked.complement());
    // What is marked is drawn last, so that its outline lies on its neighbours.
    let mut order: Vec<(Hue, &str)> = Hue::ALL.iter().copied().zip(SHOWN).collect();
    order.sort_by_key(|(hue, _)| is_marked(*hue));
    for (hue, colour) in order {
        let angle = middle(hue);
        let outline = if is_marked(hue) { ("#000", 3.5) } else { ("#fff", 1.5) };
        svg.sector(CENTRE, RING, (angle - 15.0, angle + 15.0), &Paint::area(colour).outlined(outline.0, outline.1));
        let (x, y) = on(NAMES, angle);
        let anchor = match x - CENTRE.0 {
            off if off > 20.0 => Anchor::Start,
            off if off < -20.0 => Anchor::End,
            _ => Anchor::Middle,
        };
        svg.text((x, y + 4.0), anchor, 13.0, hue.words());
    }
    for (text, angle) in [("warm", middle(Hue::YellowOrange) - 15.0), ("cool", middle(Hue::BlueViolet) - 15.0)] {
        let (x, y) = on(58.0, angle);
        svg.text((x, y + 4.0), Anchor::Middle, 12.0, text);
    }
    if let (Some(hue), Some(said)) = (chart.marked, said) {
        svg.line([on(RING.0, middle(hue)), on(RING.0, middle(hue.complement()))], &Paint::line("#222", 2.0).dashed());
        svg.text((CENTRE.0, SIZE.1 - 16.0), Anchor::Middle, 14.0, &said);
    }
    svg.finish()
}

/// Degrees clockwise from the top: red stands there.
fn middle(hue: Hue) -> f64 {
    f64::from(u32::try_from(hue.position()).unwrap_or(0)) * 30.0
}

fn on(radius: f64, degrees: f64) -> (f64, f64) {
    let (sin, cos) = degrees.to_radians().sin_cos();
    (CENTRE.0 + radius * sin, CENTRE.1 - radius * cos)
}
