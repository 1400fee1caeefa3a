//! What the library makes of a vector, quantity by quantity.

use std::collections::BTreeMap;

use seamwright::check::{Analysis, Subject, check};
use seamwright::given::Given;
use seamwright::group::{GroupCheck, GroupDesign, check_group, size_group};
use seamwright::joint::Joint;
use seamwright::materials::Materials;
use seamwright::modes::{Cut, Lens, Strengths, letters};
use seamwright::proportion::Limit;
use seamwright::rules::Rules;
use seamwright::sizing::{Decided, Design, size};
use seamwright::step::Plain;

use crate::calls::formulas;
use crate::schema::Vector;
use crate::stated::{brief_of, group_of, joint_of, materials_of};

/// One result: a figure in mm, N, MPa or one, or a word.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A figure.
    Number(f64),
    /// A word.
    Text(String),
}

/// A joint with its stresses and what the check finds.
#[derive(Clone, Debug)]
pub struct Checked {
    /// The joint.
    pub joint: Joint,
    /// Its stresses.
    pub materials: Materials,
    /// What the check finds.
    pub analysis: Analysis,
}

/// Everything that the library makes of a vector.
#[derive(Clone, Debug)]
pub struct Evaluated {
    /// The rule book.
    pub rules: Rules,
    /// The joint of `check`.
    pub check: Option<Checked>,
    /// The design of `size`, and its joint checked.
    pub size: Option<(Design, Checked)>,
    /// The group of rivets, and its design where its size was asked for.
    pub group: Option<(GroupCheck, Option<GroupDesign>)>,
    /// The formulas by name.
    pub formulas: BTreeMap<String, f64>,
}

/// Puts a vector to the library.
///
/// # Errors
/// What the library refuses, or what cannot be read.
pub fn evaluate(vector: &Vector, rules: &Rules) -> Result<Evaluated, String> {
    let checked = |joint: Joint, materials: Materials| -> Result<Checked, String> {
        let analysis = check(&joint, &materials, rules).map_err(|e| e.to_string())?;
        Ok(Checked { joint, materials, analysis })
    };
    let check = match &vector.check {
        Some(stated) => Some(checked(joint_of(stated)?, materials_of(stated)?)?),
        None => None,
    };
    let size = match &vector.size {
        Some(stated) => {
            let design = size(&brief_of(stated)?, rules).map_err(|e| e.to_string())?;
            let again = checked(design.joint, materials_of(stated)?)?;
            Some((design, again))
        }
        None => None,
    };
    let group = match &vector.group {
        Some(stated) => {
            let (group, load, permitted) = group_of(stated)?;
            if stated.hole.is_none() && stated.holes.is_empty() {
                let design = size_group(&group, &load, &permitted, rules).map_err(|e| e.to_string())?;
                Some((design.check.clone(), Some(design)))
            } else {
                Some((check_group(&group, &load, &permitted, rules).map_err(|e| e.to_string())?, None))
            }
        }
        None => None,
    };
    Ok(Evaluated { rules: *rules, check, size, group, formulas: formulas(&vector.formula)? })
}

/// The strengths of a joint as it is.
#[must_use]
pub fn strengths(joint: &Joint, materials: &Materials, rules: &Rules) -> Strengths<f64> {
    Strengths::new(Plain, joint, &Given::new(Plain, joint, materials), rules, Lens::Real)
}

/// A cut from its short name: `all`, `plate 2`, `A 1`, `B 3`, `wide 3 narrow 2`, `strap 2`.
///
/// # Errors
/// An unknown member, or no row.
pub fn parse_cut(name: &str) -> Result<Cut, String> {
    let mut cut = Cut::default();
    if name == "all" {
        return Ok(cut);
    }
    let words: Vec<&str> = name.split_whitespace().collect();
    for pair in words.chunks(2) {
        let [member, row] = pair else { return Err(format!("{name:?} is not a cut")) };
        let row: u8 = row.parse().map_err(|_| format!("{name:?}: no row"))?;
        match *member {
            "plate" | "A" => cut.plate = row,
            "wide" | "strap" | "B" => cut.other = row,
            "narrow" => cut.narrow = row,
            _ => return Err(format!("{name:?}: no member {member:?}")),
        }
    }
    Ok(cut)
}

