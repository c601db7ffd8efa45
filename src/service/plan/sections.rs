//! The second stage: every task in working order, with its products found and what it meets on the hair.

use super::{
    Hair, OrderBasis,
    canvas::{Canvas, Stretch},
    known, order,
    toner::{self, Mixture},
};
use crate::{
    colour::{self, Level, LevelChange, ProductKind, Tone},
    finding::Finding,
    head::Technique,
    mix::Ratio,
    quantity::{Duration, Quantity, Share},
    reader::{InField, Problems},
    service::{
        request::{Item, ItemKind, Oxidant, Request, SectionFoils, Task, WorkStage},
        shape::WaitFor,
    },
    shop::{CountsFrom, ShadeClass},
    source::Interval,
    toner::{Exposed, ExposedBasis, KnownStart},
};

/// One task with what later stages need to know of it.
pub(super) struct Work<'r> {
    /// Its place in the working order, which is the place of its mix and its step too.
    pub(super) place: usize,
    /// Its place in the request.
    pub(super) in_request: usize,
    pub(super) task: &'r Task,
    /// The products and their parts among each other.
    pub(super) products: Vec<(&'r Item, f64)>,
    /// Products to developer; none where there is no developer.
    pub(super) ratio: Option<Ratio>,
    /// What the search for the products found, where the file names a look instead of a mix.
    pub(super) search: Vec<Finding>,
    /// The stretch of the strand that it lies on.
    pub(super) stretch: Stretch,
    /// The levels that it goes on; the estimate is the darkest.
    pub(super) from: Interval<Level>,
    /// That darkest hair alone, as far as its reading may be off: lift starts there.
    pub(super) darkest: Interval<Level>,
    /// How that hair looks before colour goes on, from what is known best; none under lightener.
    pub(super) exposed: Option<Exposed>,
    /// The darkest artificial colour in that hair.
    pub(super) artificial: Option<Level>,
    /// The lightest of that hair that is lighter than the natural level.
    pub(super) lightened: Option<Level>,
    /// The tone of the shades as mixed; lightener brings none.
    pub(super) tone: Tone,
}

/// A shade of a task.
pub(super) struct Shade<'r> {
    pub(super) shade: &'r colour::Shade,
    pub(super) class: ShadeClass,
    pub(super) parts: f64,
}

impl<'r> Work<'r> {
    pub(super) fn name(&self) -> &'r str {
        &self.task.name
    }

    pub(super) fn stage(&self) -> WorkStage {
        self.task.stage
    }

    pub(super) fn is_section(&self) -> bool {
        self.task.stage == WorkStage::Section
    }

    pub(super) fn lightens(&self) -> bool {
        self.task.lightens
    }

    pub(super) fn is_in_foil(&self) -> bool {
        self.task.technique.is_some_and(Technique::is_in_foil)
    }

    /// Its foils, stated or counted on its panels.
    pub(super) fn foils(&self) -> Option<Interval<u32>> {
        self.task.on_head?.foils
    }

    /// Of the hair of its area, how much it takes: as stated, else by its regions, else by its panels.
    pub(super) fn taken(&self, request: &Request) -> Result<Option<Share>, Problems> {
        let section = request.file.section.get(self.in_request).filter(|_| self.is_section());
        let stated = section.and_then(|section| section.taken_percent).map(Share::from_percent).transpose();
        let stated = stated.in_field(&format!("{}.taken_percent", self.task.field))?;
        let of_regions = || {
            let bears = request.map.as_ref()?.bears(self.name())?;
            Some(Share::nearest(100.0 * self.task.share?.percent() / bears.best().percent()))
        };
        let of_panel = || Some(self.task.on_head?.layout?.share_of_panel.best());
        Ok(stated.or_else(of_regions).or_else(of_panel))
    }

    /// Of the hair of its area, how much is coloured where the colour has set in: what it takes, less what the comb pushes away and
    /// the brush leaves out.
    pub(super) fn covered(&self, request: &Request) -> Result<Option<Interval<Share>>, Problems> {
        let known = self.taken(request)?.zip(self.task.on_head);
        let of = |(taken, on_head): (Share, SectionFoils)| {
            on_head.profile.covered.map(|share| Share::nearest(taken.fraction() * share.percent()))
        };
        Ok(known.map(of))
    }

    pub(super) fn has_peroxide(&self) -> bool {
        self.task.oxidant != Oxidant::Nothing
    }

    /// Whether it holds oxidative colour: everything but the semi-permanent needs developer to become colour.
    pub(super) fn has_oxidative_colour(&self) -> bool {
        self.shades().any(|shade| shade.class != ShadeClass::Semi)
    }

    /// The longest times of its products, and from when each counts.
    pub(super) fn longest(&self) -> impl Iterator<Item = (&'r Item, Duration, CountsFrom)> {
        self.products.iter().filter_map(|(item, _)| {
            let limits = item.own_limits()?;
            Some((*item, limits.longest?, limits.counts_from.unwrap_or_default()))
        })
    }

    pub(super) fn shades(&self) -> impl Iterator<Item = Shade<'r>> {
        self.products.iter().filter_map(|(item, parts)| match &item.kind {
            ItemKind::Shade { shade, class, .. } => Some(Shade { shade, class: *class, parts: *parts }),
            _ => None,
        })
    }

    /// What its colour does: the strongest kind among its shades decides. None for lightener.
    pub(super) fn colour_kind(&self) -> Option<ProductKind> {
        // The kinds stand in the order of what they lift, but for these two.
        let rank = |kind: &ProductKind| match kind {
            ProductKind::HighLiftTint => 0,
            ProductKind::PermanentColour => 1,
            _ => 2,
        };
        let shades = || self.shades().map(|shade| shade.class.product());
        if self.lightens() { None } else { shades().min_by_key(rank) }
    }

    /// Whether it can make hair lighter at all.
    pub(super) fn can_lift(&self) -> bool {
        let deposits = [ProductKind::QuasiPermanentColour, ProductKind::SemiPermanentColour]
            .map(Some)
            .contains(&self.colour_kind());
        self.has_peroxide() && !deposits
    }

    /// Its shades as one: codes, mean level and tone. A clear shade only dilutes.
    pub(super) fn as_one_shade(&self) -> Option<colour::Shade> {
        let telling = || self.shades().filter(|part| part.shade.strength() > Share::NONE);
        let codes: Vec<&str> = telling().map(|part| part.shade.code()).collect();
        let parts: f64 = telling().map(|part| part.parts).sum();
        let level: f64 = telling().map(|part| part.shade.level().number() * part.parts / parts).sum();
        colour::Shade::new(codes.join(" + "), Level::clamped(level), self.tone.clone()).ok()
    }

    /// Whether this toner goes on that section.
    pub(super) fn goes_on(&self, section: &Work<'_>) -> bool {
        self.task.goes_on.contains(&section.in_request)
    }

    /// What it waits for of that section.
    pub(super) fn waits_for(&self, section: &Work<'_>) -> impl Iterator<Item = WaitFor> {
        self.task.after.iter().filter(|(place, _)| *place == section.in_request).map(|(_, what)| *what)
    }

    /// Levels to move; what the strand needs most is the upper bound.
    pub(super) fn change(&self) -> Option<Interval<LevelChange>> {
        let target = self.task.target?;
        Some(self.from.map(|from| target - from))
    }
}

