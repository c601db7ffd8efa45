use crate::mix::{Cas, Form};
use std::sync::LazyLock;

/// How much of the counted species each form holds, with formulas and molar masses; see the columns of the file.
const BUILT_IN: &str = include_str!("data/forms.csv");

static FORMS: LazyLock<Vec<Conversion>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

/// From the substance that was added to the species the law counts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Conversion {
    /// The substance that was added.
    pub from: Cas,
    /// The form the law counts.
    pub to: Form,
    /// The species the law counts.
    pub counted: Cas,
    /// Grams of the counted species in one gram of the substance added, where that is fixed.
    factor: Option<f64>,
}

impl Conversion {
    /// Grams of the counted species in one gram of the substance added. Above 1 from a base to its salt; none when the
    /// substance holds a varying amount, as the complex of peroxide with a polymer does.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{limits::Conversion, mix::Form};
    ///
    /// // One gram of ammonia is counted as one gram of ammonia.
    /// let ammonia = Conversion::of("7664-41-7".parse()?, Form::Ammonia).unwrap();
    /// assert_eq!(ammonia.grams_per_gram(), Some(1.0));
    /// # Ok::<(), foilwork::mix::InvalidCas>(())
    /// ```
    #[must_use]
    pub const fn grams_per_gram(&self) -> Option<f64> {
        self.factor
    }

    /// Every conversion foilwork knows.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{limits::Conversion, mix::Form};
    ///
    /// let releasers = Conversion::all().iter().filter(|c| c.to == Form::HydrogenPeroxideReleased);
    /// assert!(releasers.count() > 3);
    /// ```
    #[must_use]
    pub fn all() -> &'static [Self] {
        &FORMS
    }

    /// The conversion of a substance to a form, when it is known.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{limits::Conversion, mix::Form};
    ///
    /// // Carbamide peroxide sets free a little more than a third of its mass as hydrogen peroxide.
    /// let released = Conversion::of("124-43-6".parse()?, Form::HydrogenPeroxideReleased).unwrap();
    /// assert_eq!(format!("{:.4}", released.grams_per_gram().unwrap()), "0.3616");
    /// # Ok::<(), foilwork::mix::InvalidCas>(())
    /// ```
    ///
    /// # Source
    ///
    /// Molecular formula by CAS number from `chemicals` 1.5.2, molar mass from the atomic weights of `periodictable`
    /// 2.1.0: counted molar mass times count, over the molar mass of the form. Releasers that the library lacks are from
    /// memory, and say so in their rows.
    #[must_use]
    pub fn of(from: Cas, to: Form) -> Option<&'static Self> {
        FORMS.iter().find(|c| c.from == from && c.to == to)
    }
}

fn read(text: &str) -> Option<Vec<Conversion>> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let header = reader.headers().ok()?.clone();
    let column = |name: &str| header.iter().position(|h| h == name);
    let (from, to, counted) = (column("form_cas")?, column("counted_as")?, column("counted_cas")?);
    let (whole, part, count) = (column("form_g_per_mol")?, column("counted_g_per_mol")?, column("counted_per_form")?);
    let row = |record: csv::StringRecord| {
        let number = |at| record.get(at).and_then(|field| field.parse::<f64>().ok());
        Some(Conversion {
            from: record.get(from)?.parse().ok()?,
            to: record.get(to)?.parse().ok()?,
            counted: record.get(counted)?.parse().ok()?,
            factor: number(whole).zip(number(count)).and_then(|(whole, count)| Some(number(part)? * count / whole)),
        })
    };
    reader.into_records().map(|record| row(record.ok()?)).collect()
}
