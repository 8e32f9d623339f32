//! Rows for what is not on the list: what is asked now and wanting, and what
//! is asked above the listed freeboard.
//!
//! Imports `model` and the words beside it. Where the vessel would be asked
//! for more was found by the engine, which judged it there.

use super::asks::{Asks, placed};
use super::rows::{Asked, Group, Plan, Row, Thing, merged};
use super::shared::rule_of;
use crate::model::check::Check;
use crate::model::finding::Outcome;
use crate::model::profile::Requirement;
use crate::model::reason::Reason;
use crate::model::rule::{Condition, Need};
use crate::report::words::{Words, sheet as said};

impl<'a> Plan<'a, '_> {
    /// What is asked and not on the list, or not often enough.
    pub(super) fn look_for(&self) -> Group<'a> {
        let missing = self.asked().filter(|asked| asked.finding.outcome != Outcome::Met);
        let rows = missing.filter_map(|asked| {
            let wanting = |reason: &Reason| {
                matches!(
                    reason,
                    Reason::NothingAboard { .. }
                        | Reason::TooFew { .. }
                        | Reason::TooFewTypes { .. }
                        | Reason::NotListed { .. }
                )
            };
            let requirement = asked.requirement;
            let certificates = matches!(requirement.need, Need::Certificates { .. });
            let reason = asked.finding.reasons.iter().find(|because| wanting(&because.reason));
            let nothing = self.nothing_listed(requirement);
            if certificates || (reason.is_none() && !nothing) {
                return None;
            }
            let complete = match reason.map(|because| &because.reason) {
                Some(Reason::TooFewTypes { complete, .. }) => complete.as_slice(),
                _ => &[],
            };
            let mut row = self.wanted(&asked, complete);
            row.serve(self.serves(&asked, Vec::new()));
            Some(row)
        });
        let place = self.subject.locale.sheet_look_for().to_owned();
        Group { place, rows: merged(rows) }
    }

    fn wanted(&self, asked: &Asked<'a>, complete: &[String]) -> Row<'a> {
        let mut row = self.row(Thing::LookFor);
        let rule = rule_of(self.check, asked.judgement);
        let mut boxes = Asks { rule, ..Asks::default() };
        let notes = choices(&asked.words, asked.requirement, complete, &mut boxes);
        row.asks = Asks { notes, ..boxes };
        row.several = match placed(asked.requirement).as_slice() {
            [only] => only.member.is_some_and(|member| member.count > 1),
            _ => false,
        };
        row
    }

    fn nothing_listed(&self, requirement: &Requirement) -> bool {
        let vessel = &self.check.vessel;
        let kinds = requirement.kinds();
        match requirement.need {
            Need::Tools { .. } => !vessel.kit.iter().any(|tool| kinds.contains(&tool.kind)),
            Need::Gear { .. } => {
                let mut pieces = vessel.hooks.iter().chain(&vessel.lines).flatten();
                !pieces.any(|piece| kinds.contains(&piece.tool.kind))
            }
            Need::Certificates { .. } => false,
        }
    }

    /// What is asked of the same vessel above its listed freeboard and not at
    /// it: an inspector who measures more has to write it somewhere.
    pub(super) fn above(&self, above: &'a Check) -> Vec<Group<'a>> {
        let Some(listed) = self.check.vessel.freeboard.highest() else { return Vec::new() };
        let known = |asked: &Asked<'a>| {
            self.asked().any(|here| {
                here.judgement.profile.id == asked.judgement.profile.id
                    && here.finding.requirement == asked.finding.requirement
            })
        };
        let mut headed: Vec<(String, Vec<Row<'a>>)> = Vec::new();
        for asked in self.asked_in(above).filter(|asked| !known(asked)) {
            let mut row = self.holders(&asked).unwrap_or_else(|| self.wanted(&asked, &[]));
            row.asks.notes.extend(self.listed_of(asked.requirement));
            let others = asked.requirement.when.iter();
            let others = others.filter(|when| !matches!(when, Condition::Freeboard { .. }));
            let others: Vec<_> = others.cloned().collect();
            row.serve(self.serves_where(&asked, asked.words.only_where(&others), Vec::new()));
            let heading = asked.words.asked_above(asked.requirement, listed);
            match headed.iter_mut().find(|(known, _)| *known == heading) {
                Some((_, rows)) => rows.push(row),
                None => headed.push((heading, vec![row])),
            }
        }
        let group = |(heading, rows): (String, Vec<Row<'a>>)| Group {
            place: said::near_above(&heading, self.subject.locale),
            rows: merged(rows.into_iter()),
        };
        headed.into_iter().map(group).collect()
    }

    /// The tools of the list that may serve it.
    fn listed_of(&self, requirement: &Requirement) -> Option<String> {
        let kinds = requirement.kinds();
        let marks = self.check.vessel.kit.iter().filter(|tool| kinds.contains(&tool.kind));
        let marks: Vec<_> = marks.map(|tool| tool.mark.as_str()).collect();
        (!marks.is_empty()).then(|| self.subject.locale.sheet_on_the_list(&marks.join(", ")))
    }
}

/// What will do, where something has to be looked for: boxes for a single
/// thing, texts for several to choose from.
fn choices(
    words: &Words<'_>,
    requirement: &Requirement,
    complete: &[String],
    boxes: &mut Asks,
) -> Vec<String> {
    if let Need::Tools { least, types, .. } = &requirement.need
        && types.len() > 1
    {
        let open = types.iter().filter_map(|of_type| of_type.name.clone());
        let open: Vec<_> = open.filter(|name| !complete.contains(name)).collect();
        let wanting = least.saturating_sub(u32::try_from(complete.len()).unwrap_or(u32::MAX));
        return vec![words.locale.sheet_more_of(&wanting, &open.join("; "))];
    }
    let all = placed(requirement);
    if let [only] = all.as_slice() {
        boxes.add(words, requirement, *only);
        let notes = std::mem::take(&mut boxes.notes);
        let kind = words.vocabulary.kind(only.spec.kind).name.clone();
        let count = only.member.map_or(1, |member| member.count);
        let kind = if count > 1 { words.locale.sheet_several_of(&count, &kind) } else { kind };
        return std::iter::once(kind).chain(notes).collect();
    }
    let texts = all.iter().map(|placed| {
        let mut asks = Asks::default();
        asks.add(words, requirement, *placed);
        let kind = &words.vocabulary.kind(placed.spec.kind).name;
        let asked = asks.in_words(words.vocabulary, words.locale);
        if asked.is_empty() { kind.clone() } else { format!("{kind}: {asked}") }
    });
    vec![
        texts
            .reduce(|so_far, next| words.locale.sheet_or_another(&so_far, &next))
            .unwrap_or_default(),
    ]
}