/// Every task in working order.
pub(super) struct Sections<'r>(Vec<Work<'r>>);

impl<'r> Sections<'r> {
    pub(super) fn of(request: &'r Request, hair: &Hair) -> Result<Self, Problems> {
        let tasks = order::order(&request.tasks);
        let found = tasks.into_iter().filter_map(|i| Some((i, request.tasks.get(i)?)));
        let works = found.enumerate().map(|(place, (i, task))| work(request, hair, (place, i), task));
        Ok(Self(works.collect::<Result<_, _>>()?))
    }

    pub(super) fn iter(&self) -> impl Iterator<Item = &Work<'r>> {
        self.0.iter()
    }

    pub(super) fn order_basis(&self) -> OrderBasis {
        OrderBasis::of(self.0.iter().map(|work| work.in_request))
    }

    /// The tasks at these places of the request.
    pub(super) fn places(&self, places: &[usize]) -> impl Iterator<Item = &Work<'r>> {
        places.iter().filter_map(|place| self.0.iter().find(|work| work.in_request == *place))
    }

    /// All foils that are counted: counts that were stated are exact, those of panels have bounds.
    pub(super) fn foils(&self) -> Interval<u32> {
        let counts = self.0.iter().filter_map(Work::foils);
        counts.fold(Interval::exact(0), |sum, count| sum.combine(count, u32::saturating_add))
    }

    /// What lies in foils that nobody counted.
    pub(super) fn uncounted_foils(&self) -> impl Iterator<Item = &Work<'r>> {
        self.0.iter().filter(|work| work.is_in_foil() && work.foils().is_none())
    }

    pub(super) fn lighten(&self) -> bool {
        self.0.iter().any(Work::lightens)
    }

    pub(super) fn leave_strengths_open(&self) -> bool {
        self.0.iter().any(|work| work.task.oxidant == Oxidant::Open)
    }

    /// Whether the pH of every mix with peroxide is stated.
    pub(super) fn state_alkalinity(&self) -> bool {
        let mut mixed = self.0.iter().filter(|work| work.has_peroxide());
        mixed.all(|work| work.products.iter().all(|(item, _)| item.mixed_ph().is_some()))
    }

    pub(super) fn have_peroxide(&self) -> bool {
        self.0.iter().any(Work::has_peroxide)
    }

    pub(super) fn have_oxidative_colour(&self) -> bool {
        self.0.iter().any(Work::has_oxidative_colour)
    }
}

