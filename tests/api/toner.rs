//! The toner room from outside: answers in words, rules of the trade, refusals and their exact texts.

use foilwork::{
    colour::{Hue, Lab, Level, ProductKind, Shade, Tone, White},
    finding::{Finding, Rule, Verdict},
    quantity::{Mass, Share},
    reader::Format,
    shop::{self, Shop},
    source::Basis,
    toner::{Exposed, Outcome, Target, TonerError, TonerMix, TonerRequest, ToningPorosity, check_toner, find_toner},
};

pub(super) fn level(number: f64) -> Level {
    Level::new(number).expect("a level of the test")
}

pub(super) fn shade(code: &str, number: f64, tone: Tone) -> Shade {
    Shade::new(code, level(number), tone).expect("a shade of the test")
}

/// A colour as an instrument of 10 degrees reads it.
pub(super) fn lab(l: f64, a: f64, b: f64) -> Lab {
    Lab::new(l, a, b, White::D65TenDegree).expect("a colour of the test")
}

/// Natural hair of level 4, lifted.
pub(super) fn lifted(to: f64) -> Exposed {
    Exposed::lightened(level(4.0), level(to))
}

fn request<'a>(shades: &'a [Shade], exposed: Exposed, target: Target) -> TonerRequest<'a> {
    TonerRequest {
        exposed,
        target,
        shades: shades.iter().collect(),
        most_shades: 3,
        bowl: Mass::from_g(30.0).expect("a mass"),
        division: Mass::from_g(1.0).expect("a mass"),
    }
}

fn neutral(number: f64) -> Target {
    Target::Look { level: level(number), tone: Tone::neutral() }
}

#[test]
fn what_cannot_be_reached_is_said_with_the_nearest() -> Result<(), TonerError> {
    let shades = [shade("J6", 6.0, Tone::neutral())];
    let answer = find_toner(&request(&shades, Exposed::lightened(level(3.0), level(8.0)), neutral(4.0)))?;
    assert_eq!(answer.outcome, Outcome::NearestOnly);
    let summary = answer.summary();
    let start = "cannot be reached from these shades, nearest is 30 g of J6: from the prediction the target is still ";
    assert!(summary.starts_with(start) && summary.contains("darker"), "{summary}");
    Ok(())
}

#[test]
fn a_target_lighter_than_the_hair_is_a_caution() -> Result<(), TonerError> {
    let shades = [shade("J6", 6.0, Tone::neutral())];
    let answer = find_toner(&request(&shades, Exposed::lightened(level(3.0), level(6.0)), neutral(9.0)))?;
    let rules: Vec<_> = answer.findings.iter().map(|finding| (finding.rule, finding.verdict)).collect();
    assert!(rules.contains(&(Rule::TonerLevel, Verdict::Warning)), "{rules:?}");
    Ok(())
}

/// Common practice: blue against orange, at level 6.
#[test]
fn a_shelf_without_the_complement_is_told_so() -> Result<(), TonerError> {
    let told = |tone: Tone| {
        let shades = [shade("J6", 6.0, Tone::neutral()), shade("J6-x", 6.0, tone)];
        let answer = find_toner(&request(&shades, Exposed::lightened(level(3.0), level(6.0)), neutral(6.0)))?;
        let missing = answer.findings.into_iter().find(|finding| finding.rule == Rule::TonerFound);
        Ok::<_, TonerError>(missing.map(|finding| finding.text))
    };
    let want = "blue is named against orange, and none of the shades that may go on level 6 holds it (add one no lighter \
                than the hair, or plan for warmth)";
    assert_eq!(told(Tone::of(Hue::Green))?.as_deref(), Some(want));
    assert_eq!(told(Tone::of(Hue::BlueViolet))?, None);
    assert_eq!(told(Tone::from_hues([Hue::Red, Hue::Blue]))?, None);
    Ok(())
}

