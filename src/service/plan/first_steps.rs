//! The stage before the timeline: steps before the colour, with what they take of the shelf and how long they last.

use super::{
    FirstStep, Hair, Mix, PartKind,
    colours::Colours,
    developer::{self, Candidate},
    first_bowl::{FirstPart, StepBowl},
    head_plan::class_question,
    proportion,
    scalp::NEARLY_WW_PERCENT,
    sections::{Sections, Work},
};
use crate::{
    head::{ExtraStep, StepEnd, StepNeeds, TakeUp, Technique, product_class, take_up},
    mix::Ratio,
    quantity::{Duration, Mass, MassFraction, Quantity, Share},
    service::request::{Bottle, Request},
    source::{Basis, Interval},
};

/// The steps of all sections, and when the last of them is over.
pub(super) struct FirstSteps {
    pub(super) steps: Vec<FirstStep>,
    pub(super) over: Duration,
    /// The bowl of the first of them, before its brush.
    pub(super) mixed_before: Duration,
}

impl FirstSteps {
    pub(super) fn of(
        request: &Request,
        hair: &Hair,
        (sections, mixes): (&Sections<'_>, &[Mix]),
        colours: &Colours,
    ) -> Self {
        let mut steps = Vec::new();
        let stocks = developer::candidates(request);
        // Minutes count from the first brush: the bowl of the first step is mixed before it.
        let mix_min = request.floor.floor.mix.min();
        let (mut hands, mut over) = ([-mix_min; 3], 0.0_f64);
        for (work, mix) in sections.iter().zip(mixes).filter(|(work, _)| work.is_section()) {
            let stated = request.file.section.get(work.in_request).map_or(&[][..], |section| section.first.as_slice());
            let asked = class_question(hair, work).map(|wish| product_class(&wish).before).unwrap_or_default();
            // The next step of the same hair waits for the one before.
            let mut free = [0.0_f64; 3];
            for step in ExtraStep::ALL.iter().copied() {
                let (planned, asked_for) = (stated.contains(&step), asked.contains(&step));
                if !planned && !asked_for {
                    continue;
                }
                let shelf = Shelf { request, stocks: &stocks, hair, work, mix, colours };
                let mut found = shelf.step(step, (planned, asked_for));
                if planned {
                    let [apply, develop] = [found.apply, found.develop].map(minutes);
                    // Each bowl is mixed just before its brush, by hands that do nothing else then.
                    let begin = each(hands.map(|hands| hands + mix_min), free, f64::max);
                    hands = each(begin, apply, |begin, apply| begin + apply);
                    let due = each(hands, develop, |on, develop| on + develop);
                    free = due.map(|due| due + shelf.rinse(found.then));
                    found.begin = Some(times(begin));
                    found.applied = Some(times(hands));
                    (found.due, found.over) = (Some(times(due)), Some(times(free)));
                    // At the basin nobody paints.
                    if found.then == StepEnd::Rinse {
                        hands = free;
                    }
                    let [_, best, _] = free;
                    over = over.max(best);
                }
                steps.push(found);
            }
        }
        let mixed_before = if steps.iter().any(|step| step.planned) { mix_min } else { 0.0 };
        Self { steps, over: Duration::nearest(over), mixed_before: Duration::nearest(mixed_before) }
    }

    pub(super) fn planned(&self) -> impl Iterator<Item = &FirstStep> {
        self.steps.iter().filter(|step| step.planned)
    }
}

/// What goes on; of cleaning, which is done with one of two things, the one that is weighed.
fn what_goes_on(needs: &StepNeeds, parts: &[FirstPart]) -> String {
    match parts.first().filter(|_| needs.step == ExtraStep::CleanFirst) {
        Some(one) if one.kind == PartKind::Remover => {
            format!("{}, a remover, by its own instructions, on the artificial colour only", one.product)
        }
        Some(one) => format!("{}, lightener with weak developer, on the artificial colour only", one.product),
        None => needs.what.to_owned(),
    }
}

/// The low, best and high minutes of an estimate.
fn minutes(time: Interval<Duration>) -> [f64; 3] {
    time.to_array().map(Duration::min)
}

fn times([low, best, high]: [f64; 3]) -> Interval<Duration> {
    Interval::ordered(low, best, high).map(Duration::nearest)
}

fn each([a, b, c]: [f64; 3], [d, e, f]: [f64; 3], of: fn(f64, f64) -> f64) -> [f64; 3] {
    [of(a, d), of(b, e), of(c, f)]
}

/// A product of the shop, what it is, and its part of the mix.
type Of = (String, PartKind, f64);

/// What a step of a section is made of.
struct Shelf<'s, 'r> {
    request: &'s Request,
    stocks: &'s [Candidate<'s>],
    hair: &'s Hair,
    work: &'s Work<'r>,
    mix: &'s Mix,
    colours: &'s Colours,
}

