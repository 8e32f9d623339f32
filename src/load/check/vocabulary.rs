//! From the vocabulary as written to the vocabulary that is used.
//!
//! Imports `model`; refuses names that would mean two things.

use crate::load::check::need::clash;
use crate::load::check::value::kept;
use crate::load::form::loose::{Single, Texts, Words};
use crate::load::form::open::Open;
use crate::load::form::vocabulary::{
    AttributeForm, CLASSES, FeatureForm, KindForm, TOLD, TagForm, Told, UNITS, VocabularyFile,
};
use crate::load::read::fault::Fault;
use crate::load::read::spot::{Spot, filled};
use crate::measure::{LengthUnit, QuantityKind};
use crate::model::vocabulary::{
    Attribute, AttributeId, AttributeShape, Class, Kind, KindId, Tag, Tags, Vocabulary, WideKind,
    fold,
};
use std::collections::BTreeMap;

/// Checks a vocabulary.
pub(crate) fn check_vocabulary(written: VocabularyFile, top: &Spot<'_>) -> Vocabulary {
    let mut words = Vocabulary::default();
    let list = top.key("attributes");
    for (id, form) in written.attributes.unwrap_or_default().0 {
        if check_id(&id, &list.key(&id)) {
            let attribute = attribute(id, form.unwrap_or_default(), &list);
            let index = AttributeId(u16::try_from(words.attributes.len()).unwrap_or(u16::MAX));
            words.attribute_names.insert(attribute.id.clone(), index);
            words.attributes.push(attribute);
        }
    }
    let list = top.key("kinds");
    let mut wide = Vec::new();
    for (id, form) in written.kinds.unwrap_or_default().0 {
        if !check_id(&id, &list.key(&id)) {
            continue;
        }
        let form = form.unwrap_or_default();
        if form.may_be.is_some() {
            wide.push((id, form));
            continue;
        }
        let kind = kind(id, form, &words, &list);
        name_kind(&kind, &list.key(&kind.id), &mut words);
        words.kinds.push(kind);
    }
    for (id, form) in wide {
        let wide = wide_kind(id, form, &words, &list);
        let names = wide.names().map(|name| (fold(name), words.wide_kinds.len()));
        words.wide_names.extend(names);
        words.wide_kinds.push(wide);
    }
    words.permits = tags(written.permits, &top.key("permits"));
    words.gears = tags(written.gear, &top.key("gear"));
    words.areas = tags(written.areas, &top.key("areas"));
    words.roles = match written.roles {
        None => Tags(ROLES.map(|role| (role.to_owned(), Tag::default())).into()),
        roles => tags(roles, &top.key("roles")),
    };
    words.vessel_features = features(written.vessel_features, &top.key("vessel features"));
    let changes = top.key("changes");
    for (what, retires) in written.changes.unwrap_or_default().0 {
        let retired = retired(retires, &words, &changes.key(&what));
        words.changes.insert(what, retired);
    }
    words
}

/// Ids are lower-case letters, digits and hyphens, so that they can be
/// written without quotes and searched in any spelling.
pub(crate) fn check_id(id: &str, spot: &Spot<'_>) -> bool {
    let good = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    let is_id = !id.is_empty() && id.chars().all(good);
    if !is_id {
        spot.wrong(Fault::BadId).at_key().of(id).tell();
    }
    is_id
}

fn attribute(id: String, form: AttributeForm, list: &Spot<'_>) -> Attribute {
    let spot = list.key(&id);
    let lengthens = spot.flag("lengthens", &form.lengthens).unwrap_or(false);
    // What can be lengthened is long.
    let usual = if lengthens { LengthUnit::Feet } else { LengthUnit::Inches };
    let attribute = Attribute {
        shape: shape(&form, &spot),
        shown: spot.flag("shown", &form.shown).unwrap_or(true),
        lengthens,
        unit: spot.word("unit", &form.unit, &UNITS).unwrap_or(usual),
        name: kept(form.name).unwrap_or_else(|| id.replace('-', " ")),
        measure: kept(form.measure),
        may_be: form.may_be.into_iter().flatten().map(|(word, may)| (word, may.0)).collect(),
        also: synonyms(form.also, &spot),
        id: id.clone(),
    };
    check_may_be(&attribute, &spot);
    if attribute.lengthens && attribute.shape != AttributeShape::Quantity(QuantityKind::Length) {
        spot.key("lengthens").wrong(Fault::NotLengthenable).tell();
    }
    attribute
}

