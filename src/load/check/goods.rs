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
use crate::load::read::fault::Fault;
use crate::load::read::spot::{Spot, filled, said};
use crate::measure::{Length, QuantityKind};
use crate::model::catalogue::{Fits, Given, Gives};
use crate::model::vessel::{State, Tool};
use crate::model::vocabulary::{Class, KindId, Vocabulary};
use std::collections::BTreeMap;

/// Keys of a vessel's tool that one for sale does not have.
const OF_A_VESSEL: [(&str, Fault); 8] = [
    ("mark", Fault::SoldWithMark),
    ("condition", Fault::SoldWithCondition),
    ("broken", Fault::SoldWithCondition),
    ("where", Fault::SoldWithPlace),
    ("acquired", Fault::SoldWithDay),
    ("expires", Fault::SoldWithExpiry),
    ("changes", Fault::SoldWithChanges),
    ("remark", Fault::SoldWithRemark),
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
        let fault = match forms.len() {
            0 => Some(Fault::EmptySet(MOST_OF_A_SET)),
            tools if tools > MOST_OF_A_SET => {
                Some(Fault::SetTooLarge { tools, most: MOST_OF_A_SET })
            }
            _ => None,
        };
        if let Some(fault) = fault {
            return spot.wrong_key("tools", fault).none();
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
            let mut attributes = reader.attributes(attributes, &[kind], spot);
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
        let text = spot.must("kind", filled(text), Fault::NoKind)?;
        let spot = spot.key("kind");
        let fault = match self.words.find_kind(text).map(|kind| self.words.kind(kind).class) {
            Some(Class::Certificate) => Fault::CertificateSold,
            Some(Class::Gear) => Fault::GearSold,
            _ => return spot.kind_of(text, &Class::CARRIED, self.words),
        };
        spot.wrong(fault).of(text).none()
    }
}

/// An item gives exactly one thing.
fn judge_one(written: &[bool; 4], spot: &Spot<'_>) {
    let mut keys = GIVING.iter().zip(written).filter(|(_, written)| **written);
    let (first, second) = (keys.next(), keys.next());
    if let Some((key, _)) = second {
        spot.wrong_key(key, Fault::GivesTwo).of(key).tell();
    }
    if first.is_none() {
        spot.wrong(Fault::GivesNothing).lacking(GIVING).tell();
    }
}

/// The attributes without keys that only a vessel's tool has; these are
/// told, with what takes their place.
fn without_keys_of_a_vessel(mut written: WrittenAttributes, spot: &Spot<'_>) -> WrittenAttributes {
    written.retain(|(key, _)| {
        let known = OF_A_VESSEL.iter().find(|(known, _)| known == key);
        if let Some((_, fault)) = known {
            spot.wrong_key(key, fault.clone()).of(key).tell();
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
                list.entry(index).key("number").wrong(Fault::NumberTwin).of(number).tell();
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
            let fault = Fault::NumberOfSetTool(list.entry(*set).place().key);
            list.entry(index).key("number").wrong(fault).of(number).tell();
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
        spot.missing("fits", Fault::NoFits);
    }
    if class.is_some_and(|class| class != Class::Spare) && !texts.is_empty() {
        spot.wrong_key("fits", Fault::FitsWithoutSpares).of("fits").tell();
        return Vec::new();
    }
    spot.each("fits", &texts, |at, text| fit(said(text)?, numbers, words, at))
}

fn fit(text: &str, numbers: &Numbers, words: &Vocabulary, spot: &Spot<'_>) -> Option<Fits> {
    match numbers.known.get(&text.to_lowercase()) {
        Some((number, true)) => return Some(Fits::Item(number.clone())),
        Some(_) => return spot.wrong(Fault::FitsNoTool).of(text).none(),
        None => {}
    }
    if words.find_kind(text).is_some() {
        return spot.kind_of(text, &[Class::Tool], words).map(Fits::Kind);
    }
    let numbers = numbers.known.values().map(|(number, _)| number.as_str());
    let tools = words.kinds.iter().filter(|kind| kind.class == Class::Tool);
    let known = numbers.chain(tools.flat_map(kind_names));
    spot.wrong(Fault::FitsUnknown).unlike(text, known).none()
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
    let by = spot.must("by", filled(&form.by), Fault::NoAddedLength);
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
        spot.wrong(Fault::NotLengthened).of(&kind.name).tell();
    }
}

fn length_of(text: &str, spot: &Spot<'_>) -> Option<Length> {
    let by = spot.figure_of(text, QuantityKind::Length)?.length()?;
    if by != Length::ZERO {
        return Some(by);
    }
    spot.wrong(Fault::LengthOfNothing).of(text).none()
}

/// Work on tools.
pub(crate) fn service(form: ServiceForm, words: &Vocabulary, spot: &Spot<'_>) -> Option<Gives> {
    let kinds = kinds(form.kinds, words, spot);
    let does = form.does.unwrap_or_default();
    if does.is_empty() {
        spot.missing("does", Fault::NoService);
    }
    let does = spot.each("does", &does, |at, text| at.word_of(text, &DOES));
    let kinds = kinds.into_iter().map(|(_, kind)| kind).collect();
    Some(Gives::Service { kinds, mends: does.contains(&false), inspects: does.contains(&true) })
}

/// Kinds of tool, each once, with where it stands; at least one.
fn kinds(written: Option<Texts>, words: &Vocabulary, spot: &Spot<'_>) -> Vec<(usize, KindId)> {
    let texts = written.unwrap_or_default();
    if texts.is_empty() {
        spot.missing("kinds", Fault::NoKinds);
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
