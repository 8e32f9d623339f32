//! Inspection records laid over a vessel's declaration, and which figures
//! are believed.

use crate::measure::Day;
use crate::model::vessel::{
    Change, Datum, Found, Freeboard, How, Inspection, Reading, State, Tool, Vessel, Whereabouts,
};
use crate::model::vocabulary::{AttributeId, KindId, Vocabulary};

/// The vessel with the records laid over its declaration, the earliest
/// first, in whatever order they are given. Nothing declared is edited:
/// readings stand side by side. A later look at the condition, the place or
/// the expiry replaces the earlier one, so that a record older than the
/// declaration adds its readings only.
pub fn lay_over(vessel: &Vessel, inspections: &[Inspection], vocabulary: &Vocabulary) -> Vessel {
    let mut vessel = vessel.clone();
    let mut records: Vec<_> = inspections.iter().collect();
    records.sort_by(|a, b| (a.on, &a.place.file).cmp(&(b.on, &b.place.file)));
    let mut looks: Looks = Vec::new();
    for record in records {
        let older = vessel.declared.is_some_and(|declared| record.on < declared);
        for found in &record.found {
            lay_found(&mut vessel, found, record, older, vocabulary, &mut looks);
        }
        if !older {
            mark_unfound(&mut vessel, record);
            vessel.coverage.everything |= record.coverage.everything;
            vessel.coverage.all_seen.extend(&record.coverage.all_seen);
        }
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

/// What records said of the state of tools, by mark and day; `None` where a
/// tool was looked for and not found.
type Looks = Vec<(String, Day, Option<State>)>;

fn lay_freeboard(vessel: &mut Vessel, taken: &Freeboard) {
    for station in &taken.stations {
        match vessel.freeboard.stations.iter_mut().find(|s| s.name == station.name) {
            Some(declared) => declared.readings.extend(station.readings.iter().cloned()),
            None => vessel.freeboard.stations.push(station.clone()),
        }
    }
}

/// Where a record speaks for the whole kit, or for all of a kind, what it
/// does not name was not there; what came later or was away that day is no
/// matter of the record.
fn mark_unfound(vessel: &mut Vessel, record: &Inspection) {
    for tool in vessel.kit.iter_mut().filter(|tool| record.coverage.is_whole(tool.kind)) {
        let away = tool.acquired.is_some_and(|day| record.on < day)
            || matches!(&tool.whereabouts, Whereabouts::Lent { span, .. } if span.holds(record.on));
        let named = record.found.iter().any(|found| found.mark == tool.mark);
        if !named && !away && !is_rest_of_named(tool, record) {
            tool.whereabouts = Whereabouts::Missing;
        }
    }
}

/// The broken rest of a lot goes by the lot's own mark in a record.
fn is_rest_of_named(tool: &Tool, record: &Inspection) -> bool {
    let lot = tool.mark.strip_suffix(BROKEN_REST);
    lot.is_some_and(|lot| record.found.iter().any(|found| found.mark == lot))
}

/// What is added to the mark of a lot for its broken rest.
const BROKEN_REST: &str = " (broken)";

fn lay_found(
    vessel: &mut Vessel,
    found: &Found,
    record: &Inspection,
    older: bool,
    vocabulary: &Vocabulary,
    looks: &mut Looks,
) {
    let known = vessel.kit.iter().position(|tool| tool.mark == found.mark);
    let index = match (known, found.kind) {
        (Some(index), _) => index,
        (None, Some(kind)) => {
            vessel.kit.push(unlisted(found, kind));
            vessel.kit.len() - 1
        }
        (None, None) => return,
    };
    let undated = vessel.declared.is_none();
    if !older {
        recount(vessel, found);
    }
    let tool = &mut vessel.kit[index];
    if found.missing {
        if !older {
            let disputed = seen_that_day(&tool.mark, record.on, looks) == Some(true);
            tool.whereabouts = if disputed { Whereabouts::Unknown } else { Whereabouts::Missing };
            looks.push((tool.mark.clone(), record.on, None));
        }
        return;
    }
    add_readings(tool, &found.attributes);
    let mut repaired = false;
    for (change, after) in &found.mended {
        repaired |= retire(tool, change, vocabulary);
        add_readings(tool, after);
    }
    // What the vessel's own list says was changed since the record.
    for change in tool.changes.clone().iter().filter(|change| change.on >= record.on) {
        if !found.mended.iter().any(|(mended, _)| mended == change) {
            retire(tool, change, vocabulary);
        }
    }
    if older {
        return;
    }
    if !matches!(&tool.whereabouts, Whereabouts::Lent { span, .. } if !span.holds(record.on)) {
        let disputed = seen_that_day(&tool.mark, record.on, looks) == Some(false);
        tool.whereabouts = if disputed { Whereabouts::Unknown } else { Whereabouts::Aboard };
    }
    let said = if repaired { Some(State::Serviceable) } else { found.state };
    if let Some(state) = said {
        tool.state = look(tool, state, record.on, undated && !repaired, looks);
    }
    tool.expires = found.expires.or(tool.expires);
    tool.stowed = found.stowed.clone().or(tool.stowed.take());
    tool.remark = found.remark.clone().or(tool.remark.take());
    if record.renews && said == Some(State::Serviceable) && tool.state == State::Serviceable {
        tool.inspected = tool.inspected.max(Some(record.on));
    }
}

/// Whether an earlier record of the same day saw the tool, if one looked.
fn seen_that_day(mark: &str, on: Day, looks: &Looks) -> Option<bool> {
    let of_day = looks.iter().rev().find(|(known, day, _)| known == mark && *day == on);
    of_day.map(|(_, _, state)| state.is_some())
}

/// The state after another look. Two looks of one day that differ, or a
/// good word against an undated bad one, leave it unknown.
fn look(tool: &Tool, state: State, on: Day, undated: bool, looks: &mut Looks) -> State {
    let before = looks.iter().rev().find(|(mark, _, _)| *mark == tool.mark).cloned();
    looks.push((tool.mark.clone(), on, Some(state)));
    match before {
        Some((_, day, Some(earlier))) if day == on && earlier != state => State::Unknown,
        None if undated && tool.state == State::Broken && state == State::Serviceable => {
            State::Unknown
        }
        _ => state,
    }
}

/// A recount of a lot stands for all of it, its broken rest included: how
/// many of them work is then open unless the record says.
fn recount(vessel: &mut Vessel, found: &Found) {
    let Some(count) = found.count else { return };
    let rest = format!("{}{BROKEN_REST}", found.mark);
    let broken = vessel.kit.iter().any(|tool| tool.mark == rest);
    vessel.kit.retain(|tool| tool.mark != rest);
    if let Some(tool) = vessel.kit.iter_mut().find(|tool| tool.mark == found.mark) {
        tool.count = count;
        if broken {
            tool.state = State::Unknown;
        }
    }
}

fn unlisted(found: &Found, kind: KindId) -> Tool {
    let count = found.count.unwrap_or(1);
    Tool::bare(found.mark.clone(), kind, count, found.place.clone())
}

fn add_readings(tool: &mut Tool, readings: &[(AttributeId, Vec<Reading>)]) {
    for (attribute, new) in readings {
        match tool.attributes.iter_mut().find(|(id, _)| id == attribute) {
            Some((_, old)) => old.extend(new.iter().cloned()),
            None => tool.attributes.push((*attribute, new.clone())),
        }
    }
}

/// A recorded change retires the readings before it, and those of its own
/// day; a reading without a day counts as one before. Tells whether the
/// change makes a tool work again.
fn retire(tool: &mut Tool, change: &Change, vocabulary: &Vocabulary) -> bool {
    let retired = vocabulary.changes.get(&change.what);
    for (id, readings) in &mut tool.attributes {
        let concerned = match retired {
            Some(Some(attributes)) => attributes.contains(id),
            Some(None) => true,
            None => false,
        };
        if concerned {
            readings.retain(|reading| reading.on.is_some_and(|day| day > change.on));
        }
    }
    tool.attributes.retain(|(_, readings)| !readings.is_empty());
    if retired.is_some_and(Option::is_none) {
        tool.conforms.retain(|statement| statement.on > change.on);
    }
    tool.changes.push(change.clone());
    // A change of a length alone repairs nothing.
    !matches!(retired, Some(Some(attributes)) if !attributes.is_empty())
}

/// Leaves out the figures that nobody measured.
pub(super) fn leave_out_unmeasured(vessel: &mut Vessel) {
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
}
