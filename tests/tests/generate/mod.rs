//! Joints, stresses and rule books for property tests, generated from the library's own table of bounds.
#![allow(dead_code, reason = "each test file uses its own part")]

pub mod columns;
pub mod pairs;
pub mod wild;

use proptest::prelude::*;
use proptest::sample::select;
use seamwright::bounds::Field;
use seamwright::joint::{Arrangement, Form, Joint, JointKind, JointSpec};
use seamwright::materials::{Materials, PlateStress};
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{BOOKS, ENTRIES, Entry, EntryKind, METRIC, RuleBook, Rules, info};
use seamwright::sizing::Brief;

/// 512 cases, or as many as `PROPTEST_CASES` says.
pub fn config() -> ProptestConfig {
    let stated = std::env::var_os("PROPTEST_CASES").is_some();
    let default = ProptestConfig { failure_persistence: None, max_global_rejects: 1 << 20, ..Default::default() };
    if stated { default } else { ProptestConfig { cases: 512, ..default } }
}

/// Whether two figures agree to a relative tolerance.
pub fn near(a: f64, b: f64, tolerance: f64) -> bool {
    a == b || (a - b).abs() <= tolerance * a.abs().max(b.abs())
}

/// One row as stated: rivets, planes, hole, rivet.
#[derive(Clone, Copy, Debug)]
pub struct StatedRow {
    pub rivets: u8,
    pub planes: u8,
    pub hole: f64,
    pub rivet: f64,
}

/// A joint and its stresses in plain numbers, mm and MPa, so that tests can change one and build again.
#[derive(Clone, Debug)]
pub struct Stated {
    pub form: Form,
    pub strip: f64,
    pub plate: f64,
    /// Plate B of a lap, single or wide strap.
    pub other: f64,
    /// Narrow strap; of no meaning without one.
    pub narrow: f64,
    pub rows: Vec<StatedRow>,
    pub back: Vec<f64>,
    pub margin: f64,
    pub tension: [f64; 2],
    pub shear: f64,
    pub bearing: [Option<f64>; 2],
    pub shear_out: Option<f64>,
}

impl Stated {
    pub fn spec_in(&self, unit: impl Fn(f64) -> Length) -> JointSpec {
        let mm = unit;
        let mut spec = JointSpec::new(self.form, mm(self.strip), mm(self.plate), mm(10.0));
        for (row, number) in self.rows.iter().zip(1..) {
            spec = spec.row(number, mm(row.hole), Some(mm(row.rivet)));
        }
        for (gap, number) in self.back.iter().zip(1..) {
            spec = spec.back_pitch(number, mm(*gap));
        }
        if self.margin > 0.0 {
            spec = spec.margin(mm(self.margin));
        }
        match self.form.kind() {
            JointKind::Lap => spec.other_plate(mm(self.other)),
            JointKind::SingleStrap => spec.strap(mm(self.other)),
            JointKind::DoubleStrap => spec.straps(mm(self.other), mm(self.narrow)),
        }
    }

    pub fn build(&self) -> Result<Joint, seamwright::Error> {
        self.spec_in(Length::mm).build()
    }

    /// The joint, where it is known to be sound.
    pub fn joint(&self) -> Joint {
        self.build().unwrap_or_else(|e| panic!("{e}: {self:?}"))
    }

    pub fn materials_in(&self, unit: impl Fn(f64) -> Stress) -> Materials {
        let of = |i: usize| PlateStress {
            tension: unit(self.tension[i]),
            bearing: self.bearing[i].map(&unit),
            shear_out: self.shear_out.map(&unit),
        };
        Materials { plate: of(0), other: of(1), rivet_shear: unit(self.shear) }
    }

    pub fn materials(&self) -> Materials {
        self.materials_in(Stress::mpa)
    }

    /// All lengths times `k`.
    pub fn scaled(&self, k: f64) -> Stated {
        let mut s = self.clone();
        for x in [&mut s.strip, &mut s.plate, &mut s.other, &mut s.narrow, &mut s.margin] {
            *x *= k;
        }
        for row in &mut s.rows {
            row.hole *= k;
            row.rivet *= k;
        }
        for gap in &mut s.back {
            *gap *= k;
        }
        s
    }
}

/// The forms that have a name of their own, alternate rivets omitted where that can be.
pub fn named_forms() -> Vec<Form> {
    let mut forms = Vec::new();
    for n in 0..6 {
        forms.extend([Form::lap(n), Form::single_strap(n), Form::double_strap(n), Form::unequal_straps(n)]);
    }
    let mut forms: Vec<Form> = forms.into_iter().flatten().collect();
    let omitted: Vec<Form> = forms.iter().filter_map(|f| f.omit_alternate().ok()).collect();
    forms.extend(omitted);
    let chained: Vec<Form> = forms.iter().map(|f| f.chain()).collect();
    forms.extend(chained);
    forms
}

