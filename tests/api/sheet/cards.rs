//! The cards of the bowls in full: with and without a clock, a stop, looks, something to weigh.

use super::{about, exact, finding, flat, q};
use foilwork::{
    finding::{Rule, Verdict},
    head::StepEnd,
    quantity::MassFraction,
    service::{BowlCard, CardClock, CardMinutes, PartKind, WeighedPart, WorkStage},
    sheet::card_sheet,
    shop::Habits,
    source::{Basis, Interval},
};
use jiff::civil::{DateTime, date};

fn at(hour: i8, minute: i8) -> DateTime {
    date(2026, 11, 25).at(hour, minute, 0, 0)
}

/// The second of three bowls, looked at twice.
fn looked_at() -> BowlCard {
    let part = |product: &str, kind, grams: f64, shows: f64| WeighedPart {
        product: product.to_owned(),
        kind,
        exact: q(grams),
        weigh: q(grams),
        scale_shows: q(shows),
        peroxide: Interval::exact(MassFraction::ZERO),
    };
    BowlCard {
        blocked: false,
        stops: Vec::new(),
        findings: vec![finding(Rule::Lift, Verdict::Warning, "slow"), finding(Rule::Law, Verdict::NotJudged, "who?")],
        guest: Some("J-014".to_owned()),
        name: "top".to_owned(),
        stage: WorkStage::Section,
        bowl: 2,
        bowls: 3,
        parts: vec![
            part("powder", PartKind::Lightener, 15.0, 15.0),
            part("developer", PartKind::Developer, 30.0, 45.0),
        ],
        then: None,
        mind: Vec::new(),
        total: q(45.0),
        on_hair: Some(about([3.94, 4.0, 4.06])),
        strength_basis: Basis::Measured,
        worst_ratio_error_percent: 0.05,
        minutes: CardMinutes {
            mixed_at: q(2.0),
            use_by: q(32.0),
            look_at: vec![q(15.0), q(30.9)],
            look_at_last: Some(q(40.0)),
            rinse_by: q(50.0),
            ends: None,
        },
        clock: None,
    }
}

/// One bowl of a step before the colour that must not be mixed; its strength is its maker's.
fn stopped() -> BowlCard {
    BowlCard {
        blocked: true,
        stops: vec![finding(Rule::Scalp, Verdict::Stop, "broken"), finding(Rule::Age, Verdict::Stop, "too young")],
        findings: Vec::new(),
        guest: None,
        stage: WorkStage::Toner,
        bowl: 1,
        bowls: 1,
        then: Some(StepEnd::Blot),
        mind: vec!["gloves", "look often"],
        on_hair: None,
        worst_ratio_error_percent: 0.04,
        minutes: CardMinutes {
            mixed_at: q(0.0),
            use_by: q(10.0),
            look_at: Vec::new(),
            look_at_last: None,
            rinse_by: q(20.0),
            ends: Some(about([15.0, 20.0, 30.0])),
        },
        ..looked_at()
    }
}

fn told(cards: &[BowlCard]) -> String {
    flat(&card_sheet(cards, &Habits::default()))
}

const WEIGHED: &str = "powder 15 g developer 30 g total 45 g";
const HELD: &str = "J-014: top, bowl 2 of 3 powder 15 g developer 30 g total 45 g peroxide on the hair 4 (3.94 to 4.06) % w/w rounding \
    to the scale moves a part by up to 0.1 %";
const FOUND: &str = "! [WARN] lift: slow ! [OPEN] law: who?";
const STOP: &str = "*** STOP: DO NOT MIX THIS BOWL. *** [STOP] scalp: broken [STOP] age: too young guest: top";

/// Without a time of day in minutes, of which the whole ones that are over count.
#[test]
fn a_card_in_minutes() {
    let want = format!(
        "{HELD} mixed at minute 2, use by minute 32 look at the hair at minute 15, 30, the last strand from minute 40; rinse \
         planned for minute 50 {FOUND}"
    );
    assert_eq!(told(&[looked_at()]), want);
    let want = format!(
        "{STOP} {WEIGHED} peroxide on the hair: not known (by its maker) mixed at minute 0, use by minute 10 (earliest; after \
         rinsing) look at the hair all the while; blot it dry, do not rinse at about minute 20 (15 to 30) mind: gloves; look often"
    );
    assert_eq!(told(&[stopped()]), want);
}

#[test]
fn a_card_on_the_clock() {
    let clock = CardClock {
        mixed_at: at(10, 2),
        use_by: at(10, 32),
        look_at: vec![at(10, 15), at(10, 30)],
        look_at_last: Some(at(10, 40)),
        rinse_by: at(10, 50),
        ends_earliest: None,
        ends_latest: None,
    };
    let want = format!(
        "{HELD} mixed 2026-11-25 10:02, use by 10:32 look at the hair 10:15, 10:30, the last strand from 10:40; rinse planned for \
         10:50 {FOUND}"
    );
    assert_eq!(told(&[BowlCard { clock: Some(clock.clone()), ..looked_at() }]), want);
    let clock = CardClock {
        mixed_at: at(10, 0),
        use_by: at(10, 10),
        look_at: Vec::new(),
        look_at_last: None,
        rinse_by: at(10, 20),
        ends_earliest: Some(at(10, 15)),
        ends_latest: Some(at(10, 30)),
    };
    let want = format!(
        "{STOP} {WEIGHED} peroxide on the hair: not known (by its maker) mixed 2026-11-25 10:00, use by 10:10 (earliest; after \
         rinsing) look at the hair all the while; blot it dry, do not rinse at about 10:20 (10:15 to 10:30) mind: gloves; look often"
    );
    assert_eq!(told(&[BowlCard { clock: Some(clock), ..stopped() }]), want);
}

/// A card without parts says so and carries no time; one bowl is not counted; two cards are parted by a blank line.
#[test]
fn a_card_of_nothing_to_weigh() {
    let empty = BowlCard { parts: Vec::new(), bowls: 1, bowl: 1, ..looked_at() };
    let want = format!("J-014: top NOTHING TO WEIGH: settle this step before the colour is begun. {FOUND}");
    assert_eq!(told(std::slice::from_ref(&empty)), want);
    assert_eq!(told(&[empty.clone(), empty.clone()]), format!("{want} {want}"));
    let text = card_sheet(&[empty.clone(), empty], &Habits::default());
    assert!(text.contains("who?\n\nJ-014: top\n") && text.ends_with("who?\n\n"), "{text}");
}

/// By label a strength is known to a tenth; rounding that moves a part by less than a twentieth of a percent is not told.
#[test]
fn a_card_shows_what_is_known() {
    let card = BowlCard {
        on_hair: Some(exact(4.04)),
        strength_basis: Basis::Stated,
        worst_ratio_error_percent: 0.049,
        ..looked_at()
    };
    let text = told(&[card]);
    assert!(text.contains("peroxide on the hair 4 % w/w mixed at minute 2"), "{text}");
}
