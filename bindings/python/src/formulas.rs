//! Single formulas by name.

use pyo3::prelude::*;
use seamwright::bounds::Field;
use seamwright::error::{Error, ErrorKind};
use seamwright::formula::{self, FORMULAS};

use crate::error::raise_about;

macro_rules! bodies {
    ($($name:ident($($argument:ident),*);)*) => {
        const SIGNATURES: &[(&str, &[&str])] = &[$((stringify!($name), &[$(stringify!($argument)),*])),*];

        fn value(name: &str, arguments: &[f64]) -> Option<f64> {
            match name {
                $(stringify!($name) => match arguments {
                    &[$($argument),*] => Some(formula::$name($($argument),*)),
                    _ => None,
                },)*
                _ => None,
            }
        }
    };
}

bodies! {
    balanced_pitch(n, d, f, fo, t, st);
    least_pitch(a, d, b, n, n1);
    greatest_pitch(c, t, k);
    crowded_holes(ratio, n);
    gap_ratio(g, least);
    deducted(d, c);
    net_section(p, n, d, t, st);
    zigzag_gain(j, g, q);
    zigzag_net_section(p, n1, d1, n2, d2, x, t, st);
    solid(p, t, st);
    cut_strength(so_far, more);
    even_share(ft, all, outside);
    efficiency(p, solid);
    plate_percentage(p, n, d);
    allowance_sum(book, given);
    half_diameter(d);
    radius_share(t, r);
    outside_radius(r, t);
    safety_sum(f, added);
    pressure_inside(st, j, t, c, d, fs);
    pressure_thirty_seconds(st, j, t, c, d, constant);
    pressure_radius(st, j, t, c, r, fs);
    pressure_mean(st, j, t, c, d, fs);
    ratio(p, present);
    girth_demand(j, p, pg);
    end_rivets(p, inside, fs, d, ss, z);
    plate_for_pressure(c, t, p, pa);
    share_of_plate(k, tf, t);
    strength_per_length(strength, p);
    combined_percentage(p, n2, d, outer_rivets);
    hole_by_root(a, t, b);
    hole_by_bearing(t, sc, ss, z);
    single_shear(d, ss);
    double_shear(z, d, ss);
    plane_shear(z, d, ss);
    half(fs);
    safety_ratio(f, f1);
    bearing(d, t, sc);
    shear_out(m, d, t, sp);
    row_hold(n, f);
    rivet_percentage(d, nc, ss, f, f1, p, t, st);
    area_ratio(d, largest);
    area_times(k, x);
    sum(so_far, x);
    centroid(sum, areas);
    arm_squared(u, v);
    moment_about(py, ex, px, ey);
    moment_sum(py, ex, px, ey, couple);
    eccentricity_allowance(n);
    instant_x(xc, py, polar, areas, moment);
    instant_y(yc, px, polar, areas, moment);
    distance(x1, x2, y1, y2);
    direct_share(p, rivets);
    direct_share_by_area(p, k, areas);
    turning_share(moment, a, b, polar);
    turning_share_by_area(moment, k, a, b, polar);
    share_sum(direct, turning);
    resultant(x, y);
    rivet_shear_stress(f, d);
    rivet_shear_stress_double(f, z, d);
    rivet_bearing_stress(f, d, t);
    safe_load(p, used);
    diameter_by_shear(f, ss);
    diameter_by_shear_double(f, z, ss);
    diameter_by_bearing(f, t, sc);
    straight_run(length, e1, e2);
    middle_circle(inside, t);
    circle_outside(dc, t, t2);
    circle_inside(dc, t, t2);
    girth(dc);
    strips_in_run(run, p);
    strip_of_run(run, k);
    difference(a, b);
    rivets_in_run(s, k, n, e);
    hole_place(first, p, k);
    hole_angle(x, run);
    grip_of_two(t, t2);
    grip_of_three(t, t2, t3);
    allowance_in_diameters(k, d);
    allowance_small_machine(g, d);
    allowance_by_table(z0, g);
    rivet_length(g, z);
    row_span(so_far, g);
    overlap(s, m);
    strap_width(s, m);
    cylinder(d, l);
    round_head(w, h);
    sunk_head(w, h, d);
    mass(v, rho);
    plate_volume(w, l, b);
    volume_sum(v1, v2);
    mass_of_many(so_far, n, m);
    seam_mass(rivets, straps, overlap, holes);
    mass_per_metre(m, l);
    row_distance(a, p, k, b, d, c);
    row_distance_diagonal(a, p, b, d, q);
    gauge(p, n);
    margin(a, d, b);
    times(a, y);
    strap_share(a, t, c);
    strap_thickened(share, p, n1, d1, nb, db);
    row_pitch(p, n);
    mean(d1, d2);
    head_beside_strap(m, wh);
    heads_apart(w1, w2, q);
}

/// The value of a formula for arguments in the order of its signature.
#[pyfunction]
pub fn formula_value(py: Python<'_>, name: &str, arguments: Vec<f64>) -> PyResult<f64> {
    value(name, &arguments).ok_or_else(|| {
        let error = Error::new(ErrorKind::WrongChoice, Field::Text);
        raise_about(py, &format!("no formula {name:?} of {} arguments", arguments.len()), &error, None)
    })
}

/// Name and arguments of every formula body.
#[pyfunction]
pub fn formula_signatures() -> Vec<(&'static str, Vec<&'static str>)> {
    SIGNATURES.iter().map(|(name, arguments)| (*name, arguments.to_vec())).collect()
}

/// Name, equation and source of every formula, as the working shows them.
#[pyfunction]
pub fn formula_table() -> Vec<(String, &'static str, &'static str)> {
    FORMULAS.iter().map(|f| (format!("{f:?}"), f.equation(), f.source())).collect()
}
