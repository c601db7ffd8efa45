use super::{
    CountsFrom, Per, ShadeClass, StockFacts,
    shape::{AdditiveEntry, ConsumableEntry, DiluentEntry, LightenerEntry, RemoverEntry, ShadeEntry},
};
use crate::{
    colour::{Hue, Level, Shade, Tone},
    lift::Ph,
    mix::{Hazard, Ratio},
    money::{Currency, Money},
    quantity::{Duration, MassFraction, Share},
    reader::{InField, Problems},
};
use std::collections::BTreeMap;

/// What a product's own instructions allow, as far as the shop says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OwnLimits {
    /// The strongest developer.
    pub strongest: Option<MassFraction>,
    /// The longest time on the hair.
    pub longest: Option<Duration>,
    /// From when that time counts; `None` where the shop does not say, and the first strand is taken.
    pub counts_from: Option<CountsFrom>,
}

impl OwnLimits {
    fn read(
        strongest_ww_percent: Option<f64>,
        longest_min: Option<f64>,
        counts_from: Option<CountsFrom>,
        field: &str,
    ) -> Result<Self, Problems> {
        let strongest = strongest_ww_percent.map(MassFraction::from_ww_percent).transpose();
        let longest = longest_min.map(Duration::from_min).transpose();
        Ok(Self {
            strongest: strongest.in_field(&format!("{field}.strongest_developer_ww_percent"))?,
            longest: longest.in_field(&format!("{field}.longest_min"))?,
            counts_from,
        })
    }
}

/// A lightener of the shop.
#[derive(Debug, Clone, PartialEq)]
pub struct Lightener {
    /// Your name for it.
    pub name: String,
    /// Parts lightener to parts developer, by mass.
    pub ratio: Ratio,
    /// Whether its own instructions allow it on the scalp.
    pub on_scalp: bool,
    /// The strongest developer that they allow there, where they say.
    pub strongest_on_scalp: Option<MassFraction>,
    /// How long a mixed bowl is worked with, where that is said.
    pub working_life: Option<Duration>,
    /// Whether it holds persulfate; `None` where the shop does not say, and it is taken for so.
    pub persulfate: Option<bool>,
    /// pH of the mixed bowl, where its maker states it.
    pub mixed_ph: Option<Ph>,
    /// What its own instructions allow.
    pub limits: OwnLimits,
    /// What is in hand, what it costs, what is in it.
    pub facts: StockFacts,
}

impl Lightener {
    pub(super) fn read(entry: &LightenerEntry, currency: Option<Currency>, field: &str) -> Result<Self, Problems> {
        let working_life = entry.working_life_min.map(Duration::from_min).transpose();
        let strongest = entry.strongest_developer_ww_percent;
        let on_scalp = entry.strongest_on_scalp_ww_percent.map(MassFraction::from_ww_percent).transpose();
        Ok(Self {
            name: entry.name.clone(),
            ratio: entry.ratio.parse().in_field(&format!("{field}.ratio"))?,
            on_scalp: entry.on_scalp,
            strongest_on_scalp: on_scalp.in_field(&format!("{field}.strongest_on_scalp_ww_percent"))?,
            working_life: working_life.in_field(&format!("{field}.working_life_min"))?,
            persulfate: entry.persulfate,
            mixed_ph: entry.mixed_ph.map(Ph::new).transpose().in_field(&format!("{field}.mixed_ph"))?,
            limits: OwnLimits::read(strongest, entry.longest_min, entry.longest_counts_from, field)?,
            facts: StockFacts::read(&entry.name, entry.facts(), currency, field)?,
        })
    }
}

/// A colour shade of the shop.
#[derive(Debug, Clone, PartialEq)]
pub struct StockedShade {
    /// Its code, level, tone and how much it deposits.
    pub shade: Shade,
    /// What kind of colour it is.
    pub class: ShadeClass,
    /// Parts colour to parts developer, by mass; a semi-permanent colour has none.
    pub ratio: Option<Ratio>,
    /// pH of the mixed bowl, where its maker states it.
    pub mixed_ph: Option<Ph>,
    /// What its own instructions allow.
    pub limits: OwnLimits,
    /// What is in hand, what it costs, what is in it.
    pub facts: StockFacts,
}

impl StockedShade {
    pub(super) fn read(
        entry: &ShadeEntry,
        digits: &BTreeMap<String, Vec<String>>,
        currency: Option<Currency>,
        field: &str,
    ) -> Result<Self, Problems> {
        let level = Level::new(entry.level).in_field(&format!("{field}.level"))?;
        let mut shade = Shade::new(entry.code.as_str(), level, tone(entry, digits, field)?).in_field(field)?;
        if let Some(percent) = entry.deposit_percent {
            let deposit = Share::from_percent(percent).in_field(&format!("{field}.deposit_percent"))?;
            shade = shade.with_strength(deposit);
        }
        let strongest = entry.strongest_developer_ww_percent;
        Ok(Self {
            shade,
            class: entry.class,
            ratio: entry.ratio.as_deref().map(str::parse).transpose().in_field(&format!("{field}.ratio"))?,
            mixed_ph: entry.mixed_ph.map(Ph::new).transpose().in_field(&format!("{field}.mixed_ph"))?,
            limits: OwnLimits::read(strongest, entry.longest_min, entry.longest_counts_from, field)?,
            facts: StockFacts::read(&entry.code, entry.facts(), currency, field)?,
        })
    }
}

