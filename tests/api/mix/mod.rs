//! The bowl: words of the errors, shape of the answers.
mod advice;
mod bowl;
mod by_hand;
mod edges;
mod scale;
mod words;
