//! The formulas of a workbook, read and worked as a spreadsheet does: exactly the functions that foilwork writes.

use rust_decimal::{Decimal, RoundingStrategy, prelude::ToPrimitive};

/// Row and column, counted from 0.
pub(super) type Cell = (u32, u32);

#[derive(Debug, Clone, PartialEq)]
pub(super) enum Value {
    Number(f64),
    Text(String),
    Truth(bool),
    Empty,
    Error,
    Many(Vec<Value>),
}

#[derive(Debug)]
pub(super) enum Expr {
    Is(Value),
    Name(String),
    /// A sheet when it is another, and the first and the last cell.
    Cells(Option<String>, Cell, Cell),
    Call(String, Vec<Expr>),
    Two(Box<Expr>, String, Box<Expr>),
    Minus(Box<Expr>),
}

/// `B5` or `$B$5`.
pub(super) fn cell(text: &str) -> Option<Cell> {
    let text = text.replace('$', "");
    let letters = text.chars().take_while(char::is_ascii_uppercase).count();
    let (column, row) = text.split_at(letters);
    let column = column.bytes().fold(0, |sum, letter| sum * 26 + u32::from(letter - b'A') + 1);
    Some((row.parse::<u32>().ok()?.checked_sub(1)?, column.checked_sub(1)?))
}

pub(super) fn parse(text: &str) -> Expr {
    let mut rest = text;
    let found = comparison(&mut rest);
    assert!(rest.is_empty(), "{text}: left over {rest}");
    found
}

fn eat(rest: &mut &str, signs: &[&str]) -> Option<String> {
    let sign = signs.iter().find(|sign| rest.starts_with(**sign))?;
    *rest = &rest[sign.len()..];
    Some((*sign).to_owned())
}

fn chain(rest: &mut &str, signs: &[&str], below: fn(&mut &str) -> Expr) -> Expr {
    let mut left = below(rest);
    while let Some(sign) = eat(rest, signs) {
        left = Expr::Two(Box::new(left), sign, Box::new(below(rest)));
    }
    left
}

fn comparison(rest: &mut &str) -> Expr {
    chain(rest, &["<=", ">=", "<>", "=", "<", ">"], sum)
}

fn sum(rest: &mut &str) -> Expr {
    chain(rest, &["+", "-"], product)
}

fn product(rest: &mut &str) -> Expr {
    chain(rest, &["*", "/"], one)
}

fn one(rest: &mut &str) -> Expr {
    if eat(rest, &["-"]).is_some() {
        return Expr::Minus(Box::new(one(rest)));
    }
    if eat(rest, &["("]).is_some() {
        let inside = comparison(rest);
        assert!(eat(rest, &[")"]).is_some(), "no closing bracket before {rest}");
        return inside;
    }
    if eat(rest, &["\""]).is_some() {
        let (text, after) = rest.split_once('"').expect("a text ends");
        *rest = after;
        return Expr::Is(Value::Text(text.to_owned()));
    }
    let end = rest.find(|sign: char| !(sign.is_alphanumeric() || "_$.!:".contains(sign))).unwrap_or(rest.len());
    let (word, after) = rest.split_at(end);
    *rest = after;
    if let Ok(number) = word.parse() {
        return Expr::Is(Value::Number(number));
    }
    if eat(rest, &["("]).is_some() {
        let mut arguments = Vec::new();
        while eat(rest, &[")"]).is_none() {
            arguments.push(comparison(rest));
            eat(rest, &[","]);
        }
        return Expr::Call(word.to_owned(), arguments);
    }
    let (sheet, place) = word.split_once('!').map_or((None, word), |(sheet, place)| (Some(sheet.to_owned()), place));
    let (from, to) = place.split_once(':').unwrap_or((place, place));
    match (cell(from), cell(to)) {
        (Some(from), Some(to)) => Expr::Cells(sheet, from, to),
        _ => Expr::Name(word.to_owned()),
    }
}

impl Value {
    /// As an operand: an empty cell is 0, a truth is 1 or 0, a text is none.
    pub(super) fn number(&self) -> Option<f64> {
        match self {
            Self::Number(number) => Some(*number),
            Self::Truth(truth) => Some(f64::from(u8::from(*truth))),
            Self::Empty => Some(0.0),
            Self::Text(_) | Self::Error | Self::Many(_) => None,
        }
    }

    fn is_true(&self) -> bool {
        self.number().is_some_and(|number| number != 0.0)
    }

    fn flat(self) -> Vec<Self> {
        if let Self::Many(all) = self { all } else { vec![self] }
    }
}