/// Common practice: a toner deposits; a shade lighter than the hair is never chosen, but for a clear one that dilutes.
#[test]
fn shades_lighter_than_the_hair_are_left_out() -> Result<(), TonerError> {
    let clear = shade("clear", 12.0, Tone::neutral()).with_strength(Share::NONE);
    let shades = [shade("light", 10.0, Tone::neutral()), shade("own", 8.0, Tone::neutral()), clear];
    let hair = Exposed::lightened(level(5.0), level(8.5));
    let answer = find_toner(&request(&shades, hair, neutral(8.0)))?;
    let mixes = std::iter::once(&answer.best).chain(&answer.alternatives);
    assert!(mixes.flat_map(|mix| &mix.parts).all(|part| part.code != "light"));
    let refused = find_toner(&request(&shades[..1], hair, neutral(8.0)));
    assert_eq!(refused.map(|_| ()), Err(TonerError::AllLighter { level: level(8.5) }));
    Ok(())
}

/// Common practice: one to two levels darker tones, more than that colours.
#[test]
fn a_toner_three_levels_darker_is_a_caution() -> Result<(), TonerError> {
    let shades = [shade("J6", 6.0, Tone::neutral())];
    let verdict_of = |lifted: f64| {
        let answer = find_toner(&request(&shades, Exposed::lightened(level(3.0), level(lifted)), neutral(6.0)))?;
        let darker = |finding: &&Finding| finding.rule == Rule::TonerLevel && finding.text.contains("darker");
        Ok::<_, TonerError>(answer.findings.iter().find(darker).map(|finding| finding.verdict))
    };
    assert_eq!((verdict_of(9.0)?, verdict_of(8.0)?), (Some(Verdict::Warning), None));
    Ok(())
}

#[test]
fn too_much_blue_is_called_over_neutralising() -> Result<(), Box<dyn std::error::Error>> {
    // Hardly any warmth left, and only a strong blue at hand.
    let hair = Exposed::measured(Lab::new(66.0, 0.3, 3.0, White::D65TwoDegree)?, level(10.0));
    let shades = [shade("J7-slate", 7.0, Tone::of(Hue::Blue))];
    let answer = find_toner(&request(&shades, hair, neutral(9.0)))?;
    let found = |rule| answer.findings.iter().find(|finding| finding.rule == rule);
    let over = found(Rule::OverNeutralising).ok_or("not called over-neutralising")?;
    assert_eq!(over.verdict, Verdict::Warning, "{over}");
    assert!(found(Rule::CoolDose).is_some());
    Ok(())
}

#[test]
fn porous_hair_is_told_the_darker_end() -> Result<(), Box<dyn std::error::Error>> {
    let shades = [shade("J9-mist", 9.0, Tone::of(Hue::Violet))];
    let hair = Exposed::lightened(level(5.0), level(9.0)).with_porosity(ToningPorosity::Porous);
    let answer = find_toner(&request(&shades, hair, neutral(9.0)))?;
    let note = answer.findings.iter().find(|finding| finding.rule == Rule::Porosity).map(ToString::to_string);
    assert!(note.is_some_and(|note| note.contains("expect the darker end") && note.contains("strand test")));
    // Taken up half as much again, and at most the square root of 12.6, 3.5 times: 2/3 and 1/3.5 of the shades; of 30 g then 10 g
    // and 30 * 2.5 / 3.5 = 21.4 g are clear.
    let porous = answer.porous.ok_or("a range of dilution")?;
    let near = |got: f64, want: f64| assert!((got - want).abs() < 1e-9, "{got} for {want}");
    let dyed = porous.dyed.to_array().map(Share::percent);
    dyed.into_iter().zip([100.0 / 3.5, 200.0 / 3.0, 100.0]).for_each(|(got, want)| near(got, want));
    let clear = porous.clear.to_array().map(Mass::g);
    clear.into_iter().zip([0.0, 10.0, 75.0 / 3.5]).for_each(|(got, want)| near(got, want));
    assert_eq!(porous.basis, Basis::Assumed);
    let other = Exposed::lightened(level(5.0), level(9.0));
    assert!(find_toner(&request(&shades, other, neutral(9.0)))?.porous.is_none());
    Ok(())
}

