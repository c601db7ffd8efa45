//! Bad input: status 2, nothing printed, and the exact text with the way out.

use super::foilwork;
use rstest::rstest;
use std::{
    io::Write,
    process::{Command, Stdio},
};

#[track_caller]
fn refused(args: &[&str], text: &str) {
    let output = foilwork(args);
    assert_eq!((output.status.code(), output.stdout), (Some(2), Vec::new()), "{args:?}");
    assert_eq!(String::from_utf8(output.stderr).unwrap(), format!("error: {text}\n"));
}

#[rstest]
#[case::a_label(
    "100 vol label",
    "3 % w/w",
    "100",
    "1",
    "--stocks: invalid trade label (got 100 vol label): must be from 1 to 60 vol (state a stronger solution in % w/w, % w/v or volumes)"
)]
#[case::total_with_a_comma(
    "12 % w/w",
    "3 % w/w",
    "60,5",
    "1",
    "--total: cannot read \"60,5\": write the number with a point, 60.5"
)]
#[case::total_in_words(
    "12 % w/w",
    "3 % w/w",
    "much",
    "1",
    "--total: cannot read \"much\": write a mass in g, for example 60"
)]
#[case::no_unit(
    "12, 9",
    "3 % w/w",
    "100",
    "1",
    "--stocks: the strength 12 has no unit: write 12 % w/w, 12 % w/v, 12 volumes or 12 vol label"
)]
#[case::target(
    "12 % w/w",
    "3 %",
    "100",
    "1",
    "--targets: 3 % hides its basis: write 3 % w/w (g in 100 g), 3 % w/v (g in 100 mL), or 10 vol for the label of the trade"
)]
#[case::total("12 % w/w", "3 % w/w", "-1", "1", "--total: invalid mass (got -1 g): must be from 0 to 1e9 g")]
#[case::division(
    "12 % w/w",
    "3 % w/w",
    "100",
    "0",
    "invalid division of the scale (got 0 g): must be above 0 g, for example 0.1 g or 1 g"
)]
fn table(#[case] stocks: &str, #[case] targets: &str, #[case] total: &str, #[case] division: &str, #[case] text: &str) {
    refused(&["table", "--stocks", stocks, "--targets", targets, "--total", total, "--division", division], text);
}

#[rstest]
#[case::no_unit("0.02", "10", &["--titre", "12"], "--titrant \"0.02\" has no unit: write mol/L, or N for the normality")]
#[case::other_unit("0.02 g/L", "10", &["--titre", "12"], "--titrant: state the permanganate in mol/L or N, not in g/L")]
#[case::negative_tolerance("0.02+--0.01 N", "10", &["--titre", "12"], "--titrant \"0.02+--0.01 N\": the tolerance must be from 0 to the value itself")]
#[case::no_number("0.1 N", "ten", &["--titre", "12"], "--aliquot \"ten\": write a number, if known with its tolerance, for example 12.0 or 12.0+-0.03")]
#[case::litres("0.1 N", "10", &["--titre", "12 L"], "--titre \"12 L\": give the volume in mL, not in L")]
#[case::wide("0.1 N", "10", &["--titre", "12+-13"], "--titre \"12+-13\": the tolerance must be from 0 to the value itself")]
#[case::neither("0.1 N", "10", &[], "give --titre (what the burette showed) or --expect (a strength, for the titre to expect)")]
#[case::nothing("0.1 N", "0", &["--titre", "1"], "the aliquot may be zero: give more than its tolerance")]
#[case::thicker("0.1 N", "10", &["--titre", "1", "--taken", "100", "--made-up-to", "10"], "100 mL were taken and made up to 10 mL: the mark must not be below what was taken")]
#[case::bare_percent("0.1 N", "10", &["--expect", "6 %"], "--expect: 6 % hides its basis: write 6 % w/w (g in 100 g), 6 % w/v (g in 100 mL), or 20 vol for the label of the trade")]
fn titrate(#[case] titrant: &str, #[case] aliquot: &str, #[case] others: &[&str], #[case] text: &str) {
    refused(&[&["titrate", "--titrant", titrant, "--aliquot", aliquot], others].concat(), text);
}

