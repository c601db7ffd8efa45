//! The service room, the sheet and the command line, from outside.

mod base;
mod broken;
mod cards;
mod command;
mod consultation;
mod danger;
mod defaults;
mod deposit;
mod examples;
mod field_use;
mod fields;
mod forms;
mod found;
mod head;
mod law;
mod looks;
mod overlap;
mod plan_data;
mod schema;
mod sequence;
mod sheet;
mod starter;
mod times;
mod together;
mod work;
