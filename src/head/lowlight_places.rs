use crate::quantity::Share;
use schemars::JsonSchema;
use serde::Serialize;

/// Light foils of a section that lie together, in a region or in the whole of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LightFoils<'a> {
    /// The region; none where the section does not say where it lies.
    pub region: Option<&'a str>,
    /// How much of all the hair the section has there.
    pub hair: Share,
    /// How far inside it lies: 0 at the outline, 100 % at the crown.
    pub inward: Share,
    /// Number of its first light foil, in the order of the work.
    pub first: u32,
    /// Number of its last light foil.
    pub last: u32,
}

/// Where lowlights go.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LowlightPlace {
    /// The region; absent where the section does not say where it lies.
    pub region: Option<String>,
    /// Foils of them there.
    pub foils: u32,
    /// Numbers of the light foils behind each of which one goes; a number that is there twice has two behind it.
    pub behind_foils: Vec<u32>,
}

/// Where so many foils of lowlights go: most where most hair lies furthest inside, none on the outline as long as there is
/// another place, for depth at the outline shows as a dark edge; within a region evenly between its light foils.
///
/// # Example
///
/// ```
/// use foilwork::{head::{LightFoils, lowlight_places}, quantity::Share};
///
/// let percent = Share::from_percent;
/// let crown = LightFoils { region: Some("crown"), hair: percent(8.0)?, inward: Share::ALL, first: 1, last: 6 };
/// let edge = LightFoils { region: Some("nape line"), hair: percent(3.0)?, inward: Share::NONE, first: 7, last: 9 };
/// let places = lowlight_places(3, &[crown, edge]);
/// // Three among six: behind the first, the third and the fifth; the edge stays light.
/// assert_eq!((places.len(), places[0].foils, places[0].behind_foils.as_slice()), (1, 3, [1, 3, 5].as_slice()));
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
///
/// # Source
///
/// Assumed: shares by hair times how far inside it lies.
#[must_use]
pub fn lowlight_places(foils: u32, light: &[LightFoils<'_>]) -> Vec<LowlightPlace> {
    let counted = |span: &&LightFoils<'_>| span.last >= span.first && span.hair > Share::NONE;
    let spans: Vec<&LightFoils<'_>> = light.iter().filter(counted).collect();
    let inside = spans.iter().any(|span| span.inward > Share::NONE);
    let weight = |span: &&LightFoils<'_>| span.hair.percent() * if inside { span.inward.fraction() } else { 1.0 };
    let weights: Vec<f64> = spans.iter().map(weight).collect();
    let place = |(span, count): (&&LightFoils<'_>, u32)| LowlightPlace {
        region: span.region.map(str::to_owned),
        foils: count,
        behind_foils: (0..count).map(|one| span.behind(one, count)).collect(),
    };
    let shared = spans.iter().zip(super::share_out(foils, &weights));
    shared.filter(|(_, count)| *count > 0).map(place).collect()
}

impl LightFoils<'_> {
    /// The light foil behind which one of so many lies: each in the middle of its part of them.
    fn behind(&self, one: u32, of: u32) -> u32 {
        let light = u64::from(self.last.saturating_sub(self.first)) + 1;
        let before = ((2 * u64::from(one) + 1) * light).div_ceil(2 * u64::from(of.max(1)));
        self.first.saturating_add(u32::try_from(before.saturating_sub(1)).unwrap_or(u32::MAX))
    }
}
