//! The numbers of a catalogue's items, and what its spares fit.
//!
//! Imports `model`; must not judge whether spares will do.

use crate::load::check::value::kind_names;
use crate::load::form::catalogue::{GoodsForm, ItemForm, MOST_OF_A_SET};
use crate::load::form::loose::Texts;
use crate::load::read::spot::{Spot, filled, said};
use crate::model::catalogue::Fits;
use crate::model::vocabulary::{Class, KindId, Vocabulary};
use std::collections::BTreeMap;

/// The numbers of a catalogue's items.
pub(crate) struct Numbers {
    /// By number in small letters: as it is written first, and whether that
    /// item gives a tool that spares could fit.
    known: BTreeMap<String, (String, bool)>,
}

impl Numbers {
    /// The numbers, each told that is there already.
    pub(crate) fn of(forms: &[ItemForm], words: &Vocabulary, list: &Spot<'_>) -> Self {
        let mut known: BTreeMap<String, (String, bool)> = BTreeMap::new();
        for (index, form) in forms.iter().enumerate() {
            let Some(number) = filled(&form.number) else { continue };
            if known.contains_key(&number.to_lowercase()) {
                let (entry, what) = (list.entry(index), "another item has this number too");
                let wrong = entry.key("number").wrong(what).of(number);
                wrong.mend("give each item a number of its own").tell();
                continue;
            }
            let gives_tool = may_give_tool(form, words);
            known.insert(number.to_lowercase(), (number.to_owned(), gives_tool));
        }
        judge_sets(forms, list);
        Self { known }
    }
}

/// The tools of a set are marked with its number and a letter, which no other
/// item may have as its number.
fn judge_sets(forms: &[ItemForm], list: &Spot<'_>) {
    let mut marks = BTreeMap::new();
    for (index, form) in forms.iter().enumerate() {
        let Some(set) = filled(&form.number) else { continue };
        for at in 0..form.tools.iter().flatten().count().min(MOST_OF_A_SET) {
            marks.insert(mark_in_set(set, at).to_lowercase(), index);
        }
    }
    for (index, form) in forms.iter().enumerate() {
        let Some(number) = filled(&form.number) else { continue };
        if let Some(set) = marks.get(&number.to_lowercase()) {
            let what = format!("a tool of the set {} is marked so", list.entry(*set).place().key);
            let entry = list.entry(index);
            let wrong = entry.key("number").wrong(what).of(number);
            wrong.mend("give this item or the set another number").tell();
        }
    }
}

/// Whether a form gives a tool; also where it says nothing that can be read,
/// which is told elsewhere.
fn may_give_tool(form: &ItemForm, words: &Vocabulary) -> bool {
    let mut tools = form.tool.iter().chain(form.tools.iter().flatten()).peekable();
    match tools.peek() {
        Some(_) => tools.any(|tool| is_tool(&tool.form, words)),
        None => form.lengthens.is_none() && form.service.is_none(),
    }
}

/// Whether it is a tool, or of a kind that nobody knows, which is told
/// elsewhere.
fn is_tool(form: &GoodsForm, words: &Vocabulary) -> bool {
    let kind = filled(&form.kind).and_then(|text| words.find_kind(text));
    kind.is_none_or(|kind| words.kind(kind).class == Class::Tool)
}

/// The mark of a tool of a set: the set's number and a letter.
pub(crate) fn mark_in_set(number: &str, at: usize) -> String {
    let letter = u8::try_from(at).map_or('z', |at| char::from(b'a' + at.min(25)));
    format!("{number}{letter}")
}

/// What spares fit. Spares that name nothing serve nobody.
pub(crate) fn fits(
    written: Option<Texts>,
    kind: Option<KindId>,
    numbers: &Numbers,
    words: &Vocabulary,
    spot: &Spot<'_>,
) -> Vec<Fits> {
    let class = kind.map(|kind| words.kind(kind).class);
    let texts = written.unwrap_or_default();
    if class == Some(Class::Spare) && texts.iter().all(|text| said(text).is_none()) {
        let mend = "write the numbers of the items, or the kinds of tool, that they fit";
        spot.missing("fits", mend);
    }
    if class.is_some_and(|class| class != Class::Spare) && !texts.is_empty() {
        spot.wrong_key("fits", "only spares fit another tool")
            .of("fits")
            .mend("take it away, or write the kind of the spares")
            .tell();
        return Vec::new();
    }
    spot.each("fits", &texts, |at, text| fit(said(text)?, numbers, words, at))
}

fn fit(text: &str, numbers: &Numbers, words: &Vocabulary, spot: &Spot<'_>) -> Option<Fits> {
    match numbers.known.get(&text.to_lowercase()) {
        Some((number, true)) => return Some(Fits::Item(number.clone())),
        Some(_) => {
            let wrong = spot.wrong("this item gives no tool that spares could fit").of(text);
            return wrong.expected("the number of an item that is a tool").none();
        }
        None => {}
    }
    if words.find_kind(text).is_some() {
        return spot.kind_of(text, &[Class::Tool], words).map(Fits::Kind);
    }
    let numbers = numbers.known.values().map(|(number, _)| number.as_str());
    let tools = words.kinds.iter().filter(|kind| kind.class == Class::Tool);
    spot.wrong("neither an item of this catalogue nor a kind of tool")
        .unlike(text, numbers.chain(tools.flat_map(kind_names)))
        .expected("the number of an item, or a kind by id, name or synonym")
        .none()
}
