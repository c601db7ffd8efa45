//! Hands, basins, and how long the small work takes.

use super::{
    InField, defaults,
    defaults::{DefaultValue, Defaults},
};
use crate::{
    day::Floor,
    hair::Texture,
    lift::looks,
    quantity::{Duration, Quantity},
    reader::Problems,
    service::shape::{HouseRule, Salon},
    source::{Basis, Sourced},
};

/// The floor of the salon for this guest, and the rules of the house.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::service) struct OnFloor {
    pub(in crate::service) floor: Floor,
    /// How much longer than planned a section may stay on.
    pub(in crate::service) stay_longer: Duration,
    pub(in crate::service) rules: Vec<HouseRule>,
}

impl OnFloor {
    pub(super) fn of(salon: &Salon, texture: Option<Texture>, used: &mut Defaults) -> Result<Self, Problems> {
        let usual = Floor::default();
        let mut time = |stated: Option<f64>, name: &str, default: Duration, why: &'static str| {
            let field = format!("salon.{name}");
            let stated = stated.map(Duration::from_min).transpose().in_field(&field)?;
            Ok::<_, Problems>(used.stated_or(stated, &field, Sourced::assumed(default), why).value)
        };
        let mix = time(salon.mix_bowl_min, "mix_bowl_min", usual.mix, "weighing and mixing a bowl; time yours")?;
        let look = time(salon.look_min, "look_min", usual.look, "a walk over the open foils; time yours")?;
        let rinse = time(salon.rinse_section_min, "rinse_section_min", usual.rinse, "rinsing a section; time yours")?;
        let walk =
            time(salon.basin_walk_min, "basin_walk_min", usual.walk, "bringing the guest to the basin; time yours")?;
        let window = defaults::window().in_field("salon.stay_longer_min")?.value;
        let why = "between one look and the next; a strand that is there is rinsed whatever the order says";
        let stay_longer = time(salon.stay_longer_min, "stay_longer_min", window, why)?;
        for (field, stated) in [("salon.people", salon.people), ("salon.basins", salon.basins)] {
            if stated.is_none() {
                used.note(field, DefaultValue::Pieces(1), Basis::Assumed, None, "one, where no more are stated");
            }
        }
        // The rule that says when to look, asked for the first two looks.
        let at = looks(texture.unwrap_or_default(), Duration::MAX);
        let first_look = at.first().copied().unwrap_or(usual.first_look);
        let next = at.get(1).map_or(usual.look_every, |next| Duration::nearest(next.min() - first_look.min()));
        let rules = [HouseRule::DarkestFirst, HouseRule::MidLengthsFirst];
        Ok(Self {
            floor: Floor {
                people: salon.people.unwrap_or(usual.people),
                basins: salon.basins.unwrap_or(usual.basins),
                mix,
                look,
                first_look,
                look_every: next,
                rinse,
                walk,
            },
            stay_longer,
            rules: salon.order_rules.clone().unwrap_or_else(|| rules.to_vec()),
        })
    }
}
