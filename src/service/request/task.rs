use super::{
    Applying, Bottle, HairAmounts, InField, Item, ItemKind, SectionFoils,
    applying::Pace,
    defaults,
    defaults::{DefaultValue, Defaults},
    head_map::Asked,
};
use crate::{
    choice::choice,
    colour::{Hue, Level, Tone},
    head::Technique,
    lift::Cover,
    mix::Ratio,
    peroxide::StatedStrength,
    quantity::{Duration, Mass, Quantity, Share},
    service::{
        file::Problems,
        shape::{After, MixPart, Section, ToneTarget, WaitFor, Zone},
    },
    source::{Basis, COMMON_PRACTICE, Interval, Sourced},
};

choice! {
    /// When in the service a mix is used.
    WorkStage: "stage" {
        /// On a section, before the first rinse.
        Section = "section",
        /// After rinsing, on lightened hair.
        Toner = "toner",
        /// After rinsing, at the roots.
        RootShadow = "root-shadow" => "root shadow",
    }
}

/// Which peroxide is used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::service) enum Oxidant {
    /// A bottle of the shelf as it is.
    Bottle(usize),
    /// A strength to be blended from the shelf.
    Strength(StatedStrength),
    /// Left to the plan, for lightener only.
    Open,
    /// None: semi-permanent colour, used as it comes.
    Nothing,
}

/// A look that is wanted.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::service) struct Look {
    pub(in crate::service) level: Level,
    pub(in crate::service) tone: Tone,
}

impl Look {
    pub(super) fn read(target: &ToneTarget, field: &str) -> Result<Self, Problems> {
        let hues: Result<Vec<Hue>, _> = target.tones.iter().map(|word| word.parse()).collect();
        Ok(Self {
            level: Level::new(target.level).in_field(&format!("{field}.target.level"))?,
            tone: Tone::from_hues(hues.in_field(&format!("{field}.target.tones"))?),
        })
    }
}

/// One mix and where it goes.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::service) struct Task {
    pub(in crate::service) name: String,
    /// The path of the table in the file, for messages.
    pub(in crate::service) field: String,
    pub(in crate::service) stage: WorkStage,
    pub(in crate::service) lightens: bool,
    pub(in crate::service) technique: Option<Technique>,
    pub(in crate::service) zone: Zone,
    pub(in crate::service) share: Option<Share>,
    /// Whether the mix touches the scalp; none where neither the file nor technique and zone say it.
    pub(in crate::service) on_scalp: Option<bool>,
    /// What lies over the mix.
    pub(in crate::service) cover: Cover,
    /// The level now, where it is stated for this task alone.
    pub(in crate::service) starting_level: Option<Level>,
    /// Sections (places in the list) that a toner goes on.
    pub(in crate::service) goes_on: Vec<usize>,
    pub(in crate::service) target: Option<Level>,
    pub(in crate::service) target_tone: Option<String>,
    /// The look that a toner is to be found for, where the file names no mix.
    pub(in crate::service) wanted: Option<Look>,
    /// Products (places on the shelf) and their parts among each other.
    pub(in crate::service) products: Vec<(usize, f64)>,
    pub(in crate::service) oxidant: Oxidant,
    /// Product to developer; nothing where there is no developer.
    pub(in crate::service) ratio: Option<Ratio>,
    pub(in crate::service) amount: Sourced<Interval<Mass>>,
    pub(in crate::service) additives: Vec<usize>,
    pub(in crate::service) working_life: Duration,
    pub(in crate::service) foils: Option<u32>,
    /// Foils, profile and demand of a section.
    pub(in crate::service) on_head: Option<SectionFoils>,
    pub(in crate::service) apply: Duration,
    /// What that is from; none for what is put on after the rinse.
    pub(in crate::service) applying: Option<Applying>,
    pub(in crate::service) develop: Duration,
    /// Tasks (places in the list) that must come first, and what of them must be over.
    pub(in crate::service) after: Vec<(usize, WaitFor)>,
    /// Whether it is the hairline.
    pub(in crate::service) hairline: bool,
    /// Tasks that lie beside it.
    pub(in crate::service) beside: Vec<usize>,
    /// Tasks that share a foil with it.
    pub(in crate::service) same_foil_as: Vec<usize>,
}

/// What the readers of tasks need to look things up.
pub(super) struct Shelf<'a> {
    pub(super) bottles: &'a [Bottle],
    pub(super) items: &'a [Item],
    pub(super) working_life: Duration,
    pub(super) amounts: &'a HairAmounts,
    /// What is mixed beyond what the hair takes, as a factor.
    pub(super) with_spare: f64,
    /// Minutes for a foil where a section does not say its own.
    pub(super) pace: Pace,
}

