//! What is taken from the shelf: products and things in pieces, counted or not, priced or not.

use super::{about, base, eur, exact, part, q};
use foilwork::{
    service::{ConsumableLine, PartKind, StockCover, StockLine, StockPlan, Substitute},
    sheet::SheetPart,
    source::Interval,
};

/// Amounts are written as in Ireland, so that a row fits into 80 columns.
#[test]
fn what_is_wanted_stands_against_what_is_in_hand() {
    let mut plan = base();
    plan.habits.country = Some("IE".parse().unwrap());
    let instead = |product: &str, why: &str| Substitute {
        product: product.to_owned(),
        why: why.to_owned(),
        apart_ciede2000: None,
    };
    let line = |product: &str, wanted, in_hand: Option<f64>, cover, instead| StockLine {
        product: product.to_owned(),
        kind: PartKind::Colour,
        wanted,
        in_hand: in_hand.map(q),
        missing: None,
        cover,
        instead,
    };
    let pieces = |name: &str, wanted, in_hand_pieces, cover, costs: [Option<&str>; 3]| {
        let [cost_low, cost, cost_high] = costs.map(|cost| cost.map(eur));
        ConsumableLine {
            name: name.to_owned(),
            wanted_pieces: wanted,
            in_hand_pieces,
            cover,
            cost_low,
            cost,
            cost_high,
        }
    };
    plan.stock = StockPlan {
        products: vec![
            line("powder", exact(45.0), Some(500.4), StockCover::Covered, Vec::new()),
            line(
                "J9",
                about([20.0, 30.0, 40.0]),
                None,
                StockCover::MayRunShort,
                vec![instead("J8", "a level darker"), instead("J9-mist", "cooler")],
            ),
            line("J6", exact(12.0), Some(0.0), StockCover::Short, vec![instead("J5", "near it")]),
        ],
        consumables: vec![
            pieces(
                "foils",
                Some(Interval::exact(10)),
                Some(100),
                StockCover::Covered,
                [Some("0.80"), Some("1.00"), Some("1.20")],
            ),
            pieces("film", Some(Interval::new(1, 2, 3).unwrap()), None, StockCover::NotCounted, [Some("0.50"); 3]),
            pieces("gloves", None, None, StockCover::NotCounted, [None; 3]),
            pieces(
                "cotton",
                Some(Interval::exact(1)),
                Some(9),
                StockCover::Covered,
                [None, Some("0.10"), Some("0.20")],
            ),
        ],
    };
    let want = "FROM THE SHELF | what wanted in hand cost \
        powder 45 g 500 covered J9 30 (20 to 40) g ? may run short J6 12 g 0 short \
        foils 10 pieces 100 covered €1.00 (€0.80 to €1.20) film 2 (1 to 3) pieces ? not counted €0.50 gloves ? ? not counted ? \
        cotton 1 pieces 9 covered ? \
        - instead of J9: J8 (a level darker); J9-mist (cooler) - instead of J6: J5 (near it)";
    assert_eq!(part(&plan, SheetPart::Stock), want);
}
