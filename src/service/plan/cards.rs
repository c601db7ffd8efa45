use super::{Bowl, FirstStep, Mix, PartKind, Plan, Start, Step, WeighedPart, timeline};
use crate::{
    finding::{Finding, Verdict},
    head::StepEnd,
    quantity::{Duration, Mass, MassFraction},
    service::request::WorkStage,
    source::{Basis, Interval},
};
use jiff::civil::DateTime;
use schemars::JsonSchema;
use serde::Serialize;

/// What lies beside one fresh bowl: whether to begin at all, what to weigh, strength on the hair, times, what to mind.
///
/// The times are planned ones; write down when the bowl was really mixed.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct BowlCard {
    /// Whether the plan says stop: then do not mix this bowl.
    pub blocked: bool,
    /// Every finding of the plan that says stop.
    pub stops: Vec<Finding>,
    /// The findings about this mix that ask for thought, worst first.
    pub findings: Vec<Finding>,
    /// A code for the guest.
    pub guest: Option<String>,
    /// What the bowl is for.
    pub name: String,
    /// Section, toner or root shadow.
    pub stage: WorkStage,
    /// Which of the bowls of this mix, from one.
    pub bowl: usize,
    /// How many there are.
    pub bowls: usize,
    /// What goes in, in the order of weighing.
    pub parts: Vec<WeighedPart>,
    /// How it ends, where it is a step before the colour; absent for every other bowl, which is rinsed.
    pub then: Option<StepEnd>,
    /// What to mind in such a step; empty for every other bowl.
    pub mind: Vec<&'static str>,
    /// What the scale shows in the end.
    #[serde(rename = "total_g")]
    pub total: Mass,
    /// Strength on the hair; absent for a remover that may hold peroxide, of which only its maker knows how much.
    #[serde(rename = "on_hair_ww_percent")]
    pub on_hair: Option<Interval<MassFraction>>,
    /// What that strength rests on.
    pub strength_basis: Basis,
    /// The worst error of a part's share that rounding to the scale causes.
    pub worst_ratio_error_percent: f64,
    /// Times in minutes from the first brush; for toners and root shadows the earliest, as if rinsing took no time.
    pub minutes: CardMinutes,
    /// The same on the salon clock, where the time of day of the start is stated.
    pub clock: Option<CardClock>,
}

/// The times of a card, counted from the first brush.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CardMinutes {
    /// When it is mixed.
    #[serde(rename = "mixed_at_min")]
    pub mixed_at: Duration,
    /// When it must no longer be used.
    #[serde(rename = "use_by_min")]
    pub use_by: Duration,
    /// When to look at the hair.
    #[serde(rename = "look_at_min")]
    pub look_at: Vec<Duration>,
    /// From when on the last strand is looked at too.
    #[serde(rename = "look_at_last_min")]
    pub look_at_last: Option<Duration>,
    /// When it is planned to be rinsed, never beyond a product's own limit; a step before the colour ends about then by `then`.
    #[serde(rename = "rinse_by_min")]
    pub rinse_by: Duration,
    /// Within what a step before the colour ends, by the hair; absent for a bowl of the colour.
    #[serde(rename = "ends_min")]
    pub ends: Option<Interval<Duration>>,
}

/// The times of a card on the salon clock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CardClock {
    /// When it is mixed.
    #[schemars(with = "String")]
    pub mixed_at: DateTime,
    /// When it must no longer be used.
    #[schemars(with = "String")]
    pub use_by: DateTime,
    /// When to look at the hair.
    #[schemars(with = "Vec<String>")]
    pub look_at: Vec<DateTime>,
    /// From when on the last strand is looked at too.
    #[schemars(with = "Option<String>")]
    pub look_at_last: Option<DateTime>,
    /// When it is planned to be rinsed, never beyond a product's own limit.
    #[schemars(with = "String")]
    pub rinse_by: DateTime,
    /// The earliest that a step before the colour ends by the estimate; absent for a bowl of the colour.
    #[schemars(with = "Option<String>")]
    pub ends_earliest: Option<DateTime>,
    /// The latest.
    #[schemars(with = "Option<String>")]
    pub ends_latest: Option<DateTime>,
}

/// One card for each fresh bowl, in the order of mixing; planned steps before the colour come first.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{mixing_cards, parse, plan}};
///
/// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let cards = mixing_cards(&plan(&file)?);
/// let clock = cards[0].clock.as_ref().ok_or("the file states the time of day")?;
/// assert_eq!(clock.mixed_at, jiff::civil::date(2026, 11, 25).at(10, 0, 0, 0));
/// assert_eq!(clock.use_by, jiff::civil::date(2026, 11, 25).at(10, 40, 0, 0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn mixing_cards(plan: &Plan) -> Vec<BowlCard> {
    let rinsed = timeline::last_rinse(&plan.order);
    // What the shop has nothing for has a card without parts, so that nobody begins with the colour; its findings say why.
    let planned = plan.first_steps.iter().filter(|step| step.planned);
    let mut cards: Vec<BowlCard> = planned.map(|step| before(plan, step)).collect();
    for (mix, step) in plan.mixes.iter().zip(&plan.order) {
        let offset = if mix.stage == WorkStage::Section { Duration::ZERO } else { rinsed };
        let fresh = mix.bowls.iter().flat_map(|bowl| std::iter::repeat_n(bowl, bowl.count));
        for (i, (bowl, mixed_at)) in fresh.zip(&step.mix_at).enumerate() {
            let minutes = minutes(bowl, step, *mixed_at, offset);
            cards.push(card(plan, mix, bowl, i + 1, minutes));
        }
    }
    cards
}

