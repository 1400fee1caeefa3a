//! Checking a joint.

use core::ffi::c_char;

use seamwright::check::{Analysis, Finding, FindingSink, Required, SUBJECTS, Verdict, check_into};
use seamwright::error::Error;
use seamwright::joint::Joint;
use seamwright::materials::Materials;
use seamwright::rules::Rules;

use crate::border::{self, List, Out, Text};
use crate::joint::{sw_joint, sw_materials};
use crate::modes::sw_mode;
use crate::rules::sw_rules;
use crate::status::{Failure, SW_BAD_CHOICE, answer, sw_error};

/// The rule is not met: judge and decide.
pub const SW_VERDICT_OPEN: u32 = 0;
/// Too little is known to say.
pub const SW_VERDICT_UNKNOWN: u32 = 1;
/// A note to whoever signs.
pub const SW_VERDICT_NOTE: u32 = 2;
/// The rule is met.
pub const SW_VERDICT_MET: u32 = 3;
/// At least the required value is asked for.
pub const SW_AT_LEAST: u32 = 0;
/// At most the required value is asked for.
pub const SW_AT_MOST: u32 = 1;
/// Most findings that a check has.
pub const SW_MAX_FINDINGS: usize = 64;

const _: () = assert!(SW_MAX_FINDINGS == seamwright::check::MAX_FINDINGS, "the header's findings are the library's");

/// A rule of the book, what it requires and what is there. A record. Texts: `sw_finding_what`, `sw_finding_advice`.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_finding {
    /// Number of the subject, for `sw_finding_what`, `sw_finding_advice`, `sw_finding_unit`.
    pub subject: u32,
    /// Row that it concerns, from 1, or rivet of a group; 0 for the whole joint.
    pub row: u32,
    /// Entry of the rule book, or `SW_NO_ENTRY`.
    pub entry: u32,
    /// `SW_AT_LEAST` or `SW_AT_MOST`.
    pub sense: u32,
    /// `SW_VERDICT_*`.
    pub verdict: u32,
    /// Not used.
    pub reserved: u32,
    /// What is required, in the unit of the subject (mm, N or 1); not a number where nothing is.
    pub required: f64,
    /// What is there; not a number where that is not known.
    pub provided: f64,
}

impl sw_finding {
    pub(crate) fn of(f: &Finding) -> Self {
        sw_finding {
            subject: f.subject as u32,
            row: u32::from(f.row),
            entry: u32::from(f.entry.0),
            sense: match f.sense {
                Required::AtLeast => SW_AT_LEAST,
                Required::AtMost => SW_AT_MOST,
            },
            verdict: match f.verdict {
                Verdict::Open => SW_VERDICT_OPEN,
                Verdict::Unknown => SW_VERDICT_UNKNOWN,
                Verdict::Note => SW_VERDICT_NOTE,
                Verdict::Met => SW_VERDICT_MET,
            },
            reserved: 0,
            required: f.required,
            provided: f.provided,
        }
    }
}

fn rank(verdict: Verdict) -> usize {
    match verdict {
        Verdict::Open => 0,
        Verdict::Unknown => 1,
        Verdict::Note => 2,
        Verdict::Met => 3,
    }
}

/// The findings of a check on their way into the caller's array: open ones first, then unknown, notes, met.
pub(crate) struct Told {
    list: List<sw_finding>,
    /// How many there are, by [`rank`].
    tally: [usize; 4],
    /// Whether they are put into the array as they come, or counted only.
    placed: bool,
}

impl Told {
    /// An array that holds whatever a check can find is filled as it goes. One that may be too short is left alone
    /// until they are counted.
    pub(crate) fn new(list: List<sw_finding>) -> Self {
        let placed = list.takes(SW_MAX_FINDINGS);
        Told { list, tally: [0; 4], placed }
    }

    pub(crate) fn total(&self) -> usize {
        self.tally.iter().fold(0, |sum, n| sum.saturating_add(*n))
    }

