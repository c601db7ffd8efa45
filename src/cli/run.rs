use super::{
    Refusal,
    args::{Arguments, Command},
    blend, business, chart, checklist, choose, consult, convert, cost, day, dilute, fill, foils, forget, hair, head,
    history, input, level, lift, limits, note, plan, price, record, scale, schema, sources, start, strand_test, swatch,
    table, titrate, toner, worksheet,
};
use crate::text::{inert, shortened};
use clap::{CommandFactory, FromArgMatches};
use std::{
    ffi::OsString,
    io::{self, Write},
};

/// Bad input.
const REFUSED: u8 = 2;

/// Runs the command line with the given arguments (the first is the program's name) and returns the exit status.
///
/// # Example
///
/// ```
/// let args = ["foilwork", "convert", "6 % w/w", "--to", "volumes"];
/// assert_eq!(foilwork::cli::run(args.map(Into::into).to_vec()), 0);
/// ```
#[must_use]
pub fn run(args: Vec<OsString>) -> u8 {
    let arguments = match parse(args) {
        Ok(arguments) => arguments,
        // Help and version come this way too, with status 0.
        Err(error) => {
            let text = in_our_words(&error.render().to_string());
            return if error.use_stderr() { complain(&text) } else { print(&text, 0) };
        }
    };
    input::begin();
    let outcome = match &arguments.command {
        Command::Plan(args) => plan::run(args),
        Command::Consult(args) => consult::run(args),
        Command::Start(args) => start::run(args),
        Command::Schema(args) => schema::run(args),
        Command::Convert(args) => convert::run(args),
        Command::Dilute(args) => dilute::run(args),
        Command::Table(args) => table::run(args),
        Command::Fill(args) => fill::run(args),
        Command::Blend(args) => blend::run(args),
        Command::Titrate(args) => titrate::run(args),
        Command::Scale(args) => scale::run(args),
        Command::Hair(args) => hair::run(args),
        Command::Choose(args) => choose::run(args),
        Command::Head(args) => head::run(args),
        Command::Foils(args) => foils::run(args),
        Command::Day(args) => day::run(args),
        Command::Note(args) => note::run(args),
        Command::Record(args) => record::run(args),
        Command::History(args) => history::run(args),
        Command::Forget(args) => forget::run(args),
        Command::Level(args) => level::run(args),
        Command::Lift(args) => lift::run(args),
        Command::StrandTest(args) => strand_test::run(args),
        Command::Swatch(args) => swatch::run(args),
        Command::Toner(args) => toner::run(args),
        Command::Limits(args) => limits::run(args),
        Command::Price(args) => price::run(args),
        Command::Cost(args) => cost::run(args),
        Command::Business(args) => business::run(args),
        Command::Chart(args) => chart::run(args),
        Command::Worksheet(args) => worksheet::run(args),
        Command::Checklist(args) => checklist::run(args),
        Command::Sources(args) => sources::run(args),
    };
    match outcome {
        Ok(answer) => print(&answer.text, answer.status),
        Err(Refusal(text)) => complain(&format!("{}\n", prefixed(&text))),
    }
}

/// The words of the standard library for what is no number, with the way out.
fn in_our_words(text: &str) -> String {
    let way_out = "write the number alone, with a point: the option says the unit";
    let text = text.replace("invalid float literal", way_out);
    text.replace("invalid digit found in string", "write a whole number, without its unit")
}

/// A number below zero is a value, refused by what it is for: not an option that nobody knows.
pub(super) fn parse(args: Vec<OsString>) -> Result<Arguments, clap::Error> {
    let command = Arguments::command().mut_subcommands(below_zero);
    Arguments::from_arg_matches(&command.try_get_matches_from(args)?)
}

fn below_zero(command: clap::Command) -> clap::Command {
    command.allow_negative_numbers(true).mut_subcommands(below_zero)
}

/// Prints the text, with the status it came to; text that did not get out is an error.
///
/// A reader that went away (`foilwork ... | head`) has what it wanted.
fn print(text: &str, status: u8) -> u8 {
    let mut out = io::stdout().lock();
    match out.write_all(inert(text).as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
            complain(&format!("error: cannot write to the standard output: {error}\n"))
        }
        _ => status,
    }
}

fn complain(text: &str) -> u8 {
    // Where the complaint cannot be written either, the status alone tells.
    let _ = io::stderr().lock().write_all(inert(text).as_bytes());
    REFUSED
}

/// Every problem is a line of its own; an indented line belongs to the one above it. Long ones lose their middle.
fn prefixed(text: &str) -> String {
    let prefix = |line: &str| {
        let line = shortened(line);
        if line.starts_with("  ") { line.into_owned() } else { format!("error: {line}") }
    };
    text.lines().map(prefix).collect::<Vec<_>>().join("\n")
}
