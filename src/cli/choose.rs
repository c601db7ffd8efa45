//! `foilwork choose`: technique, class of product, steps before it, and class of service, each with its reasons.

use super::{Outcome, Refusal, args::ChooseArgs, output, read};
use crate::{
    hair::{Weeks, growth},
    head::{
        ClassDecision, ClassQuestion, HALF_BELOW_PERCENT, PARTIAL_BELOW_PERCENT, ServiceClass, StepNeeds,
        TechniqueDecision, TechniqueQuestion, Treated, choose_technique, product_class, service_class,
        trace_product_class, trace_service_class, trace_technique,
    },
    quantity::{Length, Share},
    text::{Sheet, number, range},
};
use serde::Serialize;

/// What was asked, as data.
#[derive(Serialize)]
struct Report {
    technique: Option<TechniqueDecision>,
    product: Option<ClassDecision>,
    before: Vec<StepNeeds>,
    service_class: Option<ServiceClass>,
}

pub(super) fn run(args: &ChooseArgs) -> Outcome {
    let class = args.from.as_ref().zip(args.to.as_ref()).map(|(from, to)| class(args, from, to)).transpose()?;
    let product = class.as_ref().map(product_class);
    let treated = args.treats.iter().map(|text| treats(text)).collect::<Result<Vec<_>, _>>()?;
    let all: f64 = treated.iter().map(|part| part.area.percent()).sum();
    if all > 100.0 + 1e-9 {
        let all = number(all, 1);
        return Err(Refusal(format!(
            "--treats takes {all} % of the head together: no more than 100 % (take a part out)"
        )));
    }
    let wish =
        args.start.as_ref().zip(args.length).map(|(start, length)| technique(args, start, length)).transpose()?;
    let report = Report {
        technique: wish.as_ref().map(choose_technique),
        before: product.iter().flat_map(|product| &product.before).map(|step| step.needs()).collect(),
        product,
        service_class: (!treated.is_empty()).then(|| service_class(&treated)),
    };
    if report.technique.is_none() && report.product.is_none() && report.service_class.is_none() {
        return Err(Refusal(
            "nothing to choose: give --start, --upkeep and --length for a technique, --from and --to for a class of product, or \
             --treats for a class of service"
                .to_owned(),
        ));
    }
    let trail = || {
        let (one, two) = (wish.as_ref().map(trace_technique), class.as_ref().map(trace_product_class));
        let three = (!treated.is_empty()).then(|| trace_service_class(&treated));
        Ok::<_, Refusal>([one, two, three].into_iter().flatten().collect())
    };
    if let Some(told) = output::traced((&args.trail, &args.report), 0, trail) {
        return told;
    }
    output::report(&args.report, &report, || text(&report))
}

fn technique(args: &ChooseArgs, start: &str, length: f64) -> Result<TechniqueQuestion, Refusal> {
    let about = read::about;
    Ok(TechniqueQuestion {
        start: read::option("--start", start)?,
        upkeep: Weeks::from_weeks(args.upkeep.unwrap_or_default()).map_err(|error| about("--upkeep", error))?,
        taken: args.taken.map(Share::from_percent).transpose().map_err(|error| about("--taken", error))?,
        length: Length::from_cm(length).map_err(|error| about("--length", error))?,
        growth: growth(None).value,
        planned: None,
    })
}

fn class(args: &ChooseArgs, from: &str, to: &str) -> Result<ClassQuestion, Refusal> {
    Ok(ClassQuestion {
        from: read::option("--from", from)?,
        to: read::option("--to", to)?,
        artificial: args.artificial,
        lightened: args.lightened,
        white: Share::from_percent(args.white).map_err(|error| read::about("--white", error))?,
        planned: args.planned.as_deref().map(|text| read::option("--planned", text)).transpose()?,
    })
}

/// `weave=55`: a technique, and the share of the hair in the area worked on.
fn treats(text: &str) -> Result<Treated, Refusal> {
    let wrong = || Refusal(format!("--treats {text:?}: write technique=percent, for example weave=55"));
    let (technique, percent) = text.split_once('=').ok_or_else(wrong)?;
    let percent = percent.trim().trim_end_matches('%').trim_end().parse().map_err(|_| wrong())?;
    Ok(Treated {
        technique: read::option("--treats", technique.trim())?,
        area: Share::from_percent(percent).map_err(|error| read::about("--treats", error))?,
    })
}

fn text(report: &Report) -> String {
    let mut sheet = Sheet::default();
    if let Some(found) = &report.technique {
        let taken = found.technique.zip(found.practice).map_or_else(
            || "none does it: allow a sharper start or fewer weeks".to_owned(),
            |(technique, practice)| {
                let weeks = found
                    .line_shows_after
                    .as_ref()
                    .map(|weeks| format!(", its regrowth shows after {} weeks", range(weeks, 0)));
                format!("{technique} ({practice}{})", weeks.unwrap_or_default())
            },
        );
        sheet.paragraph(&format!("technique: {taken} [{}]", found.basis), 2);
        for other in &found.rejected {
            sheet.paragraph(&format!("- {}: {}", other.technique, other.why), 2);
        }
    }
    if let Some(found) = &report.product {
        sheet.paragraph(&format!("product: {}, {} [{}]", found.product, found.why, found.basis), 2);
        for other in &found.rejected {
            sheet.paragraph(&format!("- {}: {}", other.product, other.why), 2);
        }
    }
    for needs in &report.before {
        sheet.paragraph(&format!("before it: {}", step(needs)), 2);
        sheet.paragraph(&format!("mind: {}", needs.mind.join("; ")), 4);
    }
    if let Some(class) = report.service_class {
        let bounds = format!("bounds of {PARTIAL_BELOW_PERCENT} and {HALF_BELOW_PERCENT} % assumed");
        sheet.paragraph(&format!("booked as: {class} [{bounds}]"), 2);
    }
    sheet.finish()
}

/// What a step takes, in a line.
fn step(needs: &StepNeeds) -> String {
    let strength =
        needs.strongest_developer.map(|most| format!(", developer of {} % w/w at most", number(most.ww_percent(), 1)));
    format!(
        "{}: {}{}; {} g on a gram of hair, {} min, then {} [{}]",
        needs.step,
        needs.what,
        strength.unwrap_or_default(),
        range(&needs.take_up, 1),
        range(&needs.develop, 0),
        needs.then,
        needs.basis
    )
}
