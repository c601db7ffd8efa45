use crate::answer::answer;
use foilwork::teach;
use rust_decimal::Decimal;

answer! {
    in "foilwork.teach";
    /// An answer: a number with its unit, a time of the clock, or words.
    ExerciseAnswer {
        /// As it is to be written.
        text: String,
        /// The number alone, where it is one.
        value: Option<Decimal>,
        /// Its unit.
        unit: Option<String>,
    }
    impl {
        fn __str__(&self) -> String {
            self.text.clone()
        }
    }
}

answer! {
    in "foilwork.teach";
    /// One step of the way, with what the library makes of it.
    Working {
        /// What is looked for.
        what: String,
        /// The formula with its numbers.
        formula: String,
        /// What it comes to.
        result: String,
    }
}

answer! {
    in "foilwork.teach";
    /// One of the answers to choose from.
    OfferedAnswer {
        /// Its letter.
        letter: String,
        /// The answer.
        answer: ExerciseAnswer,
        /// The error that leads to it, by its code; none for the right one.
        mistake: Option<String>,
        /// The same in words.
        why: Option<String>,
    }
}

answer! {
    in "foilwork.teach";
    /// The picture of a problem, and the same in words: with either of them the problem can be solved.
    ExercisePicture {
        /// What there is to read, in words.
        says: String,
        /// The picture as SVG.
        svg: String,
    }
}

impl From<&teach::ExercisePicture> for ExercisePicture {
    fn from(picture: &teach::ExercisePicture) -> Self {
        Self { says: picture.says.clone(), svg: picture.svg() }
    }
}

answer! {
    in "foilwork.teach";
    /// A problem with its one answer, the way there, and the answers that usual errors lead to.
    Exercise {
        /// Its place on the sheet, from one.
        number: usize,
        /// What it practises.
        topic: String,
        /// How much it asks for.
        difficulty: String,
        /// Which problem of the topic it is.
        kind: String,
        /// The problem in words, with its numbers and how to round.
        question: String,
        /// The picture it is read from or that stands beside it.
        picture: Option<ExercisePicture>,
        /// What is given: names that end with the unit, and exact decimals as text.
        given: Vec<(String, String)>,
        /// The answer.
        answer: ExerciseAnswer,
        /// The way there.
        steps: Vec<Working>,
        /// The answer among wrong ones.
        options: Vec<OfferedAnswer>,
        /// What the rule rests on.
        basis: String,
        /// The citations of the rule, by their ids.
        sources: Vec<String>,
    }
    impl {
        fn __str__(&self) -> String {
            match &self.picture {
                Some(picture) => format!("{} [picture: {}]", self.question, picture.says),
                None => self.question.clone(),
            }
        }
    }
}

impl From<&teach::ExerciseAnswer> for ExerciseAnswer {
    fn from(answer: &teach::ExerciseAnswer) -> Self {
        Self { text: answer.text.clone(), value: answer.value, unit: answer.unit.clone() }
    }
}

impl From<&teach::Exercise> for Exercise {
    fn from(exercise: &teach::Exercise) -> Self {
        let step = |step: &teach::Working| Working {
            what: step.what.to_owned(),
            formula: step.formula.clone(),
            result: step.result.clone(),
        };
        let option = |option: &teach::OfferedAnswer| OfferedAnswer {
            letter: option.letter.to_string(),
            answer: (&option.answer).into(),
            mistake: option.mistake.map(|mistake| mistake.code().to_owned()),
            why: option.mistake.map(|mistake| mistake.words().to_owned()),
        };
        Self {
            number: exercise.number,
            topic: exercise.topic.code().to_owned(),
            difficulty: exercise.difficulty.code().to_owned(),
            kind: exercise.kind.to_owned(),
            question: exercise.question.clone(),
            picture: exercise.picture.as_ref().map(Into::into),
            given: exercise.given.iter().map(|(name, value)| ((*name).to_owned(), value.clone())).collect(),
            answer: (&exercise.answer).into(),
            steps: exercise.steps.iter().map(step).collect(),
            options: exercise.options.iter().map(option).collect(),
            basis: exercise.basis.code().to_owned(),
            sources: exercise.sources.iter().map(|id| (*id).to_owned()).collect(),
        }
    }
}
