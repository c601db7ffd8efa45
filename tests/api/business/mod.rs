//! The public interface of business.

mod bounds;
mod lists;
mod marks;
mod ranges;
mod trails;
