//! Errors carried forward: one figure of a student is wrong, all that follows is worked from it by arithmetic of this
//! test and of the reference model, and the marking has to see that it follows.

use seamwright::joint::{Form, Joint, JointKind};
use seamwright::materials::Materials;
use seamwright::reconcile::{Figure, Work};
use seamwright::rules::{INDIAN, METRIC, Rules};
use seamwright::sizing::Brief;
use seamwright::step::{Name, Quantity as Q};
use seamwright::teach::{Effect, Family, Mark, Problem, Setting, Task, mark, problem};
use seamwright_reference as reference;

/// A joint by hand, with single rivets that may be another's.
#[derive(Clone)]
struct Hand {
    lap: bool,
    /// Rivets and planes, outside first.
    rows: Vec<(f64, u8)>,
    strip: f64,
    hole: f64,
    plate: f64,
    straps: [f64; 2],
    tension: f64,
    /// One rivet in shear, crushing the plate, crushing each strap (plate B of a lap).
    shear: Vec<f64>,
    crush: Vec<f64>,
    crush_straps: Vec<[f64; 2]>,
    /// Tearing at the outer row over what it should be.
    tear: f64,
}

impl Hand {
    fn new(form: &Form, sizes: [f64; 3], straps: [f64; 2], m: &Materials, double: f64) -> Hand {
        let [strip, hole, plate] = sizes;
        let rows: Vec<(f64, u8)> = form.rows().map(|r| (f64::from(r.rivets), r.planes)).collect();
        let one = std::f64::consts::PI / 4.0 * hole * hole * m.rivet_shear.to_mpa();
        let bearing = m.plate.bearing.map_or(f64::INFINITY, |b| b.to_mpa());
        Hand {
            lap: form.kind() == JointKind::Lap,
            shear: rows.iter().map(|r| if r.1 == 2 { double * one } else { one }).collect(),
            crush: rows.iter().map(|_| hole * plate * bearing).collect(),
            crush_straps: rows.iter().map(|_| straps.map(|b| hole * b * bearing)).collect(),
            rows,
            strip,
            hole,
            plate,
            straps,
            tension: m.plate.tension.to_mpa(),
            tear: 1.0,
        }
    }

    fn of(joint: &Joint, m: &Materials, double: f64) -> Hand {
        let plate = joint.plate().to_mm();
        let strap = |b: Option<seamwright::quantities::Length>| b.map_or(plate, |b| b.to_mm());
        let straps = [strap(joint.wide_strap()), strap(joint.narrow_strap())];
        Hand::new(joint.form(), [joint.strip().to_mm(), joint.rows()[0].hole().to_mm(), plate], straps, m, double)
    }

    /// One rivet in bearing: the weaker of the plate and all that it bears against.
    fn bearing(&self, row: usize) -> f64 {
        let [a, b] = self.crush_straps[row];
        self.crush[row].min(if self.rows[row].1 == 2 { a + b } else { a })
    }

    /// The rivets of a row, with the wide or the narrow strap or both on the far side.
    fn hold(&self, row: usize, wide: bool, narrow: bool) -> f64 {
        let (n, planes) = self.rows[row];
        let plane = self.shear[row] / f64::from(planes);
        let [a, b] = self.crush_straps[row];
        let side = |there: bool, strap: f64| if there { plane.min(strap) } else { 0.0 };
        n * self.crush[row].min(side(wide, a) + side(narrow && planes == 2, b))
    }

    fn net(&self, row: usize, thickness: f64) -> f64 {
        (self.strip - self.rows[row].0 * self.hole) * thickness * self.tension
    }

    fn solid(&self) -> f64 {
        self.strip * self.plate * self.tension
    }

    fn tear_outer(&self) -> f64 {
        self.net(0, self.plate) * self.tear
    }

    fn sum(&self, one: impl Fn(usize) -> f64) -> f64 {
        (0..self.rows.len()).map(|r| self.rows[r].0 * one(r)).sum()
    }

