//! What to put on the trolley: the grams of each product that the services of a day need, and what is open before them.
//!
//! ```console
//! $ cargo run --example trolley -- examples/soft-gradient.toml examples/lowlights.json
//! ```

use foilwork::prelude::*;
use std::{collections::BTreeMap, error::Error, fs};

/// The list for the service files of a day.
pub(crate) fn trolley(files: &[String]) -> Result<String, Box<dyn Error>> {
    let mut grams: BTreeMap<String, f64> = BTreeMap::new();
    let mut open = Vec::new();
    for file in files {
        let text = fs::read_to_string(file)?;
        let plan = plan(&parse(&text, Format::of_name(file))?)?;
        for bowl in plan.mixes.iter().flat_map(|mix| &mix.bowls) {
            for part in &bowl.parts {
                *grams.entry(part.product.clone()).or_default() += part.weigh.g() * bowl.count as f64;
            }
        }
        let unsettled = plan.findings.iter().filter(|finding| finding.verdict <= Verdict::NotJudged);
        open.extend(unsettled.map(|finding| format!("{}: {finding}", plan.title)));
    }
    let mut list = String::from("on the trolley\n");
    for (product, grams) in grams {
        list += &format!("{grams:>8.1} g  {product}\n");
    }
    if !open.is_empty() {
        list += "before anything is mixed\n";
        list.extend(open.iter().map(|finding| format!("  {finding}\n")));
    }
    Ok(list)
}

fn main() -> Result<(), Box<dyn Error>> {
    let files: Vec<String> = std::env::args().skip(1).collect();
    if files.is_empty() {
        return Err("name the service files of the day".into());
    }
    print!("{}", trolley(&files)?);
    Ok(())
}