impl Shelf<'_> {
    pub(super) fn item(&self, name: &str, field: &str) -> Result<usize, Problems> {
        let found = self.items.iter().position(|item| item.name == name);
        found.ok_or_else(|| format!("\"{name}\" is not in the shop: add it there")).in_field(field)
    }

    pub(super) fn oxidant(
        &self,
        products: &[(usize, f64)],
        developer: Option<&str>,
        strength: Option<&str>,
        field: &str,
    ) -> Result<Oxidant, Problems> {
        let lightens = products.iter().any(|(i, _)| self.items.get(*i).is_some_and(Item::lightens));
        let semi = products.iter().all(|(i, _)| self.items.get(*i).is_some_and(Item::needs_no_developer));
        match (developer, strength) {
            (None, None) if semi => Ok(Oxidant::Nothing),
            (None, None) if lightens => Ok(Oxidant::Open),
            (Some(name), _) => {
                let found = self.bottles.iter().position(|bottle| bottle.name == name);
                let found = found.ok_or_else(|| format!("\"{name}\" is not in the shop: add it there"));
                Ok(Oxidant::Bottle(found.in_field(&format!("{field}.developer"))?))
            }
            (None, Some(text)) => Ok(Oxidant::Strength(text.parse().in_field(&format!("{field}.strength"))?)),
            (None, None) => Err("neither `developer` nor `strength` is given: give one").in_field(field),
        }
    }

    pub(super) fn mix(&self, parts: &[MixPart], field: &str) -> Result<Vec<(usize, f64)>, Problems> {
        let part = |(i, part): (usize, &MixPart)| {
            Ok((self.item(&part.shade, &format!("{field}.mix[{}].shade", i + 1))?, part.parts))
        };
        parts.iter().enumerate().map(part).collect()
    }

    /// The stated ratio, or that of the first product; none where there is no developer.
    pub(super) fn ratio(
        &self,
        stated: Option<&str>,
        products: &[(usize, f64)],
        oxidant: Oxidant,
        field: &str,
    ) -> Result<Option<Ratio>, Problems> {
        if oxidant == Oxidant::Nothing {
            return Ok(None);
        }
        if let Some(text) = stated {
            return text.parse::<Ratio>().map(Some).in_field(&format!("{field}.ratio"));
        }
        // Shades that are still to be found bring their own.
        if products.is_empty() {
            return Ok(None);
        }
        let mut own = products.iter().filter_map(|(i, _)| self.items.get(*i)?.ratio());
        let first = own.next().ok_or("no product with a mixing ratio: give `ratio`").in_field(field)?;
        match own.find(|ratio| *ratio != first) {
            None => Ok(Some(first.clone())),
            Some(other) => {
                Err(format!("its shades have different ratios, {first} and {other}: say in `ratio` which one holds"))
                    .in_field(field)
            }
        }
    }

    /// The shortest working life among the products.
    pub(super) fn working_life(&self, products: &[(usize, f64)]) -> Duration {
        let lives = products.iter().filter_map(|(i, _)| match self.items.get(*i).map(|item| &item.kind) {
            Some(ItemKind::Lightener { working_life, .. }) => *working_life,
            _ => None,
        });
        lives
            .fold(None, |shortest: Option<Duration>, life| match shortest {
                Some(known) if known <= life => Some(known),
                _ => Some(life),
            })
            .unwrap_or(self.working_life)
    }
}

