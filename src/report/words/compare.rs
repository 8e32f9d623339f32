//! Words for audits on record: what is wrong with a record, what changed
//! between two audits and through what, what a draft would do.
//!
//! Imports `fleet`, `model` and `measure` only.

use crate::fleet::compare::{
    Candidate, Cause, Compared, Comparison, Fate, Followed, Lost, Newcomer, Shared, Tally, Unclear,
    WhyGone,
};
use crate::fleet::draft::{Bound, Change, DraftFate, DraftTally, UnderDraft};
use crate::fleet::record::{Broken, FindingOnRecord};
use crate::model::finding::{Outcome, Verdict};
use crate::report::subject::Fleet;
use crate::report::words::Words;

/// What a record can and cannot prove.
pub(crate) const NO_SEAL: &str = "A digest shows that an input was changed, not by whom; a record \
    is no sealed document. Keep it where nobody else can write.";

/// Why a text is no record.
pub(crate) fn broken(broken: &Broken) -> String {
    match broken {
        Broken::Shape { line, column, what } => format!("line {line}, column {column}: {what}"),
        Broken::Schema { found } => {
            format!("its schema is `{found}`; expected `{}`", crate::fleet::record::SCHEMA)
        }
        Broken::Changed { file, expected, found } => {
            format!("the input `{file}` was changed: its digest is {found}, expected {expected}")
        }
        Broken::Torn { what } => what.clone(),
    }
}

/// Codes in a row, or that there are none.
pub(crate) fn codes(codes: &[String]) -> String {
    if codes.is_empty() { "none".to_owned() } else { codes.join(", ") }
}

/// An outcome in the middle of a sentence.
pub(crate) fn outcome(outcome: Option<Outcome>) -> &'static str {
    match outcome {
        Some(Outcome::Met) => "met",
        Some(Outcome::CannotTell) => "can't tell",
        Some(Outcome::NotMet) => "not met",
        None => "not asked",
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
            parts.push(format!("by {}", f.tools.join(", ")));
        }
        parts.extend(f.reasons.iter().map(|reason| {
            let tool = reason.tool.as_ref().map(|tool| format!(" {tool}")).unwrap_or_default();
            let by = reason.by_nanometres.map(|by| format!(" by {by} nm")).unwrap_or_default();
            format!("{}{tool}{by}", reason.code)
        }));
        parts.extend(f.freeboard_nanometres.map(|nm| format!("at a freeboard of {nm} nm")));
        parts.push(format!("on {}", f.day));
        parts.join("; ")
    };
    (full(then), full(now))
}

/// How many findings came out how, what there is none of left out.
pub(crate) fn tally(tally: &Tally) -> String {
    let told = [
        (tally.mended, "mended"),
        (tally.settled, "settled"),
        (tally.record_gone, "without the record that found it"),
        (tally.new, "newly open"),
        (tally.lapsed, "open through the calendar"),
        (tally.opened_otherwise, "opened without a change on the vessel"),
        (tally.closed_otherwise, "closed without a mend"),
        (tally.passing, "opened and closed in between"),
        (tally.still_open, "still open"),
    ];
    match in_a_row(&told) {
        Some(told) => format!("findings: {told}"),
        None => "findings: none of a vessel in both audits was open then or is open now".to_owned(),
    }
}

fn in_a_row(counts: &[(usize, &str)]) -> Option<String> {
    let some = counts.iter().filter(|(number, _)| *number > 0);
    let told: Vec<_> = some.map(|(number, what)| format!("{number} {what}")).collect();
    (!told.is_empty()).then(|| told.join(", "))
}

/// How many vessels are compared, and which are in one audit alone.
pub(crate) fn vessels(comparison: &Comparison) -> String {
    let groups: usize = comparison.unclear.iter().map(|one| one.then.len() + one.now.len()).sum();
    let counts = [
        (comparison.gone.len(), "gone"),
        (comparison.newcomers.len(), "new here"),
        (groups, "not compared: which is which cannot be told"),
    ];
    let both = format!("vessels: {} in both audits", comparison.vessels.len());
    match in_a_row(&counts) {
        Some(told) => format!("{both}, {told}"),
        None => both,
    }
}

