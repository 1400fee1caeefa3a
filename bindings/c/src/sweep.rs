//! Sweeps: joints by the array.

use core::mem::size_of;
use core::ops::Range;

use seamwright::batch::{InputColumn, Inputs, ModeTable, NO_MODE, Outputs, Sweep};
use seamwright::bounds::Field;
use seamwright::error::{Error, ErrorKind};
use seamwright::joint::Form;

use crate::border::{self, Out, Slot};
use crate::form::sw_form;
use crate::joint::{sw_joint, sw_materials};
use crate::modes::sw_mode;
use crate::rules::{book_of, sw_rules};
use crate::status::{Failure, SW_BAD_CHOICE, SW_BAD_POINTER, answer, sw_error};

/// In the place of a mode's number: this row has none, because it could not be computed.
pub const SW_NO_MODE: u32 = 0xFFFF;
const _: () = assert!(SW_NO_MODE == NO_MODE as u32, "the header's number is the library's");

/// One input of a sweep. A record: all zeros for what is not given.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_sweep_column {
    /// The values; NULL: `same` in all rows.
    pub values: *const f64,
    /// How many values; the number of rows, unless they are the axis of a grid.
    pub count: usize,
    /// 0: one value for each row. Otherwise an axis of a grid that is nowhere written out: each value stands for so many
    /// rows, then comes the next, and after the last the first again.
    pub each: usize,
    /// The value of all rows where `values` is NULL; 0: not given.
    pub same: f64,
}

impl sw_sweep_column {
    const NONE: sw_sweep_column = sw_sweep_column { values: core::ptr::null(), count: 0, each: 0, same: 0.0 };

    fn column(&self, argument: u32) -> Result<Option<InputColumn<'_>>, Failure> {
        if self.values.is_null() && self.count == 0 {
            return Ok((self.same != 0.0).then_some(InputColumn::Constant(self.same)));
        }
        let values = border::column(self.values, self.count, argument)?;
        Ok(Some(match self.each {
            0 => InputColumn::Values(values),
            each => InputColumn::Axis { values, each },
        }))
    }
}

/// Joints of one form, row by row. Arrays are the caller's and are not kept.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_sweep {
    /// Size of this struct, set by `sw_sweep_init`.
    pub struct_size: u32,
    /// Not used.
    pub reserved: u32,
    /// The form of all joints.
    pub form: sw_form,
    /// Number of rows.
    pub rows: usize,
    /// Pitch of the outer row; width of the strip where that row has several rivets in it.
    pub pitch_mm: sw_sweep_column,
    /// Main plate; plate A of a lap.
    pub plate_mm: sw_sweep_column,
    /// Hole of every row.
    pub hole_mm: sw_sweep_column,
    /// Tensile stress of the plate.
    pub tension_mpa: sw_sweep_column,
    /// Shear stress of the rivets, single shear.
    pub rivet_shear_mpa: sw_sweep_column,
    /// Cold rivet of every row; as large as the hole where not given.
    pub rivet_mm: sw_sweep_column,
    /// Plate B of a lap, the single strap, the wide strap, or both straps.
    pub other_mm: sw_sweep_column,
    /// The second or narrow strap; as thick as `other_mm` where not given.
    pub narrow_mm: sw_sweep_column,
    /// Tensile stress of plate B or the straps; as of the plate where not given.
    pub other_tension_mpa: sw_sweep_column,
    /// Bearing stress of the plate.
    pub bearing_mpa: sw_sweep_column,
    /// Bearing stress of plate B or the straps; as of the plate where not given.
    pub other_bearing_mpa: sw_sweep_column,
    /// Shear stress of plates and straps at the margin.
    pub shear_out_mpa: sw_sweep_column,
    /// Centre of the edge row to the plate edge.
    pub margin_mm: sw_sweep_column,
    /// Distance from each row to the next.
    pub back_pitch_mm: sw_sweep_column,
}

/// Where the results of a sweep go: arrays of the caller's, apart from the inputs and from each other; NULL for what is
/// not wanted, except `efficiency`.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_sweep_results {
    /// Size of this struct, set by `sw_sweep_results_init`.
    pub struct_size: u32,
    /// Not used.
    pub reserved: u32,
    /// Over all modes; not a number where the row could not be computed.
    pub efficiency: *mut f64,
    /// Over the modes that the rule book counts.
    pub book_efficiency: *mut f64,
    /// The lesser of both, capped by the book.
    pub credited_efficiency: *mut f64,
    /// Number of the governing mode (see `sw_sweep_mode`), `SW_NO_MODE` where the row could not be computed.
    pub mode: *mut u16,
    /// `SW_OK`, or the kind of error of the row (see `sw_sweep_joint`).
    pub status: *mut u8,
}

impl sw_sweep_results {
    pub(crate) fn fresh() -> Self {
        sw_sweep_results {
            struct_size: size_of::<sw_sweep_results>() as u32,
            reserved: 0,
            efficiency: core::ptr::null_mut(),
            book_efficiency: core::ptr::null_mut(),
            credited_efficiency: core::ptr::null_mut(),
            mode: core::ptr::null_mut(),
            status: core::ptr::null_mut(),
        }
    }
}

