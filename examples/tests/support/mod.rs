//! What the tests of the program share: running it, reading its sheet, and the independent model's figures.

pub mod case;
pub mod expected;
pub mod sheet;
mod strength;

use std::process::{Command, Output};

/// Runs the program.
pub fn run<S: AsRef<std::ffi::OsStr>>(args: &[S]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_seamwright")).args(args).output().unwrap()
}

/// Runs the program and takes the sheet it must print.
pub fn sheet_of<S: AsRef<std::ffi::OsStr> + core::fmt::Debug>(args: &[S]) -> String {
    let out = run(args);
    assert!(out.status.success(), "{args:?}\n{}", String::from_utf8_lossy(&out.stderr));
    String::from_utf8(out.stdout).unwrap()
}