/// Any row list: 1 to 8 rows of up to `most` rivets.
pub fn listed_form(most: u8) -> impl Strategy<Value = Form> {
    let kinds = select(vec![JointKind::Lap, JointKind::SingleStrap, JointKind::DoubleStrap]);
    let arrangements = select(vec![Arrangement::Chain, Arrangement::Zigzag]);
    (kinds, arrangements, prop::collection::vec(1..=most, 1..=8), 0_usize..8).prop_filter_map(
        "a form",
        |(kind, arrangement, rivets, single)| {
            let double = |i: usize| kind == JointKind::DoubleStrap && (i >= single || i + 1 == rivets.len());
            let rows: Vec<_> = rivets.iter().enumerate().map(|(i, n)| (*n, 1 + u8::from(double(i)))).collect();
            Form::from_rows(kind, arrangement, &rows).ok()
        },
    )
}

/// Named forms, lozenges, and any list.
pub fn form(most: u8) -> impl Strategy<Value = Form> {
    let lozenge = Form::from_rows(JointKind::DoubleStrap, Arrangement::Zigzag, &[(1, 2), (2, 2), (3, 2)]);
    let lap_lozenge = Form::from_rows(JointKind::Lap, Arrangement::Zigzag, &[(1, 1), (2, 1), (3, 1), (2, 1), (1, 1)]);
    let mut known = named_forms();
    known.extend(lozenge);
    known.extend(lap_lozenge);
    prop_oneof![select(known), listed_form(most)]
}

/// How far from usual the figures may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reach {
    /// A shop's figures.
    Usual,
    /// The whole of the declared bounds.
    Bounds,
}

/// A share `u` of the way from `lo` to `hi`, by ratio.
fn between(lo: f64, hi: f64, u: f64) -> f64 {
    (lo * (hi / lo).powf(u)).clamp(lo, hi)
}

fn ranged(reach: Reach, field: Field, usual: (f64, f64), u: f64) -> f64 {
    let bound = field.bound();
    match reach {
        Reach::Usual => between(usual.0, usual.1, u),
        Reach::Bounds => between(bound.lo, bound.hi, u),
    }
}

/// Any sound joint of any form with its stresses. The strip has room for all holes with
/// `allowance` mm more on each.
pub fn stated(reach: Reach, most: u8, allowance: f64) -> impl Strategy<Value = Stated> {
    let unit = || 0.0..1.0_f64;
    let known = || prop::option::weighted(0.85, unit());
    (
        form(most),
        prop::array::uniform8((unit(), unit())),
        prop::array::uniform8(unit()),
        prop::array::uniform7(unit()),
        [known(), known()],
        [any::<bool>(), any::<bool>(), any::<bool>()],
    )
        .prop_filter_map(
            "within the table of bounds",
            move |(form, rows, u, gaps, bearing, [alike, same, placed])| {
                let hole_of = |i: usize| ranged(reach, Field::Hole, (8.0, 45.0), rows[if alike { 0 } else { i }].0);
                let rivet_share = |i: usize| 0.85 + 0.15 * rows[if alike { 0 } else { i }].1;
                let row = |(i, f): (usize, seamwright::joint::RowForm)| {
                    let hole = hole_of(i);
                    let rivet = (hole * rivet_share(i)).max(1.0);
                    StatedRow { rivets: f.rivets, planes: f.planes, hole, rivet }
                };
                let rows: Vec<StatedRow> = form.rows().enumerate().map(row).collect();
                let full = rows.iter().map(|r| f64::from(r.rivets) * (r.hole + allowance)).fold(0.0, f64::max);
                let largest = rows.iter().map(|r| r.hole).fold(0.0, f64::max);
                let tension = |u| ranged(reach, Field::Tension, (40.0, 450.0), u);
                let crush = |u| ranged(reach, Field::Bearing, (60.0, 900.0), u);
                let tensions = [tension(u[3]), tension(u[4])];
                let bearings = bearing.map(|b| b.map(crush));
                // Zig-zag rows may be nearer than a hole is wide; too near is left to `build`.
                let nearest = if form.arrangement() == Arrangement::Chain { 1.02 } else { 0.6 };
                let thickness = |u| ranged(reach, Field::Plate, (3.0, 40.0), u);
                let stated = Stated {
                    form,
                    strip: full * between(1.02, 6.0, u[0]),
                    plate: thickness(u[1]),
                    other: thickness(u[2]),
                    narrow: thickness(u[6]),
                    back: gaps.iter().take(rows.len() - 1).map(|g| largest * between(nearest, 5.0, *g)).collect(),
                    margin: if placed { largest * between(0.6, 3.0, u[7]) } else { 0.0 },
                    rows,
                    tension: if same { [tensions[0]; 2] } else { tensions },
                    shear: ranged(reach, Field::Shear, (30.0, 350.0), u[5]),
                    bearing: if same { [bearings[0]; 2] } else { bearings },
                    shear_out: None,
                };
                let stated = if placed { stated } else { Stated { back: Vec::new(), ..stated } };
                stated.build().is_ok().then_some(stated)
            },
        )
}

