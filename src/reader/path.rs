use std::fmt;

/// Where a value stands in a file: `section[2].share_percent`. Written out only where something is said about it.
#[derive(Debug, Clone, Copy)]
pub(super) enum Path<'p> {
    /// The file as a whole.
    Root,
    /// A field of a table.
    Key(&'p Path<'p>, &'p str),
    /// An entry of a list, counted from zero; people count from one.
    Item(&'p Path<'p>, usize),
}

impl Path<'_> {
    pub(super) const fn is_root(self) -> bool {
        matches!(self, Self::Root)
    }
}

impl fmt::Display for Path<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Root => Ok(()),
            Self::Key(Self::Root, key) => f.write_str(key),
            Self::Key(table, key) => write!(f, "{table}.{key}"),
            Self::Item(list, place) => write!(f, "{list}[{}]", place + 1),
        }
    }
}
