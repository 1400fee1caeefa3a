//! Every formula body, with numbers that may be anything.

use seamwright::formula;

use crate::input::{Input, keep};

macro_rules! bodies {
    ($i:ident: $($body:path, $($x:ident)*;)*) => { $({
        $(let $x = $i.number();)*
        keep($body($($x),*));
    })* };
}

pub fn rivet(i: &mut Input) {
    bodies! { i:
        formula::hole_by_root, a t b;
        formula::hole_by_bearing, t sc ss z;
        formula::single_shear, d ss;
        formula::double_shear, z d ss;
        formula::plane_shear, z d ss;
        formula::half, fs;
        formula::safety_ratio, f f1;
        formula::bearing, d t sc;
        formula::shear_out, m d t sp;
        formula::row_hold, n f;
        formula::rivet_percentage, d nc ss f f1 p t st;
        formula::balanced_pitch, n d f fo t st;
        formula::least_pitch, a d b n n1;
        formula::greatest_pitch, c t k;
    }
}

pub fn plate(i: &mut Input) {
    bodies! { i:
        formula::crowded_holes, ratio n;
        formula::gap_ratio, g least;
        formula::deducted, d c;
        formula::net_section, p n d t st;
        formula::zigzag_gain, j g q;
        formula::zigzag_net_section, p n1 d1 n2 d2 x t st;
        formula::solid, p t st;
        formula::cut_strength, a b;
        formula::even_share, ft all outside;
        formula::efficiency, p solid;
        formula::strength_per_length, strength p;
        formula::plate_percentage, p n d;
        formula::combined_percentage, p n2 d outer;
        formula::row_distance, a p k b d c;
        formula::row_distance_diagonal, a p b d q;
        formula::gauge, p n;
        formula::margin, a d b;
        formula::times, a y;
        formula::strap_share, a t c;
        formula::strap_thickened, share p n1 d1 nb db;
        formula::row_pitch, p n;
        formula::mean, d1 d2;
        formula::head_beside_strap, m wh;
        formula::heads_apart, w1 w2 q;
    }
}

pub fn shop(i: &mut Input) {
    bodies! { i:
        formula::straight_run, length e1 e2;
        formula::middle_circle, inside t;
        formula::circle_outside, dc t t2;
        formula::circle_inside, dc t t2;
        formula::girth, dc;
        formula::strips_in_run, run p;
        formula::strip_of_run, run k;
        formula::difference, a b;
        formula::rivets_in_run, s k n e;
        formula::hole_place, first p k;
        formula::hole_angle, x run;
        formula::grip_of_two, t t2;
        formula::grip_of_three, t t2 t3;
        formula::allowance_in_diameters, k d;
        formula::allowance_small_machine, g d;
        formula::allowance_by_table, z0 g;
        formula::rivet_length, g z;
        formula::row_span, so_far g;
        formula::overlap, s m;
        formula::strap_width, s m;
        formula::cylinder, d l;
        formula::round_head, w h;
        formula::sunk_head, w h d;
        formula::mass, v rho;
        formula::plate_volume, w l b;
        formula::volume_sum, v1 v2;
        formula::mass_of_many, so_far n m;
        formula::seam_mass, rivets straps overlap holes;
        formula::mass_per_metre, m l;
    }
}

pub fn vessel(i: &mut Input) {
    bodies! { i:
        formula::allowance_sum, book given;
        formula::half_diameter, d;
        formula::radius_share, t r;
        formula::outside_radius, r t;
        formula::safety_sum, f added;
        formula::ratio, p present;
        formula::pressure_inside, st j t c d fs;
        formula::pressure_thirty_seconds, st j t c d constant;
        formula::pressure_radius, st j t c r fs;
        formula::pressure_mean, st j t c d fs;
        formula::girth_demand, j p pg;
        formula::plate_for_pressure, c t p pa;
        formula::share_of_plate, k tf t;
        formula::end_rivets, p inside fs d ss z;
    }
}

pub fn group(i: &mut Input) {
    bodies! { i:
        formula::area_ratio, d largest;
        formula::area_times, k x;
        formula::sum, so_far x;
        formula::centroid, sum areas;
        formula::arm_squared, u v;
        formula::moment_about, py ex px ey;
        formula::moment_sum, py ex px ey couple;
        formula::eccentricity_allowance, n;
        formula::instant_x, xc py polar areas moment;
        formula::instant_y, yc px polar areas moment;
        formula::distance, x1 x2 y1 y2;
        formula::direct_share, p rivets;
        formula::direct_share_by_area, p k areas;
        formula::turning_share, moment a b polar;
        formula::turning_share_by_area, moment k a b polar;
        formula::share_sum, direct turning;
        formula::resultant, x y;
        formula::rivet_shear_stress, f d;
        formula::rivet_shear_stress_double, f z d;
        formula::rivet_bearing_stress, f d t;
        formula::safe_load, p used;
        formula::diameter_by_shear, f ss;
        formula::diameter_by_shear_double, f z ss;
        formula::diameter_by_bearing, f t sc;
    }
}
