//! Attributes of a tool and their readings.
//!
//! Imports `model` and `measure`; what is not known is no reading.

use crate::load::check::value::{is_unknown, kept, same_word};
use crate::load::form::loose::Single;
use crate::load::form::open::{HOW, ReadingForm, WrittenAttributes};
use crate::load::read::limits::LONGEST_REMARK;
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, nearest, or_list};
use crate::measure::Day;
use crate::model::vessel::{Datum, How, Reading};
use crate::model::vocabulary::{Attribute, AttributeId, AttributeShape, Kind, KindId, Vocabulary};
use std::sync::Arc;

/// Attributes as they are used.
pub(crate) type Attributes = Vec<(AttributeId, Vec<Reading>)>;

/// What a plain figure leaves unsaid.
#[derive(Debug, Clone)]
pub(crate) struct Unsaid {
    /// Who took it.
    pub(crate) by: Option<Arc<str>>,
    /// On which day.
    pub(crate) on: Option<Day>,
    /// How.
    pub(crate) how: How,
    /// Whether the day is also that of a reading by somebody else, as it is
    /// in an inspection record.
    pub(crate) same_day: bool,
}

impl Unsaid {
    /// The taker and the day of a reading that may name its own. A reading
    /// by somebody else does not take over the day of the declaration.
    pub(crate) fn taker(
        &self,
        by: Option<String>,
        on: Option<Day>,
    ) -> (Option<Arc<str>>, Option<Day>) {
        match (by.map(Arc::from), on) {
            (Some(by), None) => {
                let shared = self.same_day || self.by.as_ref() == Some(&by);
                (Some(by), self.on.filter(|_| shared))
            }
            (None, Some(on)) => (self.by.clone(), Some(on)),
            (None, None) => (self.by.clone(), self.on),
            said => said,
        }
    }
}

/// Reads attributes against a vocabulary.
pub(crate) struct AttributeReader<'a> {
    /// The words.
    pub(crate) words: &'a Vocabulary,
    /// What plain figures leave unsaid.
    pub(crate) unsaid: &'a Unsaid,
    /// Keys that may stand beside the attributes and that a slip may mean.
    pub(crate) keys: &'a [&'a str],
}

impl AttributeReader<'_> {
    /// The attributes of a tool. Of a kind that is not known, any attribute
    /// of the vocabulary is taken.
    pub(crate) fn attributes(
        &self,
        written: WrittenAttributes,
        kind: Option<KindId>,
        spot: &Spot<'_>,
    ) -> Attributes {
        let kind = kind.map(|kind| self.words.kind(kind));
        let mut attributes = Attributes::with_capacity(written.len());
        let mut seen: Vec<AttributeId> = Vec::with_capacity(written.len());
        for (key, value) in written {
            let Some(id) = self.find(&key, kind, spot) else { continue };
            if seen.contains(&id) {
                spot.wrong_key(&key, "this attribute is written twice")
                    .of(&key)
                    .mend("write several readings of one attribute as a list")
                    .tell();
                continue;
            }
            seen.push(id);
            let (Some(value), attribute) = (value, self.words.attribute(id)) else { continue };
            let read = |at: &Spot<'_>, one| self.reading(one, attribute, at);
            let readings = spot.key(&key).each_of(value, read);
            if !readings.is_empty() {
                attributes.push((id, readings));
            }
        }
        attributes
    }

    fn find(&self, key: &str, kind: Option<&Kind>, spot: &Spot<'_>) -> Option<AttributeId> {
        let name = |id: &AttributeId| self.words.attribute(*id).id.as_str();
        let own = kind.map_or(&[][..], |kind| &kind.attributes);
        if let Some(id) = own.iter().find(|id| name(id) == key) {
            return Some(*id);
        }
        let known = self.words.find_attribute(key);
        let belongs = |id: &AttributeId| kind.is_none_or(|kind| kind.attributes.contains(id));
        if let Some(id) = known.filter(belongs) {
            return Some(id);
        }
        let own: Vec<&str> = match kind {
            Some(kind) => kind.attributes.iter().map(name).collect(),
            None => self.words.attributes.iter().map(|one| one.id.as_str()).collect(),
        };
        let meant = nearest(key, own.iter().copied().chain(self.keys.iter().copied()));
        let what = match (known, kind) {
            (Some(_), Some(kind)) => format!("`{}` has no such attribute", kind.name),
            _ => "no such key or attribute is known here".to_owned(),
        };
        let mut wrong = spot.wrong_key(key, what).of(key).mend_if(did_you_mean(meant));
        if meant.is_none() && kind.is_some() && !own.is_empty() && own.len() <= 12 {
            wrong = wrong.expected(format!("one of its attributes: {}", or_list(&own)));
        }
        wrong.none()
    }

    fn reading(
        &self,
        written: Single<ReadingForm>,
        attribute: &Attribute,
        spot: &Spot<'_>,
    ) -> Option<Reading> {
        let form = match written {
            Single::Plain(text) => {
                let datum = datum(text, attribute, spot)?;
                let (by, on) = (self.unsaid.by.clone(), self.unsaid.on);
                return Some(Reading { datum, by, on, how: self.unsaid.how, error: None });
            }
            Single::Form(form) => *form,
        };
        let (by, on) = self.unsaid.taker(kept(form.by), spot.day("on", &form.on));
        let how = spot.word("how", &form.how, &HOW).unwrap_or(self.unsaid.how);
        let error = spot.read("error", &form.error, |at, text| match attribute.shape {
            AttributeShape::Quantity(kind) => at.figure_of(text, kind),
            _ => at.wrong("only a measured quantity has a tape error").of(text).none(),
        });
        let datum = datum(kept(form.value)?, attribute, &spot.key("value"))?;
        Some(Reading { datum, by, on, how, error })
    }
}

/// What a text says of an attribute; none where it is not known.
fn datum(text: String, attribute: &Attribute, spot: &Spot<'_>) -> Option<Datum> {
    if is_unknown(&text) {
        return None;
    }
    match &attribute.shape {
        AttributeShape::Quantity(kind) => spot.figure_in(text, *kind).map(Datum::Figure),
        AttributeShape::Feature => spot.flag_of(&text).map(Datum::Feature),
        AttributeShape::Choice(words) => {
            let known = words.iter().find(|known| same_word(known, text.trim()));
            known.map(|known| Datum::Word(known.clone())).or_else(|| {
                spot.wrong(format!("`{}` knows no such word", attribute.id))
                    .none_of(&text, words.iter().map(String::as_str))
                    .none()
            })
        }
        AttributeShape::Name if text.chars().count() as u64 > LONGEST_REMARK => spot
            .wrong("this text is too long")
            .of(&text)
            .expected(format!("at most {LONGEST_REMARK} characters"))
            .none(),
        AttributeShape::Name => Some(Datum::Word(text.trim().to_lowercase())),
    }
}

/// Takes away the readings that a change has made worthless: those dated on
/// its day or before, and those without a date.
pub(crate) fn retire(
    attributes: &mut Attributes,
    retired: Option<&[AttributeId]>,
    changed_on: Day,
) {
    let is_retired = |id: AttributeId| retired.is_none_or(|retired| retired.contains(&id));
    for (_, readings) in attributes.iter_mut().filter(|(id, _)| is_retired(*id)) {
        readings.retain(|reading| reading.on.is_some_and(|on| on > changed_on));
    }
    attributes.retain(|(_, readings)| !readings.is_empty());
}
