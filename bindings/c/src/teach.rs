//! Exercises for a class: drawn from a number, with key, sheets, solution and marking.

use core::ffi::c_char;

use seamwright::reconcile::Work;
use seamwright::rules::Rules;
use seamwright::sizing::Brief;
use seamwright::step::Name;
use seamwright::teach::{
    Audience, Effect, Family, Mark, Problem, Setting, Task, mark, problem, write_marks, write_problems, write_solution,
};

use crate::border::{self, List, Out, Slot};
use crate::form::sw_form;
use crate::joint::{sw_joint, sw_materials};
use crate::reconcile::{Figures, SW_NO_CONVENTION, convention_no, sw_figure, sw_name};
use crate::rules::{book_of, sw_rules, titled};
use crate::size::sw_brief;
use crate::status::{Failure, SW_BAD_CHOICE, answer, sw_error};
use crate::working::{failed, styled, sw_style, written};

/// The plate tears at its outer row.
pub const SW_EFFECT_TEARING: u32 = 0;
/// All rivets shear.
pub const SW_EFFECT_SHEARING: u32 = 1;
/// All rivets crush the plate.
pub const SW_EFFECT_BEARING: u32 = 2;
/// A plate tears at an inner row while the rivets outside it fail.
pub const SW_EFFECT_COMBINED: u32 = 3;
/// The greatest pitch of the rule book decides the pitch.
pub const SW_EFFECT_CAP: u32 = 4;
/// The plate is thin: the hole follows from shear and bearing.
pub const SW_EFFECT_THIN_PLATE: u32 = 5;
/// A boiler: permissible stresses low, for a seam that has to stay tight.
pub const SW_SETTING_BOILER: u32 = 0;
/// A structure.
pub const SW_SETTING_STRUCTURE: u32 = 1;
/// The joint is given: find its strengths and its efficiency.
pub const SW_TASK_CHECK: u32 = 0;
/// The plate and its stresses are given: find the joint.
pub const SW_TASK_SIZE: u32 = 1;
/// A sheet for the class: the exercises alone.
pub const SW_FOR_CLASS: u32 = 0;
/// A sheet for the teacher: the exercises and their answers.
pub const SW_FOR_TEACHER: u32 = 1;
/// Right within the digits that are given.
pub const SW_MARK_RIGHT: u32 = 0;
/// Right after an earlier slip of the student's own: to be credited.
pub const SW_MARK_CARRIED_OVER: u32 = 1;
/// Wrong by a slip or habit that is known.
pub const SW_MARK_SLIP: u32 = 2;
/// Wrong, and not explained.
pub const SW_MARK_WRONG: u32 = 3;
/// Not answered.
pub const SW_MARK_MISSING: u32 = 4;
/// Most figures that an exercise asks for.
pub const SW_MAX_ASKED: usize = 34;

const _: () = assert!(SW_MAX_ASKED == seamwright::teach::MAX_ASKED, "as in the library");

/// What exercise is wanted: a family and the number that it is drawn from. The same number, family and rule book give
/// the same exercise on every machine. A record: fill every member.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_exercise {
    /// The form of the joint.
    pub form: sw_form,
    /// `SW_SETTING_*`.
    pub setting: u32,
    /// `SW_TASK_*`. Cap and thin plate are taught by sizing.
    pub task: u32,
    /// `SW_EFFECT_*`: what decides, by at least three per cent.
    pub effect: u32,
    /// Not used.
    pub reserved: u32,
    /// The number that it is drawn from.
    pub seed: u64,
}