/// What to bear in mind when reading a comparison.
pub(crate) fn reservations(comparison: &Comparison) -> Vec<String> {
    let mut told = Vec::new();
    let open: usize = comparison.gone.iter().map(|gone| gone.open).sum();
    if open > 0 {
        let open = super::fleet::count(open, "finding");
        told.push(format!("{open} open then on vessels that are gone; nobody looked again"));
    }
    if comparison.other_selection {
        told.push("other vessels were selected then; who is gone or new may be that".to_owned());
    }
    if let Some(refusal) = &comparison.rules_refused {
        let why = refusal.problems.first().map(ToString::to_string).unwrap_or_default();
        told.push(format!(
            "the rules on record are refused by this program, so that what it judges otherwise \
             cannot be told from what the rules ask otherwise: {why}"
        ));
    }
    told
}

/// What a finding is called after two audits.
pub(crate) fn called(followed: &Followed) -> String {
    let through = |cause: Option<Cause>| cause.map_or("", through);
    match (followed.fate, followed.cause) {
        (Fate::StillOpen, _) => {
            let since = followed.since.map(|day| format!(" since {day}")).unwrap_or_default();
            format!("still open{since}")
        }
        (Fate::Opened, cause) if followed.requirement.is_none() => {
            format!("can't be told now, {}", through(cause))
        }
        (Fate::Opened, cause) => {
            let first = |day| format!("open again, first found open on {day}");
            match (followed.since.map(first), cause) {
                (Some(again), Some(Cause::Vessel)) => again,
                (None, Some(Cause::Vessel)) => "newly open".to_owned(),
                (Some(again), cause) => format!("{again}, {}", through(cause)),
                (None, cause) => format!("open {}", through(cause)),
            }
        }
        (Fate::Closed, _) if followed.is_mended() => "mended".to_owned(),
        (Fate::Closed, _) if followed.is_settled() => "settled: it is met".to_owned(),
        (Fate::Closed, Some(Cause::Record)) => {
            "not put right, only without the record that found it".to_owned()
        }
        (Fate::Closed, cause) if followed.requirement.is_none() => {
            format!("can be told now, {}", through(cause))
        }
        (Fate::Closed, cause) if followed.now.is_none() => {
            format!("no longer asked, {}", through(cause))
        }
        (Fate::Closed, cause) => format!("closed {}", through(cause)),
        (Fate::Passing, cause) => format!("opened in between, closed again {}", through(cause)),
    }
}

/// Through what an outcome changed.
pub(crate) fn through(cause: Cause) -> &'static str {
    match cause {
        Cause::Program => "through this program",
        Cause::Encoding => "through a corrected encoding",
        Cause::RuleFile => "through other files of the rules",
        Cause::Asked => "through what was asked",
        Cause::Edition => "through another edition of the rule",
        Cause::Calendar => "through the calendar",
        Cause::Vessel => "through the vessel",
        Cause::Record => "through an inspection record that is not laid over now",
        Cause::Untold => "through something that cannot be told",
    }
}

/// Every change on the way, where one word does not say it all.
pub(crate) fn way(followed: &Followed) -> Option<String> {
    let still = followed.fate == Fate::StillOpen;
    if followed.flips.len() < if still { 1 } else { 2 } {
        return None;
    }
    let told = followed.flips.iter().map(|flip| {
        format!("{} to {} {}", outcome(flip.from), outcome(flip.to), through(flip.cause))
    });
    Some(told.collect::<Vec<_>>().join(", then "))
}

/// What is followed: the requirement with its clause, and its rule where
/// there are several.
pub(crate) fn of(followed: &Followed, several: bool) -> String {
    let rule = &followed.rule;
    let in_rule = if several { format!(" [{rule}]") } else { String::new() };
    let Some(id) = &followed.requirement else { return format!("`{rule}` as a whole") };
    let requirement = followed.stands.as_ref().and_then(|(p, at)| p.requirements.get(*at));
    match requirement {
        Some(requirement) => format!("{} ({}){in_rule}", requirement.title, requirement.clause),
        None => format!("`{id}`{in_rule}"),
    }
}

