//! Words for audits on record: what is wrong with a record, what changed
//! between two audits and through what, what a draft would do.
//!
//! Imports `fleet`, `model` and `measure` only.

use crate::fleet::compare::{
    Candidate, Cause, Compared, Comparison, Fate, Followed, Lost, Newcomer, Shared, Tally, Unclear,
    WhyGone,
};
use crate::fleet::draft::{Bound, Change, DraftFate, DraftTally, UnderDraft};
use crate::fleet::record::{self, Broken, FindingOnRecord};
use crate::model::finding::{Outcome, Verdict};
use crate::report::Locale;
use crate::report::subject::Fleet;
use crate::report::words::Words;
use crate::report::words::locale::desk;
use std::fmt::Display;

/// Why a text is no record.
pub(crate) fn broken(broken: &Broken) -> String {
    match broken {
        Broken::Shape { line, column, what } => desk::record_at(line, column, what),
        Broken::Schema { found } => desk::record_schema(found, &record::SCHEMA),
        Broken::Changed { file, expected, found } => desk::record_changed(file, found, expected),
        Broken::Torn { what } => what.clone(),
    }
}

/// Codes in a row, or that there are none.
pub(crate) fn codes(codes: &[String]) -> String {
    if codes.is_empty() { desk::record_no_codes().to_owned() } else { codes.join(", ") }
}

/// An outcome in the middle of a sentence.
pub(crate) fn outcome(outcome: Option<Outcome>) -> &'static str {
    match outcome {
        Some(Outcome::Met) => desk::record_met(),
        Some(Outcome::CannotTell) => desk::record_cannot_tell(),
        Some(Outcome::NotMet) => desk::record_not_met(),
        None => desk::record_not_asked(),
    }
}

/// Two findings of one requirement in short, with what tells them apart.
pub(crate) fn findings(
    then: Option<&FindingOnRecord>,
    now: Option<&FindingOnRecord>,
) -> (String, String) {
    let plain = |f: Option<&FindingOnRecord>| outcome(f.map(|f| f.outcome)).to_owned();
    if then.map(|f| f.outcome) != now.map(|f| f.outcome) {
        return (plain(then), plain(now));
    }
    let full = |f: Option<&FindingOnRecord>| {
        let Some(f) = f else { return plain(None) };
        let mut parts = vec![plain(Some(f))];
        if !f.tools.is_empty() {
            parts.push(desk::record_by_tools(&f.tools.join(", ")));
        }
        parts.extend(f.reasons.iter().map(|reason| {
            let told = match &reason.tool {
                Some(tool) => format!("{} {tool}", reason.code),
                None => reason.code.clone(),
            };
            match reason.by_nanometres {
                Some(by) => desk::record_reason_by(&told, &by),
                None => told,
            }
        }));
        parts.extend(f.freeboard_nanometres.map(|nm| desk::record_at_freeboard(&nm)));
        parts.push(desk::record_on_day(&f.day));
        parts.join("; ")
    };
    (full(then), full(now))
}

/// How many findings came out how, what there is none of left out.
pub(crate) fn tally(tally: &Tally) -> String {
    let told = in_a_row(&[
        (tally.mended, desk::compare_count_mended),
        (tally.settled, desk::compare_count_settled),
        (tally.record_gone, desk::compare_count_record_gone),
        (tally.new, desk::compare_count_new),
        (tally.lapsed, desk::compare_count_lapsed),
        (tally.opened_otherwise, desk::compare_count_opened_otherwise),
        (tally.closed_otherwise, desk::compare_count_closed_otherwise),
        (tally.passing, desk::compare_count_passing),
        (tally.still_open, desk::compare_count_still_open),
    ]);
    match told {
        Some(told) => desk::compare_findings(&told),
        None => desk::compare_no_findings().to_owned(),
    }
}

/// A number of something as it is told.
type Told = fn(&dyn Display) -> String;

fn in_a_row(counts: &[(usize, Told)]) -> Option<String> {
    let some = counts.iter().filter(|(number, _)| *number > 0);
    let told: Vec<_> = some.map(|(number, told)| told(number)).collect();
    (!told.is_empty()).then(|| told.join(", "))
}

/// How many vessels are compared, and which are in one audit alone.
pub(crate) fn vessels(comparison: &Comparison) -> String {
    let groups: usize = comparison.unclear.iter().map(|one| one.then.len() + one.now.len()).sum();
    let rest = in_a_row(&[
        (comparison.gone.len(), desk::compare_count_gone),
        (comparison.newcomers.len(), desk::compare_count_new_here),
        (groups, desk::compare_count_unclear),
    ]);
    let both = desk::compare_vessels(&comparison.vessels.len());
    std::iter::once(both).chain(rest).collect::<Vec<_>>().join(", ")
}

