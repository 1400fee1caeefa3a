//! Cut sizes and masses against calculations by hand.

use super::*;

#[test]
fn masses_of_a_lap_by_hand() {
    let found = sheet(&lap(), &silent(), straight(3000.0, 40.0, 40.0));
    // 83 rivets of 22 mm: grip 26, allowance 1.8*22 = 39.6, length 65.6.
    let line = found.rivets()[0];
    assert!(close(line.length, 65.6) && close(line.stock, 65.6) && line.grip == 26.0);
    assert!((button(1.0) - 0.883_311).abs() < 1e-6);
    // One rivet: pi/4*484*65.6 = 24 936.71 mm3 and a set head of 0.883311*10648 = 9405.50 mm3: 34 342.2 mm3, 0.26959 kg.
    let one = STEEL * 1e-9 * (PI / 4.0 * 484.0 * 65.6 + button(22.0));
    assert!(close(line.mass, one) && (one - 0.269_59).abs() < 1e-5);
    assert!(close(found.masses.rivets, 83.0 * one));
    // Overlap 40 + 2*35 = 110 wide, 3000 long, 13 thick: 4 290 000 mm3, 33.6765 kg.
    let overlap = found.cuts.overlap.unwrap();
    assert_eq!((overlap.width, overlap.length, overlap.thickness), (110.0, 3000.0, 13.0));
    assert!(close(found.masses.overlap, 33.6765) && found.masses.straps == 0.0);
    // Holes of 23 through 26: pi/4*529*26 = 10 802.4 mm3 each.
    let holes = 83.0 * STEEL * 1e-9 * PI / 4.0 * 529.0 * 26.0;
    assert!(close(found.masses.holes, holes));
    assert!(close(found.masses.total, 83.0 * one + 33.6765 - holes));
    assert!(close(found.masses.per_metre, found.masses.total / 3.0));
}

#[test]
fn masses_of_a_butt_by_hand() {
    let found = sheet(&butt(), &silent(), straight(1900.0, 50.0, 50.0));
    // Grips: outer row 20 + 16, inner rows 20 + 16 + 13. Allowance 1.8*25 = 45.
    let (outer, inner) = (found.rivets()[0], found.rivets()[2]);
    assert_eq!((outer.grip, outer.planes, inner.grip, inner.planes), (36.0, 1, 49.0, 2));
    assert_eq!((outer.length, inner.length), (81.0, 94.0));
    let orders: Vec<(f64, f64, u32)> = found.to_order().map(|(d, l, n)| (d.to_mm(), l.to_mm(), n)).collect();
    assert_eq!(orders, [(25.0, 81.0, 22), (25.0, 94.0, 82)]);
    // Wide strap 2*(68 + 50 + 80) = 396 wide, narrow strap 2*(50 + 80) = 260 wide, both 1900 long.
    let (wide, narrow) = (found.cuts.wide.unwrap(), found.cuts.narrow.unwrap());
    assert_eq!((wide.width, wide.length, wide.thickness), (396.0, 1900.0, 16.0));
    assert_eq!((narrow.width, narrow.length, narrow.thickness), (260.0, 1900.0, 13.0));
    assert_eq!(found.joint.widths(), Some((MM(396.0), Some(MM(260.0)))));
    // 396*1900*16 = 12 038 400 mm3, 260*1900*13 = 6 422 000 mm3: 18 460 400 mm3, 144.914 kg.
    assert!(close(found.masses.straps, 144.914_14) && found.masses.overlap == 0.0);
    let shank = |l: f64| PI / 4.0 * 625.0 * l + button(25.0);
    let rivets = STEEL * 1e-9 * (22.0 * shank(81.0) + 82.0 * shank(94.0));
    let holes = STEEL * 1e-9 * PI / 4.0 * 676.0 * (22.0 * 36.0 + 82.0 * 49.0);
    assert!(close(found.masses.rivets, rivets) && close(found.masses.holes, holes));
    assert!(close(found.masses.total, rivets + 144.914_14 - holes));
}

#[test]
fn countersunk_heads_weigh_less_and_take_more_metal_out() {
    let run = straight(3000.0, 40.0, 40.0);
    let sunk = Order::new(run, HeadForm::Countersunk, LengthRule::Countersunk, EXACT, Density::kg_m3(8000.0));
    let found = shop_sheet(&lap(), &steel(), &silent(), &sunk).unwrap();
    // Head 1.5 d wide and 0.5 d deep, less its shank: pi 0.5 (2.25 + 1.5 - 2)/12 d^3 = 0.229074 d^3.
    let cone = PI * 0.5 * 1.75 / 12.0 * 22_f64.powi(3);
    let line = found.rivets()[0];
    assert!(close(line.length, 26.0 + 11.0));
    assert!(close(line.mass, 8e-6 * (PI / 4.0 * 484.0 * 37.0 + cone)));
    assert!(close(line.drilled, 8e-6 * (PI / 4.0 * 529.0 * 26.0 + 2.0 * cone)));
    assert!(!found.holds(Note::HeadAgainstRule));
    // One head sunk only.
    let mixed = shop_sheet(&lap(), &steel(), &silent(), &sunk.set_head(HeadForm::Button)).unwrap();
    assert!(close(mixed.rivets()[0].mass, 8e-6 * (PI / 4.0 * 484.0 * 37.0 + button(22.0))));
    assert!(close(mixed.rivets()[0].drilled, 8e-6 * (PI / 4.0 * 529.0 * 26.0 + cone)));
}
