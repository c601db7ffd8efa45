//! Every worked example of the reference whose answer a formula of foilwork gives, row by row from the file.
//!
//! The tolerance of a row is what its printed digits and its school constants (M = 34, 22.4 L) allow, stated beside it.

use super::{Row, rows};
use foilwork::{
    peroxide::{
        Conditions, KnownVolume, MolarVolume, SolutionDensity, Strength, StrengthUnit, convert, loss_rate, make_up,
        mix_volumes, strength_after, strength_after_make_up, time_until,
    },
    quantity::{
        AmountConcentration, Density, Duration, LossRate, MassConcentration, MassFraction, OxygenVolumes, Temperature,
        Volume,
    },
    source::Interval,
};
use rstest::rstest;

const EXAMPLES: &str = include_str!("../../data/peroxide/worked_examples.csv");
const TRADE: &str = include_str!("../../data/peroxide/trade_examples.csv");

fn row(id: &str) -> Row {
    let both = rows(EXAMPLES).into_iter().chain(rows(TRADE));
    let found: Vec<Row> = both.filter(|row| row["id"] == id).collect();
    assert_eq!(found.len(), 1, "{id}");
    found.into_iter().next().unwrap()
}

fn stated(id: &str) -> f64 {
    row(id)["stated_answer"].parse().unwrap()
}

fn near(id: &str, got: f64, tolerance: f64) {
    let want = stated(id);
    assert!((got - want).abs() <= tolerance, "{id}: got {got}, stated {want} +- {tolerance}");
}

fn school(value: f64, from: StrengthUnit, to: StrengthUnit) -> f64 {
    let conditions = Conditions::default().with_molar_volume(MolarVolume::Textbook);
    convert(Strength::of(value, from).unwrap(), to, &conditions).unwrap().number()
}

/// Rows that turn volumes into another unit with 22.4 L. Tolerance: a unit of the last printed figure (several sources
/// cut figures off) and 0.05 % for M = 34 against 34.014.
#[rstest]
#[case::w01("W01", 10.0, StrengthUnit::WvPercent, 0.001)]
#[case::w05("W05", 10.0, StrengthUnit::WvPercent, 0.01)]
#[case::w07("W07", 10.0, StrengthUnit::MolPerL, 0.01)]
#[case::w08("W08", 10.0, StrengthUnit::EqPerL, 0.01)]
#[case::w09("W09", 10.0, StrengthUnit::GPerL, 0.01)]
#[case::w10("W10", 10.0, StrengthUnit::WvPercent, 0.001)]
#[case::w11("W11", 10.0, StrengthUnit::MolPerL, 0.001)]
#[case::w12("W12", 10.0, StrengthUnit::EqPerL, 0.001)]
#[case::w13("W13", 11.2, StrengthUnit::GPerL, 0.5)]
#[case::w14("W14", 11.2, StrengthUnit::WvPercent, 0.05)]
#[case::w16_textbook("W16", 20.0, StrengthUnit::MolPerL, 0.001)]
#[case::w17("W17", 20.0, StrengthUnit::MolPerL, 0.001)]
#[case::w18("W18", 20.0, StrengthUnit::EqPerL, 0.001)]
#[case::w19("W19", 20.0, StrengthUnit::GPerL, 0.01)]
#[case::w20("W20", 20.0, StrengthUnit::WvPercent, 0.01)]
#[case::w40("W40", 110.0, StrengthUnit::MolPerL, 0.01)]
#[case::w41("W41", 10.0, StrengthUnit::MolPerL, 0.01)]
#[case::w55_textbook_22_4("W55", 10.0, StrengthUnit::GPerL, 0.01)]
#[case::trade_w016("W016", 10.0, StrengthUnit::WvPercent, 0.01)]
fn volumes_with_school_constants(
    #[case] id: &str,
    #[case] volumes: f64,
    #[case] unit: StrengthUnit,
    #[case] last: f64,
) {
    near(id, school(volumes, StrengthUnit::Volumes, unit), last + 0.0005 * stated(id));
}

