use super::{Template, TemplateError};
use crate::{
    choice::choice,
    quantity::{Quantity, Share},
    source::Interval,
};
use std::collections::BTreeMap;

choice! {
    /// What hair is that no section has.
    Rest: "rest" {
        /// Left as it is.
        Natural = "natural",
        /// A mistake: the sections have to be all of the head.
        Refused = "refused",
    }
}

/// A section's part of a region.
#[derive(Debug, Clone, PartialEq)]
pub struct Placement {
    /// The section.
    pub section: String,
    /// The region.
    pub region: String,
    /// How much of the region it is.
    pub share: Share,
}

/// Sections that are no partition of the head.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum PartitionError {
    /// A region that is given out more than once.
    #[error("{region}: {first:?} and {second:?} overlap, together the sections take {taken} % of it ({way_out})")]
    Overlap {
        /// The region.
        region: String,
        /// The section that was there first.
        first: String,
        /// The section that no longer fits.
        second: String,
        /// What they take together.
        taken: f64,
        /// What is left for the second.
        room: f64,
        /// What can be done.
        way_out: String,
    },
    /// A region that is not given out in full.
    #[error(
        "{region}: {missing} % of it belongs to no section (add them to {nearest:?}, or say that the rest stays natural)"
    )]
    Gap {
        /// The region.
        region: String,
        /// What is missing.
        missing: f64,
        /// A section that is there, or the first of all.
        nearest: String,
    },
    /// A region that the template does not have.
    #[error(transparent)]
    Region(#[from] TemplateError),
}

const LAST_BITS: f64 = 1e-6;

/// The share of all the hair that each section has, checked: no place of the head belongs to two sections, and with
/// [`Rest::Refused`] none to no section. Sections are in the order of their first placement.
///
/// # Errors
///
/// [`PartitionError`], with both sections and what is left for the second, or with the region that has a gap.
///
/// # Example
///
/// ```
/// use foilwork::{head::{Placement, Rest, Template, partition}, quantity::Share};
///
/// let at = |section: &str, region: &str, percent| {
///     Ok::<_, foilwork::quantity::InvalidQuantity>(Placement {
///         section: section.to_owned(), region: region.to_owned(), share: Share::from_percent(percent)?,
///     })
/// };
/// let template = Template::standard();
/// let shares = partition(&template, &[at("halo", "crown", 60.0)?, at("veil", "crown", 40.0)?], Rest::Natural)?;
/// assert_eq!(shares.len(), 2);
/// assert!(partition(&template, &[at("halo", "crown", 60.0)?, at("veil", "crown", 50.0)?], Rest::Natural).is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn partition(
    template: &Template,
    placements: &[Placement],
    rest: Rest,
) -> Result<Vec<(String, Interval<Share>)>, PartitionError> {
    let hair = template.hair();
    let mut taken: BTreeMap<usize, (f64, &str)> = BTreeMap::new();
    let mut shares: Vec<(String, Interval<Share>)> = Vec::new();
    for placement in placements {
        let region = template.position(&placement.region)?;
        let so_far = taken.get(&region).copied();
        let (before, first) = so_far.unwrap_or((0.0, placement.section.as_str()));
        let after = before + placement.share.percent();
        if after > 100.0 + LAST_BITS {
            let room = tidy(100.0 - before);
            let (section, region) = (&placement.section, &placement.region);
            return Err(PartitionError::Overlap {
                region: placement.region.clone(),
                first: first.to_owned(),
                second: placement.section.clone(),
                taken: tidy(after),
                room,
                way_out: if room > 0.0 {
                    format!("give {section:?} {room} % or less")
                } else {
                    format!("take {region} out of {section:?}")
                },
            });
        }
        taken.insert(region, (after, placement.section.as_str()));
        let of_hair = hair.get(region).copied().unwrap_or(Interval::exact(Share::NONE));
        let part = of_hair.map(|all| Share::nearest(all.percent() * placement.share.fraction()));
        match shares.iter_mut().find(|(name, _)| *name == placement.section) {
            Some((_, share)) => *share = share.combine(part, |one, two| Share::nearest(one.percent() + two.percent())),
            None => shares.push((placement.section.clone(), part)),
        }
    }
    if rest == Rest::Refused {
        for (i, region) in template.regions().iter().enumerate() {
            let (covered, section) = taken.get(&i).copied().unwrap_or((0.0, ""));
            if covered < 100.0 - LAST_BITS {
                let first = placements.first().map_or("", |placement| placement.section.as_str());
                return Err(PartitionError::Gap {
                    region: region.name.clone(),
                    missing: tidy(100.0 - covered),
                    nearest: if section.is_empty() { first.to_owned() } else { section.to_owned() },
                });
            }
        }
    }
    Ok(shares)
}

fn tidy(percent: f64) -> f64 {
    (percent * 100.0).round() / 100.0
}
