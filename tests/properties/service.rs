//! `service`: see the room's own page in `src/service`.
