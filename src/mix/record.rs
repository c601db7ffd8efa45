use super::{Bowl, BowlPlan, Composition, Constituent};
use crate::scale::{Weighed, Weighing};
use crate::{quantity::MassFraction, source::Interval};
use serde::Serialize;

/// A weighing as plain data.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WeighingRecord {
    /// Division of the scale.
    pub division_g: f64,
    /// What the recipe asks for, part by part.
    pub wanted_g: Vec<f64>,
    /// What to put on the scale, part by part.
    pub weighed_g: Vec<f64>,
    /// Their sum.
    pub total_g: f64,
    /// How far each part's share of the bowl is off, in percent of the share.
    pub ratio_errors_percent: Vec<f64>,
    /// The largest of them, without sign.
    pub worst_ratio_error_percent: f64,
}

/// One fresh bowl as plain data; times count from the start of the first mixing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct BowlRecord {
    /// Mass to mix, residue included.
    pub mixed_g: f64,
    /// Mass that goes onto the hair.
    pub applied_g: f64,
    /// When to start mixing.
    pub mix_at_min: f64,
    /// When application goes on.
    pub ready_at_min: f64,
    /// When the last of it is on the hair.
    pub empty_at_min: f64,
    /// When it must no longer be used.
    pub use_by_min: f64,
}

/// One substance of a bowl as plain data.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ConstituentRecord {
    /// The name first used for it.
    pub name: String,
    /// The CAS registry number, where stated.
    pub cas: Option<String>,
    /// The form the level is stated in, where stated.
    pub stated_as: Option<&'static str>,
    /// Lower bound, best estimate and upper bound of what is declared.
    pub level_ww_percent: [f64; 3],
    /// Products that may hold more of it.
    pub undeclared_in: Vec<String>,
    /// The most they could add.
    pub undeclared_at_most_ww_percent: f64,
}

/// What is in a mixed bowl, as plain data.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CompositionRecord {
    /// The mass of the bowl.
    pub total_g: f64,
    /// Every declared substance.
    pub constituents: Vec<ConstituentRecord>,
    /// Products whose contents are not declared in full.
    pub undeclared: Vec<String>,
}

impl Weighing {
    /// The weighing as plain data, to serialise.
    #[must_use]
    pub fn record(&self) -> WeighingRecord {
        WeighingRecord {
            division_g: self.division().g(),
            wanted_g: self.parts().iter().map(|p| p.wanted.g()).collect(),
            weighed_g: self.parts().iter().map(|p| p.weighed.g()).collect(),
            total_g: self.total().g(),
            ratio_errors_percent: self.parts().iter().map(Weighed::ratio_error_percent).collect(),
            worst_ratio_error_percent: self.worst_ratio_error_percent(),
        }
    }
}

impl BowlPlan {
    /// The bowls as plain data, to serialise.
    #[must_use]
    pub fn record(&self) -> Vec<BowlRecord> {
        let bowl = |b: &Bowl| BowlRecord {
            mixed_g: b.mixed.g(),
            applied_g: b.applied.g(),
            mix_at_min: b.mix_at.min(),
            ready_at_min: b.ready_at.min(),
            empty_at_min: b.empty_at.min(),
            use_by_min: b.use_by.min(),
        };
        self.bowls().iter().map(bowl).collect()
    }
}

impl Composition {
    /// The composition as plain data, to serialise.
    #[must_use]
    pub fn record(&self) -> CompositionRecord {
        CompositionRecord {
            total_g: self.total().g(),
            constituents: self.constituents().iter().map(constituent).collect(),
            undeclared: self.undeclared().map(|(_, product)| product.name.clone()).collect(),
        }
    }
}

fn constituent(c: &Constituent) -> ConstituentRecord {
    ConstituentRecord {
        name: c.name.clone(),
        cas: c.cas.map(|cas| cas.to_string()),
        stated_as: c.stated_as.map(super::Form::code),
        level_ww_percent: bounds(c.level),
        undeclared_in: c.undeclared_in.clone(),
        undeclared_at_most_ww_percent: c.undeclared_at_most.percent_ww(),
    }
}

/// Lower bound, best estimate and upper bound in % w/w.
pub(super) fn bounds(level: Interval<MassFraction>) -> [f64; 3] {
    [level.low(), level.best(), level.high()].map(MassFraction::percent_ww)
}
