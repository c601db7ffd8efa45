//! `mix`: see the room's own page in `src/mix`.