/// The short name of a cut: `all`, `plate 2`, `wide 3 narrow 3`; plate B of a lap is `wide` here too.
#[must_use]
pub fn cut_name(cut: &Cut) -> String {
    let members = [("plate", cut.plate), ("wide", cut.other), ("narrow", cut.narrow)];
    let torn: Vec<String> =
        members.iter().filter(|(_, row)| *row > 0).map(|(member, row)| format!("{member} {row}")).collect();
    if torn.is_empty() { "all".to_owned() } else { torn.join(" ") }
}

fn decided(d: Decided) -> &'static str {
    match d {
        Decided::Given => "given",
        Decided::Balance => "balance",
        Decided::Floor => "floor",
        Decided::Cap => "cap",
    }
}

impl Evaluated {
    /// A quantity by name; `size.` or `check.` before it says where from, `formula.` names a formula.
    ///
    /// # Errors
    /// A quantity that does not exist here.
    pub fn get(&self, name: &str) -> Result<Value, String> {
        let missing = || format!("{name}: no such quantity here");
        if let Some(formula) = name.strip_prefix("formula.") {
            return self.formulas.get(formula).copied().map(Value::Number).ok_or_else(missing);
        }
        if let Some(rest) = name.strip_prefix("group.") {
            return self.grouped(rest).map(Value::Number).ok_or_else(missing);
        }
        let (size, check) = (self.size.as_ref(), self.check.as_ref());
        let found = if let Some(rest) = name.strip_prefix("size.") {
            size.and_then(|(d, c)| self.sized(d, c, rest))
        } else if let Some(rest) = name.strip_prefix("check.") {
            check.and_then(|c| self.checked(c, rest))
        } else {
            let of_check = || check.and_then(|c| self.checked(c, name));
            size.and_then(|(d, c)| self.sized(d, c, name)).or_else(of_check)
        };
        found.ok_or_else(missing)
    }

    fn grouped(&self, name: &str) -> Option<f64> {
        let (found, design) = self.group.as_ref()?;
        let (head, tail) = name.split_once('.').unwrap_or((name, ""));
        let rivet = || found.rivets().get(tail.parse::<usize>().ok()?.checked_sub(1)?);
        match head {
            "centroid_x" => Some(found.centroid[0]),
            "centroid_y" => Some(found.centroid[1]),
            "polar" => Some(found.polar),
            "arm_x" => Some(found.arm[0]),
            "moment" => Some(found.moment),
            "centre_distance" => found.centre.map(|[x, y]| (x - found.centroid[0]).hypot(y - found.centroid[1])),
            "direct" => rivet().map(|r| r.direct[0].hypot(r.direct[1])),
            "turning" => rivet().map(|r| r.turning[0].hypot(r.turning[1])),
            "turning_x" => rivet().map(|r| r.turning[0]),
            "turning_y" => rivet().map(|r| r.turning[1]),
            "force_y" => rivet().map(|r| r.force[1]),
            "force" => rivet().map(|r| r.resultant),
            "critical" => Some(f64::from(found.critical())),
            "shear" => Some(found.shear.stress),
            "bearing" => found.bearing.map(|b| b.stress),
            "used" => Some(found.used),
            "safe_load" => found.safe_load,
            "needed" => design.as_ref().map(|d| d.needed),
            "by_bearing" => design.as_ref()?.by_bearing,
            "hole" => design.as_ref().map(|d| d.hole),
            "rivet" => design.as_ref().map(|d| d.rivet),
            _ => None,
        }
    }

