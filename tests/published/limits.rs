//! The built-in tables against a second, independent encoding of the same sources, and against spot values.
//! Sources: `tests/data/limits/sources.csv`.

use foilwork::limits::{Conversion, Jurisdiction, Limit, LimitRule, Obtained, Table};
use foilwork::mix::Cas;
use rstest::rstest;
use std::collections::{BTreeMap, BTreeSet};

type Outcome = Result<(), Box<dyn std::error::Error>>;

const FIGURES: &str = include_str!("../data/limits/figures.csv");
const CRATE_ROWS: &str = include_str!("../../src/limits/data/limits.csv");

fn records(text: &str) -> Result<Vec<BTreeMap<String, String>>, csv::Error> {
    csv::Reader::from_reader(text.as_bytes()).deserialize().collect()
}

fn row(id: &str) -> Result<&'static Limit, String> {
    let rows = Jurisdiction::ALL.iter().copied().flat_map(|j| Table::of(j).rows());
    rows.into_iter().find(|row| row.id == id).ok_or(format!("no row {id}"))
}

/// Check digit of a CAS number, written without the library: weights 1, 2, 3... from the right.
fn cas_check_digit_fits(cas: &str) -> bool {
    let digits: Vec<u32> = cas.chars().filter_map(|c| c.to_digit(10)).collect();
    let Some((check, body)) = digits.split_last() else { return false };
    body.iter().rev().zip(1..).map(|(d, weight)| d * weight).sum::<u32>() % 10 == *check
}

/// Check digit of an EC number: weights 1 to 6 from the left, modulo 11.
fn ec_check_digit_fits(ec: &str) -> bool {
    let digits: Vec<u32> = ec.chars().filter_map(|c| c.to_digit(10)).collect();
    let Some((check, body)) = digits.split_last() else { return false };
    body.len() == 6 && body.iter().zip(1..).map(|(d, weight)| d * weight).sum::<u32>() % 11 % 10 == *check
}

#[test]
fn every_row_agrees_with_the_second_encoding() -> Outcome {
    let second = records(FIGURES)?;
    for want in &second {
        let id = &want["row_id"];
        let got = row(id)?;
        let figure = format!("{} {}", want["limit_value"], want["limit_unit"]);
        assert_eq!(got.figure, figure.trim(), "{id}");
        let cas: Vec<String> = got.cas.iter().map(Cas::to_string).collect();
        assert_eq!(cas.join(" | "), want["cas"], "{id}");
        assert_eq!(got.use_as_worded, want["use"], "{id}");
        assert_eq!(got.basis_as_worded, want["basis"], "{id}");
        assert_eq!(got.issued_by, want["jurisdiction"], "{id}");
        assert_eq!(got.sources, want["source_id"].replace(';', ""), "{id}");
        assert_eq!(got.obtained.words(), want["how"], "{id}");
        assert_eq!(got.above, want["limit_comparison"] == ">", "{id}");
        assert_eq!(got.rule == LimitRule::Prohibited, want["limit_comparison"] == "prohibited", "{id}");
        assert_eq!(got.rule == LimitRule::Maximum, want["rule_type"] == "maximum", "{id}");
        let users = match want["user"].as_str() {
            "general and professional" => "all",
            other => other,
        };
        assert_eq!(got.users.code(), users, "{id}");
        // "as stated" and nothing are no conversion; anything else is.
        let none = matches!(want["expressed_as"].as_str(), "as stated" | "" | "time");
        assert_eq!(got.expressed_as.is_none(), none, "{id}");
    }
    assert_eq!(second.len(), 210);
    Ok(())
}

#[test]
fn registry_numbers_pass_their_check_digits() -> Outcome {
    let (mut cas, mut ec) = (0, 0);
    for want in records(FIGURES)? {
        for number in want["cas"].split(" | ").filter(|n| !n.is_empty()) {
            assert!(cas_check_digit_fits(number), "{number}");
            assert_eq!(number.parse::<Cas>()?.to_string(), number);
            cas += 1;
        }
        for number in want["ec"].split(" | ").filter(|n| !n.is_empty() && *n != "-") {
            assert!(ec_check_digit_fits(number), "{number}");
            ec += 1;
        }
    }
    // A digit changed, and two neighbours swapped: both must be caught.
    for wrong in ["7722-84-2", "7722-48-1"] {
        assert!(!cas_check_digit_fits(wrong) && wrong.parse::<Cas>().is_err(), "{wrong}");
    }
    assert!(cas > 250 && ec > 200, "{cas} CAS and {ec} EC numbers read");
    Ok(())
}

// Source: counted in the reference table by jurisdiction (Ontario under Canada, expert panels under their country).
#[rstest]
#[case("EU", 176, 0)]
#[case("GB", 7, 5)]
#[case("US", 5, 1)]
#[case("CA", 9, 0)]
#[case("AU", 6, 3)]
#[case("NZ", 1, 0)]
#[case("CN", 2, 0)]
#[case("JP", 1, 1)]
#[case("ASEAN", 1, 1)]
#[case("PL", 178, 0)] // a member of the union: its 176 rows and two of its own
fn rows_of_a_jurisdiction(#[case] code: &str, #[case] rows: usize, #[case] from_memory: usize) -> Outcome {
    let table = Table::of(code.parse()?);
    assert_eq!((table.rows().len(), table.unverified()), (rows, from_memory));
    Ok(())
}

