//! What is known beside a service file.

use foilwork::{
    history::{foil_pace, read_records},
    lift::read_strand_book,
    service::{Evidence, InvalidSeenLevel, ServiceFile},
};

/// What is known beside the file, as it was given.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Known {
    pub book: Option<String>,
    pub seen: Vec<String>,
    pub records: Option<String>,
}

impl Known {
    /// All but what depends on the file.
    pub fn evidence(&self) -> Result<Evidence, InvalidSeenLevel> {
        let seen = self.seen.iter().map(|text| text.parse()).collect::<Result<_, _>>()?;
        Ok(Evidence { book: self.book.as_deref().map(read_strand_book), seen, foil_pace: None })
    }

    /// The same with what the records say of the one who works.
    pub fn beside(&self, file: &ServiceFile, evidence: Evidence) -> Evidence {
        let pace = |text: &str| foil_pace(&read_records(text).records, file.service.colourist.as_deref());
        Evidence { foil_pace: self.records.as_deref().and_then(pace), ..evidence }
    }
}
