//! What changed since an earlier audit, as the key `against` of
//! `kitmuster/audit/1`.
//!
//! Imports `fleet` and below. The types are the format's own.

use crate::fleet::compare::{
    Candidate, Cause, Compared, Comparison, Fate, Flip, Followed, Gone, Lost, Newcomer, Shared,
    Unclear, WhyGone,
};
use crate::fleet::record::SinceOnRecord;
use crate::model::reason::Reason;
use crate::model::stable::stable_words;
use crate::report::json::{OUTCOMES, VERDICTS, outcome, verdict};
use crate::report::words::compare;
use schemars::JsonSchema;
use serde::Serialize;

/// The key `against`.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Against")]
pub(super) struct AgainstJson {
    /// The audit on record.
    then: ThenJson,
    /// What it adds up to.
    totals: TotalsJson,
    /// Whether other vessels were selected then.
    other_selection: bool,
    /// Why the rules on record cannot be read.
    rules_refused: Option<String>,
    /// Vessels that are in both.
    vessels: Vec<ComparedJson>,
    /// Vessels that are not there any more.
    gone: Vec<GoneJson>,
    /// Vessels that were not there then.
    newcomers: Vec<NewcomerJson>,
    /// Vessels that cannot be told apart.
    unclear: Vec<UnclearJson>,
}

/// The audit on record.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Then")]
struct ThenJson {
    /// Its day.
    #[schemars(extend("format" = "date"))]
    date: String,
    /// Who audited, as given.
    auditor: Option<String>,
    /// The program that made it.
    program: String,
    /// Its version.
    version: String,
}

/// Counts of vessels and of findings.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "AgainstTotals")]
struct TotalsJson {
    /// Vessels that are in both.
    compared: usize,
    /// Vessels that are gone.
    gone: usize,
    /// Vessels that are new.
    newcomers: usize,
    /// Vessels that cannot be told apart.
    unclear: usize,
    /// Findings mended.
    mended: usize,
    /// Findings of which nobody could tell, met now.
    settled: usize,
    /// Findings closed since a record is not laid over any more.
    record_gone: usize,
    /// Findings newly open.
    new: usize,
    /// Findings that the calendar opened.
    lapsed: usize,
    /// Findings opened by neither vessel nor calendar.
    opened_otherwise: usize,
    /// Findings closed by something else than the vessel.
    closed_otherwise: usize,
    /// Findings that opened and closed in between.
    passing: usize,
    /// Findings that are still open.
    still_open: usize,
}

/// One vessel, then and now.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Compared")]
struct ComparedJson {
    /// The file, as it was given.
    file: String,
    /// The name.
    name: String,
    /// The register number.
    register: Option<String>,
    /// The verdict on record.
    #[schemars(extend("enum" = VERDICTS))]
    verdict_then: &'static str,
    /// The verdict now.
    #[schemars(extend("enum" = VERDICTS))]
    verdict_now: &'static str,
    /// Why the old file is refused by today's rules.
    refused: Option<String>,
    /// Inspection records laid over then and not now.
    records_gone: Vec<LostJson>,
    /// What records had found that were missing then already.
    missing_before: Vec<MissingJson>,
    /// Required findings that were open at one of the steps.
    findings: Vec<FollowedJson>,
}

/// An inspection record that is not laid over any more.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "LostRecord")]
struct LostJson {
    /// The file, as it was given.
    file: String,
    /// Its digest.
    sha256: String,
    /// Whether a record of that file name is laid over with another text.
    changed: bool,
}

/// What a record had found that was missing then already.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "MissingBefore")]
struct MissingJson {
    /// The id of the rule.
    rule: String,
    /// The id of the requirement.
    requirement: Option<String>,
    /// Since when.
    #[schemars(extend("format" = "date"))]
    open_since: String,
    /// The digests of the records.
    without: Vec<String>,
}

/// Vessels that cannot be told apart.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Unclear")]
struct UnclearJson {
    /// What they share.
    #[schemars(extend("enum" = SHARED))]
    why: &'static str,
    /// The candidates then.
    then: Vec<CandidateJson>,
    /// The candidates now.
    now: Vec<CandidateJson>,
    /// For people; its wording may change.
    text: String,
}

/// A vessel that may be meant.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Candidate")]
struct CandidateJson {
    /// The name.
    name: String,
    /// The register number.
    register: Option<String>,
    /// The file, as it was given.
    file: String,
    /// The verdict.
    #[schemars(extend("enum" = VERDICTS))]
    verdict: &'static str,
}

