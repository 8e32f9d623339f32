//! Attributes of a tool and their readings.
//!
//! Imports `model` and `measure`; what is not known is no reading.

use crate::load::check::value::{
    choice, day, figure, figure_of, filled, flag, is_unknown, kept, same_word,
};
use crate::load::form::loose::{Loose, Single};
use crate::load::form::vessel::HOW;
use crate::load::form::vessel::ReadingForm;
use crate::load::read::limits::LONGEST_REMARK;
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, nearest, or_list};
use crate::measure::Day;
use crate::model::vessel::{Datum, How, Reading};
use crate::model::vocabulary::{Attribute, AttributeId, AttributeShape, Kind, KindId, Vocabulary};
use std::sync::Arc;

/// Attributes as they are written: open keys, in order.
pub(crate) type WrittenAttributes = Vec<(String, Option<Loose<ReadingForm>>)>;

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
    pub(crate) vocabulary: &'a Vocabulary,
    /// What plain figures leave unsaid.
    pub(crate) unsaid: &'a Unsaid,
    /// The fixed keys that stand beside the attributes.
    pub(crate) fixed: &'static [&'static str],
}

impl AttributeReader<'_> {
    /// The attributes of a tool. Of a kind that is not known, any attribute
    /// of the vocabulary is taken.
    pub(crate) fn attributes(
        &self,
        written: WrittenAttributes,
        kind: Option<KindId>,
        spot: &Spot<'_>,
        problems: &mut Problems,
    ) -> Attributes {
        let kind = kind.map(|kind| self.vocabulary.kind(kind));
        let mut attributes = Attributes::with_capacity(written.len());
        let mut seen: Vec<AttributeId> = Vec::with_capacity(written.len());
        for (key, value) in written {
            let spot = spot.key(&key);
            let Some(id) = self.find(&key, kind, &spot, problems) else { continue };
            if seen.contains(&id) {
                problems.add_at_key(
                    Problem::new(spot.place(), "this attribute is written twice")
                        .offending(&key)
                        .mend("write several readings of one attribute as a list"),
                );
                continue;
            }
            seen.push(id);
            let readings = value
                .map(|value| self.readings(value, self.vocabulary.attribute(id), &spot, problems));
            if let Some(readings) = readings.filter(|readings| !readings.is_empty()) {
                attributes.push((id, readings));
            }
        }
        attributes
    }

    fn find(
        &self,
        key: &str,
        kind: Option<&Kind>,
        spot: &Spot<'_>,
        problems: &mut Problems,
    ) -> Option<AttributeId> {
        let own = kind.map_or(&[][..], |kind| &kind.attributes);
        if let Some(id) = own.iter().find(|id| self.vocabulary.attribute(**id).id == key) {
            return Some(*id);
        }
        let known = self.vocabulary.find_attribute(key);
        let belongs = |id: &AttributeId| kind.is_none_or(|kind| kind.attributes.contains(id));
        if let Some(id) = known.filter(belongs) {
            return Some(id);
        }
        let name = |id: &AttributeId| self.vocabulary.attribute(*id).id.as_str();
        let own: Vec<&str> = match kind {
            Some(kind) => kind.attributes.iter().map(name).collect(),
            None => self.vocabulary.attributes.iter().map(|one| one.id.as_str()).collect(),
        };
        let meant = nearest(key, own.iter().copied().chain(self.fixed.iter().copied()));
        let what = match (known, kind) {
            (Some(_), Some(kind)) => format!("`{}` has no such attribute", kind.name),
            _ => "no such key or attribute is known here".to_owned(),
        };
        let problem = Problem::new(spot.place(), what).offending(key);
        let problem = match (meant, kind) {
            (None, Some(_)) if !own.is_empty() && own.len() <= 12 => {
                problem.expected(format!("one of its attributes: {}", or_list(&own)))
            }
            _ => problem,
        };
        problems.add_at_key(problem.mend_if(did_you_mean(meant)));
        None
    }

    fn readings(
        &self,
        written: Loose<ReadingForm>,
        attribute: &Attribute,
        spot: &Spot<'_>,
        problems: &mut Problems,
    ) -> Vec<Reading> {
        match written {
            Loose::One(one) => self.reading(one, attribute, spot, problems).into_iter().collect(),
            Loose::Many(many) => many
                .into_iter()
                .enumerate()
                .filter_map(|(i, one)| self.reading(one, attribute, &spot.entry(i), problems))
                .collect(),
        }
    }

    fn reading(
        &self,
        written: Single<ReadingForm>,
        attribute: &Attribute,
        spot: &Spot<'_>,
        problems: &mut Problems,
    ) -> Option<Reading> {
        match written {
            Single::Plain(text) => {
                let datum = datum(text, attribute, spot, problems)?;
                let (by, on) = (self.unsaid.by.clone(), self.unsaid.on);
                Some(Reading { datum, by, on, how: self.unsaid.how, error: None })
            }
            Single::Form(form) => self.long_reading(*form, attribute, spot, problems),
        }
    }

    fn long_reading(
        &self,
        form: ReadingForm,
        attribute: &Attribute,
        spot: &Spot<'_>,
        problems: &mut Problems,
    ) -> Option<Reading> {
        let on = day(form.on.as_deref(), &spot.key("on"), problems);
        let (by, on) = self.unsaid.taker(kept(form.by), on);
        let how = filled(form.how.as_deref())
            .and_then(|text| choice(text, &HOW, &spot.key("how"), problems))
            .unwrap_or(self.unsaid.how);
        let error = filled(form.error.as_deref()).and_then(|text| {
            let spot = spot.key("error");
            match attribute.shape {
                AttributeShape::Quantity(kind) => figure(text, kind, &spot, problems),
                _ => {
                    let what = "only a measured quantity has a tape error";
                    problems.add(Problem::new(spot.place(), what).offending(text));
                    None
                }
            }
        });
        let datum = datum(kept(form.value)?, attribute, &spot.key("value"), problems)?;
        Some(Reading { datum, by, on, how, error })
    }
}

/// What a text says of an attribute; none where it is not known.
fn datum(
    text: String,
    attribute: &Attribute,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<Datum> {
    if is_unknown(&text) {
        return None;
    }
    match &attribute.shape {
        AttributeShape::Quantity(kind) => figure_of(text, *kind, spot, problems).map(Datum::Figure),
        AttributeShape::Feature => flag(&text, spot, problems).map(Datum::Feature),
        AttributeShape::Choice(words) => {
            let word = text.trim();
            if let Some(known) = words.iter().find(|known| same_word(known, word)) {
                return Some(Datum::Word(known.clone()));
            }
            let names: Vec<&str> = words.iter().map(String::as_str).collect();
            problems.add(
                Problem::new(spot.place(), format!("`{}` knows no such word", attribute.id))
                    .offending(&text)
                    .expected(or_list(&names))
                    .mend_if(did_you_mean(nearest(word, names.iter().copied()))),
            );
            None
        }
        AttributeShape::Name => {
            if text.chars().count() as u64 > LONGEST_REMARK {
                problems.add(
                    Problem::new(spot.place(), "this text is too long")
                        .offending(&text)
                        .expected(format!("at most {LONGEST_REMARK} characters")),
                );
                return None;
            }
            Some(Datum::Word(text.trim().to_lowercase()))
        }
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
    for (id, readings) in attributes.iter_mut() {
        if is_retired(*id) {
            readings.retain(|reading| reading.on.is_some_and(|on| on > changed_on));
        }
    }
    attributes.retain(|(_, readings)| !readings.is_empty());
}
