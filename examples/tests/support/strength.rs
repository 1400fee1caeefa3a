//! The figures of strength of a case, from the independent model alone.

use seamwright_reference::{Convention, Joint, Stresses, bearing_all, cuts, ibr_percentages, shear_all, tearing_outer};

use super::case::{Case, Shape};
use super::expected::{Expected, Figure};

impl Expected {
    pub fn rivets(&mut self, joint: &Joint, s: &Stresses, c: &Convention) {
        for i in 0..joint.rows.len() {
            let row = i + 1;
            let single = joint.single_shear(i, s, c);
            let shear = if joint.is_double(i) { c.double * single } else { single };
            self.put(&format!("rivet {row} shear"), Figure::Force(shear));
            let plane = if joint.is_double(i) { c.one_plane * single } else { single };
            self.put(&format!("rivet {row} plane"), Figure::Force(plane));
            if s.plate_bearing.is_none() {
                continue;
            }
            self.put(&format!("rivet {row} crush plate"), Figure::Force(joint.plate_bearing(i, s, c)));
            for (other, name) in (0..joint.others().len()).zip(["other", "narrow"]) {
                if joint.reaches(i, other) {
                    let bears = Figure::Force(joint.other_bearing(i, other, s, c));
                    self.put(&format!("rivet {row} crush {name}"), bears);
                }
            }
        }
    }

    pub fn strength(&mut self, case: &Case, joint: &Joint, s: &Stresses, c: &Convention, solid: f64) {
        let (tear, shear, crush) = (tearing_outer(joint, s, c), shear_all(joint, s, c), bearing_all(joint, s, c));
        self.force("solid plate", solid, solid);
        self.force("tearing at the outer row", tear, solid);
        self.force("shearing of all rivets", shear, solid);
        if crush.is_finite() {
            self.force("crushing of all rivets", crush, solid);
        }
        let all = cuts(joint, s, c);
        let mut sorted: Vec<f64> = all.iter().map(|cut| cut.strength).collect();
        sorted.sort_by(f64::total_cmp);
        self.put("modes", Figure::Number(sorted.len() as f64));
        for (i, strength) in sorted.iter().enumerate() {
            self.force(&format!("mode {}", i + 1), *strength, solid);
        }
        self.force("governing", sorted[0], solid);
        self.force("runner-up", sorted[1], solid);
        self.put("runner-up above the governing mode by", Figure::Share(sorted[1] / sorted[0] - 1.0));
        let eta = sorted[0] / solid;
        let lap = case.shape == Shape::Lap;
        let j = if case.id == "indian" {
            let rows = &joint.rows;
            // On the thinner plate of a lap.
            let t = case.other_plate.map_or(case.plate, |b| b.min(case.plate));
            let found = ibr_percentages(joint.strip, t, rows, s.plate_tension, s.shear, c.double, None);
            self.put("plate percentage", Figure::Number(found.plate));
            self.put("rivet percentage", Figure::Number(found.rivets));
            if let Some(combined) = found.combined {
                self.put("combined percentage", Figure::Number(combined));
            }
            found.lowest / 100.0
        } else {
            // Everything but straps, which neither book counts.
            let counted = all.iter().filter(|cut| lap || (cut.first.is_none() && cut.second.is_none()));
            counted.map(|cut| cut.strength).fold(f64::INFINITY, f64::min) / solid
        };
        self.force("by the book", j * solid, solid);
        let ceiling = if case.id == "indian" { 0.85 } else { 1.0 };
        if ceiling < 1.0 {
            self.put("cap of the book", Figure::Share(ceiling));
        }
        self.put("J, efficiency by the book", Figure::Share(j));
        self.put("eta, efficiency over all modes", Figure::Share(eta));
        self.put("credited efficiency", Figure::Share(j.min(eta).min(ceiling)));
        self.put("strength of the seam", Figure::PerLength(sorted[0] / joint.strip));
        let what = "efficiency over all modes against the book's own";
        self.finding(what, Figure::Share(j), Figure::Share(eta));
        if j.min(eta) > ceiling {
            self.finding("efficiency credited", Figure::Share(ceiling), Figure::Share(j.min(eta)));
        }
        let ratio = shear.min(crush) / tear;
        if ratio >= 1.5 {
            self.finding("rivets over plate", Figure::Number(1.5), Figure::Number(ratio));
        }
        if case.id == "us-code" {
            self.letters(joint, s, c, solid);
        }
    }

    /// RULES.md section 6, for laps and for butt joints with one single-shear row.
    fn letters(&mut self, joint: &Joint, s: &Stresses, c: &Convention, solid: f64) {
        let (shear, crush) = (shear_all(joint, s, c), bearing_all(joint, s, c));
        let mut list = vec![solid, tearing_outer(joint, s, c), shear];
        if joint.rows[0].planes == joint.rows[joint.rows.len() - 1].planes {
            list.push(crush);
        } else {
            let n = f64::from(joint.rows[0].rivets);
            let outer = [n * joint.single_shear(0, s, c), n * joint.other_bearing(0, 0, s, c)];
            let second = joint.tear(1, joint.plate(), s.plate_tension, c);
            let inner: f64 =
                (1..joint.rows.len()).map(|i| f64::from(joint.rows[i].rivets) * joint.plate_bearing(i, s, c)).sum();
            list.extend([second + outer[0], second + outer[1], inner + outer[1], inner + outer[0]]);
        }
        for (strength, letter) in list.into_iter().zip('A'..) {
            self.force(&format!("letter {letter}"), strength, solid);
        }
    }
}
