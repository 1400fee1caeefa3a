//! What can be said on the command line. Numbers stay texts here: they are read with their unit, by field, so that one
//! kind of message serves them all.

use clap::{ArgAction, Args, Parser, Subcommand, ValueEnum};

use crate::studies::flags::{BracketFlags, CompareFlags, RateFlags, SearchFlags, ShellFlags, VesselFlags};

const EXAMPLES: &str = "\
Examples:
  seamwright
      the sheet of an invented scenario; with --units inch in inches
  seamwright --book metric --form lap --rows 2 --plate \"12 mm\" \\
      --tension \"80 MPa\" --shear \"60 MPa\" --bearing \"120 MPa\"
      a double-riveted lap, sized
  seamwright size --book us-code --form unequal-straps --rows 3 --plate \"1/2 in\" \\
      --assume steel --safety-factor 5 --units inch
      strengths as the book assumes them, divided by 5
  seamwright check --book us-code --form lap --rows 2 --plate \"5/16 in\" \\
      --pitch \"2 7/8 in\" --hole \"3/4 in\" --margin \"1 1/4 in\" --gap \"1 5/8 in\" \\
      --assume steel --units inch
      an existing joint against the book
  seamwright --list-books
  seamwright --list-rules indian

Lengths: mm, cm, m, in, written after the number: \"12 mm\", \"1/2 in\", \"1 5/8 in\".
Stresses: MPa, N/mm2, psi, ksi, kgf/cm2, kgf/mm2, tons/in2 (long tons of 2240 lb).
Exit code: 0 done (open findings are in the sheet), 1 not computable, 2 bad usage.

Design aid only. Local codes, the inspecting authority and licensed practice
govern; old shells need inspection before any rating.";

/// Sizes or checks a riveted joint: all dimensions, every way it can fail, the rules it meets or not.
#[derive(Parser, Debug)]
#[command(name = "seamwright", version, after_help = EXAMPLES, args_conflicts_with_subcommands = true)]
pub struct Cli {
    #[command(subcommand)]
    command: Option<Command>,
    #[command(flatten)]
    flags: Flags,
}

#[derive(Subcommand, Debug)]
enum Command {
    /// Size a joint: what is given is kept, everything else is found (the default)
    #[command(after_help = EXAMPLES)]
    Size(Flags),
    /// Check a stated joint: --pitch and --hole are needed, straps, gaps and margin as far as known
    #[command(after_help = EXAMPLES)]
    Check(Flags),
    /// Find the conventions and slips that give stated figures: --figure "J=66.5 %" for each of them
    Reconcile {
        /// A stated figure with its digits, by its symbol in the working, as in "Ps=31897 N"; may be repeated
        #[arg(long, value_name = "NAME=VALUE", action = ArgAction::Append, help_heading = "Figures")]
        figure: Vec<String>,
        #[command(flatten)]
        flags: Flags,
    },
    /// Show what each input does to the joint, and what tolerances can do at worst
    Sensitivity {
        #[command(flatten)]
        tolerances: ToleranceFlags,
        #[command(flatten)]
        flags: Flags,
    },
    /// Rate an existing joint of a shell from what was measured; every assumption is listed
    Rate {
        #[command(flatten)]
        found: RateFlags,
        #[command(flatten)]
        shell: ShellFlags,
        #[command(flatten)]
        flags: Flags,
    },
    /// Design a shell to a pressure: plate and seam together, and a girth seam
    Vessel {
        #[command(flatten)]
        vessel: VesselFlags,
        #[command(flatten)]
        shell: ShellFlags,
        #[command(flatten)]
        flags: Flags,
    },
    /// Check or size a group of rivets under an eccentric load (a bracket, a gusset): with --hole a check
    Bracket {
        #[command(flatten)]
        bracket: BracketFlags,
        #[command(flatten)]
        flags: Flags,
    },
    /// Find the best joint over all forms, sizes and pitches, with a certificate
    Search {
        #[command(flatten)]
        search: SearchFlags,
        #[command(flatten)]
        shell: ShellFlags,
        #[command(flatten)]
        flags: Flags,
    },
    /// Set one brief under several rule books, or several forms under one book, side by side
    Compare {
        #[command(flatten)]
        compare: CompareFlags,
        #[command(flatten)]
        shell: ShellFlags,
        #[command(flatten)]
        flags: Flags,
    },
    /// Write problems for a class: --form, --rows, --book and --effect choose the family
    Problems {
        #[command(flatten)]
        problems: ProblemFlags,
        #[command(flatten)]
        flags: Flags,
    },
}

