//! The committed handover in `examples/output` is what the program writes; each file carries the caution.
//! `SEAMWRIGHT_REGENERATE=1 cargo test -p seamwright-examples --test handover` writes it anew.

#![allow(clippy::expect_used, reason = "a test says what it expects")]

use std::path::PathBuf;
use std::process::Command;
use std::{env, fs};

/// What is committed: small, and read by people.
const COMMITTED: [&str; 4] = ["drawing.svg", "tie.svg", "bracket.svg", "shop.txt"];
/// Everything that the program writes.
const WRITTEN: [&str; 13] = [
    "bracket.svg",
    "tie.dxf",
    "tie.svg",
    "shop-working.txt",
    "seam.dxf",
    "drawing.svg",
    "shop.txt",
    "shop.md",
    "sizing.txt",
    "working.txt",
    "working.md",
    "working.html",
    "working.tex",
];

#[test]
fn the_handover_is_what_the_program_writes() {
    let place = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("handover");
    let run = Command::new(env!("CARGO_BIN_EXE_handover")).arg(&place).status();
    assert!(run.expect("the program runs").success());
    for name in WRITTEN {
        let text = fs::read_to_string(place.join(name)).expect(name);
        // A line break may fall anywhere, and a drawing sets each line by itself.
        let words: String = text.chars().filter(|c| c.is_alphabetic()).collect();
        assert!(words.contains("DesignaidonlyLocalcodes"), "{name} has no caution");
        assert!(words.to_lowercase().contains("invented"), "{name} is not marked invented");
    }
    let committed = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("output");
    for name in COMMITTED {
        let text = fs::read_to_string(place.join(name)).expect(name);
        if env::var_os("SEAMWRIGHT_REGENERATE").is_some() {
            fs::create_dir_all(&committed).expect("a folder");
            fs::write(committed.join(name), &text).expect(name);
        }
        let kept = fs::read_to_string(committed.join(name)).expect(name);
        assert!(text == kept, "{name} differs from examples/output: look at it, then write it anew");
    }
}

/// Help is told and nothing is written; what is no directory is refused.
#[test]
fn help_is_no_directory() {
    let place = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("handover-help");
    fs::create_dir_all(&place).expect("a place");
    let run = |words: &[&str]| {
        let out = Command::new(env!("CARGO_BIN_EXE_handover")).args(words).current_dir(&place).output();
        out.expect("the program runs")
    };
    for word in ["--help", "-h"] {
        let out = run(&[word]);
        assert!(
            out.status.success() && String::from_utf8_lossy(&out.stdout).starts_with("Usage: handover [DIRECTORY]")
        );
    }
    for words in [&["--halp"][..], &["a", "b"]] {
        let out = run(words);
        assert!(!out.status.success() && String::from_utf8_lossy(&out.stderr).contains("--help says what it takes"));
    }
    assert_eq!(fs::read_dir(&place).expect("the place").count(), 0);
}
