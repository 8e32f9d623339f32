//! What a profile says that reads well and still is a slip: conditions that
//! can never hold, and a gap or an overlap at exactly a freeboard.
//!
//! Pure, over the checked model. A slip refuses no file: it is told when a
//! profile of one's own is loaded, and fails whoever proofreads one.

use super::claims::{Asked, Claim, Search, What};
use crate::load::read::fault::Fault;
use crate::load::read::problem::Problem;
use crate::measure::{DaySpan, Length};
use crate::model::place::Place;
use crate::model::profile::{Binds, Profile, Requirement};
use crate::model::rule::{Condition, Need, Spec};
use crate::model::vocabulary::KindId;

/// Every slip of a profile, in its order, not yet placed in lines.
pub(crate) fn slips(profile: &Profile) -> Vec<Problem> {
    let binds = conditions_of(&profile.binds);
    let mut reader = Reader { binds: &binds, search: Search::default(), found: Vec::new() };
    if reader.never([Claim::of(What::All(&binds))]) {
        reader.tell(profile.place.below("binds"), Fault::BindsNever);
        reader.binds = &[];
    }
    let alone: Vec<Asked<'_>> = profile.requirements.iter().map(alone).collect();
    let above = |one| served(one).map(|served| &alone[served]);
    let asked = profile.requirements.iter().zip(&alone);
    let asked: Vec<_> = asked.map(|(one, own)| Asked { above: above(one), ..*own }).collect();
    let mut items = Vec::new();
    for (requirement, asked) in profile.requirements.iter().zip(&asked) {
        if reader.conditions(requirement, asked) {
            items.push(Item {
                kinds: requirement.kinds(),
                asked: *asked,
                name: requirement.id.clone(),
                place: requirement.place.below("when"),
                span: requirement.span,
                serves: false,
            });
            reader.alternatives(requirement, asked);
        }
    }
    reader.thresholds(&items);
    reader.found
}

/// The requirement for whose tool it is a spare.
fn served(requirement: &Requirement) -> Option<usize> {
    match requirement.need {
        Need::Tools { spare_for, .. } => spare_for,
        Need::Certificates { .. } | Need::Gear { .. } => None,
    }
}

fn alone(requirement: &Requirement) -> Asked<'_> {
    Asked { when: &requirement.when, unless: &requirement.unless, above: None }
}

/// Whom a profile binds, as conditions.
fn conditions_of(binds: &Binds) -> Vec<Condition> {
    let any = |tags: &[String], of: fn(String) -> Condition| {
        let groups: Vec<_> = tags.iter().map(|tag| vec![of(tag.clone())]).collect();
        (!groups.is_empty()).then_some(Condition::AnyOf(groups))
    };
    let tags = [
        any(&binds.permits, Condition::Permit),
        any(&binds.gears, Condition::Gear),
        any(&binds.areas, Condition::Area),
    ];
    tags.into_iter().flatten().chain(binds.when.iter().cloned()).collect()
}

/// A requirement, or one of the alternatives of one.
struct Item<'a> {
    kinds: Vec<KindId>,
    asked: Asked<'a>,
    name: String,
    place: Place,
    span: DaySpan,
    /// Whether it is an alternative, of which one that is open will do.
    serves: bool,
}

impl<'a> Item<'a> {
    /// The freeboards at which it turns.
    fn thresholds(&self) -> Vec<(Length, &'a str)> {
        let mut found: Vec<(Length, &'a str)> = Vec::new();
        let mut see = |condition: &'a Condition| {
            if let Condition::Freeboard { threshold, written, .. } = condition
                && found.iter().all(|(known, _)| known != threshold)
            {
                found.push((*threshold, written.as_str()));
            }
        };
        Condition::each(self.asked.when, &mut see);
        self.asked.unless.iter().for_each(|group| Condition::each(group, &mut see));
        found
    }

    fn turns_at(&self, freeboard: Length) -> bool {
        self.thresholds().iter().any(|(threshold, _)| *threshold == freeboard)
    }

    fn is_like(&self, other: &Self) -> bool {
        self.span.meets(other.span) && self.kinds.iter().any(|kind| other.kinds.contains(kind))
    }

    fn is_asked(&self, holds: bool, at: Length) -> Claim<'_> {
        Claim { what: What::Asked(&self.asked), holds, at: Some(at) }
    }
}

struct Reader<'a> {
    binds: &'a [Condition],
    search: Search,
    found: Vec<Problem>,
}

impl<'a> Reader<'a> {
    fn tell(&mut self, place: Place, fault: Fault) {
        self.found.push(Problem::new(place, fault));
    }

