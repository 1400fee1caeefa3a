//! The studies as their users meet them.
#![allow(missing_docs, reason = "tests")]
#![allow(clippy::unwrap_used, clippy::panic, reason = "tests may panic")]

use std::process::{Command, Output};

fn run(arguments: &str) -> Output {
    // Words, with those in quotation marks kept together.
    let words: Vec<String> = arguments
        .split('\'')
        .enumerate()
        .flat_map(|(at, part)| match at % 2 {
            1 => vec![part.to_string()],
            _ => part.split_whitespace().map(str::to_string).collect(),
        })
        .collect();
    Command::new(env!("CARGO_BIN_EXE_seamwright")).args(words).output().unwrap()
}

fn said(arguments: &str) -> String {
    let out = run(arguments);
    assert!(out.status.success(), "{arguments}: {}", String::from_utf8_lossy(&out.stderr));
    let text = String::from_utf8(out.stdout).unwrap();
    if !arguments.contains("--dialect") {
        for line in text.lines().filter(|line| !line.starts_with('|')) {
            assert!(line.chars().count() <= 80, "{line}");
        }
    }
    text
}

/// Khurmi and Gupta, Example 9.6: 31 900 N in double shear and 66.5 %, by 1.875.
const BUTT: &str = "--book indian --form double-strap --rows 1 --plate '10 mm' --pitch '60 mm' --hole '19 mm' \
                    --tension '80 MPa' --shear '60 MPa' --bearing '120 MPa' --set shear.double=2";

#[test]
fn stated_figures_find_their_convention() {
    let text = said(&format!("reconcile {BUTT} --figure 'Ps=31897 N' --figure 'J=66.5 %'"));
    assert!(text.contains("Reproduced with 1.875 for double shear."), "{text}");
    assert!(text.contains("Design aid only"));
    // Example 9.4 as printed: 2.62 times 13 and 41.28 are not 75.28.
    let lap = "--book metric --form lap --rows 2 --plate '13 mm' --pitch '71 mm' --hole '23 mm' --rivet '22 mm' \
               --tension '80 MPa' --shear '60 MPa' --bearing '120 MPa'";
    assert!(said(&format!("reconcile {lap} --figure 'pmax=75.28 mm'")).contains("Not reproduced"));
}

#[test]
fn a_figure_that_cannot_be_read_says_how_to_write_it() {
    for (figure, part) in [
        ("Ps", "has no value"),
        ("Xs=3 N", "names no quantity"),
        ("Ps=3 mm", "has a unit that does not go with it"),
        ("Ps=1,2,3 N", "cannot be read"),
    ] {
        let out = run(&format!("reconcile {BUTT} --figure '{figure}'"));
        let text = String::from_utf8_lossy(&out.stderr).into_owned();
        assert_eq!(out.status.code(), Some(2), "{text}");
        assert!(text.contains(part) && text.contains(figure), "{text}");
    }
    assert!(String::from_utf8_lossy(&run(&format!("reconcile {BUTT}")).stderr).contains("figure: is needed"));
}

/// Khurmi and Gupta, Example 9.2: tearing and crushing are equal at a hole of 20 mm, so half a millimetre less costs
/// 19.5 6 180/(50 6 120), that is 58.5 %.
#[test]
fn sensitivities_show_both_sides_and_the_worst_case() {
    let lap = "--book metric --form lap --rows 1 --plate '6 mm' --pitch '50 mm' --hole '20 mm' --tension '120 MPa' \
               --shear '90 MPa' --bearing '180 MPa'";
    let text = said(&format!("sensitivity {lap} --hole-tolerance '0.5 mm' --plate-tolerance '0.3 mm'"));
    assert!(text.contains("| hole diameter, row 1, mm | 20.0000 | 1.000 / -0.6667 |"), "{text}");
    assert!(text.contains("eta  60.00 % as stated, 58.50 % at worst: hole -0.50 mm."), "{text}");
    let out = run(&format!("sensitivity {lap} --hole-tolerance '30 mm'"));
    assert_eq!(out.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&out.stderr).contains("tolerance"));
}

#[test]
fn a_number_gives_the_same_problems_again() {
    let family = "--book metric --form lap --rows 2 --effect tearing --count 3";
    let class = said(&format!("problems {family} --number 11"));
    assert_eq!(class, said(&format!("problems {family} --number 11")));
    assert_ne!(class, said(&format!("problems {family} --number 14")));
    assert!(class.contains("Problem 3") && !class.contains("answer"));
    let teacher = said(&format!("problems {family} --number 11 --answers"));
    assert!(teacher.contains("Drawn from number 13."));
    assert!(said(&format!("problems {family} --solution")).contains("Working: check"));
    for (dialect, part) in
        [("markdown", "## Problem 1"), ("latex", "\\subsection*{Problem 1}"), ("html", "<h2>Problem 1</h2>")]
    {
        assert!(said(&format!("problems {family} --dialect {dialect}")).contains(part), "{dialect}");
    }
    let none = run("problems --book metric --form lap --rows 2 --effect combined");
    assert_eq!(none.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&none.stderr).contains("no problem in which the wanted effect decides"));
}
