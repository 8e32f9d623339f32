//! What changed since an earlier audit, as the key `against` of
//! `kitmuster/audit/1`.
//!
//! Imports `fleet` and below. The types are the format's own.

use crate::fleet::compare::{
    Candidate, Cause, Compared, Comparison, Fate, Flip, Followed, Gone, Lost, Newcomer, Shared,
    Unclear, WhyGone,
};
use crate::fleet::record::SinceOnRecord;
use crate::report::json::{outcome, verdict};
use crate::report::words::compare;
use serde::Serialize;

/// The key `against`.
#[derive(Serialize)]
pub(super) struct AgainstJson {
    then: ThenJson,
    totals: TotalsJson,
    other_selection: bool,
    rules_refused: Option<String>,
    vessels: Vec<ComparedJson>,
    gone: Vec<GoneJson>,
    newcomers: Vec<NewcomerJson>,
    unclear: Vec<UnclearJson>,
}

#[derive(Serialize)]
struct ThenJson {
    date: String,
    auditor: Option<String>,
    program: String,
    version: String,
}

#[derive(Serialize)]
struct TotalsJson {
    compared: usize,
    gone: usize,
    newcomers: usize,
    unclear: usize,
    mended: usize,
    settled: usize,
    record_gone: usize,
    new: usize,
    lapsed: usize,
    opened_otherwise: usize,
    closed_otherwise: usize,
    passing: usize,
    still_open: usize,
}

#[derive(Serialize)]
struct ComparedJson {
    file: String,
    name: String,
    register: Option<String>,
    verdict_then: &'static str,
    verdict_now: &'static str,
    refused: Option<String>,
    records_gone: Vec<LostJson>,
    missing_before: Vec<MissingJson>,
    findings: Vec<FollowedJson>,
}

#[derive(Serialize)]
struct LostJson {
    file: String,
    sha256: String,
    changed: bool,
}

#[derive(Serialize)]
struct MissingJson {
    rule: String,
    requirement: Option<String>,
    open_since: String,
    without: Vec<String>,
}

#[derive(Serialize)]
struct UnclearJson {
    why: &'static str,
    then: Vec<CandidateJson>,
    now: Vec<CandidateJson>,
    text: String,
}

#[derive(Serialize)]
struct CandidateJson {
    name: String,
    register: Option<String>,
    file: String,
    verdict: &'static str,
}

#[derive(Serialize)]
struct FollowedJson {
    rule: String,
    requirement: Option<String>,
    title: Option<String>,
    clause: Option<String>,
    then: Option<&'static str>,
    now: Option<&'static str>,
    fate: &'static str,
    cause: Option<&'static str>,
    mended: bool,
    settled: bool,
    reason: Option<&'static str>,
    reason_then: Option<String>,
    open_since: Option<String>,
    flips: Vec<FlipJson>,
    text: String,
}

#[derive(Serialize)]
struct FlipJson {
    cause: &'static str,
    from: Option<&'static str>,
    to: Option<&'static str>,
}

#[derive(Serialize)]
struct GoneJson {
    name: String,
    register: Option<String>,
    file: String,
    verdict: &'static str,
    why: &'static str,
    may_be: Option<String>,
}

#[derive(Serialize)]
struct NewcomerJson {
    name: String,
    register: Option<String>,
    file: String,
    verdict: &'static str,
    refused_then: bool,
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
            why: match &gone.why {
                WhyGone::NotThere => "not-there",
                WhyGone::NotRead | WhyGone::MayBe(_) => "not-read",
                WhyGone::Outside => "outside-selection",
            },
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
            why: match unclear.by {
                Shared::Register(..) => "register",
                Shared::Name => "name",
            },
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

fn fate(fate: Fate) -> &'static str {
    match fate {
        Fate::Opened => "opened",
        Fate::StillOpen => "still-open",
        Fate::Closed => "closed",
        Fate::Passing => "passing",
    }
}

fn cause(cause: Cause) -> &'static str {
    match cause {
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
