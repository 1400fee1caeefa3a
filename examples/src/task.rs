//! What is to be done, with the basis of every input, and doing it.

use seamwright::bounds::Field;
use seamwright::check::{Analysis, check};
use seamwright::error::Error;
use seamwright::joint::{Form, Joint, JointSpec};
use seamwright::materials::Materials;
use seamwright::quantities::Length;
use seamwright::rating::{Basis, Footing};
use seamwright::rules::{Entry, Label, RuleBook, Rules, find};
use seamwright::sheet::{Divided, Known};
use seamwright::sizing::{Brief, size};
use seamwright::text;
use seamwright::working::Style;

use crate::failure::{Failure, key};
use crate::flags::{Action, Flags, UnitsFlag};
use crate::units::{Units, plain};

/// A built-in book with the user's changes on top.
#[derive(Debug)]
pub struct Book {
    base: &'static RuleBook<'static>,
    /// The numbers in force.
    pub rules: Rules,
    /// Entries that the user changed, with the book's own value.
    pub changed: Vec<(Entry, f64)>,
}

/// A clause ready to print.
#[derive(Clone, Debug)]
pub struct Cited {
    /// Number or words of the clause.
    pub words: String,
    /// The source it stands in; empty for practice and own choices.
    pub source: &'static str,
    /// How far it can be trusted.
    pub label: Label,
}

impl Book {
    /// The book of an id with the changes of `--set`.
    pub fn new(id: &str, changes: &[String], units: Units) -> Result<Book, Failure> {
        let Some(base) = seamwright::rules::book(id) else {
            let ids: Vec<&str> = seamwright::rules::BOOKS.iter().map(|b| b.id).collect();
            let wrong = format!("\"{id}\" is not a rule book");
            return Err(Failure::usage("book", wrong, format!("take one of {}", ids.join(", "))));
        };
        let mut book = Book { base, rules: base.rules, changed: Vec::new() };
        for change in changes {
            let Some((entry_key, value)) = change.split_once('=') else {
                let wrong = format!("\"{change}\" has no value");
                return Err(Failure::usage("set", wrong, "write --set key=value, as in --set shear.double=1.75"));
            };
            let entry_key = entry_key.trim();
            let Some(entry) = find(entry_key) else {
                let wrong = format!("\"{entry_key}\" is not an entry of the rule books");
                return Err(Failure::usage("set", wrong, format!("see seamwright --list-rules {id}")));
            };
            let value = text::parse_number(value).map_err(|e| {
                let wrong = format!("the value of \"{change}\" cannot be read: {}", e.text());
                Failure::usage("set", wrong, "write a number in the unit of --list-rules (mm, MPa or none)")
            })?;
            book.rules = book.rules.with(entry, value).map_err(|e| Failure::refused(&e, &book, units))?;
            if !book.changed.iter().any(|(changed, _)| *changed == entry) {
                book.changed.push((entry, base.rules.get(entry)));
            }
        }
        Ok(book)
    }

    /// The book with the changes in force; their clauses stay those of the base.
    pub fn whole(&self) -> RuleBook<'static> {
        RuleBook { rules: self.rules, ..*self.base }
    }

    /// The short name.
    pub fn id(&self) -> &'static str {
        self.base.id
    }

    /// Title and edition.
    pub fn title(&self) -> &'static str {
        self.base.title
    }

    /// The clause behind an entry; the user's own word where they changed it.
    pub fn clause(&self, entry: Entry) -> Option<Cited> {
        if let Some((_, before)) = self.changed.iter().find(|(changed, _)| *changed == entry) {
            let words = format!("set by the user; the book's own value is {}", plain(*before, 6));
            return Some(Cited { words, source: "", label: Label::Own });
        }
        let clause = self.base.clause(entry.no())?;
        Some(Cited { words: clause.number.to_string(), source: self.base.source(&clause), label: clause.label })
    }
}

/// One input and how it is known.
#[derive(Debug)]
pub struct Input {
    /// Which; changed entries of the book are none of the library's fields.
    pub field: Option<Field>,
    /// Row or gap, from 1; 0 for the joint.
    pub row: u8,
    /// In words.
    pub name: String,
    /// The value, printed.
    pub value: String,
    /// How it is known.
    pub basis: Basis,
    /// From where.
    pub source: String,
}

impl Input {
    /// As the library's sheet takes it.
    pub fn known(&self) -> Option<Known<'_>> {
        Some(Known { field: self.field?, row: self.row, basis: self.basis, source: &self.source })
    }
}

/// The texts of the title.
#[derive(Debug, Default)]
pub struct Identity {
    pub title: String,
    pub object: String,
    pub drawing: String,
    pub jurisdiction: String,
    pub lines_per_page: Option<u16>,
}