/// What to bear in mind when reading a comparison.
pub(crate) fn reservations(comparison: &Comparison) -> Vec<String> {
    let mut told = Vec::new();
    let open: usize = comparison.gone.iter().map(|gone| gone.open).sum();
    if open > 0 {
        told.push(desk::compare_open_and_gone(open));
    }
    if comparison.other_selection {
        told.push(desk::compare_other_selection().to_owned());
    }
    if let Some(refusal) = &comparison.rules_refused {
        let why = refusal.problems.first().map(ToString::to_string).unwrap_or_default();
        told.push(desk::compare_rules_refused(&why));
    }
    told
}

/// What a finding is called after two audits.
pub(crate) fn called(followed: &Followed) -> String {
    let through = followed.cause.map_or("", through);
    match (followed.fate, followed.cause) {
        (Fate::StillOpen, _) => match followed.since {
            Some(day) => desk::compare_still_open_since(&day),
            None => desk::compare_still_open().to_owned(),
        },
        (Fate::Opened, _) if followed.requirement.is_none() => desk::compare_untold_now(&through),
        (Fate::Opened, cause) => match (followed.since, cause) {
            (Some(day), Some(Cause::Vessel)) => desk::compare_open_again(&day),
            (None, Some(Cause::Vessel)) => desk::compare_newly_open().to_owned(),
            (Some(day), _) => desk::compare_open_again_through(&day, &through),
            (None, _) => desk::compare_open(&through),
        },
        (Fate::Closed, _) if let Some(marks) = &followed.renamed => {
            desk::compare_renamed(&marks.now, &marks.then)
        }
        (Fate::Closed, _) if followed.is_mended() => desk::compare_mended().to_owned(),
        (Fate::Closed, _) if followed.is_settled() => desk::compare_settled().to_owned(),
        (Fate::Closed, Some(Cause::Record)) => desk::compare_record_gone().to_owned(),
        (Fate::Closed, _) if followed.requirement.is_none() => desk::compare_told_now(&through),
        (Fate::Closed, _) if followed.now.is_none() => desk::compare_no_longer_asked(&through),
        (Fate::Closed, _) => desk::compare_closed(&through),
        (Fate::Passing, _) => desk::compare_passing(&through),
    }
}

/// Through what an outcome changed.
fn through(cause: Cause) -> &'static str {
    match cause {
        Cause::Program => desk::compare_through_program(),
        Cause::Encoding => desk::compare_through_encoding(),
        Cause::RuleFile => desk::compare_through_rule_file(),
        Cause::Asked => desk::compare_through_asked(),
        Cause::Edition => desk::compare_through_edition(),
        Cause::Calendar => desk::compare_through_calendar(),
        Cause::Vessel => desk::compare_through_vessel(),
        Cause::Record => desk::compare_through_record(),
        Cause::Untold => desk::compare_through_untold(),
    }
}

/// Every change on the way, where one word does not say it all.
pub(crate) fn way(followed: &Followed) -> Option<String> {
    let still = followed.fate == Fate::StillOpen;
    if followed.flips.len() < if still { 1 } else { 2 } {
        return None;
    }
    let told = followed.flips.iter().map(|flip| {
        desk::compare_flip(&outcome(flip.from), &outcome(flip.to), &through(flip.cause))
    });
    told.reduce(|before, flip| desk::compare_then(&before, &flip))
}

/// What is followed: the requirement with its clause, and its rule where
/// there are several.
pub(crate) fn of(followed: &Followed, several: bool) -> String {
    let rule = &followed.rule;
    let in_rule = if several { format!(" [{rule}]") } else { String::new() };
    let Some(id) = &followed.requirement else { return desk::compare_as_a_whole(rule) };
    let requirement = followed.stands.as_ref().and_then(|(p, at)| p.requirements.get(*at));
    match requirement {
        Some(requirement) => format!("{} ({}){in_rule}", requirement.title, requirement.clause),
        None => format!("`{id}`{in_rule}"),
    }
}

/// Why a vessel is in the earlier audit alone.
pub(crate) fn gone(why: &WhyGone) -> String {
    match why {
        WhyGone::NotThere => desk::compare_gone_no_file().to_owned(),
        WhyGone::NotRead => desk::compare_gone_refused().to_owned(),
        WhyGone::MayBe(file) => desk::compare_gone_may_be(file),
        WhyGone::Outside => desk::compare_gone_outside().to_owned(),
    }
}

/// That the file of a vessel of the later audit alone was refused then, or may
/// have been.
pub(crate) fn refused_then(new: &Newcomer) -> String {
    match &new.may_be {
        _ if new.refused_then => desk::compare_new_refused().to_owned(),
        Some(file) => desk::compare_new_may_be(file),
        None => String::new(),
    }
}

