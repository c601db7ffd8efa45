//! Colour coordinates and differences against the published pairs and a general-purpose library.

use super::rows;
use foilwork::colour::{Difference, Lab, Lch, Srgb, White};

fn numbers(row: &[&str]) -> Vec<f64> {
    row.iter().map(|cell| cell.parse().expect("a number of the table")).collect()
}

fn close(got: f64, want: f64, within: f64, what: &str) {
    assert!((got - want).abs() <= within, "{what}: got {got}, want {want}");
}

// Source: Sharma, Wu, Dalal, Color Res. Appl. 30(1):21-30, 2005, Table 1, printed to four decimals.
#[test]
fn ciede2000_of_the_published_pairs() -> Result<(), Box<dyn std::error::Error>> {
    let table = rows(include_str!("../../data/colour/ciede2000_pairs.csv"));
    assert_eq!(table.len(), 34);
    for row in table {
        let [l1, a1, b1, l2, a2, b2, want] = numbers(&row)[..] else { panic!("short row {row:?}") };
        for white in [White::D65TwoDegree, White::D65TenDegree] {
            let (first, second) = (Lab::new(l1, a1, b1, white)?, Lab::new(l2, a2, b2, white)?);
            close(Difference::between(first, second)?.ciede2000, want, 0.5e-4, &format!("{row:?}"));
            close(Difference::between(second, first)?.ciede2000, want, 0.5e-4, &format!("{row:?} the other way"));
        }
    }
    Ok(())
}

// Source: colour-science 0.4.7; see `sources.csv`.
#[test]
fn conversions_agree_with_a_colour_library() -> Result<(), Box<dyn std::error::Error>> {
    let mut within_gamut = 0;
    for row in rows(include_str!("../../data/colour/conversions.csv")) {
        let white = if row[0] == "ten" { White::D65TenDegree } else { White::D65TwoDegree };
        let [l, a, b, x, y, z, c, h, l_two, a_two, b_two, red, green, blue] = numbers(&row[1..])[..] else {
            panic!("short row {row:?}")
        };
        let lab = Lab::new(l, a, b, white)?;
        let got = lab.xyz().to_array();
        for (got, want) in got.into_iter().zip([x, y, z]) {
            close(got, want, 1e-10, "XYZ");
        }
        let back = lab.xyz().lab();
        close(back.l(), l, 1e-9, "L*");
        close(back.b(), b, 1e-9, "b*");
        close(lab.lch().chroma(), c, 1e-9, "chroma");
        close(lab.lch().hue_degrees(), h, 1e-9, "hue angle");
        close(Lch::new(l, c, h, white)?.lab().a(), a, 1e-9, "a* from hue angle");
        let two = lab.adapted_to(White::D65TwoDegree);
        for (got, want) in [two.l(), two.a(), two.b()].into_iter().zip([l_two, a_two, b_two]) {
            close(got, want, 1e-4, "adapted (both libraries round the Bradford matrix)");
        }
        let (screen, shown) = Srgb::nearest(lab);
        assert_eq!(shown, [red, green, blue].iter().all(|c| (-0.002..=1.002).contains(c)), "{row:?}");
        if shown {
            within_gamut += 1;
            for (got, want) in [screen.red, screen.green, screen.blue].into_iter().zip([red, green, blue]) {
                close(f64::from(got), (want * 255.0).clamp(0.0, 255.0), 0.51, "sRGB byte");
            }
        }
    }
    assert!(within_gamut > 5);
    Ok(())
}
