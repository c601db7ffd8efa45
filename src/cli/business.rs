//! `foilwork business`: questions about the running of the salon.

use super::{
    Outcome, Refusal,
    args::{BreakEvenArgs, BusinessArgs, CommissionArgs, ProductivityArgs, Question, RentArgs, TipsArgs},
    output::{self, shown},
    quote,
    read::{about, option},
    reorder,
};
use crate::{
    business::{
        BesideTrade, CommissionRule, CommissionTier, Denominator, Productivity, RentOrWage, RentOrWageAt, beside_trade,
        commission_pay, productivity, share_tips, target_profit, trace_commission, trace_productivity,
        trace_target_profit, trace_tips,
    },
    money::{CommissionRate, Currency, Money, MoneyError, ProductiveShare, Rounding, parse_decimal},
    quantity::Duration,
    source::Sourced,
    text::Sheet,
};
use rust_decimal::Decimal;
use serde::Serialize;

const HALF_UP: Rounding = Rounding::MidpointAwayFromZero;

pub(super) fn run(args: &BusinessArgs) -> Outcome {
    match &args.question {
        Question::BreakEven(args) => break_even(args),
        Question::Commission(args) => commission(args),
        Question::Tips(args) => tips(args),
        Question::Rent(args) => rent(args),
        Question::Productivity(args) => productive(args),
        Question::Reorder(args) => reorder::run(args),
        Question::Quote(args) => quote::run(args),
    }
}

fn currency(code: &str) -> Result<Currency, Refusal> {
    Currency::from_code(code).map_err(|error| about("--currency", error))
}

fn amount(name: &str, text: &str, currency: Currency) -> Result<Money, Refusal> {
    Money::parse(text, currency).map_err(|error| about(name, error))
}

fn percent<T>(name: &str, text: &str, take: impl Fn(Decimal) -> Result<T, MoneyError>) -> Result<T, Refusal> {
    parse_decimal("percentage", text).and_then(take).map_err(|error| about(name, error))
}

fn break_even(args: &BreakEvenArgs) -> Outcome {
    if let (Some(list), Some(shop)) = (&args.list, &args.shop) {
        return quote::sales_of_the_list(args, list, shop);
    }
    let (Some(code), Some(price), Some(variable)) = (&args.currency, &args.price, &args.variable) else {
        return Err(Refusal("give --price, --variable and --currency, or --list and --shop".to_owned()));
    };
    let eur = currency(code)?;
    let (fixed, profit) = (amount("--fixed", &args.fixed, eur)?, amount("--profit", &args.profit, eur)?);
    let (price, variable) = (amount("--price", price, eur)?, amount("--variable", variable, eur)?);
    let trail = || trace_target_profit(fixed, price, variable, profit, HALF_UP).map(Vec::from);
    if let Some(told) = output::traced((&args.trail, &args.report), 0, trail) {
        return told;
    }
    let needed = target_profit(fixed, price, variable, profit, HALF_UP)?;
    output::report(&args.report, &needed, || {
        let goal = if profit.is_zero() { String::new() } else { format!(" and a profit of {profit}") };
        format!(
            "{} services, for takings of {}, cover {fixed}{goal}\n  exactly {} services, or takings of {}\n",
            needed.count,
            needed.sales,
            shown(needed.count_exact, 2),
            needed.sales_exact,
        )
    })
}

fn commission(args: &CommissionArgs) -> Outcome {
    let eur = currency(&args.currency)?;
    let (takings, base) = (amount("--takings", &args.takings, eur)?, amount("--base", &args.base, eur)?);
    let rule = match (&args.percent, &args.over) {
        (Some(rate), None) => CommissionRule::Flat(percent("--percent", rate, CommissionRate::from_percent)?),
        (Some(rate), Some(over)) => CommissionRule::OverThreshold {
            threshold: amount("--over", over, eur)?,
            rate: percent("--percent", rate, CommissionRate::from_percent)?,
        },
        (None, _) => CommissionRule::Tiered(args.tier.iter().map(|text| tier(text, eur)).collect::<Result<_, _>>()?),
    };
    let trail = || trace_commission(base, &rule, takings, HALF_UP).map(Vec::from);
    if let Some(told) = output::traced((&args.trail, &args.report), 0, trail) {
        return told;
    }
    let pay = commission_pay(base, &rule, takings, HALF_UP)?;
    output::report(&args.report, &pay, || {
        let base =
            if pay.base.is_zero() { String::new() } else { format!(" and {} base pay: {}", pay.base, pay.total) };
        format!("commission {} on {takings}{base}\n", pay.commission)
    })
}