    /// The least of all ways to come apart; `torn` leaves out the one where only rivets fail.
    fn strength(&self, torn: bool) -> f64 {
        let n = self.rows.len();
        let rows = || (0..n).map(Some).chain([None]);
        let mut least = f64::INFINITY;
        for plate in rows() {
            for wide in rows() {
                // The narrow strap begins where rivets have two planes; a lap and a single strap have none.
                for narrow in rows().filter(|k| k.is_none_or(|k| !self.lap && self.rows[k].1 == 2)) {
                    if torn && (plate, wide, narrow) == (None, None, None) {
                        continue;
                    }
                    let mut sum = plate.map_or(0.0, |r| self.net(r, self.plate) * if r == 0 { self.tear } else { 1.0 });
                    let own = if self.lap { self.tear } else { 1.0 };
                    sum += wide.map_or(0.0, |r| self.net(r, self.straps[0]) * if r + 1 == n { own } else { 1.0 });
                    sum += narrow.map_or(0.0, |r| self.net(r, self.straps[1]));
                    for row in (0..n).filter(|r| plate.is_none_or(|p| *r < p)) {
                        let far = |strap: Option<usize>| strap.is_none_or(|s| row > s);
                        sum += self.hold(row, far(wide), far(narrow));
                    }
                    least = least.min(sum);
                }
            }
        }
        least
    }
}

/// A student's figure, to five figures.
fn figure(name: Name, x: f64) -> Figure {
    let decimals = (4 - x.abs().log10().floor() as i32).max(0) as usize;
    Figure::printed(name, &format!("{x:.decimals$}"), 1.0).unwrap()
}

/// What follows from the injected figure is credited, what does not depend on it is right.
fn judge(p: &Problem, injected: Name, answers: &[Figure]) -> usize {
    let marks = mark(p, answers).unwrap();
    let said = || format!("{:?} no. {}, {injected:?} wrong: {answers:?}, key {:?}\n{marks:?}", p.family, p.seed, p.key);
    assert!(!matches!(marks.of(injected), Some(Mark::Right | Mark::CarriedOver) | None), "{}", said());
    let mut carried = 0;
    for (answer, (name, right)) in answers.iter().zip(p.key.iter()).filter(|(a, _)| a.name != injected) {
        assert_eq!(answer.name, name);
        let wanted = if answer.is(right) { Mark::Right } else { Mark::CarriedOver };
        carried += usize::from(wanted == Mark::CarriedOver);
        assert_eq!(marks.of(name), Some(wanted), "{name:?}: {}", said());
    }
    carried
}

/// The first row whose single rivet is as the one of a row.
fn alike(list: &[f64], row: usize) -> usize {
    list.iter().position(|x| (x - list[row]).abs() <= 1e-9 * x.abs()).unwrap()
}

/// How far a figure is put wrong. No slip of the catalogue has these factors.
const FACTORS: [f64; 3] = [0.77, 0.941, 1.317];

fn check_families() -> Vec<Family> {
    let mut all = Vec::new();
    let forms = [
        Form::lap(1),
        Form::lap(2),
        Form::lap(3),
        Form::double_strap(1),
        Form::double_strap(2),
        Form::unequal_straps(2),
        Form::unequal_straps(3),
    ];
    for form in forms.map(Result::unwrap) {
        for effect in [Effect::Tearing, Effect::Shearing, Effect::Bearing, Effect::Combined] {
            let family = Family { form, setting: Setting::Boiler, task: Task::Check, effect };
            // Some forms have no problem of an effect: outer rows that do not differ have no inner tear.
            if problem(0, &family, &METRIC.rules).is_ok() {
                all.push(family);
            }
        }
    }
    all
}

fn numbers() -> u64 {
    if cfg!(debug_assertions) { 1 } else { 4 }
}