/// W06 carries a cut figure (0.0303) on into a third: it is 0.2 % low, and foilwork does not reproduce it.
#[test]
fn an_error_carried_on_is_not_reproduced() {
    let got = school(10.0, StrengthUnit::Volumes, StrengthUnit::GPerL);
    assert!((got - stated("W06")).abs() > 0.05, "{got}");
    assert!((got - stated("W55")).abs() < 0.02, "{got}");
}

/// Rows that turn mol/L into volumes, under the convention each states.
#[rstest]
#[case::w15_1_atm("W15", 1.0, MolarVolume::Textbook, 0.05)]
#[case::w54_1_bar("W54", 1.0, MolarVolume::IdealBar, 0.006)]
#[case::w57_273_k_1_atm("W57", 8.9, MolarVolume::IdealAtm, 0.5)]
fn moles_to_volumes(#[case] id: &str, #[case] value: f64, #[case] molar_volume: MolarVolume, #[case] tolerance: f64) {
    let strength = Strength::of(value, StrengthUnit::MolPerL).unwrap();
    let conditions = Conditions::default().with_molar_volume(molar_volume);
    near(id, convert(strength, StrengthUnit::Volumes, &conditions).unwrap().number(), tolerance);
}

/// W56: the same textbook problem as W55 in a later printing, at 1 bar. The printed 29.9 is cut from 29.95.
#[test]
fn a_textbook_changed_its_standard_pressure() {
    let at = Conditions::default().with_molar_volume(MolarVolume::IdealBar);
    let ten = Strength::of(10.0, StrengthUnit::Volumes).unwrap();
    near("W56", convert(ten, StrengthUnit::GPerL, &at).unwrap().number(), 0.1);
    near("W55", convert(ten, StrengthUnit::GPerL, &Conditions::default()).unwrap().number(), 0.02);
}

/// W39: half of the moles of peroxide are moles of oxygen.
#[test]
fn oxygen_released_by_a_litre() {
    near("W39", school(110.0, StrengthUnit::Volumes, StrengthUnit::MolPerL) / 2.0, 0.005);
}

/// W32, W33: % w/w to mol/L with the density that the source measured. Tolerance: M = 34.0147 (W32), and its last figure.
#[rstest]
#[case::five_figures("W32", 50.0, 1.196_62, 17.5897 * 2.5e-5)]
#[case::three_figures("W33", 3.0, 1.01, 0.0005)]
fn percent_by_mass_to_molarity(#[case] id: &str, #[case] percent: f64, #[case] g_per_ml: f64, #[case] tolerance: f64) {
    let density = SolutionDensity::measured(Density::from_g_per_ml(g_per_ml).unwrap());
    let strength = Strength::of(percent, StrengthUnit::WwPercent).unwrap();
    let got = convert(strength, StrengthUnit::MolPerL, &Conditions::default().with_density(density)).unwrap();
    near(id, got.number(), tolerance);
}

fn ml(value: f64) -> Volume {
    Volume::from_ml(value).unwrap()
}

fn molar(value: f64) -> AmountConcentration {
    AmountConcentration::from_mol_per_l(value).unwrap()
}

/// Textbook rows (OpenStax, Chemistry 2e, molarity): a final concentration.
#[rstest]
#[case("W022", 2.04, 25.0, 500.0, 0.0005)]
#[case("W023", 5.00, 850.0, 1800.0, 0.005)]
fn made_up_to_a_mark(#[case] id: &str, #[case] stock: f64, #[case] taken: f64, #[case] total: f64, #[case] last: f64) {
    near(id, strength_after_make_up(molar(stock), ml(taken), ml(total)).unwrap().mol_per_l(), last);
}

