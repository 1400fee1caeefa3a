//! The figures that the sheet of a case must show, from the independent model alone.

use std::collections::BTreeMap;

use seamwright_reference::book::{INCH, PSI, US_DRIVEN};
use seamwright_reference::{
    Book, Cap, Form, Joint, Kind, Row, Stresses, admissible_pitch, back_pitches, balanced_pitches, cap, floor,
    head_room, raw_hole, round_up, row_distance, size_hole, solid, straps,
};

use super::case::{Case, Shape};

/// A figure with its dimension, in mm, N, MPa.
#[derive(Clone, Copy, Debug)]
pub enum Figure {
    Length(f64),
    Stress(f64),
    Force(f64),
    PerLength(f64),
    /// A fraction of one, printed in per cent.
    Share(f64),
    Number(f64),
}

impl Figure {
    /// In the unit that the sheet prints.
    pub fn printed(self, inch: bool) -> f64 {
        let lbf = PSI * INCH * INCH;
        match self {
            Figure::Length(mm) => {
                if inch {
                    mm / INCH
                } else {
                    mm
                }
            }
            Figure::Stress(mpa) => {
                if inch {
                    mpa / PSI
                } else {
                    mpa
                }
            }
            Figure::Force(n) => {
                if inch {
                    n / lbf
                } else {
                    n / 1000.0
                }
            }
            Figure::PerLength(n) => {
                if inch {
                    n / lbf * INCH
                } else {
                    n
                }
            }
            Figure::Share(x) => 100.0 * x,
            Figure::Number(x) => x,
        }
    }
}

/// Expected figures by name.
pub struct Expected(pub BTreeMap<String, Figure>);

/// Thickness that stands for a strap not chosen yet: it limits nothing.
const NOT_YET: f64 = 1e9;

impl Expected {
    pub fn put(&mut self, name: &str, figure: Figure) {
        self.0.insert(name.to_string(), figure);
    }

    fn length(&mut self, name: &str, mm: f64) {
        self.put(name, Figure::Length(mm));
    }

    pub fn force(&mut self, name: &str, n: f64, solid: f64) {
        self.put(name, Figure::Force(n));
        self.put(&format!("{name} %"), Figure::Share(n / solid));
    }

    pub fn finding(&mut self, what: &str, required: Figure, provided: Figure) {
        self.put(&format!("finding {what} required"), required);
        self.put(&format!("finding {what} provided"), provided);
    }

    /// All figures of a case.
    pub fn of(case: &Case) -> Expected {
        let mut out = Expected(BTreeMap::new());
        let s = out.stresses(case);
        let (joint, solid) = out.dimensions(case, &s);
        let c = case.book.convention();
        out.rivets(&joint, &s, &c);
        out.strength(case, &joint, &s, &c, solid);
        out
    }

    fn stresses(&mut self, case: &Case) -> Stresses {
        let factor = case.factor.unwrap_or(1.0);
        let s = Stresses {
            plate_tension: case.tension / factor,
            other_tension: case.other_tension.unwrap_or(case.tension) / factor,
            shear: case.shear / factor,
            plate_bearing: case.bearing.map(|b| b / factor),
            other_bearing: case.other_bearing.or(case.bearing).map(|b| b / factor),
        };
        self.put("stress st", Figure::Stress(s.plate_tension));
        self.put("stress ss", Figure::Stress(s.shear));
        if let Some(bearing) = s.plate_bearing {
            self.put("stress sc", Figure::Stress(bearing));
        }
        if s.other_tension != s.plate_tension || s.other_bearing != s.plate_bearing {
            self.put("stress st2", Figure::Stress(s.other_tension));
            if let Some(bearing) = s.other_bearing {
                self.put("stress sc2", Figure::Stress(bearing));
            }
        }
        s
    }

