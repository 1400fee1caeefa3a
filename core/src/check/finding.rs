//! Findings: rules of the book, what they require, what is provided, and whether that will do.

use core::cell::Cell;

use crate::bounds::Unit;
use crate::error::EntryNo;
use crate::math;

/// The most findings that one check can produce: eight rows that all differ give 4 each on their holes, there are 7
/// gaps, and some fifteen single rules. A test builds the fullest joint.
pub const MAX_FINDINGS: usize = 64;

macro_rules! subjects {
    ($($id:ident $unit:ident $what:literal $open:literal;)*) => {
        /// What a finding is about.
        #[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
        #[repr(u8)]
        pub enum Subject { $(#[doc = $what] $id),* }

        /// All subjects, for tests and bindings.
        pub const SUBJECTS: &[Subject] = &[$(Subject::$id),*];

        impl Subject {
            /// What is compared.
            #[must_use]
            pub const fn what(self) -> &'static str { match self { $(Subject::$id => $what),* } }
            /// What to make of it when the rule is not met, or what the note says.
            #[must_use]
            pub const fn advice(self) -> &'static str { match self { $(Subject::$id => $open),* } }
            /// What [`Finding::row`] counts: rows, or the rivets of a group.
            #[must_use]
            pub const fn place(self) -> &'static str {
                match self {
                    Subject::GroupShear | Subject::GroupBearing | Subject::RivetsApart => "rivet",
                    _ => "row",
                }
            }
            /// Unit of the figures.
            #[must_use]
            pub const fn unit(self) -> Unit { match self { $(Subject::$id => Unit::$unit),* } }
        }
    };
}

subjects! {
    PlateThickness Millimetre "plate thickness" "take a thicker plate";
    HoleStandard Millimetre "hole of the standard series" "the hole is not of the series: take the next size, or say why not";
    HoleLeast Millimetre "hole, least by thickness" "take a larger rivet";
    HoleGreatest Millimetre "hole, greatest by thickness" "take a smaller rivet";
    Clearance Millimetre "clearance of hole over rivet" "drill a closer hole";
    PitchLeast Millimetre "pitch, least" "take a larger pitch: there is no room for the heads";
    PitchGreatest Millimetre "pitch, greatest" "take a smaller pitch: the seam cannot be kept tight";
    RowDistance Millimetre "distance between rows" "move the rows apart";
    MarginLeast Millimetre "margin, least" "enlarge the margin";
    MarginGreatest Millimetre "margin, greatest" "reduce the margin: the edge cannot be kept tight";
    WideStrap Millimetre "single, wide or first strap" "take a thicker strap";
    NarrowStrap Millimetre "narrow or second strap" "take a thicker strap";
    Grip Millimetre "grip of the rivets" "take a larger rivet or fewer plies";
    Scallop Millimetre "pitch for a straight caulked edge" "scallop the strap edge for caulking";
    HeadAtStrap Millimetre "distance of rows for heads 1.6 rivets wide beside the edge of the narrow strap (custom)" "the heads foul the strap's edge: move the row out, or order smaller heads";
    HeadsInRow Millimetre "pitch of the row for heads 1.6 rivets wide (custom)" "the heads of the row touch: take a larger pitch";
    HeadsOfRows Millimetre "distance of rows for heads 1.6 rivets wide clear of each other (custom)" "the heads of the two rows touch: move the rows apart";
    NetSection Newton "net section left" "no plate is left between the holes as the rule book counts them: the joint holds nothing";
    AllModes One "efficiency over all modes against the book's own" "a mode that the book does not count is weaker: judge by the efficiency over all modes";
    CreditCap One "efficiency credited" "only the cap may be credited";
    Room One "rivets over plate" "the joint has room: fewer rows or a smaller rivet would do";
    BearingUnknown One "bearing" "no bearing stress was given: crushing was not checked";
    StrapsUnknown One "straps" "no strap thickness was given: straps were not checked";
    RowsUnknown One "row distances" "row distances were not given: they were not checked";
    MarginUnknown One "margin" "no margin was given: it was not checked";
    ThinPlateJump Millimetre "plate thickness at which the hole rule changes" "the hole jumps at this thickness: compare both sides";
    PressureMargin Megapascal "working pressure that is allowed" "lower the working pressure, or repair";
    SafetyFactor One "factor of safety given against the book's" "the book asks for more";
    ShellPlate Millimetre "shell plate, least by diameter" "take a thicker plate";
    LapDiameter Millimetre "inside diameter of a shell with a lap along it" "the book asks for butt and double straps";
    LapPressure Megapascal "working pressure with a lap along the shell" "lower the pressure, or take butt and double straps";
    SecondHandLap Megapascal "working pressure of a second-hand tubular boiler with a lap" "lower the pressure";
    WideLap Megapascal "working pressure of a wide tubular boiler with a lap, not inspected stripped down" "lower the pressure or have it inspected";
    SolidPlate Megapascal "pressure of the solid plate away from the seam against that of the seam" "the plate away from the seam governs";
    GirthEfficiency One "efficiency of the girth seam" "take more rows, or another pitch";
    GirthRivets Count "rivets of the girth seam against the load on the end" "take more rivets";
    GirthRows Count "rows of the girth seam" "take more rows";
    GirthDivides Millimetre "pitch that divides the girth" "no whole number of this pitch goes into the girth";
    Staggered One "longitudinal seams of neighbouring rings" "set the seams of neighbouring rings out of line";
    LapBending One "bending of the lap" "a lap bends as it pulls straight; no rule used here covers that";
    GroupShear Megapascal "shear stress of the rivet that bears most" "take larger rivets, or more, or set them farther apart";
    GroupBearing Megapascal "bearing stress at the rivet that bears most" "take a thicker plate, or larger rivets, or more";
    GroupBearingUnknown One "bearing of the group" "no bearing stress or no plate was given: crushing was not checked";
    RivetsApart Millimetre "distance between two rivets, least pitch" "move the rivets apart: there is no room for the heads";
}

/// Whether a rule is met, in the order in which findings are listed.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
#[repr(u8)]
pub enum Verdict {
    /// The rule is not met.
    Open,
    /// The rule exists, and whether it is met cannot be said.
    Unknown,
    /// Something to know; nothing is required.
    Note,
    /// The rule is met.
    Met,
}

/// What a rule requires of a figure.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[repr(u8)]
pub enum Required {
    /// At least the required figure.
    AtLeast,
    /// At most the required figure.
    AtMost,
}

/// One rule compared with the joint. Figures in the unit of the subject; not numbers where there are none.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Finding {
    /// What it is about.
    pub subject: Subject,
    /// The row or gap, or the rivet of a group (from 1), 0 for the joint.
    pub row: u8,
    /// The rule-book entry.
    pub entry: EntryNo,
    /// Sense of the requirement.
    pub sense: Required,
    /// What is required.
    pub required: f64,
    /// What is there.
    pub provided: f64,
    /// Whether that will do.
    pub verdict: Verdict,
}

