//! One profile over one vessel at one freeboard on one day: what is known
//! there, and which conditions hold.

use crate::measure::{Answer, Day, Figure, Length, System};
use crate::model::profile::{Binds, Profile, Requirement};
use crate::model::reason::VesselFact;
use crate::model::rule::{Base, Condition, Need, Side};
use crate::model::vessel::{Datum, GearPiece, State, Vessel, Whereabouts};
use crate::model::vocabulary::{KindId, Vocabulary};

/// One profile over one vessel at one freeboard on one day.
#[derive(Debug, Clone, Copy)]
pub(super) struct Scene<'a> {
    pub(super) vocabulary: &'a Vocabulary,
    pub(super) profile: &'a Profile,
    pub(super) vessel: &'a Vessel,
    /// The freeboard, or the fact that is missing.
    pub(super) freeboard: Result<Length, Missing>,
    pub(super) day: Day,
    /// The day of departure, to tell a lapse at sea from one before it.
    pub(super) departure: Day,
    /// True where the profile was asked for by name: whom it binds is then
    /// no question.
    pub(super) asked: bool,
    /// True where a limit that is missed for certain is put into a figure.
    pub(super) missed: bool,
}

/// Why there is no freeboard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Missing {
    NotMeasured,
    OtherPlace,
}

impl From<Missing> for VesselFact {
    fn from(missing: Missing) -> Self {
        match missing {
            Missing::NotMeasured => Self::Freeboard,
            Missing::OtherPlace => Self::FreeboardFrom,
        }
    }
}

/// What is known of a condition, with the fact that would settle it.
pub(super) type Known = Result<bool, VesselFact>;

pub(super) fn answer(known: &Known) -> Answer {
    match known {
        Ok(holds) => (*holds).into(),
        Err(_) => Answer::Unknown,
    }
}