    /// Every dimension with its rule; the joint and its solid strip.
    fn dimensions(&mut self, case: &Case, s: &Stresses) -> (Joint, f64) {
        let t = case.other_plate.map_or(case.plate, |b| b.min(case.plate));
        let all_double = case.rows.iter().all(|r| r.1 == 2);
        let (hole, rivet) = self.hole(case, s, t, all_double);
        let rows: Vec<Row> = case.rows.iter().map(|&(rivets, planes)| Row { rivets, hole, rivet, planes }).collect();
        let form = |wide: f64, narrow: f64| match case.shape {
            Shape::Lap => Form::Lap { plates: [case.plate, case.other_plate.unwrap_or(case.plate)] },
            Shape::Single => Form::Butt { plate: case.plate, wide, narrow: None },
            _ => Form::Butt { plate: case.plate, wide, narrow: Some(narrow) },
        };
        let given_narrow = case.narrow.or(case.wide);
        let mut joint =
            Joint { form: form(case.wide.unwrap_or(NOT_YET), given_narrow.unwrap_or(NOT_YET)), strip: 1e6, rows };
        let p = self.pitch(case, s, &joint, t);
        let outer = f64::from(case.rows[0].0);
        joint.strip = p * outer;

        self.length("t provided", case.plate);
        if case.id != "metric" {
            self.length("t required", 6.35);
            self.finding("plate thickness", Figure::Length(6.35), Figure::Length(t));
        }
        if case.shape == Shape::Lap {
            self.length("t2 provided", case.other_plate.unwrap_or(case.plate));
        }
        let dense = case.rows.iter().map(|r| r.0).max().unwrap();
        if dense > case.rows[0].0 {
            self.length("p/k provided", joint.strip / f64::from(dense));
        }
        if outer > 1.0 {
            self.length("B provided", joint.strip);
        }
        let span = self.rows(case, p, hole, rivet);
        let [wide, narrow] = self.straps(case, joint.strip, hole);
        joint.form = form(wide, narrow);
        if let Some((gaps, margin)) = span {
            let all = gaps.iter().sum::<f64>() + 2.0 * margin;
            self.length("w1 provided", if case.shape == Shape::Lap { all } else { 2.0 * all });
            if case.shape == Shape::Unequal {
                let single = case.rows.iter().filter(|r| r.1 == 1).count();
                let inner = gaps.iter().skip(single).sum::<f64>() + 2.0 * margin;
                self.length("w2 provided", 2.0 * inner);
                // A head reaches 0.8 rivets from its centre; the edge lies a margin outside the next row.
                let what = "distance of rows for heads 1.6 rivets wide beside the edge of the narrow strap (custom)";
                let what = format!("{what}, row {single} to {}", single + 1);
                self.finding(&what, Figure::Length(margin + 0.8 * rivet), Figure::Length(gaps[single - 1]));
            }
        }
        let solid = solid(&joint, s);
        (joint, solid)
    }

    fn hole(&mut self, case: &Case, s: &Stresses, t: f64, all_double: bool) -> (f64, f64) {
        let book = &case.book;
        let series: Vec<(f64, f64)> = if book.series.is_empty() {
            // Rivets by sixteenths from 1/2 in, holes a sixteenth more.
            (8..=22)
                .filter(|k| *k != 21)
                .map(|k| (f64::from(k) / 16.0 * INCH, f64::from(k + 1) / 16.0 * INCH))
                .collect()
        } else {
            book.series.to_vec()
        };
        let (hole, rivet) = match (case.hole, case.check) {
            (Some(hole), true) => (hole, case.rivet.unwrap_or(hole)),
            (Some(hole), false) => {
                let of = series.iter().find(|x| (x.1 - hole).abs() < 1e-6).map(|x| x.0);
                let loose = if book.series.is_empty() { book.table_clearance } else { 0.0 };
                (hole, case.rivet.or(of).unwrap_or(hole - loose))
            }
            (None, _) => {
                let sized = size_hole(book, t, s.shear, s.plate_bearing, all_double).unwrap();
                let raw = raw_hole(book, t, s.shear, s.plate_bearing, all_double).unwrap();
                self.length("d required", raw);
                sized
            }
        };
        self.length("d provided", hole);
        self.length("dr provided", rivet);
        if let Some(next) = series.iter().find(|x| x.1 >= hole * (1.0 - 1e-9)) {
            self.finding("hole of the standard series, from row 1", Figure::Length(next.1), Figure::Length(hole));
        }
        if !book.hole_table.is_empty() {
            assert_eq!(book.hole_table, US_DRIVEN);
            let loose = Figure::Length(hole - rivet);
            self.finding("clearance of hole over rivet, from row 1", Figure::Length(book.table_clearance), loose);
        }
        (hole, rivet)
    }

    fn pitch(&mut self, case: &Case, s: &Stresses, probe: &Joint, t: f64) -> f64 {
        let book = &case.book;
        let outer = f64::from(case.rows[0].0);
        let least = floor(book, probe);
        let most = cap(book, probe);
        if !case.check {
            let [by_shear, by_weaker, all] = balanced_pitches(probe, s, &book.convention()).map(|b| b / outer);
            self.length("balanced, outer row = rivets in shear", by_shear);
            self.length("balanced, outer row = rivets, weaker", by_weaker);
            self.length("balanced, all plate modes = rivets", all);
            let thin = case.hole.is_none() && t < book.thin_below;
            let wanted = if case.id == "indian" && !thin { by_shear } else { by_weaker };
            let p = case.pitch.map(|b| b / outer).or(admissible_pitch(wanted, least, most, book.step)).unwrap();
            return self.pitch_limits(least, most, p);
        }
        self.pitch_limits(least, most, case.pitch.unwrap() / outer)
    }