/// Ways of counting: diameters, allowance, double shear, the lone plane.
#[derive(Clone, Copy, Debug)]
pub struct Counting {
    pub tear: bool,
    pub shear: bool,
    pub bearing: bool,
    pub allowance: f64,
    pub double: f64,
    pub lone: bool,
}

impl Counting {
    /// The metric book, counting this way and without a need for bearing.
    pub fn rules(&self) -> Rules {
        let switch = |b: bool| f64::from(u8::from(b));
        let list = [
            (Entry::TEAR_DIAMETER, switch(self.tear)),
            (Entry::SHEAR_DIAMETER, switch(self.shear)),
            (Entry::BEARING_DIAMETER, switch(self.bearing)),
            (Entry::TEAR_ALLOWANCE, self.allowance),
            (Entry::DOUBLE_SHEAR, self.double),
            (Entry::LONE_PLANE, switch(self.lone)),
            (Entry::BEARING_CHECKED, 0.0),
        ];
        set(METRIC.rules, &list)
    }
}

pub fn counting(allowance: f64) -> impl Strategy<Value = Counting> {
    let factor = prop_oneof![Just(1.75), Just(1.875), Just(2.0), 1.0..=2.0];
    let allowance = prop_oneof![Just(0.0), 0.0..=allowance];
    (any::<[bool; 4]>(), allowance, factor).prop_map(|([tear, shear, bearing, lone], allowance, double)| Counting {
        tear,
        shear,
        bearing,
        allowance,
        double,
        lone,
    })
}

/// A book with entries changed, all of them within bounds.
pub fn set(rules: Rules, list: &[(Entry, f64)]) -> Rules {
    list.iter().fold(rules, |r, (e, v)| r.with(*e, *v).unwrap_or_else(|x| panic!("{x}")))
}

pub fn any_book() -> impl Strategy<Value = &'static RuleBook<'static>> {
    select(BOOKS.to_vec())
}

/// A built-in book (or the silent one) with any entries set to any values within their bounds.
pub fn any_rules(most: usize) -> impl Strategy<Value = Rules> {
    let books: Vec<Rules> = BOOKS.iter().map(|b| b.rules).chain([Rules::SILENT]).collect();
    let share = prop_oneof![2 => 0.0..=1.0_f64, 1 => Just(0.0), 1 => Just(1.0), 1 => 0.0..=0.01_f64];
    (select(books), prop::collection::vec((0..ENTRIES, share), 0..=most)).prop_map(|(rules, changes)| {
        changes.into_iter().fold(rules, |rules, (n, share)| {
            let Some(entry) = Entry::all().nth(n) else { return rules };
            let row = info(entry);
            let value = row.lo + (row.hi - row.lo) * share;
            let value = if matches!(row.kind, EntryKind::Number(_)) { value } else { value.round() };
            rules.with(entry, value.clamp(row.lo, row.hi)).unwrap_or_else(|e| panic!("{e}"))
        })
    })
}

/// What a shop asks for: any form, usual plates and stresses, sometimes with hole or straps given.
pub fn brief(most: u8) -> impl Strategy<Value = Brief> {
    let unit = || 0.0..1.0_f64;
    (form(most), prop::array::uniform8(unit()), any::<[bool; 3]>()).prop_map(|(form, u, [hole, straps, other])| {
        let mm = |lo, hi, u| Length::mm(between(lo, hi, u));
        let materials =
            Materials::new(Stress::mpa(between(50.0, 450.0, u[1])), Stress::mpa(between(30.0, 350.0, u[2])))
                .bearing(Stress::mpa(between(60.0, 900.0, u[3])));
        let mut brief = Brief::new(form, mm(3.0, 45.0, u[0]), materials);
        if hole {
            brief = brief.hole(mm(8.0, 48.0, u[4]), None);
        }
        if straps && form.kind() != JointKind::Lap {
            let narrow = (form.kind() == JointKind::DoubleStrap).then(|| mm(3.0, 40.0, u[6]));
            brief = brief.straps(mm(3.0, 40.0, u[5]), narrow);
        }
        if other && form.kind() == JointKind::Lap {
            brief = brief.other_plate(mm(3.0, 45.0, u[7]));
        }
        brief
    })
}
