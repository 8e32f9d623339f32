//! Words for audits on record: what is wrong with a record, what changed
//! between two audits and through what, what a draft would do.
//!
//! Imports `fleet`, `model` and `measure` only.

use crate::fleet::compare::{Cause, Comparison, Fate, Followed, Tally, WhyGone};
use crate::fleet::draft::{Bound, DraftFate, DraftTally};
use crate::fleet::record::{Broken, FindingOnRecord};
use crate::model::finding::{Outcome, Verdict};

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
        (tally.new, "new"),
        (tally.lapsed, "open through the calendar"),
        (tally.opened_otherwise, "opened without a change on the vessel"),
        (tally.closed_otherwise, "closed without a mend"),
        (tally.passing, "opened and closed in between"),
        (tally.still_open, "still open"),
    ];
    in_a_row(&told).unwrap_or_else(|| "no finding was open then or is open now".to_owned())
}

fn in_a_row(counts: &[(usize, &str)]) -> Option<String> {
    let some = counts.iter().filter(|(number, _)| *number > 0);
    let told: Vec<_> = some.map(|(number, what)| format!("{number} {what}")).collect();
    (!told.is_empty()).then(|| told.join(", "))
}

/// How many vessels are compared, and which are in one audit alone.
pub(crate) fn vessels(comparison: &Comparison) -> String {
    let counts = [
        (comparison.gone.len(), "gone"),
        (comparison.newcomers.len(), "new"),
        (comparison.unclear.len(), "not compared: which is which cannot be told"),
    ];
    let both = super::fleet::count(comparison.vessels.len(), "vessel");
    match in_a_row(&counts) {
        Some(told) => format!("{both} in both audits, {told}"),
        None => format!("{both} in both audits"),
    }
}

/// What to bear in mind when reading a comparison.
pub(crate) fn reservations(comparison: &Comparison) -> Vec<String> {
    let mut told = Vec::new();
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
        (Fate::Opened, Some(Cause::Vessel)) => "new".to_owned(),
        (Fate::Opened, cause) => format!("open {}", through(cause)),
        (Fate::Closed, _) if followed.is_mended() => "mended".to_owned(),
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
pub(crate) fn gone(why: WhyGone) -> &'static str {
    match why {
        WhyGone::NotThere => "no file of it here",
        WhyGone::NotRead => "its file is refused now",
        WhyGone::Outside => "outside what is selected now",
    }
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
        DraftFate::Stays => "STAYS",
    }
}

/// Whether a draft binds a vessel by its own words.
pub(crate) fn bound(bound: Bound) -> Option<&'static str> {
    match bound {
        Bound::Yes => None,
        Bound::NotKnown => Some("whether the draft binds it is not known"),
        Bound::InForceAlone => Some("bound by the edition in force, not by the draft's own words"),
    }
}