/// Words that leave others open, and those others, are words of the choice.
fn check_may_be(attribute: &Attribute, spot: &Spot<'_>) {
    let known: &[String] = match &attribute.shape {
        AttributeShape::Choice(words) => words,
        _ => &[],
    };
    let open = attribute.may_be.iter().flat_map(|(word, others)| others.iter().chain([word]));
    for (key, word) in
        open.map(|word| ("may be", word)).chain(attribute.also.values().map(|word| ("also", word)))
    {
        if !known.contains(word) {
            spot.key(key).wrong(Fault::NotInChoice).of(word).tell();
        }
    }
}

/// Other ways to write the words of a choice, in lower case, each of one word.
fn synonyms(written: Option<BTreeMap<String, Texts>>, spot: &Spot<'_>) -> BTreeMap<String, String> {
    let mut synonyms = BTreeMap::new();
    for (word, others) in written.unwrap_or_default() {
        for other in others.iter() {
            let taken = synonyms.insert(other.trim().to_lowercase(), word.clone());
            if let Some(taken) = taken {
                spot.key("also").wrong(Fault::KindNameTwin(taken)).of(other).tell();
            }
        }
    }
    synonyms
}

fn shape(form: &AttributeForm, spot: &Spot<'_>) -> AttributeShape {
    spot.must("quantity", filled(&form.quantity), Fault::NoQuantity);
    let told = spot.word("quantity", &form.quantity, &TOLD);
    if told.is_some_and(|told| !matches!(told, Told::Choice)) && form.words.is_some() {
        spot.key("words").wrong(Fault::WordsWithoutChoice).tell();
    }
    match told {
        Some(Told::Choice) => {
            let words = form.words.iter().flatten().map(|word| word.trim().to_owned());
            let words: Vec<String> = words.collect();
            if words.is_empty() {
                spot.missing("words", Fault::NoChoiceWords);
            }
            AttributeShape::Choice(words)
        }
        Some(Told::Quantity(kind)) => AttributeShape::Quantity(kind),
        Some(Told::Feature) => AttributeShape::Feature,
        Some(Told::Name) | None => AttributeShape::Name,
    }
}

fn kind(id: String, form: KindForm, words: &Vocabulary, list: &Spot<'_>) -> Kind {
    let spot = list.key(&id);
    let class = spot.word("class", &form.class, &CLASSES).unwrap_or(Class::Tool);
    let names = form.attributes.iter().flatten();
    let mut attributes = Vec::new();
    for found in spot.each("attributes", names, |at, name| find_attribute(name, words, at)) {
        if !attributes.contains(&found) {
            attributes.push(found);
        }
    }
    Kind {
        name: kept(form.name).unwrap_or_else(|| id.replace('-', " ")),
        unit: spot.word("unit", &form.unit, &UNITS),
        also: form.also.unwrap_or_default().0,
        class,
        attributes,
        id: id.clone(),
    }
}

/// A word that may be several kinds, all of which are known by now.
fn wide_kind(id: String, form: KindForm, words: &Vocabulary, list: &Spot<'_>) -> WideKind {
    let spot = list.key(&id);
    let strays = [
        ("class", form.class.is_some()),
        ("attributes", form.attributes.is_some()),
        ("unit", form.unit.is_some()),
    ];
    clash(&spot, "may be", &strays);
    let may_be = spot.each("may be", form.may_be.iter().flatten(), |at, name| {
        at.kind_of(name, &Class::CARRIED, words)
    });
    let name = kept(form.name).unwrap_or_else(|| id.replace('-', " "));
    let wide = WideKind { id: id.clone(), name, also: form.also.unwrap_or_default().0, may_be };
    if form.may_be.iter().flatten().count() < 2 {
        spot.key("may be").wrong(Fault::MayBeOne).tell();
    }
    for name in wide.names() {
        let taken = words.find_kind(name).map(|other| words.kind(other).id.as_str());
        let taken = taken.or_else(|| words.find_wide_kind(name).map(|other| other.id.as_str()));
        if let Some(other) = taken {
            spot.wrong(Fault::KindNameTwin(other.to_owned())).of(name).tell();
        }
    }
    wide
}

