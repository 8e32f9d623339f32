//! A vessel changed at random, in what is aboard, what is known of it, and how
//! high its rail stands.

use super::{attribute, day, later, shipped};
use kitmuster::measure::{Day, Figure, Length, Quantity, Rounding, System};
use kitmuster::model::vessel::{
    Datum, GearPiece, How, Reading, State, Station, Tool, Vessel, Whereabouts,
};
use proptest::prelude::*;

/// One change to a vessel. Tools, pieces of gear and attributes are counted
/// from the first one on, and from there again where there are fewer.
#[derive(Debug, Clone)]
pub(super) enum Change {
    Blank(usize, usize),
    Scale(usize, usize, u8),
    Break(usize),
    Unstated(usize),
    Remove(usize),
    Expire(usize, u32),
    Acquire(usize, u32),
    Ashore(usize),
    Somewhere(usize),
    Count(usize, u32),
    Partial,
    Rail(u32, u32),
    TapeError(u32),
    RivalFreeboard(u32),
    NoFreeboard(usize),
    HookUntyped(usize),
    HookUnmeasured(usize),
    AnotherHook(&'static str, u32),
    NoHooks,
    HooksUnsaid,
    LineUnassigned(usize),
    LineUnmeasured(usize),
    AnotherLine(u32),
    NoLeader,
    LinesUnsaid,
    Stated(usize, usize),
}

/// Any change.
pub(super) fn change() -> impl Strategy<Value = Change> {
    let (tool, attribute) = (0_usize..40, 0_usize..8);
    let days = 0_u32..25;
    let readings = (tool.clone(), attribute.clone());
    let of_tool = prop_oneof![
        3 => (tool.clone(), attribute, 60_u8..130).prop_map(|(t, a, p)| Change::Scale(t, a, p)),
        1 => tool.clone().prop_map(Change::Break),
        2 => tool.clone().prop_map(Change::Remove),
        2 => (tool.clone(), days.clone()).prop_map(|(t, d)| Change::Expire(t, d)),
        2 => (tool.clone(), days).prop_map(|(t, d)| Change::Acquire(t, d)),
        1 => tool.clone().prop_map(Change::Ashore),
        1 => (tool, 1_u32..5).prop_map(|(t, c)| Change::Count(t, c)),
        1 => readings.prop_map(|(t, a)| Change::Stated(t, a)),
    ];
    let of_gear = prop_oneof![
        (prop::sample::select(vec!["j", "circle", "other"]), 1_u32..9)
            .prop_map(|(of_type, wire)| Change::AnotherHook(of_type, wire)),
        (1_u32..5).prop_map(Change::AnotherLine),
        Just(Change::NoHooks),
        Just(Change::NoLeader),
    ];
    let rail = (200_u32..2200, 0_u32..400).prop_map(|(low, more)| Change::Rail(low, low + more));
    prop_oneof![13 => of_tool, 4 => of_gear, 4 => rail, 10 => hiding()]
}

/// A change after which less is known than before, and nothing else is so.
pub(super) fn hiding() -> impl Strategy<Value = Change> {
    let one = 0_usize..40;
    prop_oneof![
        2 => (one.clone(), 0_usize..8).prop_map(|(t, a)| Change::Blank(t, a)),
        1 => one.clone().prop_map(Change::Unstated),
        1 => one.clone().prop_map(Change::Somewhere),
        1 => Just(Change::Partial),
        1 => (1_u32..60).prop_map(Change::TapeError),
        1 => (200_u32..2200).prop_map(Change::RivalFreeboard),
        1 => one.clone().prop_map(Change::NoFreeboard),
        3 => one.clone().prop_map(Change::HookUntyped),
        1 => one.clone().prop_map(Change::HookUnmeasured),
        1 => Just(Change::HooksUnsaid),
        1 => one.clone().prop_map(Change::LineUnassigned),
        1 => one.prop_map(Change::LineUnmeasured),
        1 => Just(Change::LinesUnsaid),
    ]
}

pub(super) fn apply(vessel: &mut Vessel, change: &Change) {
    match change {
        Change::Rail(low, high) => rail(vessel, *low, *high),
        Change::TapeError(error) => tape_error(vessel, *error),
        Change::RivalFreeboard(freeboard) => rival_freeboard(vessel, *freeboard),
        Change::NoFreeboard(station) => {
            if let Some(station) = at(&mut vessel.freeboard.stations, *station) {
                station.readings.clear();
            }
        }
        Change::Partial => vessel.coverage.everything = false,
        Change::Remove(tool) => {
            if !vessel.kit.is_empty() {
                vessel.kit.remove(tool % vessel.kit.len());
            }
        }
        Change::Blank(tool, _)
        | Change::Scale(tool, ..)
        | Change::Break(tool)
        | Change::Unstated(tool)
        | Change::Expire(tool, _)
        | Change::Acquire(tool, _)
        | Change::Ashore(tool)
        | Change::Somewhere(tool)
        | Change::Stated(tool, _)
        | Change::Count(tool, _) => {
            if let Some(tool) = at(&mut vessel.kit, *tool) {
                change_tool(tool, change);
            }
        }
        _ => change_gear(vessel, change),
    }
}

fn at<T>(list: &mut [T], index: usize) -> Option<&mut T> {
    let count = list.len().max(1);
    list.get_mut(index % count)
}

fn change_tool(tool: &mut Tool, change: &Change) {
    match change {
        Change::Blank(_, attribute) if !tool.attributes.is_empty() => {
            tool.attributes.remove(attribute % tool.attributes.len());
        }
        Change::Scale(_, attribute, percent) => {
            for reading in at(&mut tool.attributes, *attribute).into_iter().flat_map(|a| &mut a.1) {
                scale(reading, *percent);
            }
        }
        Change::Stated(_, attribute) => {
            for reading in at(&mut tool.attributes, *attribute).into_iter().flat_map(|a| &mut a.1) {
                reading.how = How::Stated;
            }
        }
        Change::Break(_) => tool.state = State::Broken,
        Change::Unstated(_) => tool.state = State::Unknown,
        Change::Expire(_, days) => tool.expires = Some(near_departure(*days)),
        Change::Acquire(_, days) => tool.acquired = Some(near_departure(*days)),
        Change::Ashore(_) => tool.whereabouts = Whereabouts::Ashore,
        Change::Somewhere(_) => tool.whereabouts = Whereabouts::Unknown,
        Change::Count(_, count) => tool.count = *count,
        _ => {}
    }
}

/// A day between some days before departure and the end of a long trip.
fn near_departure(days: u32) -> Day {
    later(day("2026-11-28"), days)
}

fn scale(reading: &mut Reading, percent: u8) {
    if let Datum::Figure(figure) = &mut reading.datum
        && let Quantity::Length(length) = figure.quantity
    {
        let scaled = length.nanometres() / 100 * i64::from(percent);
        *figure = metric(Length::from_nanometres(scaled).unwrap());
    }
}

fn change_gear(vessel: &mut Vessel, change: &Change) {
    let forget = |pieces: &mut Option<Vec<GearPiece>>, index: usize, key: &str| {
        if let Some(piece) = pieces.as_mut().and_then(|pieces| at(pieces, index)) {
            let attribute = attribute(key);
            piece.tool.attributes.retain(|(known, _)| *known != attribute);
        }
    };
    match change {
        Change::HookUntyped(hook) => forget(&mut vessel.hooks, *hook, "type"),
        Change::HookUnmeasured(hook) => forget(&mut vessel.hooks, *hook, "wire"),
        Change::AnotherHook(of_type, wire) => {
            another(&mut vessel.hooks, "wire", *wire, &[("type", of_type)]);
        }
        Change::NoHooks => vessel.hooks = Some(Vec::new()),
        Change::HooksUnsaid => vessel.hooks = None,
        Change::LineUnassigned(line) => forget(&mut vessel.lines, *line, "part"),
        Change::LineUnmeasured(line) => forget(&mut vessel.lines, *line, "diameter"),
        Change::AnotherLine(diameter) => another(&mut vessel.lines, "diameter", *diameter, &[]),
        Change::NoLeader => {
            let (part, leader) = (attribute("part"), Datum::Word("leader".to_owned()));
            if let Some(lines) = &mut vessel.lines {
                lines.retain(|line| line.tool.readings(part).iter().all(|r| r.datum != leader));
            }
        }
        Change::LinesUnsaid => vessel.lines = None,
        _ => {}
    }
}

/// A piece like the first one, with another thickness and these words.
fn another(
    pieces: &mut Option<Vec<GearPiece>>,
    key: &str,
    millimetres: u32,
    words: &[(&str, &str)],
) {
    let Some(pieces) = pieces else { return };
    let Some(mut piece) = pieces.first().cloned() else { return };
    let figure = metric(Length::from_millimetres(millimetres));
    piece.tool.set(attribute(key), vec![measured(Datum::Figure(figure))]);
    for (key, word) in words {
        piece.tool.set(attribute(key), vec![measured(Datum::Word((*word).to_owned()))]);
    }
    pieces.push(piece);
}

pub(super) fn measured(datum: Datum) -> Reading {
    Reading { datum, by: None, on: None, how: How::Measured, error: None }
}

fn metric(length: Length) -> Figure {
    Figure::reckoned(Quantity::Length(length), System::Metric, Rounding::Up)
}

/// Puts every station's first freeboard between these millimetres; its tape
/// error stays, readings beside it go.
pub(super) fn rail(vessel: &mut Vessel, low: u32, high: u32) {
    for station in &mut vessel.freeboard.stations {
        station.readings.truncate(1);
        for reading in &mut station.readings {
            reading.low = metric(Length::from_millimetres(low));
            reading.high = metric(Length::from_millimetres(high));
        }
    }
}

/// Makes every freeboard's tape error at least that wide.
fn tape_error(vessel: &mut Vessel, millimetres: u32) {
    let wide = metric(Length::from_millimetres(millimetres));
    for reading in vessel.freeboard.stations.iter_mut().flat_map(|station| &mut station.readings) {
        let own = reading.error.as_ref().and_then(Figure::length);
        if own < wide.length() {
            reading.error = Some(wide.clone());
        }
    }
}

fn rival_freeboard(vessel: &mut Vessel, millimetres: u32) {
    let beside = |station: &mut Station| {
        if let Some(mut rival) = station.readings.first().cloned() {
            rival.low = metric(Length::from_millimetres(millimetres));
            rival.high = rival.low.clone();
            station.readings.push(rival);
        }
    };
    vessel.freeboard.stations.iter_mut().for_each(beside);
}

/// A shipped vessel, how it was changed, and how many days it is away.
#[derive(Debug, Clone)]
pub(super) struct Case {
    vessel: usize,
    changes: Vec<Change>,
    pub(super) days: u32,
}

/// A vessel with up to six changes.
pub(super) fn case() -> impl Strategy<Value = Case> {
    (0_usize..100, prop::collection::vec(change(), 0..7), 0_u32..20)
        .prop_map(|(vessel, changes, days)| Case { vessel, changes, days })
}

impl Case {
    /// The vessel, and its days of departure and return.
    pub(super) fn parts(&self) -> (Vessel, (Day, Day)) {
        let vessels = &shipped().vessels;
        let mut vessel = vessels[self.vessel % vessels.len()].clone();
        self.changes.iter().for_each(|change| apply(&mut vessel, change));
        let departure = day("2026-12-02");
        (vessel, (departure, later(departure, self.days)))
    }
}
