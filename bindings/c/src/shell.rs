//! Shells under pressure, and what a seam of them allows.

use seamwright::bounds::Field;
use seamwright::check::check;
use seamwright::error::{Error, ErrorKind};
use seamwright::quantities::{Length, Pressure};
use seamwright::rating::{
    Allowed, Assumptions, Factor, Footing, HoleMaking, Riveting, Seam, Service, Shell, factor_with,
    girth_pressure_with, joint_pressure_with, least_plate, pressure_with, test_pressure_with,
};
use seamwright::rules::{Entry, Rules};
use seamwright::step::Plain;

use crate::assumption::{fill_assumptions, sw_assumption};
use crate::border::{self, List, Slot};
use crate::form::sw_form;
use crate::joint::{length, sw_joint, sw_materials};
use crate::modes::Asked;
use crate::rules::{book_of, sw_rules};
use crate::status::{Failure, SW_BAD_CHOICE, SW_NO_ENTRY, answer, sw_error};

/// The stresses are permissible: the safety is in them.
pub const SW_FOOTING_PERMISSIBLE: u32 = 0;
/// The stresses are strengths at failure: a factor of safety divides them.
pub const SW_FOOTING_ULTIMATE: u32 = 1;
/// A circumstance is not stated: it is taken on the safe side where the book distinguishes it, and listed as assumed.
pub const SW_NOT_STATED: u32 = 0;
/// A circumstance holds.
pub const SW_YES: u32 = 1;
/// A circumstance does not hold.
pub const SW_NO: u32 = 2;
/// Rivets closed by hand.
pub const SW_RIVETED_BY_HAND: u32 = 1;
/// Rivets closed by machine.
pub const SW_RIVETED_BY_MACHINE: u32 = 2;
/// Holes drilled.
pub const SW_HOLES_DRILLED: u32 = 1;
/// Holes punched small and reamed.
pub const SW_HOLES_REAMED: u32 = 2;
/// Holes punched to size.
pub const SW_HOLES_PUNCHED: u32 = 3;
/// The factor of safety was given by the user.
pub const SW_FACTOR_GIVEN: u32 = 0;
/// The factor of safety is the rule book's.
pub const SW_FACTOR_BOOK: u32 = 1;
/// The factor of safety is in the constant of the book's formula; the figure is that constant.
pub const SW_FACTOR_CONSTANT: u32 = 2;
/// The factor of safety is in the permissible stresses.
pub const SW_FACTOR_IN_STRESSES: u32 = 3;

/// Circumstances that rule books make the factor of safety depend on. A record: filled by `sw_service_new_shell` or
/// `sw_service_in_service`, then field by field. Where a choice is not named it is `SW_NOT_STATED`, `SW_YES` or
/// `SW_NO`.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_service {
    /// 1: in service, not new. `sw_existing` takes it as 1 in any case.
    pub existing: u32,
    /// Bought second-hand.
    pub second_hand: u32,
    /// Past the book's age limit.
    pub past_age_limit: u32,
    /// 1: inspected and tested as the book asks of boilers past their age limit.
    pub tested: u32,
    /// A horizontal return tubular boiler.
    pub tubular: u32,
    /// A lap exposed to fire.
    pub lap_in_fire: u32,
    /// The boiler's weight pulls on the seam.
    pub weight_on_seam: u32,
    /// `SW_NOT_STATED`, `SW_RIVETED_BY_HAND` or `SW_RIVETED_BY_MACHINE`.
    pub riveting: u32,
    /// `SW_NOT_STATED` or `SW_HOLES_*`.
    pub holes: u32,
    /// 1: inspected stripped down as the book asks of wide shells with laps.
    pub stripped: u32,
    /// Not used.
    pub reserved: [u32; 4],
    /// Length of the longest continuous lap along the shell, mm; 0: not stated.
    pub lap_length_mm: f64,
}

/// A circumstance as stated.
fn stated(choice: u32, argument: u32) -> Result<Option<bool>, Failure> {
    match choice {
        SW_NOT_STATED => Ok(None),
        SW_YES => Ok(Some(true)),
        SW_NO => Ok(Some(false)),
        _ => Err(Failure::border(SW_BAD_CHOICE, argument)),
    }
}

/// A switch: 0 or 1.
pub(crate) fn switch(choice: u32, argument: u32) -> Result<bool, Failure> {
    match choice {
        0 => Ok(false),
        1 => Ok(true),
        _ => Err(Failure::border(SW_BAD_CHOICE, argument)),
    }
}