impl sw_exercise {
    fn draw(&self, rules: &Rules, argument: u32) -> Result<Problem, Failure> {
        let bad = || Failure::border(SW_BAD_CHOICE, argument);
        let family = Family {
            form: self.form.form(argument)?,
            setting: match self.setting {
                SW_SETTING_BOILER => Setting::Boiler,
                SW_SETTING_STRUCTURE => Setting::Structure,
                _ => return Err(bad()),
            },
            task: match self.task {
                SW_TASK_CHECK => Task::Check,
                SW_TASK_SIZE => Task::Size,
                _ => return Err(bad()),
            },
            effect: match self.effect {
                SW_EFFECT_TEARING => Effect::Tearing,
                SW_EFFECT_SHEARING => Effect::Shearing,
                SW_EFFECT_BEARING => Effect::Bearing,
                SW_EFFECT_COMBINED => Effect::Combined,
                SW_EFFECT_CAP => Effect::Cap,
                SW_EFFECT_THIN_PLATE => Effect::ThinPlate,
                _ => return Err(bad()),
            },
        };
        Ok(problem(self.seed, &family, rules)?)
    }
}

fn drawn(exercise: *const sw_exercise, rules: *const sw_rules) -> Result<Problem, Failure> {
    let exercise = border::record(exercise, 1)?;
    let (book, _) = book_of(&border::read(rules, 2)?)?;
    exercise.draw(&book.rules, 1)
}

/// One figure that an exercise asks for, and the answer. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_asked {
    /// The quantity.
    pub name: sw_name,
    /// The answer, in the unit of the quantity.
    pub value: f64,
}

impl sw_asked {
    fn of((name, value): (Name, f64)) -> Self {
        sw_asked { name: sw_name::of(name), value }
    }
}

/// The mark of one answer. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_mark {
    /// The quantity that was asked for.
    pub name: sw_name,
    /// `SW_MARK_*`.
    pub mark: u32,
    /// Number of the slip or habit that is known (`sw_convention_words`); `SW_NO_CONVENTION`: none.
    pub convention: u32,
    /// 1 where the digits rule out chance.
    pub sure: u32,
    /// Not used.
    pub reserved: u32,
    /// The answer of the key.
    pub value: f64,
}

impl sw_mark {
    fn of(((name, found), (_, value)): ((Name, Mark), (Name, f64))) -> Self {
        let (mark, convention, sure) = match found {
            Mark::Right => (SW_MARK_RIGHT, SW_NO_CONVENTION, 0),
            Mark::CarriedOver => (SW_MARK_CARRIED_OVER, SW_NO_CONVENTION, 0),
            Mark::Slip { convention, sure } => (SW_MARK_SLIP, convention_no(convention), u32::from(sure)),
            Mark::Wrong => (SW_MARK_WRONG, SW_NO_CONVENTION, 0),
            Mark::Missing => (SW_MARK_MISSING, SW_NO_CONVENTION, 0),
        };
        sw_mark { name: sw_name::of(name), mark, convention, sure, reserved: 0, value }
    }
}

/// What is given where the joint is to be found: form, plate, stresses, and row distances where some are settled.
fn brief_of(brief: &Brief) -> sw_brief {
    let mut c = sw_brief {
        form: sw_form::of(brief.form()),
        materials: sw_materials::of(brief.materials()),
        plate_mm: brief.plate().to_mm(),
        ..sw_brief::fresh()
    };
    for (slot, row) in c.back_pitch_mm.iter_mut().zip(1_usize..) {
        *slot = brief.stated_back_pitch(row).map_or(0.0, |gap| gap.to_mm());
    }
    c
}

/// Draws an exercise. `joint` is the joint that is given, or the one to be found; `brief` is what is given where the
/// joint is to be found (`SW_TASK_SIZE`), and left alone otherwise. Both may be NULL. `SW_NO_PROBLEM` where the effect
/// cannot be made to decide in this form, or is not taught by this task.
#[unsafe(no_mangle)]
pub extern "C" fn sw_exercise_draw(
    exercise: *const sw_exercise,
    rules: *const sw_rules,
    materials: *mut sw_materials,
    joint: *mut sw_joint,
    brief: *mut sw_brief,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let out = Slot::needed(materials, 3)?;
        let (joint_out, brief_out) = (Out::wanted(joint, 4)?, Out::wanted(brief, 5)?);
        let found = drawn(exercise, rules)?;
        let steel = match &found.case.work {
            Work::Check(_, materials) => sw_materials::of(materials),
            Work::Size(brief) => sw_materials::of(brief.materials()),
        };
        out.put(steel);
        if let Some(out) = joint_out {
            out.put(sw_joint::of(&found.design.joint));
        }
        if let (Some(out), Work::Size(brief)) = (brief_out, &found.case.work) {
            out.put(brief_of(brief));
        }
        Ok(())
    })
}

