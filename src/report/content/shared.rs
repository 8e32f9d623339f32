//! Facts of the vessel that leave several findings open: told once, not
//! again with every finding.
//!
//! Imports `model` and the words beside it.

use crate::model::finding::{Because, Finding};
use crate::model::reason::{Reason, VesselFact};
use crate::report::words::fact_of;

/// A missing fact and the findings that it leaves open.
pub(crate) struct Shared<'a> {
    pub(crate) fact: &'a VesselFact,
    /// The requirements, by index.
    pub(crate) requirements: Vec<usize>,
}

/// The facts that more than one of the findings lack.
pub(crate) fn shared<'a>(findings: &[&'a Finding]) -> Vec<Shared<'a>> {
    let mut all: Vec<Shared<'a>> = Vec::new();
    for finding in findings {
        for fact in finding.reasons.iter().filter_map(fact_of) {
            match all.iter_mut().find(|shared| shared.fact == fact) {
                Some(shared) if shared.requirements.contains(&finding.requirement) => {}
                Some(shared) => shared.requirements.push(finding.requirement),
                None => all.push(Shared { fact, requirements: vec![finding.requirement] }),
            }
        }
    }
    all.retain(|shared| shared.requirements.len() > 1);
    all
}

/// The reasons of a finding that the shared facts do not tell already; none
/// if they tell it all.
pub(crate) fn news<'a>(finding: &'a Finding, told: &[&VesselFact]) -> Vec<&'a Because> {
    let is_told = |because: &&Because| fact_of(because).is_some_and(|fact| told.contains(&fact));
    let (told, news): (Vec<_>, Vec<_>) = finding.reasons.iter().partition(is_told);
    // Spares that fit nothing follow from a tool that is open itself.
    let follows = |because: &&Because| leader_of(because).is_some();
    if !told.is_empty() && news.iter().all(follows) { Vec::new() } else { news }
}

/// A finding that only follows from another, with the index of the
/// requirement that it follows from.
pub(crate) type Follower<'a> = (usize, &'a Finding);

/// The findings that only follow from another one among these, and the rest.
pub(crate) fn followers<'a>(findings: &[&'a Finding]) -> (Vec<Follower<'a>>, Vec<&'a Finding>) {
    let is_here = |leader: &usize| findings.iter().any(|f| f.requirement == *leader);
    let (mut followers, mut leaders) = (Vec::new(), Vec::new());
    for finding in findings.iter().copied() {
        let mut of = finding.reasons.iter().map(leader_of);
        let first = of.next().flatten().filter(is_here);
        match first.filter(|first| of.all(|leader| leader == Some(*first))) {
            Some(leader) if leader != finding.requirement => followers.push((leader, finding)),
            _ => leaders.push(finding),
        }
    }
    // What follows from a follower stands by itself.
    let (followers, orphans): (Vec<_>, Vec<_>) = followers
        .into_iter()
        .partition(|(leader, _)| leaders.iter().any(|other| other.requirement == *leader));
    leaders.extend(orphans.into_iter().map(|(_, finding)| finding));
    (followers, leaders)
}

/// The requirement that has to be settled first.
fn leader_of(because: &Because) -> Option<usize> {
    match because.reason {
        Reason::FitsNothing { requirement } | Reason::HangsOn { requirement } => Some(requirement),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::finding::Outcome;
    use crate::report::sample;

    #[test]
    fn what_follows_stands_with_its_leader_and_else_where_it_was() {
        let finding = |requirement, leaders: &[usize]| {
            let hangs_on = |leader: &usize| Because {
                tool: None,
                reason: Reason::HangsOn { requirement: *leader },
            };
            let reasons = leaders.iter().map(hangs_on).collect();
            sample::finding(requirement, Outcome::CannotTell, reasons)
        };
        // 7 is not here; 3 hangs on two; 4 hangs on a follower, 5 on itself.
        let all = [(0, &[7][..]), (1, &[]), (2, &[1, 1]), (3, &[0, 1]), (4, &[2]), (5, &[5])];
        let all = all.map(|(requirement, leaders)| finding(requirement, leaders));
        let (followers, leaders) = followers(&all.iter().collect::<Vec<_>>());
        let followers: Vec<_> = followers.iter().map(|(of, f)| (*of, f.requirement)).collect();
        let leaders: Vec<_> = leaders.iter().map(|f| f.requirement).collect();
        assert_eq!((followers, leaders), (vec![(1, 2)], vec![0, 1, 3, 5, 4]));
    }
}