impl sw_service {
    const fn of(s: &Service) -> Self {
        const fn choice(stated: Option<bool>) -> u32 {
            match stated {
                None => SW_NOT_STATED,
                Some(true) => SW_YES,
                Some(false) => SW_NO,
            }
        }
        sw_service {
            existing: s.existing as u32,
            second_hand: choice(s.second_hand),
            past_age_limit: choice(s.past_age_limit),
            tested: s.tested as u32,
            tubular: choice(s.tubular),
            lap_in_fire: choice(s.lap_in_fire),
            weight_on_seam: choice(s.weight_on_seam),
            riveting: match s.riveting {
                None => SW_NOT_STATED,
                Some(Riveting::Hand) => SW_RIVETED_BY_HAND,
                Some(Riveting::Machine) => SW_RIVETED_BY_MACHINE,
            },
            holes: match s.holes {
                None => SW_NOT_STATED,
                Some(HoleMaking::Drilled) => SW_HOLES_DRILLED,
                Some(HoleMaking::Reamed) => SW_HOLES_REAMED,
                Some(HoleMaking::Punched) => SW_HOLES_PUNCHED,
            },
            stripped: s.stripped as u32,
            reserved: [0; 4],
            lap_length_mm: match s.lap_length {
                None => 0.0,
                Some(length) => length.to_mm(),
            },
        }
    }

    pub(crate) const fn new_shell() -> Self {
        sw_service::of(&Service::new_shell())
    }

    pub(crate) const fn in_service() -> Self {
        sw_service::of(&Service::in_service())
    }

    pub(crate) fn service(&self, argument: u32) -> Result<Service, Failure> {
        let yes = |choice| stated(choice, argument);
        let bad = || Failure::border(SW_BAD_CHOICE, argument);
        Ok(Service {
            existing: switch(self.existing, argument)?,
            second_hand: yes(self.second_hand)?,
            past_age_limit: yes(self.past_age_limit)?,
            tested: switch(self.tested, argument)?,
            tubular: yes(self.tubular)?,
            lap_length: length(self.lap_length_mm),
            lap_in_fire: yes(self.lap_in_fire)?,
            weight_on_seam: yes(self.weight_on_seam)?,
            riveting: match self.riveting {
                SW_NOT_STATED => None,
                SW_RIVETED_BY_HAND => Some(Riveting::Hand),
                SW_RIVETED_BY_MACHINE => Some(Riveting::Machine),
                _ => return Err(bad()),
            },
            holes: match self.holes {
                SW_NOT_STATED => None,
                SW_HOLES_DRILLED => Some(HoleMaking::Drilled),
                SW_HOLES_REAMED => Some(HoleMaking::Reamed),
                SW_HOLES_PUNCHED => Some(HoleMaking::Punched),
                _ => return Err(bad()),
            },
            stripped: switch(self.stripped, argument)?,
        })
    }
}

pub(crate) fn footing(choice: u32, argument: u32) -> Result<Footing, Failure> {
    match choice {
        SW_FOOTING_PERMISSIBLE => Ok(Footing::Permissible),
        SW_FOOTING_ULTIMATE => Ok(Footing::Ultimate),
        _ => Err(Failure::border(SW_BAD_CHOICE, argument)),
    }
}

/// A cylindrical shell under internal pressure.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_shell {
    /// Size of this struct, set by `sw_shell_init`.
    pub struct_size: u32,
    /// `SW_FOOTING_*`: what the stresses are.
    pub footing: u32,
    /// 1: `corrosion_mm` is stated even where it is 0.
    pub corrosion_stated: u32,
    /// Not used.
    pub reserved: u32,
    /// Greatest inside diameter, mm.
    pub inside_mm: f64,
    /// Corrosion allowance, mm; 0: the book's own. By the book it comes on top of what its formula takes off, or takes
    /// its place.
    pub corrosion_mm: f64,
    /// Factor of safety in the place of the book's; 0: not given.
    pub safety_factor: f64,
    /// Its circumstances.
    pub service: sw_service,
}

impl sw_shell {
    pub(crate) fn fresh() -> Self {
        sw_shell {
            struct_size: size_of::<sw_shell>() as u32,
            footing: SW_FOOTING_PERMISSIBLE,
            corrosion_stated: 0,
            reserved: 0,
            inside_mm: 0.0,
            corrosion_mm: 0.0,
            safety_factor: 0.0,
            service: sw_service::new_shell(),
        }
    }

    pub(crate) fn shell(&self, argument: u32) -> Result<Shell, Failure> {
        let service = self.service.service(argument)?;
        let mut shell = Shell::new(Length::mm(self.inside_mm), footing(self.footing, argument)?).service(service);
        if switch(self.corrosion_stated, argument)? || self.corrosion_mm != 0.0 {
            shell = shell.corrosion(Length::mm(self.corrosion_mm));
        }
        if self.safety_factor != 0.0 {
            shell = shell.safety(self.safety_factor);
        }
        Ok(shell)
    }

