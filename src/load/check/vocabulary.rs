//! From the vocabulary as written to the vocabulary that is used.
//!
//! Imports `model`; refuses names that would mean two things.

use crate::load::check::value::{choice, filled, flag, kept};
use crate::load::form::loose::{Single, Words};
use crate::load::form::open::Open;
use crate::load::form::vocabulary::CLASSES;
use crate::load::form::vocabulary::TOLD;
use crate::load::form::vocabulary::Told;
use crate::load::form::vocabulary::{AttributeForm, KindForm, TagForm, VocabularyFile};
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, nearest};
use crate::measure::QuantityKind;
use crate::model::vocabulary::{
    Attribute, AttributeId, AttributeShape, Class, Kind, KindId, Tag, Vocabulary, fold,
};
use std::collections::BTreeMap;

/// Checks a vocabulary.
pub(crate) fn check_vocabulary(
    written: VocabularyFile,
    top: &Spot<'_>,
    problems: &mut Problems,
) -> Vocabulary {
    let mut vocabulary = Vocabulary::default();
    let attributes = written.attributes.unwrap_or_default();
    let kinds = written.kinds.unwrap_or_default();
    add_attributes(attributes, &top.key("attributes"), &mut vocabulary, problems);
    add_kinds(kinds, &top.key("kinds"), &mut vocabulary, problems);
    vocabulary.permits = tags(written.permits, &top.key("permits"), problems);
    vocabulary.gears = tags(written.gear, &top.key("gear"), problems);
    vocabulary.areas = tags(written.areas, &top.key("areas"), problems);
    for (id, name) in written.vessel_features.unwrap_or_default().0 {
        check_id(&id, &top.key("vessel features").key(&id), problems);
        let name = kept(name).unwrap_or_else(|| id.clone());
        vocabulary.vessel_features.insert(id, name);
    }
    let changes = top.key("changes");
    for (what, retires) in written.changes.unwrap_or_default().0 {
        let retired = retired(retires, &changes.key(&what), &vocabulary, problems);
        vocabulary.changes.insert(what, retired);
    }
    vocabulary
}

/// Ids are lower-case letters, digits and hyphens, so that they can be
/// written without quotes and searched in any spelling.
pub(crate) fn check_id(id: &str, spot: &Spot<'_>, problems: &mut Problems) -> bool {
    let good = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    if !id.is_empty() && id.chars().all(good) {
        return true;
    }
    problems.add_at_key(
        Problem::new(spot.place(), "this is not an id")
            .offending(id)
            .expected("lower-case letters, digits and hyphens"),
    );
    false
}

fn add_attributes(
    written: Open<AttributeForm>,
    spot: &Spot<'_>,
    vocabulary: &mut Vocabulary,
    problems: &mut Problems,
) {
    for (id, form) in written.0 {
        let spot = spot.key(&id);
        if !check_id(&id, &spot, problems) {
            continue;
        }
        let form = form.unwrap_or_default();
        let shape = shape(&form, &spot, problems);
        let yes = |text: &Option<String>, key, otherwise, problems: &mut Problems| {
            filled(text.as_deref())
                .and_then(|text| flag(text, &spot.key(key), problems))
                .unwrap_or(otherwise)
        };
        let attribute = Attribute {
            shown: yes(&form.shown, "shown", true, problems),
            lengthens: yes(&form.lengthens, "lengthens", false, problems),
            name: kept(form.name).unwrap_or_else(|| id.replace('-', " ")),
            shape,
            measure: kept(form.measure),
            may_be: form.may_be.into_iter().flatten().map(|(word, may)| (word, may.0)).collect(),
            id: id.clone(),
        };
        check_may_be(&attribute, &spot, problems);
        if attribute.lengthens && attribute.shape != AttributeShape::Quantity(QuantityKind::Length)
        {
            let place = spot.key("lengthens").place();
            problems.add(Problem::new(place, "only a length can be lengthened"));
        }
        let index = AttributeId(u16::try_from(vocabulary.attributes.len()).unwrap_or(u16::MAX));
        vocabulary.attribute_names.insert(attribute.id.clone(), index);
        vocabulary.attributes.push(attribute);
    }
}

/// Words that leave others open, and those others, are words of the choice.
fn check_may_be(attribute: &Attribute, spot: &Spot<'_>, problems: &mut Problems) {
    let known: &[String] = match &attribute.shape {
        AttributeShape::Choice(words) => words,
        _ => &[],
    };
    for word in attribute.may_be.iter().flat_map(|(word, others)| others.iter().chain([word])) {
        if !known.contains(word) {
            problems.add(
                Problem::new(spot.key("may be").place(), "no such word is in the choice")
                    .offending(word),
            );
        }
    }
}

