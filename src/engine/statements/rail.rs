//! The freeboard: readings of records beside those of the list, station by
//! station, and which of them count. It changes with the load, so that several
//! that were measured stay rivals; against those, what a label says or somebody
//! stated counts for nothing.

use crate::model::inspection::Inspection;
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{Freeboard, How, Station, Vessel};

/// Lays the freeboards over the list's that were taken from the same place.
/// Where nothing is listed, the rail goes before the deck.
pub(super) fn lay(vessel: &mut Vessel, records: &[Inspection]) {
    let taken = || records.iter().filter_map(|record| record.freeboard.as_ref());
    if vessel.freeboard.stations.is_empty() {
        let rail = taken().any(|taken| taken.from == FreeboardFrom::Rail);
        match taken().next() {
            Some(_) if rail => vessel.freeboard.from = FreeboardFrom::Rail,
            Some(taken) => vessel.freeboard.from = taken.from,
            None => {}
        }
    }
    let from = vessel.freeboard.from;
    let mut stations: Vec<&Station> =
        taken().filter(|taken| taken.from == from).flat_map(|taken| &taken.stations).collect();
    stations.sort_by(|a, b| a.name.cmp(&b.name));
    for station in stations {
        lay_station(&mut vessel.freeboard, station);
    }
}

fn lay_station(freeboard: &mut Freeboard, taken: &Station) {
    let Some(listed) = freeboard.stations.iter_mut().find(|one| one.name == taken.name) else {
        freeboard.stations.push(taken.clone());
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
    for station in &mut freeboard.stations {
        if station.readings.iter().any(|reading| reading.how == How::Measured) {
            let all = std::mem::take(&mut station.readings);
            let (measured, rest) =
                all.into_iter().partition(|reading| reading.how == How::Measured);
            station.readings = measured;
            station.overruled.extend(rest);
        }
    }
}
