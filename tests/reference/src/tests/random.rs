//! Two unlike algorithms on random joints.

use super::near;
use crate::{
    Convention, Diameter, Form, Joint, Row, Stresses, balanced_pitches, cuts, min_cut, shear_all, tearing_outer,
    weakest,
};

/// Knuth's MMIX generator.
struct Random(u64);

impl Random {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.next()
    }

    fn whole(&mut self, low: u32, high: u32) -> u32 {
        low + (self.next() * f64::from(high - low + 1)) as u32
    }

    fn diameter(&mut self) -> Diameter {
        if self.next() < 0.5 { Diameter::Hole } else { Diameter::Rivet }
    }

    fn stress(&mut self, low: f64, high: f64) -> Option<f64> {
        (self.next() < 0.9).then(|| self.between(low, high))
    }
}

fn random_joint(r: &mut Random) -> (Joint, Stresses, Convention) {
    let kind = r.whole(0, 2);
    let form = match kind {
        0 => Form::Lap { plates: [r.between(5.0, 30.0), r.between(5.0, 30.0)] },
        1 => Form::Butt { plate: r.between(5.0, 30.0), wide: r.between(3.0, 30.0), narrow: None },
        _ => Form::Butt { plate: r.between(5.0, 30.0), wide: r.between(3.0, 25.0), narrow: Some(r.between(3.0, 25.0)) },
    };
    let mut rows = Vec::new();
    let mut widest: f64 = 0.0;
    for _ in 0..r.whole(1, 4) {
        let rivet = r.between(10.0, 35.0);
        let row = Row {
            rivets: r.whole(1, 4),
            hole: rivet + r.between(0.0, 2.0),
            rivet,
            planes: if kind == 2 { r.whole(1, 2) } else { 1 },
        };
        widest = widest.max(f64::from(row.rivets) * (row.hole + 3.0));
        rows.push(row);
    }
    let joint = Joint { form, strip: widest * r.between(1.02, 4.0), rows };
    let stresses = Stresses {
        plate_tension: r.between(40.0, 150.0),
        other_tension: r.between(40.0, 150.0),
        shear: r.between(30.0, 120.0),
        plate_bearing: r.stress(50.0, 300.0),
        other_bearing: r.stress(50.0, 300.0),
    };
    let double = r.between(1.0, 2.0);
    let convention = Convention {
        double,
        one_plane: double / 2.0,
        tear: r.diameter(),
        tear_allowance: r.between(0.0, 3.0),
        shear: r.diameter(),
        bearing: r.diameter(),
    };
    (joint, stresses, convention)
}

#[test]
fn the_flow_is_the_weakest_cut() {
    let mut r = Random(20_240_229);
    let mut combined = 0;
    for i in 0..6000 {
        let (joint, s, c) = random_joint(&mut r);
        let cut = weakest(&joint, &s, &c);
        let flow = min_cut(&joint, &s, &c);
        assert!((flow - cut).abs() <= 1e-9 * cut, "joint {i}: flow {flow}, cut {cut}: {joint:?} {s:?} {c:?}");
        let all = cuts(&joint, &s, &c);
        let least = all.iter().find(|k| k.strength == cut);
        let torn = least.map_or(0, |k| {
            usize::from(k.plate.is_some()) + usize::from(k.first.is_some()) + usize::from(k.second.is_some())
        });
        combined += usize::from(torn > 1);
    }
    // The sample is worth something only if several parts tear together often enough.
    assert!(combined > 100, "{combined}");
}

#[test]
fn the_number_of_cuts() {
    let mut r = Random(7);
    for _ in 0..200 {
        let (joint, s, c) = random_joint(&mut r);
        let n = joint.rows.len();
        let narrow = (0..n).filter(|&i| joint.is_double(i)).count();
        assert_eq!(cuts(&joint, &s, &c).len(), (n + 1) * (n + 1) * (narrow + 1));
    }
}

#[test]
fn balances_balance() {
    let mut r = Random(99);
    for _ in 0..2000 {
        let (mut joint, s, c) = random_joint(&mut r);
        let lap = matches!(joint.form, Form::Lap { .. });
        let [shear, weaker, modes] = balanced_pitches(&joint, &s, &c);
        assert!(weaker <= shear * (1.0 + 1e-12) && weaker <= modes * (1.0 + 1e-12));
        // At the first, the outer rows hold no less than all rivets in shear, and one of them just that.
        joint.strip = shear;
        let sheared = shear_all(&joint, &s, &c);
        near(tearing_outer(&joint, &s, &c), sheared, 1e-9 * sheared);
        // At the second, they hold just what all rivets do by their weaker fates.
        joint.strip = weaker;
        let all = cuts(&joint, &s, &c);
        let rivets = all[0].strength;
        assert!(all[0].plate.is_none() && all[0].first.is_none() && all[0].second.is_none());
        near(tearing_outer(&joint, &s, &c), rivets, 1e-9 * rivets);
        // At the third, so does the weakest tear of a main plate, at whatever row.
        joint.strip = modes;
        let mut weakest_tear = f64::INFINITY;
        for cut in cuts(&joint, &s, &c) {
            let plate_alone = cut.plate.is_some() && cut.first.is_none() && cut.second.is_none();
            let other_alone = lap && cut.plate.is_none() && cut.first.is_some();
            if plate_alone || other_alone {
                weakest_tear = weakest_tear.min(cut.strength);
            }
        }
        near(weakest_tear, rivets, 1e-9 * rivets);
    }
}
