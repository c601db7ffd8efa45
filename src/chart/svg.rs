use super::Paint;
use crate::text::{escaped, inert, number};
use std::fmt::Write;

/// A picture as it grows. Coordinates are in its own units, x to the right and y down; the picture scales to its place.
///
/// # Example
///
/// ```
/// use foilwork::chart::{Anchor, Paint, Svg};
///
/// let mut svg = Svg::new((100.0, 20.0), "A line", "from left to right");
/// svg.line([(0.0, 10.0), (100.0, 10.0)], &Paint::line("#444", 1.0));
/// svg.text((50.0, 8.0), Anchor::Middle, 6.0, "<half way>");
/// let text = svg.finish();
/// assert!(text.starts_with("<svg ") && text.contains("&lt;half way&gt;") && !text.contains("<script"));
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Svg {
    head: String,
    body: String,
}

/// Which end of a text stands at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// The text begins there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

impl Svg {
    /// An empty picture of this width and height, with what it shows in words: for screen readers, and where pictures are
    /// not shown.
    #[must_use]
    pub fn new((width, height): (f64, f64), title: &str, description: &str) -> Self {
        let (width, height) = (number(width, 2), number(height, 2));
        let (title, description) = (words(title), words(description));
        Self {
            head: format!(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" \
                 height=\"{height}\" role=\"img\" aria-label=\"{title}\" font-family=\"sans-serif\">\n\
                 <title>{title}</title>\n<desc>{description}</desc>\n"
            ),
            body: String::new(),
        }
    }

    /// A line through points.
    pub fn line(&mut self, points: impl IntoIterator<Item = (f64, f64)>, paint: &Paint<'_>) {
        self.element("polyline", &format!("points=\"{}\" {paint}", list(points)));
    }

    /// An area whose corners are given.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::chart::{Paint, Svg};
    ///
    /// let (grey, line) = (Paint::area("#ddd"), Paint::line("#444", 1.0));
    /// let mut svg = Svg::new((100.0, 100.0), "Four shapes", "a triangle, a square, a circle and a piece of a ring");
    /// svg.area([(0.0, 0.0), (10.0, 0.0), (5.0, 8.0)], &grey);
    /// svg.rect((20.0, 0.0), (10.0, 10.0), &grey);
    /// svg.circle((45.0, 5.0), 5.0, &line);
    /// svg.sector((50.0, 50.0), (10.0, 20.0), (0.0, 90.0), &grey);
    /// let text = svg.finish();
    /// assert!(text.contains("<rect ") && text.contains("<circle "));
    /// ```
    pub fn area(&mut self, corners: impl IntoIterator<Item = (f64, f64)>, paint: &Paint<'_>) {
        self.element("polygon", &format!("points=\"{}\" {paint}", list(corners)));
    }

    /// A rectangle by its upper left corner and its size.
    pub fn rect(&mut self, (x, y): (f64, f64), (width, height): (f64, f64), paint: &Paint<'_>) {
        let [x, y, width, height] = [x, y, width.max(0.0), height.max(0.0)].map(at);
        self.element("rect", &format!("x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" {paint}"));
    }

    /// A circle by its centre and its radius.
    pub fn circle(&mut self, (x, y): (f64, f64), radius: f64, paint: &Paint<'_>) {
        let [x, y, radius] = [x, y, radius.max(0.0)].map(at);
        self.element("circle", &format!("cx=\"{x}\" cy=\"{y}\" r=\"{radius}\" {paint}"));
    }

    /// A piece of a ring, as in a wheel: between two radii and two angles in degrees, clockwise from the top; less than a
    /// full turn.
    pub fn sector(&mut self, centre: (f64, f64), radii: (f64, f64), angles: (f64, f64), paint: &Paint<'_>) {
        let on = |radius: f64, angle: f64| {
            let (sin, cos) = angle.to_radians().sin_cos();
            format!("{} {}", at(centre.0 + radius * sin), at(centre.1 - radius * cos))
        };
        let ((inner, outer), (from, to)) = (radii, angles);
        let large = u8::from((to - from).abs() > 180.0);
        let [inner_radius, outer_radius] = [inner, outer].map(at);
        let path = format!(
            "M{} A{outer_radius} {outer_radius} 0 {large} 1 {} L{} A{inner_radius} {inner_radius} 0 {large} 0 {} Z",
            on(outer, from),
            on(outer, to),
            on(inner, to),
            on(inner, from)
        );
        self.element("path", &format!("d=\"{path}\" {paint}"));
    }

    /// A line of text of this height.
    pub fn text(&mut self, (x, y): (f64, f64), anchor: Anchor, size: f64, text: &str) {
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let (x, y, size, text) = (at(x), at(y), at(size), words(text));
        // Writing to a String cannot fail.
        let _ = writeln!(
            self.body,
            "<text x=\"{x}\" y=\"{y}\" text-anchor=\"{anchor}\" font-size=\"{size}\" fill=\"#222\">{text}</text>"
        );
    }

    /// The finished text.
    #[must_use]
    pub fn finish(self) -> String {
        format!("{}{}</svg>\n", self.head, self.body)
    }

    fn element(&mut self, name: &str, attributes: &str) {
        let _ = writeln!(self.body, "<{name} {attributes}/>");
    }
}

/// A coordinate to a hundredth; what is not finite would spoil the picture and stands at zero.
fn at(value: f64) -> String {
    number(if value.is_finite() { value } else { 0.0 }, 2)
}

fn list(points: impl IntoIterator<Item = (f64, f64)>) -> String {
    points.into_iter().map(|(x, y)| format!("{},{}", at(x), at(y))).collect::<Vec<_>>().join(" ")
}

/// Text that is neither markup nor obeyed by a terminal.
fn words(text: &str) -> String {
    escaped(&inert(text))
}
