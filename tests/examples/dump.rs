//! What the library makes of every vector, bit for bit: one line a figure, `where<TAB>figure<TAB>bits`. The tests of
//! the bindings compare theirs with it (`cargo run -p seamwright-tests --example dump`).

use std::io::{BufWriter, Write, stdout};

use seamwright::check::{Analysis, Findings};
use seamwright::group::{GroupCheck, GroupDesign};
use seamwright::joint::{Form, Joint};
use seamwright::materials::Materials;
use seamwright::modes::{Lens, Strengths, letters, prescribed_gaps};
use seamwright::proportion::Limit;
use seamwright::quantities::{Length, Pressure};
use seamwright::rating::{Footing, Shell, joint_pressure};
use seamwright::reconcile::{Case, Figure, Work, reconcile};
use seamwright::rules::{BOOKS, Entry, INDIAN, Rules};
use seamwright::sensitivity::{Target, Tolerances, slopes, tolerance::worst_case};
use seamwright::shop::{HeadForm, LengthRule, Order, Run, Stock, shop_sheet};
use seamwright::sizing::Design;
use seamwright::step::{Name, Plain, Quantity};
use seamwright::teach::{EFFECTS, Family, Problem, Setting, Task, problem};
use seamwright::vessel::{GirthBrief, GirthPlace, PlateStock, VesselBrief, vessel};
use seamwright::{given::Given, rules::Rounding};
use seamwright_tests::{cut_name, evaluate, load, load_file, rules_of, vectors_dir};

/// Where a figure belongs, and where it is written.
struct Dump<'a, W: Write> {
    place: String,
    out: &'a mut W,
}