/// Tolerances of a study, each to either side.
#[derive(Args, Debug, Default)]
pub struct ToleranceFlags {
    /// Tolerance of the plates, to either side
    #[arg(long, value_name = "LENGTH", help_heading = "Tolerances")]
    pub plate_tolerance: Option<String>,
    /// Tolerance of each strap
    #[arg(long, value_name = "LENGTH", help_heading = "Tolerances")]
    pub strap_tolerance: Option<String>,
    /// Tolerance of the holes, which move together
    #[arg(long, value_name = "LENGTH", help_heading = "Tolerances")]
    pub hole_tolerance: Option<String>,
    /// Tolerance of the pitch
    #[arg(long, value_name = "LENGTH", help_heading = "Tolerances")]
    pub pitch_tolerance: Option<String>,
}

/// Which problems.
#[derive(Args, Debug)]
pub struct ProblemFlags {
    /// The effect that decides each problem
    #[arg(long, value_enum, default_value = "shearing", help_heading = "Problems")]
    pub effect: EffectFlag,
    /// Number of the first problem: the same number gives the same problem everywhere
    #[arg(long, value_name = "N", default_value_t = 1, help_heading = "Problems")]
    pub number: u64,
    /// How many problems
    #[arg(long, value_name = "N", default_value_t = 5, value_parser = clap::value_parser!(u16).range(1..=500), help_heading = "Problems")]
    pub count: u16,
    /// The joint is to be sized, not checked
    #[arg(long, help_heading = "Problems")]
    pub size: bool,
    /// Stresses of a structure, not of a boiler
    #[arg(long, help_heading = "Problems")]
    pub structure: bool,
    /// With the answers, for the teacher
    #[arg(long, help_heading = "Problems")]
    pub answers: bool,
    /// The full working of the first problem instead
    #[arg(long, conflicts_with = "answers", help_heading = "Problems")]
    pub solution: bool,
}

/// The effect that a problem teaches.
#[derive(Clone, Copy, PartialEq, Eq, Debug, ValueEnum)]
pub enum EffectFlag {
    /// the plate tears at its outer row
    Tearing,
    /// all rivets shear
    Shearing,
    /// all rivets crush the plate
    Bearing,
    /// an inner row tears and the outer rivets fail
    Combined,
    /// the greatest pitch of the book decides
    Cap,
    /// the hole of a thin plate
    ThinPlate,
}

/// How a text is written.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default, ValueEnum)]
pub enum DialectFlag {
    /// plain text of 80 columns
    #[default]
    Plain,
    /// plain text of 20 columns
    Narrow,
    /// Markdown
    Markdown,
    /// LaTeX, for a plain article class
    Latex,
    /// HTML, self-contained
    Html,
}

/// What is asked of the program.
#[derive(Debug)]
pub enum Request {
    /// A sheet of one joint.
    Sheet(Action, Flags),
    /// Conventions behind stated figures.
    Reconcile(Flags, Vec<String>),
    /// Slopes and tolerances.
    Sensitivity(Flags, ToleranceFlags),
    /// An existing joint.
    Rate(Flags, ShellFlags, RateFlags),
    /// A shell to a pressure.
    Vessel(Flags, ShellFlags, VesselFlags),
    /// A group of rivets.
    Bracket(Flags, BracketFlags),
    /// The best joint.
    Search(Flags, ShellFlags, SearchFlags),
    /// Side by side.
    Compare(Flags, ShellFlags, CompareFlags),
    /// Problems for a class.
    Problems(Flags, ProblemFlags),
}

/// What to do.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Action {
    Size,
    Check,
}

