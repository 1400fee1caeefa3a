//! The same bits, whatever the optimiser does: debug and release, inlined and not.

mod generate;

use std::cell::Cell;
use std::fmt::Write as _;
use std::fs;
use std::ops::{Add, Div, Mul, Sub};
use std::path::{Path, PathBuf};

use generate::{Reach, any_book, brief, config, counting, set, stated};
use proptest::prelude::*;
use seamwright::check::{Analysis, check, check_with};
use seamwright::given::Given;
use seamwright::joint::JointKind;
use seamwright::materials::Materials;
use seamwright::modes::{Lens, Strengths, letters};
use seamwright::quantities::{Length, Stress};
use seamwright::rules::{BOOKS, Entry, Rules};
use seamwright::sizing::{Brief, size, size_with};
use seamwright::step::{Ctx, Name, Num, Plain, Why};

thread_local! {
    static OPERATIONS: Cell<u64> = const { Cell::new(0) };
}

/// A plain number whose operations the optimiser can neither see nor fuse, and which counts them.
#[derive(Clone, Copy, Debug)]
struct Opaque(f64);

fn counted(x: f64) -> Opaque {
    OPERATIONS.set(OPERATIONS.get() + 1);
    Opaque(std::hint::black_box(x))
}

macro_rules! operation {
    ($($name:ident $method:ident $sign:tt;)*) => { $(
        impl $name for Opaque {
            type Output = Opaque;
            #[inline(never)]
            fn $method(self, other: Opaque) -> Opaque { counted(self.0 $sign other.0) }
        }
    )* };
}
operation! { Add add +; Sub sub -; Mul mul *; Div div /; }

impl Num for Opaque {
    #[inline(never)]
    fn lit(c: f64) -> Opaque {
        Opaque(std::hint::black_box(c))
    }
    #[inline(never)]
    fn value(self) -> f64 {
        self.0
    }
    #[inline(never)]
    fn sqrt(self) -> Opaque {
        counted(Num::sqrt(self.0))
    }
}

#[derive(Clone, Copy)]
struct Count;

impl Ctx for Count {
    type N = Opaque;
    #[inline(never)]
    fn leaf(self, _: Name, _: Why, x: f64) -> Opaque {
        Opaque(x)
    }
    #[inline(never)]
    fn close(self, _: Name, _: Why, e: Opaque) -> Opaque {
        e
    }
    #[inline(never)]
    fn choice(self, _: Name, _: Why, taken: Opaque, _: Opaque) -> Opaque {
        taken
    }
}

/// The bits of all figures of an analysis, and its findings in words.
fn bits<N: Num>(a: &Analysis<N>) -> (Vec<u64>, String) {
    let mut all = vec![a.solid, a.tear_outer, a.shear_all, a.governing.strength, a.runner_up.strength];
    all.extend([a.by_book.strength, a.efficiency, a.book_efficiency, a.credited]);
    all.extend(
        [a.percentages.plate, a.percentages.rivet].into_iter().chain(a.percentages.combined).chain(a.bearing_all),
    );
    let text = format!("{:?} {:?} {:?}", a.governing.cut, a.governing.fates, a.findings);
    (all.into_iter().map(|x| x.value().to_bits()).collect(), text)
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn a_check_has_the_same_bits_without_the_optimiser(s in stated(Reach::Bounds, 60, 10.0), c in counting(10.0),
                                                       book in any_book(), close in 0..3_u8) {
        let (joint, materials) = (s.joint(), s.materials());
        let of_book = set(book.rules, &[(Entry::BEARING_CHECKED, 0.0), (Entry::CLOSE_ROWS, f64::from(close))]);
        for rules in [c.rules(), of_book] {
            let plain = check(&joint, &materials, &rules).map_err(|e| TestCaseError::fail(e.to_string()))?;
            let before = OPERATIONS.get();
            let opaque = check_with(Count, &joint, &materials, &rules).map_err(|e| TestCaseError::fail(e.to_string()))?;
            prop_assert!(OPERATIONS.get() > before);
            prop_assert_eq!(bits(&plain), bits(&opaque));
            let (given, counted) = (Given::new(Plain, &joint, &materials), Given::new(Count, &joint, &materials));
            let one = Strengths::new(Plain, &joint, &given, &rules, Lens::Book);
            let two = Strengths::new(Count, &joint, &counted, &rules, Lens::Book);
            for (a, b) in one.modes().zip(two.modes()) {
                prop_assert_eq!((a.strength.to_bits(), a.fates), (b.strength.0.to_bits(), b.fates));
            }
            let (one, two) = (letters(Plain, &joint, &given, &rules, &one), letters(Count, &joint, &counted, &rules, &two));
            prop_assert_eq!(one.len(), two.len());
            for (a, b) in one.iter().zip(&two) {
                prop_assert_eq!((a.letter, a.strength.to_bits()), (b.letter, b.strength.0.to_bits()));
            }
        }
    }

    #[test]
    fn a_sizing_has_the_same_bits_without_the_optimiser(b in brief(6), book in any_book()) {
        match (size(&b, &book.rules), size_with(Count, &b, &book.rules)) {
            (Ok(plain), Ok(opaque)) => {
                prop_assert_eq!(plain.joint, opaque.joint);
                prop_assert_eq!(bits(&plain.analysis), bits(&opaque.analysis));
                for ((a, _), (b, _)) in plain.gaps.iter().zip(&opaque.gaps) {
                    prop_assert_eq!(a.to_bits(), b.0.to_bits());
                }
            }
            (plain, opaque) => {
                prop_assert_eq!(format!("{:?}", plain.map(|_| ())), format!("{:?}", opaque.map(|_| ())));
            }
        }
    }
}

