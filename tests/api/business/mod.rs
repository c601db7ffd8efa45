//! The public interface of business.

mod lists;
