//! Arithmetic of levels, of every product, hair and scale.

use super::{about, combined, compared, hold};
use foilwork::{
    colour::{Canvas, Level, ProductKind, Scale, formula_level, lift_needed, result_level},
    column,
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