/// A section of the file.
pub(super) fn section(
    i: usize,
    section: &Section,
    all: &[Section],
    asked: Asked,
    shelf: &Shelf<'_>,
    defaults: &mut Defaults,
) -> Result<Task, Problems> {
    let field = format!("section[{}]", i + 1);
    let products = match &section.product {
        Some(name) => vec![(shelf.item(name, &format!("{field}.product"))?, 1.0)],
        None => shelf.mix(&section.mix, &field)?,
    };
    let lightens = products.iter().any(|(i, _)| shelf.items.get(*i).is_some_and(Item::lightens));
    let share = asked.share;
    let on_scalp = section.on_scalp.or_else(|| {
        let touches = touches_scalp(section.technique, section.zone)?;
        let why = if touches {
            "worked out from the technique and the zone: at the scalp, and no foil in between"
        } else {
            "worked out from the zone: it begins away from the roots"
        };
        defaults.note(&format!("{field}.on_scalp"), DefaultValue::Yes(touches), Basis::Assumed, None, why);
        Some(touches)
    });
    let cover = match section.cover {
        Some(stated) => stated,
        None if section.technique.is_in_foil() => Cover::Foil,
        None => {
            if lightens {
                let why = "the technique has no foil: state it where film or a cap keeps the mix moist";
                let field = format!("{field}.cover");
                defaults.note(&field, DefaultValue::Cover(Cover::OpenAir), Basis::Assumed, None, why);
            }
            Cover::OpenAir
        }
    };
    let on_head = shelf.amounts.section(section, &field, asked, (lightens, on_scalp == Some(true)))?;
    profile_defaults(section, &field, &on_head, defaults);
    let amount = amount(section, &field, (share, lightens, shelf.with_spare), &on_head, defaults)?;
    let applying = shelf.pace.section(section, &field, on_head.foils, defaults)?;
    let additive = |(j, name): (usize, &String)| shelf.item(name, &format!("{field}.additives[{}]", j + 1));
    let named = |names: &[String], key: &str| -> Result<Vec<usize>, Problems> {
        let place = |(j, name): (usize, &String)| {
            let found = all.iter().position(|other| other.name == *name);
            let missing = || format!("no section is called \"{name}\"");
            found.ok_or_else(missing).in_field(&format!("{field}.{key}[{}]", j + 1))
        };
        names.iter().enumerate().map(place).collect()
    };
    let earlier = |(j, after): (usize, &After)| -> Result<(usize, WaitFor), Problems> {
        let field = format!("{field}.after[{}]", j + 1);
        let found = all.iter().enumerate().find(|(_, other)| other.name == after.section);
        let missing = || format!("no section is called \"{}\"", after.section);
        let (place, first) = found.ok_or_else(missing).in_field(&format!("{field}.section"))?;
        if after.wait_for == WaitFor::FoilClosing && !first.technique.is_in_foil() {
            let message = format!("\"{}\" has no foil to close: wait for its application", first.name);
            return Err(message).in_field(&format!("{field}.wait_for"));
        }
        Ok((place, after.wait_for))
    };
    let (developer, strength) = (section.developer.as_deref(), section.strength.as_deref());
    let oxidant = shelf.oxidant(&products, developer, strength, &field)?;
    let starting = section.starting_level.map(Level::new).transpose();
    Ok(Task {
        name: section.name.clone(),
        stage: WorkStage::Section,
        lightens,
        technique: Some(section.technique),
        zone: section.zone,
        share: Some(share),
        on_scalp,
        cover,
        starting_level: starting.in_field(&format!("{field}.starting_level"))?,
        goes_on: Vec::new(),
        target: Some(Level::new(section.target_level).in_field(&format!("{field}.target_level"))?),
        target_tone: section.target_tone.clone(),
        wanted: section.target.as_ref().map(|target| Look::read(target, &field)).transpose()?,
        oxidant,
        ratio: shelf.ratio(section.ratio.as_deref(), &products, oxidant, &field)?,
        working_life: shelf.working_life(&products),
        products,
        amount,
        additives: section.additives.iter().enumerate().map(additive).collect::<Result<_, _>>()?,
        foils: section.foils.or(on_head.foils.map(|foils| foils.best())),
        on_head: Some(on_head),
        apply: applying.time.best(),
        applying: Some(applying),
        develop: Duration::from_min(section.develop_min).in_field(&format!("{field}.develop_min"))?,
        after: section.after.iter().enumerate().map(earlier).collect::<Result<_, _>>()?,
        hairline: section.hairline,
        beside: named(&section.beside, "beside")?,
        same_foil_as: named(&section.same_foil_as, "same_foil_as")?,
        field,
    })
}

/// What of a comb or a brush is taken for granted: how much hair it leaves, and how softly the colour sets in.
fn profile_defaults(section: &Section, field: &str, on_head: &SectionFoils, defaults: &mut Defaults) {
    let by_hand = [Technique::BackComb, Technique::Freehand, Technique::FreehandInFoil];
    if !by_hand.contains(&section.technique) {
        return;
    }
    let mut note = |name: &str, value, why| {
        defaults.note(&format!("{field}.{name}"), value, Basis::Assumed, Some(&COMMON_PRACTICE), why);
    };
    if section.covered_percent.is_none() {
        let why = "of the hair taken, what the comb does not push away and the brush does not leave out";
        note("covered_percent", DefaultValue::Share(on_head.profile.covered), why);
    }
    if section.transition_cm.is_none() {
        let why = "how far the colour takes to set in behind its start";
        note("transition_cm", DefaultValue::Length(on_head.profile.transition), why);
    }
}

/// The mix that is stated; else what the hair takes, where its length is stated; else the trade's amount.
fn amount(
    section: &Section,
    field: &str,
    (share, lightens, with_spare): (Share, bool, f64),
    on_head: &SectionFoils,
    defaults: &mut Defaults,
) -> Result<Sourced<Interval<Mass>>, Problems> {
    let field = format!("{field}.mix_g");
    if let Some(g) = section.mix_g {
        return Ok(Sourced::stated(Interval::exact(Mass::from_g(g).in_field(&field)?)));
    }
    let regrowth = section.technique == Technique::Regrowth;
    let (amount, why) = match on_head.demand {
        Some(demand) => (
            Sourced::assumed(demand.mix),
            "the mass of this hair times what a gram of it takes; weigh what is left over and enter `used_g`",
        ),
        None => (
            defaults::mix(share, lightens, regrowth).in_field(&field)?,
            "the trade's full-head amount times the share of the hair; with `analysis.length_cm` it is from the hair",
        ),
    };
    let amount = Sourced { value: amount.value.map(|mass| Mass::nearest(mass.g() * with_spare)), ..amount };
    defaults.note(&field, DefaultValue::Estimate(amount.value), amount.basis, amount.citation, why);
    Ok(amount)
}

/// Regrowth and roots are worked at the scalp. In foil they may be, or a gap may be left: foil does not say.
fn touches_scalp(technique: Technique, zone: Zone) -> Option<bool> {
    match technique {
        Technique::Regrowth => Some(true),
        _ if !zone.overlaps(Zone::Roots) => Some(false),
        technique => (!technique.is_in_foil()).then_some(true),
    }
}
