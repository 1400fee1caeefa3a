//! Groups of rivets under eccentric load: brackets, gussets.

use core::ffi::c_char;

use seamwright::group::{
    Group, GroupCheck, GroupDesign, GroupLoad, GroupMode, GroupStress, MAX_RIVETS, RivetLoad, Stressed, check_group,
    size_group,
};
use seamwright::quantities::{Force, Length, Moment, Stress};
use seamwright::working::{write_group_check, write_group_size};

use crate::border::{self, List, Out};
use crate::check::sw_finding;
use crate::joint::length;
use crate::rules::{book_of, sw_rules};
use crate::status::{Failure, SW_BAD_CHOICE, SW_TOO_MANY, answer, sw_error};
use crate::working::{sw_style, written};

/// The most rivets of a group.
pub const SW_MAX_GROUP: usize = 32;
/// Shear of a rivet limits the group.
pub const SW_GROUP_SHEAR: u32 = 0;
/// Bearing of the plate limits the group.
pub const SW_GROUP_BEARING: u32 = 1;

const _: () = assert!(SW_MAX_GROUP == MAX_RIVETS, "the header states the core's bound");

/// A rivet of a group.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_group_rivet {
    /// Its place along x, mm.
    pub x_mm: f64,
    /// Its place along y, mm.
    pub y_mm: f64,
    /// Its hole, mm, which a driven rivet fills; 0 in all rivets: to be found by `sw_group_size`.
    pub hole_mm: f64,
    /// The cold rivet, mm; 0: as large as its hole.
    pub rivet_mm: f64,
}

/// A group of rivets with its load and what is permitted. The array is the caller's and is not kept.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_group {
    /// Size of this struct, set by `sw_group_init`.
    pub struct_size: u32,
    /// Shear planes of each rivet, 1 or 2.
    pub shear_planes: u32,
    /// 0: the true eccentricity. Else the rivets in one vertical row: the effective eccentricity of an old AISC Manual
    /// (Hicks p. 1.83), (1 + n)/2 inches less, for a vertical load. Not for new work.
    pub row_rivets: u32,
    /// Not used.
    pub reserved: u32,
    /// The rivets, numbered from 1 in this order.
    pub rivets: *const sw_group_rivet,
    /// How many rivets, 1 to `SW_MAX_GROUP`.
    pub rivet_count: usize,
    /// The plate that the rivets bear on, mm: of two the thinner, of one between two others that or both of them together,
    /// whichever is thinner. 0: not known, bearing is not worked out.
    pub plate_mm: f64,
    /// Force along x, N.
    pub load_x_n: f64,
    /// Force along y, N; negative where it hangs down.
    pub load_y_n: f64,
    /// A point of its line along x, mm.
    pub load_at_x_mm: f64,
    /// A point of its line along y, mm.
    pub load_at_y_mm: f64,
    /// A couple, N mm, positive from x to y.
    pub couple_nmm: f64,
    /// Shear stress that is permitted in the rivets, single shear, MPa.
    pub shear_mpa: f64,
    /// Bearing stress that is permitted, MPa; 0: not given.
    pub bearing_mpa: f64,
}

