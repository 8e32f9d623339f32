//! A fleet under the draft of an edition: a section of the terminal page.
//!
//! Imports `fleet` and below. Decides nothing: who falls and who rises was
//! decided there.

use super::Fleet;
use crate::fleet::draft::{DraftFate, Drafted, UnderDraft};
use crate::report::page::{Page, Tone};
use crate::report::words::{self, compare};

/// Where a vessel's fate begins.
const NAME: usize = 2;
/// Where its findings begin.
const BODY: usize = 13;
/// The most vessels that are listed; the JSON has them all.
const MOST_LISTED: usize = 60;

/// The section: counts, then the vessels with a finding that changes.
pub(super) fn write(page: &mut Page, of: &Fleet<'_>, drafted: &Drafted) {
    page.gap();
    page.prose(0, Tone::Strong, &format!("Under the draft `{}`", drafted.profile.id));
    page.prose(NAME, Tone::Plain, &beside(drafted));
    page.prose(NAME, Tone::Plain, &compare::draft_tally(&drafted.tally()));
    let told = drafted.vessels.iter();
    let mut told: Vec<_> = told.filter(|v| !v.changes.is_empty() || v.then != v.now).collect();
    told.sort_by_key(|vessel| vessel.fate);
    for under in told.iter().take(MOST_LISTED) {
        vessel(page, of, under);
    }
    if let Some(more) = told.len().checked_sub(MOST_LISTED).filter(|more| *more > 0) {
        let text = format!("and {more} more; `--format json` has them all");
        page.prose(NAME, Tone::Plain, &text);
    }
}

/// What it is judged beside.
pub(super) fn beside(drafted: &Drafted) -> String {
    let of = format!("{}, {}", drafted.profile.title, drafted.profile.edition);
    let days = words::span(drafted.profile.in_force);
    if drafted.in_force.is_empty() {
        return format!("{of}; in force {days}; no edition of its rule judged a vessel");
    }
    let ids: Vec<_> = drafted.in_force.iter().map(|id| format!("`{id}`")).collect();
    format!("{of}; in force {days}; beside {}", ids.join(", "))
}

fn vessel(page: &mut Page, of: &Fleet<'_>, under: &UnderDraft) {
    let tone = match under.fate {
        DraftFate::Falls => Tone::Bad,
        DraftFate::Rises => Tone::Good,
        DraftFate::CannotTell => Tone::Open,
        DraftFate::Released | DraftFate::Stays => Tone::Plain,
    };
    let label = format!("{:<10}", compare::draft_fate(under.fate));
    let (then, now) = (compare::verdict(under.then), compare::verdict(under.now));
    let text = format!("{}: {then} → {now}", under.vessel.name);
    page.hang(NAME, (&label, tone), (&text, Tone::Strong));
    if let Some(bound) = compare::bound(under.bound) {
        page.hang(BODY, ("note:", Tone::Open), (bound, Tone::Plain));
    }
    for one in &under.changes {
        let worse = one.is_worse();
        let (sign, tone) = if worse { ("!", Tone::Bad) } else { ("+", Tone::Good) };
        page.hang(BODY, (sign, tone), (&compare::draft_change(of, under, one), Tone::Plain));
    }
}