/// Textbook rows (OpenStax, Chemistry 2e, molarity): a volume, in L.
#[test]
fn volumes_to_take_or_to_reach() {
    let stock = make_up(molar(1.59), molar(0.100), KnownVolume::Total(ml(5000.0))).unwrap().stock;
    near("W025", stock.ml() / 1000.0, 0.0005);
    let total = make_up(molar(1.88), molar(0.125), KnownVolume::Stock(ml(250.0))).unwrap().total;
    near("W026", total.ml() / 1000.0, 0.005);
    let total = make_up(molar(0.45), molar(0.12), KnownVolume::Stock(ml(11.0))).unwrap().total;
    assert!(row("W024")["stated_answer"].starts_with("0.041 L"));
    assert!((total.ml() / 1000.0 - 0.041).abs() < 0.0005, "{total}");
}

/// W30, W31: 100 mL of 30 % to 3 %, volumes additive. W51 (WHO hand rub, textbook or official): 417 mL of 3 % in 10 L.
#[test]
fn percent_by_volume_dilutions() {
    let wv = |percent| MassConcentration::from_wv_percent(percent).unwrap();
    let made = make_up(wv(30.0), wv(3.0), KnownVolume::Stock(ml(100.0))).unwrap();
    near("W30", made.total.ml(), 1e-9);
    near("W31", made.total.ml() - made.stock.ml(), 1e-9);
    near("W51", strength_after_make_up(wv(3.0), ml(417.0), ml(10_000.0)).unwrap().wv_percent(), 0.0005);
}

/// W008: 8.5 mL + 91.5 mL ignores the density of 35 % w/w, which makes it 0.6 % w/v too strong: not reproduced.
#[test]
fn a_dilution_that_ignores_density_is_not_reproduced() {
    assert!(row("W008")["comment"].contains("ignores density"));
    let [stock, target] = [35.0, 3.0].map(|percent| MassFraction::from_ww_percent(percent).unwrap());
    let made = foilwork::peroxide::dilute_volume(stock, target, ml(100.0), Temperature::REFERENCE).unwrap();
    assert!((made.stock.best().ml() - 8.5).abs() > 0.5, "{}", made.stock.best());
}

/// Trade rows W34 to W38 and W001: volume strengths mix by volume as if volumes added up. With densities and contraction
/// in, the sum rule holds to 1 % of the answer, which is what it is worth.
#[rstest]
#[case("W34", &[(40.0, 1.0), (0.0, 1.0)])]
#[case("W35", &[(50.0, 1.0), (20.0, 2.0)])]
#[case("W36", &[(20.0, 1.0), (0.0, 1.0)])]
#[case("W37", &[(20.0, 1.0), (30.0, 1.0)])]
#[case("W38", &[(50.0, 1.0), (20.0, 1.0), (20.0, 1.0)])]
#[case("W001", &[(40.0, 1.0), (0.0, 1.0)])]
fn volume_strengths_mix_by_volume(#[case] id: &str, #[case] parts: &[(f64, f64)]) {
    let conditions = Conditions::default();
    let part = |&(volumes, fl_oz): &(f64, f64)| {
        let strength: MassFraction =
            foilwork::peroxide::convert_to(OxygenVolumes::from_volumes(volumes).unwrap(), &conditions).unwrap();
        (strength, ml(fl_oz * 30.0))
    };
    let mixed = mix_volumes(&parts.iter().map(part).collect::<Vec<_>>(), Temperature::REFERENCE).unwrap();
    let volumes: OxygenVolumes = foilwork::peroxide::convert_to(mixed.strength.best(), &conditions).unwrap();
    near(id, volumes.volumes(), 0.01 * stated(id));
}

/// W28, W005: 30 L of 15 % from 10 % and 25 %. W29, W007: 5 gal of 20 % and x gal of 30 % to 23 %, rounded to a tenth.
#[test]
fn alligation_rows() {
    use foilwork::{
        peroxide::{KnownMass, blend_two},
        quantity::Mass,
    };
    let ww = |percent| MassFraction::from_ww_percent(percent).unwrap();
    let kg = |value: f64| Mass::from_g(1000.0 * value).unwrap();
    let blend = blend_two(ww(10.0), ww(25.0), ww(15.0), KnownMass::Total(kg(30.0))).unwrap();
    near("W28", blend.first.g() / 1000.0, 1e-9);
    near("W005", blend.first.g() / 1000.0, 1e-9);
    let blend = blend_two(ww(20.0), ww(30.0), ww(23.0), KnownMass::First(kg(5.0))).unwrap();
    near("W29", blend.second.g() / 1000.0, 0.05);
}