impl Identity {
    /// From flags; what is not given stays a line to be filled in by hand.
    pub fn new(flags: &Flags, story: [&str; 4]) -> Identity {
        let [title, object, drawing, jurisdiction] = story;
        let or = |text: &Option<String>, story: &str| text.clone().unwrap_or_else(|| story.to_string());
        Identity {
            title: or(&flags.title, title),
            object: or(&flags.object, object),
            drawing: or(&flags.drawing, drawing),
            jurisdiction: or(&flags.jurisdiction, jurisdiction),
            lines_per_page: flags.lines_per_page,
        }
    }
}

/// Dimensions that were stated; what is `None` is found, or left open in a check.
#[derive(Debug, Default)]
pub struct Stated {
    pub other_plate: Option<Length>,
    pub hole: Option<Length>,
    pub rivet: Option<Length>,
    pub pitch: Option<Length>,
    pub wide: Option<Length>,
    pub narrow: Option<Length>,
    pub margin: Option<Length>,
    pub gaps: Vec<Length>,
}

/// Everything that the sheet is made from.
#[derive(Debug)]
pub struct Task {
    pub action: Action,
    pub units: Units,
    /// How the sheet is written.
    pub style: Style,
    pub book: Book,
    pub identity: Identity,
    /// Whether the data are invented.
    pub scenario: bool,
    pub form: Form,
    pub plate: Length,
    pub stated: Stated,
    /// The stresses used.
    pub materials: Materials,
    /// How they came about: as given, or ultimate ones over a factor.
    pub footing: String,
    /// Permissible stresses or those at failure, where that is known.
    pub footing_of: Option<Footing>,
    /// The stresses at failure and the factor that divided them.
    pub divided: Option<Divided>,
    pub inputs: Vec<Input>,
}

/// What came out.
#[derive(Debug)]
pub struct Answer {
    pub joint: Joint,
    pub analysis: Analysis,
}

impl Task {
    /// Sizes or checks.
    pub fn solve(&self) -> Result<Answer, Failure> {
        self.with(&self.book.rules).map_err(|e| Failure::refused(&e, &self.book, self.units))
    }

    fn with(&self, rules: &Rules) -> Result<Answer, Error> {
        match self.action {
            Action::Size => {
                let design = size(&self.brief(), rules)?;
                Ok(Answer { joint: design.joint, analysis: design.analysis })
            }
            Action::Check => {
                rules.validate()?;
                let joint = self.spec()?.build()?;
                Ok(Answer { joint, analysis: check(&joint, &self.materials, rules)? })
            }
        }
    }

    /// The brief of a sizing.
    pub fn brief(&self) -> Brief {
        self.brief_of(self.form)
    }

    /// The same for another form.
    pub fn brief_of(&self, form: Form) -> Brief {
        let said = &self.stated;
        let mut brief = Brief::new(form, self.plate, self.materials);
        if let Some(plate) = said.other_plate {
            brief = brief.other_plate(plate);
        }
        if let Some(hole) = said.hole {
            brief = brief.hole(hole, said.rivet);
        }
        if let Some(pitch) = said.pitch {
            brief = brief.pitch(pitch);
        }
        if let Some(wide) = said.wide {
            brief = brief.straps(wide, said.narrow);
        }
        if let Some(margin) = said.margin {
            brief = brief.margin(margin);
        }
        for (row, gap) in (1..).zip(&said.gaps) {
            brief = brief.back_pitch(row, *gap);
        }
        brief
    }

    /// The stated joint of a check.
    pub fn spec(&self) -> Result<JointSpec, Error> {
        let said = &self.stated;
        // Pitch and hole of a check were asked for when the flags were read.
        let zero = Length::mm(0.0);
        let mut spec = JointSpec::new(self.form, said.pitch.unwrap_or(zero), self.plate, said.hole.unwrap_or(zero));
        if let Some(rivet) = said.rivet {
            spec = spec.rivet(rivet);
        }
        if let Some(plate) = said.other_plate {
            spec = spec.other_plate(plate);
        }
        spec = match (said.wide, said.narrow) {
            (Some(wide), Some(narrow)) => spec.straps(wide, narrow),
            (Some(strap), None) => spec.strap(strap),
            _ => spec,
        };
        if let Some(margin) = said.margin {
            spec = spec.margin(margin);
        }
        for (row, gap) in (1..).zip(&said.gaps) {
            spec = spec.back_pitch(row, *gap);
        }
        Ok(spec)
    }
}

impl From<UnitsFlag> for Units {
    fn from(flag: UnitsFlag) -> Units {
        match flag {
            UnitsFlag::Mm => Units::Mm,
            UnitsFlag::Inch => Units::Inch,
        }
    }
}

/// Key and value of a change, for the basis of inputs.
pub fn change_text(book: &Book, entry: Entry) -> (String, String) {
    (key(entry), plain(book.rules.get(entry), 6))
}
