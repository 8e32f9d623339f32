//! The list of profiles, and one profile's notes.
//!
//! Imports `model`. Everything that a user needs to choose a profile: ids,
//! editions, days, sources, and whether the rule is encoded.

use super::Locale;
use super::content::Tone;
use super::render::lines::Page;
use super::words::locale::desk;
use crate::measure::DaySpan;
use crate::model::profile::{Level, Profile, Standing, Verified};
use std::sync::Arc;

/// The profiles, rule by rule, no wider than `width`; with their notes where
/// `notes` is asked.
pub fn profiles(profiles: &[Arc<Profile>], notes: bool, locale: Locale, width: usize) -> String {
    let mut page = Page::new(width);
    for profile in profiles {
        page.gap();
        page.prose(0, Tone::Strong, &profile.id);
        page.prose(2, Tone::Plain, &profile.title.to_string());
        let row = |label: &str, text: String| (Tone::Plain, vec![label.to_owned(), text]);
        let mut rows = vec![
            row(
                locale.profile_label_edition(),
                locale.profile_edition(&profile.edition, &profile.rule),
            ),
            row(locale.profile_label_in_force(), in_force(profile, locale)),
            row(locale.profile_label_source(), profile.source.clone()),
            row(locale.profile_label_state(), state(profile, locale)),
        ];
        if notes {
            let label = locale.profile_label_note();
            rows.extend(profile.notes.iter().map(|note| row(label, note.to_string())));
        }
        page.columns(2, &[8, usize::MAX], &rows);
        if notes {
            requirements(&mut page, profile, locale);
        }
    }
    if profiles.is_empty() {
        page.prose(0, Tone::Plain, desk::no_profile_known());
    }
    page.finish()
}

/// What the profile asks, clause by clause, with its readings of the rule:
/// margins, rebuilt figures, doubts.
fn requirements(page: &mut Page, profile: &Profile, locale: Locale) {
    for requirement in &profile.requirements {
        page.gap();
        let title = requirement.title.to_string();
        page.ends(2, ("-", Tone::Plain), &title, &requirement.clause);
        let mut known = vec![format!("`{}`", requirement.id)];
        if requirement.level == Level::Recommended {
            known.push(locale.profile_recommended().to_owned());
        }
        known.push(verified(requirement.verified, locale).to_owned());
        page.prose(4, Tone::Plain, &known.join("; "));
        if let Some(note) = &requirement.note {
            page.hang(4, (locale.profile_note(), Tone::Plain), (&note.to_string(), Tone::Plain));
        }
    }
}

pub(super) fn verified(verified: Verified, locale: Locale) -> &'static str {
    match verified {
        Verified::Read => locale.verified_read(),
        Verified::Excerpt => locale.verified_excerpt(),
        Verified::Inferred => locale.verified_inferred(),
        Verified::Memory => locale.verified_memory(),
        Verified::CommonPractice => locale.verified_common_practice(),
    }
}

fn in_force(profile: &Profile, locale: Locale) -> String {
    if profile.base {
        return "-".to_owned();
    }
    match profile.in_force {
        DaySpan { from: None, until: None } => locale.profile_always().to_owned(),
        DaySpan { from: Some(from), until: None } => locale.profile_from(&from),
        DaySpan { from: None, until: Some(until) } => locale.profile_until(&until),
        DaySpan { from: Some(from), until: Some(until) } => locale.days_between(&from, &until),
    }
}

fn state(profile: &Profile, locale: Locale) -> String {
    let encoded = match profile.encoded {
        true => locale.profile_encoded(&profile.encoding, &profile.requirements.len()),
        false => locale.profile_not_encoded().to_owned(),
    };
    let more = [
        (profile.standing == Standing::GoodPractice, locale.profile_good_practice()),
        (profile.base, locale.profile_base()),
        (profile.fallback, locale.profile_fallback()),
    ];
    let more = more.into_iter().filter(|(is_so, _)| *is_so).map(|(_, told)| told.to_owned());
    std::iter::once(encoded).chain(more).collect::<Vec<_>>().join("; ")
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
        let page = |notes| {
            anstream::adapter::strip_str(&profiles(&listed, notes, Locale::default(), 80))
                .to_string()
        };
        let text = page(true);
        let at = |part: &str| text.find(part).unwrap_or_else(|| panic!("`{part}`: {text}"));
        assert!(at("- Long-nose pliers") < at("from memory, the clause was not seen"), "{text}");
        assert!(at("from memory") < at("note: a margin of 1 in"), "{text}");
        assert!(at("note: a margin") < at("- Second pliers"), "{text}");
        assert!(text.contains("recommended, no part of a verdict"), "{text}");
        assert!(!page(false).contains("a margin"), "{}", page(false));
    }

    #[test]
    fn the_days_and_the_state_of_a_profile_are_told() {
        let day = |text| Some(sample::day(text));
        let (from, until) = (day("2019-06-24"), day("2024-11-28"));
        for (span, told) in [
            ((None, None), "always"),
            ((from, None), "from 2019-06-24"),
            ((None, until), "until 2024-11-28"),
            ((from, until), "2019-06-24 to 2024-11-28"),
        ] {
            let in_force = DaySpan { from: span.0, until: span.1 };
            let profile = Profile { in_force, ..sample::profile() };
            assert_eq!(super::in_force(&profile, Locale::default()), told);
            let base = Profile { base: true, ..profile };
            assert_eq!(super::in_force(&base, Locale::default()), "-");
        }
        let plain = || Profile { standing: Standing::Rule, ..sample::profile() };
        let encoded = "encoded, revision 1, 3 requirements";
        for (profile, told) in [
            (plain(), encoded),
            (Profile { standing: Standing::GoodPractice, ..plain() }, "good practice, no rule"),
            (Profile { base: true, ..plain() }, "a list that others build on; binds nobody"),
            (Profile { fallback: true, ..plain() }, "used where no rule names a vessel"),
            (Profile { encoded: false, ..plain() }, "known, not encoded"),
        ] {
            let text = state(&profile, Locale::default());
            assert!(text.contains(told), "{told}: {text}");
            assert_eq!(text.contains(encoded), profile.encoded, "{text}");
            assert_eq!(
                text.matches(';').count(),
                told.matches(';').count() + usize::from(profile.encoded && told != encoded),
                "{text}"
            );
        }
    }
}
