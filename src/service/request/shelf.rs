use super::{
    InField,
    defaults::{DefaultValue, Defaults},
};
use crate::{
    colour::{Hue, Level, Tone},
    mix::Ratio,
    money::{Currency, Money},
    peroxide::{Conditions, SolutionDensity, StatedStrength},
    quantity::{Density, Duration, Mass, MassFraction, Share, Temperature},
    service::{
        file::Problems,
        shape::{self, ShadeClass, StrengthBasis},
    },
    source::{Basis, Interval},
};

/// What a full pack holds and costs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::service) struct Priced {
    pub(in crate::service) pack: Mass,
    pub(in crate::service) price: Money,
}

/// A developer with its strength as a mass fraction.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::service) struct Bottle {
    pub(in crate::service) name: String,
    pub(in crate::service) stated: StatedStrength,
    pub(in crate::service) strength: Interval<MassFraction>,
    pub(in crate::service) basis: Basis,
    pub(in crate::service) priced: Option<Priced>,
}

/// Anything else on the shelf that can go into a bowl.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::service) struct Item {
    pub(in crate::service) name: String,
    pub(in crate::service) kind: ItemKind,
    pub(in crate::service) priced: Option<Priced>,
}

/// What an item is, with what only that kind has.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::service) enum ItemKind {
    Lightener { ratio: Ratio, on_scalp: bool, working_life: Option<Duration>, limits: OwnLimits },
    Shade { ratio: Option<Ratio>, level: Level, tone: Tone, class: ShadeClass, limits: OwnLimits },
    Additive { dose: Share },
    Diluent,
}

/// What a product's own instructions allow, as far as the file says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::service) struct OwnLimits {
    pub(in crate::service) strongest: Option<MassFraction>,
    pub(in crate::service) longest: Option<Duration>,
}

impl OwnLimits {
    fn new(field: &str, strongest_ww: Option<f64>, longest_min: Option<f64>) -> Result<Self, Problems> {
        let strongest = strongest_ww.map(MassFraction::from_percent_ww).transpose();
        let longest = longest_min.map(Duration::from_min).transpose();
        Ok(Self {
            strongest: strongest.in_field(&format!("{field}.strongest_developer_ww"))?,
            longest: longest.in_field(&format!("{field}.longest_min"))?,
        })
    }
}

impl Item {
    pub(in crate::service) fn lightens(&self) -> bool {
        matches!(self.kind, ItemKind::Lightener { .. })
    }

    /// Whether it is used as it comes, without developer.
    pub(in crate::service) fn needs_no_developer(&self) -> bool {
        matches!(self.kind, ItemKind::Shade { class: ShadeClass::Semi, .. })
    }

    pub(in crate::service) fn own_limits(&self) -> Option<OwnLimits> {
        match &self.kind {
            ItemKind::Lightener { limits, .. } | ItemKind::Shade { limits, .. } => Some(*limits),
            ItemKind::Additive { .. } | ItemKind::Diluent => None,
        }
    }

    pub(in crate::service) fn ratio(&self) -> Option<&Ratio> {
        match &self.kind {
            ItemKind::Lightener { ratio, .. } => Some(ratio),
            ItemKind::Shade { ratio, .. } => ratio.as_ref(),
            ItemKind::Additive { .. } | ItemKind::Diluent => None,
        }
    }
}

/// The developers of the shelf, read at the temperature of the room.
pub(super) fn bottles(
    shelf: &shape::Shelf,
    room: Temperature,
    currency: Option<Currency>,
    defaults: &mut Defaults,
) -> Result<Vec<Bottle>, Problems> {
    let mut read = |(i, developer): (usize, &shape::Developer)| {
        let field = format!("shelf.developer[{}]", i + 1);
        let stated: StatedStrength = developer.strength.parse().in_field(&format!("{field}.strength"))?;
        let conditions = Conditions::at(room).with_density(density(developer, &stated, &field, defaults)?);
        Ok(Bottle {
            name: developer.name.clone(),
            strength: stated.mass_fraction_under(&conditions).in_field(&format!("{field}.strength"))?,
            stated,
            basis: match developer.strength_basis {
                StrengthBasis::Measured => Basis::Measured,
                StrengthBasis::SupplierSheet | StrengthBasis::Label => Basis::Stated,
            },
            priced: priced(&field, developer.pack_g, developer.price.as_deref(), currency)?,
        })
    };
    shelf.developer.iter().enumerate().map(&mut read).collect()
}

