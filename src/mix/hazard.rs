use super::{Cas, Composition};
use crate::choice::choice;
use std::sync::LazyLock;

/// What calls for care by CAS number, with the source of each row; see the columns of the file.
const BUILT_IN: &str = include_str!("data/hazards.csv");

/// Sorted by number.
static HAZARDS: LazyLock<Vec<(Cas, Hazard)>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

choice! {
    /// What in a bowl calls for care.
    Hazard: "hazard" {
        /// Hydrogen peroxide or a compound that releases it.
        Peroxide = "peroxide",
        /// A lightening powder with persulfates.
        Persulfate = "persulfate",
        /// Ammonia.
        Ammonia = "ammonia",
        /// Oxidative dyes, of which the phenylenediamines sensitise most.
        OxidativeDye = "oxidative-dye" => "oxidative dye",
        /// Resorcinol.
        Resorcinol = "resorcinol",
        /// A product not declared in full, or an ingredient foilwork does not know: taken for a dye.
        Unknown = "unknown",
    }
}

impl Hazard {
    /// What a substance calls for; none when foilwork does not know it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Hazard;
    ///
    /// // Ammonium persulfate.
    /// assert_eq!(Hazard::of("7727-54-0".parse()?), Some(Hazard::Persulfate));
    /// # Ok::<(), foilwork::mix::InvalidCas>(())
    /// ```
    ///
    /// # Source
    ///
    /// Each row of `data/hazards.csv` names its own: the substances of the EU annexes, and the identifiers of the
    /// `chemicals` library.
    #[must_use]
    pub fn of(cas: Cas) -> Option<Self> {
        let at = HAZARDS.binary_search_by_key(&cas, |(known, _)| *known).ok()?;
        HAZARDS.get(at).map(|(_, hazard)| *hazard)
    }
}

impl Composition {
    /// What in this bowl calls for care. An ingredient foilwork does not know by its CAS number counts as
    /// [`Hazard::Unknown`], so that the checklist is rather too long than too short.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{Composition, Hazard, Product}, quantity::Mass};
    ///
    /// let bowl = Composition::mix(vec![(Mass::from_g(30.0)?, Product::unknown("powder"))])?;
    /// assert_eq!(bowl.hazards(), [Hazard::Unknown]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn hazards(&self) -> Vec<Hazard> {
        let present = self.constituents().iter().filter(|c| c.level.high().ww_percent() > 0.0);
        let mut hazards: Vec<Hazard> = present.map(|c| c.cas.and_then(Hazard::of).unwrap_or(Hazard::Unknown)).collect();
        if self.undeclared().next().is_some() {
            hazards.push(Hazard::Unknown);
        }
        hazards.sort_unstable();
        hazards.dedup();
        hazards
    }
}

fn read(text: &str) -> Option<Vec<(Cas, Hazard)>> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let header = reader.headers().ok()?.clone();
    let column = |name: &str| header.iter().position(|h| h == name);
    let (cas, hazard) = (column("cas")?, column("hazard")?);
    let row = |record: csv::StringRecord| Some((record.get(cas)?.parse().ok()?, record.get(hazard)?.parse().ok()?));
    let mut rows: Vec<(Cas, Hazard)> = reader.into_records().map(|record| row(record.ok()?)).collect::<Option<_>>()?;
    rows.sort_unstable();
    Some(rows)
}
