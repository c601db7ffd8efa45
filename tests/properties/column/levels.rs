//! Arithmetic of levels, of every product, hair and scale.

use super::{about, combined, compared, hold};
use foilwork::{
    colour::{Canvas, Level, ProductKind, Scale, ScaleMapping, ScaleReading, formula_level, lift_needed, result_level},
    column,
    source::Basis,
};

fn levels() -> Vec<f64> {
    about(1.0, 10.0, &[1.5, 4.0, 5.25, 6.3, 7.0, 9.9, 10.0 / 3.0])
}

fn level(number: f64) -> Option<Level> {
    Level::new(number).ok()
}

#[test]
fn lift_that_is_needed() {
    hold(
        &combined([&levels(), &levels()]),
        |[from, target], [out]| column::lifts_needed(from, target, out),
        |[from, target]| Some([lift_needed(level(from)?, level(target)?).levels()]),
    );
}

#[test]
fn shades_and_results() {
    let rows = combined([&levels(), &levels()]);
    let products: Vec<ProductKind> = ProductKind::ALL.iter().copied().filter(|kind| worked(*kind)).collect();
    assert!(products.contains(&ProductKind::PermanentColour));
    let mut given = 0;
    for product in products {
        hold(
            &rows,
            |[natural, applied], [out]| column::result_levels(natural, applied, product, out),
            |[natural, applied]| Some([result_level(level(natural)?, level(applied)?, product).ok()?.value.number()]),
        );
        for canvas in Canvas::ALL {
            for scale in Scale::ALL {
                given += compared(
                    &rows,
                    |[natural, target], [out]| column::formula_levels(natural, target, (product, *canvas, *scale), out),
                    |[natural, target]| {
                        let shade = formula_level(level(natural)?, level(target)?, product, *canvas, *scale).ok()?;
                        Some([shade.value.number()])
                    },
                )
                .0;
            }
        }
    }
    // Not every product is for coloured hair.
    assert!(given > 100, "{given}");
}

/// Whether the rule of the mean is for this kind at all.
fn worked(product: ProductKind) -> bool {
    result_level(Level::DARKEST, Level::DARKEST, product).is_ok()
}

/// Two anchors, six, nine, which is more than the kernel has places for, and a mapping for another scale.
#[test]
fn levels_on_a_scale() {
    let japanese = ScaleMapping::japanese_by_underlying_pigment();
    let anchors = |readings: &[f64], half_width: f64| {
        let anchor = |reading: &f64| {
            (ScaleReading::new(Scale::Us10, *reading).unwrap(), Level::new(1.0 + reading * reading / 10.0).unwrap())
        };
        ScaleMapping::new(&readings.iter().map(anchor).collect::<Vec<_>>(), half_width, Basis::Stated).unwrap()
    };
    let steps: Vec<f64> = (2..=10).map(f64::from).collect();
    for (scale, mapping) in [
        (Scale::Japanese20, &japanese),
        (Scale::Us10, &anchors(&[2.0, 9.0], 0.3)),
        (Scale::Us10, &anchors(&[1.0, 10.0], 11.0)),
        (Scale::Us10, &anchors(steps.get(..8).unwrap(), 0.0)),
        (Scale::Us10, &anchors(&steps, 0.7)),
    ] {
        let readings = about(1.0, scale.highest(), &[2.0, 4.0, 5.5, 6.1, 7.5, 9.0, 9.5, 13.5, 14.9, 15.0]);
        let readings: Vec<f64> = readings.iter().flat_map(|x| [x.next_down(), *x, x.next_up()]).collect();
        hold(
            &combined([&readings]),
            |[readings], out| column::levels_on_scale(readings, scale, mapping, out),
            |[reading]| {
                let found = mapping.level(ScaleReading::new(scale, reading).ok()?).ok()?;
                Some(found.level.to_array().map(Level::number))
            },
        );
    }
    let (mut low, mut best, mut high) = ([0.0], [0.0], [0.0]);
    let of_another = column::levels_on_scale(9.0.into(), Scale::Us10, &japanese, [&mut low, &mut best, &mut high]);
    assert_eq!(of_another.unwrap().refused, 1);
}
