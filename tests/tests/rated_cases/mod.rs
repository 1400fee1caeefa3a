//! Joints to rate and shells to design, in many circumstances.

use seamwright::materials::Materials;
use seamwright::quantities::{Pressure, Stress};
use seamwright::rating::{Existing, Footing, HoleMaking, KnownLength, Riveting, Service, Shell};
use seamwright::vessel::{GirthBrief, GirthPlace, PlateStock, VesselBrief};

use super::support::{form, mm};

/// Joints that stand, in several circumstances, laps and butts, wide and narrow, thick and thin.
pub fn ratings() -> Vec<Existing> {
    let f = |x: f64| KnownLength::given(mm(x));
    let mut list = Vec::new();
    let open = Service::in_service();
    let tested = Service { tested: true, ..open };
    let known = Service { riveting: Some(Riveting::Machine), ..Service::new_shell() };
    let tubular = Service { tubular: Some(true), lap_length: Some(mm(3700.0)), ..known };
    let reamed = Service { holes: Some(HoleMaking::Reamed), stripped: true, second_hand: Some(true), ..tubular };
    let punched = Service { holes: Some(HoleMaking::Punched), past_age_limit: Some(true), tested: true, ..known };
    let fire = Service { lap_in_fire: Some(true), weight_on_seam: Some(true), ..known };
    for name in ["lap 1", "lap 2", "lap 3", "lap 4", "single 2", "double 2", "unequal 2"] {
        for service in [open, tested, known, tubular, reamed, punched, fire] {
            for (inside, t) in
                [(150.0, 12.0), (700.0, 6.0), (900.0, 8.0), (1100.0, 9.0), (1300.0, 10.0), (2000.0, 14.0)]
            {
                let old = Existing::new(form(name), f(90.0), f(t), mm(inside)).hole(f(21.0)).service(service);
                let old = old.tension(Stress::mpa(400.0)).shear(Stress::mpa(300.0)).bearing(Stress::mpa(700.0));
                let old = old.present(Pressure::mpa(0.9)).shell_plate(f(0.7 * t));
                list.extend([
                    old,
                    old.safety(4.4),
                    old.permissible(),
                    old.corrosion(mm(1.5)).present(Pressure::mpa(0.2)),
                ]);
            }
        }
    }
    list
}

pub fn vessel_shell() -> Shell {
    Shell::new(mm(1300.0), Footing::Ultimate).safety(1.5)
}

/// Shells to design, with girth seams at each place.
pub fn vessels(steel: &Materials) -> Vec<VesselBrief<'static>> {
    let stock = PlateStock::every(mm(1.0), mm(6.0), mm(40.0));
    let mut list = Vec::new();
    for place in [GirthPlace::Middle, GirthPlace::End, GirthPlace::Stayed] {
        for (pressure, name) in [(0.3, "lap 1"), (1.6, "double 2")] {
            for shell in [vessel_shell(), Shell::new(mm(900.0), Footing::Ultimate).corrosion(mm(1.0))] {
                for around in ["lap 1", "double 1"] {
                    let made = VesselBrief::new(form(name), Pressure::mpa(pressure), shell, *steel, stock);
                    list.push(made.girth(GirthBrief::new(form(around), place)));
                }
            }
        }
    }
    list
}
