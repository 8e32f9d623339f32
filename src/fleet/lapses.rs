//! What lapses soon: tools, documents and certificates that serve a finding
//! today and will not for long.

use super::judge::{Judged, Row};
use crate::engine::validity::{self, End, Holding};
use crate::engine::{self, Depth, Request};
use crate::measure::Day;
use crate::model::check::Judgement;
use crate::model::finding::Outcome;
use crate::model::profile::Level;
use crate::model::reason::Reason;
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

/// Something that serves today and lapses within the longest horizon.
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
    /// Whether a requirement that counts is then met no longer: nothing else
    /// aboard takes over.
    pub decides: bool,
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
        for (holding, through, end, index) in serving(judged, judgement, vocabulary) {
            let Some(within) = horizon(date, through) else { continue };
            let requirement = judgement.profile.requirements.get(index);
            let id = requirement.map(|requirement| requirement.id.clone()).unwrap_or_default();
            let serves = (judgement.profile.id.clone(), id);
            let decides = decides(judged, judgement, vocabulary, index, through);
            let known = found.iter_mut().find(|(other, lapse)| {
                *other == holding && lapse.through == through && lapse.end == end
            });
            match known {
                Some((_, lapse)) => {
                    lapse.decides |= decides;
                    if !lapse.serves.contains(&serves) {
                        lapse.serves.push(serves);
                    }
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
                        decides,
                        serves: vec![serves],
                    },
                )),
            }
        }
    }
    found.into_iter().map(|(_, lapse)| lapse).collect()
}

/// The last good day of what has lapsed by the day that was judged, which may
/// well lie after the day of the audit.
fn lapse(reason: &Reason) -> Option<(Day, End)> {
    match reason {
        Reason::LapsesDuringTrip { on, inspection: true } => Some((on.previous(), End::Inspection)),
        Reason::LapsesDuringTrip { on, inspection: false } => Some((on.previous(), End::Expiry)),
        Reason::InspectionLapsed { since } => Some((since.previous(), End::Inspection)),
        Reason::Expired { since } => Some((since.previous(), End::Expiry)),
        _ => None,
    }
}

/// What serves today and has an end: the tools of a finding that is met, and
/// those that lapse before or during the trip; every certificate.
fn serving(
    judged: &Judged,
    judgement: &Judgement,
    vocabulary: &Vocabulary,
) -> Vec<(Holding, Day, End, usize)> {
    let mut all = Vec::new();
    for finding in &judgement.findings {
        let Some(requirement) = judgement.profile.requirements.get(finding.requirement) else {
            continue;
        };
        let valid = validity::validities(vocabulary, &judged.check.vessel, requirement, finding);
        all.extend(valid.into_iter().filter_map(|valid| {
            Some((valid.holding, valid.span.until?, valid.end?, finding.requirement))
        }));
        // A tool that has another fault as well does not serve today.
        let only_lapsed = |tool: usize| {
            let own = finding.reasons.iter().filter(|because| because.tool == Some(tool));
            own.map(|because| lapse(&because.reason)).all(|lapse| lapse.is_some())
        };
        all.extend(finding.reasons.iter().filter_map(|because| {
            let (through, end) = lapse(&because.reason)?;
            let tool = because.tool.filter(|tool| only_lapsed(*tool))?;
            Some((Holding::Tool(tool), through, end, finding.requirement))
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

/// Whether a requirement that counts is met no longer on the day after, judged
/// under the same edition; what is not met on the last good day either, for
/// another reason, loses nothing by the lapse.
fn decides(
    judged: &Judged,
    judgement: &Judgement,
    vocabulary: &Vocabulary,
    index: usize,
    through: Day,
) -> bool {
    let requirement = judgement.profile.requirements.get(index);
    if requirement.is_none_or(|requirement| requirement.level != Level::Required) {
        return false;
    }
    let met_on = |day: Day| {
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
        own.map(|finding| finding.outcome).next() == Some(Outcome::Met)
    };
    met_on(through) && !met_on(through.next())
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