    fn never<const N: usize>(&mut self, claims: [Claim<'_>; N]) -> bool {
        self.search.can(&claims) == Some(false)
    }

    /// Judges the conditions of a requirement; false where it is never asked.
    fn conditions(&mut self, requirement: &Requirement, asked: &Asked<'_>) -> bool {
        let place = &requirement.place;
        let when = Claim::of(What::All(&requirement.when));
        let bound = Claim::of(What::All(self.binds));
        let above = Asked { when: &[], unless: &[], ..*asked };
        let above = Claim::of(What::Asked(&above));
        let fault = if self.never([when]) {
            Some(("when", Fault::WhenNever))
        } else if self.never([when, bound, above]) {
            Some(("when", Fault::NeverAsked))
        } else if self.never([bound, Claim::of(What::Asked(asked))]) {
            Some(("unless", Fault::UnlessAlways))
        } else {
            None
        };
        if let Some((key, fault)) = fault {
            self.tell(place.below(key), fault);
            return false;
        }
        for (index, group) in requirement.unless.iter().enumerate() {
            if self.never([when, bound, above, Claim::of(What::All(group))]) {
                self.tell(place.below("unless").entry(index), Fault::UnlessNever);
            }
        }
        true
    }

    /// Judges the alternatives of a requirement, by itself and beside each
    /// other.
    fn alternatives(&mut self, requirement: &Requirement, asked: &Asked<'_>) {
        for (place, choices) in members(requirement) {
            let mut items = Vec::new();
            for (index, spec) in choices.iter().enumerate() {
                let at = place.below("one of").entry(index).below("when");
                let bound = Claim::of(What::All(self.binds));
                let own = Asked { when: &spec.when, unless: &[], above: Some(asked) };
                if self.never([bound, Claim::of(What::Asked(&own))]) {
                    self.tell(at, Fault::AlternativeNever);
                    continue;
                }
                items.push(Item {
                    kinds: vec![spec.kind],
                    asked: own,
                    name: format!("one of[{index}]"),
                    place: at,
                    span: DaySpan::ALWAYS,
                    serves: true,
                });
            }
            self.thresholds(&items);
        }
    }

    /// Judges whether things alike that part at one freeboard leave a gap
    /// there, or overlap.
    fn thresholds(&mut self, items: &[Item<'_>]) {
        for (index, one) in items.iter().enumerate() {
            for (limit, written) in one.thresholds() {
                let later = items[index + 1..].iter().filter(|other| other.is_like(one));
                for other in later.filter(|other| other.turns_at(limit)) {
                    if self.search.is_spent() {
                        return;
                    }
                    if let Some(is_gap) = self.slip_at(limit, (one, other), items) {
                        let (limit, beside) = (written.to_owned(), one.name.clone());
                        let fault = match is_gap {
                            true => Fault::FreeboardGap { limit, beside },
                            false => Fault::FreeboardOverlap { limit, beside },
                        };
                        self.tell(other.place.clone(), fault);
                    }
                }
            }
        }
    }

    /// Whether two that part at a freeboard leave a gap at exactly that (true)
    /// or overlap there (false): one is asked just below and not just above, the
    /// other just above and not just below.
    fn slip_at(
        &mut self,
        limit: Length,
        (one, other): (&Item<'_>, &Item<'_>),
        items: &[Item<'_>],
    ) -> Option<bool> {
        let near = [limit.just_below(), limit, limit.just_above()];
        let [below, _, above] = near;
        let bound = near.map(|at| Claim { at: Some(at), ..Claim::of(What::All(self.binds)) });
        for (low, high) in [(one, other), (other, one)] {
            let parted = [
                low.is_asked(true, below),
                low.is_asked(false, above),
                high.is_asked(false, below),
                high.is_asked(true, above),
            ];
            let parted: Vec<Claim<'_>> = bound.into_iter().chain(parted).collect();
            let both = [low, high].map(|item| item.is_asked(true, limit));
            if self.search.can(&[&parted[..], &both].concat()) == Some(true) {
                return Some(false);
            }
            let fills =
                |item: &&Item<'_>| item.is_like(one) && (item.serves || item.turns_at(limit));
            let none = items.iter().filter(fills).map(|item| item.is_asked(false, limit));
            let none: Vec<Claim<'_>> = none.collect();
            if self.search.can(&[parted, none].concat()) == Some(true) {
                return Some(true);
            }
        }
        None
    }
}

/// The alternatives of each thing that a requirement wants, with the place
/// above them.
fn members(requirement: &Requirement) -> Vec<(Place, &[Spec])> {
    let place = &requirement.place;
    match &requirement.need {
        Need::Tools { types, .. } => {
            let mut found = Vec::new();
            for (index, of_type) in types.iter().enumerate() {
                let place = match of_type.name {
                    Some(_) => place.below("types").entry(index),
                    None => place.clone(),
                };
                let several = of_type.members.len() > 1;
                found.extend(of_type.members.iter().enumerate().map(|(index, member)| {
                    let set = || place.below("set of").entry(index);
                    let place = if several { set() } else { place.clone() };
                    (place, &member.choices[..])
                }));
            }
            found
        }
        Need::Gear { choices, .. } => vec![(place.clone(), choices)],
        Need::Certificates { .. } => Vec::new(),
    }
}