/// The key of a check by hand: another's single rivets, tear and totals as far as they are given.
fn by_hand(hand: &Hand, p: &Problem, injected: &Figure) -> Vec<Figure> {
    let mut totals = (hand.tear_outer(), hand.sum(|r| hand.shear[r]), hand.sum(|r| hand.bearing(r)));
    let mut strength = hand.strength(false);
    match injected.name {
        Name(Q::ShearAll, _) => totals.1 = injected.value,
        Name(Q::BearingAll, _) => totals.2 = injected.value,
        _ => {}
    }
    if matches!(injected.name.0, Q::ShearAll | Q::BearingAll) {
        strength = hand.strength(true).min(totals.1).min(totals.2);
    }
    let mut solid = hand.solid();
    let mut found = Vec::new();
    for (name, _) in p.key.iter() {
        let row = usize::from(name.1).saturating_sub(1);
        let x = match name.0 {
            Q::Solid => solid,
            Q::TearOuter => totals.0,
            Q::RivetShear => hand.shear[row],
            Q::ShearAll => totals.1,
            Q::RivetBearing => hand.bearing(row),
            Q::BearingAll => totals.2,
            Q::ModeStrength => strength,
            Q::BookEfficiency => strength / solid,
            other => panic!("{other:?}"),
        };
        let mut stated = figure(name, x);
        if name == injected.name {
            stated = *injected;
            match name.0 {
                Q::Solid => solid = injected.value,
                Q::ModeStrength => strength = injected.value,
                _ => {}
            }
        }
        found.push(stated);
    }
    found
}

#[test]
fn an_error_at_each_figure_of_a_check_is_carried_forward() {
    let (mut asked, mut carried) = (0, std::collections::BTreeMap::<String, usize>::new());
    for family in check_families() {
        for seed in 0..numbers() {
            let p = problem(seed, &family, &METRIC.rules).unwrap();
            let Work::Check(joint, m) = &p.case.work else { panic!() };
            let right = Hand::of(joint, m, 2.0);
            for (name, x) in p.key.iter().filter(|(name, _)| name.0 != Q::BookEfficiency) {
                for factor in FACTORS {
                    let injected = figure(name, x * factor);
                    let factor = injected.value / x;
                    let mut hand = right.clone();
                    let row = usize::from(name.1).saturating_sub(1);
                    for r in 0..hand.rows.len() {
                        let of_shear = alike(&right.shear, r) == row;
                        let bearings: Vec<f64> = (0..hand.rows.len()).map(|r| right.bearing(r)).collect();
                        if name.0 == Q::RivetShear && of_shear {
                            hand.shear[r] *= factor;
                        }
                        if name.0 == Q::RivetBearing && alike(&bearings, r) == row {
                            hand.crush[r] *= factor;
                            hand.crush_straps[r] = hand.crush_straps[r].map(|x| x * factor);
                        }
                    }
                    if name.0 == Q::TearOuter {
                        hand.tear = factor;
                    }
                    asked += 1;
                    let followed = judge(&p, name, &by_hand(&hand, &p, &injected));
                    *carried.entry(format!("{:?}", name.0)).or_default() += followed;
                }
            }
        }
    }
    println!("{asked} asked; carried {carried:?}");
    for name in ["Solid", "TearOuter", "RivetShear", "ShearAll", "RivetBearing", "BearingAll", "ModeStrength"] {
        assert!(carried.get(name).is_some_and(|n| *n > 10), "{name} never carried: {carried:?}");
    }
}

/// A wrong stress or area spoils every single rivet alike: the second kind of rivet follows from the first.
#[test]
fn the_same_error_in_every_row_is_one_error() {
    let form = Form::unequal_straps(3).unwrap();
    let family = Family { form, setting: Setting::Boiler, task: Task::Check, effect: Effect::Combined };
    for seed in 0..numbers() {
        let p = problem(seed, &family, &METRIC.rules).unwrap();
        let Work::Check(joint, m) = &p.case.work else { panic!() };
        for factor in FACTORS {
            let (first, right) = p.key.iter().find(|(name, _)| name.0 == Q::RivetShear).unwrap();
            let injected = figure(first, right * factor);
            let mut hand = Hand::of(joint, m, 2.0);
            hand.shear.iter_mut().for_each(|x| *x *= injected.value / right);
            assert!(judge(&p, first, &by_hand(&hand, &p, &injected)) >= 2);
        }
    }
}

