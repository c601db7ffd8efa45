use super::{
    ChartError, ChartProblem, Hue, Level, Shade, ShelfFacts, Tone,
    chart_row::{ChartFile, ShadeRow},
};
use crate::{
    quantity::{InvalidQuantity, Mass, MassFraction, Share},
    text::Lines,
};
use rust_decimal::Decimal;
use std::{collections::BTreeMap, ops::Range};

/// The user's own shade chart: what is on the shelf and what its digits mean.
///
/// The file is TOML. Each `[[shade]]` has a `code`, a `level`, and its tone either as hue words (`tones`) or as digits
/// (`tone_digits`) that the chart explains under `[digits]`. No brand's digits are built in.
///
/// ```
/// use foilwork::colour::Chart;
///
/// let chart = Chart::from_toml(r#"
///     name = "Juniper & Tide"
///     currency = "EUR"
///
///     [digits]
///     "0" = []
///     "7" = ["violet"]
///
///     [[shade]]
///     code = "9-7"
///     level = 9
///     tone_digits = "7"
///     pack_g = 60
///     price = "8.40"
///     ratio = "1:2"
///     developer_ww_percent = [1.5, 3]
/// "#)?;
/// let shade = chart.shade("9-7").ok_or("no such shade")?;
/// assert_eq!(shade.to_string(), "9-7 (level 9, violet)");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Chart {
    name: String,
    currency: Option<String>,
    entries: Vec<(Shade, ShelfFacts)>,
}

impl Chart {
    /// Reads a chart file.
    ///
    /// # Errors
    ///
    /// [`ChartError`] with the line, the shade and the way out; the first mistake found is reported.
    pub fn from_toml(text: &str) -> Result<Self, ChartError> {
        let lines = Lines::of(text);
        let line_of = |span: Range<usize>| lines.line(span.start);
        let file: ChartFile = toml::from_str(text).map_err(|error| ChartError {
            line: error.span().map(line_of),
            code: None,
            problem: ChartProblem::Syntax(error.message().trim_end().to_owned()),
        })?;
        let at = |span: Range<usize>, code: Option<&str>| {
            let (line, code) = (Some(line_of(span)), code.map(str::to_owned));
            move |problem| ChartError { line, code, problem }
        };
        if file.shade.is_empty() {
            return Err(ChartError { line: None, code: None, problem: ChartProblem::NoShades });
        }
        let mut digits = BTreeMap::new();
        for (digit, words) in &file.digits {
            let fail = at(words.span(), None);
            let mut characters = digit.chars();
            let (Some(key), None) = (characters.next(), characters.next()) else {
                return Err(fail(ChartProblem::LongDigit(digit.clone())));
            };
            digits.insert(key, hues(words.get_ref()).map_err(fail)?);
        }
        let mut first_lines = BTreeMap::new();
        let mut entries = Vec::with_capacity(file.shade.len());
        for row in &file.shade {
            let code = row.code.get_ref().trim();
            let line = line_of(row.code.span());
            if let Some(first_line) = first_lines.insert(code, line) {
                return Err(at(row.code.span(), Some(code))(ChartProblem::DuplicateCode { first_line }));
            }
            let reader = RowReader { row, digits: &digits, has_currency: file.currency.is_some() };
            entries.push(reader.read().map_err(|(span, problem)| at(span, Some(code))(problem))?);
        }
        Ok(Self { name: file.name, currency: file.currency, entries })
    }

    /// The name of the chart.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The currency of its prices.
    #[must_use]
    pub fn currency(&self) -> Option<&str> {
        self.currency.as_deref()
    }

    /// The shades with what the label says, in the order of the file.
    #[must_use]
    pub fn entries(&self) -> &[(Shade, ShelfFacts)] {
        &self.entries
    }

    /// The shades alone.
    pub fn shades(&self) -> impl Iterator<Item = &Shade> {
        self.entries.iter().map(|(shade, _)| shade)
    }

    /// The shade with this code.
    #[must_use]
    pub fn shade(&self, code: &str) -> Option<&Shade> {
        self.shades().find(|shade| shade.code() == code)
    }
}

