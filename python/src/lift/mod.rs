//! Wrappers of `foilwork::lift`.

mod belief;
mod book;
mod choose;
mod finish;
mod lightening;
mod situation;
mod watch;

pub use book::StrandReading;
pub use choose::Visit;

crate::room::room! {
    /// Lightening against time: how light, how fast, how sure, and what a strand test teaches.
    lift {
        belief { Advice, Belief, advice }
        book { BookProblem, StrandBook, StrandReading, read_strand_book, strand_json_line, strand_line }
        choose { StrengthChance, Visit, chances, gentlest, series }
        finish { FinishTogether, TimedChoice, TimedSection, finish_together }
        lightening { Lightening, TimeTo }
        situation { Factor, Situation }
        watch { AfterLook, Condition, after_look, condition, looks }
    }
}
