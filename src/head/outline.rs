use super::{Profile, Softness};
use crate::{
    choice::choice,
    quantity::{Quantity, Share},
    source::{Basis, Interval},
};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// How a bright outline is wanted.
    Solidity: "look of the outline" {
        /// A block of light: hardly a dark strand in it.
        Solid = "solid",
        /// Light strands among darker ones, and nowhere a line where they begin.
        Soft = "soft",
    }
}

/// Hair of one section on the outline, or of a region of it without one, of which nothing is taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutlinePart<'a> {
    /// The section, or the region.
    pub section: &'a str,
    /// How much of all the hair grows there.
    pub hair: Share,
    /// Of the hair there, what the section takes.
    pub taken: Interval<Share>,
    /// How that is covered along the strand.
    pub profile: Profile,
}

/// What to change so that the outline reads as wanted: the share of a section, or how it starts.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct OutlineChange {
    /// The section.
    pub section: String,
    /// Of its hair, what is light behind its start.
    #[serde(rename = "light_percent")]
    pub light: Share,
    /// What would have to be; the same where only its start is to change.
    #[serde(rename = "wanted_percent")]
    pub wanted: Share,
    /// Whether its start has to be blended: it is a line, and not at the scalp.
    pub blend_start: bool,
}

impl OutlineChange {
    /// What to do, in words.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::OutlineChange, quantity::Share};
    ///
    /// let (light, wanted) = (Share::from_percent(50.0)?, Share::from_percent(70.0)?);
    /// let change = OutlineChange { section: "hairline".into(), light, wanted, blend_start: false };
    /// assert_eq!(change.advice(), "make 70 % of the hair in \"hairline\" light instead of 50 %");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn advice(&self) -> String {
        let (section, light, wanted) = (&self.section, self.light, self.wanted);
        let share = format!("make {wanted:.0} of the hair in {section:?} light instead of {light:.0}");
        let start = "blend its start over more than half a centimetre, or begin within one of the scalp";
        match (self.light == self.wanted, self.blend_start) {
            (true, _) => format!("in {section:?}, {start}"),
            (false, true) => format!("{share}, and {start}"),
            (false, false) => share,
        }
    }
}

/// How solid the outline reads.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct OutlineLook {
    /// Of the hair of the outline, what is light behind its start.
    #[serde(rename = "light_percent")]
    pub light: Interval<Share>,
    /// How it reads by the best estimate; absent where it is neither.
    pub reads: Option<Solidity>,
    /// Whether it reads as wanted; absent where nothing is asked for.
    pub as_wanted: Option<bool>,
    /// Whether the bounds say the same, and not only the best estimate; absent where nothing is asked for.
    pub sure: Option<bool>,
    /// What to change when it does not: sections in the order of how much their change does. All of them together are enough.
    pub changes: Vec<OutlineChange>,
    /// What the bounds of the two looks rest on.
    pub basis: Basis,
}

/// Light hair from which an outline reads as one block, and up to which darker strands show in it; assumed.
const SOLID_FROM_PERCENT: f64 = 70.0;
const SOFT_UP_TO_PERCENT: f64 = 50.0;
/// A start this near to the scalp is no line before it grows out.
const AT_SCALP_CM: f64 = 1.0;

/// Whether the outline reads solid, soft, or neither, and the sections to change where that is not as wanted. Solid is an
/// outline of whose hair at least 70 % is light behind its start; soft is one of at most 50 % where no section begins in a
/// line away from the scalp; assumed. None without a section there.
///
/// # Example
///
/// ```
/// use foilwork::{head::{OutlinePart, Solidity, Technique, read_outline}, quantity::{Length, Share}};
///
/// let percent = Share::from_percent;
/// let profile = Technique::Weave.profile(Length::from_cm(30.0)?).value;
/// let woven = [OutlinePart { section: "hairline", hair: percent(5.0)?, taken: percent(45.0)?.into(), profile }];
/// let soft = read_outline(&woven, Some(Solidity::Soft)).ok_or("a section")?;
/// assert!(soft.as_wanted == Some(true) && soft.changes.is_empty());
/// let solid = read_outline(&woven, Some(Solidity::Solid)).ok_or("a section")?;
/// assert_eq!(solid.changes[0].advice(), "make 70 % of the hair in \"hairline\" light instead of 45 %");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn read_outline(parts: &[OutlinePart<'_>], wish: Option<Solidity>) -> Option<OutlineLook> {
    let all: f64 = parts.iter().map(|part| part.hair.percent()).sum();
    if all <= 0.0 {
        return None;
    }
    let light = |bound: Bound| parts.iter().map(|part| part.hair.percent() / all * part.light(bound)).sum::<f64>();
    let [low, best, high] = [light(Interval::low), light(Interval::best), light(Interval::high)];
    let lined = parts.iter().any(OutlinePart::begins_in_a_line);
    let reads = |percent: f64| {
        if percent >= SOLID_FROM_PERCENT {
            Some(Solidity::Solid)
        } else if percent <= SOFT_UP_TO_PERCENT && !lined {
            Some(Solidity::Soft)
        } else {
            None
        }
    };
    let met = |percent: f64| wish.map(|wish| reads(percent) == Some(wish));
    let missed = wish.filter(|_| met(best) == Some(false));
    Some(OutlineLook {
        light: Interval::ordered(low, best, high).map(Share::nearest),
        reads: reads(best),
        as_wanted: met(best),
        sure: met(best).map(|_| met(low) == met(best) && met(high) == met(best)),
        changes: missed.map(|wish| changes(parts, wish, best, all)).unwrap_or_default(),
        basis: Basis::Assumed,
    })
}

type Bound = fn(&Interval<Share>) -> Share;

impl OutlinePart<'_> {
    /// Of the hair there, what is light behind its start, in percent.
    fn light(&self, bound: Bound) -> f64 {
        bound(&self.taken).percent() * bound(&self.profile.covered).fraction()
    }

    fn begins_in_a_line(&self) -> bool {
        self.profile.softness() == Softness::Line && self.profile.start.best().cm() > AT_SCALP_CM
    }
}

/// Every section that is on the wrong side goes as far as the bound, those first whose change does most, until it is met;
/// and no line may stay where soft is wanted.
fn changes(parts: &[OutlinePart<'_>], wish: Solidity, best: f64, all: f64) -> Vec<OutlineChange> {
    let goal = if wish == Solidity::Solid { SOLID_FROM_PERCENT } else { SOFT_UP_TO_PERCENT };
    // Signed, so that what is to go up and what is to go down are worked out alike.
    let sign = if wish == Solidity::Solid { 1.0 } else { -1.0 };
    let does = |part: &OutlinePart<'_>| part.hair.percent() / all * sign * (goal - part.light(Interval::best));
    let mut order: Vec<&OutlinePart<'_>> = parts.iter().collect();
    order.sort_by(|a, b| does(b).total_cmp(&does(a)));
    let mut missing = sign * (goal - best);
    let mut found = Vec::new();
    for part in order {
        let blend = wish == Solidity::Soft && part.begins_in_a_line();
        let moves = missing > 1e-9 && does(part) > 0.0;
        if !(moves || blend) {
            continue;
        }
        let light = Share::nearest(part.light(Interval::best));
        missing -= if moves { does(part) } else { 0.0 };
        let wanted = if moves { Share::nearest(goal) } else { light };
        found.push(OutlineChange { section: part.section.to_owned(), light, wanted, blend_start: blend });
    }
    found
}
