//! The chart file: what is read, and what each mistake says.

use foilwork::{
    colour::{Chart, Hue},
    quantity::{Mass, MassFraction},
};
use rstest::rstest;
use rust_decimal::Decimal;

const DEMO: &str = include_str!("../../../examples/juniper_and_tide_shades.toml");

#[test]
fn the_demo_chart_is_read() -> Result<(), Box<dyn std::error::Error>> {
    let chart = Chart::from_toml(DEMO)?;
    assert_eq!(chart.name(), "Juniper & Tide demo shades (invented)");
    assert_eq!((chart.currency(), chart.shades().count()), (Some("EUR"), 12));
    let (shade, facts) = &chart.entries()[2];
    assert_eq!((shade.code(), shade.level().number(), shade.tone().main_hue()), ("9-7", 9.0, Some(Hue::Violet)));
    assert_eq!(facts.pack, Some(Mass::from_g(60.0)?));
    assert_eq!(facts.price, Some(Decimal::new(840, 2)));
    assert_eq!(facts.developer_parts, Some(Decimal::TWO));
    assert_eq!(facts.developers, [MassFraction::from_percent_ww(1.5)?, MassFraction::from_percent_ww(3.0)?]);
    Ok(())
}

fn with(shade: &str) -> String {
    format!("name = \"x\"\ncurrency = \"EUR\"\n[digits]\n\"7\" = [\"violet\"]\n[[shade]]\n{shade}\n")
}

#[rstest]
#[case::level(
    "code = \"a\"\nlevel = 13\ntones = []",
    "line 7: shade \"a\": invalid level (got 13): must be from 1 (black) to 12 (the lightest of the scales that run beyond 10)"
)]
#[case::hue(
    "code = \"a\"\nlevel = 9\ntones = [\"violett\"]",
    "line 8: shade \"a\": unknown hue \"violett\": give one of red, red-orange, orange, yellow-orange, yellow, yellow-green, green, blue-green, blue, blue-violet, violet, red-violet (did you mean violet?)"
)]
#[case::digit(
    "code = \"a\"\nlevel = 9\ntone_digits = \"8\"",
    "line 8: shade \"a\": tone digit '8' has no meaning in this chart: add it under [digits], for example 8 = [\"violet\"] (known: 7)"
)]
#[case::no_tone(
    "code = \"a\"\nlevel = 9",
    "line 6: shade \"a\": give the tone once: either tones = [\"violet\"] or tone_digits = \"6\" (neither is given; neutral is tones = [])"
)]
#[case::two_tones(
    "code = \"a\"\nlevel = 9\ntones = []\ntone_digits = \"7\"",
    "line 9: shade \"a\": give the tone once: either tones = [\"violet\"] or tone_digits = \"6\" (both are given)"
)]
#[case::pack(
    "code = \"a\"\nlevel = 9\ntones = []\npack_g = -1",
    "line 9: shade \"a\": pack_g: invalid mass (got -1 g): must be from 0 to 1e9 g"
)]
#[case::empty_pack(
    "code = \"a\"\nlevel = 9\ntones = []\npack_g = 0",
    "line 9: shade \"a\": pack_g must be above 0 g (leave it out when it is not known)"
)]
#[case::price(
    "code = \"a\"\nlevel = 9\ntones = []\nprice = \"8,40\"",
    "line 9: shade \"a\": invalid price \"8,40\": write a decimal amount of at least 0 in quotes, for example \"8.40\""
)]
#[case::ratio(
    "code = \"a\"\nlevel = 9\ntones = []\nratio = \"1 to 2\"",
    "line 9: shade \"a\": invalid ratio \"1 to 2\": write parts of shade to parts of developer by mass, for example \"1:2\""
)]
#[case::developer(
    "code = \"a\"\nlevel = 9\ntones = []\ndeveloper_ww_percent = [120]",
    "line 9: shade \"a\": developer_ww_percent: invalid strength (got 120 % w/w): must be from 0 to 100 % w/w"
)]
#[case::strength(
    "code = \"a\"\nlevel = 9\ntones = []\nstrength_percent = 120",
    "line 9: shade \"a\": strength_percent: invalid share (got 120 %): must be from 0 to 100 %"
)]
#[case::code(
    "code = \" \"\nlevel = 9\ntones = []",
    "line 6: shade \"\": invalid shade code: it is empty (give the code printed on the tube)"
)]
#[case::twice(
    "code = \"a\"\nlevel = 9\ntones = []\n[[shade]]\ncode = \"a\"\nlevel = 8\ntones = []",
    "line 10: shade \"a\": the code is used twice (first on line 6): every shade needs its own code"
)]
#[case::missing("code = \"a\"\ntones = []", "line 5: missing field `level`")]
#[case::misspelt(
    "code = \"a\"\nlevel = 9\ntone = []",
    "line 8: unknown field `tone`, expected one of `code`, `level`, `tones`, `tone_digits`, `strength_percent`, `pack_g`, `price`, `ratio`, `developer_ww_percent`"
)]
fn each_mistake_names_line_shade_and_way_out(#[case] shade: &str, #[case] want: &str) {
    assert_eq!(Chart::from_toml(&with(shade)).map_err(|error| error.to_string()), Err(want.to_owned()));
}

#[rstest]
#[case::no_shades(
    "name = \"x\"\nshade = []",
    "the chart has no shades: add a [[shade]] table with code, level and tones"
)]
#[case::no_currency(
    "name = \"x\"\n[[shade]]\ncode = \"a\"\nlevel = 9\ntones = []\nprice = \"8\"",
    "line 6: shade \"a\": there is a price but the chart has no currency: add for example currency = \"EUR\" at the top"
)]
#[case::long_digit(
    "name = \"x\"\n[digits]\n\"77\" = []\n[[shade]]\ncode = \"a\"\nlevel = 9\ntones = []",
    "line 3: invalid tone digit \"77\" under [digits]: one character stands for one tone"
)]
fn mistakes_of_the_whole_file(#[case] text: &str, #[case] want: &str) {
    assert_eq!(Chart::from_toml(text).map_err(|error| error.to_string()), Err(want.to_owned()));
}
