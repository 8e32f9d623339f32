//! The freeboard: readings of records beside those of the list, station by
//! station, and which of them count. It changes with the load, so that several
//! that were measured stay rivals; against those, what a label says or somebody
//! stated counts for nothing.

use crate::model::inspection::Inspection;
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{Freeboard, How, Station, Vessel};

/// Lays the freeboards over the list's, those from the rail and those from the
/// deck each by themselves. Where nothing is listed, the rail goes before the deck.
pub(super) fn lay(vessel: &mut Vessel, records: &[Inspection]) {
    let taken: Vec<&Freeboard> =
        records.iter().filter_map(|record| record.freeboard.as_ref()).collect();
    let at = |from| taken.iter().flat_map(move |one| one.at(from));
    let freeboard = &mut vessel.freeboard;
    let rail = at(FreeboardFrom::Rail).next().is_some();
    if freeboard.stations.is_empty() && at(FreeboardFrom::Deck).next().is_some() && !rail {
        freeboard.from = FreeboardFrom::Deck;
    }
    if freeboard.stations.is_empty() && rail {
        freeboard.from = FreeboardFrom::Rail;
    }
    for from in [freeboard.from, freeboard.from.other()] {
        let mut stations: Vec<&Station> = at(from).collect();
        stations.sort_by(|a, b| a.name.cmp(&b.name));
        for station in stations {
            lay_station(freeboard.at_mut(from), station);
        }
    }
}

fn lay_station(listed: &mut Vec<Station>, taken: &Station) {
    let Some(listed) = listed.iter_mut().find(|one| one.name == taken.name) else {
        listed.push(taken.clone());
        return;
    };
    for reading in &taken.readings {
        if !listed.readings.iter().any(|known| known.says_the_same(reading)) {
            listed.readings.push(reading.clone());
        }
    }
}

/// Sets aside what counts for nothing.
pub(super) fn overrule(freeboard: &mut Freeboard) {
    for station in freeboard.stations.iter_mut().chain(&mut freeboard.other) {
        if station.readings.iter().any(|reading| reading.how == How::Measured) {
            let all = std::mem::take(&mut station.readings);
            let (measured, rest) =
                all.into_iter().partition(|reading| reading.how == How::Measured);
            station.readings = measured;
            station.overruled.extend(rest);
        }
    }
}
