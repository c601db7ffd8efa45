use super::{Conversion, Limit, subject::Subject};
use crate::mix::Form;

/// Grams of the counted species in a gram of the substance.
#[derive(Clone, Copy)]
pub(super) struct Content {
    pub least: f64,
    pub best: f64,
    pub most: f64,
}

impl Content {
    const SAME: Self = Self { least: 1.0, best: 1.0, most: 1.0 };

    pub(super) fn of(subject: &Subject<'_>, row: &Limit) -> Self {
        let Some(counted) = row.expressed_as else { return Self::SAME };
        if let Some(stated) = subject.stated_as {
            let peroxide = [Form::HydrogenPeroxide, Form::HydrogenPeroxideReleased];
            if stated == counted || (peroxide.contains(&stated) && peroxide.contains(&counted)) {
                return Self::SAME;
            }
            // From one counted form to another by way of the substance that was added.
            let known = |form| subject.cas.and_then(|cas| Conversion::of(cas, form)?.grams_per_gram());
            if let (Some(from), Some(to)) = (known(stated), known(counted)) {
                return Self { least: to / from, best: to / from, most: to / from };
            }
        } else if let Some(cas) = subject.cas {
            if let Some(factor) = Conversion::of(cas, counted).and_then(Conversion::grams_per_gram) {
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