/// A student who rounds a right figure and works on from it is not accused, however many figures are kept.
#[test]
fn rounding_on_the_way_is_not_accused() {
    for family in check_families() {
        for seed in 0..numbers() {
            let p = problem(seed, &family, &METRIC.rules).unwrap();
            let Work::Check(joint, m) = &p.case.work else { panic!() };
            for kept in [3, 4] {
                let round = |x: f64| format!("{x:.*e}", kept - 1).parse::<f64>().unwrap();
                let mut hand = Hand::of(joint, m, 2.0);
                let bearings: Vec<f64> =
                    (0..hand.rows.len()).map(|r| round(hand.bearing(r)) / hand.bearing(r)).collect();
                hand.shear.iter_mut().for_each(|x| *x = round(*x));
                for (r, factor) in bearings.iter().enumerate() {
                    hand.crush[r] *= factor;
                    hand.crush_straps[r] = hand.crush_straps[r].map(|x| x * factor);
                }
                let nothing = figure(Name(Q::Hole, 0), 1.0);
                let mut answers = by_hand(&hand, &p, &nothing);
                for answer in answers.iter_mut().filter(|a| matches!(a.name.0, Q::RivetShear | Q::RivetBearing)) {
                    *answer = Figure::printed(answer.name, &format!("{:.*e}", kept - 1, answer.value), 1.0).unwrap();
                }
                let marks = mark(&p, &answers).unwrap();
                for (name, mark) in marks.iter() {
                    let single = matches!(name.0, Q::RivetShear | Q::RivetBearing);
                    let fine = mark == Mark::Right || (!single && mark == Mark::CarriedOver);
                    assert!(fine, "{:?} no. {seed}, {name:?}: {mark:?}\n{answers:?}\n{:?}", family, p.key);
                }
            }
        }
    }
}

