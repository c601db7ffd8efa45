use super::{
    Judgement, Jurisdiction, Limit, Measured, Notice, Report, Standing, Table, Use, Why, judgement,
    level::{self, Coverage, Level, Subject},
    notice, sum,
};
use crate::{
    mix::{Cas, Composition, Form},
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
/// let strength = Interval::exact(MassFraction::from_percent_ww(9.0)?);
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
    let mut report = bare(table, bowl.constituents().iter().map(Subject::from), of);
    let as_supplied = |row: &Limit| row.measured == Measured::AsSupplied && of.is_covered_by(row);
    // Most tables say nothing about products as supplied, and then there is nothing to look up.
    let supplied = table.rows().iter().any(as_supplied);
    for portion in bowl.portions().iter().filter(|_| supplied) {
        let product = &portion.product;
        let levels = level::collect(table, product.ingredients.iter().map(Subject::from), as_supplied, |_, _| ());
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
/// let bowl = Interval::exact(MassFraction::from_percent_ww(13.0)?);
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
    bare(Table::of(jurisdiction), std::iter::once(subject), of)
}

/// Everything that concerns the mixture itself.
fn bare<'a>(table: &'a Table, subjects: impl Iterator<Item = Subject<'a>>, of: Use) -> Report<'a> {
    let in_bowl = |row: &Limit| row.measured != Measured::AsSupplied && of.is_covered_by(row);
    let mut unjudged = Vec::new();
    let levels = level::collect(
        table,
        subjects,
        |row| in_bowl(row) && (level::bears_on_strength(row) || row.is_notice()),
        |subject, coverage| {
            let why = match coverage {
                Coverage::Judged => return,
                Coverage::NotInTable => Why::NotInTable,
                Coverage::OtherUse => Why::NoCeilingForThisUse,
            };
            if subject.level.high().percent_ww() > 0.0 {
                let standing = Standing::open(why);
                let (substance, level, undeclared_at_most) = (subject.name, subject.level, subject.open);
                unjudged.push(Judgement { substance, product: None, level, undeclared_at_most, limit: None, standing });
            }
        },
    );
    let (notices, ceilings) = split(table, &levels);
    let mut judgements: Vec<Judgement<'a>> = Vec::with_capacity(levels.len() + unjudged.len());
    judgements.extend(ceilings);
    judgements.append(&mut unjudged);
    let (notices, sums) = (notices.collect(), sum::rules(table, &levels));
    Report { table: table.title(), of, judgements, sums, notices, undeclared: Vec::new() }
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