/// A rule and a requirement, followed.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Followed")]
struct FollowedJson {
    /// The id of the rule.
    rule: String,
    /// The id of the requirement; null for the rule as a whole.
    requirement: Option<String>,
    /// What the rule calls it.
    title: Option<String>,
    /// The clause.
    clause: Option<String>,
    /// The outcome then; null where it was not asked.
    #[schemars(extend("enum" = OUTCOMES))]
    then: Option<&'static str>,
    /// The outcome now; null where it is not asked.
    #[schemars(extend("enum" = OUTCOMES))]
    now: Option<&'static str>,
    /// What became of it.
    #[schemars(extend("enum" = FATES))]
    fate: &'static str,
    /// Through what; null for what is still open.
    #[schemars(extend("enum" = CAUSES))]
    cause: Option<&'static str>,
    /// Not met, then met through the vessel.
    mended: bool,
    /// Nobody could tell, then met through the vessel.
    settled: bool,
    /// The first code of what is open now.
    #[schemars(extend("enum" = Reason::CODES))]
    reason: Option<&'static str>,
    /// The first code then, where it is still open for another reason or another tool.
    reason_then: Option<String>,
    /// Since which audit it is open.
    #[schemars(extend("format" = "date"))]
    open_since: Option<String>,
    /// The steps at which its outcome changed.
    flips: Vec<FlipJson>,
    /// For people; its wording may change.
    text: String,
}

/// A step at which an outcome changed.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Flip")]
struct FlipJson {
    /// Through what.
    #[schemars(extend("enum" = CAUSES))]
    cause: &'static str,
    /// The outcome before.
    #[schemars(extend("enum" = OUTCOMES))]
    from: Option<&'static str>,
    /// The outcome after.
    #[schemars(extend("enum" = OUTCOMES))]
    to: Option<&'static str>,
}

/// A vessel that is not there any more.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Gone")]
struct GoneJson {
    /// The name.
    name: String,
    /// The register number.
    register: Option<String>,
    /// The file, as it was given.
    file: String,
    /// The verdict then.
    #[schemars(extend("enum" = VERDICTS))]
    verdict: &'static str,
    /// Why it is not.
    #[schemars(extend("enum" = WHYS_GONE))]
    why: &'static str,
    /// A file of the same name elsewhere that could not be read.
    may_be: Option<String>,
}

/// A vessel that was not there then.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Newcomer")]
struct NewcomerJson {
    /// The name.
    name: String,
    /// The register number.
    register: Option<String>,
    /// The file, as it was given.
    file: String,
    /// The verdict.
    #[schemars(extend("enum" = VERDICTS))]
    verdict: &'static str,
    /// Whether its file was refused then.
    refused_then: bool,
    /// A vessel on record that it may be.
    may_be: Option<String>,
}

impl AgainstJson {
    pub(super) fn new(comparison: &Comparison) -> Self {
        let first = |refusal: &crate::load::Refusal| {
            refusal.problems.first().map(ToString::to_string).unwrap_or_default()
        };
        Self {
            then: ThenJson {
                date: comparison.then.to_string(),
                auditor: comparison.auditor.clone(),
                program: comparison.program.name.clone(),
                version: comparison.program.version.clone(),
            },
            totals: TotalsJson::new(comparison),
            other_selection: comparison.other_selection,
            rules_refused: comparison.rules_refused.as_ref().map(first),
            vessels: comparison.vessels.iter().map(ComparedJson::new).collect(),
            gone: comparison.gone.iter().map(GoneJson::new).collect(),
            newcomers: comparison.newcomers.iter().map(NewcomerJson::new).collect(),
            unclear: comparison.unclear.iter().map(UnclearJson::new).collect(),
        }
    }
}

impl TotalsJson {
    fn new(comparison: &Comparison) -> Self {
        let tally = comparison.tally();
        Self {
            compared: comparison.vessels.len(),
            gone: comparison.gone.len(),
            newcomers: comparison.newcomers.len(),
            unclear: comparison.unclear.len(),
            mended: tally.mended,
            settled: tally.settled,
            record_gone: tally.record_gone,
            new: tally.new,
            lapsed: tally.lapsed,
            opened_otherwise: tally.opened_otherwise,
            closed_otherwise: tally.closed_otherwise,
            passing: tally.passing,
            still_open: tally.still_open,
        }
    }
}

