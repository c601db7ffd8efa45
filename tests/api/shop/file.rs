//! The shop file: every mistake with its line, its field and the way out.

use foilwork::{reader::Format, shop};
use rstest::rstest;

fn with(shade: &str) -> String {
    format!("currency = \"EUR\"\n[digits]\n7 = [\"violet\"]\n[[shade]]\nclass = \"demi\"\nratio = \"1:2\"\n{shade}\n")
}

fn problems(text: &str) -> String {
    shop::parse_shop(text, Format::Toml).unwrap_err().to_string()
}

#[rstest]
#[case::level("code = \"a\"\nlevel = 13", "line 8: shade[1].level: 13 levels is out of range: give 1 to 12 levels")]
#[case::hue(
    "code = \"a\"\nlevel = 9\ntones = [\"violett\"]",
    "line 9: shade[1].tones[1]: unknown hue \"violett\": give one of red, red-orange, orange, yellow-orange, yellow, yellow-green, green, blue-green, blue, blue-violet, violet, red-violet (did you mean violet?)"
)]
#[case::digit(
    "code = \"a\"\nlevel = 9\ntone_digits = \"78\"",
    "line 9: shade[1].tone_digits: \"8\" has no meaning in this shop: add it under `digits`, for example 8 = [\"violet\"] (known: 7)"
)]
#[case::two_tones(
    "code = \"a\"\nlevel = 9\ntones = [\"red\"]\ntone_digits = \"7\"",
    "line 10: shade[1]: both `tones` and `tone_digits` are given: keep one of them"
)]
#[case::pack(
    "code = \"a\"\nlevel = 9\npack_g = -1",
    "line 9: shade[1].pack_g: -1 g is out of range: give 1 to 100000 g"
)]
#[case::in_hand(
    "code = \"a\"\nlevel = 9\nin_hand_g = -1",
    "line 9: shade[1].in_hand_g: -1 g is out of range: give 0 to 1000000 g"
)]
#[case::price(
    "code = \"a\"\nlevel = 9\npack_g = 60\nprice = \"8,40\"",
    "line 10: shade[1].price: \"8,40\" is not an amount: give digits with a point, for example \"12.50\""
)]
#[case::no_pack(
    "code = \"a\"\nlevel = 9\nprice = \"8.40\"",
    "line 4: shade[1].pack_g: missing: a price needs the mass of the pack it buys"
)]
#[case::developer(
    "code = \"a\"\nlevel = 9\nstrongest_developer_ww_percent = 120",
    "line 9: shade[1].strongest_developer_ww_percent: 120 % w/w is out of range: give 0 to 15 % w/w"
)]
#[case::deposit(
    "code = \"a\"\nlevel = 9\ndeposit_percent = 120",
    "line 9: shade[1].deposit_percent: 120 % is out of range: give 0 to 100 %"
)]
#[case::twice(
    "code = \"a\"\nlevel = 9\n[[shade]]\ncode = \"a\"\nlevel = 8\nclass = \"semi\"",
    "line 10: shade[2].code: \"a\" is already taken in line 7: give each its own code"
)]
#[case::missing("code = \"a\"", "line 4: shade[1].level: missing: add it (Its level)")]
#[case::misspelt("code = \"a\"\nlevel = 9\ntone = []", "line 9: shade[1].tone: unknown field: did you mean `tones`?")]
#[case::counts_from(
    "code = \"a\"\nlevel = 9\nlongest_counts_from = \"rinse\"",
    "line 9: shade[1].longest_counts_from: \"rinse\" is not one of the choices: give first-strand, end-of-application"
)]
#[case::cas(
    "code = \"a\"\nlevel = 9\ncomposition = [{ substance = \"x\", cas = \"7722-48-1\", ww_percent = 1 }]",
    "line 9: shade[1].composition[1].cas: invalid CAS number (got \"7722-48-1\"): its check digit should be 7 (look for a mistyped digit)"
)]
#[case::bound_out_of_range(
    "code = \"a\"\nlevel = 9\ncomposition = [{ substance = \"x\", ww_percent = { low = 2, best = 3, high = 130 } }]",
    "line 9: shade[1].composition[1].ww_percent.high: 130 % w/w is out of range: give 0 to 100 % w/w"
)]
#[case::bound_missing(
    "code = \"a\"\nlevel = 9\ncomposition = [{ substance = \"x\", ww_percent = { low = 2, best = 3 } }]",
    "line 9: shade[1].composition[1].ww_percent.high: missing: add it (The most it can be)"
)]
#[case::bound_out_of_place(
    "code = \"a\"\nlevel = 9\ncomposition = [{ substance = \"x\", ww_percent = 1, low_ww_percent = 2 }]",
    "line 9: shade[1].composition[1].low_ww_percent: unknown field: did you mean `ww_percent`?"
)]
#[case::neither_number_nor_bounds(
    "code = \"a\"\nlevel = 9\ncomposition = [{ substance = \"x\", ww_percent = \"a few\" }]",
    "line 9: shade[1].composition[1].ww_percent: \"a few\" where a number in % w/w, or { low, best, high } belongs: give 0 to 100 % w/w"
)]
#[case::bounds(
    "code = \"a\"\nlevel = 9\ncomposition = [{ substance = \"x\", ww_percent = { low = 2, best = 1, high = 3 } }]",
    "line 9: shade[1].composition[1].ww_percent: invalid interval: the bounds must enclose the best estimate (give low <= best <= high)"
)]
fn each_mistake_of_a_shade(#[case] shade: &str, #[case] want: &str) {
    assert_eq!(problems(&with(shade)), want);
}

