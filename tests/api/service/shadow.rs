//! The root shadow: found on the shelf, short at the hairline, blended into the light hair.

use super::base::{changed, fine, shop};
use foilwork::{
    head::Wish,
    service::{
        Plan, RootShadowPlan, ServiceFile,
        shape::{MixPart, ToneTarget},
    },
    shop::{ShadeClass, shape::ShadeEntry},
};

fn shadow(plan: &Plan) -> &RootShadowPlan {
    plan.head.root_shadow.as_ref().unwrap()
}

/// Three depths of demi-permanent colour, and a look that is wanted instead of a mix.
fn wanted(file: &mut ServiceFile, level: f64, tones: &[&str]) {
    for (code, level, tones) in [("J6-d", 6.0, &[][..]), ("J7-d", 7.0, &[][..]), ("J6-ash", 6.0, &["blue"][..])] {
        let demi = shop(file).shade[0].clone();
        let tones = tones.iter().map(|tone| (*tone).to_owned()).collect();
        let ratio = Some("1:1".to_owned());
        shop(file).shade.push(ShadeEntry {
            code: code.to_owned(),
            level,
            tones,
            class: ShadeClass::Demi,
            ratio,
            ..demi
        });
    }
    let entry = file.root_shadow.as_mut().unwrap();
    entry.mix.clear();
    entry.target = Some(ToneTarget { level, tones: tones.iter().map(|tone| (*tone).to_owned()).collect() });
}

/// On strands lifted to level 9 nothing but a deep shade shows level 6 at the root; a light toner would leave them light.
#[test]
fn a_shade_is_found_for_the_light_strands() {
    let plan = changed(fine(), |file| wanted(file, 6.0, &[]));
    let found = shadow(&plan);
    assert!(found.found);
    assert!(found.shades.iter().all(|code| code != "J9") && found.shades.iter().any(|code| code.starts_with("J6")));
    assert!(plan.to_string().contains("found on the shelf"));
    // What the file names is not looked for.
    let stated = changed(fine(), |_| ());
    assert_eq!((shadow(&stated).found, shadow(&stated).shades.as_slice()), (false, &["J6".to_owned()][..]));
}

/// Common practice: shortest at the hairline, longer inside.
#[test]
fn it_is_short_at_the_hairline_and_longer_inside() {
    let plan = changed(fine(), |file| file.root_shadow.as_mut().unwrap().length_cm = None);
    let of = |name: &str| {
        let lengths = &shadow(&plan).lengths;
        lengths.iter().find(|one| one.region == name).unwrap().length.best().cm()
    };
    assert!(of("front hairline") < of("top") && of("top") < of("crown"));
    let flat: String = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    let printed = format!("front hairline {} (", of("front hairline"));
    assert!(flat.contains(&printed), "{flat}");
    let stated = changed(fine(), |_| ());
    assert!(shadow(&stated).lengths.iter().all(|one| one.length.best().cm() == 3.0));
}

/// Where sections say where they lie, only their regions have a shadow.
#[test]
fn only_where_sections_lie() {
    let plan = changed(fine(), |file| {
        file.service.reads_as = Some(Wish::Even);
        file.section[0].share_percent = Some(5.0);
        file.section[0].regions = serde_json::from_str(r#"[{"name": "crown"}]"#).unwrap();
    });
    assert_eq!(shadow(&plan).lengths.len(), 1);
    assert_eq!(shadow(&plan).lengths[0].region, "crown");
}

/// By hand: 3 cm of level 6 under level 9 are deep for 2 cm; three levels are two steps, so level 7.5 is on the last one.
#[test]
fn it_is_blended_in_steps_of_two_levels_at_most() {
    let plan = changed(fine(), |_| ());
    let shadow = shadow(&plan);
    assert_eq!((shadow.level.number(), shadow.into_level.unwrap().number()), (6.0, 9.0));
    let steps: Vec<[f64; 3]> =
        shadow.blend.iter().map(|step| [step.from.cm(), step.to.cm(), step.level.number()]).collect();
    assert_eq!(steps, [[0.0, 2.0, 6.0], [2.0, 3.0, 7.5]]);
    // Two levels need no step between them.
    let near = changed(fine(), |file| file.section[0].target_level = 8.0);
    assert_eq!(near.head.root_shadow.unwrap().blend.len(), 1);
    assert!(changed(fine(), |file| file.root_shadow = None).head.root_shadow.is_none());
}

/// A shadow of two shades is as deep as the deeper, whichever is named first.
#[test]
fn a_mixed_shadow_is_as_deep_as_its_darkest_shade() {
    for order in [["J6", "J7"], ["J7", "J6"]] {
        let plan = changed(fine(), |file| {
            let seven = ShadeEntry { code: "J7".to_owned(), level: 7.0, ..shop(file).shade[1].clone() };
            shop(file).shade.push(seven);
            file.root_shadow.as_mut().unwrap().mix =
                order.map(|shade| MixPart { shade: shade.to_owned(), parts: 1.0 }).to_vec();
        });
        assert_eq!(shadow(&plan).level.number(), 6.0, "{order:?}");
    }
}
