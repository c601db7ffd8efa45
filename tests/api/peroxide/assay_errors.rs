use foilwork::{
    peroxide::{PreDilution, Titration, loss_rate, read_glass, strength_after, time_until},
    quantity::{AmountConcentration, Duration, LossRate, MassFraction, Volume},
    source::Interval,
};

fn ml(value: f64) -> Interval<Volume> {
    Interval::exact(Volume::from_ml(value).unwrap())
}

fn molar(value: f64) -> Interval<AmountConcentration> {
    Interval::exact(AmountConcentration::from_mol_per_l(value).unwrap())
}

fn ww(percent: f64) -> MassFraction {
    MassFraction::from_ww_percent(percent).unwrap()
}

#[test]
fn titrations_that_give_no_answer() {
    let good = Titration { titrant: molar(0.02), aliquot: ml(10.0), dilution: None };
    let thicker = Some(PreDilution { taken: ml(100.0), made_up_to: ml(10.0) });
    let empty = Some(PreDilution { taken: ml(0.0), made_up_to: ml(10.0) });
    for (titration, want) in [
        (Titration { aliquot: ml(0.0), ..good }, "the aliquot may be zero: give more than its tolerance"),
        (Titration { dilution: empty, ..good }, "the volume taken may be zero: give more than its tolerance"),
        (
            Titration { dilution: thicker, ..good },
            "100 mL were taken and made up to 10 mL: the mark must not be below what was taken",
        ),
    ] {
        assert_eq!(titration.strength(ml(12.0)).unwrap_err().to_string(), want);
        assert_eq!(titration.expected_titre(molar(0.6)).unwrap_err().to_string(), want);
    }
    let none = Titration { titrant: molar(0.0), ..good };
    assert!(none.expected_titre(molar(0.6)).is_err());
    let (volume, tolerance) = (Volume::from_ml(1.0).unwrap(), Volume::from_ml(2.0).unwrap());
    assert!(read_glass(volume, tolerance).is_err(), "the tolerance is larger than the reading");
}

#[test]
fn ageing_that_cannot_be() {
    let days = |d| Duration::from_days(d).unwrap();
    let exact = |percent| Interval::exact(ww(percent));
    assert_eq!(
        loss_rate(exact(5.0), exact(6.0), days(30.0)).unwrap_err().to_string(),
        "the strength rose from 5 % w/w to 6 % w/w: peroxide only decays, so check the two readings"
    );
    assert_eq!(
        loss_rate(exact(6.0), exact(5.0), days(0.0)).unwrap_err().to_string(),
        "the time between the assays is zero: give more than 0"
    );
    assert!(loss_rate(exact(6.0), exact(0.0), days(1.0)).is_err());
    let rate = LossRate::from_per_day(0.01).unwrap();
    assert_eq!(
        time_until(Interval::exact(ww(5.0)), ww(6.0), Interval::exact(rate)).unwrap_err().to_string(),
        "5 % w/w is below 6 % w/w already: ask for a strength below it"
    );
    assert!(
        time_until(Interval::exact(ww(5.0)), ww(4.0), Interval::exact(LossRate::from_per_day(0.0).unwrap())).is_err()
    );
    // Readings that overlap within their bounds may have lost nothing, and the rate says so.
    let first = Interval::new(ww(5.9), ww(6.0), ww(6.1)).unwrap();
    let later = Interval::new(ww(5.9), ww(6.05), ww(6.2)).unwrap();
    let rate = loss_rate(first, later, days(30.0)).unwrap();
    assert_eq!((rate.low().per_day(), rate.best().per_day()), (0.0, 0.0));
    assert!(rate.high().per_day() > 0.0);
    let aged = strength_after(first, rate, days(30.0));
    assert!(aged.low() < aged.best() && aged.high() == first.high());
}

#[test]
fn rates_that_are_none() {
    for bad in [-1.0, f64::NAN, f64::INFINITY] {
        assert!(LossRate::from_per_day(bad).is_err());
    }
    assert!(LossRate::from_half_life(Duration::from_h(0.0).unwrap()).is_err());
    assert!(LossRate::from_per_day(0.0).unwrap().half_life().is_err(), "nothing is lost, so never half");
}
