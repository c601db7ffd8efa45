use super::{Outcome, args::SourcesArgs, output};
use crate::{
    source::{Citation, Consulted, register},
    text::Sheet,
};

/// `foilwork sources`: every citation in use, and how it was consulted.
pub(super) fn run(args: &SourcesArgs) -> Outcome {
    let all: Vec<&Citation> = register().collect();
    output::report(&args.report, &all, || text(&all))
}

fn text(all: &[&Citation]) -> String {
    let mut sheet = Sheet::default();
    for citation in all {
        sheet.paragraph(&format!("{} [{}]", citation.id, words(citation.consulted)), 4);
        sheet.indented(citation.text, 4);
    }
    let unseen = all.iter().filter(|citation| !citation.is_verified()).count();
    sheet.blank();
    sheet.paragraph(
        &format!("{} sources, {unseen} of them from memory: unverified, no finding turns green on them.", all.len()),
        0,
    );
    sheet.finish()
}

const fn words(consulted: Consulted) -> &'static str {
    match consulted {
        Consulted::Retrieved => "read",
        Consulted::Library => "from a scientific library's data",
        Consulted::Computed => "computed here from cited numbers",
        Consulted::FromMemory => "from memory, unverified",
        Consulted::CommonPractice => "common practice",
    }
}
