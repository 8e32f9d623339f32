//! One vessel of a fleet on one line of JSON: `kitmuster/audit-line/1`, for
//! fleets too large for one document.
//!
//! Lean on purpose: what serves and why not, no citations (the record of the
//! audit and the profiles hold them). A file that was refused is a line too.

use crate::fleet::{Judged, LeftOut, Row};
use crate::model::check::{Judgement, Notice};
use crate::model::finding::{Because, Finding, Outcome, ReadyUntil};
use crate::model::reason::Reason;
use crate::model::vocabulary::Vocabulary;
use crate::report::Locale;
use crate::report::audit::json::RefusedJson;
use crate::report::json::{OUTCOMES, STANDINGS, VERDICTS, harmless, outcome, standing, verdict};
use crate::report::words::{Words, fleet};
use schemars::JsonSchema;
use serde::Serialize;

/// The name and version of the format.
pub const SCHEMA: &str = "kitmuster/audit-line/1";

/// A vessel, judged.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "VesselLine")]
pub(in crate::report) struct LineJson<'a> {
    /// The name and version of the format.
    #[schemars(extend("const" = SCHEMA))]
    schema: &'static str,
    /// The file, as it was given.
    file: &'a str,
    /// The name.
    name: &'a str,
    /// The register number.
    register: Option<&'a str>,
    /// The port.
    port: Option<&'a str>,
    /// The day of departure.
    #[schemars(extend("format" = "date"))]
    departure: String,
    /// The day of return.
    #[schemars(extend("format" = "date"))]
    r#return: String,
    /// The verdict.
    #[schemars(extend("enum" = VERDICTS))]
    verdict: &'static str,
    /// What it stands on: a rule, or good practice where no rule was checked.
    #[schemars(extend("enum" = STANDINGS))]
    standing: &'static str,
    /// Codes of what is told of the check as a whole.
    #[schemars(extend("enum" = Notice::CODES))]
    notices: Vec<&'static str>,
    /// One for each profile that judged the vessel.
    profiles: Vec<ProfileJson<'a>>,
}

/// What one profile says.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "ProfileOfLine")]
struct ProfileJson<'a> {
    /// The id of the edition.
    id: &'a str,
    /// The revision of the program's encoding.
    encoding: u32,
    /// The verdict.
    #[schemars(extend("enum" = VERDICTS))]
    verdict: &'static str,
    /// The last day on which the kit is ready, `no-end`, or null.
    ready_until: Option<String>,
    /// What was found, requirement by requirement.
    findings: Vec<FindingJson<'a>>,
}

/// A finding.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "FindingOfLine")]
struct FindingJson<'a> {
    /// The id of the requirement.
    requirement: &'a str,
    /// The outcome.
    #[schemars(extend("enum" = OUTCOMES))]
    outcome: &'static str,
    /// Marks of the tools that serve it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    tools: Vec<&'a str>,
    /// Why it is not met, or what is missing.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    reasons: Vec<ReasonJson<'a>>,
}

/// Why it is not met, or what is missing.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "ReasonOfLine")]
struct ReasonJson<'a> {
    /// The stable code.
    #[schemars(extend("enum" = Reason::CODES))]
    code: &'static str,
    /// The mark of the tool.
    #[serde(skip_serializing_if = "Option::is_none")]
    tool: Option<&'a str>,
    /// For people; its wording may change.
    text: String,
}

/// A file that was refused.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "RefusedLine")]
pub(in crate::report) struct RefusedLine {
    /// The name and version of the format.
    #[schemars(extend("const" = SCHEMA))]
    schema: &'static str,
    #[serde(flatten)]
    refused: RefusedJson,
}

/// An inspection record that was laid over no vessel.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "RecordLine")]
pub(in crate::report) struct LeftOutLine<'a> {
    /// The name and version of the format.
    #[schemars(extend("const" = SCHEMA))]
    schema: &'static str,
    /// The file, as it was given.
    file: &'a str,
    /// Why, for people.
    record_not_laid_over: String,
}

/// One line of an audit.
#[derive(JsonSchema, Serialize)]
#[serde(untagged)]
#[schemars(rename = "Line")]
pub(in crate::report) enum AnyLine<'a> {
    /// A vessel, judged.
    Vessel(LineJson<'a>),
    /// A file that was refused.
    Refused(RefusedLine),
    /// An inspection record that was laid over no vessel.
    Record(LeftOutLine<'a>),
}

/// A record that was laid over no vessel, on one line.
///
/// # Errors
/// None in practice: the type of the format has a JSON form.
pub fn left_out(left_out: &LeftOut, locale: Locale) -> Result<String, serde_json::Error> {
    let told = fleet::left_out(left_out, locale);
    let line = LeftOutLine { schema: SCHEMA, file: &left_out.file, record_not_laid_over: told };
    AnyLine::Record(line).text()
}

/// The row on one line, ending in a line feed.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn line(
    row: &Row,
    vocabulary: &Vocabulary,
    locale: Locale,
) -> Result<String, serde_json::Error> {
    match row {
        Row::Vessel(judged) => AnyLine::Vessel(of_vessel(judged, vocabulary, locale)),
        Row::Refused(refusal) => {
            AnyLine::Refused(RefusedLine { schema: SCHEMA, refused: RefusedJson::new(refusal) })
        }
    }
    .text()
}

impl AnyLine<'_> {
    fn text(&self) -> Result<String, serde_json::Error> {
        let mut text = serde_json::to_string(self)?;
        text.push('\n');
        Ok(harmless(text))
    }
}

fn of_vessel<'a>(judged: &'a Judged, vocabulary: &'a Vocabulary, locale: Locale) -> LineJson<'a> {
    let check = &judged.check;
    let profile = |judgement: &'a Judgement| {
        let words =
            Words { vocabulary, vessel: &check.vessel, profile: &judgement.profile, locale };
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
        standing: standing(check.standing()),
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
