use super::{Anchor, Paint, Svg};
use crate::{
    colour::Level,
    lift::Lightening,
    quantity::{Duration, Quantity},
    text::{number, span},
};

/// What a chart of level against time shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LevelChart<'a> {
    /// What stands above it.
    pub title: &'a str,
    /// The forecast.
    pub lightening: &'a Lightening,
    /// The longest that a strand may carry the mixture.
    pub limit: Duration,
    /// The level wanted.
    pub target: Option<Level>,
    /// Levels that were read, and after what time.
    pub readings: &'a [(Duration, Level)],
}

/// Width and height of the picture.
const SIZE: (f64, f64) = (640.0, 380.0);
/// The plot: left, top, right, bottom.
const PLOT: (f64, f64, f64, f64) = (52.0, 40.0, 622.0, 330.0);
/// Points of the curve.
const STEPS: u8 = 90;

const INK: &str = "#222";
const GRID: &str = "#ddd";
const BAND: &str = "#e69f00";
const CURVE: &str = "#7a4b00";
const MARK: &str = "#0072b2";

/// Level against time as SVG: the median, the band that holds 80 of 100 cases, target, limit and readings.
///
/// # Example
///
/// ```
/// use foilwork::{chart::{LevelChart, level_chart}, colour::Level, lift::{Belief, Lightening, Situation}};
/// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
///
/// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
/// let lightening = Lightening::new(&Belief::untested(), &mix, Level::new(4.0)?);
/// let svg = level_chart(&LevelChart {
///     title: "nape",
///     lightening: &lightening,
///     limit: Duration::from_min(45.0)?,
///     target: Some(Level::new(8.0)?),
///     readings: &[(Duration::from_min(20.0)?, Level::new(6.5)?)],
/// });
/// assert!(svg.starts_with("<svg ") && svg.contains("a model; a strand decides"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn level_chart(chart: &LevelChart<'_>) -> String {
    let axes = Axes::of(chart);
    let mut svg = Svg::new(SIZE, chart.title, &words(chart));
    svg.rect((0.0, 0.0), SIZE, &Paint::area("#fff"));
    svg.text((PLOT.0, 24.0), Anchor::Start, 15.0, chart.title);
    axes.draw(&mut svg);
    let times = || (0..=STEPS).map(|i| f64::from(i) / f64::from(STEPS) * axes.minutes);
    let at = |minutes: f64| chart.lightening.level_after(Duration::nearest(minutes));
    let upper = times().map(|time| axes.point(time, at(time).high().number()));
    let lower: Vec<_> = times().map(|time| axes.point(time, at(time).low().number())).collect();
    svg.area(upper.chain(lower.into_iter().rev()), &Paint::area(BAND).opacity(0.3));
    svg.line(times().map(|time| axes.point(time, at(time).best().number())), &Paint::line(CURVE, 2.5));
    if let Some(target) = chart.target {
        let level = target.number();
        svg.line([axes.point(0.0, level), axes.point(axes.minutes, level)], &Paint::line(INK, 1.2).dashed());
        let (x, y) = axes.point(0.0, level);
        svg.text((x + 6.0, y - 5.0), Anchor::Start, 12.0, &format!("wanted: {}", number(level, 1)));
    }
    let limit = chart.limit.min();
    svg.line([axes.point(limit, axes.lowest), axes.point(limit, axes.highest)], &Paint::line(INK, 2.0));
    let (x, y) = axes.point(limit, axes.lowest);
    svg.text((x - 5.0, y - 8.0), Anchor::End, 12.0, &format!("limit: {} min", number(limit, 0)));
    for (time, level) in chart.readings {
        let (x, y) = axes.point(time.min(), level.number());
        svg.circle((x, y), 5.0, &Paint::area("#fff").outlined(MARK, 2.5));
        svg.text((x + 8.0, y + 14.0), Anchor::Start, 12.0, &format!("read: {}", number(level.number(), 1)));
    }
    let note = "line: median; band: 80 of 100 cases; a model; a strand decides";
    svg.text((PLOT.2, 24.0), Anchor::End, 11.0, note);
    svg.finish()
}

/// What the picture shows, in words.
fn words(chart: &LevelChart<'_>) -> String {
    let level = chart.lightening.level_after(chart.limit);
    let mut words = format!(
        "Level against minutes, a model; a strand decides. From level {} to {} after {} min.",
        number(chart.lightening.start().number(), 1),
        span(&level, |level| number(level.number(), 1)),
        number(chart.limit.min(), 0)
    );
    if let Some(target) = chart.target {
        let reached = match chart.lightening.time_to(target).median {
            Some(time) => format!("reached after about {} min (median)", number(time.min(), 0)),
            None => "not reached by the median".to_owned(),
        };
        words += &format!(" Level {} is wanted, {reached}.", number(target.number(), 1));
    }
    for (time, level) in chart.readings {
        words += &format!(" Read after {} min: {}.", number(time.min(), 0), number(level.number(), 1));
    }
    words
}

/// What the edges of the plot stand for.
struct Axes {
    minutes: f64,
    lowest: f64,
    highest: f64,
}

impl Axes {
    fn of(chart: &LevelChart<'_>) -> Self {
        let read = chart.readings.iter();
        let latest = read.clone().map(|(time, _)| time.min()).fold(chart.limit.min(), f64::max);
        let levels = read.map(|(_, level)| level.number()).chain(chart.target.map(Level::number));
        let end = chart.lightening.level_after(chart.limit).high().number();
        let start = chart.lightening.start().number();
        let (low, high) = levels.fold((start, end), |(low, high), level| (low.min(level), high.max(level)));
        Self { minutes: (latest * 1.08).max(1.0), lowest: low.floor() - 0.5, highest: high.ceil() + 0.5 }
    }

    fn point(&self, minutes: f64, level: f64) -> (f64, f64) {
        let (left, top, right, bottom) = PLOT;
        let along = (minutes / self.minutes).clamp(0.0, 1.0);
        let up = ((level - self.lowest) / (self.highest - self.lowest)).clamp(0.0, 1.0);
        (left + along * (right - left), bottom - up * (bottom - top))
    }

    fn draw(&self, svg: &mut Svg) {
        let (left, top, right, bottom) = PLOT;
        for level in (1..=12u8).map(f64::from).filter(|level| *level > self.lowest && *level < self.highest) {
            let (_, y) = self.point(0.0, level);
            svg.line([(left, y), (right, y)], &Paint::line(GRID, 1.0));
            svg.text((left - 8.0, y + 4.0), Anchor::End, 12.0, &number(level, 0));
        }
        // About eight marks, whatever the length.
        let step = [5.0, 10.0, 15.0, 30.0, 60.0].into_iter().find(|step| self.minutes / step <= 12.0).unwrap_or(120.0);
        for minutes in (0..=12u8).map(|i| f64::from(i) * step).filter(|minutes| *minutes <= self.minutes) {
            let (x, _) = self.point(minutes, self.lowest);
            svg.line([(x, bottom), (x, bottom + 5.0)], &Paint::line(INK, 1.0));
            svg.text((x, bottom + 20.0), Anchor::Middle, 12.0, &number(minutes, 0));
        }
        svg.rect((left, top), (right - left, bottom - top), &Paint::line(INK, 1.0));
        let middle = f64::midpoint(left, right);
        svg.text((middle, bottom + 40.0), Anchor::Middle, 12.0, "minutes from the first strand");
        svg.text((12.0, top - 8.0), Anchor::Start, 12.0, "level");
    }
}
