//! What a toner answer says, sentence by sentence, of answers whose figures are put in by hand; what is said of shades and starts.

use super::toner::{lab, level, lifted as hair, shade};
use foilwork::{
    colour::{Difference, Hue, ProductKind, Shade, Swatch, Tone, underlying_pigment},
    finding::{Finding, Reason, Rule, Verdict},
    quantity::{Mass, Share},
    toner::{KnownStart, Outcome, StartError, TonerAnswer, TonerMix, TonerPart, check_toner, pre_pigment},
};
use rstest::rstest;

/// So far apart, as light, or so much lighter.
fn apart(ciede2000: f64, lighter: f64) -> Difference {
    Difference { ciede2000, lighter, redder: 0.0, yellower: 0.0, more_intense: 0.0 }
}

fn mix(parts: &[(&str, f64)], tone: Tone, left: f64) -> TonerMix {
    let part = |(code, grams): &(&str, f64)| TonerPart {
        code: (*code).to_owned(),
        mass: Mass::from_g(*grams).unwrap(),
        share: Share::ALL,
    };
    TonerMix {
        parts: parts.iter().map(part).collect(),
        level: level(9.0),
        tone,
        // Measured, so that the model is off by nothing.
        predicted: Swatch::measured(lab(60.0, 0.0, 0.0)),
        residual: apart(left, 0.0),
    }
}

/// A violet toner that stays 3 away from the target, where untoned hair is 10 away.
fn answer(outcome: Outcome) -> TonerAnswer {
    TonerAnswer {
        outcome,
        against: Some(underlying_pigment(level(9.0)).value),
        target: Swatch::measured(lab(60.0, 0.0, 0.0)),
        before: apart(10.0, 0.0),
        best: mix(&[("J9-mist", 20.0), ("J9", 10.5)], Tone::of(Hue::Violet), 3.0),
        alternatives: Vec::new(),
        findings: Vec::new(),
        porous: None,
    }
}

const AGAINST: &str = "violet against pale yellow: 20 g of J9-mist + 10.5 g of J9";

/// Common practice: pale yellow shows at level 9.
#[test]
fn what_is_reached_is_told_with_what_it_is_worth() {
    let mut told = answer(Outcome::Reached);
    assert_eq!(told.summary(), format!("{AGAINST}: predicted within 3.0 of the target, give or take 0"));
    told.against = None;
    let plain = "20 g of J9-mist + 10.5 g of J9: predicted within 3.0 of the target, give or take 0";
    assert_eq!(told.summary(), plain);
    told.best.tone = Tone::neutral();
    told.against = answer(Outcome::Reached).against;
    assert_eq!(told.summary(), plain, "a mix without a hue is against nothing");
    let close = answer(Outcome::TooCloseToTell);
    let want = "predicted 3.0 from the target, untoned hair 10.0; the model may be off by 0 and cannot tell the two apart, a strand test decides";
    assert_eq!(close.summary(), format!("{AGAINST}: {want}"));
}

/// What is nearer is named with why it is not taken; a difference that shows in no tenth is none, and of several the nearest counts.
#[rstest]
#[case(true, &[], None)]
#[case(true, &[3.5, 2.96], None)]
#[case(true, &[2.9], Some("against the warmth"))]
#[case(false, &[2.9], Some("as the simpler mix"))]
#[case(false, &[2.94, 2.0, 2.5], Some("as the simpler mix"))]
fn what_cannot_be_reached_is_told_with_what_is_nearer(
    #[case] against: bool,
    #[case] others: &[f64],
    #[case] why: Option<&str>,
) {
    let mut told = answer(Outcome::NearestOnly);
    if !against {
        told.against = None;
    }
    told.alternatives = others.iter().map(|left| mix(&[("J8", 30.0)], Tone::neutral(), *left)).collect();
    let recipe = "20 g of J9-mist + 10.5 g of J9: from the prediction the target is still 3.0 away, give or take 0";
    let against = if against { "violet against pale yellow: " } else { "" };
    let least = others.iter().copied().fold(f64::INFINITY, f64::min);
    let want = why.map_or_else(
        || format!("{against}cannot be reached from these shades, nearest is {recipe}"),
        |why| {
            format!(
                "{against}cannot be reached from these shades; taken, {why}, is {recipe}; nearer by the model, which cannot tell the two apart, \
                 is 30 g of J8, {least:.1} away"
            )
        },
    );
    assert_eq!(told.summary(), want);
}

