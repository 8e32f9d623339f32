//! The numbers of a catalogue's items, and what its spares fit.
//!
//! Imports `model`; must not judge whether spares will do.

use crate::load::check::goods::GoodsReader;

use crate::load::check::value::{filled, kind, kind_names, missing};
use crate::load::form::catalogue::MOST_OF_A_SET;
use crate::load::form::catalogue::{GoodsForm, ItemForm};
use crate::load::form::loose::Texts;
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, nearest};
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
    pub(crate) fn of(
        forms: &[ItemForm],
        vocabulary: &Vocabulary,
        list: &Spot<'_>,
        problems: &mut Problems,
    ) -> Self {
        let mut known: BTreeMap<String, (String, bool)> = BTreeMap::new();
        for (index, form) in forms.iter().enumerate() {
            let Some(number) = filled(form.number.as_deref()) else { continue };
            if known.contains_key(&number.to_lowercase()) {
                problems.add(
                    Problem::new(
                        list.entry(index).key("number").place(),
                        "another item has this number too",
                    )
                    .offending(number)
                    .mend("give each item a number of its own"),
                );
                continue;
            }
            let gives_tool = may_give_tool(form, vocabulary);
            known.insert(number.to_lowercase(), (number.to_owned(), gives_tool));
        }
        judge_sets(forms, list, problems);
        Self { known }
    }
}

/// The tools of a set are marked with its number and a letter, which no other
/// item may have as its number.
fn judge_sets(forms: &[ItemForm], list: &Spot<'_>, problems: &mut Problems) {
    let mut marks = BTreeMap::new();
    for (index, form) in forms.iter().enumerate() {
        let Some(set) = filled(form.number.as_deref()) else { continue };
        for at in 0..form.tools.iter().flatten().count().min(MOST_OF_A_SET) {
            marks.insert(mark_in_set(set, at).to_lowercase(), index);
        }
    }
    for (index, form) in forms.iter().enumerate() {
        let Some(number) = filled(form.number.as_deref()) else { continue };
        if let Some(set) = marks.get(&number.to_lowercase()) {
            let what = format!("a tool of the set {} is marked so", list.entry(*set).place().key);
            problems.add(
                Problem::new(list.entry(index).key("number").place(), what)
                    .offending(number)
                    .mend("give this item or the set another number"),
            );
        }
    }
}

/// Whether a form gives a tool; also where it says nothing that can be read,
/// which is told elsewhere.
fn may_give_tool(form: &ItemForm, vocabulary: &Vocabulary) -> bool {
    let mut tools = form.tool.iter().chain(form.tools.iter().flatten()).peekable();
    match tools.peek() {
        Some(_) => tools.any(|tool| is_tool(tool, vocabulary)),
        None => form.lengthens.is_none() && form.service.is_none(),
    }
}

/// Whether it is a tool, or of a kind that nobody knows, which is told
/// elsewhere.
fn is_tool(form: &GoodsForm, vocabulary: &Vocabulary) -> bool {
    let kind = filled(form.kind.as_deref()).and_then(|text| vocabulary.find_kind(text));
    kind.is_none_or(|kind| vocabulary.kind(kind).class == Class::Tool)
}

/// The mark of a tool of a set: the set's number and a letter.
pub(crate) fn mark_in_set(number: &str, at: usize) -> String {
    let letter = u8::try_from(at).map_or('z', |at| char::from(b'a' + at.min(25)));
    format!("{number}{letter}")
}

impl GoodsReader<'_> {
    /// What spares fit. Spares that name nothing serve nobody.
    pub(crate) fn fits(
        &mut self,
        written: Option<Texts>,
        kind: Option<KindId>,
        spot: &Spot<'_>,
    ) -> Vec<Fits> {
        let class = kind.map(|kind| self.vocabulary.kind(kind).class);
        let texts = written.unwrap_or_default();
        let is_spare = class.is_none_or(|class| class == Class::Spare);
        if class == Some(Class::Spare) && texts.iter().all(|text| filled(Some(text)).is_none()) {
            let mend = "write the numbers of the items, or the kinds of tool, that they fit";
            missing(spot, "fits", self.problems, mend);
        }
        if !is_spare && !texts.is_empty() {
            self.problems.add_at_key(
                Problem::new(spot.key("fits").place(), "only spares fit another tool")
                    .offending("fits")
                    .mend("take it away, or write the kind of the spares"),
            );
            return Vec::new();
        }
        let list = spot.key("fits");
        let mut fits = Vec::with_capacity(texts.len());
        for (at, text) in texts.iter().enumerate() {
            if self.problems.is_full() {
                break;
            }
            fits.extend(self.fit(text, &list.entry(at)));
        }
        fits
    }

    fn fit(&mut self, text: &str, spot: &Spot<'_>) -> Option<Fits> {
        let text = filled(Some(text))?;
        if let Some((number, gives_tool)) = self.numbers.known.get(&text.to_lowercase()) {
            if *gives_tool {
                return Some(Fits::Item(number.clone()));
            }
            self.problems.add(
                Problem::new(spot.place(), "this item gives no tool that spares could fit")
                    .offending(text)
                    .expected("the number of an item that is a tool"),
            );
            return None;
        }
        if self.vocabulary.find_kind(text).is_some() {
            return kind(text, &[Class::Tool], self.vocabulary, spot, self.problems)
                .map(Fits::Kind);
        }
        let numbers = self.numbers.known.values().map(|(number, _)| number.as_str());
        let tools = self.vocabulary.kinds.iter().filter(|kind| kind.class == Class::Tool);
        let meant = nearest(text, numbers.chain(tools.flat_map(kind_names)));
        self.problems.add(
            Problem::new(spot.place(), "neither an item of this catalogue nor a kind of tool")
                .offending(text)
                .expected("the number of an item, or a kind by id, name or synonym")
                .mend_if(did_you_mean(meant)),
        );
        None
    }
}
