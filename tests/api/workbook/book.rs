//! A written workbook, opened: what stands in its cells, its formulas, and what those come to when something is changed.

use super::formula::{Cell, Expr, Value, cell, parse, work};
use calamine::{Data, Reader, Xlsx};
use std::{
    cell::RefCell,
    collections::{BTreeMap, HashMap},
    io::Cursor,
    rc::Rc,
};

/// Sheet by its place, and cell.
type Place = (usize, Cell);

pub(super) struct Book {
    pub(super) sheets: Vec<String>,
    stands: BTreeMap<Place, Value>,
    formulas: BTreeMap<Place, Rc<Expr>>,
    names: HashMap<String, Place>,
    changed: HashMap<Place, Value>,
    worked: RefCell<HashMap<Place, Value>>,
}

impl Book {
    pub(super) fn of(bytes: &[u8]) -> Self {
        let mut book: Xlsx<_> = Xlsx::new(Cursor::new(bytes)).unwrap();
        let sheets = book.sheet_names();
        let (mut stands, mut formulas) = (BTreeMap::new(), BTreeMap::new());
        for (place, sheet) in sheets.iter().enumerate() {
            let range = book.worksheet_range(sheet).unwrap();
            let start = range.start().unwrap_or_default();
            for (row, column, data) in range.used_cells() {
                let value = match data {
                    Data::Float(number) => Value::Number(*number),
                    Data::Int(number) => Value::Number(*number as f64),
                    Data::String(text) => Value::Text(text.clone()),
                    other => panic!("{sheet}: {other:?}"),
                };
                stands.insert((place, (start.0 + row as u32, start.1 + column as u32)), value);
            }
            let range = book.worksheet_formula(sheet).unwrap();
            let start = range.start().unwrap_or_default();
            for (row, column, formula) in range.used_cells() {
                let at = (start.0 + row as u32, start.1 + column as u32);
                formulas.insert((place, at), Rc::new(parse(formula)));
            }
        }
        let place = |told: &str| {
            let (sheet, at) = told.trim_start_matches('=').split_once('!')?;
            Some((sheets.iter().position(|one| one == sheet.trim_matches('\''))?, cell(at)?))
        };
        let names = book.defined_names().iter().filter_map(|(name, told)| Some((name.clone(), place(told)?))).collect();
        Self { sheets, stands, formulas, names, changed: HashMap::new(), worked: RefCell::default() }
    }

    pub(super) fn place(&self, told: &str) -> Place {
        if let Some(place) = self.names.get(told) {
            return *place;
        }
        let (sheet, at) = told.split_once('!').unwrap_or((self.sheets[0].as_str(), told));
        let sheet = self.sheets.iter().position(|one| one == sheet).unwrap_or_else(|| panic!("no sheet {sheet}"));
        (sheet, cell(at).unwrap_or_else(|| panic!("{told} is neither a name nor a cell")))
    }

    /// Types something into a cell or a name.
    pub(super) fn change(&mut self, told: &str, value: impl Into<Value>) {
        let place = self.place(told);
        assert!(!self.formulas.contains_key(&place), "{told} is a formula");
        self.changed.insert(place, value.into());
        self.worked.borrow_mut().clear();
    }

    /// What a cell comes to, worked by its formula.
    pub(super) fn at(&self, place: Place) -> Value {
        if let Some(value) = self.changed.get(&place) {
            return value.clone();
        }
        let Some(formula) = self.formulas.get(&place) else {
            return self.stands.get(&place).cloned().unwrap_or(Value::Empty);
        };
        if let Some(value) = self.worked.borrow().get(&place) {
            return value.clone();
        }
        let value = work(formula, &|expr| self.look(place.0, expr));
        self.worked.borrow_mut().insert(place, value.clone());
        value
    }

    fn look(&self, sheet: usize, expr: &Expr) -> Value {
        match expr {
            Expr::Name(name) => self.at(*self.names.get(name).unwrap_or_else(|| panic!("no name {name}"))),
            Expr::Cells(other, from, to) => {
                let named =
                    |name: &String| self.sheets.iter().position(|one| one == name).expect("a sheet of the book");
                let sheet = other.as_ref().map_or(sheet, named);
                if from == to {
                    return self.at((sheet, *from));
                }
                let rows = (from.0..=to.0).flat_map(|row| (from.1..=to.1).map(move |column| (row, column)));
                Value::Many(rows.map(|cell| self.at((sheet, cell))).collect())
            }
            _ => panic!("{expr:?} stands nowhere"),
        }
    }