impl Cli {
    /// Reads the command line. A negative number after an option is its value, not another option: it is joined to it,
    /// so that it is refused for its size and by its field.
    pub fn read() -> Cli {
        let mut joined: Vec<String> = Vec::new();
        for argument in std::env::args() {
            let negative = argument
                .strip_prefix('-')
                .is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit() || c == '.'));
            match joined.last_mut() {
                Some(option) if negative && option.starts_with("--") && !option.contains('=') => {
                    option.push('=');
                    option.push_str(&argument);
                }
                _ => joined.push(argument),
            }
        }
        Cli::parse_from(joined)
    }

    /// What is asked; sizing where nothing is named.
    pub fn request(self) -> Request {
        match self.command {
            Some(Command::Size(flags)) => Request::Sheet(Action::Size, flags),
            Some(Command::Check(flags)) => Request::Sheet(Action::Check, flags),
            Some(Command::Reconcile { figure, flags }) => Request::Reconcile(flags, figure),
            Some(Command::Sensitivity { tolerances, flags }) => Request::Sensitivity(flags, tolerances),
            Some(Command::Rate { found, shell, flags }) => Request::Rate(flags, shell, found),
            Some(Command::Vessel { vessel, shell, flags }) => Request::Vessel(flags, shell, vessel),
            Some(Command::Bracket { bracket, flags }) => Request::Bracket(flags, bracket),
            Some(Command::Search { search, shell, flags }) => Request::Search(flags, shell, search),
            Some(Command::Compare { compare, shell, flags }) => Request::Compare(flags, shell, compare),
            Some(Command::Problems { problems, flags }) => Request::Problems(flags, problems),
            None => Request::Sheet(Action::Size, self.flags),
        }
    }
}

/// Form of the joint.
#[derive(Clone, Copy, PartialEq, Eq, Debug, ValueEnum)]
pub enum FormFlag {
    /// one plate over the other
    Lap,
    /// butt joint with one strap
    SingleStrap,
    /// butt joint with two straps of equal width
    DoubleStrap,
    /// butt joint with a wide and a narrow strap
    UnequalStraps,
}

/// Metal whose strength the book assumes.
#[derive(Clone, Copy, PartialEq, Eq, Debug, ValueEnum)]
pub enum MetalFlag {
    Steel,
    Iron,
}

/// Units of the sheet.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default, ValueEnum)]
pub enum UnitsFlag {
    /// mm, MPa, kN
    #[default]
    Mm,
    /// inches in fractions, psi, lbf
    Inch,
}

#[derive(Args, Debug, Default)]
pub struct Flags {
    /// Form of the joint
    #[arg(long, value_enum, help_heading = "Form")]
    pub form: Option<FormFlag>,
    /// Rows of rivets (on one side of a butt)
    #[arg(long, value_name = "N", help_heading = "Form")]
    pub rows: Option<String>,
    /// Rows behind each other
    #[arg(long, conflicts_with = "zigzag", help_heading = "Form")]
    pub chain: bool,
    /// Rows in the gaps of each other (the default)
    #[arg(long, help_heading = "Form")]
    pub zigzag: bool,
    /// Every other rivet of the outer row left out
    #[arg(long, help_heading = "Form")]
    pub omit_alternate: bool,
    /// Any rows, outside first, as rivets in the strip x shear planes: 1x1,2x2,2x2
    #[arg(long, value_name = "ROWS", conflicts_with_all = ["rows", "omit_alternate"], help_heading = "Form")]
    pub row_list: Option<String>,

    /// Thickness of the plate (plate A of a lap)
    #[arg(long, value_name = "LENGTH", help_heading = "Dimensions")]
    pub plate: Option<String>,
    /// Thickness of plate B of a lap, where it differs
    #[arg(long, value_name = "LENGTH", help_heading = "Dimensions")]
    pub other_plate: Option<String>,
    /// Hole diameter
    #[arg(long, value_name = "LENGTH", help_heading = "Dimensions")]
    pub hole: Option<String>,
    /// Cold rivet diameter (with --hole)
    #[arg(long, value_name = "LENGTH", help_heading = "Dimensions")]
    pub rivet: Option<String>,
    /// Pitch of the outer row (width of the strip where that row has several rivets in it)
    #[arg(long, value_name = "LENGTH", help_heading = "Dimensions")]
    pub pitch: Option<String>,
    /// Thickness of the single or wide strap, or of both equal straps
    #[arg(long, value_name = "LENGTH", help_heading = "Dimensions")]
    pub wide_strap: Option<String>,
    /// Thickness of the narrow or second strap
    #[arg(long, value_name = "LENGTH", help_heading = "Dimensions")]
    pub narrow_strap: Option<String>,
    /// Centre of the edge row to the plate edge
    #[arg(long, value_name = "LENGTH", help_heading = "Dimensions")]
    pub margin: Option<String>,
    /// Distance of a row to the next, outside first; once for each gap
    #[arg(long, value_name = "LENGTH", action = ArgAction::Append, help_heading = "Dimensions")]
    pub gap: Vec<String>,

