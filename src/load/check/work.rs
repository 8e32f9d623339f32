//! Items of a catalogue that change a tool that is aboard: pieces that
//! lengthen it, and work on it.
//!
//! Imports `model`; must not judge whether the tool will do afterwards.

use crate::load::check::goods::GoodsReader;
use crate::load::check::value::{choice, count, figure, filled, kind, missing};
use crate::load::form::catalogue::DOES;
use crate::load::form::catalogue::MOST_PER_TOOL;
use crate::load::form::catalogue::{LengthensForm, ServiceForm};
use crate::load::form::loose::Texts;
use crate::load::read::problem::Problem;
use crate::load::read::spot::Spot;
use crate::measure::{Length, QuantityKind};
use crate::model::catalogue::Gives;
use crate::model::vocabulary::{Class, KindId};

/// The change that a piece makes to the tool that it is put on.
const LENGTHENED: &str = "lengthened";

impl GoodsReader<'_> {
    pub(crate) fn extension(&mut self, form: LengthensForm, spot: &Spot<'_>) -> Option<Gives> {
        let kinds = self.kinds(form.kinds, spot);
        for (at, kind) in &kinds {
            self.judge_lengthens(*kind, &spot.key("kinds").entry(*at));
        }
        let by = self.by(form.by.as_deref(), spot);
        let per_tool = filled(form.per_tool.as_deref())
            .and_then(|text| count(text, 1, MOST_PER_TOOL, &spot.key("per tool"), self.problems));
        let kinds = kinds.into_iter().map(|(_, kind)| kind).collect();
        Some(Gives::Extension { kinds, by: by?, per_tool: per_tool.unwrap_or(1) })
    }

    /// A kind that is lengthened has something that a lengthening changes.
    fn judge_lengthens(&mut self, kind: KindId, spot: &Spot<'_>) {
        let longer = self.vocabulary.changes.get(LENGTHENED);
        let kind = self.vocabulary.kind(kind);
        let changes = match longer {
            Some(Some(retired)) => kind.attributes.iter().any(|id| retired.contains(id)),
            Some(None) => true,
            None => false,
        };
        if !changes {
            self.problems.add(
                Problem::new(spot.place(), "a tool of this kind cannot be lengthened")
                    .offending(&kind.name)
                    .expected("a kind with a handle, a pole, a rope or another length to it"),
            );
        }
    }

    fn by(&mut self, text: Option<&str>, spot: &Spot<'_>) -> Option<Length> {
        let Some(text) = filled(text) else {
            missing(spot, "by", self.problems, "write by how much, like `2 ft`");
            return None;
        };
        let spot = spot.key("by");
        let by = figure(text, QuantityKind::Length, &spot, self.problems)?.length()?;
        if by == Length::ZERO {
            self.problems.add(
                Problem::new(spot.place(), "a length of nothing")
                    .offending(text)
                    .expected("by how much it lengthens a tool, like `2 ft`"),
            );
            return None;
        }
        Some(by)
    }

    pub(crate) fn service(&mut self, form: ServiceForm, spot: &Spot<'_>) -> Option<Gives> {
        let kinds = self.kinds(form.kinds, spot);
        let list = spot.key("does");
        let does = form.does.unwrap_or_default();
        if does.is_empty() {
            let mend = "write `inspection`, `repair` or `sharpening`, in brackets";
            missing(spot, "does", self.problems, mend);
        }
        let (mut mends, mut inspects) = (false, false);
        for (at, text) in does.iter().enumerate() {
            if self.problems.is_full() {
                break;
            }
            match choice(text, &DOES, &list.entry(at), self.problems) {
                Some(true) => inspects = true,
                Some(false) => mends = true,
                None => {}
            }
        }
        let kinds = kinds.into_iter().map(|(_, kind)| kind).collect();
        Some(Gives::Service { kinds, mends, inspects })
    }

    /// Kinds of tool, each once, with where it stands; at least one.
    fn kinds(&mut self, written: Option<Texts>, spot: &Spot<'_>) -> Vec<(usize, KindId)> {
        let list = spot.key("kinds");
        let texts = written.unwrap_or_default();
        if texts.is_empty() {
            let mend = "write the kinds of tool that it is for, in brackets";
            missing(spot, "kinds", self.problems, mend);
        }
        let mut kinds: Vec<(usize, KindId)> = Vec::with_capacity(texts.len());
        for (at, text) in texts.iter().enumerate() {
            if self.problems.is_full() {
                break;
            }
            let spot = list.entry(at);
            let found = kind(text, &[Class::Tool], self.vocabulary, &spot, self.problems);
            if let Some(found) = found.filter(|found| kinds.iter().all(|(_, one)| one != found)) {
                kinds.push((at, found));
            }
        }
        kinds
    }
}
