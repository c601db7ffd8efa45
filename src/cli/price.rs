use super::{Outcome, Refusal, args::PriceArgs, output, read::about};
use crate::{
    business::{DiscountBreakEven, discount_break_even, trace_discount},
    money::{
        self, Currency, Discount, DiscountedPrice, Margin, Markup, Money, MoneyError, PriceTarget, Rounding, SetPrice,
        TaxRate, TaxedPrice, add_tax, apply_discount, cost_from_markup, parse_decimal, price_from_margin,
        price_from_markup, trace_margin, trace_markup,
    },
    source::{Basis, TracedInput, TracedResult, citations},
};
use rust_decimal::Decimal;
use serde::Serialize;

/// Everything the command has to say, as data.
#[derive(Serialize)]
struct Report {
    #[serde(flatten)]
    set: SetPrice,
    taxed: Option<TaxedPrice>,
    offer: Option<Offer>,
    rounding: Rounding,
}

/// A discount, and what it must bring.
#[derive(Serialize)]
struct Offer {
    price: DiscountedPrice,
    sold_before: u32,
    must_sell: DiscountBreakEven,
}

/// The two percentages, where there is no amount.
#[derive(Serialize)]
struct Both {
    margin: Margin,
    markup: Markup,
}

/// `foilwork price`: a price from a cost, or what a price leaves; margin and mark-up always side by side.
pub(super) fn run(args: &PriceArgs) -> Outcome {
    let rounding: Rounding = super::read::option("--rounding", &args.rounding)?;
    let margin = percent("--margin", args.margin.as_deref(), Margin::from_percent)?;
    let markup = percent("--markup", args.markup.as_deref(), Markup::from_percent)?;
    let currency = args.currency.as_deref().map(Currency::from_code).transpose();
    let currency = currency.map_err(|error| about("--currency", error))?;
    let Some(currency) = currency else { return both(args, margin, markup) };
    let amount = |name, text: Option<&str>| {
        text.map(|text| Money::parse(text, currency)).transpose().map_err(|error| about(name, error))
    };
    let (cost, price) = (amount("--cost", args.cost.as_deref())?, amount("--price", args.price.as_deref())?);
    let set = match (cost, price, margin, markup) {
        (Some(_), Some(_), Some(_), _) | (Some(_), Some(_), _, Some(_)) => {
            let way_out = "give --price to see the margin of a price, or --margin or --markup to set one, not both";
            return Err(Refusal(way_out.to_owned()));
        }
        (Some(cost), Some(price), None, None) => {
            let field = if cost.minor() > 0 { "--price" } else { "--cost" };
            SetPrice::of(cost, price).map_err(|error| about(field, error))?
        }
        (Some(cost), None, Some(margin), _) => {
            price_from_margin(cost, margin, rounding).map_err(|error| about("--cost", error))?
        }
        (Some(cost), None, None, Some(markup)) => {
            price_from_markup(cost, markup, rounding).map_err(|error| about("--cost", error))?
        }
        (None, Some(price), Some(margin), _) => {
            let markup = margin.markup().map_err(|error| about("--margin", error))?;
            cost_from_markup(price, markup, rounding).map_err(|error| about("--price", error))?
        }
        (None, Some(price), None, Some(markup)) => {
            cost_from_markup(price, markup, rounding).map_err(|error| about("--price", error))?
        }
        (Some(_), None, None, None) => {
            return Err(Refusal("give --margin or --markup: they are not the same".to_owned()));
        }
        (None, Some(_), None, None) => {
            return Err(Refusal(
                "give --cost beside --price, or --margin or --markup for the cost it allows".to_owned(),
            ));
        }
        (None, None, ..) => return Err(Refusal("give --cost, --price or both".to_owned())),
    };
    let rate = percent("--tax", args.tax.as_deref(), TaxRate::from_percent)?;
    let taxed = rate.map(|rate| add_tax(set.price, rate, rounding)).transpose()?;
    let discount = percent("--discount", args.discount.as_deref(), Discount::from_percent)?;
    let offer = discount.map(|discount| offer(&set, discount, args.sold, rounding)).transpose()?;
    if args.trail.trail {
        let asked = match (cost, price, margin, markup) {
            (Some(_), None, Some(margin), _) => Some(PriceTarget::Margin(margin)),
            (Some(_), None, None, Some(markup)) => Some(PriceTarget::Markup(markup)),
            _ => None,
        };
        let allowed = match (cost, margin, markup) {
            (Some(_), ..) => None,
            (None, Some(margin), _) => {
                let input = money::percent("margin, as asked for", margin.percent(), "% of the price");
                Some(cost_allowed(&set, "net price x (1 - margin)", input))
            }
            (None, None, markup) => markup.map(|markup| {
                let input = money::percent("mark-up, as asked for", markup.percent(), "% of the cost");
                cost_allowed(&set, "net price / (1 + mark-up)", input)
            }),
        };
        let left = set.trail(asked).into_iter().chain(taxed.map(|taxed| taxed.trail()));
        let mut trail: Vec<_> = allowed.into_iter().chain(left).collect();
        if let Some(Offer { price, sold_before, .. }) = offer {
            trail.extend(price.trail());
            let sales = trace_discount(price.before, price.after, set.cost, sold_before);
            trail.extend(sales.map_err(|error| about("--discount", error))?);
        }
        return output::deliver(output::trail(&trail, args.report.json)?, 0, &args.report.output);
    }
    let report = Report { set, taxed, offer, rounding };
    output::report(&args.report, &report, || text(&report))
}

