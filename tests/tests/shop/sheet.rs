//! The written sheet.

use super::*;

fn text(found: &ShopSheet, book: &RuleBook<'_>, style: &Style) -> String {
    let mut out = String::new();
    found.write_text(&mut out, book, style).unwrap();
    out
}

fn markdown(found: &ShopSheet, book: &RuleBook<'_>, style: &Style) -> String {
    let mut out = String::new();
    found.write_markdown(&mut out, book, style).unwrap();
    out
}

const METRIC_STYLE: Style = Style::new(Units::Millimetre);

#[test]
fn the_sheet_says_what_it_must() {
    let found = sheet(&lap(), &METRIC.rules, straight(3000.0, 40.0, 40.0));
    let whole = text(&found, &METRIC, &METRIC_STYLE);
    let words = whole.split_whitespace().collect::<Vec<_>>().join(" ");
    for part in [
        METRIC.title,
        "boiler-button",
        "trainees' handbook",
        "READ",
        "PRACTICE",
        seamwright::CAUTION,
        seamwright::VERSION,
        "41 pitches of 71.22 mm",
        "Rivets: 83",
        "lengths in mm",
        "To order: 83 rivets 22 mm by 65.6 mm under the head",
        "Overlap of the plates: 110 mm across by 3000 mm along",
        "Listed: 83 (no. 1 to 83) of 83 holes",
    ] {
        assert!(words.contains(&part.split_whitespace().collect::<Vec<_>>().join(" ")), "no {part:?} in\n{whole}");
    }
    for finding in found.analysis.findings.iter().filter(|f| f.verdict == Verdict::Open) {
        assert!(words.contains(finding.subject.what()));
    }
    assert!(found.analysis.findings.find(Subject::PitchGreatest, 0).is_some());
}

#[test]
fn lines_keep_to_eighty_columns() {
    for units in [Units::Millimetre, Units::Inch] {
        for (joint, run) in [
            (lap(), straight(3000.0, 40.0, 40.0)),
            (butt(), girth(90_000.0, Measured::InsidePlate, Face::Inside)),
            (butt(), straight(400_000.0, 50.0, 50.0)),
        ] {
            let rules = silent();
            let found = shop_sheet(&joint, &steel(), &rules, &order(run)).unwrap();
            let whole = text(&found, &INDIAN, &Style { count: 200, ..Style::new(units) });
            for line in whole.lines() {
                assert!(line.chars().count() <= 80 && !line.ends_with(' '), "{line:?}");
            }
        }
    }
}

#[test]
fn pages_list_each_hole_once() {
    let found = sheet(&butt(), &silent(), straight(1900.0, 50.0, 50.0));
    let rows = |out: &str| -> Vec<String> {
        let lines = out.lines().filter(|l| l.contains(" left ") || l.contains(" right "));
        lines.filter(|l| l.trim_start().starts_with(|c: char| c.is_ascii_digit())).map(str::to_owned).collect()
    };
    let all = rows(&text(&found, &METRIC, &METRIC_STYLE));
    assert_eq!(all.len(), 104);
    let mut paged = Vec::new();
    for page in 0..6 {
        let style = Style { first: 1 + 20 * page, count: 20, ..METRIC_STYLE };
        paged.extend(rows(&text(&found, &METRIC, &style)));
    }
    assert_eq!(paged, all);
    // Beyond the last hole, and nothing asked for.
    for (first, count) in [(105, 20), (u32::MAX, u32::MAX), (1, 0), (0, 0)] {
        let out = text(&found, &METRIC, &Style { first, count, ..METRIC_STYLE });
        assert!(rows(&out).is_empty() && out.contains("Listed: 0 of 104 holes"));
    }
    assert_eq!(found.layout().page(0, 3).map(|h| h.number).collect::<Vec<_>>(), [1, 2, 3]);
    assert_eq!(found.layout().page(103, 9).map(|h| h.number).collect::<Vec<_>>(), [103, 104]);
}