    pub(crate) fn at(shell: *const sw_shell, argument: u32) -> Result<Shell, Failure> {
        border::read(shell, argument)?.shell(argument)
    }
}

/// A factor of safety and where it comes from. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_factor {
    /// `SW_FACTOR_*`.
    pub basis: u32,
    /// Entry of the class that governs; `SW_NO_ENTRY`: none.
    pub entry: u32,
    /// The factor; the constant C where the basis says so.
    pub value: f64,
}

impl sw_factor {
    fn of(f: &Factor) -> Self {
        sw_factor { basis: f.basis as u32, entry: u32::from(f.entry.0), value: f.value }
    }
}

/// The working pressure that a seam allows, and what it rests on. A record.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_allowed {
    /// 1 where the outside radius counted, otherwise 0.
    pub outside: u32,
    /// Not used.
    pub reserved: u32,
    /// Working pressure, MPa; not a number: there is none.
    pub pressure_mpa: f64,
    /// Efficiency that was credited.
    pub efficiency: f64,
    /// Taken off the plate by the formula, mm.
    pub allowance_mm: f64,
    /// The factor of safety.
    pub factor: sw_factor,
}

impl sw_allowed {
    pub(crate) const fn none() -> Self {
        let nothing = f64::NAN;
        sw_allowed {
            outside: 0,
            reserved: 0,
            pressure_mpa: nothing,
            efficiency: nothing,
            allowance_mm: nothing,
            factor: sw_factor { basis: SW_FACTOR_GIVEN, entry: SW_NO_ENTRY, value: nothing },
        }
    }

    pub(crate) fn of(a: &Allowed) -> Self {
        sw_allowed {
            outside: u32::from(a.outside),
            reserved: 0,
            pressure_mpa: a.pressure,
            efficiency: a.efficiency,
            allowance_mm: a.allowance,
            factor: sw_factor::of(&a.factor),
        }
    }
}

/// What a seam brings to the pressure of a shell, where its efficiency is known. A record: fill every member.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_seam {
    /// Form of the joint, which decides on constants and factors of safety.
    pub form: sw_form,
    /// Thickness of the main plate, of the weaker one in a lap, mm.
    pub plate_mm: f64,
    /// Its tensile stress, on the footing of the shell, MPa.
    pub tension_mpa: f64,
    /// Efficiency credited, as a fraction; 1 for the solid plate.
    pub efficiency: f64,
}

/// Fills circumstances with those of a new shell of drilled holes in no unusual circumstance; riveting is left open.
#[unsafe(no_mangle)]
pub extern "C" fn sw_service_new_shell(service: *mut sw_service) {
    if let Ok(out) = Slot::needed(service, 1) {
        out.put(sw_service::new_shell());
    }
}

/// Fills circumstances with those of a boiler in service of which nothing is stated.
#[unsafe(no_mangle)]
pub extern "C" fn sw_service_in_service(service: *mut sw_service) {
    if let Ok(out) = Slot::needed(service, 1) {
        out.put(sw_service::in_service());
    }
}

/// Fills a shell with its defaults: new, permissible stresses.
#[unsafe(no_mangle)]
pub extern "C" fn sw_shell_init(shell: *mut sw_shell) {
    border::init(shell);
}

/// Whether the figures of a shell lie in their ranges.
#[unsafe(no_mangle)]
pub extern "C" fn sw_shell_validate(shell: *const sw_shell, error: *mut sw_error) -> u32 {
    answer(error, || Ok(sw_shell::at(shell, 1)?.validate()?))
}

/// The working pressure that a joint along a shell allows: its credited efficiency on the main plate, on the weaker one
/// of a lap. `assumptions` lists what it rests on; NULL and 0 where that is not wanted.
#[unsafe(no_mangle)]
pub extern "C" fn sw_shell_allow(
    joint: *const sw_joint,
    materials: *const sw_materials,
    rules: *const sw_rules,
    shell: *const sw_shell,
    allowed: *mut sw_allowed,
    assumptions: *mut sw_assumption,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let asked = Asked::new(joint, materials, rules)?;
        let shell = sw_shell::at(shell, 4)?;
        let out = Slot::needed(allowed, 5)?;
        let list = List::new(assumptions, capacity, count, 6)?;
        let (joint, materials, rules) = (&asked.joint, &asked.materials, &asked.rules);
        let analysis = check(joint, materials, rules)?;
        let mut notes = Assumptions::new();
        let found = joint_pressure_with(Plain, joint, materials, &analysis, &shell, rules, &mut notes)?;
        fill_assumptions(list, &notes, || out.put(sw_allowed::of(&found)))
    })
}

