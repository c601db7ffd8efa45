//! What is known beside a service file.

use foilwork::{
    lift::read_strand_book,
    service::{Evidence, InvalidSeenLevel},
};

/// What is known beside the file, as it was given.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Known {
    pub book: Option<String>,
    pub seen: Vec<String>,
}

impl Known {
    pub fn evidence(&self) -> Result<Evidence, InvalidSeenLevel> {
        let seen = self.seen.iter().map(|text| text.parse()).collect::<Result<_, _>>()?;
        Ok(Evidence { book: self.book.as_deref().map(read_strand_book), seen })
    }
}
