//! What changed since an earlier audit, and what a draft would do: parts of
//! an audit's page.
//!
//! Decides nothing: what a change is called and through what it came was
//! decided below.

use super::{Block, Inline, Item, Lead, Line, Role, Section, Tone, more};
use crate::fleet::compare::{Cause, Compared, Comparison, Fate, Followed};
use crate::fleet::draft::{DraftFate, Drafted, UnderDraft};
use crate::model::profile::Profile;
use crate::report::Locale;
use crate::report::render::lines::tidy;
use crate::report::subject::Fleet;
use crate::report::words::locale::desk;
use crate::report::words::{self, Words, compare};
use std::collections::BTreeSet;

/// What changed since an earlier audit: counts, then vessel by vessel.
pub(super) fn against(of: &Fleet<'_>, comparison: &Comparison, most: usize) -> Block {
    let heading = match &comparison.auditor {
        Some(auditor) => desk::compare_with_by(&comparison.then, auditor),
        None => desk::compare_with(&comparison.then),
    };
    let mut body = vec![
        Block::Paragraph(compare::tally(&comparison.tally()).into()),
        Block::Paragraph(compare::vessels(comparison).into()),
    ];
    let reservations = compare::reservations(comparison).into_iter();
    body.extend(reservations.map(|text| Item::new(Lead::Note(Tone::Open), text).into()));
    let changed: Vec<_> = comparison.vessels.iter().filter(|vessel| is_told(vessel)).collect();
    body.extend(changed.iter().take(most).flat_map(|compared| vessel(of, compared)));
    body.extend(more(changed.len(), most, of.locale));
    body.extend(alone(comparison));
    Section::block(Role::Part, heading, body)
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

fn vessel(of: &Fleet<'_>, compared: &Compared) -> Vec<Block> {
    let (then, now) = (compared.verdict_then, compared.verdict_now);
    let name = named(&compared.name, compared.register.as_ref());
    let heading = Line::strong(format!("{name}: "));
    let heading = match then == now {
        true => heading.and(Inline::Verdict(now)).and(format!(", {}", desk::compare_as_before())),
        false => heading.and(Inline::Verdict(then)).and(" → ").and(Inline::Verdict(now)),
    };
    let mut below: Vec<Block> = compare::records_gone(compared)
        .into_iter()
        .map(|told| Item::new(Lead::Worse, Line::strong(told)).into())
        .collect();
    if let Some(refusal) = &compared.refused {
        let why = refusal.problems.first().map(ToString::to_string).unwrap_or_default();
        let text = desk::compare_old_file_refused(&why);
        below.push(Item::new(Lead::Note(Tone::Open), text).into());
    }
    for line in lines(of, compared) {
        let lead = match line.fate {
            Fate::Opened => Lead::Worse,
            Fate::StillOpen => Lead::Bullet(Tone::Open),
            Fate::Closed if line.unproved => Lead::Unproved,
            Fate::Closed | Fate::Passing => Lead::Better,
        };
        let way = line.way.map(|way| Block::Paragraph(desk::compare_on_the_way(&way).into()));
        below.push(Item::new(lead, line.text).with(way.into_iter().collect()).into());
    }
    vec![Block::Paragraph(heading), Block::Within(below)]
}

/// What there is to say of one or several findings.
struct Change {
    fate: Fate,
    /// Closed by nothing but an inspection record that is gone, or another mark.
    unproved: bool,
    text: String,
    way: Option<String>,
}

/// The findings of a vessel in lines: what is open each with its reason, the
/// rest together as far as the same is said of it.
fn lines(of: &Fleet<'_>, compared: &Compared) -> Vec<Change> {
    let rules = compared.findings.iter().map(|followed| &followed.rule);
    let several = rules.collect::<BTreeSet<_>>().len() > 1;
    let mut lines: Vec<(String, Change)> = Vec::new();
    for followed in &compared.findings {
        let (called, way) = (compare::called(followed), compare::way(followed));
        let what = compare::of(followed, several);
        let reason = reason(of, compared, followed);
        let same = |(head, line): &&mut (String, Change)| *head == called && line.way == way;
        if let Some((_, line)) = lines.iter_mut().find(same).filter(|_| reason.is_none()) {
            line.text.push_str(&format!("; {what}"));
            continue;
        }
        let mut text = format!("{called}: {what}");
        if let Some(reason) = reason {
            text.push_str(&format!(": {reason}"));
        }
        if let Some(then) = &followed.reason_then {
            text = desk::compare_another_reason(&text, then);
        }
        let gone = followed.cause == Some(Cause::Record) || followed.renamed.is_some();
        let unproved = followed.fate == Fate::Closed && gone;
        lines.push((called, Change { fate: followed.fate, unproved, text, way }));
    }
    lines.into_iter().map(|(_, line)| line).collect()
}

/// Why something is open now, as the audit itself says.
fn reason(of: &Fleet<'_>, compared: &Compared, followed: &Followed) -> Option<String> {
    let (profile, _) = followed.stands.as_ref()?;
    let (finding, vessel) = (followed.open.as_ref()?, compared.vessel.as_deref()?);
    let words =
        Words { vocabulary: of.vocabulary, vessel, profile, findings: &[], locale: of.locale };
    Some(words.first_reason(finding))
}

/// The vessels of one audit alone.
fn alone(comparison: &Comparison) -> Vec<Block> {
    let item =
        |word: &str, text: Line| Item::new(Lead::Word(word.to_owned(), Tone::Open), text).into();
    let gone = comparison.gone.iter().map(|gone| {
        let name = named(&gone.name, gone.register.as_ref());
        let why = Line::from(format!("{name}: {}; ", compare::gone(&gone.why)));
        let then = format!(" {}", desk::compare_verdict_then());
        item(desk::compare_gone(), why.and(Inline::Verdict(gone.verdict)).and(then))
    });
    let new = comparison.newcomers.iter().map(|new| {
        let name = named(&new.name, new.register.as_ref());
        let verdict = Line::from(format!("{name}: ")).and(Inline::Verdict(new.verdict));
        item(desk::compare_new_here(), verdict.and(compare::refused_then(new)))
    });
    let unclear = comparison.unclear.iter();
    let unclear =
        unclear.map(|one| item(desk::compare_not_compared(), compare::unclear(one).into()));
    gone.chain(new).chain(unclear).collect()
}

/// What a draft would do: counts, then the vessels with a finding that
/// changes.
pub(super) fn draft(of: &Fleet<'_>, drafted: &Drafted, most: usize) -> Block {
    let mut body = vec![
        Block::Paragraph(beside(drafted, of.locale).into()),
        Block::Paragraph(compare::draft_tally(&drafted.tally()).into()),
    ];
    let told = drafted.vessels.iter();
    let mut told: Vec<_> = told.filter(|v| !v.changes.is_empty() || v.then != v.now).collect();
    told.sort_by_key(|vessel| vessel.fate);
    body.extend(told.iter().take(most).map(|under| under_draft(of, under)));
    body.extend(more(told.len(), most, of.locale));
    Section::block(Role::Part, desk::draft_heading(&drafted.profile.id), body)
}

/// What it is judged beside.
fn beside(drafted: &Drafted, locale: Locale) -> String {
    let Profile { title, edition, in_force, .. } = &*drafted.profile;
    let days = words::span(*in_force, locale);
    if drafted.in_force.is_empty() {
        return desk::draft_alone(title, edition, &days);
    }
    let ids: Vec<_> = drafted.in_force.iter().map(|id| format!("`{id}`")).collect();
    desk::draft_beside(title, edition, &days, &ids.join(", "))
}

fn under_draft(of: &Fleet<'_>, under: &UnderDraft) -> Block {
    let tone = match under.fate {
        DraftFate::Falls => Tone::Bad,
        DraftFate::Rises => Tone::Good,
        DraftFate::CannotTell => Tone::Open,
        DraftFate::Released | DraftFate::Stays => Tone::Plain,
    };
    let bound = compare::bound(under.bound);
    let bound = bound.map(|bound| Item::new(Lead::Note(Tone::Open), bound).into());
    let changes = under.changes.iter().map(|one| {
        let lead = if one.is_worse() { Lead::Worse } else { Lead::Better };
        Item::new(lead, compare::draft_change(of, under, one)).into()
    });
    let (then, now) =
        (compare::verdict(under.then, of.locale), compare::verdict(under.now, of.locale));
    let text = Line::strong(format!("{}: {then} → {now}", under.vessel.name));
    let label = format!("{:<10}", compare::draft_fate(under.fate));
    Item::new(Lead::Word(label, tone), text).with(bound.into_iter().chain(changes).collect()).into()
}

/// One line on what came of the comparison, for formats that do not hold it.
pub fn in_one_line(comparison: &Comparison) -> String {
    tidy(&desk::compare_in_one_line(
        &comparison.then,
        &compare::tally(&comparison.tally()),
        &compare::vessels(comparison),
    ))
}

/// One line on a draft, for formats that do not hold it.
pub fn draft_in_one_line(drafted: &Drafted) -> String {
    let vessels = drafted.vessels.len() + drafted.not_bound;
    let counts = compare::draft_tally(&drafted.tally());
    tidy(&desk::draft_in_one_line(&drafted.profile.id, vessels, &counts))
}
