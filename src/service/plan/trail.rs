//! The way from what was stated to what the plan says: each result with its inputs, its formula and its sources.

use super::{
    Bowl, ChairClock, Mix, Plan, SectionLift,
    traced::{TracedInput, TracedResult, exact, found, input, told},
    trail_head, trail_money,
};
use crate::{
    quantity::MassFraction,
    source::{Basis, Interval, citations::lift},
};

impl Plan {
    /// How each main result came about: strength on the hair bowl by bowl, level of each lightened section, colour under
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
        let bowls =
            self.mixes.iter().flat_map(|mix| (1..).zip(&mix.bowls).map(move |(place, bowl)| on_hair(mix, bowl, place)));
        let lift = self.lift.iter().map(level);
        let toners = self.colour.iter().flat_map(|section| trail_head::toned(self, section));
        let foils = self.head.sections.iter().flat_map(|section| trail_head::foils(self, section));
        let money = self.money.iter().flat_map(|money| trail_money::amounts(self, money));
        bowls.chain(lift).chain(toners).chain(foils).chain([chair(self)]).chain(money).collect()
    }
}

/// Conservation of mass and of peroxide.
fn on_hair(mix: &Mix, bowl: &Bowl, place: usize) -> TracedResult {
    let formula = "sum of grams times % w/w, over the sum of grams, as weighed";
    let value = bowl.on_hair.map(MassFraction::ww_percent);
    let parts = bowl.parts.iter().flat_map(|part| {
        let weighed = input(format!("{}, weighed", part.product), Interval::exact(part.weigh));
        [weighed, input(format!("{}, peroxide", part.product), part.peroxide)]
    });
    let what = format!("{}: strength on the hair, bowl {place}", mix.name);
    found(what, &value, "% w/w", formula, mix.strength_basis).made_of(parts)
}

fn level(section: &SectionLift) -> TracedResult {
    let formula = "level after the time by the lift law with the levers listed; median and 80 of 100 cases";
    let value = section.first_strand.map(crate::colour::Level::number);
    let start = section.from_level.map(crate::colour::Level::number);
    let (best, bounds) = told(&start);
    let mut inputs = vec![
        TracedInput { what: "level at the start".to_owned(), value: best, bounds, unit: "level".to_owned() },
        input("strength on the hair", section.on_hair),
        input("temperature of the mix", Interval::exact(section.temperature)),
        input("time of the first strand", Interval::exact(section.limit)),
        exact("strand readings", section.readings, "readings"),
    ];
    inputs.extend(section.levers.iter().map(|lever| {
        let (value, bounds) = told(&lever.times);
        TracedInput { what: format!("lever: {}", lever.lever), value, bounds, unit: "times".to_owned() }
    }));
    let basis = if section.readings > 0 { Basis::Measured } else { Basis::Assumed };
    found(format!("{}: level of the first strand at the rinse", section.section), &value, "level", formula, basis)
        .made_of(inputs)
        .resting_on(&[lift::LIGHTENING_SERIES.id])
}

fn chair(plan: &Plan) -> TracedResult {
    let chair = &plan.chair;
    let value = Interval::exact(chair.total.min());
    let other = chair.other_work.map(|other| input("other work", Interval::exact(other)));
    let parts = [
        input("first work to last rinse", Interval::exact(chair.sections)),
        input("toners and root shadow after it", Interval::exact(chair.after_rinse)),
    ];
    let formula = match chair.clock {
        ChairClock::Day => "sum, by the day in its best order",
        ChairClock::Sheet => "sum, by the order of the sheet",
    };
    found("time in the chair".to_owned(), &value, "min", formula, chair.basis).made_of(parts.into_iter().chain(other))
}
