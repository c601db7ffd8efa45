//! The shop from outside: what is read, what each mistake says.

mod file;
mod typed;
