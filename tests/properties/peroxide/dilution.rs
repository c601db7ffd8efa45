use foilwork::{
    peroxide::{KnownMass, blend_two, dilute},
    quantity::{Mass, MassFraction},
};
use proptest::prelude::*;

fn ww(percent: f64) -> MassFraction {
    MassFraction::from_ww_percent(percent).unwrap()
}

fn g(grams: f64) -> Mass {
    Mass::from_g(grams).unwrap()
}

proptest! {
    #[test]
    fn dilution_conserves_mass_and_peroxide(stock in 0.1..=100.0_f64, share in 0.0..=1.0_f64, total in 1e-3..1e6_f64) {
        let target = stock * share;
        let blend = dilute(ww(stock), ww(target), g(total)).unwrap();
        prop_assert!((blend.total().g() / total - 1.0).abs() < 1e-12);
        prop_assert!((blend.stock.g() * stock - total * target).abs() <= 1e-12 * total * stock);
    }

    #[test]
    fn the_order_of_two_stocks_does_not_matter(
        a in 0.0..=100.0_f64, b in 0.0..=100.0_f64, share in 0.0..=1.0_f64, total in 1e-3..1e6_f64,
    ) {
        prop_assume!((a - b).abs() > 1e-6);
        let target = (a + share * (b - a)).clamp(a.min(b), a.max(b));
        let one = blend_two(ww(a), ww(b), ww(target), KnownMass::Total(g(total))).unwrap();
        let two = blend_two(ww(b), ww(a), ww(target), KnownMass::Total(g(total))).unwrap();
        prop_assert!((one.first.g() - two.second.g()).abs() <= 1e-12 * total);
        let peroxide = one.first.g() * a + one.second.g() * b;
        prop_assert!((peroxide - total * target).abs() <= 1e-9 * total);
    }

    #[test]
    fn any_known_amount_gives_the_same_blend(
        a in 0.0..=100.0_f64, b in 0.0..=100.0_f64, share in 0.01..=0.99_f64, total in 1e-3..1e5_f64,
    ) {
        prop_assume!((a - b).abs() > 1e-3);
        let target = ww(a + share * (b - a));
        let whole = blend_two(ww(a), ww(b), target, KnownMass::Total(g(total))).unwrap();
        for known in [KnownMass::First(whole.first), KnownMass::Second(whole.second)] {
            let again = blend_two(ww(a), ww(b), target, known).unwrap();
            prop_assert!((again.first.g() / whole.first.g() - 1.0).abs() < 1e-9);
            prop_assert!((again.second.g() / whole.second.g() - 1.0).abs() < 1e-9);
        }
    }
}
