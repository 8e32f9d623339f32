//! Inspection records laid over a vessel's declaration, and which figures
//! are believed.

use crate::model::vessel::{
    Change, Datum, Found, Freeboard, How, Inspection, Reading, State, Tool, Trust, Vessel,
    Whereabouts,
};
use crate::model::vocabulary::{AttributeId, KindId, Vocabulary};

/// The vessel with the records laid over its declaration, the earliest
/// first. Nothing declared is edited: readings stand side by side, a later
/// look at the condition or the expiry replaces the earlier one.
pub fn lay_over(vessel: &Vessel, inspections: &[Inspection], vocabulary: &Vocabulary) -> Vessel {
    let mut vessel = vessel.clone();
    let mut records: Vec<_> = inspections.iter().collect();
    records.sort_by_key(|record| record.on);
    for record in records {
        for found in &record.found {
            lay_found(&mut vessel, found, record, vocabulary);
        }
        mark_unfound(&mut vessel, record);
        vessel.coverage.everything |= record.coverage.everything;
        vessel.coverage.all_seen.extend(&record.coverage.all_seen);
        if let Some(freeboard) = &record.freeboard {
            if vessel.freeboard.stations.is_empty() {
                vessel.freeboard = freeboard.clone();
            } else if vessel.freeboard.from == freeboard.from {
                lay_freeboard(&mut vessel, freeboard);
            }
        }
    }
    vessel
}

fn lay_freeboard(vessel: &mut Vessel, taken: &Freeboard) {
    for station in &taken.stations {
        match vessel.freeboard.stations.iter_mut().find(|s| s.name == station.name) {
            Some(declared) => declared.readings.extend(station.readings.iter().cloned()),
            None => vessel.freeboard.stations.push(station.clone()),
        }
    }
}

/// Where a record speaks for the whole kit, or for all of a kind, what it
/// does not name was not there.
fn mark_unfound(vessel: &mut Vessel, record: &Inspection) {
    for tool in vessel.kit.iter_mut().filter(|tool| record.coverage.is_whole(tool.kind)) {
        if !record.found.iter().any(|found| found.mark == tool.mark) {
            tool.whereabouts = Whereabouts::Missing;
        }
    }
}

fn lay_found(vessel: &mut Vessel, found: &Found, record: &Inspection, vocabulary: &Vocabulary) {
    let known = vessel.kit.iter().position(|tool| tool.mark == found.mark);
    let index = match (known, found.kind) {
        (Some(index), _) => index,
        (None, Some(kind)) => {
            vessel.kit.push(unlisted(found, kind));
            vessel.kit.len() - 1
        }
        (None, None) => return,
    };
    let tool = &mut vessel.kit[index];
    if found.missing {
        tool.whereabouts = Whereabouts::Missing;
        return;
    }
    tool.whereabouts = Whereabouts::Aboard;
    tool.state = found.state.unwrap_or(tool.state);
    tool.count = found.count.unwrap_or(tool.count);
    tool.expires = found.expires.or(tool.expires);
    tool.stowed = found.stowed.clone().or(tool.stowed.take());
    tool.remark = found.remark.clone().or(tool.remark.take());
    add_readings(tool, &found.attributes);
    for (change, after) in &found.mended {
        retire(tool, change, vocabulary);
        add_readings(tool, after);
        tool.state = State::Serviceable;
    }
    if record.renews && tool.state == State::Serviceable {
        tool.inspected = tool.inspected.max(Some(record.on));
    }
}

fn unlisted(found: &Found, kind: KindId) -> Tool {
    let count = found.count.unwrap_or(1);
    Tool {
        state: found.state.unwrap_or(State::Unknown),
        ..Tool::bare(found.mark.clone(), kind, count, found.place.clone())
    }
}

fn add_readings(tool: &mut Tool, readings: &[(AttributeId, Vec<Reading>)]) {
    for (attribute, new) in readings {
        match tool.attributes.iter_mut().find(|(id, _)| id == attribute) {
            Some((_, old)) => old.extend(new.iter().cloned()),
            None => tool.attributes.push((*attribute, new.clone())),
        }
    }
}

/// A recorded change retires the readings before it.
fn retire(tool: &mut Tool, change: &Change, vocabulary: &Vocabulary) {
    let retired = vocabulary.changes.get(&change.what);
    tool.attributes.retain(|(id, _)| match retired {
        Some(Some(attributes)) => !attributes.contains(id),
        Some(None) => false,
        None => true,
    });
    if retired.is_some_and(Option::is_none) {
        tool.conforms.retain(|statement| statement.on > change.on);
    }
    tool.changes.push(change.clone());
}

/// The vessel with the figures that are not believed left out.
pub(super) fn believe(vessel: &Vessel, trust: Trust) -> Vessel {
    let mut vessel = vessel.clone();
    if trust == Trust::All {
        return vessel;
    }
    let pieces = vessel.hooks.iter_mut().chain(&mut vessel.lines).flatten();
    let tools = vessel.kit.iter_mut().chain(pieces.map(|piece| &mut piece.tool));
    for tool in tools {
        for (_, readings) in &mut tool.attributes {
            readings.retain(|reading| {
                reading.how == How::Measured || !matches!(reading.datum, Datum::Figure(_))
            });
        }
        tool.attributes.retain(|(_, readings)| !readings.is_empty());
    }
    for station in &mut vessel.freeboard.stations {
        station.readings.retain(|reading| reading.how == How::Measured);
    }
    vessel
}
