//! An audit on record: the wire types of `kitmuster/record/1`, what they are
//! made from and how they are read back.
//!
//! Imports `load`, `engine`, `model` and `measure`. The types are the
//! format's own, both ways; no text for people decides whether two findings
//! are equal, since none is in them.
//!
//! A record is repeated by its own rules: every profile and the vocabulary are in
//! it as texts, so that a verdict does not hang on which program is asked later.
//! It is no sealed document: who can write one can write one that agrees with
//! itself. One digest covers all of it, the auditor and the day too, so that it
//! can be kept or signed elsewhere. Refused is a record of which an input does not have its digest, or of
//! which the parts contradict each other (a vessel, a profile, a finding or an
//! inspection record twice, editions that are not those of its profiles, a profile
//! asked for that is not in it). What is only shown otherwise (a selection, an
//! order, units) is not in it.

mod again;
mod form;
mod make;
mod read;
pub(in crate::fleet) mod replay;
mod torn;

pub use again::{Again, Difference, Differs, Newer, Refused, again, newer};
pub use make::{Entry, Making};
pub use read::{Broken, Whole, read, whole};

use crate::measure::Day;
use crate::model::check::{Notice, Why};
use crate::model::finding::{Outcome, Verdict};
use crate::model::profile::Level;
use crate::model::reason::Reason;
use crate::model::vessel::Trust;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The name and version of the format.
pub const SCHEMA: &str = "kitmuster/record/1";

/// The largest record that is read or written, in bytes: 256 MiB, some twenty
/// thousand vessels. Read, a record takes at most about nine times its length
/// (lists of empty texts), in practice less than twice.
pub const LARGEST_RECORD: u64 = 256 * 1024 * 1024;

/// A whole audit on record.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
#[schemars(rename = "Record")]
pub struct AuditRecord {
    /// The name and version of the format.
    #[schemars(extend("const" = SCHEMA))]
    pub schema: String,
    /// The program that made it.
    pub program: Program,
    /// The day of the audit.
    #[serde(with = "form::day")]
    #[schemars(with = "String", extend("format" = "date"))]
    pub date: Day,
    /// Who audited, as given.
    pub auditor: Option<String>,
    /// What was asked.
    pub asked: AskedOnRecord,
    /// The editions that judged a vessel, by rule and id.
    pub editions: Vec<EditionOnRecord>,
    /// What was found, in the order of the input.
    pub vessels: Vec<VesselOnRecord>,
    /// Files that were refused, by name and message alone.
    pub refused: Vec<RefusedOnRecord>,
    /// Everything that was read.
    pub inputs: Inputs,
    /// The SHA-256 digest of all the rest: of the record without this key, its
    /// keys in order and no blanks between (RFC 8785). Older records have none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(regex(pattern = "^[0-9a-f]{64}$"))]
    pub sha256: Option<String>,
}

/// The program that made a record.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
pub struct Program {
    /// Its name.
    pub name: String,
    /// Its version.
    pub version: String,
}

/// What an audit was asked.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
#[schemars(rename = "Asked")]
pub struct AskedOnRecord {
    /// The day of departure of every vessel, if it was given.
    #[serde(with = "form::some_day")]
    #[schemars(with = "Option<String>", extend("format" = "date"))]
    pub on: Option<Day>,
    /// The day of return of every vessel, if it was given.
    #[serde(rename = "return", with = "form::some_day")]
    #[schemars(with = "Option<String>", extend("format" = "date"))]
    pub back: Option<Day>,
    /// Which figures were believed.
    #[serde(with = "form::TrustWord")]
    #[schemars(with = "form::TrustWord")]
    pub trust: Trust,
    /// The ids of the profiles asked for; empty for every one that binds.
    pub profiles: Vec<String>,
    /// Only vessels with this gear.
    pub gear: Vec<String>,
    /// Only vessels of this port.
    pub port: Vec<String>,
    /// Only vessels that this profile judges.
    pub bound_by: Vec<String>,
}

/// An edition that judged a vessel.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, JsonSchema, Serialize, Deserialize)]
#[schemars(rename = "Edition")]
pub struct EditionOnRecord {
    /// The rule.
    pub rule: String,
    /// The id of the edition.
    pub id: String,
    /// The law's edition, in words.
    pub edition: String,
    /// The revision of the encoding.
    pub encoding: u32,
    /// The input that it stands in.
    pub file: String,
}

/// What was found on one vessel.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
#[schemars(rename = "Vessel")]
pub struct VesselOnRecord {
    /// The vessel's file.
    pub file: String,
    /// The files of the inspection records laid over it.
    pub inspections: Vec<String>,
    /// Its name.
    pub name: String,
    /// Its register number.
    pub register: Option<String>,
    /// Its port.
    pub port: Option<String>,
    /// The day of departure that was judged.
    #[serde(with = "form::day")]
    #[schemars(with = "String", extend("format" = "date"))]
    pub departure: Day,
    /// The day of return that was judged.
    #[serde(rename = "return", with = "form::day")]
    #[schemars(with = "String", extend("format" = "date"))]
    pub back: Day,
    /// The verdict.
    #[serde(with = "form::VerdictWord")]
    #[schemars(with = "form::VerdictWord")]
    pub verdict: Verdict,
    /// What was told of the check as a whole.
    pub notices: Vec<NoticeOnRecord>,
    /// What each edition said.
    pub profiles: Vec<JudgementOnRecord>,
    /// Since when something is open of which no finding here says so.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub since: Vec<SinceOnRecord>,
}

