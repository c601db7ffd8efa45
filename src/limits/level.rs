use super::{Conversion, Limit, LimitRule, Table};
use crate::{
    mix::{Cas, Constituent, Form, Ingredient},
    quantity::{MassFraction, Quantity},
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

/// What one row has to judge: the sum of everything it covers, in the form it counts.
pub(super) struct Level<'a> {
    pub row: usize,
    /// First substance counted.
    pub name: &'a str,
    pub also: usize,
    /// In percent of the bowl; a sum of substances can be more than a whole.
    pub level: Interval<f64>,
    /// The most that undeclared products could add, in percent.
    pub open: f64,
    /// A substance of the row is in a form whose content of the counted species is not known.
    pub form_unknown: bool,
}

impl Level<'_> {
    /// The most that undeclared products could add, as a mass fraction.
    pub fn undeclared(&self) -> MassFraction {
        MassFraction::nearest(self.open)
    }

    /// The level as a mass fraction; a sum beyond a whole bowl is cut there.
    pub fn interval(&self) -> Interval<MassFraction> {
        self.level.map(MassFraction::nearest)
    }

    fn add(&mut self, subject: &Subject<'_>, content: Content) {
        let Content { least, best, most } = content;
        let [low, likely, high] = subject.level.to_array().map(MassFraction::percent_ww);
        self.level = plus(self.level, Interval::ordered(low * least, likely * best, high * most));
        // More than the declared form: a base in place of its salt counts for more than its mass.
        self.open += subject.open.percent_ww() * most.max(1.0);
        self.form_unknown |= least < most;
    }
}

/// Two levels that count together: low with low and high with high, the widest the sum can be.
pub(super) fn plus(one: Interval<f64>, other: Interval<f64>) -> Interval<f64> {
    Interval::ordered(one.low() + other.low(), one.best() + other.best(), one.high() + other.high())
}

/// Grams of the counted species in a gram of the substance.
#[derive(Clone, Copy)]
struct Content {
    least: f64,
    best: f64,
    most: f64,
}

impl Content {
    const SAME: Self = Self { least: 1.0, best: 1.0, most: 1.0 };

    fn of(subject: &Subject<'_>, row: &Limit) -> Self {
        let Some(counted) = row.expressed_as else { return Self::SAME };
        if let Some(stated) = subject.stated_as {
            let peroxide = [Form::HydrogenPeroxide, Form::HydrogenPeroxideReleased];
            if stated == counted || (peroxide.contains(&stated) && peroxide.contains(&counted)) {
                return Self::SAME;
            }
            // From one counted form to another by way of the substance that was added.
            let known = |form| subject.cas.and_then(|cas| Conversion::of(cas, form)).map(Conversion::grams_per_gram);
            if let (Some(from), Some(to)) = (known(stated), known(counted)) {
                return Self { least: to / from, best: to / from, most: to / from };
            }
        } else if let Some(cas) = subject.cas {
            if let Some(known) = Conversion::of(cas, counted) {
                let factor = known.grams_per_gram();
                return Self { least: factor, best: factor, most: factor };
            }
            // An entry that names one salt and counts that salt counts the substance as it is.
            if is_salt(counted) && row.cas == [cas] {
                return Self::SAME;
            }
        }
        // The counted species is part of the substance, so there cannot be more of it; a salt has no such bound.
        Self { least: 0.0, best: 1.0, most: if is_salt(counted) { UNBOUNDED } else { 1.0 } }
    }
}

/// Stands for "any amount": finite, so that any part of zero stays zero.
const UNBOUNDED: f64 = 1e9;

const fn is_salt(form: Form) -> bool {
    matches!(form, Form::Sulfate | Form::Hydrochloride | Form::Dihydrochloride | Form::Tetrahydrochloride)
}

/// Collects what each row selected by `wanted` has to judge, and says of each subject whether any row bounds it.
pub(super) fn collect<'a>(
    table: &Table,
    subjects: impl Iterator<Item = Subject<'a>>,
    wanted: impl Fn(&Limit) -> bool,
    mut seen: impl FnMut(Subject<'a>, Coverage),
) -> Vec<Level<'a>> {
    let mut levels: Vec<Level<'a>> = Vec::with_capacity(32);
    for subject in subjects {
        let mut coverage = Coverage::NotInTable;
        covering(table, &subject, |at, row| {
            if coverage == Coverage::NotInTable {
                coverage = Coverage::OtherUse;
            }
            if !wanted(row) {
                return;
            }
            if bears_on_strength(row) {
                coverage = Coverage::Judged;
            }
            let content = Content::of(&subject, row);
            match levels.iter_mut().find(|l| l.row == at) {
                Some(level) => {
                    level.also += 1;
                    level.add(&subject, content);
                }
                None => {
                    let (name, none) = (subject.name, Interval::exact(0.0));
                    let mut level = Level { row: at, name, also: 0, level: none, open: 0.0, form_unknown: false };
                    level.add(&subject, content);
                    levels.push(level);
                }
            }
        });
        seen(subject, coverage);
    }
    levels
}

/// What a table has to say about a subject.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Coverage {
    NotInTable,
    OtherUse,
    Judged,
}

/// Calls `visit` for every row that covers the subject: by CAS number, by a form it counts, by group, by name.
fn covering<'t>(table: &'t Table, subject: &Subject<'_>, mut visit: impl FnMut(usize, &'t Limit)) {
    let mut by_row = |at: usize, fits: &dyn Fn(&Limit) -> bool| {
        if let Some(row) = table.rows().get(at).filter(|row| fits(row)) {
            visit(at, row);
        }
    };
    if let Some(cas) = subject.cas {
        for at in table.naming(cas) {
            by_row(at, &|_| true);
        }
        for known in Conversion::all().iter().filter(|c| c.from == cas) {
            for at in table.naming(known.counted) {
                by_row(at, &|row| row.expressed_as == Some(known.to) && !row.cas.contains(&cas));
            }
        }
    }
    let by_name = subject.cas.is_none();
    if subject.groups.is_empty() && !by_name {
        return;
    }
    let name = subject.name.to_lowercase();
    for at in 0..table.rows().len() {
        by_row(at, &|row| {
            let named = by_name && row.names.contains(&name);
            let grouped = row.groups.iter().any(|g| subject.groups.contains(g));
            let already = subject.cas.is_some_and(|cas| row.cas.contains(&cas));
            (named || grouped) && !already
        });
    }
}

/// Rows that say nothing about a strength, and so are never held against one.
pub(super) const fn bears_on_strength(row: &Limit) -> bool {
    row.is_ceiling() || matches!(row.rule, LimitRule::NoEntry | LimitRule::NotEstablished)
}
