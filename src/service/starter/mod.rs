//! Files to begin with: a service, a shop and a list of services, each with a remark at what is to be written.

mod write;

pub use write::{Starter, starter};
