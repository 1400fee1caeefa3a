//! Flags of shells: rating, design, search and comparison.

use clap::{ArgAction, Args, ValueEnum};

use crate::flags::MetalFlag;

/// Yes or no, where silence is a third answer.
#[derive(Clone, Copy, PartialEq, Eq, Debug, ValueEnum)]
pub enum Yes {
    Yes,
    No,
}

impl Yes {
    /// As a truth value.
    pub const fn is(self) -> bool {
        matches!(self, Yes::Yes)
    }
}

#[derive(Clone, Copy, PartialEq, Eq, Debug, ValueEnum)]
pub enum RivetingFlag {
    Hand,
    Machine,
}

#[derive(Clone, Copy, PartialEq, Eq, Debug, ValueEnum)]
pub enum HolesFlag {
    Drilled,
    Reamed,
    Punched,
}

/// A shell and its circumstances.
#[derive(Args, Debug, Default)]
pub struct ShellFlags {
    /// Greatest inside diameter of the shell
    #[arg(long, value_name = "LENGTH", help_heading = "Shell")]
    pub inside_diameter: Option<String>,
    /// Corrosion allowance besides the wastage that is measured
    #[arg(long, value_name = "LENGTH", help_heading = "Shell")]
    pub corrosion: Option<String>,
    /// The stresses given are permissible ones, not strengths at failure
    #[arg(long, conflicts_with = "safety_factor", help_heading = "Shell")]
    pub permissible: bool,
    /// How the rivets were closed
    #[arg(long, value_enum, help_heading = "Shell")]
    pub riveting: Option<RivetingFlag>,
    /// How the holes were made
    #[arg(long, value_enum, help_heading = "Shell")]
    pub holes_made: Option<HolesFlag>,
}

/// An existing joint.
#[derive(Args, Debug, Default)]
pub struct RateFlags {
    /// Figures that are from a drawing and not measured: pitch, plate, other-plate, wide-strap, narrow-strap, hole,
    /// shell-plate; may be repeated
    #[arg(long, value_name = "NAME", action = ArgAction::Append, help_heading = "As found")]
    pub from_drawing: Vec<String>,
    /// Least plate of the shell away from the seam
    #[arg(long, value_name = "LENGTH", help_heading = "As found")]
    pub shell_plate: Option<String>,
    /// Plate when new, by which driven rivets are tabulated
    #[arg(long, value_name = "LENGTH", help_heading = "As found")]
    pub plate_when_new: Option<String>,
    /// Metal of the rivets, where it is not that of --assume
    #[arg(long, value_enum, help_heading = "As found")]
    pub rivet_metal: Option<MetalFlag>,
    /// Present working pressure
    #[arg(long, value_name = "PRESSURE", help_heading = "As found")]
    pub present: Option<String>,
    /// Loss of thickness in a year
    #[arg(long, value_name = "LENGTH", conflicts_with = "earlier_plate", help_heading = "As found")]
    pub wastage_rate: Option<String>,
    /// Plate at an earlier inspection (with --years-ago)
    #[arg(long, value_name = "LENGTH", requires = "years_ago", help_heading = "As found")]
    pub earlier_plate: Option<String>,
    /// Years since that inspection
    #[arg(long, value_name = "YEARS", requires = "earlier_plate", help_heading = "As found")]
    pub years_ago: Option<String>,
    /// Bought second-hand
    #[arg(long, value_enum, help_heading = "Circumstances")]
    pub second_hand: Option<Yes>,
    /// Past the age limit of the book
    #[arg(long, value_enum, help_heading = "Circumstances")]
    pub past_age_limit: Option<Yes>,
    /// Inspected and tested as the book asks of boilers past their age limit
    #[arg(long, help_heading = "Circumstances")]
    pub tested: bool,
    /// A horizontal return tubular boiler
    #[arg(long, value_enum, help_heading = "Circumstances")]
    pub tubular: Option<Yes>,
    /// Longest continuous lap along the shell
    #[arg(long, value_name = "LENGTH", help_heading = "Circumstances")]
    pub lap_length: Option<String>,
    /// A lap exposed to fire
    #[arg(long, value_enum, help_heading = "Circumstances")]
    pub lap_in_fire: Option<Yes>,
    /// The boiler's weight pulls on the seam
    #[arg(long, value_enum, help_heading = "Circumstances")]
    pub weight_on_seam: Option<Yes>,
    /// Inspected stripped down as the book asks of wide shells with laps
    #[arg(long, help_heading = "Circumstances")]
    pub stripped: bool,
}