impl sw_sweep {
    pub(crate) fn fresh() -> Self {
        sw_sweep {
            struct_size: size_of::<sw_sweep>() as u32,
            reserved: 0,
            form: sw_form::none(),
            rows: 0,
            pitch_mm: sw_sweep_column::NONE,
            plate_mm: sw_sweep_column::NONE,
            hole_mm: sw_sweep_column::NONE,
            tension_mpa: sw_sweep_column::NONE,
            rivet_shear_mpa: sw_sweep_column::NONE,
            rivet_mm: sw_sweep_column::NONE,
            other_mm: sw_sweep_column::NONE,
            narrow_mm: sw_sweep_column::NONE,
            other_tension_mpa: sw_sweep_column::NONE,
            bearing_mpa: sw_sweep_column::NONE,
            other_bearing_mpa: sw_sweep_column::NONE,
            shear_out_mpa: sw_sweep_column::NONE,
            margin_mm: sw_sweep_column::NONE,
            back_pitch_mm: sw_sweep_column::NONE,
        }
    }

    fn columns(&self) -> [&sw_sweep_column; 14] {
        [
            &self.pitch_mm,
            &self.plate_mm,
            &self.hole_mm,
            &self.tension_mpa,
            &self.rivet_shear_mpa,
            &self.rivet_mm,
            &self.other_mm,
            &self.narrow_mm,
            &self.other_tension_mpa,
            &self.bearing_mpa,
            &self.other_bearing_mpa,
            &self.shear_out_mpa,
            &self.margin_mm,
            &self.back_pitch_mm,
        ]
    }

    fn inputs(&self, argument: u32) -> Result<Inputs<'_>, Failure> {
        // What is needed and was not given is refused by its bounds, as the 0 in a joint is.
        let zero = InputColumn::Constant(0.0);
        Ok(Inputs {
            rivet: self.rivet_mm.column(argument)?,
            other: self.other_mm.column(argument)?,
            narrow: self.narrow_mm.column(argument)?,
            other_tension: self.other_tension_mpa.column(argument)?,
            bearing: self.bearing_mpa.column(argument)?,
            other_bearing: self.other_bearing_mpa.column(argument)?,
            plate_shear: self.shear_out_mpa.column(argument)?,
            margin: self.margin_mm.column(argument)?,
            back_pitch: self.back_pitch_mm.column(argument)?,
            ..Inputs::new(
                self.pitch_mm.column(argument)?.unwrap_or(zero),
                self.plate_mm.column(argument)?.unwrap_or(zero),
                self.hole_mm.column(argument)?.unwrap_or(zero),
                self.tension_mpa.column(argument)?.unwrap_or(zero),
                self.rivet_shear_mpa.column(argument)?.unwrap_or(zero),
            )
        })
    }

    /// Refuses rows beyond the last, before arrays of so many elements are taken for true.
    fn reaches(&self, from: usize, count: usize) -> Result<(), Failure> {
        let left = self.rows.saturating_sub(from);
        if count <= left {
            return Ok(());
        }
        let error = Error::new(ErrorKind::TooLarge, Field::BatchRows).index(1);
        Err(error.value(count as f64).limit(left as f64).into())
    }

    /// Where its arrays lie.
    fn places(&self) -> [Range<usize>; 14] {
        self.columns().map(|c| place(c.values, c.count))
    }
}

/// The addresses of an array.
fn place<T>(at: *const T, count: usize) -> Range<usize> {
    at.addr()..at.addr().saturating_add(count.saturating_mul(size_of::<T>()))
}

/// An array that is written to must be apart from all others: no two of them are one to the library.
fn apart(written: &Range<usize>, others: &[Range<usize>], argument: u32) -> Result<(), Failure> {
    let shared = |other: &Range<usize>| written.start < other.end && other.start < written.end;
    if others.iter().any(shared) { Err(Failure::border(SW_BAD_POINTER, argument)) } else { Ok(()) }
}

/// Works rows out, with what the processor at hand can do.
fn run(sweep: &Sweep<'_>, from: usize, outputs: Outputs<'_>) -> Result<(), Error> {
    #[cfg(feature = "std")]
    {
        seamwright_lanes::Lanes::best().run_sweep(sweep, from, outputs)
    }
    #[cfg(not(feature = "std"))]
    {
        sweep.run(from, outputs)
    }
}

/// Fills a sweep with its defaults: no rows, nothing given.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sweep_init(sweep: *mut sw_sweep) {
    border::init(sweep);
}

/// Fills the places for results with their defaults: nothing wanted.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sweep_results_init(results: *mut sw_sweep_results) {
    border::init(results);
}

