//! Rules of toning as printed.

use foilwork::{
    colour::{Hue, Level, Shade, Tone, underlying_pigment},
    quantity::Mass,
    toner::{Exposed, KnownStart, Outcome, Target, TonerRequest, find_toner, neutralising_dose},
};

// Source: the list of underlying pigment (common practice): level 10 takes a very dilute violet, level 9 a violet. The
// dose that balances falls with the warmth that is exposed.
#[test]
fn the_named_neutraliser_balances_what_each_level_exposes() -> Result<(), Box<dyn std::error::Error>> {
    let bowl = Mass::from_g(30.0)?;
    for number in [6.0, 7.0, 8.0, 9.0, 10.0] {
        let level = Level::new(number)?;
        let (_, hue) = underlying_pigment(level).value.neutraliser.ok_or("no neutraliser")?;
        let exposed = Exposed::lightened(Level::new(3.0)?, level);
        let shade = |tone| Shade::new("shade", level, tone);
        let named = neutralising_dose(&exposed, &shade(Tone::of(hue))?, &shade(Tone::neutral())?, bowl);
        let warm = neutralising_dose(&exposed, &shade(Tone::of(Hue::YellowOrange))?, &shade(Tone::neutral())?, bowl);
        assert!(named.warmth_left.best() < named.warmth_before.best(), "{level}");
        assert!(named.warmth_left.best() < warm.warmth_left.best(), "{level}: a warm shade must not do better");
    }
    Ok(())
}

const COOL: [Hue; 5] = [Hue::Green, Hue::BlueGreen, Hue::Blue, Hue::BlueViolet, Hue::Violet];
const WARM: [Hue; 2] = [Hue::Orange, Hue::Yellow];

/// A shelf with everything on it: neutral, cool and warm shades of the level of the hair and one below.
fn full_shelf(lifted: f64) -> Result<Vec<Shade>, Box<dyn std::error::Error>> {
    let mut shelf = Vec::new();
    for number in [lifted, lifted - 1.0] {
        let level = Level::new(number)?;
        shelf.push(Shade::new(format!("J{number}-plain"), level, Tone::neutral())?);
        for hue in COOL.iter().chain(&WARM) {
            shelf.push(Shade::new(format!("J{number}-{hue}"), level, Tone::of(*hue))?);
        }
    }
    Ok(shelf)
}

// Source: each row of the table names it; common practice where it says so. ExposedBasis, target, and the complement that
// teaching sources name: the search must mix it in, and must never leave warm hair alone that should be neutral or cool.
#[test]
fn thirty_classic_toning_jobs() -> Result<(), Box<dyn std::error::Error>> {
    let table = include_str!("../data/toner/toning_jobs.csv");
    assert_eq!(table.lines().skip(1).count(), 30);
    for line in table.lines().skip(1) {
        let [natural, lifted, seen, target, tone, complement, ..] = line.split(',').collect::<Vec<_>>()[..] else {
            panic!("short row {line}")
        };
        let given = |text: &'static str| Some(text).filter(|text| !text.is_empty());
        let natural: Option<Level> = given(natural).map(str::parse).transpose()?;
        let known = KnownStart { measured: None, seen: given(seen).map(str::parse).transpose()? };
        let exposed = known.exposed(natural, lifted.parse()?)?;
        let tone = if tone == "neutral" { Tone::neutral() } else { Tone::of(tone.parse()?) };
        let shelf = full_shelf(lifted.parse()?)?;
        let answer = find_toner(&TonerRequest {
            exposed,
            target: Target::Look { level: target.parse()?, tone },
            shades: shelf.iter().collect(),
            most_shades: 2,
            bowl: Mass::from_g(30.0)?,
            division: Mass::from_g(1.0)?,
        })?;
        let complement: Hue = complement.parse()?;
        let codes = answer.best.recipe();
        let mixed_in = |shade: &Shade| {
            shade.tone().main_hue() == Some(complement)
                && answer.best.parts.iter().any(|part| part.code == shade.code())
        };
        assert!(shelf.iter().any(mixed_in), "{line}: {codes}");
        assert_ne!(answer.outcome, Outcome::AlreadyNearer, "{line}");
        assert!(answer.summary().starts_with(&format!("{complement} against ")), "{line}: {}", answer.summary());
    }
    Ok(())
}
