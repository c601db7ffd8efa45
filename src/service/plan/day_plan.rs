//! The stage after the timeline: who does what when, in the order of the sheet and in the best order.

use super::{
    Mix,
    day_rules::{dropped, rules},
    own_times::OwnTimes,
    sections::{Sections, Work},
    situation::longest,
};
use crate::{
    day::{
        Before, CannotArrange, Effort, Floor, OrderRule, SECTIONS_AT_MOST, SectionWork, Timeline, arrange,
        in_this_order, with_all_hands,
    },
    quantity::{Duration, Quantity},
    service::request::Request,
};
use schemars::JsonSchema;
use serde::Serialize;

/// The service on the clock of hands and basin. Minutes count from the first work on the guest, those after the rinse from
/// its end.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct DayPlan {
    /// Hands, basins and the small work.
    pub floor: Floor,
    /// The sections as work on the clock, in the order of this sheet.
    pub work: Vec<SectionWork>,
    /// What the order keeps to.
    pub rules: Vec<OrderedBy>,
    /// Rules of the house that were left out, for they clash with what the service says.
    pub left_out: Vec<String>,
    /// The sections in the order of this sheet, by what the service says and without the rules of the house, as hands, looks
    /// and basin allow; absent where that cannot be.
    pub as_planned: Option<Timeline>,
    /// Why the order of this sheet cannot be kept.
    pub as_planned_why_not: Option<String>,
    /// The sections in the best order.
    pub proposed: Option<Timeline>,
    /// Why there is no best order.
    pub proposed_why_not: Option<String>,
    /// How much earlier than in the order of this sheet everything is rinsed in the best one.
    #[serde(rename = "order_saves_min")]
    pub order_saves: Option<Duration>,
    /// How much later instead, where the best order keeps rules of the house that the order of this sheet breaks.
    #[serde(rename = "house_rules_cost_min")]
    pub house_rules_cost: Option<Duration>,
    /// How much earlier it would be with one more pair of hands.
    #[serde(rename = "helper_saves_min")]
    pub helper_saves: Option<Duration>,
    /// Toners and root shadow after the rinse; absent where there are none.
    pub after_rinse: Option<Timeline>,
    /// Why those that there are cannot be laid out.
    pub after_rinse_why_not: Option<String>,
    /// From the first work to the last rinse, toners included, in the proposed order.
    #[serde(rename = "finish_min")]
    pub finish: Option<Duration>,
}

/// One section before another.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct OrderedBy {
    /// What comes first.
    pub first: String,
    /// What waits.
    pub then: String,
    /// Whether the first must be rinsed; else it must be on.
    pub rinsed: bool,
    /// Why.
    pub rule: OrderRule,
}

impl DayPlan {
    pub(super) fn of(request: &Request, sections: &Sections<'_>, mixes: &[Mix]) -> Option<Self> {
        let (floor, works) = (request.floor.floor, sections.iter().zip(mixes));
        let (on, after): (Vec<_>, Vec<_>) = works.partition(|(work, _)| work.is_section());
        if on.len() > SECTIONS_AT_MOST {
            return None;
        }
        let groups = foil_groups(sections, &on);
        let work: Vec<SectionWork> =
            on.iter().zip(groups).map(|((work, mix), same)| as_work(request, work, mix, &floor, same)).collect();
        let places: Vec<&Work<'_>> = on.iter().map(|(work, _)| *work).collect();
        let rules = rules(request, &places);
        let stated: Vec<Before> = rules.iter().copied().filter(|one| one.rule == OrderRule::Stated).collect();
        let (kept, left_out, proposed) = kept(&work, rules, &floor);
        let order: Vec<usize> = (0..work.len()).collect();
        let as_planned = in_this_order(&work, &stated, &floor, &order);
        let helper = Floor { people: floor.people + 1, ..floor };
        let helped = proposed.as_ref().ok().and_then(|_| with_all_hands(&work, &kept, &helper).ok());
        let less = |more: &Timeline, less: &Timeline| more.finish.min() - less.finish.min();
        // Nothing is looked at while toners are on but the toners, by those at the basin.
        let beside = Floor { look: Duration::ZERO, ..floor };
        let toning: Vec<SectionWork> =
            after.iter().map(|(work, mix)| as_work(request, work, mix, &beside, None)).collect();
        let after_rinse = match arrange(&toning, &[], &beside, Effort::Quick) {
            Err(CannotArrange::NoSection) => None,
            outcome => Some(outcome),
        };
        let name = |place: usize| work.get(place).map_or_else(String::new, |one| one.name.clone());
        let best = proposed.as_ref().ok();
        let saves = best.and_then(|best| Some(less(as_planned.as_ref().ok()?, best)));
        // The search for several people is no proof: what it loses, a helper does not cost.
        let helper_saves = best.and_then(|best| Some(Duration::nearest(less(best, helped.as_ref()?).max(0.0))));
        let toned = match &after_rinse {
            None => Some(Duration::ZERO),
            Some(toning) => toning.as_ref().ok().map(|toning| toning.finish),
        };
        let finish = best.and_then(|best| Some(best.finish + toned?));
        let (as_planned, as_planned_why_not) = told(as_planned);
        let (proposed, proposed_why_not) = told(proposed);
        let (after_rinse, after_rinse_why_not) = after_rinse.map_or((None, None), told);
        let ordered = |one: &Before| OrderedBy {
            first: name(one.first),
            then: name(one.then),
            rinsed: one.until == crate::day::Until::Rinsed,
            rule: one.rule,
        };
        Some(Self {
            floor,
            rules: kept.iter().map(ordered).collect(),
            work,
            left_out,
            as_planned,
            as_planned_why_not,
            proposed,
            proposed_why_not,
            order_saves: saves.map(|saves| Duration::nearest(saves.max(0.0))),
            house_rules_cost: saves.filter(|saves| *saves < 0.0).map(|saves| Duration::nearest(-saves)),
            helper_saves,
            after_rinse,
            after_rinse_why_not,
            finish,
        })
    }
}

