use super::Cas;
use std::{collections::HashMap, sync::LazyLock};

/// Names of substances by CAS number, with the source of each row; see the columns of the file.
const BUILT_IN: &str = include_str!("data/names.csv");

static NAMES: LazyLock<HashMap<String, Cas>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

impl Cas {
    /// The substance of a name, by any of the names foilwork knows: in any case, with or without blanks and hyphens, in
    /// British or American spelling, with a strength or "solution" behind it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Cas;
    ///
    /// assert_eq!(Cas::of_name("Hydrogen Peroxide (6 %)"), Some(Cas::HYDROGEN_PEROXIDE));
    /// assert_eq!(Cas::of_name("ammonium persulphate"), Cas::of_name("Ammonium Persulfate"));
    /// assert_eq!(Cas::of_name("our secret powder"), None);
    /// ```
    ///
    /// # Source
    ///
    /// Each row of `data/names.csv` names its own: the identifier table of the `chemicals` library, the entries of the EU
    /// annexes, or names as labels print them.
    #[must_use]
    pub fn of_name(name: &str) -> Option<Self> {
        NAMES.get(&normal(name)).copied()
    }

    /// Whether foilwork knows what the substance is: it has a name, and so it is also known what it sets free.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Cas;
    ///
    /// assert!(Cas::HYDROGEN_PEROXIDE.is_known());
    /// assert!(!"50-00-0".parse::<Cas>()?.is_known()); // formaldehyde is in no table
    /// # Ok::<(), foilwork::mix::InvalidCas>(())
    /// ```
    #[must_use]
    pub fn is_known(self) -> bool {
        static KNOWN: LazyLock<std::collections::HashSet<Cas>> = LazyLock::new(|| NAMES.values().copied().collect());
        KNOWN.contains(&self)
    }
}

/// A name without what does not tell substances apart.
fn normal(name: &str) -> String {
    let lower = name.trim().to_lowercase();
    let plain = without_remark(&lower).replace("sulph", "sulf");
    let words = plain.split(|c: char| !c.is_alphanumeric() && !matches!(c, '%' | '.' | ','));
    let telling = words.filter(|word| !matches!(*word, "solution" | "aqueous" | "aq" | "%") && !word.ends_with('%'));
    let words: Vec<&str> = telling.collect();
    // "6 %" behind a name: a number that a percent sign followed.
    let strength = plain.contains('%').then(|| words.last().copied()).flatten().filter(|word| is_number(word));
    let kept = words.len() - usize::from(strength.is_some());
    let short = |word: &&str| match *word {
        "para" => "p".to_owned(),
        "meta" => "m".to_owned(),
        "ortho" => "o".to_owned(),
        word => word.chars().filter(|c| c.is_alphanumeric()).collect(),
    };
    words.iter().take(kept).map(short).collect()
}

fn is_number(word: &str) -> bool {
    word.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ','))
}

/// The name without a remark in brackets that stands behind a blank at the end.
fn without_remark(name: &str) -> &str {
    let remark = name.strip_suffix(')').and_then(|_| name.rfind(" ("));
    remark.and_then(|at| name.get(..at)).filter(|name| !name.is_empty()).unwrap_or(name)
}

fn read(text: &str) -> Option<HashMap<String, Cas>> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let header = reader.headers().ok()?.clone();
    let column = |name: &str| header.iter().position(|h| h == name);
    let (cas, names) = (column("cas")?, column("names")?);
    let mut known = HashMap::new();
    for record in reader.into_records() {
        let record = record.ok()?;
        let cas: Cas = record.get(cas)?.parse().ok()?;
        known.extend(record.get(names)?.split(';').map(|name| (normal(name), cas)));
    }
    Some(known)
}