/// Which inspection records are not laid over a vessel any more, and what
/// records found that were missing then already.
pub(crate) fn records_gone(compared: &Compared) -> Vec<String> {
    let mut told: Vec<_> = compared.lost.iter().map(lost).collect();
    if !compared.missing.is_empty() {
        let ids = compared.missing.iter().map(|kept| {
            let id = kept.requirement.as_ref().unwrap_or(&kept.rule);
            desk::compare_open_since(id, &kept.open_since)
        });
        told.push(desk::compare_record_missing(&ids.collect::<Vec<_>>().join("; ")));
    }
    told
}

/// Which inspection record is not laid over any more.
fn lost(lost: &Lost) -> String {
    match lost.changed {
        true => desk::compare_record_changed(&lost.file),
        false => desk::compare_record_lost(&lost.file),
    }
}

/// Which vessels are not compared, and why.
pub(crate) fn unclear(unclear: &Unclear) -> String {
    let named = |list: &[Candidate]| {
        let one = |c: &Candidate| format!("{} (`{}`)", c.name, c.file);
        let all: Vec<_> = list.iter().map(one).collect();
        if all.is_empty() { desk::compare_none_other().to_owned() } else { all.join(", ") }
    };
    let why = match unclear.by {
        Shared::Register(then, now) => {
            let of = unclear.now.iter().chain(&unclear.then).find_map(|c| c.register.clone());
            desk::compare_same_register(&of.unwrap_or_default(), then, now)
        }
        Shared::Name => desk::compare_same_name().to_owned(),
    };
    desk::compare_unclear(&named(&unclear.then), &named(&unclear.now), &why)
}

/// A verdict in the middle of a sentence; none where nothing binds.
pub(crate) fn verdict(verdict: Option<Verdict>, locale: Locale) -> &'static str {
    match verdict {
        Some(verdict) => locale.verdict(verdict),
        None => desk::record_not_bound(),
    }
}

/// How many vessels come out how under a draft.
pub(crate) fn draft_tally(tally: &DraftTally) -> String {
    let told = in_a_row(&[
        (tally.falls, desk::compare_draft_falls),
        (tally.rises, desk::compare_draft_rises),
        (tally.cannot_tell, desk::compare_draft_cannot_tell),
        (tally.released, desk::compare_draft_released),
        (tally.stays_otherwise, desk::compare_draft_stays_otherwise),
        (tally.unaffected, desk::compare_draft_unaffected),
        (tally.not_bound, desk::compare_draft_not_bound),
    ]);
    told.unwrap_or_else(|| desk::compare_draft_no_vessel().to_owned())
}

/// What becomes of a vessel under a draft.
pub(crate) fn draft_fate(fate: DraftFate) -> &'static str {
    match fate {
        DraftFate::Falls => desk::compare_fate_falls(),
        DraftFate::Rises => desk::compare_fate_rises(),
        DraftFate::CannotTell => desk::compare_fate_cannot_tell(),
        DraftFate::Released => desk::compare_fate_released(),
        DraftFate::Stays => desk::compare_fate_stays(),
    }
}

/// Whether a draft binds a vessel by its own words.
pub(crate) fn bound(bound: Bound) -> Option<&'static str> {
    match bound {
        Bound::Yes => None,
        Bound::NotKnown => Some(desk::compare_bound_not_known()),
        Bound::InForceAlone => Some(desk::compare_bound_in_force_alone()),
        Bound::No => Some(desk::compare_bound_no()),
    }
}

/// A finding that changes, and why it is or was open.
pub(crate) fn draft_change(of: &Fleet<'_>, under: &UnderDraft, change: &Change) -> String {
    let requirement = change.stands.as_ref().and_then(|(p, at)| p.requirements.get(*at));
    let named = match requirement {
        Some(requirement) => format!("{} ({})", requirement.title, requirement.clause),
        None => format!("`{}`", change.requirement),
    };
    let (then, now) = (outcome(change.then), outcome(change.now));
    let mut text = format!("{named}: {then} → {now}");
    if !change.met_by.is_empty() {
        text = desk::draft_met_by(&text, &change.met_by.join(", "));
    }
    if let Some(reason) = first_reason(of, under, change) {
        text.push_str(&format!(": {reason}"));
    }
    text
}

fn first_reason(of: &Fleet<'_>, under: &UnderDraft, change: &Change) -> Option<String> {
    let (profile, finding) = change.open.as_ref()?;
    let vessel = &under.vessel;
    let (vocabulary, findings, locale) = (of.vocabulary, &[][..], of.locale);
    let words = Words { vocabulary, vessel, profile, findings, locale };
    Some(words.first_reason(finding))
}