#[rstest]
#[case::none(&[], "no bottles to blend: name a shop file, or give each bottle as --stock \"name=12 % w/w\"")]
#[case::out_of_reach(&["--stock", "3 % w/w", "--stock", "5 % w/w"], "cannot reach 6 % w/w: the strongest stock is 5 % w/w, so anything from 3 % w/w to 5 % w/w is reachable")]
#[case::too_little(&["--stock", "9 % w/w, 20 g", "--stock", "3 % w/w, 20 g"], "60 g are wanted and only 40 g are in hand: ask for less, or add a stock")]
#[case::twice(&["--stock", "9 % w/w", "--stock", "9 % w/w"], "two stocks are called \"9 % w/w\": give each bottle its own name, or add their amounts")]
#[case::kilograms(&["--stock", "a=9 % w/w, 3 kg"], "--stock \"a=9 % w/w, 3 kg\": \"3 kg\" is no amount: write for example 300 g")]
#[case::words(&["--stock", "a=9 % w/w, many"], "--stock \"a=9 % w/w, many\": cannot read \"many\": after the strength write what is in hand, 300 g, or the price, 9.90/kg")]
#[case::no_currency(&["--stock", "a=9 % w/w, 9.90/kg"], "there are prices but no currency: add --currency, or `currency = \"EUR\"` at the top of the shop file")]
#[case::price(&["--stock", "a=9 % w/w, 1 9/kg"], "--stock \"a=9 % w/w, 1 9/kg\": price \"1 9\" is not a decimal number: write digits with a point, for example 12.50")]
#[case::no_name(&["--stock", "=9 % w/w"], "--stock \"=9 % w/w\": give the bottle a name of 1 to 60 characters")]
#[case::objective(&["--stock", "9 % w/w", "--objective", "cheap"], "--objective: unknown objective \"cheap\": give one of least-cost, fewest-bottles, least-leftover")]
#[case::currency(&["--stock", "9 % w/w", "--currency", "ZZZ"], "unknown currency \"ZZZ\": give the three-letter code of ISO 4217 in capitals, for example EUR")]
fn blend(#[case] others: &[&str], #[case] text: &str) {
    refused(&[&["blend", "--target", "6 % w/w", "--total", "60"], others].concat(), text);
}

