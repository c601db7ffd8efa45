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
    let path = |name: &str| typed(&folder.join(name));
    let (service, shop, services) = (path("service.toml"), path("shop.toml"), path("services.csv"));
    Ok(Answer::fine(format!(
        "wrote service.toml, shop.toml and services.csv: write your own over the examples, then\n  \
         foilwork plan {service}\n  foilwork cost {services} --shop {shop}\n"
    )))
}

/// A path as it is typed into a shell: in quotes where a character may mean something there.
fn typed(path: &Path) -> String {
    let text = path.display().to_string();
    let plain = |c: char| c.is_alphanumeric() || matches!(c, '/' | '\\' | '.' | '-' | '_' | ':');
    if text.chars().all(plain) { text } else { format!("\"{text}\"") }
}

fn write_new(path: &Path, text: &str) -> std::io::Result<()> {
    OpenOptions::new().write(true).create_new(true).open(path)?.write_all(text.as_bytes())
}
