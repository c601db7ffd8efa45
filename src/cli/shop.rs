//! Shop files, and the bottles of the command line.

use super::{
    Refusal,
    args::BlendArgs,
    kind::{self, Kind},
    output, read,
};
use crate::{
    money::{Currency, parse_decimal},
    peroxide::{Conditions, StatedStrength, Stock, bottle_converted, converted},
    quantity::{Mass, MassFraction, PricePerKg, Temperature},
    reader::{Format, Problems},
    shop::{self, Shop, StockFacts, shape::ShopFile},
    source::TracedResult,
};
use rust_decimal::{Decimal, prelude::ToPrimitive};
use std::path::Path;

/// A bottle as the blend sees it, and beside it what the blend takes no account of.
pub(super) struct Pourable {
    pub(super) stock: Stock,
    pub(super) price_per_kg: Option<Decimal>,
    /// How its strength gets to % w/w, where it is stated otherwise.
    pub(super) by_mass: Option<TracedResult>,
}

/// All bottles, and the currency of their prices.
pub(super) struct Pourables {
    pub(super) all: Vec<Pourable>,
    pub(super) currency: Option<Currency>,
}

/// Reads a shop file as it is written.
pub(super) fn read_shape(path: &Path) -> Result<ShopFile, Refusal> {
    let (name, text) = (path.to_string_lossy(), output::read(path)?);
    shop::parse_shop(&text, Format::of(&name, &text))
        .map_err(|problems| kind::refused(&name, &text, Kind::Shop, &problems))
}

/// Reads a shop file; what `take` misses in it is located too.
pub(super) fn read_with<T>(path: &Path, take: impl Fn(&Shop) -> Result<T, Problems>) -> Result<(Shop, T), Refusal> {
    let (name, text) = (path.to_string_lossy(), output::read(path)?);
    let format = Format::of(&name, &text);
    let all = || {
        let shop = Shop::new(&shop::parse_shop(&text, format)?)?;
        let taken = take(&shop)?;
        Ok((shop, taken))
    };
    let refused = |problems: Problems| kind::refused(&name, &text, Kind::Shop, &problems.located(&text, format));
    all().map_err(refused)
}

/// Reads the file, then the options.
pub(super) fn pourables(args: &BlendArgs) -> Result<Pourables, Refusal> {
    let temperature = Temperature::from_celsius(args.temperature)?;
    let (mut all, mut currency) = (Vec::new(), args.currency.as_deref().map(Currency::from_code).transpose()?);
    if let Some(path) = &args.shop {
        let (shop, ()) = read_with(path, |_| Ok(()))?;
        for bottle in &shop.bottles {
            let by_mass = bottle_converted(&bottle.name, bottle.stated, &bottle.conditions(temperature))?;
            all.push(of_shop(bottle.stock(temperature)?, &bottle.facts, by_mass));
        }
        for diluent in &shop.diluents {
            all.push(of_shop(diluent.facts.stock(MassFraction::ZERO), &diluent.facts, None));
        }
        match (shop.currency, currency) {
            (Some(one), Some(other)) if one != other => {
                let (name, way_out) = (path.to_string_lossy(), "all prices must be in one currency");
                return Err(Refusal(format!("{name} counts in {one} and --currency in {other}: {way_out}")));
            }
            (Some(one), _) => currency = Some(one),
            (None, _) => {}
        }
    }
    for text in &args.stock {
        let at = format!("--stock {text:?}");
        all.push(from_option(text, temperature).map_err(|Refusal(problem)| read::about(&at, problem))?);
    }
    if currency.is_none() && all.iter().any(|bottle| bottle.price_per_kg.is_some()) {
        let way_out = "add --currency, or `currency = \"EUR\"` at the top of the shop file";
        return Err(Refusal(format!("there are prices but no currency: {way_out}")));
    }
    Ok(Pourables { all, currency })
}

fn of_shop(stock: Stock, facts: &StockFacts, by_mass: Option<TracedResult>) -> Pourable {
    Pourable { stock, price_per_kg: facts.price_per_kg(), by_mass }
}

/// `name=12 % w/w, 300 g, 9.90/kg`: the strength comes first, the others are told by their units.
fn from_option(text: &str, temperature: Temperature) -> Result<Pourable, Refusal> {
    let (name, facts) = text.split_once('=').unwrap_or((text.split(',').next().unwrap_or(text), text));
    let mut facts = facts.split(',').map(str::trim);
    let stated: StatedStrength = facts.next().unwrap_or_default().parse()?;
    let by_mass = converted(stated, &Conditions::at(temperature))?;
    let (name, strength) = (name.trim(), stated.mass_fraction(temperature)?);
    if name.is_empty() || name.chars().count() > 60 {
        return Err(Refusal("give the bottle a name of 1 to 60 characters".to_owned()));
    }
    let (mut stock, mut price_per_kg) = (Stock::new(name, strength), None);
    for fact in facts {
        if let Some(number) = fact.strip_suffix("/kg") {
            let price = parse_decimal("price", number.trim())?;
            stock = stock.with_price(PricePerKg::from_per_kg(price.to_f64().unwrap_or(f64::NAN))?);
            price_per_kg = Some(price);
        } else if let Some(number) = fact.strip_suffix('g') {
            let wrong = |_| Refusal(format!("{fact:?} is no amount: write for example 300 g"));
            stock = stock.with_in_hand(Mass::from_g(number.trim().parse().map_err(wrong)?)?);
        } else {
            let way_out = "after the strength write what is in hand, 300 g, or the price, 9.90/kg";
            return Err(Refusal(format!("cannot read {fact:?}: {way_out}")));
        }
    }
    Ok(Pourable { stock, price_per_kg, by_mass })
}
