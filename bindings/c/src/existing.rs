//! An existing joint along a shell: what is known of it, the pressure that it allows, and for how long.

use core::ffi::c_char;

use seamwright::error::EntryNo;
use seamwright::quantities::{Length, Pressure, Stress};
use seamwright::rating::{Existing, Governs, KnownLength, Rating, rate};
use seamwright::rules::Metal;
use seamwright::working::write_rate;

use crate::assumption::{fill_assumptions, sw_assumption};
use crate::border::{self, List, Out};
use crate::check::{sw_analysis, sw_finding};
use crate::form::{SW_MAX_ROWS, sw_form};
use crate::joint::{length, sw_joint, sw_materials};
use crate::rules::{SW_METAL_IRON, SW_METAL_STEEL, book_of, sw_rules};
use crate::shell::{SW_FOOTING_ULTIMATE, footing, sw_allowed, sw_service, switch};
use crate::status::{Failure, SW_BAD_CHOICE, SW_NO_ENTRY, answer, sw_error};
use crate::working::{sw_style, written};

/// The metal is not stated: strengths are given, or nothing is rated.
pub const SW_METAL_NOT_STATED: u32 = 0xFFFF_FFFF;
/// Bit of `sw_existing.measured`: the pitch was measured.
pub const SW_BY_MEASURE_PITCH: u32 = 0x1;
/// Bit of `sw_existing.measured`: the plate at the seam was measured.
pub const SW_BY_MEASURE_PLATE: u32 = 0x2;
/// Bit of `sw_existing.measured`: the second plate of a lap was measured.
pub const SW_BY_MEASURE_OTHER_PLATE: u32 = 0x4;
/// Bit of `sw_existing.measured`: the single, wide or first strap was measured.
pub const SW_BY_MEASURE_WIDE_STRAP: u32 = 0x8;
/// Bit of `sw_existing.measured`: the narrow or second strap was measured.
pub const SW_BY_MEASURE_NARROW_STRAP: u32 = 0x10;
/// Bit of `sw_existing.measured`: the shell plate away from the seam was measured.
pub const SW_BY_MEASURE_SHELL_PLATE: u32 = 0x20;
/// Bits of `sw_existing.measured`: the driven rivets of all rows were measured; row n alone is bit 7 + n.
pub const SW_BY_MEASURE_HOLES: u32 = 0xFF00;
/// The seam governs, in its weakest mode.
pub const SW_GOVERNS_SEAM: u32 = 0;
/// The solid plate away from the seam governs.
pub const SW_GOVERNS_PLATE: u32 = 1;
/// A limit of the book on shells with laps governs.
pub const SW_GOVERNS_RULE: u32 = 2;

/// A joint along the shell of a boiler in service, as found. What is 0 is taken from the rule book or on the safe side,
/// and listed by `sw_existing_assumptions`.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_existing {
    /// Size of this struct, set by `sw_existing_init`.
    pub struct_size: u32,
    /// `SW_BY_MEASURE_*` added up: which lengths were measured; the others stand on a drawing, a certificate, a stamp.
    pub measured: u32,
    /// `SW_METAL_*` of the plates: strengths that are not given are the book's for it.
    pub plate_metal: u32,
    /// `SW_METAL_*` of the rivets; `SW_METAL_NOT_STATED`: as the plates.
    pub rivet_metal: u32,
    /// `SW_FOOTING_*`: strengths at failure, unless they are permissible stresses.
    pub footing: u32,
    /// 1: `corrosion_mm` is stated even where it is 0.
    pub corrosion_stated: u32,
    /// The form.
    pub form: sw_form,
    /// The circumstances.
    pub service: sw_service,
    /// Greatest inside diameter of the shell, mm.
    pub inside_mm: f64,
    /// Pitch of the outer row, or width of the strip where it has several rivets, mm.
    pub pitch_mm: f64,
    /// The least plate found at the seam (plate A of a lap), mm.
    pub plate_mm: f64,
    /// The second plate of a lap, mm; 0: as the first, and listed as assumed.
    pub other_plate_mm: f64,
    /// The only, wide or first strap, mm.
    pub wide_strap_mm: f64,
    /// The narrow or second strap, mm; 0: as the first one.
    pub narrow_strap_mm: f64,
    /// The least plate of the shell away from the seam, mm; 0: not looked at.
    pub shell_plate_mm: f64,
    /// The plate's thickness when new, by which driven rivets are tabulated, mm; 0: as it is now.
    pub plate_when_new_mm: f64,
    /// Margin, mm; 0: not known, and its rules are not judged.
    pub margin_mm: f64,
    /// Driven rivet, which is the hole, of each row, mm; 0 in rows 2 to 8: as row 1; 0 in row 1: by the book's table.
    pub hole_mm: [f64; SW_MAX_ROWS],
    /// Distance from each row to the next, mm; 0: not known, and its rules are not judged.
    pub back_pitch_mm: [f64; SW_MAX_ROWS],
    /// Tensile strength of the plates, MPa; 0: the book's for the metal.
    pub tension_mpa: f64,
    /// Shear strength of the rivets, MPa; 0: the book's for the metal.
    pub rivet_shear_mpa: f64,
    /// Crushing strength of the plates, MPa; 0: the book's, or left out.
    pub bearing_mpa: f64,
    /// Factor of safety that the authority sets; 0: the book's.
    pub safety_factor: f64,
    /// Corrosion allowance besides the wastage that is measured, mm; 0: the book's own.
    pub corrosion_mm: f64,
    /// Present working pressure, MPa; 0: not stated, and there is neither margin nor life.
    pub present_mpa: f64,
    /// Loss of thickness in a year, mm; 0: not known.
    pub wastage_mm_per_year: f64,
    /// Plate at an earlier inspection, mm; counts where `wastage_mm_per_year` is 0: the wastage since then goes on.
    pub earlier_plate_mm: f64,
    /// How many years ago that was.
    pub earlier_years: f64,
}

