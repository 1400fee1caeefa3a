//! All published vectors, under their own rule books; how many there are; and the misprints.

use std::collections::BTreeSet;

use seamwright_tests::{
    Value, Vector, compare_exact, compare_printed, evaluate, load, load_file, rules_of, run, vectors_dir,
};

/// What the vectors must cover, each at least five times without counting what is from memory.
const COVERED: [&str; 6] =
    ["combined mode", "unequal straps", "bearing", "single-shear outer row", "cap deciding", "thin plate"];

/// The least number of published examples.
const EXAMPLES: usize = 60;

/// The printed figures known to be wrong. A new entry of the file needs a line here, and the other way round.
const MISPRINTS: [&str; 10] = [
    "KG-X3",
    "KG-9.4-greatest-pitch",
    "KG-9.15-sum",
    "SS-5.8-direct",
    "KG-9.10-circumferential",
    "SS-5.1-efficiency",
    "JD-11.8-efficiency",
    "JN-11.4-efficiency",
    "LH-p407-1.09",
    "cal796_row14",
];

fn all() -> Vec<Vector> {
    load(&vectors_dir())
}

fn misprints() -> Vec<Vector> {
    load_file(&vectors_dir().join("misprints.toml"))
}

#[test]
fn every_vector_is_reproduced() {
    let failures: Vec<String> = all().iter().filter_map(|v| run(v, &rules_of(v)).err()).flatten().collect();
    assert!(failures.is_empty(), "{} failures:\n{}", failures.len(), failures.join("\n"));
}

/// A published vector: read or transcribed, and with at least one figure as printed.
fn published(v: &Vector) -> bool {
    let seen = v.provenance == "read" || v.provenance == "transcription";
    seen && v.expect.iter().any(|e| e.printed.is_some())
}

#[test]
fn enough_examples_are_published_ones() {
    let vectors = all();
    let examples: BTreeSet<&str> = vectors.iter().filter(|v| published(v)).map(Vector::example).collect();
    assert!(examples.len() >= EXAMPLES, "{} published examples: {examples:?}", examples.len());
}

#[test]
fn every_feature_is_covered_five_times() {
    let vectors = all();
    for feature in COVERED {
        let found = vectors.iter().filter(|v| v.provenance != "memory" && v.covers.iter().any(|c| c == feature));
        let ids: Vec<&str> = found.map(|v| v.id.as_str()).collect();
        assert!(ids.len() >= 5, "{feature}: {ids:?}");
    }
    for vector in &vectors {
        for feature in &vector.covers {
            assert!(COVERED.contains(&feature.as_str()), "{}: unknown feature {feature:?}", vector.id);
        }
    }
}

#[test]
fn every_vector_says_where_it_comes_from() {
    let mut seen = BTreeSet::new();
    for vector in all().into_iter().chain(misprints()) {
        let id = vector.id.as_str();
        assert!(seen.insert(vector.id.clone()), "{id} twice");
        assert!(["read", "transcription", "memory", "derived"].contains(&vector.provenance.as_str()), "{id}");
        let s = &vector.source;
        assert!(
            [&s.author, &s.title, &s.edition, &s.page, &s.example].iter().all(|x| !x.is_empty()),
            "{id}: source {s:?}"
        );
        for e in &vector.expect {
            assert_eq!(e.exact.is_some(), e.how.is_some(), "{id}: {}: exact with its arithmetic", e.quantity);
            assert!(vector.provenance != "derived" || e.printed.is_none(), "{id}: derived figures are not printed");
        }
    }
}

#[test]
fn misprints_are_a_closed_list_and_not_reproduced() {
    let file = misprints();
    let ids: BTreeSet<&str> = file.iter().map(|v| v.id.as_str()).collect();
    assert_eq!(ids, MISPRINTS.into_iter().collect::<BTreeSet<_>>());
    for vector in &file {
        assert!(!vector.note.is_empty(), "{}: the cause", vector.id);
        let found = evaluate(vector, &rules_of(vector)).unwrap_or_else(|e| panic!("{}: {e}", vector.id));
        for expect in &vector.expect {
            let id = format!("{}: {}", vector.id, expect.quantity);
            let Ok(Value::Number(value)) = found.get(&expect.quantity) else { panic!("{id}: no such figure") };
            let value = value / seamwright_tests::units::one_of(&expect.unit).expect("a unit");
            assert!(expect.printed.is_some() && expect.exact.is_some(), "{id}: both figures");
            assert!(compare_printed(value, expect).is_err(), "{id}: {value} is the misprint");
            compare_exact(value, expect).unwrap_or_else(|e| panic!("{id}: {e}"));
        }
    }
}

#[test]
fn the_harness_sees_what_is_wrong() {
    let vectors = all();
    let one = vectors.iter().find(|v| v.id == "KG-9.4").expect("KG-9.4");
    // Another book: holes by a wider root, fewer double shears. The figures must move, or the vectors test nothing.
    for (key, value) in [("hole.sqrt", 6.5), ("margin.least.factor", 1.6), ("back.zigzag.1", 0.4)] {
        let rules = rules_of(one).with_key(key, value).expect("a key");
        assert!(run(one, &rules).is_err(), "{key} = {value} was not noticed");
    }
    // Every printed digit counts: one unit more in the last place of any printed figure is refused.
    for vector in vectors.iter().filter(|v| v.expect.iter().any(|e| e.printed.is_some())) {
        for i in 0..vector.expect.len() {
            let mut moved = vector.clone();
            let Some(expect) = moved.expect.get_mut(i).filter(|e| e.printed.is_some()) else { continue };
            let (lo, hi) = seamwright_tests::printed_interval(expect).expect("an interval");
            let printed: f64 = expect.printed.as_deref().and_then(|p| p.parse().ok()).expect("a decimal");
            expect.exact = None;
            expect.truncated = false;
            expect.within = Some((hi - lo) / 2.0);
            expect.because = Some("moved by more than the whole interval".to_owned());
            expect.printed = Some(format!("{}", printed + 1.01 * (hi - lo) + (hi - lo) / 2.0));
            assert!(run(&moved, &rules_of(&moved)).is_err(), "{}: {}", moved.id, vector.expect[i].quantity);
        }
    }
}
