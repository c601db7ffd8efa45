use super::{Anchor, Paint, Svg};
use crate::{
    day::{Piece, PieceKind, SectionTimes, Timeline},
    quantity::{Duration, Quantity},
    text::{inert, number},
};

/// What a picture of the day shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DayChart<'a> {
    /// What stands above it.
    pub title: &'a str,
    /// The day.
    pub timeline: &'a Timeline,
}

/// Left end of the bars, right end, top of the first row, height of a row and of a bar.
const LEFT: f64 = 150.0;
const RIGHT: f64 = 850.0;
const TOP: f64 = 56.0;
const ROW: f64 = 26.0;
const BAR: f64 = 18.0;
/// Room for a name left of the bars, in heights of its letters.
const NAME: f64 = (LEFT - 12.0) / 12.0;

const INK: &str = "#222";
const GRID: &str = "#ddd";
const MIX: &str = "#cc79a7";
const APPLY: &str = "#e69f00";
const DEVELOP: &str = "#f6deb0";
const LOOK: &str = "#bbb";
const WALK: &str = "#fff";
const RINSE: &str = "#56b4e9";

/// The day as SVG: a row for each section with its application, its time on the hair and its rinse, then a row for the hands
/// of each person. Every bar carries its word or its letter, so that colour is never the only carrier of a fact.
///
/// # Example
///
/// ```
/// use foilwork::{chart::{DayChart, day_chart}, day::{Effort, Floor, SectionWork, arrange}, quantity::Duration};
///
/// let min = |value| Duration::from_min(value);
/// let nape = SectionWork::new("nape", min(15.0)?, min(35.0)?, min(60.0)?);
/// let day = arrange(&[nape], &[], &Floor::default(), Effort::Quick)?;
/// let svg = day_chart(&DayChart { title: "one section", timeline: &day });
/// assert!(svg.starts_with("<svg ") && svg.contains("nape") && svg.contains("rinse"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn day_chart(chart: &DayChart<'_>) -> String {
    let day = chart.timeline;
    let rows = (day.sections.len() + day.hands.len()) as f64;
    let size = (RIGHT + 20.0, TOP + rows * ROW + 44.0);
    let mut svg = Svg::new(size, chart.title, &words(day));
    svg.rect((0.0, 0.0), size, &Paint::area("#fff"));
    svg.text((12.0, 24.0), Anchor::Start, 15.0, chart.title);
    svg.text((12.0, 42.0), Anchor::Start, 11.0, "m mix, a apply, d develop, l look, w walk, r rinse");
    let scale = Scale::of(day);
    scale.draw(&mut svg, TOP + rows * ROW);
    for (row, section) in day.sections.iter().enumerate() {
        let y = TOP + row as f64 * ROW;
        svg.text((LEFT - 8.0, y + 15.0), Anchor::End, 12.0, &fitting(&section.name));
        for at in &section.mix_at {
            scale.mark(&mut svg, y, *at, MIX, "m");
        }
        scale.bar(&mut svg, y, (section.start, section.applied), APPLY, "apply");
        scale.bar(&mut svg, y, (section.applied, section.rinse), DEVELOP, "develop");
        scale.bar(&mut svg, y, (section.rinse, section.rinsed), RINSE, "r");
    }
    for person in 0..day.hands.len() {
        let y = TOP + (day.sections.len() + person) as f64 * ROW;
        svg.text((LEFT - 8.0, y + 15.0), Anchor::End, 12.0, &format!("hands {}", person + 1));
        for piece in day.pieces.iter().filter(|piece| piece.person == person) {
            let (colour, letter) = drawn(piece);
            scale.bar(&mut svg, y, (piece.from, piece.to), colour, letter);
        }
    }
    svg.finish()
}

fn drawn(piece: &Piece) -> (&'static str, &'static str) {
    match piece.kind {
        PieceKind::Mix => (MIX, "m"),
        PieceKind::Apply => (APPLY, "a"),
        PieceKind::Look => (LOOK, "l"),
        PieceKind::Walk => (WALK, "w"),
        PieceKind::Rinse => (RINSE, "r"),
    }
}

