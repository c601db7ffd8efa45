//! Rules of toning as printed.

use foilwork::{
    colour::{Hue, Level, Shade, Swatch, Tone, underlying_pigment},
    quantity::{Mass, Share},
    toner::{Exposed, KnownStart, Outcome, Target, TonerRequest, ToningPorosity, find_toner, neutralising_dose, toned},
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

fn table(text: &'static str) -> Vec<Vec<String>> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    reader.records().map(|row| row.expect("a row").iter().map(str::to_owned).collect()).collect()
}

// Source: named in each row. Perming is not bleaching: permed hair took dye up no faster than hair that was left alone, within
// the spread of the runs, and the least that porous hair is taken to take up is no more than other hair.
#[test]
fn porous_hair_may_take_up_as_little_as_permed_hair_did() {
    let rates = |hair: &str| -> (f64, f64) {
        let table = table(include_str!("../data/toner/dye_uptake.csv"));
        let rates: Vec<f64> =
            table.iter().filter(|row| row[4] == hair).map(|row| row[7].parse().expect("a rate")).collect();
        let (count, mean) = (rates.len() as f64, rates.iter().sum::<f64>() / rates.len() as f64);
        let spread = rates.iter().map(|rate| (rate - mean).powi(2)).sum::<f64>() / (count - 1.0);
        (mean, spread / count)
    };
    let ((permed, permed_error), (normal, normal_error)) = (rates("permed"), rates("normal"));
    let apart = (permed - normal) / (permed_error + normal_error).sqrt();
    assert!(apart.abs() < 2.0, "{apart} standard errors");
    // Uptake goes with the square root of time.
    let time = ToningPorosity::Porous.time();
    let uptake = [time.high(), time.best(), time.low()].map(|time: Share| 1.0 / time.fraction().sqrt());
    assert!((uptake[0] - 1.0).abs() < 1e-9 && uptake[1] > 1.0, "{uptake:?}");
    // Dye diffused 2.7 times as fast after peroxide and 12.6 times after bleach: J. Soc. Cosmet. Chem. 44(6), 1993.
    assert!(uptake[1] < 2.7_f64.sqrt() && (12.6_f64.sqrt() - uptake[2]).abs() < 0.1, "{uptake:?}");
}

// Source: named in each row. A prediction that claimed to be finer than what four shampoos change would be worth nothing at
// the next visit. A second application of dye to saturated hair adds little, so nothing is predicted deeper than the shade.
#[test]
fn a_toned_swatch_is_no_finer_than_four_shampoos_and_no_deeper_than_its_shade() {
    let table = table(include_str!("../data/toner/fading.csv"));
    let shampoos = table.iter().filter(|row| row[1].contains("shampoos; covered") || row[1].contains("ten shampoos"));
    let least = shampoos.map(|row| row[2].parse::<f64>().expect("a difference")).fold(f64::INFINITY, f64::min);
    assert_eq!(least, 3.6);
    for number in [5.0, 7.0, 9.0] {
        let level = Level::new(number).expect("a level");
        let auburn = Shade::new("auburn", level, Tone::of(Hue::RedOrange)).expect("a shade");
        for hair in [Exposed::white(), Exposed::lightened(Level::new(4.0).expect("a level"), level)] {
            let swatch = toned(&hair, [(&auburn, Share::ALL)]);
            assert!(swatch.uncertainty() > least, "{level}: {}", swatch.uncertainty());
        }
        let on_white = toned(&Exposed::white(), [(&auburn, Share::ALL)]);
        assert!(on_white.lab().l() > Swatch::of_shade(&auburn).lab().l() - 0.01, "{level}");
    }
}

// Common practice: on white hair a shade gives its own level.
#[test]
fn on_white_hair_a_shade_gives_its_own_level() {
    for number in 4..=10 {
        let level = Level::new(f64::from(number)).expect("a level");
        let shade = Shade::new("plain", level, Tone::neutral()).expect("a shade");
        let off = toned(&Exposed::white(), [(&shade, Share::ALL)]).difference_to(&Swatch::natural(level));
        assert!(off.ciede2000 < 0.5, "{level}: {off}");
    }
}
