//! The edges of every kind of percentage, and what each says of itself.

use super::helpers::{HALF_UP, euros, number};
use foilwork::money::{
    CardFee, CardRate, CommissionRate, Discount, Margin, Markup, MoneyError, OnCosts, ProductiveShare, ProfitTax,
    TaxRate,
};
use rstest::rstest;
use rust_decimal::Decimal;

type Take = fn(Decimal) -> Result<String, MoneyError>;

macro_rules! take {
    ($name:ident) => {
        |percent| $name::from_percent(percent).map(|taken| taken.to_string())
    };
}

/// On its edges each is taken, a hundred-millionth beyond them refused.
#[rstest]
#[case(take!(TaxRate), &["0", "1000"], &["-0.00000001", "1000.00000001"], "tax rate", "% of the net price", "from 0 to 1000 % of the net price")]
#[case(take!(OnCosts), &["0", "1000"], &["-0.00000001", "1000.00000001"], "on-costs", "% of the wage", "from 0 to 1000 % of the wage")]
#[case(take!(Discount), &["0", "99.99999999"], &["-0.00000001", "100"], "discount", "% of the full price", "from 0 to below 100 % of the full price")]
#[case(take!(CardRate), &["0", "99.99999999"], &["-0.00000001", "100"], "card fee", "% of the payment", "from 0 to below 100 % of the payment")]
#[case(take!(ProfitTax), &["0", "99.99999999"], &["-0.00000001", "100"], "tax on profit", "% of the profit", "from 0 to below 100 % of the profit")]
#[case(take!(CommissionRate), &["0", "100"], &["-0.00000001", "100.00000001"], "commission", "% of the takings", "from 0 to 100 % of the takings")]
#[case(take!(ProductiveShare), &["0.00000001", "100"], &["0", "100.00000001"], "productive share", "% of the paid time", "above 0 and up to 100 % of the paid time")]
#[case(take!(Markup), &["-99.99999999", "1000000000000"], &["-100", "1000000000000.00000001"], "mark-up", "% of the cost", "above -100 and up to 1e12 % of the cost")]
#[case(take!(Margin), &["-1000000000000", "99.99999999"], &["-1000000000000.00000001", "100"], "margin", "% of the price", "below 100 % of the price")]
fn a_percentage_has_its_edges(
    #[case] take: Take,
    #[case] taken: &[&str],
    #[case] refused: &[&str],
    #[case] field: &str,
    #[case] unit: &str,
    #[case] allowed: &str,
) {
    for percent in taken {
        assert!(take(number(percent)).is_ok(), "{percent} {unit}");
    }
    for percent in refused {
        let said = take(number(percent)).unwrap_err().to_string();
        assert_eq!(said, format!("invalid {field} (got {percent} {unit}): must be {allowed}"));
    }
    // Shown to two decimals half up, without zeros that say nothing.
    let shown = [("12.345", "12.35"), ("7.50", "7.5"), ("1.00", "1")];
    for (percent, want) in shown {
        assert_eq!(take(number(percent)).unwrap(), format!("{want} {unit}"));
    }
}

/// By hand: 1.75 % of 80.00 are 1.40, and 0.10 for each payment.
#[test]
fn a_card_fee_is_a_share_and_a_fixed_part() {
    let rate = CardRate::from_percent(number("1.75")).unwrap();
    let fee = CardFee::new(rate, euros("0.10")).unwrap();
    assert_eq!((fee.rate(), fee.fixed()), (rate, euros("0.10")));
    assert_eq!(fee.of(euros("80"), HALF_UP), Ok(euros("1.50")));
    assert_eq!(fee.of(euros("0"), HALF_UP), Ok(euros("0.10")));
    assert!(CardFee::new(rate, euros("0")).is_ok());
    assert_eq!(
        CardFee::new(rate, euros("-0.01")).unwrap_err().to_string(),
        "invalid fixed card fee (got -0.01 EUR): must be nothing or more"
    );
}
