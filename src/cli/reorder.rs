//! `foilwork business reorder`: of one product by its amounts, or of all that a list of services takes.

use super::{
    Outcome, Refusal,
    args::ReorderArgs,
    cost,
    output::{self, shown},
    read::{about, option},
};
use crate::{
    business::{Reorder, StockLevel, list::taken},
    money::Measure,
    shop::{OrderDays, ProductOrder},
    text::{Sheet, amount},
};
use rust_decimal::Decimal;
use serde::Serialize;
use std::path::Path;

pub(super) fn run(args: &ReorderArgs) -> Outcome {
    match (&args.list, &args.shop, args.sold_in_days) {
        (Some(list), Some(shop), Some(sold_in)) => {
            let reserve = args.reserve_days.unwrap_or(0);
            let days = OrderDays { sold_in, lead: args.lead_days, cover: args.cover_days, reserve };
            of_the_list(args, (list, shop), days)
        }
        _ => one(args),
    }
}

fn of_the_list(args: &ReorderArgs, (list, shop): (&Path, &Path), days: OrderDays) -> Outcome {
    let (shop, services) = cost::services(list, shop)?;
    let taken = taken(&services).map_err(|error| about("--list", error))?;
    if taken.is_empty() {
        return Err(Refusal(
            "--list: no service names a product of the shop: write `product` and `product_g` (and `developer`), the name as \
             in the shop"
                .to_owned(),
        ));
    }
    let orders = shop.orders(&taken, days).map_err(|error| about("--sold-in-days", error))?;
    let trail = || {
        let all: Result<Vec<_>, _> = orders.iter().map(|order| order.trail(days)).collect();
        all.map(|all| all.into_iter().flatten().collect())
    };
    if let Some(told) = output::traced((&args.trail, &args.report), 0, trail) {
        return told;
    }
    output::report(&args.report, &orders, || table(&orders))
}

fn table(orders: &[ProductOrder]) -> String {
    let unknown = || "?".to_owned();
    let row = |order: &ProductOrder| {
        let (point, now) = match &order.reorder {
            Some(Reorder { reorder_point, due: true, packs, .. }) => {
                (shown(*reorder_point, 0).to_string(), packs.to_string())
            }
            Some(Reorder { reorder_point, .. }) => (shown(*reorder_point, 0).to_string(), "-".to_owned()),
            None => (unknown(), unknown()),
        };
        let packs = order.pack.map_or_else(unknown, |pack| amount(pack, 0));
        let in_hand = order.in_hand.map_or_else(unknown, |mass| amount(mass, 0));
        let lasts = order.stock_days.map_or_else(unknown, |days| shown(days, 1).to_string());
        vec![order.product.clone(), in_hand, amount(order.daily_use, 1), lasts, point, now, packs]
    };
    let mut sheet = Sheet::default();
    let names = ["product", "in hand g", "a day g", "lasts days", "order at g", "order packs", "of g"];
    sheet.table(&names, &[1, 2, 3, 4, 5, 6], orders.iter().map(row).collect());
    if orders.iter().any(|order| order.reorder.is_none()) {
        sheet.paragraph("? is what the shop does not say: enter `in_hand_g`, and `pack_g` with a price.", 0);
    }
    sheet.paragraph("What is ordered and not yet delivered is not counted: the shop does not know of it.", 0);
    sheet.finish()
}

#[derive(Serialize)]
struct ReorderReport {
    #[serde(flatten)]
    reorder: Reorder,
    stock_days: Option<Decimal>,
}

fn one(args: &ReorderArgs) -> Outcome {
    let (Some(on_hand), Some(daily), Some(pack)) = (&args.on_hand, &args.daily, &args.pack) else {
        return Err(Refusal("give --on-hand, --daily and --pack, or --list and --shop".to_owned()));
    };
    let on_hand: Measure = option("--on-hand", on_hand)?;
    // What is left out is none of it, measured alike.
    let none = on_hand.none();
    let or_none =
        |name: &str, text: &Option<String>| text.as_deref().map_or(Ok(none), |text| option::<Measure>(name, text));
    let stock = StockLevel {
        on_hand,
        on_order: or_none("--on-order", &args.on_order)?,
        daily_use: option("--daily", daily)?,
        reserve: or_none("--reserve", &args.reserve)?,
    };
    let pack: Measure = option("--pack", pack)?;
    let trail = || stock.trail(args.lead_days, args.cover_days, pack);
    if let Some(told) = output::traced((&args.trail, &args.report), 0, trail) {
        return told;
    }
    let reorder = stock.reorder(args.lead_days, args.cover_days, pack)?;
    let report = ReorderReport { reorder, stock_days: stock.days()? };
    output::report(&args.report, &report, || {
        let Reorder { reorder_point, due, packs, unit } = report.reorder;
        let wanted = due && packs > 0;
        let now = if wanted { format!("order now: {packs} x {pack}") } else { "nothing to order yet".to_owned() };
        let days =
            report.stock_days.map_or("nothing is used".to_owned(), |days| format!("lasts {} days", shown(days, 1)));
        format!("{now}\n  order at {reorder_point} {unit} on hand and on order\n  the {on_hand} on hand: {days}\n")
    })
}
