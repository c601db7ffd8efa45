use super::{Exercise, ExerciseAnswer, Mistake, OfferedAnswer, Working, draw::Draw, picture::ExercisePicture};
use crate::{
    money::Money,
    quantity::{Duration, Mass, MassFraction, Quantity},
    source::{Basis, Citation},
};
use rust_decimal::{Decimal, RoundingStrategy, prelude::ToPrimitive};
use std::collections::BTreeMap;

/// How many wrong answers are offered at most, and at least.
const MOST_WRONG: usize = 3;
const LEAST_WRONG: usize = 2;
/// The last bits of a sum in binary are no part of the number.
const LAST_BITS: f64 = 1e-9;
/// So near to the middle between two decimals (in units of the last one) a rounding could go either way.
const NEAR_A_TIE: f64 = 1e-4;

/// A problem as it is made; it becomes an exercise only when it has one answer and wrong ones that differ.
pub(super) struct Draft {
    question: String,
    picture: Option<ExercisePicture>,
    given: BTreeMap<&'static str, String>,
    steps: Vec<Working>,
    answer: Option<ExerciseAnswer>,
    wrong: Vec<(Mistake, ExerciseAnswer)>,
    basis: Basis,
    sources: Vec<&'static str>,
}

impl Draft {
    pub(super) fn new(question: String) -> Self {
        Self {
            question,
            picture: None,
            given: BTreeMap::new(),
            steps: Vec::new(),
            answer: None,
            wrong: Vec::new(),
            basis: Basis::Derived,
            sources: Vec::new(),
        }
    }

    /// What the rule rests on.
    pub(super) fn rests_on(mut self, basis: Basis, sources: &[Citation]) -> Self {
        self.basis = basis;
        self.sources = sources.iter().map(|source| source.id).collect();
        self
    }

    pub(super) fn picture(self, picture: ExercisePicture) -> Self {
        Self { picture: Some(picture), ..self }
    }

    pub(super) fn given(mut self, name: &'static str, value: impl ToString) -> Self {
        self.given.insert(name, value.to_string());
        self
    }

    pub(super) fn step(mut self, what: &'static str, formula: String, result: impl ToString) -> Self {
        self.steps.push(Working { what, formula, result: result.to_string() });
        self
    }

    /// The last step, whose result is the answer; the question says how to round, where that is needed.
    pub(super) fn answer(mut self, what: &'static str, formula: String, found: Found) -> Self {
        if let Some(digits) = found.rounded_to {
            self.question += &match digits {
                0 => " Round to a whole number.".to_owned(),
                1 => " Round to one decimal.".to_owned(),
                more => format!(" Round to {more} decimals."),
            };
        }
        self = self.step(what, formula, &found.answer.text);
        self.answer = Some(found.answer);
        self
    }

    /// A wrong answer and the error that leads to it. What is no number, or not above zero, nobody would write.
    pub(super) fn wrong(mut self, mistake: Mistake, found: Option<Found>) -> Self {
        let likely = |answer: &ExerciseAnswer| answer.value.is_none_or(|value| value > Decimal::ZERO);
        self.wrong.extend(found.map(|found| found.answer).filter(likely).map(|answer| (mistake, answer)));
        self
    }

    /// The exercise, when its answers can be told apart.
    pub(super) fn finish(self, draw: &mut Draw, place: Exercise) -> Option<Exercise> {
        let answer = self.answer?;
        let mut offered: Vec<(Option<Mistake>, ExerciseAnswer)> = vec![(None, answer.clone())];
        for (mistake, wrong) in self.wrong {
            let same = |known: &ExerciseAnswer| {
                known.text == wrong.text || wrong.value.is_some_and(|v| known.value == Some(v))
            };
            if offered.len() <= MOST_WRONG && !offered.iter().any(|(_, known)| same(known)) {
                offered.push((Some(mistake), wrong));
            }
        }
        if offered.len() <= LEAST_WRONG {
            return None;
        }
        draw.shuffle(&mut offered);
        let letters = 'A'..='Z';
        let options = letters.zip(offered).map(|(letter, (mistake, answer))| OfferedAnswer { letter, answer, mistake });
        Some(Exercise {
            question: self.question,
            picture: self.picture,
            given: self.given,
            answer,
            steps: self.steps,
            options: options.collect(),
            basis: self.basis,
            sources: self.sources,
            ..place
        })
    }
}