fn work<'r>(
    request: &'r Request,
    hair: &Hair,
    (place, in_request): (usize, usize),
    task: &'r Task,
) -> Result<Work<'r>, Problems> {
    let stretch = stretch(request, task);
    let canvas = match (task.starting_level, task.stage) {
        (Some(stated), _) => hair.of_level(stated, hair.at(stretch).artificial.is_some()),
        // A root shadow goes on the natural base.
        (None, WorkStage::RootShadow) => {
            Canvas { level: hair.natural_level, darkest: hair.natural_level, ..hair.at(stretch) }
        }
        (None, WorkStage::Section | WorkStage::Toner) => hair.at(stretch),
    };
    // A toner goes on what its sections were lifted to.
    let toned = if task.stage == WorkStage::Toner { lifted(request, task) } else { None };
    let from = toned.unwrap_or(canvas.level);
    let before = |natural| before_toning(request, hair, natural, (in_request, task), from.best());
    let exposed = if task.lightens { None } else { Some(before(hair.natural_level.best())?) };
    let Mixture { products, ratio, findings: search } = match (&task.wanted, exposed) {
        (Some(look), Some(exposed)) => {
            // A shadow darkens the light strands at the root; on the base beside them it must only not be darker.
            let meets = |natural| Ok::<_, Problems>(shaded(request, hair, natural, task)?.unwrap_or(before(natural)?));
            let exposed = if task.stage == WorkStage::RootShadow { meets(hair.natural_level.best())? } else { exposed };
            let found = toner::find(request, task, look, exposed)?;
            // A model of the hair starts from its natural level; what is measured or seen does not.
            let misread = [hair.natural_level.low(), hair.natural_level.high()].into_iter();
            let misread =
                misread.filter(|at| exposed.start() == ExposedBasis::Modelled && *at != hair.natural_level.best());
            toner::if_misread(
                request,
                task,
                look,
                found,
                misread.map(|natural| {
                    let exposed = if task.stage == WorkStage::RootShadow { meets(natural) } else { before(natural) };
                    Ok((natural, exposed?))
                }),
            )?
        }
        _ => Mixture {
            products: task.products.iter().filter_map(|(i, parts)| Some((request.items.get(*i)?, *parts))).collect(),
            ratio: task.ratio.clone(),
            findings: Vec::new(),
        },
    };
    let all: f64 = products.iter().map(|(_, parts)| parts).sum();
    let tone = Tone::blend(products.iter().filter_map(|(item, parts)| match &item.kind {
        ItemKind::Shade { shade, .. } => Some((shade.tone(), Share::nearest(100.0 * parts / all))),
        _ => None,
    }));
    Ok(Work {
        place,
        in_request,
        task,
        products,
        ratio,
        search,
        stretch,
        from,
        darkest: toned.unwrap_or(canvas.darkest),
        exposed,
        artificial: canvas.artificial,
        lightened: canvas.lightened,
        tone,
    })
}

/// The zone, in cm where the length of the hair is known; a section begins where its colour does.
fn stretch(request: &Request, task: &Task) -> Stretch {
    let starts = task.on_head.map(|on_head| on_head.profile.start.best());
    let from = |(from, to)| (starts.filter(|start| *start > from && *start < to).unwrap_or(from), to);
    Stretch { zone: task.zone, cm: request.amounts.stretch(task.zone).map(from) }
}

/// The hair that a toner or a deposit meets, from what is known best; of several sections the darkest.
fn before_toning(
    request: &Request,
    hair: &Hair,
    natural: Level,
    (in_request, task): (usize, &Task),
    level: Level,
) -> Result<Exposed, Problems> {
    let known = match task.stage {
        WorkStage::Section => known::of_section(request, in_request)?.0,
        WorkStage::Toner => {
            let at_level = |place: &&usize| request.tasks.get(**place).is_some_and(|task| task.target == Some(level));
            let darkest = task.goes_on.iter().find(at_level);
            darkest.map(|place| known::of_section(request, *place)).transpose()?.unwrap_or_default().0
        }
        WorkStage::RootShadow => KnownStart::default(),
    };
    let exposed = known.exposed(Some(if natural < level { natural } else { level }), level).in_field(&task.field)?;
    Ok(exposed.with_porosity(known::porosity(hair.porosity)))
}

/// The lightest hair that a root shadow goes on, where any section is lightened.
fn shaded(request: &Request, hair: &Hair, natural: Level, task: &Task) -> Result<Option<Exposed>, Problems> {
    let light = request.tasks.iter().enumerate().filter(|(_, task)| task.stage == WorkStage::Section && task.lightens);
    let light = light.filter_map(|(i, task)| Some((i, task.target.filter(|target| *target > natural)?)));
    let Some((place, target)) = light.reduce(|a, b| if b.1 > a.1 { b } else { a }) else { return Ok(None) };
    let (known, _) = known::of_section(request, place)?;
    let exposed = known.exposed(Some(natural), target).in_field(&task.field)?;
    Ok(Some(exposed.with_porosity(known::porosity(hair.porosity))))
}

/// The targets of the sections that a toner goes on: the estimate is the darkest, which decides what must still show.
fn lifted(request: &Request, toner: &Task) -> Option<Interval<Level>> {
    let mut targets = toner.goes_on.iter().filter_map(|i| request.tasks.get(*i)?.target);
    let first = Interval::exact(targets.next()?);
    Some(targets.fold(first, |known, target| match Interval::exact(target) {
        darker if target < known.best() => darker.widened_to(known),
        lighter => known.widened_to(lighter),
    }))
}