    /// Tensile stress of the plate
    #[arg(long, value_name = "STRESS", help_heading = "Stresses")]
    pub tension: Option<String>,
    /// Shear stress of the rivets, single shear
    #[arg(long, value_name = "STRESS", help_heading = "Stresses")]
    pub shear: Option<String>,
    /// Bearing (crushing) stress of the plate
    #[arg(long, value_name = "STRESS", help_heading = "Stresses")]
    pub bearing: Option<String>,
    /// Tensile stress of plate B or of the straps, where it differs
    #[arg(long, value_name = "STRESS", help_heading = "Stresses")]
    pub other_tension: Option<String>,
    /// Bearing stress of plate B or of the straps, where it differs
    #[arg(long, value_name = "STRESS", help_heading = "Stresses")]
    pub other_bearing: Option<String>,
    /// Shear stress of the plates, so that shear-out at the margin counts
    #[arg(long, value_name = "STRESS", help_heading = "Stresses")]
    pub plate_shear: Option<String>,
    /// The stresses are ultimate: divide them by this factor
    #[arg(long, value_name = "FACTOR", help_heading = "Stresses")]
    pub safety_factor: Option<String>,
    /// Take strengths not given as the book assumes them (ultimate)
    #[arg(long, value_enum, help_heading = "Stresses")]
    pub assume: Option<MetalFlag>,

    /// Rule book, by its id in --list-books
    #[arg(long, value_name = "ID", help_heading = "Rules")]
    pub book: Option<String>,
    /// Change an entry of the book, as in shear.double=1.75; may be repeated
    #[arg(long, value_name = "KEY=VALUE", action = ArgAction::Append, help_heading = "Rules")]
    pub set: Vec<String>,
    /// List the rule books and stop
    #[arg(long, help_heading = "Rules")]
    pub list_books: bool,
    /// List all entries of a book with values, clauses and labels, and stop
    #[arg(long, value_name = "ID", help_heading = "Rules")]
    pub list_rules: Option<String>,

    /// Units of the sheet
    #[arg(long, value_enum, default_value_t, help_heading = "Sheet")]
    pub units: UnitsFlag,
    /// How the text is written (where a command can: not sensitivity, reconcile, search)
    #[arg(long, value_enum, default_value_t, help_heading = "Sheet")]
    pub dialect: DialectFlag,
    /// Plain sheet of a joint on pages of so many lines, with caution and page number at each foot; 60 print well on A4
    #[arg(long, value_name = "LINES", help_heading = "Sheet")]
    pub lines_per_page: Option<u16>,
    /// Title
    #[arg(long, value_name = "TEXT", help_heading = "Sheet")]
    pub title: Option<String>,
    /// Object
    #[arg(long, value_name = "TEXT", help_heading = "Sheet")]
    pub object: Option<String>,
    /// Drawing number
    #[arg(long, value_name = "TEXT", help_heading = "Sheet")]
    pub drawing: Option<String>,
    /// Jurisdiction or inspecting authority
    #[arg(long, value_name = "TEXT", help_heading = "Sheet")]
    pub jurisdiction: Option<String>,
}

impl Flags {
    /// Whether any flag says something about a joint. Only without one does the invented scenario stand in: a joint
    /// half from the user and half from a story would be worse than none.
    pub fn describes_a_joint(&self) -> bool {
        let texts = [
            &self.rows,
            &self.row_list,
            &self.plate,
            &self.other_plate,
            &self.hole,
            &self.rivet,
            &self.pitch,
            &self.wide_strap,
            &self.narrow_strap,
            &self.margin,
            &self.tension,
            &self.shear,
            &self.bearing,
            &self.other_tension,
            &self.other_bearing,
            &self.plate_shear,
            &self.safety_factor,
        ];
        self.form.is_some()
            || self.assume.is_some()
            || self.chain
            || self.zigzag
            || self.omit_alternate
            || !self.gap.is_empty()
            || texts.iter().any(|t| t.is_some())
    }
}
