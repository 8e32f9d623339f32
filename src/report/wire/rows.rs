//! A fleet's audit vessel by vessel: JSON on one line each
//! (`kitmuster/audit-line/1`), for fleets too large for one document, and CSV
//! with a row for each finding.
//!
//! Lean on purpose: what serves and why not, no citations in the lines (the
//! record of the audit and the profiles hold them). A file that was refused
//! has a line and a row too. Imports `fleet`, what lies below, and words.

use super::form::{Day, Named, Word, day, objects, word};
use super::text::{Row, csv, line};
use crate::fleet::{self, Judged, LeftOut};
use crate::load::{self, Refusal};
use crate::model::check::{Judgement, Notice};
use crate::model::finding::{Because, Finding, Outcome, ReadyUntil, Verdict};
use crate::model::profile::Standing;
use crate::model::reason;
use crate::model::vocabulary::Vocabulary;
use crate::report::Locale;
use crate::report::subject::Fleet;
use crate::report::words::{Words, fleet as said};
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
            let (profile, findings) = (&judgement.profile, &judgement.findings);
            ProfileOfLine::new(judgement, &Words { vocabulary, vessel, profile, findings, locale })
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

    /// A file that was refused.
    pub(super) Refused(refusal: &Refusal) {
        /// The file, as it was given.
        file: String = refusal.file.clone(),
        /// What is wrong with it.
        problems: Vec<Problem> = refusal.problems.iter().map(Problem::new).collect(),
    }

    /// One thing that is wrong in a file.
    Problem(problem: &load::Problem) {
        /// The file, as it was given.
        file: String = problem.place.file.to_string(),
        /// The path of keys in the file.
        key: String = problem.place.key.clone(),
        /// From one.
        line: Option<usize> = problem.position.map(|position| position.line),
        /// From one, in characters.
        column: Option<usize> = problem.position.map(|position| position.column),
        /// The text that offends.
        offending: Option<String> = problem.offending.clone(),
        /// What is wrong, for people.
        what: String = problem.wording().what,
        /// What was expected instead.
        expected: Option<String> = problem.wording().expected,
        /// How to mend it.
        mend: Option<String> = problem.wording().mend,
    }

    /// An inspection record that was laid over no vessel.
    pub(super) RecordLine(left_out: &LeftOut, locale: Locale) {
        /// The name and version of the format.
        #[schemars(extend("const" = SCHEMA))]
        schema: &'static str = SCHEMA,
        /// The file, as it was given.
        file: String = left_out.file.to_string(),
        /// Why, for people.
        record_not_laid_over: String = said::left_out(left_out, locale),
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
    row: &fleet::Row,
    vocabulary: &Vocabulary,
    locale: Locale,
) -> Result<String, serde_json::Error> {
    line(&match row {
        fleet::Row::Vessel(judged) => Line::Vessel(VesselLine::new(judged, vocabulary, locale)),
        fleet::Row::Refused(refusal) => Line::Refused(RefusedLine::new(refusal)),
    })
}

/// A record that was laid over no vessel, on one line.
///
/// # Errors
/// None in practice: the type of the format has a JSON form.
pub fn left_out_line(left_out: &LeftOut, locale: Locale) -> Result<String, serde_json::Error> {
    line(&Line::Record(RecordLine::new(left_out, locale)))
}

/// The columns, in their order.
const HEAD: &str = "file,vessel,register,port,departure,return,vessel verdict,profile,edition,\
    encoding,profile verdict,ready until,requirement,title,level,source,clause,outcome,tools,\
    reasons,remedy,freeboard,day,records laid over,standing";

