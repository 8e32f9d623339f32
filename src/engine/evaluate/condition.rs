//! Which conditions hold at a point: whom a profile binds, and where a
//! requirement asks anything.

use super::point::Point;
use crate::measure::Answer;
use crate::model::profile::{Binds, Requirement};
use crate::model::reason::VesselFact;
use crate::model::rule::{Condition, Need, Side};
use crate::model::vessel::{State, Vessel, Whereabouts};
use crate::model::vocabulary::{KindId, Tags, Vocabulary};

/// What is known of a condition, with the fact that would settle it.
pub(crate) type Known = Result<bool, VesselFact>;

pub(crate) fn answer(known: &Known) -> Answer {
    match known {
        Ok(holds) => (*holds).into(),
        Err(_) => Answer::Unknown,
    }
}

/// All hold: one `no` settles it, else the first missing fact.
pub(crate) fn all(list: impl IntoIterator<Item = Known>) -> Known {
    let mut missing = None;
    for known in list {
        match known {
            Ok(true) => {}
            Ok(false) => return Ok(false),
            Err(fact) => missing = missing.or(Some(fact)),
        }
    }
    missing.map_or(Ok(true), Err)
}

/// One holds: one `yes` settles it, else the first missing fact.
pub(crate) fn any(list: impl IntoIterator<Item = Known>) -> Known {
    all(list.into_iter().map(|known| known.map(|holds| !holds))).map(|none| !none)
}

impl Point<'_> {
    /// Whether the requirement binds here; spares are asked where what they
    /// are for is.
    pub(crate) fn binds(&self, requirement: &Requirement) -> Known {
        self.binds_under(&self.profile_governs(), requirement)
    }

    /// The same, where it is worked out already whether the profile governs.
    pub(crate) fn binds_under(&self, profile: &Known, requirement: &Requirement) -> Known {
        if !requirement.span.holds(self.day) {
            return Ok(false);
        }
        let unless = any(requirement.unless.iter().map(|group| self.holds_all(group)));
        let served = match requirement.need {
            Need::Tools { spare_for: Some(served), .. } => {
                self.binds_under(profile, &self.profile.requirements[served])
            }
            _ => Ok(true),
        };
        let own = [self.holds_all(&requirement.when), unless.map(|holds| !holds)];
        all([profile.clone()].into_iter().chain(own).chain([served]))
    }

    /// Whether the profile governs: it binds the vessel or was asked for.
    pub(crate) fn profile_governs(&self) -> Known {
        if self.asked { Ok(true) } else { self.profile_binds() }
    }

    /// Whether the profile binds the vessel, whatever the day.
    pub(crate) fn profile_binds(&self) -> Known {
        let tags = tags_bind(&self.profile.binds, self.vessel, self.vocabulary);
        all([tags, self.holds_all(&self.profile.binds.when)])
    }

    /// Whether all the conditions hold.
    pub(crate) fn holds_all(&self, conditions: &[Condition]) -> Known {
        all(conditions.iter().map(|condition| self.holds(condition)))
    }

    fn holds(&self, condition: &Condition) -> Known {
        match condition {
            Condition::Freeboard { side, threshold, .. } => {
                let freeboard = self.freeboard.map_err(VesselFact::from)?;
                Ok(match side {
                    Side::AtMost => freeboard <= *threshold,
                    Side::MoreThan => freeboard > *threshold,
                    Side::LessThan => freeboard < *threshold,
                    Side::AtLeast => freeboard >= *threshold,
                })
            }
            Condition::Feature { feature, wanted } => self
                .vessel
                .features
                .get(feature)
                .map(|has| has == wanted)
                .ok_or_else(|| VesselFact::Feature(feature.clone())),
            Condition::Aboard { kind, wanted } => self.aboard(*kind).map(|has| has == *wanted),
            Condition::Gear(tag) => self.lists(VesselFact::Gear, |gear| gear == tag),
            Condition::Area(tag) => self.lists(VesselFact::Areas, |area| area == tag),
            Condition::AreaOtherThan(tag) => self.lists(VesselFact::Areas, |area| area != tag),
            Condition::Permit(tag) => self.lists(VesselFact::Permits, |permit| permit == tag),
            Condition::Months(first, last) => {
                let month = self.day.month();
                Ok(if first <= last {
                    (*first..=*last).contains(&month)
                } else {
                    month >= *first || month <= *last
                })
            }
            Condition::AnyOf(groups) => any(groups.iter().map(|group| self.holds_all(group))),
        }
    }

    /// Whether one of the vessel's permits, gears or areas is meant. A word
    /// that the vocabulary does not know may mean any of them.
    fn lists(&self, list: VesselFact, is_meant: impl Fn(&str) -> bool) -> Known {
        let (written, known) = match list {
            VesselFact::Permits => (&self.vessel.permits, &self.vocabulary.permits),
            VesselFact::Gear => (&self.vessel.gears, &self.vocabulary.gears),
            _ => (&self.vessel.areas, &self.vocabulary.areas),
        };
        let Some(written) = written else { return Err(list) };
        let meant = |word: &String| known.means(word, &is_meant).ok_or_else(|| list.clone());
        any(written.iter().map(meant))
    }

    /// Whether something of the kind is aboard and serviceable on the day,
    /// before any assignment.
    fn aboard(&self, kind: KindId) -> Known {
        let fact = || VesselFact::Aboard(kind);
        let listed = self.vessel.kit.iter().filter(|tool| tool.kind == kind).map(|tool| {
            let here = match &tool.whereabouts {
                Whereabouts::Aboard => Ok(true),
                Whereabouts::Lent { span, .. } => Ok(!span.holds(self.day)),
                Whereabouts::Ashore | Whereabouts::Missing => Ok(false),
                Whereabouts::Unknown => Err(fact()),
            };
            let works = match tool.state {
                State::Serviceable => Ok(true),
                State::Broken => Ok(false),
                State::Unknown => Err(fact()),
            };
            let is_one = if tool.disputes.kinds.is_empty() { Ok(true) } else { Err(fact()) };
            let dated = match tool.in_date(self.day) {
                Answer::Unknown => Err(fact()),
                answer => Ok(answer == Answer::Yes),
            };
            let acquired = tool.acquired.is_none_or(|day| day <= self.day);
            all([here, works, dated, is_one, Ok(acquired)])
        });
        let unlisted = if self.vessel.coverage.is_whole(kind) { Ok(false) } else { Err(fact()) };
        any(listed.chain(std::iter::once(unlisted)))
    }
}

/// Whether the tags of the vessel are among those that the profile binds. A
/// tag that no vocabulary knows is told of the check as a whole: a rule may
/// bind by it that no file holds.
pub(crate) fn tags_bind(binds: &Binds, vessel: &Vessel, words: &Vocabulary) -> Known {
    let one = |wanted: &[String], has: &Option<Vec<String>>, known: &Tags, fact: VesselFact| {
        if wanted.is_empty() {
            return Ok(true);
        }
        let Some(has) = has else { return Err(fact) };
        let is_wanted = |tag: &str| wanted.iter().any(|one| one == tag);
        any(has.iter().map(|tag| match known.contains_key(tag) {
            true => known.means(tag, &is_wanted).ok_or_else(|| fact.clone()),
            false => Ok(is_wanted(tag)),
        }))
    };
    all([
        one(&binds.permits, &vessel.permits, &words.permits, VesselFact::Permits),
        one(&binds.gears, &vessel.gears, &words.gears, VesselFact::Gear),
        one(&binds.areas, &vessel.areas, &words.areas, VesselFact::Areas),
    ])
}
