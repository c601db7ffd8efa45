//! The colour room from outside: constructors, refusals and their exact texts.

mod errors;
mod gradient;
mod levels;
