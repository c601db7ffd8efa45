//! How long a section takes to put on: as its file says, or its foils times the minutes for one.

use super::defaults::{DefaultValue, Defaults};
use crate::{
    choice::choice,
    head::minutes_per_foil,
    quantity::{Duration, Quantity},
    reader::{InField, Problems},
    service::shape::{Salon, Section},
    source::{Basis, Interval, Sourced},
    text::amount,
};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// What the minutes to put a section on are from.
    AppliedBy: "source of minutes" {
        /// Its `apply_min`.
        Stated = "apply-min" => "`apply_min`",
        /// Its foils times its own `foil_min`.
        Section = "section" => "its own `foil_min`",
        /// Its foils times what the records of this colourist say.
        Records = "records" => "the records of this colourist",
        /// Its foils times `salon.foil_min`.
        Salon = "salon" => "`salon.foil_min`",
        /// Its foils times what is assumed for a foil.
        Assumed = "assumed" => "the minutes assumed for a foil",
    }
}

/// How long a section takes to put on, and what that rests on.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Applying {
    /// How long; the plan takes the best estimate.
    #[serde(rename = "apply_min")]
    pub time: Interval<Duration>,
    /// What it is from.
    pub by: AppliedBy,
    /// What it rests on.
    pub basis: Basis,
    /// Minutes for a foil, whether they are taken or not; absent without foils.
    #[serde(rename = "foil_min")]
    pub foil: Option<Interval<Duration>>,
    /// The foils times these minutes.
    #[serde(rename = "by_foils_min")]
    pub by_foils: Option<Interval<Duration>>,
    /// What those minutes for a foil rest on.
    pub foil_basis: Option<Basis>,
}

/// Minutes for a foil of the one who works, as the records of earlier services show them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FoilPace {
    /// Minutes for a foil: the mean, and where the true mean lies in 80 of 100 cases.
    pub foil: Interval<Duration>,
    /// How many sections were timed.
    pub sections: usize,
}

/// Minutes for a foil, and where they are from.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pace {
    foil: Interval<Duration>,
    by: AppliedBy,
    basis: Basis,
}

/// A sum of minutes that is told as a whole is not contradicted by half of one.
const ALIKE_MIN: f64 = 0.5;
/// The longest application of a section, as its field has it.
const LONGEST_MIN: f64 = 240.0;

impl Pace {
    /// What was measured before what is stated, and that before what is assumed.
    pub(super) fn of(salon: &Salon, measured: Option<FoilPace>) -> Result<Self, Problems> {
        let stated = salon.foil_min.map(Duration::from_min).transpose().in_field("salon.foil_min")?;
        let Sourced { value, basis, .. } = minutes_per_foil();
        Ok(match (measured, stated) {
            (Some(measured), _) => Self { foil: measured.foil, by: AppliedBy::Records, basis: Basis::Measured },
            (None, Some(stated)) => Self { foil: Interval::exact(stated), by: AppliedBy::Salon, basis: Basis::Stated },
            (None, None) => Self { foil: value, by: AppliedBy::Assumed, basis },
        })
    }

    fn for_foils(&self, foils: Interval<u32>) -> Interval<Duration> {
        foils.combine(self.foil, |foils, foil| Duration::nearest(f64::from(foils) * foil.min()))
    }

    /// How long a section takes; what its own fields say comes first, and they must not say two things.
    pub(super) fn section(
        &self,
        section: &Section,
        field: &str,
        foils: Option<Interval<u32>>,
        used: &mut Defaults,
    ) -> Result<Applying, Problems> {
        let of_apply = format!("{field}.apply_min");
        let of_foil = format!("{field}.foil_min");
        let stated = section.apply_min.map(Duration::from_min).transpose().in_field(&of_apply)?;
        let own = section.foil_min.map(Duration::from_min).transpose().in_field(&of_foil)?;
        let pace = own.map_or(*self, |foil| Self {
            foil: Interval::exact(foil),
            by: AppliedBy::Section,
            basis: Basis::Stated,
        });
        let foils = foils.filter(|foils| foils.best() > 0);
        let by_foils = foils.map(|foils| pace.for_foils(foils));
        let (foil, foil_basis) = (foils.map(|_| pace.foil), foils.map(|_| pace.basis));
        match (stated, by_foils) {
            (Some(stated), by_foils) => {
                let off = by_foils.filter(|by| {
                    stated.min() < by.low().min() - ALIKE_MIN || stated.min() > by.high().min() + ALIKE_MIN
                });
                if let (Some(off), Some(foil)) = (off, own) {
                    let message = format!(
                        "is {stated}, but by `foil_min` ({foil} a foil) the foils of this section take {}: leave one of \
                         the two out",
                        off.best()
                    );
                    return Err(message).in_field(&of_apply);
                }
                let time = Interval::exact(stated);
                Ok(Applying { time, by: AppliedBy::Stated, basis: Basis::Stated, foil, by_foils, foil_basis })
            }
            (None, Some(time)) => {
                if time.best().min() > LONGEST_MIN {
                    let message = format!(
                        "its foils would take {}, a section takes {LONGEST_MIN} min at most: split the section",
                        time.best()
                    );
                    return Err(message).in_field(if own.is_some() { &of_foil } else { &of_apply });
                }
                let why = match pace.by {
                    AppliedBy::Section => "its foils times its `foil_min`",
                    AppliedBy::Records => "its foils times the minutes for one in the records of this colourist",
                    AppliedBy::Salon => "its foils times `salon.foil_min`",
                    _ => "its foils times the minutes assumed for one; time yours and give `salon.foil_min`",
                };
                used.note(&of_apply, DefaultValue::Minutes(time), pace.basis, None, why);
                Ok(Applying { time, by: pace.by, basis: pace.basis, foil, by_foils, foil_basis })
            }
            (None, None) if own.is_some() => {
                let message = "no foils are counted here: give `foils` or `panel`, or `apply_min` instead";
                Err(message).in_field(&of_foil)
            }
            (None, None) => Err("missing: give it, or `foils` or a `panel` to work it out by the minutes for a foil")
                .in_field(&of_apply),
        }
    }
}

impl Applying {
    /// How long, and by what, in words.
    pub(crate) fn in_words(&self) -> String {
        let told = |time: &Interval<Duration>| {
            if time.is_exact() {
                return format!("{} min", amount(time.best(), 1));
            }
            let [low, best, high] = time.to_array().map(|time| amount(time, 1));
            format!("{best} min ({low} to {high})")
        };
        let own = format!("put on in {} by {} [{}]", told(&self.time), self.by, self.basis);
        match (self.by, &self.foil, &self.by_foils, self.foil_basis) {
            (AppliedBy::Stated, Some(foil), Some(by_foils), Some(basis)) => {
                format!("{own}; by {} a foil [{basis}] it would be {}", told(foil), told(by_foils))
            }
            (AppliedBy::Stated, ..) | (_, None, ..) => own,
            (_, Some(foil), ..) => format!("{own}, {} a foil", told(foil)),
        }
    }

    /// Whether a stated time lies outside what the foils take by minutes that are stated or measured: assumed ones contradict
    /// nobody.
    pub(crate) fn contradicts(&self) -> Option<Interval<Duration>> {
        let counts = self.by == AppliedBy::Stated && self.foil_basis.is_some_and(|basis| basis != Basis::Assumed);
        let (low, high) = (self.time.low().min() + ALIKE_MIN, self.time.high().min() - ALIKE_MIN);
        self.by_foils.filter(|by| counts && (low < by.low().min() || high > by.high().min()))
    }
}
