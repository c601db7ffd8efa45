//! The edges of what is searched and weighed for a toner, and where each rule of the trade begins to speak.

use super::toner::level;
use foilwork::{
    colour::{Hue, Lab, Shade, Tone, White},
    finding::{Finding, Rule},
    quantity::{Mass, Share},
    toner::{Exposed, Target, TonerError, TonerRequest, ToningPorosity, find_toner},
};
use rstest::rstest;

fn shades(count: usize) -> Vec<Shade> {
    (0..count).map(|place| Shade::new(format!("J-{place:02}"), level(9.0), Tone::neutral()).unwrap()).collect()
}

fn request(shades: &[Shade], most_shades: usize, bowl: f64, division: f64) -> TonerRequest<'_> {
    TonerRequest {
        exposed: Exposed::lightened(level(5.0), level(9.0)),
        target: Target::Look { level: level(9.0), tone: Tone::neutral() },
        shades: shades.iter().collect(),
        most_shades,
        bowl: Mass::from_g(bowl).unwrap(),
        division: Mass::from_g(division).unwrap(),
    }
}

/// One division is weighed, ten thousand are; fewer, more, or a part of one are not.
#[rstest]
#[case(1.0, 1.0, true)]
#[case(0.5, 0.5, true)]
#[case(0.4, 1.0, false)]
#[case(0.6, 1.0, false)]
#[case(30.0, 0.1, true)]
#[case(30.05, 0.1, false)]
#[case(1000.0, 0.1, true)]
#[case(1000.1, 0.1, false)]
#[case(0.0, 1.0, false)]
fn a_bowl_is_whole_divisions(#[case] bowl: f64, #[case] division: f64, #[case] weighed: bool) {
    let shelf = shades(1);
    let found = find_toner(&request(&shelf, 1, bowl, division));
    assert_eq!(found.is_ok(), weighed, "{found:?}");
    if let Ok(answer) = found {
        assert_eq!(answer.best.parts[0].mass, Mass::from_g(bowl).unwrap());
    } else {
        assert!(matches!(found, Err(TonerError::Scale { .. })));
    }
}

#[test]
fn the_shelf_and_the_mix_have_a_most() {
    assert_eq!([1, 2, 3, 4].map(TonerRequest::longest_shelf), [48, 48, 48, 24]);
    for (count, size, searched) in [(48, 1, true), (49, 1, false), (25, 4, false), (48, 2, true)] {
        let shelf = shades(count);
        let found = find_toner(&request(&shelf, size, 2.0, 1.0)).map(drop);
        let most = TonerRequest::longest_shelf(size);
        assert_eq!(found, if searched { Ok(()) } else { Err(TonerError::TooManyShades { got: count, most, size }) });
    }
    let shelf = shades(4);
    assert_eq!(find_toner(&request(&shelf, 5, 4.0, 1.0)).unwrap_err(), TonerError::MixSize { got: 5 });
    // Four alike are no better than one, and that is what is named.
    let answer = find_toner(&request(&shelf, 4, 4.0, 1.0)).unwrap();
    assert_eq!((answer.best.parts.len(), answer.best.parts[0].share), (1, Share::ALL));
    // The shelf is taken in the order of its names.
    assert_eq!(answer.best.parts[0].code, "J-00");
}

fn of(exposed: Exposed, shade: &Shade, target: Target) -> Vec<Finding> {
    let one = std::slice::from_ref(shade);
    find_toner(&TonerRequest { exposed, target, ..request(one, 1, 30.0, 1.0) }).unwrap().findings
}

fn text(findings: &[Finding], rule: Rule) -> Option<&str> {
    findings.iter().find(|finding| finding.rule == rule).map(|finding| finding.text.as_str())
}

/// Very pale hair, from level 10, and more than half of the tone blue or violet.
#[test]
fn pale_hair_takes_a_dilute_violet() {
    let said = |hair: f64, hue: Hue| {
        let shade = Shade::new("J-one", level(9.0), Tone::of(hue)).unwrap();
        let target = Target::Look { level: level(9.0), tone: Tone::neutral() };
        let findings = of(Exposed::lightened(level(7.0), level(hair)), &shade, target);
        text(&findings, Rule::CoolDose).map(str::to_owned)
    };
    for hue in [Hue::Blue, Hue::BlueViolet, Hue::Violet] {
        assert!(said(10.0, hue).unwrap().starts_with("100 % of the tone is blue or violet on level 10"));
        assert_eq!(said(9.9, hue), None);
    }
    for hue in [Hue::Yellow, Hue::Green, Hue::RedViolet] {
        assert_eq!(said(10.0, hue), None, "{hue}");
    }
}

/// Two levels darker tone, more than two colour; on white hair a shade is what it is.
#[test]
fn a_mix_two_levels_darker_still_tones() {
    let said = |exposed, number: f64| {
        let shade = Shade::new("J-one", level(number), Tone::neutral()).unwrap();
        let target = Target::Look { level: level(number), tone: Tone::neutral() };
        of(exposed, &shade, target).iter().any(|one| one.text.contains("should not be by more than 2"))
    };
    let nine = Exposed::lightened(level(5.0), level(9.0));
    assert_eq!([7.0, 6.9, 9.0].map(|number| said(nine, number)), [false, true, false]);
    assert!(!said(Exposed::white(), 5.0));
}

/// Porosity speaks for porous hair alone. A stain that takes up half as much again, or three and a half times as much, has what it
/// needs in 1 / 1.5^2 and 1 / 3.5^2 of the time (by the square root of time, as in diffusion), or from 1 / 1.5 and 1 / 3.5 of the dye.
#[test]
fn porous_hair_wants_a_part_of_the_time() {
    let shade = Shade::new("J-one", level(9.0), Tone::of(Hue::Violet)).unwrap();
    let target = || Target::Look { level: level(9.0), tone: Tone::neutral() };
    let hair = Exposed::lightened(level(5.0), level(9.0));
    assert_eq!(text(&of(hair, &shade, target()), Rule::Porosity), None);
    let porous = hair.with_porosity(ToningPorosity::Porous);
    let findings = of(porous, &shade, target());
    assert!(
        text(&findings, Rule::Porosity)
            .unwrap()
            .contains("wants 44 % (8 % to 100 %) of its time, or 67 % (29 % to 100 %) of its shades"),
        "{findings:?}"
    );
    let [low, best, high] = ToningPorosity::Porous.time().to_array().map(Share::percent);
    assert!((low - 100.0 / 12.25).abs() < 1e-9 && (best - 100.0 / 2.25).abs() < 1e-9 && high >= 100.0);
    assert_eq!(ToningPorosity::Normal.time().to_array(), [Share::ALL; 3]);
}

/// What is measured has no list of the trade behind it, nor has white hair.
#[test]
fn only_a_model_or_an_eye_names_the_warmth() {
    let lab = Lab::new(70.0, 5.0, 30.0, White::D65TenDegree).unwrap();
    assert_eq!(Exposed::measured(lab, level(9.0)).listed_warmth(), None);
    assert_eq!(Exposed::white().listed_warmth(), None);
    assert!(Exposed::lightened(level(5.0), level(9.0)).listed_warmth().is_some());
    assert_eq!(Exposed::lightened(level(9.0), level(5.0)).listed_warmth(), None);
}