impl DayPlan {
    /// The rules as [`arrange`] takes them, by the places of the work.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::plan_text};
    ///
    /// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// let day = plan.day.ok_or("no day")?;
    /// assert!(day.before().iter().all(|rule| rule.first != rule.then && rule.then < day.work.len()));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn before(&self) -> Vec<Before> {
        let place = |name: &str| self.work.iter().position(|one| one.name == name);
        let one = |rule: &OrderedBy| {
            let until = if rule.rinsed { crate::day::Until::Rinsed } else { crate::day::Until::Applied };
            Some(Before { first: place(&rule.first)?, then: place(&rule.then)?, until, rule: rule.rule })
        };
        self.rules.iter().filter_map(one).collect()
    }
}

fn told(outcome: Result<Timeline, CannotArrange>) -> (Option<Timeline>, Option<String>) {
    match outcome {
        Ok(timeline) => (Some(timeline), None),
        Err(error) => (None, Some(error.to_string())),
    }
}

/// The best order by all the rules that do not clash; what the service says outweighs what the house says.
fn kept(
    work: &[SectionWork],
    mut kept: Vec<Before>,
    floor: &Floor,
) -> (Vec<Before>, Vec<String>, Result<Timeline, CannotArrange>) {
    let mut left_out = Vec::new();
    loop {
        match arrange(work, &kept, floor, Effort::Quick) {
            Err(CannotArrange::Clash(clash)) => match dropped(&clash, &mut kept) {
                Some(text) => left_out.push(text),
                None => return (kept, left_out, Err(CannotArrange::Clash(clash))),
            },
            outcome => return (kept, left_out, outcome),
        }
    }
}

/// A task as work on the clock. Where its application with looks and fresh bowls leaves less than the planned development
/// before the first strand has carried it long enough, it develops that much less.
fn as_work(request: &Request, work: &Work<'_>, mix: &Mix, floor: &Floor, same_foil: Option<u32>) -> SectionWork {
    let task = work.task;
    let bowls = mix.bowls.iter().map(|bowl| bowl.mixed_after.len().max(1)).sum::<usize>();
    let bowls = u32::try_from(bowls.max(1)).unwrap_or(1);
    // No more than the product allows, nor much more than planned.
    let (apply, planned) = (task.apply.min(), task.apply.min() + task.develop.min());
    let times = OwnTimes::of(work);
    let own = times.longest_on_first_strand(task.apply).map_or(f64::INFINITY, Duration::min);
    // What not every product states ends as planned.
    let more = if times.by_all() { request.floor.stay_longer.min() } else { 0.0 };
    let most = (planned + more).min(own).max(longest(work).min());
    let busy = apply + f64::from(bowls - 1) * floor.mix.min() + floor.looks_while(task.apply).min();
    let develop = task.develop.min().min((most - busy).max(0.0));
    SectionWork {
        name: work.name().to_owned(),
        apply: task.apply,
        develop: Duration::nearest(develop),
        longest: Duration::nearest(most),
        bowls,
        foils: task.foils.filter(|foils| *foils > 0),
        same_foil,
    }
}

/// A number for each group of sections that share a foil.
fn foil_groups(sections: &Sections<'_>, on: &[(&Work<'_>, &Mix)]) -> Vec<Option<u32>> {
    let mut group: Vec<usize> = (0..on.len()).collect();
    for (place, (work, _)) in on.iter().enumerate() {
        for other in sections.places(&work.task.same_foil_as) {
            let Some(there) = on.iter().position(|(one, _)| one.place == other.place) else { continue };
            let (Some(a), Some(b)) = (group.get(place).copied(), group.get(there).copied()) else { continue };
            for slot in &mut group {
                if *slot == a.max(b) {
                    *slot = a.min(b);
                }
            }
        }
    }
    let alone = |of: usize| group.iter().filter(|other| **other == of).count() == 1;
    group.iter().map(|of| if alone(*of) { None } else { u32::try_from(*of).ok() }).collect()
}
