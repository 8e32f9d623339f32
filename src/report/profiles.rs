//! The list of profiles, and one profile's notes.
//!
//! Imports `model`. Everything that a user needs to choose a profile: ids,
//! editions, days, sources, and whether the rule is encoded.

use super::page::{Page, Tone};
use crate::measure::DaySpan;
use crate::model::profile::{Profile, Standing};
use std::sync::Arc;

/// The profiles, rule by rule, no wider than `width`; with their notes where
/// `notes` is asked.
pub fn profiles(profiles: &[Arc<Profile>], notes: bool, width: usize) -> String {
    let mut page = Page::new(width);
    for profile in profiles {
        page.gap();
        page.prose(0, Tone::Strong, &profile.id);
        page.prose(2, Tone::Plain, &profile.title.to_string());
        let row = |label: &str, text: String| (Tone::Plain, vec![label.to_owned(), text]);
        let mut rows = vec![
            row("edition", format!("{}, of the rule {}", profile.edition, profile.rule)),
            row("in force", in_force(profile)),
            row("source", profile.source.clone()),
            row("state", state(profile)),
        ];
        if notes {
            let texts = profile.notes.iter().map(|note| row("note", note.to_string()));
            rows.extend(texts);
        }
        page.columns(2, &[8, usize::MAX], &rows);
    }
    if profiles.is_empty() {
        page.prose(0, Tone::Plain, "no profile is known");
    }
    page.finish()
}

fn in_force(profile: &Profile) -> String {
    if profile.base {
        return "-".to_owned();
    }
    match profile.in_force {
        DaySpan { from: None, until: None } => "always".to_owned(),
        DaySpan { from: Some(from), until: None } => format!("from {from}"),
        DaySpan { from: None, until: Some(until) } => format!("until {until}"),
        DaySpan { from: Some(from), until: Some(until) } => format!("{from} to {until}"),
    }
}

fn state(profile: &Profile) -> String {
    let count = profile.requirements.len();
    let encoded = format!("encoded, revision {}, {count} requirements", profile.encoding);
    let mut parts = vec![if profile.encoded {
        encoded
    } else {
        "known, not encoded: a vessel that it binds is can't tell".to_owned()
    }];
    if profile.standing == Standing::GoodPractice {
        parts.push("good practice, no rule".to_owned());
    }
    if profile.base {
        parts.push("a list that others build on; binds nobody by itself".to_owned());
    }
    if profile.fallback {
        parts.push("used where no rule names a vessel".to_owned());
    }
    parts.join("; ")
}
