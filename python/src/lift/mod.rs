//! Wrappers of `foilwork::lift`.

mod belief;
mod book;
mod finish;
mod lightening;
mod situation;
mod watch;

crate::room::room! {
    /// Lightening against time: how light, how fast, how sure, and what a strand test teaches.
    lift {
        belief { Advice, Belief, advice }
        book { BookProblem, StrandBook, StrandReading, read_strand_book, strand_json_line, strand_line }
        finish { FinishTogether, TimedChoice, TimedSection, finish_together }
        lightening { Lightening, StrengthChance, TimeTo, Visit, chances, gentlest, series }
        situation { Factor, Situation }
        watch { AfterLook, Condition, after_look, condition, looks }
    }
}
