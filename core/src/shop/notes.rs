//! What a reader of the sheet has to know besides its figures.

use super::ShopSheet;
use super::fit::Fitted;
use super::places::{SIDE_MARGIN, side_margin};
use crate::check::Verdict;
use crate::joint::JointKind;
use crate::math;
use crate::proportion::Limit;
use crate::step::Num;

macro_rules! notes {
    ($($id:ident $text:literal;)*) => {
        /// Something to know about a shop sheet.
        #[derive(Clone, Copy, PartialEq, Eq, Debug, Hash)]
        #[repr(u8)]
        pub enum Note { $(#[doc = $text] $id),* }

        /// All notes.
        pub const SHOP_NOTES: &[Note] = &[$(Note::$id),*];

        impl Note {
            /// The note.
            #[must_use]
            pub const fn text(self) -> &'static str { match self { $(Note::$id => $text),* } }
        }
    };
}

notes! {
    RulesOpen "Rules of the book are not met by the joint as it is to be made: see the re-check.";
    PitchOutside "The width of this tie leaves its pitch outside the limits of the book.";
    SideMargin "Holes of this tie stand nearer to the edge of its width than 1.5 holes, the custom for margins.";
    CapUnknown "The book's table of greatest pitches does not reach this joint: no cap was applied.";
    HeadAgainstRule "The length rule is not one for this form of closing head: choose the rule by the head, or try a rivet first.";
    GripBeyondRule "The grip is longer than the length rule is stated for (4 diameters).";
    StockShort "The stock length is below the length by the rule: the closing head comes out short.";
    RivetLoose "The rule's allowance does not look at the clearance of the hole, which takes metal too: try a rivet first.";
    RingsDiffer "The rings differ in girth: mark both by the angles, or each by its own girth over the number of pitches.";
}

impl<N: Num> ShopSheet<N> {
    /// What to know, in the order of [`SHOP_NOTES`].
    pub fn notes(&self) -> impl Iterator<Item = Note> + '_ {
        SHOP_NOTES.iter().copied().filter(|note| self.holds(*note))
    }

    /// Whether a note holds for this sheet.
    #[must_use]
    pub fn holds(&self, note: Note) -> bool {
        let rule = self.order.length_rule();
        match note {
            Note::RulesOpen => self.analysis.findings.iter().any(|f| f.verdict == Verdict::Open),
            Note::PitchOutside => self.pitch.fitted == Fitted::Tie && !self.pitch.taken.admissible,
            Note::SideMargin => self.pitch.fitted == Fitted::Tie && math::below(side_margin(&self.joint), SIDE_MARGIN),
            Note::CapUnknown => matches!(self.pitch.greatest, Limit::Unknown(_)),
            Note::HeadAgainstRule => rule.sunk() != self.order.head().sunk(),
            Note::GripBeyondRule => rule.greatest_grip().is_some_and(|most| {
                self.rivets().iter().any(|line| math::below(most * line.rivet.to_mm(), line.grip.value()))
            }),
            Note::StockShort => self.rivets().iter().any(|line| math::below(line.stock.value(), line.length.value())),
            Note::RivetLoose => self.rivets().iter().any(|line| math::below(line.rivet.to_mm(), line.hole.to_mm())),
            Note::RingsDiffer => self.along.circle.is_some() && self.joint.form().kind() == JointKind::Lap,
        }
    }
}