/// An answer that was found, and to how many decimals it had to be rounded.
pub(super) struct Found {
    answer: ExerciseAnswer,
    rounded_to: Option<u32>,
}

impl Found {
    /// The number, to go on with.
    pub(super) const fn amount(&self) -> Option<Decimal> {
        self.answer.value
    }
}

/// A number to at most so many decimals; none where the rounding could go either way, or where there is no such number.
pub(super) fn number(value: f64, decimals: u32, unit: &str) -> Option<Found> {
    if !value.is_finite() || value.abs() > 1e12 {
        return None;
    }
    let factor = 10_f64.powi(i32::try_from(decimals).ok()?);
    let scaled = value * factor;
    let is_exact = (scaled - scaled.round()).abs() < LAST_BITS * factor.max(scaled.abs());
    if !is_exact && (scaled - scaled.floor() - 0.5).abs() < NEAR_A_TIE {
        return None;
    }
    let decimal = Decimal::from_f64_retain(scaled.round())?.normalize();
    let value = (decimal / Decimal::from_f64_retain(factor)?).normalize();
    let answer = ExerciseAnswer { text: with_unit(value, unit), value: Some(value), unit: Some(unit.to_owned()) };
    Some(Found { answer, rounded_to: (!is_exact).then_some(decimals) })
}

/// A number that needs no rounding; none where it would.
pub(super) fn exact(value: f64, decimals: u32, unit: &str) -> Option<Found> {
    number(value, decimals, unit).filter(|found| found.rounded_to.is_none())
}

pub(super) fn grams(mass: Mass, decimals: u32) -> Option<Found> {
    number(mass.g(), decimals, "g")
}

pub(super) fn ww(strength: MassFraction, decimals: u32) -> Option<Found> {
    number(strength.ww_percent(), decimals, "% w/w")
}

/// An exact amount; none where its rounding to the minor unit decided.
pub(super) fn money(amount: Decimal, like: Money) -> Option<Found> {
    let currency = like.currency();
    let rounded = amount.round_dp_with_strategy(currency.exponent(), RoundingStrategy::MidpointAwayFromZero);
    let tie = amount.round_dp_with_strategy(currency.exponent(), RoundingStrategy::MidpointTowardZero) != rounded;
    if tie {
        return None;
    }
    let amount = Money::from_decimal_exact(rounded, currency).ok()?;
    let (text, value) = (amount.to_string(), amount.decimal());
    let answer = ExerciseAnswer { text, value: Some(value), unit: Some(currency.code().to_owned()) };
    Some(Found { answer, rounded_to: None })
}

pub(super) fn count(whole: i64, unit: &str) -> Option<Found> {
    let value = Decimal::from(whole);
    let answer = ExerciseAnswer { text: with_unit(value, unit), value: Some(value), unit: Some(unit.to_owned()) };
    Some(Found { answer, rounded_to: None })
}

pub(super) fn words(text: impl ToString) -> Option<Found> {
    Some(Found { answer: ExerciseAnswer { text: text.to_string(), value: None, unit: None }, rounded_to: None })
}

/// A time of the clock, so many minutes after midnight.
pub(super) fn clock(minutes: i64) -> Option<Found> {
    words(hour(minutes))
}

pub(super) fn hour(minutes: i64) -> String {
    format!("{}:{:02}", minutes.div_euclid(60), minutes.rem_euclid(60))
}

fn with_unit(value: Decimal, unit: &str) -> String {
    if unit == "level" { format!("{unit} {value}") } else { format!("{value} {unit}") }
}

/// Decimals of a problem are short: the nearest binary number stands for them.
pub(super) fn float(value: Decimal) -> f64 {
    value.to_f64().unwrap_or(f64::NAN)
}

pub(super) fn mass(value: Decimal) -> Mass {
    Mass::nearest(float(value))
}

pub(super) fn strength(value: Decimal) -> MassFraction {
    MassFraction::nearest(float(value))
}

pub(super) fn minutes(value: i64) -> Duration {
    Duration::nearest(value as f64)
}

/// A result on the way, to four decimals.
pub(super) fn shown(value: f64) -> String {
    crate::text::number(value, 4)
}
