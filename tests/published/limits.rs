//! `limits`: see the room's own page in `src/limits`.
