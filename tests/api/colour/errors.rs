//! Every message of the colour room, word for word.

use foilwork::{
    colour::{
        Canvas, Difference, Hue, Lab, Lch, Level, LevelChange, ProductKind, Scale, ScaleMapping, ScaleReading,
        SeenPigment, Shade, Srgb, Tone, White, Xyz, blended_level, formula_level, result_level,
    },
    quantity::Mass,
    source::Basis,
};

fn level(number: f64) -> Level {
    Level::new(number).expect("a level of the test")
}

fn grey(white: White) -> Lab {
    Lab::new(50.0, 0.0, 0.0, white).expect("a grey")
}

fn text<T: std::fmt::Debug, E: std::fmt::Display>(result: Result<T, E>) -> String {
    result.map(|value| format!("no error but {value:?}")).unwrap_or_else(|error| error.to_string())
}

#[test]
fn messages() -> Result<(), Box<dyn std::error::Error>> {
    let formula = |natural, target, product, canvas, scale| {
        text(formula_level(level(natural), level(target), product, canvas, scale))
    };
    let (permanent, natural) = (ProductKind::PermanentColour, Canvas::Natural);
    let reading = |number| ScaleReading::new(Scale::Japanese20, number);
    let map = ScaleMapping::japanese_by_underlying_pigment();
    let anchors = [(reading(9.0)?, level(6.0)), (reading(5.0)?, level(3.0))];
    let cases = [
        (
            text(Level::new(13.0)),
            "invalid level (got 13): must be from 1 (black) to 12 (the lightest of the scales that run beyond 10)",
        ),
        (
            text(Level::new(f64::NAN)),
            "invalid level (got NaN): must be from 1 (black) to 12 (the lightest of the scales that run beyond 10)",
        ),
        (text("blond".parse::<Level>()), "invalid level (got \"blond\"): write a decimal number such as 7 or 6.5"),
        (text("1e1".parse::<Level>()), "invalid level (got \"1e1\"): write a decimal number such as 7 or 6.5"),
        (
            text(LevelChange::from_levels(12.0)),
            "invalid change of level (got 12 levels): must be from -11 (darker) to 11 levels (lighter)",
        ),
        (
            text("purple".parse::<Hue>()),
            "unknown hue \"purple\": give one of red, red-orange, orange, yellow-orange, yellow, yellow-green, green, blue-green, blue, blue-violet, violet, red-violet",
        ),
        (
            text("pale blue".parse::<SeenPigment>()),
            "unknown exposed pigment \"pale blue\": give one of red-brown, red, red-orange, orange, yellow-orange, yellow (lightening exposes no other hue; a green, blue or violet cast is no exposed pigment: read the hair with an instrument, `measured`)",
        ),
        (
            text("brassy".parse::<SeenPigment>()),
            "unknown exposed pigment \"brassy\": give one of red-brown, red, red-orange, orange, yellow-orange, yellow (brass is yellow-orange or orange)",
        ),
        (
            text("coppery".parse::<SeenPigment>()),
            "unknown exposed pigment \"coppery\": give one of red-brown, red, red-orange, orange, yellow-orange, yellow (copper is orange or red-orange)",
        ),
        (
            text("strong yelow".parse::<SeenPigment>()),
            "unknown exposed pigment \"yelow\": give one of red-brown, red, red-orange, orange, yellow-orange, yellow (did you mean yellow?)",
        ),
        (
            formula(6.0, 8.0, ProductKind::Lightener, natural, Scale::European10),
            "no formula level for lightener: the result is the mean of natural and applied level only for permanent colour on natural hair (it lifts with time and deposits nothing)",
        ),
        (
            formula(6.0, 8.0, permanent, Canvas::Coloured, Scale::European10),
            "cannot lift coloured hair from level 6 to level 8 with permanent colour: artificial pigment does not lighten under colour (remove it or lighten it first, on a strand test)",
        ),
        (
            formula(5.0, 8.0, permanent, natural, Scale::European10),
            "level 8 is out of reach of permanent colour on natural level 5: the shade would have to be level 11, outside 1 to 10 of the European 1-10 scale (choose a target from level 3 to 7.5, or another product)",
        ),
        (
            formula(5.0, 6.0, permanent, natural, Scale::Us10),
            "the US 1-10 scale does not number shades by level: state a mapping first",
        ),
        (
            text(result_level(level(5.0), level(9.0), ProductKind::HighLiftTint)),
            "no formula level for high-lift tint: the result is the mean of natural and applied level only for permanent colour on natural hair (a high-lift tint lifts further than the mean)",
        ),
        (
            text(blended_level([(level(7.0), Mass::ZERO)])),
            "no mass to blend: give at least one shade with a mass above 0 g",
        ),
        (text(reading(21.0)), "invalid reading on the Japanese 1-20 scale (got 21): must be from 1 to 20"),
        (
            text(map.level(reading(16.0)?)),
            "16 on the Japanese 1-20 scale lies outside the stated mapping (4 to 15): state more anchors",
        ),
        (
            text(map.level(ScaleReading::new(Scale::Us10, 6.0)?)),
            "this mapping is for the Japanese 1-20 scale, the reading is on the US 1-10 scale",
        ),
        (
            text(ScaleMapping::new(&anchors, 1.0, Basis::Stated)),
            "the anchors of a mapping must rise in both scales, and all be read on the Japanese 1-20 scale",
        ),
        (
            text(ScaleMapping::new(&anchors[..1], 1.0, Basis::Stated)),
            "a mapping needs at least 2 anchors on the same scale (got 1)",
        ),
        (
            text(Shade::new(" ", level(9.0), Tone::neutral())),
            "invalid shade code: it is empty (give the code printed on the tube)",
        ),
        (
            text(Shade::new("J9-\u{202e}mist", level(9.0), Tone::neutral())),
            "invalid shade code: it holds a line break or a character that acts on a terminal (give the code printed on \
             the tube)",
        ),
        (
            text(ScaleMapping::new(&[(reading(5.0)?, level(3.0)), (reading(9.0)?, level(6.0))], -1.0, Basis::Stated)),
            "invalid uncertainty of a mapping (got -1 levels): must be from 0 to 11 levels",
        ),
        (
            text(Lab::new(120.0, 0.0, 0.0, White::D65TwoDegree)),
            "invalid L* (got 120): must be from 0 (black) to 100 (white)",
        ),
        (text(Lab::new(50.0, f64::NAN, 0.0, White::D65TwoDegree)), "invalid a* (got NaN): must be from -200 to 200"),
        (
            text(Lch::new(50.0, 10.0, 400.0, White::D65TwoDegree)),
            "invalid hue angle (got 400): must be from -360 to 360 degrees",
        ),
        (
            text(Xyz::new(-0.1, 0.0, 0.0, White::D65TwoDegree)),
            "invalid X (got -0.1): must be from 0 to 2, with Y = 1 for white",
        ),
        (
            text("#f2d16".parse::<Srgb>()),
            "invalid sRGB colour \"#f2d16\": write six hexadecimal digits after a #, for example #f2d16b",
        ),
        (
            text(Difference::between(grey(White::D65TwoDegree), grey(White::D65TenDegree))),
            "cannot compare a colour measured for D65/2 degrees with one for D65/10 degrees: adapt one of them first",
        ),
    ];
    for (got, want) in cases {
        assert_eq!(got, want);
    }
    Ok(())
}