/// Enters every name of a kind; a name that another kind has is a problem.
fn name_kind(kind: &Kind, spot: &Spot<'_>, words: &mut Vocabulary) {
    let index = KindId(u16::try_from(words.kinds.len()).unwrap_or(u16::MAX));
    for name in [&kind.id, &kind.name].into_iter().chain(&kind.also) {
        let taken = words.kind_names.insert(fold(name), index);
        if let Some(other) = taken.filter(|other| *other != index) {
            spot.wrong(Fault::KindNameTwin(words.kind(other).id.clone())).of(name).tell();
        }
    }
}

/// An attribute of the vocabulary.
fn find_attribute(name: &str, words: &Vocabulary, spot: &Spot<'_>) -> Option<AttributeId> {
    words.find_attribute(name).or_else(|| {
        let ids = words.attributes.iter().map(|attribute| attribute.id.as_str());
        spot.wrong(Fault::UnknownAttribute).unlike(name, ids).none()
    })
}

/// The roles that are known where a vocabulary names none.
const ROLES: [&str; 3] = ["owner", "operator", "crew"];

fn tags(written: Option<Open<Single<TagForm>>>, spot: &Spot<'_>) -> Tags {
    let mut tags = Tags::default();
    for (id, form) in written.unwrap_or_default().0 {
        check_id(&id, &spot.key(&id));
        let form = match form {
            Some(Single::Plain(name)) => TagForm { name: Some(name), ..TagForm::default() },
            Some(Single::Form(form)) => *form,
            None => TagForm::default(),
        };
        let tag = Tag {
            name: kept(form.name).unwrap_or_else(|| id.clone()),
            also: form.also.unwrap_or_default().0,
            counts_as: form.counts_as.unwrap_or_default().0,
            may_be: form.may_be.unwrap_or_default().0,
        };
        tags.0.insert(id, tag);
    }
    // What a tag may be is one that a rule can name.
    let narrow = |id: &str| tags.get(id).is_some_and(|tag| tag.may_be.is_empty());
    for (id, tag) in tags.iter() {
        for (key, others) in [("counts as", &tag.counts_as), ("may be", &tag.may_be)] {
            spot.key(id).each(key, others, |at, other| {
                if !narrow(other) {
                    let known = tags.keys().map(String::as_str).filter(|id| narrow(id));
                    at.wrong(Fault::UnknownWiderTag).unlike(other, known).tell();
                }
                None::<()>
            });
        }
    }
    tags
}

fn features(written: Option<Open<Single<FeatureForm>>>, spot: &Spot<'_>) -> Tags {
    let mut features = Tags::default();
    for (id, form) in written.unwrap_or_default().0 {
        check_id(&id, &spot.key(&id));
        let (name, also) = match form {
            Some(Single::Plain(name)) => (Some(name), None),
            Some(Single::Form(form)) => (form.name, form.also),
            None => (None, None),
        };
        let name = kept(name).unwrap_or_else(|| id.clone());
        let also = also.unwrap_or_default().0;
        features.0.insert(id, Tag { name, also, ..Tag::default() });
    }
    features
}

/// The attributes that a change retires; `None` is all of them.
fn retired(
    written: Option<Words>,
    words: &Vocabulary,
    spot: &Spot<'_>,
) -> Option<Vec<AttributeId>> {
    match written {
        Some(Words::One(word)) if word.trim() == "all" => None,
        Some(Words::One(word)) => spot.wrong(Fault::NoAttributeList).of(&word).none(),
        Some(many) => Some(spot.each_of(many, |at, name| find_attribute(&name, words, at))),
        None => Some(Vec::new()),
    }
}
