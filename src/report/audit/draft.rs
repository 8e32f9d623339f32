//! A fleet under the draft of an edition: a section of the terminal page and
//! the key `draft` of `kitmuster/audit/1`.
//!
//! Imports `fleet` and below. Decides nothing: who falls and who rises was
//! decided there.

use super::Fleet;
use crate::fleet::draft::{Bound, Change, DraftFate, Drafted, UnderDraft};
use crate::report::json::{outcome, verdict};
use crate::report::page::{Page, Tone};
use crate::report::words::{self, Words, compare};
use serde::Serialize;

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
        page.hang(BODY, (sign, tone), (&change(of, under, one), Tone::Plain));
    }
}

/// A finding that changes, and why it is or was open.
pub(super) fn change(of: &Fleet<'_>, under: &UnderDraft, change: &Change) -> String {
    let requirement = change.stands.as_ref().and_then(|(p, at)| p.requirements.get(*at));
    let named = match requirement {
        Some(requirement) => format!("{} ({})", requirement.title, requirement.clause),
        None => format!("`{}`", change.requirement),
    };
    let (then, now) = (compare::outcome(change.then), compare::outcome(change.now));
    let mut text = format!("{named}: {then} → {now}");
    if !change.met_by.is_empty() {
        text.push_str(&format!(" by {}", change.met_by.join(", ")));
    }
    if let Some(reason) = reason(of, under, change) {
        text.push_str(&format!(": {reason}"));
    }
    text
}

fn reason(of: &Fleet<'_>, under: &UnderDraft, change: &Change) -> Option<String> {
    let (profile, finding) = change.open.as_ref()?;
    let vessel = &under.vessel;
    let words = Words { vocabulary: of.vocabulary, vessel, profile, units: of.units };
    Some(words.first_reason(finding))
}

/// The key `draft`.
#[derive(Serialize)]
pub(super) struct DraftJson {
    profile: String,
    rule: String,
    edition: String,
    encoding: u32,
    in_force: SpanJson,
    beside: Vec<String>,
    totals: TotalsJson,
    vessels: Vec<UnderJson>,
}

#[derive(Serialize)]
struct SpanJson {
    from: Option<String>,
    until: Option<String>,
}

#[derive(Serialize)]
struct TotalsJson {
    falls: usize,
    rises: usize,
    cannot_tell: usize,
    released: usize,
    stays_otherwise: usize,
    unaffected: usize,
    not_bound: usize,
}

#[derive(Serialize)]
struct UnderJson {
    file: String,
    name: String,
    register: Option<String>,
    fate: &'static str,
    verdict_in_force: Option<&'static str>,
    verdict_under_draft: Option<&'static str>,
    bound: &'static str,
    changes: Vec<ChangeJson>,
}

#[derive(Serialize)]
struct ChangeJson {
    requirement: String,
    in_force: Option<&'static str>,
    under_draft: Option<&'static str>,
    reason: Option<&'static str>,
    met_by: Vec<String>,
    text: String,
}

impl DraftJson {
    pub(super) fn new(of: &Fleet<'_>, drafted: &Drafted) -> Self {
        let profile = &drafted.profile;
        let tally = drafted.tally();
        Self {
            profile: profile.id.clone(),
            rule: profile.rule.clone(),
            edition: profile.edition.clone(),
            encoding: profile.encoding,
            in_force: SpanJson {
                from: profile.in_force.from.map(|day| day.to_string()),
                until: profile.in_force.until.map(|day| day.to_string()),
            },
            beside: drafted.in_force.clone(),
            totals: TotalsJson {
                falls: tally.falls,
                rises: tally.rises,
                cannot_tell: tally.cannot_tell,
                released: tally.released,
                stays_otherwise: tally.stays_otherwise,
                unaffected: tally.unaffected,
                not_bound: tally.not_bound,
            },
            vessels: drafted.vessels.iter().map(|under| UnderJson::new(of, under)).collect(),
        }
    }
}

impl UnderJson {
    fn new(of: &Fleet<'_>, under: &UnderDraft) -> Self {
        Self {
            file: under.file.clone(),
            name: under.vessel.name.clone(),
            register: under.vessel.register.clone(),
            fate: match under.fate {
                DraftFate::Falls => "falls",
                DraftFate::Rises => "rises",
                DraftFate::CannotTell => "cannot-tell",
                DraftFate::Released => "released",
                DraftFate::Stays => "stays",
            },
            verdict_in_force: under.then.map(verdict),
            verdict_under_draft: under.now.map(verdict),
            bound: match under.bound {
                Bound::Yes => "yes",
                Bound::NotKnown => "not-known",
                Bound::InForceAlone => "in-force-alone",
                Bound::No => "no",
            },
            changes: under.changes.iter().map(|one| ChangeJson::new(of, under, one)).collect(),
        }
    }
}

impl ChangeJson {
    fn new(of: &Fleet<'_>, under: &UnderDraft, one: &Change) -> Self {
        let open = one.open.as_ref().and_then(|(_, finding)| finding.reasons.first());
        Self {
            requirement: one.requirement.clone(),
            in_force: one.then.map(outcome),
            under_draft: one.now.map(outcome),
            reason: open.map(|because| because.reason.code()),
            met_by: one.met_by.clone(),
            text: change(of, under, one),
        }
    }
}
