//! What is to be written into a vessel's inventory once the goods are aboard:
//! entries of its `kit`, as `vessel/1` has them.
//!
//! Imports `model`. Read back, an entry is the tool that the engine judged: a
//! figure is written to its last digit, and with by whom, when and how it
//! came about where that is not what a plain figure says.

use super::parts::how_word;
use crate::measure::{Day, Figure, Quantity};
use crate::model::vessel::{Change, Datum, How, Reading, State, Statement, Tool, Whereabouts};
use crate::model::vocabulary::{AttributeId, Vocabulary};
use crate::quote::{Bought, VesselQuote};
use schemars::{Schema, SchemaGenerator, json_schema};
use serde_json::{Value, json};

/// What the names of a vessel's definitions begin with in the schema of a
/// quote.
pub(super) const ENTRY: &str = "Kit";

/// The schema of [`entries`]: tools as a vessel's file has them, or a tool
/// that takes the place of one aboard.
pub(super) fn schema(_: &mut SchemaGenerator) -> Schema {
    let tool = json!({ "$ref": format!("#/$defs/{ENTRY}Tool") });
    json_schema!({
        "type": "array",
        "items": { "anyOf": [tool, {
            "type": "object",
            "description": "Work on a tool aboard.",
            "properties": {
                "of": { "type": "string", "description": "Its mark." },
                "broken": { "const": true, "description": "Where it is one of a lot's broken." },
                "pieces": { "type": "integer", "description": "How many of the lot." },
                "entry": tool,
            },
            "required": ["of", "pieces", "entry"],
            "additionalProperties": false,
        }] },
    })
}

/// The entries of a line: new tools as they are, tools that were worked on
/// with the mark of the entry whose place they take. A tool that comes of
/// several lines stands with the first of them.
pub(super) fn entries(vocabulary: &Vocabulary, vessel: &VesselQuote, line: usize) -> Vec<Value> {
    let earlier = &vessel.lines[..line];
    let bought = &vessel.lines[line];
    let told = |tool: &&usize| earlier.iter().all(|line| !line.tools.contains(tool));
    let kit = &vessel.after.vessel.kit;
    let tools = bought.tools.iter().filter(told).filter_map(|tool| kit.get(*tool));
    let own = tools.map(|tool| of_line(vocabulary, vessel, bought, tool));
    let refitted = (0..kit.len()).filter(|tool| refitted_by(vessel, *tool) == Some(line));
    own.chain(refitted.map(|tool| {
        let tool = &kit[tool];
        json!({ "of": tool.mark, "pieces": tool.count, "entry": entry(vocabulary, tool) })
    }))
    .collect()
}

/// The line for which a tool that was aboard fits more than before: spares of
/// a lot of which some were changed and got a mark of their own.
fn refitted_by(vessel: &VesselQuote, tool: usize) -> Option<usize> {
    let kit = &vessel.after.vessel.kit;
    if vessel.lines.iter().any(|line| line.tools.contains(&tool)) {
        return None;
    }
    let old = vessel.before.vessel.kit.iter().find(|old| old.mark == kit[tool].mark)?;
    let new: Vec<&String> = kit[tool].fits.iter().filter(|mark| !old.fits.contains(mark)).collect();
    let gives = |line: &Bought| line.tools.iter().any(|tool| new.contains(&&kit[*tool].mark));
    vessel.lines.iter().position(gives)
}

fn of_line(vocabulary: &Vocabulary, vessel: &VesselQuote, line: &Bought, tool: &Tool) -> Value {
    let kit = &vessel.before.vessel.kit;
    let Some(old) = line.on.and_then(|index| kit.get(index)) else {
        return entry(vocabulary, tool);
    };
    let lot = old.broken_part_of().filter(|lot| kit.iter().any(|t| t.mark == *lot));
    saying(json!({
        "of": lot.unwrap_or(&old.mark),
        "broken": lot.map(|_| true),
        "pieces": tool.count,
        "entry": entry(vocabulary, tool),
    }))
}

