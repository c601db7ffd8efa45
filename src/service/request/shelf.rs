//! What the shop has, as the tasks look it up: developers at the temperature of the room, and everything else by name.

use super::{
    InField,
    defaults::{DefaultValue, Defaults},
};
use crate::{
    colour::Shade,
    lift::Ph,
    mix::Ratio,
    money::PackPrice,
    peroxide::StatedStrength,
    quantity::{Duration, MassFraction, Share, Temperature},
    reader::Problems,
    shop::{OwnLimits, ShadeClass, Shop},
    source::{Basis, Interval},
};

/// A developer with its strength as a mass fraction.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::service) struct Bottle {
    pub(in crate::service) name: String,
    pub(in crate::service) stated: StatedStrength,
    pub(in crate::service) strength: Interval<MassFraction>,
    pub(in crate::service) basis: Basis,
    pub(in crate::service) priced: Option<PackPrice>,
}

/// Anything else in the shop that can go into a bowl.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::service) struct Item {
    pub(in crate::service) name: String,
    pub(in crate::service) kind: ItemKind,
    pub(in crate::service) priced: Option<PackPrice>,
}

/// What an item is, with what only that kind has.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::service) enum ItemKind {
    Lightener {
        ratio: Ratio,
        on_scalp: bool,
        strongest_on_scalp: Option<MassFraction>,
        working_life: Option<Duration>,
        persulfate: Option<bool>,
        mixed_ph: Option<Ph>,
        limits: OwnLimits,
    },
    Shade {
        ratio: Option<Ratio>,
        shade: Shade,
        class: ShadeClass,
        mixed_ph: Option<Ph>,
        limits: OwnLimits,
    },
    Additive {
        dose: Share,
    },
    Diluent,
    Remover {
        persulfate: bool,
        peroxide: bool,
    },
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
            ItemKind::Additive { .. } | ItemKind::Diluent | ItemKind::Remover { .. } => None,
        }
    }

    /// pH of the mixed bowl, where its maker states it.
    pub(in crate::service) fn mixed_ph(&self) -> Option<Ph> {
        match self.kind {
            ItemKind::Lightener { mixed_ph, .. } | ItemKind::Shade { mixed_ph, .. } => mixed_ph,
            ItemKind::Additive { .. } | ItemKind::Diluent | ItemKind::Remover { .. } => None,
        }
    }

    pub(in crate::service) fn ratio(&self) -> Option<&Ratio> {
        match &self.kind {
            ItemKind::Lightener { ratio, .. } => Some(ratio),
            ItemKind::Shade { ratio, .. } => ratio.as_ref(),
            ItemKind::Additive { .. } | ItemKind::Diluent | ItemKind::Remover { .. } => None,
        }
    }
}

/// The developers of the shop, read at the temperature of the room.
pub(super) fn bottles(shop: &Shop, room: Temperature, defaults: &mut Defaults) -> Result<Vec<Bottle>, Problems> {
    let mut read = |(i, bottle): (usize, &crate::shop::Bottle)| {
        let field = format!("shop.developer[{}]", i + 1);
        if bottle.density_is_assumed() {
            let why = "density unknown: that of a clear solution, from 8 % below to 2 % above";
            defaults.note(&format!("{field}.cream"), DefaultValue::Yes(true), Basis::Assumed, None, why);
        }
        Ok(Bottle {
            name: bottle.name.clone(),
            strength: bottle.strength(room).in_field(&format!("{field}.strength"))?,
            stated: bottle.stated,
            basis: bottle.basis(),
            priced: bottle.facts.pack_price,
        })
    };
    shop.bottles.iter().enumerate().map(&mut read).collect()
}

/// Everything else in the shop: lighteners, shades, additives, diluents, removers.
pub(super) fn items(shop: &Shop) -> Vec<Item> {
    let lighteners = shop.lighteners.iter().map(|one| Item {
        name: one.name.clone(),
        kind: ItemKind::Lightener {
            ratio: one.ratio.clone(),
            on_scalp: one.on_scalp,
            strongest_on_scalp: one.strongest_on_scalp,
            working_life: one.working_life,
            persulfate: one.persulfate,
            mixed_ph: one.mixed_ph,
            limits: one.limits,
        },
        priced: one.facts.pack_price,
    });
    let shades = shop.shades.iter().map(|one| Item {
        name: one.shade.code().to_owned(),
        kind: ItemKind::Shade {
            ratio: one.ratio.clone(),
            shade: one.shade.clone(),
            class: one.class,
            mixed_ph: one.mixed_ph,
            limits: one.limits,
        },
        priced: one.facts.pack_price,
    });
    let additives = shop.additives.iter().map(|one| Item {
        name: one.name.clone(),
        kind: ItemKind::Additive { dose: one.dose },
        priced: one.facts.pack_price,
    });
    let diluents = shop.diluents.iter().map(|one| Item {
        name: one.name.clone(),
        kind: ItemKind::Diluent,
        priced: one.facts.pack_price,
    });
    let removers = shop.removers.iter().map(|one| Item {
        name: one.name.clone(),
        kind: ItemKind::Remover { persulfate: one.persulfate, peroxide: one.peroxide },
        priced: one.facts.pack_price,
    });
    lighteners.chain(shades).chain(additives).chain(diluents).chain(removers).collect()
}
