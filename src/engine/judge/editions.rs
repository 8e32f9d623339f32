//! Which profiles judge a vessel on a trip.
//!
//! A profile that is asked for by name governs on all days, in force or not, and
//! the page says so. A rule that may bind but that nothing stated points to
//! (permits not written) is told and leaves the verdict open; it is not judged.

use super::breakpoints;
use crate::engine::evaluate::condition::{Known, any};
use crate::engine::evaluate::point::{Missing, Point};
use crate::engine::request::Terms;
use crate::measure::{Day, DaySpan, Length};
use crate::model::check::{Notice, Why};
use crate::model::profile::{Binds, Profile};
use crate::model::reason::VesselFact;
use crate::model::vessel::Vessel;
use crate::model::vocabulary::{Tags, Vocabulary};
use std::sync::Arc;

/// One profile with the days that it judges, and its sister editions for
/// the days beyond.
#[derive(Debug, Clone)]
pub(crate) struct ApplicableEdition<'a> {
    pub(crate) profile: Arc<Profile>,
    pub(crate) why: Why,
    pub(crate) days: DaySpan,
    /// Whether it governs on every day, in force or not.
    pub(crate) always: bool,
    /// All editions of the rule, this one among them.
    pub(crate) of_rule: Vec<&'a Arc<Profile>>,
}

impl ApplicableEdition<'_> {
    /// Which edition governs on the day; none where it is not known or not
    /// encoded. A single profile that was asked for governs on every day.
    pub(crate) fn governing(&self, day: Day) -> Option<&Profile> {
        let own = self.always || self.profile.in_force.holds(day);
        let sister = || self.of_rule.iter().copied().find(|other| other.in_force.holds(day));
        let governing = if own { Some(&self.profile) } else { sister() };
        governing.map(|profile| &**profile).filter(|profile| profile.encoded)
    }
}

/// The editions of a check, with what is to be said of them.
pub(crate) struct Applicable<'a> {
    pub(crate) editions: Vec<ApplicableEdition<'a>>,
    pub(crate) notices: Vec<Notice>,
}

/// Selects the profiles that were asked for, else every one that binds, else
/// the fallback.
pub(crate) fn applicable<'a>(terms: &Terms<'a>, vessel: &Vessel, days: DaySpan) -> Applicable<'a> {
    if !terms.asked.is_empty() {
        return asked(terms, vessel, days);
    }
    let mut selection = binding(terms, vessel, days);
    let gap = |notice: &Notice| matches!(notice, Notice::NoEdition { .. });
    if selection.editions.is_empty() && !selection.notices.iter().any(gap) {
        if selection.notices.is_empty() {
            selection.notices.push(Notice::NoRuleNamesVessel);
        }
        for profile in terms.profiles.iter().filter(|profile| profile.fallback) {
            let of_rule = vec![profile];
            let profile = Arc::clone(profile);
            selection.editions.push(ApplicableEdition {
                profile,
                why: Why::Fallback,
                days,
                always: true,
                of_rule,
            });
        }
    }
    selection.notices.extend(unknown_words(terms, vessel));
    selection
}

/// Words for permits, gear and areas that neither the vocabulary nor any
/// profile knows: no rule can be found by them. Profiles on record may have
/// tags of their own.
fn unknown_words(terms: &Terms<'_>, vessel: &Vessel) -> Vec<Notice> {
    type Named = fn(&Binds) -> &[String];
    let vocabulary = terms.vocabulary;
    let lists: [(_, _, Named, _); 3] = [
        (&vessel.permits, &vocabulary.permits, |b| &b.permits, VesselFact::Permits),
        (&vessel.gears, &vocabulary.gears, |b| &b.gears, VesselFact::Gear),
        (&vessel.areas, &vocabulary.areas, |b| &b.areas, VesselFact::Areas),
    ];
    let mut notices = Vec::new();
    for (written, known, named, what) in lists {
        let in_a_profile =
            |word: &String| terms.profiles.iter().any(|p| named(&p.binds).contains(word));
        let words: Vec<String> = written
            .iter()
            .flatten()
            .filter(|word| !known.contains_key(*word) && !in_a_profile(word))
            .cloned()
            .collect();
        if !words.is_empty() {
            notices.push(Notice::UnknownWords { what, words });
        }
    }
    notices
}

fn asked<'a>(terms: &Terms<'a>, vessel: &Vessel, days: DaySpan) -> Applicable<'a> {
    let (mut editions, mut notices) = (Vec::new(), Vec::new());
    for profile in terms.asked {
        // Several editions of one rule are asked for together: each judges
        // its own days.
        let of_rule: Vec<_> = terms.asked.iter().filter(|p| p.rule == profile.rule).collect();
        if of_rule.len() > 1 {
            let first = of_rule.first().is_some_and(|edition| edition.id == profile.id);
            if let Some(day) = first_gap(&of_rule, days).filter(|_| first) {
                notices.push(Notice::NoEdition { rule: profile.rule.clone(), day });
            }
            if profile.in_force.meets(days) {
                let days = overlap(profile.in_force, days);
                let profile = Arc::clone(profile);
                editions.push(ApplicableEdition {
                    profile,
                    why: Why::Asked,
                    days,
                    always: false,
                    of_rule,
                });
            }
            continue;
        }
        let inside = |day: Option<Day>| day.is_none_or(|day| profile.in_force.holds(day));
        if !inside(days.from) || !inside(days.until) {
            notices.push(Notice::NotInForce { profile: profile.id.clone() });
        }
        // By a word that nobody knows it may bind all the same.
        let binds_not = || binds(terms, profile, vessel, days) == Ok(false);
        if !profile.fallback && binds_not() && unknown_words(terms, vessel).is_empty() {
            notices.push(Notice::DoesNotBind { profile: profile.id.clone() });
        }
        let of_rule = vec![profile];
        let profile = Arc::clone(profile);
        editions.push(ApplicableEdition { profile, why: Why::Asked, days, always: true, of_rule });
    }
    Applicable { editions, notices }
}

