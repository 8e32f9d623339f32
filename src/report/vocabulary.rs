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
    Attribute, AttributeShape, Class, Kind, KindId, Tag, Vocabulary, fold,
};
use std::collections::BTreeMap;

/// Where the kinds of each class are written in a vessel's file.
const CLASSES: [(Class, &str, &str); 5] = [
    (Class::Tool, "Tools", "under `kit:`"),
    (Class::Spare, "Spares", "under `kit:`, with `fits:` and the marks of the tools"),
    (Class::Document, "Documents", "under `documents:`"),
    (Class::Gear, "Fishing gear", "under `hooks:` and `lines:`"),
    (Class::Certificate, "Certificates", "under `certificates:` of one of the `people:`"),
];

/// The longest id that still leaves room for a text beside it.
const LONGEST_BESIDE: usize = 26;

/// What may be said of any tool besides its own keys.
const COMMON: &str = "Besides, any tool may have: mark, name, count, broken, condition, where, \
    stowed, acquired, inspected, expires, conforms, parts, fits, changes, evidence, remark.";

/// Every word, no wider than `width`.
pub fn vocabulary(vocabulary: &Vocabulary, width: usize) -> String {
    let mut page = Page::new(width);
    page.prose(0, Tone::Strong, "Words for a vessel's file");
    let text = "An id, a name or a synonym will do for a kind, in any case, with blanks or \
        hyphens. `kitmuster words KIND` tells how each of its keys is measured.";
    page.prose(0, Tone::Plain, text);
    for (class, noun, place) in CLASSES {
        kinds(&mut page, vocabulary, class, &format!("{noun}, {place}"));
    }
    tags(&mut page, "Permits, under `permits:`", &vocabulary.permits);
    tags(&mut page, "Gear, under `gear:`", &vocabulary.gears);
    tags(&mut page, "Areas, under `areas:`", &vocabulary.areas);
    let row = |id: &str, text: String| (Tone::Strong, vec![id.to_owned(), text]);
    let features = vocabulary.vessel_features.iter();
    let features: Vec<_> = features.map(|(id, name)| row(id, name.clone())).collect();
    list(&mut page, "Features of the vessel, under `features:`", &features);
    let changes = vocabulary.changes.iter().map(|(what, retired)| {
        let keys = retired.as_ref().map(|ids| ids.iter().map(|id| &vocabulary.attribute(*id).id));
        let text = match keys.map(|keys| keys.cloned().collect::<Vec<_>>()) {
            None => "every reading before it no longer counts".to_owned(),
            Some(keys) if keys.is_empty() => "no reading is retired".to_owned(),
            Some(keys) => format!("readings before it no longer count: {}", keys.join(", ")),
        };
        row(what, text)
    });
    list(&mut page, "Changes to a tool, under `changes:`", &changes.collect::<Vec<_>>());
    page.gap();
    page.prose(0, Tone::Plain, COMMON);
    page.finish()
}

/// One kind with each of its keys, no wider than `width`.
pub fn kind(vocabulary: &Vocabulary, id: KindId, width: usize) -> String {
    let kind = vocabulary.kind(id);
    let mut page = Page::new(width);
    page.prose(0, Tone::Strong, &kind.name);
    let mut words = vec![format!("`{}`", kind.id)];
    words.extend(kind.also.iter().map(|word| format!("`{word}`")));
    page.prose(
        2,
        Tone::Plain,
        &format!("may be written: {}", figures::any_of(&words, Locale::default())),
    );
    if let Some((_, _, place)) = CLASSES.iter().find(|(class, ..)| *class == kind.class) {
        page.prose(2, Tone::Plain, &format!("written {place}"));
    }
    let attributes = kind.attributes.iter().map(|id| vocabulary.attribute(*id));
    let rows: Vec<_> = attributes
        .map(|attribute| (Tone::Strong, vec![attribute.id.clone(), told(attribute)]))
        .collect();
    page.gap();
    if rows.is_empty() {
        page.prose(2, Tone::Plain, "it has no keys of its own");
    } else {
        page.columns(2, &[24, usize::MAX], &rows);
    }
    page.gap();
    match kind.class {
        Class::Tool | Class::Spare => page.prose(0, Tone::Plain, COMMON),
        Class::Certificate => {
            page.prose(0, Tone::Plain, "A certificate has: kind, issued, expires, number.");
        }
        Class::Document | Class::Gear => {}
    }
    page.finish()
}

