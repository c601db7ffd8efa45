use super::rows;
use foilwork::{
    peroxide::{Conditions, MolarVolume, PreDilution, Titration, convert_to, permanganate},
    quantity::{AmountConcentration, MassConcentration, Normality, OxygenVolumes, Volume},
    source::Interval,
};

fn ml(value: f64) -> Interval<Volume> {
    Interval::exact(Volume::from_ml(value).unwrap())
}

fn titrant(mol_per_l: f64) -> Interval<AmountConcentration> {
    Interval::exact(AmountConcentration::from_mol_per_l(mol_per_l).unwrap())
}

/// The strength found with one mL of titrant on one mL of sample.
fn one_ml(titrant: Interval<AmountConcentration>) -> AmountConcentration {
    Titration { titrant, aliquot: ml(1.0), dilution: None }.strength(ml(1.0)).unwrap().best()
}

/// Source: W45, British, Indian and US pharmacopoeias: 1 mL of 0.02 mol/L permanganate is 1.701 mg of peroxide.
/// Tolerance: half the last figure; the pharmacopoeias have M = 34.01.
#[test]
fn a_millilitre_of_permanganate_in_milligrams() {
    let found: MassConcentration = convert_to(one_ml(titrant(0.02)), &Conditions::default()).unwrap();
    assert!((found.g_per_l() - 1.701).abs() < 0.0005, "{found}"); // mg in a mL is g in a L
    // One retrieved reagent text prints 0.01700 g for a mL of 0.1 N: ten times too much, a misprint.
    let by_normality = permanganate(Normality::from_eq_per_l(0.1).unwrap());
    assert_eq!(by_normality.mol_per_l(), 0.02);
    assert!((found.g_per_l() - 17.00).abs() > 15.0);
}

/// Source: W46, British Pharmacopoeia: or 0.56 mL of oxygen; at 1 bar it would be 0.57.
#[test]
fn a_millilitre_of_permanganate_in_millilitres_of_oxygen() {
    let volumes = |molar_volume| -> f64 {
        let at = Conditions::default().with_molar_volume(molar_volume);
        let found: OxygenVolumes = convert_to(one_ml(titrant(0.02)), &at).unwrap();
        found.volumes()
    };
    assert!((volumes(MolarVolume::IdealAtm) - 0.56).abs() < 0.005);
    assert!((volumes(MolarVolume::IdealBar) - 0.56).abs() > 0.005);
}

/// Source: W47, Reichert, McNeight & Rudel, Ind. Eng. Chem. Anal. Ed. 11 (1939) 194: 0.1786 N, so that 1 mL on a 1 mL
/// sample is one volume (the end of the sentence is inferred).
#[test]
fn an_industrial_titrant_that_reads_in_volumes() {
    let titrant = Interval::exact(permanganate(Normality::from_eq_per_l(0.1786).unwrap()));
    let found: OxygenVolumes = convert_to(one_ml(titrant), &Conditions::default()).unwrap();
    assert!((found.volumes() - 1.0).abs() < 0.001, "{found}");
}

/// Source: W43 and W44, French baccalaureate ST2S 2013: 0.790 g of permanganate (M = 158) in 250 mL, then 12.0 mL of it
/// for 10.0 mL of a tenfold dilution. The relation is retrieved; the last number is arithmetic of the reference.
#[test]
fn a_baccalaureate_titration() {
    let concentration = 0.790 / 158.0 / 0.250;
    assert!((concentration - 0.0200_f64).abs() < 0.00005);
    let titration = Titration { titrant: titrant(concentration), aliquot: ml(10.0), dilution: None };
    let diluted = titration.strength(ml(12.0)).unwrap().best();
    assert!((diluted.mol_per_l() - 0.060).abs() < 0.0005, "{diluted}");
    let dilution = Some(PreDilution { taken: ml(10.0), made_up_to: ml(100.0) });
    let bottle = Titration { dilution, ..titration }.strength(ml(12.0)).unwrap().best();
    assert!((bottle.mol_per_l() - 0.60).abs() < 0.005, "{bottle}");
    let volumes: OxygenVolumes = convert_to(bottle, &Conditions::default()).unwrap();
    assert!((volumes.volumes() - 6.7).abs() < 0.05, "{volumes}");
}

/// Source: W42, an instrument manual: 11.8 mL of 0.1 N on 20 mL is 1003 mg/L, with 17 g per equivalent.
#[test]
fn an_instrument_manual() {
    let titrant = Interval::exact(permanganate(Normality::from_eq_per_l(0.1).unwrap()));
    let found = Titration { titrant, aliquot: ml(20.0), dilution: None }.strength(ml(11.8)).unwrap().best();
    let found: MassConcentration = convert_to(found, &Conditions::default()).unwrap();
    assert!((1000.0 * found.g_per_l() - 1003.0).abs() < 1.0, "{found}");
}

/// The rows above are those of the file, with its answers.
#[test]
fn the_rows_are_still_in_the_file() {
    let file = rows(include_str!("../../data/peroxide/worked_examples.csv"));
    for (id, want) in
        [("W42", "1003"), ("W43", "0.0200"), ("W44", "0.060"), ("W45", "1.701"), ("W46", "0.56"), ("W47", "1")]
    {
        assert_eq!(file.iter().find(|row| row["id"] == id).unwrap()["stated_answer"], want, "{id}");
    }
}
