//! The vocabulary in print: the words that a vessel's file may use.
//!
//! Imports `model`. For whoever writes an inventory for the first time: which
//! kinds of tool there are, what can be said of each, how it is measured.

use super::Locale;
use super::content::Tone;
use super::render::lines::Page;
use super::words::figures;
use crate::measure::QuantityKind;
use crate::model::vocabulary::{
    Attribute, AttributeShape, Class, Kind, KindId, Tag, Vocabulary, WideKind, fold,
};

/// The longest id that still leaves room for a text beside it.
const LONGEST_BESIDE: usize = 26;

/// The classes of kinds in the order of the page.
const CLASSES: [Class; 5] =
    [Class::Tool, Class::Spare, Class::Document, Class::Gear, Class::Certificate];

/// What the kinds of a class are called, and where they are written in a
/// vessel's file.
fn class(class: Class, locale: Locale) -> (&'static str, &'static str) {
    match class {
        Class::Tool => (locale.words_tools(), locale.words_under_kit()),
        Class::Spare => (locale.words_spares(), locale.words_under_kit_fitting()),
        Class::Document => (locale.words_documents(), locale.words_under_documents()),
        Class::Gear => (locale.words_gear(), locale.words_under_hooks()),
        Class::Certificate => (locale.words_certificates(), locale.words_under_certificates()),
    }
}

/// Every word, no wider than `width`.
pub fn vocabulary(vocabulary: &Vocabulary, locale: Locale, width: usize) -> String {
    let mut page = Page::new(width);
    page.prose(0, Tone::Strong, locale.words_title());
    page.prose(0, Tone::Plain, locale.words_how());
    for of_class in CLASSES {
        let (noun, place) = class(of_class, locale);
        let kinds = vocabulary.kinds.iter().filter(|kind| kind.class == of_class);
        let rows = kinds.map(|kind| row(&kind.id, in_short(vocabulary, kind, locale)));
        let wide = vocabulary.wide_kinds.iter().filter(|wide| {
            wide.may_be.first().is_some_and(|kind| vocabulary.kind(*kind).class == of_class)
        });
        let rows =
            rows.chain(wide.map(|wide| row(&wide.id, wide_in_short(vocabulary, wide, locale))));
        list(&mut page, &locale.words_class(&noun, &place), &rows.collect::<Vec<_>>());
    }
    for (heading, known) in [
        (locale.words_permits(), &vocabulary.permits),
        (locale.words_gears(), &vocabulary.gears),
        (locale.words_areas(), &vocabulary.areas),
    ] {
        let rows = known.iter().map(|(id, known)| row(id, tag(known, locale)));
        list(&mut page, heading, &rows.collect::<Vec<_>>());
    }
    let features = vocabulary.vessel_features.iter();
    let features: Vec<_> = features.map(|(id, feature)| row(id, tag(feature, locale))).collect();
    list(&mut page, locale.words_features(), &features);
    let changes = vocabulary.changes.iter().map(|(what, retired)| {
        let keys = retired.as_ref().map(|ids| ids.iter().map(|id| &vocabulary.attribute(*id).id));
        let text = match keys.map(|keys| keys.cloned().collect::<Vec<_>>()) {
            None => locale.words_change_all().to_owned(),
            Some(keys) if keys.is_empty() => locale.words_change_none().to_owned(),
            Some(keys) => locale.words_change_some(&keys.join(", ")),
        };
        row(what, text)
    });
    list(&mut page, locale.words_changes(), &changes.collect::<Vec<_>>());
    page.gap();
    page.prose(0, Tone::Plain, locale.words_any_tool());
    page.finish()
}

/// An id and what is said of it.
fn row(id: &str, text: String) -> (Tone, Vec<String>) {
    (Tone::Strong, vec![id.to_owned(), text])
}

/// One kind with each of its keys, no wider than `width`.
pub fn kind(vocabulary: &Vocabulary, id: KindId, locale: Locale, width: usize) -> String {
    let kind = vocabulary.kind(id);
    let mut page = Page::new(width);
    page.prose(0, Tone::Strong, &kind.name);
    let words = std::iter::once(&kind.id).chain(&kind.also).map(|word| format!("`{word}`"));
    let words = figures::any_of(&words.collect::<Vec<_>>(), locale);
    page.prose(2, Tone::Plain, &locale.words_may_be_written(&words));
    page.prose(2, Tone::Plain, &locale.words_written(&class(kind.class, locale).1));
    let attributes = kind.attributes.iter().map(|id| vocabulary.attribute(*id));
    let rows: Vec<_> =
        attributes.map(|attribute| row(&attribute.id, told(attribute, locale))).collect();
    page.gap();
    if rows.is_empty() {
        page.prose(2, Tone::Plain, locale.words_no_keys());
    } else {
        page.columns(2, &[24, usize::MAX], &rows);
    }
    page.gap();
    match kind.class {
        Class::Tool | Class::Spare => page.prose(0, Tone::Plain, locale.words_any_tool()),
        Class::Certificate => page.prose(0, Tone::Plain, locale.words_certificate_keys()),
        Class::Document | Class::Gear => {}
    }
    page.finish()
}

/// How an attribute is told, how it is measured, and whether a statement
/// settles it.
fn told(attribute: &Attribute, locale: Locale) -> String {
    let shape = shape(attribute, locale);
    let shows_name = fold(&attribute.name) == attribute.id;
    let first = if shows_name { shape } else { locale.words_named(&attribute.name, &shape) };
    let mut parts = vec![first];
    parts.extend(attribute.measure.iter().map(|how| locale.words_measured(how)));
    if !attribute.shown {
        parts.push(locale.words_statement().to_owned());
    }
    parts.join("; ")
}

