//! `foilwork strand-test`: appends a reading to a strand book.

use super::{Answer, Outcome, Refusal, append::append, args::StrandTestArgs, read, situation::situation};
use crate::{
    lift::{LIGHTER, StrandReading, strand_json_line, strand_line},
    quantity::Duration,
};

pub(super) fn run(args: &StrandTestArgs) -> Outcome {
    let reading = StrandReading {
        situation: situation(&args.situation)?,
        time: Duration::from_min(args.minutes).map_err(|error| read::about("--minutes", error))?,
        before: read::option("--before", &args.before)?,
        after: read::option("--after", &args.after)?,
        reader: read::option("--reader", &args.reader)?,
        guest: args.situation.guest.clone(),
        product: args.situation.product.clone(),
    };
    if reading.is_darker() {
        return Err(Refusal(format!(
            "--after {} is darker than --before {}: {LIGHTER}",
            reading.after, reading.before
        )));
    }
    let failed = |error: std::io::Error| Refusal(format!("cannot write {}: {error}", args.book.display()));
    let json = args.book.extension().is_some_and(|name| name.to_string_lossy().to_ascii_lowercase().contains("json"));
    let (heading, line) = if json {
        (String::new(), strand_json_line(&reading))
    } else {
        (strand_line(None), strand_line(Some(&reading)))
    };
    append(&args.book, &heading, &line, |text| text.contains("before_level")).map_err(failed)?;
    let lifted = (reading.after - reading.before).levels();
    Ok(Answer::fine(format!(
        "written down: {} to {} in {} ({lifted:+.1} levels)\n",
        reading.before, reading.after, reading.time
    )))
}