    fn pitch_limits(&mut self, least: f64, most: Cap, p: f64) -> f64 {
        self.length("p provided", p);
        self.length("pitch provided", p);
        self.length("floor (least pitch)", least);
        self.finding("pitch, least", Figure::Length(least), Figure::Length(p));
        if let Cap::At(most) = most {
            self.length("p least", least);
            self.length("p greatest", most);
            self.length("cap (greatest pitch)", most);
            self.finding("pitch, greatest", Figure::Length(most), Figure::Length(p));
        } else {
            self.length("p required", least);
            if most == Cap::Unknown {
                self.put("finding pitch, greatest provided", Figure::Length(p));
            }
        }
        p
    }

    /// Row distances and margin; the distances and the margin where all are known.
    fn rows(&mut self, case: &Case, p: f64, hole: f64, rivet: f64) -> Option<(Vec<f64>, f64)> {
        let book = &case.book;
        let list: Vec<(u32, f64)> = case.rows.iter().map(|r| (r.0, hole)).collect();
        let edge = book.margin_factor * hole;
        let sized_edge = (!case.check).then(|| round_up(edge, book.step));
        let margin = case.margin.or(sized_edge);
        let strip = p * f64::from(case.rows[0].0);
        let mut gaps = Vec::new();
        for (i, least) in back_pitches(book, p, &list, case.arrangement).into_iter().enumerate() {
            let (row, least) = (i + 1, least.expect("a form that the model has a clause for"));
            // A margin that is not given says nothing about the edge of a strap.
            let pair = [case.rows[i], case.rows[i + 1]];
            let heads = match margin {
                Some(margin) => head_room(pair, rivet, strip, margin, case.arrangement),
                None => head_room(pair.map(|r| (r.0, 2)), rivet, strip, 0.0, case.arrangement),
            };
            let sized = (!case.check).then(|| row_distance(book, least, heads));
            let Some(gap) = case.gaps.get(i).copied().or(sized) else { continue };
            self.length(&format!("g{row} required"), least.max(heads));
            self.length(&format!("g{row} provided"), gap);
            let what = format!("distance between rows, row {row} to {}", row + 1);
            self.finding(&what, Figure::Length(least), Figure::Length(gap));
            gaps.push(gap);
        }
        let margin = margin?;
        self.length("m required", edge);
        self.length("m provided", margin);
        self.finding("margin, least", Figure::Length(edge), Figure::Length(margin));
        if case.id == "us-code" {
            self.finding("margin, greatest", Figure::Length(1.75 * hole), Figure::Length(margin));
        }
        (gaps.len() + 1 == case.rows.len()).then_some((gaps, margin))
    }

    fn straps(&mut self, case: &Case, strip: f64, hole: f64) -> [f64; 2] {
        let kind = match case.shape {
            Shape::Lap => return [NOT_YET; 2],
            Shape::Single => Kind::Single,
            Shape::Equal => Kind::Equal,
            Shape::Unequal => Kind::Unequal,
        };
        let ends = ((case.rows[0].0, hole), (case.rows[case.rows.len() - 1].0, hole));
        let by = |book: &Book| straps(book, kind, case.plate, strip, ends.0, ends.1).unwrap();
        // The least thickness itself: the same rule on a grid too fine to be seen.
        let least = by(&Book { step: 1e-6, ..case.book });
        // The US code's stock goes by thirty-seconds.
        let step = if case.id == "us-code" { INCH / 32.0 } else { case.book.step };
        let stock = by(&Book { step, ..case.book });
        let taken = match case.wide {
            Some(wide) => [wide, case.narrow.unwrap_or(wide)],
            None => stock,
        };
        let names = ["single, wide or first strap", "narrow or second strap"];
        for i in 0..if kind == Kind::Single { 1 } else { 2 } {
            self.length(&format!("b{} required", i + 1), least[i]);
            self.length(&format!("b{} provided", i + 1), taken[i]);
            self.finding(names[i], Figure::Length(least[i]), Figure::Length(taken[i]));
        }
        taken
    }
}