/// How an attribute is told, how it is measured, and whether a statement
/// settles it.
fn told(attribute: &Attribute) -> String {
    let shape = shape(attribute);
    let shows_name = fold(&attribute.name) == attribute.id;
    let first = if shows_name { shape } else { format!("{}: {shape}", attribute.name) };
    let mut parts = vec![first];
    parts.extend(attribute.measure.iter().map(|how| format!("how: {how}")));
    if !attribute.shown {
        parts.push(
            "no tape or eye can show it: a dated statement of conformity (`conforms:`) settles it"
                .to_owned(),
        );
    }
    parts.join("; ")
}

fn shape(attribute: &Attribute) -> String {
    match &attribute.shape {
        AttributeShape::Quantity(kind) => {
            let noun = match kind {
                QuantityKind::Length => "a length",
                QuantityKind::Mass => "a mass",
                QuantityKind::Angle => "an angle",
                QuantityKind::HookSize => "a hook size",
                QuantityKind::Count => "a number",
            };
            format!("{noun}, like `{}`", kind.example())
        }
        AttributeShape::Feature => "yes or no".to_owned(),
        AttributeShape::Name => "any text".to_owned(),
        AttributeShape::Choice(words) => {
            let open = attribute.may_be.iter().map(|(word, others)| {
                format!(
                    "; `{word}` leaves open whether it is {}",
                    figures::any_of(others, Locale::default())
                )
            });
            format!("{}{}", figures::any_of(words, Locale::default()), open.collect::<String>())
        }
    }
}

fn kinds(page: &mut Page, vocabulary: &Vocabulary, class: Class, heading: &str) {
    let of_class = vocabulary.kinds.iter().filter(|kind| kind.class == class);
    let rows: Vec<_> = of_class
        .map(|kind| (Tone::Strong, vec![kind.id.clone(), in_short(vocabulary, kind)]))
        .collect();
    list(page, heading, &rows);
}

fn in_short(vocabulary: &Vocabulary, kind: &Kind) -> String {
    let mut text = kind.name.clone();
    if !kind.also.is_empty() {
        text.push_str(&format!("; also: {}", kind.also.join(", ")));
    }
    let keys: Vec<_> =
        kind.attributes.iter().map(|id| vocabulary.attribute(*id).id.as_str()).collect();
    if !keys.is_empty() {
        text.push_str(&format!("; keys: {}", keys.join(", ")));
    }
    text
}

fn tags(page: &mut Page, heading: &str, tags: &BTreeMap<String, Tag>) {
    let rows: Vec<_> = tags
        .iter()
        .map(|(id, tag)| {
            let mut text = tag.name.clone();
            if !tag.counts_as.is_empty() {
                text.push_str(&format!("; counts as {}", tag.counts_as.join(", ")));
            }
            (Tone::Strong, vec![id.clone(), text])
        })
        .collect();
    list(page, heading, &rows);
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
        let tag = Tag { name: "handline".into(), counts_as: vec!["hook-and-line".into()] };
        words.gears.insert("handline".into(), tag);
        let text = plain(&vocabulary(&words, 80));
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
        words.permits.insert(id.into(), Tag { name: "a permit".into(), counts_as: Vec::new() });
        let text = plain(&vocabulary(&words, 60));
        assert!(text.contains(&format!("\n  {id}\n      a permit\n")), "{text}");
    }

    #[test]
    fn a_kind_tells_how_each_key_is_measured_and_what_settles_it() {
        let words = sample::vocabulary();
        let text = plain(&kind(&words, sample::CUTTER, 200));
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