#[rstest]
#[case::field(
    "[[developer]]\nname = \"a\"\nstrenght = \"6 % w/w\"\nstrength_basis = \"label\"",
    "-: line 3: developer[1].strenght: unknown field: did you mean `strength`?"
)]
#[case::strength(
    "\n[[developer]]\nname = \"a\"\nstrength = \"6\"\nstrength_basis = \"label\"",
    "-: line 4: developer[1].strength: the strength 6 has no unit: write 6 % w/w, 6 % w/v, 6 volumes or 6 vol label"
)]
#[case::pack(
    "currency = \"EUR\"\n[[diluent]]\nname = \"a\"\nprice = \"3\"",
    "-: line 2: diluent[1].pack_g: missing: a price needs the mass of the pack it buys"
)]
#[case::empty_pack(
    "currency = \"EUR\"\n[[diluent]]\nname = \"a\"\nprice = \"3\"\npack_g = 0",
    "-: line 5: diluent[1].pack_g: 0 g is out of range: give 1 to 100000 g"
)]
#[case::currencies("currency = \"GBP\"", "- counts in GBP and --currency in EUR: all prices must be in one currency")]
fn shop_file(#[case] shelf: &str, #[case] text: &str) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_foilwork"))
        .args(["blend", "-", "--target", "6 % w/w", "--total", "60", "--currency", "EUR"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    child.stdin.take().unwrap().write_all(shelf.as_bytes()).unwrap();
    let output = child.wait_with_output().unwrap();
    assert_eq!((output.status.code(), output.stdout), (Some(2), Vec::new()));
    assert_eq!(String::from_utf8(output.stderr).unwrap(), format!("error: {text}\n"));
}

#[rstest]
#[case::neither(&["level", "--natural", "6"], "give --target (the level wanted) or --applied (the level of a permanent shade)")]
#[case::photograph(&["level", "--measured", "57, 5, 28", "--measured-with", "photograph"], "a photograph cannot be read as L*: photographs of hair read about 33 units too light (put a reference card in it and correct by it, or use a spectrophotometer)")]
#[case::too_light(&["level", "--measured", "90, 5, 28"], "no natural level has L* 90.0: the model runs from 18.6 (level 1) to 65.2 (level 12)")]
#[case::off_the_scale(&["level", "--natural", "13", "--target", "8"], "--natural: invalid level (got 13): must be from 1 (black) to 12 (the lightest of the scales that run beyond 10)")]
#[case::no_number(&["level", "--natural", "6", "--target", "eight"], "--target: invalid level (got \"eight\"): write a decimal number such as 7 or 6.5")]
#[case::coloured(&["level", "--natural", "6", "--applied", "8", "--coloured"], "--applied with --coloured: the mean of natural and applied level holds only for natural hair (leave one of them out)")]
#[case::swatch(&["swatch", "0"], "invalid level (got 0): must be from 1 (black) to 12 (the lightest of the scales that run beyond 10)")]
#[case::not_lightened(&["swatch", "8", "--from", "9"], "--from level 9 is not darker than level 8: nothing is lightened (leave --from out)")]
#[case::hue(&["swatch", "8", "--tone", "mauve"], "--tone: unknown hue \"mauve\": give one of red, red-orange, orange, yellow-orange, yellow, yellow-green, green, blue-green, blue, blue-violet, violet, red-violet")]
fn levels(#[case] args: &[&str], #[case] text: &str) {
    refused(args, text);
}

#[rstest]
#[case::darker("9", "5", &[], "--lifted level 5 is darker than --natural level 9: lifting makes it lighter (swap the two?)")]
#[case::shade("5", "9", &["--shades", "J9-fog"], "--shades: the shop has no shade \"J9-fog\" (write codes as the shop does)")]
#[case::count("5", "9", &["--most-shades", "0"], "invalid number of shades in a mix (got 0): must be from 1 to 4")]
#[case::bowl("5", "9", &["--bowl", "0.5"], "cannot weigh a bowl of 0.5 g on a scale with a division of 1 g: the bowl must be from 1 to 10000 whole divisions")]
fn toner(#[case] natural: &str, #[case] lifted: &str, #[case] others: &[&str], #[case] text: &str) {
    let args = ["toner", "juniper_and_tide.toml", "--natural", natural, "--lifted", lifted, "--target", "8"];
    refused(&[&args[..], others].concat(), text);
}

/// A file of another kind is named as what it is, in one line.
#[rstest]
#[case::service_as_shop(
    &["toner", "soft-gradient.toml", "--natural", "5", "--lifted", "9", "--target", "8"],
    "soft-gradient.toml is a service file, and a shop file is wanted here (`foilwork plan` reads it)"
)]
#[case::service_as_shop_of_json(
    &["blend", "lowlights.json", "--target", "6 % w/w", "--total", "60"],
    "lowlights.json is a service file, and a shop file is wanted here (`foilwork plan` reads it)"
)]
#[case::shop_as_service(
    &["plan", "juniper_and_tide.toml"],
    "juniper_and_tide.toml is a shop file, and a service file is wanted here (a service names it with `shop_file`; \
     `blend`, `toner` and `cost --shop` read it)"
)]
#[case::list_as_service(
    &["plan", "juniper_and_tide_services.csv"],
    "juniper_and_tide_services.csv is a list of services, and a service file is wanted here (`foilwork cost` reads it, with \
     `--shop`)"
)]
#[case::list_as_shop(
    &["cost", "juniper_and_tide_services.csv", "--shop", "juniper_and_tide_services.csv"],
    "juniper_and_tide_services.csv is a list of services, and a shop file is wanted here (`foilwork cost` reads it, with \
     `--shop`)"
)]
#[case::shop_as_list(
    &["cost", "juniper_and_tide.toml", "--shop", "juniper_and_tide.toml"],
    "juniper_and_tide.toml is a shop file, and a list of services is wanted here (a service names it with `shop_file`; \
     `blend`, `toner` and `cost --shop` read it)"
)]
#[case::list_as_quote(
    &["business", "quote", "juniper_and_tide_services.csv", "--shop", "juniper_and_tide.toml"],
    "juniper_and_tide_services.csv is a list of services, and a list of costs from-to is wanted here (`foilwork cost` reads \
     it, with `--shop`)"
)]
#[case::quote_as_list(
    &["cost", "juniper_and_tide_quote.csv", "--shop", "juniper_and_tide.toml"],
    "juniper_and_tide_quote.csv is a list of costs from-to, and a list of services is wanted here (`foilwork business quote` \
     reads it, with `--shop`)"
)]
#[case::schema_as_service(
    &["plan", "plan.schema.json"],
    "plan.schema.json is a JSON Schema, and a service file is wanted here (it is for editors)"
)]
fn a_file_of_another_kind(#[case] args: &[&str], #[case] complaint: &str) {
    refused(args, complaint);
}

#[rstest]
#[case::below_zero(&["convert", "-3 % w/w"], "invalid strength (got -3 % w/w): must be from 0 to 100 % w/w")]
#[case::comma(&["convert", "6,5 % w/w"], "cannot read \"6,5 % w/w\": write the number with a point, 6.5 % w/w")]
#[case::bare_percent(&["convert", "9 %"], "9 % hides its basis: write 9 % w/w (g in 100 g), 9 % w/v (g in 100 mL), or 30 vol for the label of the trade")]
#[case::no_gram(
    &["dilute", "--stock", "40 % w/w", "--target", "0.1 % w/w", "--total", "60 g"],
    "a part of 0.150 g rounds to nothing on a scale of 1 g: use a scale of 0.1 g or finer, or make more at once"
)]
fn strengths_and_parts(#[case] args: &[&str], #[case] text: &str) {
    refused(args, text);
}
