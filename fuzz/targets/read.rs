//! Every reader of a text: the first byte chooses it. Nothing panics, and what was read is read again from what is printed.
#![no_main]

use foilwork::{
    business, colour, history, lift, limits, mix, money, peroxide, reader::Format, record, service, shop, workbook,
};
use foilwork_fuzz::{change, reads_back};
use libfuzzer_sys::{fuzz_mutator, fuzz_target, fuzzer_mutate};

fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    let by_word = if seed % 2 == 0 { change(data, size, max_size, (1, seed)) } else { None };
    by_word.unwrap_or_else(|| fuzzer_mutate(data, size, max_size))
});

fuzz_target!(|data: &[u8]| {
    let Some((reader, bytes)) = data.split_first() else { return };
    if *reader == b'x' {
        let _ = workbook::list_in_workbook(bytes);
        return;
    }
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let format = if text.trim_start().starts_with('{') { Format::Json } else { Format::Toml };
    let Ok(euro) = money::Currency::from_code("EUR") else { return };
    match reader {
        b's' => {
            let _ = service::parse(text, format);
        }
        b'h' => {
            let _ = shop::parse_shop(text, format).map(|file| shop::Shop::new(&file));
        }
        b'l' => {
            let _ = business::list::parse_csv(text, euro);
        }
        b'j' => {
            let _ = business::list::parse_json(text, euro);
        }
        b'q' => {
            let _ = business::read_cost_ranges(text, euro);
        }
        b't' => {
            if let Ok(table) = limits::Table::from_csv("house", text) {
                assert!(!table.listing().to_string().is_empty());
            }
        }
        b'b' => {
            let book = lift::read_strand_book(text);
            let again: String = book.readings.iter().map(|reading| lift::strand_line(Some(reading))).collect();
            assert_eq!(lift::read_strand_book(&(lift::strand_line(None) + &again)).readings, book.readings);
        }
        b'o' => {
            let log = record::read_log(text);
            let again: String = log.entries.iter().map(record::log_line).collect();
            assert_eq!(record::read_log(&again).entries, log.entries);
            let _ = record::instructions(&record::replay(&log.entries));
        }
        b'k' | b'c' => {
            let kept = if *reader == b'k' { history::read_records(text) } else { history::read_records_csv(text) };
            let again: String = kept.records.iter().map(history::record_line).collect();
            assert_eq!(history::read_records(&again).records, kept.records);
            let table = history::records_csv(&kept.records);
            assert_eq!(history::read_records_csv(&table).records, kept.records);
            let _ = (history::lessons(&kept.records), history::strand_readings(&kept.records));
            for by in history::GroupBy::ALL {
                let _ = history::summarise(&kept.records, *by);
            }
        }
        _ => {
            reads_back::<mix::Recipe>(text);
            reads_back::<mix::Ratio>(text);
            reads_back::<peroxide::StatedStrength>(text);
            reads_back::<colour::Level>(text);
            reads_back::<mix::Cas>(text);
            if let Ok(money) = money::Money::parse(text, euro) {
                assert_eq!(money::Money::parse(&money.to_string().replace(" EUR", ""), euro), Ok(money));
            }
            let _ = (text.parse::<colour::SeenPigment>(), text.parse::<colour::Lab>(), text.parse::<colour::Srgb>());
            let _ = text.parse::<service::SeenLevel>();
        }
    }
});
