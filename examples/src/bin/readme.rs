//! The example of the README: this file and the block there are the same, byte for byte.

use seamwright::check::check;
use seamwright::joint::{Form, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::{Length, Stress};
use seamwright::rules::METRIC;
use seamwright::sizing::{Brief, size};

fn main() -> Result<(), seamwright::Error> {
    // A double-riveted lap of 13 mm plate; permissible stresses of 80, 60 and 120 MPa (Khurmi & Gupta, Example 9.4).
    let steel = Materials::new(Stress::mpa(80.0), Stress::mpa(60.0)).bearing(Stress::mpa(120.0));

    // Size it: hole, rivet and pitch by the rule book.
    let design = size(&Brief::new(Form::lap(2)?, Length::mm(13.0), steel), &METRIC.rules)?;
    assert_eq!(design.hole.hole, 23.0);
    assert_eq!(design.hole.rivet, 22.0);
    assert_eq!(design.joint.pitch().to_mm(), 70.0); // 70.94 by the balance, rounded down

    // Check the joint as the book has it, with the pitch rounded up to 71 mm.
    let spec = JointSpec::new(Form::lap(2)?, Length::mm(71.0), Length::mm(13.0), Length::mm(23.0));
    let found = check(&spec.build()?, &steel, &METRIC.rules)?;
    assert!((found.efficiency - 0.675).abs() < 0.000_5); // printed: 67.5 %
    assert!((found.tear_outer - 49_920.0).abs() < 1e-6); // printed: 49 920 N
    println!("efficiency {:.1} %, next mode {:.3} times as strong", 100.0 * found.efficiency, found.runner_up_ratio());
    Ok(())
}
