//! Checks of depth and gradient, and swatches as HTML and as data.

use foilwork::{
    colour::{
        Chroma, Hue, Lab, Level, Swatch, Tone, White, check_depth_at_root, check_hairline, contrast_between,
        pre_pigmentation, transition_between, underlying_pigment,
    },
    finding::{Rule, Verdict},
    quantity::Share,
    source::{Basis, COMMON_PRACTICE},
};

fn level(number: f64) -> Level {
    Level::new(number).expect("a level of the test")
}

#[test]
fn depth_darker_than_the_natural_base_is_a_caution() {
    assert_eq!(check_depth_at_root(level(6.0), level(6.0)), None);
    assert_eq!(check_depth_at_root(level(6.0), level(7.0)), None);
    let finding = check_depth_at_root(level(6.0), level(4.5)).expect("a finding");
    assert_eq!(
        (finding.rule, finding.verdict, finding.sources),
        (Rule::DepthAtRoot, Verdict::Warning, vec![COMMON_PRACTICE.into()])
    );
    assert_eq!(
        finding.text,
        "depth of level 4.5 at the root is 1.5 levels darker than the natural base, level 6: new growth will \
         show lighter than it (use level 6 or lighter)"
    );
}

#[test]
fn a_hairline_darker_than_a_neighbour_names_it() {
    let beside = [("temple", level(8.0)), ("top", level(9.0)), ("crown", level(7.0))];
    assert_eq!(check_hairline(level(9.0), beside), None);
    assert_eq!(check_hairline(level(5.0), []), None);
    let finding = check_hairline(level(8.5), beside).expect("a finding");
    assert!(finding.text.contains("darker than top beside it at level 9"), "{finding}");
}

#[test]
fn two_formulas_in_a_foil_meet_over_a_tone_between() {
    let (warm, cool, neutral) = (Tone::of(Hue::Orange), Tone::of(Hue::Blue), Tone::neutral());
    assert_eq!(transition_between((level(7.0), &neutral), (level(9.0), &neutral)), None);
    assert_eq!(transition_between((level(7.0), &warm), (level(8.0), &neutral)), None);
    let wide = transition_between((level(6.0), &neutral), (level(9.0), &cool)).expect("a transition");
    assert_eq!((wide.level.number(), wide.tone.main_hue()), (7.5, Some(Hue::Blue)));
    assert!(wide.finding.text.contains("differ by 3 levels"));
    let clash = transition_between((level(8.0), &warm), (level(8.0), &cool)).expect("a transition");
    assert!(clash.finding.text.contains("lean warm and cool"));
    let both = transition_between((level(7.0), &warm), (level(9.0), &cool)).expect("a transition");
    assert!(both.finding.text.contains("lean warm and cool"), "two levels are not too many: {}", both.finding.text);
}

#[test]
fn sections_nearer_than_two_readings_read_as_one() {
    let (difference, finding) = contrast_between(&Swatch::natural(level(7.0)), &Swatch::natural(level(7.1)));
    assert!(difference.ciede2000 < 2.0);
    assert_eq!(finding.map(|finding| finding.rule), Some(Rule::Contrast));
    let (difference, finding) = contrast_between(&Swatch::natural(level(5.0)), &Swatch::natural(level(9.0)));
    assert!(difference.ciede2000 > 10.0 && difference.lighter > 15.0);
    assert_eq!(finding, None);
}

#[test]
fn going_darker_on_lightened_hair_asks_for_warmth_first() {
    assert_eq!(pre_pigmentation(level(9.0), level(7.5)), None);
    assert_eq!(pre_pigmentation(level(5.0), level(9.0)), None);
    let advice = pre_pigmentation(level(10.0), level(5.0)).expect("advice");
    assert_eq!((advice.level.number(), advice.tone.to_string().as_str()), (6.0, "orange 67 %, red-orange 33 %"));
    assert!(advice.finding.text.contains("5 levels darker on lightened hair"), "{}", advice.finding);
}

#[test]
fn what_is_exposed_has_a_strength_in_words_and_in_numbers() {
    let pigment = underlying_pigment(level(9.0)).value;
    assert_eq!(pigment.visibility.0.to_string(), "pale");
    let shown = pigment.modelled_from(level(4.0));
    let [low, best, high] = shown.chroma().to_array().map(Chroma::chroma);
    assert!(low < best && best < high && (best - shown.lab().chroma()).abs() < 1e-12);
}

#[test]
fn html_hides_the_patch_and_tells_it_in_words() {
    let html = Swatch::lightened(level(4.0), level(8.0)).html("<script>&\"");
    assert!(html.contains("&lt;script&gt;&amp;&quot;") && !html.contains("<script>"));
    assert_eq!(html.matches("aria-hidden=\"true\"").count(), 1);
    for words in ["model, not a photograph", "yellow-orange", "between L*", "assumed"] {
        assert!(html.contains(words), "{words} is missing from {html}");
    }
}

#[test]
fn data_carries_basis_notice_and_bounds() -> Result<(), Box<dyn std::error::Error>> {
    let modelled = serde_json::to_value(Swatch::natural(level(7.0)))?;
    assert_eq!(modelled["notice"], "model, not a photograph");
    assert_eq!(modelled["basis"], "assumed");
    assert!(modelled["lab_l"]["low"].as_f64() < modelled["lab_l"]["best"].as_f64());
    let measured = Swatch::measured(Lab::new(55.0, 3.0, 18.0, White::D65TenDegree)?);
    let data = serde_json::to_value(measured)?;
    assert_eq!(data["lab_l"], serde_json::json!({ "low": 55.0, "best": 55.0, "high": 55.0 }));
    assert_eq!(data["white"], "d65-10-degrees");
    let half = measured.beside(&Swatch::white(), Share::from_percent(50.0)?);
    assert_eq!(half.basis(), Basis::Assumed);
    Ok(())
}
