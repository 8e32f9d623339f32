//! Items of a catalogue that change a tool that is aboard: pieces that
//! lengthen it, and work on it.
//!
//! Imports `model`; must not judge whether the tool will do afterwards.

use crate::load::form::catalogue::{DOES, LengthensForm, MOST_PER_TOOL, ServiceForm};
use crate::load::form::loose::Texts;
use crate::load::read::spot::{Spot, filled};
use crate::measure::{Length, QuantityKind};
use crate::model::catalogue::Gives;
use crate::model::vocabulary::{Class, KindId, Vocabulary};

/// The change that a piece makes to the tool that it is put on.
const LENGTHENED: &str = "lengthened";

/// A piece that lengthens tools.
pub(crate) fn extension(form: LengthensForm, words: &Vocabulary, spot: &Spot<'_>) -> Option<Gives> {
    let kinds = kinds(form.kinds, words, spot);
    let list = spot.key("kinds");
    for (at, kind) in &kinds {
        judge_lengthens(*kind, words, &list.entry(*at));
    }
    let by = spot.must("by", filled(&form.by), "write by how much, like `2 ft`");
    let by = by.and_then(|text| length_of(text, &spot.key("by")));
    let per_tool = spot.count("per tool", &form.per_tool, 1, MOST_PER_TOOL);
    let kinds = kinds.into_iter().map(|(_, kind)| kind).collect();
    Some(Gives::Extension { kinds, by: by?, per_tool: per_tool.unwrap_or(1) })
}

/// A kind that is lengthened has something that a lengthening changes.
fn judge_lengthens(kind: KindId, words: &Vocabulary, spot: &Spot<'_>) {
    let kind = words.kind(kind);
    let changes = match words.changes.get(LENGTHENED) {
        Some(Some(retired)) => kind.attributes.iter().any(|id| retired.contains(id)),
        Some(None) => true,
        None => false,
    };
    if !changes {
        spot.wrong("a tool of this kind cannot be lengthened")
            .of(&kind.name)
            .expected("a kind with a handle, a pole, a rope or another length to it")
            .tell();
    }
}

fn length_of(text: &str, spot: &Spot<'_>) -> Option<Length> {
    let by = spot.figure_of(text, QuantityKind::Length)?.length()?;
    if by != Length::ZERO {
        return Some(by);
    }
    let wrong = spot.wrong("a length of nothing").of(text);
    wrong.expected("by how much it lengthens a tool, like `2 ft`").none()
}

/// Work on tools.
pub(crate) fn service(form: ServiceForm, words: &Vocabulary, spot: &Spot<'_>) -> Option<Gives> {
    let kinds = kinds(form.kinds, words, spot);
    let does = form.does.unwrap_or_default();
    if does.is_empty() {
        spot.missing("does", "write `inspection`, `repair` or `sharpening`, in brackets");
    }
    let does = spot.each("does", &does, |at, text| at.word_of(text, &DOES));
    let kinds = kinds.into_iter().map(|(_, kind)| kind).collect();
    Some(Gives::Service { kinds, mends: does.contains(&false), inspects: does.contains(&true) })
}

/// Kinds of tool, each once, with where it stands; at least one.
fn kinds(written: Option<Texts>, words: &Vocabulary, spot: &Spot<'_>) -> Vec<(usize, KindId)> {
    let texts = written.unwrap_or_default();
    if texts.is_empty() {
        spot.missing("kinds", "write the kinds of tool that it is for, in brackets");
    }
    let mut kinds: Vec<(usize, KindId)> = Vec::with_capacity(texts.len());
    for (at, kind) in spot.each("kinds", texts.iter().enumerate(), |here, (at, text)| {
        Some((at, here.kind_of(text, &[Class::Tool], words)?))
    }) {
        if kinds.iter().all(|(_, one)| *one != kind) {
            kinds.push((at, kind));
        }
    }
    kinds
}
