//! Properties over all forms.

use seamwright::proportion::{pitch_greatest, pitch_least};

use super::*;

/// Any form that seams are made of.
fn forms() -> impl Strategy<Value = Form> {
    let wrap = |f: fn(u8) -> Form| move |rows: u8| f(rows);
    prop_oneof![
        (1_u8..=4).prop_map(wrap(|n| Form::lap(n).unwrap())),
        (1_u8..=4).prop_map(wrap(|n| Form::lap(n).unwrap().chain())),
        (1_u8..=3).prop_map(wrap(|n| Form::single_strap(n).unwrap())),
        (1_u8..=5).prop_map(wrap(|n| Form::double_strap(n).unwrap())),
        (2_u8..=5).prop_map(wrap(|n| Form::double_strap(n).unwrap().omit_alternate().unwrap())),
        (3_u8..=4).prop_map(wrap(|n| Form::lap(n).unwrap().omit_alternate().unwrap())),
        (2_u8..=5).prop_map(wrap(|n| Form::unequal_straps(n).unwrap())),
        (2_u8..=5).prop_map(wrap(|n| Form::unequal_straps(n).unwrap().chain())),
    ]
}

/// A joint of a form: hole `d`, pitch of the densest row in diameters.
fn joint_of(form: Form, d: f64, pitch: f64, t: f64) -> Joint {
    let p = pitch * d * f64::from(form.densest_rivets());
    let mut spec = JointSpec::new(form, MM(p), MM(t), MM(d)).rivet(MM(0.95 * d)).margin(MM(1.5 * d));
    for gap in 1..form.row_count() {
        spec = spec.back_pitch(gap, MM(2.0 * d + 3.0 * gap as f64));
    }
    let spec = match form.kind() {
        JointKind::Lap => spec.other_plate(MM(0.8 * t)),
        JointKind::SingleStrap => spec.strap(MM(1.1 * t)),
        JointKind::DoubleStrap => spec.straps(MM(0.8 * t), MM(0.6 * t)),
    };
    spec.build().unwrap()
}

/// A run as long as so many pitches of the joint.
fn run_of(joint: &Joint, closed: bool, strips: f64) -> Run {
    let length = strips * joint.strip().to_mm();
    if closed {
        girth(length / PI, Measured::Circle, Face::Inside)
    } else {
        let d = joint.rows()[0].hole().to_mm();
        straight(length + 3.5 * d, 1.5 * d, 2.0 * d)
    }
}