/// The audit as CSV, lines ending as the standard says. No cell can be taken
/// for a formula by a spreadsheet.
///
/// # Errors
/// None in practice: it is written to memory.
pub fn audit_csv(of: &Fleet<'_>) -> Result<String, csv::Error> {
    let rows = of.audit.rows.iter().flat_map(|row| match row {
        fleet::Row::Vessel(judged) => of_vessel(of, judged),
        fleet::Row::Refused(refusal) => vec![
            Row::new(HEAD)
                .text("file", &refusal.file)
                .text("vessel verdict", "not read")
                .text("reasons", &problems(refusal)),
        ],
    });
    let left_out = of.audit.left_out.iter().map(|left_out| {
        Row::new(HEAD)
            .text("file", &left_out.file)
            .text("vessel", &left_out.vessel)
            .text("vessel verdict", "record not laid over")
            .text("reasons", &said::left_out(left_out, of.locale))
    });
    csv(HEAD, rows.chain(left_out))
}

/// Everything that is wrong in a file, in one cell.
pub(super) fn problems(refusal: &Refusal) -> String {
    let problems: Vec<_> = refusal.problems.iter().map(ToString::to_string).collect();
    problems.join("; ")
}

/// A row for each finding, one at least.
fn of_vessel(of: &Fleet<'_>, judged: &Judged) -> Vec<Row> {
    let check = &judged.check;
    let vessel = &check.vessel;
    let records: Vec<_> = judged.sources.iter().skip(1).map(|source| &*source.file).collect();
    let row = Row::new(HEAD)
        .text("file", &judged.file)
        .text("vessel", &vessel.name)
        .text("register", vessel.register.as_deref().unwrap_or_default())
        .text("port", vessel.port.as_deref().unwrap_or_default())
        .text("departure", &check.asked.departure.to_string())
        .text("return", &check.asked.back.to_string())
        .text("vessel verdict", check.verdict.word())
        .text("records laid over", &records.join(", "))
        .text("standing", check.standing().word());
    let (vocabulary, locale) = (of.vocabulary, of.locale);
    let rows = check.judgements.iter().flat_map(|judgement| {
        let (profile, findings) = (&judgement.profile, &judgement.findings);
        of_judgement(&row, judgement, &Words { vocabulary, vessel, profile, findings, locale })
    });
    let rows: Vec<_> = rows.collect();
    if rows.is_empty() { vec![row] } else { rows }
}

fn of_judgement(row: &Row, judgement: &Judgement, words: &Words<'_>) -> Vec<Row> {
    let profile = &judgement.profile;
    let until = match judgement.ready_until {
        ReadyUntil::None if judgement.verdict == Verdict::CannotTell => "can't tell".to_owned(),
        ReadyUntil::None => "not ready".to_owned(),
        ReadyUntil::Day(day) => day.to_string(),
        ReadyUntil::NoEnd => "no end".to_owned(),
    };
    let row = row.clone();
    let row = row
        .text("profile", &profile.id)
        .text("edition", &profile.edition)
        .text("encoding", &profile.encoding.to_string())
        .text("profile verdict", judgement.verdict.word())
        .text("ready until", &until);
    let findings = judgement.findings.iter();
    let rows: Vec<_> = findings.map(|finding| of_finding(row.clone(), finding, words)).collect();
    if rows.is_empty() { vec![row] } else { rows }
}

fn of_finding(row: Row, finding: &Finding, words: &Words<'_>) -> Row {
    let requirement = words.requirement(finding.requirement);
    let told: Vec<_> = reasons(finding).iter().map(|because| words.told(because)).collect();
    let freeboard = finding.freeboard.map(|at| words.freeboard(at));
    row.text("requirement", &words.id(finding.requirement))
        .text("title", &words.title(finding.requirement))
        .text("level", requirement.map_or("", |requirement| requirement.level.word()))
        .text("source", &words.profile.source)
        .text("clause", requirement.map_or("", |requirement| &requirement.clause))
        .text("outcome", finding.outcome.word())
        .text("tools", &marks(finding, words).join(", "))
        .text("reasons", &told.join("; "))
        .text("remedy", &words.remedy(finding, &[]).unwrap_or_default())
        .text("freeboard", &freeboard.unwrap_or_default())
        .text("day", &finding.day.to_string())
}