/// A tool as an entry of a kit.
fn entry(vocabulary: &Vocabulary, tool: &Tool) -> Value {
    let day = |day: Option<Day>| day.map(|day| day.to_string());
    let mut entry = json!({
        "mark": tool.mark,
        "kind": vocabulary.kind(tool.kind).id,
        "name": tool.name,
        "count": tool.count,
    });
    for (id, readings) in &tool.attributes {
        let told = |one: &Reading| reading(one, day_of(one, *id, tool, vocabulary));
        entry[&vocabulary.attribute(*id).id] = match &readings[..] {
            [one] => told(one),
            several => several.iter().map(told).collect(),
        };
    }
    let rest = json!({
        "condition": condition(tool.state),
        "where": location(&tool.whereabouts),
        "stowed": tool.stowed,
        "acquired": day(tool.acquired),
        "inspected": day(tool.inspected),
        "expires": day(tool.expires),
        "conforms": tool.conforms.iter().map(statement).collect::<Vec<_>>(),
        "parts": tool.parts,
        "fits": tool.fits,
        "changes": tool.changes.iter().map(change).collect::<Vec<_>>(),
        "evidence": tool.evidence,
        "remark": tool.remark,
    });
    if let (Value::Object(entry), Value::Object(rest)) = (&mut entry, rest) {
        entry.extend(rest);
    }
    saying(entry)
}

/// An object of the keys that say something.
fn saying(mut whole: Value) -> Value {
    if let Value::Object(keys) = &mut whole {
        keys.retain(|_, value| !value.is_null() && *value != json!([]));
    }
    whole
}

fn statement(said: &Statement) -> Value {
    saying(json!({ "to": said.to, "on": said.on.to_string(), "by": said.by }))
}

fn change(change: &Change) -> Value {
    json!({ "what": change.what, "on": change.on.to_string() })
}

/// A reading: a plain text where it says nothing but what it is, else the
/// longer form. `on` is the day to write.
fn reading(reading: &Reading, on: Option<Day>) -> Value {
    let value = match &reading.datum {
        Datum::Figure(figure) => exactly(figure),
        Datum::Feature(yes) => if *yes { "yes" } else { "no" }.to_owned(),
        Datum::Word(word) => word.clone(),
    };
    let Reading { by, how, error, .. } = reading;
    if by.is_none() && on.is_none() && error.is_none() && *how == How::Stated {
        return Value::String(value);
    }
    saying(json!({
        "value": value,
        "by": by.as_deref(),
        "on": on.map(|day| day.to_string()),
        "how": how_word(*how),
        "error": error.as_ref().map(exactly),
    }))
}

/// A figure's own text, or one to the last digit where that was rounded.
fn exactly(figure: &Figure) -> String {
    let same = Figure::parse(&figure.written, figure.quantity.kind())
        .is_ok_and(|read| read.quantity == figure.quantity);
    match figure.quantity {
        Quantity::Length(length) if !same => {
            let steps = length.nanometres();
            let text = format!("{}.{:06}", steps / 1_000_000, steps % 1_000_000);
            format!("{} mm", text.trim_end_matches('0').trim_end_matches('.'))
        }
        _ => figure.written.clone(),
    }
}

fn condition(state: State) -> &'static str {
    match state {
        State::Serviceable => "serviceable",
        State::Broken => "broken",
        State::Unknown => "unknown",
    }
}

/// Who has it; nothing where it is aboard.
fn location(whereabouts: &Whereabouts) -> Option<Value> {
    match whereabouts {
        Whereabouts::Aboard => None,
        Whereabouts::Ashore => Some(json!("ashore")),
        Whereabouts::Missing => Some(json!("lost")),
        Whereabouts::Unknown => Some(json!("unknown")),
        Whereabouts::Lent { to, span } => Some(saying(json!({
            "lent to": to,
            "from": span.from.map(|day| day.to_string()),
            "until": span.until.map(|day| day.to_string()),
        }))),
    }
}

