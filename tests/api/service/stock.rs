//! What the plan takes from the shelf, against what is in hand.

use super::base::{changed, fine, near, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{Note, Warning},
    service::{Plan, ServiceFile, StockCover, StockLine, shape::Section},
    shop::shape::{AdditiveEntry, ConsumableEntry, DeveloperEntry, LightenerEntry, ShadeEntry},
    shop::{Per, StrengthBasis},
};

fn line<'p>(plan: &'p Plan, product: &str) -> &'p StockLine {
    plan.stock.products.iter().find(|line| line.product == product).unwrap()
}

fn consumable(name: &str, per: Per, in_hand_pieces: Option<u32>) -> ConsumableEntry {
    let (price, pack_pieces) = ("24.00".to_owned(), 500);
    ConsumableEntry { name: name.to_owned(), price, pack_pieces, pieces: None, per, in_hand_pieces }
}

/// By hand: 45 g of 1:2 are 15 g powder and 30 g developer; the toner's 60 g of 1:2 take 40 g more of it, the shadow's 30 g
/// of 1:1 another 15 g: 85 g. Nobody counted them.
#[test]
fn grams_add_up_over_all_bowls() {
    let plan = changed(fine(), |_| ());
    near(line(&plan, "powder").wanted.best().g(), 15.0, 1e-6);
    near(line(&plan, "developer").wanted.best().g(), 85.0, 1e-6);
    assert!(plan.stock.products.iter().all(|line| line.cover == StockCover::NotCounted && line.missing.is_none()));
    assert!(verdicts(&plan, "stock").is_empty());
}

/// 10 g are there of the 15 g that are wanted: 5 g are missing; another lightener is there, with a ratio of its own.
#[test]
fn what_is_short_is_said_with_a_substitute() {
    let short = |file: &mut ServiceFile| {
        shop(file).lightener[0].in_hand_g = Some(10.0);
        let clay = LightenerEntry { name: "clay".to_owned(), ratio: "1:1.5".to_owned(), ..LightenerEntry::default() };
        shop(file).lightener.push(clay);
    };
    let plan = changed(fine(), short);
    let powder = line(&plan, "powder");
    assert_eq!(powder.cover, StockCover::Short);
    near(powder.missing.unwrap().best().g(), 5.0, 1e-6);
    assert_eq!(powder.instead[0].product, "clay");
    assert_eq!(verdicts(&plan, "stock"), [Warning]);
    let said = texts(&plan, "stock");
    assert!(
        said.contains("powder: not enough in hand, 15 g wanted and 10 g there: get more, or take instead: clay"),
        "{said}"
    );
    assert!(plan.to_string().contains("FROM THE SHELF"));
}

/// Three per cent of 45 g are 1.35 g, of which 1 g is there. Of the others in the shop one declares the same acid, and at twice the
/// dose 2.7 g of it would go in; what declares nothing alike but water is not offered, nor what runs short itself.
#[test]
fn an_additive_is_replaced_by_what_declares_the_same() {
    let additive = |name: &str, dose: f64, in_hand: Option<f64>, substance: &str| AdditiveEntry {
        name: name.to_owned(),
        dose_percent: dose,
        in_hand_g: in_hand,
        composition: serde_json::from_value(serde_json::json!([
            { "substance": "water", "cas": "7732-18-5", "ww_percent": 85 },
            { "substance": substance, "ww_percent": 8 },
        ]))
        .unwrap(),
        ..AdditiveEntry::default()
    };
    let short = |in_hand| {
        changed(fine(), |file| {
            file.section[0].additives = vec!["keep".to_owned()];
            let keep = additive("keep", 3.0, Some(1.0), "citric acid");
            let (same, other) =
                (additive("same", 6.0, in_hand, "Citric acid"), additive("other", 3.0, None, "panthenol"));
            shop(file).additive.extend([keep, other, same]);
        })
    };
    let plan = short(Some(2.8));
    let keep = line(&plan, "keep");
    assert_eq!(keep.cover, StockCover::Short);
    let [instead] = keep.instead.as_slice() else { panic!("{:?}", keep.instead) };
    assert_eq!(instead.product, "same");
    assert_eq!(instead.why, "declares citric acid too, dose 6 % instead of 3 %: by its own leaflet");
    assert!(line(&short(Some(2.6)), "keep").instead.is_empty());
}

/// Of an estimate the middle may be there and the upper bound not: 120 to 300 g around 180 of the trade, of which 20 %.
#[test]
fn an_estimate_may_run_short() {
    let plan = changed(fine(), |file| {
        file.section[0].mix_g = None;
        shop(file).lightener[0].in_hand_g = Some(15.0);
    });
    // A third of 24 to 60 g around 36 g: 8 to 20 g around 12 g.
    let wanted = line(&plan, "powder").wanted;
    assert_eq!(wanted.to_array().map(|mass| mass.g().round()), [8.0, 12.0, 20.0]);
    assert_eq!(line(&plan, "powder").cover, StockCover::MayRunShort);
    assert_eq!(verdicts(&plan, "stock"), [Note]);
}

