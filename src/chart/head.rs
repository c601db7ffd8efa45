use super::{Anchor, Paint, Svg};
use crate::{
    head::{RegionLook, Template},
    text::{list, number},
};

/// What a map of the head shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeadChart<'a> {
    /// What stands above it.
    pub title: &'a str,
    /// Where the regions lie.
    pub template: &'a Template,
    /// How each of them reads, in the order of the template.
    pub looks: &'a [RegionLook],
    /// What is written in each of them besides, line by line, in the same order: sections and foils.
    pub written: &'a [Vec<String>],
}

/// Pixels of a unit of the map, the space above it, and the height of a line of text.
const UNIT: f64 = 56.0;
const ABOVE: f64 = 64.0;
const LINE: f64 = 13.0;

/// A map of the head, flattened, the face at the top: each region in the colour that the model gives it, with its name, its
/// lightness and what is written in it as text, so that the colour is never the only carrier of a fact.
///
/// # Example
///
/// ```
/// use foilwork::{
///     chart::{HeadChart, head_chart}, colour::{Level, Swatch}, head::{Template, read_head},
/// };
///
/// let template = Template::standard();
/// let look = read_head(&template, &[], &Swatch::natural(Level::new(6.0)?), None);
/// let written = vec![vec!["foils 1-12".to_owned()]];
/// let svg = head_chart(&HeadChart { title: "nape first", template: &template, looks: &look.regions, written: &written });
/// assert!(svg.contains("front hairline") && svg.contains("foils 1-12"));
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn head_chart(chart: &HeadChart<'_>) -> String {
    let regions = chart.template.regions();
    let places = chart.template.drawn();
    let far = |edge: fn(&[f64; 4]) -> f64| places.iter().map(edge).fold(1.0, f64::max);
    let (width, height) = (far(|[x, _, width, _]| x + width), far(|[_, y, _, height]| y + height));
    let mut svg = Svg::new((width * UNIT, height * UNIT + ABOVE), chart.title, &words(chart));
    svg.rect((0.0, 0.0), (width * UNIT, height * UNIT + ABOVE), &Paint::area("#fff"));
    svg.text((8.0, 24.0), Anchor::Start, 15.0, chart.title);
    svg.text((8.0, 44.0), Anchor::Start, 11.0, "face at the top; colours are a model, not a photograph");
    for (i, ((region, place), look)) in regions.iter().zip(&places).zip(chart.looks).enumerate() {
        let [x, y, width, height] = *place;
        let (left, top) = (x * UNIT, y * UNIT + ABOVE);
        let colour = look.colour.srgb().to_string();
        svg.rect((left, top), (width * UNIT, height * UNIT), &Paint::area(&colour).outlined("#222", 1.5));
        let mut lines = vec![region.name.clone(), format!("L* {}", number(look.lab_l.best().lab_l(), 0))];
        lines.extend(chart.written.get(i).into_iter().flatten().cloned());
        // White under the words, so that they can be read on every colour.
        let longest = lines.iter().map(|line| line.chars().count()).max().unwrap_or(0);
        let box_width = (6.0 * f64::from(u32::try_from(longest).unwrap_or(60)) + 8.0).min(width * UNIT - 6.0);
        let mut at = top + 3.0;
        svg.rect(
            (left + 3.0, at),
            (box_width, LINE * f64::from(u32::try_from(lines.len()).unwrap_or(1)) + 4.0),
            &Paint::area("#fff").opacity(0.85),
        );
        for line in &lines {
            at += LINE;
            svg.text((left + 6.0, at), Anchor::Start, 10.5, line);
        }
    }
    svg.finish()
}

/// The map in words.
fn words(chart: &HeadChart<'_>) -> String {
    let of = chart.looks.iter().enumerate().map(|(i, look)| {
        let written = chart.written.get(i).map(|lines| lines.join(", ")).filter(|text| !text.is_empty());
        let lightness = number(look.lab_l.best().lab_l(), 0);
        format!("{} L* {lightness}{}", look.region, written.map(|text| format!(" ({text})")).unwrap_or_default())
    });
    list(of.collect::<Vec<_>>(), "and")
}
