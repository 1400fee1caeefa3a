//! Tests of the reference itself.

mod hand;
mod published;
mod random;
mod sized;
mod tricky;

/// Fails unless two figures agree within an absolute tolerance.
fn near(got: f64, expected: f64, tolerance: f64) {
    assert!((got - expected).abs() <= tolerance, "got {got}, expected {expected} within {tolerance}");
}
