use super::{
    Judgement, Jurisdiction, Limit, Measured, Notice, Report, Standing, Table, Use, Why,
    fit::{Coverage, Fit},
    judgement,
    level::{self, Level},
    notice,
    subject::Subject,
    sum,
};
use crate::{
    mix::{Cas, Composition, Form, Product},
    quantity::MassFraction,
    source::Interval,
};

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
/// use foilwork::{limits::{self, Jurisdiction, Purpose, Standing, Table, Use}, mix::{Cas, Composition, Ingredient, Product}};
/// use foilwork::{quantity::{Mass, MassFraction}, source::Interval};
///
/// let strength = Interval::exact(MassFraction::from_ww_percent(9.0)?);
/// let peroxide = Ingredient::named("Hydrogen peroxide", strength).with_cas(Cas::HYDROGEN_PEROXIDE);
/// let bowl = Composition::mix(vec![
///     (Mass::from_g(60.0)?, Product::declared("developer", vec![peroxide])),
///     (Mass::from_g(30.0)?, Product::declared("lightener", vec![])),
/// ])?;
/// let table = Table::of(Jurisdiction::EuropeanUnion);
/// let report = limits::check(table, &bowl, Use::professional(Purpose::Lightening));
/// assert_eq!(report.judgements[0].standing, Standing::Within);
/// assert_eq!(report.judgements[0].margin_percentage_points(), Some(6.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Each judgement carries its own: act and entry, date of the list, how it was obtained.
#[must_use]
pub fn check<'a>(table: &'a Table, bowl: &'a Composition, of: Use) -> Report<'a> {
    let undeclared = bowl.undeclared_at_most();
    let mut report = bare(table, bowl.constituents().iter().map(Subject::from), of, undeclared);
    let as_supplied = |row: &Limit| if row.measured == Measured::AsSupplied { of.fit(row) } else { Fit::OtherUse };
    // Most tables say nothing about products as supplied, and then there is nothing to look up.
    let any = table.rows().iter().any(|row| as_supplied(row) == Fit::Applies);
    for portion in bowl.portions().iter().filter(|_| any) {
        let product = &portion.product;
        let levels = supplied(table, product, as_supplied);
        let product = Some(product.name.as_str());
        let (notices, ceilings) = split(table, &levels);
        report.judgements.extend(ceilings.map(|judgement| Judgement { product, ..judgement }));
        report.notices.extend(notices.map(|notice| Notice { product, ..notice }));
    }
    report.undeclared.extend(bowl.undeclared().map(|portion| portion.product.name.as_str()));
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
/// let bowl = Interval::exact(MassFraction::from_ww_percent(13.0)?);
/// let report = check_peroxide(Jurisdiction::EuropeanUnion, bowl, Use::professional(Purpose::Lightening));
/// assert!(report.judgements[0].is_exceeded());
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
        open: MassFraction::ZERO,
    };
    bare(Table::of(jurisdiction), std::iter::once(subject), of, MassFraction::ZERO)
}

/// Everything that concerns the mixture itself.
fn bare<'a>(
    table: &'a Table,
    subjects: impl Iterator<Item = Subject<'a>>,
    of: Use,
    undeclared: MassFraction,
) -> Report<'a> {
    let in_bowl = |row: &Limit| match of.fit(row) {
        _ if row.measured == Measured::AsSupplied => Fit::OtherUse,
        Fit::Applies if !(level::bears_on_strength(row) || row.is_notice()) => Fit::OtherUse,
        fit => fit,
    };
    let (mut unjudged, mut unidentified) = (Vec::new(), 0.0);
    let mut levels = level::collect(table, subjects, in_bowl, |subject, coverage| {
        if subject.is_unidentified(coverage) {
            unidentified += subject.level.high().ww_percent();
        }
        let (limit, standing) = match coverage {
            Coverage::Judged => return,
            Coverage::NotInTable => (None, Standing::open(Why::NotInTable)),
            Coverage::OtherUse { prohibited: false } => (None, Standing::open(Why::NoCeilingForThisUse)),
            Coverage::OtherUse { prohibited: true } => (None, Standing::open(Why::ProhibitedInOtherUse)),
            Coverage::ProfessionalsOnly { row } => (table.rows().get(row), Standing::ProfessionalsOnly),
        };
        if subject.level.high() > MassFraction::ZERO {
            let (substance, level, undeclared_at_most) = (subject.name, subject.level, subject.open);
            unjudged.push(Judgement { substance, product: None, level, undeclared_at_most, limit, standing });
        }
    });
    level::open_to_peroxide(table, &mut levels, undeclared, unidentified);
    let (notices, ceilings) = split(table, &levels);
    let mut judgements: Vec<Judgement<'a>> = Vec::with_capacity(levels.len() + unjudged.len());
    judgements.extend(ceilings);
    judgements.append(&mut unjudged);
    let (notices, sums) = (notices.collect(), sum::rules(table, &levels));
    Report { table: table.title(), of, judgements, sums, notices, undeclared: Vec::new() }
}

/// What concerns one product as it is supplied.
fn supplied<'a>(table: &'a Table, product: &'a Product, fit: impl Fn(&Limit) -> Fit) -> Vec<Level<'a>> {
    let mut unidentified = 0.0;
    let subjects = product.ingredients.iter().map(Subject::from);
    let mut levels = level::collect(table, subjects, fit, |subject, coverage| {
        if subject.is_unidentified(coverage) {
            unidentified += subject.level.high().ww_percent();
        }
    });
    level::open_to_peroxide(table, &mut levels, product.undeclared_at_most(), unidentified);
    levels
}

/// Rows that are no ceilings, and the rest.
fn split<'a, 'l>(
    table: &'a Table,
    levels: &'l [Level<'a>],
) -> (impl Iterator<Item = Notice<'a>> + 'l, impl Iterator<Item = Judgement<'a>> + 'l)
where
    'a: 'l,
{
    let rows = move || levels.iter().filter_map(|level| table.rows().get(level.row).map(|row| (level, row)));
    let notices = rows().filter(|(_, row)| row.is_notice()).filter_map(|(level, _)| notice::crossed(table, level));
    let judgements = rows().filter(|(_, row)| !row.is_notice()).filter_map(|(level, _)| judged(table, level));
    (notices, judgements)
}

fn judged<'a>(table: &'a Table, level: &Level<'a>) -> Option<Judgement<'a>> {
    let limit = table.rows().get(level.row)?;
    let substance = if level.also == 0 { level.name } else { &limit.substance };
    let standing = judgement::standing(limit, level);
    let (undeclared_at_most, level) = (level.undeclared(), level.interval());
    Some(Judgement { substance, product: None, level, undeclared_at_most, limit: Some(limit), standing })
}
