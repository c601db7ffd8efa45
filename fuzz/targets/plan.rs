//! From a service file to all that is made of it: text sheets, data, pages, pictures, workbook.
#![no_main]

use foilwork::{reader::Format, service, shop, shop::shape::ShopFile, workbook};
use foilwork_fuzz::{change, show_everything};
use libfuzzer_sys::{fuzz_mutator, fuzz_target, fuzzer_mutate};
use std::sync::LazyLock;

const SHOP: &str = include_str!("../../examples/juniper_and_tide.toml");

static STOCK: LazyLock<ShopFile> =
    LazyLock::new(|| shop::parse_shop(SHOP, Format::Toml).expect("the example is a valid shop file"));

fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    // Bytes changed at random are hardly ever a plan.
    let by_word = if seed % 8 == 0 { None } else { change(data, size, max_size, (0, seed)) };
    by_word.unwrap_or_else(|| fuzzer_mutate(data, size, max_size))
});

fuzz_target!(|text: &str| {
    let format = if text.trim_start().starts_with('{') { Format::Json } else { Format::Toml };
    let alone = service::parse(text, format);
    let Ok(file) = alone.or_else(|_| service::parse_with_shop(text, format, &STOCK)) else { return };
    let Ok(plan) = service::plan(&file) else { return };
    show_everything(&plan);
    assert!(workbook::plan_workbook(&plan).is_ok_and(|bytes| !bytes.is_empty()));
});
