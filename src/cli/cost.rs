use super::{
    Outcome, Refusal,
    args::CostArgs,
    kind::{Kind, located},
    output, read,
    shop::read_with,
    workbook::{self, List},
};
use crate::{
    business::list::{ListOrder, Packs, PricedTable, ServiceLine, parse_csv, parse_json, price_services},
    sheet,
    shop::Shop,
    workbook::services_workbook,
};
use std::path::Path;

/// `foilwork cost`: a list of services, each costed and priced, with totals that add up to the minor unit.
pub(super) fn run(args: &CostArgs) -> Outcome {
    let order: ListOrder = read::option("--sort", &args.sort)?;
    let table = priced(&args.list, &args.shop)?;
    let lines = table.in_order(order).into_iter().cloned().collect();
    let table = PricedTable { lines, ..table };
    if let Some(path) = &args.xlsx {
        return workbook::deliver(path, &services_workbook(&table)?, 0);
    }
    let text = if args.trail.trail {
        output::trail(&table.trail(), args.json)?
    } else if args.json {
        output::json(&table)?
    } else if args.csv {
        table.to_csv()
    } else {
        sheet::service_table(&table)
    };
    output::deliver(text, 0, &args.output)
}

/// A list of services, costed and priced by the terms of a shop.
pub(super) fn priced(list: &Path, shop: &Path) -> Result<PricedTable, Refusal> {
    let (shop, business) = read_with(shop, Shop::business)?;
    let packs = shop.packs().unwrap_or_else(|| business.currency.into());
    let services = read_list(list, packs)?;
    price_services(&services, &business).map_err(|problems| located(&list.to_string_lossy(), &problems))
}

/// A shop, and a list of services that names its products.
pub(super) fn services(list: &Path, shop: &Path) -> Result<(Shop, Vec<ServiceLine>), Refusal> {
    let (shop, ()) = read_with(shop, |_| Ok(()))?;
    let no_currency =
        || Refusal("the shop has no `currency`: a list names products by packs that have a price".to_owned());
    let services = read_list(list, shop.packs().ok_or_else(no_currency)?)?;
    Ok((shop, services))
}

fn read_list(list: &Path, packs: Packs) -> Result<Vec<ServiceLine>, Refusal> {
    let list = List::read(list)?;
    let services = if list.text.trim_start_matches('\u{feff}').trim_start().starts_with(['[', '{']) {
        parse_json(&list.text, packs)
    } else {
        parse_csv(&list.text, packs)
    };
    services.map_err(|problems| list.refused(Kind::List, &problems))
}
