//! What in a record contradicts itself.
//!
//! Imports `model`, `measure` and the types of the record. Whether what was
//! found is right is another matter: that is judged again.

use super::replay::Replay;
use super::{AuditRecord, EditionOnRecord, VesselOnRecord};
use crate::load::Library;
use crate::measure::Day;
use std::collections::BTreeSet;

/// The first thing that contradicts another.
pub(super) fn torn(record: &AuditRecord) -> Option<String> {
    inputs(record)
        .or_else(|| record.vessels.iter().find_map(twice))
        .or_else(|| {
            ahead(record).map(|day| format!("something is open since {day}, after the audit"))
        })
        .or_else(|| editions(record))
        .or_else(|| by_its_rules(record, &Replay::new(record).library().ok()?))
}

/// The first that stands in a list twice.
fn repeated<T: Ord>(list: impl IntoIterator<Item = T>) -> Option<T> {
    let mut seen = BTreeSet::new();
    for one in list {
        if seen.contains(&one) {
            return Some(one);
        }
        seen.insert(one);
    }
    None
}

/// Every vessel has its input at the same place, and every inspection record
/// that was laid over one is there once.
fn inputs(record: &AuditRecord) -> Option<String> {
    let inputs = &record.inputs;
    if inputs.vessels.len() != record.vessels.len() {
        return Some(format!(
            "it holds {} findings of vessels and {} vessels' files",
            record.vessels.len(),
            inputs.vessels.len()
        ));
    }
    for (what, list) in [
        ("inspection record", &inputs.inspections),
        ("vessel", &inputs.vessels),
        ("profile's file", &inputs.profiles),
    ] {
        if let Some(file) = repeated(list.iter().map(|input| &input.file)) {
            return Some(format!("it holds the {what} `{file}` twice"));
        }
    }
    let names: BTreeSet<_> = inputs.inspections.iter().map(|input| &input.file).collect();
    let mut used = BTreeSet::new();
    for (vessel, input) in record.vessels.iter().zip(&inputs.vessels) {
        if vessel.file != input.file {
            return Some(format!(
                "what was found in `{}` stands where the text of `{}` does",
                vessel.file, input.file
            ));
        }
        for laid in &vessel.inspections {
            used.insert(laid);
            if !names.contains(laid) {
                return Some(format!("the inspection record `{laid}` is not in it"));
            }
        }
    }
    let idle = names.iter().find(|name| !used.contains(*name))?;
    Some(format!("the inspection record `{idle}` is laid over no vessel"))
}

/// What is said of one vessel twice.
fn twice(vessel: &VesselOnRecord) -> Option<String> {
    let file = &vessel.file;
    if let Some(laid) = repeated(&vessel.inspections) {
        return Some(format!("the inspection record `{laid}` is laid over `{file}` twice"));
    }
    if let Some(id) = repeated(vessel.profiles.iter().map(|judgement| &judgement.id)) {
        return Some(format!("`{id}` judges `{file}` twice"));
    }
    vessel.profiles.iter().find_map(|judgement| {
        let ids = judgement.findings.iter().map(|finding| &finding.requirement);
        let id = repeated(ids)?;
        Some(format!("`{id}` of `{}` is found on `{file}` twice", judgement.id))
    })
}

/// A day since which something would be open that lies after the audit.
fn ahead(record: &AuditRecord) -> Option<Day> {
    let profiles = record.vessels.iter().flat_map(|vessel| &vessel.profiles);
    let findings = profiles.flat_map(|judgement| &judgement.findings);
    let kept = record.vessels.iter().flat_map(|vessel| &vessel.since).map(|kept| kept.open_since);
    let mut since = findings.filter_map(|finding| finding.open_since).chain(kept);
    since.find(|day| *day > record.date)
}

/// The list of editions names those that judged a vessel, each once.
fn editions(record: &AuditRecord) -> Option<String> {
    if let Some(id) = repeated(record.editions.iter().map(|edition| &edition.id)) {
        return Some(format!("its list of editions names `{id}` twice"));
    }
    let listed: BTreeSet<_> = record.editions.iter().map(|edition| &edition.id).collect();
    let judgements = record.vessels.iter().flat_map(|vessel| &vessel.profiles);
    let judged: BTreeSet<_> = judgements.map(|judgement| &judgement.id).collect();
    if let Some(id) = judged.difference(&listed).next() {
        return Some(format!("`{id}` judged a vessel and is not in its list of editions"));
    }
    let idle = listed.difference(&judged).next()?;
    Some(format!("its list of editions names `{idle}`, which judged no vessel"))
}

/// Its editions are those of the texts that it holds, and it holds what was
/// asked for.
fn by_its_rules(record: &AuditRecord, library: &Library) -> Option<String> {
    if let Some(id) = record.asked.profiles.iter().find(|id| library.find(id).is_none()) {
        return Some(format!("it asks for the profile `{id}`, which is not in it"));
    }
    record.editions.iter().find_map(|listed| {
        let id = &listed.id;
        let Some(profile) = library.find(id) else {
            return Some(format!("the edition `{id}` is not among its profiles"));
        };
        let held = EditionOnRecord {
            rule: profile.rule.clone(),
            id: profile.id.clone(),
            edition: profile.edition.clone(),
            encoding: profile.encoding,
            file: profile.place.file.to_string(),
        };
        let other = "its list of editions says something else of";
        (held != *listed).then(|| format!("{other} `{id}` than the profile's own text"))
    })
}