// Sources, each figure typed here from its citation: Regulation (EC) No 1223/2009, Annex III (ECHA export of 16 May 2024,
// CosIng of 8 December 2025) and Annex II; Regulation (EU) 2019/831 as on legislation.gov.uk; Regulation (EU) 2019/1148,
// Annex I (secondary); TGA decisions of January 2017; report of 2025 on the Chinese standard.
#[rstest]
#[case::peroxide_on_hair("EU-III-12-hair", "12 %", "7722-84-1")]
#[case::peroxide_on_skin("EU-III-12-skin", "4 %", "7722-84-1")]
#[case::peroxide_on_lashes("EU-III-12-lash", "2 %", "7722-84-1")]
#[case::ammonia("EU-III-4", "6 %", "7664-41-7")]
#[case::ppd("EU-III-8a-ox-prof", "2 %", "106-50-3")]
#[case::toluenediamine_base("EU-III-9a-ox-prof", "2 %", "95-70-5")]
#[case::toluenediamine_sulfate("EU-III-9a-ox-prof-salt", "3.6 %", "615-50-9")]
#[case::naphthol("EU-III-16-ox", "2 %", "90-15-3")]
#[case::resorcinol("EU-III-22-ox", "1.25 %", "108-46-3")]
#[case::aminophenol("EU-III-217-ox", "1.2 %", "591-27-5")]
#[case::methylresorcinol("EU-III-243-ox", "1.8 %", "608-25-3")]
#[case::methoxymethyl_ppd("EU-III-292-ox", "1.8 %", "337906-36-2")]
#[case::strontium_peroxide("EU-III-64", "4.5 %", "1314-18-7")]
#[case::butoxyethanol("EU-III-188-ox", "4 %", "111-76-2")]
#[case::ethoxydiglycol("EU-III-297-nonox", "5 %", "111-90-0")]
#[case::o_phenylenediamine("EU-II-363", "0 %", "95-54-5")]
#[case::hydroquinone("EU-II-1339", "0 %", "123-31-9")]
#[case::british_peroxide("UK-III-12-hair", "12 %", "7722-84-1")]
#[case::precursor("EU-2019-1148-H2O2", "12 % w/w", "7722-84-1")]
#[case::licence("EU-2019-1148-H2O2-licence", "35 % w/w", "7722-84-1")]
#[case::australian_resorcinol("AU-RESORCINOL", "1.25 %", "108-46-3")]
#[case::chinese_peroxide("CN-H2O2-hair", "12 %", "7722-84-1")]
#[case::silver_nitrate("US-AGNO3", "4 % w/w", "7761-88-8")]
#[case::osha_peroxide("US-OSHA-H2O2", "1.4 mg/m3", "7722-84-1")]
fn spot_values(#[case] id: &str, #[case] figure: &str, #[case] cas: &str) -> Outcome {
    let row = row(id)?;
    assert_eq!(row.figure, figure);
    assert!(row.cas.contains(&cas.parse()?));
    Ok(())
}

#[test]
fn every_row_has_source_date_and_basis() {
    for row in Jurisdiction::ALL.iter().copied().flat_map(|j| Table::of(j).rows()) {
        assert!(!row.legal_reference.is_empty(), "{}: no reference", row.id);
        assert_eq!(row.citations.len(), row.sources.split_whitespace().count(), "{}: {}", row.id, row.sources);
        // Workplace figures come without a list date; their sources are named here so that no other row loses its date.
        let undated = row.list_date.is_empty();
        let allowed = ["chemicals-ontario", "acgih-tlv", "sds-peroxide-air", "socko-2013"];
        assert!(!undated || allowed.contains(&row.sources.as_str()), "{}: no date", row.id);
        assert_ne!(row.obtained, Obtained::Stated, "{}: not the user's", row.id);
    }
}

#[test]
fn the_data_file_has_no_row_twice() -> Outcome {
    let ids: BTreeSet<String> = records(CRATE_ROWS)?.into_iter().map(|r| r["id"].clone()).collect();
    assert_eq!(ids.len(), 210);
    Ok(())
}

/// Source: molar masses of `chemicals` 1.5.2 (the library's own come from `periodictable` 2.1.0).
#[test]
fn salt_factors_agree_with_a_second_library() -> Outcome {
    let rows = records(include_str!("../data/limits/factors.csv"))?;
    for want in &rows {
        let (cas, form) = (want["form_cas"].parse()?, want["counted_as"].parse()?);
        let got = Conversion::of(cas, form).and_then(Conversion::grams_per_gram).ok_or("no conversion")?;
        let factor: f64 = want["grams_per_gram"].parse()?;
        assert!((got / factor - 1.0).abs() < 2e-4, "{cas} as {form}: got {got}, want {factor}");
    }
    let fixed = Conversion::all().iter().filter(|known| known.grams_per_gram().is_some());
    assert_eq!(rows.len(), fixed.count());
    Ok(())
}

/// Source: entry 9a itself gives 2.0 % as free base or 3.6 % as sulfate (Regulation (EC) No 1223/2009, Annex III); the
/// notes on the table work out 2.0 x 220.25 / 122.17 = 3.61.
#[test]
fn the_two_figures_of_entry_9a_agree_within_their_digits() -> Outcome {
    let to_sulfate = Conversion::of("95-70-5".parse()?, foilwork::mix::Form::Sulfate);
    let to_sulfate = to_sulfate.and_then(Conversion::grams_per_gram).ok_or("no conversion")?;
    assert!((2.0 * to_sulfate - 3.61).abs() < 0.005);
    Ok(())
}
