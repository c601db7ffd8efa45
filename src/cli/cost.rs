use super::{Outcome, Refusal, args::CostArgs, output};
use crate::{
    business::list::{BusinessTerms, parse_csv, parse_json, price_services},
    reader::Problems,
    sheet,
};

/// `foilwork cost`: a list of services, each costed and priced, with totals that add up to the minor unit.
pub(super) fn run(args: &CostArgs) -> Outcome {
    let terms_name = args.terms.to_string_lossy();
    let terms_text = output::read(&args.terms)?;
    let unreadable = |error: String| Refusal(format!("{terms_name}: {error}"));
    let terms: BusinessTerms = if terms_name.to_ascii_lowercase().ends_with(".json") {
        serde_json::from_str(&terms_text).map_err(|error| unreadable(error.to_string()))?
    } else {
        toml::from_str(&terms_text).map_err(|error| unreadable(error.to_string()))?
    };
    let business = terms.check().map_err(|problems| located(&terms_name, &problems))?;

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

fn located(name: &str, problems: &Problems) -> Refusal {
    Refusal(problems.0.iter().map(|problem| format!("{name}: {problem}")).collect::<Vec<_>>().join("\n"))
}
