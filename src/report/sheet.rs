//! Papers for the deck, and the way back from paper to data: the inspector's
//! sheet, the skipper's checklist, the empty inspection record and the empty
//! inventory.
//!
//! Imports `model`, `load` for the text of the vessel's file, and the words
//! beside it. Decides nothing: who is bound and what is proved was decided in
//! the engine; here it is ordered for a walk around the deck.

mod asks;
mod blank;
mod digest;
mod inspector;
mod record;
mod rows;
mod skipper;
mod yaml;

pub use blank::blank_vessel;
pub use digest::Digest;

use super::Subject;
use super::html::shown;
use super::words::{self, Words, sheet as said};
use crate::model::check::{Check, Notice};
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

/// The sheet for the inspector, as one document of HTML.
pub fn for_inspector(subject: &Subject<'_>) -> String {
    inspector::page(subject, &digest(subject))
}

/// The checklist for the skipper, as one document of HTML.
pub fn for_skipper(subject: &Subject<'_>) -> String {
    skipper::page(subject, &digest(subject))
}

/// The inspection record with its rows still empty, as YAML.
pub fn empty_record(subject: &Subject<'_>) -> String {
    record::yaml(subject, &digest(subject))
}

/// The rules that the paper speaks of, with their editions.
fn editions(check: &Check) -> Markup {
    html! {
        ul.editions {
            @for judgement in &check.judgements {
                li {
                    (shown(&said::edition(&judgement.profile)))
                    " [" (shown(&judgement.profile.id)) "]"
                }
            }
        }
    }
}

/// What bears on the meaning of the whole paper.
fn notices(notices: &[Notice]) -> Markup {
    html! {
        @for notice in notices {
            p.caution {
                b { "Note: " } (shown(&words::notice(notice)))
                @if let Some(remedy) = words::notice_remedy(notice) {
                    " " b { "Do: " } (shown(&remedy))
                }
            }
        }
    }
}

/// Rules that bind and are not in this program.
fn stubs(subject: &Subject<'_>) -> Markup {
    let check = subject.check;
    html! {
        @for judgement in check.judgements.iter().filter(|j| !j.profile.encoded) {
            @let words = Words {
                vocabulary: subject.vocabulary,
                vessel: &check.vessel,
                profile: &judgement.profile,
                units: subject.units,
            };
            p.caution {
                b { (shown(&judgement.profile.title.to_string())) } ": " (said::STUB) " "
                b { "Do: " } (shown(&words.by_hand())) "."
            }
        }
    }
}
