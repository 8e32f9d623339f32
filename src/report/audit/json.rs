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
use crate::measure::{Length, Rounding, System, Units};
use crate::report::Subject;
use crate::report::json::{CheckJson, ProgramJson, harmless, trust, verdict};
use crate::report::words::{figures, fleet};
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

#[derive(Serialize)]
pub(crate) struct AuditJson {
    schema: &'static str,
    program: ProgramJson,
    date: String,
    trust: &'static str,
    verdict: &'static str,
    totals: TotalsJson,
    #[serde(skip_serializing_if = "Option::is_none")]
    against: Option<AgainstJson>,
    #[serde(skip_serializing_if = "Option::is_none")]
    draft: Option<DraftJson>,
    most_missed: Vec<MissedJson>,
    lapses: Vec<LapseJson>,
    same_marks: Vec<SameMarkJson>,
    doubts: Vec<DoubtJson>,
    records_left_out: Vec<LeftOutJson>,
    refused: Vec<RefusedJson>,
    vessels: Vec<CheckJson>,
}

#[derive(Serialize)]
struct TotalsJson {
    vessels: usize,
    ready: usize,
    not_ready: usize,
    cannot_tell: usize,
    refused: usize,
    outside_selection: usize,
    shown: usize,
}

#[derive(Serialize)]
struct MissedJson {
    profile: String,
    requirement: String,
    title: String,
    clause: String,
    not_met: usize,
    cannot_tell: usize,
    short_on: usize,
    median_shortfall: Option<ShortJson>,
    worst_shortfall: Option<ShortJson>,
}

#[derive(Serialize)]
struct ShortJson {
    nanometres: i64,
    text: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    vessel: Option<String>,
}

#[derive(Serialize)]
struct LapseJson {
    file: String,
    vessel: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    tool: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    certificate_of: Option<String>,
    end: &'static str,
    through: String,
    within_days: i64,
    after: &'static str,
    decides: bool,
    serves: Vec<ServesJson>,
}

#[derive(Serialize)]
struct ServesJson {
    profile: String,
    requirement: String,
}

#[derive(Serialize)]
struct SameMarkJson {
    mark: String,
    kind: String,
    vessels: Vec<NamedJson>,
}

#[derive(Serialize)]
struct NamedJson {
    file: String,
    name: String,
}

#[derive(Serialize)]
struct DoubtJson {
    code: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    register: Option<String>,
    vessels: Vec<NamedJson>,
    text: String,
}

/// A record that was laid over no vessel.
#[derive(Serialize)]
pub(in crate::report) struct LeftOutJson {
    file: String,
    vessel: String,
    vessels_called_so: usize,
    near: Option<String>,
    text: String,
}

/// A file that was refused.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(crate) struct RefusedJson {
    file: String,
    problems: Vec<ProblemJson>,
}

#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct ProblemJson {
    file: String,
    key: String,
    line: Option<usize>,
    column: Option<usize>,
    offending: Option<String>,
    what: String,
    expected: Option<String>,
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
                units: of.units,
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
                refused: counts.refused,
                outside_selection: audit.outside,
                shown: vessels.len(),
            },
            against: of.against.map(AgainstJson::new),
            draft: of.draft.map(|drafted| DraftJson::new(of, drafted)),
            most_missed: audit.missed.iter().map(|m| MissedJson::new(m, of.units)).collect(),
            lapses: audit.lapses.iter().map(LapseJson::new).collect(),
            same_marks: audit.marks.iter().map(|m| SameMarkJson::new(m, of)).collect(),
            doubts: audit.doubts.iter().map(DoubtJson::new).collect(),
            records_left_out: audit.left_out.iter().map(LeftOutJson::new).collect(),
            refused: refused.collect(),
            vessels,
        }
    }
}

impl MissedJson {
    fn new(missed: &Missed, units: Units) -> Self {
        let requirement = missed.requirement();
        let short = |length: Length, system: System, vessel: Option<String>| ShortJson {
            nanometres: length.nanometres(),
            text: figures::length(length, system, units, Rounding::Up),
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
            end: match lapse.end {
                End::Expiry => "expiry",
                End::Inspection => "inspection",
            },
            through: lapse.through.to_string(),
            within_days: lapse.within,
            after: match lapse.after {
                After::NotAsked => "not-asked",
                After::Served => "served",
                After::Open => "open",
                After::Advice => "advice",
                After::Decides => "decides",
            },
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
    fn new(doubt: &Doubt) -> Self {
        Self {
            code: doubt.code(),
            register: match doubt {
                Doubt::SameRegister { register, .. } => Some(register.clone()),
                Doubt::TripsOver { .. } => None,
            },
            vessels: doubt.vessels().iter().map(NamedJson::new).collect(),
            text: fleet::doubt(doubt),
        }
    }
}

impl LeftOutJson {
    pub(in crate::report) fn new(left_out: &LeftOut) -> Self {
        Self {
            file: left_out.file.to_string(),
            vessel: left_out.vessel.clone(),
            vessels_called_so: left_out.called_so,
            near: left_out.near.clone(),
            text: fleet::left_out(left_out),
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
