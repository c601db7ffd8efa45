use super::Task;
use crate::{
    colour::{Hue, Level, LevelChange, UnderlyingPigment, underlying_pigment},
    money::Currency,
    source::{Basis, COMMON_PRACTICE, citations::colour::EXAM_GUIDE},
    teach::{
        Mistake,
        draft::{Draft, words},
        draw::Draw,
        picture::{Drawn, ExercisePicture},
    },
};

pub(super) const TASKS: &[Task] = &[
    Task::gentle("exposed-pigment", exposed),
    Task::gentle("complement", complement),
    Task::steady("neutralising-hue", neutralising),
    Task::stretch("hue-after-lift", after_lift),
];

fn at(level: i64) -> Option<UnderlyingPigment> {
    Some(underlying_pigment(Level::new(level as f64).ok()?).value)
}

fn neutraliser(level: i64) -> Option<Hue> {
    at(level)?.neutraliser.map(|(hue, _)| hue)
}

/// The hue so many places on.
fn beside(hue: Hue, places: usize) -> Option<Hue> {
    Hue::ALL.get((hue.position() + places) % Hue::ALL.len()).copied()
}

/// The wheel on the wall, none of its hues marked.
fn wheel() -> ExercisePicture {
    let hues: Vec<&str> = Hue::ALL.iter().map(|hue| hue.words()).collect();
    ExercisePicture::new(Drawn::Wheel, format!("twelve hues in a ring, in this order: {}", hues.join(", ")))
}

fn exposed(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let level = draw.between(3, 9);
    let shown = at(level)?.shown();
    Some(
        Draft::new(format!(
            "Natural hair is lightened to level {level} at Juniper & Tide. Which warmth shows by the trade's list of levels 1 to \
             10?"
        ))
        .rests_on(Basis::CommonPractice, &[COMMON_PRACTICE])
        .given("level", level)
        .answer("the row of the list", format!("level {level}"), words(shown)?)
        .wrong(Mistake::NextRow, at(level + 1).and_then(|row| words(row.shown())))
        .wrong(Mistake::NextRow, at(level - 1).and_then(|row| words(row.shown())))
        .wrong(Mistake::OtherRule, neutraliser(level).and_then(words)),
    )
}

fn complement(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let hue = draw.pick(Hue::ALL)?;
    let sourced = hue.complement_sourced();
    let source = if sourced.basis == Basis::Published { EXAM_GUIDE } else { COMMON_PRACTICE };
    Some(
        Draft::new(format!(
            "The wheel on the wall of Juniper & Tide has twelve hues. Which one lies opposite {hue} and neutralises it?"
        ))
        .picture(wheel())
        .rests_on(sourced.basis, &[source])
        .given("hue", hue.code())
        .answer("six places on", format!("{hue}, six places on"), words(sourced.value)?)
        .wrong(Mistake::NeighbourHue, beside(hue, 5).and_then(words))
        .wrong(Mistake::NeighbourHue, beside(hue, 7).and_then(words))
        .wrong(Mistake::SameHue, words(hue)),
    )
}

fn neutralising(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let level = draw.between(3, 10);
    let (row, hue) = (at(level)?, neutraliser(level)?);
    Some(
        Draft::new(format!(
            "Hair lightened to level {level} shows its warmth at Juniper & Tide and is to become neutral. Which hue does the toner \
             lean to, by the trade's list and the wheel?"
        ))
        .rests_on(Basis::CommonPractice, &[COMMON_PRACTICE])
        .given("level", level)
        .step("the warmth at that level", format!("level {level}"), row.shown())
        .answer("its complement on the wheel", format!("opposite {}", row.exposed.0), words(hue)?)
        .wrong(Mistake::SameHue, words(row.exposed.0))
        .wrong(Mistake::NeighbourHue, beside(hue, 1).and_then(words))
        .wrong(Mistake::NeighbourHue, beside(hue, 11).and_then(words)),
    )
}

fn after_lift(draw: &mut Draw, _: Currency) -> Option<Draft> {
    let (start, lift) = (draw.between(3, 6), draw.between(2, 5));
    let reached = Level::new(start as f64).ok()?.plus(LevelChange::from_levels(lift as f64).ok()?).ok()?;
    let end = start + lift;
    if end > 10 {
        return None;
    }
    let row = underlying_pigment(reached).value;
    let hue = row.neutraliser.map(|(hue, _)| hue)?;
    Some(
        Draft::new(format!(
            "Natural hair of level {start} is lifted by {lift} levels at Juniper & Tide and then toned to neutral. Which hue does \
             the toner lean to, by the trade's list and the wheel?"
        ))
        .rests_on(Basis::CommonPractice, &[COMMON_PRACTICE])
        .given("natural_level", start)
        .given("lift_levels", lift)
        .step("the level reached", format!("{start} + {lift}"), reached)
        .step("the warmth there", format!("level {end}"), row.shown())
        .answer("its complement on the wheel", format!("opposite {}", row.exposed.0), words(hue)?)
        .wrong(Mistake::StartForEnd, neutraliser(start).and_then(words))
        .wrong(Mistake::SameHue, words(row.exposed.0))
        .wrong(Mistake::NeighbourHue, beside(hue, 1).and_then(words))
        .wrong(Mistake::NeighbourHue, beside(hue, 11).and_then(words)),
    )
}