    pub(crate) fn open(&self) -> usize {
        let [open, ..] = self.tally;
        open
    }

    /// Whether the array will do; nothing but the number is written where it will not.
    pub(crate) fn room(self) -> Result<Self, Failure> {
        let total = self.total();
        Ok(Told { list: self.list.room(total)?, ..self })
    }

    /// Ends the list. Findings that were only counted are written by checking once more: the library has no room for a
    /// list of its own.
    pub(crate) fn list(self, joint: &Joint, materials: &Materials, rules: &Rules) -> Result<(), Failure> {
        self.list_by(&mut |told| check_into(joint, materials, rules, told, &mut Analysis::blank()))
    }

    /// [`list`](Self::list) by another way to find them again.
    #[inline]
    pub(crate) fn list_by(mut self, again: &mut dyn FnMut(&mut Self) -> Result<(), Error>) -> Result<(), Failure> {
        if self.list.takes(0) && !self.placed {
            self = Told { list: self.list, tally: [0; 4], placed: true };
            again(&mut self)?;
        }
        let total = self.total();
        self.list.close(total);
        Ok(())
    }
}

impl FindingSink for Told {
    fn take(&mut self, finding: Finding) {
        let rank = rank(finding.verdict);
        if self.placed {
            let at = self.tally.iter().take(rank.saturating_add(1)).fold(0_usize, |sum, n| sum.saturating_add(*n));
            self.list.insert(at, self.total(), sw_finding::of(&finding));
        }
        if let Some(n) = self.tally.get_mut(rank) {
            *n = n.saturating_add(1);
        }
    }
}

/// What a check finds, for one strip of the joint. Strengths are on the footing of the stresses that went in.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_analysis {
    /// Size of this struct, set by `sw_analysis_init`.
    pub struct_size: u32,
    /// Number of findings.
    pub findings: u32,
    /// Number of findings that are open: rules not met.
    pub open: u32,
    /// 1 where there were more findings than the library keeps; otherwise 0.
    pub findings_lost: u32,
    /// Strength of the solid strip, N.
    pub solid_n: f64,
    /// Tearing at the outer row, N.
    pub tear_outer_n: f64,
    /// All rivets in shear, N.
    pub shear_all_n: f64,
    /// All rivets in bearing, N; not a number without a bearing stress.
    pub bearing_all_n: f64,
    /// The weakest mode.
    pub governing: sw_mode,
    /// The next one.
    pub runner_up: sw_mode,
    /// The weakest mode that the rule book counts.
    pub by_book: sw_mode,
    /// Strength of the next mode over that of the weakest.
    pub runner_up_ratio: f64,
    /// Least of all modes over the solid strip.
    pub efficiency: f64,
    /// Least of the modes that the book counts over the solid strip.
    pub book_efficiency: f64,
    /// The efficiency that may be credited: the lesser of both, capped by the book.
    pub credited_efficiency: f64,
    /// Plate percentage of the British and Indian rules, as a fraction of one.
    pub plate_percentage: f64,
    /// Rivet percentage, as a fraction of one.
    pub rivet_percentage: f64,
    /// Combined percentage, as a fraction of one; not a number where the rules have none.
    pub combined_percentage: f64,
}

impl sw_analysis {
    pub(crate) fn fresh() -> Self {
        sw_analysis {
            struct_size: size_of::<sw_analysis>() as u32,
            findings: 0,
            open: 0,
            findings_lost: 0,
            solid_n: 0.0,
            tear_outer_n: 0.0,
            shear_all_n: 0.0,
            bearing_all_n: f64::NAN,
            governing: sw_mode::none(),
            runner_up: sw_mode::none(),
            by_book: sw_mode::none(),
            runner_up_ratio: 0.0,
            efficiency: 0.0,
            book_efficiency: 0.0,
            credited_efficiency: 0.0,
            plate_percentage: 0.0,
            rivet_percentage: 0.0,
            combined_percentage: f64::NAN,
        }
    }

