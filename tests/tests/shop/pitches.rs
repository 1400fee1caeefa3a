//! Whole numbers of pitches in a run.

use super::*;

/// Khurmi & Gupta, Example 9.10: girth seam of 1600 mm inside diameter, plate 28, hole 34.5, double-riveted lap. The book
/// takes 45 rivets in a row and a pitch of 140 mm, which do not fit round 1628 mm: pi*1628 = 5114.5, over 140 is 36.5.
#[test]
fn khurmi_gupta_9_10_girth_does_not_fit() {
    let run = girth(1600.0, Measured::InsidePlate, Face::Outside);
    let at = |pitch: f64| {
        let spec = JointSpec::new(Form::lap(2).unwrap(), MM(pitch), MM(28.0), MM(34.5)).rivet(MM(33.0));
        spec.margin(MM(52.0)).back_pitch(1, MM(70.0)).build().unwrap()
    };
    // With the book's pitch the whole number is 37 (138.2) and not 45.
    let found = sheet(&at(140.0), &silent(), run);
    assert!(close(found.along.circle.unwrap(), 1628.0) && close(found.along.seam, PI * 1628.0));
    assert_eq!((found.pitch.taken.strips, found.rivet_count()), (37, 74));
    assert!(close(found.joint.pitch().to_mm(), PI * 1628.0 / 37.0) && found.joint.pitch().to_mm() < 139.0);
    assert_eq!(found.pitch.fitted, Fitted::Nearer);
    // The cap of the metric book, 2.62*28 + 41.28 = 114.64, refuses both neighbours of 140.
    let error = shop_sheet(&at(140.0), &steel(), &METRIC.rules, &order(run)).unwrap_err();
    assert_eq!((error.kind, error.field), (ErrorKind::NoAdmissiblePitch, Field::Pitch));
    assert!(close(error.limit, 114.64) && error.entry.is_some());
    // The pitch that 45 rivets in a row ask for is the 113.7 mm of the geometry.
    let found = sheet(&at(113.7), &METRIC.rules, run);
    assert_eq!((found.pitch.taken.strips, found.rivet_count()), (45, 90));
    assert!((found.joint.pitch().to_mm() - 113.6558).abs() < 5e-5);
}

#[test]
fn the_neighbour_taken_keeps_the_limits() {
    // Run 1000, pitch 71: 14.08 pitches, 14 of 71.43 or 15 of 66.67.
    let run = straight(1080.0, 40.0, 40.0);
    let with = |least: f64, most: f64| {
        let rules = silent().with(Entry::PITCH_LEAST, least / 23.0).unwrap();
        shop_sheet(&lap(), &steel(), &rules.with(Entry::PITCH_MAX_LIMIT, most).unwrap(), &order(run))
    };
    let taken = |least, most| with(least, most).map(|s| (s.pitch.taken.strips, s.pitch.fitted)).map_err(|e| e.kind);
    assert_eq!(taken(46.0, 200.0), Ok((14, Fitted::Nearer)));
    assert_eq!(taken(46.0, 1000.0 / 14.0), Ok((14, Fitted::Nearer))); // exactly at the cap
    assert_eq!(taken(46.0, 71.42), Ok((15, Fitted::Cap)));
    assert_eq!(taken(70.0, 200.0), Ok((14, Fitted::Floor)));
    assert_eq!(taken(1000.0 / 14.0, 200.0), Ok((14, Fitted::Floor))); // exactly at the floor
    assert_eq!(taken(67.0, 71.4), Err(ErrorKind::NoAdmissiblePitch));
    assert_eq!(taken(46.0, 66.0), Err(ErrorKind::NoAdmissiblePitch));
    assert_eq!(taken(72.0, 200.0), Err(ErrorKind::NoAdmissiblePitch));
    let error = with(46.0, 66.0).unwrap_err();
    assert_eq!((error.entry, error.other), (Entry::PITCH_MAX_LIMIT.no(), Entry::PITCH_LEAST.no()));
    let error = with(72.0, 200.0).unwrap_err();
    assert_eq!((error.entry, error.other), (Entry::PITCH_LEAST.no(), Entry::PITCH_MAX_LIMIT.no()));
}

#[test]
fn a_pitch_that_divides_the_run_stays() {
    let found = sheet(&lap(), &silent(), straight(710.0 + 80.0, 40.0, 40.0));
    assert_eq!((found.pitch.taken.strips, found.pitch.fitted), (10, Fitted::Whole));
    assert_eq!(found.joint, lap());
    // A run shorter than the pitch has one narrower pitch.
    let found = sheet(&lap(), &silent(), straight(60.0 + 80.0, 40.0, 40.0));
    assert_eq!((found.pitch.taken.strips, found.pitch.fitted), (1, Fitted::Floor));
    assert!(found.pitch.fewer.is_none() && found.joint.pitch().to_mm() == 60.0);
}

#[test]
fn the_joint_is_checked_again_with_the_new_pitch() {
    let found = sheet(&lap(), &INDIAN.rules, straight(3000.0, 40.0, 40.0));
    assert!(found.joint.pitch().to_mm() != 71.0);
    let again = check(&found.joint, &steel(), &INDIAN.rules).unwrap();
    assert_eq!(again.efficiency, found.analysis.efficiency);
    let seen = |f: &seamwright::check::Findings| format!("{f:?}"); // some figures are not numbers
    assert_eq!(seen(&again.findings), seen(&found.analysis.findings));
    assert!(matches!(found.pitch.greatest, Limit::At(..)));
    let open = again.findings.iter().any(|f| f.verdict == Verdict::Open);
    assert_eq!(found.holds(Note::RulesOpen), open);
}