impl<W: Write> Dump<'_, W> {
    fn number(&mut self, name: &str, x: f64) {
        writeln!(self.out, "{}\t{name}\t{:016x}", self.place, x.to_bits()).expect("standard output takes it");
    }

    fn length(&mut self, name: &str, x: Option<Length>) {
        if let Some(x) = x {
            self.number(name, x.to_mm());
        }
    }

    fn limit(&mut self, name: &str, limit: &Limit<f64>) {
        if let Limit::At(x, _) = limit {
            self.number(name, *x);
        }
    }

    fn joint(&mut self, joint: &Joint) {
        self.length("pitch", Some(joint.pitch()));
        self.length("strip", Some(joint.strip()));
        self.length("other_plate", joint.other_plate());
        self.length("wide_strap", joint.wide_strap());
        self.length("narrow_strap", joint.narrow_strap());
        self.length("margin", joint.margin());
        self.length("width", joint.widths().map(|w| w.0));
        self.length("narrow_width", joint.widths().and_then(|w| w.1));
        for (row, n) in joint.rows().iter().zip(1..) {
            self.length(&format!("hole.{n}"), Some(row.hole()));
            self.length(&format!("rivet.{n}"), Some(row.rivet()));
            self.length(&format!("gap.{n}"), joint.back_pitch(n));
        }
    }

    fn analysis(&mut self, a: &Analysis, joint: &Joint, materials: &Materials, rules: &Rules) {
        let (tearing, shearing, bearing) = a.classic_efficiencies();
        for (name, x) in [
            ("solid", Some(a.solid)),
            ("tear_outer", Some(a.tear_outer)),
            ("shear_all", Some(a.shear_all)),
            ("bearing_all", a.bearing_all),
            ("governing", Some(a.governing.strength)),
            ("runner_up", Some(a.runner_up.strength)),
            ("by_book", Some(a.by_book.strength)),
            ("efficiency", Some(a.efficiency)),
            ("book_efficiency", Some(a.book_efficiency)),
            ("credited", Some(a.credited)),
            ("runner_up_ratio", Some(a.runner_up_ratio())),
            ("classic.tearing", Some(tearing)),
            ("classic.shearing", Some(shearing)),
            ("classic.bearing", bearing),
            ("percent.plate", Some(a.percentages.plate)),
            ("percent.rivet", Some(a.percentages.rivet)),
            ("percent.combined", a.percentages.combined),
        ] {
            if let Some(x) = x {
                self.number(name, x);
            }
        }
        self.findings(&a.findings);
        let given = Given::new(Plain, joint, materials);
        let strengths = Strengths::new(Plain, joint, &given, rules, Lens::Real);
        for mode in strengths.modes() {
            self.number(&format!("mode {}", cut_name(&mode.cut)), mode.strength);
        }
        for letter in &letters(Plain, joint, &given, rules, &strengths) {
            self.number(&format!("letter {}", letter.letter), letter.strength);
        }
        for ((gap, _), n) in prescribed_gaps(Plain, joint, &given, rules).iter().zip(1..joint.form().row_count()) {
            self.number(&format!("prescribed.{n}"), *gap);
        }
    }

    fn group(&mut self, found: &GroupCheck, design: Option<&GroupDesign>) {
        if let Some(d) = design {
            self.number("by_shear", d.by_shear);
            self.numbers([("by_bearing", d.by_bearing), ("needed", Some(d.needed))]);
            self.numbers([("hole", Some(d.hole)), ("rivet", Some(d.rivet))]);
        }
        self.numbers([("areas", Some(found.areas)), ("polar", Some(found.polar)), ("moment", Some(found.moment))]);
        self.numbers([("used", Some(found.used)), ("critical", Some(f64::from(found.critical())))]);
        self.numbers([("safe_load", found.safe_load), ("safe_couple", found.safe_couple)]);
        for (what, stressed) in [("shear", Some(found.shear)), ("bearing", found.bearing)] {
            let Some(s) = stressed else { continue };
            self.number(&format!("{what}.rivet"), f64::from(s.rivet));
            self.number(&format!("{what}.stress"), s.stress);
            self.numbers([(format!("{what}.used"), s.used)]);
        }
        let points = [("centroid", Some(found.centroid)), ("arm", Some(found.arm)), ("centre", found.centre)];
        for (what, [x, y]) in points.into_iter().filter_map(|(what, point)| Some((what, point?))) {
            self.numbers([(format!("{what}.x"), Some(x)), (format!("{what}.y"), Some(y))]);
        }
        for (r, n) in found.rivets().iter().zip(1..) {
            for (what, [x, y]) in [("direct", r.direct), ("turning", r.turning), ("force", r.force)] {
                self.numbers([(format!("{what}.{n}.x"), Some(x)), (format!("{what}.{n}.y"), Some(y))]);
            }
            self.numbers([(format!("resultant.{n}"), Some(r.resultant)), (format!("shear.{n}"), Some(r.shear))]);
            self.numbers([(format!("direction.{n}"), Some(r.direction())), (format!("bearing.{n}"), r.bearing)]);
        }
        self.findings(&found.findings);
    }

    fn numbers<S: AsRef<str>>(&mut self, all: impl IntoIterator<Item = (S, Option<f64>)>) {
        for (name, x) in all {
            if let Some(x) = x {
                self.number(name.as_ref(), x);
            }
        }
    }

    fn findings(&mut self, list: &Findings) {
        for (finding, n) in list.iter().zip(0..) {
            for (name, x) in [("required", finding.required), ("provided", finding.provided)] {
                if !x.is_nan() {
                    self.number(&format!("finding.{n}.{name}"), x);
                }
            }
        }
    }

    fn design(&mut self, d: &Design) {
        if let Some((computed, _)) = d.hole.computed {
            self.number("hole_computed", computed);
        }
        self.number("by_shear", d.pitch.by_shear);
        self.number("by_weaker", d.pitch.by_weaker);
        self.number("by_all_modes", d.pitch.by_all_modes);
        self.number("pitch_least", d.pitch.least);
        self.limit("pitch_greatest", &d.pitch.greatest);
        self.number("pitch_taken", d.pitch.taken);
        self.number("margin_least", d.margin);
        let [wide, narrow] = &d.straps;
        self.limit("strap_least.wide", wide);
        self.limit("strap_least.narrow", narrow);
        for ((gap, _), n) in d.gaps.iter().zip(1..d.joint.form().row_count()) {
            self.number(&format!("gap_least.{n}"), *gap);
        }
        for (room, n) in d.heads.iter().zip(1..d.joint.form().row_count()) {
            for (name, least) in [("heads_beside", room.at_strap), ("heads_apart", room.of_rows)] {
                if let Some(least) = least {
                    self.number(&format!("{name}.{n}"), least);
                }
            }
        }
    }

    /// What reproduces the rivets' strength with 1.875 for 2 and a tenth less, and what comes nearest.
    fn reconciled(&mut self, a: &Analysis, joint: &Joint, materials: &Materials, rules: &Rules) {
        let case = Case { work: Work::Check(*joint, *materials), rules: *rules };
        for share in [0.9375, 0.9] {
            let stated = share * a.shear_all;
            let Ok(figure) = Figure::within(Name(Quantity::ShearAll, 0), stated, 1e-6 * stated) else { continue };
            let Ok(found) = reconcile(&case, &[figure]) else {
                self.number(&format!("reconcile.{share}.refused"), 1.0);
                continue;
            };
            self.number(&format!("reconcile.{share}.tried"), f64::from(found.tried));
            self.number(&format!("reconcile.{share}.reproduced"), f64::from(u8::from(found.reproduced())));
            self.number(&format!("reconcile.{share}.nearest"), found.nearest.values[0]);
            self.number(&format!("reconcile.{share}.miss"), found.nearest.miss);
        }
    }

    /// What each input does, and the worst of some tolerances.
    fn sensitive(&mut self, joint: &Joint, materials: &Materials, rules: &Rules) {
        if let Ok(found) = slopes(joint, materials, rules) {
            for (line, n) in found.lines.iter().zip(0..) {
                for (what, side) in [
                    ("efficiency", line.efficiency),
                    ("book", line.book_efficiency),
                    ("credited", line.credited),
                    ("strength", line.strength),
                ] {
                    self.number(&format!("slope.{n}.{what}.left"), side.left);
                    self.number(&format!("slope.{n}.{what}.right"), side.right);
                }
                self.number(&format!("slope.{n}.value"), line.value);
            }
        }
        let mm = Length::mm;
        let tolerances = Tolerances::none().plate(mm(0.3)).straps(mm(0.2)).hole(mm(0.25)).pitch(mm(0.5));
        for (name, target) in [("efficiency", Target::Efficiency), ("strength", Target::Strength)] {
            let Ok(found) = worst_case(joint, materials, rules, &tolerances, target) else {
                self.number(&format!("worst.{name}.refused"), 1.0);
                continue;
            };
            self.number(&format!("worst.{name}"), found.worst.value);
            self.number(&format!("worst.{name}.stated"), found.stated);
            for ((moved, alone), n) in found.worst.deviation.iter().zip(found.alone).zip(0..) {
                self.number(&format!("worst.{name}.{n}.moved"), *moved);
                self.number(&format!("worst.{name}.{n}.alone"), alone);
            }
        }
    }

    /// The key of a problem.
    fn problem(&mut self, problem: &Problem) {
        for (Name(quantity, row), value) in problem.key.iter() {
            self.number(&format!("{}.{row}", quantity.symbol()), value);
        }
    }

    /// The joint in a shell of a metre, and a shell designed for one megapascal, with a girth seam.
    fn shells(&mut self, analysis: &Analysis, joint: &Joint, materials: &Materials, rules: &Rules) {
        let shell = Shell::new(Length::mm(1000.0), Footing::Permissible).corrosion(Length::mm(0.5));
        let Ok(pressure) = joint_pressure(joint, materials, analysis, &shell, rules) else {
            self.number("shell_refused", 1.0);
            return;
        };
        self.number("shell.pressure", pressure.to_mpa());
        let stock = PlateStock::every(Length::mm(1.0), Length::mm(5.0), Length::mm(40.0));
        let brief = VesselBrief::new(*joint.form(), Pressure::mpa(1.0), shell, *materials, stock);
        let Ok(lap) = Form::lap(1) else { return };
        let Ok(outcome) = vessel(&brief.girth(GirthBrief::new(lap, GirthPlace::End)), rules) else {
            self.number("vessel_refused", 1.0);
            return;
        };
        let Some(v) = outcome.found() else {
            self.number("vessel_none", 1.0);
            return;
        };
        self.number("vessel.plate", v.plate);
        self.number("vessel.allowed", v.allowed.pressure);
        self.number("vessel.credited", v.seam.analysis.credited);
        self.number("vessel.pitch", v.seam.joint.pitch().to_mm());
        self.number("vessel.tried", f64::from(v.tried));
        if let Some(girth) = &v.girth {
            self.number("girth.pressure", girth.pressure);
            self.number("girth.needed", girth.needed);
            self.number("girth.rivets", f64::from(girth.rivets));
            self.number("girth.end_rivets", girth.end_rivets);
            self.number("girth.pitch", girth.joint.pitch().to_mm());
            self.number("girth.credited", girth.analysis.credited);
        }
    }

    /// The joint along three metres, by the handbook's boiler rule.
    fn shop(&mut self, joint: &Joint, materials: &Materials, rules: &Rules) {
        let end = joint.margin().unwrap_or(Length::mm(40.0));
        let run = Run::Straight { length: Length::m(3.0), first_end: end, last_end: end };
        let stock = Stock::every(Length::mm(2.0), Rounding::Up);
        let order = Order::steel(run, HeadForm::Button, LengthRule::BoilerButton, stock);
        let Ok(sheet) = shop_sheet(joint, materials, rules, &order) else {
            self.number("shop_refused", 1.0);
            return;
        };
        self.number("shop.pitch", sheet.pitch.taken.pitch);
        self.number("shop.exact", sheet.pitch.exact);
        self.number("shop.seam", sheet.along.seam);
        for line in sheet.rivets() {
            self.number(&format!("shop.length.{}", line.row), line.length);
            self.number(&format!("shop.stock.{}", line.row), line.stock);
            self.number(&format!("shop.mass.{}", line.row), line.mass);
            self.number(&format!("shop.count.{}", line.row), f64::from(line.count));
        }
        self.number("shop.total", sheet.masses.total);
        for hole in sheet.layout().holes() {
            self.number(&format!("shop.x.{}", hole.number), hole.x.to_mm());
            self.number(&format!("shop.y.{}", hole.number), hole.y.to_mm());
        }
    }
}