fn metal(number: u32, argument: u32) -> Result<Option<Metal>, Failure> {
    match number {
        SW_METAL_STEEL => Ok(Some(Metal::Steel)),
        SW_METAL_IRON => Ok(Some(Metal::Iron)),
        SW_METAL_NOT_STATED => Ok(None),
        _ => Err(Failure::border(SW_BAD_CHOICE, argument)),
    }
}

impl sw_existing {
    pub(crate) fn fresh() -> Self {
        sw_existing {
            struct_size: size_of::<sw_existing>() as u32,
            measured: 0,
            plate_metal: SW_METAL_NOT_STATED,
            rivet_metal: SW_METAL_NOT_STATED,
            footing: SW_FOOTING_ULTIMATE,
            corrosion_stated: 0,
            form: sw_form::none(),
            service: sw_service::in_service(),
            inside_mm: 0.0,
            pitch_mm: 0.0,
            plate_mm: 0.0,
            other_plate_mm: 0.0,
            wide_strap_mm: 0.0,
            narrow_strap_mm: 0.0,
            shell_plate_mm: 0.0,
            plate_when_new_mm: 0.0,
            margin_mm: 0.0,
            hole_mm: [0.0; SW_MAX_ROWS],
            back_pitch_mm: [0.0; SW_MAX_ROWS],
            tension_mpa: 0.0,
            rivet_shear_mpa: 0.0,
            bearing_mpa: 0.0,
            safety_factor: 0.0,
            corrosion_mm: 0.0,
            present_mpa: 0.0,
            wastage_mm_per_year: 0.0,
            earlier_plate_mm: 0.0,
            earlier_years: 0.0,
        }
    }

    /// A length and how it is known.
    fn known(&self, mm: f64, bit: u32) -> KnownLength {
        let length = Length::mm(mm);
        if self.measured & bit != 0 { KnownLength::measured(length) } else { KnownLength::given(length) }
    }

    /// The same where anything is given.
    fn stated(&self, mm: f64, bit: u32) -> Option<KnownLength> {
        (mm != 0.0).then(|| self.known(mm, bit))
    }

    pub(crate) fn existing(&self, argument: u32) -> Result<Existing, Failure> {
        let form = self.form.form(argument)?;
        let (pitch, plate) =
            (self.known(self.pitch_mm, SW_BY_MEASURE_PITCH), self.known(self.plate_mm, SW_BY_MEASURE_PLATE));
        let mut e = Existing::new(form, pitch, plate, Length::mm(self.inside_mm));
        e = e.service(self.service.service(argument)?);
        e = self.plies(e);
        e = self.rows(e);
        if let Some(plates) = metal(self.plate_metal, argument)? {
            e = e.metals(plates, metal(self.rivet_metal, argument)?.unwrap_or(plates));
        }
        let stress = |mpa: f64| (mpa != 0.0).then(|| Stress::mpa(mpa));
        if let Some(s) = stress(self.tension_mpa) {
            e = e.tension(s);
        }
        if let Some(s) = stress(self.rivet_shear_mpa) {
            e = e.shear(s);
        }
        if let Some(s) = stress(self.bearing_mpa) {
            e = e.bearing(s);
        }
        if footing(self.footing, argument)? == seamwright::rating::Footing::Permissible {
            e = e.permissible();
        }
        if self.safety_factor != 0.0 {
            e = e.safety(self.safety_factor);
        }
        if switch(self.corrosion_stated, argument)? || self.corrosion_mm != 0.0 {
            e = e.corrosion(Length::mm(self.corrosion_mm));
        }
        if self.present_mpa != 0.0 {
            e = e.present(Pressure::mpa(self.present_mpa));
        }
        if let Some(rate) = length(self.wastage_mm_per_year) {
            e = e.wastage_rate(rate);
        }
        if let Some(plate) = length(self.earlier_plate_mm) {
            e = e.earlier(plate, self.earlier_years);
        }
        Ok(e)
    }

