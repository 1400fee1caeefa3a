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

/// The lines of a section by its title: a heading is numbered and underlined.
fn section<'a>(sheet: &'a str, title: &str) -> Vec<&'a str> {
    let lines: Vec<&str> = sheet.lines().collect();
    let heading = |i: usize| lines.get(i + 1).is_some_and(|l| !l.is_empty() && l.chars().all(|c| c == '-'));
    let is = |i: usize| heading(i) && lines[i].split_once(". ").is_some_and(|(_, name)| name.starts_with(title));
    let from = (0..lines.len()).find(|i| is(*i)).unwrap_or_else(|| panic!("no section {title} in\n{sheet}"));
    let to = (from + 1..lines.len()).find(|i| heading(*i)).unwrap_or(lines.len());
    lines[from + 2..to].to_vec()
}

/// Reads every figure of the sheet but the echoed inputs and the list of figures from memory.
pub fn figures(sheet: &str) -> Figures {
    let mut out = Figures::new();
    let mut put = |name: String, text: &str| {
        if let Some(printed) = Printed::read(text) {
            assert!(out.insert(name.clone(), printed).is_none(), "{name} twice in\n{sheet}");
        }
    };
    for line in section(sheet, "Stresses and factor of safety") {
        let symbol = cols(line, 48, 56);
        if matches!(symbol.as_str(), "st" | "st2" | "ss" | "sc" | "sc2" | "sp") {
            put(format!("stress {symbol}"), &cols(line, 56, 72));
        }
    }
    for line in section(sheet, "Dimensions") {
        let symbol = cols(line, 30, 39);
        let known = ["t", "t2", "d", "dr", "p", "B", "p/k", "m", "b1", "b2", "w1", "w2"].contains(&symbol.as_str())
            || (symbol.len() == 2 && symbol.starts_with('g'));
        if !known || line.starts_with(' ') || !cols(line, 29, 30).is_empty() {
            continue;
        }
        put(format!("{symbol} provided"), &cols(line, 60, 80));
        let required = cols(line, 39, 58);
        match required.split_once(" to ") {
            Some((least, most)) => {
                put(format!("{symbol} least"), least);
                put(format!("{symbol} greatest"), most);
            }
            None => put(format!("{symbol} required"), required.trim_start_matches(['>', '<', '='])),
        }
    }
    for title in ["Pitch of the outer row", "Strength of one", "Result", "Load, pressure"] {
        for line in section(sheet, title) {
            let letter = cols(line, 0, 4);
            if letter.len() == 1 && cols(line, 20, 32).ends_with('%') {
                put(format!("letter {letter}"), &cols(line, 4, 20));
                put(format!("letter {letter} %"), &cols(line, 20, 32));
                continue;
            }
            // Modes stand beside their label.
            if ["Governing", "Runner-up", "By the book"].contains(&cols(line, 0, 16).as_str()) {
                continue;
            }
            // Label, value and share of the lines of values.
            let (label, value) = (cols(line, 0, 40), cols(line, 40, 56));
            if !line.starts_with(' ') && !label.is_empty() && line.chars().nth(39) == Some(' ') && !value.contains("  ")
            {
                put(label.clone(), &value);
                if cols(line, 56, 80).ends_with('%') {
                    put(format!("{label} %"), &cols(line, 56, 80));
                }
            }
        }
    }
    // A label, then the mode with its strength and share, wrapped.
    let mut modes: Vec<(String, String)> = Vec::new();
    for line in section(sheet, "Result") {
        let label = cols(line, 0, 16);
        if ["Governing", "Runner-up", "By the book"].contains(&label.as_str()) {
            modes.push((label.to_lowercase(), cols(line, 16, 80)));
        } else if let Some((_, text)) = modes.last_mut().filter(|_| label.is_empty()) {
            text.push(' ');
            text.push_str(&cols(line, 16, 80));
        } else if !modes.is_empty() {
            break;
        }
    }
    for (name, text) in modes {
        let (_, figures) = text.rsplit_once(": ").unwrap();
        let (force, share) = figures.split_once(", ").unwrap();
        put(name.clone(), force);
        put(format!("{name} %"), share);
    }
    for line in section(sheet, "One rivet of each row") {
        let words: Vec<&str> = line.split_whitespace().collect();
        if let [row, _, _, rest @ ..] = words.as_slice()
            && row.parse::<u8>().is_ok()
        {
            let names = ["plane", "shear", "crush plate", "crush other", "crush narrow"];
            for (name, text) in names.iter().zip(rest) {
                put(format!("rivet {row} {name}"), text);
            }
        }
    }
    for line in section(sheet, "Failure modes") {
        let number = cols(line, 0, 4);
        if number.parse::<u16>().is_ok() && cols(line, 23, 35).ends_with('%') {
            put(format!("mode {number}"), &cols(line, 8, 23));
            put(format!("mode {number} %"), &cols(line, 23, 35));
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
    for line in section(sheet, "Findings") {
        let text = cols(line, 9, 80);
        if ["NOT MET", "unknown", "note", "met"].contains(&cols(line, 0, 9).as_str()) {
            texts.push(text);
        } else if let Some(last) = texts.last_mut().filter(|_| line.starts_with(' ')) {
            last.push(' ');
            last.push_str(&text);
        }
    }
    // Without what to do and the rule.
    let bare = |text: String| {
        let text = text.split_once(" -> ").map_or(text.as_str(), |(before, _)| before);
        text.split_once(". Rule: ").map_or(text, |(before, _)| before).to_string()
    };
    let texts = texts.into_iter().map(bare);
    let split = |text: String| {
        let Some((what, figures)) = text.split_once(": ") else { return (text, String::new(), String::new()) };
        let (required, provided) = figures.split_once(", provided ").unwrap_or((figures, ""));
        let required = ["required at least ", "required at most ", "figure of the rule ", "standard size "]
            .iter()
            .find_map(|lead| required.strip_prefix(lead))
            .unwrap_or("");
        (what.to_string(), required.to_string(), provided.to_string())
    };
    texts.map(split).collect()
}
