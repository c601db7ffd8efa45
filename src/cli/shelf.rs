//! Bottles from a shelf file and from `--stock`, with what each states.

use super::{Refusal, args::BlendArgs, output, read};
use crate::{
    money::{Currency, parse_decimal},
    peroxide::{StatedStrength, Stock},
    quantity::{Mass, MassFraction, PricePerKg, Temperature},
    source::Interval,
    text::Lines,
};
use rust_decimal::{Decimal, prelude::ToPrimitive};
use serde::Deserialize;
use toml::Spanned;

/// A bottle as the blend sees it, and beside it what the blend takes no account of.
pub(super) struct Bottle {
    pub(super) stock: Stock,
    /// With the bounds that a label or a strength by volume brings.
    pub(super) strength: Interval<MassFraction>,
    pub(super) price_per_kg: Option<Decimal>,
}

/// All bottles, and the currency of their prices.
pub(super) struct Bottles {
    pub(super) all: Vec<Bottle>,
    pub(super) currency: Option<Currency>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct ShelfFile {
    currency: Option<String>,
    #[serde(default)]
    stock: Vec<StockRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct StockRow {
    name: Spanned<String>,
    strength: String,
    in_hand_g: Option<f64>,
    price: Option<String>,
    pack_g: Option<f64>,
}

/// Reads the file, then the options.
pub(super) fn bottles(args: &BlendArgs) -> Result<Bottles, Refusal> {
    let temperature = Temperature::from_celsius(args.temperature)?;
    let (mut all, mut code) = (Vec::new(), args.currency.clone());
    if let Some(path) = &args.shelf {
        let (name, text) = (path.to_string_lossy(), output::read(path)?);
        let lines = Lines::of(&text);
        let file: ShelfFile = toml::from_str(&text).map_err(|error| {
            let line = error.span().map(|span| format!("line {}: ", lines.line(span.start))).unwrap_or_default();
            Refusal(format!("{name}: {line}{}", error.message().trim_end().replace('\n', " ")))
        })?;
        for row in &file.stock {
            let at = format!("{name}: line {}: stock {:?}", lines.line(row.name.span().start), row.name.get_ref());
            all.push(from_row(row, temperature).map_err(|Refusal(problem)| read::about(&at, problem))?);
        }
        match (&file.currency, &code) {
            (Some(one), Some(other)) if one != other => {
                let way_out = "all prices must be in one currency";
                return Err(Refusal(format!("{name} counts in {one} and --currency in {other}: {way_out}")));
            }
            (Some(one), _) => code = Some(one.clone()),
            (None, _) => {}
        }
    }
    for text in &args.stock {
        let at = format!("--stock {text:?}");
        all.push(from_option(text, temperature).map_err(|Refusal(problem)| read::about(&at, problem))?);
    }
    if code.is_none() && all.iter().any(|bottle| bottle.price_per_kg.is_some()) {
        let way_out = "add --currency, or `currency = \"EUR\"` at the top of the shelf file";
        return Err(Refusal(format!("there are prices but no currency: {way_out}")));
    }
    Ok(Bottles { all, currency: code.map(|code| Currency::from_code(&code)).transpose()? })
}

fn from_row(row: &StockRow, temperature: Temperature) -> Result<Bottle, Refusal> {
    let price = match (&row.price, row.pack_g) {
        (Some(price), Some(pack_g)) => {
            let pack = Decimal::try_from(Mass::from_g(pack_g)?.g())?;
            let per_g = parse_decimal("price", price)?.checked_div(pack);
            let per_kg = per_g.and_then(|per_g| per_g.checked_mul(Decimal::ONE_THOUSAND));
            Some(per_kg.ok_or_else(|| Refusal("pack_g must be above 0 g".to_owned()))?)
        }
        (Some(_), None) => return Err(Refusal("price needs pack_g: how many g does that price buy?".to_owned())),
        (None, _) => None,
    };
    bottle(row.name.get_ref(), &row.strength, row.in_hand_g, price, temperature)
}

/// `name=12 % w/w, 300 g, 9.90/kg`: the strength comes first, the others are told by their units.
fn from_option(text: &str, temperature: Temperature) -> Result<Bottle, Refusal> {
    let (name, facts) = text.split_once('=').unwrap_or((text.split(',').next().unwrap_or(text), text));
    let mut facts = facts.split(',').map(str::trim);
    let strength = facts.next().unwrap_or_default();
    let (mut in_hand, mut price) = (None, None);
    for fact in facts {
        if let Some(number) = fact.strip_suffix("/kg") {
            price = Some(parse_decimal("price", number.trim())?);
        } else if let Some(number) = fact.strip_suffix('g') {
            let wrong = |_| Refusal(format!("{fact:?} is no amount: write for example 300 g"));
            in_hand = Some(number.trim().parse().map_err(wrong)?);
        } else {
            let way_out = "after the strength write what is in hand, 300 g, or the price, 9.90/kg";
            return Err(Refusal(format!("cannot read {fact:?}: {way_out}")));
        }
    }
    bottle(name, strength, in_hand, price, temperature)
}

fn bottle(
    name: &str,
    strength: &str,
    in_hand_g: Option<f64>,
    price_per_kg: Option<Decimal>,
    temperature: Temperature,
) -> Result<Bottle, Refusal> {
    let strength = strength.parse::<StatedStrength>()?.mass_fraction(temperature)?;
    let name = name.trim();
    if name.is_empty() || name.chars().count() > 40 {
        return Err(Refusal("give the bottle a name of 1 to 40 characters".to_owned()));
    }
    let mut stock = Stock::new(name, strength.best());
    if let Some(in_hand_g) = in_hand_g {
        stock = stock.with_in_hand(Mass::from_g(in_hand_g)?);
    }
    if let Some(price) = price_per_kg {
        stock = stock.with_price(PricePerKg::from_per_kg(price.to_f64().unwrap_or(f64::NAN))?);
    }
    Ok(Bottle { stock, strength, price_per_kg })
}
