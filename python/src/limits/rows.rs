//! Wrappers of `foilwork::limits`: what a table says, row by row.

use crate::answer::answer;
use foilwork::{limits, quantity::MassFraction, source::Citation};

answer! {
    in "foilwork.limits";
    /// One row of a table: what a law or an authority says about one substance or group in one use.
    Limit {
        /// Key, unique in its table.
        id: String,
        /// Who issued it, for example ``"Canada (Ontario)"``.
        issued_by: String,
        /// What it says, for example ``"maximum"`` or ``"prohibited"``.
        rule: String,
        /// The substances as the entry names them.
        substance: String,
        /// Their CAS numbers; none for a group.
        cas: Vec<String>,
        /// Group names by which an ingredient can be stated to belong to an entry without CAS numbers.
        groups: Vec<String>,
        /// What it applies to.
        applies_to: Vec<String>,
        /// The same in the words of the source.
        use_as_worded: String,
        /// Whose use it covers: ``"all"``, ``"professional"`` or ``"general"``.
        users: String,
        /// The concentration, when the figure is one, read as % w/w.
        concentration_ww_percent: Option<f64>,
        /// The figure as printed, with its unit; empty without a figure.
        figure: String,
        /// How the unit was read.
        unit_reading: String,
        /// In what the concentration is meant, for example ``"as-applied"``.
        measured: String,
        /// The same in the words of the source.
        basis_as_worded: String,
        /// The form the figure is expressed in; None when it is the substance as stated.
        expressed_as: Option<String>,
        /// Conditions, warnings and label duties, in short.
        conditions: String,
        /// Act and entry.
        legal_reference: String,
        /// Date or edition of the list consulted.
        list_date: String,
        /// Ids of the sources in the register.
        sources: Vec<String>,
        /// How it was obtained: what is ``"from-memory"`` is unverified.
        obtained: String,
    }
}

impl From<&limits::Limit> for Limit {
    fn from(row: &limits::Limit) -> Self {
        Self {
            id: row.id.clone(),
            issued_by: row.issued_by.clone(),
            rule: row.rule.code().to_owned(),
            substance: row.substance.clone(),
            cas: row.cas.iter().map(ToString::to_string).collect(),
            groups: row.groups.clone(),
            applies_to: row.applies_to.iter().map(|scope| scope.code().to_owned()).collect(),
            use_as_worded: row.use_as_worded.clone(),
            users: row.users.code().to_owned(),
            concentration_ww_percent: row.concentration.map(MassFraction::ww_percent),
            figure: row.figure.clone(),
            unit_reading: row.unit_reading.clone(),
            measured: row.measured.code().to_owned(),
            basis_as_worded: row.basis_as_worded.clone(),
            expressed_as: row.expressed_as.map(|form| form.code().to_owned()),
            conditions: row.conditions.clone(),
            legal_reference: row.legal_reference.clone(),
            list_date: row.list_date.clone(),
            sources: row.citations.iter().map(|Citation { id, .. }| (*id).to_owned()).collect(),
            obtained: row.obtained.code().to_owned(),
        }
    }
}

answer! {
    in "foilwork.limits";
    /// One row as the listing shows it, with what a check does with it.
    ListedLimit {
        /// Key of the row.
        id: String,
        /// The substances.
        substance: String,
        /// What the row applies to, in the words of its source.
        used_in: String,
        /// Whose use.
        user: String,
        /// The figure with its unit, or the rule when there is none.
        figure: String,
        /// What a check does with it: ``"checked"``, ``"checked-never-green"``, ``"noted"`` or ``"not-checked"``.
        treatment: String,
        /// What the check needs, or why there is none; empty when there is no more to say.
        remark: String,
        /// Act and entry.
        legal_reference: String,
        /// Date or edition of the list.
        list_date: String,
        /// How the figure was obtained.
        how: String,
    }
}

impl From<limits::ListedLimit> for ListedLimit {
    fn from(row: limits::ListedLimit) -> Self {
        let limits::ListedLimit { id, substance, used_in, figure, remark, legal_reference, list_date, .. } = row;
        Self {
            id,
            substance,
            used_in,
            user: row.user.code().to_owned(),
            figure,
            treatment: row.treatment.code().to_owned(),
            remark,
            legal_reference,
            list_date,
            how: row.how.code().to_owned(),
        }
    }
}
