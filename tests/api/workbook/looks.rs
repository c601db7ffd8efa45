//! How the pages of a workbook look, read from its XML: colours, locks, what may be typed, what is printed.

use super::formula::{Cell, cell};
use std::{collections::HashMap, io::Cursor, io::Read};

type Attributes = HashMap<String, String>;

/// A cell's look.
#[derive(Debug, Clone, Default)]
pub(super) struct Look {
    pub(super) bold: bool,
    pub(super) size: f64,
    pub(super) font: String,
    pub(super) fill: String,
    pub(super) border: bool,
    pub(super) open: bool,
    pub(super) wrapped: bool,
    pub(super) top: bool,
    pub(super) quoted: bool,
    pub(super) shown: String,
}

/// A sheet's XML, and what it says of its cells and its print.
pub(super) struct Layout {
    xml: String,
    pub(super) looks: HashMap<Cell, Look>,
    pub(super) area: String,
    pub(super) titles: Option<String>,
}

fn elements(xml: &str, name: &str) -> Vec<(Attributes, String)> {
    let (open, close) = (format!("<{name}"), format!("</{name}>"));
    let mut found = Vec::new();
    for (at, _) in xml.match_indices(&open) {
        let rest = &xml[at + open.len()..];
        if !rest.starts_with([' ', '>', '/']) {
            continue;
        }
        let (head, inside) = rest.split_once('>').unwrap();
        let inner = if head.ends_with('/') { "" } else { inside.split(&close).next().unwrap() };
        let mut attributes = Attributes::new();
        let mut pieces = head.trim_end_matches('/').split('"');
        while let (Some(name), Some(value)) = (pieces.next(), pieces.next()) {
            attributes.insert(name.trim().trim_end_matches('=').to_owned(), value.to_owned());
        }
        found.push((attributes, inner.to_owned()));
    }
    found
}

fn inside(xml: &str, name: &str) -> String {
    elements(xml, name).into_iter().next().map(|found| found.1).unwrap_or_default()
}

impl Layout {
    /// Of every sheet, in their order.
    pub(super) fn of(bytes: &[u8]) -> Vec<Self> {
        let mut archive = zip::ZipArchive::new(Cursor::new(bytes)).unwrap();
        let mut part = |name: &str| {
            let mut text = String::new();
            archive.by_name(name).unwrap().read_to_string(&mut text).unwrap();
            text
        };
        let looks = looks(&part("xl/styles.xml"));
        let book = part("xl/workbook.xml");
        let defined = elements(&book, "definedName");
        let sheets = elements(&book, "sheet").len();
        let of = |place: usize, name: &str| {
            let local = place.to_string();
            let found = defined.iter().find(|(one, _)| one["name"] == name && one.get("localSheetId") == Some(&local));
            found.map(|(_, told)| told.split_once('!').unwrap().1.to_owned())
        };
        let layout = |place: usize| {
            let xml = part(&format!("xl/worksheets/sheet{}.xml", place + 1));
            let cells = elements(&xml, "c").into_iter().filter_map(|(one, _)| {
                Some((cell(&one["r"])?, looks.get(one.get("s")?.parse::<usize>().ok()?)?.clone()))
            });
            let looks = cells.collect();
            let area = of(place, "_xlnm.Print_Area").unwrap();
            Self { xml, looks, area, titles: of(place, "_xlnm.Print_Titles") }
        };
        (0..sheets).map(layout).collect()
    }

    /// What may be typed: the cells, and the least and the most.
    pub(super) fn checks(&self) -> HashMap<Cell, (f64, f64, String)> {
        let checks = elements(&self.xml, "dataValidation").into_iter().flat_map(|(one, inner)| {
            assert_eq!(one["type"], "decimal", "{one:?}");
            let bound = |name: &str| inside(&inner, name).parse::<f64>().unwrap();
            let (low, high, told) = (bound("formula1"), bound("formula2"), one["error"].clone());
            let cells: Vec<Cell> = one["sqref"].split(' ').filter_map(cell).collect();
            cells.into_iter().map(move |cell| (cell, (low, high, told.clone())))
        });
        checks.collect()
    }