    fn plies(&self, mut e: Existing) -> Existing {
        if let Some(plate) = self.stated(self.other_plate_mm, SW_BY_MEASURE_OTHER_PLATE) {
            e = e.other_plate(plate);
        }
        let wide = self.stated(self.wide_strap_mm, SW_BY_MEASURE_WIDE_STRAP);
        let narrow = self.stated(self.narrow_strap_mm, SW_BY_MEASURE_NARROW_STRAP);
        match (wide, narrow) {
            (Some(wide), narrow) => e = e.straps(wide, narrow),
            // A narrow strap alone: 0 for the wide one, which the library refuses by name.
            (None, Some(narrow)) => e = e.straps(KnownLength::given(Length::mm(0.0)), Some(narrow)),
            (None, None) => {}
        }
        if let Some(plate) = self.stated(self.shell_plate_mm, SW_BY_MEASURE_SHELL_PLATE) {
            e = e.shell_plate(plate);
        }
        if let Some(plate) = length(self.plate_when_new_mm) {
            e = e.nominal(plate);
        }
        e
    }

    fn rows(&self, mut e: Existing) -> Existing {
        let holes = self.hole_mm.iter().zip(1_usize..).zip(0_u32..);
        for ((hole, row), shift) in holes {
            let Some(hole) = self.stated(*hole, 0x100_u32.wrapping_shl(shift)) else { continue };
            e = if row == 1 { e.hole(hole) } else { e.row(row, hole) };
        }
        for (gap, row) in self.back_pitch_mm.iter().zip(1_usize..) {
            if let Some(gap) = length(*gap) {
                e = e.back_pitch(row, gap);
            }
        }
        if let Some(margin) = length(self.margin_mm) {
            e = e.margin(margin);
        }
        e
    }
}

/// A rated joint. What there is none of is not a number.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_rating {
    /// Size of this struct, set by `sw_rating_init`.
    pub struct_size: u32,
    /// `SW_GOVERNS_*`: what sets the pressure.
    pub governs: u32,
    /// The entry of the limit where a rule governs; otherwise `SW_NO_ENTRY`.
    pub governs_entry: u32,
    /// Findings on the shell (`sw_existing_findings`); those on the joint are in its analysis.
    pub findings: u32,
    /// Rules on the shell that are not met.
    pub open: u32,
    /// Not used.
    pub reserved: u32,
    /// The allowable working pressure: the least of all, MPa.
    pub allowed_mpa: f64,
    /// Allowed over present pressure.
    pub margin: f64,
    /// Hydrostatic test pressure of the book, MPa.
    pub test_mpa: f64,
    /// Years until only the present pressure is allowed; 0: it is not allowed now; infinite: nothing wastes.
    pub years: f64,
    /// Loss of thickness in a year that this rests on, mm.
    pub wastage_mm_per_year: f64,
    /// Plate at the seam then, mm.
    pub plate_then_mm: f64,
    /// Pressure allowed then, MPa.
    pub allowed_then_mpa: f64,
    /// What the seam allows.
    pub seam: sw_allowed,
    /// What the solid plate away from the seam allows.
    pub plate: sw_allowed,
    /// The strengths that were taken.
    pub materials: sw_materials,
}

impl sw_rating {
    pub(crate) fn fresh() -> Self {
        let nothing = f64::NAN;
        sw_rating {
            struct_size: size_of::<sw_rating>() as u32,
            governs: SW_GOVERNS_SEAM,
            governs_entry: SW_NO_ENTRY,
            findings: 0,
            open: 0,
            reserved: 0,
            allowed_mpa: nothing,
            margin: nothing,
            test_mpa: nothing,
            years: nothing,
            wastage_mm_per_year: nothing,
            plate_then_mm: nothing,
            allowed_then_mpa: nothing,
            seam: sw_allowed::none(),
            plate: sw_allowed::none(),
            materials: sw_materials::none(),
        }
    }

