//! The shop from outside: what is read, what each mistake says.

mod edges;
mod file;
mod typed;
