use super::{Conversion, Limit, LimitRule, Measured, Obtained, Purpose, Table, Users};
use crate::{choice::choice, text};
use serde::Serialize;
use std::fmt;

choice! {
    /// What a check does with one row of a table.
    Treatment: "treatment" {
        /// A level is held against its figure.
        Checked = "checked",
        /// A level is held against its figure, which is from memory: it can be exceeded, never be the basis of "within".
        CheckedNeverGreen = "checked-never-green" =>
            "checked, but from memory and unverified: never a basis for \"within\"",
        /// Reported beside the findings when the substance is in the bowl.
        Noted = "noted" => "noted beside the findings",
        /// Not looked at.
        NotChecked = "not-checked" => "not checked",
    }
}

/// One row as the listing shows it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ListedLimit {
    /// Key of the row.
    pub id: String,
    /// The substances.
    pub substance: String,
    /// What the row applies to, in the words of its source.
    pub used_in: String,
    /// Whose use.
    pub user: Users,
    /// The figure with its unit, or the rule when there is none.
    pub figure: String,
    /// What a check does with it.
    pub treatment: Treatment,
    /// What the check needs, or why there is none; empty when there is no more to say.
    pub remark: String,
    /// Act and entry.
    pub legal_reference: String,
    /// Date or edition of the list.
    pub list_date: String,
    /// How the figure was obtained.
    pub how: Obtained,
}

/// Every row of a table, with what a check does with it and what it does not.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Listing {
    /// The name of the table.
    pub table: String,
    /// The rows, in the order of the table.
    pub limits: Vec<ListedLimit>,
}

impl Table {
    /// Lists what is checked and what is not.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Jurisdiction, Table, Treatment};
    ///
    /// let listing = Table::of(Jurisdiction::Japan).listing();
    /// assert_eq!(listing.limits[0].treatment, Treatment::CheckedNeverGreen);
    /// assert!(listing.to_string().contains("not complete"));
    /// ```
    #[must_use]
    pub fn listing(&self) -> Listing {
        Listing { table: self.title().to_owned(), limits: self.rows().iter().map(listed).collect() }
    }
}

fn listed(row: &Limit) -> ListedLimit {
    let (treatment, remark) = treatment(row);
    let figure = match row.rule {
        LimitRule::Prohibited => "prohibited".to_owned(),
        LimitRule::Maximum => format!("at most {}", row.figure),
        rule if row.figure.is_empty() => rule.to_string(),
        rule => format!("{rule}, {} {}", if row.above { "above" } else { "up to" }, row.figure),
    };
    let figure = row.expressed_as.map_or(figure.clone(), |form| format!("{figure} as {form}"));
    ListedLimit {
        id: row.id.clone(),
        substance: row.substance.clone(),
        used_in: if row.use_as_worded.is_empty() { scopes(row) } else { row.use_as_worded.clone() },
        user: row.users,
        figure,
        treatment,
        remark,
        legal_reference: row.legal_reference.clone(),
        list_date: row.list_date.clone(),
        how: row.obtained,
    }
}

fn scopes(row: &Limit) -> String {
    row.applies_to.iter().map(|scope| scope.code()).collect::<Vec<_>>().join(" ")
}

fn treatment(row: &Limit) -> (Treatment, String) {
    let none = |why: &str| (Treatment::NotChecked, why.to_owned());
    let sale = matches!(row.rule, LimitRule::SupplyLimit | LimitRule::LicenceCeiling);
    let reached = Purpose::ALL.iter().any(|p| row.applies_to.iter().any(|scope| p.is_covered_by(*scope, row.rule)));
    if row.measured == Measured::Air {
        return none("needs a measurement of the air");
    }
    if matches!(row.rule, LimitRule::NoEntry | LimitRule::NotEstablished) {
        return none("no figure could be established");
    }
    if !reached && !sale {
        return none("foilwork plans no such use");
    }
    let treatment = match (row.is_ceiling(), row.obtained) {
        (false, _) => Treatment::Noted,
        (true, Obtained::FromMemory) => Treatment::CheckedNeverGreen,
        (true, _) => Treatment::Checked,
    };
    (treatment, needs(row, sale).join("; "))
}

/// What a check of the row depends on.
fn needs(row: &Limit, sale: bool) -> Vec<String> {
    let mut needs = Vec::new();
    if sale {
        needs.push("for use by the general public only".to_owned());
    }
    if row.measured == Measured::AsSupplied {
        needs.push("against each product as supplied, not against the mixture".to_owned());
    }
    if row.measured == Measured::NotStated && row.is_ceiling() {
        needs.push("the source does not say in what the figure is meant, so it never gives \"within\"".to_owned());
    }
    if row.cas.is_empty() && !row.groups.is_empty() {
        needs.push(format!("only for ingredients stated to belong to {}", row.groups.join(" or ")));
    }
    let unconvertible = row
        .expressed_as
        .is_some_and(|form| row.cas.iter().any(|cas| Conversion::of(*cas, form).is_none()) && row.cas.len() > 1);
    if unconvertible {
        needs.push(
            "needs the level stated in the form the entry counts, unless even all of it would be within".to_owned(),
        );
    }
    if let Some(rule) = &row.sum_group {
        needs.push(format!("ratio sum with {rule}"));
    }
    needs
}

impl fmt::Display for Listing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{}: {}", self.table, text::count(self.limits.len(), "entry", "entries"))?;
        for treatment in Treatment::ALL {
            let these: Vec<_> = self.limits.iter().filter(|l| l.treatment == *treatment).collect();
            if these.is_empty() {
                continue;
            }
            writeln!(f, "\n{treatment} ({}):", these.len())?;
            for limit in these {
                write!(f, "  {} | {} | {} | {}", limit.id, limit.substance, limit.used_in, limit.figure)?;
                if !limit.remark.is_empty() {
                    write!(f, " | {}", limit.remark)?;
                }
                writeln!(f, " | {} | {}", limit.legal_reference, limit.list_date)?;
            }
        }
        write!(f, "\nThe table is not complete: a substance that is missing here is not thereby without a limit.")
    }
}
