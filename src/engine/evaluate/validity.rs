//! Until when what serves a requirement is good, for the calendar of a fleet
//! and the time line of a vessel.

use super::fit::{inspection_of, serves_through};
use super::holders::{is_concerned, last_day};
use crate::measure::DaySpan;
use crate::model::finding::Finding;
use crate::model::profile::Requirement;
use crate::model::rule::Need;
use crate::model::vessel::Vessel;
use crate::model::vocabulary::Vocabulary;

/// What is good for a while.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Holding {
    /// A tool or document, by index into the kit.
    Tool(usize),
    /// A certificate: the person by index, and the certificate by index
    /// among that person's.
    Certificate(usize, usize),
}

/// What ends it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum End {
    /// Its own expiry, or a certificate's span.
    Expiry,
    /// Its inspection falls due.
    Inspection,
}

/// The days on which one thing can serve one requirement.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Validity {
    /// The thing.
    pub holding: Holding,
    /// From the day it was acquired, last inspected (where the requirement
    /// asks for inspections) or issued, through the last good day.
    pub span: DaySpan,
    /// What ends it, where it has an end.
    pub end: Option<End>,
}

/// The validity of everything that serves a finding: the tools assigned to
/// it, or every certificate of the kind that is asked.
pub fn validities(
    vocabulary: &Vocabulary,
    vessel: &Vessel,
    requirement: &Requirement,
    finding: &Finding,
) -> Vec<Validity> {
    match &requirement.need {
        Need::Tools { .. } => {
            let tools = finding.serving.iter().map(|serving| serving.tool);
            tools.filter_map(|tool| of_tool(vocabulary, vessel, requirement, tool)).collect()
        }
        Need::Certificates { kind, holders, valid } => {
            let mut all = Vec::new();
            for (p, person) in vessel.people.iter().flatten().enumerate() {
                for (c, certificate) in person.certificates.iter().enumerate() {
                    if is_concerned(person, holders) && certificate.kind == *kind {
                        let until = last_day(certificate, *valid);
                        all.push(Validity {
                            holding: Holding::Certificate(p, c),
                            span: DaySpan { from: certificate.issued, until },
                            end: until.map(|_| End::Expiry),
                        });
                    }
                }
            }
            all
        }
        Need::Gear { .. } => Vec::new(),
    }
}

/// The validity of one tool for a requirement; `None` if there is no such
/// tool.
pub fn of_tool(
    vocabulary: &Vocabulary,
    vessel: &Vessel,
    requirement: &Requirement,
    tool: usize,
) -> Option<Validity> {
    let listed = vessel.kit.get(tool)?;
    let interval = inspection_of(listed, requirement.inspection, vocabulary);
    let until = serves_through(listed, requirement.inspection, vocabulary);
    let expiry = listed.disputes.expiry.or(listed.expires);
    let end = until.map(|day| if expiry == Some(day) { End::Expiry } else { End::Inspection });
    let since_inspected = interval.and(listed.inspected);
    let from = listed.acquired.max(since_inspected);
    Some(Validity { holding: Holding::Tool(tool), span: DaySpan { from, until }, end })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{Day, Interval};
    use crate::model::place::Place;
    use crate::model::profile::{FreeboardFrom, Level, Verified};
    use crate::model::text::Text;
    use crate::model::vessel::{Coverage, Freeboard, PlannedTrip, Tool};
    use crate::model::vocabulary::{Class, Kind, KindId};
    use std::collections::BTreeMap;

    fn requirement(inspection: Option<Interval>) -> Requirement {
        Requirement {
            id: "r".into(),
            formerly: Vec::new(),
            title: Text::plain("r"),
            level: Level::Required,
            clause: "1".into(),
            verified: Verified::Read,
            note: None,
            span: DaySpan::ALWAYS,
            when: Vec::new(),
            unless: Vec::new(),
            need: Need::Tools { least: 1, types: Vec::new(), spare_for: None },
            deemed: Vec::new(),
            shares: Vec::new(),
            inspection,
            place: Place::default(),
        }
    }

    /// A tool that is dated throughout, on a vessel of its own.
    fn judged(expires: &str, inspection: Option<Interval>) -> Validity {
        let day = |text: &str| Day::parse(text).ok();
        let kind = Kind {
            id: "k".into(),
            name: "k".into(),
            also: Vec::new(),
            class: Class::Tool,
            attributes: Vec::new(),
            unit: None,
        };
        let vocabulary = Vocabulary { kinds: vec![kind], ..Vocabulary::default() };
        let mut tool = Tool::bare("A", KindId(0), 1, Place::default());
        tool.acquired = day("2025-01-01");
        tool.expires = day(expires);
        tool.inspected = day("2026-01-10");
        let kit = vec![tool];
        let vessel = Vessel { kit, ..vessel() };
        of_tool(&vocabulary, &vessel, &requirement(inspection), 0).unwrap()
    }

    fn vessel() -> Vessel {
        Vessel {
            name: "V".into(),
            register: None,
            port: None,
            declared: None,
            freeboard: Freeboard {
                from: FreeboardFrom::Rail,
                stations: Vec::new(),
                other: Vec::new(),
            },
            permits: None,
            gears: None,
            areas: None,
            features: BTreeMap::new(),
            kit: Vec::new(),
            hooks: None,
            lines: None,
            people: None,
            trip: PlannedTrip::default(),
            coverage: Coverage::default(),
            place: Place::default(),
        }
    }

    #[test]
    fn the_earlier_of_expiry_and_inspection_ends_it() {
        let months = Some(Interval::Months(6));
        let by_inspection = judged("2026-12-31", months);
        assert_eq!(by_inspection.span.until, Day::parse("2026-07-09").ok());
        assert_eq!(by_inspection.span.from, Day::parse("2026-01-10").ok());
        assert_eq!(by_inspection.end, Some(End::Inspection));
        let by_expiry = judged("2026-06-30", months);
        assert_eq!(
            (by_expiry.span.until, by_expiry.end),
            (Day::parse("2026-06-30").ok(), Some(End::Expiry))
        );
    }

    #[test]
    fn an_inspection_that_nobody_asks_for_ends_nothing() {
        let validity = judged("2026-12-31", None);
        assert_eq!(validity.span.until, Day::parse("2026-12-31").ok());
        assert_eq!(validity.span.from, Day::parse("2025-01-01").ok());
    }
}
