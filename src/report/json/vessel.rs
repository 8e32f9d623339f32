//! The vessel and the notices in the JSON format.
//!
//! Imports `model` and `measure`.

use super::quantity::QuantityJson;
use crate::measure::Rounding;
use crate::model::check::Notice;
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::Vessel;
use crate::report::{Subject, words};
use serde::Serialize;

#[derive(Debug, Serialize)]
pub(super) struct VesselJson {
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

#[derive(Debug, Serialize)]
pub(super) struct NoticeJson {
    code: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    profile: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    rule: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    day: Option<String>,
    text: String,
}

impl VesselJson {
    pub(super) fn new(subject: &Subject<'_>) -> Self {
        let vessel: &Vessel = &subject.check.vessel;
        let figure = |figure| QuantityJson::of_figure(figure, subject.units, Rounding::Down);
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
    pub(super) fn new(notice: &Notice) -> Self {
        let (mut profile, mut rule, mut day) = (None, None, None);
        let code = match notice {
            Notice::NoRuleNamesVessel => "no-rule-names-vessel",
            Notice::NotInForce { profile: id } => {
                profile = Some(id.clone());
                "not-in-force"
            }
            Notice::DoesNotBind { profile: id } => {
                profile = Some(id.clone());
                "does-not-bind"
            }
            Notice::NoEdition { rule: id, day: first } => {
                rule = Some(id.clone());
                day = Some(first.to_string());
                "no-edition"
            }
            Notice::NoReturn => "no-return",
        };
        Self { code, profile, rule, day, text: words::notice(notice) }
    }
}