/// W48, W49: product characteristics, 35 % w/w stock at 15.0 and 22.5 % v/v. The label is nominal: 1 % above arithmetic.
#[rstest]
#[case("W48", 15.0, 20.0)]
#[case("W49", 22.5, 30.0)]
fn a_product_made_from_stock(#[case] id: &str, #[case] percent_v_v: f64, #[case] volumes: f64) {
    let stock = Strength::of(35.0, StrengthUnit::WwPercent).unwrap();
    let stock =
        convert(stock, StrengthUnit::GPerL, &Conditions::default()).unwrap().typed::<MassConcentration>().unwrap();
    let made = strength_after_make_up(stock, ml(percent_v_v), ml(100.0)).unwrap();
    near(id, made.wv_percent(), 0.011 * stated(id));
    let got: OxygenVolumes = foilwork::peroxide::convert_to(made, &Conditions::default()).unwrap();
    assert!((got.volumes() / volumes - 1.0).abs() < 0.023, "{id}: {got}");
}

/// W50, withdrawn from the file as wrong by 19 % in print: 625 mL of 197 volume in 10 L is 12.3 volume, not 10.
#[test]
fn a_misprinted_dilution_is_not_reproduced() {
    let stock = OxygenVolumes::from_volumes(197.0).unwrap();
    let made = strength_after_make_up(stock, ml(625.0), ml(10_000.0)).unwrap();
    assert!((made.volumes() - 10.0).abs() > 2.0, "{made}");
    assert!((made.volumes() - 12.3).abs() < 0.05, "{made}");
}

fn half_life(hours: f64) -> Interval<LossRate> {
    Interval::exact(LossRate::from_half_life(Duration::from_h(hours).unwrap()).unwrap())
}

/// Textbook rows on first-order decay: OpenStax, Chemistry 2e (W020, W021, W61); Kotz (W58). All are catalysed solutions.
#[test]
fn first_order_textbook_rows() {
    let rate = half_life(6.0);
    near("W020", rate.best().per_s(), 0.005e-5);
    let later = strength_after(Interval::exact(molar(1.0)), rate, Duration::from_h(18.0).unwrap());
    near("W021", later.best().mol_per_l(), 0.0005);
    // W61 prints the whole series; every pair of its points gives the half-life it states.
    let series = [1.000, 0.500, 0.250, 0.125, 0.0625];
    for (hours, pair) in series.windows(2).enumerate() {
        let [first, later] = [pair[0], pair[1]].map(|c| Interval::exact(molar(c)));
        let rate = loss_rate(first, later, Duration::from_h(6.0).unwrap()).unwrap();
        near("W61", rate.best().half_life().unwrap().h() * 3600.0, 1.0 + hours as f64 * 1e-6);
    }
    let [first, later] = [0.24, 0.060].map(|c| Interval::exact(molar(c)));
    let rate = loss_rate(first, later, Duration::from_min(282.0).unwrap()).unwrap().best();
    near("W58", rate.per_day() / 1440.0, 0.05e-3);
}

/// W59, W60: a half-life of 17.0 min. W60 uses k cut to 0.0408, so it is 0.03 min low.
#[test]
fn first_order_exercise_rows() {
    let rate = half_life(17.0 / 60.0).best();
    near("W59", rate.per_day() / 1440.0, 0.00005);
    let time = time_until(Interval::exact(molar(1.0)), molar(0.2), Interval::exact(rate)).unwrap();
    near("W60", time.best().h() * 60.0, 0.04);
}
