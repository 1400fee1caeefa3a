//! The example of an old boiler: its table, by hand.
#![allow(missing_docs, reason = "tests")]
#![allow(clippy::unwrap_used, clippy::panic, reason = "tests may panic")]

use std::process::Command;

/// TS t E/(R FS), psi and inches: 50 000 psi, an inside radius of 22 in, a double-riveted lap of 3 1/4 in with holes of
/// 15/16 in (the table's for plate of 7/16 in) that tears: E = (3.25 - 0.9375)/3.25; FS = 4.5 and 0.5 for its age.
fn by_hand(plate: f64) -> String {
    let efficiency = (3.25 - 0.9375) / 3.25;
    format!("{:.1} psi", 50_000.0 * plate * efficiency / (22.0 * 5.0))
}

#[test]
fn the_table_of_the_old_boiler_is_what_it_is_by_hand() {
    let out = Command::new(env!("CARGO_BIN_EXE_old_boiler")).output().unwrap();
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    let text = String::from_utf8(out.stdout).unwrap();
    for (name, plate) in [("course 1, fire end", 0.362), ("course 2", 0.391), ("course 3, smoke end", 0.384)] {
        let line = text.lines().find(|l| l.contains(&format!("course      {name} "))).unwrap();
        assert!(line.ends_with(&by_hand(plate)), "{line}: {}", by_hand(plate));
    }
    // The girth tears: (2 - 0.9375) 0.362 50 000 = 19 231 lbf to 2 in. Its load is p D/4 to an inch. A rivet of iron
    // would hold pi/4 0.9375^2 38 000 = 26 231 lbf.
    let girth = 4.0 * (19_231.0 / 2.0) / (44.0 * 5.0);
    let line = text.lines().find(|l| l.starts_with("girth seam")).unwrap();
    let said: f64 = line.split_whitespace().rev().nth(1).unwrap().parse().unwrap();
    assert!((said - girth).abs() < 0.2, "{line}: {girth}");
    assert!(text.contains(&format!("The boiler: {}, set by course 1, fire end.", by_hand(0.362))), "{text}");
    assert!(text.contains(&format!("by the rule book: {:.1} psi", 1.5 * 117.08)), "{text}");
    for part in ["(not checked here)", "Design aid only", "(assumed)", "(tabulated)", "invented"] {
        assert!(text.contains(part), "{part}");
    }
}

/// A reader that goes away early, as `| head -1` does, is no failure.
#[test]
fn a_reader_may_leave_early() {
    use std::process::Stdio;
    for program in [env!("CARGO_BIN_EXE_old_boiler"), env!("CARGO_BIN_EXE_working")] {
        let mut run = Command::new(program).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        // The pipe is closed before the program has worked anything out.
        drop(run.stdout.take());
        let out = run.wait_with_output().unwrap();
        assert!(out.status.success() && out.stderr.is_empty(), "{}", String::from_utf8_lossy(&out.stderr));
    }
}
