//! The way from what was stated to what the plan says: each result with its inputs, its formula and its sources.

use super::{Bowl, ChairClock, Mix, Plan, SectionLift, trail_head, trail_money};
use crate::{
    lift::LEVEL_FORMULA,
    peroxide::{STRENGTH_FORMULA, bottle_converted, resting_on},
    quantity::MassFraction,
    source::{Basis, Interval, TracedInput, TracedResult, citations::lift},
    text::traced,
};

impl Plan {
    /// How each main result came about: strength on the hair bowl by bowl, with what leads to that of a bottle, level of each lightened section, colour under
    /// each toner, foils and what they take, time in the chair, cost and price.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::plan_text};
    ///
    /// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// let first = &plan.trail()[0];
    /// assert_eq!(first.what, "nape: strength on the hair, bowl 1");
    /// assert!(first.inputs.iter().any(|input| input.what == "developer 6, weighed" && input.value == "30"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(&self) -> Vec<TracedResult> {
        let bowls = strengths(&self.mixes).into_iter();
        let lift = self.lift.iter().map(level);
        let money = self.money.iter().flat_map(|money| trail_money::amounts(self, money));
        bowls.chain(lift).chain(self.trail_of_head()).chain([chair(self)]).chain(money).collect()
    }

    /// The part of it that is about the head: colour under each toner, foils and what they take.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::plan_text};
    ///
    /// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// assert!(plan.trail_of_head().iter().any(|result| result.what == "nape: mixture the hair takes"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail_of_head(&self) -> Vec<TracedResult> {
        let toners = self.colour.iter().flat_map(|section| trail_head::toned(self, section));
        let foils = self.head.sections.iter().flat_map(|section| trail_head::foils(self, section));
        toners.chain(foils).collect()
    }
}

/// The strength of each bowl; before the first that a bottle goes into, how its own gets to % w/w.
fn strengths(mixes: &[Mix]) -> Vec<TracedResult> {
    let mut trail: Vec<TracedResult> = Vec::new();
    for mix in mixes {
        let step = |(name, stated, at): &(String, _, _)| bottle_converted(name, *stated, at).ok().flatten();
        let steps: Vec<_> = mix.stated.iter().filter_map(step).collect();
        for step in &steps {
            if !trail.contains(step) {
                trail.push(step.clone());
            }
        }
        trail.extend((1..).zip(&mix.bowls).map(|(place, bowl)| resting_on(on_hair(mix, bowl, place), &steps)));
    }
    trail
}

/// Conservation of mass and of peroxide.
fn on_hair(mix: &Mix, bowl: &Bowl, place: usize) -> TracedResult {
    let value = bowl.on_hair.map(MassFraction::ww_percent);
    let parts = bowl.parts.iter().flat_map(|part| {
        let weighed = traced(format!("{}, weighed", part.product), Interval::exact(part.weigh));
        [weighed, traced(format!("{}, peroxide", part.product), part.peroxide)]
    });
    let what = format!("{}: strength on the hair, bowl {place}", mix.name);
    TracedResult::new(what, value, "% w/w", STRENGTH_FORMULA, mix.strength_basis).made_of(parts)
}

fn level(section: &SectionLift) -> TracedResult {
    let value = section.first_strand.map(crate::colour::Level::number);
    let start = section.from_level.map(crate::colour::Level::number);
    let mut inputs = vec![
        TracedInput::new("level at the start", start, "level"),
        traced("strength on the hair", section.on_hair),
        traced("temperature of the mix", Interval::exact(section.temperature)),
        traced("time of the first strand", Interval::exact(section.limit)),
        TracedInput::exact("strand readings", section.readings, "readings"),
    ];
    inputs
        .extend(section.levers.iter().map(|one| TracedInput::new(format!("lever: {}", one.lever), one.times, "times")));
    let basis = if section.readings > 0 { Basis::Measured } else { Basis::Assumed };
    TracedResult::new(
        format!("{}: level of the first strand at the rinse", section.section),
        value,
        "level",
        LEVEL_FORMULA,
        basis,
    )
    .made_of(inputs)
    .resting_on(&[lift::LIGHTENING_SERIES.id])
}

fn chair(plan: &Plan) -> TracedResult {
    let chair = &plan.chair;
    let value = Interval::exact(chair.total.min());
    let other = chair.other_work.map(|other| traced("other work", Interval::exact(other)));
    let parts = [
        traced("first work to last rinse", Interval::exact(chair.sections)),
        traced("toners and root shadow after it", Interval::exact(chair.after_rinse)),
    ];
    let formula = match chair.clock {
        ChairClock::Day => "sum, by the day in its best order",
        ChairClock::Sheet => "sum, by the order of the sheet",
    };
    TracedResult::new("time in the chair", value, "min", formula, chair.basis).made_of(parts.into_iter().chain(other))
}
