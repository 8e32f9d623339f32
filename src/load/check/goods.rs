//! What an item of a catalogue gives: tools and sets, what spares fit, longer
//! poles, and work on a tool.
//!
//! Imports `model`; must not judge whether a tool will do, only what is said
//! of it.

use crate::load::check::reading::{AttributeReader, Unsaid};
use crate::load::check::tool::refuse_lost;
use crate::load::check::value::{kept, kind_names};
use crate::load::form::catalogue::{
    DOES, GIVING, GoodsForm, ItemForm, LengthensForm, MOST_OF_A_SET, MOST_PER_TOOL, ServiceForm,
};
use crate::load::form::loose::Texts;
use crate::load::form::open::{Attributed, WrittenAttributes};
use crate::load::form::vessel::LARGEST_LOT;
use crate::load::read::spot::{Spot, filled, said};
use crate::measure::{Length, QuantityKind};
use crate::model::catalogue::{Fits, Given, Gives};
use crate::model::vessel::{State, Tool};
use crate::model::vocabulary::{Class, KindId, Vocabulary};
use std::collections::BTreeMap;

/// Keys of a vessel's tool that one for sale does not have, and what to do.
const OF_A_VESSEL: [(&str, &str); 8] = [
    ("mark", "take it away; its mark is the item's number"),
    ("condition", "take it away; what is sold is serviceable"),
    ("broken", "take it away; what is sold is serviceable"),
    ("where", "take it away; it comes aboard with the delivery"),
    ("acquired", "take it away; it is acquired with the delivery"),
    ("expires", "write how long it is good from its delivery on, like `lasts: 24 months`"),
    ("changes", "write the figures as they are when it is delivered"),
    ("remark", "write it in the item's `description`"),
];

/// Reads what items give.
pub(crate) struct GoodsReader<'a> {
    /// The words.
    pub(crate) words: &'a Vocabulary,
    /// By whom plain figures are, and how they came about.
    pub(crate) unsaid: &'a Unsaid,
    /// The numbers of all items.
    pub(crate) numbers: &'a Numbers,
}

impl GoodsReader<'_> {
    /// What an item gives, and the rest of the form.
    pub(crate) fn gives(&self, mut form: ItemForm, spot: &Spot<'_>) -> (Option<Gives>, ItemForm) {
        let number = filled(&form.number).unwrap_or_default().to_owned();
        let (tool, tools) = (form.tool.take(), form.tools.take());
        let (lengthens, works) = (form.lengthens.take(), form.service.take());
        let written = [tool.is_some(), tools.is_some(), lengthens.is_some(), works.is_some()];
        judge_one(&written, spot);
        // The first of several is what it gives; all of them are read.
        let works = works.and_then(|form| service(form, self.words, &spot.key("service")));
        let lengthens = lengthens.map(|form| extension(form, self.words, &spot.key("lengthens")));
        let tools = tools.map(|forms| self.set(forms, &number, spot));
        let tool = tool.map(|form| self.tool(form, number.clone(), &spot.key("tool")));
        let tool = tool.map(|given| given.map(|given| Gives::Tools(vec![given])));
        (tool.or(tools).or(lengthens).unwrap_or(works), form)
    }

    fn set(
        &self,
        forms: Vec<Attributed<GoodsForm>>,
        number: &str,
        spot: &Spot<'_>,
    ) -> Option<Gives> {
        if forms.is_empty() || forms.len() > MOST_OF_A_SET {
            let what = match forms.len() {
                0 => "a set without tools".to_owned(),
                many => format!("{many} tools in a set are too many"),
            };
            return spot
                .wrong_key("tools", what)
                .expected(format!("from 1 to {MOST_OF_A_SET} tools"))
                .mend("write equal tools as one line with a `count`")
                .none();
        }
        let total = forms.len();
        let given = spot.each("tools", forms.into_iter().enumerate(), |at, (index, form)| {
            self.tool(form, mark_in_set(number, index), at)
        });
        (given.len() == total).then_some(Gives::Tools(given))
    }

    fn tool(&self, written: Attributed<GoodsForm>, mark: String, spot: &Spot<'_>) -> Option<Given> {
        let Attributed { form, keys, attributes } = written;
        let kind = self.kind(&form.kind, spot);
        let attributes = without_keys_of_a_vessel(attributes, spot);
        let attributes = kind.map(|kind| {
            let reader = AttributeReader { words: self.words, unsaid: self.unsaid, keys };
            let mut attributes = reader.attributes(attributes, Some(kind), spot);
            refuse_lost(&mut attributes, self.words, spot);
            attributes
        });
        let number = spot.count("count", &form.count, 1, LARGEST_LOT);
        let inspected = spot.flag("inspected", &form.inspected);
        let lasts = spot.interval("lasts", &form.lasts);
        let fits = fits(form.fits, kind, self.numbers, self.words, spot);
        let mut tool = Tool::bare(mark, kind?, number.unwrap_or(1), spot.place());
        tool.name = kept(form.name);
        tool.attributes = attributes.unwrap_or_default();
        tool.state = State::Serviceable;
        let conforms = form.conforms.into_iter().flatten();
        Some(Given {
            tool,
            conforms: conforms.filter_map(|clause| kept(Some(clause))).collect(),
            inspected: inspected.unwrap_or(false),
            lasts,
            fits,
        })
    }

    fn kind(&self, text: &Option<String>, spot: &Spot<'_>) -> Option<KindId> {
        let text = spot.must("kind", filled(text), "write the kind, like `pliers`")?;
        let spot = spot.key("kind");
        let what = match self.words.find_kind(text).map(|kind| self.words.kind(kind).class) {
            Some(Class::Certificate) => "a certificate is earned, not sold",
            Some(Class::Gear) => "fishing gear is not sold here",
            _ => return spot.kind_of(text, &Class::CARRIED, self.words),
        };
        spot.wrong(what).of(text).expected("a tool, a set of spares or a document").none()
    }
}

/// An item gives exactly one thing.
fn judge_one(written: &[bool; 4], spot: &Spot<'_>) {
    let mut keys = GIVING.iter().zip(written).filter(|(_, written)| **written);
    let (first, second) = (keys.next(), keys.next());
    let expected = "one of `tool`, `tools`, `lengthens` and `service`";
    if let Some((key, _)) = second {
        spot.wrong_key(key, "an item gives one thing only")
            .of(key)
            .expected(expected)
            .mend("write two items, or the tools of a set under `tools`")
            .tell();
    }
    if first.is_none() {
        let wrong = spot.wrong("nothing says what this item gives");
        wrong.expected(expected).lacking(GIVING).tell();
    }
}

/// The attributes without keys that only a vessel's tool has; these are
/// told, with what takes their place.
fn without_keys_of_a_vessel(mut written: WrittenAttributes, spot: &Spot<'_>) -> WrittenAttributes {
    written.retain(|(key, _)| {
        let known = OF_A_VESSEL.iter().find(|(known, _)| known == key);
        if let Some((_, mend)) = known {
            spot.wrong_key(key, "what is sold has no such key").of(key).mend(*mend).tell();
        }
        known.is_none()
    });
    written
}

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
