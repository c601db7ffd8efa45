//! What is said in two ways is the same: TOML and JSON of one content, a column and the rule for each of its rows.
#![no_main]

use arbitrary::{Arbitrary, Unstructured};
use foilwork::{
    colour::{self, Difference, Lab, Level, ProductKind, White},
    column::{self, Cells, Coordinates, Triples},
    peroxide::{Conditions, KnownMass, Strength, StrengthUnit, blend_two, convert},
    quantity::{Mass, MassFraction, Temperature},
    reader::Format,
    service,
};
use foilwork_fuzz::change;
use libfuzzer_sys::{fuzz_mutator, fuzz_target, fuzzer_mutate};

/// An ordinary number, an edge of some range, or any bits.
#[derive(Debug, Clone, Copy)]
struct Number(f64);

impl<'a> Arbitrary<'a> for Number {
    fn arbitrary(bytes: &mut Unstructured<'a>) -> arbitrary::Result<Self> {
        const EDGES: [f64; 12] =
            [0.0, -0.0, 1.0, 10.0, 12.0, 70.0, 100.0, 2000.0, -1.0, f64::NAN, f64::INFINITY, f64::MIN_POSITIVE];
        Ok(Self(match bytes.int_in_range(0..=7_u8)? {
            0 => bytes.arbitrary()?,
            1 => *bytes.choose(&EDGES)?,
            2 => f64::from(bytes.arbitrary::<u32>()?) / 1e6,
            _ => f64::from(bytes.arbitrary::<u16>()?) / 500.0,
        }))
    }
}

#[derive(Debug, Arbitrary)]
enum Case {
    Strengths { values: Vec<Number>, from: u8, to: u8, celsius: Number },
    Blends { rows: Vec<[Number; 4]>, known: u8 },
    Levels { rows: Vec<[Number; 2]>, product: u8 },
    Colours { rows: Vec<[Number; 6]>, ten: bool },
}

fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    let by_word = if data.starts_with(b"f") && seed % 8 != 0 { change(data, size, max_size, (1, seed)) } else { None };
    by_word.unwrap_or_else(|| fuzzer_mutate(data, size, max_size))
});

// An `f` says that the rest is a file.
fuzz_target!(|data: &[u8]| {
    let Some((kind, rest)) = data.split_first() else { return };
    if *kind == b'f' {
        return std::str::from_utf8(rest).map_or((), files);
    }
    let Ok(case) = Unstructured::new(rest).arbitrary() else { return };
    match case {
        Case::Strengths { values, from, to, celsius } => strengths(&values, unit(from), unit(to), celsius),
        Case::Blends { rows, known } => blends(&rows, known),
        Case::Levels { rows, product } => {
            levels(&rows, ProductKind::ALL[usize::from(product) % ProductKind::ALL.len()]);
        }
        Case::Colours { rows, ten } => colours(&rows, if ten { White::D65TenDegree } else { White::D65TwoDegree }),
    }
});

fn unit(place: u8) -> StrengthUnit {
    StrengthUnit::ALL[usize::from(place) % StrengthUnit::ALL.len()]
}

fn column<const N: usize>(rows: &[[Number; N]], place: usize) -> Vec<f64> {
    rows.iter().map(|row| row[place].0).collect()
}

/// A row is the rule to the last bit, or refused by both.
fn same(got: f64, want: Option<f64>, of: &impl std::fmt::Debug) {
    match want {
        Some(want) => assert_eq!(got.to_bits(), want.to_bits(), "{of:?}: {got} instead of {want}"),
        None => assert!(got.is_nan(), "{of:?}: {got} where the rule refuses"),
    }
}

fn strengths(values: &[Number], from: StrengthUnit, to: StrengthUnit, Number(celsius): Number) {
    let Ok(temperature) = Temperature::from_celsius(celsius) else { return };
    let (at, plain) = (Conditions::at(temperature), values.iter().map(|value| value.0).collect::<Vec<_>>());
    let mut out = vec![1.0; plain.len()];
    if column::convert_strengths(&plain, from, to, &at, &mut out).is_err() {
        return;
    }
    for (value, got) in plain.iter().zip(out) {
        let want = Strength::of(*value, from).ok().and_then(|strength| convert(strength, to, &at).ok());
        same(got, want.map(|strength| strength.number()), &(value, from, to, celsius));
    }
}

