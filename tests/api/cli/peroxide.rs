//! Charts, blends and titrations.

use super::{assert_near, data, fine, number};
use rstest::rstest;
use serde_json::json;

/// Source: W008, healyourselfathome.com: 100 of 3 % from 35 % are about 8.5 of stock and 91.5 of water; C1V1 = C2V2
/// gives 8.571, which a scale of 0.1 g shows as 8.6, so 3.01 %.
#[test]
fn a_table_of_one_published_dilution() {
    let table = data(&["table", "--stocks", "35 % w/w", "--targets", "3 % w/w", "--total", "100", "--division", "0.1"]);
    let weigh = &table["rows"][0]["weigh"];
    assert_eq!((number(&weigh["stock_g"]), number(&weigh["diluent_g"])), (8.6, 91.4));
    assert_near(number(&weigh["strength_ww_percent"]), 3.01, 1e-9);
    assert_near(number(&weigh["diluent_parts"]), 32.0 / 3.0, 1e-9);
}

/// By hand: 12 to 3 is one part in four, 9 to 3 one in three (33 1/3 g, weighed as 33), 12 to 10 five in six.
#[test]
fn a_table_is_text_or_csv() {
    let args = ["table", "--stocks", "12, 9 % w/w", "--targets", "10 % w/w, 3 % w/w", "--total", "100"];
    let words: Vec<String> =
        fine(&args).lines().map(|line| line.split_whitespace().collect::<Vec<_>>().join(" ")).collect();
    for row in [
        "12 % 10 % 83 g 17 g 0.2 9.96 %",
        "12 % 3 % 25 g 75 g 3 3.00 %",
        "9 % 10 % - - - -",
        "9 % 3 % 33 g 67 g 2 2.97 %",
    ] {
        assert!(words.iter().any(|line| line == row), "{row} is not in {words:#?}");
    }
    let csv = fine(&[&args[..], &["--csv"]].concat());
    let mut rows = csv.lines();
    let names = "stock_ww_percent,target_ww_percent,stock_g,diluent_g,strength_ww_percent,diluent_parts,refused";
    assert_eq!(rows.next(), Some(names));
    assert_eq!(rows.next(), Some("12.0,10.0,83.0,17.0,9.96,0.2,"));
    assert_eq!(
        rows.nth(1),
        Some(
            "9.0,10.0,,,,,\"cannot reach 10 % w/w: the strongest stock is 9 % w/w, so anything from 0 % w/w to 9 % w/w is reachable\""
        )
    );
}

/// Source: W43 and W44, French baccalaureate ST2S 2013: 12.0 mL of 0.0200 mol/L for 10.0 mL of a tenfold dilution:
/// 0.60 mol/L, 6.7 volumes. The bounds by hand: 0.05 x (100 -+ 0.1)/(10 +- 0.02) x (12 -+ 0.03)/(10 +- 0.02).
#[test]
fn a_baccalaureate_titration_with_its_bounds() {
    let args = [
        "titrate",
        "--titrant",
        "0.02 mol/L",
        "--aliquot",
        "10+-0.02",
        "--taken",
        "10+-0.02",
        "--made-up-to",
        "100+-0.1",
        "--titre",
        "12.0+-0.03",
    ];
    let found = data(&args);
    let strength = &found["strength_mol_per_l"];
    assert_near(number(&strength["best"]), 0.60, 0.005);
    assert_near(number(&strength["low"]), 0.05 * (99.9 / 10.02) * (11.97 / 10.02), 1e-12);
    assert_near(number(&strength["high"]), 0.05 * (100.1 / 9.98) * (12.03 / 9.98), 1e-12);
    assert_near(number(&found["strength_volumes"]["best"]), 6.7, 0.05);
    assert_eq!(found["no_tolerance_stated"], json!(["titrant"]));
    let text = fine(&args);
    assert!(text.contains("  0.6 (0.5955 to 0.6045) mol/L\n"), "{text}");
    assert!(text.contains("No tolerance stated, so none counted: titrant"), "{text}");
}

/// Source: W42, an instrument manual: 11.8 mL of 0.1 N on 20 mL is 1003 mg/L, which is 0.1003 % w/v.
#[rstest]
#[case("0.1 N")]
#[case("0.02 mol/L")]
#[case("0.1+-0.0 N")]
fn an_instrument_manual(#[case] titrant: &str) {
    let found = data(&["titrate", "--titrant", titrant, "--aliquot", "20 mL", "--titre", "11.8"]);
    assert_near(number(&found["strength_wv_percent"]["best"]) * 10_000.0, 1003.0, 1.0);
}

