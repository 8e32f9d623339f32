//! A fleet under the draft of an edition: how a change is told, and the key `draft` of `kitmuster/audit/1`.
//!
//! Imports `fleet` and below. Decides nothing: who falls and who rises was
//! decided there.

use super::Fleet;
use crate::fleet::draft::{Bound, Change, DraftFate, Drafted, UnderDraft};
use crate::model::reason::Reason;
use crate::model::stable::stable_words;
use crate::report::Locale;
use crate::report::json::{OUTCOMES, VERDICTS, outcome, verdict};
use crate::report::words::{self, Words, compare};
use schemars::JsonSchema;
use serde::Serialize;

/// What it is judged beside.
pub(in crate::report) fn beside(drafted: &Drafted, locale: Locale) -> String {
    let of = format!("{}, {}", drafted.profile.title, drafted.profile.edition);
    let days = words::span(drafted.profile.in_force, locale);
    if drafted.in_force.is_empty() {
        return format!("{of}; in force {days}; no edition of its rule judged a vessel");
    }
    let ids: Vec<_> = drafted.in_force.iter().map(|id| format!("`{id}`")).collect();
    format!("{of}; in force {days}; beside {}", ids.join(", "))
}

/// A finding that changes, and why it is or was open.
pub(in crate::report) fn change(of: &Fleet<'_>, under: &UnderDraft, change: &Change) -> String {
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
    let words = Words { vocabulary: of.vocabulary, vessel, profile, locale: of.locale };
    Some(words.first_reason(finding))
}

/// The key `draft`.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Draft")]
pub(super) struct DraftJson {
    /// The id of the draft.
    profile: String,
    /// The id of the rule.
    rule: String,
    /// The law's edition, in words.
    edition: String,
    /// The revision of the program's encoding.
    encoding: u32,
    /// When it is in force.
    in_force: SpanJson,
    /// Ids of the editions that judged.
    beside: Vec<String>,
    /// What it adds up to.
    totals: TotalsJson,
    /// What becomes of each.
    vessels: Vec<UnderJson>,
}

/// The first and the last day; null where there is no end.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Span")]
struct SpanJson {
    /// The first day.
    #[schemars(extend("format" = "date"))]
    from: Option<String>,
    /// The last day.
    #[schemars(extend("format" = "date"))]
    until: Option<String>,
}

/// Counts of vessels.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "DraftTotals")]
struct TotalsJson {
    /// Vessels that fall.
    falls: usize,
    /// Vessels that rise.
    rises: usize,
    /// Vessels of which nobody can tell under it.
    cannot_tell: usize,
    /// Vessels that it binds no longer.
    released: usize,
    /// Vessels with the same verdict and other findings.
    stays_otherwise: usize,
    /// Vessels of which nothing changes.
    unaffected: usize,
    /// Vessels that neither binds.
    not_bound: usize,
}

/// One vessel under the draft.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "UnderDraft")]
struct UnderJson {
    /// The file, as it was given.
    file: String,
    /// The name.
    name: String,
    /// The register number.
    register: Option<String>,
    /// What becomes of it.
    #[schemars(extend("enum" = FATES))]
    fate: &'static str,
    /// Under this rule alone; null where it does not bind.
    #[schemars(extend("enum" = VERDICTS))]
    verdict_in_force: Option<&'static str>,
    /// Null where it does not bind.
    #[schemars(extend("enum" = VERDICTS))]
    verdict_under_draft: Option<&'static str>,
    /// Whether the draft binds it.
    #[schemars(extend("enum" = BOUNDS))]
    bound: &'static str,
    /// Findings that change.
    changes: Vec<ChangeJson>,
}

/// A finding that changes.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Change")]
struct ChangeJson {
    /// The id of the requirement.
    requirement: String,
    /// The outcome in force; null where it is not asked.
    #[schemars(extend("enum" = OUTCOMES))]
    in_force: Option<&'static str>,
    /// The outcome under the draft; null where it is not asked.
    #[schemars(extend("enum" = OUTCOMES))]
    under_draft: Option<&'static str>,
    /// The first code of what is open.
    #[schemars(extend("enum" = Reason::CODES))]
    reason: Option<&'static str>,
    /// Marks of the tools that meet it.
    met_by: Vec<String>,
    /// For people; its wording may change.
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
            fate: fate(under.fate),
            verdict_in_force: under.then.map(verdict),
            verdict_under_draft: under.now.map(verdict),
            bound: bound(under.bound),
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

stable_words! {
    fn fate(DraftFate) in FATES {
        DraftFate::Falls => "falls",
        DraftFate::Rises => "rises",
        DraftFate::CannotTell => "cannot-tell",
        DraftFate::Released => "released",
        DraftFate::Stays => "stays",
    }
}

stable_words! {
    fn bound(Bound) in BOUNDS {
        Bound::Yes => "yes",
        Bound::NotKnown => "not-known",
        Bound::InForceAlone => "in-force-alone",
        Bound::No => "no",
    }
}
