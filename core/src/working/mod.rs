//! The working: every step of a routine, recorded line by line and written out.
