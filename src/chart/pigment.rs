use super::{Anchor, Paint, Svg};
use crate::{
    colour::{Level, LevelName, Naming, Swatch, underlying_pigment},
    text::number,
};

/// What a chart of levels and their pigment shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PigmentChart<'a> {
    /// What stands above it.
    pub title: &'a str,
    /// The natural level from which hair is lightened.
    pub natural: Level,
    /// Whose names the levels have besides.
    pub naming: Naming,
}

/// Left edges of the columns: level, name, natural, lightened, what shows, what neutralises.
const COLUMNS: [f64; 6] = [14.0, 58.0, 208.0, 308.0, 408.0, 590.0];
const WIDTH: f64 = 720.0;
const ABOVE: f64 = 78.0;
const ROW: f64 = 30.0;
const SWATCH: (f64, f64) = (84.0, 22.0);

/// Levels 1 to 10 in a table: natural hair, hair lightened to the level, the warmth that shows and the hue that neutralises
/// it. Levels darker than the natural one cannot be lifted to and have no second swatch.
///
/// # Example
///
/// ```
/// use foilwork::{chart::{PigmentChart, pigment_chart}, colour::{Level, Naming}};
///
/// let chart = PigmentChart { title: "from level 4", natural: Level::new(4.0)?, naming: Naming::European };
/// let svg = pigment_chart(&chart);
/// assert!(svg.contains("yellow-orange") && svg.contains("blue-violet") && svg.contains("not a photograph"));
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
///
/// # Source
///
/// [`underlying_pigment`]: common practice; the swatches are those of [`Swatch`].
#[must_use]
pub fn pigment_chart(chart: &PigmentChart<'_>) -> String {
    let levels: Vec<Level> = (1..=10_u8).filter_map(|level| Level::new(f64::from(level)).ok()).collect();
    let rows: Vec<_> = levels.iter().map(|level| row(chart, *level)).collect();
    let said: Vec<String> = rows
        .iter()
        .filter(|row| row.lightened.is_some())
        .map(|row| format!("level {}: {}, neutralised by {}", row.number, row.shows, row.neutraliser))
        .collect();
    let height = ABOVE + ROW * 10.0 + 30.0;
    let mut svg = Svg::new((WIDTH, height), chart.title, &format!("{}.", said.join("; ")));
    svg.rect((0.0, 0.0), (WIDTH, height), &Paint::area("#fff"));
    svg.text((14.0, 24.0), Anchor::Start, 15.0, chart.title);
    svg.text((14.0, 44.0), Anchor::Start, 11.0, "swatches are a model, not a photograph; hues by common practice");
    let lightened = format!("from {}", number(chart.natural.number(), 1));
    let names = ["level", "named", "natural", &lightened, "what shows", "neutralised by"];
    for (x, name) in COLUMNS.into_iter().zip(names) {
        svg.text((x, ABOVE - 10.0), Anchor::Start, 12.0, name);
    }
    for (place, row) in (0_u8..).zip(&rows) {
        let top = ABOVE + ROW * f64::from(place);
        let [at_number, at_name, at_natural, at_lightened, at_shows, at_neutraliser] = COLUMNS;
        svg.line([(10.0, top), (WIDTH - 10.0, top)], &Paint::line("#ccc", 1.0));
        svg.text((at_number, top + 20.0), Anchor::Start, 13.0, &row.number);
        svg.text((at_name, top + 20.0), Anchor::Start, 13.0, &row.name);
        swatch(&mut svg, (at_natural, top + 4.0), &row.natural);
        if let Some(lightened) = &row.lightened {
            swatch(&mut svg, (at_lightened, top + 4.0), lightened);
            svg.text((at_shows, top + 20.0), Anchor::Start, 13.0, &row.shows);
            svg.text((at_neutraliser, top + 20.0), Anchor::Start, 13.0, &row.neutraliser);
        } else {
            svg.text((at_lightened, top + 20.0), Anchor::Start, 12.0, "not lighter than the hair");
        }
    }
    svg.text(
        (14.0, height - 10.0),
        Anchor::Start,
        11.0,
        "read the strand: porous and coloured hair shows other warmth",
    );
    svg.finish()
}

struct Row {
    number: String,
    name: String,
    natural: Swatch,
    lightened: Option<Swatch>,
    shows: String,
    neutraliser: String,
}

fn row(chart: &PigmentChart<'_>, level: Level) -> Row {
    let pigment = underlying_pigment(level).value;
    let name = level.name(chart.naming).map(|named| named.value).as_ref().map(LevelName::to_string);
    Row {
        number: number(level.number(), 0),
        name: name.unwrap_or_default(),
        natural: Swatch::natural(level),
        lightened: (level > chart.natural).then(|| Swatch::lightened(chart.natural, level)),
        shows: pigment.shown(),
        neutraliser: pigment.neutraliser.map_or_else(|| "nothing to neutralise".to_owned(), |(hue, _)| hue.to_string()),
    }
}

fn swatch(svg: &mut Svg, at: (f64, f64), swatch: &Swatch) {
    svg.rect(at, SWATCH, &Paint::area(&swatch.srgb().to_string()).outlined("#444", 1.0));
}
