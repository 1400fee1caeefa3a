//! Reads the figures of a printed sheet, each under a name.

use std::collections::BTreeMap;

/// A figure as printed.
#[derive(Clone, PartialEq, Debug)]
pub struct Printed {
    pub text: String,
    pub value: f64,
    /// Half of the last place printed.
    pub half: f64,
}

impl Printed {
    /// From `137 mm`, `1 5/8 in`, `81.75 %`, `154.11`; `None` for a dash or words.
    pub fn read(text: &str) -> Option<Printed> {
        let text = text.trim();
        let number = text.trim_end_matches(|c: char| !c.is_ascii_digit() && c != '.').trim();
        let number = number.strip_suffix(" N/").unwrap_or(number);
        let (value, half) = if let Some((above, below)) = number.rsplit_once('/') {
            let (whole, above) = above.split_once(' ').unwrap_or(("0", above));
            let value = whole.parse::<f64>().ok()? + above.parse::<f64>().ok()? / below.parse::<f64>().ok()?;
            (value, 1e-7)
        } else {
            let decimals = number.split_once('.').map_or(0, |(_, d)| d.len());
            (number.parse::<f64>().ok()?, 0.5 * 10_f64.powi(-i32::try_from(decimals).unwrap()))
        };
        Some(Printed { text: text.to_string(), value, half })
    }
}

/// All figures of a sheet by name.
pub type Figures = BTreeMap<String, Printed>;

/// The text of columns `from` to `to`.
fn cols(line: &str, from: usize, to: usize) -> String {
    line.chars().skip(from).take(to - from).collect::<String>().trim().to_string()
}

/// The lines of a section by its title.
fn section<'a>(sheet: &'a str, title: &str) -> Vec<&'a str> {
    let mut lines = sheet.lines().skip_while(|l| !(l.contains(&format!(". {title}")) && l.ends_with("--")));
    let head = lines.next();
    assert!(head.is_some(), "no section {title} in\n{sheet}");
    lines.take_while(|l| !(l.ends_with("----") && l.contains(". "))).collect()
}

/// Reads every figure of the sheet but the echoed inputs and the list of figures from memory.
pub fn figures(sheet: &str) -> Figures {
    let mut out = Figures::new();
    let mut put = |name: String, text: &str| {
        if let Some(printed) = Printed::read(text) {
            assert!(out.insert(name.clone(), printed).is_none(), "{name} twice in\n{sheet}");
        }
    };
    for line in section(sheet, "BASIS OF INPUTS") {
        let symbol = cols(line, 38, 44);
        if line.starts_with("    ") && matches!(symbol.as_str(), "st" | "st2" | "ss" | "sc" | "sc2" | "sp") {
            put(format!("stress {symbol}"), &cols(line, 44, 58));
        }
    }
    for line in section(sheet, "DIMENSIONS") {
        let symbol = cols(line, 32, 38);
        let known = ["t", "t2", "d", "dr", "p", "B", "p/k", "m", "b1", "b2", "w1", "w2"].contains(&symbol.as_str())
            || (symbol.len() == 2 && symbol.starts_with('g'));
        if !known || line.chars().nth(31) != Some(' ') || !line.starts_with("  ") || line.starts_with("   ") {
            continue;
        }
        put(format!("{symbol} provided"), &cols(line, 57, 80));
        let required = cols(line, 38, 57);
        match required.split_once(" to ") {
            Some((least, most)) => {
                put(format!("{symbol} least"), least);
                put(format!("{symbol} greatest"), most);
            }
            None => put(format!("{symbol} required"), required.trim_start_matches(['>', '<', '='])),
        }
    }
    for title in ["PITCH OF THE OUTER ROW", "STRENGTH OF ONE", "RESULT"] {
        for line in section(sheet, title) {
            // Label, value and remark of the value lines.
            if line.starts_with("  ") && !cols(line, 2, 3).is_empty() && cols(line, 54, 56).is_empty() {
                let label = cols(line, 2, 40);
                put(label.clone(), &cols(line, 40, 54));
                if cols(line, 56, 80).ends_with('%') {
                    put(format!("{label} %"), &cols(line, 56, 80));
                }
            }
            // Letters.
            let letter = cols(line, 4, 6);
            if letter.len() == 1 && line.starts_with("    ") && cols(line, 19, 30).ends_with('%') {
                put(format!("letter {letter}"), &cols(line, 6, 20));
                put(format!("letter {letter} %"), &cols(line, 20, 31));
            }
        }
    }
    let result = section(sheet, "RESULT");
    let names = ["governing", "runner-up", "by the book"];
    let pairs = result.iter().filter(|l| l.starts_with(&" ".repeat(18)) && l.ends_with('%') && l.contains(", "));
    for (line, name) in pairs.zip(names) {
        let (force, share) = line.split_once(", ").unwrap();
        put(name.to_string(), force);
        put(format!("{name} %"), share);
    }
    for line in section(sheet, "ONE RIVET OF EACH ROW") {
        let words: Vec<&str> = line.split_whitespace().collect();
        if let [row, _, _, rest @ ..] = words.as_slice()
            && row.parse::<u8>().is_ok()
        {
            for (name, text) in ["shear", "crush plate", "crush other", "crush narrow"].iter().zip(rest) {
                put(format!("rivet {row} {name}"), text);
            }
        }
    }
    for line in section(sheet, "FAILURE MODES") {
        let number = cols(line, 2, 4);
        if number.parse::<u8>().is_ok() && cols(line, 18, 29).ends_with('%') {
            put(format!("mode {number}"), &cols(line, 6, 18));
            put(format!("mode {number} %"), &cols(line, 18, 29));
        } else if let Some((count, _)) = line.split_once(" modes were worked out") {
            put("modes".to_string(), count);
        }
    }
    for (what, required, provided) in findings(sheet) {
        put(format!("finding {what} required"), &required);
        put(format!("finding {what} provided"), &provided);
    }
    out
}

/// The findings: what, required, provided, as texts (empty where there is none).
pub fn findings(sheet: &str) -> Vec<(String, String, String)> {
    let mut texts: Vec<String> = Vec::new();
    let mut reading = false;
    for line in section(sheet, "FINDINGS") {
        let text = cols(line, 11, 80);
        let starts = ["NOT MET", "unknown", "note", "met"].contains(&cols(line, 2, 11).as_str());
        if starts {
            texts.push(text);
            reading = true;
        } else if text.starts_with("->") || text.starts_with("rule:") {
            reading = false;
        } else if reading && let Some(last) = texts.last_mut() {
            last.push(' ');
            last.push_str(&text);
        }
    }
    let split = |text: String| {
        let Some((what, figures)) = text.split_once(": ") else { return (text, String::new(), String::new()) };
        let (required, provided) = figures.split_once(", provided ").unwrap_or((figures, ""));
        let required = ["required at least ", "required at most ", "figure of the rule ", "standard size "]
            .iter()
            .find_map(|lead| required.strip_prefix(lead))
            .unwrap_or("");
        (what.to_string(), required.to_string(), provided.to_string())
    };
    texts.into_iter().map(split).collect()
}
