//! Single formulas by name.

use std::collections::BTreeMap;

use seamwright::formula;

use crate::schema::FormulaCall;
use crate::units::base;

/// Works out formulas in order; later ones may take earlier ones as `$name`.
///
/// # Errors
/// An unknown formula, a wrong number of arguments, or an argument that cannot be read.
pub fn formulas(calls: &[FormulaCall]) -> Result<BTreeMap<String, f64>, String> {
    let mut found = BTreeMap::new();
    for call in calls {
        let argument = |text: &String| match text.strip_prefix('$') {
            Some(name) => found.get(name).copied().ok_or_else(|| format!("{}: no {name:?} yet", call.name)),
            None => base(text),
        };
        let arguments: Result<Vec<f64>, String> = call.args.iter().map(argument).collect();
        let value = one(&call.of, &arguments?).ok_or_else(|| format!("{}: cannot call {}", call.name, call.of))?;
        found.insert(call.name.clone(), value);
    }
    Ok(found)
}

fn one(name: &str, arguments: &[f64]) -> Option<f64> {
    Some(match (name, arguments) {
        ("balanced_pitch", &[n, d, f, fo, t, st]) => formula::balanced_pitch(n, d, f, fo, t, st),
        ("least_pitch", &[a, d, b, n, n1]) => formula::least_pitch(a, d, b, n, n1),
        ("greatest_pitch", &[c, t, k]) => formula::greatest_pitch(c, t, k),
        ("hole_by_root", &[a, t, b]) => formula::hole_by_root(a, t, b),
        ("hole_by_bearing", &[t, sc, ss, z]) => formula::hole_by_bearing(t, sc, ss, z),
        ("single_shear", &[d, ss]) => formula::single_shear(d, ss),
        ("double_shear", &[z, d, ss]) => formula::double_shear(z, d, ss),
        ("bearing", &[d, t, sc]) => formula::bearing(d, t, sc),
        ("shear_out", &[m, d, t, sp]) => formula::shear_out(m, d, t, sp),
        ("row_hold", &[n, f]) => formula::row_hold(n, f),
        ("net_section", &[p, n, d, t, st]) => formula::net_section(p, n, d, t, st),
        ("zigzag_gain", &[j, g, q]) => formula::zigzag_gain(j, g, q),
        ("zigzag_net_section", &[p, n1, d1, n2, d2, x, t, st]) => {
            formula::zigzag_net_section(p, n1, d1, n2, d2, x, t, st)
        }
        ("cut_strength", &[a, b]) => formula::cut_strength(a, b),
        ("row_distance", &[a, p, k, b, d, c]) => formula::row_distance(a, p, k, b, d, c),
        ("row_distance_diagonal", &[a, p, b, d, q]) => formula::row_distance_diagonal(a, p, b, d, q),
        ("head_beside_strap", &[m, wh]) => formula::head_beside_strap(m, wh),
        ("heads_apart", &[w1, w2, q]) => formula::heads_apart(w1, w2, q),
        ("gauge", &[p, n]) => formula::gauge(p, n),
        ("margin", &[a, d, b]) => formula::margin(a, d, b),
        ("times", &[a, y]) => formula::times(a, y),
        ("strap_share", &[a, t, c]) => formula::strap_share(a, t, c),
        ("strap_thickened", &[share, p, n1, d1, nb, db]) => formula::strap_thickened(share, p, n1, d1, nb, db),
        ("row_pitch", &[p, n]) => formula::row_pitch(p, n),
        ("efficiency", &[p, solid]) => formula::efficiency(p, solid),
        ("strength_per_length", &[strength, p]) => formula::strength_per_length(strength, p),
        _ => return None,
    })
}