/// A group under its load.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_group_found {
    /// Size of this struct, set by `sw_group_found_init`.
    pub struct_size: u32,
    /// The critical rivet, from 1: by stress, not by force; of equal ones the first.
    pub critical: u32,
    /// `SW_GROUP_SHEAR` or `SW_GROUP_BEARING`, whichever is used more.
    pub governs: u32,
    /// The rivet with the greatest shear stress, from 1.
    pub shear_rivet: u32,
    /// The rivet with the greatest bearing stress, from 1; 0 without a plate.
    pub bearing_rivet: u32,
    /// Findings.
    pub findings: u32,
    /// Findings that are open.
    pub open: u32,
    /// Not used.
    pub reserved: u32,
    /// Centroid of the rivets' areas along x, mm.
    pub centroid_x_mm: f64,
    /// Centroid along y, mm.
    pub centroid_y_mm: f64,
    /// The areas together over that of the largest rivet: the number of rivets where all are alike.
    pub areas: f64,
    /// Polar moment about the centroid, mm2: squares of distances, each times its area over that of the largest.
    pub polar_mm2: f64,
    /// The load from the centroid along x, mm; the effective eccentricity where that was asked for.
    pub arm_x_mm: f64,
    /// The load from the centroid along y, mm.
    pub arm_y_mm: f64,
    /// Moment about the centroid, N mm, positive from x to y.
    pub moment_nmm: f64,
    /// Instantaneous centre along x, mm; not a number where the group does not turn.
    pub centre_x_mm: f64,
    /// Instantaneous centre along y, mm.
    pub centre_y_mm: f64,
    /// The greatest shear stress, MPa.
    pub shear_mpa: f64,
    /// Over the one permitted.
    pub shear_used: f64,
    /// The greatest bearing stress, MPa; not a number without a plate.
    pub bearing_mpa: f64,
    /// Over the one permitted; not a number where none was given.
    pub bearing_used: f64,
    /// The greater of both: 1 is all that is permitted.
    pub used: f64,
    /// The force that is allowed along the same line, N; a couple grows with it. Not a number without a force.
    pub safe_load_n: f64,
    /// The couple that is allowed, N mm; not a number without a couple.
    pub safe_couple_nmm: f64,
    /// After `sw_group_size`: the diameter that shear needs, mm. Not a number after a check, as the next three.
    pub by_shear_mm: f64,
    /// The diameter that bearing needs, mm; not a number without a plate or a stress.
    pub by_bearing_mm: f64,
    /// The standard hole taken, mm.
    pub hole_mm: f64,
    /// Its cold rivet, mm.
    pub rivet_mm: f64,
}

/// What one rivet of a group takes: forces that the loaded plate puts on it.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct sw_rivet_load {
    /// Its place along x, mm.
    pub x_mm: f64,
    /// Its place along y, mm.
    pub y_mm: f64,
    /// Its hole, mm.
    pub hole_mm: f64,
    /// The cold rivet, mm.
    pub rivet_mm: f64,
    /// Share of the load at the centroid along x, N.
    pub direct_x_n: f64,
    /// The same along y, N.
    pub direct_y_n: f64,
    /// Share of the moment along x, N.
    pub turning_x_n: f64,
    /// The same along y, N.
    pub turning_y_n: f64,
    /// Both together along x, N.
    pub force_x_n: f64,
    /// Both together along y, N.
    pub force_y_n: f64,
    /// Both together, N.
    pub force_n: f64,
    /// Direction of the force in degrees from x towards y, above -180 and up to 180.
    pub degrees: f64,
    /// Shear stress, MPa.
    pub shear_mpa: f64,
    /// Bearing stress, MPa; not a number without a plate.
    pub bearing_mpa: f64,
}

/// What a group hands to the library.
pub(crate) struct Stated {
    pub(crate) group: Group,
    pub(crate) load: GroupLoad,
    pub(crate) stress: GroupStress,
    /// Whether no rivet has a hole or a rivet yet.
    pub(crate) bare: bool,
}

impl sw_group {
    pub(crate) fn fresh() -> Self {
        sw_group {
            struct_size: size_of::<sw_group>() as u32,
            shear_planes: 1,
            row_rivets: 0,
            reserved: 0,
            rivets: core::ptr::null(),
            rivet_count: 0,
            plate_mm: 0.0,
            load_x_n: 0.0,
            load_y_n: 0.0,
            load_at_x_mm: 0.0,
            load_at_y_mm: 0.0,
            couple_nmm: 0.0,
            shear_mpa: 0.0,
            bearing_mpa: 0.0,
        }
    }

