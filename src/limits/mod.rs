//! What the law allows on the hair, by jurisdiction, with the source of every figure.
