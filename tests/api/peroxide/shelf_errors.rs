use foilwork::{
    peroxide::{
        KnownVolume, Objective, Shelf, Stock, blend_shelf, dilute_volume, dilution_table, make_up, mix_strengths,
        mix_volumes, round_to_scale, strength_after_make_up,
    },
    quantity::{Mass, MassFraction, OxygenVolumes, PricePerKg, Temperature, Volume},
};

pub(super) fn ww(percent: f64) -> MassFraction {
    MassFraction::from_ww_percent(percent).unwrap()
}

pub(super) fn g(grams: f64) -> Mass {
    Mass::from_g(grams).unwrap()
}

pub(super) fn ml(value: f64) -> Volume {
    Volume::from_ml(value).unwrap()
}

#[test]
fn every_shelf_error_says_what_is_reachable() {
    let blend = |stocks: Vec<Stock>, target: f64, total: f64, objective| {
        let shelf = Shelf::new(stocks).map_err(|error| error.to_string())?;
        blend_shelf(&shelf, ww(target), g(total), objective).map_err(|error| error.to_string())
    };
    let strong = || Stock::new("strong", ww(12.0)).with_in_hand(g(5.0));
    let water = || Stock::new("water", ww(0.0));
    let many = (0..17_u8).map(|i| Stock::new(i.to_string(), ww(f64::from(i)))).collect();
    let cost = Objective::LeastCost;
    for (got, want) in [
        (blend(vec![], 6.0, 60.0, cost), "the shelf is empty: list at least one stock"),
        (
            blend(vec![strong(), strong()], 6.0, 60.0, cost),
            "two stocks are called \"strong\": give each bottle its own name, or add their amounts",
        ),
        (
            blend(vec![strong()], 12.0, 60.0, cost),
            "60 g are wanted and only 5 g are in hand: ask for less, or add a stock",
        ),
        (
            blend(vec![strong(), water()], 6.0, 60.0, cost),
            "cannot make 60 g of 6 % w/w from the amounts in hand: 60 g can be anything from 0.00 % w/w to 1.00 % w/w, \
             and at most 10.0 g of 6 % w/w can be made",
        ),
        (
            blend(vec![strong(), water()], 20.0, 60.0, cost),
            "cannot reach 20 % w/w: the strongest stock is 12 % w/w, so anything from 0 % w/w to 12 % w/w is reachable",
        ),
        (blend(vec![strong(), water()], 6.0, 0.0, cost), "the total is zero: give a mass above 0 g"),
        (
            blend(many, 6.0, 60.0, Objective::FewestBottles),
            "17 stocks are too many to search for the fewest bottles: at most 16 (leave some out, or ask for least cost)",
        ),
    ] {
        assert_eq!(got.unwrap_err(), want);
    }
    assert_eq!(
        "best".parse::<Objective>().unwrap_err().to_string(),
        "unknown objective \"best\": give one of least-cost, fewest-bottles, least-leftover"
    );
    assert!(PricePerKg::from_per_kg(-1.0).is_err() && PricePerKg::from_per_kg(f64::NAN).is_err());
}

#[test]
fn scales_that_weigh_nothing() {
    let parts = [(ww(12.0), g(5.0)), (ww(0.0), g(15.0))];
    assert_eq!(
        round_to_scale(&parts, g(0.0)).unwrap_err().to_string(),
        "invalid division of the scale (got 0 g): must be above 0 g, for example 0.1 g or 1 g"
    );
    assert_eq!(
        round_to_scale(&parts, g(50.0)).unwrap_err().to_string(),
        "the bowl of 20 g rounds to nothing on a scale of 50 g: use a finer scale or a bigger bowl"
    );
    assert!(dilution_table(&[ww(12.0)], &[ww(3.0)], ww(0.0), g(100.0), g(0.0)).is_err());
    assert!(mix_strengths::<MassFraction>(&[]).is_err() && mix_strengths(&[(ww(3.0), g(0.0))]).is_err());
    assert!(mix_volumes::<MassFraction>(&[], Temperature::REFERENCE).is_err());
}

#[test]
fn a_stock_in_hand_is_never_rounded_up_beyond_what_there_is() {
    let shelf =
        Shelf::new(vec![Stock::new("rest", ww(12.0)).with_in_hand(g(9.7)), Stock::new("weak", ww(3.0))]).unwrap();
    let blend = blend_shelf(&shelf, ww(6.0), g(29.1), Objective::LeastCost).unwrap();
    let rounded = blend.round_to_scale(g(1.0)).unwrap();
    assert_eq!(rounded.masses, [g(9.0), g(20.0)]);
    assert!((rounded.strength.best().ww_percent() - (9.0 * 12.0 + 20.0 * 3.0) / 29.0).abs() < 1e-12);
}

#[test]
fn the_chart_says_what_cannot_be_had_and_serialises() {
    let table = dilution_table(&[ww(6.0)], &[ww(9.0), ww(3.0), ww(0.0)], ww(0.0), g(60.0), g(0.1)).unwrap();
    let json = serde_json::to_value(&table).unwrap();
    assert!(json["rows"][0]["refused"].as_str().unwrap().starts_with("cannot reach 9 % w/w"));
    assert!(json["rows"][0]["weigh"].is_null());
    assert_eq!(json["rows"][1]["weigh"]["stock_g"], 30.0);
    assert_eq!(json["rows"][1]["weigh"]["strength_ww_percent"]["best"], 3.0);
    assert!(json["rows"][2]["weigh"]["diluent_parts"].is_null(), "all diluent");
}

#[test]
fn volumes_that_cannot_be() {
    let [weak, strong] = [10.0, 20.0].map(|v| OxygenVolumes::from_volumes(v).unwrap());
    assert_eq!(
        make_up(weak, strong, KnownVolume::Total(ml(100.0))).unwrap_err().to_string(),
        "cannot reach 20 volumes from a 10 volumes stock: anything from 0 to 10 volumes is reachable"
    );
    assert_eq!(
        strength_after_make_up(strong, ml(200.0), ml(100.0)).unwrap_err().to_string(),
        "200 mL of stock do not fit into 100 mL: take less, or make up to a higher mark"
    );
    assert_eq!(
        make_up(strong, weak, KnownVolume::Total(ml(0.0))).unwrap_err().to_string(),
        "the total volume is zero: give more than 0"
    );
    assert!(dilute_volume(ww(3.0), ww(6.0), ml(100.0), Temperature::REFERENCE).is_err());
    assert!(dilute_volume(ww(80.0), ww(6.0), ml(100.0), Temperature::REFERENCE).is_err());
}

/// By hand: 12 % is halved by one part of water, comes to 4 % by two and to 3 % by three; 5 % needs 1.4 parts.
#[test]
fn a_row_says_its_parts() {
    let table = dilution_table(&[ww(12.0)], &[ww(6.0), ww(4.0), ww(3.0), ww(5.0)], ww(0.0), g(60.0), g(0.1)).unwrap();
    let parts: Vec<_> = table.rows.iter().map(|row| row.weigh.as_ref().unwrap().parts).collect();
    assert_eq!(parts, [Some([1, 1]), Some([1, 2]), Some([1, 3]), Some([5, 7])]);
}