/// A vessel to be designed.
#[derive(Args, Debug, Default)]
pub struct VesselFlags {
    /// Working pressure
    #[arg(long, value_name = "PRESSURE", help_heading = "Shell")]
    pub pressure: Option<String>,
    /// Step of the stock of plates (1 mm, or 1/16 in with --units inch)
    #[arg(long, value_name = "LENGTH", help_heading = "Shell")]
    pub plate_step: Option<String>,
    /// Thickest plate of the stock (40 mm, or 1 1/2 in)
    #[arg(long, value_name = "LENGTH", help_heading = "Shell")]
    pub plate_most: Option<String>,
    /// Rows of a girth seam between two rings (a lap)
    #[arg(long, value_name = "N", help_heading = "Shell")]
    pub girth_rows: Option<u8>,
}

/// A group of rivets.
#[derive(Args, Debug)]
pub struct BracketFlags {
    /// Place of a rivet, x and y upwards, as in "0 mm, 80 mm"; once for each, up to 32
    #[arg(long, value_name = "X, Y", action = ArgAction::Append, help_heading = "Bracket")]
    pub rivet_at: Vec<String>,
    /// Load along x, to the right
    #[arg(long, value_name = "FORCE", help_heading = "Bracket")]
    pub load_x: Option<String>,
    /// Load along y, upwards: a hanging load is negative
    #[arg(long, value_name = "FORCE", help_heading = "Bracket")]
    pub load_y: Option<String>,
    /// A point of the load's line
    #[arg(long, value_name = "X, Y", help_heading = "Bracket")]
    pub load_at: Option<String>,
    /// Couple, anticlockwise
    #[arg(long, value_name = "MOMENT", help_heading = "Bracket")]
    pub couple: Option<String>,
    /// Shear planes of each rivet
    #[arg(long, value_name = "N", default_value_t = 1, value_parser = clap::value_parser!(u8).range(1..=2), help_heading = "Bracket")]
    pub shear_planes: u8,
    /// Effective eccentricity of an old AISC Manual: the rivets in one vertical row (not for new work)
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u8).range(1..=60), help_heading = "Bracket")]
    pub row_rivets: Option<u8>,
}

/// What is searched for.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default, ValueEnum)]
pub enum ObjectiveFlag {
    /// the highest efficiency credited
    #[default]
    Efficiency,
    /// the least mass of a metre of seam
    Mass,
    /// the fewest rivets in a metre
    Rivets,
    /// the thinnest plate of --plates
    Thickness,
}

/// A search.
#[derive(Args, Debug, Default)]
pub struct SearchFlags {
    /// What makes a joint the better one
    #[arg(long, value_enum, default_value_t, help_heading = "Search")]
    pub objective: ObjectiveFlag,
    /// A plate to choose from; may be repeated (else --plate)
    #[arg(long, value_name = "LENGTH", action = ArgAction::Append, help_heading = "Search")]
    pub stock_plate: Vec<String>,
    /// Most rows on one side
    #[arg(long, value_name = "N", help_heading = "Search")]
    pub rows_most: Option<u8>,
    /// Largest cold rivet
    #[arg(long, value_name = "LENGTH", help_heading = "Search")]
    pub rivet_most: Option<String>,
    /// Greatest pitch of the outer row
    #[arg(long, value_name = "LENGTH", help_heading = "Search")]
    pub pitch_most: Option<String>,
    /// Least efficiency credited, in per cent
    #[arg(long, value_name = "PERCENT", help_heading = "Search")]
    pub efficiency_least: Option<String>,
    /// Working pressure to be carried (with --inside-diameter)
    #[arg(long, value_name = "PRESSURE", requires = "inside_diameter", help_heading = "Search")]
    pub pressure: Option<String>,
    /// Only this kind of joint (with --form)
    #[arg(long, requires = "form", help_heading = "Search")]
    pub only_form: bool,
    /// Joints of open findings as well
    #[arg(long, help_heading = "Search")]
    pub any_finding: bool,
}

/// What the columns of a comparison are put in order by.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default, ValueEnum)]
pub enum SortFlag {
    #[default]
    Given,
    Credited,
    Efficiency,
    Pressure,
    Pitch,
    Hole,
    Open,
}

/// A comparison.
#[derive(Args, Debug, Default)]
pub struct CompareFlags {
    /// Rule books side by side, by id; may be repeated (else all)
    #[arg(long, value_name = "ID", action = ArgAction::Append, conflicts_with = "book", help_heading = "Comparison")]
    pub books: Vec<String>,
    /// All common forms side by side under --book, in the place of books
    #[arg(long, requires = "book", help_heading = "Comparison")]
    pub all_forms: bool,
    /// Order of the columns
    #[arg(long, value_enum, default_value_t, help_heading = "Comparison")]
    pub sort: SortFlag,
}
