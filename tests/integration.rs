//! One test binary: published values, properties, and the public interface, each room in its own file.

mod api;
mod properties;
mod published;
