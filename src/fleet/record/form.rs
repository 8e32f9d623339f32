//! How days and the model's words are written in a record.
//!
//! Imports `model` and `measure`.

use crate::model::finding::{Outcome, Verdict};
use crate::model::profile::Level;
use crate::model::vessel::Trust;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// An outcome.
#[derive(JsonSchema, Serialize, Deserialize)]
#[serde(remote = "Outcome", rename_all = "kebab-case")]
#[schemars(rename = "Outcome")]
pub(super) enum OutcomeWord {
    Met,
    CannotTell,
    NotMet,
}

/// A verdict.
#[derive(JsonSchema, Serialize, Deserialize)]
#[serde(remote = "Verdict", rename_all = "kebab-case")]
#[schemars(rename = "Verdict")]
pub(super) enum VerdictWord {
    Ready,
    CannotTell,
    NotReady,
}

/// Whether a requirement counts towards the verdict.
#[derive(JsonSchema, Serialize, Deserialize)]
#[serde(remote = "Level", rename_all = "kebab-case")]
#[schemars(rename = "Level")]
pub(super) enum LevelWord {
    Required,
    Recommended,
}

/// Which figures were believed.
#[derive(JsonSchema, Serialize, Deserialize)]
#[serde(remote = "Trust", rename_all = "kebab-case")]
#[schemars(rename = "Trust")]
pub(super) enum TrustWord {
    All,
    Measured,
}

/// A day, like `2026-03-09`.
pub(super) mod day {
    use crate::measure::Day;
    use serde::de::Error;
    use serde::{Deserialize, Deserializer, Serializer};

    pub(in crate::fleet::record) fn serialize<S: Serializer>(
        day: &Day,
        to: S,
    ) -> Result<S::Ok, S::Error> {
        to.collect_str(day)
    }

    pub(in crate::fleet::record) fn deserialize<'de, D: Deserializer<'de>>(
        from: D,
    ) -> Result<Day, D::Error> {
        let text = String::deserialize(from)?;
        Day::parse(&text).map_err(|error| D::Error::custom(format!("`{text}`: {error}")))
    }
}

/// A day, or null.
pub(super) mod some_day {
    use crate::measure::Day;
    use serde::de::Error;
    use serde::{Deserialize, Deserializer, Serializer};

    pub(in crate::fleet::record) fn serialize<S: Serializer>(
        day: &Option<Day>,
        to: S,
    ) -> Result<S::Ok, S::Error> {
        match day {
            Some(day) => to.collect_str(day),
            None => to.serialize_none(),
        }
    }

    pub(in crate::fleet::record) fn deserialize<'de, D: Deserializer<'de>>(
        from: D,
    ) -> Result<Option<Day>, D::Error> {
        let Some(text) = Option::<String>::deserialize(from)? else { return Ok(None) };
        let day = Day::parse(&text);
        day.map(Some).map_err(|error| D::Error::custom(format!("`{text}`: {error}")))
    }
}
