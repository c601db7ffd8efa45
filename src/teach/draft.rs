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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::teach::{Difficulty, Topic};

    fn told(found: Option<Found>) -> Option<(String, Option<u32>)> {
        found.map(|found| (found.answer.text, found.rounded_to))
    }

    /// By hand: to so many decimals, exactly where it has no more; what lies in the middle between two has no one answer.
    #[test]
    fn a_number_is_rounded_unless_it_could_go_either_way() {
        for (value, decimals, want) in [
            (1.234, 2, Some(("1.23 g", Some(2)))),
            (1.236, 2, Some(("1.24 g", Some(2)))),
            (1.5, 2, Some(("1.5 g", None))),
            (0.1 + 0.2, 1, Some(("0.3 g", None))),
            (-1.234, 2, Some(("-1.23 g", Some(2)))),
            (1.005, 2, None),
            (2.5, 0, None),
            (2.500_09, 0, None),
            (2.499_91, 0, None),
            (2.500_2, 0, Some(("3 g", Some(0)))),
            (2.499_8, 0, Some(("2 g", Some(0)))),
            (2.000_000_000_5, 0, Some(("2 g", None))),
            (2.000_000_01, 0, Some(("2 g", Some(0)))),
            (0.123_46, 4, Some(("0.1235 g", Some(4)))),
            (1e12, 0, Some(("1000000000000 g", None))),
            (-1e12, 0, Some(("-1000000000000 g", None))),
            (1.1e12, 0, None),
            (f64::NAN, 0, None),
            (f64::INFINITY, 0, None),
        ] {
            let want = want.map(|(text, rounded)| (text.to_owned(), rounded));
            assert_eq!(told(number(value, decimals, "g")), want, "{value}");
        }
        let amount = number(1.234, 2, "g").and_then(|found| found.amount());
        assert_eq!(amount, Some(Decimal::new(123, 2)));
        assert_eq!(told(exact(1.5, 1, "g")), Some(("1.5 g".to_owned(), None)));
        assert_eq!(told(exact(1.51, 1, "g")), None);
    }

    #[test]
    fn each_kind_of_answer_is_written_as_its_own() {
        let of = |found: Option<Found>| told(found).map(|(text, _)| text).unwrap_or_default();
        let euros = |cents: i64| money(Decimal::new(cents, 3), Money::from_minor(0, crate::money::Currency::EUR));
        assert_eq!(of(euros(1_234)), "1.23 EUR");
        assert_eq!(of(euros(1_236)), "1.24 EUR");
        assert_eq!(of(euros(1_230)), "1.23 EUR");
        assert_eq!(told(euros(1_235)), None, "half a cent could go either way");
        assert_eq!(of(grams(mass(Decimal::new(125, 1)), 1)), "12.5 g");
        assert_eq!(of(ww(strength(Decimal::new(6, 0)), 1)), "6 % w/w");
        assert_eq!([of(count(5, "foils")), of(count(5, "level"))], ["5 foils", "level 5"]);
        assert_eq!([of(clock(605)), of(clock(-5)), of(words("yes"))], ["10:05", "-1:55", "yes"]);
        assert_eq!([shown(1.0 / 3.0), shown(2.0)], ["0.3333", "2"]);
        assert!((minutes(35).min() - 35.0).abs() < 1e-12 && (float(Decimal::new(15, 1)) - 1.5).abs() < 1e-12);
    }

    /// How far to round is asked for where it is rounded, and the answer is the last step.
    #[test]
    fn a_question_says_how_far_to_round() {
        for (value, decimals, want) in [
            (1.4, 0, "What? Round to a whole number."),
            (1.23, 1, "What? Round to one decimal."),
            (1.234, 2, "What? Round to 2 decimals."),
            (2.0, 0, "What?"),
        ] {
            let Some(found) = number(value, decimals, "g") else { continue };
            let text = found.answer.text.clone();
            let draft = Draft::new("What?".to_owned()).answer("sum", "1 + 1".to_owned(), found);
            assert_eq!(draft.question, want);
            let step = Working { what: "sum", formula: "1 + 1".to_owned(), result: text };
            assert_eq!(draft.steps, [step]);
        }
    }

    fn place() -> Exercise {
        let (given, answer) = (BTreeMap::new(), ExerciseAnswer { text: String::new(), value: None, unit: None });
        Exercise {
            number: 7,
            topic: Topic::Tax,
            difficulty: Difficulty::Steady,
            kind: "kind",
            question: String::new(),
            picture: None,
            given,
            answer,
            steps: Vec::new(),
            options: Vec::new(),
            basis: Basis::Assumed,
            sources: Vec::new(),
        }
    }

    fn drawn(wrong: &[Option<Found>]) -> Option<Exercise> {
        let draft = Draft::new("What?".to_owned()).given("a", 1).rests_on(Basis::Stated, &[]);
        let draft = draft.answer("sum", "1 + 9".to_owned(), count(10, "g")?);
        let leads = wrong.iter().zip(Mistake::ALL);
        let draft = leads.fold(draft, |draft, (found, mistake)| {
            let found = found.as_ref().map(|found| Found { answer: found.answer.clone(), rounded_to: None });
            draft.wrong(*mistake, found)
        });
        draft.finish(&mut Draw::new(1, 1), place())
    }

    /// Two wrong answers at least and three at most, each unlike the others in words and in number, and none that nobody would come to.
    #[test]
    fn an_exercise_offers_answers_that_differ() {
        let of = |values: &[i64]| values.iter().map(|value| count(*value, "g")).collect::<Vec<_>>();
        let offered = |wrong: &[Option<Found>]| {
            let mut texts: Vec<String> =
                drawn(wrong)?.options.iter().map(|option| option.answer.text.clone()).collect();
            texts.sort();
            Some(texts)
        };
        assert_eq!(offered(&of(&[20])), None);
        assert_eq!(offered(&of(&[20, 30])), Some(["10 g", "20 g", "30 g"].map(str::to_owned).to_vec()));
        let four = ["10 g", "20 g", "30 g", "40 g"].map(str::to_owned).to_vec();
        assert_eq!(offered(&of(&[20, 30, 40])), Some(four.clone()));
        assert_eq!(offered(&of(&[20, 30, 40, 50])), Some(four));
        assert_eq!(offered(&of(&[0, -5, 20])), None, "nothing and less than nothing are no mistakes");
        assert_eq!(offered(&[None, count(20, "g")]), None);
        assert_eq!(offered(&of(&[20, 20, 10])), None, "said already");
        let same = [count(10, "mL"), words("10 g"), count(20, "g")];
        assert_eq!(offered(&same), None, "the answer in other words, or in the same ones");
        assert_eq!(offered(&[words("yes"), words("no")]), Some(["10 g", "no", "yes"].map(str::to_owned).to_vec()));
    }

    #[test]
    fn an_exercise_holds_all_of_its_draft() {
        let wrong = [count(20, "g"), count(30, "g")];
        let Some(found) = drawn(&wrong) else { panic!("an exercise") };
        assert_eq!((found.number, found.kind, found.topic, found.question.as_str()), (7, "kind", Topic::Tax, "What?"));
        assert_eq!((found.answer.text.as_str(), found.steps.len(), found.basis), ("10 g", 1, Basis::Stated));
        assert_eq!(found.given.get("a").map(String::as_str), Some("1"));
        let letters: Vec<char> = found.options.iter().map(|option| option.letter).collect();
        assert_eq!(letters, ['A', 'B', 'C']);
        for option in &found.options {
            let value = option.answer.value.and_then(|value| value.to_i64());
            let want = match option.mistake {
                None => Some(10),
                Some(mistake) => {
                    let mut leads = Mistake::ALL.iter().zip([20, 30]);
                    leads.find(|(one, _)| **one == mistake).map(|(_, value)| value)
                }
            };
            assert_eq!(value, want);
        }
    }
}
