//! What changed since an earlier audit, as a section of the terminal page.
//!
//! Imports `fleet` and below. Decides nothing: what a change is called and
//! through what it came was decided there.

use super::Fleet;
use crate::fleet::compare::{Cause, Compared, Comparison, Fate, Followed};
use crate::report::page::{Page, Tone, tidy};
use crate::report::words::{Words, compare, fleet};
use std::collections::BTreeSet;

/// Where a vessel's name begins.
const NAME: usize = 2;
/// Where its findings begin.
const BODY: usize = 4;
/// The most vessels that are listed; the JSON has them all.
const MOST_LISTED: usize = 60;

/// The section: counts, then vessel by vessel.
pub(super) fn write(page: &mut Page, of: &Fleet<'_>, comparison: &Comparison) {
    page.gap();
    let by = comparison.auditor.as_ref().map(|name| format!(" by {name}")).unwrap_or_default();
    let heading = format!("Compared with the audit of {}{by}", comparison.then);
    page.prose(0, Tone::Strong, &heading);
    page.prose(NAME, Tone::Plain, &compare::tally(&comparison.tally()));
    page.prose(NAME, Tone::Plain, &compare::vessels(comparison));
    for reservation in compare::reservations(comparison) {
        page.hang(NAME, ("note:", Tone::Open), (&reservation, Tone::Plain));
    }
    let changed = comparison.vessels.iter().filter(|vessel| is_told(vessel));
    let changed: Vec<_> = changed.collect();
    for compared in changed.iter().take(MOST_LISTED) {
        vessel(page, of, compared);
    }
    if let Some(more) = changed.len().checked_sub(MOST_LISTED).filter(|more| *more > 0) {
        let text = format!("and {more} more; `--format json` has them all");
        page.prose(NAME, Tone::Plain, &text);
    }
    alone(page, comparison);
}

/// Whether there is anything to say of a vessel of both audits.
pub(super) fn is_told(vessel: &Compared) -> bool {
    !vessel.findings.is_empty()
        || !vessel.lost.is_empty()
        || !vessel.missing.is_empty()
        || vessel.verdict_then != vessel.verdict_now
        || vessel.refused.is_some()
}

fn named(name: &str, register: Option<&String>) -> String {
    match register {
        Some(register) => format!("{name} ({register})"),
        None => name.to_owned(),
    }
}

fn vessel(page: &mut Page, of: &Fleet<'_>, compared: &Compared) {
    let (then, now) = (Some(compared.verdict_then), Some(compared.verdict_now));
    let (then, now) = (compare::verdict(then), compare::verdict(now));
    let verdict =
        if then == now { format!("{now}, as before") } else { format!("{then} → {now}") };
    let name = named(&compared.name, compared.register.as_ref());
    page.prose(NAME, Tone::Strong, &format!("{name}: {verdict}"));
    for told in compare::records_gone(compared) {
        page.hang(BODY, ("!", Tone::Bad), (&told, Tone::Strong));
    }
    if let Some(refusal) = &compared.refused {
        let why = refusal.problems.first().map(ToString::to_string).unwrap_or_default();
        let text = format!("its old file is refused by today's rules: {why}");
        page.hang(BODY, ("note:", Tone::Open), (&text, Tone::Plain));
    }
    for line in lines(of, compared) {
        let (sign, tone) = match line.fate {
            Fate::Opened => ("!", Tone::Bad),
            Fate::StillOpen => ("-", Tone::Open),
            Fate::Closed if line.unproved => ("?", Tone::Open),
            Fate::Closed | Fate::Passing => ("+", Tone::Good),
        };
        page.hang(BODY, (sign, tone), (&line.text, Tone::Plain));
        if let Some(way) = line.way {
            page.prose(BODY + 2, Tone::Plain, &format!("on the way: {way}"));
        }
    }
}

/// What there is to say of one or several findings.
pub(super) struct Line {
    pub(super) fate: Fate,
    /// Closed by nothing but an inspection record that is gone.
    pub(super) unproved: bool,
    pub(super) text: String,
    pub(super) way: Option<String>,
}

/// The findings of a vessel in lines: what is open each with its reason, the
/// rest together as far as the same is said of it.
pub(super) fn lines(of: &Fleet<'_>, compared: &Compared) -> Vec<Line> {
    let rules = compared.findings.iter().map(|followed| &followed.rule);
    let several = rules.collect::<BTreeSet<_>>().len() > 1;
    let mut lines: Vec<(String, Line)> = Vec::new();
    for followed in &compared.findings {
        let (called, way) = (compare::called(followed), compare::way(followed));
        let what = compare::of(followed, several);
        let reason = reason(of, compared, followed);
        let same = |(head, line): &&mut (String, Line)| *head == called && line.way == way;
        if let Some((_, line)) = lines.iter_mut().find(same).filter(|_| reason.is_none()) {
            line.text.push_str(&format!("; {what}"));
            continue;
        }
        let mut text = format!("{called}: {what}");
        if let Some(reason) = reason {
            text.push_str(&format!(": {reason}"));
        }
        if let Some(then) = &followed.reason_then {
            text.push_str(&format!(" (another reason than then, which was `{then}`)"));
        }
        let unproved = followed.fate == Fate::Closed && followed.cause == Some(Cause::Record);
        lines.push((called, Line { fate: followed.fate, unproved, text, way }));
    }
    lines.into_iter().map(|(_, line)| line).collect()
}

/// Why something is open now, as the audit itself says.
fn reason(of: &Fleet<'_>, compared: &Compared, followed: &Followed) -> Option<String> {
    let (profile, _) = followed.stands.as_ref()?;
    let (finding, vessel) = (followed.open.as_ref()?, compared.vessel.as_deref()?);
    let words = Words { vocabulary: of.vocabulary, vessel, profile, locale: of.locale };
    Some(words.first_reason(finding))
}

/// The vessels of one audit alone.
fn alone(page: &mut Page, comparison: &Comparison) {
    for gone in &comparison.gone {
        let name = named(&gone.name, gone.register.as_ref());
        let verdict = compare::verdict(Some(gone.verdict));
        let text = format!("{name}: {}; {verdict} then", compare::gone(&gone.why));
        page.hang(NAME, ("gone", Tone::Open), (&text, Tone::Plain));
    }
    for new in &comparison.newcomers {
        let name = named(&new.name, new.register.as_ref());
        let verdict = compare::verdict(Some(new.verdict));
        let text = format!("{name}: {verdict}{}", compare::refused_then(new));
        page.hang(NAME, ("new here", Tone::Open), (&text, Tone::Plain));
    }
    for unclear in &comparison.unclear {
        let text = compare::unclear(unclear);
        page.hang(NAME, ("not compared", Tone::Open), (&text, Tone::Plain));
    }
}

/// One line on what came of the comparison, for formats that do not hold it.
pub fn in_one_line(comparison: &Comparison) -> String {
    tidy(&format!(
        "compared with the audit of {}: {}; {}",
        comparison.then,
        compare::tally(&comparison.tally()),
        compare::vessels(comparison)
    ))
}

/// One line on a draft, for formats that do not hold it.
pub fn draft_in_one_line(drafted: &crate::fleet::draft::Drafted) -> String {
    let all = fleet::count(drafted.vessels.len() + drafted.not_bound, "vessel");
    let tally = compare::draft_tally(&drafted.tally());
    tidy(&format!("under the draft `{}`: {all}: {tally}", drafted.profile.id))
}
