//! Groups of rivets for property tests.

use proptest::prelude::*;
use seamwright::group::{Group, GroupCheck, GroupLoad, GroupStress, check_group};
use seamwright::quantities::{Force, Length, Moment, Stress};
use seamwright::rules::METRIC;

pub fn mm(x: f64) -> Length {
    Length::mm(x)
}

/// A vector turned by an angle.
pub fn spun([x, y]: [f64; 2], angle: f64) -> [f64; 2] {
    let (s, c) = angle.sin_cos();
    [c * x - s * y, s * x + c * y]
}

/// A group in plain numbers: each rivet with place and hole.
#[derive(Clone, Debug)]
pub struct Case {
    pub rivets: Vec<[f64; 3]>,
    pub force: [f64; 2],
    pub at: [f64; 2],
    pub couple: f64,
    pub plate: Option<f64>,
    pub bearing: Option<f64>,
}

/// Rivets on a grid of 90 mm, each up to 20 mm beside its place; alike or of several sizes.
pub fn case() -> impl Strategy<Value = Case> {
    let places = prop::sample::subsequence((0..48).collect::<Vec<i32>>(), 2..=32);
    let rivets = places.prop_flat_map(|at| {
        let n = at.len();
        let off = prop::collection::vec([-20.0..20.0_f64, -20.0..20.0, 8.0..26.0], n);
        (Just(at), off, any::<[bool; 2]>())
    });
    let rivets = rivets.prop_map(|(at, off, [straight, alike])| {
        let hole = off[0][2];
        let of = |(at, [x, y, d]): (&i32, &[f64; 3])| {
            let (x, y) = if straight { (0.0, 0.0) } else { (*x, *y) };
            [90.0 * f64::from(at % 8) + x, 90.0 * f64::from(at / 8) + y, if alike { hole } else { *d }]
        };
        at.iter().zip(&off).map(of).collect::<Vec<_>>()
    });
    let load = (
        prop_oneof![Just([0.0, -4e4]), [-9e4..9e4_f64, -9e4..9e4], Just([0.0, 0.0])],
        [-900.0..1500.0_f64, -900.0..900.0],
        prop_oneof![Just(0.0), -9e6..9e6_f64],
    );
    let plies = (prop::option::of(3.0..30.0_f64), prop::option::of(80.0..200.0_f64));
    (rivets, load, plies).prop_map(|(rivets, (force, at, couple), (plate, bearing))| {
        let couple = if force == [0.0, 0.0] && couple == 0.0 { 5e6 } else { couple };
        Case { rivets, force, at, couple, plate, bearing }
    })
}

impl Case {
    pub fn load(&self) -> GroupLoad {
        let [x, y] = self.force;
        let couple = Moment::n_mm(self.couple);
        if self.force == [0.0, 0.0] {
            return GroupLoad::couple(couple);
        }
        GroupLoad::force(Force::n(x), Force::n(y), mm(self.at[0]), mm(self.at[1])).and_couple(couple)
    }

    pub fn stress(&self) -> GroupStress {
        let stress = GroupStress::new(Stress::mpa(60.0));
        self.bearing.map_or(stress, |b| stress.bearing(Stress::mpa(b)))
    }

    pub fn bare(&self) -> Group {
        let places: Vec<_> = self.rivets.iter().map(|r| (mm(r[0]), mm(r[1]))).collect();
        let group = Group::at(&places).unwrap();
        self.plate.map_or(group, |t| group.plate(mm(t)))
    }

    pub fn group(&self) -> Group {
        let holes = self.rivets.iter().zip(1..);
        holes.fold(self.bare(), |group, (r, number)| group.one(number, mm(r[2]), None).unwrap())
    }

    pub fn unsized_group(&self) -> (Group, GroupLoad, GroupStress) {
        (self.bare(), self.load(), self.stress())
    }

    pub fn check(&self) -> GroupCheck {
        check_group(&self.group(), &self.load(), &self.stress(), &METRIC.rules).unwrap()
    }

    fn with(&self, place: impl Fn([f64; 2]) -> [f64; 2], force: impl Fn([f64; 2]) -> [f64; 2]) -> Case {
        let rivet = |r: &[f64; 3]| {
            let [x, y] = place([r[0], r[1]]);
            [x, y, r[2]]
        };
        Case {
            rivets: self.rivets.iter().map(rivet).collect(),
            force: force(self.force),
            at: place(self.at),
            ..self.clone()
        }
    }

    pub fn turned(&self, angle: f64) -> Case {
        self.with(|at| spun(at, angle), |f| spun(f, angle))
    }

    pub fn moved(&self, by: [f64; 2]) -> Case {
        self.with(|[x, y]| [x + by[0], y + by[1]], |f| f)
    }

    /// Places and arms `k` times as wide, the load so many times as great.
    pub fn scaled(&self, k: f64, load: f64) -> Case {
        let wide = self.with(|[x, y]| [k * x, k * y], |[x, y]| [load * x, load * y]);
        Case { couple: k * load * self.couple, ..wide }
    }
}
