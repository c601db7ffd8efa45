use foilwork::quantity::{
    ActiveOxygen, AmountConcentration, Area, Density, Duration, Length, LossRate, Mass, MassConcentration,
    MassFraction, Molality, Normality, OxygenVolumes, PricePerKg, Quantity, Share, Temperature, TradeLabel, Volume,
};
use proptest::prelude::*;
use std::{fmt::Debug, str::FromStr};

fn reads_what_it_prints<Q: Quantity + Debug + FromStr<Err: Debug>>(part: f64) {
    let quantity = Q::nearest(Q::MIN.in_unit() + part * (Q::MAX.in_unit() - Q::MIN.in_unit()));
    assert_eq!(quantity.to_string().parse::<Q>().unwrap(), quantity, "{}", Q::WHAT);
}

proptest! {
    #[test]
    fn a_quantity_reads_what_it_prints_to_the_last_bit(part in 0.0..=1.0_f64) {
        reads_what_it_prints::<ActiveOxygen>(part);
        reads_what_it_prints::<AmountConcentration>(part);
        reads_what_it_prints::<Area>(part);
        reads_what_it_prints::<Density>(part);
        reads_what_it_prints::<Duration>(part);
        reads_what_it_prints::<Length>(part);
        reads_what_it_prints::<LossRate>(part);
        reads_what_it_prints::<Mass>(part);
        reads_what_it_prints::<MassConcentration>(part);
        reads_what_it_prints::<MassFraction>(part);
        reads_what_it_prints::<Molality>(part);
        reads_what_it_prints::<Normality>(part);
        reads_what_it_prints::<OxygenVolumes>(part);
        reads_what_it_prints::<PricePerKg>(part);
        reads_what_it_prints::<Share>(part);
        reads_what_it_prints::<Temperature>(part);
        reads_what_it_prints::<TradeLabel>(part);
        reads_what_it_prints::<Volume>(part);
    }

    #[test]
    fn any_text_is_read_or_refused(text in ".{0,12}", unit in prop::sample::select(vec!["g", " g", "", "% w/w"])) {
        let text = text + unit;
        if let Ok(mass) = text.parse::<Mass>() {
            prop_assert!(mass >= Mass::MIN && mass <= Mass::MAX, "{text:?}");
            prop_assert!(text.trim_end().ends_with('g'));
        }
    }

    #[test]
    fn the_nearest_is_the_number_itself_when_it_can_be(number in -1e10..1e10_f64) {
        let nearest = Mass::nearest(number);
        match Mass::from_g(number) {
            Ok(mass) => prop_assert_eq!(nearest, mass),
            Err(_) => prop_assert_eq!(nearest, if number < 0.0 { Mass::MIN } else { Mass::MAX }),
        }
    }
}