/// The minutes that the picture spans.
struct Scale {
    from: f64,
    to: f64,
}

impl Scale {
    /// From the first work or the first strand that is on already.
    fn of(day: &Timeline) -> Self {
        let begins = day.pieces.iter().map(|piece| piece.from).chain(day.sections.iter().map(|one| one.start));
        let from = begins.map(Duration::min).fold(day.finish.min(), f64::min);
        Self { from, to: day.finish.min().max(from + 1.0) }
    }

    fn x(&self, at: Duration) -> f64 {
        LEFT + ((at.min() - self.from) / (self.to - self.from)).clamp(0.0, 1.0) * (RIGHT - LEFT)
    }

    fn bar(&self, svg: &mut Svg, y: f64, (from, to): (Duration, Duration), colour: &str, word: &str) {
        let (left, right) = (self.x(from), self.x(to));
        if right <= left {
            return;
        }
        svg.rect((left, y + 2.0), (right - left, BAR), &Paint::area(colour).outlined(INK, 0.5));
        // The first letter where the word does not fit; a sliver carries its letter above.
        let width = 6.5 * word.len() as f64;
        let text = if width <= right - left { word } else { word.get(..1).unwrap_or(word) };
        let fits = right - left >= 7.0;
        if fits {
            svg.text((f64::midpoint(left, right), y + 15.0), Anchor::Middle, 10.5, text);
        } else {
            svg.text((f64::midpoint(left, right), y + 1.0), Anchor::Middle, 7.0, text);
        }
    }

    /// A mark where a bowl is begun.
    fn mark(&self, svg: &mut Svg, y: f64, at: Duration, colour: &str, letter: &str) {
        let x = self.x(at);
        svg.line([(x, y + 2.0), (x, y + 2.0 + BAR)], &Paint::line(colour, 2.5));
        svg.text((x, y + 1.0), Anchor::Middle, 7.0, letter);
    }

    fn draw(&self, svg: &mut Svg, bottom: f64) {
        let steps = [5.0, 10.0, 15.0, 30.0, 60.0];
        let span = self.to - self.from;
        let step = steps.into_iter().find(|step| span / step <= 16.0).unwrap_or(120.0);
        let mut at = (self.from / step).ceil() * step;
        while at <= self.to {
            let x = self.x(Duration::nearest(at));
            svg.line([(x, TOP), (x, bottom + 4.0)], &Paint::line(GRID, 1.0));
            svg.text((x, bottom + 18.0), Anchor::Middle, 11.0, &number(at, 0));
            at += step;
        }
        svg.text((f64::midpoint(LEFT, RIGHT), bottom + 36.0), Anchor::Middle, 12.0, "minutes");
    }
}

/// A name that fits beside the bars, whichever sans-serif letters are there; the words of the picture say it in full.
fn fitting(name: &str) -> String {
    let name = inert(name);
    let wide = |text: &str| text.chars().map(width).sum::<f64>();
    if wide(&name) <= NAME {
        return name.into_owned();
    }
    let mut room = NAME - width(CUT);
    let fits = |letter: &char| {
        room -= width(*letter);
        room >= 0.0
    };
    name.chars().take_while(fits).chain([CUT]).collect()
}

/// What stands for the rest of a name.
const CUT: char = '\u{2026}';

/// About how wide the widest usual letters are, in their height.
fn width(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | 't' | 'f' | 'r' | ' ' | '.' | ',' | '\'' => 0.4,
        'm' | 'w' | 'M' | 'W' | CUT => 1.0,
        'A'..='Z' => 0.75,
        _ if letter.is_ascii() => 0.63,
        _ => 1.0,
    }
}

/// The day in words.
fn words(day: &Timeline) -> String {
    let at = |time: Duration| number(time.min(), 0);
    let section = |one: &SectionTimes| {
        format!("{}: first strand {}, all on {}, rinse {}", one.name, at(one.start), at(one.applied), at(one.rinse))
    };
    let told: Vec<String> = day.sections.iter().map(section).collect();
    format!("In minutes. {}. Finished {}.", told.join("; "), at(day.finish))
}
