use super::{Answer, Outcome, Refusal, args::PriceArgs};
use crate::money::{
    Currency, Margin, Markup, Money, Rounding, TaxRate, add_tax, parse_decimal, price_from_margin, price_from_markup,
};

/// `foilwork price`: a price from a cost, with margin and mark-up side by side, and its tax.
pub(super) fn run(args: &PriceArgs) -> Outcome {
    let rounding = Rounding::MidpointAwayFromZero;
    let cost = Money::parse(&args.cost, Currency::from_code(&args.currency)?)?;
    let set = match (&args.margin, &args.markup) {
        (Some(margin), _) => {
            price_from_margin(cost, Margin::from_percent(parse_decimal("margin", margin)?)?, rounding)?
        }
        (None, Some(markup)) => {
            price_from_markup(cost, Markup::from_percent(parse_decimal("mark-up", markup)?)?, rounding)?
        }
        (None, None) => return Err(Refusal("give --margin or --markup: they are not the same".to_owned())),
    };
    let mut text = format!(
        "net price {}\n  cost {}, profit {}\n  margin {}\n  mark-up {}\n",
        set.price, set.cost, set.profit, set.margin, set.markup
    );
    if let Some(tax) = &args.tax {
        let taxed = add_tax(set.price, TaxRate::from_percent(parse_decimal("tax", tax)?)?, rounding)?;
        text += &format!("tax {}\nthe guest pays {}\n", taxed.tax, taxed.gross);
    }
    text += &format!("rounding: {rounding}\n");
    Ok(Answer::fine(text))
}
