//! Charts, blends and titrations.

use super::{data, fine, near, number};
use rstest::rstest;
use serde_json::json;

/// Source: W008, healyourselfathome.com: 100 of 3 % from 35 % are about 8.5 of stock and 91.5 of water; C1V1 = C2V2
/// gives 8.571, which a scale of 0.1 g shows as 8.6, so 3.01 %.
#[test]
fn a_table_of_one_published_dilution() {
    let table = data(&["table", "--stocks", "35 % w/w", "--targets", "3 % w/w", "--total", "100", "--division", "0.1"]);
    let weigh = &table["rows"][0]["weigh"];
    assert_eq!((number(&weigh["stock_g"]), number(&weigh["diluent_g"])), (8.6, 91.4));
    near(number(&weigh["strength_ww_percent"]["best"]), 3.01, 1e-9);
    near(number(&weigh["diluent_parts"]), 32.0 / 3.0, 1e-9);
}

/// By hand: 12 to 3 is one part in four, 9 to 3 one in three (33 1/3 g, weighed as 33), 12 to 10 five in six.
#[test]
fn a_table_is_text_or_csv() {
    let args = ["table", "--stocks", "12, 9 % w/w", "--targets", "10 % w/w, 3 % w/w", "--total", "100"];
    let words: Vec<String> =
        fine(&args).lines().map(|line| line.split_whitespace().collect::<Vec<_>>().join(" ")).collect();
    // Three grids with a row for each bottle: grams, parts a person mixes, and what that gives.
    for row in [
        "bottle 10 % w/w 3 % w/w",
        "12 % w/w 83 + 17 25 + 75",
        "9 % w/w - 33 + 67",
        "12 % w/w 5 + 1 1 + 3",
        "9 % w/w - 1 + 2",
        "12 % w/w 9.96 3.00",
        "9 % w/w - 2.97",
    ] {
        assert!(words.iter().any(|line| line == row), "{row} is not in {words:#?}");
    }
    let csv = fine(&[&args[..], &["--csv"]].concat());
    let mut rows = csv.lines();
    let names = "stock,target,stock_ww_percent,target_ww_percent,stock_g,diluent_g,strength_ww_percent,\
                 strength_low_ww_percent,strength_high_ww_percent,diluent_parts,refused";
    assert_eq!(rows.next(), Some(names));
    assert_eq!(rows.next(), Some("12 % w/w,10 % w/w,12.0,10.0,83.0,17.0,9.96,9.96,9.96,0.2,"));
    assert_eq!(
        rows.nth(1),
        Some(
            "9 % w/w,10 % w/w,9.0,10.0,,,,,,,\"cannot reach 10 % w/w: the strongest stock is 9 % w/w, so anything from 0 % w/w to 9 % w/w is reachable\""
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
    near(number(&strength["best"]), 0.60, 0.005);
    near(number(&strength["low"]), 0.05 * (99.9 / 10.02) * (11.97 / 10.02), 1e-12);
    near(number(&strength["high"]), 0.05 * (100.1 / 9.98) * (12.03 / 9.98), 1e-12);
    near(number(&found["strength_volumes"]["best"]), 6.7, 0.05);
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
    near(number(&found["strength_wv_percent"]["best"]) * 10_000.0, 1003.0, 1.0);
}

/// Source: British Pharmacopoeia: 1 mL of 0.02 mol/L is 1.701 mg of peroxide. 10 mL of a tenfold dilution of 6 % w/v
/// hold 60 mg.
#[test]
fn the_titre_to_expect() {
    let args = ["titrate", "--titrant", "0.02 mol/L", "--aliquot", "10", "--taken", "10", "--made-up-to", "100"];
    let expected = |strength| data(&[&args[..], &["--expect", strength]].concat());
    near(number(&expected("6 % w/v")["titre_ml"]["best"]), 60.0 / 1.701, 0.02);
    // A label can be read as % w/w or as % w/v: the second needs less, and the bounds reach down to it.
    let label = &expected("20 vol label")["titre_ml"];
    near(number(&label["low"]), 60.0 / 1.701, 0.05);
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
    near(number(&blend["leftover_g"]), left, 1e-9);
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
    near(number(&strength["best"]), 3.0, 1e-9);
    // 6 % w/v has a density of about 1.02 g/mL (tests/data/peroxide/density.csv), so 5.88 % w/w.
    near(number(&strength["low"]), 6.0 / 1.02 / 2.0, 0.01);
}

/// By hand: 3 parts of 12 % and 1 part of 4 % are (36 + 4) / 4 = 10 %; 40 vol is 11.5 to 12 % w/w, and a quarter of it
/// taken away with 0 % leaves 8.6 to 9 %.
#[test]
fn a_table_of_labels_and_of_developers() {
    let squeeze = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let two = ["table", "--stocks", "12 % w/w", "--targets", "10 % w/w", "--with", "4 % w/w", "--total", "80 g"];
    let text = squeeze(fine(&two));
    assert!(text.contains("12 % w/w 60 + 20") && text.contains("12 % w/w 3 + 1"), "{text}");
    let label = ["table", "--stocks", "40 vol, 30 vol", "--targets", "9 % w/w", "--total", "100"];
    let text = squeeze(fine(&label));
    assert!(text.contains("40 vol label 75 + 25") && text.contains("40 vol label 9.00 (8.65-9.00)"), "{text}");
}

/// The classes are those of the harmonised entry: eye damage from 8 %; above 12 % the public may not buy it.
#[rstest]
#[case("6 % w/w", &["Weigh it"], &["H318", "no advice"])]
#[case("9 % w/w", &["Hazard classes at 9 % w/w: Eye Dam. 1 (H318, EU)", "UN 2984", "Weigh it"], &["no advice"])]
#[case("35 % w/w", &["H318", "UN 2014, UN; in part from memory, unverified)", "restricted to the general public above 12 % (EU)", "gives no advice"], &["Weigh it"])]
fn a_dilution_says_what_it_handles(#[case] stock: &str, #[case] says: &[&str], #[case] not: &[&str]) {
    let text = fine(&["dilute", "--stock", stock, "--target", "3 % w/w", "--total", "100"]);
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for words in says {
        assert!(text.contains(words), "{words} is not in {text}");
    }
    for words in not {
        assert!(!text.contains(words), "{words} is in {text}");
    }
}

/// Of the pairs that make 4.5 % from 12, 6 and 3 %, 40 g and 40 g is exact on a scale of 1 g; 13 g and 67 g give 4.46 %.
#[test]
fn of_equal_blends_the_exact_one() {
    let args =
        ["blend", "--stock", "a=12 % w/w", "--stock", "b=6 % w/w", "--stock", "c=3 % w/w", "--target", "4.5 % w/w"];
    let blend = data(&[&args[..], &["--total", "80", "--objective", "fewest-bottles"]].concat());
    assert_eq!(number(&blend["strength_ww_percent"]["best"]), 4.5);
    assert_eq!(blend["portions"].as_array().unwrap().len(), 2);
}

/// The British and the Indian pharmacopoeia allow 5.0 to 7.0 % w/v; 20 vol is read three ways.
#[test]
fn a_label_is_told_from_the_unit() {
    let label = fine(&["convert", "20V"]);
    assert!(label.starts_with("20 vol label can mean three strengths"), "{label}");
    assert!(label.contains("so from 5.88 to 6 % w/w"), "{label}");
    assert!(label.contains("5.0 to 7.0 % w/v"), "{label}");
    let measured = fine(&["convert", "20 volumes"]);
    assert!(measured.contains("taken as measured oxygen; the number on a bottle is a label"), "{measured}");
}

/// By hand: 10 mL of 6 % w/v hold 600 mg, at 1.701 mg/mL 352.7 mL: seven burettes. Made up to 250 mL, 14.1 mL.
#[test]
fn a_titre_beyond_one_burette_says_to_dilute_first() {
    let args = ["titrate", "--titrant", "0.02 mol/L", "--aliquot", "10", "--expect", "6 % w/v"];
    let text = fine(&args);
    assert!(text.contains("more than a burette of 50 mL holds: dilute first"), "{text}");
    assert!(text.contains("--taken 10 --made-up-to 250"), "{text}");
    let diluted = data(&[&args[..], &["--taken", "10", "--made-up-to", "250"]].concat());
    near(number(&diluted["titre_ml"]["best"]), 352.7 / 25.0, 0.02);
    assert_eq!(diluted["dilute_first"], json!(null));
}

/// 3 of 100 g at a strength of s percent are 300 / s g; what stands between volumes and % w/w is the density.
#[test]
fn grams_of_a_stock_in_volumes_carry_the_bounds_of_its_density() {
    let asked = ["dilute", "--stock", "20 volumes", "--target", "3 % w/w", "--total", "100", "--trail"];
    let trail = data(&asked);
    let decimal = |value: &serde_json::Value| value.as_str().unwrap().parse::<f64>().unwrap();
    let (strength, grams) = (&trail[0], &trail[1]);
    assert_eq!(strength["what"], "20 volumes: strength in % w/w");
    for (bound, other) in [(0, 1), (1, 0)] {
        near(decimal(&grams["bounds"][bound]), 300.0 / decimal(&strength["bounds"][other]), 1e-9);
    }
    let cites = |result: &serde_json::Value| {
        result["sources"].as_array().unwrap().iter().any(|id| id == "peroxide-density-coefficients")
    };
    assert!((0..4).all(|place| cites(&trail[place])), "{trail}");
    let label = data(&["dilute", "--stock", "20 vol", "--target", "3 % w/w", "--total", "100", "--trail"]);
    assert_eq!((&label[0]["value"], &label[1]["basis"]), (&"6".into(), &"common-practice".into()));
    let bottles = ["blend", "--stock", "a=20 volumes", "--stock", "b=1 % w/w", "--target", "3 % w/w", "--total", "100"];
    let blend = data(&[&bottles[..], &["--trail"]].concat());
    assert!(blend.as_array().unwrap().len() == 2 && cites(&blend[1]), "{blend}");
}

/// A label of the trade is common practice, and so is what is made of it: 0.3 x 20 = 6 % w/w, by whichever command.
#[test]
fn what_is_made_of_a_label_is_common_practice() {
    let folder = tempfile::tempdir().unwrap();
    let write = |name: &str, text: &str| {
        let path = folder.path().join(name);
        std::fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let bottle = "[[developer]]\nname = \"a\"\nstrength = \"20 vol label\"\nstrength_basis = \"label\"\n";
    let shop = write("shop.toml", &format!("format = 1\n{bottle}[[diluent]]\nname = \"b\"\n"));
    let service = include_str!("../../../examples/soft-gradient.toml");
    let relabelled = service.replacen("strength = \"6 % w/w\"", "strength = \"20 vol label\"", 1);
    assert_ne!(service, relabelled);
    let service = write("service.toml", &relabelled);
    let titrant = ["titrate", "--titrant", "0.02 mol/L", "--aliquot", "10", "--taken", "10", "--made-up-to", "250"];
    for (args, step, result) in [
        (vec!["table", "--stocks", "20 vol, 3 % w/w", "--targets", "2 % w/w", "--total", "100"], "20 vol", "20 vol"),
        (vec!["blend", &shop, "--target", "3 % w/w", "--total", "100"], "a, 20 vol", "strength of the blend"),
        (vec!["plan", &service], "developer 6, 20 vol", "nape: strength on the hair"),
        ([&titrant[..], &["--expect", "20 vol"]].concat(), "20 vol", "titre to expect"),
    ] {
        let trail = data(&[&args[..], &["--trail"]].concat());
        let trail = trail.as_array().unwrap();
        let named = |one: &&serde_json::Value, begins: &str| one["what"].as_str().unwrap().starts_with(begins);
        let found = trail.iter().find(|one| named(one, step)).unwrap();
        assert_eq!((&found["value"], &found["worked"]), (&json!("6"), &json!("0.3 x 20")), "{args:?}");
        let made = trail.iter().rfind(|one| named(one, result)).unwrap();
        assert_eq!(made["basis"], "common-practice", "{made}");
        assert!(!made["sources"].as_array().unwrap().is_empty(), "{made}");
    }
    // A bottle by mass is none: its cells stay arithmetic.
    let table = data(&["table", "--stocks", "20 vol, 3 % w/w", "--targets", "2 % w/w", "--total", "100", "--trail"]);
    assert_eq!(table.as_array().unwrap().last().unwrap()["basis"], "derived");
}