/// `800=8`, or `14` for the rest.
fn tier(text: &str, currency: Currency) -> Result<CommissionTier, Refusal> {
    let (up_to, rate) = match text.split_once('=') {
        Some((up_to, rate)) => (Some(amount("--tier", up_to.trim(), currency)?), rate),
        None => (None, text),
    };
    Ok(CommissionTier { up_to, rate: percent("--tier", rate.trim(), CommissionRate::from_percent)? })
}

fn tips(args: &TipsArgs) -> Outcome {
    let tips = amount("--tips", &args.tips, currency(&args.currency)?)?;
    let hours: Result<Vec<Duration>, _> = args.hours.iter().map(|hours| Duration::from_h(*hours)).collect();
    let hours = hours.map_err(|error| about("--hours", error))?;
    let shares = share_tips(tips, &hours).map_err(|error| about("--hours", error))?;
    if let Some(told) = output::traced((&args.trail, &args.report), 0, || trace_tips(tips, &hours)) {
        return told;
    }
    output::report(&args.report, &shares, || {
        let mut sheet = Sheet::default();
        let row = |(share, hours): (&Money, &f64)| vec![crate::text::number(*hours, 2), share.to_string()];
        sheet.table(&["hours", "share"], &[0, 1], shares.iter().zip(&args.hours).map(row).collect());
        sheet.finish()
    })
}

#[derive(Serialize)]
struct RentReport {
    #[serde(flatten)]
    at: RentOrWageAt,
    break_even_takings: Money,
}

fn rent(args: &RentArgs) -> Outcome {
    let eur = currency(&args.currency)?;
    let choice = RentOrWage {
        rent: amount("--rent", &args.rent, eur)?,
        own_costs: amount("--own-costs", &args.own_costs, eur)?,
        variable_percent: percent("--variable", &args.variable, Ok)?,
        wage: amount("--wage", &args.wage, eur)?,
        commission: percent("--commission", &args.commission, CommissionRate::from_percent)?,
    };
    let takings = amount("--takings", &args.takings, eur)?;
    let trail = || choice.trail(takings, HALF_UP).map(Vec::from);
    if let Some(told) = output::traced((&args.trail, &args.report), 0, trail) {
        return told;
    }
    let at = choice.at(takings, HALF_UP)?;
    let report = RentReport { at, break_even_takings: choice.break_even_takings(HALF_UP)? };
    output::report(&args.report, &report, || {
        let RentOrWageAt { takings, renting, employed, difference } = report.at;
        let better = match difference.minor() {
            0 => "both leave the same".to_owned(),
            1.. => format!("renting leaves {difference} more"),
            _ => format!("the wage leaves {} more", difference.times(-1).unwrap_or(difference)),
        };
        format!(
            "at takings of {takings}: renting {renting}, employed {employed}\n  {better}\n  both leave the same at takings of {}\n",
            report.break_even_takings
        )
    })
}

#[derive(Serialize)]
struct ProductivityReport {
    #[serde(flatten)]
    productivity: Productivity,
    beside_trade: Option<Sourced<BesideTrade>>,
}

fn productive(args: &ProductivityArgs) -> Outcome {
    let hours = |name, hours| Duration::from_h(hours).map_err(|error| about(name, error));
    let of: Denominator = option("--time", &args.time)?;
    let productive = hours("--productive", args.productive)?;
    let whole = hours("--of", args.of)?;
    let found = productivity(productive, whole, of).map_err(|error| about("--of", error))?;
    let trail = || trace_productivity(productive, whole, of).map(|one| vec![one]);
    if let Some(told) = output::traced((&args.trail, &args.report), 0, trail) {
        return told;
    }
    // The trade's figure is of paid hours; beside another time it would mislead.
    let share = (of == Denominator::PaidTime).then(|| ProductiveShare::from_percent(found.percent).ok()).flatten();
    let report = ProductivityReport { productivity: found, beside_trade: share.map(beside_trade) };
    output::report(&args.report, &report, || {
        let mut text = format!("{}\n", report.productivity);
        if let Some(beside) = &report.beside_trade {
            let source = beside.citation.map(|citation| format!(" [{}]", citation.id)).unwrap_or_default();
            text += &format!("  {}{source}\n", beside.value);
        }
        text
    })
}
