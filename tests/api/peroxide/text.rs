use foilwork::{
    peroxide::{MolarVolume, ParseUnitError, StatedStrength, Strength, StrengthUnit},
    quantity::Temperature,
};
use rstest::rstest;

#[rstest]
#[case("6 % w/w", "6 % w/w")]
#[case("6%w/w", "6 % w/w")]
#[case("6 % w/v", "6 % w/v")]
#[case("60 g/L", "6 % w/v")]
#[case("19.8 volumes", "19.8 volumes")]
#[case("19.8 oxygen volumes", "19.8 volumes")]
#[case("20 vol label", "20 vol label")]
#[case(" 20vol ", "20 vol label")]
#[case("20 vol.", "20 vol label")]
#[case("20V", "20 vol label")]
#[case("20 Vol", "20 vol label")]
#[case("20 volume", "20 vol label")]
#[case("6.5 vol", "6.5 vol label")]
#[case("13 vol", "13 vol label")]
#[case("20 volumes", "20 volumes")]
fn a_stated_strength_reads_and_prints(#[case] text: &str, #[case] printed: &str) {
    let stated: StatedStrength = text.parse().unwrap();
    assert_eq!(stated.to_string(), printed);
    assert_eq!(printed.parse::<StatedStrength>().unwrap(), stated);
}

#[rstest]
#[case("6 % w/w", 6.0, 6.0, 6.0)]
// The handbook's 1.0204 g/mL at 6 % and 18 C, less 0.0009 for 5.89 % and 20 C: 6 / 1.0195 = 5.885, within 0.002.
#[case("6 % w/v", 5.88, 5.885, 5.89)]
// The label spans all readings: as 20 true oxygen volumes it is 20 x 34.014/11.207 = 60.7 g/L, 60.7/1.0197 = 5.95 % w/w.
#[case("20 vol label", 5.88, 6.0, 6.0)]
// Below about 13 vol that reading is the strongest: 10 x 34.014/11.207 = 30.35 g/L, and 30.35/1.0092 = 3.007 % w/w.
#[case("10 vol label", 2.97, 3.0, 3.008)]
// By the convention of the trade, 0.3 N percent: 6.5 vol is 1.95 %, and 6.5 x 3.0351/1.0053 = 1.962 as oxygen volumes.
#[case("6.5 vol", 1.94, 1.95, 1.962)]
fn a_stated_strength_as_mass_fraction(#[case] text: &str, #[case] low: f64, #[case] best: f64, #[case] high: f64) {
    let found = text.parse::<StatedStrength>().unwrap().mass_fraction(Temperature::REFERENCE).unwrap();
    assert!((found.low().ww_percent() - low).abs() < 0.006, "{}", found.low());
    assert!((found.best().ww_percent() - best).abs() < 0.0025, "{}", found.best());
    assert!((found.high().ww_percent() - high).abs() < 0.006, "{}", found.high());
}

/// A label in vol is no unit: it stands for one of several strengths.
#[rstest]
fn vol_alone_is_no_unit(#[values("vol", "Vol.", "volume")] text: &str) {
    assert_eq!(text.parse::<StrengthUnit>(), Err(ParseUnitError::BareVol));
}

#[test]
fn units_and_molar_volumes_round_trip_as_text() {
    for &unit in StrengthUnit::ALL {
        assert_eq!(unit.to_string().parse::<StrengthUnit>().unwrap(), unit);
        let strength = Strength::of(1.5, unit).unwrap();
        assert_eq!(strength.to_string().parse::<Strength>().unwrap(), strength);
    }
    for &convention in MolarVolume::ALL {
        assert_eq!(convention.to_string().parse::<MolarVolume>().unwrap(), convention);
    }
}

/// The spellings of the trade and of chemistry, without regard to spaces; symbols of one letter keep their case.
#[rstest]
#[case(StrengthUnit::WwPercent, &["%w/w", "w/w", "ww", "%m/m", "m/m", "% W/W", " w / w "])]
#[case(StrengthUnit::WvPercent, &["%w/v", "w/v", "wv", "%m/v", "m/v", "% W/V"])]
#[case(StrengthUnit::GPerL, &["g/L", "g/l", "G / L"])]
#[case(StrengthUnit::MolPerL, &["mol/L", "mol/l", "Mol / L", "M"])]
#[case(StrengthUnit::MolPerKg, &["mol/kg", "MOL/KG", "mol / kg"])]
#[case(StrengthUnit::EqPerL, &["N", "eq/L", "eq/l", " N "])]
#[case(StrengthUnit::ActiveOxygenPercent, &["% active oxygen", "%activeoxygen", "active oxygen", "Active Oxygen"])]
#[case(StrengthUnit::Volumes, &["volumes", "Volumes", "oxygen volumes", "OxygenVolumes"])]
fn a_unit_has_many_spellings(#[case] unit: StrengthUnit, #[case] spellings: &[&str]) {
    for text in spellings {
        assert_eq!(text.parse::<StrengthUnit>(), Ok(unit), "{text}");
    }
}

#[test]
fn a_spelling_that_hides_something_is_no_unit() {
    for text in ["%", "percent", " % ", "Percent"] {
        assert_eq!(text.parse::<StrengthUnit>(), Err(ParseUnitError::BarePercent), "{text}");
    }
    for text in ["n", "m", "", "mol", "l"] {
        assert!(matches!(text.parse::<StrengthUnit>(), Err(ParseUnitError::Unknown(_))), "{text}");
    }
    // Signs belong to the number, and what is left is the unit.
    assert_eq!("+6 % w/w".parse::<Strength>().unwrap(), Strength::of(6.0, StrengthUnit::WwPercent).unwrap());
    assert!("-6 % w/w".parse::<Strength>().unwrap_err().to_string().contains("-6"));
    assert!(
        "6 mol/L".parse::<StatedStrength>().unwrap_err().to_string().starts_with("a bottle states its strength in")
    );
}