fn binding<'a>(terms: &Terms<'a>, vessel: &Vessel, days: DaySpan) -> Applicable<'a> {
    let (mut editions, mut notices) = (Vec::new(), Vec::new());
    let mut rules: Vec<&str> = Vec::new();
    for profile in terms.profiles.iter().filter(|p| !p.base && !p.fallback) {
        if !rules.contains(&profile.rule.as_str()) {
            rules.push(&profile.rule);
        }
    }
    for rule in rules {
        let of_rule: Vec<_> = terms.profiles.iter().filter(|p| !p.base && p.rule == rule).collect();
        let mut unnamed = None;
        let concerned: Vec<_> = of_rule
            .iter()
            .filter_map(|profile| {
                let why = match binds(terms, profile, vessel, days) {
                    Ok(true) => Why::Binds,
                    Ok(false) => return None,
                    Err(fact) if names(&profile.binds, vessel, terms.vocabulary) => {
                        Why::MayBind(fact)
                    }
                    Err(fact) => {
                        // Nothing that the vessel states points to it: said,
                        // not judged.
                        unnamed = unnamed.take().or(Some(fact));
                        return None;
                    }
                };
                Some((*profile, why))
            })
            .collect();
        if concerned.is_empty() {
            let rule = rule.to_owned();
            notices.extend(unnamed.map(|fact| Notice::MayBind { rule, fact }));
            continue;
        }
        if let Some(day) = first_gap(&of_rule, days) {
            notices.push(Notice::NoEdition { rule: rule.to_owned(), day });
        }
        for (profile, why) in concerned {
            if profile.in_force.meets(days) {
                let days = overlap(profile.in_force, days);
                let profile = Arc::clone(profile);
                let of_rule = of_rule.clone();
                editions.push(ApplicableEdition { profile, why, days, always: false, of_rule });
            }
        }
    }
    Applicable { editions, notices }
}

/// Whether the profile binds the vessel on any day of the trip at any
/// freeboard that it has, or may have.
fn binds(terms: &Terms<'_>, profile: &Profile, vessel: &Vessel, days: DaySpan) -> Known {
    let first = days.from.unwrap_or(terms.departure);
    let point = Point::of(terms.vocabulary, profile, vessel, terms.departure, false);
    if profile.binds.when.is_empty() {
        // Nothing in it depends on a day or a freeboard.
        return Point { day: first, ..point }.profile_binds();
    }
    let last = days.until.unwrap_or(first);
    let days = breakpoints::days_of(vessel, profile, first, last);
    let freeboards = freeboards(vessel, profile);
    let at = |day: Day| freeboards.iter().map(move |f| (*f, day));
    any(days
        .into_iter()
        .flat_map(at)
        .map(|(freeboard, day)| Point { freeboard, day, ..point }.profile_binds()))
}

/// Every freeboard at which it can matter whether a profile binds.
fn freeboards(vessel: &Vessel, profile: &Profile) -> Vec<Result<Length, Missing>> {
    let Some(stations) = vessel.freeboard.taken_from(profile.freeboard_from) else {
        return vec![Err(Missing::OtherPlace)];
    };
    if stations.is_empty() || stations.iter().any(|station| station.readings.is_empty()) {
        return vec![Err(Missing::NotMeasured)];
    }
    let mut freeboards = Vec::new();
    for reading in stations.into_iter().flat_map(|station| &station.readings) {
        let error = reading.error.as_ref().and_then(|e| e.length()).unwrap_or(Length::ZERO);
        let (low, high) = (reading.lowest().less(error), reading.highest().plus(error));
        let thresholds = breakpoints::thresholds(profile).into_iter();
        freeboards.extend([Ok(low), Ok(high)]);
        freeboards.extend(thresholds.filter(|length| (low..=high).contains(length)).map(Ok));
    }
    freeboards
}

fn overlap(a: DaySpan, b: DaySpan) -> DaySpan {
    DaySpan {
        from: a.from.max(b.from),
        until: match (a.until, b.until) {
            (Some(a), Some(b)) => Some(a.min(b)),
            (a, b) => a.or(b),
        },
    }
}

/// The first day of the trip for which no edition is known.
fn first_gap(editions: &[&Arc<Profile>], days: DaySpan) -> Option<Day> {
    let (mut day, last) = (days.from?, days.until?);
    while day <= last {
        match editions.iter().find(|edition| edition.in_force.holds(day)) {
            None => return Some(day),
            Some(edition) => day = edition.in_force.until?.next(),
        }
    }
    None
}

/// Whether the profile names any tag that the vessel states, or that a word
/// of it may be.
fn names(binds: &Binds, vessel: &Vessel, words: &Vocabulary) -> bool {
    let touches = |wanted: &[String], has: &Option<Vec<String>>, known: &Tags| {
        let is_wanted = |tag: &str| wanted.iter().any(|one| one == tag);
        has.iter().flatten().any(|tag| match known.contains_key(tag) {
            true => known.means(tag, &is_wanted) != Some(false),
            false => is_wanted(tag),
        })
    };
    touches(&binds.permits, &vessel.permits, &words.permits)
        || touches(&binds.gears, &vessel.gears, &words.gears)
        || touches(&binds.areas, &vessel.areas, &words.areas)
}