#[rstest]
#[case::no_currency(
    "[[diluent]]\nname = \"base\"\npack_g = 500\nprice = \"6.00\"",
    "line 4: currency: missing: there are prices, so say in which currency"
)]
#[case::long_digit("[digits]\n77 = []", "line 2: digits.77: is no digit: one character stands for one tone")]
#[case::digit_hue(
    "[digits]\n7 = [\"lilac\"]",
    "line 2: digits.7[1]: unknown hue \"lilac\": give one of red, red-orange, orange, yellow-orange, yellow, yellow-green, green, blue-green, blue, blue-violet, violet, red-violet"
)]
#[case::two_targets(
    "[terms]\nmargin_percent = 20\nmarkup_percent = 30",
    "line 3: terms: both `margin_percent` and `markup_percent` are given: keep one of them"
)]
#[case::half_an_overhead(
    "currency = \"EUR\"\n[terms]\noverhead = \"48000\"",
    "line 3: terms.chairs: missing: `overhead` is for all of them\nline 3: terms.productive_h_per_chair: missing: `overhead` is for a period"
)]
#[case::more_worked_than_paid(
    "currency = \"EUR\"\n[terms]\nwage_per_h = \"16.00\"\npaid_h = 30\nproductive_h = 38",
    "line 5: terms.productive_h: invalid productive time (got 2280.000 min): must be more than nothing and at most the paid time of the same period"
)]
#[case::ending(
    "currency = \"EUR\"\n[terms]\nprice_ending = \"0.90\"",
    "line 3: terms.price_step: missing: `price_ending` needs the step it repeats in"
)]
#[case::too_fine(
    "currency = \"JPY\"\n[terms]\nwage_per_h = \"1750.50\"",
    "line 3: terms.wage_per_h: \"1750.50\" is between two amounts of JPY, which has no decimals: round it"
)]
#[case::clash(
    "[[additive]]\nname = \"base\"\ndose_percent = 3\n[[diluent]]\nname = \"base\"",
    "line 5: diluent[1].name: \"base\" is already the name of an additive: rename one of them"
)]
fn mistakes_of_the_whole_file(#[case] text: &str, #[case] want: &str) {
    assert_eq!(problems(text), want);
}

/// The two forms of one shop, and the same again from what was read.
#[test]
fn toml_and_json_are_two_forms_of_one_shop() {
    let file = shop::parse_shop(include_str!("../../../examples/juniper_and_tide.toml"), Format::Toml).unwrap();
    let json = serde_json::to_string(&file).unwrap();
    assert_eq!(shop::parse_shop(&json, Format::Json).unwrap(), file);
    let toml = toml::Value::try_from(&file).unwrap();
    assert_eq!(toml.try_into::<shop::shape::ShopFile>().unwrap(), file);
}

/// A number with its unit, with a decimal comma, and what only begins like a number: each gets its own way out.
#[rstest]
#[case::unit("30 g", "30 g is more than a number: write 30, the name of the field says the unit")]
#[case::joined("30g", "30g is more than a number: write 30, the name of the field says the unit")]
#[case::unit_of_more("30 gram", "30 gram is more than a number: write 30, the name of the field says the unit")]
#[case::percent("30 % w/w", "30 % w/w is more than a number: write 30, the name of the field says the unit")]
#[case::comma("30,5", "30,5 has a comma: write 30.5")]
#[case::thousands("1,200", "1,200 has a comma: write 1.200 or 1200, whichever it is")]
#[case::time(
    "10am",
    "10am is neither a number nor a date: write minutes as 25, a date as 2026-11-25T10:00, text in quotes"
)]
#[case::minutes(
    "0:25",
    "0:25 is neither a number nor a date: write minutes as 25, a date as 2026-11-25T10:00, text in quotes"
)]
#[case::fraction(
    "5 1/2",
    "5 1/2 is neither a number nor a date: write minutes as 25, a date as 2026-11-25T10:00, text in quotes"
)]
fn what_only_begins_like_a_number_is_not_called_a_unit(#[case] value: &str, #[case] want: &str) {
    let said = problems(&with(&format!("code = \"a\"\nlevel = 9\npack_g = {value}")));
    assert!(said.contains(want), "{said}");
}