fn minutes(bowl: &Bowl, step: &Step, mixed_at: Duration, offset: Duration) -> CardMinutes {
    let mixed_at = offset + mixed_at;
    CardMinutes {
        mixed_at,
        use_by: mixed_at + bowl.use_within,
        look_at: step.look_at.iter().map(|at| offset + *at).collect(),
        look_at_last: step.look_at_last.map(|at| offset + at),
        rinse_by: offset + step.rinse_by,
        ends: None,
    }
}

/// A step before the colour: its bowl is for the step alone, and nothing of it is kept.
fn before(plan: &Plan, step: &FirstStep) -> BowlCard {
    let none = Interval::exact(MassFraction::ZERO);
    let developer = step.bowl.as_ref().and_then(|bowl| bowl.developer).unwrap_or(none);
    let mut shows = Mass::ZERO;
    let mut parts = Vec::new();
    for part in &step.parts {
        shows = shows + part.weigh;
        parts.push(WeighedPart {
            product: part.product.clone(),
            kind: part.kind,
            exact: part.mass.best(),
            weigh: part.weigh,
            scale_shows: shows,
            peroxide: if part.kind == PartKind::Developer { developer } else { none },
        });
    }
    let exact: Mass = parts.iter().map(|part| part.exact).sum();
    // Of its own share of the bowl, in percent.
    let moved = |part: &WeighedPart| match part.exact.g() * shows.g() {
        0.0 => 0.0,
        whole => 100.0 * (part.weigh.g() * exact.g() / whole - 1.0).abs(),
    };
    let best = |at: Option<Interval<Duration>>| at.map_or(Duration::ZERO, |at| at.best());
    let minutes = CardMinutes {
        mixed_at: best(step.begin),
        use_by: best(step.applied),
        // It is looked at all the while.
        look_at: Vec::new(),
        look_at_last: None,
        rinse_by: best(step.due),
        ends: step.due,
    };
    let name = step.name();
    let (_, peroxide) = step.brought;
    let may_hold_peroxide = peroxide && parts.iter().any(|part| part.kind == PartKind::Remover);
    let asks = |finding: &&Finding| !matches!(finding.verdict, Verdict::Stop | Verdict::Passed);
    BowlCard {
        blocked: plan.blocked,
        stops: plan.findings.iter().filter(|finding| finding.verdict == Verdict::Stop).cloned().collect(),
        findings: step.findings.iter().filter(asks).cloned().collect(),
        guest: plan.guest.clone(),
        stage: WorkStage::Section,
        bowl: 1,
        bowls: 1,
        worst_ratio_error_percent: parts.iter().map(moved).fold(0.0, f64::max),
        parts,
        then: Some(step.then),
        mind: step.mind.clone(),
        total: shows,
        on_hair: step.on_hair.or_else(|| (!may_hold_peroxide).then_some(none)),
        strength_basis: step.basis,
        clock: clock(plan.start, &minutes),
        minutes,
        name,
    }
}

fn card(plan: &Plan, mix: &Mix, bowl: &Bowl, number: usize, minutes: CardMinutes) -> BowlCard {
    let concerns = mix.findings.iter().filter_map(|i| plan.findings.get(*i));
    let asks = |finding: &&Finding| !matches!(finding.verdict, Verdict::Stop | Verdict::Passed);
    BowlCard {
        blocked: plan.blocked,
        stops: plan.findings.iter().filter(|finding| finding.verdict == Verdict::Stop).cloned().collect(),
        findings: concerns.filter(asks).cloned().collect(),
        guest: plan.guest.clone(),
        name: mix.name.clone(),
        stage: mix.stage,
        bowl: number,
        bowls: bowl.count,
        parts: bowl.parts.clone(),
        then: None,
        mind: Vec::new(),
        total: bowl.total,
        on_hair: Some(bowl.on_hair),
        strength_basis: mix.strength_basis,
        worst_ratio_error_percent: bowl.worst_ratio_error_percent,
        clock: clock(plan.start, &minutes),
        minutes,
    }
}

fn clock(start: Start, minutes: &CardMinutes) -> Option<CardClock> {
    let at = |after: Duration| start.plus(after);
    Some(CardClock {
        mixed_at: at(minutes.mixed_at)?,
        use_by: at(minutes.use_by)?,
        look_at: minutes.look_at.iter().filter_map(|look| at(*look)).collect(),
        look_at_last: minutes.look_at_last.and_then(at),
        rinse_by: at(minutes.rinse_by)?,
        ends_earliest: minutes.ends.and_then(|ends| at(ends.low())),
        ends_latest: minutes.ends.and_then(|ends| at(ends.high())),
    })
}
