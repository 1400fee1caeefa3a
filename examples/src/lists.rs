//! The two lists: rule books, and all entries of one.

use seamwright::rules::{BOOKS, Entry, EntryKind, info};

use crate::failure::{Failure, key};
use crate::task::Book;
use crate::units::{Units, plain};

/// All books, with their sources.
pub fn books() -> String {
    let mut out = String::from("Rule books (--book ID):\n");
    for book in BOOKS {
        out.push_str(&format!("\n{:<16}{}\n", book.id, book.title));
        for source in book.sources {
            out.push_str(&format!("{:16}- {source}\n", ""));
        }
    }
    out.push_str(LABELS);
    out
}

const LABELS: &str = "
Labels of clauses: READ seen in a text of the source; MEM from memory, not seen:
check it; PRACTICE of the trade, no source; OWN set by the user or this program.
";

/// All entries of a book: key, value, clause, label. A silent entry has its neutral value and no clause.
pub fn rules(id: &str) -> Result<String, Failure> {
    let book = Book::new(id, &[], Units::Mm)?;
    let mut out = format!("{} ({id})\nChange an entry with --set key=value.\n\n", book.title());
    for entry in Entry::all() {
        let row = info(entry);
        let value = book.rules.get(entry);
        let clause = book.clause(entry);
        // Unused lines of lists say nothing.
        if clause.is_none() && row.line > 1 {
            continue;
        }
        let unit = match row.kind {
            EntryKind::Number(unit) => unit.symbol(),
            _ => "",
        };
        let meaning = match row.kind {
            EntryKind::Number(_) => String::new(),
            EntryKind::Switch => format!(" = {}", if book.rules.on(entry) { "yes" } else { "no" }),
            EntryKind::Choice(ways) => {
                let way = ways.get(usize::from(book.rules.choice(entry))).copied().unwrap_or("");
                format!(" = {way}")
            }
        };
        let shown = format!("{} {unit}", plain(value, 6));
        out.push_str(&format!("{:<28}{}{meaning}\n", key(entry), shown.trim_end()));
        out.push_str(&format!("    {}\n", row.what));
        match clause {
            Some(clause) if clause.source.is_empty() => {
                out.push_str(&format!("    {}: {}\n", clause.label.word(), clause.words));
            }
            Some(clause) => {
                out.push_str(&format!("    {}: {}; {}\n", clause.label.word(), clause.words, clause.source));
            }
            None => out.push_str("    the book is silent\n"),
        }
    }
    out.push_str(LABELS);
    Ok(out)
}
