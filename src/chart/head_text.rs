use super::HeadChart;
use crate::text::{Sheet, inert, number, range};

/// Columns and rows of a unit of the map; most columns of a map.
const COLUMNS: f64 = 6.0;
const ROWS: f64 = 2.0;
const WIDTH: usize = 80;

/// The map of the head for a terminal: a box for each region with its letter, its lightness and as much of what is written
/// in it as it holds, and under it all of that. The face is at the top.
///
/// # Example
///
/// ```
/// use foilwork::{
///     chart::{HeadChart, head_text}, colour::{Level, Swatch}, head::{Template, read_head},
/// };
///
/// let template = Template::standard();
/// let look = read_head(&template, &[], &Swatch::natural(Level::new(6.0)?), None);
/// let written = vec![vec!["rim 1-4".to_owned()]];
/// let text = head_text(&HeadChart { title: "rim", template: &template, looks: &look.regions, written: &written });
/// assert!(text.contains("A front hairline: L* 41 (") && text.contains("); rim 1-4"));
/// assert!(text.lines().all(|line| line.chars().count() <= 80));
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn head_text(chart: &HeadChart<'_>) -> String {
    let places = chart.template.drawn();
    let far = |edge: fn(&[f64; 4]) -> f64| places.iter().map(edge).fold(1.0, f64::max);
    let (width, height) = (far(|[x, _, width, _]| x + width), far(|[_, y, _, height]| y + height));
    let mut grid = Grid::new(cell(width, COLUMNS).min(WIDTH - 1), cell(height, ROWS));
    for (i, (place, look)) in places.iter().zip(chart.looks).enumerate() {
        let [x, y, width, height] = *place;
        let (left, top) = (cell(x, COLUMNS), cell(y, ROWS));
        let (right, bottom) = (cell(x + width, COLUMNS), cell(y + height, ROWS));
        grid.rectangle((left, top), (right, bottom));
        // In the box the best; its bounds stand under the map.
        let lightness = number(look.lab_l.best().lab_l(), 0);
        let written = chart.written.get(i).map(Vec::as_slice).unwrap_or_default();
        let (room, rows) = (right.saturating_sub(left + 1), bottom.saturating_sub(top + 1));
        let head = format!("{} {lightness}", letter(i));
        // Where there is one row, all of it goes there.
        let lines: Vec<String> = match rows {
            1 => vec![format!("{head} {}", written.join(" "))],
            _ => [head].into_iter().chain(written.iter().cloned()).take(rows).collect(),
        };
        for (row, line) in lines.iter().enumerate() {
            let line: String = inert(line).trim_end().chars().take(room).collect();
            grid.write((left + 1, top + 1 + row), &line);
        }
    }
    let mut sheet = Sheet::default();
    for (i, look) in chart.looks.iter().enumerate() {
        let lightness = range(&look.lab_l, 0);
        let written = chart.written.get(i).filter(|lines| !lines.is_empty()).map(|lines| lines.join(", "));
        let written = written.map(|written| format!("; {}", inert(&written))).unwrap_or_default();
        sheet.paragraph(&format!("{} {}: L* {lightness}{written}", letter(i), inert(&look.region)), 2);
    }
    sheet.paragraph("Letter and best L* of each region, face at the top; a model of the colour.", 0);
    let mut title = Sheet::default();
    title.paragraph(&inert(chart.title), 0);
    format!("{}\n{}\n\n{}", title.finish(), grid.finish(), sheet.finish())
}

/// A, B, ... Z, then A again with a number.
fn letter(place: usize) -> String {
    let letter = char::from(b'A' + u8::try_from(place % 26).unwrap_or(0));
    if place < 26 { letter.to_string() } else { format!("{letter}{}", place / 26) }
}

/// A place of the map in characters.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held to 0 and a thousand before")]
fn cell(at: f64, scale: f64) -> usize {
    (at * scale).round().clamp(0.0, 1000.0) as usize
}

/// Characters in rows.
struct Grid(Vec<Vec<char>>);

impl Grid {
    fn new(right: usize, bottom: usize) -> Self {
        Self(vec![vec![' '; right + 1]; bottom + 1])
    }

    fn put(&mut self, (x, y): (usize, usize), sign: char) {
        if let Some(place) = self.0.get_mut(y).and_then(|row| row.get_mut(x)) {
            *place = sign;
        }
    }

    fn rectangle(&mut self, (left, top): (usize, usize), (right, bottom): (usize, usize)) {
        for x in left..=right {
            for y in [top, bottom] {
                let corner = x == left || x == right;
                self.put((x, y), if corner { '+' } else { '-' });
            }
        }
        for y in top + 1..bottom {
            self.put((left, y), '|');
            self.put((right, y), '|');
        }
    }

    fn write(&mut self, (x, y): (usize, usize), text: &str) {
        for (i, sign) in text.chars().enumerate() {
            self.put((x + i, y), sign);
        }
    }

    fn finish(self) -> String {
        let line = |row: Vec<char>| row.into_iter().collect::<String>().trim_end().to_owned();
        self.0.into_iter().map(line).collect::<Vec<_>>().join("\n")
    }
}
