//! The mixing cards: what says stop leads each of them, and each carries its times and what to mind.

use super::base::{changed, example, fine};
use foilwork::{
    finding::Verdict,
    quantity::Duration,
    reader::Format,
    service::{mixing_cards, plan, plan_text, shape::Scalp},
    sheet::card_sheet,
    shop::Habits,
};

#[test]
fn stop_leads_every_card_in_words_and_in_data() {
    let plan = changed(fine(), |file| file.analysis.scalp = Some(Scalp::Broken));
    let cards = mixing_cards(&plan);
    assert_eq!(cards.len(), 3);
    let data = serde_json::to_value(&cards).unwrap();
    for (card, data) in cards.iter().zip(data.as_array().unwrap()) {
        assert!(card.blocked && data["blocked"] == true);
        assert_eq!(card.stops.len(), 1);
        assert!(card.stops.iter().all(|stop| stop.verdict == Verdict::Stop), "{:?}", card.stops);
        let text = card_sheet(std::slice::from_ref(card), &Habits::default());
        assert!(text.starts_with("*** STOP: DO NOT MIX THIS BOWL. ***\n  [STOP] scalp: broken"), "{text}");
    }
}

#[test]
fn a_card_without_a_stop_does_not_say_stop() {
    let cards = mixing_cards(&plan(&fine()).unwrap());
    assert!(cards.iter().all(|card| !card.blocked && card.stops.is_empty()));
    assert!(!card_sheet(&cards, &Habits::default()).contains("STOP"));
}

/// A bowl's own warnings stand on its card and on no other.
#[test]
fn a_card_carries_the_warnings_of_its_bowl_only() {
    // Level 2 to 9 is 7 levels; the trade reaches about 5 with 20 vol in one session.
    let plan = changed(fine(), |file| file.analysis.natural_level = 2.0);
    let cards = mixing_cards(&plan);
    let lift = |card: &foilwork::service::BowlCard| card.findings.iter().any(|f| f.text.contains("agree on a series"));
    assert!(lift(&cards[0]) && !lift(&cards[1]) && !lift(&cards[2]));
    assert!(card_sheet(&cards[..1], &Habits::default()).contains("! [WARN] lift: top:"));
}

/// The work is put on from 10:00 to 10:20 and develops 30 min.
#[test]
fn a_card_says_when_to_look_and_when_to_rinse() {
    let cards = mixing_cards(&plan(&fine()).unwrap());
    let clock = cards[0].clock.as_ref().unwrap();
    assert_eq!(clock.rinse_by.strftime("%H:%M").to_string(), "10:50");
    assert_eq!(clock.look_at.last(), Some(&clock.rinse_by));
    let text = card_sheet(&cards[..1], &Habits::default());
    assert!(text.contains("rinse planned for 10:50"), "{text}");
    // The toner comes at the earliest after the last rinse.
    assert_eq!(cards[1].minutes.mixed_at, Duration::from_min(50.0).unwrap());
    assert!(card_sheet(&cards[1..2], &Habits::default()).contains("(earliest; after rinsing)"));
}

/// No time of day is made up for a start that is only a day.
#[test]
fn without_a_time_of_day_a_card_counts_minutes() {
    let plan = changed(fine(), |file| file.service.start = "2026-11-26".to_owned());
    let cards = mixing_cards(&plan);
    assert!(cards.iter().all(|card| card.clock.is_none()));
    let text = card_sheet(&cards[..1], &Habits::default());
    assert!(text.contains("mixed at minute 0, use by minute 30"), "{text}");
}

/// One card for each fresh bowl: 45 g of mix in bowls of 30 g are two.
#[test]
fn each_fresh_bowl_has_a_card() {
    let plan = changed(fine(), |file| file.salon.bowl_capacity_g = Some(30.0));
    let cards = mixing_cards(&plan);
    let of_top: Vec<_> = cards.iter().filter(|card| card.name == "top").map(|card| (card.bowl, card.bowls)).collect();
    assert_eq!(of_top, [(1, 2), (2, 2)]);
    let plan = plan_text(&example("soft-gradient.toml"), Format::Toml).unwrap();
    let bowls: usize = plan.mixes.iter().flat_map(|mix| &mix.bowls).map(|bowl| bowl.count).sum();
    assert_eq!(mixing_cards(&plan).len(), bowls);
}
