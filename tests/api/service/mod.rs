//! The service room, the sheet and the command line, from outside.

mod base;
mod broken;
mod cards;
mod command;
mod consultation;
mod danger;
mod defaults;
mod examples;
mod fields;
mod forms;
mod head;
mod found;
mod law;
mod plan_data;
mod schema;
mod sequence;
mod sheet;
mod starter;
mod times;
mod together;
mod work;