    pub(crate) fn stated(&self, argument: u32) -> Result<Stated, Failure> {
        let rivets = border::array(self.rivets, self.rivet_count, argument)?;
        let mut places = [(Length::mm(0.0), Length::mm(0.0)); SW_MAX_GROUP];
        if rivets.len() > SW_MAX_GROUP {
            return Err(Failure::border(SW_TOO_MANY, argument));
        }
        for (place, r) in places.iter_mut().zip(rivets) {
            *place = (Length::mm(r.x_mm), Length::mm(r.y_mm));
        }
        let small = |n: u32| u8::try_from(n).map_err(|_| Failure::border(SW_BAD_CHOICE, argument));
        let mut group = Group::at(places.get(..rivets.len()).unwrap_or(&[]))?.planes(small(self.shear_planes)?);
        let bare = rivets.iter().all(|r| r.hole_mm == 0.0 && r.rivet_mm == 0.0);
        for (r, number) in rivets.iter().zip(1_u8..).filter(|_| !bare) {
            group = group.one(number, Length::mm(r.hole_mm), length(r.rivet_mm))?;
        }
        if let Some(plate) = length(self.plate_mm) {
            group = group.plate(plate);
        }
        let couple = Moment::n_mm(self.couple_nmm);
        let mut load = if self.load_x_n == 0.0 && self.load_y_n == 0.0 {
            GroupLoad::couple(couple)
        } else {
            let (x, y) = (Length::mm(self.load_at_x_mm), Length::mm(self.load_at_y_mm));
            GroupLoad::force(Force::n(self.load_x_n), Force::n(self.load_y_n), x, y).and_couple(couple)
        };
        if self.row_rivets != 0 {
            load = load.effective(small(self.row_rivets)?);
        }
        let mut stress = GroupStress::new(Stress::mpa(self.shear_mpa));
        if self.bearing_mpa != 0.0 {
            stress = stress.bearing(Stress::mpa(self.bearing_mpa));
        }
        Ok(Stated { group, load, stress, bare })
    }
}

impl sw_group_found {
    pub(crate) fn fresh() -> Self {
        let nothing = f64::NAN;
        sw_group_found {
            struct_size: size_of::<sw_group_found>() as u32,
            critical: 0,
            governs: SW_GROUP_SHEAR,
            shear_rivet: 0,
            bearing_rivet: 0,
            findings: 0,
            open: 0,
            reserved: 0,
            centroid_x_mm: nothing,
            centroid_y_mm: nothing,
            areas: nothing,
            polar_mm2: nothing,
            arm_x_mm: nothing,
            arm_y_mm: nothing,
            moment_nmm: nothing,
            centre_x_mm: nothing,
            centre_y_mm: nothing,
            shear_mpa: nothing,
            shear_used: nothing,
            bearing_mpa: nothing,
            bearing_used: nothing,
            used: nothing,
            safe_load_n: nothing,
            safe_couple_nmm: nothing,
            by_shear_mm: nothing,
            by_bearing_mm: nothing,
            hole_mm: nothing,
            rivet_mm: nothing,
        }
    }

    fn of(found: &GroupCheck) -> Self {
        let nothing = f64::NAN;
        let ([centroid_x_mm, centroid_y_mm], [arm_x_mm, arm_y_mm]) = (found.centroid, found.arm);
        let [centre_x_mm, centre_y_mm] = found.centre.unwrap_or([nothing; 2]);
        let used = |s: &Stressed| s.used.unwrap_or(nothing);
        sw_group_found {
            critical: u32::from(found.critical()),
            governs: match found.governs {
                GroupMode::Shear => SW_GROUP_SHEAR,
                GroupMode::Bearing => SW_GROUP_BEARING,
            },
            shear_rivet: u32::from(found.shear.rivet),
            bearing_rivet: found.bearing.map_or(0, |b| u32::from(b.rivet)),
            findings: found.findings.len() as u32,
            open: found.findings.open() as u32,
            centroid_x_mm,
            centroid_y_mm,
            areas: found.areas,
            polar_mm2: found.polar,
            arm_x_mm,
            arm_y_mm,
            moment_nmm: found.moment,
            centre_x_mm,
            centre_y_mm,
            shear_mpa: found.shear.stress,
            shear_used: used(&found.shear),
            bearing_mpa: found.bearing.map_or(nothing, |b| b.stress),
            bearing_used: found.bearing.as_ref().map_or(nothing, used),
            used: found.used,
            safe_load_n: found.safe_load.unwrap_or(nothing),
            safe_couple_nmm: found.safe_couple.unwrap_or(nothing),
            ..sw_group_found::fresh()
        }
    }

    fn sized(made: &GroupDesign) -> Self {
        sw_group_found {
            by_shear_mm: made.by_shear,
            by_bearing_mm: made.by_bearing.unwrap_or(f64::NAN),
            hole_mm: made.hole,
            rivet_mm: made.rivet,
            ..sw_group_found::of(&made.check)
        }
    }
}