#[test]
fn markdown_tables_are_whole() {
    let found = sheet(&lap(), &METRIC.rules, girth(1000.0, Measured::InsidePlate, Face::Outside));
    let whole = markdown(&found, &METRIC, &METRIC_STYLE);
    let mut tables: Vec<Vec<&str>> = Vec::new();
    let mut inside = false;
    for line in whole.lines() {
        if line.starts_with('|') {
            if !inside {
                tables.push(Vec::new());
            }
            tables.last_mut().unwrap().push(line);
        }
        inside = line.starts_with('|');
    }
    assert_eq!(tables.len(), 2);
    for table in &tables {
        let cells = |line: &str| line.matches('|').count();
        assert!(table.iter().all(|line| cells(line) == cells(table[0])), "{table:?}");
        assert!(table[1].chars().all(|c| "|-:".contains(c)));
    }
    assert_eq!(tables[0].len(), 2 + 2);
    assert_eq!(tables[1].len() as u32, 2 + found.layout().total());
    assert!(whole.starts_with("# Shop sheet\n") && whole.contains("\n## Hole centres\n"));
}

#[test]
fn inches_and_commas() {
    let spec = JointSpec::new(Form::lap(1).unwrap(), Length::inch(2.0), Length::inch(0.5), Length::inch(0.8125));
    let joint = spec.rivet(Length::inch(0.75)).margin(Length::inch(1.25)).build().unwrap();
    let end = Length::inch(1.5);
    let run = Run::Straight { length: Length::inch(43.0), first_end: end, last_end: end };
    let found = sheet(&joint, &silent(), run);
    let inch = text(&found, &METRIC, &Style::new(Units::Inch));
    assert!(inch.contains("20 pitches of 2 in"), "{inch}");
    assert!(inch.contains("21 rivets 3/4 in by 2.2750 in under the head"), "{inch}"); // 1 + 1.7*0.75
    assert!(inch.contains("lb/ft") && inch.contains("2 1/2 in across by 43 in along, 1/2 in thick"));
    // The same sheet in the other unit: a pound is 0.45359237 kg.
    let pounds = found.masses.overlap / 0.453_592_37;
    assert!(inch.contains(&format!("Plate B over the lap: {pounds:.3} lb")), "{inch}");
    let comma = text(&found, &METRIC, &Style { mark: DecimalMark::Comma, ..METRIC_STYLE });
    assert!(comma.contains("50,8 mm") && comma.contains("38,10"));
    let comma = text(&found, &METRIC, &Style { mark: DecimalMark::Comma, ..Style::new(Units::Inch) });
    assert!(comma.contains("2,2750 in"));
}

#[test]
fn buffers_of_every_size() {
    let found = sheet(&lap(), &METRIC.rules, straight(400.0, 40.0, 40.0));
    let whole = text(&found, &METRIC, &METRIC_STYLE);
    let marked = markdown(&found, &METRIC, &METRIC_STYLE);
    for size in 0..=whole.len().max(marked.len()) + 1 {
        for (expected, is_text) in [(&whole, true), (&marked, false)] {
            let mut buffer = vec![0xa5_u8; size];
            let written = if is_text {
                found.text_in(&mut buffer, &METRIC, &METRIC_STYLE)
            } else {
                found.markdown_in(&mut buffer, &METRIC, &METRIC_STYLE)
            };
            if size >= expected.len() {
                assert_eq!(written.unwrap(), expected);
            } else {
                let error = written.unwrap_err();
                assert_eq!((error.kind, error.field), (ErrorKind::NoSpace, Field::Text));
                assert_eq!((error.value, error.limit), (size as f64, expected.len() as f64));
                assert!(buffer.iter().all(|b| *b == 0xa5), "the buffer was touched");
            }
        }
    }
}

#[test]
fn a_sink_that_refuses_stops_the_sheet() {
    struct Room(usize);
    impl std::fmt::Write for Room {
        fn write_str(&mut self, s: &str) -> std::fmt::Result {
            self.0 = self.0.checked_sub(s.len()).ok_or(std::fmt::Error)?;
            Ok(())
        }
    }
    let found = sheet(&lap(), &METRIC.rules, straight(400.0, 40.0, 40.0));
    let needed = text(&found, &METRIC, &METRIC_STYLE).len();
    for room in 0..needed {
        assert!(found.write_text(&mut Room(room), &METRIC, &METRIC_STYLE).is_err());
    }
    assert!(found.write_text(&mut Room(needed), &METRIC, &METRIC_STYLE).is_ok());
}
