//! Requirements that want no tool: certificates held by people, and the
//! vessel's own fishing gear.

use super::fit;
use super::notes;
use super::point::Point;
use crate::measure::{Answer, Day, Interval};
use crate::model::profile::Requirement;
use crate::model::reason::{Reason, VesselFact};
use crate::model::rule::{Holders, Need, Spec};
use crate::model::vessel::{Certificate, GearPiece, Person};
use crate::model::vocabulary::KindId;

/// Every reason why the requirement is not met; `None` if it wants tools.
pub(crate) fn reasons(requirement: &Requirement, point: &Point<'_>) -> Option<Vec<Reason>> {
    match &requirement.need {
        Need::Tools { .. } => None,
        Need::Certificates { kind, holders, valid } => {
            Some(certificates(*kind, holders, *valid, point))
        }
        Need::Gear { kind, choices } => Some(gear(*kind, choices, requirement, point)),
    }
}

fn certificates(
    kind: KindId,
    holders: &Holders,
    valid: Option<Interval>,
    point: &Point<'_>,
) -> Vec<Reason> {
    let Some(people) = &point.vessel.people else {
        return vec![Reason::VesselFactUnknown { fact: VesselFact::People }];
    };
    match holders {
        Holders::EachRole(roles) => roles
            .iter()
            .flat_map(|role| {
                let holds = |person: &&Person| person.roles.contains(role);
                let group: Vec<_> = people.iter().filter(holds).collect();
                let reasons = enough(&group, kind, 1, valid, Some(role), point);
                // Whoever has a role that nobody knows may have this one.
                let may_hold = |person: &&Person| holds(person) || has_unknown_role(person, point);
                let open: Vec<_> = people.iter().filter(may_hold).collect();
                let is_open = open.len() > group.len()
                    && notes::answer(&reasons) == Answer::No
                    && notes::answer(&enough(&open, kind, 1, valid, Some(role), point))
                        != Answer::No;
                match is_open {
                    true => vec![Reason::VesselFactUnknown { fact: VesselFact::People }],
                    false => reasons,
                }
            })
            .collect(),
        Holders::People(count) => {
            let group: Vec<_> = people.iter().collect();
            enough(&group, kind, *count, valid, None, point)
        }
    }
}

/// Whether one of the person's roles is a word that nobody knows.
fn has_unknown_role(person: &Person, point: &Point<'_>) -> bool {
    person.roles.iter().any(|role| !point.vocabulary.roles.contains_key(role))
}

fn enough(
    people: &[&Person],
    kind: KindId,
    need: u32,
    valid: Option<Interval>,
    role: Option<&String>,
    point: &Point<'_>,
) -> Vec<Reason> {
    let (mut have, mut undated, mut lapsed): (u32, Vec<Reason>, Option<Day>) =
        (0, Vec::new(), None);
    for person in people {
        match is_certified(person, kind, valid, point.day) {
            Answer::Yes => have += 1,
            Answer::Unknown => undated.push(open(person, kind)),
            Answer::No => {
                let ends = held(person, kind).filter_map(|c| last_day(c, valid));
                let ended = ends.filter(|day| *day < point.day).max();
                lapsed = lapsed.max(ended.map(Day::next));
            }
        }
    }
    let open = u32::try_from(undated.len()).unwrap_or(u32::MAX);
    if have >= need {
        Vec::new()
    } else if have + open >= need {
        undated
    } else {
        vec![Reason::NoCertificate { role: role.cloned(), have, need, lapsed }]
    }
}

/// Why nobody can tell whether the person holds a good certificate.
fn open(person: &Person, kind: KindId) -> Reason {
    let name = person.name.clone();
    if person.in_doubt {
        Reason::PersonDisputed { person: name }
    } else if held(person, kind).any(|certificate| !certificate.rivals.is_empty()) {
        Reason::CertificateDisputed { person: name }
    } else {
        Reason::CertificateUndated { person: name }
    }
}

fn held(person: &Person, kind: KindId) -> impl Iterator<Item = &Certificate> {
    person.certificates.iter().filter(move |certificate| certificate.kind == kind)
}

/// Whether the person is aboard and holds a certificate that is good on the day.
fn is_certified(person: &Person, kind: KindId, valid: Option<Interval>, day: Day) -> Answer {
    let aboard = if person.in_doubt { Answer::Unknown } else { Answer::Yes };
    aboard.and(Answer::any(held(person, kind).map(|one| is_valid(one, valid, day))))
}

