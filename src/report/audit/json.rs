//! A fleet's audit as one JSON document: the format `kitmuster/audit/1`.
//!
//! The vessels are those of `kitmuster/check/1`, with the answers that an
//! audit does not work out set to null. Documented in DEVELOPERS.md.

use super::Fleet;
use super::compare_json::AgainstJson;
use super::draft::DraftJson;
use crate::engine::validity::End;
use crate::fleet::{After, Doubt, Judged, Lapse, LeftOut, Missed, Row, SameMark, What};
use crate::load::{Problem, Refusal};
use crate::measure::{Length, Rounding, System};
use crate::model::stable::stable_words;
use crate::report::Locale;
use crate::report::Subject;
use crate::report::json::{CheckJson, ProgramJson, TRUSTS, VERDICTS, harmless, trust, verdict};
use crate::report::words::{figures, fleet};
use schemars::JsonSchema;
use serde::Serialize;

/// The name and version of the format.
pub const SCHEMA: &str = "kitmuster/audit/1";

/// The audit as pretty-printed JSON, ending in a line feed.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn json(of: &Fleet<'_>) -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&AuditJson::new(of))?;
    text.push('\n');
    Ok(harmless(text))
}

/// A fleet, judged.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Audit")]
pub(in crate::report) struct AuditJson {
    /// The name and version of the format.
    #[schemars(extend("const" = SCHEMA))]
    schema: &'static str,
    /// The program that wrote it.
    program: ProgramJson,
    /// The day of the audit.
    #[schemars(extend("format" = "date"))]
    date: String,
    /// Which figures were believed.
    #[schemars(extend("enum" = TRUSTS))]
    trust: &'static str,
    /// The worst of all vessels.
    #[schemars(extend("enum" = VERDICTS))]
    verdict: &'static str,
    /// What it adds up to.
    totals: TotalsJson,
    /// What changed since an audit on record, with `--against`.
    #[serde(skip_serializing_if = "Option::is_none")]
    against: Option<AgainstJson>,
    /// The fleet under the draft of an edition, with `--draft`.
    #[serde(skip_serializing_if = "Option::is_none")]
    draft: Option<DraftJson>,
    /// Requirements, the one most often missed first.
    most_missed: Vec<MissedJson>,
    /// What lapses within 90 days of the audit.
    lapses: Vec<LapseJson>,
    /// Marks that stand on tools of two vessels at sea on the same days.
    same_marks: Vec<SameMarkJson>,
    /// What cannot be right about the files together.
    doubts: Vec<DoubtJson>,
    /// Inspection records that were laid over no vessel.
    records_left_out: Vec<LeftOutJson>,
    /// Files that were refused.
    refused: Vec<RefusedJson>,
    /// Each as a check gives it, the answers left null that an audit does not work out.
    vessels: Vec<CheckJson>,
}

/// Counts of vessels.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Totals")]
struct TotalsJson {
    /// How many were judged.
    vessels: usize,
    /// How many are ready.
    ready: usize,
    /// How many are not ready.
    not_ready: usize,
    /// Of how many nobody can tell.
    cannot_tell: usize,
    /// How many of the ready ones are so by good practice only.
    ready_by_good_practice: usize,
    /// How many files were refused.
    refused: usize,
    /// How many were left out by the selection.
    outside_selection: usize,
    /// How many are listed.
    shown: usize,
}

/// How often a requirement is missed.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Missed")]
struct MissedJson {
    /// The id of the profile.
    profile: String,
    /// The id of the requirement.
    requirement: String,
    /// What the rule calls it.
    title: String,
    /// The clause.
    clause: String,
    /// On how many vessels it is not met.
    not_met: usize,
    /// On how many nobody can tell.
    cannot_tell: usize,
    /// On how many something is too short.
    short_on: usize,
    /// The middle shortfall of these.
    median_shortfall: Option<ShortJson>,
    /// The worst shortfall.
    worst_shortfall: Option<ShortJson>,
}

/// By how much something is too short.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Shortfall")]
struct ShortJson {
    /// Exactly.
    nanometres: i64,
    /// For people; its wording may change.
    text: String,
    /// On which vessel.
    #[serde(skip_serializing_if = "Option::is_none")]
    vessel: Option<String>,
}

