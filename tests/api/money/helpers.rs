//! What every check of this room needs.

use foilwork::quantity::{Duration, Mass};
use foilwork::source::{Basis, Interval};
use foilwork::{
    business::{QuotePart, RentOrWage},
    money::{
        CardFee, CardRate, CommissionRate, Currency, Money, MoneyError, PackPrice, PriceRule, PriceTarget, Rounding,
        TaxRate, supply_cost,
    },
};
use rust_decimal::Decimal;

pub(crate) const HALF_UP: Rounding = Rounding::MidpointAwayFromZero;

pub(crate) fn currency(code: &str) -> Currency {
    Currency::from_code(code).unwrap()
}

pub(crate) fn euros(text: &str) -> Money {
    Money::parse(text, currency("EUR")).unwrap()
}

pub(crate) fn number(text: &str) -> Decimal {
    text.parse().unwrap()
}

pub(crate) fn grams(g: f64) -> Mass {
    Mass::from_g(g).unwrap()
}

pub(crate) fn minutes(min: f64) -> Duration {
    Duration::from_min(min).unwrap()
}

pub(crate) fn said<T: std::fmt::Debug>(result: Result<T, impl std::fmt::Display>) -> String {
    match result {
        Ok(value) => panic!("expected an error, got {value:?}"),
        Err(error) => error.to_string(),
    }
}

pub(crate) fn rule(target: PriceTarget) -> PriceRule {
    PriceRule {
        target,
        tax: TaxRate::from_percent(19.into()).unwrap(),
        card: Some(CardFee::new(CardRate::from_percent(2.into()).unwrap(), euros("0.10")).unwrap()),
        ending: None,
        rounding: HALF_UP,
    }
}

pub(crate) fn parts() -> Vec<QuotePart> {
    let cost = |low: &str, best: &str, high: &str| Interval::new(euros(low), euros(best), euros(high)).unwrap();
    vec![
        QuotePart { what: "lightener".into(), cost: cost("4.00", "6.00", "10.00"), basis: Basis::Assumed },
        QuotePart { what: "foils".into(), cost: cost("2.00", "2.00", "2.00"), basis: Basis::Stated },
    ]
}

pub(crate) fn rent(variable_percent: i64) -> RentOrWage {
    RentOrWage {
        rent: euros("200.00"),
        own_costs: euros("50.00"),
        variable_percent: variable_percent.into(),
        wage: euros("480.00"),
        commission: CommissionRate::from_percent(15.into()).unwrap(),
    }
}

pub(crate) fn sales_mix_item() -> foilwork::business::SalesMixItem {
    foilwork::business::SalesMixItem {
        what: "cut".into(),
        price: euros("2.00"),
        variable: euros("1.00"),
        weight: 1.into(),
    }
}

/// What a mass from a pack costs.
pub(crate) fn product_cost(price: Money, pack: Mass, used: Mass, rounding: Rounding) -> Result<Money, MoneyError> {
    supply_cost(PackPrice::new(price, pack)?, used, rounding)
}
