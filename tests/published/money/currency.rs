use foilwork::money::Currency;

/// Source: ISO 4217 table A.1 of 2026-01-01 (SIX, the maintenance agency), as the Python package iso4217 distributes it.
const TABLE: &str = include_str!("../../data/money/iso4217.csv");

#[test]
fn every_current_code_has_the_number_and_the_minor_unit_of_the_standard() {
    let mut reader = csv::Reader::from_reader(TABLE.as_bytes());
    let (mut with_minor_unit, mut without) = (0, 0);
    for record in reader.records() {
        let record = record.unwrap();
        let (code, number, digits) = (&record[0], &record[1], &record[2]);
        match digits.parse::<u32>() {
            Ok(digits) => {
                let currency = Currency::from_code(code).unwrap_or_else(|error| panic!("{code}: {error}"));
                assert_eq!(currency.exponent(), digits, "{code}");
                assert_eq!(format!("{:03}", currency.numeric()), number, "{code}");
                with_minor_unit += 1;
            }
            Err(_) => {
                assert_eq!(digits, "N.A.", "{code}");
                assert!(Currency::from_code(code).is_err(), "{code} has no minor unit");
                without += 1;
            }
        }
    }
    assert_eq!((with_minor_unit, without), (165, 13));
}
