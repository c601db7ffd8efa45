//! The problems, a file for each family of topics. Each draws its numbers, works them by the functions of the rooms, and
//! lists what usual errors come to.

mod break_even;
mod choose;
mod costing;
mod dilution;
mod hair;
mod level;
mod limits;
mod peroxide;
mod pigment;
mod price;
mod ratio;
mod reading;
mod task;
mod tax;
mod timing;
mod weighing;

pub(super) use choose::of;
use task::Task;