impl Finding {
    /// What to make of it: that of its subject, unless the book has the rule and says nothing for this case.
    #[must_use]
    pub fn advice(&self) -> &'static str {
        // What was not given has subjects of its own, without figures.
        if self.verdict == Verdict::Unknown && self.provided.is_finite() {
            return "the rule does not reach this case: it was not judged";
        }
        self.subject.advice()
    }
}

/// Where the findings of a check go, in its order: into a list, an array of somebody else's, or nowhere but a count.
pub trait FindingSink {
    /// One finding.
    fn take(&mut self, finding: Finding);
}

impl FindingSink for Findings {
    fn take(&mut self, finding: Finding) {
        if self.list.push(finding).is_err() {
            self.lost = true;
        }
    }
}

impl dyn FindingSink + '_ {
    /// Compares a figure with what is required of it.
    pub(crate) fn compare(
        &mut self,
        subject: Subject,
        row: u8,
        entry: EntryNo,
        sense: Required,
        required: f64,
        provided: f64,
    ) {
        let met = match sense {
            Required::AtLeast => math::at_least(provided, required),
            Required::AtMost => math::at_most(provided, required),
        };
        let verdict = if met { Verdict::Met } else { Verdict::Open };
        self.take(Finding { subject, row, entry, sense, required, provided, verdict });
    }

    /// Something that cannot be judged.
    pub(crate) fn unknown(&mut self, subject: Subject, entry: EntryNo, provided: f64) {
        self.take(Finding {
            subject,
            row: 0,
            entry,
            sense: Required::AtMost,
            required: f64::NAN,
            provided,
            verdict: Verdict::Unknown,
        });
    }

    /// Something to know.
    pub(crate) fn note(&mut self, subject: Subject) {
        self.note_of(subject, EntryNo::NONE, f64::NAN, f64::NAN);
    }

    /// Something to know, with its figures.
    pub(crate) fn note_of(&mut self, subject: Subject, entry: EntryNo, required: f64, provided: f64) {
        self.take(Finding {
            subject,
            row: 0,
            entry,
            sense: Required::AtMost,
            required,
            provided,
            verdict: Verdict::Note,
        });
    }
}

/// The findings of a check, open ones first.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Findings {
    list: heapless::Vec<Finding, MAX_FINDINGS>,
    lost: bool,
}

impl Findings {
    /// No findings yet.
    #[must_use]
    pub const fn new() -> Self {
        Findings { list: heapless::Vec::new(), lost: false }
    }

    /// The findings in order.
    pub fn iter(&self) -> impl Iterator<Item = &Finding> {
        self.list.iter()
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.list.len()
    }

    /// Whether there are none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.list.is_empty()
    }

    /// Whether a finding did not fit. The capacity covers every joint that can be built, and a test keeps it so.
    #[must_use]
    pub fn lost(&self) -> bool {
        self.lost
    }

    /// How many rules are not met.
    #[must_use]
    pub fn open(&self) -> usize {
        self.list.iter().filter(|f| f.verdict == Verdict::Open).count()
    }

    /// The finding on a subject at a row.
    #[must_use]
    pub fn find(&self, subject: Subject, row: u8) -> Option<&Finding> {
        self.list.iter().find(|f| f.subject == subject && f.row == row)
    }

    /// Something to know, with its figures.
    pub(crate) fn note_of(&mut self, subject: Subject, entry: EntryNo, required: f64, provided: f64) {
        (self as &mut dyn FindingSink).note_of(subject, entry, required, provided);
    }

    /// Compares a figure with what is required of it.
    pub(crate) fn compare(
        &mut self,
        subject: Subject,
        row: u8,
        entry: EntryNo,
        sense: Required,
        required: f64,
        provided: f64,
    ) {
        (self as &mut dyn FindingSink).compare(subject, row, entry, sense, required, provided);
    }

    /// Open ones first, then unknown, notes, met; within each the order of the check.
    pub(crate) fn open_first(&mut self) {
        // In place, by neighbours that change: a second list is more than a small machine has to spare.
        let cells = Cell::from_mut(self.list.as_mut_slice()).as_slice_of_cells();
        let mut changed = true;
        while changed {
            changed = false;
            for pair in cells.windows(2) {
                if let [a, b] = pair
                    && a.get().verdict as u8 > b.get().verdict as u8
                {
                    let first = a.get();
                    a.set(b.get());
                    b.set(first);
                    changed = true;
                }
            }
        }
    }
}
