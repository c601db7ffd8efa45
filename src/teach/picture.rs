use crate::{
    chart::{
        CostChart, DayChart, DilutionChart, HeadChart, HueWheel, LevelChart, MarginChart, PigmentChart, cost_chart,
        day_chart, dilution_chart, head_chart, hue_wheel, level_chart, margin_chart, pigment_chart,
    },
    colour::{Level, Naming, Swatch},
    day::Timeline,
    head::{Template, read_head},
    lift::Lightening,
    money::{CostTable, Money},
    peroxide::{DilutionTable, dilution_table},
    quantity::{Duration, Mass, MassFraction, Quantity},
    source::Interval,
};
use serde::Serialize;

/// The picture of a problem, and the same in words: with either of them the problem can be solved.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ExercisePicture {
    /// What there is to read, in words.
    pub says: String,
    /// Drawn when it is asked for: most sheets are text.
    #[serde(skip)]
    drawn: Drawn,
}

/// Which chart, and from what. All of it is what the problem's seed drew.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Drawn {
    /// Bottles and wanted strengths of the wall chart for so many grams.
    DilutionGrid { total_g: i64 },
    /// Natural hair of so many levels, lightened.
    Pigment { natural: i64 },
    /// The twelve hues, none marked.
    Wheel,
    /// The forecast for hair of so many levels.
    Lift { from: i64, on_hair_percent: i64, limit_min: i64 },
    /// The day of sections: name, minutes to apply, to develop.
    Day { sections: Vec<(&'static str, i64, i64)> },
    /// Regions and the foils written in them.
    Head { foils: Vec<(usize, i64, i64)> },
    /// Kinds of cost.
    Costs { table: Vec<(crate::money::CostKind, Money)> },
    /// Price against margin for a cost.
    Margin { cost: Money },
}

/// Bottles and wanted strengths of the grid on the wall, in % w/w.
pub(super) const GRID_STOCKS: [f64; 3] = [6.0, 9.0, 12.0];
pub(super) const GRID_TARGETS: [f64; 3] = [1.5, 3.0, 4.5];

impl ExercisePicture {
    pub(super) const fn new(drawn: Drawn, says: String) -> Self {
        Self { says, drawn }
    }

    /// The picture as SVG, the same as the one that the room [`chart`](crate::chart) draws elsewhere.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::teach::{Difficulty, Topic, WorksheetRequest, worksheet};
    ///
    /// let request = WorksheetRequest { topics: vec![Topic::Pigment], count: 20, ..WorksheetRequest::new(1) };
    /// let sheet = worksheet(&request)?;
    /// let picture = sheet.exercises.iter().find_map(|exercise| exercise.picture.as_ref()).ok_or("one has a picture")?;
    /// assert!(picture.svg().starts_with("<svg ") && !picture.says.is_empty());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn svg(&self) -> String {
        // What was drawn once to make the problem can be drawn again: no picture is left out.
        self.drawn.svg().unwrap_or_default()
    }
}

impl Drawn {
    fn svg(&self) -> Option<String> {
        Some(match self {
            Self::DilutionGrid { total_g } => {
                let named = |list: [f64; 3]| list.map(|percent| format!("{percent} % w/w")).to_vec();
                let (stocks, targets) = (named(GRID_STOCKS), named(GRID_TARGETS));
                let table = grid(*total_g)?;
                let title = format!("To make {total_g} g");
                let (weaker, stocks, targets) = ("distilled water", stocks.as_slice(), targets.as_slice());
                dilution_chart(&DilutionChart { title: &title, stocks, targets, weaker, table: &table })
            }
            Self::Pigment { natural } => {
                let title = format!("Lightened from level {natural}");
                let natural = Level::new(*natural as f64).ok()?;
                pigment_chart(&PigmentChart { title: &title, natural, naming: Naming::European })
            }
            Self::Wheel => hue_wheel(&HueWheel { title: "Twelve hues", marked: None }),
            Self::Lift { from, on_hair_percent, limit_min } => {
                let lightening = forecast(*from, *on_hair_percent)?;
                let limit = Duration::nearest(*limit_min as f64);
                let title = "Level of the first strand";
                let lightening = &lightening;
                level_chart(&LevelChart { title, lightening, limit, target: None, readings: &[] })
            }
            Self::Day { sections } => day_chart(&DayChart { title: "The day", timeline: &day(sections)? }),
            Self::Head { foils } => head(foils)?,
            Self::Costs { table } => cost_chart(&CostChart {
                title: "Cost of the service",
                table: &costs(table)?,
                left_out: &[],
                style: None,
            }),
            Self::Margin { cost } => margin_chart(&MarginChart::new("Net price against margin", *cost).ok()?),
        })
    }
}

/// The grid in whole grams.
pub(super) fn grid(total_g: i64) -> Option<DilutionTable> {
    let of = |percent: f64| Interval::exact(MassFraction::nearest(percent));
    let [total, division] = [total_g as f64, 1.0].map(Mass::nearest);
    dilution_table(&GRID_STOCKS.map(of), &GRID_TARGETS.map(of), of(0.0), total, division).ok()
}

/// What nobody tested: a class reads a curve, it colours nobody's hair by it.
pub(super) fn forecast(from: i64, on_hair_percent: i64) -> Option<Lightening> {
    use crate::lift::{Belief, Situation};
    let on_hair = MassFraction::from_ww_percent(on_hair_percent as f64).ok()?;
    let mix = Situation::usual(Interval::exact(on_hair));
    Some(Lightening::new(&Belief::untested(), &mix, Level::new(from as f64).ok()?))
}

/// Sections one after the other by one pair of hands.
pub(super) fn day(sections: &[(&'static str, i64, i64)]) -> Option<Timeline> {
    use crate::day::{Effort, Floor, SectionWork, arrange};
    let min = |minutes: i64| Duration::nearest(minutes as f64);
    let longest = |apply: i64, develop: i64| min(apply + develop + 40);
    let work = sections
        .iter()
        .map(|(name, apply, develop)| SectionWork::new(name, min(*apply), min(*develop), longest(*apply, *develop)));
    // A class counts in fives: no looks in between.
    let floor = Floor { mix: min(5), look: min(0), rinse: min(5), walk: min(0), ..Floor::default() };
    arrange(&work.collect::<Vec<_>>(), &[], &floor, Effort::Quick).ok()
}

fn head(foils: &[(usize, i64, i64)]) -> Option<String> {
    let template = Template::standard();
    let look = read_head(&template, &[], &Swatch::natural(Level::new(6.0).ok()?), None);
    let mut written = vec![Vec::new(); template.regions().len()];
    for (region, first, last) in foils {
        written.get_mut(*region)?.push(format!("foils {first}-{last}"));
    }
    let title = "Foils in the order of the work";
    Some(head_chart(&HeadChart { title, template: &template, looks: &look.regions, written: &written }))
}

fn costs(of: &[(crate::money::CostKind, Money)]) -> Option<CostTable> {
    use crate::{money::CostLine, source::Basis};
    let mut table = CostTable::new(of.first()?.1.currency());
    for (kind, amount) in of {
        table.push(CostLine::new(*kind, "of a service", Basis::Stated, *amount)).ok()?;
    }
    Some(table)
}