/// The people, by index, whose certificates count for the requirement in the
/// point and through that day; where nobody's lasts, those whose do in the
/// point. None where it wants no certificate.
pub(crate) fn certified(requirement: &Requirement, point: &Point<'_>, through: Day) -> Vec<usize> {
    let Need::Certificates { kind, holders, valid } = &requirement.need else {
        return Vec::new();
    };
    let counts = |person: &Person, day| {
        is_concerned(person, holders) && is_certified(person, *kind, *valid, day) == Answer::Yes
    };
    let people = point.vessel.people.iter().flatten().enumerate();
    let now: Vec<_> = people.filter(|(_, person)| counts(person, point.day)).collect();
    let lasting = now.iter().filter(|(_, person)| counts(person, through)).map(|(p, _)| *p);
    let lasting: Vec<usize> = lasting.collect();
    if lasting.is_empty() { now.into_iter().map(|(p, _)| p).collect() } else { lasting }
}

/// Whether the rule asks that person: for any of its roles, or anybody.
pub(super) fn is_concerned(person: &Person, holders: &Holders) -> bool {
    match holders {
        Holders::EachRole(roles) => roles.iter().any(|role| person.roles.contains(role)),
        Holders::People(_) => true,
    }
}

/// The last day on which it is valid for certain: the earlier of its own print
/// and its issue plus the span that the rule sets, by the worst word on them.
pub(super) fn last_day(certificate: &Certificate, valid: Option<Interval>) -> Option<Day> {
    certificate.readings().filter_map(|said| ends(said, valid)).min()
}

/// What a certificate says of its days: of issue, and the last valid one.
type Dates = (Option<Day>, Option<Day>);

fn ends((issued, expires): Dates, valid: Option<Interval>) -> Option<Day> {
    let by_issue = issued.zip(valid).map(|(day, valid)| day.through(valid));
    [expires, by_issue].into_iter().flatten().min()
}

fn is_valid(certificate: &Certificate, valid: Option<Interval>, day: Day) -> Answer {
    Answer::consensus(certificate.readings().map(|said| is_valid_by(said, valid, day)))
}

fn is_valid_by(said: Dates, valid: Option<Interval>, day: Day) -> Answer {
    let (issued, _) = said;
    if issued.is_some_and(|issued| day < issued) {
        return Answer::No;
    }
    match ends(said, valid) {
        // Where the rule sets a span, the day of issue decides too.
        Some(last) if day <= last && valid.is_some() && issued.is_none() => Answer::Unknown,
        Some(last) => (day <= last).into(),
        // Without a span in the rule an undated certificate does not lapse.
        None if valid.is_none() => Answer::Yes,
        None => Answer::Unknown,
    }
}

fn gear(
    kind: KindId,
    choices: &[Spec],
    requirement: &Requirement,
    point: &Point<'_>,
) -> Vec<Reason> {
    let hooks = point.vocabulary.kind(kind).id == "hook";
    let (pieces, fact) = if hooks {
        (&point.vessel.hooks, VesselFact::Hooks)
    } else {
        (&point.vessel.lines, VesselFact::Lines)
    };
    let Some(pieces) = pieces else {
        return vec![Reason::VesselFactUnknown { fact }];
    };
    let mut reasons: Vec<Reason> =
        pieces.iter().filter_map(|piece| outside(piece, choices, requirement, point)).collect();
    // Of a partial list nobody knows what else is aboard.
    if !point.vessel.coverage.is_whole(kind) {
        reasons.push(Reason::VesselFactUnknown { fact });
    }
    reasons
}

/// The nearest alternative's first reason, if the piece keeps none.
pub(crate) fn outside(
    piece: &GearPiece,
    choices: &[Spec],
    requirement: &Requirement,
    point: &Point<'_>,
) -> Option<Reason> {
    let mut nearest: Option<Vec<Reason>> = None;
    for spec in choices {
        let open = point.holds_all(&spec.when);
        if open == Ok(false) {
            continue;
        }
        let mut reasons = fit::fit(&piece.tool, spec, None, requirement, point);
        reasons.retain(|reason| !matches!(reason, Reason::InspectionUndated));
        reasons.extend(open.err().map(|fact| Reason::VesselFactUnknown { fact }));
        // An alternative of another type or trade size is further off than
        // one of which a measure is wrong.
        let weight = |reason: &Reason| match reason {
            Reason::OutOfSpecification { by: None, .. } => 10,
            _ => 1,
        };
        let rank = |reasons: &[Reason]| {
            let misses: usize = reasons.iter().map(weight).sum();
            (notes::answer(reasons) == Answer::No, misses)
        };
        if nearest.as_ref().is_none_or(|best| rank(&reasons) < rank(best)) {
            nearest = Some(reasons);
        }
    }
    // No alternative is open to it at all.
    let nothing = || vec![Reason::NoAlternative { attributes: Vec::new() }];
    let reasons = nearest.unwrap_or_else(nothing);
    let why = reasons.iter().find(|r| !r.is_open()).or(reasons.first())?.clone();
    Some(Reason::GearOutside { piece: piece.name.clone(), why: Box::new(why) })
}
