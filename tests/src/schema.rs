//! The shape of the vector files, and reading them.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use seamwright::rules::{Rules, book};
use serde::Deserialize;

/// A file of vectors.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Vectors {
    /// The vectors, in the order of the file.
    pub vector: Vec<Vector>,
}

/// Where a vector stands.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Eq)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// Author or issuing authority.
    pub author: String,
    /// Title.
    pub title: String,
    /// Edition, or what is known of it.
    pub edition: String,
    /// Page, or "not seen".
    pub page: String,
    /// Number of the example or name of the table.
    pub example: String,
}

/// One worked example, or one part of it.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Vector {
    /// Name; what stands before a `/` is the example, what follows tells its parts apart.
    pub id: String,
    /// Where it stands.
    pub source: Source,
    /// `read`, `transcription`, `memory` or `derived`.
    pub provenance: String,
    /// What it exercises.
    #[serde(default)]
    pub covers: Vec<String>,
    /// Short name of a built-in rule book.
    pub book: String,
    /// Entries of that book that the author has otherwise.
    #[serde(default)]
    pub edits: BTreeMap<String, f64>,
    /// How the author rounds.
    #[serde(default)]
    pub rounding: String,
    /// Remarks; a misprint's cause.
    #[serde(default)]
    pub note: String,
    /// A joint to be checked.
    pub check: Option<Stated>,
    /// A brief to be sized.
    pub size: Option<Stated>,
    /// A group of rivets, to be checked, or sized where it has no hole.
    pub group: Option<StatedGroup>,
    /// Single formulas.
    #[serde(default)]
    pub formula: Vec<FormulaCall>,
    /// What comes out.
    pub expect: Vec<Expect>,
}

impl Vector {
    /// The example that this vector is a part of.
    #[must_use]
    pub fn example(&self) -> &str {
        self.id.split('/').next().unwrap_or(&self.id)
    }
}

/// A joint, or a brief for one, in the source's units. For a brief most of it may be left out.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stated {
    /// `lap`, `single strap` or `double straps`.
    pub kind: String,
    /// Rivets in the strip and shear planes of each row, outside first.
    pub rows: Vec<[u8; 2]>,
    /// Rows behind each other instead of in the gaps of each other.
    #[serde(default)]
    pub chain: bool,
    /// Pitch of the outer row, or width of the strip.
    pub pitch: Option<String>,
    /// Plate; plate A of a lap.
    pub plate: String,
    /// Plate B of a lap.
    pub other_plate: Option<String>,
    /// Single, wide or first strap.
    pub wide: Option<String>,
    /// Narrow or second strap.
    pub narrow: Option<String>,
    /// Hole of all rows.
    pub hole: Option<String>,
    /// Holes by row, where they differ.
    #[serde(default)]
    pub holes: Vec<String>,
    /// Cold rivet.
    pub rivet: Option<String>,
    /// Distance from each row to the next.
    #[serde(default)]
    pub gaps: Vec<String>,
    /// Margin.
    pub margin: Option<String>,
    /// Tension of the plate.
    pub tension: String,
    /// Tension of plate B or the straps, where it differs.
    pub other_tension: Option<String>,
    /// Single shear of the rivets.
    pub shear: String,
    /// Bearing of plates and straps.
    pub bearing: Option<String>,
}

/// A group of rivets under a load, in the source's units.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StatedGroup {
    /// Places of the rivets, x and y.
    pub rivets: Vec<[String; 2]>,
    /// Hole of all rivets; without one the group is sized.
    pub hole: Option<String>,
    /// Holes by rivet, where they differ.
    #[serde(default)]
    pub holes: Vec<String>,
    /// Cold rivet of all.
    pub rivet: Option<String>,
    /// Shear planes; one without it.
    pub planes: Option<u8>,
    /// Plate that the rivets bear on.
    pub plate: Option<String>,
    /// Force along x and y.
    pub load: [String; 2],
    /// A point of its line, x and y.
    pub at: [String; 2],
    /// Rivets in one vertical row, where the effective eccentricity counts.
    pub effective: Option<u8>,
    /// Shear stress that is permitted.
    pub shear: String,
    /// Bearing stress that is permitted.
    pub bearing: Option<String>,
}

/// One formula of the library with its arguments in the order of its signature: numbers with a unit, bare numbers, or
/// `$name` for what an earlier formula of the vector gave.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FormulaCall {
    /// The name under which the result is expected.
    pub name: String,
    /// The function of the library's formula module.
    pub of: String,
    /// Its arguments.
    pub args: Vec<String>,
}

/// One expected quantity.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Expect {
    /// Which; see `vectors/README.md`.
    pub quantity: String,
    /// Unit of the figures.
    #[serde(default)]
    pub unit: String,
    /// As printed; its digits give the tolerance.
    pub printed: Option<String>,
    /// The author cut digits off instead of rounding.
    #[serde(default)]
    pub truncated: bool,
    /// A wider tolerance than the digits give.
    pub within: Option<f64>,
    /// Why.
    pub because: Option<String>,
    /// Recomputed outside this code base.
    pub exact: Option<f64>,
    /// The arithmetic behind `exact`, in the source's units.
    pub how: Option<String>,
    /// A word instead of a number: a governing mode, what decided a pitch.
    pub text: Option<String>,
    /// Remark.
    pub note: Option<String>,
}

/// Reads one file.
///
/// # Panics
/// A file that cannot be read or has another shape.
#[must_use]
pub fn load_file(path: &Path) -> Vec<Vector> {
    let text = fs::read_to_string(path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    let found: Vectors = toml::from_str(&text).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    found.vector
}

/// Reads all vectors of a folder. Files of another kind are left out: `rules-*.toml`, `misprints.toml`, `tricky.toml`.
///
/// # Panics
/// A folder or file that cannot be read or has another shape.
#[must_use]
pub fn load(dir: &Path) -> Vec<Vector> {
    let entries = fs::read_dir(dir).unwrap_or_else(|e| panic!("{}: {e}", dir.display()));
    let mut paths: Vec<_> = entries.filter_map(|e| e.ok().map(|e| e.path())).collect();
    paths.sort();
    let of_this_kind = |name: &str| {
        let special = name.starts_with("rules-") || name == "misprints.toml" || name == "tricky.toml";
        name.ends_with(".toml") && !special
    };
    paths.retain(|p| p.file_name().and_then(|n| n.to_str()).is_some_and(of_this_kind));
    paths.iter().flat_map(|p| load_file(p)).collect()
}

/// The rule book of a vector: the built-in one with the author's edits.
///
/// # Panics
/// An unknown book, an unknown key or a value out of range.
#[must_use]
pub fn rules_of(vector: &Vector) -> Rules {
    let start = book(&vector.book).unwrap_or_else(|| panic!("{}: no book {:?}", vector.id, vector.book));
    vector.edits.iter().fold(start.rules, |rules, (key, value)| {
        rules.with_key(key, *value).unwrap_or_else(|e| panic!("{}: {key}: {e}", vector.id))
    })
}
