//! A fleet's audit vessel by vessel: JSON on one line each
//! (`kitmuster/audit-line/1`), for fleets too large for one document, and CSV
//! with a row for each finding.
//!
//! Lean on purpose: what serves and why not, no citations in the lines (the
//! record of the audit and the profiles hold them). A file that was refused
//! has a line and a row too. Imports `fleet`, what lies below, and words.

use super::form::{Day, Named, Word, day, objects, word};
use super::parts::Refused;
use super::text::{cell, csv, line};
use crate::fleet::{Judged, LeftOut, Row};
use crate::load::Refusal;
use crate::model::check::{Judgement, Notice};
use crate::model::finding::{Because, Finding, Outcome, ReadyUntil, Verdict};
use crate::model::profile::Standing;
use crate::model::reason;
use crate::model::vocabulary::Vocabulary;
use crate::report::Locale;
use crate::report::subject::Fleet;
use crate::report::words::{Words, fleet};
use schemars::JsonSchema;
use serde::Serialize;

/// The name and version of the format.
const SCHEMA: &str = "kitmuster/audit-line/1";

/// One line of an audit.
#[derive(JsonSchema, Serialize)]
#[serde(untagged)]
pub(super) enum Line {
    /// A vessel, judged.
    Vessel(VesselLine),
    /// A file that was refused.
    Refused(RefusedLine),
    /// An inspection record that was laid over no vessel.
    Record(RecordLine),
}

objects! {
    /// A vessel, judged.
    pub(super) VesselLine(judged: &Judged, vocabulary: &Vocabulary, locale: Locale) {
        let check = &judged.check;
        let vessel = &check.vessel;
        let profile = |judgement: &Judgement| {
            let profile = &judgement.profile;
            ProfileOfLine::new(judgement, &Words { vocabulary, vessel, profile, locale })
        };
        /// The name and version of the format.
        #[schemars(extend("const" = SCHEMA))]
        schema: &'static str = SCHEMA,
        /// The file, as it was given.
        file: String = judged.file.to_string(),
        /// The name.
        name: String = vessel.name.clone(),
        /// The register number.
        register: Option<String> = vessel.register.clone(),
        /// The port.
        port: Option<String> = vessel.port.clone(),
        /// The day of departure.
        departure: Day = day(check.asked.departure),
        /// The day of return.
        r#return: Day = day(check.asked.back),
        /// The verdict.
        verdict: Word<Verdict> = word(&check.verdict),
        /// What it stands on: a rule, or good practice where no rule was checked.
        standing: Word<Standing> = word(&check.standing()),
        /// Codes of what is told of the check as a whole.
        notices: Vec<Word<Notice>> = check.notices.iter().map(word).collect(),
        /// One for each profile that judged the vessel.
        profiles: Vec<ProfileOfLine> = check.judgements.iter().map(profile).collect(),
    }

    /// What one profile says.
    ProfileOfLine(judgement: &Judgement, words: &Words<'_>) {
        let findings = judgement.findings.iter();
        /// The id of the edition.
        id: String = judgement.profile.id.clone(),
        /// The revision of the program's encoding.
        encoding: u32 = judgement.profile.encoding,
        /// The verdict.
        verdict: Word<Verdict> = word(&judgement.verdict),
        /// The last day on which the kit is ready, `no-end`, or null.
        ready_until: Option<String> = match judgement.ready_until {
            ReadyUntil::None => None,
            ReadyUntil::Day(day) => Some(day.to_string()),
            ReadyUntil::NoEnd => Some(judgement.ready_until.word().to_owned()),
        },
        /// What was found, requirement by requirement.
        findings: Vec<FindingOfLine> = findings.map(|one| FindingOfLine::new(one, words)).collect(),
    }

    /// A finding.
    FindingOfLine(finding: &Finding, words: &Words<'_>) {
        let reasons = reasons(finding).iter();
        /// The id of the requirement.
        requirement: String = words.id(finding.requirement),
        /// The outcome.
        outcome: Word<Outcome> = word(&finding.outcome),
        /// Marks of the tools that serve it.
        #[serde(skip_serializing_if = "Vec::is_empty")]
        tools: Vec<String> = marks(finding, words),
        /// Why it is not met, or what is missing.
        #[serde(skip_serializing_if = "Vec::is_empty")]
        reasons: Vec<ReasonOfLine> = reasons.map(|one| ReasonOfLine::new(one, words)).collect(),
    }

    /// Why it is not met, or what is missing.
    ReasonOfLine(because: &Because, words: &Words<'_>) {
        /// The stable code.
        code: Word<reason::Reason> = word(&because.reason),
        /// The mark of the tool.
        #[serde(skip_serializing_if = "Option::is_none")]
        tool: Option<String> = because.tool.map(|tool| words.mark(tool).to_owned()),
        /// For people; its wording may change.
        text: String = words.reason_of(because),
    }

    /// A file that was refused.
    pub(super) RefusedLine(refusal: &Refusal) {
        /// The name and version of the format.
        #[schemars(extend("const" = SCHEMA))]
        schema: &'static str = SCHEMA,
        #[serde(flatten)]
        refused: Refused = Refused::new(refusal),
    }

    /// An inspection record that was laid over no vessel.
    pub(super) RecordLine(left_out: &LeftOut, locale: Locale) {
        /// The name and version of the format.
        #[schemars(extend("const" = SCHEMA))]
        schema: &'static str = SCHEMA,
        /// The file, as it was given.
        file: String = left_out.file.to_string(),
        /// Why, for people.
        record_not_laid_over: String = fleet::left_out(left_out, locale),
    }
}

