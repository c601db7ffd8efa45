//! The bowl: words of the errors, shape of the answers.
mod advice;
mod bowl;
mod by_hand;
mod scale;
mod words;
