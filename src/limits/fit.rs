/// What a row has to do with a use.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Fit {
    /// It is held against the level.
    Applies,
    /// It opens the use to professionals, and the user is none.
    ProfessionalsOnly,
    /// It is about something else.
    OtherUse,
}

/// What a table has to say about a subject.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Coverage {
    NotInTable,
    /// It is named for other uses; in one of them it may be prohibited.
    OtherUse {
        prohibited: bool,
    },
    /// The row opens the use to professionals only, and no row of that entry opens it to everyone.
    ProfessionalsOnly {
        row: usize,
    },
    Judged,
}