/// How the cost that a price allows comes about.
fn cost_allowed(set: &SetPrice, formula: &'static str, asked: TracedInput) -> TracedResult {
    money::amount("cost", set.cost, formula, Basis::Stated)
        .made_of([money::of("net price", set.price), asked])
        .resting_on(&[citations::money::CONTEMPORARY_MATHEMATICS.id])
}

fn percent<T>(
    name: &str,
    text: Option<&str>,
    take: impl Fn(Decimal) -> Result<T, MoneyError>,
) -> Result<Option<T>, Refusal> {
    let read = |text| parse_decimal("percentage", text).and_then(&take);
    text.map(read).transpose().map_err(|error| about(name, error))
}

/// One percentage as the other; no amount is needed for that.
fn both(args: &PriceArgs, margin: Option<Margin>, markup: Option<Markup>) -> Outcome {
    let both = match (margin, markup) {
        (Some(margin), _) => Both { margin, markup: margin.markup().map_err(|error| about("--margin", error))? },
        (None, Some(markup)) => Both { margin: markup.margin().map_err(|error| about("--markup", error))?, markup },
        (None, None) => {
            let way_out = "give --cost and --currency with --margin, --markup or --price; or only --margin or --markup";
            return Err(Refusal(way_out.to_owned()));
        }
    };
    if args.trail.trail {
        let other = margin.map_or_else(|| trace_margin(both.markup), trace_markup)?;
        return output::deliver(output::trail(&[other], args.report.json)?, 0, &args.report.output);
    }
    output::report(&args.report, &both, || {
        let words = "profit over price and profit over cost, of the same price";
        format!("margin {}\nmark-up {}\n{words}\n", both.margin, both.markup)
    })
}

fn offer(set: &SetPrice, discount: Discount, sold: u32, rounding: Rounding) -> Result<Offer, Refusal> {
    let price = apply_discount(set.price, discount, rounding).map_err(|error| about("--discount", error))?;
    let must_sell = discount_break_even(price.before, price.after, set.cost, sold);
    Ok(Offer { price, sold_before: sold, must_sell: must_sell.map_err(|error| about("--discount", error))? })
}

fn text(report: &Report) -> String {
    let set = &report.set;
    let mut text = format!(
        "net price {}\n  cost {}, profit {}\n  margin {}\n  mark-up {}\n",
        set.price, set.cost, set.profit, set.margin, set.markup
    );
    if set.profit.is_negative() {
        text += "  LOSES MONEY: the price is below the cost\n";
    }
    if let Some(taxed) = &report.taxed {
        text += &format!("tax {}\nthe guest pays {}\n", taxed.tax, taxed.gross);
    }
    if let Some(Offer { price, sold_before, must_sell }) = &report.offer {
        let more = must_sell.extra_percent.round_dp_with_strategy(1, Rounding::MidpointAwayFromZero.strategy());
        text += &format!(
            "with the discount {}, {} off\n  each leaves {} instead of {}\n  {} must be sold instead of {sold_before} to leave as \
             much: {} % more\n",
            price.after,
            price.off,
            must_sell.contribution_after,
            must_sell.contribution_before,
            must_sell.count_needed,
            more.normalize(),
        );
    }
    text + &format!("rounding: {}\n", report.rounding)
}