/// What an exercise asks for, in the order of the work, and the answers, into an array of the caller's (`SW_MAX_ASKED`
/// is always enough). NULL and 0 ask for the number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_exercise_key(
    exercise: *const sw_exercise,
    rules: *const sw_rules,
    asked: *mut sw_asked,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let list = List::new(asked, capacity, count, 3)?;
        let found = drawn(exercise, rules)?;
        list.room(found.key.iter().count())?.fill(found.key.iter().map(sw_asked::of));
        Ok(())
    })
}

/// Marks a student's answers, in any order; figures that were not asked for are left out of account. One mark for each
/// figure of the key, in its order. Credited are `SW_MARK_RIGHT` and `SW_MARK_CARRIED_OVER`. NULL and 0 ask for the
/// number.
#[unsafe(no_mangle)]
pub extern "C" fn sw_exercise_mark(
    exercise: *const sw_exercise,
    rules: *const sw_rules,
    answers: *const sw_figure,
    answer_count: usize,
    marks: *mut sw_mark,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let list = List::new(marks, capacity, count, 5)?;
        let answers = Figures::read(answers, answer_count, 3)?;
        let found = drawn(exercise, rules)?;
        let list = list.room(found.key.iter().count())?;
        let marked = mark(&found, answers.list())?;
        list.fill(marked.iter().zip(found.key.iter()).map(sw_mark::of));
        Ok(())
    })
}

/// The marks of a student's answers as a sheet.
#[unsafe(no_mangle)]
pub extern "C" fn sw_exercise_marks_text(
    exercise: *const sw_exercise,
    rules: *const sw_rules,
    answers: *const sw_figure,
    answer_count: usize,
    style: *const sw_style,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let answers = Figures::read(answers, answer_count, 3)?;
        let (style, text) = styled(style, 5, (buf, len, needed))?;
        let found = drawn(exercise, rules)?;
        let marked = mark(&found, answers.list())?;
        text.put(|out| write_marks(out, style, &found, &marked).map_err(failed))
    })
}

/// The full working of an exercise.
#[unsafe(no_mangle)]
pub extern "C" fn sw_exercise_solution(
    exercise: *const sw_exercise,
    rules: *const sw_rules,
    style: *const sw_style,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let found = drawn(exercise, rules)?;
        written((rules, 2), (style, 3), (buf, len, needed), |out, style, book| write_solution(out, style, &found, book))
    })
}

/// A sheet of exercises, for the class or for the teacher (`SW_FOR_*`). Each is drawn anew as it is written.
#[unsafe(no_mangle)]
pub extern "C" fn sw_exercises_text(
    exercises: *const sw_exercise,
    exercise_count: usize,
    rules: *const sw_rules,
    audience: u32,
    style: *const sw_style,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let exercises = border::array(exercises, exercise_count, 1)?;
        let rules = border::read(rules, 3)?;
        let audience = match audience {
            SW_FOR_CLASS => Audience::Class,
            SW_FOR_TEACHER => Audience::Teacher,
            _ => return Err(Failure::border(SW_BAD_CHOICE, 4)),
        };
        let (style, text) = styled(style, 5, (buf, len, needed))?;
        titled(&rules, |book| {
            for exercise in exercises {
                exercise.draw(&book.rules, 1)?;
            }
            // Each could be drawn just now, and drawing is the same every time.
            let all = || exercises.iter().filter_map(|e| e.draw(&book.rules, 1).ok());
            text.put(|out| write_problems(out, style, all(), audience, book).map_err(failed))
        })
    })
}
