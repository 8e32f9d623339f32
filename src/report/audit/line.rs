//! One vessel of a fleet on one line of JSON: `kitmuster/audit-line/1`, for
//! fleets too large for one document.
//!
//! Lean on purpose: what serves and why not, no citations (the record of the
//! audit and the profiles hold them). A file that was refused is a line too.

use crate::fleet::{Judged, LeftOut, Row};
use crate::load::Refusal;
use crate::measure::Units;
use crate::model::check::{Judgement, Notice};
use crate::model::finding::{Because, Finding, Outcome, ReadyUntil};
use crate::model::vocabulary::Vocabulary;
use crate::report::audit::json::RefusedJson;
use crate::report::json::{harmless, outcome, verdict};
use crate::report::words::{Words, fleet};
use serde::Serialize;

/// The name and version of the format.
pub const SCHEMA: &str = "kitmuster/audit-line/1";

#[derive(Serialize)]
struct LineJson<'a> {
    schema: &'static str,
    file: &'a str,
    name: &'a str,
    register: Option<&'a str>,
    port: Option<&'a str>,
    departure: String,
    r#return: String,
    verdict: &'static str,
    notices: Vec<&'static str>,
    profiles: Vec<ProfileJson<'a>>,
}

#[derive(Serialize)]
struct ProfileJson<'a> {
    id: &'a str,
    encoding: u32,
    verdict: &'static str,
    ready_until: Option<String>,
    findings: Vec<FindingJson<'a>>,
}

#[derive(Serialize)]
struct FindingJson<'a> {
    requirement: &'a str,
    outcome: &'static str,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    tools: Vec<&'a str>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    reasons: Vec<ReasonJson<'a>>,
}

#[derive(Serialize)]
struct ReasonJson<'a> {
    code: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    tool: Option<&'a str>,
    text: String,
}

#[derive(Serialize)]
struct RefusedLine {
    schema: &'static str,
    #[serde(flatten)]
    refused: RefusedJson,
}

#[derive(Serialize)]
struct LeftOutLine<'a> {
    schema: &'static str,
    file: &'a str,
    record_not_laid_over: String,
}

/// A record that was laid over no vessel, on one line.
///
/// # Errors
/// None in practice: the type of the format has a JSON form.
pub fn left_out(left_out: &LeftOut) -> Result<String, serde_json::Error> {
    let told = fleet::left_out(left_out);
    let line = LeftOutLine { schema: SCHEMA, file: &left_out.file, record_not_laid_over: told };
    let mut text = serde_json::to_string(&line)?;
    text.push('\n');
    Ok(harmless(text))
}

/// The row on one line, ending in a line feed.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn line(row: &Row, vocabulary: &Vocabulary, units: Units) -> Result<String, serde_json::Error> {
    let mut text = match row {
        Row::Vessel(judged) => serde_json::to_string(&of_vessel(judged, vocabulary, units))?,
        Row::Refused(refusal) => refused(refusal)?,
    };
    text.push('\n');
    Ok(harmless(text))
}

fn refused(refusal: &Refusal) -> Result<String, serde_json::Error> {
    serde_json::to_string(&RefusedLine { schema: SCHEMA, refused: RefusedJson::new(refusal) })
}

fn of_vessel<'a>(judged: &'a Judged, vocabulary: &'a Vocabulary, units: Units) -> LineJson<'a> {
    let check = &judged.check;
    let profile = |judgement: &'a Judgement| {
        let words = Words { vocabulary, vessel: &check.vessel, profile: &judgement.profile, units };
        ProfileJson::new(judgement, &words)
    };
    LineJson {
        schema: SCHEMA,
        file: &judged.file,
        name: &check.vessel.name,
        register: check.vessel.register.as_deref(),
        port: check.vessel.port.as_deref(),
        departure: check.asked.departure.to_string(),
        r#return: check.asked.back.to_string(),
        verdict: verdict(check.verdict),
        notices: check.notices.iter().map(Notice::code).collect(),
        profiles: check.judgements.iter().map(profile).collect(),
    }
}

impl<'a> ProfileJson<'a> {
    fn new(judgement: &'a Judgement, words: &Words<'a>) -> Self {
        Self {
            id: &judgement.profile.id,
            encoding: judgement.profile.encoding,
            verdict: verdict(judgement.verdict),
            ready_until: match judgement.ready_until {
                ReadyUntil::None => None,
                ReadyUntil::Day(day) => Some(day.to_string()),
                ReadyUntil::NoEnd => Some("no-end".to_owned()),
            },
            findings: judgement
                .findings
                .iter()
                .map(|finding| FindingJson::new(judgement, finding, words))
                .collect(),
        }
    }
}

impl<'a> FindingJson<'a> {
    fn new(judgement: &'a Judgement, finding: &'a Finding, words: &Words<'a>) -> Self {
        let requirement = judgement.profile.requirements.get(finding.requirement);
        let reason = |because: &Because| ReasonJson {
            code: because.reason.code(),
            tool: because.tool.map(|tool| words.mark(tool)),
            text: words.reason_of(because),
        };
        let reasons = match finding.outcome {
            Outcome::Met => Vec::new(),
            Outcome::CannotTell | Outcome::NotMet => finding.reasons.iter().map(reason).collect(),
        };
        Self {
            requirement: requirement.map_or("", |requirement| &requirement.id),
            outcome: outcome(finding.outcome),
            tools: finding.serving.iter().map(|serving| words.mark(serving.tool)).collect(),
            reasons,
        }
    }
}
