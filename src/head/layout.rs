use crate::{
    quantity::{Area, Length, Quantity, Share},
    source::{Basis, Interval, Sourced, citations::hair},
};
use schemars::JsonSchema;
use serde::Serialize;

/// A part of the head that is worked foil by foil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Panel {
    /// Along the parting.
    pub width: Length,
    /// Across the partings, from the first to the last.
    pub height: Length,
}

/// How the hair of a subsection is taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Taking {
    /// Strands picked out of it.
    Weave {
        /// Width of a strand.
        pick: Interval<Length>,
        /// Between two strands.
        gap: Interval<Length>,
        /// How deep into the subsection the comb goes.
        depth: Interval<Length>,
    },
    /// All of it.
    Slice,
}

/// Subsections, and what is left between them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layout {
    /// Thickness of a subsection.
    pub subsection: Interval<Length>,
    /// Hair left between two foils; none when they lie back to back.
    pub left_between: Interval<Length>,
    /// How its hair is taken.
    pub taking: Taking,
    /// Width of a foil; without it, as wide as the panel.
    pub foil_width: Option<Length>,
}

/// What a layout gives on a panel.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct InFoils {
    /// Strands in a subsection across the whole panel.
    pub picks: Interval<u32>,
    /// Scalp whose hair is lifted in one subsection.
    #[serde(rename = "lifted_cm2")]
    pub lifted: Interval<Area>,
    /// Of the hair of a subsection.
    #[serde(rename = "share_of_subsection_percent")]
    pub share_of_subsection: Interval<Share>,
    /// Of all the hair of the panel.
    #[serde(rename = "share_of_panel_percent")]
    pub share_of_panel: Interval<Share>,
    /// Foils, of which `across` lie beside each other in a row.
    pub foils: Interval<u32>,
    /// Foils beside each other.
    pub across: u32,
}

/// Sizes that do not fit on each other; panels and foils are told in cm, what lies in them in mm.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum LayoutError {
    /// A size of 0.
    #[error("`{field}` is 0: a foil needs some (leave it out for the usual one)")]
    Zero {
        /// Which.
        field: &'static str,
    },
    /// A foil wider than its panel.
    #[error(
        "`foil_width` {foil} is wider than `panel_width` {panel}: it would lie on its neighbour (fold the foil to {panel})"
    )]
    FoilWiderThanPanel {
        /// The foil.
        foil: Length,
        /// The panel.
        panel: Length,
    },
    /// A subsection that is thicker than the panel is high.
    #[error(
        "`subsection` {} is thicker than `panel_height` {height}: not one foil fits (take thinner subsections)",
        mm(*.subsection)
    )]
    SubsectionBeyondPanel {
        /// The subsection.
        subsection: Length,
        /// The panel.
        height: Length,
    },
    /// A strand wider than the panel.
    #[error(
        "`pick` {} is wider than `panel_width` {width}: that is a slice (take a slice, or narrower strands)", mm(*.pick)
    )]
    PickBeyondPanel {
        /// The strand.
        pick: Length,
        /// The panel.
        width: Length,
    },
    /// A comb that goes deeper than the subsection is thick.
    #[error(
        "`depth` {} is more than `subsection` {}: the comb would lift the hair behind it (at most {1})", mm(*.depth),
        mm(*.subsection)
    )]
    DepthBeyondSubsection {
        /// The depth.
        depth: Length,
        /// The subsection.
        subsection: Length,
    },
}

impl LayoutError {
    /// The same text with the caller's own names for foil width, panel width, panel height, subsection, pick and depth.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::head::LayoutError;
    ///
    /// let names = ["--foil-width", "--width", "--height", "--subsection", "--pick", "--depth"];
    /// assert!(LayoutError::Zero { field: "pick" }.told_with(names).starts_with("--pick is 0"));
    /// ```
    #[must_use]
    pub fn told_with(&self, names: [&str; 6]) -> String {
        let known = ["`foil_width`", "`panel_width`", "`panel_height`", "`subsection`", "`pick`", "`depth`"];
        let put = |text: String, (known, name): (&str, &str)| text.replace(known, name);
        known.into_iter().zip(names).fold(self.to_string(), put)
    }
}

/// In millimetres, the unit that subsections and strands are stated in; what a conversion leaves behind is cut off.
fn mm(length: Length) -> String {
    format!("{} mm", (length.mm() * 1e6).round() / 1e6)
}

