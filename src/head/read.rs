use super::Template;
use crate::{
    choice::choice,
    colour::{Lightness, Swatch, White, lab_of},
    quantity::{Quantity, Share},
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// Hair of one section in one region.
#[derive(Debug, Clone, PartialEq)]
pub struct Placed<'a> {
    /// The section.
    pub section: &'a str,
    /// The place of the region in the template.
    pub region: usize,
    /// How much of the region's area the section is.
    pub of_region: Share,
    /// Of the hair there, how much is lightened, the mean along the strand.
    pub lightened: Share,
    /// What is left as it was.
    pub rest: Swatch,
    /// What is lightened and toned.
    pub light: Swatch,
}

choice! {
    /// How the head is wanted.
    Wish: "wish" {
        /// A bright outline around a quieter crown.
        BrightOutline = "bright-outline" => "bright outline, quieter crown",
        /// The front brighter than the back.
        BrightFront = "bright-front" => "bright front, quieter back",
        /// One lightness all over.
        Even = "even",
    }
}

impl Wish {
    /// Whether the outline over the interior and the front over the rest, in L\*, are as wished.
    fn is_met(self, (outline, front): (f64, f64)) -> bool {
        match self {
            Self::BrightOutline => outline >= SHOWS,
            Self::BrightFront => front >= SHOWS,
            Self::Even => outline.abs() < SHOWS && front.abs() < SHOWS,
        }
    }
}

/// How one region reads.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RegionLook {
    /// Its name.
    pub region: String,
    /// Its share of all the hair.
    #[serde(rename = "hair_percent")]
    pub hair: Interval<Share>,
    /// How light it reads from where strands merge.
    pub lab_l: Interval<Lightness>,
    /// The colour itself.
    pub colour: Swatch,
}

/// The section to change so that the head reads as wanted.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Change {
    /// The section.
    pub section: String,
    /// How much of its hair is lightened now.
    #[serde(rename = "lightened_percent")]
    pub lightened: Share,
    /// How much it would have to be.
    #[serde(rename = "wanted_percent")]
    pub wanted: Share,
    /// Whether that is enough; if not, its light hair has to be another level too.
    pub enough: bool,
}

impl Change {
    /// What to do, in words.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::Change, quantity::Share};
    ///
    /// let (lightened, wanted) = (Share::from_percent(10.0)?, Share::from_percent(35.0)?);
    /// let change = Change { section: "hairline".into(), lightened, wanted, enough: true };
    /// assert_eq!(change.advice(), "lighten 35 % of the hair in \"hairline\" instead of 10 %");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn advice(&self) -> String {
        let more = if self.enough { "" } else { ", which is not enough: take it to a lighter level too" };
        format!("lighten {:.0} of the hair in {:?} instead of {:.0}{more}", self.wanted, self.section, self.lightened)
    }
}

/// How the head reads.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct HeadLook {
    /// Region by region.
    pub regions: Vec<RegionLook>,
    /// L\* of hairline and nape line together; absent without an outline.
    pub outline_lab_l: Option<Interval<Lightness>>,
    /// L\* of all that is inside the outline.
    pub interior_lab_l: Option<Interval<Lightness>>,
    /// L\* that the outline is lighter than the interior, under every set of assumptions; negative when it is darker.
    pub outline_over_interior: Option<Interval<f64>>,
    /// The same of what is seen from the front over the rest.
    pub front_over_behind: Option<Interval<f64>>,
    /// Whether it reads as wanted, by the best estimates; absent where nothing is asked for.
    pub as_wanted: Option<bool>,
    /// What to change when it does not; the largest step first.
    pub change: Option<Change>,
}

impl HeadLook {
    /// Whether the bounds, and not only the best estimates, say the same of a wish.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::{Level, Swatch}, head::{Template, Wish, read_head}};
    ///
    /// let natural = Swatch::natural(Level::new(6.0)?);
    /// let look = read_head(&Template::standard(), &[], &natural, Some(Wish::Even));
    /// assert!(look.is_sure_of(Wish::Even));
    /// # Ok::<(), foilwork::colour::InvalidLevel>(())
    /// ```
    #[must_use]
    pub fn is_sure_of(&self, wish: Wish) -> bool {
        let at = |bound: fn(&Interval<f64>) -> f64| {
            let of = |over: &Option<Interval<f64>>| over.as_ref().map_or(0.0, bound);
            wish.is_met((of(&self.outline_over_interior), of(&self.front_over_behind)))
        };
        let best = at(Interval::best);
        at(Interval::low) == best && at(Interval::high) == best
    }
}

