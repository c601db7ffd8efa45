use super::{
    Task, break_even, costing, dilution, hair, level, limits, peroxide, pigment, price, ratio, reading, tax, timing,
    weighing,
};
use crate::teach::{Difficulty, Topic};

/// The problems of a topic and a difficulty.
pub(in crate::teach) fn of(topic: Topic, difficulty: Difficulty) -> Vec<Task> {
    let tasks = match topic {
        Topic::PeroxideUnits => peroxide::TASKS,
        Topic::Dilution => dilution::TASKS,
        Topic::Ratio => ratio::TASKS,
        Topic::Weighing => weighing::TASKS,
        Topic::Limits => limits::TASKS,
        Topic::Level => level::TASKS,
        Topic::Pigment => pigment::TASKS,
        Topic::Hair => hair::TASKS,
        Topic::Timing => timing::TASKS,
        Topic::Costing => costing::TASKS,
        Topic::Price => price::TASKS,
        Topic::Tax => tax::TASKS,
        Topic::BreakEven => break_even::TASKS,
    };
    let read = reading::TASKS.iter().filter(|(of, _)| *of == topic).map(|(_, task)| *task);
    tasks.iter().copied().chain(read).filter(|task| task.difficulty == difficulty).collect()
}
