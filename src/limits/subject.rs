use super::fit::Coverage;
use crate::{
    mix::{Cas, Constituent, Form, Ingredient},
    quantity::MassFraction,
    source::Interval,
};

/// What the rows of a table are held against: a substance of the bowl, or an ingredient of one product.
#[derive(Clone, Copy)]
pub(super) struct Subject<'a> {
    pub name: &'a str,
    pub cas: Option<Cas>,
    pub stated_as: Option<Form>,
    pub groups: &'a [String],
    pub level: Interval<MassFraction>,
    /// How much more of it there may be than is declared.
    pub open: MassFraction,
}

impl Subject<'_> {
    pub(super) fn is_stated_as_peroxide(&self) -> bool {
        matches!(self.stated_as, Some(Form::HydrogenPeroxide | Form::HydrogenPeroxideReleased))
    }

    /// Whether it is not known what the substance is, and so not what it sets free.
    pub(super) fn is_unidentified(&self, coverage: Coverage) -> bool {
        coverage == Coverage::NotInTable && !self.cas.is_some_and(Cas::is_known)
    }
}

impl<'a> From<&'a Constituent> for Subject<'a> {
    fn from(c: &'a Constituent) -> Self {
        let open = c.undeclared_at_most;
        Self { name: &c.name, cas: c.cas, stated_as: c.stated_as, groups: &c.groups, level: c.level, open }
    }
}

impl<'a> From<&'a Ingredient> for Subject<'a> {
    fn from(i: &'a Ingredient) -> Self {
        let open = MassFraction::ZERO;
        Self { name: &i.name, cas: i.cas, stated_as: i.stated_as, groups: &i.groups, level: i.level, open }
    }
}