    fn sized(&self, design: &Design, checked: &Checked, name: &str) -> Option<Value> {
        let at = |limit: &Limit<f64>| match limit {
            Limit::At(x, _) => Some(*x),
            _ => None,
        };
        let (head, tail) = name.split_once('.').unwrap_or((name, ""));
        let row = || tail.parse::<usize>().ok()?.checked_sub(1);
        let number = match head {
            "hole_computed" => design.hole.computed.map(|(d, _)| d),
            "hole" => Some(design.hole.hole),
            "rivet" => Some(design.hole.rivet),
            "pitch_by_shear" => Some(design.pitch.by_shear),
            "pitch_by_weaker" => Some(design.pitch.by_weaker),
            "pitch_by_all_modes" => Some(design.pitch.by_all_modes),
            "pitch_least" => Some(design.pitch.least),
            "pitch_greatest" => at(&design.pitch.greatest),
            "pitch" => Some(design.pitch.taken),
            "gap" => design.gaps.get(row()?).map(|(g, _)| *g),
            "heads_beside" => design.heads.get(row()?).and_then(|room| room.at_strap),
            "heads_apart" => design.heads.get(row()?).and_then(|room| room.of_rows),
            "gap_taken" => design.joint.back_pitch(row()?.wrapping_add(1)).map(|g| g.to_mm()),
            "diagonal" => {
                let n = design.joint.rows().iter().skip(row()?).take(2).map(|r| r.rivets).max()?;
                let across = design.joint.strip().to_mm() / (2.0 * f64::from(n));
                design.gaps.get(row()?).map(|(g, _)| g.hypot(across))
            }
            "margin_least" => Some(design.margin),
            "margin" => design.joint.margin().map(|m| m.to_mm()),
            "strap" | "strap_taken" => match (head, tail) {
                ("strap", "narrow") => at(&design.straps[1]),
                ("strap", _) => at(&design.straps[0]),
                (_, "narrow") => design.joint.narrow_strap().map(|b| b.to_mm()),
                _ => design.joint.wide_strap().map(|b| b.to_mm()),
            },
            "decided" => return Some(Value::Text(decided(design.pitch.decided).to_owned())),
            _ => return self.checked(checked, name),
        };
        number.map(Value::Number)
    }

    fn checked(&self, checked: &Checked, name: &str) -> Option<Value> {
        let a = &checked.analysis;
        if let Some(cut) = name.strip_prefix("mode ") {
            let found = strengths(&checked.joint, &checked.materials, &self.rules).mode(parse_cut(cut).ok()?);
            return Some(Value::Number(found.strength));
        }
        let (tear, shear, bearing) = a.classic_efficiencies();
        let (head, tail) = name.split_once('.').unwrap_or((name, ""));
        let row = tail.parse::<u8>().unwrap_or(0);
        let required = |subject: Subject, row: u8| a.findings.find(subject, row).map(|f| f.required);
        let number = match name {
            "pitch" => Some(checked.joint.pitch().to_mm()),
            "solid" => Some(a.solid),
            "tear_outer" => Some(a.tear_outer),
            "shear_all" => Some(a.shear_all),
            "bearing_all" => a.bearing_all,
            "governing" => return Some(Value::Text(cut_name(&a.governing.cut))),
            "runner_up" => return Some(Value::Text(cut_name(&a.runner_up.cut))),
            "strength" => Some(a.governing.strength),
            "efficiency" => Some(a.efficiency),
            "efficiency.tear" => Some(tear),
            "efficiency.shear" => Some(shear),
            "efficiency.bearing" => bearing,
            "book_efficiency" => Some(a.book_efficiency),
            "credited" => Some(a.credited),
            "runner_up_ratio" => Some(a.runner_up_ratio()),
            "percent.plate" => Some(a.percentages.plate / 100.0),
            "percent.rivet" => Some(a.percentages.rivet / 100.0),
            "percent.combined" => a.percentages.combined.map(|x| x / 100.0),
            "pitch_least" => required(Subject::PitchLeast, 0),
            "pitch_greatest" => required(Subject::PitchGreatest, 0),
            "margin_least" => required(Subject::MarginLeast, 0),
            "strap.wide" => required(Subject::WideStrap, 0),
            "strap.narrow" => required(Subject::NarrowStrap, 0),
            _ if head == "gap" => required(Subject::RowDistance, row),
            _ if head == "letter" => self.letter(checked, tail),
            _ => None,
        };
        number.map(Value::Number)
    }

    fn letter(&self, checked: &Checked, letter: &str) -> Option<f64> {
        let given = Given::new(Plain, &checked.joint, &checked.materials);
        let strengths = Strengths::new(Plain, &checked.joint, &given, &self.rules, Lens::Real);
        let all = letters(Plain, &checked.joint, &given, &self.rules, &strengths);
        all.iter().find(|l| l.letter.to_string() == letter).map(|l| l.strength)
    }
}
