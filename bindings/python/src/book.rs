//! Rule books, built in and of the user's own.

use std::collections::BTreeMap;

use pyo3::prelude::*;
use seamwright::bounds::Field;
use seamwright::error::{EntryNo, Error, ErrorKind};
use seamwright::quantities::Stress;
use seamwright::rules::{
    self, BOOKS, Clause, Entry, EntryKind, GROUPS, Item, Items, Label, RuleBook, Rules, find, info,
};

use crate::error::{message, raise, raise_about, wrong_choice};
use crate::joint::Materials;
use crate::words;

/// The key of an entry, with its line.
pub fn full_key(entry: Entry) -> String {
    let row = info(entry);
    if row.line > 0 { format!("{}.{}", row.key, row.line) } else { row.key.to_owned() }
}

/// Where an entry stands, owned.
#[derive(Clone)]
struct OwnClause {
    number: String,
    source: u8,
    label: Label,
}

/// A rule book: numbers and citations.
#[pyclass(frozen, module = "seamwright._native")]
#[derive(Clone)]
pub struct Book {
    id: String,
    title: String,
    sources: Vec<String>,
    /// The entries that the book states; all others are silent.
    stated: BTreeMap<u16, (f64, OwnClause)>,
    rules: Rules,
    /// Whether its failure modes are known by letters; that of the book below it.
    lettered: bool,
}

/// Key, values of consecutive lines, clause, number of its source from 1 (0: none), label.
pub type Statement = (String, Vec<f64>, String, u8, String);

/// What a book of the core borrows.
pub struct Parts<'a> {
    sources: Vec<&'a str>,
    items: Vec<Item<'a>>,
}

impl Book {
    /// The numbers.
    pub const fn rules(&self) -> &Rules {
        &self.rules
    }

    /// What a book of the core borrows.
    pub fn parts(&self) -> Parts<'_> {
        Parts {
            sources: self.sources.iter().map(String::as_str).collect(),
            items: self
                .stated
                .iter()
                .filter_map(|(no, (value, clause))| {
                    let entry = Entry::from_no(EntryNo(*no))?;
                    let clause = Clause { number: &clause.number, source: clause.source, label: clause.label };
                    Some(Item::new(entry, core::slice::from_ref(value), clause))
                })
                .collect(),
        }
    }

    /// The book of the core, of its parts.
    pub fn whole<'a>(&'a self, parts: &'a Parts<'a>) -> RuleBook<'a> {
        let Parts { sources, items } = parts;
        let items = Items::listed(items);
        RuleBook { rules: self.rules, id: &self.id, title: &self.title, sources, items, lettered: self.lettered }
    }

    /// The book as the core's writers take it.
    pub fn view<T>(&self, see: impl FnOnce(&RuleBook<'_>) -> T) -> T {
        see(&self.whole(&self.parts()))
    }

    /// The exception for an error that this book's routines gave.
    pub fn raise(&self, py: Python<'_>, error: &Error) -> PyErr {
        self.view(|book| raise(py, error, Some(book)))
    }

    /// An error that this book's routines gave, in words.
    pub fn said(&self, error: &Error) -> String {
        self.view(|book| message(error, Some(book)))
    }

    fn built_in(book: &RuleBook<'_>) -> Self {
        let mut stated = BTreeMap::new();
        for item in book.items.iter() {
            for line in 0..item.values.len() {
                let entry = item.entry.at(line);
                let clause = OwnClause {
                    number: item.clause.number.to_owned(),
                    source: item.clause.source,
                    label: item.clause.label,
                };
                stated.insert(entry.no().0, (book.rules.get(entry), clause));
            }
        }
        let sources = book.sources.iter().map(|s| (*s).to_owned()).collect();
        let (id, title) = (book.id.to_owned(), book.title.to_owned());
        Book { id, title, sources, stated, rules: book.rules, lettered: book.lettered }
    }

    fn state(&mut self, py: Python<'_>, statement: Statement) -> PyResult<()> {
        let (key, values, number, source, label) = statement;
        let about = |e: &Error| raise_about(py, &key, e, None);
        let label = words::label::read(&label).ok_or_else(|| wrong_choice(py, "label", &label))?;
        if usize::from(source) > self.sources.len() {
            let limit = u32::try_from(self.sources.len()).map_or(f64::MAX, f64::from);
            let error = Error::new(ErrorKind::TooLarge, Field::RuleEntry).value(f64::from(source)).limit(limit);
            return Err(raise_about(py, &format!("{key}: number of the source"), &error, None));
        }
        let source = source.checked_sub(1).unwrap_or(u8::MAX);
        let unknown = || about(&Error::new(ErrorKind::UnknownKey, Field::RuleEntry));
        // A list may be stated as a whole by its key without a line.
        let head = GROUPS.iter().find(|(_, len, row)| *len > 1 && row.key == key);
        let (first, room) = match (find(&key), head) {
            (Some(entry), _) => (entry, 1),
            (None, Some((entry, len, _))) => (*entry, usize::from(*len)),
            (None, None) => return Err(unknown()),
        };
        if values.is_empty() || values.len() > room {
            let error =
                Error::new(ErrorKind::WrongChoice, Field::RuleEntry).limit(f64::from(u8::try_from(room).unwrap_or(0)));
            return Err(raise_about(py, &format!("{key}: {} values for {room} lines", values.len()), &error, None));
        }
        for (line, value) in values.into_iter().enumerate() {
            let entry = first.at(line);
            self.rules = self.rules.with(entry, value).map_err(|e| about(&e))?;
            let clause = OwnClause { number: number.clone(), source, label };
            self.stated.insert(entry.no().0, (value, clause));
        }
        Ok(())
    }
}

