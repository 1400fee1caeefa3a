//! The committed header is what the sources give; every item in it has a comment.
//!
//! `SEAMWRIGHT_WRITE_HEADER=1 cargo test -p seamwright-c --test header` writes it anew.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs, reason = "a test")]

use std::fs;
use std::path::Path;

use cbindgen::{Builder, Config, DocumentationStyle, EnumConfig, Language, Style};

fn made() -> String {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let conventions = fs::read_to_string(root.join("conventions.txt")).unwrap();
    let config = Config {
        language: Language::C,
        header: Some(format!("/*\n{} */", conventions.trim_end().to_owned() + "\n")),
        include_guard: Some("SEAMWRIGHT_H".to_owned()),
        cpp_compat: true,
        no_includes: true,
        after_includes: Some("#include <stddef.h>\n#include <stdint.h>".to_owned()),
        usize_is_size_t: true,
        style: Style::Both,
        documentation_style: DocumentationStyle::C99,
        enumeration: EnumConfig::default(),
        line_length: 120,
        ..Config::default()
    };
    let mut builder = Builder::new().with_config(config);
    for name in [
        "version",
        "status",
        "quantities",
        "rules",
        "books",
        "form",
        "joint",
        "modes",
        "check",
        "size",
        "working",
        "pages",
        "shop",
        "drawing",
        "assumption",
        "shell",
        "existing",
        "candidate",
        "search",
        "girth",
        "vessel",
        "boiler",
        "group",
        "reconcile",
        "teach",
        "sensitivity",
        "comparison",
        "letters",
        "masses",
        "numbers",
        "fields",
        "sheet",
        "sweep",
    ] {
        builder = builder.with_src(root.join("src").join(format!("{name}.rs")));
    }
    let mut bytes = Vec::new();
    builder.generate().unwrap().write(&mut bytes);
    String::from_utf8(bytes).unwrap()
}

#[test]
fn the_header_is_up_to_date() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("include/seamwright.h");
    let made = made();
    if std::env::var_os("SEAMWRIGHT_WRITE_HEADER").is_some() {
        fs::write(&file, &made).unwrap();
    }
    let committed = fs::read_to_string(&file).unwrap_or_default();
    assert!(committed == made, "include/seamwright.h is not what src/ gives: write it anew, see the top of this test");
}

#[test]
fn every_item_has_a_comment() {
    let text = made();
    let mut before = "";
    let (mut items, mut bare) = (0, Vec::new());
    for line in text.lines() {
        let item = line.starts_with("#define SW_")
            || line.starts_with("typedef struct sw_")
            || (line.contains(" sw_") && line.contains('(') && !line.starts_with([' ', '/', '*']))
            || (line.starts_with("  ") && !line.starts_with("   ") && line.ends_with(';') && !line.contains('('));
        if item {
            items += 1;
            if !before.trim_start().starts_with("//") {
                bare.push(line.to_owned());
            }
        }
        before = line;
    }
    assert!(items > 300, "only {items} items were looked at");
    assert!(bare.is_empty(), "without a comment: {bare:#?}");
}

/// Every kind of error of the library has its status in the header, under the same number.
#[test]
fn every_kind_of_error_is_a_status() {
    let text = made();
    for kind in seamwright::error::KINDS {
        let number = *kind as u32;
        let upper = format!("{kind:?}").chars().fold(String::from("SW"), |mut name, c| {
            if c.is_ascii_uppercase() {
                name.push('_');
            }
            name.push(c.to_ascii_uppercase());
            name
        });
        assert!(text.contains(&format!("#define {upper} {number}\n")), "{upper} is not {number} in the header");
    }
}

#[test]
fn unsafe_blocks_stand_in_one_file() {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = 0;
    let mut folders = vec![src];
    let mut paths = Vec::new();
    while let Some(folder) = folders.pop() {
        let (inner, here): (Vec<_>, Vec<_>) =
            fs::read_dir(folder).unwrap().map(|e| e.unwrap().path()).partition(|path| path.is_dir());
        folders.extend(inner);
        paths.extend(here);
    }
    for path in paths {
        let text = fs::read_to_string(&path).unwrap();
        files += 1;
        if path.file_name().unwrap() == "border.rs" {
            assert!(text.contains("unsafe {"));
            continue;
        }
        for line in text.lines().filter(|l| !l.trim_start().starts_with("//")) {
            let rest = line.replace("#[unsafe(no_mangle)]", "").replace("unsafe_op_in_unsafe_fn", "");
            assert!(!rest.contains("unsafe"), "{}: {line}", path.display());
        }
    }
    assert!(files > 10);
}
