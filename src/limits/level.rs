use super::{
    Conversion, Limit, LimitRule, Table,
    content::Content,
    fit::{Coverage, Fit},
    subject::Subject,
};
use crate::{
    mix::{Cas, Form},
    quantity::{MassFraction, Quantity},
    source::Interval,
};

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
    /// The most that ingredients nobody can identify could add, in percent: each of them might set peroxide free.
    pub unidentified: f64,
    /// A substance of the row is in a form whose content of the counted species is not known.
    pub form_unknown: bool,
}

impl Level<'_> {
    /// The most that undeclared products and unidentified ingredients could add, as a mass fraction.
    pub(super) fn undeclared(&self) -> MassFraction {
        MassFraction::nearest(self.open + self.unidentified)
    }

    /// The level as a mass fraction; a sum beyond a whole bowl is cut there.
    pub(super) fn interval(&self) -> Interval<MassFraction> {
        self.level.map(MassFraction::nearest)
    }

    fn add(&mut self, subject: &Subject<'_>, content: Content) {
        let Content { least, best, most } = content;
        let [low, likely, high] = subject.level.to_array().map(MassFraction::ww_percent);
        self.level = plus(self.level, Interval::ordered(low * least, likely * best, high * most));
        // More than the declared form: a base in place of its salt counts for more than its mass.
        self.open += subject.open.ww_percent() * most.max(1.0);
        self.form_unknown |= least < most;
    }
}

/// Two levels that count together: low with low and high with high, the widest the sum can be.
pub(super) fn plus(one: Interval<f64>, other: Interval<f64>) -> Interval<f64> {
    Interval::ordered(one.low() + other.low(), one.best() + other.best(), one.high() + other.high())
}

/// Collects what each row that applies has to judge, and says of each subject whether any row bounds it.
pub(super) fn collect<'a>(
    table: &Table,
    subjects: impl Iterator<Item = Subject<'a>>,
    fit: impl Fn(&Limit) -> Fit,
    mut seen: impl FnMut(Subject<'a>, Coverage),
) -> Vec<Level<'a>> {
    let mut levels: Vec<Level<'a>> = Vec::with_capacity(32);
    for subject in subjects {
        let mut coverage = Coverage::NotInTable;
        let (mut closed, mut opened): (Option<(usize, &str)>, Vec<&str>) = (None, Vec::new());
        covering(table, &subject, |at, row| match fit(row) {
            Fit::Applies => {
                if bears_on_strength(row) {
                    coverage = Coverage::Judged;
                    opened.push(&row.substance);
                } else if coverage == Coverage::NotInTable {
                    coverage = Coverage::OtherUse { prohibited: false };
                }
                hold(&mut levels, at, &subject, Content::of(&subject, row));
            }
            Fit::ProfessionalsOnly if bears_on_strength(row) => closed = closed.or(Some((at, &row.substance))),
            _ => {
                let prohibited = row.rule == LimitRule::Prohibited;
                coverage = match coverage {
                    Coverage::NotInTable => Coverage::OtherUse { prohibited },
                    Coverage::OtherUse { prohibited: before } => {
                        Coverage::OtherUse { prohibited: before || prohibited }
                    }
                    known => known,
                };
            }
        });
        if let Some((row, _)) = closed.filter(|(_, substance)| !opened.contains(substance)) {
            coverage = Coverage::ProfessionalsOnly { row };
        }
        seen(subject, coverage);
    }
    levels
}

/// Opens every row on hydrogen peroxide to what may release it: what is not declared, and what cannot be identified.
///
/// No known releaser sets free as much as its own mass (lithium peroxide, the richest, three quarters), so the mass of
/// what is not known is the most it can add.
pub(super) fn open_to_peroxide(table: &Table, levels: &mut [Level<'_>], undeclared: MassFraction, unidentified: f64) {
    let on_peroxide = |row: &Limit| row.cas.contains(&Cas::HYDROGEN_PEROXIDE);
    for level in levels.iter_mut().filter(|level| table.rows().get(level.row).is_some_and(on_peroxide)) {
        level.open = level.open.max(undeclared.ww_percent());
        level.unidentified = unidentified;
    }
}

/// Adds a subject to what its row has to judge.
fn hold<'a>(levels: &mut Vec<Level<'a>>, row: usize, subject: &Subject<'a>, content: Content) {
    if let Some(level) = levels.iter_mut().find(|l| l.row == row) {
        level.also += 1;
        level.add(subject, content);
    } else {
        let (name, none) = (subject.name, Interval::exact(0.0));
        let mut level = Level { row, name, also: 0, level: none, open: 0.0, unidentified: 0.0, form_unknown: false };
        level.add(subject, content);
        levels.push(level);
    }
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
    // Stated as the peroxide it sets free: the law on peroxide counts it, whatever it is.
    if subject.is_stated_as_peroxide() && subject.cas.is_none_or(|cas| Conversion::of(cas, RELEASED).is_none()) {
        for at in table.naming(Cas::HYDROGEN_PEROXIDE) {
            by_row(at, &|row| row.expressed_as == Some(RELEASED));
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

const RELEASED: Form = Form::HydrogenPeroxideReleased;

/// Whether the row bears on a strength; other rows are never held against one.
pub(super) const fn bears_on_strength(row: &Limit) -> bool {
    row.is_ceiling() || matches!(row.rule, LimitRule::NoEntry | LimitRule::NotEstablished)
}