    /// The cells that get loud, each with the words that make them so.
    pub(super) fn loud(&self) -> Vec<(Cell, Vec<String>)> {
        let found = elements(&self.xml, "conditionalFormatting").into_iter().map(|(one, inner)| {
            let words = elements(&inner, "cfRule").into_iter().filter_map(|(mut rule, _)| rule.remove("text"));
            (cell(&one["sqref"]).unwrap(), words.collect())
        });
        let mut all: Vec<(Cell, Vec<String>)> = Vec::new();
        for (cell, words) in found {
            let mut words: Vec<String> = words;
            match all.iter_mut().find(|(one, _)| *one == cell) {
                Some((_, before)) => before.append(&mut words),
                None => all.push((cell, words)),
            }
        }
        all
    }

    /// Merged cells, as `A1:G1`.
    pub(super) fn merged(&self) -> Vec<String> {
        elements(&self.xml, "mergeCell").into_iter().map(|(mut one, _)| one.remove("ref").unwrap()).collect()
    }

    /// What a row, counted from 1, is high: a line where nothing is said.
    pub(super) fn height(&self, row: usize) -> f64 {
        let begins = format!("<row r=\"{row}\" ");
        let told = self.xml.split_once(&begins).and_then(|(_, rest)| rest.split_once('>')).map(|(head, _)| head);
        let high = told.and_then(|head| head.split_once("ht=\"")).and_then(|(_, high)| high.split('"').next());
        high.map_or(15.0, |high| high.parse().unwrap())
    }

    /// What an element of the sheet says.
    pub(super) fn says(&self, element: &str, attribute: &str) -> Option<String> {
        elements(&self.xml, element).into_iter().find_map(|(mut one, _)| one.remove(attribute))
    }

    pub(super) fn text(&self, element: &str) -> String {
        inside(&self.xml, element)
    }
}

/// How what is loud looks, as the XML has it.
pub(super) fn loud(bytes: &[u8]) -> String {
    let mut archive = zip::ZipArchive::new(Cursor::new(bytes)).unwrap();
    let mut styles = String::new();
    archive.by_name("xl/styles.xml").unwrap().read_to_string(&mut styles).unwrap();
    inside(&styles, "dxfs")
}

fn looks(styles: &str) -> Vec<Look> {
    let fonts = elements(&inside(styles, "fonts"), "font");
    let fills = elements(&inside(styles, "fills"), "fill");
    let borders = elements(&inside(styles, "borders"), "border");
    let formats = elements(styles, "numFmt");
    let colour = |xml: &str, name: &str| elements(xml, name).first().and_then(|(one, _)| one.get("rgb").cloned());
    let look = |(one, inner): (Attributes, String)| {
        let id = |name: &str| one.get(name).and_then(|id| id.parse::<usize>().ok()).unwrap_or(0);
        let (font, align) = (&fonts[id("fontId")].1, elements(&inner, "alignment"));
        let aligned = |name: &str| align.first().and_then(|(align, _)| align.get(name)).cloned().unwrap_or_default();
        let format = formats.iter().find(|(format, _)| format["numFmtId"] == one["numFmtId"]);
        let shown = match id("numFmtId") {
            // Those that every spreadsheet has by number.
            1 => "0".to_owned(),
            2 => "0.00".to_owned(),
            _ => format.map(|(format, _)| format["formatCode"].clone()).unwrap_or_default(),
        };
        let size = elements(font, "sz").first().and_then(|(size, _)| size["val"].parse().ok()).unwrap_or(0.0);
        Look {
            bold: !elements(font, "b").is_empty(),
            size,
            font: colour(font, "color").unwrap_or_default(),
            fill: colour(&fills[id("fillId")].1, "fgColor").unwrap_or_default(),
            border: borders[id("borderId")].1.contains("thin"),
            open: inner.contains("locked=\"0\""),
            wrapped: aligned("wrapText") == "1",
            top: aligned("vertical") == "top",
            quoted: one.get("quotePrefix").is_some_and(|on| on == "1"),
            shown,
        }
    };
    elements(&inside(styles, "cellXfs"), "xf").into_iter().map(look).collect()
}