/// A target is lighter from more than 2 of L* on, which two readings of one tress do not differ by.
#[rstest]
#[case(2.0, &[], "leave it: ", "20 g of J9-mist + 10.5 g of J9", "3.0")]
#[case(2.1, &[], "lift further or leave it: the target is 2.1 L* lighter than the hair, and a toner does not lighten; ",
    "20 g of J9-mist + 10.5 g of J9", "3.0")]
#[case(2.0, &[2.5], "leave it: ", "30 g of J8", "2.5")]
fn what_is_left_alone_is_told_with_what_a_mix_would_do(
    #[case] lighter: f64,
    #[case] others: &[f64],
    #[case] lift: &str,
    #[case] recipe: &str,
    #[case] left: &str,
) {
    let mut told = answer(Outcome::AlreadyNearer);
    told.before = apart(1.5, lighter);
    told.alternatives = others.iter().map(|left| mix(&[("J8", 30.0)], Tone::neutral(), *left)).collect();
    let want = format!(
        "{lift}untoned hair is 1.5 from the target, and {recipe}, the nearest of these shades, would leave it {left} away"
    );
    assert_eq!(told.summary(), want);
}

/// Every mix is a row, the one taken first, and every finding a line.
#[test]
fn the_answer_as_html() {
    let mut told = answer(Outcome::Reached);
    told.best.parts[0].code = "<J9>".to_owned();
    told.alternatives = vec![mix(&[("J8", 30.0)], Tone::neutral(), 4.0), mix(&[("J7", 30.0)], Tone::neutral(), 5.0)];
    told.findings = vec![
        Finding::new(Rule::TonerLevel, Verdict::Warning, "too <dark>", Reason::assumed()),
        Finding::new(Rule::CoolDose, Verdict::Note, "dilute", Reason::assumed()),
    ];
    let html = told.html();
    assert!(
        html.starts_with("<div><p>violet against pale yellow: 20 g of &lt;J9&gt; + 10.5 g of J9: predicted within 3.0"),
        "{html}"
    );
    let table = "<table><thead><tr><th>mix</th><th>predicted CIEDE2000 to the target</th></tr></thead><tbody>\
        <tr><td>20 g of &lt;J9&gt; + 10.5 g of J9</td><td>3.0</td></tr><tr><td>30 g of J8</td><td>4.0</td></tr>\
        <tr><td>30 g of J7</td><td>5.0</td></tr></tbody></table><ul><li>WARN toner level: too &lt;dark&gt;</li><li>note cool dose: dilute</li></ul></div>";
    assert!(html.ends_with(table), "{html}");
    let swatches = format!("{}{}", told.target.html("target"), told.best.predicted.html("predicted"));
    assert!(html.contains(&swatches), "{html}");
}

/// The grams of each shade and what is left, with what the model may be off by: nothing of what was measured.
#[test]
fn the_trail_of_an_answer() {
    let told = answer(Outcome::Reached);
    let trail = told.trail();
    let what: Vec<(&str, &str)> = trail.iter().map(|one| (one.what.as_str(), one.value.as_str())).collect();
    assert_eq!(what, [("J9-mist, to weigh", "20"), ("J9, to weigh", "10.5"), ("left to the wanted colour", "3")]);
    let of = |place: usize| trail[place].inputs.iter().map(|one| one.what.as_str()).collect::<Vec<_>>();
    let colours = ["L* predicted", "a* predicted", "b* predicted", "L* wanted", "a* wanted", "b* wanted"];
    assert_eq!(of(0), [&["share of the shades"][..], &colours].concat());
    assert_eq!(of(2), [&colours[..], &["how far off the model may be"]].concat());
}

