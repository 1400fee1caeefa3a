//! sizing