fn shape(attribute: &Attribute, locale: Locale) -> String {
    match &attribute.shape {
        AttributeShape::Quantity(kind) => {
            let shape = match kind {
                QuantityKind::Length => locale.words_length(),
                QuantityKind::Mass => locale.words_mass(),
                QuantityKind::Angle => locale.words_angle(),
                QuantityKind::HookSize => locale.words_hook_size(),
                QuantityKind::Count => locale.words_number(),
            };
            locale.words_quantity(&shape, &kind.example())
        }
        AttributeShape::Feature => locale.words_yes_or_no().to_owned(),
        AttributeShape::Name => locale.words_any_text().to_owned(),
        AttributeShape::Choice(words) => {
            let open = attribute.may_be.iter();
            open.fold(figures::any_of(words, locale), |told, (word, others)| {
                locale.words_leaves_open(&told, word, &figures::any_of(others, locale))
            })
        }
    }
}

fn in_short(vocabulary: &Vocabulary, kind: &Kind, locale: Locale) -> String {
    let mut parts = vec![kind.name.clone()];
    if !kind.also.is_empty() {
        parts.push(locale.words_also(&kind.also.join(", ")));
    }
    let keys: Vec<_> =
        kind.attributes.iter().map(|id| vocabulary.attribute(*id).id.as_str()).collect();
    if !keys.is_empty() {
        parts.push(locale.words_keys(&keys.join(", ")));
    }
    parts.join("; ")
}

fn wide_in_short(vocabulary: &Vocabulary, wide: &WideKind, locale: Locale) -> String {
    let mut parts = vec![wide.name.clone()];
    if !wide.also.is_empty() {
        parts.push(locale.words_also(&wide.also.join(", ")));
    }
    let ids = wide.may_be.iter().map(|kind| vocabulary.kind(*kind).id.clone());
    let ids: Vec<_> = ids.collect();
    parts.push(locale.words_may_be(&figures::any_of(&ids, locale)));
    parts.join("; ")
}

fn tag(tag: &Tag, locale: Locale) -> String {
    let mut parts = vec![tag.name.clone()];
    if !tag.also.is_empty() {
        parts.push(locale.words_also(&tag.also.join(", ")));
    }
    if !tag.counts_as.is_empty() {
        parts.push(locale.words_counts_as(&tag.counts_as.join(", ")));
    }
    if !tag.may_be.is_empty() {
        parts.push(locale.words_may_be(&figures::any_of(&tag.may_be, locale)));
    }
    parts.join("; ")
}

fn list(page: &mut Page, heading: &str, rows: &[(Tone, Vec<String>)]) {
    if rows.is_empty() {
        return;
    }
    page.gap();
    page.prose(0, Tone::Strong, heading);
    // An id is copied into a file, so that it is never divided.
    let longest = rows.iter().filter_map(|(_, cells)| cells.first()).map(String::len).max();
    if longest <= Some(LONGEST_BESIDE) {
        return page.columns(2, &[LONGEST_BESIDE, usize::MAX], rows);
    }
    for (tone, cells) in rows {
        page.prose(2, *tone, &cells[0]);
        page.prose(6, Tone::Plain, &cells[1..].join(" "));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::sample;

    fn plain(text: &str) -> String {
        anstream::adapter::strip_str(text).to_string()
    }

    #[test]
    fn every_kind_with_its_synonyms_and_keys_is_listed() {
        let mut words = sample::vocabulary();
        words.kinds[0].also = vec!["line clipper".into()];
        let tag = Tag {
            name: "handline".into(),
            counts_as: vec!["hook-and-line".into()],
            ..Tag::default()
        };
        words.gears.0.insert("handline".into(), tag);
        let text = plain(&vocabulary(&words, Locale::default(), 80));
        for part in [
            "long-line-cutter",
            "also: line clipper",
            "keys: handle, guard",
            "`documents:`",
            "counts as hook-and-line",
            "a wheelhouse",
        ] {
            assert!(text.contains(part), "`{part}`: {text}");
        }
        assert!(!text.contains("`certificates:`"), "no certificate is known here: {text}");
        assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    }

    #[test]
    fn a_long_id_stays_whole() {
        let mut words = sample::vocabulary();
        let id = "south-sea-of-example-charter-and-headboat-permit";
        words.permits.0.insert(id.into(), Tag { name: "a permit".into(), ..Tag::default() });
        let text = plain(&vocabulary(&words, Locale::default(), 60));
        assert!(text.contains(&format!("\n  {id}\n      a permit\n")), "{text}");
    }

    #[test]
    fn a_kind_tells_how_each_key_is_measured_and_what_settles_it() {
        let words = sample::vocabulary();
        let text = plain(&kind(&words, sample::CUTTER, Locale::default(), 200));
        let line = |key: &str| {
            let found = text.lines().find(|line| line.trim_start().starts_with(key));
            found.unwrap_or_else(|| panic!("`{key}`: {text}")).to_owned()
        };
        assert!(line("handle").contains("a length, like `6 ft 4 1/2 in`; how: from the grip"));
        assert!(line("guard").contains("protected blade: yes or no"));
        assert!(line("steel").contains("statement of conformity"));
        assert!(!line("overall").contains("statement"));
    }
}
