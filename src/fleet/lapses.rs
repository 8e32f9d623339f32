//! What lapses soon: tools, documents and certificates that can serve a
//! requirement today and will not for long.

use super::judge::{Judged, Row};
use crate::engine::validity::{self, End, Holding, Validity};
use crate::engine::{self, Depth, Request};
use crate::measure::Day;
use crate::model::check::Judgement;
use crate::model::finding::{Because, Outcome};
use crate::model::profile::Level;
use crate::model::reason::Reason;
use crate::model::vessel::{State, Whereabouts};
use crate::model::vocabulary::Vocabulary;

/// How far an audit looks ahead, in days.
pub const HORIZONS: [i64; 3] = [30, 60, 90];

/// What lapses.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum What {
    /// A tool or document, by its mark.
    Tool(String),
    /// A certificate, by the name of its holder.
    Certificate(String),
}

/// What a lapse does to a requirement, judged under the same edition on the
/// last good day and on the day after; the worst last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum After {
    /// The requirement is not asked any more on the day after.
    NotAsked,
    /// Something else serves.
    Served,
    /// It is not met, or nobody can tell, on the last good day already.
    Open,
    /// Nothing else aboard serves; it is recommended only.
    Advice,
    /// Nothing else aboard serves, and it counts.
    Decides,
}

/// Something that is good today and lapses within the longest horizon.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lapse {
    /// The vessel's file.
    pub file: String,
    /// The vessel's name.
    pub vessel: String,
    /// What lapses.
    pub what: What,
    /// What ends it.
    pub end: End,
    /// The last day on which it is good.
    pub through: Day,
    /// The shortest of the horizons that holds the first day without it.
    pub within: i64,
    /// What it does to what it serves; of several requirements the worst.
    pub after: After,
    /// What it serves: profile and requirement ids.
    pub serves: Vec<(String, String)>,
}

/// What lapses within the longest horizon after the day, by day, then in the
/// order of the rows.
pub fn lapses(rows: &[Row], vocabulary: &Vocabulary, date: Day) -> Vec<Lapse> {
    let mut all = Vec::new();
    for row in rows {
        let Row::Vessel(judged) = row else { continue };
        all.extend(of_vessel(judged, vocabulary, date));
    }
    all.sort_by_key(|lapse| lapse.through);
    all
}

fn of_vessel(judged: &Judged, vocabulary: &Vocabulary, date: Day) -> Vec<Lapse> {
    let mut found: Vec<(Holding, Lapse)> = Vec::new();
    for judgement in &judged.check.judgements {
        for (holding, through, end, index) in dated(judged, judgement, vocabulary) {
            let Some(within) = horizon(date, through) else { continue };
            let requirement = judgement.profile.requirements.get(index);
            let id = requirement.map(|requirement| requirement.id.clone()).unwrap_or_default();
            let serves = (judgement.profile.id.clone(), id);
            let after = after(judged, judgement, vocabulary, index, through);
            let known = found.iter_mut().find(|(other, lapse)| {
                *other == holding && lapse.through == through && lapse.end == end
            });
            match known {
                Some((_, lapse)) => {
                    lapse.after = lapse.after.max(after);
                    lapse.serves.push(serves);
                }
                None => found.push((
                    holding,
                    Lapse {
                        file: judged.file.to_string(),
                        vessel: judged.check.vessel.name.clone(),
                        what: what(judged, holding),
                        end,
                        through,
                        within,
                        after,
                        serves: vec![serves],
                    },
                )),
            }
        }
    }
    found.into_iter().map(|(_, lapse)| lapse).collect()
}

/// The last good day of what has lapsed by the day that was judged.
fn lapse(reason: &Reason) -> Option<Day> {
    match reason {
        Reason::LapsesDuringTrip { on, .. } => Some(on.previous()),
        Reason::InspectionLapsed { since } | Reason::Expired { since } => Some(since.previous()),
        _ => None,
    }
}

