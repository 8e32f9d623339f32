//! Papers for the deck, and the way back from paper to data: the inspector's
//! sheet, the skipper's checklist, the empty inspection record and the empty
//! inventory.
//!
//! Imports `model`, `load` for the text of the vessel's file, and the words
//! beside it. Decides nothing: who is bound and what is proved was decided in
//! the engine; here it is ordered for a walk around the deck.

mod asks;
mod blank;
mod boxes;
mod digest;
mod inspector;
mod lapses;
mod look_for;
mod met;
mod record;
mod rows;
mod skipper;
mod yaml;

pub use blank::blank_vessel;
pub use digest::Digest;

use super::render::base::shown;
use super::words::{self, figures, sheet as said};
use super::{Locale, Subject};
use crate::measure::Length;
use crate::model::check::{Check, Judgement, Notice};
use maud::{Markup, html};

const STYLE: &str = include_str!("sheet/sheet.css");

/// The digest of the papers of this check: of the vessel's file and of the
/// rules that judged it.
pub fn digest(subject: &Subject<'_>) -> Digest {
    let own = |file: &str| *file == *subject.check.vessel.place.file;
    let source = subject.sources.iter().find(|source| own(&source.file));
    let text = source.map_or("", |source| &*source.text);
    let rules = subject.check.judgements.iter().map(|judgement| &*judgement.profile);
    Digest::new(text, rules)
}

/// How far above the highest listed freeboard the vessel is to be judged once
/// more, for the rows of what is asked there.
pub const NEAR_ABOVE: Length = said::NEAR_ABOVE;

/// The sheet for the inspector, as one document of HTML. `above` is the same
/// vessel judged somewhat above its highest freeboard, where it has one.
pub fn for_inspector(subject: &Subject<'_>, above: Option<&Check>) -> String {
    inspector::page(subject, above, &digest(subject))
}

/// The checklist for the skipper, as one document of HTML. `measured` is the
/// same vessel judged by what was measured alone.
pub fn for_skipper(subject: &Subject<'_>, measured: &Check) -> String {
    skipper::page(subject, measured, &digest(subject))
}

/// The inspection record with its rows still empty, as YAML. `above` is as
/// for the inspector's sheet, so that the rows are the same.
pub fn empty_record(subject: &Subject<'_>, above: Option<&Check>) -> String {
    record::yaml(subject, above, &digest(subject))
}

/// The inspection records that are laid over the vessel, by their files.
fn laid_over(subject: &Subject<'_>) -> Option<String> {
    let own = &subject.check.vessel.place.file;
    let records = subject.sources.iter().filter(|source| source.file != *own);
    let records: Vec<_> = records.map(|source| source.file.to_string()).collect();
    // Which record was left out, its notice tells by its day.
    let left_out = |notice: &Notice| matches!(notice, Notice::RecordAfterDeparture { .. });
    let files = figures::all_of(&records, subject.locale);
    match subject.check.notices.iter().any(left_out) {
        _ if records.is_empty() => None,
        true => Some(subject.locale.sheet_records(&files)),
        false => Some(subject.locale.sheet_laid_over(&files)),
    }
}

/// The number of a judgement's rule on the paper, which leads its clauses;
/// nothing where the clauses are all of one rule.
fn rule_of(check: &Check, judgement: &Judgement) -> Option<String> {
    let encoded = check.judgements.iter().filter(|other| other.profile.encoded);
    if encoded.count() < 2 {
        return None;
    }
    let own = |other: &Judgement| other.profile.id == judgement.profile.id;
    check.judgements.iter().position(own).map(|at| (at + 1).to_string())
}

/// Adds rules that are not there yet.
fn take_in(rules: &mut Vec<String>, more: impl IntoIterator<Item = String>) {
    for rule in more {
        if !rules.contains(&rule) {
            rules.push(rule);
        }
    }
}

/// A clause, led by the numbers of the rules that it belongs to.
fn of_rules(rules: &[String], clause: &str, locale: Locale) -> String {
    match rules {
        [] => clause.to_owned(),
        rules => format!("{}: {clause}", by_rules(rules, locale)),
    }
}

/// Rules by their numbers on the paper.
fn by_rules(rules: &[String], locale: Locale) -> String {
    locale.sheet_by_rules(rules.len(), &figures::all_of(rules, locale))
}

/// The rules that the paper speaks of, with their editions; by number where
/// clauses are led by it.
fn named_rules(subject: &Subject<'_>) -> Vec<String> {
    let (check, locale) = (subject.check, subject.locale);
    let named = check.judgements.iter().map(|judgement| {
        let named =
            format!("{} [{}]", said::edition(&judgement.profile, locale), judgement.profile.id);
        match rule_of(check, judgement) {
            Some(number) => locale.sheet_rule(&number, &named),
            None => named,
        }
    });
    named.collect()
}

/// The same, as a list.
fn editions(subject: &Subject<'_>) -> Markup {
    html! {
        ul.editions { @for rule in named_rules(subject) { li { (shown(&rule)) } } }
    }
}

/// What bears on the meaning of the whole paper.
fn notices(subject: &Subject<'_>) -> Markup {
    let locale = subject.locale;
    html! {
        @for notice in &subject.check.notices {
            p.caution {
                b { (locale.sheet_note()) " " } (shown(&words::notice(notice, locale)))
                @if let Some(remedy) = words::notice_remedy(notice, locale) {
                    " " b { (locale.sheet_do()) " " } (shown(&remedy))
                }
            }
        }
    }
}

/// Whether a rule binds that is not in this program.
fn has_stubs(check: &Check) -> bool {
    check.judgements.iter().any(|judgement| !judgement.profile.encoded)
}

/// Rules that bind and are not in this program.
fn stubs(subject: &Subject<'_>) -> Markup {
    let locale = subject.locale;
    html! {
        @for judgement in subject.check.judgements.iter().filter(|j| !j.profile.encoded) {
            p.caution {
                b { (shown(&judgement.profile.title.to_string())) } ": " (locale.sheet_stub()) " "
                b { (locale.sheet_do()) " " } (shown(&subject.words(judgement).by_hand())) "."
            }
        }
    }
}