fn blends(rows: &[[Number; 4]], known: u8) {
    let known = [KnownMass::Total, KnownMass::First, KnownMass::Second][usize::from(known) % 3];
    let columns = [0, 1, 2].map(|place| column(rows, place));
    let masses = column(rows, 3);
    let (mut first, mut second) = (vec![0.0; rows.len()], vec![0.0; rows.len()]);
    let strengths = columns.each_ref().map(|column| Cells::Each(column));
    let done = column::blends(strengths, known, Cells::Each(&masses), [&mut first, &mut second]);
    assert!(done.is_ok());
    for (row, (first, second)) in rows.iter().zip(first.into_iter().zip(second)) {
        let [one, other, target, mass] = row.map(|number| number.0);
        let [one, other, target] = [one, other, target].map(|value| MassFraction::from_ww_percent(value).ok());
        let mass = Mass::from_g(mass).ok();
        let blend = one.zip(other).zip(target.zip(mass));
        let blend = blend.and_then(|((one, other), (target, mass))| blend_two(one, other, target, known(mass)).ok());
        same(first, blend.as_ref().map(|blend| blend.first.g()), row);
        same(second, blend.map(|blend| blend.second.g()), row);
    }
}

fn levels(rows: &[[Number; 2]], product: ProductKind) {
    let (from, to) = (column(rows, 0), column(rows, 1));
    let (mut needed, mut reached) = (vec![0.0; rows.len()], vec![0.0; rows.len()]);
    assert!(column::lifts_needed(Cells::Each(&from), Cells::Each(&to), &mut needed).is_ok());
    assert!(column::result_levels(Cells::Each(&from), Cells::Each(&to), product, &mut reached).is_ok());
    for (row, (needed, reached)) in rows.iter().zip(needed.into_iter().zip(reached)) {
        let [from, to] = row.map(|number| Level::new(number.0).ok());
        let both = from.zip(to);
        same(needed, both.map(|(from, to)| colour::lift_needed(from, to).levels()), row);
        let result = both.and_then(|(from, to)| colour::result_level(from, to, product).ok());
        same(reached, result.map(|level| level.value.number()), row);
    }
}

fn colours(rows: &[[Number; 6]], white: White) {
    let lab = |row: &[Number; 6], from: usize| Lab::new(row[from].0, row[from + 1].0, row[from + 2].0, white).ok();
    let [first, second] = [0, 3].map(|from| [0, 1, 2].map(|place| column(rows, from + place)));
    let [one, other] = [&first, &second].map(|of| of.each_ref().map(|column| Cells::Each(column)));
    let mut apart = vec![0.0; rows.len()];
    assert!(column::ciede2000(Triples::Columns(one), Triples::Columns(other), &mut apart).is_ok());
    for (row, apart) in rows.iter().zip(apart) {
        match lab(row, 0).zip(lab(row, 3)) {
            Some((one, other)) => {
                let want = Difference::between(one, other).expect("one white").ciede2000;
                assert!((apart - want).abs() < 1e-9, "{row:?}: {apart} instead of {want}");
            }
            None => assert!(apart.is_nan(), "{row:?}: {apart}"),
        }
    }
    let flat: Vec<f64> = rows.iter().flat_map(|row| [row[0].0, row[1].0, row[2].0]).collect();
    let mut xyz = vec![0.0; flat.len()];
    assert!(column::coordinates(Coordinates::LabToXyz, white, &flat, &mut xyz).is_ok());
    for (row, got) in rows.iter().zip(xyz.chunks(3)) {
        match lab(row, 0) {
            Some(lab) => {
                let close = got.iter().zip(lab.xyz().to_array()).all(|(got, want)| (got - want).abs() < 1e-12);
                assert!(close, "{row:?}: {got:?}");
            }
            None => assert!(got.iter().all(|value| value.is_nan()), "{row:?}: {got:?}"),
        }
    }
}

/// A content says the same in either language, or can be read in neither.
fn files(text: &str) {
    let value = if text.trim_start().starts_with('{') {
        serde_json::from_str(text).ok()
    } else {
        text.parse().ok().and_then(|table| json(toml::Value::Table(table)))
    };
    let Some(value) = value else { return };
    // TOML has no word for null.
    let Ok(toml) = toml::to_string(&value) else { return };
    match (service::parse(&toml, Format::Toml), service::parse(&value.to_string(), Format::Json)) {
        (Ok(one), Ok(two)) => assert_eq!(one, two),
        (Err(_), Err(_)) => {}
        (one, two) => panic!("{:?} and {:?} of {value}", one.err(), two.err()),
    }
}

/// The same content; none where it holds a number that JSON has no word for.
fn json(value: toml::Value) -> Option<serde_json::Value> {
    Some(match value {
        toml::Value::Boolean(flag) => flag.into(),
        toml::Value::Integer(whole) => whole.into(),
        toml::Value::Float(number) if !number.is_finite() => return None,
        toml::Value::Float(number) => number.into(),
        toml::Value::String(text) => text.into(),
        toml::Value::Datetime(moment) => moment.to_string().into(),
        toml::Value::Array(items) => items.into_iter().map(json).collect::<Option<_>>()?,
        toml::Value::Table(fields) => {
            let fields = fields.into_iter().map(|(key, value)| Some((key, json(value)?)));
            serde_json::Value::Object(fields.collect::<Option<_>>()?)
        }
    })
}
