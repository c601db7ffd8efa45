use super::{
    Outcome,
    args::CostArgs,
    output,
    shop::{located, read_with},
};
use crate::{
    business::list::{parse_csv, parse_json, price_services},
    sheet,
    shop::Shop,
};

/// `foilwork cost`: a list of services, each costed and priced, with totals that add up to the minor unit.
pub(super) fn run(args: &CostArgs) -> Outcome {
    let (_, business) = read_with(&args.shop, Shop::business)?;

    let name = args.list.to_string_lossy();
    let text = output::read(&args.list)?;
    let list = if name.to_ascii_lowercase().ends_with(".json") {
        parse_json(&text, business.currency)
    } else {
        parse_csv(&text, business.currency)
    };
    let list = list.map_err(|problems| located(&name, &problems))?;
    let table = price_services(&list, &business).map_err(|problems| located(&name, &problems))?;
    let text = if args.json {
        serde_json::to_string_pretty(&table)? + "\n"
    } else if args.csv {
        table.to_csv()
    } else {
        sheet::service_table(&table)
    };
    output::deliver(text, 0, &args.output)
}
