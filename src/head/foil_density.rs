use super::{Gradient, Placement, Region, Template};
use crate::{
    quantity::{Length, Quantity, Share},
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// What a gradient asks for in a region.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RegionFoils {
    /// The region.
    pub region: String,
    /// Its place in the work, from one: the back from below upward, then the front inward to outward, for the finest hair
    /// is done soonest and goes on last (common practice). What lies alike, or where it lies is not stated, as it is listed.
    pub order: u32,
    /// Where the colour begins.
    #[serde(rename = "start_cm")]
    pub start: Length,
    /// Of the hair there, how much is taken.
    #[serde(rename = "taken_percent")]
    pub taken: Share,
    /// Of all the hair, how much is taken there.
    #[serde(rename = "of_head_percent")]
    pub of_head: Share,
    /// Foils; absent where nobody said how many there are.
    pub foils: Option<u32>,
}

/// What a gradient asks of the area of a section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionGradient {
    /// Of all the hair, how much it takes.
    pub of_head: Share,
    /// Where its colour begins: the mean by hair, and the nearest and farthest of its regions.
    pub start: Interval<Length>,
}

impl Gradient {
    /// So many foils over the whole head: each region by the hair that is taken there, the counts adding up.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{Gradient, Template}, quantity::{Length, Share}};
    ///
    /// let (cm, percent) = (Length::from_cm, Share::from_percent);
    /// let blend = Gradient::new((cm(1.0)?, cm(5.0)?), (percent(70.0)?, percent(20.0)?), cm(30.0)?)?;
    /// let laid = blend.lay(&Template::standard(), 60);
    /// assert_eq!(laid.iter().filter_map(|region| region.foils).sum::<u32>(), 60);
    /// let last = laid.iter().max_by_key(|region| region.order);
    /// assert_eq!(last.map(|region| region.region.as_str()), Some("front hairline"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn lay(&self, template: &Template, foils: u32) -> Vec<RegionFoils> {
        let asked = self.asks(template);
        let taken: Vec<f64> = asked.iter().map(|region| region.of_head.percent()).collect();
        let counts = share_out(foils, &taken);
        asked.into_iter().zip(counts).map(|(region, foils)| RegionFoils { foils: Some(foils), ..region }).collect()
    }

    /// What it asks of each region, without a count of foils.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{Gradient, Template}, quantity::{Length, Share}};
    ///
    /// let (cm, percent) = (Length::from_cm, Share::from_percent);
    /// let blend = Gradient::new((cm(1.0)?, cm(5.0)?), (percent(70.0)?, percent(20.0)?), cm(30.0)?)?;
    /// assert!(blend.asks(&Template::standard()).iter().all(|region| region.foils.is_none()));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn asks(&self, template: &Template) -> Vec<RegionFoils> {
        let hair = template.hair();
        let regions = template.regions().iter().zip(&hair).zip(ranks(template.regions()));
        regions
            .map(|((region, hair), order)| RegionFoils {
                region: region.name.clone(),
                order,
                start: self.start(region),
                taken: self.share(region),
                of_head: Share::nearest(hair.best().percent() * self.share(region).fraction()),
                foils: None,
            })
            .collect()
    }

    /// What the gradient asks of a section that lies in these regions; none where it lies nowhere.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{Gradient, Placement, Template}, quantity::{Length, Share}};
    ///
    /// let (cm, percent) = (Length::from_cm, Share::from_percent);
    /// let blend = Gradient::new((cm(1.0)?, cm(5.0)?), (percent(70.0)?, percent(20.0)?), cm(30.0)?)?;
    /// let crown = Placement { section: "veil".into(), region: "crown".into(), share: Share::ALL };
    /// let asked = blend.of_section(&Template::standard(), [&crown]).ok_or("it lies in the crown")?;
    /// assert_eq!(asked.start.best().cm(), 5.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn of_section<'p>(
        &self,
        template: &Template,
        placements: impl IntoIterator<Item = &'p Placement>,
    ) -> Option<SectionGradient> {
        let hair = template.hair();
        let (mut all, mut taken, mut weighed) = (0.0, 0.0, 0.0);
        let mut span: Option<Interval<Length>> = None;
        for placement in placements {
            let place = template.position(&placement.region).ok()?;
            let (region, bears) = (template.regions().get(place)?, hair.get(place)?);
            let part = bears.best().percent() * placement.share.fraction();
            let start = Interval::exact(self.start(region));
            all += part;
            taken += part * self.share(region).fraction();
            weighed += part * start.best().cm();
            span = Some(span.map_or(start, |known| known.widened_to(start)));
        }
        let span = span.filter(|_| all > 0.0)?;
        let mean = Length::nearest(weighed / all);
        Some(SectionGradient {
            of_head: Share::nearest(taken),
            start: Interval::ordered(span.low(), mean, span.high()),
        })
    }
}

/// The place of each region in the work, from one.
fn ranks(regions: &[Region]) -> Vec<u32> {
    let top = |region: &Region| region.place.map_or(0.0, |[_, top, ..]| top);
    // The front goes on after the back and its outline last; the back from the nape upward.
    let stage = |region: &Region| match (region.front, region.outline) {
        (false, _) => 0,
        (true, false) => 1,
        (true, true) => 2,
    };
    let mut order: Vec<(usize, &Region)> = regions.iter().enumerate().collect();
    order.sort_by(|(_, a), (_, b)| stage(a).cmp(&stage(b)).then(top(b).total_cmp(&top(a))));
    let mut ranks: Vec<(usize, u32)> = order.into_iter().map(|(place, _)| place).zip(1..).collect();
    ranks.sort_unstable();
    ranks.into_iter().map(|(_, rank)| rank).collect()
}

/// A whole number in whole parts by weight; the largest remainders are rounded up, the earlier of two alike.
pub(crate) fn share_out(whole: u32, weights: &[f64]) -> Vec<u32> {
    let sum: f64 = weights.iter().map(|weight| weight.max(0.0)).sum();
    if sum <= 0.0 {
        return vec![0; weights.len()];
    }
    let exact: Vec<f64> = weights.iter().map(|weight| f64::from(whole) * weight.max(0.0) / sum).collect();
    let mut parts: Vec<u32> = exact.iter().map(|part| floor(*part)).collect();
    let mut by_remainder: Vec<usize> = (0..exact.len()).collect();
    let rest = |i: usize| exact.get(i).map_or(0.0, |part| part.fract());
    by_remainder.sort_by(|a, b| rest(*b).partial_cmp(&rest(*a)).unwrap_or(std::cmp::Ordering::Equal));
    let missing = whole.saturating_sub(parts.iter().sum());
    for i in by_remainder.into_iter().take(missing as usize) {
        if let Some(part) = parts.get_mut(i) {
            *part += 1;
        }
    }
    parts
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "no more than the whole, which is a count")]
fn floor(part: f64) -> u32 {
    // What division leaves behind does not cost a foil.
    (part + 1e-9).floor().max(0.0) as u32
}