/// The marks of the tools that serve.
fn marks(finding: &Finding, words: &Words<'_>) -> Vec<String> {
    finding.serving.iter().map(|serving| words.mark(serving.tool).to_owned()).collect()
}

/// Why a finding is open; nothing where it is met.
fn reasons(finding: &Finding) -> &[Because] {
    match finding.outcome {
        Outcome::Met => &[],
        Outcome::CannotTell | Outcome::NotMet => &finding.reasons,
    }
}

/// A row of an audit on one line, ending in a line feed.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn audit_line(
    row: &Row,
    vocabulary: &Vocabulary,
    locale: Locale,
) -> Result<String, serde_json::Error> {
    line(&match row {
        Row::Vessel(judged) => Line::Vessel(VesselLine::new(judged, vocabulary, locale)),
        Row::Refused(refusal) => Line::Refused(RefusedLine::new(refusal)),
    })
}

/// A record that was laid over no vessel, on one line.
///
/// # Errors
/// None in practice: the type of the format has a JSON form.
pub fn left_out_line(left_out: &LeftOut, locale: Locale) -> Result<String, serde_json::Error> {
    line(&Line::Record(RecordLine::new(left_out, locale)))
}

const HEAD: [&str; 25] = [
    "file",
    "vessel",
    "register",
    "port",
    "departure",
    "return",
    "vessel verdict",
    "profile",
    "edition",
    "encoding",
    "profile verdict",
    "ready until",
    "requirement",
    "title",
    "level",
    "source",
    "clause",
    "outcome",
    "tools",
    "reasons",
    "remedy",
    "freeboard",
    "day",
    "records laid over",
    "standing",
];

/// How many cells tell of the vessel at the beginning of each of its rows, and
/// how many of a profile behind them.
const OF_VESSEL: usize = 7;
const OF_PROFILE: usize = 5;
/// How many tell of the vessel at the end.
const LAST: usize = 2;

/// The audit as CSV, lines ending as the standard says. No cell can be taken
/// for a formula by a spreadsheet.
///
/// # Errors
/// None in practice: it is written to memory.
pub fn audit_csv(of: &Fleet<'_>) -> Result<String, csv::Error> {
    let rows = of.audit.rows.iter().flat_map(|row| match row {
        Row::Vessel(judged) => of_vessel(of, judged),
        Row::Refused(refusal) => vec![beside(&refusal.file, "", "not read", &problems(refusal))],
    });
    let left_out = of.audit.left_out.iter().map(|left_out| {
        let why = fleet::left_out(left_out, of.locale);
        beside(&left_out.file, &left_out.vessel, "record not laid over", &why)
    });
    csv(&HEAD, rows.chain(left_out))
}