/// Works out `count` rows from row `from` (from 0) on, each bit for bit as `sw_joint_check` does: a program that wants to
/// be able to stop calls it piece by piece. A row that cannot be computed has its status and loses no other. A column of
/// another length than the sweep's rows is an error, as is a value of all rows outside its range, or what does not belong
/// to the form, or rows beyond the last (`SW_TOO_LARGE`). Results are written into `results`, which is only read itself.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sweep_run(
    sweep: *const sw_sweep,
    rules: *const sw_rules,
    from: usize,
    count: usize,
    results: *const sw_sweep_results,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(sweep, 1)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let r = border::read(results, 5)?;
        let form = c.form.form(1)?;
        let sweep = Sweep::new(&form, &book.rules, c.inputs(1)?, c.rows)?;
        c.reaches(from, count)?;
        let written = [
            place(r.efficiency.cast_const(), count),
            place(r.book_efficiency.cast_const(), count),
            place(r.credited_efficiency.cast_const(), count),
            place(r.mode.cast_const(), count),
            place(r.status.cast_const(), count),
        ];
        let wanted = [
            true,
            !r.book_efficiency.is_null(),
            !r.credited_efficiency.is_null(),
            !r.mode.is_null(),
            !r.status.is_null(),
        ];
        let read = c.places();
        for (n, (place, _)) in written.iter().zip(wanted).enumerate().filter(|(_, (_, wanted))| *wanted) {
            apart(place, &read, 5)?;
            let later = written.iter().zip(wanted).skip(n.saturating_add(1)).filter(|(_, wanted)| *wanted);
            for (other, _) in later {
                apart(place, core::slice::from_ref(other), 5)?;
            }
        }
        let outputs = Outputs {
            book_efficiency: border::column_wanted(r.book_efficiency, count, 5)?,
            credited: border::column_wanted(r.credited_efficiency, count, 5)?,
            mode: border::column_wanted(r.mode, count, 5)?,
            status: border::column_wanted(r.status, count, 5)?,
            ..Outputs::new(border::column_mut(r.efficiency, count, 5)?)
        };
        Ok(run(&sweep, from, outputs)?)
    })
}

/// The strengths of modes by their numbers, N for the whole strip, for `count` rows from row `from` on: first all rows of
/// the first mode, then of the next. Not a number where the row could not be computed. `strengths_n` has room for
/// `mode_count` times `count` numbers, apart from the inputs.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sweep_strengths(
    sweep: *const sw_sweep,
    rules: *const sw_rules,
    modes: *const u16,
    mode_count: usize,
    from: usize,
    count: usize,
    strengths_n: *mut f64,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(sweep, 1)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let form = c.form.form(1)?;
        let modes = border::array(modes, mode_count, 3)?;
        let sweep = Sweep::new(&form, &book.rules, c.inputs(1)?, c.rows)?;
        c.reaches(from, count)?;
        let all = mode_count.saturating_mul(count);
        apart(&place(strengths_n.cast_const(), all), &c.places(), 7)?;
        apart(&place(strengths_n.cast_const(), all), &[place(modes.as_ptr(), modes.len())], 7)?;
        Ok(sweep.mode_strengths(modes, from, border::column_mut(strengths_n, all, 7)?)?)
    })
}

/// The joint of a row (from 0) and its stresses, to look closer at it; or the error that its status stands for.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sweep_joint(
    sweep: *const sw_sweep,
    rules: *const sw_rules,
    row: usize,
    joint: *mut sw_joint,
    materials: *mut sw_materials,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let c = border::read(sweep, 1)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let form = c.form.form(1)?;
        let (out, stresses) = (Out::needed(joint, 4)?, Slot::needed(materials, 5)?);
        if row >= c.rows {
            return Err(Failure::border(SW_BAD_CHOICE, 3));
        }
        let (joint, materials) = Sweep::new(&form, &book.rules, c.inputs(1)?, c.rows)?.joint(row)?;
        materials.validate()?;
        out.put(sw_joint::of(&joint));
        stresses.put(sw_materials::of(&materials));
        Ok(())
    })
}

fn table(form: &Form, straps: u32) -> Result<ModeTable, Failure> {
    match straps {
        0 | 1 => Ok(ModeTable::new(form, straps == 1)),
        _ => Err(Failure::border(SW_BAD_CHOICE, 2)),
    }
}

/// How many modes joints of a form have; `straps`: 1 where the thickness of straps is given, otherwise 0.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sweep_mode_count(form: *const sw_form, straps: u32, count: *mut u32, error: *mut sw_error) -> u32 {
    answer(error, || {
        let form = border::record(form, 1)?.form(1)?;
        let out = Slot::needed(count, 3)?;
        out.put(u32::from(table(&form, straps)?.len()));
        Ok(())
    })
}

/// A mode by its number in a sweep, from 0, in the order of `sw_modes_next`: what tears. How the rivets fail and the
/// strength depend on the joint; they are those of whole rivets and 0 here. Its name: `sw_mode_name`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_sweep_mode(
    form: *const sw_form,
    straps: u32,
    number: u32,
    mode: *mut sw_mode,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let form = border::record(form, 1)?.form(1)?;
        let out = Slot::needed(mode, 4)?;
        let table = table(&form, straps)?;
        let found = u16::try_from(number).ok().and_then(|number| table.mode(number));
        out.put(sw_mode::of(&found.ok_or(Failure::border(SW_BAD_CHOICE, 3))?));
        Ok(())
    })
}
