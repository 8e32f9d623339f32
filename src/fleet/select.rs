//! Which vessels an audit looks at, and in which order it shows them.

use super::judge::{Judged, Row};
use crate::measure::Day;
use crate::model::check::{Check, Notice};
use crate::model::finding::{Outcome, ReadyUntil, Verdict};

/// Which vessels are looked at. An empty list does not restrict; in a list
/// one match is enough; all the lists must match.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Selection {
    /// With one of these verdicts.
    pub verdicts: Vec<Verdict>,
    /// With this gear on board.
    pub gears: Vec<String>,
    /// Of this port, capitals aside.
    pub ports: Vec<String>,
    /// Judged by this profile: the id of an edition or of a rule.
    pub bound_by: Vec<String>,
    /// The rules of these profiles: a vessel that one of them binds, or may
    /// bind, is concerned though nobody can tell by which edition.
    pub bound_by_rules: Vec<String>,
    /// In which this requirement is not met, or nobody can tell.
    pub requirements: Vec<String>,
}

/// In which order vessels are shown; equals stay in the order of the input.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Order {
    /// As they were given.
    #[default]
    Input,
    /// The worst verdict first.
    Verdict,
    /// By name.
    Name,
    /// By port, then by name.
    Port,
    /// The first to lapse first.
    ReadyUntil,
}

impl Selection {
    /// Whether nothing is left out.
    pub fn is_everything(&self) -> bool {
        *self == Self::default()
    }

    /// Whether the vessel is one that the audit is about: gear, port and
    /// profile. Its verdict then counts, shown or not.
    pub fn concerns(&self, check: &Check) -> bool {
        let vessel = &check.vessel;
        let gear = |gear: &String| vessel.gears.iter().flatten().any(|has| has == gear);
        let port = |port: &String| {
            vessel.port.as_ref().is_some_and(|has| has.to_lowercase() == port.trim().to_lowercase())
        };
        let bound = |id: &String| {
            let profiles = check.judgements.iter().map(|judgement| &judgement.profile);
            profiles.into_iter().any(|profile| profile.id == *id || profile.rule == *id)
        };
        let open = check.notices.iter().any(|notice| match notice {
            Notice::NoEdition { rule, .. } | Notice::MayBind { rule, .. } => {
                self.bound_by_rules.contains(rule)
            }
            _ => false,
        });
        let one = |list: &[String], matches: &dyn Fn(&String) -> bool| {
            list.is_empty() || list.iter().any(matches)
        };
        one(&self.gears, &gear) && one(&self.ports, &port) && (open || one(&self.bound_by, &bound))
    }

    /// Whether the vessel is shown: its verdict, and what it lacks.
    pub fn shows(&self, check: &Check) -> bool {
        let verdict = self.verdicts.is_empty() || self.verdicts.contains(&check.verdict);
        let lacks = |id: &String| {
            check.judgements.iter().any(|judgement| {
                let requirement = |index: usize| judgement.profile.requirements.get(index);
                judgement.findings.iter().any(|finding| {
                    finding.outcome != Outcome::Met
                        && requirement(finding.requirement).is_some_and(|r| r.id == *id)
                })
            })
        };
        verdict && (self.requirements.is_empty() || self.requirements.iter().any(lacks))
    }
}

impl Order {
    /// Sorts rows; files that were refused come first where the order is by
    /// verdict, else last. In the order of the input they stay where they are.
    pub fn sort(self, rows: &mut [Row]) {
        match self {
            Self::Input => {}
            Self::Verdict => rows.sort_by_key(|row| match row {
                Row::Refused(_) => (0, None),
                Row::Vessel(judged) => (1, Some(std::cmp::Reverse(judged.check.verdict))),
            }),
            Self::Name => rows.sort_by_key(|row| of(row, name)),
            Self::Port => rows.sort_by_key(|row| of(row, |judged| (port(judged), name(judged)))),
            Self::ReadyUntil => rows.sort_by_key(|row| of(row, |judged| until(&judged.check))),
        }
    }
}

fn of<K>(row: &Row, key: impl Fn(&Judged) -> K) -> (bool, Option<K>) {
    match row {
        Row::Vessel(judged) => (false, Some(key(judged))),
        Row::Refused(_) => (true, None),
    }
}

fn name(judged: &Judged) -> String {
    judged.check.vessel.name.to_lowercase()
}

/// Vessels without a port come after those that have one.
fn port(judged: &Judged) -> (bool, String) {
    let port = judged.check.vessel.port.as_deref().unwrap_or_default();
    (port.is_empty(), port.to_lowercase())
}

/// The first lapse of all profiles: not ready at all, then by day, then no
/// end.
pub(super) fn until(check: &Check) -> (u8, Option<Day>) {
    let of_one = |until: ReadyUntil| match until {
        ReadyUntil::None => (0, None),
        ReadyUntil::Day(day) => (1, Some(day)),
        ReadyUntil::NoEnd => (2, None),
    };
    let firsts = check.judgements.iter().map(|judgement| of_one(judgement.ready_until));
    let first = firsts.min().unwrap_or((0, None));
    if check.verdict == Verdict::Ready { first } else { (0, None) }
}
