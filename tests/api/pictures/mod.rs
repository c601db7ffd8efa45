//! Whole pictures, element by element, in the order in which they lie on each other: every coordinate is worked out by hand from
//! scales with easy numbers.

mod bars;
mod curves;
mod maps;
mod rows;
mod shapes;

use foilwork::{colour::Level, quantity::Duration, text::number};

fn level(number: f64) -> Level {
    Level::new(number).unwrap()
}

fn minutes(number: f64) -> Duration {
    Duration::from_min(number).unwrap()
}

fn at(value: f64) -> String {
    number(value, 2)
}

fn rect([x, y, width, height]: [f64; 4], paint: &str) -> String {
    let [x, y, width, height] = [x, y, width, height].map(at);
    format!("<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" {paint}/>")
}

fn text((x, y): (f64, f64), anchor: &str, size: f64, words: &str) -> String {
    let [x, y, size] = [x, y, size].map(at);
    format!("<text x=\"{x}\" y=\"{y}\" text-anchor=\"{anchor}\" font-size=\"{size}\" fill=\"#222\">{words}</text>")
}

fn points(points: &[(f64, f64)]) -> String {
    points.iter().map(|(x, y)| format!("{},{}", at(*x), at(*y))).collect::<Vec<_>>().join(" ")
}

fn line(along: &[(f64, f64)], paint: &str) -> String {
    format!("<polyline points=\"{}\" {paint}/>", points(along))
}

fn area(corners: &[(f64, f64)], paint: &str) -> String {
    format!("<polygon points=\"{}\" {paint}/>", points(corners))
}

fn circle((x, y): (f64, f64), radius: f64, paint: &str) -> String {
    let [x, y, radius] = [x, y, radius].map(at);
    format!("<circle cx=\"{x}\" cy=\"{y}\" r=\"{radius}\" {paint}/>")
}

fn stroke(colour: &str, width: f64) -> String {
    format!("fill=\"none\" stroke=\"{colour}\" stroke-width=\"{}\"", at(width))
}

fn outlined(colour: &str, outline: &str, width: f64) -> String {
    format!("fill=\"{colour}\" stroke=\"{outline}\" stroke-width=\"{}\"", at(width))
}

fn dashed(colour: &str, width: f64) -> String {
    format!("{} stroke-dasharray=\"5 4\"", stroke(colour, width))
}

/// The elements of a picture, one a line.
fn elements(svg: &str) -> Vec<&str> {
    let body = svg.split_once("</desc>\n").unwrap().1;
    body.strip_suffix("</svg>\n").unwrap().lines().collect()
}

/// What stands in the title and in the words of a picture.
fn said(svg: &str) -> [&str; 2] {
    ["title", "desc"].map(|tag| {
        let (open, close) = (format!("<{tag}>"), format!("</{tag}>"));
        svg.split_once(&open).unwrap().1.split_once(&close).unwrap().0
    })
}

#[track_caller]
fn same(svg: &str, want: &[String]) {
    let got = elements(svg);
    for (place, (got, want)) in got.iter().zip(want).enumerate() {
        assert_eq!(got, want, "element {place}");
    }
    assert_eq!(got.len(), want.len(), "{:?} {:?}", got.get(want.len()), want.get(got.len()));
}
