//! Names, complements and underlying pigment. Source of each row: its `source_id` column; `sources.csv` has the titles.

use super::rows;
use foilwork::colour::{Hue, Level, Naming, underlying_pigment};

#[test]
fn level_names_as_printed() -> Result<(), Box<dyn std::error::Error>> {
    for row in rows(include_str!("../../data/colour/level_names.csv")) {
        let [naming, level, name, ..] = row[..] else { panic!("short row {row:?}") };
        let naming = if naming == "us" { Naming::Us } else { Naming::European };
        let got = level.parse::<Level>()?.name(naming).ok_or("no name")?.value;
        // The table writes "darkest (very dark) brown"; the bracket is a gloss.
        assert_eq!(got.to_string(), name.replace("(very dark) ", ""), "level {level}");
    }
    Ok(())
}

#[test]
fn complements_as_printed_both_ways() -> Result<(), Box<dyn std::error::Error>> {
    for row in rows(include_str!("../../data/colour/complements.csv")) {
        let (hue, other): (Hue, Hue) = (row[0].parse()?, row[1].parse()?);
        assert_eq!(hue.complement(), other);
        assert_eq!(other.complement(), hue);
        assert_eq!(
            hue.complement_sourced().citation.map(|c| c.id == "common-practice"),
            Some(row[2] == "common practice")
        );
    }
    Ok(())
}

#[test]
fn underlying_pigment_and_neutraliser_as_printed() -> Result<(), Box<dyn std::error::Error>> {
    for row in rows(include_str!("../../data/colour/underlying_pigment.csv")) {
        let [topic, level, value, ..] = row[..] else { panic!("short row {row:?}") };
        let got = underlying_pigment(level.parse()?).value;
        if topic == "underlying pigment" {
            assert_eq!(got.words, (value, value), "level {level}");
        } else {
            let word = value.strip_suffix(" (very dilute)").unwrap_or(value);
            let want = if word == "none visible" { None } else { Some(word.parse::<Hue>()?) };
            assert_eq!(got.neutraliser, want.map(|hue| (hue, hue)), "level {level}");
        }
    }
    Ok(())
}

// Source: Munsell renotation, Newhall, Nickerson, Judd, J. Opt. Soc. Am. 33:385, 1943, by colour-science 0.4.7.
#[test]
fn hue_angles_are_those_of_the_munsell_chips() -> Result<(), Box<dyn std::error::Error>> {
    let table = rows(include_str!("../../data/colour/munsell_angles.csv"));
    assert_eq!(table.len(), 12);
    for row in table {
        let (hue, five, six) = (row[0].parse::<Hue>()?, row[2].parse::<f64>()?, row[3].parse::<f64>()?);
        let (got, want) = (hue.lab_angle_degrees(), f64::midpoint(five, six));
        assert!((got - want).abs() <= 0.051, "{hue}: got {got}, want {want}");
    }
    Ok(())
}
