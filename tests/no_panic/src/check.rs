//! Checking.

use seamwright::check::{self, Analysis, Finding, FindingSink, Findings, SUBJECTS};
use seamwright::modes::Cut;
use seamwright::step::{Ctx, Name, Num, Plain, Quantity};

use crate::context::{By, Hidden};
use crate::input::{Input, keep};

pub fn check(i: &mut Input) {
    let rules = i.rules();
    let Some(joint) = i.joint() else { return };
    let cut = Cut { plate: i.small(), other: i.small(), narrow: i.small() };
    keep(check::counted(&rules, &joint, &cut));
    if let Ok(analysis) = check::check(&joint, &i.materials(), &rules) {
        seen(&analysis, i);
    }
}

pub fn check_with(i: &mut Input) {
    with(Plain, i);
    with(Hidden, i);
    with(By(Name(Quantity::Bearing, 0)), i);
}

fn with<C: Ctx>(c: C, i: &mut Input) {
    let rules = i.rules();
    let Some(joint) = i.joint() else { return };
    if let Ok(analysis) = check::check_with(c, &joint, &i.materials(), &rules) {
        seen(&analysis, i);
    }
}

/// Keeps each finding as it comes.
pub struct Keeping;

impl FindingSink for Keeping {
    fn take(&mut self, finding: Finding) {
        keep(finding);
    }
}

pub fn check_into(i: &mut Input) {
    let rules = i.rules();
    let Some(joint) = i.joint() else { return };
    let mut analysis = Analysis::blank();
    keep(check::check_into(&joint, &i.materials(), &rules, &mut Keeping, &mut analysis).is_ok());
    keep(analysis);
}

/// All that an analysis tells.
pub fn seen<N: Num>(analysis: &Analysis<N>, i: &mut Input) {
    keep((Analysis::runner_up_ratio(analysis), Analysis::classic_efficiencies(analysis)));
    keep(analysis);
    listed(&analysis.findings, i);
}

fn listed(findings: &Findings, i: &mut Input) {
    for finding in Findings::iter(findings) {
        keep((Finding::advice(finding), finding));
    }
    keep((Findings::len(findings), Findings::is_empty(findings), Findings::lost(findings), Findings::open(findings)));
    if let Some(subject) = i.one_of(SUBJECTS) {
        keep(Findings::find(findings, subject, i.small()));
    }
}

pub fn findings(i: &mut Input) {
    listed(&Findings::new(), i);
}
