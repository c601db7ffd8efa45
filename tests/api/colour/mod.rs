//! The colour room from outside: constructors, refusals and their exact texts.

mod by_hand;
mod errors;
mod gradient;
mod levels;
mod trails;