/// A size that is taken by hand and by eye: a quarter off either way (assumed).
///
/// # Example
///
/// ```
/// use foilwork::{head::by_hand, quantity::Length};
///
/// assert_eq!(by_hand(Length::from_mm(4.0)?).high().mm(), 5.0);
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn by_hand(size: Length) -> Interval<Length> {
    Interval::ordered(0.75, 1.0, 1.25).map(|factor| Length::nearest(size.cm() * factor))
}

/// What keeps a whole number whole when it came out of a division.
const LAST_BITS: f64 = 1e-9;

impl Layout {
    /// A weave as it is usual for lightening: subsections of 1/8 inch with as much left between two foils.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{Layout, by_hand}, quantity::Length};
    ///
    /// let weave = Layout::weave(by_hand(Length::from_mm(3.0)?), by_hand(Length::from_mm(3.0)?));
    /// assert_eq!(weave.subsection.best().mm(), 3.175);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn weave(pick: Interval<Length>, gap: Interval<Length>) -> Self {
        let subsection = Self::usual_subsection().value;
        let taking = Taking::Weave { pick, gap, depth: subsection };
        Self { subsection, left_between: subsection, taking, foil_width: None }
    }

    /// Slices of the usual thickness with as much left between two foils.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::head::{Layout, Taking};
    ///
    /// assert_eq!(Layout::slice().taking, Taking::Slice);
    /// ```
    #[must_use]
    pub fn slice() -> Self {
        let subsection = Self::usual_subsection().value;
        Self { subsection, left_between: subsection, taking: Taking::Slice, foil_width: None }
    }

    /// The same with the foils back to back.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::head::Layout;
    ///
    /// assert_eq!(Layout::slice().back_to_back().left_between.best().cm(), 0.0);
    /// ```
    #[must_use]
    pub fn back_to_back(self) -> Self {
        Self { left_between: Interval::exact(Length::MIN), ..self }
    }

    /// The same with subsections of another thickness; a comb goes through all of it, and as much is left between two
    /// foils as before.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{Layout, by_hand}, quantity::Length};
    ///
    /// let thin = Layout::slice().with_subsection(by_hand(Length::from_mm(6.35)?));
    /// assert_eq!(thin.subsection.best().mm(), 6.35);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn with_subsection(self, subsection: Interval<Length>) -> Self {
        let taking = match self.taking {
            Taking::Weave { pick, gap, .. } => Taking::Weave { pick, gap, depth: subsection },
            Taking::Slice => Taking::Slice,
        };
        Self { subsection, taking, ..self }
    }

    /// Subsections of 1/8 inch, taken by hand.
    ///
    /// # Example
    ///
    /// ```
    /// assert_eq!(foilwork::head::Layout::usual_subsection().value.best().mm(), 3.175);
    /// ```
    ///
    /// # Source
    ///
    /// Citation `subsection-thickness`: 1/8 inch for lightening, 1/4 inch for colour.
    #[must_use]
    pub fn usual_subsection() -> Sourced<Interval<Length>> {
        let value = by_hand(Length::nearest(2.54 / 8.0));
        Sourced { value, basis: Basis::Published, citation: Some(&hair::SUBSECTION) }
    }

    /// What this layout gives on a panel.
    ///
    /// Of a panel of width `W`, in subsections of thickness `D` with `U` left between: `floor((W + g) / (p + g))` picks of
    /// width `p` and depth `d`, and `floor((H + U) / (D + U))` rows of foils.
    ///
    /// # Errors
    ///
    /// [`LayoutError`] when the best estimates do not fit on each other.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::{Layout, Panel, Taking}, quantity::Length};
    ///
    /// let mm = |mm| Length::from_mm(mm);
    /// let weave = Layout {
    ///     subsection: mm(6.0)?.into(),
    ///     left_between: mm(6.0)?.into(),
    ///     taking: Taking::Weave { pick: mm(3.0)?.into(), gap: mm(3.0)?.into(), depth: mm(6.0)?.into() },
    ///     foil_width: None,
    /// };
    /// let foils = weave.on(Panel { width: mm(80.0)?, height: mm(60.0)? })?;
    /// assert_eq!((foils.picks.best(), foils.foils.best()), (13, 5));
    /// assert_eq!(format!("{:.2}", foils.share_of_subsection.best()), "48.75 %");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn on(&self, panel: Panel) -> Result<InFoils, LayoutError> {
        self.fits(panel)?;
        let across = self.foil_width.map_or(1, |foil| whole((panel.width.cm() / foil.cm() - LAST_BITS).ceil()).max(1));
        let best = self.taken(panel, [Interval::best; 5]);
        // The most hair in thick picks with small gaps, deep in thin subsections that leave little between.
        let (low, high): (Bound, Bound) = (Interval::low, Interval::high);
        let most = self.taken(panel, [high, low, high, low, low]);
        let least = self.taken(panel, [low, high, low, high, high]);
        // The most hair of one subsection, and not of the panel: deep in thick ones.
        let area = |[pick, gap]: [Bound; 2]| self.taken(panel, [pick, gap, pick, pick, gap]).lifted;
        // The most strands are thin with small gaps.
        let picks = |bound: Bound| self.taken(panel, [bound; 5]).picks;
        let of = |part: fn(&Taken) -> f64| Interval::ordered(part(&least), part(&best), part(&most));
        Ok(InFoils {
            picks: Interval::ordered(picks(high), best.picks, picks(low)).map(whole),
            lifted: Interval::ordered(area([low, high]), best.lifted, area([high, low])).map(Area::nearest),
            share_of_subsection: of(|taken| taken.of_subsection * 100.0).map(Share::nearest),
            share_of_panel: of(|taken| taken.of_panel * 100.0).map(Share::nearest),
            foils: of(|taken| taken.rows).map(|rows| whole(rows) * across),
            across,
        })
    }

    fn fits(&self, panel: Panel) -> Result<(), LayoutError> {
        let subsection = self.subsection.best();
        let mut sizes = vec![("panel_width", panel.width), ("panel_height", panel.height), ("subsection", subsection)];
        sizes.extend(self.foil_width.map(|foil| ("foil_width", foil)));
        if let Taking::Weave { pick, depth, .. } = self.taking {
            sizes.extend([("pick", pick.best()), ("depth", depth.best())]);
        }
        if let Some((field, _)) = sizes.into_iter().find(|(_, size)| size.cm() <= 0.0) {
            return Err(LayoutError::Zero { field });
        }
        if let Some(foil) = self.foil_width.filter(|foil| *foil > panel.width) {
            return Err(LayoutError::FoilWiderThanPanel { foil, panel: panel.width });
        }
        if subsection > panel.height {
            return Err(LayoutError::SubsectionBeyondPanel { subsection, height: panel.height });
        }
        if let Taking::Weave { pick, depth, .. } = self.taking {
            let (pick, depth) = (pick.best(), depth.best());
            if pick > panel.width {
                return Err(LayoutError::PickBeyondPanel { pick, width: panel.width });
            }
            if depth > subsection {
                return Err(LayoutError::DepthBeyondSubsection { depth, subsection });
            }
        }
        Ok(())
    }

    /// Picks, area and shares with one bound of each size: pick, gap, depth, subsection, left between.
    fn taken(&self, panel: Panel, [of_pick, of_gap, of_depth, of_subsection, of_left]: [Bound; 5]) -> Taken {
        let (width, height) = (panel.width.cm(), panel.height.cm());
        let (thick, left) = (of_subsection(&self.subsection).cm(), of_left(&self.left_between).cm());
        let (picks, lifted) = match self.taking {
            Taking::Weave { pick, gap, depth } => {
                let (pick, gap) = (of_pick(&pick).cm().min(width), of_gap(&gap).cm());
                let picks = ((width + gap) / (pick + gap) + LAST_BITS).floor();
                (picks, picks * pick * of_depth(&depth).cm().min(thick))
            }
            Taking::Slice => (1.0, width * thick),
        };
        Taken {
            picks,
            lifted,
            of_subsection: lifted / (width * thick),
            of_panel: lifted / (width * (thick + left)),
            rows: ((height + left) / (thick + left) + LAST_BITS).floor(),
        }
    }
}

/// One of the bounds of a size.
type Bound = fn(&Interval<Length>) -> Length;

struct Taken {
    picks: f64,
    lifted: f64,
    of_subsection: f64,
    of_panel: f64,
    rows: f64,
}

/// A count that was worked out in `f64`.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held to 0 and a million before")]
fn whole(count: f64) -> u32 {
    count.clamp(0.0, 1e6) as u32
}
