//! What serves a requirement: tools by their marks, people, pieces of gear.
//!
//! Imports `model` only.

use super::Words;
use crate::model::finding::{Finding, Serving};
use crate::model::rule::Need;
use crate::model::vessel::State;

impl Words<'_> {
    /// Everything that serves a finding that is met: tools, the people whose
    /// certificates count, or the gear that keeps the rule.
    pub(crate) fn all_that_serve(&self, finding: &Finding) -> String {
        let mut texts: Vec<String> =
            finding.serving.iter().map(|serving| self.serving(serving)).collect();
        let people = self.vessel.people.as_deref().unwrap_or_default();
        let certified = finding.certified.iter().filter_map(|person| people.get(*person));
        texts.extend(certified.map(|person| match person.roles.as_slice() {
            [] => person.name.clone(),
            roles => format!("{} ({})", person.name, roles.join(", ")),
        }));
        let requirement = self.requirement(finding.requirement);
        if let Some(Need::Gear { kind, .. }) = requirement.map(|requirement| &requirement.need) {
            let pieces = self.vessel.hooks.iter().chain(&self.vessel.lines).flatten();
            let bound = pieces.filter(|piece| piece.tool.kind == *kind);
            texts.extend(bound.map(|piece| piece.name.clone()));
        }
        texts.join(", ")
    }

    /// A tool that serves: `LC-1`, `PL-1 (2 of 3)`, `SI-1 (counts twice)`.
    fn serving(&self, serving: &Serving) -> String {
        let mark = self.mark(serving.tool);
        let lot = self.tool(serving.tool).map_or(1, |tool| tool.count);
        let many = lot > 1 || serving.count > 1;
        match (many, serving.through.is_some()) {
            (false, false) => mark.to_owned(),
            (false, true) => self.locale.serves_twice(&mark),
            (true, false) => self.locale.serves_part(&mark, &serving.count, &lot),
            (true, true) => self.locale.serves_part_twice(&mark, &serving.count, &lot),
        }
    }

    /// The mark of a tool as it is written; that of the whole lot for the
    /// part of it that is broken.
    pub(crate) fn lot(&self, tool: usize) -> &str {
        self.broken_of(tool).map_or_else(|| self.mark(tool), |(lot, _, _)| lot)
    }

    /// Of the broken part of a lot: the mark of the lot, how many are broken
    /// and how many there are.
    pub(crate) fn broken_of(&self, tool: usize) -> Option<(&str, u32, u32)> {
        let part = self.tool(tool).filter(|tool| tool.state == State::Broken)?;
        let lot = part.broken_part_of()?;
        let whole = self.vessel.kit.iter().find(|tool| tool.mark == lot)?;
        Some((lot, part.count, part.count + whole.count))
    }
}