/// What stands between the volume and the mass of a developer.
fn density(
    developer: &shape::Developer,
    stated: &StatedStrength,
    field: &str,
    defaults: &mut Defaults,
) -> Result<SolutionDensity, Problems> {
    if let Some(g_per_ml) = developer.density_g_per_ml {
        let density = Density::from_g_per_ml(g_per_ml).in_field(&format!("{field}.density_g_per_ml"))?;
        return Ok(SolutionDensity::measured(density));
    }
    if developer.cream == Some(false) {
        return Ok(SolutionDensity::Aqueous);
    }
    if developer.cream.is_none() && !matches!(stated, StatedStrength::Ww(_)) {
        let why = "density unknown: that of a clear solution, from 8 % below to 2 % above";
        defaults.note(&format!("{field}.cream"), DefaultValue::Yes(true), Basis::Assumed, None, why);
    }
    Ok(SolutionDensity::Emulsion)
}

/// Everything else on the shelf: lighteners, shades, additives, diluents.
pub(super) fn items(shelf: &shape::Shelf, currency: Option<Currency>) -> Result<Vec<Item>, Problems> {
    let mut items = Vec::new();
    for (i, lightener) in shelf.lightener.iter().enumerate() {
        let field = format!("shelf.lightener[{}]", i + 1);
        let working_life = lightener.working_life_min.map(Duration::from_min).transpose();
        items.push(Item {
            name: lightener.name.clone(),
            kind: ItemKind::Lightener {
                ratio: lightener.ratio.parse().in_field(&format!("{field}.ratio"))?,
                on_scalp: lightener.on_scalp,
                working_life: working_life.in_field(&format!("{field}.working_life_min"))?,
                limits: OwnLimits::new(&field, lightener.strongest_developer_ww, lightener.longest_min)?,
            },
            priced: priced(&field, lightener.pack_g, lightener.price.as_deref(), currency)?,
        });
    }
    for (i, shade) in shelf.shade.iter().enumerate() {
        let field = format!("shelf.shade[{}]", i + 1);
        let hues: Result<Vec<Hue>, _> = shade.tones.iter().map(|word| word.parse()).collect();
        items.push(Item {
            name: shade.code.clone(),
            kind: ItemKind::Shade {
                ratio: shade.ratio.as_deref().map(str::parse).transpose().in_field(&format!("{field}.ratio"))?,
                level: Level::new(shade.level).in_field(&format!("{field}.level"))?,
                tone: Tone::from_hues(hues.in_field(&format!("{field}.tones"))?),
                class: shade.class,
                limits: OwnLimits::new(&field, shade.strongest_developer_ww, shade.longest_min)?,
            },
            priced: priced(&field, shade.pack_g, shade.price.as_deref(), currency)?,
        });
    }
    for (i, additive) in shelf.additive.iter().enumerate() {
        let field = format!("shelf.additive[{}]", i + 1);
        let dose = Share::from_percent(additive.dose_percent).in_field(&format!("{field}.dose_percent"))?;
        items.push(Item {
            name: additive.name.clone(),
            kind: ItemKind::Additive { dose },
            priced: priced(&field, additive.pack_g, additive.price.as_deref(), currency)?,
        });
    }
    for (i, diluent) in shelf.diluent.iter().enumerate() {
        let field = format!("shelf.diluent[{}]", i + 1);
        let priced = priced(&field, diluent.pack_g, diluent.price.as_deref(), currency)?;
        items.push(Item { name: diluent.name.clone(), kind: ItemKind::Diluent, priced });
    }
    Ok(items)
}

fn priced(
    field: &str,
    pack_g: Option<f64>,
    price: Option<&str>,
    currency: Option<Currency>,
) -> Result<Option<Priced>, Problems> {
    let (Some(pack_g), Some(price), Some(currency)) = (pack_g, price, currency) else { return Ok(None) };
    Ok(Some(Priced {
        pack: Mass::from_g(pack_g).in_field(&format!("{field}.pack_g"))?,
        price: Money::parse(price, currency).in_field(&format!("{field}.price"))?,
    }))
}
