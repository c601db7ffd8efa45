use super::{Answer, Outcome, Refusal, args::StartArgs, read};
use crate::{
    limits::Jurisdiction,
    money::Currency,
    service::{Starter, starter},
};
use std::{
    fs::{OpenOptions, create_dir_all},
    io::Write,
    path::Path,
};

/// `foilwork start`: a service, a shop and a list of services to write over.
pub(super) fn run(args: &StartArgs) -> Outcome {
    let jurisdiction: Jurisdiction = read::option("--jurisdiction", &args.jurisdiction)?;
    let Starter { service, shop, services } = starter(jurisdiction, Currency::from_code(&args.currency)?);
    let folder = &args.folder;
    let files = [("service.toml", service), ("shop.toml", shop), ("services.csv", services)];
    if let Some((name, _)) = files.iter().find(|(name, _)| folder.join(name).exists()) {
        let there = folder.join(name);
        return Err(Refusal(format!("{} is there already: name a folder without it", there.display())));
    }
    let failed = |error: std::io::Error| Refusal(format!("cannot write into {}: {error}", folder.display()));
    create_dir_all(folder).map_err(failed)?;
    for (name, text) in &files {
        write_new(&folder.join(name), text).map_err(failed)?;
    }
    let said = "wrote service.toml, shop.toml and services.csv: write your own over the examples, then\n  \
                foilwork plan service.toml\n  foilwork cost services.csv --shop shop.toml\n";
    Ok(Answer::fine(said.to_owned()))
}

fn write_new(path: &Path, text: &str) -> std::io::Result<()> {
    OpenOptions::new().write(true).create_new(true).open(path)?.write_all(text.as_bytes())
}