fn number(came: Option<f64>) -> Value {
    came.filter(|number| number.is_finite()).map_or(Value::Error, Value::Number)
}

/// One operation; ranges go cell by cell, and a single value with each of them.
fn two(left: Value, sign: &str, right: Value) -> Value {
    match (left, right) {
        (Value::Many(left), Value::Many(right)) => {
            assert_eq!(left.len(), right.len(), "ranges of one length");
            Value::Many(left.into_iter().zip(right).map(|(left, right)| two(left, sign, right)).collect())
        }
        (Value::Many(left), right) => {
            Value::Many(left.into_iter().map(|left| two(left, sign, right.clone())).collect())
        }
        (left, Value::Many(right)) => {
            Value::Many(right.into_iter().map(|right| two(left.clone(), sign, right)).collect())
        }
        (left, right) => single(&left, sign, &right),
    }
}

fn single(left: &Value, sign: &str, right: &Value) -> Value {
    let numbers = left.number().zip(right.number());
    let of = |rule: fn(f64, f64) -> f64| number(numbers.map(|(left, right)| rule(left, right)));
    // An empty cell is an empty text beside a text; a text is more than any number.
    let empty = |one: &Value, other: &Value| *one == Value::Empty && *other == Value::Text(String::new());
    let order = match (left, right) {
        _ if empty(left, right) || empty(right, left) => Some(std::cmp::Ordering::Equal),
        (Value::Text(left), Value::Text(right)) => Some(left.to_lowercase().cmp(&right.to_lowercase())),
        (Value::Text(_), _) => Some(std::cmp::Ordering::Greater),
        (_, Value::Text(_)) => Some(std::cmp::Ordering::Less),
        _ => numbers.and_then(|(left, right)| left.partial_cmp(&right)),
    };
    let compared =
        |wanted: fn(std::cmp::Ordering) -> bool| order.map_or(Value::Error, |order| Value::Truth(wanted(order)));
    match sign {
        "+" => of(|left, right| left + right),
        "-" => of(|left, right| left - right),
        "*" => of(|left, right| left * right),
        "/" => of(|left, right| left / right),
        "=" => compared(std::cmp::Ordering::is_eq),
        "<>" => compared(std::cmp::Ordering::is_ne),
        "<" => compared(std::cmp::Ordering::is_lt),
        ">" => compared(std::cmp::Ordering::is_gt),
        "<=" => compared(std::cmp::Ordering::is_le),
        ">=" => compared(std::cmp::Ordering::is_ge),
        other => panic!("no operation {other}"),
    }
}

/// Fifteen digits, as a spreadsheet has them, then decimal.
fn rounded(value: &Value, places: &Value, how: RoundingStrategy) -> Value {
    // What is below the last of them rounds to zero.
    let near = value.number().map(|value| if value.abs() < 1e-12 { 0.0 } else { value });
    let exact = near.and_then(|value| Decimal::from_scientific(&format!("{value:.14e}")).ok());
    let decimal = exact.zip(places.number().map(|places| places as u32));
    number(decimal.and_then(|(exact, places)| exact.round_dp_with_strategy(places, how).to_f64()))
}

/// Works an expression; `look` says what stands in the cells of a name or of a range.
pub(super) fn work(expr: &Expr, look: &dyn Fn(&Expr) -> Value) -> Value {
    match expr {
        Expr::Is(value) => value.clone(),
        Expr::Name(_) | Expr::Cells(..) => look(expr),
        Expr::Minus(of) => two(Value::Number(0.0), "-", work(of, look)),
        Expr::Two(left, sign, right) => two(work(left, look), sign, work(right, look)),
        Expr::Call(name, arguments) if name == "IF" => {
            let [condition, yes, no] = arguments.as_slice() else { panic!("IF takes three") };
            match work(condition, look) {
                Value::Error => Value::Error,
                truth => work(if truth.is_true() { yes } else { no }, look),
            }
        }
        Expr::Call(name, arguments) => {
            call(name, arguments.iter().map(|argument| work(argument, look)).collect::<Vec<_>>().as_slice())
        }
    }
}