/// What a seam of known efficiency allows, by one of the library's routines.
fn allow(
    seam: *const sw_seam,
    rules: *const sw_rules,
    shell: *const sw_shell,
    allowed: *mut sw_allowed,
    by: fn(&Rules, &Shell, &Seam<'_>, &mut Assumptions) -> Result<Allowed, Error>,
) -> Result<(), Failure> {
    let seam = border::record(seam, 1)?;
    let form = seam.form.form(1)?;
    let (book, _) = book_of(&border::read(rules, 2)?)?;
    let shell = sw_shell::at(shell, 3)?;
    let out = Slot::needed(allowed, 4)?;
    let seam = Seam { form: &form, plate: seam.plate_mm, tension: seam.tension_mpa, efficiency: seam.efficiency };
    out.put(sw_allowed::of(&by(&book.rules, &shell, &seam, &mut Assumptions::new())?));
    Ok(())
}

/// The working pressure that a seam along a shell allows when its efficiency is known.
#[unsafe(no_mangle)]
pub extern "C" fn sw_seam_pressure(
    seam: *const sw_seam,
    rules: *const sw_rules,
    shell: *const sw_shell,
    allowed: *mut sw_allowed,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        allow(seam, rules, shell, allowed, |rules, shell, seam, notes| pressure_with(Plain, rules, shell, seam, notes))
    })
}

/// The working pressure that a girth seam allows when its efficiency is known: twice that of a seam along the shell,
/// for the end pulls half as hard as the hoop.
#[unsafe(no_mangle)]
pub extern "C" fn sw_seam_girth_pressure(
    seam: *const sw_seam,
    rules: *const sw_rules,
    shell: *const sw_shell,
    allowed: *mut sw_allowed,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        allow(seam, rules, shell, allowed, |rules, shell, seam, notes| {
            girth_pressure_with(Plain, rules, shell, seam, notes)
        })
    })
}

/// The factor of safety of a shell with a seam of a form along it, by the book and the circumstances. `assumptions` as
/// in `sw_shell_allow`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_shell_factor(
    shell: *const sw_shell,
    form: *const sw_form,
    rules: *const sw_rules,
    factor: *mut sw_factor,
    assumptions: *mut sw_assumption,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let (shell, form) = (sw_shell::at(shell, 1)?, border::record(form, 2)?.form(2)?);
        let (book, _) = book_of(&border::read(rules, 3)?)?;
        let out = Slot::needed(factor, 4)?;
        let list = List::new(assumptions, capacity, count, 5)?;
        let mut notes = Assumptions::new();
        let found = factor_with(Plain, &book.rules, &shell, &form, &mut notes)?;
        fill_assumptions(list, &notes, || out.put(sw_factor::of(&found)))
    })
}

/// The least shell plate of the book for an inside diameter, and the entry that asks for it. `SW_MISSING` where the
/// book has none. `entry` may be NULL.
#[unsafe(no_mangle)]
pub extern "C" fn sw_rules_least_plate(
    rules: *const sw_rules,
    inside_mm: f64,
    plate_mm: *mut f64,
    entry: *mut u32,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let (book, _) = book_of(&border::read(rules, 1)?)?;
        let out = Slot::needed(plate_mm, 3)?;
        let by = if entry.is_null() { None } else { Some(Slot::needed(entry, 4)?) };
        Field::RingDiameter.check(inside_mm)?;
        let (found, least) = least_plate(&book.rules, inside_mm)
            .ok_or(Error::new(ErrorKind::Missing, Field::Plate).entry(Entry::SHELL_ABOVE.no()))?;
        out.put(least);
        if let Some(by) = by {
            by.put(u32::from(found.no().0));
        }
        Ok(())
    })
}

/// The hydrostatic test pressure of the book for a working pressure, MPa; not a number where the book has no factor.
#[unsafe(no_mangle)]
pub extern "C" fn sw_rules_test_pressure(
    rules: *const sw_rules,
    working_mpa: f64,
    test_mpa: *mut f64,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let (book, _) = book_of(&border::read(rules, 1)?)?;
        let out = Slot::needed(test_mpa, 3)?;
        let working = Field::Pressure.check(Pressure::mpa(working_mpa).to_mpa())?;
        out.put(test_pressure_with(Plain, &book.rules, working).unwrap_or(f64::NAN));
        Ok(())
    })
}
