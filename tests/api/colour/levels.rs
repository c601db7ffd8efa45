use foilwork::{
    colour::{
        Hue, Instrument, Lab, Level, LevelChange, Naming, ReadingError, Scale, ScaleMapping, ScaleReading, Srgb,
        Temper, Tone, White, blended_level, level_from_reading, underlying_pigment,
    },
    quantity::{Mass, Share},
    source::Basis,
};

#[test]
fn levels_are_read_and_printed() -> Result<(), Box<dyn std::error::Error>> {
    for text in ["7.5", "7,5", " level 7.5 "] {
        assert_eq!(text.parse::<Level>()?.number(), 7.5);
    }
    assert_eq!(Level::new(7.5)?.to_string().parse::<Level>()?, Level::new(7.5)?);
    assert_eq!(format!("{:.1}", Level::new(7.0)?), "level 7.0");
    assert_eq!((-(Level::new(6.0)? - Level::new(8.5)?)).to_string(), "2.5 levels lighter");
    assert_eq!(Level::new(6.0)?.plus(LevelChange::from_levels(2.0)?)?, Level::new(8.0)?);
    Ok(())
}

#[test]
fn a_decimal_level_lies_between_two_names() -> Result<(), Box<dyn std::error::Error>> {
    let name = |number, naming| Level::new(number).map(|level| level.name(naming).map(|name| name.value.to_string()));
    assert_eq!(name(6.5, Naming::European)?.as_deref(), Some("between dark blond and medium blond"));
    assert_eq!(name(10.5, Naming::European)?, None);
    Ok(())
}

#[test]
fn a_reading_is_mapped_only_inside_its_anchors() -> Result<(), Box<dyn std::error::Error>> {
    let mapping = ScaleMapping::japanese_by_underlying_pigment();
    let mapped = mapping.level(ScaleReading::new(Scale::Japanese20, 9.5)?)?;
    assert_eq!(
        (mapped.level.low(), mapped.level.best(), mapped.level.high()),
        (Level::new(6.0)?, Level::new(7.0)?, Level::new(8.0)?)
    );
    assert_eq!(mapped.basis, Basis::Assumed);
    assert!(mapping.level(ScaleReading::new(Scale::Japanese20, 18.0)?).is_err());
    assert!(mapping.level(ScaleReading::new(Scale::Us10, 5.0)?).is_err());
    Ok(())
}

#[test]
fn above_ten_the_underlying_pigment_is_assumed() -> Result<(), Box<dyn std::error::Error>> {
    assert_eq!(underlying_pigment(Level::new(10.0)?).basis, Basis::CommonPractice);
    assert_eq!(underlying_pigment(Level::new(11.0)?).basis, Basis::Assumed);
    Ok(())
}

#[test]
fn tones_add_up_and_repeat_hues_merge() -> Result<(), Box<dyn std::error::Error>> {
    assert_eq!(Tone::from_hues([Hue::Violet, Hue::Violet]), Tone::of(Hue::Violet));
    let ash = Tone::from_hues([Hue::Blue, Hue::Violet]);
    assert_eq!(ash.complement().main_hue(), Some(Hue::Orange));
    let half = Share::from_percent(50.0)?;
    let blend = Tone::blend([(&Tone::of(Hue::Blue), half), (&Tone::of(Hue::Violet), half)]);
    assert_eq!(blend.to_string(), "blue 50 %, violet 50 %");
    assert!(Tone::blend([(&Tone::neutral(), half)]).is_neutral());
    Ok(())
}

// Source: North Carolina cosmetology study guide, section 7.2: blue is the only cool primary.
#[test]
fn blue_is_the_only_cool_primary() {
    let cool: Vec<_> =
        [Hue::Red, Hue::Yellow, Hue::Blue].into_iter().filter(|hue| hue.temper() == Temper::Cool).collect();
    assert_eq!(cool, [Hue::Blue]);
}

#[test]
fn a_blend_of_shades_weighs_by_mass() -> Result<(), Box<dyn std::error::Error>> {
    let blend = blended_level([(Level::new(7.0)?, Mass::from_g(30.0)?), (Level::new(9.0)?, Mass::from_g(10.0)?)])?;
    assert_eq!(blend.value.number(), 7.5);
    Ok(())
}

/// A camera is taken to be off by six L\*, and twice that either way is what a level read from it may be.
#[test]
fn a_photograph_is_read_with_twice_its_spread() {
    let lab = |l| Lab::new(l, 6.0, 12.0, White::D65TenDegree).unwrap();
    let read = |l, with| level_from_reading(lab(l), with).unwrap().value;
    let seen = read(45.0, Instrument::CalibratedPhotograph);
    for off in [-12.0, 12.0] {
        let there = read(45.0 + off, Instrument::Spectrophotometer).best();
        assert!(seen.low() <= there && there <= seen.high(), "{there} in {seen:?}");
    }
    let measured = read(45.0, Instrument::Spectrophotometer);
    assert!(seen.low() < measured.low() && measured.high() < seen.high(), "{measured:?} in {seen:?}");
}

/// A hue needs two units of chroma to be told.
#[test]
fn grey_has_no_hue() {
    let hue = |a| Hue::nearest_to(Lab::new(70.0, a, 0.0, White::D65TwoDegree).unwrap());
    assert_eq!((hue(1.99), hue(2.0).is_some()), (None, true));
}

#[test]
fn a_colour_has_six_digits() {
    let read = |text: &str| text.parse::<Srgb>().map(|colour| (colour.red, colour.green, colour.blue));
    assert_eq!(read("#0a64ff"), Ok((10, 100, 255)));
    for text in ["#0a64f", "#0a64fff", "#0a64\u{e9}", "0a64ff", "#0a64fg"] {
        assert!(read(text).is_err(), "{text}");
    }
}

/// Two standard deviations of a repeated reading (1.19 each, so 2.38) are as far as a reading may lie beyond either end of the model.
#[test]
fn a_reading_that_no_level_has_is_refused_at_both_ends() {
    let at = |l| level_from_reading(Lab::new(l, 2.0, 3.0, White::D65TenDegree).unwrap(), Instrument::Spectrophotometer);
    let Err(ReadingError::OutsideLevels { darkest, lightest, .. }) = at(0.0) else { panic!("black is no level") };
    assert!(0.0 < darkest - 2.4 && darkest < lightest && lightest < 97.0, "{darkest} to {lightest}");
    for (l, fits) in [
        (darkest - 2.4, false),
        (darkest - 2.36, true),
        (lightest + 2.36, true),
        (lightest + 2.4, false),
        (100.0, false),
    ] {
        assert_eq!(at(l).is_ok(), fits, "{l} of {darkest} to {lightest}");
    }
}