/// A sizing by the reference model, with one figure replaced on the way.
fn sized_by_hand(
    brief: &Brief,
    book: &reference::Book,
    metric: bool,
    p: &Problem,
    wrong: &Figure,
) -> Option<Vec<Figure>> {
    use reference::{Arrangement, Form as Meeting, Kind, Row};
    let (form, m, t) = (*brief.form(), brief.materials(), brief.plate().to_mm());
    let (shear, bearing) = (m.rivet_shear.to_mpa(), m.plate.bearing.unwrap().to_mpa());
    let mut answers: Vec<Figure> = Vec::new();
    let mut say = |name: Name, x: f64| {
        let stated = if name == wrong.name { *wrong } else { figure(name, x) };
        if p.key.answer(name).is_some() {
            answers.push(stated);
        }
        if name == wrong.name { wrong.value } else { x }
    };
    let all_double = form.rows().all(|r| r.planes == 2);
    let raw = say(Name(Q::Hole, 0), reference::raw_hole(book, t, shear, Some(bearing), all_double)?);
    let size = |least: f64| book.series.iter().find(|(_, hole)| *hole >= least * (1.0 - 1e-9));
    let hole = say(Name(Q::Hole, 1), size(raw)?.1);
    let rivet = say(Name(Q::Rivet, 1), book.series.iter().find(|(_, h)| *h == hole)?.0);
    let kind = match (form.kind(), form.unequal()) {
        (JointKind::DoubleStrap, true) => Kind::Unequal,
        (JointKind::DoubleStrap, false) => Kind::Equal,
        _ => Kind::Single,
    };
    let lap = form.kind() == JointKind::Lap;
    let first = u32::from(form.outer_rivets());
    let last = u32::from(form.row(form.row_count()).rivets);
    // Like rows or unequal straps: the strap does not depend on the pitch.
    let straps = if lap { [t, t] } else { reference::straps(book, kind, t, 1000.0, (first, hole), (last, hole))? };
    let mut hand = Hand::new(&form, [1000.0, hole, t], straps, m, book.double);
    let right = hand.clone();
    for r in 0..hand.rows.len() {
        let row = alike(&right.shear, r);
        let name = Name(Q::RivetShear, u8::try_from(row + 1).unwrap());
        hand.shear[r] = if row == r { say(name, hand.shear[r]) } else { hand.shear[row] };
    }
    let bearings: Vec<f64> = (0..hand.rows.len()).map(|r| right.bearing(r)).collect();
    let mut factors = vec![1.0; hand.rows.len()];
    for r in 0..hand.rows.len() {
        let row = alike(&bearings, r);
        let name = Name(Q::RivetBearing, u8::try_from(row + 1).unwrap());
        factors[r] = if row == r { say(name, bearings[r]) / bearings[r] } else { factors[row] };
        hand.crush[r] *= factors[r];
        hand.crush_straps[r] = hand.crush_straps[r].map(|x| x * factors[r]);
    }
    let n = f64::from(first);
    let balance = |f: f64| n * hole + f / (t * hand.tension);
    let by_shear = say(Name(Q::PitchByShear, 0), balance(hand.sum(|r| hand.shear[r])));
    // The straps are not known yet: each rivet is balanced by shear and by crushing the plate.
    let mut before = hand.clone();
    before.crush_straps.fill([f64::INFINITY; 2]);
    let weaker: f64 = (0..hand.rows.len()).map(|r| before.hold(r, true, true)).sum();
    let by_weaker = say(Name(Q::PitchByWeaker, 0), balance(weaker));
    let rows: Vec<Row> = form
        .rows()
        .map(|r| Row { rivets: u32::from(r.rivets), hole, rivet: hole, planes: u32::from(r.planes) })
        .collect();
    let meets = match kind {
        _ if lap => Meeting::Lap { plates: [t, t] },
        _ => Meeting::Butt { plate: t, wide: straps[0], narrow: Some(straps[1]) },
    };
    let joint = reference::Joint { form: meets, strip: 1000.0, rows };
    let least = say(Name(Q::PitchLeast, 0), reference::floor(book, &joint));
    let cap = match reference::cap(book, &joint) {
        reference::Cap::At(x) => reference::Cap::At(say(Name(Q::PitchGreatest, 0), x)),
        other => other,
    };
    let wanted = if metric { by_weaker } else { by_shear };
    let pitch = say(Name(Q::Pitch, 0), reference::admissible_pitch(wanted, least, cap, 1.0)?);
    let places: Vec<(u32, f64)> = joint.rows.iter().map(|r| (r.rivets, hole)).collect();
    let inner = match form.arrangement() {
        seamwright::joint::Arrangement::Chain => Arrangement::Chain,
        _ => Arrangement::Zigzag,
    };
    for (gap, row) in reference::back_pitches(book, pitch, &places, inner).into_iter().zip(1..) {
        let gap = say(Name(Q::RowGapLeast, row), gap?);
        // Rows that the problem sets closer than this hole needs: the plate percentage is then another one.
        if brief.stated_back_pitch(usize::from(row)).is_some_and(|set| set.to_mm() < gap) {
            return None;
        }
    }
    let margin = say(Name(Q::MarginLeast, 0), book.margin_factor * hole);
    say(Name(Q::OtherPlate, 0), straps[0]);
    say(Name(Q::Narrow, 0), straps[1]);
    // Heads of a row in single shear beside the edge of the narrow strap: the margin as taken, and half of 1.6 rivets.
    let edge = (margin / book.step - 1e-9).ceil() * book.step;
    for (row, pair) in (1..).zip(joint.rows.windows(2)) {
        if pair[0].planes < pair[1].planes {
            say(Name(Q::RowGapBeside, row), edge + 0.8 * rivet);
        }
    }
    hand.strip = pitch;
    // Neither book counts tearing of the straps, and the Indian one no bearing.
    if !lap {
        hand.straps = [f64::INFINITY; 2];
    }
    if !metric {
        hand.crush.fill(f64::INFINITY);
        hand.crush_straps.fill([f64::INFINITY; 2]);
    }
    say(Name(Q::BookEfficiency, 0), hand.strength(false) / hand.solid());
    // Holes that leave nothing of the plate are no sizing.
    let densest = form.rows().map(|r| f64::from(r.rivets)).fold(0.0, f64::max);
    (pitch > 1.2 * densest * hole).then_some(answers)
}