/// The day under which a reading is written: its own, or the day after the
/// last change that would otherwise take it away. A change retires what was
/// read up to its day, so that a tool that was read anew on that very day
/// would lose the new figure with the old.
fn day_of(reading: &Reading, of: AttributeId, tool: &Tool, vocabulary: &Vocabulary) -> Option<Day> {
    let retires = |change: &&Change| match vocabulary.changes.get(&change.what) {
        Some(Some(attributes)) => attributes.contains(&of),
        Some(None) => true,
        None => false,
    };
    let last = tool.changes.iter().filter(retires).map(|change| change.on).max();
    match last {
        Some(last) if reading.on.is_none_or(|on| on <= last) => Some(last.next()),
        _ => reading.on,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::{Library, find_files, load_vessel, read_vessel};
    use crate::measure::{Length, Rounding, System};
    use crate::model::vessel::Vessel;
    use std::path::Path;

    /// The kit of a vessel, and the same written as entries and read again.
    fn again(vocabulary: &Vocabulary, vessel: Vessel) -> (Vec<Tool>, Vec<Tool>) {
        // Of what lot a tool was a part, an entry of its own need not say.
        let kit = vessel.kit.into_iter().map(|tool| Tool { part_of: None, ..tool });
        let vessel = Vessel { kit: kit.collect(), ..vessel };
        let entries: Vec<_> = vessel.kit.iter().map(|tool| entry(vocabulary, tool)).collect();
        let written = json!({ "format": "vessel/1", "name": "A", "kit": entries }).to_string();
        let (read, _) = read_vessel("a.yaml", &written, vocabulary)
            .unwrap_or_else(|refusal| panic!("{refusal}\n{written}"));
        let bare = |mut tool: Tool| {
            tool.place = crate::model::place::Place::default();
            tool
        };
        (vessel.kit.into_iter().map(bare).collect(), read.kit.into_iter().map(bare).collect())
    }

    #[test]
    fn an_entry_read_back_is_the_tool_that_was_written() {
        let words = Library::shipped().unwrap().vocabulary;
        let text = r#"
format: vessel/1
name: A
declared: { by: A. Person, on: 2026-02-01, figures: measured, condition: serviceable }
kit:
  - mark: LC-1
    kind: long-handled line cutter
    name: the "old" one # no comment
    handle:
      - { value: 6 ft 4 1/2 in, by: B, on: 2026-01-02, how: measured, error: 1/8 in }
      - 1.9 m
    protected-blade: yes
    condition: unknown
    where: { lent to: Other, from: 2026-01-01, until: 2026-01-09 }
    acquired: 2025-01-01
    inspected: 2025-06-01
    expires: 2027-01-01
    conforms: [{ to: "Appendix F, A.1", on: 2026-03-14, by: "no" }]
    parts: [P-1]
    stowed: "yes"
    evidence: photo.jpg
    remark: "a: b"
  - { mark: BL-1, kind: set of replacement blades, fits: [LC-1], count: 3, broken: 1 }
  - { mark: D-1, kind: careful-release document, edition: "2019", state: lost }
  - { mark: X-1, kind: pliers, where: ashore, changes: [{ what: repaired, on: 2026-01-01 }] }
"#;
        let (vessel, _) = read_vessel("a.yaml", text, &words).unwrap();
        let (kit, read) = again(&words, vessel);
        assert_eq!(kit.len(), 5);
        assert_eq!(kit, read);
    }

    #[test]
    fn the_kits_of_the_shipped_vessels_survive_being_written_as_entries() {
        let words = Library::shipped().unwrap().vocabulary;
        let mut tools = 0;
        for found in find_files(&Path::new(env!("CARGO_MANIFEST_DIR")).join("vessels")) {
            let found = found.unwrap();
            if found.is_record {
                continue;
            }
            let (vessel, _) = load_vessel(&found.path, &words).unwrap();
            let (kit, read) = again(&words, vessel);
            assert_eq!(kit, read, "{}", found.path.display());
            tools += kit.len();
        }
        assert!(tools > 200, "{tools}");
    }

    #[test]
    fn a_change_of_the_day_of_the_new_figure_does_not_take_it_away() {
        let words = Library::shipped().unwrap().vocabulary;
        let text = "format: vessel/1\nname: A\nkit:\n  - { mark: LC-1, kind: long-line-cutter }\n";
        let (vessel, _) = read_vessel("a.yaml", text, &words).unwrap();
        let mut tool = vessel.kit[0].clone();
        let day = Day::parse("2026-03-01").unwrap();
        let handle = words.find_attribute("handle").unwrap();
        // A metric handle with an inch put on comes to no whole millimetre.
        let length = Length::parse("1943.1004 mm").unwrap().0;
        let figure = Figure::reckoned(Quantity::Length(length), System::Customary, Rounding::Down);
        assert_ne!(Length::parse(&figure.written).unwrap().0, length);
        let datum = Datum::Figure(figure);
        let now = Reading { datum, by: None, on: Some(day), how: How::Stated, error: None };
        tool.set(handle, vec![now]);
        tool.changes.push(Change { what: "lengthened".to_owned(), on: day });
        let written = entry(&words, &tool);
        assert_eq!(written["handle"]["value"], "1943.1004 mm");
        assert_eq!(written["handle"]["on"], "2026-03-02");
        assert_eq!(written["changes"], json!([{ "what": "lengthened", "on": "2026-03-01" }]));
        let file = json!({ "format": "vessel/1", "name": "A", "kit": [written] }).to_string();
        let (read, _) = read_vessel("a.yaml", &file, &words).unwrap();
        let Datum::Figure(figure) = &read.kit[0].readings(handle)[0].datum else { panic!() };
        assert_eq!(figure.length(), Some(length));
        assert_eq!(read.kit[0].changes, tool.changes);
    }
}
