//! The bowl: words of the errors, shape of the answers.
mod advice;
mod bowl;
mod scale;
mod words;
