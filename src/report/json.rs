//! A check as JSON for programs: the format `kitmuster/check/1`.
//!
//! The types are the format's own, so that a change inside the program never
//! changes it by accident. Keys stand in a fixed order; a key that is absent
//! in one result may be there in another, and readers must let pass keys that
//! they do not know.
//!
//! Top level: `schema`, `program` (`name`, `version`), `vessel` (`name`,
//! `register`, `port`, `file`, `freeboard`), `trip` (`departure`, `return`),
//! `trust` (`all` or `measured`), `verdict` (`ready`, `not-ready` or
//! `cannot-tell`), `standing` (`rule`, or `good-practice` where no rule was
//! checked), `notices` (`code`, `text`, `remedy` and what it speaks of) and
//! `profiles`, one for each profile that judged the vessel.
//!
//! A profile: `id`, `rule`, `edition`, `encoding` (the revision of the
//! program's encoding), `encoded`, `title`, `source`, `standing` (`rule` or
//! `good-practice`), `why` (`code`, `text`), `days`, `verdict`,
//! `ready_until` (`state` is `none`, `day` or `no-end`), `good_up_to`
//! (`state` is `none`, `freeboard`, `only-below` or `no-limit`),
//! `stretches`, `findings`, `clashes` and `way_to_ready` (`state` is
//! `already`, `steps` or `none`).
//!
//! Requirements are named by their ids, tools by their marks. A length is
//! `{ "nanometres": 1943100000, "text": "6 ft 4 1/2 in (1.944 m)" }`, exact
//! in the first and for people in the second; other quantities likewise with
//! `micrograms`, `millidegrees`, `hook_size_rank` (`1/0` is 1, size `1` is 0)
//! or `count`. Days are `2026-03-09`. Every `text` and `remedy` is for people
//! and may change its wording; every `code` is stable.

mod finding;
mod profile;
mod quantity;
mod reason;
mod vessel;
mod way;

use super::Subject;
use super::options::FreeingJson;
use super::places::Places;
use crate::measure::Day;
use crate::model::finding::{Outcome, Verdict};
use crate::model::stable::stable_words;
use crate::model::text::steers;
use crate::model::vessel::Trust;
use profile::ProfileJson;
pub(in crate::report) use profile::{STANDINGS, standing};
use schemars::JsonSchema;
use serde::Serialize;

pub(in crate::report) use finding::ToolJson;
pub(in crate::report) use quantity::MoneyJson;
pub(in crate::report) use reason::ReasonJson;
pub(in crate::report) use vessel::{NoticeJson, VesselJson};
pub(in crate::report) use way::{DEEDS, StepJson, TargetJson, WayJson, deed};

/// The name and version of the format.
pub const SCHEMA: &str = "kitmuster/check/1";

/// The check as pretty-printed JSON, ending in a line feed.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn json(subject: &Subject<'_>) -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&CheckJson::new(subject))?;
    text.push('\n');
    Ok(harmless(text))
}

/// Characters that steer a terminal, written as JSON escapes: the same value
/// to a program, no harm to a screen. They occur within strings alone.
pub(super) fn harmless(text: String) -> String {
    // Of the plain characters JSON itself escapes all that steer but one.
    if text.is_ascii() && !text.contains('\u{7f}') {
        return text;
    }
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        if steers(c) {
            out.push_str(&format!("\\u{:04x}", u32::from(c)));
        } else {
            out.push(c);
        }
    }
    out
}

/// One vessel, judged for one trip.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Check")]
pub(super) struct CheckJson {
    /// The name and version of the format.
    #[schemars(extend("const" = SCHEMA))]
    schema: &'static str,
    /// The program that wrote it.
    program: ProgramJson,
    /// The vessel.
    vessel: VesselJson,
    /// The trip that was judged.
    trip: TripJson,
    /// Which figures were believed.
    #[schemars(extend("enum" = TRUSTS))]
    trust: &'static str,
    /// The verdict.
    #[schemars(extend("enum" = VERDICTS))]
    verdict: &'static str,
    /// What it stands on: a rule, or good practice where no rule was checked.
    #[schemars(extend("enum" = STANDINGS))]
    standing: &'static str,
    /// What is told of the check as a whole.
    notices: Vec<NoticeJson>,
    /// One for each profile that judged the vessel.
    profiles: Vec<ProfileJson>,
    /// What the kit is worth in outcomes, where that was asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    freeing: Option<FreeingJson>,
}

/// The program that wrote it.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Program")]
pub(super) struct ProgramJson {
    /// The name.
    name: &'static str,
    /// Its version.
    version: &'static str,
}

/// The days of a trip.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Trip")]
pub(super) struct TripJson {
    /// The day of departure.
    #[schemars(extend("format" = "date"))]
    departure: String,
    /// The day of return.
    #[schemars(extend("format" = "date"))]
    r#return: String,
}

impl ProgramJson {
    /// This program.
    pub(super) fn this() -> Self {
        Self { name: env!("CARGO_PKG_NAME"), version: env!("CARGO_PKG_VERSION") }
    }
}

impl TripJson {
    /// The days of a trip.
    pub(super) fn new(departure: Day, back: Day) -> Self {
        Self { departure: departure.to_string(), r#return: back.to_string() }
    }
}

impl CheckJson {
    pub(super) fn new(subject: &Subject<'_>) -> Self {
        let check = subject.check;
        let places = Places::new(subject.sources);
        Self {
            schema: SCHEMA,
            program: ProgramJson::this(),
            vessel: VesselJson::new(subject),
            trip: TripJson::new(check.asked.departure, check.asked.back),
            trust: trust(check.asked.trust),
            verdict: verdict(check.verdict),
            standing: standing(check.standing()),
            notices: check
                .notices
                .iter()
                .map(|notice| NoticeJson::new(notice, subject.vocabulary))
                .collect(),
            profiles: check
                .judgements
                .iter()
                .map(|judgement| ProfileJson::new(subject, check, judgement, &places))
                .collect(),
            freeing: subject.freeing.as_ref().map(FreeingJson::new),
        }
    }
}

stable_words! {
    /// The stable word for a verdict.
    pub fn verdict(Verdict) in VERDICTS {
            Verdict::Ready => "ready",
            Verdict::CannotTell => "cannot-tell",
            Verdict::NotReady => "not-ready",
    }
}

stable_words! {
    /// The stable word for an outcome.
    pub(super) fn outcome(Outcome) in OUTCOMES {
            Outcome::Met => "met",
            Outcome::CannotTell => "cannot-tell",
            Outcome::NotMet => "not-met",
    }
}

stable_words! {
    /// The stable word for which figures are believed.
    pub(super) fn trust(Trust) in TRUSTS {
            Trust::All => "all",
            Trust::Measured => "measured",
    }
}

#[cfg(test)]
mod tests;