/// Whole sentences on a shade: lighter, much darker, a target too light for each kind of product, warmth on warmth.
#[test]
fn a_shade_is_judged_in_whole_sentences() {
    let said = |number: f64, tone: Tone, target: Option<f64>, product| {
        let found = check_toner(&hair(9.0), &shade("J", number, tone), target.map(level), product);
        found.into_iter().map(|one| one.to_string()).collect::<Vec<_>>()
    };
    let name = |number: f64, tone: Tone| shade("J", number, tone).to_string();
    let quasi = ProductKind::QuasiPermanentColour;
    let violet = || Tone::of(Hue::Violet);
    let passed = format!("ok toner level: shade {} on hair at level 9", name(7.0, violet()));
    assert_eq!(said(7.0, violet(), Some(9.0), quasi), [passed]);
    let lighter = format!(
        "WARN toner level: shade {} is lighter than the hair at level 9: a toner does not lighten",
        name(9.5, violet())
    );
    assert_eq!(said(9.5, violet(), None, quasi), [lighter]);
    let darker = format!(
        "WARN toner level: shade {} is 3 levels darker than the hair at level 9: more than two levels colours instead of toning (choose a \
         lighter shade, or pre-pigment first)",
        name(6.0, violet())
    );
    assert_eq!(said(6.0, violet(), None, quasi), std::slice::from_ref(&darker));
    for (product, why) in [
        (quasi, "it deposits and does not lift"),
        (ProductKind::SemiPermanentColour, "it deposits and does not lift"),
        (ProductKind::Lightener, "it deposits and does not lift"),
        (ProductKind::PermanentColour, "on lightened hair colour does not lift further"),
        (ProductKind::HighLiftTint, "on lightened hair colour does not lift further"),
    ] {
        let target =
            format!("WARN toner level: the toner's target level 10 is lighter than the exposed hair at level 9: {why}");
        assert_eq!(said(6.0, violet(), Some(10.0), product), [darker.clone(), target]);
    }
    // Pale yellow shows at 9 (common practice): hues up to one step from it make it warmer, where they are warm themselves.
    for (hue, warmer) in [
        (Hue::Orange, false),
        (Hue::YellowOrange, true),
        (Hue::Yellow, true),
        (Hue::Green, false),
        (Hue::Violet, false),
    ] {
        let found = said(9.0, Tone::of(hue), None, quasi);
        let want = if warmer {
            format!(
                "WARN toner level: shade {} adds the warmth that is there already (pale yellow): it turns out warmer, not neutral",
                name(9.0, Tone::of(hue))
            )
        } else {
            format!("ok toner level: shade {} on hair at level 9", name(9.0, Tone::of(hue)))
        };
        assert_eq!(found, [want], "{hue}");
    }
}

/// Measured before seen before modelled; what is lifted is no darker than it grew.
#[test]
fn the_most_trusted_start_counts() {
    let measured = Some(lab(60.0, 5.0, 20.0));
    let seen = Some("pale yellow".parse().unwrap());
    let start = |measured, seen, natural: Option<f64>| {
        KnownStart { measured, seen }
            .exposed(natural.map(level), level(9.0))
            .map(|hair| hair.start().words().to_owned())
    };
    let want = |word: &str| Ok(word.to_owned());
    assert_eq!(start(measured, seen, Some(5.0)), want("measured"));
    assert_eq!(start(None, seen, Some(5.0)), want("as seen"));
    assert_eq!(start(None, None, Some(9.0)), want("modelled"));
    assert_eq!(start(None, None, None), Err(StartError::Unknown));
    let darker = StartError::Darker { natural: level(9.5), lifted: level(9.0) };
    assert_eq!(start(measured, seen, Some(9.5)), Err(darker));
    let text = "the lifted level 9 is darker than the natural level 9.5: lifting makes it lighter (swap the two?)";
    assert_eq!(darker.to_string(), text);
}

/// Warmth is put back with the shade whose look is nearest to what the rule asks for, with all of the bowl; a small step needs none.
#[test]
fn pigment_is_put_back_with_the_nearest_shade() {
    let shades = [
        shade("green", 7.0, Tone::of(Hue::Green)),
        shade("amber", 7.0, Tone::of(Hue::YellowOrange)),
        shade("plain", 9.0, Tone::neutral()),
    ];
    let bowl = Mass::from_g(40.0).unwrap();
    let found = pre_pigment(level(9.0), level(6.0), &shades, bowl).unwrap();
    let wanted = Swatch::of_look(found.wanted.level, &found.wanted.tone);
    let away = |shade: &Shade| Swatch::of_shade(shade).difference_to(&wanted).ciede2000;
    let nearest = shades.iter().min_by(|one, other| away(one).total_cmp(&away(other))).unwrap();
    assert_eq!((found.part.code.as_str(), found.part.mass, found.part.share), (nearest.code(), bowl, Share::ALL));
    assert!((found.residual.ciede2000 - away(nearest)).abs() < 1e-12);
    assert!(pre_pigment(level(9.0), level(8.5), &shades, bowl).is_none());
    assert!(pre_pigment(level(9.0), level(6.0), &[], bowl).is_none());
}
