//! Whether a text is sound in its dialect.
#![allow(dead_code, reason = "each test uses what it needs")]

/// Columns of the longest line.
pub fn columns(text: &str) -> usize {
    text.lines().map(|l| l.chars().count()).max().unwrap_or(0)
}

/// The text of LaTeX without its formulas; each formula is handed to `see`.
fn outside_mathematics(text: &str, mut see: impl FnMut(&str)) -> String {
    let mut rest = text;
    let mut outside = String::new();
    while let Some((before, after)) = rest.split_once(r"\[ ") {
        let (formula, after) = after.split_once(r" \]").expect("a formula ends");
        assert!(!formula.contains(r"\["), "{formula}");
        see(formula);
        outside.push_str(before);
        rest = after;
    }
    outside.push_str(rest);
    outside
}

/// Every command that a sheet uses: all of a plain article, of `longtable` and of `geometry`.
const COMMANDS: &[&str] = &[
    "documentclass",
    "ttfamily",
    "char",
    "usepackage",
    "setlength",
    "parindent",
    "begin",
    "end",
    "section",
    "subsection",
    "frac",
    "sqrt",
    "sigma",
    "tau",
    "pi",
    "eta",
    "rho",
    "min",
    "max",
    "lim",
    "left",
    "right",
    "cdot",
    "mathrm",
    "rightarrow",
    "hline",
    "linewidth",
    "array",
    "arraybackslash",
    "raggedleft",
    "raggedright",
    "endhead",
    "hangindent",
    "makeatletter",
    "makeatother",
    "def",
    "LTleft",
    "LTpre",
    "LTpost",
    "parbox",
    "textwidth",
    "footnotesize",
    "centering",
    "noalign",
    "vskip",
    "thepage",
    "pageref",
    "label",
    "textbackslash",
    "textasciitilde",
    "textasciicircum",
];

/// The text without its `verbatim` blocks.
fn without_verbatim(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once("\\begin{verbatim}\n") {
        out.push_str(before);
        rest = after.split_once("\\end{verbatim}\n").expect("a block ends").1;
    }
    out.push_str(rest);
    out
}

/// Known commands, balanced braces and environments, nothing special outside mathematics and tables.
pub fn latex_is_sound(text: &str) {
    let text = &without_verbatim(text);
    let chars: Vec<char> = text.chars().collect();
    let mut depth = 0_i32;
    for (i, c) in chars.iter().enumerate() {
        let escaped = i > 0 && chars[i - 1] == '\\';
        match c {
            '{' if !escaped => depth += 1,
            '}' if !escaped => depth -= 1,
            _ => {}
        }
        assert!(depth >= 0);
    }
    assert_eq!(depth, 0, "braces");
    for command in text.split('\\').skip(1) {
        let name: String = command.chars().take_while(char::is_ascii_alphabetic).collect();
        let known = COMMANDS.contains(&name.as_str())
            || (name.is_empty() && command.starts_with(|c| "[],;%&_#${}\\@ \n".contains(c)));
        assert!(known || command.is_empty(), "\\{name}: {}", &command[..command.len().min(20)]);
    }
    let outside = outside_mathematics(text, |formula| {
        assert_eq!(
            formula.matches(r"\left").count(),
            formula.matches(r"\right").count() - formula.matches(r"\rightarrow").count()
        );
        assert!(!formula.contains('$') && !formula.contains('&'), "{formula}");
    });
    // The head of the document has macros of its own; in tables `&` parts the cells, and `~` is a joined blank.
    let outside = outside.split_once("\\begin{document}").map_or(outside.as_str(), |(_, body)| body).to_owned();
    let mut table = false;
    for line in outside.lines() {
        table = (table || line.starts_with("\\begin{longtable}")) && !line.starts_with("\\end{longtable}");
        let chars: Vec<char> = line.chars().collect();
        for (i, c) in chars.iter().enumerate() {
            let escaped = i > 0 && chars[i - 1] == '\\';
            let cell = table && *c == '&' && i > 0 && chars[i - 1] == ' ';
            assert!(escaped || cell || !"&#_%^".contains(*c), "{line}");
        }
    }
    let begun: Vec<&str> = text.split(r"\begin{").skip(1).filter_map(|t| t.split('}').next()).collect();
    let mut ended: Vec<&str> = text.split(r"\end{").skip(1).filter_map(|t| t.split('}').next()).collect();
    ended.reverse();
    assert_eq!(begun, ended);
}

/// Well-formed by an outside reader, one title, headings, nothing from outside; tables have heads for their rows.
pub fn html_is_sound(text: &str) {
    let options = roxmltree::ParsingOptions { allow_dtd: true, ..Default::default() };
    let page = roxmltree::Document::parse_with_options(text, options).unwrap_or_else(|e| panic!("{e}"));
    let root = page.root_element();
    assert_eq!((root.tag_name().name(), root.attribute("lang")), ("html", Some("en")));
    let count = |tag: &str| root.descendants().filter(|n| n.has_tag_name(tag)).count();
    assert!(count("h1") == 1 && count("title") == 1 && count("main") == 1 && count("h2") > 0);
    let outside = ["script", "link", "img", "iframe"];
    assert!(outside.iter().all(|tag| count(tag) == 0), "self-contained");
    for table in root.descendants().filter(|n| n.has_tag_name("table")) {
        let rows: Vec<_> = table.descendants().filter(|n| n.has_tag_name("tr")).collect();
        let cells = |row: &roxmltree::Node<'_, '_>| row.children().filter(|n| n.is_element()).count();
        assert!(rows.iter().all(|row| cells(row) == cells(&rows[0])), "a row of another width");
        let scoped = |n: &roxmltree::Node<'_, '_>| n.has_tag_name("th") && n.attribute("scope").is_some();
        assert!(rows.iter().all(|row| row.first_element_child().is_some_and(|n| scoped(&n))), "a row without a head");
    }
    for block in root.descendants().filter(|n| n.has_tag_name("pre")) {
        assert!(block.attribute("aria-label").is_some_and(|l| !l.is_empty()), "a sketch without words");
    }
}

/// Paragraphs escape what Markdown would take for its own; formulas stand in indented code; nothing becomes a list.
pub fn markdown_is_sound(text: &str) {
    let mut fenced = false;
    let mut bars = 0;
    for line in text.lines().filter(|l| !l.starts_with("    ")) {
        if line.starts_with("```") {
            fenced = !fenced;
            continue;
        }
        if fenced {
            continue;
        }
        if line.starts_with('|') {
            // Rows of a table are as wide as its head.
            let here = line.replace(r"\|", "").matches('|').count();
            assert!(bars == 0 || here == bars, "{line}");
            bars = here;
            continue;
        }
        bars = 0;
        let line = line.strip_prefix("- ").unwrap_or(line);
        let chars: Vec<char> = line.chars().collect();
        for (i, c) in chars.iter().enumerate() {
            assert!(!"|*_<>[]`".contains(*c) || (i > 0 && chars[i - 1] == '\\'), "{line}");
        }
        let digits = line.chars().take_while(char::is_ascii_digit).count();
        assert!(digits == 0 || !line[digits..].starts_with(['.', ')']), "{line}");
    }
    // A line of code follows a blank line or another line of code.
    let outside = text.split("```").step_by(2).collect::<Vec<_>>().join("\n");
    let lines: Vec<&str> = outside.lines().collect();
    for pair in lines.windows(2).filter(|pair| pair[1].starts_with("    ")) {
        assert!(pair[0].is_empty() || pair[0].starts_with("    "), "{pair:?}");
    }
}