impl Shelf<'_, '_> {
    fn step(&self, step: ExtraStep, (planned, asked_for): (bool, bool)) -> FirstStep {
        let needs = step.needs();
        let mix = self.amount(&needs);
        let found = match step {
            ExtraStep::PreSoften => {
                self.developer(&needs).map(|bottle| vec![(bottle.name.clone(), PartKind::Developer, 1.0)])
            }
            ExtraStep::PrePigment => self.pigment(),
            ExtraStep::CleanFirst => self.cleaner(&needs),
            ExtraStep::PreLighten => self.lightener(&needs, None),
        };
        let (parts, why_not): (Vec<FirstPart>, _) = match found {
            Ok(parts) => (parts.into_iter().map(|part| self.weighed(part, mix)).collect(), None),
            Err(why_not) => (Vec::new(), Some(why_not)),
        };
        // A liquid is brushed on faster than a mix is worked in: a quarter to all of the section's own time.
        let apply = self.work.task.apply.min();
        let apply = Interval::ordered(0.25, 0.5, 1.0).map(|part: f64| Duration::nearest(part * apply));
        let bowl = StepBowl::of(self.request, self.stocks, &parts);
        let mut found = FirstStep {
            section: self.work.name().to_owned(),
            step,
            planned,
            asked_for,
            what: what_goes_on(&needs, &parts),
            mix,
            basis: Basis::Assumed,
            on_hair: bowl.as_ref().and_then(|bowl| bowl.developer.map(|_| bowl.on_hair)),
            bowl,
            brought: (false, false),
            findings: Vec::new(),
            parts,
            why_not,
            hands: self.hands(apply, &needs),
            apply,
            develop: needs.develop,
            begin: None,
            applied: None,
            due: None,
            over: None,
            then: needs.then,
            mind: needs.mind,
        };
        found.brought = found.brings(self.request);
        found
    }

    /// Bowl, brush, the looks while it is on and the one that ends it, and the rinse.
    fn hands(&self, apply: Interval<Duration>, needs: &StepNeeds) -> Interval<Duration> {
        let floor = &self.request.floor.floor;
        let looks = needs.develop.map(|on| floor.looks_while(on) + floor.look);
        let ends = floor.mix.min() + self.rinse(needs.then);
        apply.combine(looks, |apply, looks| Duration::nearest(apply.min() + looks.min() + ends))
    }

    /// The hair that its own mix covers, times what a gram of it takes of the step.
    fn amount(&self, needs: &StepNeeds) -> Interval<Mass> {
        let task = self.work.task;
        if let (ExtraStep::PrePigment, Some(found)) = (needs.step, self.pigment_mass()) {
            // As much as of the colour that follows, as far off as that may be.
            let best = self.mix.needed.best().g();
            return self.mix.needed.map(|mass| Mass::nearest(found.g() * mass.g() / best));
        }
        let own = take_up(task.technique.unwrap_or(Technique::Block), task.lightens).value;
        let hair = task.on_head.and_then(|on_head| on_head.demand).map_or_else(
            || task.amount.value.map(|mass| Mass::nearest(mass.g() / own.best().g_per_g())),
            |demand| demand.hair,
        );
        let takes = |hair: Mass, take_up: TakeUp| Mass::nearest(hair.g() * take_up.g_per_g());
        let all = hair.combine(needs.take_up, takes);
        if needs.step != ExtraStep::PreSoften {
            return all;
        }
        // White hair lies in patches: of a section it may be no more than its share of the head, or all.
        let white = self.hair.white;
        let share = Interval::ordered(white.low(), white.best(), Share::ALL);
        all.combine(share, |mass, share| Mass::nearest(mass.g() * share.fraction()))
    }

    fn weighed(&self, (product, kind, part): Of, mix: Interval<Mass>) -> FirstPart {
        let mass = mix.map(|mass| Mass::nearest(mass.g() * part));
        let division = self.request.scale_division.g();
        FirstPart { product, kind, mass, weigh: Mass::nearest((mass.best().g() / division).round() * division) }
    }

    /// The strongest that is weak enough to soften with.
    fn developer(&self, needs: &StepNeeds) -> Result<&Bottle, String> {
        self.weak_enough(needs, None).max_by(|a, b| by_strength(a, b)).ok_or_else(|| none_weak_enough(needs))
    }