/// All hold: one `no` settles it, else the first missing fact.
pub(super) fn all(list: impl IntoIterator<Item = Known>) -> Known {
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
pub(super) fn any(list: impl IntoIterator<Item = Known>) -> Known {
    all(list.into_iter().map(|known| known.map(|holds| !holds))).map(|none| !none)
}

impl<'a> Scene<'a> {
    /// The length that a percentage is taken of, from the least to the most
    /// that it may be, or the fact that is missing.
    pub(super) fn base(&self, base: Base) -> Result<[Length; 2], VesselFact> {
        let (kind, pieces, attribute, fact) = match base {
            Base::Freeboard => {
                return self.freeboard.map(|f| [f, f]).map_err(VesselFact::from);
            }
            Base::HeaviestHook => ("hook", &self.vessel.hooks, "wire", VesselFact::Hooks),
            Base::ThickestLine | Base::ThickestLeader => {
                ("fishing-line", &self.vessel.lines, "diameter", VesselFact::Lines)
            }
        };
        let coverage = &self.vessel.coverage;
        let whole = self.vocabulary.find_kind(kind).is_some_and(|kind| coverage.is_whole(kind));
        let pieces = pieces.as_deref().filter(|_| whole);
        match base {
            Base::ThickestLeader => {
                pieces.and_then(|pieces| self.thickest_leader(pieces)).ok_or(fact)
            }
            _ => self.thickest(pieces, attribute).ok_or(fact),
        }
    }

    /// What a limit is worked out from: the base, or for a limit that is
    /// missed for certain the least that it can be.
    pub(super) fn shown(&self, base: Base) -> Option<[Length; 2]> {
        let so_far = || self.so_far(base).filter(|_| self.missed).map(|least| [least; 2]);
        self.base(base).ok().or_else(so_far)
    }

    /// The thickest hook or line that is known, whatever the others are.
    pub(super) fn so_far(&self, base: Base) -> Option<Length> {
        let (pieces, attribute) = match base {
            Base::Freeboard => return None,
            Base::HeaviestHook => (&self.vessel.hooks, "wire"),
            Base::ThickestLine | Base::ThickestLeader => (&self.vessel.lines, "diameter"),
        };
        let counts = |piece: &&GearPiece| {
            base != Base::ThickestLeader || self.is_leader(piece) == Answer::Yes
        };
        let each = pieces.iter().flatten().filter(counts);
        each.filter_map(|one| self.thickest(Some(std::slice::from_ref(one)), attribute))
            .map(|[least, _]| least)
            .max()
    }

    fn is_leader(&self, piece: &GearPiece) -> Answer {
        let Some(part) = self.vocabulary.find_attribute("part") else { return Answer::Unknown };
        let readings = piece.tool.readings(part).iter();
        Answer::consensus(readings.map(|reading| match &reading.datum {
            Datum::Word(word) => Answer::from(word == "leader"),
            _ => Answer::Unknown,
        }))
    }

    /// The thickest leader: at least that of the lines that are one for
    /// certain, at most that of those that may be.
    fn thickest_leader(&self, pieces: &[GearPiece]) -> Option<[Length; 2]> {
        let (mut sure, mut maybe) = (Vec::new(), Vec::new());
        for piece in pieces {
            let is = self.is_leader(piece);
            sure.extend((is == Answer::Yes).then(|| piece.clone()));
            maybe.extend((is != Answer::No).then(|| piece.clone()));
        }
        if sure.is_empty() {
            // Where none is a leader for certain the hooks hang on some line.
            let each =
                pieces.iter().map(|one| self.thickest(Some(std::slice::from_ref(one)), "diameter"));
            let ends = each.collect::<Option<Vec<_>>>()?;
            return Some([ends.iter().map(|e| e[0]).min()?, ends.iter().map(|e| e[1]).max()?]);
        }
        let [_, high] = self.thickest(Some(&maybe), "diameter")?;
        let [low, _] = self.thickest(Some(&sure), "diameter")?;
        Some([low, high])
    }

    /// The greatest of the attribute over all pieces; none where a piece
    /// says nothing of it, or pieces may be aboard that nobody listed.
    fn thickest(&self, pieces: Option<&[GearPiece]>, attribute: &str) -> Option<[Length; 2]> {
        let attribute = self.vocabulary.find_attribute(attribute)?;
        let mut thickest = [Length::ZERO; 2];
        for piece in pieces? {
            let figures = piece.tool.readings(attribute).iter().filter_map(|reading| {
                let Datum::Figure(figure) = &reading.datum else { return None };
                let error = reading.error.as_ref().and_then(Figure::length);
                Some((figure.length()?, error.unwrap_or(Length::ZERO)))
            });
            let spans: Vec<_> = figures.map(|(l, e)| (l.less(e), l.plus(e))).collect();
            thickest[0] = thickest[0].max(spans.iter().map(|(low, _)| *low).min()?);
            thickest[1] = thickest[1].max(spans.iter().map(|(_, high)| *high).max()?);
        }
        Some(thickest)
    }

    /// The system of units that the vessel measures in.
    pub(super) fn system(&self) -> System {
        self.vessel
            .freeboard
            .stations
            .first()
            .and_then(|station| station.readings.first())
            .map_or(System::Customary, |reading| reading.high.system)
    }

    /// Whether the requirement binds here; spares are asked where what they
    /// are for is.
    pub(super) fn binds(&self, requirement: &Requirement) -> Known {
        self.binds_under(&self.profile_governs(), requirement)
    }

    /// The same, where it is worked out already whether the profile governs.
    pub(super) fn binds_under(&self, profile: &Known, requirement: &Requirement) -> Known {
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
    pub(super) fn profile_governs(&self) -> Known {
        if self.asked { Ok(true) } else { self.profile_binds() }
    }

    /// Whether the profile binds the vessel, whatever the day.
    pub(super) fn profile_binds(&self) -> Known {
        let tags = tags_bind(&self.profile.binds, self.vessel);
        all([tags, self.holds_all(&self.profile.binds.when)])
    }

    /// Whether all the conditions hold.
    pub(super) fn holds_all(&self, conditions: &[Condition]) -> Known {
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
        any(written.iter().map(|word| match known.contains_key(word) {
            true => Ok(is_meant(word)),
            false => Err(list.clone()),
        }))
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
            let dated = tool.expires.is_none_or(|day| self.day <= day)
                && tool.acquired.is_none_or(|day| day <= self.day);
            all([here, works, Ok(dated)])
        });
        let unlisted = if self.vessel.coverage.is_whole(kind) { Ok(false) } else { Err(fact()) };
        any(listed.chain(std::iter::once(unlisted)))
    }
}

/// Whether the tags of the vessel are among those that the profile binds.
pub(super) fn tags_bind(binds: &Binds, vessel: &Vessel) -> Known {
    let one = |wanted: &[String], has: Option<&Vec<String>>, fact: VesselFact| {
        if wanted.is_empty() {
            Ok(true)
        } else {
            has.map(|has| has.iter().any(|tag| wanted.contains(tag))).ok_or(fact)
        }
    };
    all([
        one(&binds.permits, vessel.permits.as_ref(), VesselFact::Permits),
        one(&binds.gears, vessel.gears.as_ref(), VesselFact::Gear),
        one(&binds.areas, vessel.areas.as_ref(), VesselFact::Areas),
    ])
}

/// Whether the profile names any tag that the vessel states.
pub(super) fn names(binds: &Binds, vessel: &Vessel) -> bool {
    let touches = |wanted: &[String], has: Option<&Vec<String>>| {
        has.is_some_and(|has| has.iter().any(|tag| wanted.contains(tag)))
    };
    touches(&binds.permits, vessel.permits.as_ref())
        || touches(&binds.gears, vessel.gears.as_ref())
        || touches(&binds.areas, vessel.areas.as_ref())
}
