//! Findings, tables, and the words they come in.
mod forms;
mod table;
mod verdict;
