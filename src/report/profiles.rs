//! The list of profiles, and one profile's notes.
//!
//! Imports `model`. Everything that a user needs to choose a profile: ids,
//! editions, days, sources, and whether the rule is encoded.

use super::content::Tone;
use super::render::lines::Page;
use super::words::locale::desk;
use crate::measure::DaySpan;
use crate::model::profile::{Level, Profile, Standing, Verified};
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
        if notes {
            requirements(&mut page, profile);
        }
    }
    if profiles.is_empty() {
        page.prose(0, Tone::Plain, desk::no_profile_known());
    }
    page.finish()
}

/// What the profile asks, clause by clause, with its readings of the rule:
/// margins, rebuilt figures, doubts.
fn requirements(page: &mut Page, profile: &Profile) {
    for requirement in &profile.requirements {
        page.gap();
        let title = requirement.title.to_string();
        page.ends(2, ("-", Tone::Plain), &title, &requirement.clause);
        let mut known = vec![format!("`{}`", requirement.id)];
        if requirement.level == Level::Recommended {
            known.push("recommended, no part of a verdict".to_owned());
        }
        known.push(verified(requirement.verified).to_owned());
        page.prose(4, Tone::Plain, &known.join("; "));
        if let Some(note) = &requirement.note {
            page.hang(4, ("note:", Tone::Plain), (&note.to_string(), Tone::Plain));
        }
    }
}

pub(super) fn verified(verified: Verified) -> &'static str {
    match verified {
        Verified::Read => "the clause was read",
        Verified::Excerpt => "seen in an excerpt",
        Verified::Inferred => "concluded from what was read",
        Verified::Memory => "from memory, the clause was not seen",
        Verified::CommonPractice => "common practice, no source",
    }
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::text::Text;
    use crate::report::sample;

    #[test]
    fn the_notes_of_each_requirement_stand_below_its_title_and_clause() {
        let mut profile = sample::profile();
        profile.requirements[1].note = Some(Text::plain("a margin of 1 in is our own reading"));
        let listed = [Arc::new(profile)];
        let page = |notes| anstream::adapter::strip_str(&profiles(&listed, notes, 80)).to_string();
        let text = page(true);
        let at = |part: &str| text.find(part).unwrap_or_else(|| panic!("`{part}`: {text}"));
        assert!(at("- Long-nose pliers") < at("from memory, the clause was not seen"), "{text}");
        assert!(at("from memory") < at("note: a margin of 1 in"), "{text}");
        assert!(at("note: a margin") < at("- Second pliers"), "{text}");
        assert!(text.contains("recommended, no part of a verdict"), "{text}");
        assert!(!page(false).contains("a margin"), "{}", page(false));
    }
}