    fn of(r: &Rating) -> Self {
        let (governs, entry) = match r.governs {
            Governs::Seam => (SW_GOVERNS_SEAM, EntryNo::NONE),
            Governs::Plate => (SW_GOVERNS_PLATE, EntryNo::NONE),
            Governs::Rule(entry) => (SW_GOVERNS_RULE, entry),
        };
        let of_life = |figure: fn(&seamwright::rating::Life) -> f64| r.life.as_ref().map_or(f64::NAN, figure);
        sw_rating {
            governs,
            governs_entry: u32::from(entry.0),
            findings: r.findings.len() as u32,
            open: r.findings.open() as u32,
            allowed_mpa: r.allowed,
            margin: r.margin.unwrap_or(f64::NAN),
            test_mpa: r.test.unwrap_or(f64::NAN),
            years: of_life(|l| l.years),
            wastage_mm_per_year: of_life(|l| l.rate),
            plate_then_mm: of_life(|l| l.plate),
            allowed_then_mpa: of_life(|l| l.pressure),
            seam: sw_allowed::of(&r.seam),
            plate: r.plate.as_ref().map_or(sw_allowed::none(), sw_allowed::of),
            materials: sw_materials::of(&r.materials),
            ..sw_rating::fresh()
        }
    }
}

fn rated(existing: *const sw_existing, rules: *const sw_rules) -> Result<Rating, Failure> {
    let existing = border::read(existing, 1)?.existing(1)?;
    let (book, _) = book_of(&border::read(rules, 2)?)?;
    Ok(rate(&existing, &book.rules)?)
}

/// Fills a joint as found with its defaults: in service, strengths at failure, nothing known.
#[unsafe(no_mangle)]
pub extern "C" fn sw_existing_init(existing: *mut sw_existing) {
    border::init(existing);
}

/// Fills a rating with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_rating_init(rating: *mut sw_rating) {
    border::init(rating);
}

/// Rates an existing joint: the pressure that it allows, what governs, and for how long. `joint` (as it was taken) and
/// `analysis` (its modes and efficiencies) may be NULL. `SW_MISSING` where neither you nor the book give a strength or a
/// factor of safety: nothing is assumed without being asked for.
#[unsafe(no_mangle)]
pub extern "C" fn sw_existing_rate(
    existing: *const sw_existing,
    rules: *const sw_rules,
    rating: *mut sw_rating,
    joint: *mut sw_joint,
    analysis: *mut sw_analysis,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let out = Out::needed(rating, 3)?;
        let (joint_out, analysis_out) = (Out::wanted(joint, 4)?, Out::wanted(analysis, 5)?);
        let found = rated(existing, rules)?;
        out.put(sw_rating::of(&found));
        if let Some(out) = joint_out {
            out.put(sw_joint::of(&found.joint));
        }
        if let Some(out) = analysis_out {
            out.put(sw_analysis::of(&found.analysis));
        }
        Ok(())
    })
}

/// The findings of a rating into an array of the caller's: those on the shell (`sw_rating.findings` of them), open ones
/// first, then those on the joint. NULL and 0 ask for the number; twice `SW_MAX_FINDINGS` is always enough.
#[unsafe(no_mangle)]
pub extern "C" fn sw_existing_findings(
    existing: *const sw_existing,
    rules: *const sw_rules,
    findings: *mut sw_finding,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let list = List::new(findings, capacity, count, 3)?;
        let found = rated(existing, rules)?;
        let all = || found.findings.iter().chain(found.analysis.findings.iter());
        list.room(all().count())?.fill(all().map(sw_finding::of));
        Ok(())
    })
}

/// What a rating rests on, figure by figure, into an array of the caller's. NULL and 0 ask for the number;
/// `SW_MAX_ASSUMPTIONS` is always enough.
#[unsafe(no_mangle)]
pub extern "C" fn sw_existing_assumptions(
    existing: *const sw_existing,
    rules: *const sw_rules,
    assumptions: *mut sw_assumption,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let list = List::new(assumptions, capacity, count, 3)?;
        fill_assumptions(list, &rated(existing, rules)?.assumptions, || {})
    })
}

/// The working of a rating: every step in symbols, in numbers, with its clause; the findings, and what it rests on.
#[unsafe(no_mangle)]
pub extern "C" fn sw_working_rate(
    existing: *const sw_existing,
    rules: *const sw_rules,
    style: *const sw_style,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let existing = border::read(existing, 1)?.existing(1)?;
        written((rules, 2), (style, 3), (buf, len, needed), |out, style, book| write_rate(out, style, &existing, book))
    })
}