struct RowReader<'a> {
    row: &'a ShadeRow,
    digits: &'a BTreeMap<char, Vec<Hue>>,
    has_currency: bool,
}

type At<T> = Result<T, (Range<usize>, ChartProblem)>;

impl RowReader<'_> {
    fn read(&self) -> At<(Shade, ShelfFacts)> {
        let row = self.row;
        let level = Level::new(*row.level.get_ref()).map_err(|error| (row.level.span(), error.into()))?;
        let mut shade = Shade::new(row.code.get_ref().as_str(), level, self.tone()?)
            .map_err(|error| (row.code.span(), error.into()))?;
        if let Some(percent) = &row.strength_percent {
            let strength = Share::from_percent(*percent.get_ref())
                .map_err(|problem| (percent.span(), quantity("strength_percent", problem)))?;
            shade = shade.with_strength(strength);
        }
        Ok((shade, self.shelf()?))
    }

    fn tone(&self) -> At<Tone> {
        match (&self.row.tones, &self.row.tone_digits) {
            (Some(words), None) => {
                hues(words.get_ref()).map(Tone::from_hues).map_err(|problem| (words.span(), problem))
            }
            (None, Some(digits)) => {
                let mut all = Vec::new();
                for digit in digits.get_ref().chars() {
                    let meaning = self.digits.get(&digit).ok_or_else(|| {
                        let known: Vec<_> = self.digits.keys().map(char::to_string).collect();
                        let known = if known.is_empty() { "none".to_owned() } else { known.join(" ") };
                        (digits.span(), ChartProblem::UnknownDigit { digit, known })
                    })?;
                    all.extend_from_slice(meaning);
                }
                Ok(Tone::from_hues(all))
            }
            (None, None) => {
                Err((self.row.code.span(), ChartProblem::ToneTwiceOrNever("neither is given; neutral is tones = []")))
            }
            (Some(_), Some(digits)) => Err((digits.span(), ChartProblem::ToneTwiceOrNever("both are given"))),
        }
    }

    fn shelf(&self) -> At<ShelfFacts> {
        let row = self.row;
        let mut facts = ShelfFacts::default();
        if let Some(pack) = &row.pack_g {
            let mass = Mass::from_g(*pack.get_ref()).map_err(|problem| (pack.span(), quantity("pack_g", problem)))?;
            if mass <= Mass::ZERO {
                return Err((pack.span(), ChartProblem::EmptyPack));
            }
            facts.pack = Some(mass);
        }
        if let Some(price) = &row.price {
            let text = price.get_ref();
            match text.parse::<Decimal>() {
                Ok(_) if !self.has_currency => return Err((price.span(), ChartProblem::NoCurrency)),
                Ok(amount) if amount >= Decimal::ZERO => facts.price = Some(amount),
                _ => return Err((price.span(), ChartProblem::Price(text.clone()))),
            }
        }
        if let Some(ratio) = &row.ratio {
            let parts = developer_parts(ratio.get_ref())
                .ok_or_else(|| (ratio.span(), ChartProblem::Ratio(ratio.get_ref().clone())))?;
            facts.developer_parts = Some(parts);
        }
        if let Some(strengths) = &row.developer_ww_percent {
            for strength in strengths.get_ref() {
                let strength = MassFraction::from_percent_ww(*strength)
                    .map_err(|problem| (strengths.span(), quantity("developer_ww_percent", problem)))?;
                facts.developers.push(strength);
            }
        }
        Ok(facts)
    }
}

fn hues(words: &[String]) -> Result<Vec<Hue>, ChartProblem> {
    words.iter().map(|word| Ok(word.parse()?)).collect()
}

const fn quantity(field: &'static str, problem: InvalidQuantity) -> ChartProblem {
    ChartProblem::Quantity { field, problem }
}

fn developer_parts(text: &str) -> Option<Decimal> {
    let (shade, developer) = text.split_once(':')?;
    let parts = |side: &str| side.trim().parse::<Decimal>().ok().filter(|parts| *parts > Decimal::ZERO);
    parts(developer)?.checked_div(parts(shade)?)
}