    /// What the step takes, and the scalp with this lightener where it is not kept off it.
    fn weak_enough(&self, needs: &StepNeeds, lightener: Option<&str>) -> impl Iterator<Item = &Bottle> {
        let most = most_percent(needs) + NEARLY_WW_PERCENT;
        let items = self.request.items.iter().filter(|item| Some(item.name.as_str()) == lightener);
        let ceilings = self.work.scalp_ceilings(items, self.request);
        self.request.bottles.iter().filter(move |bottle| {
            let strength = &bottle.strength;
            strength.best().ww_percent() <= most && ceilings.iter().all(|ceiling| ceiling.allows(strength))
        })
    }

    fn pigment_mass(&self) -> Option<Mass> {
        Some(self.colours.at(self.work.place)?.pre_pigment.as_ref()?.part.mass)
    }

    fn pigment(&self) -> Result<Vec<Of>, String> {
        let found = self.colours.at(self.work.place).and_then(|colour| colour.pre_pigment.as_ref());
        let found = found.ok_or("the shop has no shade that deposits to put warmth back with")?;
        Ok(vec![(found.part.code.clone(), PartKind::Colour, 1.0)])
    }

    /// The remover that the section names, else a lightener; without one that may go there a remover of the shop.
    fn cleaner(&self, needs: &StepNeeds) -> Result<Vec<Of>, String> {
        let named =
            self.request.file.section.get(self.work.in_request).and_then(|section| section.clean_with.as_deref());
        let mut removers = self.request.shop.removers.iter().map(|one| one.name.as_str());
        let whole = |name: &str| vec![(name.to_owned(), PartKind::Remover, 1.0)];
        match named {
            Some(name) if removers.any(|remover| remover == name) => Ok(whole(name)),
            Some(_) => self.lightener(needs, named),
            None => self.lightener(needs, None).or_else(|none| removers.next().map(whole).ok_or(none)),
        }
    }

    /// A lightener that may touch this scalp, with the weakest developer to clean and the strongest that is weak enough to lift; one that the file gives to toners only where there
    /// is no other, for it is made to deposit.
    fn lightener(&self, needs: &StepNeeds, named: Option<&str>) -> Result<Vec<Of>, String> {
        let on_scalp = self.work.task.on_scalp != Some(false);
        let called = |name: &str| named.is_none_or(|named| named == name);
        let fits = self.request.shop.lighteners.iter().filter(|one| one.on_scalp || !on_scalp);
        let mut fits = fits.filter(|one| called(&one.name));
        // A remover takes artificial pigment, and no natural one.
        let none = match needs.step {
            ExtraStep::PreLighten => "choose a target as deep as the hair, or another lightener",
            _ => "take a colour remover by its own instructions",
        };
        let lightener = fits.next().ok_or_else(|| format!("the shop has no lightener that may go there: {none}"))?;
        let tones = |bottle: &&Bottle| {
            self.request.file.toner.iter().any(|toner| toner.developer.as_deref() == Some(bottle.name.as_str()))
        };
        let order = |a: &&Bottle, b: &&Bottle| match needs.step {
            ExtraStep::PreLighten => by_strength(b, a),
            _ => by_strength(a, b),
        };
        let weak = || self.weak_enough(needs, Some(&lightener.name));
        let own = weak().filter(|bottle| !tones(bottle)).min_by(order);
        let bottle = own.or_else(|| weak().min_by(order)).ok_or_else(|| none_weak_enough(needs))?;
        let (powder, liquid) = parts(&lightener.ratio).map_err(|error| error.to_string())?;
        Ok(vec![
            (lightener.name.clone(), PartKind::Lightener, powder),
            (bottle.name.clone(), PartKind::Developer, liquid),
        ])
    }

    /// Minutes at the basin; nothing where it is blotted.
    fn rinse(&self, then: StepEnd) -> f64 {
        let floor = &self.request.floor.floor;
        if then == StepEnd::Rinse { floor.walk.min() + floor.rinse.min() } else { 0.0 }
    }
}

fn by_strength(a: &Bottle, b: &Bottle) -> std::cmp::Ordering {
    a.strength.best().ww_percent().total_cmp(&b.strength.best().ww_percent())
}

fn most_percent(needs: &StepNeeds) -> f64 {
    needs.strongest_developer.map_or(0.0, MassFraction::ww_percent)
}

fn none_weak_enough(needs: &StepNeeds) -> String {
    let most = most_percent(needs);
    format!("the shop has no developer of {most} % w/w or weaker (weaken one with `foilwork dilute`)")
}

/// Of a mix at this ratio, what is product and what is developer.
fn parts(ratio: &Ratio) -> Result<(f64, f64), Box<dyn std::error::Error>> {
    let (product, developer) = proportion::split(Some(ratio), Mass::nearest(100.0))?;
    Ok((product.g() / 100.0, developer.g() / 100.0))
}
