//! The vessel and the notices in the JSON format.
//!
//! Imports `model` and `measure`.

use super::quantity::QuantityJson;
use super::reason::fact_code;
use crate::measure::Day;
use crate::model::check::Notice;
use crate::model::profile::FreeboardFrom;
use crate::model::stable::stable_words;
use crate::model::vessel::Vessel;
use crate::model::vocabulary::Vocabulary;
use crate::report::Locale;
use crate::report::{Subject, words};
use schemars::JsonSchema;
use serde::Serialize;

/// The vessel as it was judged.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Vessel")]
pub(in crate::report) struct VesselJson {
    /// The vessel's name.
    name: String,
    /// The register number.
    register: Option<String>,
    /// The port.
    port: Option<String>,
    /// The file, as it was given.
    file: String,
    /// Its freeboard.
    freeboard: FreeboardJson,
}

/// From the rail or the deck down to the water.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Freeboard")]
pub(super) struct FreeboardJson {
    /// From where it was taken.
    #[schemars(extend("enum" = FREEBOARDS))]
    from: &'static str,
    /// One for each hauling station.
    stations: Vec<StationJson>,
}

/// A place on the rail where gear is hauled.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Station")]
pub(super) struct StationJson {
    /// Its name; null where the vessel has one freeboard.
    name: Option<String>,
    /// What was taken there.
    readings: Vec<RangeJson>,
}

/// One reading of a freeboard.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Range")]
pub(super) struct RangeJson {
    /// The lowest.
    low: QuantityJson,
    /// The highest.
    high: QuantityJson,
}

/// Something that is told of the check as a whole.
#[derive(Debug, Default, JsonSchema, Serialize)]
#[schemars(rename = "Notice")]
pub(in crate::report) struct NoticeJson {
    /// The stable code.
    #[schemars(extend("enum" = Notice::CODES))]
    code: &'static str,
    /// The id of the profile.
    #[serde(skip_serializing_if = "Option::is_none")]
    profile: Option<String>,
    /// The id of the rule.
    #[serde(skip_serializing_if = "Option::is_none")]
    rule: Option<String>,
    /// The day it speaks of.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(extend("format" = "date"))]
    day: Option<String>,
    /// The fact of the vessel.
    #[serde(skip_serializing_if = "Option::is_none")]
    fact: Option<String>,
    /// The words that are not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    words: Option<Vec<String>>,
    /// For people; its wording may change.
    text: String,
    /// What to do about it, for people.
    #[serde(skip_serializing_if = "Option::is_none")]
    remedy: Option<String>,
}

impl VesselJson {
    pub(in crate::report) fn new(subject: &Subject<'_>) -> Self {
        Self::of(&subject.check.vessel, subject.locale)
    }

    /// A vessel as judged.
    pub(in crate::report) fn of(vessel: &Vessel, locale: Locale) -> Self {
        let figure = |figure| QuantityJson::as_measured(figure, locale);
        let stations = vessel.freeboard.stations.iter().map(|station| StationJson {
            name: station.name.clone(),
            readings: station
                .readings
                .iter()
                .map(|reading| RangeJson { low: figure(&reading.low), high: figure(&reading.high) })
                .collect(),
        });
        Self {
            name: vessel.name.clone(),
            register: vessel.register.clone(),
            port: vessel.port.clone(),
            file: vessel.place.file.to_string(),
            freeboard: FreeboardJson {
                from: from(vessel.freeboard.from),
                stations: stations.collect(),
            },
        }
    }
}

impl NoticeJson {
    pub(in crate::report) fn new(notice: &Notice, vocabulary: &Vocabulary, locale: Locale) -> Self {
        let told = Self {
            code: notice.code(),
            text: words::notice(notice, locale),
            remedy: words::notice_remedy(notice, locale),
            ..Self::default()
        };
        let day_of = |day: &Day| Some(day.to_string());
        let fact_of = |fact| Some(fact_code(fact, vocabulary));
        match notice {
            Notice::NoRuleNamesVessel | Notice::NoReturn => told,
            Notice::NotInForce { profile } | Notice::DoesNotBind { profile } => {
                Self { profile: Some(profile.clone()), ..told }
            }
            Notice::NoEdition { rule, day } => {
                Self { rule: Some(rule.clone()), day: day_of(day), ..told }
            }
            Notice::UnknownWords { what, words } => {
                Self { fact: fact_of(what), words: Some(words.clone()), ..told }
            }
            Notice::MayBind { rule, fact } => {
                Self { rule: Some(rule.clone()), fact: fact_of(fact), ..told }
            }
            Notice::RecordAfterDeparture { on }
            | Notice::FreeboardOtherPlace { on }
            | Notice::SheetOutOfDate { on, .. } => Self { day: day_of(on), ..told },
        }
    }
}

stable_words! {
    fn from(FreeboardFrom) in FREEBOARDS {
        FreeboardFrom::Rail => "rail",
        FreeboardFrom::Deck => "deck",
    }
}
