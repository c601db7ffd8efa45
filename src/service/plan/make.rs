use super::{
    Booking, ChairTime, DayPlan, Evidence, Hair, Plan, SaidBefore, Start, StockPlan, cautions,
    check::{self, Stages},
    colours::Colours,
    costs,
    first_steps::FirstSteps,
    head_plan::HeadPlan,
    lift_plan, mixes,
    sections::Sections,
    strengths::Strengths,
    timeline::Timeline,
    unknown, unused,
};
use crate::{
    finding::Verdict,
    lift::Experience,
    reader::Format,
    service::{
        file::{self, Problems},
        request::Request,
        shape::ServiceFile,
    },
};

/// Makes the plan of a service.
///
/// Findings that say stop do not prevent the plan: they are part of it, and [`Plan::blocked`] tells.
///
/// # Errors
///
/// [`Problems`] when something cannot be computed at all, for example a strength that the shelf does not reach. The
/// problems of all mixes are reported together.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{parse, plan}};
///
/// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let plan = plan(&file)?;
/// assert_eq!(plan.mixes[0].name, "nape");
/// assert!(plan.mixes[0].on_hair.high().ww_percent() < 12.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn plan(file: &ServiceFile) -> Result<Plan, Problems> {
    plan_with(file, &Evidence::default())
}

/// Makes the plan with what is known beside the file: the strand book that it names, and levels seen in mid-service.
///
/// What was seen moves the forecast of every section, for it is the same hair; strengths and starts stay as they were, for
/// they are on the hair already.
///
/// # Errors
///
/// [`Problems`], as for [`plan`]; a level seen on a section that is not lightened, or not begun, is one under `seen`.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{Evidence, parse, plan_with}};
///
/// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let seen = ["nape=7.5@25".parse()?].to_vec();
/// let (before, after) = (plan_with(&file, &Evidence::default())?, plan_with(&file, &Evidence { seen, ..Evidence::default() })?);
/// let width = |level: foilwork::source::Interval<foilwork::colour::Level>| level.high().number() - level.low().number();
/// assert!(width(after.lift[0].first_strand) < width(before.lift[0].first_strand));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn plan_with(file: &ServiceFile, evidence: &Evidence) -> Result<Plan, Problems> {
    made(Request::new(file, evidence.foil_pace)?, evidence, true)
}

/// The same without the best order of the work, whose search takes longer than all the rest. Its time in the chair, and all that
/// rests on it, is on the clock of the sheet: hold it against another plan without a day only.
pub(in crate::service) fn plan_without_day(file: &ServiceFile, evidence: &Evidence) -> Result<Plan, Problems> {
    made(Request::new(file, evidence.foil_pace)?, evidence, false)
}

fn made(request: Request, evidence: &Evidence, with_day: bool) -> Result<Plan, Problems> {
    let hair = Hair::of(&request)?;
    let sections = Sections::of(&request, &hair)?;
    let known = Experience::from_readings(&lift_plan::readings(&request, evidence));
    let strengths = Strengths::of(&request, &sections, &known)?;
    let mut mixes = mixes::mixes(&request, &sections, &strengths)?;
    let mut colours = Colours::of(&request, &hair, &sections, &mixes)?;
    let mut first = FirstSteps::of(&request, &hair, (&sections, &mixes), &colours);
    colours.after_lightening(&sections, &first.steps);
    let timeline = Timeline::of(&hair, &sections, &mixes, &strengths, first.over);
    let lift = lift_plan::lift(&request, &sections, (&mixes, &timeline), evidence)?;
    let day = if with_day { DayPlan::of(&request, &sections, &mixes) } else { None };
    let chair = ChairTime::of(&request, (&sections, &first), &timeline, day.as_ref());
    let money = costs::money(&request, (&sections, &first), &mixes, &chair)?;
    let head_plan = HeadPlan::of(&request, &hair, &sections, &colours)?;
    let stock = StockPlan::of(&request, (&sections, &first), &mixes)?;
    let start = Start::of(request.start);
    let consulted = SaidBefore::of(&request, &hair, &sections, head_plan.growth, &lift);
    let booking = Booking::of(&request, head_plan.service_class, &chair, money.as_ref())?;
    let found = check::check(&Stages {
        start,
        jurisdiction: request.jurisdiction,
        file: &request.file,
        evidence,
        hair: &hair,
        sections: &sections,
        mixes: &mixes,
        colours: &colours,
        timeline: &timeline,
        strengths: &strengths,
        lift: &lift,
        stock: &stock,
        first: &first.steps,
        head: &head_plan,
        booking: &booking,
        money: money.as_ref(),
        request: &request,
        consulted: consulted.as_ref(),
    });
    let findings = found.finish(&mut mixes, &mut first.steps);
    let head = &request.file.service;
    Ok(Plan {
        format: Plan::FORMAT,
        foilwork: env!("CARGO_PKG_VERSION"),
        blocked: findings.iter().any(|finding| finding.verdict == Verdict::Stop),
        title: head.title.clone(),
        start,
        guest: head.guest.clone(),
        colourist: head.colourist.clone(),
        jurisdiction: request.jurisdiction,
        scale_division: request.scale_division,
        habits: request.shop.habits,
        notes: head.notes.clone(),
        findings,
        consulted,
        contrasts: colours.pairs(&sections).into_iter().map(|pair| pair.contrast).collect(),
        colour: colours.into_sections(),
        strengths: strengths.chosen,
        together: strengths.together,
        lift,
        cautions: cautions::cautions(&request, &sections, &first),
        stated_not_used: unused::stated_not_used(&request),
        not_computed: unknown::not_computed(&request, &sections, &mixes, money.is_some()),
        defaults: request.defaults.clone(),
        stock,
        head: head_plan,
        hair,
        order_basis: sections.order_basis(),
        chair,
        day,
        order: timeline.0,
        first_steps: first.steps,
        mixes,
        booking,
        money,
    })
}

/// Reads a service file and makes its plan; every problem names its line, those that show only in planning too.
///
/// # Errors
///
/// [`Problems`], as for [`parse`](crate::service::parse) and [`plan`].
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::plan_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/lowlights.json")?, Format::Json)?;
/// assert!(!plan.blocked);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn plan_text(text: &str, format: Format) -> Result<Plan, Problems> {
    let file = file::parse(text, format)?;
    let plan = Request::of_checked(&file, None).and_then(|request| made(request, &Evidence::default(), true));
    plan.map_err(|problems| problems.located(text, format))
}
