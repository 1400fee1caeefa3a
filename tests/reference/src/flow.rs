//! The least cut once more, by a wholly different way: the most that flows from the loaded plate to the far side.
//!
//! Nodes: the loaded end; a piece of plate at each row; every single rivet; a piece of each strap at each row; the
//! far end. The plate's pieces are joined by what it takes to tear it at a row, a rivet to its plate by bearing and
//! to each strap by the lesser of that plane's shear and the strap's bearing. Augmenting paths are the shortest
//! ones, so they end.

use crate::model::{Convention, Joint, Stresses};
use std::collections::VecDeque;

struct Network {
    /// Room left from a node to another, N.
    room: Vec<Vec<f64>>,
}

impl Network {
    fn new(nodes: usize) -> Network {
        Network { room: vec![vec![0.0; nodes]; nodes] }
    }

    fn join(&mut self, from: usize, to: usize, strength: f64) {
        self.room[from][to] += strength;
    }

    /// The most that flows from one node to another, N. Room below `dust` counts as none.
    fn flow(&mut self, from: usize, to: usize, dust: f64) -> f64 {
        let nodes = self.room.len();
        let mut total = 0.0;
        loop {
            let mut came: Vec<Option<usize>> = vec![None; nodes];
            came[from] = Some(from);
            let mut queue = VecDeque::from([from]);
            while let Some(here) = queue.pop_front() {
                for (next, &room) in self.room[here].iter().enumerate() {
                    if came[next].is_none() && room > dust {
                        came[next] = Some(here);
                        queue.push_back(next);
                    }
                }
            }
            if came[to].is_none() {
                return total;
            }
            let mut most = f64::INFINITY;
            let mut here = to;
            while let Some(before) = came[here].filter(|_| here != from) {
                most = most.min(self.room[before][here]);
                here = before;
            }
            here = to;
            while let Some(before) = came[here].filter(|_| here != from) {
                self.room[before][here] -= most;
                self.room[here][before] += most;
                here = before;
            }
            total += most;
        }
    }
}

/// The least strength of the joint over all cuts, N, as a maximum flow.
///
/// Each plane of a double-shear rivet carries `double / 2`, whether the other is cut or not, so the convention must
/// have `one_plane = double / 2`.
///
/// # Panics
///
/// If the convention has another `one_plane`: the cost of a rivet is then no sum of joints between pieces.
pub fn min_cut(joint: &Joint, s: &Stresses, c: &Convention) -> f64 {
    assert!((c.one_plane - c.double / 2.0).abs() <= 1e-12 * c.double, "the flow needs one_plane = double / 2");
    let n = joint.rows.len();
    let others = joint.others();
    let mut rivets = 0;
    for row in &joint.rows {
        rivets += row.rivets as usize;
    }
    let source = 0;
    let sink = 1;
    let plate_node = |row: usize| 2 + row;
    let other_node = |other: usize, row: usize| 2 + n + other * n + row;
    let first_rivet = 2 + n + others.len() * n;
    let mut net = Network::new(first_rivet + rivets);

    // The plate: from the loaded end inwards. Torn at a row, that row's rivets are freed.
    for row in 0..n {
        let before = if row == 0 { source } else { plate_node(row - 1) };
        let strength = joint.tear(row, joint.plate(), s.plate_tension, c);
        net.join(before, plate_node(row), strength);
    }
    // Each strap: from its outer end to the far end. Torn at a row, that row's rivets are freed.
    for (other, &thickness) in others.iter().enumerate() {
        for row in 0..n {
            let after = if row + 1 == n { sink } else { other_node(other, row + 1) };
            let strength =
                if joint.reaches(row, other) { joint.tear(row, thickness, s.other_tension, c) } else { f64::INFINITY };
            net.join(other_node(other, row), after, strength);
        }
    }
    // Every rivet by itself.
    let mut rivet = first_rivet;
    for row in 0..n {
        let mut plane = joint.single_shear(row, s, c);
        if joint.is_double(row) {
            plane *= c.double / 2.0;
        }
        for _ in 0..joint.rows[row].rivets {
            net.join(plate_node(row), rivet, joint.plate_bearing(row, s, c));
            for other in 0..others.len() {
                if joint.reaches(row, other) {
                    let strength = plane.min(joint.other_bearing(row, other, s, c));
                    net.join(rivet, other_node(other, row), strength);
                }
            }
            rivet += 1;
        }
    }
    let scale = joint.strip * joint.plate() * s.plate_tension;
    net.flow(source, sink, 1e-13 * scale)
}