/// Measured hair of natural level 9 needs no neutral shade of level 9.
#[test]
fn measured_hair_that_is_there_already_is_left_alone() -> Result<(), Box<dyn std::error::Error>> {
    let shades = [shade("J9", 9.0, Tone::neutral())];
    let there = Target::Look { level: level(9.0), tone: Tone::neutral() }.swatch().lab();
    let answer = find_toner(&request(&shades, Exposed::measured(there, level(9.0)), neutral(9.0)))?;
    assert_eq!(answer.outcome, Outcome::AlreadyNearer);
    assert!(answer.summary().starts_with("leave it: untoned hair is 0."), "{}", answer.summary());
    Ok(())
}

/// Deposit only darkens: hair of level 7 comes no nearer to level 9 under any shade, the complement of its warmth included.
#[test]
fn a_wish_for_lighter_hair_is_no_reason_to_tone() -> Result<(), Box<dyn std::error::Error>> {
    let shop = shop::parse_shop(include_str!("../../examples/juniper_and_tide.toml"), Format::Toml)?;
    let shades: Vec<Shade> = Shop::new(&shop)?.colours().cloned().collect();
    let answer = find_toner(&request(&shades, Exposed::lightened(level(5.0), level(7.0)), neutral(9.0)))?;
    assert_eq!(answer.outcome, Outcome::AlreadyNearer);
    let told = answer.summary();
    assert!(
        told.starts_with("lift further or leave it: the target is ") && told.contains("does not lighten"),
        "{told}"
    );
    // As light as it is wanted, its warmth is toned away.
    let there = find_toner(&request(&shades, Exposed::lightened(level(5.0), level(7.0)), neutral(7.0)))?;
    assert_ne!(there.outcome, Outcome::AlreadyNearer, "{}", there.summary());
    Ok(())
}

#[test]
fn the_nearest_is_what_no_other_mix_is_nearer_than() -> Result<(), Box<dyn std::error::Error>> {
    let shop = shop::parse_shop(include_str!("../../examples/juniper_and_tide.toml"), Format::Toml)?;
    let shades: Vec<Shade> = Shop::new(&shop)?.colours().cloned().collect();
    let answer = find_toner(&request(&shades, Exposed::lightened(level(5.0), level(9.0)), neutral(8.0)))?;
    let left = |mix: &TonerMix| mix.residual.ciede2000;
    let nearest = answer.alternatives.iter().min_by(|a, b| left(a).total_cmp(&left(b))).ok_or("no other mix")?;
    assert_eq!(answer.outcome, Outcome::NearestOnly);
    assert!(left(nearest) < left(&answer.best));
    let told = answer.summary();
    assert!(!told.contains("nearest is") && told.contains("taken, against the warmth, is 30 g of J9-mist"), "{told}");
    assert!(
        told.contains(&format!("nearer by the model, which cannot tell the two apart, is {}", nearest.recipe())),
        "{told}"
    );
    Ok(())
}

#[test]
fn fewer_shades_are_among_the_alternatives() -> Result<(), Box<dyn std::error::Error>> {
    let shop = shop::parse_shop(include_str!("../../examples/juniper_and_tide.toml"), Format::Toml)?;
    let shades: Vec<Shade> = Shop::new(&shop)?.colours().cloned().collect();
    let target = Target::Look { level: level(8.0), tone: Tone::from_hues([Hue::Violet, Hue::Blue]) };
    let answer = find_toner(&request(&shades, Exposed::lightened(level(5.0), level(9.0)), target))?;
    let count = answer.best.parts.len();
    for fewer in 1..count {
        assert!(answer.alternatives.iter().any(|mix| mix.parts.len() == fewer), "none of {fewer} shades");
    }
    Ok(())
}