    pub(crate) fn of(a: &Analysis) -> Self {
        let found = &a.findings;
        sw_analysis { findings_lost: u32::from(found.lost()), ..sw_analysis::counted(a, found.len(), found.open()) }
    }

    /// With the numbers of findings that were told elsewhere.
    pub(crate) fn counted<F>(a: &Analysis<f64, F>, findings: usize, open: usize) -> Self {
        sw_analysis {
            struct_size: size_of::<sw_analysis>() as u32,
            findings: findings as u32,
            open: open as u32,
            findings_lost: 0,
            solid_n: a.solid,
            tear_outer_n: a.tear_outer,
            shear_all_n: a.shear_all,
            bearing_all_n: a.bearing_all.unwrap_or(f64::NAN),
            governing: sw_mode::of(&a.governing),
            runner_up: sw_mode::of(&a.runner_up),
            by_book: sw_mode::of(&a.by_book),
            runner_up_ratio: a.runner_up_ratio(),
            efficiency: a.efficiency,
            book_efficiency: a.book_efficiency,
            credited_efficiency: a.credited,
            plate_percentage: a.percentages.plate,
            rivet_percentage: a.percentages.rivet,
            combined_percentage: a.percentages.combined.unwrap_or(f64::NAN),
        }
    }
}

/// The joint behind a pointer. By itself: the copies that it makes leave the stack again.
#[inline(never)]
fn joint_at(joint: *const sw_joint) -> Result<Joint, Failure> {
    border::read(joint, 1)?.joint(1)
}

#[inline(never)]
fn put(found: &Analysis<f64, ()>, told: &Told, out: Out<sw_analysis>) {
    out.put(sw_analysis::counted(found, told.total(), told.open()));
}

/// Fills an analysis with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_analysis_init(analysis: *mut sw_analysis) {
    crate::border::init(analysis);
}

/// Checks a joint: all modes, efficiencies, findings. `findings` is an array of `capacity` elements, open ones first;
/// NULL and 0 where they are not wanted (`SW_MAX_FINDINGS` is always enough). `count` may be NULL.
#[unsafe(no_mangle)]
pub extern "C" fn sw_joint_check(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    analysis: *mut sw_analysis,
    findings: *mut sw_finding,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        // Looked at where it was made: a small machine has no room for a second joint.
        let joint = joint_at(joint);
        let joint = joint.as_ref().map_err(|failure| *failure)?;
        let materials = border::record(materials, 2)?.materials();
        border::with_rules(rules, 3, &mut |rules| {
            let out = Out::needed(analysis, 4)?;
            let mut told = Told::new(List::new(findings, capacity, count, 5)?);
            let mut found = Analysis::blank();
            check_into(joint, &materials, rules, &mut told, &mut found)?;
            let told = told.room()?;
            put(&found, &told, out);
            told.list(joint, &materials, rules)
        })
    })
}

fn subject_of(number: u32) -> Result<seamwright::check::Subject, Failure> {
    SUBJECTS.get(number as usize).copied().ok_or(Failure::border(SW_BAD_CHOICE, 1))
}

/// What a finding is about, by the number of its subject.
#[unsafe(no_mangle)]
pub extern "C" fn sw_finding_what(subject: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let subject = subject_of(subject)?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(subject.what())?))
    })
}

/// What to do about an open finding, by the number of its subject.
#[unsafe(no_mangle)]
pub extern "C" fn sw_finding_advice(subject: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let subject = subject_of(subject)?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(subject.advice())?))
    })
}

/// The unit of a finding's figures, by the number of its subject; empty for pure numbers.
#[unsafe(no_mangle)]
pub extern "C" fn sw_finding_unit(subject: u32, buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || {
        let subject = subject_of(subject)?;
        Text::new(buf, len, needed, 2)?.put(|out| Ok(out.write_str(subject.unit().symbol())?))
    })
}