/// A developer of 6 % from one of 12 % and one of 3 %: one part to two, 28.3 g and 56.7 g of 85 g.
#[test]
fn another_bottle_is_blended() {
    let plan = changed(fine(), |file| {
        shop(file).developer[0].in_hand_g = Some(20.0);
        for (name, strength) in [("strong", "12 % w/w"), ("weak", "3 % w/w")] {
            shop(file).developer.push(DeveloperEntry {
                name: name.to_owned(),
                strength: strength.to_owned(),
                strength_basis: StrengthBasis::Measured,
                ..DeveloperEntry::default()
            });
        }
    });
    let instead = &line(&plan, "developer").instead[0];
    assert_eq!(instead.product, "strong + weak");
    assert!(instead.why.contains("28 g + 57 g"), "{}", instead.why);
}

/// Of the other shades of the class the nearest on white hair comes first, and one of another class never.
#[test]
fn the_nearest_shade_of_the_class_is_offered() {
    let plan = changed(fine(), |file| {
        shop(file).shade[0].in_hand_g = Some(5.0);
        for (code, level) in [("J8.5", 8.5), ("J5", 5.0)] {
            let demi = shop(file).shade[0].clone();
            shop(file).shade.push(ShadeEntry { code: code.to_owned(), level, in_hand_g: None, ..demi });
        }
    });
    let instead: Vec<&str> = line(&plan, "J9").instead.iter().map(|other| other.product.as_str()).collect();
    assert_eq!(instead, ["J8.5"]);
}

/// Ten foils at 24.00 for 500 are 0.48; gloves: one for the service.
#[test]
fn foils_and_gloves_are_counted() {
    let plan = changed(fine(), |file| {
        shop(file).currency = Some("EUR".to_owned());
        shop(file).consumable =
            vec![consumable("foil", Per::Foil, Some(8)), consumable("gloves", Per::Service, Some(3))];
    });
    let [foil, gloves] = plan.stock.consumables.as_slice() else { panic!("two lines") };
    assert_eq!((foil.wanted_pieces.unwrap().best(), foil.cover), (10, StockCover::Short));
    assert_eq!(foil.cost.unwrap().to_string(), "0.48 EUR");
    assert_eq!((gloves.wanted_pieces.unwrap().best(), gloves.cover), (1, StockCover::Covered));
    assert!(texts(&plan, "stock").contains("foil: not enough in hand, 10 wanted and 8 there: get more"));
}

/// Foils that are counted on a panel have bounds, and so has what they cost.
#[test]
fn counted_foils_cost_between_bounds() {
    let plan = changed(fine(), |file| {
        shop(file).currency = Some("EUR".to_owned());
        shop(file).consumable = vec![consumable("foil", Per::Foil, None)];
        file.section[0].foils = None;
        file.section[0].panel = serde_json::from_str(r#"{"width_cm": 8, "height_cm": 6}"#).ok();
    });
    let foil = &plan.stock.consumables[0];
    let wanted = foil.wanted_pieces.unwrap();
    assert!(wanted.low() < wanted.best() && wanted.best() < wanted.high());
    assert!(foil.cost_low.unwrap() < foil.cost_high.unwrap());
    let of_table = plan.money.unwrap().cost.total();
    assert_eq!(Some(of_table), foil.cost);
}

/// Foils that nobody counted are not none: neither their number nor their cost is known.
#[test]
fn foils_that_nobody_counted_are_not_covered() {
    let plan = changed(fine(), |file| {
        shop(file).currency = Some("EUR".to_owned());
        shop(file).consumable = vec![consumable("foil", Per::Foil, Some(800))];
        file.section[0].foils = None;
    });
    let foil = &plan.stock.consumables[0];
    assert_eq!((foil.wanted_pieces, foil.cover, foil.cost), (None, StockCover::NotCounted, None));
    assert!(verdicts(&plan, "stock").is_empty());
    let flat: String = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("foil ? 800 not counted ?"), "{flat}");
}

/// Of 18 g of clay another section takes 15 g: 3 g are left, and 15 g of powder are not replaced by them.
#[test]
fn what_the_service_takes_itself_is_no_substitute() {
    let offered = |in_hand_g: f64| {
        let plan = changed(fine(), |file| {
            shop(file).lightener[0].in_hand_g = Some(10.0);
            let powder = shop(file).lightener[0].clone();
            let clay = LightenerEntry { name: "clay".to_owned(), in_hand_g: Some(in_hand_g), ..powder };
            shop(file).lightener.push(clay);
            let other =
                Section { name: "side".to_owned(), product: Some("clay".to_owned()), ..file.section[0].clone() };
            file.section.push(other);
        });
        near(line(&plan, "clay").wanted.best().g(), 15.0, 1e-6);
        !line(&plan, "powder").instead.is_empty()
    };
    assert!(!offered(18.0), "18 g less 15 g");
    assert!(offered(30.1), "30.1 g less 15 g");
}

/// Colours of a model have bounds, and so has what lies between two of them.
#[test]
fn how_far_a_substitute_looks_has_bounds() {
    let plan = changed(fine(), |file| {
        shop(file).shade[0].in_hand_g = Some(5.0);
        let demi = shop(file).shade[0].clone();
        shop(file).shade.push(ShadeEntry { code: "J8.5".to_owned(), level: 8.5, in_hand_g: None, ..demi });
    });
    let apart = line(&plan, "J9").instead[0].apart_ciede2000.unwrap();
    assert!(apart.low() < apart.best() && apart.best() < apart.high(), "{apart:?}");
}