#[pymethods]
impl Book {
    /// A book from statements, upon another one or upon silence.
    #[new]
    #[pyo3(signature = (id, title, sources, statements, base = None))]
    fn new(
        py: Python<'_>,
        id: String,
        title: String,
        sources: Vec<String>,
        statements: Vec<Statement>,
        base: Option<&Book>,
    ) -> PyResult<Self> {
        let mut made = match base {
            Some(base) => Book { id, title, sources, ..base.clone() },
            None => Book { id, title, sources, stated: BTreeMap::new(), rules: Rules::SILENT, lettered: false },
        };
        for statement in statements {
            made.state(py, statement)?;
        }
        made.rules.validate().map_err(|e| made.raise(py, &e))?;
        Ok(made)
    }

    /// Short name, title and sources.
    fn head(&self) -> (String, String, Vec<String>) {
        (self.id.clone(), self.title.clone(), self.sources.clone())
    }

    /// The entries that the book states, one by one, in the order of the table.
    fn statements(&self) -> Vec<(String, f64, String, u8, &'static str)> {
        let row = |(no, (value, clause)): (&u16, &(f64, OwnClause))| {
            let entry = Entry::from_no(EntryNo(*no))?;
            let source = clause.source.checked_add(1).unwrap_or(0);
            Some((full_key(entry), *value, clause.number.clone(), source, words::label::word(clause.label)))
        };
        self.stated.iter().filter_map(row).collect()
    }

    /// The value of an entry.
    fn get(&self, py: Python<'_>, key: &str) -> PyResult<f64> {
        let unknown = || raise_about(py, key, &Error::new(ErrorKind::UnknownKey, Field::RuleEntry), None);
        find(key).map(|e| self.rules.get(e)).ok_or_else(unknown)
    }

    /// The values of all entries, in the order of the table.
    fn values(&self) -> Vec<f64> {
        Entry::all().map(|e| self.rules.get(e)).collect()
    }

    /// The ultimate shear strength that the book assumes of rivets, MPa.
    fn assumed_shear(&self, py: Python<'_>, rivets: &str) -> PyResult<f64> {
        let metal = words::metal::read(rivets).ok_or_else(|| wrong_choice(py, "rivets", rivets))?;
        self.rules.assumed_shear(metal).map(Stress::to_mpa).map_err(|e| self.raise(py, &e))
    }

    /// The ultimate strengths that the book assumes of plate and rivets.
    fn assumed_materials(&self, py: Python<'_>, plate: &str, rivets: &str) -> PyResult<Materials> {
        let metal = |what: &str, word: &str| words::metal::read(word).ok_or_else(|| wrong_choice(py, what, word));
        let found = self.rules.assumed_materials(metal("plate", plate)?, metal("rivets", rivets)?);
        found.map(Materials).map_err(|e| self.raise(py, &e))
    }

    /// The sizes of the series: cold rivet and hole, mm.
    fn series(&self) -> Vec<(f64, f64)> {
        self.rules.series().map(|s| (s.rivet, s.hole)).collect()
    }
}

/// The built-in books.
#[pyfunction]
pub fn built_in_books() -> Vec<Book> {
    BOOKS.iter().map(|b| Book::built_in(b)).collect()
}

/// One entry of the table.
#[derive(IntoPyObject)]
pub struct EntryRow {
    key: String,
    kind: &'static str,
    unit: &'static str,
    choices: Vec<&'static str>,
    least: f64,
    greatest: f64,
    default: f64,
    what: &'static str,
}

/// Everything that a rule book can say.
#[pyfunction]
pub fn entry_table() -> Vec<EntryRow> {
    let row = |entry: Entry| {
        let i = rules::info(entry);
        let (kind, unit, choices) = match i.kind {
            EntryKind::Number(unit) => ("number", unit.symbol(), Vec::new()),
            EntryKind::Switch => ("switch", "", vec!["no", "yes"]),
            EntryKind::Choice(list) => ("choice", "", list.to_vec()),
        };
        EntryRow {
            key: full_key(entry),
            kind,
            unit,
            choices,
            least: i.lo,
            greatest: i.hi,
            default: i.default,
            what: i.what,
        }
    };
    Entry::all().map(row).collect()
}