/// Something that is good no longer soon.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Lapse")]
struct LapseJson {
    /// The file, as it was given.
    file: String,
    /// The vessel's name.
    vessel: String,
    /// The mark of the tool.
    #[serde(skip_serializing_if = "Option::is_none")]
    tool: Option<String>,
    /// Or whose certificate it is.
    #[serde(skip_serializing_if = "Option::is_none")]
    certificate_of: Option<String>,
    /// What lapses.
    #[schemars(extend("enum" = ENDS))]
    end: &'static str,
    /// The last day on which it is good.
    #[schemars(extend("format" = "date"))]
    through: String,
    /// From the audit to that day.
    within_days: i64,
    /// What comes of it.
    #[schemars(extend("enum" = AFTERS))]
    after: &'static str,
    /// Whether a required finding hangs on it.
    decides: bool,
    /// What it serves.
    serves: Vec<ServesJson>,
}

/// A requirement of a profile.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Serves")]
struct ServesJson {
    /// The id of the profile.
    profile: String,
    /// The id of the requirement.
    requirement: String,
}

/// A mark that stands on tools of several vessels.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "SameMark")]
struct SameMarkJson {
    /// The mark.
    mark: String,
    /// The kind, by its id.
    kind: String,
    /// The vessels.
    vessels: Vec<NamedJson>,
}

/// A vessel by its file and name.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "NamedVessel")]
struct NamedJson {
    /// The file, as it was given.
    file: String,
    /// The name.
    name: String,
}

/// Files that cannot all be right.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Doubt")]
struct DoubtJson {
    /// The stable code.
    #[schemars(extend("enum" = Doubt::CODES))]
    code: &'static str,
    /// The register number.
    #[serde(skip_serializing_if = "Option::is_none")]
    register: Option<String>,
    /// The vessels.
    vessels: Vec<NamedJson>,
    /// For people; its wording may change.
    text: String,
}

/// A record that was laid over no vessel.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "RecordLeftOut")]
pub(in crate::report) struct LeftOutJson {
    /// The file, as it was given.
    file: String,
    /// The vessel that it names.
    vessel: String,
    /// How many vessels have that name.
    vessels_called_so: usize,
    /// A vessel with nearly that name.
    near: Option<String>,
    /// For people; its wording may change.
    text: String,
}

/// A file that was refused.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize)]
#[schemars(rename = "Refused")]
pub(crate) struct RefusedJson {
    /// The file, as it was given.
    file: String,
    /// What is wrong with it.
    problems: Vec<ProblemJson>,
}

/// One thing that is wrong in a file.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize)]
#[schemars(rename = "Problem")]
struct ProblemJson {
    /// The file, as it was given.
    file: String,
    /// The path of keys in the file.
    key: String,
    /// From one.
    line: Option<usize>,
    /// From one, in characters.
    column: Option<usize>,
    /// The text that offends.
    offending: Option<String>,
    /// What is wrong, for people.
    what: String,
    /// What was expected instead.
    expected: Option<String>,
    /// How to mend it.
    mend: Option<String>,
}

impl AuditJson {
    pub(crate) fn new<'a>(of: &Fleet<'a>) -> Self {
        let audit = of.audit;
        let counts = &audit.counts;
        let refused = audit.rows.iter().filter_map(|row| match row {
            Row::Refused(refusal) => Some(RefusedJson::new(refusal)),
            Row::Vessel(_) => None,
        });
        let judged = audit.rows.iter().filter_map(|row| match row {
            Row::Vessel(judged) => Some(&**judged),
            Row::Refused(_) => None,
        });
        let vessel = |(index, judged): (usize, &'a Judged)| {
            CheckJson::new(&Subject {
                check: &judged.check,
                vocabulary: of.vocabulary,
                sources: &judged.sources,
                locale: of.locale,
                freeing: of.freeing(index, judged),
            })
        };
        let vessels: Vec<_> = judged.enumerate().map(vessel).collect();
        Self {
            schema: SCHEMA,
            program: ProgramJson::this(),
            date: audit.date.to_string(),
            trust: trust(audit.trust),
            verdict: verdict(audit.verdict()),
            totals: TotalsJson {
                vessels: counts.vessels(),
                ready: counts.ready,
                not_ready: counts.not_ready,
                cannot_tell: counts.cannot_tell,
                ready_by_good_practice: counts.ready_by_practice,
                refused: counts.refused,
                outside_selection: audit.outside,
                shown: vessels.len(),
            },
            against: of.against.map(AgainstJson::new),
            draft: of.draft.map(|drafted| DraftJson::new(of, drafted)),
            most_missed: audit.missed.iter().map(|m| MissedJson::new(m, of.locale)).collect(),
            lapses: audit.lapses.iter().map(LapseJson::new).collect(),
            same_marks: audit.marks.iter().map(|m| SameMarkJson::new(m, of)).collect(),
            doubts: audit.doubts.iter().map(|doubt| DoubtJson::new(doubt, of.locale)).collect(),
            records_left_out: audit
                .left_out
                .iter()
                .map(|record| LeftOutJson::new(record, of.locale))
                .collect(),
            refused: refused.collect(),
            vessels,
        }
    }
}