#[test]
fn an_error_at_each_figure_of_a_sizing_is_carried_forward() {
    let lap = |n| Form::lap(n).unwrap();
    let double = |n| Form::double_strap(n).unwrap();
    let thin = [lap(1), lap(2), lap(3), double(1), double(2)].map(|form| (form, Effect::ThinPlate, &METRIC.rules));
    let capped = [lap(3), double(2), Form::unequal_straps(3).unwrap()].map(|form| (form, Effect::Cap, &INDIAN.rules));
    let families: Vec<(Form, Effect, &Rules)> = thin.into_iter().chain(capped).collect();
    // The library's metric book is the Indian one with two full planes and no least strap: Khurmi & Gupta's examples.
    let metric = reference::Book { double: 2.0, one_plane: 1.0, strap_least: 0.0, ..reference::INDIAN_BOILER };
    let (mut asked, mut carried) = (0, std::collections::BTreeMap::<String, usize>::new());
    for (form, effect, rules) in families {
        let book = if effect == Effect::ThinPlate { metric } else { reference::INDIAN_BOILER };
        let family = Family { form, setting: Setting::Boiler, task: Task::Size, effect };
        for seed in 0..numbers() {
            let p = problem(seed, &family, rules).unwrap();
            let Work::Size(brief) = &p.case.work else { panic!() };
            let work = |wrong: &Figure| sized_by_hand(brief, &book, effect == Effect::ThinPlate, &p, wrong);
            // Nothing wrong: this test's own sizing is the key.
            let right = work(&figure(Name(Q::Solid, 0), 1.0)).unwrap();
            for (answer, (name, x)) in right.iter().zip(p.key.iter()) {
                assert!(answer.name == name && answer.is(x), "{family:?} {seed} {name:?}: {answer:?}, key {x}");
            }
            for (name, x) in p.key.iter().filter(|(name, _)| name.0 != Q::BookEfficiency) {
                for factor in FACTORS {
                    let mut wrong = figure(name, x * factor);
                    if name == Name(Q::Hole, 1) {
                        // Another hole of the series.
                        let at = book.series.iter().position(|(_, h)| *h == x).unwrap();
                        let next = if factor < 1.0 { at.checked_sub(1) } else { Some(at + 1) };
                        let Some(size) = next.and_then(|at| book.series.get(at)) else { continue };
                        wrong = figure(name, size.1);
                    }
                    if name.0 == Q::Pitch {
                        wrong = figure(name, (x * factor).round());
                    }
                    // A figure from which no joint follows ends the student's work.
                    let Some(answers) = work(&wrong) else { continue };
                    asked += 1;
                    *carried.entry(format!("{:?}", name.0)).or_default() += judge(&p, name, &answers);
                }
            }
        }
    }
    println!("{asked} asked; carried {carried:?}");
    for name in ["Hole", "RivetShear", "RivetBearing", "PitchByWeaker", "PitchGreatest", "Pitch"] {
        assert!(carried.get(name).is_some_and(|n| *n > 0), "{name} never carried: {carried:?}");
    }
}
