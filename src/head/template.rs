use crate::{
    choice::nearest,
    quantity::Share,
    source::{Basis, Interval},
};
use schemars::JsonSchema;
use serde::Serialize;

/// A region of the head.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Region {
    /// What it is called.
    pub name: String,
    /// Its share of the scalp that bears hair.
    #[serde(rename = "area_percent")]
    pub area: Share,
    /// Hairs on a square centimetre, against the mean of the head, in percent of it.
    pub density_percent: Interval<f64>,
    /// Whether it is part of the outline: hairline or nape line.
    pub outline: bool,
    /// How far inside it lies: 0 % at the outline, 100 % at the crown.
    #[serde(rename = "inward_percent")]
    pub inward: Share,
    /// Whether it is seen from the front.
    pub front: bool,
    /// Where it lies: left edge, top edge, width, height on a map of 12 by 16, the face at the top; absent where that is not
    /// stated.
    pub place: Option<[f64; 4]>,
}

/// The regions of a head, which together are all of it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Template {
    regions: Vec<Region>,
    /// What the shares rest on.
    pub basis: Basis,
}

/// Regions that are no head.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum TemplateError {
    /// No region.
    #[error("a template without a region: state at least one with `area_percent` 100")]
    Empty,
    /// Two of one name.
    #[error("region {name:?} is there twice: give each its own `name`")]
    Twice {
        /// The name.
        name: String,
    },
    /// Areas that are not the whole head.
    #[error("the regions' `area_percent` add up to {sum} %, not to 100 % (change {name:?} by {off} %)")]
    Sum {
        /// What they add up to.
        sum: f64,
        /// The largest region.
        name: String,
        /// What is missing, or too much when negative.
        off: f64,
    },
    /// A name that no region has.
    #[error("no region {name:?} in the template: it has {known}{meant}")]
    Unknown {
        /// The name.
        name: String,
        /// The names there are.
        known: String,
        /// What may have been meant.
        meant: String,
    },
}

/// How far the areas may be from the whole, in percent.
const ROUNDING: f64 = 0.05;

impl Template {
    /// Width and height of the map that a [`Region::place`] is on, face at the top.
    pub const MAP: [f64; 2] = [12.0, 16.0];

    /// A template of the user's own.
    ///
    /// # Errors
    ///
    /// [`TemplateError`] when a name is there twice or the areas are not the whole head.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{head::Template, source::Basis};
    ///
    /// let standard = Template::standard();
    /// assert!(Template::new(standard.regions().to_vec(), Basis::Stated).is_ok());
    /// assert!(Template::new(standard.regions()[1..].to_vec(), Basis::Stated).is_err());
    /// ```
    pub fn new(regions: Vec<Region>, basis: Basis) -> Result<Self, TemplateError> {
        let largest = regions.iter().reduce(|a, b| if b.area > a.area { b } else { a }).ok_or(TemplateError::Empty)?;
        for (i, region) in regions.iter().enumerate() {
            if regions.iter().take(i).any(|before| before.name == region.name) {
                return Err(TemplateError::Twice { name: region.name.clone() });
            }
        }
        let sum: f64 = regions.iter().map(|region| region.area.percent()).sum();
        if (sum - 100.0).abs() > ROUNDING {
            let tidy = |value: f64| (value * 100.0).round() / 100.0;
            return Err(TemplateError::Sum { sum: tidy(sum), name: largest.name.clone(), off: tidy(100.0 - sum) });
        }
        Ok(Self { regions, basis })
    }

    pub(super) const fn known_good(regions: Vec<Region>, basis: Basis) -> Self {
        Self { regions, basis }
    }

    /// Its regions.
    #[must_use]
    pub fn regions(&self) -> &[Region] {
        &self.regions
    }

    /// Where each region is drawn: where it lies, or, where that is not stated of one of them, all in a list.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::head::Template;
    ///
    /// assert_eq!(Template::standard().drawn().first(), Some(&[4.0, 0.0, 4.0, 1.5]));
    /// ```
    #[must_use]
    pub fn drawn(&self) -> Vec<[f64; 4]> {
        let rows = (0..=u16::MAX).map(|row| [0.0, f64::from(row), 12.0, 1.0]);
        let places: Option<Vec<[f64; 4]>> = self.regions.iter().map(|region| region.place).collect();
        places.unwrap_or_else(|| rows.take(self.regions.len()).collect())
    }

    /// The place of a region by its name.
    ///
    /// # Errors
    ///
    /// [`TemplateError::Unknown`] with the names there are.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::head::Template;
    ///
    /// assert_eq!(Template::standard().position("crown"), Ok(3));
    /// assert!(Template::standard().position("crwon").is_err_and(|error| error.to_string().contains("did you mean crown")));
    /// ```
    pub fn position(&self, name: &str) -> Result<usize, TemplateError> {
        let names = || self.regions.iter().map(|region| region.name.as_str());
        names().position(|known| known == name).ok_or_else(|| TemplateError::Unknown {
            name: name.to_owned(),
            known: names().collect::<Vec<_>>().join(", "),
            meant: nearest(name, names()).map(|near| format!(" (did you mean {near}?)")).unwrap_or_default(),
        })
    }

    /// The share of all the hair that each region bears, in their order: area times density, the best estimates adding up
    /// to all of it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::head::Template;
    ///
    /// let sum: f64 = Template::standard().hair().iter().map(|share| share.best().percent()).sum();
    /// assert!((sum - 100.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn hair(&self) -> Vec<Interval<Share>> {
        use crate::quantity::Quantity;
        let of = |region: &Region| region.area.fraction() * region.density_percent.best();
        let all: f64 = self.regions.iter().map(of).sum();
        let share = |region: &Region| {
            // A region that is denser than thought makes the others less of the whole.
            let rest = all - of(region);
            region.density_percent.map(|density| {
                let own = region.area.fraction() * density;
                Share::nearest(100.0 * own / (own + rest))
            })
        };
        self.regions.iter().map(share).collect()
    }
}
