//! The service room, the sheet and the command line, from outside.

mod base;
mod broken;
mod command;
mod consultation;
mod defaults;
mod examples;
mod forms;
mod law;
mod schema;
mod together;
mod work;
