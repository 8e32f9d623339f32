//! A tool that vanished under its mark while another of its kind came without a
//! word on either: it may be the same under a new mark, so that nothing is
//! mended.
//!
//! Imports `load` and `model`.

use crate::fleet::Judged;
use crate::fleet::record::VesselOnRecord;
use crate::load;
use crate::model::inspection::Inspection;
use crate::model::profile::Profile;
use crate::model::vessel::{Tool, Vessel};
use crate::model::vocabulary::Vocabulary;
use std::sync::Arc;

/// A mark that is gone, and the one that is new.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Renamed {
    /// The mark of the tool that was found wanting then.
    pub then: String,
    /// The mark of the one that serves now.
    pub now: String,
}

/// The two lists of a vessel.
pub(super) struct Kits<'a> {
    pub(super) then: &'a VesselOnRecord,
    pub(super) listed_then: &'a Vessel,
    pub(super) now: &'a Judged,
    pub(super) vocabulary: &'a Vocabulary,
}

impl Kits<'_> {
    /// The first tool that was found wanting, is not named any more, and in the
    /// place of which another of its kind serves that nobody bought or saw.
    pub(super) fn renamed(
        &self,
        (profile, requirement): &(Arc<Profile>, usize),
        is_of: &dyn Fn(&str, &str) -> bool,
    ) -> Option<Renamed> {
        let judgements = self.then.profiles.iter();
        // What is met has no reasons.
        let wanting = judgements.flat_map(|judgement| {
            let findings = judgement.findings.iter();
            findings.filter(|f| is_of(&judgement.rule, &f.requirement)).flat_map(|f| &f.reasons)
        });
        let kit = &self.now.check.vessel.kit;
        let seen = self.records();
        let named = |mark: &str| {
            let found = seen.iter().flat_map(|record| &record.found);
            found.into_iter().any(|found| found.mark.as_deref() == Some(mark))
        };
        let judgements = self.now.check.judgements.iter().filter(|j| j.profile.id == profile.id);
        let findings = judgements.filter_map(|judgement| judgement.finding(*requirement));
        let serving: Vec<&Tool> =
            findings.flat_map(|f| &f.serving).filter_map(|s| kit.get(s.tool)).collect();
        for then in wanting.filter_map(|reason| reason.tool.as_deref()) {
            let Some(old) = self.listed_then.kit.iter().find(|tool| tool.mark == then) else {
                continue;
            };
            if kit.iter().any(|tool| tool.mark == then) || named(then) {
                continue;
            }
            let is_new = |tool: &&&Tool| {
                let known = self.listed_then.kit.iter().any(|old| old.mark == tool.mark);
                let bought = tool.acquired.is_some_and(|day| day > self.then.departure);
                tool.kind == old.kind && !known && !bought && !named(&tool.mark)
            };
            if let Some(new) = serving.iter().find(is_new) {
                return Some(Renamed { then: then.to_owned(), now: new.mark.clone() });
            }
        }
        None
    }

    /// The records that are laid over the vessel now.
    fn records(&self) -> Vec<Inspection> {
        let sources = self.now.sources.iter().skip(1);
        let read = |source: &load::Source| {
            load::read_inspection(&source.file, &source.text, self.vocabulary).ok()
        };
        sources.filter_map(read).map(|(inspection, _)| inspection).collect()
    }
}