impl MissedJson {
    fn new(missed: &Missed, locale: Locale) -> Self {
        let requirement = missed.requirement();
        let short = |length: Length, system: System, vessel: Option<String>| ShortJson {
            nanometres: length.nanometres(),
            text: figures::length(length, system, locale, Rounding::Up),
            vessel,
        };
        let system = missed.worst.as_ref().map_or(System::Customary, |worst| worst.system);
        Self {
            profile: missed.profile.id.clone(),
            requirement: requirement.map(|r| r.id.clone()).unwrap_or_default(),
            title: requirement.map(|r| r.title.to_string()).unwrap_or_default(),
            clause: requirement.map(|r| r.clause.clone()).unwrap_or_default(),
            not_met: missed.not_met,
            cannot_tell: missed.cannot_tell,
            short_on: missed.short_on,
            median_shortfall: missed.median.map(|length| short(length, system, None)),
            worst_shortfall: missed
                .worst
                .as_ref()
                .map(|worst| short(worst.short, worst.system, Some(worst.vessel.clone()))),
        }
    }
}

impl LapseJson {
    fn new(lapse: &Lapse) -> Self {
        let (tool, certificate_of) = match &lapse.what {
            What::Tool(mark) => (Some(mark.clone()), None),
            What::Certificate(person) => (None, Some(person.clone())),
        };
        Self {
            file: lapse.file.clone(),
            vessel: lapse.vessel.clone(),
            tool,
            certificate_of,
            end: end(lapse.end),
            through: lapse.through.to_string(),
            within_days: lapse.within,
            after: after(lapse.after),
            decides: lapse.after == After::Decides,
            serves: lapse
                .serves
                .iter()
                .map(|(profile, requirement)| ServesJson {
                    profile: profile.clone(),
                    requirement: requirement.clone(),
                })
                .collect(),
        }
    }
}

impl SameMarkJson {
    fn new(mark: &SameMark, of: &Fleet<'_>) -> Self {
        Self {
            mark: mark.mark.clone(),
            kind: of.vocabulary.kind(mark.kind).id.clone(),
            vessels: mark.vessels.iter().map(NamedJson::new).collect(),
        }
    }
}

impl NamedJson {
    fn new((file, name): &(String, String)) -> Self {
        Self { file: file.clone(), name: name.clone() }
    }
}

impl DoubtJson {
    fn new(doubt: &Doubt, locale: Locale) -> Self {
        Self {
            code: doubt.code(),
            register: match doubt {
                Doubt::SameRegister { register, .. } => Some(register.clone()),
                Doubt::TripsOver { .. } => None,
            },
            vessels: doubt.vessels().iter().map(NamedJson::new).collect(),
            text: fleet::doubt(doubt, locale),
        }
    }
}

impl LeftOutJson {
    pub(in crate::report) fn new(left_out: &LeftOut, locale: Locale) -> Self {
        Self {
            file: left_out.file.to_string(),
            vessel: left_out.vessel.clone(),
            vessels_called_so: left_out.called_so,
            near: left_out.near.clone(),
            text: fleet::left_out(left_out, locale),
        }
    }
}

impl RefusedJson {
    pub(crate) fn new(refusal: &Refusal) -> Self {
        let problem = |problem: &Problem| ProblemJson {
            file: problem.place.file.to_string(),
            key: problem.place.key.clone(),
            line: problem.position.map(|position| position.line),
            column: problem.position.map(|position| position.column),
            offending: problem.offending.clone(),
            what: problem.what.clone(),
            expected: problem.expected.clone(),
            mend: problem.mend.clone(),
        };
        Self {
            file: refusal.file.clone(),
            problems: refusal.problems.iter().map(problem).collect(),
        }
    }
}

stable_words! {
    fn end(End) in ENDS {
        End::Expiry => "expiry",
        End::Inspection => "inspection",
    }
}

stable_words! {
    fn after(After) in AFTERS {
        After::NotAsked => "not-asked",
        After::Served => "served",
        After::Open => "open",
        After::Advice => "advice",
        After::Decides => "decides",
    }
}