/// The row of a file that was not judged: what it is, and why.
fn beside(file: &str, vessel: &str, what: &str, why: &str) -> Vec<String> {
    let mut cells = vec![String::new(); HEAD.len()];
    (cells[0], cells[1]) = (cell(file), cell(vessel));
    (cells[6], cells[19]) = (what.to_owned(), cell(why));
    cells
}

/// Everything that is wrong in a file, in one cell.
pub(super) fn problems(refusal: &Refusal) -> String {
    let problems: Vec<_> = refusal.problems.iter().map(ToString::to_string).collect();
    problems.join("; ")
}

fn of_vessel(of: &Fleet<'_>, judged: &Judged) -> Vec<Vec<String>> {
    let check = &judged.check;
    let vessel = &check.vessel;
    let head: [String; OF_VESSEL] = [
        cell(&judged.file),
        cell(&vessel.name),
        cell(vessel.register.as_deref().unwrap_or_default()),
        cell(vessel.port.as_deref().unwrap_or_default()),
        check.asked.departure.to_string(),
        check.asked.back.to_string(),
        check.verdict.word().to_owned(),
    ];
    let records: Vec<_> = judged.sources.iter().skip(1).map(|source| &*source.file).collect();
    let last: [String; LAST] = [cell(&records.join(", ")), check.standing().word().to_owned()];
    let whole = |cells: Vec<String>| {
        let empty = HEAD.len() - OF_VESSEL - LAST - cells.len();
        let empty = std::iter::repeat_n(String::new(), empty);
        head.iter().cloned().chain(cells).chain(empty).chain(last.iter().cloned()).collect()
    };
    let (vocabulary, locale) = (of.vocabulary, of.locale);
    let judgements = check.judgements.iter().flat_map(|judgement| {
        let profile = &judgement.profile;
        of_judgement(judgement, &Words { vocabulary, vessel, profile, locale })
    });
    let mut rows: Vec<_> = judgements.map(whole).collect();
    if rows.is_empty() {
        rows.push(whole(Vec::new()));
    }
    rows
}

/// A row for each finding, one at least.
fn of_judgement(judgement: &Judgement, words: &Words<'_>) -> Vec<Vec<String>> {
    let profile = &judgement.profile;
    let head: [String; OF_PROFILE] = [
        cell(&profile.id),
        cell(&profile.edition),
        profile.encoding.to_string(),
        judgement.verdict.word().to_owned(),
        match judgement.ready_until {
            ReadyUntil::None if judgement.verdict == Verdict::CannotTell => "can't tell".to_owned(),
            ReadyUntil::None => "not ready".to_owned(),
            ReadyUntil::Day(day) => day.to_string(),
            ReadyUntil::NoEnd => "no end".to_owned(),
        },
    ];
    if judgement.findings.is_empty() {
        return vec![head.to_vec()];
    }
    let finding = |finding| head.iter().cloned().chain(of_finding(finding, words)).collect();
    judgement.findings.iter().map(finding).collect()
}

fn of_finding(finding: &Finding, words: &Words<'_>) -> [String; 11] {
    let requirement = words.requirement(finding.requirement);
    let told: Vec<_> = reasons(finding).iter().map(|because| words.told(because)).collect();
    [
        cell(&words.id(finding.requirement)),
        cell(&words.title(finding.requirement)),
        requirement.map_or("", |requirement| requirement.level.word()).to_owned(),
        cell(&words.profile.source),
        cell(requirement.map_or("", |requirement| &requirement.clause)),
        finding.outcome.word().to_owned(),
        cell(&marks(finding, words).join(", ")),
        cell(&told.join("; ")),
        cell(&words.remedy(finding, &[]).unwrap_or_default()),
        finding.freeboard.map(|at| cell(&words.freeboard(at))).unwrap_or_default(),
        finding.day.to_string(),
    ]
}
