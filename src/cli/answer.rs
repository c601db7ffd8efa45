/// What a command came to.
pub(super) struct Answer {
    pub(super) text: String,
    pub(super) status: u8,
}

impl Answer {
    pub(super) const fn fine(text: String) -> Self {
        Self { text, status: 0 }
    }
}

/// Bad input: the text for the user.
pub(super) struct Refusal(pub(super) String);

impl<E: std::error::Error> From<E> for Refusal {
    fn from(error: E) -> Self {
        Self(error.to_string())
    }
}

pub(super) type Outcome = Result<Answer, Refusal>;

/// The plan or the log says stop.
pub(super) const BLOCKED: u8 = 1;