/// Why a vessel is in the earlier audit alone.
pub(crate) fn gone(why: &WhyGone) -> String {
    match why {
        WhyGone::NotThere => "no file of it here".to_owned(),
        WhyGone::NotRead => "its file is refused now".to_owned(),
        WhyGone::MayBe(file) => format!("its file may be `{file}`, which could not be read"),
        WhyGone::Outside => "outside what is selected now".to_owned(),
    }
}

/// That the file of a vessel of the later audit alone was refused then, or may
/// have been.
pub(crate) fn refused_then(new: &Newcomer) -> String {
    match &new.may_be {
        _ if new.refused_then => "; its file was refused then".to_owned(),
        Some(file) => format!("; its file may be `{file}`, which could not be read then"),
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
            format!("`{id}`, open since {}", kept.open_since)
        });
        let ids: Vec<_> = ids.collect();
        told.push(format!(
            "an inspection record that was missing then already is still not laid over; it had \
             found: {}",
            ids.join("; ")
        ));
    }
    told
}

/// Which inspection record is not laid over any more.
fn lost(lost: &Lost) -> String {
    let file = &lost.file;
    if lost.changed {
        return format!("the inspection record `{file}` says something else now than it did then");
    }
    format!(
        "the inspection record `{file}`, laid over then, is not laid over now; nothing is put \
         right by that"
    )
}

/// Which vessels are not compared, and why.
pub(crate) fn unclear(unclear: &Unclear) -> String {
    let named = |list: &[Candidate]| {
        let one = |c: &Candidate| format!("{} (`{}`)", c.name, c.file);
        let all: Vec<_> = list.iter().map(one).collect();
        if all.is_empty() { "none other".to_owned() } else { all.join(", ") }
    };
    let why = match unclear.by {
        Shared::Register(then, now) => {
            let of = unclear.now.iter().chain(&unclear.then).find_map(|c| c.register.clone());
            let (then, now) = (super::fleet::count(then, "file"), super::fleet::count(now, "file"));
            format!(
                "register {} stood in {then} then and stands in {now} now",
                of.unwrap_or_default()
            )
        }
        Shared::Name => "several are called so, with no register that tells them apart".to_owned(),
    };
    format!("then {}; now {}: {why}", named(&unclear.then), named(&unclear.now))
}

/// A verdict in the middle of a sentence; none where nothing binds.
pub(crate) fn verdict(verdict: Option<Verdict>) -> String {
    verdict.map_or("not bound".to_owned(), |verdict| super::verdict(verdict).to_lowercase())
}

/// How many vessels come out how under a draft.
pub(crate) fn draft_tally(tally: &DraftTally) -> String {
    let told = [
        (tally.falls, "fall"),
        (tally.rises, "rise"),
        (tally.cannot_tell, "can't be told"),
        (tally.released, "released"),
        (tally.stays_otherwise, "stay with other findings"),
        (tally.unaffected, "unaffected"),
        (tally.not_bound, "not bound"),
    ];
    in_a_row(&told).unwrap_or_else(|| "no vessel".to_owned())
}

/// What becomes of a vessel under a draft.
pub(crate) fn draft_fate(fate: DraftFate) -> &'static str {
    match fate {
        DraftFate::Falls => "FALLS",
        DraftFate::Rises => "RISES",
        DraftFate::CannotTell => "CAN'T TELL",
        DraftFate::Released => "RELEASED",
        DraftFate::Stays => "STAYS",
    }
}

/// Whether a draft binds a vessel by its own words.
pub(crate) fn bound(bound: Bound) -> Option<&'static str> {
    match bound {
        Bound::Yes => None,
        Bound::NotKnown => Some("whether the draft binds it is not known"),
        Bound::InForceAlone => {
            Some("the draft does not say whom it binds; bound by the edition in force")
        }
        Bound::No => Some("bound by the edition in force, not by the draft"),
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
        text.push_str(&format!(" by {}", change.met_by.join(", ")));
    }
    if let Some(reason) = first_reason(of, under, change) {
        text.push_str(&format!(": {reason}"));
    }
    text
}

fn first_reason(of: &Fleet<'_>, under: &UnderDraft, change: &Change) -> Option<String> {
    let (profile, finding) = change.open.as_ref()?;
    let vessel = &under.vessel;
    let words = Words { vocabulary: of.vocabulary, vessel, profile, units: of.units };
    Some(words.first_reason(finding))
}
