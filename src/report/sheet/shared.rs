//! What the papers have in common: their rules by number, the records laid
//! over the vessel, what bears on the whole paper, and its foot.
//!
//! Imports `model` and the words.

use crate::model::check::{Check, Judgement, Notice};
use crate::report::render::base::shown;
use crate::report::words::{self, figures, sheet as said};
use crate::report::{Locale, Subject};
use maud::{Markup, html};

pub(super) const STYLE: &str = include_str!("sheet.css");

/// The inspection records that are laid over the vessel, by their files.
pub(super) fn laid_over(subject: &Subject<'_>) -> Option<String> {
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
pub(super) fn rule_of(check: &Check, judgement: &Judgement) -> Option<String> {
    let encoded = check.judgements.iter().filter(|other| other.profile.encoded);
    if encoded.count() < 2 {
        return None;
    }
    let own = |other: &Judgement| other.profile.id == judgement.profile.id;
    check.judgements.iter().position(own).map(|at| (at + 1).to_string())
}

/// Adds rules that are not there yet.
pub(super) fn take_in(rules: &mut Vec<String>, more: impl IntoIterator<Item = String>) {
    for rule in more {
        if !rules.contains(&rule) {
            rules.push(rule);
        }
    }
}

/// A clause, led by the numbers of the rules that it belongs to.
pub(super) fn of_rules(rules: &[String], clause: &str, locale: Locale) -> String {
    match rules {
        [] => clause.to_owned(),
        rules => format!("{}: {clause}", by_rules(rules, locale)),
    }
}

/// Rules by their numbers on the paper.
pub(super) fn by_rules(rules: &[String], locale: Locale) -> String {
    locale.sheet_by_rules(rules.len(), &figures::all_of(rules, locale))
}

/// The rules that the paper speaks of, with their editions; by number where
/// clauses are led by it.
pub(super) fn named_rules(subject: &Subject<'_>) -> Vec<String> {
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
pub(super) fn editions(subject: &Subject<'_>) -> Markup {
    html! {
        ul.editions { @for rule in named_rules(subject) { li { (shown(&rule)) } } }
    }
}

/// What bears on the meaning of the whole paper.
pub(super) fn notices(subject: &Subject<'_>) -> Markup {
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
pub(super) fn has_stubs(check: &Check) -> bool {
    check.judgements.iter().any(|judgement| !judgement.profile.encoded)
}

/// Rules that bind and are not in this program.
pub(super) fn stubs(subject: &Subject<'_>) -> Markup {
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

/// The cautions that stand under every paper.
pub(super) fn foot(locale: Locale) -> Markup {
    html! { footer { p { (locale.caution()) } p { (locale.foot()) } } }
}