/// Source: British Pharmacopoeia: 1 mL of 0.02 mol/L is 1.701 mg of peroxide. 10 mL of a tenfold dilution of 6 % w/v
/// hold 60 mg.
#[test]
fn the_titre_to_expect() {
    let args = ["titrate", "--titrant", "0.02 mol/L", "--aliquot", "10", "--taken", "10", "--made-up-to", "100"];
    let expected = |strength| data(&[&args[..], &["--expect", strength]].concat());
    assert_near(number(&expected("6 % w/v")["titre_ml"]["best"]), 60.0 / 1.701, 0.02);
    // A label can be read as % w/w or as % w/v: the second needs less, and the bounds reach down to it.
    let label = &expected("20 vol label")["titre_ml"];
    assert_near(number(&label["low"]), 60.0 / 1.701, 0.05);
    assert!(number(&label["high"]) > number(&label["low"]) + 0.5, "{label}");
}

/// Source: W005, askanewquestion.com: 10 % and 25 % to 15 %: 20 of 30 are the weaker.
#[test]
fn a_blend_of_two() {
    let blend = data(&[
        "blend",
        "--stock",
        "weak=10 % w/w",
        "--stock",
        "strong=25 % w/w",
        "--target",
        "15 % w/w",
        "--total",
        "30",
    ]);
    let taken: Vec<_> =
        blend["portions"].as_array().unwrap().iter().map(|p| (p["name"].as_str(), number(&p["weigh_g"]))).collect();
    assert_eq!(taken, [(Some("weak"), 20.0), (Some("strong"), 10.0)]);
    assert_eq!((&blend["cost"], number(&blend["strength_ww_percent"]["best"])), (&json!(null), 15.0));
}

/// A shop where every objective chooses otherwise.
const SHOP: &str = r#"
currency = "EUR"

[[developer]]
name = "twelve"
strength = "12 % w/w"
strength_basis = "supplier-sheet"
in_hand_g = 300
price = "9.00"
pack_g = 1000

[[developer]]
name = "last of the twelve"
strength = "12 % w/w"
strength_basis = "supplier-sheet"
in_hand_g = 20
price = "12.00"
pack_g = 1000

[[developer]]
name = "three"
strength = "3 % w/w"
strength_basis = "supplier-sheet"
price = "2.50"
pack_g = 500

[[developer]]
name = "ready"
strength = "6 % w/w"
strength_basis = "supplier-sheet"
in_hand_g = 1000
price = "30.00"
pack_g = 1000
"#;

/// By hand, for 60 g of 6 %: 20 g of 12 % and 40 g of 3 % cost 0.18 and 0.20, with the dearer twelve 0.24 and 0.20; the
/// ready one 1.80. The last of the twelve leaves nothing over, the other 280 g, the ready one 940 g.
#[rstest]
#[case("least-cost", &["twelve", "three"], "0.38", 280.0)]
#[case("fewest-bottles", &["ready"], "1.80", 940.0)]
#[case("least-leftover", &["last of the twelve", "three"], "0.44", 0.0)]
fn a_blend_from_a_shop_file(#[case] objective: &str, #[case] names: &[&str], #[case] cost: &str, #[case] left: f64) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("shop.toml");
    std::fs::write(&path, SHOP).unwrap();
    let args = ["blend", path.to_str().unwrap(), "--target", "6 % w/w", "--total", "60", "--objective", objective];
    let blend = data(&args);
    let taken: Vec<_> = blend["portions"].as_array().unwrap().iter().map(|p| p["name"].as_str().unwrap()).collect();
    assert_eq!(taken, names);
    assert_eq!(blend["cost"], json!({"amount": cost, "currency": "EUR"}));
    assert_near(number(&blend["leftover_g"]), left, 1e-9);
    assert!(fine(&args).contains(&format!("cost {cost} EUR\n")));
}

/// The same bottles from options, and one without a price, which is said.
#[test]
fn a_blend_from_options_names_what_counts_as_free() {
    let text = fine(&[
        "blend",
        "--stock",
        "twelve=12 % w/w, 300 g, 9.00/kg",
        "--stock",
        "3 % w/w",
        "--target",
        "6 % w/w",
        "--total",
        "60",
        "--currency",
        "EUR",
    ]);
    assert!(text.contains("cost 0.18 EUR\nno price stated, counted as free: 3 % w/w\n"), "{text}");
    let rows: Vec<String> = text.lines().map(|line| line.split_whitespace().collect::<Vec<_>>().join(" ")).collect();
    assert!(rows.contains(&"twelve 12 % w/w 20 g 280 g".to_owned()), "{text}");
}

/// A label in the blend keeps its bounds: 20 vol is 6 % w/w at most, a little less if it was meant as % w/v.
#[test]
fn a_blend_of_a_label_has_bounds() {
    let blend = data(&[
        "blend",
        "--stock",
        "20 vol label",
        "--stock",
        "water=0 % w/w",
        "--target",
        "3 % w/w",
        "--total",
        "100",
    ]);
    let strength = &blend["strength_ww_percent"];
    assert_near(number(&strength["best"]), 3.0, 1e-9);
    // 6 % w/v has a density of about 1.02 g/mL (tests/data/peroxide/density.csv), so 5.88 % w/w.
    assert_near(number(&strength["low"]), 6.0 / 1.02 / 2.0, 0.01);
}