/// The tone in words, or by the digits that the shop explains.
fn tone(entry: &ShadeEntry, digits: &BTreeMap<String, Vec<String>>, field: &str) -> Result<Tone, Problems> {
    let (key, words): (_, Vec<&String>) = match &entry.tone_digits {
        None => ("tones", entry.tones.iter().collect()),
        Some(text) => {
            let meaning = text.chars().map(|digit| {
                let known = digits.get(digit.encode_utf8(&mut [0; 4]) as &str);
                known.ok_or_else(|| format!("\"{digit}\" has no meaning in this shop: add it under `digits`"))
            });
            let meaning = meaning.collect::<Result<Vec<_>, _>>().in_field(&format!("{field}.tone_digits"))?;
            ("tone_digits", meaning.into_iter().flatten().collect())
        }
    };
    let hues: Result<Vec<Hue>, _> = words.into_iter().map(|word| word.parse()).collect();
    Ok(Tone::from_hues(hues.in_field(&format!("{field}.{key}"))?))
}

/// Something added to a mix.
#[derive(Debug, Clone, PartialEq)]
pub struct StockedAdditive {
    /// Your name for it.
    pub name: String,
    /// Dose as a share of the mixed bowl before it is added.
    pub dose: Share,
    /// What is in hand, what it costs, what is in it.
    pub facts: StockFacts,
}

impl StockedAdditive {
    pub(super) fn read(entry: &AdditiveEntry, currency: Option<Currency>, field: &str) -> Result<Self, Problems> {
        Ok(Self {
            name: entry.name.clone(),
            dose: Share::from_percent(entry.dose_percent).in_field(&format!("{field}.dose_percent"))?,
            facts: StockFacts::read(&entry.name, entry.facts(), currency, field)?,
        })
    }
}

/// What a developer may be weakened with.
#[derive(Debug, Clone, PartialEq)]
pub struct Diluent {
    /// Your name for it.
    pub name: String,
    /// What is in hand, what it costs, what is in it.
    pub facts: StockFacts,
}

impl Diluent {
    pub(super) fn read(entry: &DiluentEntry, currency: Option<Currency>, field: &str) -> Result<Self, Problems> {
        let facts = StockFacts::read(&entry.name, entry.facts(), currency, field)?;
        Ok(Self { name: entry.name.clone(), facts })
    }
}

/// What takes artificial pigment out, used as it comes.
#[derive(Debug, Clone, PartialEq)]
pub struct Remover {
    /// Your name for it.
    pub name: String,
    /// Whether it holds persulfate, by what is declared, else by what is stated; what nobody says is taken for so.
    pub persulfate: bool,
    /// Whether it holds or releases peroxide, in the same way.
    pub peroxide: bool,
    /// What is in hand, what it costs, what is in it.
    pub facts: StockFacts,
}

impl Remover {
    pub(super) fn read(entry: &RemoverEntry, currency: Option<Currency>, field: &str) -> Result<Self, Problems> {
        let facts = StockFacts::read(&entry.name, entry.facts(), currency, field)?;
        let declared =
            |hazard: Hazard| facts.declared.ingredients.iter().any(|one| one.cas.and_then(Hazard::of) == Some(hazard));
        let holds = |hazard: Hazard, stated: Option<bool>, name: &str| match (declared(hazard), stated) {
            (true, Some(false)) => {
                Err("false, and `composition` declares it: correct one of the two").in_field(&format!("{field}.{name}"))
            }
            (true, _) => Ok(true),
            // Without a full declaration only a word for it makes it free of it.
            (false, stated) => Ok(stated.unwrap_or(!facts.declared.fully_declared)),
        };
        Ok(Self {
            name: entry.name.clone(),
            persulfate: holds(Hazard::Persulfate, entry.persulfate, "persulfate")?,
            peroxide: holds(Hazard::Peroxide, entry.peroxide, "peroxide")?,
            facts,
        })
    }
}

/// Something used up on a service.
#[derive(Debug, Clone, PartialEq)]
pub struct Consumable {
    /// What it is.
    pub name: String,
    /// Price of a full pack.
    pub price: Money,
    /// Pieces in a full pack.
    pub pack_pieces: u32,
    /// How many; `None` where the shop does not say, and one is taken.
    pub pieces: Option<u32>,
    /// What the number of pieces is for.
    pub per: Per,
    /// How many are in hand; `None` where the shop does not say.
    pub in_hand: Option<u32>,
}

impl Consumable {
    pub(super) fn read(entry: &ConsumableEntry, currency: Option<Currency>, field: &str) -> Result<Self, Problems> {
        let field = format!("{field}.price");
        let currency = currency.ok_or("there is no currency: say it in `currency`").in_field(&field)?;
        Ok(Self {
            name: entry.name.clone(),
            price: Money::parse(&entry.price, currency).in_field(&field)?,
            pack_pieces: entry.pack_pieces,
            pieces: entry.pieces,
            per: entry.per,
            in_hand: entry.in_hand_pieces,
        })
    }
}
