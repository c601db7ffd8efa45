//! The shapes themselves, and how they are painted.

use super::{area, circle, line, outlined, rect, said, same, text};
use foilwork::chart::{Anchor, Paint, Svg};
use rstest::rstest;

#[test]
fn each_shape_is_its_element() {
    let mut svg = Svg::new((100.5, 20.0), "A <line>", "from \"left\"");
    let grey = Paint::area("#ddd");
    svg.line([(0.0, 1.5), (2.25, 3.0)], &Paint::line("#444", 1.25));
    svg.area([(0.0, 0.0), (10.0, 0.0), (5.0, 8.0)], &grey);
    svg.rect((1.0, 2.0), (3.0, 4.0), &grey);
    // A size below zero is none.
    svg.rect((1.0, 2.0), (-3.0, -4.0), &grey);
    svg.circle((1.0, 2.0), 3.0, &grey);
    svg.circle((1.0, 2.0), -3.0, &grey);
    svg.text((1.0, 2.0), Anchor::Start, 3.0, "a & b");
    svg.text((1.0, 2.0), Anchor::Middle, 3.0, "b");
    svg.text((1.0, 2.0), Anchor::End, 3.0, "c");
    let svg = svg.finish();
    let plain = "fill=\"#ddd\"";
    same(
        &svg,
        &[
            line(&[(0.0, 1.5), (2.25, 3.0)], "fill=\"none\" stroke=\"#444\" stroke-width=\"1.25\""),
            area(&[(0.0, 0.0), (10.0, 0.0), (5.0, 8.0)], plain),
            rect([1.0, 2.0, 3.0, 4.0], plain),
            rect([1.0, 2.0, 0.0, 0.0], plain),
            circle((1.0, 2.0), 3.0, plain),
            circle((1.0, 2.0), 0.0, plain),
            text((1.0, 2.0), "start", 3.0, "a &amp; b"),
            text((1.0, 2.0), "middle", 3.0, "b"),
            text((1.0, 2.0), "end", 3.0, "c"),
        ],
    );
    assert!(svg.starts_with(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100.5 20\" width=\"100.5\" height=\"20\" role"
    ));
    assert_eq!(said(&svg), ["A &lt;line&gt;", "from &quot;left&quot;"]);
}

/// On a ring of 20 and 40 around (50, 50): at the top (50, 10), at the right (90, 50), at the left (10, 50). More than half a turn, in
/// either sense, goes the long way round; half a turn does not.
#[rstest]
#[case((0.0, 90.0), "M50 10 A40 40 0 0 1 90 50 L70 50 A20 20 0 0 0 50 30 Z")]
#[case((0.0, 180.0), "M50 10 A40 40 0 0 1 50 90 L50 70 A20 20 0 0 0 50 30 Z")]
#[case((0.0, 270.0), "M50 10 A40 40 0 1 1 10 50 L30 50 A20 20 0 1 0 50 30 Z")]
#[case((270.0, 0.0), "M10 50 A40 40 0 1 1 50 10 L50 30 A20 20 0 1 0 30 50 Z")]
fn a_piece_of_a_ring(#[case] angles: (f64, f64), #[case] path: &str) {
    let mut svg = Svg::new((100.0, 100.0), "ring", "a piece");
    svg.sector((50.0, 50.0), (20.0, 40.0), angles, &Paint::area("#abc"));
    same(&svg.finish(), &[format!("<path d=\"{path}\" fill=\"#abc\"/>")]);
}

#[rstest]
#[case(Paint::area("#ddd"), "fill=\"#ddd\"".to_owned())]
#[case(Paint::area("#ddd").outlined("#444", 0.5), outlined("#ddd", "#444", 0.5))]
#[case(Paint::area("#ddd").opacity(0.8), "fill=\"#ddd\" opacity=\"0.8\"".to_owned())]
#[case(Paint::area("#ddd").opacity(1.0), "fill=\"#ddd\"".to_owned())]
#[case(Paint::area("#ddd").opacity(-1.0), "fill=\"#ddd\" opacity=\"0\"".to_owned())]
#[case(Paint::line("#444", 2.0), "fill=\"none\" stroke=\"#444\" stroke-width=\"2\"".to_owned())]
#[case(
    Paint::line("#444", 2.0).dashed().opacity(0.5),
    "fill=\"none\" stroke=\"#444\" stroke-width=\"2\" stroke-dasharray=\"5 4\" opacity=\"0.5\"".to_owned()
)]
#[case(Paint::area("\"x").outlined("<y", 1.0), "fill=\"&quot;x\" stroke=\"&lt;y\" stroke-width=\"1\"".to_owned())]
fn how_a_shape_is_painted(#[case] paint: Paint<'_>, #[case] want: String) {
    assert_eq!(paint.to_string(), want);
}
