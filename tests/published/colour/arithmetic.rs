//! Worked examples of level arithmetic.

use super::rows;
use foilwork::{
    colour::{Canvas, Level, ProductKind, Scale, formula_level, result_level, white_blend},
    quantity::Share,
};

const TABLE: &str = include_str!("../../data/colour/worked_examples.csv");

// Source: CK-12 Foundation, "Ratios: The Perfect Blond": 8 x 2 - 6 = 10. Colour educator's blog (2022): (2 + 6) / 2 = 4.
#[test]
fn formula_level_and_mean_rule() -> Result<(), Box<dyn std::error::Error>> {
    for row in rows(TABLE).iter().filter(|row| !row[3].is_empty()) {
        let level = |text: &str| text.parse::<Level>();
        let (natural, applied, target) = (level(row[1])?, level(row[2])?, level(row[3])?);
        let formula = formula_level(natural, target, ProductKind::PermanentColour, Canvas::Natural, Scale::European10)?;
        assert_eq!(formula.value, applied, "{}", row[0]);
        assert_eq!(result_level(natural, applied, ProductKind::PermanentColour)?.value, target, "{}", row[0]);
    }
    Ok(())
}

// The printed example multiplies by its lift, which is 2; the rule multiplies by 2 whatever the lift. Natural 5, target
// 6 (lift 1) tells them apart: 2 x 6 - 5 = 7, not 1 x 6 - 5 = 1.
#[test]
fn the_two_of_the_rule_is_a_constant() -> Result<(), Box<dyn std::error::Error>> {
    let (natural, target) = (Level::new(5.0)?, Level::new(6.0)?);
    let formula = formula_level(natural, target, ProductKind::PermanentColour, Canvas::Natural, Scale::European10)?;
    assert_eq!(formula.value.number(), 7.0);
    Ok(())
}

// Natural 6.015... and shade 10 have the mean 8.007...; in binary twice that minus natural is 10.000000000000002.
#[test]
fn the_last_bits_do_not_leave_the_scale() -> Result<(), Box<dyn std::error::Error>> {
    let (natural, top) = (Level::new(6.015_259_322_823_033)?, Level::LIGHTEST_OF_TEN);
    let target = result_level(natural, top, ProductKind::PermanentColour)?.value;
    let formula = formula_level(natural, target, ProductKind::PermanentColour, Canvas::Natural, Scale::European10)?;
    assert_eq!(formula.value, top);
    Ok(())
}

// Source: colour educator's blog (2022): half white, half level 3, shade 7 gives 7 and 5 side by side.
#[test]
fn white_hair_takes_the_shade_level() -> Result<(), Box<dyn std::error::Error>> {
    for row in rows(TABLE).iter().filter(|row| !row[4].is_empty()) {
        let white = Share::from_percent(row[4].parse()?)?;
        let after = white_blend(row[1].parse()?, row[2].parse()?, white, ProductKind::PermanentColour)?.value;
        assert_eq!((after.white_part, after.pigmented_part), (row[5].parse()?, row[6].parse()?), "{}", row[0]);
    }
    Ok(())
}