impl ComparedJson {
    fn new(compared: &Compared) -> Self {
        let refused = compared.refused.as_ref().and_then(|refusal| refusal.problems.first());
        Self {
            file: compared.file.clone(),
            name: compared.name.clone(),
            register: compared.register.clone(),
            verdict_then: verdict(compared.verdict_then),
            verdict_now: verdict(compared.verdict_now),
            refused: refused.map(ToString::to_string),
            records_gone: compared.lost.iter().map(LostJson::new).collect(),
            missing_before: compared.missing.iter().map(MissingJson::new).collect(),
            findings: compared.findings.iter().map(FollowedJson::new).collect(),
        }
    }
}

impl FollowedJson {
    fn new(followed: &Followed) -> Self {
        let stands = followed.stands.as_ref();
        let requirement = stands.and_then(|(profile, at)| profile.requirements.get(*at));
        let open = followed.open.as_ref().and_then(|finding| finding.reasons.first());
        Self {
            rule: followed.rule.clone(),
            requirement: followed.requirement.clone(),
            title: requirement.map(|requirement| requirement.title.to_string()),
            clause: requirement.map(|requirement| requirement.clause.clone()),
            then: followed.then.map(outcome),
            now: followed.now.map(outcome),
            fate: fate(followed.fate),
            cause: followed.cause.map(cause),
            mended: followed.is_mended(),
            settled: followed.is_settled(),
            reason: open.map(|because| because.reason.code()),
            reason_then: followed.reason_then.clone(),
            open_since: followed.since.map(|day| day.to_string()),
            flips: followed.flips.iter().map(FlipJson::new).collect(),
            text: compare::called(followed),
        }
    }
}

impl FlipJson {
    fn new(flip: &Flip) -> Self {
        let (from, to) = (flip.from.map(outcome), flip.to.map(outcome));
        Self { cause: cause(flip.cause), from, to }
    }
}

impl GoneJson {
    fn new(gone: &Gone) -> Self {
        Self {
            name: gone.name.clone(),
            register: gone.register.clone(),
            file: gone.file.clone(),
            verdict: verdict(gone.verdict),
            why: why_gone(&gone.why),
            may_be: match &gone.why {
                WhyGone::MayBe(file) => Some(file.clone()),
                _ => None,
            },
        }
    }
}

impl NewcomerJson {
    fn new(newcomer: &Newcomer) -> Self {
        Self {
            name: newcomer.name.clone(),
            register: newcomer.register.clone(),
            file: newcomer.file.clone(),
            verdict: verdict(newcomer.verdict),
            refused_then: newcomer.refused_then,
            may_be: newcomer.may_be.clone(),
        }
    }
}

impl LostJson {
    fn new(lost: &Lost) -> Self {
        let (file, sha256) = (lost.file.clone(), lost.sha256.clone());
        Self { file, sha256, changed: lost.changed }
    }
}

impl MissingJson {
    fn new(kept: &SinceOnRecord) -> Self {
        Self {
            rule: kept.rule.clone(),
            requirement: kept.requirement.clone(),
            open_since: kept.open_since.to_string(),
            without: kept.without.clone(),
        }
    }
}

impl UnclearJson {
    fn new(unclear: &Unclear) -> Self {
        Self {
            why: shared(&unclear.by),
            then: unclear.then.iter().map(CandidateJson::new).collect(),
            now: unclear.now.iter().map(CandidateJson::new).collect(),
            text: compare::unclear(unclear),
        }
    }
}

impl CandidateJson {
    fn new(candidate: &Candidate) -> Self {
        Self {
            name: candidate.name.clone(),
            register: candidate.register.clone(),
            file: candidate.file.clone(),
            verdict: verdict(candidate.verdict),
        }
    }
}

stable_words! {
    fn fate(Fate) in FATES {
            Fate::Opened => "opened",
            Fate::StillOpen => "still-open",
            Fate::Closed => "closed",
            Fate::Passing => "passing",
    }
}

stable_words! {
    fn cause(Cause) in CAUSES {
            Cause::Program => "program",
            Cause::Encoding => "encoding",
            Cause::RuleFile => "rule-file",
            Cause::Asked => "asked",
            Cause::Edition => "edition",
            Cause::Calendar => "calendar",
            Cause::Vessel => "vessel",
            Cause::Record => "record",
            Cause::Untold => "untold",
    }
}

stable_words! {
    fn shared(&Shared) in SHARED {
        Shared::Register(..) => "register",
        Shared::Name => "name",
    }
}

stable_words! {
    fn why_gone(&WhyGone) in WHYS_GONE {
        WhyGone::NotThere => "not-there",
        WhyGone::NotRead | WhyGone::MayBe(_) => "not-read",
        WhyGone::Outside => "outside-selection",
    }
}
