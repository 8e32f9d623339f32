//! The vessel and the notices in the JSON format.
//!
//! Imports `model` and `measure`.

use super::quantity::QuantityJson;
use super::reason::fact_code;
use crate::measure::{Day, Units};
use crate::model::check::Notice;
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::Vessel;
use crate::model::vocabulary::Vocabulary;
use crate::report::{Subject, words};
use serde::Serialize;

#[derive(Debug, Serialize)]
pub(in crate::report) struct VesselJson {
    name: String,
    register: Option<String>,
    port: Option<String>,
    file: String,
    freeboard: FreeboardJson,
}

#[derive(Debug, Serialize)]
pub(super) struct FreeboardJson {
    from: &'static str,
    stations: Vec<StationJson>,
}

#[derive(Debug, Serialize)]
pub(super) struct StationJson {
    name: Option<String>,
    readings: Vec<RangeJson>,
}

#[derive(Debug, Serialize)]
pub(super) struct RangeJson {
    low: QuantityJson,
    high: QuantityJson,
}

#[derive(Debug, Default, Serialize)]
pub(in crate::report) struct NoticeJson {
    code: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    profile: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    rule: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    day: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    fact: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    words: Option<Vec<String>>,
    text: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    remedy: Option<String>,
}

impl VesselJson {
    pub(in crate::report) fn new(subject: &Subject<'_>) -> Self {
        Self::of(&subject.check.vessel, subject.units)
    }

    /// A vessel as judged.
    pub(in crate::report) fn of(vessel: &Vessel, units: Units) -> Self {
        let figure = |figure| QuantityJson::as_measured(figure, units);
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
                from: match vessel.freeboard.from {
                    FreeboardFrom::Rail => "rail",
                    FreeboardFrom::Deck => "deck",
                },
                stations: stations.collect(),
            },
        }
    }
}

impl NoticeJson {
    pub(in crate::report) fn new(notice: &Notice, vocabulary: &Vocabulary) -> Self {
        let told = Self {
            code: notice.code(),
            text: words::notice(notice),
            remedy: words::notice_remedy(notice),
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
