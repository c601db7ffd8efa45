use super::{Difficulty, Exercise, ExerciseAnswer, Topic, WorksheetError, WorksheetRequest, draw::Draw, tasks};
use crate::source::Basis;
use serde::Serialize;
use std::collections::BTreeMap;

/// A sheet of problems, with all that the key says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Worksheet {
    /// Version of the problems: within one, a seed keeps its sheet.
    pub format: u32,
    /// Version of foilwork that made it.
    pub foilwork: &'static str,
    /// The seed.
    pub seed: u64,
    /// What it practises.
    pub title: String,
    /// The problems.
    pub exercises: Vec<Exercise>,
}

impl Worksheet {
    /// The version of the problems; it changes when a seed would give another sheet.
    pub const FORMAT: u32 = 1;
}

/// How often numbers are drawn anew until a problem has one answer.
const TRIES: usize = 2_000;

/// Makes a sheet.
///
/// # Errors
///
/// [`WorksheetError`] for a number of problems that no sheet has.
///
/// # Example
///
/// ```
/// use foilwork::teach::{Difficulty, Topic, WorksheetRequest, worksheet};
///
/// let sheet = worksheet(&WorksheetRequest {
///     topics: vec![Topic::Dilution],
///     difficulty: Some(Difficulty::Gentle),
///     count: 1,
///     ..WorksheetRequest::new(2026)
/// })?;
/// let exercise = &sheet.exercises[0];
/// assert!(exercise.question.contains("Juniper & Tide"));
/// assert!(exercise.options.iter().all(|option| option.mistake.is_none() == (option.answer == exercise.answer)));
/// # Ok::<(), foilwork::teach::WorksheetError>(())
/// ```
pub fn worksheet(request: &WorksheetRequest) -> Result<Worksheet, WorksheetError> {
    if request.count == 0 || request.count > WorksheetRequest::MOST {
        return Err(WorksheetError::Count { count: request.count });
    }
    let topics = if request.topics.is_empty() { Topic::ALL } else { &request.topics };
    let exercises = topics.iter().cycle().take(request.count).enumerate();
    let exercises = exercises.map(|(place, topic)| exercise(request, *topic, place)).collect::<Result<_, _>>()?;
    let named: Vec<_> = topics.iter().map(|topic| topic.words()).collect();
    let title = if request.topics.is_empty() { "all topics".to_owned() } else { crate::text::list(named, "and") };
    Ok(Worksheet {
        format: Worksheet::FORMAT,
        foilwork: env!("CARGO_PKG_VERSION"),
        seed: request.seed,
        title,
        exercises,
    })
}

fn exercise(request: &WorksheetRequest, topic: Topic, place: usize) -> Result<Exercise, WorksheetError> {
    let mut draw = Draw::new(request.seed, place as u64);
    for _ in 0..TRIES {
        let Some(difficulty) = request.difficulty.or_else(|| draw.pick(Difficulty::ALL)) else { break };
        let Some(task) = draw.pick(&tasks::of(topic, difficulty)) else { continue };
        let head = Exercise {
            number: place + 1,
            topic,
            difficulty,
            kind: task.kind,
            question: String::new(),
            picture: None,
            given: BTreeMap::new(),
            answer: ExerciseAnswer { text: String::new(), value: None, unit: None },
            steps: Vec::new(),
            options: Vec::new(),
            basis: Basis::Derived,
            sources: Vec::new(),
        };
        let draft = (task.make)(&mut draw, request.currency);
        if let Some(exercise) = draft.and_then(|draft| draft.finish(&mut draw, head)) {
            return Ok(exercise);
        }
    }
    Err(WorksheetError::NoNumbers { topic, seed: request.seed })
}
