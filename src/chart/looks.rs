use super::{Anchor, Paint, Svg};
use crate::{
    colour::Level,
    quantity::Duration,
    source::Interval,
    text::{number, span},
};

/// What a chart of looks shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LookChart<'a> {
    /// What stands above it.
    pub title: &'a str,
    /// The level at the start.
    pub start: Interval<Level>,
    /// The level wanted.
    pub target: Level,
    /// How long the first strand has carried the mixture at each look, and what to expect there.
    pub looks: &'a [(Duration, Interval<Level>)],
}

const SIZE: (f64, f64) = (420.0, 240.0);
/// The plot: left, top, right, bottom.
const PLOT: (f64, f64, f64, f64) = (40.0, 44.0, 405.0, 196.0);

/// What to expect at each look at the first strand: at least, most likely and at most, with the level wanted.
///
/// # Example
///
/// ```
/// use foilwork::{chart::{LookChart, look_chart}, colour::Level, quantity::Duration, source::Interval};
///
/// let level = |number| Level::new(number);
/// let looks = [(Duration::from_min(20.0)?, Interval::new(level(5.0)?, level(6.5)?, level(8.0)?)?)];
/// let svg = look_chart(&LookChart { title: "nape", start: level(4.0)?.into(), target: level(8.0)?, looks: &looks });
/// assert!(svg.contains("after 20 min 6.5 (5 to 8)") && svg.contains("a strand decides"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn look_chart(chart: &LookChart<'_>) -> String {
    let points: Vec<(f64, Interval<Level>)> = std::iter::once((0.0, chart.start))
        .chain(chart.looks.iter().map(|(time, level)| (time.min(), *level)))
        .collect();
    let longest = points.iter().map(|(time, _)| *time).fold(1.0, f64::max);
    let levels = || points.iter().flat_map(|(_, level)| level.to_array()).chain([chart.target]).map(Level::number);
    let lowest = levels().fold(f64::MAX, f64::min).floor() - 0.5;
    let highest = levels().fold(f64::MIN, f64::max).ceil() + 0.5;
    let (left, top, right, bottom) = PLOT;
    let place = |time: f64, level: f64| {
        let up = ((level - lowest) / (highest - lowest)).clamp(0.0, 1.0);
        (left + (time / longest).clamp(0.0, 1.0) * (right - left), bottom - up * (bottom - top))
    };
    let mut svg = Svg::new(SIZE, chart.title, &words(chart));
    svg.rect((0.0, 0.0), SIZE, &Paint::area("#fff"));
    svg.text((8.0, 20.0), Anchor::Start, 13.0, chart.title);
    svg.text((8.0, 36.0), Anchor::Start, 10.0, "level; line: median, area: 80 of 100 cases; a model, a strand decides");
    for level in (1..=12_u8).map(f64::from).filter(|level| *level > lowest && *level < highest) {
        let (_, y) = place(0.0, level);
        svg.line([(left, y), (right, y)], &Paint::line("#ddd", 1.0));
        svg.text((left - 6.0, y + 4.0), Anchor::End, 11.0, &number(level, 0));
    }
    let upper = points.iter().map(|(time, level)| place(*time, level.high().number()));
    let lower = points.iter().rev().map(|(time, level)| place(*time, level.low().number()));
    svg.area(upper.chain(lower), &Paint::area("#e69f00").opacity(0.3));
    svg.line(points.iter().map(|(time, level)| place(*time, level.best().number())), &Paint::line("#7a4b00", 2.2));
    let mut free_from = left;
    for (time, level) in points.iter().skip(1) {
        let (x, y) = place(*time, level.best().number());
        svg.circle((x, y), 3.5, &Paint::area("#fff").outlined("#7a4b00", 1.8));
        // A minute that would stand on the one before is left to the words.
        if x - 8.0 >= free_from {
            svg.text((x, bottom + 15.0), Anchor::Middle, 10.0, &number(*time, 0));
            free_from = x + 8.0;
        }
    }
    let wanted = chart.target.number();
    svg.line([place(0.0, wanted), place(longest, wanted)], &Paint::line("#222", 1.2).dashed());
    let (x, y) = place(0.0, wanted);
    svg.text((x + 4.0, y - 4.0), Anchor::Start, 11.0, &format!("wanted: {}", number(wanted, 1)));
    svg.text((f64::midpoint(left, right), bottom + 32.0), Anchor::Middle, 11.0, "minutes on the first strand");
    svg.finish()
}

fn words(chart: &LookChart<'_>) -> String {
    let level = |level: &Interval<Level>| span(level, |level| number(level.number(), 1));
    let looks: Vec<String> = chart
        .looks
        .iter()
        .map(|(time, expected)| format!("after {} min {}", number(time.min(), 0), level(expected)))
        .collect();
    format!(
        "Level of the first strand, a model; a strand decides. From {}: {}. Wanted: {}.",
        level(&chart.start),
        looks.join("; "),
        number(chart.target.number(), 1)
    )
}