#[test]
fn messages() -> Result<(), Box<dyn std::error::Error>> {
    let one = [shade("J9", 9.0, Tone::neutral())];
    let many = vec![one[0].clone(); 49];
    let hair = Exposed::lightened(level(5.0), level(9.0));
    let good = || request(&one, hair, neutral(9.0));
    let text = |request: &TonerRequest<'_>| find_toner(request).map(|_| ()).map_err(|error| error.to_string());
    let cases = [
        (
            TonerRequest { shades: Vec::new(), ..good() },
            "no shades to choose from: give at least one shade of the chart",
        ),
        (
            TonerRequest { shades: many.iter().collect(), ..good() },
            "too many shades to search (got 49): give at most 48 for mixes of up to 3, for example those of the levels in question",
        ),
        (TonerRequest { most_shades: 0, ..good() }, "invalid number of shades in a mix (got 0): must be from 1 to 4"),
        (
            TonerRequest { division: Mass::from_g(7.0)?, ..good() },
            "cannot weigh a bowl of 30 g on a scale with a division of 7 g: the bowl must be from 1 to 10000 whole divisions",
        ),
        (
            TonerRequest { division: Mass::ZERO, ..good() },
            "cannot weigh a bowl of 30 g on a scale with a division of 0 g: the bowl must be from 1 to 10000 whole divisions",
        ),
    ];
    for (request, want) in cases {
        assert_eq!(text(&request), Err(want.to_owned()));
    }
    assert_eq!(text(&good()), Ok(()));
    assert_eq!(Share::ALL, find_toner(&good())?.best.parts[0].share);
    Ok(())
}

/// Common practice: a toner lightens nothing, and one more than two levels darker colours the hair.
#[test]
fn a_shade_is_held_against_the_hair() {
    let said = |hair: f64, number: f64, tone: Tone, target: Option<f64>, product| {
        let shade = shade("J-some", number, tone);
        let hair = Exposed::lightened(level(4.0), level(hair));
        let found = check_toner(&hair, &shade, target.map(level), product);
        found.into_iter().map(|one| (one.verdict, one.text)).collect::<Vec<_>>()
    };
    let (quasi, permanent) = (ProductKind::QuasiPermanentColour, ProductKind::PermanentColour);
    let plain = |number, target| said(9.0, number, Tone::of(Hue::Violet), target, quasi);
    for (number, target) in [(9.0, None), (7.0, None), (9.0, Some(9.0)), (8.0, Some(8.0))] {
        let found = plain(number, target);
        assert_eq!((found.len(), found[0].0), (1, Verdict::Passed), "{found:?}");
        assert!(found[0].1.contains("on hair at level 9"), "{found:?}");
    }
    let warned = |found: &[(Verdict, String)], words: &str| {
        found.iter().any(|(verdict, text)| *verdict == Verdict::Warning && text.contains(words))
    };
    assert!(warned(&plain(10.0, None), "a toner does not lighten"));
    assert!(warned(&plain(6.5, None), "more than two levels colours instead of toning"));
    assert!(warned(&plain(9.0, Some(10.0)), "it deposits and does not lift"));
    let further = said(9.0, 9.0, Tone::of(Hue::Violet), Some(10.0), permanent);
    assert!(warned(&further, "on lightened hair colour does not lift further"), "{further:?}");
    // Yellow shows at 9: a yellow shade makes it warmer, one that lies opposite does not.
    assert!(!said(9.0, 9.0, Tone::of(Hue::Yellow), None, quasi).iter().any(|(verdict, _)| *verdict == Verdict::Passed));
}

/// Hair that is no lighter than it grew exposes nothing of the trade's list; a level more does.
#[test]
fn hair_that_is_not_lightened_exposes_nothing_listed() {
    assert_eq!(Exposed::lightened(level(6.0), level(6.0)).listed_warmth(), None);
    assert!(Exposed::lightened(level(6.0), level(7.0)).listed_warmth().is_some());
}