fn call(name: &str, arguments: &[Value]) -> Value {
    let broken = |value: &Value| value.clone().flat().contains(&Value::Error);
    if arguments.iter().any(broken) {
        return Value::Error;
    }
    // What stands in cells counts where it is a number.
    let numbers = || {
        let all = arguments.iter().flat_map(|argument| argument.clone().flat());
        all.filter_map(|value| if let Value::Number(number) = value { Some(number) } else { None })
    };
    match (name, arguments) {
        ("SUM", _) => number(Some(numbers().sum())),
        ("MAX", _) => number(Some(numbers().reduce(f64::max).unwrap_or(0.0))),
        ("MIN", _) => number(Some(numbers().reduce(f64::min).unwrap_or(0.0))),
        ("AND", _) => Value::Truth(arguments.iter().all(Value::is_true)),
        ("OR", _) => Value::Truth(arguments.iter().any(Value::is_true)),
        ("SUMPRODUCT", [first, others @ ..]) => {
            let product = others.iter().fold(first.clone(), |product, other| two(product, "*", other.clone()));
            number(product.flat().iter().map(Value::number).sum())
        }
        ("ABS", [of]) => number(of.number().map(f64::abs)),
        ("INT", [of]) => number(of.number().map(f64::floor)),
        ("SIGN", [of]) => number(of.number().map(|of| if of == 0.0 { 0.0 } else { of.signum() })),
        ("MOD", [of, by]) => number(of.number().zip(by.number()).map(|(of, by)| of - by * (of / by).floor())),
        ("ROUND", [of, places]) => rounded(of, places, RoundingStrategy::MidpointAwayFromZero),
        ("ROUNDDOWN", [of, places]) => rounded(of, places, RoundingStrategy::ToZero),
        ("ROUNDUP", [of, places]) => rounded(of, places, RoundingStrategy::AwayFromZero),
        ("ISNUMBER", [of]) => Value::Truth(matches!(of, Value::Number(_))),
        ("N", [of]) => Value::Number(of.number().unwrap_or(0.0)),
        ("TRIM", [Value::Text(text)]) => Value::Text(text.split_whitespace().collect::<Vec<_>>().join(" ")),
        ("TRIM", [Value::Empty]) => Value::Text(String::new()),
        ("TRIM", [Value::Number(of)]) => Value::Text(of.to_string()),
        _ => panic!("no function {name} of {arguments:?}"),
    }
}

/// The little spreadsheet against sums by hand, and what the standard of its functions says of halves and signs.
#[test]
fn formulas_are_worked_as_a_spreadsheet_does() {
    let range = |of: &Expr| match of {
        Expr::Cells(None, (0, 0), (2, 0)) => {
            Value::Many(vec![Value::Number(1.0), Value::Text("-".to_owned()), Value::Number(4.0)])
        }
        Expr::Cells(None, (0, 1), (1, 1)) => Value::Many(vec![Value::Number(2.0), Value::Number(3.0)]),
        Expr::Name(name) if name == "size_g" => Value::Number(7.0),
        _ => Value::Empty,
    };
    for (formula, want) in [
        ("1+2*3-4/2", Value::Number(5.0)),
        ("(1+2)*-3", Value::Number(-9.0)),
        ("SUM(A1:$A$3)+size_g", Value::Number(12.0)),
        ("MAX(A1:A3,size_g)-MIN(A1:A3)", Value::Number(6.0)),
        ("SUMPRODUCT(B1:B2,B1:B2)", Value::Number(13.0)),
        ("SUMPRODUCT((B1:B2>2)*(B1:B2=3))", Value::Number(1.0)),
        ("ROUND(2.5,0)-ROUND(-2.5,0)", Value::Number(6.0)),
        ("ROUND(1.005,2)", Value::Number(1.01)),
        ("ROUNDDOWN(-1.29,1)+ROUNDUP(1.21,1)", Value::Number(0.1)),
        ("INT(-1.5)+MOD(-1,3)+SIGN(-4)", Value::Number(-1.0)),
        ("IF(AND(1<2,2<=2,NOT_THERE=0),\"yes, it is\",1/0)", Value::Text("yes, it is".to_owned())),
        ("IF(OR(1>2,2>=3,1<>1),1/0,\"no\")", Value::Text("no".to_owned())),
        ("1/0", Value::Error),
        ("\"-\"*2", Value::Error),
        ("\"-\">1000", Value::Truth(true)),
        ("C1=\"\"", Value::Truth(true)),
        ("ISNUMBER(C1)", Value::Truth(false)),
        ("TRIM(\" so  it is \")=\"SO it is\"", Value::Truth(true)),
    ] {
        match (work(&parse(formula), &range), want) {
            (Value::Number(came), Value::Number(want)) => assert!((came - want).abs() < 1e-12, "{formula}: {came}"),
            (came, want) => assert_eq!(came, want, "{formula}"),
        }
    }
}