    pub(super) fn value(&self, told: &str) -> Value {
        self.at(self.place(told))
    }

    pub(super) fn number(&self, told: &str) -> f64 {
        self.value(told).number().unwrap_or_else(|| panic!("{told} is {:?}", self.value(told)))
    }

    /// What foilwork left in a cell.
    pub(super) fn left(&self, place: Place) -> Value {
        self.stands.get(&place).cloned().unwrap_or(Value::Empty)
    }

    pub(super) fn name_places(&self) -> impl Iterator<Item = (&str, Place)> {
        self.names.iter().map(|(name, place)| (name.as_str(), *place))
    }

    /// Every formula comes to what foilwork left there; how many there are.
    pub(super) fn holds(&self) -> usize {
        for place in self.formulas.keys() {
            same(&self.at(*place), &self.left(*place), &self.told(*place));
        }
        self.formulas.len()
    }

    /// What is worked here, after changes, is what foilwork left in a book that was made so; on the first sheet.
    pub(super) fn is_as(&self, made: &Self) {
        assert_eq!(self.formulas.len(), made.formulas.len());
        for place in made.formulas.keys().filter(|place| place.0 == 0) {
            same(&self.at(*place), &made.left(*place), &self.told(*place));
        }
    }

    fn told(&self, (sheet, (row, column)): Place) -> String {
        format!("{}, row {}, column {}", self.sheets[sheet], row + 1, column + 1)
    }

    /// The rows of a sheet as they stand or come, from the first to the last.
    pub(super) fn rows(&self, sheet: &str) -> Vec<Vec<Value>> {
        let (sheet, _) = self.place(&format!("{sheet}!A1"));
        let cells = || self.stands.keys().filter(|place| place.0 == sheet).map(|place| place.1);
        let (rows, columns) = (cells().map(|cell| cell.0).max(), cells().map(|cell| cell.1).max());
        let row = |row| (0..=columns.unwrap_or(0)).map(|column| self.at((sheet, (row, column)))).collect();
        (0..=rows.unwrap_or(0)).map(row).collect()
    }

    /// The first column of a sheet, from the top; an empty row is an empty text.
    pub(super) fn first_column(&self, sheet: &str) -> Vec<String> {
        self.rows(sheet).iter().map(|row| row[0].to_string()).collect()
    }

    /// The first column of a sheet stands so from the top: each row begins with its words, or is empty.
    pub(super) fn reads(&self, sheet: &str, want: &[&str]) {
        let told = self.first_column(sheet);
        for (place, want) in want.iter().enumerate() {
            let begins = if want.is_empty() { told[place].is_empty() } else { told[place].starts_with(want) };
            assert!(begins, "{sheet}, row {}: {} where {want} is wanted", place + 1, told[place]);
        }
    }

    /// The row, counted from 1, whose first cell says this, or else begins so.
    pub(super) fn row(&self, sheet: &str, begins: &str) -> usize {
        let column = self.first_column(sheet);
        let found = column.iter().position(|text| text == begins);
        let found = found.or_else(|| column.iter().position(|text| text.starts_with(begins)));
        found.unwrap_or_else(|| panic!("no row {begins} in {column:#?}")) + 1
    }
}

fn same(came: &Value, left: &Value, told: &str) {
    match (came, left) {
        (Value::Number(came), Value::Number(left)) => {
            assert!((came - left).abs() <= 1e-9 * left.abs().max(1.0), "{told}: comes to {came}, {left} was left");
        }
        _ => assert_eq!(came, left, "{told}"),
    }
}

impl From<f64> for Value {
    fn from(number: f64) -> Self {
        Self::Number(number)
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl std::fmt::Display for Value {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Number(number) => write!(f, "{number}"),
            Self::Text(text) => f.write_str(text),
            Self::Empty => Ok(()),
            other => write!(f, "{other:?}"),
        }
    }
}