/// Everything aboard that can serve a finding and has an end: the sound tools
/// of its kinds, whether they are assigned or in reserve, and every
/// certificate.
fn dated(
    judged: &Judged,
    judgement: &Judgement,
    vocabulary: &Vocabulary,
) -> Vec<(Holding, Day, End, usize)> {
    let vessel = &judged.check.vessel;
    let mut all = Vec::new();
    for finding in &judgement.findings {
        let Some(requirement) = judgement.profile.requirements.get(finding.requirement) else {
            continue;
        };
        let valid: Vec<Validity> = if requirement.wants_tools() {
            let kinds = requirement.kinds();
            let sound = vessel.kit.iter().enumerate().filter(|(_, tool)| {
                let here = !matches!(tool.whereabouts, Whereabouts::Ashore | Whereabouts::Missing);
                kinds.contains(&tool.kind) && here && tool.state != State::Broken
            });
            let of_tool = |(index, _)| validity::of_tool(vocabulary, vessel, requirement, index);
            sound.filter_map(of_tool).collect()
        } else {
            validity::validities(vocabulary, vessel, requirement, finding)
        };
        all.extend(valid.into_iter().filter_map(|valid| {
            Some((valid.holding, valid.span.until?, valid.end?, finding.requirement))
        }));
    }
    all
}

/// The shortest horizon that holds the first day without; none for what is
/// good beyond the longest, or was out of date on the day itself.
fn horizon(date: Day, through: Day) -> Option<i64> {
    let ahead = through.next().days_since(date);
    HORIZONS.into_iter().find(|days| (1..=*days).contains(&ahead))
}

/// What the lapse does to the requirement of that index.
fn after(
    judged: &Judged,
    judgement: &Judgement,
    vocabulary: &Vocabulary,
    index: usize,
    through: Day,
) -> After {
    let on = |day: Day| {
        let check = engine::check(&Request {
            vocabulary,
            profiles: std::slice::from_ref(&judgement.profile),
            asked: std::slice::from_ref(&judgement.profile),
            vessel: &judged.check.vessel,
            inspections: &[],
            departure: day,
            back: Some(day),
            trust: judged.check.asked.trust,
            depth: Depth::Findings,
        });
        let findings = check.judgements.iter().flat_map(|judgement| &judgement.findings);
        let own = findings.filter(|finding| finding.requirement == index);
        own.map(|finding| finding.outcome).next()
    };
    let requirement = judgement.profile.requirements.get(index);
    let counts = requirement.is_some_and(|requirement| requirement.level == Level::Required);
    let lost = if counts { After::Decides } else { After::Advice };
    // Out of its season on both days, it may still be what the trip lacks.
    let lacks = || {
        let own = judgement.findings.iter().find(|finding| finding.requirement == index);
        let lapsed = |because: &Because| lapse(&because.reason) == Some(through);
        own.is_some_and(|own| own.reasons.iter().any(lapsed))
    };
    match (on(through), on(through.next())) {
        (_, Some(Outcome::Met)) => After::Served,
        (Some(Outcome::Met) | None, Some(_)) => lost,
        (None, None) if lacks() => lost,
        (_, None) => After::NotAsked,
        (Some(_), Some(_)) => After::Open,
    }
}

fn what(judged: &Judged, holding: Holding) -> What {
    let vessel = &judged.check.vessel;
    match holding {
        Holding::Tool(tool) => {
            What::Tool(vessel.kit.get(tool).map(|t| t.mark.clone()).unwrap_or_default())
        }
        Holding::Certificate(person, _) => {
            let people = vessel.people.as_deref().unwrap_or_default();
            What::Certificate(people.get(person).map(|p| p.name.clone()).unwrap_or_default())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_day_without_counts() {
        let day = |text: &str| Day::parse(text).unwrap();
        let date = day("2026-11-25");
        assert_eq!(horizon(date, day("2026-11-24")), None);
        assert_eq!(horizon(date, day("2026-11-25")), Some(30));
        assert_eq!(horizon(date, day("2026-12-24")), Some(30));
        assert_eq!(horizon(date, day("2026-12-25")), Some(60));
        assert_eq!(horizon(date, day("2027-02-22")), Some(90));
        assert_eq!(horizon(date, day("2027-02-23")), None);
    }
}
