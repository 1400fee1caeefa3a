//! A group of rivets as a rigid plate on springs: no centroid, no polar moment.
//!
//! Each rivet is a spring as stiff as its area, in every direction. The plate moves by `a` along x, `b` along y and turns
//! by `c` about the origin; a rivet at `(x, y)` then gives way by `(a - c y, b + c x)`. Three equations of equilibrium
//! about the origin give `a`, `b` and `c`, and those the forces.

/// A rivet: place, mm, and diameter, mm.
#[derive(Clone, Copy, Debug)]
pub struct Spring {
    /// Along x.
    pub x: f64,
    /// Along y.
    pub y: f64,
    /// Diameter.
    pub d: f64,
}

/// What holds a group in place against a force, N, through a point, mm, and a couple, N mm, anticlockwise: the forces
/// that the plate puts on the rivets, and the point that does not move, where there is one.
#[derive(Clone, Debug)]
pub struct Held {
    /// Force on each rivet, along x and y.
    pub forces: Vec<[f64; 2]>,
    /// The point of the plate that stays, where the plate turns.
    pub still: Option<[f64; 2]>,
}

/// Solves a system of three equations by elimination, the largest element first; `None` where it has no one answer.
fn solve(mut m: [[f64; 4]; 3]) -> Option<[f64; 3]> {
    for step in 0..3 {
        let mut best = step;
        for row in step..3 {
            if m[row][step].abs() > m[best][step].abs() {
                best = row;
            }
        }
        m.swap(step, best);
        if m[step][step].abs() < 1e-12 * m[step].iter().fold(1e-300, |a: f64, b| a.max(b.abs())) {
            return None;
        }
        for row in 0..3 {
            if row != step {
                let (pivot, factor) = (m[step], m[row][step] / m[step][step]);
                for (x, p) in m[row].iter_mut().zip(pivot) {
                    *x -= factor * p;
                }
            }
        }
    }
    Some([m[0][3] / m[0][0], m[1][3] / m[1][1], m[2][3] / m[2][2]])
}

/// Holds a group.
pub fn hold(rivets: &[Spring], force: [f64; 2], at: [f64; 2], couple: f64) -> Option<Held> {
    // Lengths in units of the group's size, so that the three equations are of one kind.
    let size = rivets.iter().map(|r| r.x.abs().max(r.y.abs())).fold(1.0, f64::max);
    let (mut k0, mut kx, mut ky, mut kr) = (0.0, 0.0, 0.0, 0.0);
    for r in rivets {
        let (k, x, y) = (r.d * r.d, r.x / size, r.y / size);
        k0 += k;
        kx += k * x;
        ky += k * y;
        kr += k * (x * x + y * y);
    }
    let moment = (at[0] * force[1] - at[1] * force[0] + couple) / size;
    let [a, b, c] = solve([[k0, 0.0, -ky, force[0]], [0.0, k0, kx, force[1]], [-ky, kx, kr, moment]])?;
    let forces = rivets
        .iter()
        .map(|r| {
            let k = r.d * r.d;
            [k * (a - c * r.y / size), k * (b + c * r.x / size)]
        })
        .collect();
    let still = (c != 0.0).then(|| [-b / c * size, a / c * size]);
    Some(Held { forces, still })
}

#[cfg(test)]
mod tests {
    use super::{Spring, hold};

    /// Two rivets 100 mm apart, 15 kN through the second: it takes all (Bhandari, Example 8.25).
    #[test]
    fn a_load_through_one_of_two() {
        let two = [Spring { x: 0.0, y: 0.0, d: 18.0 }, Spring { x: 100.0, y: 0.0, d: 18.0 }];
        let held = hold(&two, [0.0, -15_000.0], [100.0, 0.0], 0.0).unwrap();
        assert!(held.forces[0][1].abs() < 1e-6 && (held.forces[1][1] + 15_000.0).abs() < 1e-6);
        assert!(held.still.is_some_and(|[x, _]| x.abs() < 1e-9));
    }

    #[test]
    fn one_rivet_holds_no_moment() {
        assert!(hold(&[Spring { x: 0.0, y: 0.0, d: 18.0 }], [0.0, 1.0], [1.0, 0.0], 0.0).is_none());
    }
}