proptest! {
    #[test]
    fn the_pitch_keeps_floor_and_cap(form in forms(), d in 8.0..40.0_f64, pitch in 2.0..8.0_f64, t in 4.0..40.0_f64,
        closed: bool, strips in 1.2..80.0_f64, book in 0..seamwright::rules::BOOKS.len()) {
        let joint = joint_of(form, d, pitch, t);
        // Rings too small for their plates are refused; that is tested elsewhere.
        let closed = closed && strips * joint.strip().to_mm() / PI > 4.0 * t + 20.0;
        let run = run_of(&joint, closed, strips);
        let rules = seamwright::rules::BOOKS[book].rules;
        let materials = steel();
        match shop_sheet(&joint, &materials, &rules, &order(run)) {
            Ok(found) => {
                let p = found.joint.pitch().to_mm();
                prop_assert!(p >= found.pitch.least * (1.0 - 1e-9));
                if let Limit::At(most, _) = found.pitch.greatest {
                    prop_assert!(p <= most * (1.0 + 1e-9));
                }
                let k = f64::from(found.pitch.taken.strips);
                prop_assert!(close(k * found.joint.strip().to_mm(), found.along.run.unwrap()));
                // One of the two neighbours of the pitch asked for.
                prop_assert!((k - found.pitch.exact).abs() < 1.0 + 1e-6);
            }
            Err(error) => {
                prop_assert_eq!(error.kind, ErrorKind::NoAdmissiblePitch, "{}", error);
                // The pitch it names passes the limit it names, and no neighbour is admissible.
                let low = error.entry == Entry::PITCH_LEAST.no();
                let (short, long) = (error.value < error.limit, error.value > error.limit);
                prop_assert!((low && short) || (!low && long));
                let counts = if rules.get(Entry::DISTANCE_DIAMETER) < 0.5 { d } else { 0.95 * d };
                let (least, _) = pitch_least(Plain, &rules, &form, counts);
                let thinner = if form.kind() == JointKind::Lap { 0.8 * t } else { t };
                let most = match pitch_greatest(Plain, &rules, &form, thinner) {
                    Limit::At(most, _) => most,
                    _ => f64::INFINITY,
                };
                for k in [strips.floor(), strips.ceil()] {
                    let p = strips * joint.pitch().to_mm() / k;
                    prop_assert!(p < least * (1.0 + 1e-7) || p > most * (1.0 - 1e-7), "{} in {}..{}", p, least, most);
                }
            }
        }
    }

    #[test]
    fn spacings_add_up_and_all_holes_are_inside(form in forms(), d in 8.0..40.0_f64, pitch in 2.6..8.0_f64,
        closed: bool, strips in 2.0..40.0_f64) {
        let joint = joint_of(form, d, pitch, 12.0);
        let closed = closed && strips * joint.strip().to_mm() / PI > 100.0;
        let run = run_of(&joint, closed, strips);
        let found = shop_sheet(&joint, &steel(), &silent(), &order(run)).unwrap();
        let length = found.along.run.unwrap();
        let seam = found.along.seam;
        let k = found.pitch.taken.strips;
        let mut counted = 0_u32;
        let sides: &[Side] = if form.kind() == JointKind::Lap { &[Side::Lap] } else { &[Side::Left, Side::Right] };
        let (width, _) = joint.widths().unwrap();
        for &side in sides {
            for number in 1..=form.row_count() {
                let holes = row(&found, side, number as u8);
                let x = xs(&holes);
                counted += x.len() as u32;
                let n = u32::from(form.row(number).rivets);
                let spacing = found.joint.strip().to_mm() / f64::from(n);
                for pair in x.windows(2) {
                    prop_assert!((pair[1] - pair[0] - spacing).abs() < 1e-6);
                }
                // Spacings, with the ends that a row leaves, add up to the run.
                let start = if closed { 0.0 } else { 1.5 * d };
                let (before, after) = (x[0] - start, start + length - x[x.len() - 1]);
                let sum: f64 = x.windows(2).map(|p| p[1] - p[0]).sum();
                prop_assert!(close(sum + before + after, length));
                prop_assert!(before > -1e-6 && after > -1e-6);
                if closed {
                    prop_assert_eq!(x.len() as u32, n * k);
                    prop_assert!((before + after - spacing).abs() < 1e-6);
                } else {
                    let closing = u32::from(before < 1e-6);
                    prop_assert_eq!(x.len() as u32, n * k + closing);
                    prop_assert!(x[0] > 0.5 * d && x[x.len() - 1] < seam - 0.5 * d);
                }
                let reach = if side == Side::Lap { width.to_mm() } else { 0.5 * width.to_mm() };
                prop_assert!(holes.iter().all(|h| h.y.to_mm().abs() > 0.5 * d && h.y.to_mm().abs() < reach - 0.5 * d));
                prop_assert!(holes.iter().all(|h| (h.y.to_mm() < 0.0) == (side == Side::Right)));
            }
        }
        prop_assert_eq!(counted, found.layout().total());
        prop_assert_eq!(counted, found.rivet_count());
        prop_assert_eq!(counted, found.rivets().iter().map(|line| line.count).sum::<u32>());
        prop_assert_eq!(counted, found.to_order().map(|(_, _, n)| n).sum::<u32>());
    }

    #[test]
    fn masses_are_those_of_the_parts(form in forms(), d in 8.0..40.0_f64, strips in 2.0..40.0_f64) {
        let joint = joint_of(form, d, 3.0, 12.0);
        let found = shop_sheet(&joint, &steel(), &silent(), &order(run_of(&joint, false, strips))).unwrap();
        let m = found.masses;
        prop_assert!(close(m.total, m.rivets + m.straps + m.overlap - m.holes));
        prop_assert!(close(m.per_metre * found.along.seam / 1000.0, m.total));
        prop_assert!(m.rivets > 0.0 && m.holes > 0.0);
        prop_assert_eq!(m.straps == 0.0, form.kind() == JointKind::Lap);
        prop_assert_eq!(m.overlap == 0.0, form.kind() != JointKind::Lap);
        let reach = found.joint.widths().unwrap();
        let wide = found.cuts.wide.or(found.cuts.overlap).unwrap();
        prop_assert!(close(wide.width, reach.0.to_mm()));
        prop_assert_eq!(found.cuts.narrow.map(|c| (c.width * 1e6).round()), reach.1.map(|w| (w.to_mm() * 1e6).round()));
        for line in found.rivets() {
            prop_assert!(line.length > line.grip && close(line.length, line.grip + line.allowance));
        }
    }
}