/// Since which audit something is open that has no finding of its own on this
/// record: a rule as a whole, what was open before the rule was judged as a
/// whole, or what a record that is not laid over now found.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
#[schemars(rename = "Since")]
pub struct SinceOnRecord {
    /// The rule.
    pub rule: String,
    /// The requirement's id; none for the rule as a whole.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub requirement: Option<String>,
    /// Since when.
    #[serde(with = "form::day")]
    #[schemars(with = "String", extend("format" = "date"))]
    pub open_since: Day,
    /// The digests of the inspection records that found it and are not laid
    /// over: it counts when they are again. Empty where it is open now.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub without: Vec<String>,
}

/// Something that was told of a check as a whole.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
#[schemars(rename = "Notice")]
pub struct NoticeOnRecord {
    /// Its stable code.
    #[schemars(extend("enum" = Notice::CODES))]
    pub code: String,
    /// The rule it speaks of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rule: Option<String>,
    /// The profile it speaks of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub profile: Option<String>,
    /// The day it speaks of.
    #[serde(default, skip_serializing_if = "Option::is_none", with = "form::some_day")]
    #[schemars(with = "Option<String>", extend("format" = "date"))]
    pub day: Option<Day>,
    /// The words it speaks of.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub words: Vec<String>,
}

/// What one edition said of one vessel.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
#[schemars(rename = "Profile")]
pub struct JudgementOnRecord {
    /// The rule.
    pub rule: String,
    /// The id of the edition.
    pub id: String,
    /// The law's edition, in words.
    pub edition: String,
    /// The revision of the encoding.
    pub encoding: u32,
    /// False for a rule that was known, not encoded.
    pub encoded: bool,
    /// Why it was used: `binds`, `may-bind`, `asked`, `fallback`.
    #[schemars(extend("enum" = Why::CODES))]
    pub why: String,
    /// The verdict under it.
    #[serde(with = "form::VerdictWord")]
    #[schemars(with = "form::VerdictWord")]
    pub verdict: Verdict,
    /// Until when the kit stays ready.
    pub ready_until: UntilOnRecord,
    /// A finding for each requirement that binds or may bind.
    pub findings: Vec<FindingOnRecord>,
}

/// Until when a kit stays ready.
#[derive(Debug, Clone, Copy, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "state")]
#[schemars(rename = "ReadyUntil")]
pub enum UntilOnRecord {
    /// Not ready at departure.
    None,
    /// Through this day.
    Day {
        /// The last day.
        #[serde(with = "form::day")]
        #[schemars(with = "String", extend("format" = "date"))]
        day: Day,
    },
    /// Nothing ever lapses.
    NoEnd,
}

/// What was found of one requirement.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
#[schemars(rename = "Finding")]
pub struct FindingOnRecord {
    /// The requirement's id.
    pub requirement: String,
    /// Whether it counts towards the verdict.
    #[serde(with = "form::LevelWord")]
    #[schemars(with = "form::LevelWord")]
    pub level: Level,
    /// The outcome.
    #[serde(with = "form::OutcomeWord")]
    #[schemars(with = "form::OutcomeWord")]
    pub outcome: Outcome,
    /// Since which audit a required finding has been open, in an unbroken row
    /// of records; none where it is met or recommended.
    #[serde(default, skip_serializing_if = "Option::is_none", with = "form::some_day")]
    #[schemars(with = "Option<String>", extend("format" = "date"))]
    pub open_since: Option<Day>,
    /// The marks of the tools that serve it.
    pub tools: Vec<String>,
    /// Why it is not met, or what is missing.
    pub reasons: Vec<ReasonOnRecord>,
    /// The freeboard at which it is worst.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub freeboard_nanometres: Option<i64>,
    /// The day on which it is worst.
    #[serde(with = "form::day")]
    #[schemars(with = "String", extend("format" = "date"))]
    pub day: Day,
}

/// One reason.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
#[schemars(rename = "Reason")]
pub struct ReasonOnRecord {
    /// Its stable code.
    #[schemars(extend("enum" = Reason::CODES))]
    pub code: String,
    /// The mark of the tool it speaks of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tool: Option<String>,
    /// By how much a length falls short or is too great.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub by_nanometres: Option<i64>,
    /// How many there are, where they are too few.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub have: Option<u32>,
    /// How many are asked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub need: Option<u32>,
    /// The day since or on which something is lapsed.
    #[serde(default, skip_serializing_if = "Option::is_none", with = "form::some_day")]
    #[schemars(with = "Option<String>", extend("format" = "date"))]
    pub day: Option<Day>,
}

/// A file that was refused. Its text is not kept.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
#[schemars(rename = "Refused")]
pub struct RefusedOnRecord {
    /// The file.
    pub file: String,
    /// The first thing that was wrong with it, for people.
    pub message: String,
}

/// Everything that was read.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
pub struct Inputs {
    /// The vocabulary.
    pub vocabulary: InputFile,
    /// Every profile of the library, used or not.
    pub profiles: Vec<InputFile>,
    /// The vessels, in the order of what was found.
    pub vessels: Vec<InputFile>,
    /// The inspection records laid over them.
    pub inspections: Vec<InputFile>,
}

/// One file that was read.
#[derive(Debug, Clone, PartialEq, Eq, JsonSchema, Serialize, Deserialize)]
pub struct InputFile {
    /// Its name as it was given.
    pub file: String,
    /// The SHA-256 digest of the text, in hexadecimal digits.
    #[schemars(regex(pattern = "^[0-9a-f]{64}$"))]
    pub sha256: String,
    /// The text, without a byte order mark.
    pub text: String,
}
