//! What changed since an earlier audit, as a section of the terminal page.
//!
//! Imports `fleet` and below. Decides nothing: what a change is called and
//! through what it came was decided there.

use super::Fleet;
use crate::fleet::compare::{Compared, Comparison, Fate, Followed};
use crate::fleet::{Judged, Row};
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

fn is_told(vessel: &Compared) -> bool {
    !vessel.findings.is_empty()
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
    if let Some(refusal) = &compared.refused {
        let why = refusal.problems.first().map(ToString::to_string).unwrap_or_default();
        let text = format!("its old file is refused by today's rules: {why}");
        page.hang(BODY, ("note:", Tone::Open), (&text, Tone::Plain));
    }
    let judged = judged(of, &compared.file);
    for line in lines(of, judged, compared) {
        let (sign, tone) = match line.fate {
            Fate::Opened => ("!", Tone::Bad),
            Fate::StillOpen => ("-", Tone::Open),
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
    pub(super) text: String,
    pub(super) way: Option<String>,
}

/// The findings of a vessel in lines: what was opened each with its reason,
/// the rest together as far as the same is said of it.
pub(super) fn lines(of: &Fleet<'_>, judged: Option<&Judged>, compared: &Compared) -> Vec<Line> {
    let rules = compared.findings.iter().map(|followed| &followed.rule);
    let several = rules.collect::<BTreeSet<_>>().len() > 1;
    let mut lines: Vec<(String, Line)> = Vec::new();
    for followed in &compared.findings {
        let (called, way) = (compare::called(followed), compare::way(followed));
        let what = compare::of(followed, several);
        let opened = followed.fate == Fate::Opened;
        let same = |(head, line): &&mut (String, Line)| *head == called && line.way == way;
        if let Some((_, line)) = lines.iter_mut().find(same).filter(|_| !opened) {
            line.text.push_str(&format!("; {what}"));
            continue;
        }
        let mut text = format!("{called}: {what}");
        if let Some(reason) = judged.filter(|_| opened).and_then(|j| reason(of, j, followed)) {
            text.push_str(&format!(": {reason}"));
        }
        lines.push((called, Line { fate: followed.fate, text, way }));
    }
    lines.into_iter().map(|(_, line)| line).collect()
}

pub(super) fn judged<'a>(of: &Fleet<'a>, file: &str) -> Option<&'a Judged> {
    of.audit.rows.iter().find_map(|row| match row {
        Row::Vessel(judged) if *judged.file == *file => Some(&**judged),
        _ => None,
    })
}

/// Why something is open now, as the audit itself says.
fn reason(of: &Fleet<'_>, judged: &Judged, followed: &Followed) -> Option<String> {
    let (profile, at) = followed.stands.as_ref()?;
    let judgements = judged.check.judgements.iter();
    let judgement = judgements.into_iter().find(|j| j.profile.id == profile.id)?;
    let finding = judgement.findings.iter().find(|finding| finding.requirement == *at)?;
    let words = Words {
        vocabulary: of.vocabulary,
        vessel: &judged.check.vessel,
        profile: &judgement.profile,
        units: of.units,
    };
    Some(words.first_reason(finding))
}

/// The vessels of one audit alone.
fn alone(page: &mut Page, comparison: &Comparison) {
    for gone in &comparison.gone {
        let name = named(&gone.name, gone.register.as_ref());
        let verdict = compare::verdict(Some(gone.verdict));
        let text = format!("{name}: {}; {verdict} then", compare::gone(gone.why));
        page.hang(NAME, ("gone", Tone::Open), (&text, Tone::Plain));
    }
    for new in &comparison.newcomers {
        let name = named(&new.name, new.register.as_ref());
        let refused = if new.refused_then { "; its file was refused then" } else { "" };
        let text = format!("{name}: {}{refused}", compare::verdict(Some(new.verdict)));
        page.hang(NAME, ("new", Tone::Open), (&text, Tone::Plain));
    }
    for name in &comparison.unclear {
        let text = format!("{name}: several are called so, with no register that tells them apart");
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
