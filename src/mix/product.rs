use super::{Cas, Form};
use crate::{
    quantity::{MassFraction, Quantity},
    source::Interval,
};
use serde::Serialize;

/// One ingredient of a product as its maker or its user states it.
///
/// An ingredient stated at exactly 0 % w/w says that the product is free of it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Ingredient {
    /// The name, best the one on the label (INCI).
    pub name: String,
    /// The CAS registry number; without it the name tells, when foilwork knows it.
    pub cas: Option<Cas>,
    /// The form the level is stated in, when that is not the substance of the CAS number itself.
    pub stated_as: Option<Form>,
    /// Groups of the law it belongs to, by the table's group names, for entries without CAS numbers.
    pub groups: Vec<String>,
    /// Mass fraction in the product as supplied.
    #[serde(rename = "level_ww_percent")]
    pub level: Interval<MassFraction>,
}

impl Ingredient {
    /// An ingredient known by name only.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{Cas, Form, Ingredient}, quantity::MassFraction, source::Interval};
    ///
    /// let level = Interval::exact(MassFraction::from_ww_percent(6.0)?);
    /// let peroxide = Ingredient::named("hydrogen peroxide", level).with_cas(Cas::HYDROGEN_PEROXIDE);
    /// assert_eq!(peroxide.stated_as(Form::HydrogenPeroxide).cas, Some(Cas::HYDROGEN_PEROXIDE));
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn named(name: impl Into<String>, level: Interval<MassFraction>) -> Self {
        Self { name: name.into(), cas: None, stated_as: None, groups: Vec::new(), level }
    }

    /// What it is: the CAS number stated, or that of the name when foilwork knows the name.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{Cas, Ingredient}, quantity::MassFraction, source::Interval};
    ///
    /// let level = Interval::exact(MassFraction::from_ww_percent(6.0)?);
    /// assert_eq!(Ingredient::named("hydrogen peroxide", level).identity(), Some(Cas::HYDROGEN_PEROXIDE));
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn identity(&self) -> Option<Cas> {
        self.cas.or_else(|| Cas::of_name(&self.name))
    }

    /// The same with its CAS number.
    #[must_use]
    pub fn with_cas(self, cas: Cas) -> Self {
        Self { cas: Some(cas), ..self }
    }

    /// The same, its level stated as another form, for example a sulfate stated as free base.
    #[must_use]
    pub fn stated_as(self, form: Form) -> Self {
        Self { stated_as: Some(form), ..self }
    }

    /// The same as a member of a group of the law.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::Ingredient, quantity::MassFraction, source::Interval};
    ///
    /// let level = Interval::exact(MassFraction::from_ww_percent(1.8)?);
    /// let dye = Ingredient::named("a substituted diamine", level).in_group("n-substituted-p-phenylenediamines");
    /// assert_eq!(dye.groups, ["n-substituted-p-phenylenediamines"]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn in_group(mut self, group: impl Into<String>) -> Self {
        self.groups.push(group.into());
        self
    }
}

/// A product as supplied.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Product {
    /// What the user calls it.
    pub name: String,
    /// What is known to be in it.
    pub ingredients: Vec<Ingredient>,
    /// Whether the user states that the list names everything the law may limit. When it does not, whatever is not
    /// listed is unknown, not absent.
    pub fully_declared: bool,
}

impl Product {
    /// A product of unknown contents.
    #[must_use]
    pub fn unknown(name: impl Into<String>) -> Self {
        Self { name: name.into(), ingredients: Vec::new(), fully_declared: false }
    }

    /// A product whose list names everything the law may limit.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Product;
    ///
    /// // Of a product that is not declared in full, what is not listed is unknown, not absent.
    /// assert!(Product::declared("thickener", vec![]).fully_declared);
    /// assert!(!Product::unknown("powder").fully_declared);
    /// ```
    #[must_use]
    pub fn declared(name: impl Into<String>, ingredients: Vec<Ingredient>) -> Self {
        Self { name: name.into(), ingredients, fully_declared: true }
    }

    /// A product of which some ingredients are known.
    #[must_use]
    pub fn declared_in_part(name: impl Into<String>, ingredients: Vec<Ingredient>) -> Self {
        Self { name: name.into(), ingredients, fully_declared: false }
    }

    /// The most of any one substance that the list does not name: zero when the product is declared in full, otherwise
    /// what is left beside the least that its declared ingredients can be.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{Ingredient, Product}, quantity::MassFraction, source::Interval};
    ///
    /// let level = Interval::exact(MassFraction::from_ww_percent(40.0)?);
    /// let powder = Product::declared_in_part("powder", vec![Ingredient::named("potassium persulfate", level)]);
    /// assert_eq!(powder.undeclared_at_most().ww_percent(), 60.0);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn undeclared_at_most(&self) -> MassFraction {
        if self.fully_declared {
            return MassFraction::ZERO;
        }
        let declared: f64 = self.ingredients.iter().map(|i| i.level.low().ww_percent()).sum();
        MassFraction::nearest(100.0 - declared)
    }
}