fn shape(form: &AttributeForm, spot: &Spot<'_>, problems: &mut Problems) -> AttributeShape {
    let written = filled(form.quantity.as_deref());
    if written.is_none() {
        crate::load::check::value::missing(
            spot,
            "quantity",
            problems,
            "write `quantity: length` or the like",
        );
    }
    let told = written.and_then(|text| choice(text, &TOLD, &spot.key("quantity"), problems));
    let words: Vec<String> =
        form.words.iter().flatten().map(|word| word.trim().to_owned()).collect();
    let listed = form.words.is_some();
    match told {
        Some(Told::Choice) => {
            if words.is_empty() {
                crate::load::check::value::missing(
                    spot,
                    "words",
                    problems,
                    "list the words of the choice",
                );
            }
            return AttributeShape::Choice(words);
        }
        Some(_) if listed => problems.add(
            Problem::new(spot.key("words").place(), "only a choice has words")
                .mend("write `quantity: choice`, or take the words away"),
        ),
        _ => {}
    }
    match told {
        Some(Told::Quantity(kind)) => AttributeShape::Quantity(kind),
        Some(Told::Feature) => AttributeShape::Feature,
        _ => AttributeShape::Name,
    }
}

fn add_kinds(
    written: Open<KindForm>,
    spot: &Spot<'_>,
    vocabulary: &mut Vocabulary,
    problems: &mut Problems,
) {
    for (id, form) in written.0 {
        let spot = spot.key(&id);
        if !check_id(&id, &spot, problems) {
            continue;
        }
        let form = form.unwrap_or_default();
        let class = filled(form.class.as_deref())
            .and_then(|text| choice(text, &CLASSES, &spot.key("class"), problems))
            .unwrap_or(Class::Tool);
        let attributes = spot.key("attributes");
        let mut known = Vec::new();
        for (index, name) in form.attributes.iter().flatten().enumerate() {
            let found = attribute(name, &attributes.entry(index), vocabulary, problems);
            if let Some(found) = found.filter(|found| !known.contains(found)) {
                known.push(found);
            }
        }
        let kind = Kind {
            name: kept(form.name).unwrap_or_else(|| id.replace('-', " ")),
            also: form.also.unwrap_or_default().0,
            class,
            attributes: known,
            id: id.clone(),
        };
        name_kind(&kind, &spot, vocabulary, problems);
        vocabulary.kinds.push(kind);
    }
}

/// Enters every name of a kind; a name that another kind has is a problem.
fn name_kind(kind: &Kind, spot: &Spot<'_>, vocabulary: &mut Vocabulary, problems: &mut Problems) {
    let index = KindId(u16::try_from(vocabulary.kinds.len()).unwrap_or(u16::MAX));
    let names = [&kind.id, &kind.name].into_iter().chain(&kind.also);
    for name in names {
        let taken = vocabulary.kind_names.insert(fold(name), index);
        if let Some(other) = taken.filter(|other| *other != index) {
            let other = vocabulary.kind(other).id.clone();
            problems.add(
                Problem::new(spot.place(), format!("the kind `{other}` has this name too"))
                    .offending(name)
                    .expected("a name that means one kind only"),
            );
        }
    }
}

/// An attribute of the vocabulary.
fn attribute(
    name: &str,
    spot: &Spot<'_>,
    vocabulary: &Vocabulary,
    problems: &mut Problems,
) -> Option<AttributeId> {
    let found = vocabulary.find_attribute(name);
    if found.is_none() {
        let ids = vocabulary.attributes.iter().map(|attribute| attribute.id.as_str());
        problems.add(
            Problem::new(spot.place(), "no attribute of this id is known")
                .offending(name)
                .mend_if(did_you_mean(nearest(name, ids))),
        );
    }
    found
}

fn tags(
    written: Option<Open<Single<TagForm>>>,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> BTreeMap<String, Tag> {
    let mut tags = BTreeMap::new();
    for (id, form) in written.unwrap_or_default().0 {
        check_id(&id, &spot.key(&id), problems);
        let (name, counts_as) = match form {
            Some(Single::Plain(name)) => (Some(name), Vec::new()),
            Some(Single::Form(form)) => (form.name, form.counts_as.unwrap_or_default().0),
            None => (None, Vec::new()),
        };
        let name = kept(name).unwrap_or_else(|| id.clone());
        tags.insert(id, Tag { name, counts_as });
    }
    for (id, tag) in &tags {
        let above = spot.key(id);
        let wider = above.key("counts as");
        for (index, other) in tag.counts_as.iter().enumerate() {
            if !tags.contains_key(other) {
                problems.add(
                    Problem::new(wider.entry(index).place(), "no tag of this id is known")
                        .offending(other)
                        .mend_if(did_you_mean(nearest(other, tags.keys().map(String::as_str)))),
                );
            }
        }
    }
    tags
}

/// The attributes that a change retires; `None` is all of them.
fn retired(
    written: Option<Words>,
    spot: &Spot<'_>,
    vocabulary: &Vocabulary,
    problems: &mut Problems,
) -> Option<Vec<AttributeId>> {
    match written {
        Some(Words::One(word)) if word.trim() == "all" => None,
        Some(Words::One(word)) => {
            problems.add(
                Problem::new(spot.place(), "this is not a list of attributes")
                    .offending(&word)
                    .expected("a list like `[handle]`, or `all`"),
            );
            None
        }
        Some(Words::Many(names)) => Some(
            names
                .iter()
                .enumerate()
                .filter_map(|(i, name)| attribute(name, &spot.entry(i), vocabulary, problems))
                .collect(),
        ),
        None => Some(Vec::new()),
    }
}
