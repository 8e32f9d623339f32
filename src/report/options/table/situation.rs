//! One situation on the page: the best way that is open, and the better ones
//! that are not.
//!
//! Imports `model`, `measure` and the page and words beside it.

use super::super::Shown;
use super::INDENT;
use super::closed::Closed;
use super::groups::{Group, One};
use crate::measure::Answer;
use crate::model::options::{Choice, Standing};
use crate::report::Locale;
use crate::report::content::Tone;
use crate::report::render::lines::Page;
use crate::report::words::locale::Fixed;
use crate::report::words::options as said;
use crate::report::words::pages::sentence;

/// Writes a situation; what is closed is noted for the list behind.
pub(super) fn write<'a>(
    page: &mut Page,
    shown: &Shown<'a>,
    group: &Group<'a>,
    one: &One<'a>,
    closed: &mut Closed,
) {
    let standing = one.answered.standing();
    let locale = shown.locale;
    let (sign, tone, right) = match standing {
        Standing::First => ("+", Tone::Good, locale.options_first_choice()),
        Standing::Fallback => ("-", Tone::Bad, locale.options_fallback()),
        Standing::Unclear => ("?", Tone::Open, locale.options_cannot_tell()),
        Standing::Nothing => ("!", Tone::Bad, said::no_way(shown, one.situation)),
    };
    page.ends(INDENT, (sign, tone), &group.title(one.situation), right);
    let better = better(shown, one, closed);
    match one.answered.best() {
        Some(best) => {
            let choice = &one.answered.choices[best];
            let uses = shown.uses(choice);
            let mut text = shown.choice(&one.situation.choices[best]);
            if !uses.is_empty() {
                text.push_str(&format!(": {uses}"));
            }
            page.prose(INDENT + 2, Tone::Plain, &text);
            if let Some(next) = said::if_it_fails(shown, one.answered, one.situation) {
                page.hang(
                    INDENT + 2,
                    (locale.options_if_it_fails(), Tone::Plain),
                    (&next, Tone::Plain),
                );
            }
        }
        None => get_first(page, shown, one, better.iter().map(|(_, titles)| titles.len()).sum()),
    }
    for text in said::at_stations(shown, one.situation) {
        page.hang(
            INDENT + 2,
            (locale.options_yet(), Tone::Strong),
            (&format!("{text}."), Tone::Strong),
        );
    }
    for (label, titles) in better {
        page.hang(INDENT + 2, (label, Tone::Plain), (&titles.join("; "), Tone::Plain));
    }
}

/// What to do first where nothing is open. Which choice that opens is told
/// where several are closed.
fn get_first<'a>(page: &mut Page, shown: &Shown<'a>, one: &One<'a>, closed: usize) {
    let locale = shown.locale;
    let Some((index, steps)) = said::get_first(shown, one.answered, one.situation) else {
        page.prose(INDENT + 2, Tone::Strong, &sentence(locale.options_nothing_opens_any()));
        return;
    };
    let unclear = one.answered.choices[index].answer == Answer::Unknown;
    let label = if unclear { locale.options_find_out_first() } else { locale.options_get_first() };
    page.hang(INDENT + 2, (label, Tone::Bad), (&said::steps(&steps), Tone::Strong));
    if closed > 1 {
        let opens = said::small(&shown.choice(&one.situation.choices[index]));
        let label = if unclear { locale.options_may_open() } else { locale.options_opens() };
        page.hang(INDENT + 2, (label, Tone::Plain), (&opens, Tone::Plain));
    }
}

/// What keeps a better choice from being the one that is taken.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kept {
    Short,
    Closed,
    Unknown,
}

impl Kept {
    const ALL: [(Self, Fixed); 3] = [
        (Self::Short, Locale::options_short),
        (Self::Closed, Locale::options_closed),
        (Self::Unknown, Locale::options_not_told),
    ];

    fn of(choice: &Choice) -> Self {
        match choice.answer {
            _ if choice.is_short() => Self::Short,
            Answer::Unknown => Self::Unknown,
            _ => Self::Closed,
        }
    }
}

/// The better choices that are closed, and those of which nobody can tell,
/// each behind its label.
fn better<'a>(
    shown: &Shown<'a>,
    one: &One<'a>,
    closed: &mut Closed,
) -> Vec<(&'static str, Vec<String>)> {
    let told = Kept::ALL.map(|(kept, label)| {
        let choices = one.answered.better().iter().zip(&one.situation.choices);
        let choices = choices.filter(|(choice, _)| Kept::of(choice) == kept);
        // What a high rail closes nothing opens: it is told once, behind.
        let texts = choices.filter_map(|(choice, of)| {
            let title = said::small(&shown.choice(of));
            let numbers = closed.note(shown, choice, &title)?;
            Some(format!("{title} ({numbers})"))
        });
        (label(shown.locale), texts.collect::<Vec<String>>())
    });
    closed.next_situation();
    told.into_iter().filter(|(_, titles)| !titles.is_empty()).collect()
}

/// The situations of a group that are left out.
pub(super) fn left_out(page: &mut Page, locale: Locale, group: &Group<'_>) {
    let titles: Vec<_> = group.left_out.iter().map(|one| group.title(one.situation)).collect();
    if !titles.is_empty() {
        let text = format!("{}.", titles.join("; "));
        page.hang(INDENT, (locale.options_left_out(), Tone::Plain), (&text, Tone::Plain));
    }
}