/// L\* by which one part has to be lighter than another to read so; two careful readings of one tress differ by less
/// (assumed).
const SHOWS: f64 = 2.0;

/// How the head reads: in each region the light of its sections adds up by their area, and regions by the hair they bear.
/// Hair that no section has is `natural`. Without a wish it is only read.
///
/// # Example
///
/// ```
/// use foilwork::{
///     colour::{Level, Swatch}, head::{Placed, Template, Wish, read_head}, quantity::Share,
/// };
///
/// let (natural, light) = (Level::new(5.0)?, Level::new(9.0)?);
/// let (rest, light) = (Swatch::natural(natural), Swatch::lightened(natural, light));
/// let template = Template::standard();
/// let outline = |(region, _): (usize, _)| Placed {
///     section: "hairline", region, of_region: Share::ALL, lightened: Share::from_fraction(0.6).unwrap_or(Share::ALL),
///     rest, light,
/// };
/// let places: Vec<_> = template.regions().iter().enumerate().filter(|(_, region)| region.outline).map(outline).collect();
/// let look = read_head(&template, &places, &rest, Some(Wish::BrightOutline));
/// assert!(look.as_wanted == Some(true) && look.change.is_none());
/// assert_eq!(read_head(&template, &places, &rest, Some(Wish::Even)).as_wanted, Some(false));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn read_head(template: &Template, placed: &[Placed<'_>], natural: &Swatch, wish: Option<Wish>) -> HeadLook {
    let hair = template.hair();
    let regions = read_regions(template, placed, natural);
    let part = |holds: &dyn Fn(usize) -> bool| {
        mixed(
            regions
                .iter()
                .enumerate()
                .filter(|(i, _)| holds(*i))
                .map(|(_, look)| (look.hair.best().percent(), &look.colour)),
        )
    };
    let is = |of: fn(&super::Region) -> bool| move |i: usize| template.regions().get(i).is_some_and(of);
    let (on_outline, at_front) = (is(|region| region.outline), is(|region| region.front));
    let (outline, interior) = (part(&on_outline), part(&|i| !on_outline(i)));
    let (front, behind) = (part(&at_front), part(&|i| !at_front(i)));
    let outline_over_interior = over(outline.as_ref(), interior.as_ref());
    let front_over_behind = over(front.as_ref(), behind.as_ref());
    let best = |of: Option<Interval<f64>>| of.map_or(0.0, |of| of.best());
    let as_wanted = wish.map(|wish| wish.is_met((best(outline_over_interior), best(front_over_behind))));
    let change = wish.filter(|_| as_wanted == Some(false)).and_then(|wish| {
        let bright: &dyn Fn(usize) -> bool = if wish == Wish::BrightFront { &at_front } else { &on_outline };
        let against = if wish == Wish::BrightFront { behind.as_ref() } else { interior.as_ref() };
        let goal = if wish == Wish::Even { 0.0 } else { SHOWS };
        change(placed, bright, against?, goal, &hair)
    });
    HeadLook {
        outline_lab_l: outline.as_ref().map(Swatch::lightness),
        interior_lab_l: interior.as_ref().map(Swatch::lightness),
        outline_over_interior,
        front_over_behind,
        as_wanted,
        change,
        regions,
    }
}

/// How each region reads by itself, in their order.
///
/// # Example
///
/// ```
/// use foilwork::{colour::{Level, Swatch}, head::{Template, read_regions}};
///
/// let natural = Swatch::natural(Level::new(6.0)?);
/// let looks = read_regions(&Template::standard(), &[], &natural);
/// assert!(looks.iter().all(|look| look.colour == natural));
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn read_regions(template: &Template, placed: &[Placed<'_>], natural: &Swatch) -> Vec<RegionLook> {
    let hair = template.hair();
    let look = |(i, region): (usize, &super::Region)| {
        let colour = of_region(placed.iter().filter(|part| part.region == i), natural);
        RegionLook {
            region: region.name.clone(),
            hair: hair.get(i).copied().unwrap_or(Interval::exact(Share::NONE)),
            lab_l: colour.lightness(),
            colour,
        }
    };
    template.regions().iter().enumerate().map(look).collect()
}

/// The colour of one region: its sections by area, the rest natural.
fn of_region<'a>(parts: impl Iterator<Item = &'a Placed<'a>>, natural: &Swatch) -> Swatch {
    let mut taken: f64 = 0.0;
    let mut sections = Vec::new();
    for part in parts {
        let area = part.of_region.percent().min((100.0 - taken).max(0.0));
        taken += area;
        sections.push((area, part.rest.beside(&part.light, part.lightened)));
    }
    let each = sections.iter().map(|(area, colour)| (*area, colour));
    let left = (taken < 100.0 - 1e-9).then_some((100.0 - taken, natural));
    mixed(each.chain(left)).unwrap_or(*natural)
}

