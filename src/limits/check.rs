use super::{
    Audience, Finding, Jurisdiction, Limit, Measured, Notice, Purpose, Report, Rule, Table, Verdict, Why, finding,
    level::{self, Coverage, Level, Subject},
    notice, sum,
};
use crate::{
    mix::{Cas, Composition, Form},
    quantity::MassFraction,
    source::Interval,
};

/// What a mixture is for and who uses it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Use {
    /// What it is for.
    pub purpose: Purpose,
    /// Who uses it.
    pub audience: Audience,
}

impl Use {
    /// A use by a professional in a salon.
    #[must_use]
    pub const fn professional(purpose: Purpose) -> Self {
        Self { purpose, audience: Audience::Professional }
    }

    /// A use by anyone at home.
    #[must_use]
    pub const fn general(purpose: Purpose) -> Self {
        Self { purpose, audience: Audience::General }
    }

    /// Whether a row concerns this use, wherever its figure is measured.
    pub(super) fn is_covered_by(self, row: &Limit) -> bool {
        let sale = matches!(row.rule, Rule::SupplyLimit | Rule::LicenceCeiling);
        row.users.include(self.audience)
            && if sale {
                self.audience == Audience::General
            } else {
                row.applies_to.iter().any(|scope| self.purpose.is_covered_by(*scope))
            }
    }
}

/// Holds a mixed bowl, and the products in it, against a table.
///
/// Figures meant as applied are compared with the bowl, figures meant as supplied with each product. Salts are
/// converted to the form the entry counts; substances that one entry covers are added up; rows with a ratio sum are
/// summed. A substance the table does not name, a product that is not declared, a figure from memory: each is reported
/// as what cannot be judged, never as within.
///
/// # Example
///
/// ```
/// use foilwork::{limits::{self, Jurisdiction, Purpose, Table, Use, Verdict}, mix::{Cas, Composition, Ingredient, Product}};
/// use foilwork::{quantity::{Mass, MassFraction}, source::Interval};
///
/// let strength = Interval::exact(MassFraction::from_percent_ww(9.0)?);
/// let peroxide = Ingredient::named("Hydrogen peroxide", strength).with_cas(Cas::HYDROGEN_PEROXIDE);
/// let bowl = Composition::mix(vec![
///     (Mass::from_g(60.0)?, Product::declared("developer", vec![peroxide])),
///     (Mass::from_g(30.0)?, Product::declared("lightener", vec![])),
/// ])?;
/// let table = Table::of(Jurisdiction::EuropeanUnion);
/// let report = limits::check(table, &bowl, Use::professional(Purpose::Lightening));
/// assert_eq!(report.findings[0].verdict, Verdict::Within);
/// assert_eq!(report.findings[0].margin_percentage_points(), Some(6.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Each finding carries its own: act and entry, date of the list, how it was obtained.
#[must_use]
pub fn check<'a>(table: &'a Table, bowl: &'a Composition, of: Use) -> Report<'a> {
    let mut report = bare(table, bowl.constituents().iter().map(Subject::from), of);
    for (_, product) in bowl.parts().iter().filter(|(mass, _)| mass.g() > 0.0) {
        let as_supplied = |row: &Limit| row.measured == Measured::AsSupplied && of.is_covered_by(row);
        let subjects = || product.ingredients.iter().map(Subject::from);
        let ceilings = level::collect(table, subjects(), |row| as_supplied(row) && row.is_ceiling(), |_, _| ());
        report.findings.extend(ceilings.iter().filter_map(|level| {
            judged(table, level).map(|finding| Finding { product: Some(&product.name), ..finding })
        }));
        let notices = level::collect(table, subjects(), |row| as_supplied(row) && row.is_notice(), |_, _| ());
        report.notices.extend(notices.iter().filter_map(|level| {
            notice::crossed(table, level).map(|notice| Notice { product: Some(&product.name), ..notice })
        }));
    }
    report.undeclared.extend(bowl.undeclared().map(|(_, product)| product.name.as_str()));
    report
}

/// Holds the hydrogen peroxide strength of a mixed bowl against a built-in table.
///
/// The strength counts as all the hydrogen peroxide in the bowl, present or released. It does not judge the developer
/// as supplied, nor anything else in the bowl.
///
/// # Units
///
/// Strength in % w/w, as applied.
///
/// # Example
///
/// ```
/// use foilwork::limits::{Jurisdiction, Purpose, Use, check_peroxide};
/// use foilwork::{quantity::MassFraction, source::Interval};
///
/// let bowl = Interval::exact(MassFraction::from_percent_ww(13.0)?);
/// let report = check_peroxide(Jurisdiction::EuropeanUnion, bowl, Use::professional(Purpose::Lightening));
/// assert!(report.findings[0].is_exceeded());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn check_peroxide(jurisdiction: Jurisdiction, as_applied: Interval<MassFraction>, of: Use) -> Report<'static> {
    let subject = Subject {
        name: "hydrogen peroxide",
        cas: Some(Cas::HYDROGEN_PEROXIDE),
        stated_as: Some(Form::HydrogenPeroxideReleased),
        groups: &[],
        level: as_applied,
        open: false,
    };
    bare(Table::of(jurisdiction), std::iter::once(subject), of)
}

/// Everything that concerns the mixture itself.
fn bare<'a>(table: &'a Table, subjects: impl Iterator<Item = Subject<'a>> + Clone, of: Use) -> Report<'a> {
    let in_bowl = |row: &Limit| row.measured != Measured::AsSupplied && of.is_covered_by(row);
    let mut unjudged = Vec::new();
    let levels = level::collect(
        table,
        subjects.clone(),
        |row| in_bowl(row) && level::bears_on_strength(row),
        |subject, coverage| {
            let why = match coverage {
                Coverage::Judged => return,
                Coverage::NotInTable => Why::NotInTable,
                Coverage::OtherUse => Why::NoCeilingForThisUse,
            };
            if subject.level.high().percent_ww() > 0.0 {
                let verdict = Verdict::CannotBeJudged(why);
                let (substance, level) = (subject.name, subject.level);
                unjudged.push(Finding { substance, product: None, level, limit: None, verdict });
            }
        },
    );
    let notices = level::collect(table, subjects, |row| in_bowl(row) && row.is_notice(), |_, _| ());
    let mut findings: Vec<Finding<'a>> = Vec::with_capacity(levels.len() + unjudged.len());
    findings.extend(levels.iter().filter_map(|level| judged(table, level)));
    findings.append(&mut unjudged);
    Report {
        table: table.title(),
        of,
        findings,
        sums: sum::rules(table, &levels),
        notices: notices.iter().filter_map(|level| notice::crossed(table, level)).collect(),
        undeclared: Vec::new(),
    }
}

fn judged<'a>(table: &'a Table, level: &Level<'a>) -> Option<Finding<'a>> {
    let limit = table.rows().get(level.row)?;
    let substance = if level.also == 0 { level.name } else { &limit.substance };
    let verdict = finding::verdict(limit, level);
    Some(Finding { substance, product: None, level: level.interval(), limit: Some(limit), verdict })
}
