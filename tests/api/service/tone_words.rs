//! Which words ask for warmth, and what a gloss is held against, in tables.

use super::base::{changed, fine, only_colour, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, Passed, Warning},
    head::ExtraStep,
    service::{Plan, ServiceFile, shape::HistoryFlag},
    shop::{ShadeClass, shape::ShadeEntry},
};
use rstest::rstest;
use serde_json::json;

/// A yellow toner on pale yellow, with a tone wanted of the section: whether it is told to add to the warmth.
fn yellow(wanted: Option<&str>) -> bool {
    let plan = changed(fine(), |file| {
        shop(file).shade[0].tones = vec!["yellow".to_owned()];
        file.section[0].target_tone = wanted.map(str::to_owned);
    });
    let found = verdicts(&plan, "toner-level");
    assert!(found == [Passed] || found == [Warning], "{}", texts(&plan, "toner-level"));
    found == [Warning]
}

/// Common practice, in plain English: what is named warm is wanted warm, in any letters and among other words, unless the words say the contrary. A part of
/// a word is no word.
#[test]
fn a_warm_tone_is_wanted_in_words() {
    for word in [
        "gold",
        "golden",
        "honey",
        "caramel",
        "copper",
        "amber",
        "apricot",
        "peach",
        "strawberry",
        "red",
        "warm",
        "warmth",
        "yellow",
    ] {
        assert!(!yellow(Some(word)), "{word}");
        assert!(!yellow(Some(&format!("A soft {}, please", word.to_uppercase()))), "{word}");
        assert!(!yellow(Some(&format!("sand/{word}"))), "{word}");
        assert!(yellow(Some(&format!("x{word}x"))), "{word}");
        for contrary in ["no", "not", "without", "less", "never", "anti"] {
            assert!(yellow(Some(&format!("{contrary} {word}"))), "{contrary} {word}");
            assert!(yellow(Some(&format!("{word}: {}-{word}", contrary.to_uppercase()))), "{contrary} {word}");
        }
    }
    for word in ["beige", "ash", "pearl", "cool", "natural"] {
        assert!(yellow(Some(word)), "{word}");
    }
    assert!(yellow(None));
}

/// A gloss of level 8 on hair of level 6 that is not lightened: told where little of it is white. Lightened first to 8 by a planned step
/// it is held against that level, and says that nobody has seen it; on hair that was lightened to 8 it passes.
#[rstest]
#[case::demi(ShadeClass::Demi)]
#[case::semi(ShadeClass::Semi)]
fn a_gloss_is_held_against_the_hair_it_will_meet(#[case] class: ShadeClass) {
    let told = |level: f64, change: &dyn Fn(&mut ServiceFile)| -> (Vec<Verdict>, String) {
        let plan: Plan = changed(only_colour(), |file| {
            let six = shop(file).shade[1].clone();
            let (ratio, developer) = match class {
                ShadeClass::Semi => (None, None),
                _ => (six.ratio.clone(), Some("developer".to_owned())),
            };
            shop(file).shade.push(ShadeEntry { code: "gloss".to_owned(), level, class, ratio, ..six });
            let top = &mut file.section[0];
            (top.product, top.developer, top.target_level) = (Some("gloss".to_owned()), developer, 8.0);
            change(file);
        });
        (verdicts(&plan, "toner-level"), texts(&plan, "toner-level"))
    };
    let (found, text) = told(8.0, &|_| ());
    assert!(found == [Warning] && text.starts_with("top: "), "{text}");
    assert_eq!(told(6.0, &|_| ()).0, []);
    assert_eq!(told(8.0, &|file| file.analysis.white_percent = Some(30.0)).0, []);
    let planned = "the level planned: judge it again on what the strand shows\n";
    for (level, want) in [(8.0, Passed), (7.0, Passed), (9.0, Warning)] {
        let (found, text) = told(level, &|file| file.section[0].first = vec![ExtraStep::PreLighten]);
        assert!(found == [want] && text.ends_with(planned), "{level}: {text}");
        let (found, text) = told(level, &|file| {
            file.analysis.history = Some(vec![HistoryFlag::Lightened]);
            let there = json!([{ "zone": "whole", "level": 8, "artificial": false }]);
            file.analysis.existing = serde_json::from_value(there).unwrap();
        });
        assert!(found == [want] && !text.contains("planned"), "{level}: {text}");
    }
}