fn main() {
    let mut out = BufWriter::new(stdout().lock());
    for book in BOOKS {
        let mut dump = Dump { place: format!("book {}", book.id), out: &mut out };
        for entry in Entry::all() {
            dump.number(&entry.index().to_string(), book.rules.get(entry));
        }
    }
    for (effect, task) in EFFECTS.iter().flat_map(|e| [(*e, Task::Check), (*e, Task::Size)]) {
        for (name, form) in [("lap", Form::lap(2)), ("straps", Form::unequal_straps(3))] {
            let Ok(form) = form else { continue };
            let family = Family { form, setting: Setting::Boiler, task, effect };
            for seed in [1, 20_260_101, u64::MAX] {
                let place = format!("problem {name} {task:?} {effect:?} {seed}");
                match problem(seed, &family, &INDIAN.rules) {
                    Ok(drawn) => Dump { place, out: &mut out }.problem(&drawn),
                    Err(_) => Dump { place, out: &mut out }.number("refused", 1.0),
                }
            }
        }
    }
    let dir = vectors_dir();
    let mut vectors = load(&dir);
    vectors.extend(load_file(&dir.join("misprints.toml")));
    vectors.extend(load_file(&dir.join("tricky.toml")));
    for vector in &vectors {
        let rules = rules_of(vector);
        let found = match evaluate(vector, &rules) {
            Ok(found) => found,
            Err(why) => {
                writeln!(out, "refused {}\t{why}\t", vector.id).expect("standard output takes it");
                continue;
            }
        };
        let mut dump = Dump { place: format!("check {}", vector.id), out: &mut out };
        if let Some(checked) = &found.check {
            dump.joint(&checked.joint);
            dump.analysis(&checked.analysis, &checked.joint, &checked.materials, &rules);
            dump.reconciled(&checked.analysis, &checked.joint, &checked.materials, &rules);
            dump.sensitive(&checked.joint, &checked.materials, &rules);
        }
        dump.place = format!("size {}", vector.id);
        if let Some((design, checked)) = &found.size {
            dump.joint(&design.joint);
            dump.design(design);
            dump.analysis(&design.analysis, &design.joint, &checked.materials, &rules);
            dump.shop(&design.joint, &checked.materials, &rules);
            dump.shells(&design.analysis, &design.joint, &checked.materials, &rules);
        }
        dump.place = format!("group {}", vector.id);
        if let Some((check, design)) = &found.group {
            dump.group(check, design.as_ref());
        }
        dump.place = format!("formula {}", vector.id);
        for (name, value) in &found.formulas {
            dump.number(name, *value);
        }
    }
}