/// Colours side by side, by weight; none without any.
fn mixed<'a>(parts: impl Iterator<Item = (f64, &'a Swatch)>) -> Option<Swatch> {
    let mut whole: Option<(f64, Swatch)> = None;
    for (weight, colour) in parts.filter(|(weight, _)| *weight > 0.0) {
        whole = Some(match whole {
            None => (weight, *colour),
            Some((sum, so_far)) => {
                let share = Share::nearest(100.0 * weight / (sum + weight));
                (sum + weight, so_far.beside(colour, share))
            }
        });
    }
    whole.map(|(_, colour)| colour)
}

/// How much lighter the first is, under every set of assumptions alike.
fn over(first: Option<&Swatch>, second: Option<&Swatch>) -> Option<Interval<f64>> {
    let (first, second) = (first?, second?);
    let best = first.lab().l() - second.lab().adapted_to(first.lab().white()).l();
    let each = first.samples().iter().zip(second.samples()).map(|(one, other)| lab_of(*one).l() - lab_of(*other).l());
    Some(each.fold(Interval::exact(best), |all, one| all.widened_to(Interval::exact(one))))
}

/// The section of the bright part that bears most hair, and the share that makes its part of the head `goal` lighter than
/// the rest: in reflectance, so the answer is a straight line.
fn change(
    placed: &[Placed<'_>],
    bright: &dyn Fn(usize) -> bool,
    rest: &Swatch,
    goal: f64,
    hair: &[Interval<Share>],
) -> Option<Change> {
    let weight = |part: &Placed<'_>| {
        hair.get(part.region).map_or(0.0, |share| share.best().percent()) * part.of_region.fraction()
    };
    let of_part = || placed.iter().filter(|part| bright(part.region));
    let largest = of_part().reduce(|a, b| if weight(b) > weight(a) { b } else { a })?;
    let light = |swatch: &Swatch| {
        let [_, y, _] = swatch.best_sample();
        y
    };
    let l = (rest.lab().adapted_to(White::D65TenDegree).l() + goal).clamp(0.0, 100.0);
    let [_, y, _] = rest.best_sample();
    let wanted = y * reflectance(l) / reflectance(rest.lab().adapted_to(White::D65TenDegree).l());
    let (dark, bright_hair) = (light(&largest.rest), light(&largest.light));
    let gain = bright_hair - dark;
    if gain.abs() < 1e-12 {
        return None;
    }
    let share = (wanted - dark) / gain * 100.0;
    Some(Change {
        section: largest.section.to_owned(),
        lightened: largest.lightened,
        wanted: Share::nearest(share),
        enough: (0.0..=100.0).contains(&share),
    })
}

/// Y of an L\*, of a white of 1.
fn reflectance(l: f64) -> f64 {
    let f = (l + 16.0) / 116.0;
    let cube = f * f * f;
    if cube > 216.0 / 24389.0 { cube } else { (116.0 * f - 16.0) * 27.0 / 24389.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Source: CIE 15, L* = 116 (Y)^(1/3) - 16 above Y = (6/29)^3, and 903.3 Y (24389/27) below; worked out by hand.
    #[test]
    fn reflectance_is_that_of_the_standard() {
        let near = |l: f64, y: f64| assert!((reflectance(l) - y).abs() < 1e-9, "{l}: {}", reflectance(l));
        near(0.0, 0.0);
        near(4.0, 4.0 * 27.0 / 24_389.0);
        near(42.0, 0.125); // (58 / 116)^3
        near(71.0, 421_875.0 / 1_000_000.0); // (87 / 116)^3
        near(100.0, 1.0);
    }
}