/// Everything that is computed for one order, as text and bits.
fn record(out: &mut String, id: &str, order: &Brief, rules: &Rules) {
    let written = match size(order, rules) {
        Ok(design) => writeln!(out, "{id} {:x?} {:?}", bits(&design.analysis), design),
        Err(e) => writeln!(out, "{id} {e}"),
    };
    assert!(written.is_ok());
}

/// A fixed range of orders: every named form in every book, over thin and thick plates.
fn computed() -> String {
    let mut out = String::new();
    let mut n = 0_u32;
    for form in generate::named_forms() {
        for book in BOOKS {
            for plate in [4.0, 7.3, 9.525, 13.0, 22.2] {
                n += 1;
                let part = |k: u32, m: u32| f64::from(n * k % m) / f64::from(m);
                let stress = |lo: f64, hi: f64, u: f64| Stress::mpa(lo + (hi - lo) * u);
                let (tension, shear) = (stress(60.0, 420.0, part(7, 31)), stress(40.0, 340.0, part(11, 37)));
                let materials = Materials::new(tension, shear).bearing(stress(90.0, 900.0, part(13, 41)));
                let mut order = Brief::new(form, Length::mm(plate), materials);
                if n.is_multiple_of(3) {
                    order = order.hole(Length::mm(plate + 9.7), None);
                }
                if form.kind() == JointKind::Lap && n.is_multiple_of(2) {
                    order = order.other_plate(Length::mm(plate + 1.1));
                }
                if form.kind() != JointKind::Lap && book.rules.get(Entry::STRAP_EQUAL) == 0.0 {
                    let second = (form.kind() == JointKind::DoubleStrap).then(|| Length::mm(0.7 * plate));
                    order = order.straps(Length::mm(0.8 * plate), second);
                }
                record(&mut out, book.id, &order, &book.rules);
            }
        }
    }
    out
}

/// The 64-bit hash of Fowler, Noll and Vo.
fn hash(bytes: &[u8], from: u64) -> u64 {
    bytes.iter().fold(from, |h, b| (h ^ u64::from(*b)).wrapping_mul(0x0000_0100_0000_01b3))
}

fn hash_of_sources(folder: &Path, mut so_far: u64) -> std::io::Result<u64> {
    let mut entries: Vec<PathBuf> = fs::read_dir(folder)?.map(|e| Ok(e?.path())).collect::<std::io::Result<_>>()?;
    entries.sort();
    for path in entries {
        so_far = if path.is_dir() { hash_of_sources(&path, so_far)? } else { hash(&fs::read(&path)?, so_far) };
    }
    Ok(so_far)
}

/// Each profile leaves what it computed beside the other's, under the hash of the sources: whichever comes second
/// compares. `tests/gate.sh` runs both.
#[test]
fn debug_and_release_have_the_same_bits() -> std::io::Result<()> {
    let seed = hash(include_bytes!("bits.rs"), 0xcbf2_9ce4_8422_2325);
    let core = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src");
    let key = hash_of_sources(&core, hash(include_bytes!("generate/mod.rs"), seed))?;
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"));
    let name = |profile: &str| folder.join(format!("bits-{key:016x}-{profile}.txt"));
    let (mine, other) = if cfg!(debug_assertions) { ("debug", "release") } else { ("release", "debug") };
    let here = computed();
    assert!(here.lines().count() > 1000, "{}", here.lines().count());
    fs::create_dir_all(folder)?;
    for entry in fs::read_dir(folder)? {
        let (path, file) = entry.map(|e| (e.path(), e.file_name().to_string_lossy().into_owned()))?;
        // Of older sources. Another run may have been quicker.
        if file.starts_with("bits-") && file.ends_with(".txt") && !file.contains(&format!("{key:016x}")) {
            let _ = fs::remove_file(path);
        }
    }
    // Whole or not at all: another run may be reading.
    let part = folder.join(format!("bits-{}-{mine}.part", std::process::id()));
    fs::write(&part, &here)?;
    fs::rename(&part, name(mine))?;
    match fs::read_to_string(name(other)) {
        Ok(there) => {
            let differs = here.lines().zip(there.lines()).find(|(a, b)| a != b);
            assert!(differs.is_none() && here.len() == there.len(), "{mine} and {other} differ: {differs:?}");
            eprintln!("{mine} compared with {other}: {} orders alike", here.lines().count());
        }
        Err(_) => eprintln!("nothing from {other} yet: run the tests of that profile too"),
    }
    Ok(())
}
