//! The hair as stated: every fact that is, and none that is not.

use super::{about, base, exact, level, levels, part, q};
use foilwork::{
    colour::LevelChange,
    hair::{DensityByEye, Texture},
    service::{
        Existing,
        shape::{Curl, Elasticity, HistoryFlag, Porosity, Scalp, Zone},
    },
    sheet::SheetPart,
};

#[test]
fn what_is_stated_is_told_and_nothing_else() {
    let mut plan = base();
    let hair = &mut plan.hair;
    (hair.natural_level, hair.natural_level_margin_levels) = (level(6.0).into(), None);
    (hair.white, hair.white_counted) = (exact(0.0), None);
    (hair.texture, hair.curl, hair.density, hair.porosity) = (None, None, None, None);
    (hair.elasticity, hair.scalp, hair.length, hair.history) = (None, None, None, None);
    hair.existing.clear();
    let want = "THE HAIR, AS STATED BY YOU | \
        natural level 6 (no margin stated; a reading by eye is seldom better than half a level) white 0 %";
    assert_eq!(part(&plan, SheetPart::Hair), want);
    let hair = &mut plan.hair;
    hair.natural_level = levels([5.5, 6.0, 6.5]);
    hair.natural_level_margin_levels = Some(LevelChange::from_levels(0.5).unwrap());
    (hair.white, hair.white_counted) = (about([20.0, 30.0, 40.0]), Some(q(55.0)));
    hair.white_counted_in = vec!["nape".to_owned(), "crown".to_owned()];
    (hair.texture, hair.curl) = (Some(Texture::Coarse), Some(Curl::Wavy));
    (hair.density, hair.porosity) = (Some(DensityByEye::High), Some(Porosity::Uneven));
    (hair.elasticity, hair.scalp, hair.length) = (Some(Elasticity::Reduced), Some(Scalp::Irritated), Some(q(30.0)));
    let existing = |zone, from: Option<f64>, to: Option<f64>, at, tone: Option<&str>, artificial| Existing {
        zone,
        from: from.map(q),
        to: to.map(q),
        level: level(at),
        tone: tone.map(str::to_owned),
        artificial,
    };
    hair.existing = vec![
        existing(Some(Zone::MidLengths), None, None, 8.0, Some("gold"), true),
        // Just as light as hair may grow by the margin is natural, and lighter is not.
        existing(None, Some(0.0), Some(10.5), 6.5, None, false),
        existing(Some(Zone::Ends), None, None, 7.0, None, false),
    ];
    hair.history = Some(Vec::new());
    let want = "THE HAIR, AS STATED BY YOU | natural level 6 +/- 0.5 \
        white 30 (20 to 40) %, counted on 55 % of the hair: nape, crown texture coarse curl wavy density high porosity uneven \
        elasticity reduced scalp irritated length 30 cm mid lengths level 8, gold, artificial colour 0 to 10.5 cm level 6.5, \
        natural ends level 7, lighter than it grows, no artificial colour history nothing to tell";
    assert_eq!(part(&plan, SheetPart::Hair), want);
    plan.hair.history = Some(vec![HistoryFlag::ReactionToLightener, HistoryFlag::Henna]);
    let told = part(&plan, SheetPart::Hair);
    assert!(told.ends_with("history reaction to lightener, henna"), "{told}");
}