impl sw_rivet_load {
    fn of(r: &RivetLoad) -> Self {
        let ([x_mm, y_mm], [direct_x_n, direct_y_n]) = (r.place, r.direct);
        let ([turning_x_n, turning_y_n], [force_x_n, force_y_n]) = (r.turning, r.force);
        sw_rivet_load {
            x_mm,
            y_mm,
            hole_mm: r.hole,
            rivet_mm: r.rivet,
            direct_x_n,
            direct_y_n,
            turning_x_n,
            turning_y_n,
            force_x_n,
            force_y_n,
            force_n: r.resultant,
            degrees: r.direction(),
            shear_mpa: r.shear,
            bearing_mpa: r.bearing.unwrap_or(f64::NAN),
        }
    }
}

/// Fills a group with its defaults: no rivets, single shear, no load.
#[unsafe(no_mangle)]
pub extern "C" fn sw_group_init(group: *mut sw_group) {
    border::init(group);
}

/// Fills a group's result with its defaults.
#[unsafe(no_mangle)]
pub extern "C" fn sw_group_found_init(found: *mut sw_group_found) {
    border::init(found);
}

/// Checks a group of rivets by the elastic method: what each takes (`sw_group_rivets`), the critical rivet, its stresses,
/// the load that is allowed. The rule book says which diameter counts, what a rivet in double shear is worth, and how
/// close rivets may stand. `findings` as in `sw_joint_check`; their `row` is a rivet.
#[unsafe(no_mangle)]
pub extern "C" fn sw_group_check(
    group: *const sw_group,
    rules: *const sw_rules,
    found: *mut sw_group_found,
    findings: *mut sw_finding,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let Stated { group, load, stress, .. } = border::read(group, 1)?.stated(1)?;
        let out = Out::needed(found, 3)?;
        let list = List::new(findings, capacity, count, 4)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let checked = check_group(&group, &load, &stress, &book.rules)?;
        let list = list.room(checked.findings.len())?;
        out.put(sw_group_found::of(&checked));
        list.fill(checked.findings.iter().map(sw_finding::of));
        Ok(())
    })
}

/// Finds the standard size of the rule book that a group of equal rivets needs, and checks the group with it. No rivet has
/// a hole; without a plate or a bearing stress shear alone decides. `findings` as in `sw_group_check`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_group_size(
    group: *const sw_group,
    rules: *const sw_rules,
    found: *mut sw_group_found,
    findings: *mut sw_finding,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let Stated { group, load, stress, .. } = border::read(group, 1)?.stated(1)?;
        let out = Out::needed(found, 3)?;
        let list = List::new(findings, capacity, count, 4)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let made = size_group(&group, &load, &stress, &book.rules)?;
        let list = list.room(made.check.findings.len())?;
        out.put(sw_group_found::sized(&made));
        list.fill(made.check.findings.iter().map(sw_finding::of));
        Ok(())
    })
}

/// What each rivet of a group takes, in the order of the rivets. Where no rivet has a hole, with the size that
/// `sw_group_size` finds.
#[unsafe(no_mangle)]
pub extern "C" fn sw_group_rivets(
    group: *const sw_group,
    rules: *const sw_rules,
    loads: *mut sw_rivet_load,
    capacity: usize,
    count: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let Stated { group, load, stress, bare } = border::read(group, 1)?.stated(1)?;
        let list = List::new(loads, capacity, count, 3)?;
        let (book, _) = book_of(&border::read(rules, 2)?)?;
        let found = if bare {
            size_group(&group, &load, &stress, &book.rules)?.check
        } else {
            check_group(&group, &load, &stress, &book.rules)?
        };
        list.room(found.rivets().len())?.fill(found.rivets().iter().map(sw_rivet_load::of));
        Ok(())
    })
}

/// The working of a group: of its check, or where no rivet has a hole of its size.
#[unsafe(no_mangle)]
pub extern "C" fn sw_working_group(
    group: *const sw_group,
    rules: *const sw_rules,
    style: *const sw_style,
    buf: *mut c_char,
    len: usize,
    needed: *mut usize,
    error: *mut sw_error,
) -> u32 {
    answer(error, || {
        let Stated { group, load, stress, bare } = border::read(group, 1)?.stated(1)?;
        written((rules, 2), (style, 3), (buf, len, needed), |out, style, book| {
            if bare {
                write_group_size(out, style, &group, &load, &stress, book).map(|_| ())
            } else {
                write_group_check(out, style, &group, &load, &stress, book).map(|_| ())
            }
        })
    })
}
