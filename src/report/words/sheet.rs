//! The words of the papers for the deck: what is asked, worked out for this
//! vessel.
//!
//! Imports `model` and `measure` only. A least is worked out at the highest
//! freeboard at which it is asked, a most at the lowest, and the text says so
//! where the vessel has more than one; whether a tool fits is never decided
//! here.

use super::Words;
use super::figures;
use crate::measure::{Day, Figure, Length, Rounding, System};
use crate::model::profile::{FreeboardFrom, Profile, Requirement, Standing};
use crate::model::reason::Demand;
use crate::model::rule::{Condition, Limit, Side, Spec};
use crate::model::vessel::{FreeboardReading, Station, Vessel};
use crate::model::vocabulary::{AttributeId, AttributeShape, Tag};
use crate::report::Locale;
use std::collections::BTreeMap;

/// How far above the highest listed freeboard a threshold may lie, for the
/// rows of what is asked above it: this program's own choice, no rule's.
pub(crate) const NEAR_ABOVE: Length = Length::from_nanometres(304_800_000).unwrap();

/// What stands over rows that serve only where the inspector measures more
/// than is listed.
pub(crate) fn near_above(asked: &str, locale: Locale) -> String {
    let near = figures::length(NEAR_ABOVE, System::Customary, locale, Rounding::Up);
    locale.sheet_near_above(&asked, &near)
}

/// That a tool was good no longer when the trip began.
pub(crate) fn ended(inspection: bool, last: Day, locale: Locale) -> String {
    match inspection {
        true => locale.sheet_inspection_ran_out(&last),
        false => locale.sheet_out_of_date(&last),
    }
}

/// The ends of the freeboards at which something is asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Ends {
    /// The lowest.
    pub(crate) low: Length,
    /// The highest.
    pub(crate) high: Length,
}

impl Words<'_> {
    /// The lowest and the highest freeboard of the vessel at which the
    /// requirement, or this alternative of it, may be asked; nothing where
    /// the freeboard is not known or was taken from the other place.
    pub(crate) fn ends(&self, requirement: &Requirement, spec: Option<&Spec>) -> Option<Ends> {
        if self.vessel.freeboard.from != self.profile.freeboard_from {
            return None;
        }
        let stations = &self.vessel.freeboard.stations;
        if stations.iter().any(|station| station.readings.is_empty()) {
            return None;
        }
        let whens = || {
            let of_spec = spec.into_iter().flat_map(|spec| &spec.when);
            self.profile.binds.when.iter().chain(&requirement.when).chain(of_spec)
        };
        let spans = stations.iter().flat_map(|station| &station.readings).map(span_of);
        spans
            .filter_map(|span| clip(span, whens()))
            .reduce(|a, b| Ends { low: a.low.min(b.low), high: a.high.max(b.high) })
    }

    /// A limit as it stands for this vessel, or in the rule's own words.
    pub(crate) fn asked(&self, limit: &Limit, ends: Option<Ends>) -> String {
        let own_words = || figures::open_limit(limit, self.locale);
        if matches!(limit, Limit::Any) {
            return self.locale.sheet_any().to_owned();
        }
        let Some(Ends { low, high }) = ends else {
            let fixed = self.worked_out(limit, None);
            return fixed.map_or_else(own_words, |demand| figures::demand(&demand, self.locale));
        };
        let (lowest, highest) =
            (self.worked_out(limit, Some(low)), self.worked_out(limit, Some(high)));
        let (Some(lowest), Some(highest)) = (lowest, highest) else { return own_words() };
        let text = |demand: &Demand| figures::demand(demand, self.locale);
        if lowest == highest {
            return text(&lowest);
        }
        match (lowest, highest) {
            (Demand::Between(_, most), Demand::Between(least, _)) => {
                self.locale.sheet_at_every_freeboard(&text(&Demand::Between(least, most)))
            }
            (Demand::Most(_) | Demand::Below(_), _) => {
                let lowest = self.worked_out(limit, Some(low)).map(|demand| text(&demand));
                self.locale.sheet_demand_at(&lowest.unwrap_or_default(), &self.freeboard(low))
            }
            (_, highest) => self.locale.sheet_demand_at(&text(&highest), &self.freeboard(high)),
        }
    }

    /// Above which freeboard a requirement is asked that is not asked at this
    /// one: `asked if the freeboard is more than 4 ft (1.219 m)`.
    pub(crate) fn asked_above(&self, requirement: &Requirement, listed: Length) -> String {
        let whens = requirement.when.iter().chain(&self.profile.binds.when);
        let mut thresholds = whens.filter_map(|condition| match condition {
            Condition::Freeboard { side, threshold, written } if *threshold >= listed => {
                let system = Length::parse(written).map_or(self.system(), |(_, system)| system);
                let at = figures::freeboard(*threshold, system, self.locale);
                match side {
                    Side::MoreThan => Some(self.locale.sheet_asked_above(&at)),
                    Side::AtLeast => Some(self.locale.sheet_asked_from(&at)),
                    Side::AtMost | Side::LessThan => None,
                }
            }
            _ => None,
        });
        let listed = || self.locale.sheet_asked_above(&self.freeboard(listed));
        thresholds.next().unwrap_or_else(listed)
    }

    /// Words of which one will do, as the vocabulary spells them.
    pub(crate) fn spelled(&self, attribute: AttributeId, allowed: &[String]) -> Vec<String> {
        let AttributeShape::Choice(known) = &self.vocabulary.attribute(attribute).shape else {
            return allowed.to_vec();
        };
        let spelled = allowed.iter().map(|word| {
            let own = known.iter().find(|own| own.to_lowercase() == word.to_lowercase());
            own.unwrap_or(word).clone()
        });
        spelled.collect()
    }

    /// Conditions of the vessel, as the end of a sentence: `where the
    /// freeboard is more than 4 ft`. Those on the freeboard are left out where
    /// the vessel has one freeboard only, since it is settled then.
    pub(crate) fn only_where(&self, conditions: &[Condition]) -> Option<String> {
        let several = self.has_several_freeboards() || self.vessel.freeboard.stations.is_empty();
        let told = conditions.iter().filter_map(|condition| match condition {
            Condition::Freeboard { .. } if !several => None,
            condition => Some(self.condition(condition)),
        });
        let told: Vec<_> = told.collect();
        (!told.is_empty()).then(|| figures::all_of(&told, self.locale))
    }

    fn condition(&self, condition: &Condition) -> String {
        let (words, locale) = (self.vocabulary, self.locale);
        let name =
            |known: Option<&String>, id: &str| known.cloned().unwrap_or_else(|| format!("`{id}`"));
        let named =
            |tags: &BTreeMap<String, Tag>, id: &str| name(tags.get(id).map(|tag| &tag.name), id);
        match condition {
            Condition::Freeboard { side: Side::AtMost, written, .. } => {
                locale.sheet_freeboard_at_most(written)
            }
            Condition::Freeboard { side: Side::AtLeast, written, .. } => {
                locale.sheet_freeboard_at_least(written)
            }
            Condition::Freeboard { side: Side::MoreThan, written, .. } => {
                locale.sheet_freeboard_above(written)
            }
            Condition::Freeboard { side: Side::LessThan, written, .. } => {
                locale.sheet_freeboard_below(written)
            }
            Condition::Feature { feature, wanted } => {
                let name =
                    name(words.vessel_features.get(feature).map(|known| &known.name), feature);
                if *wanted { locale.sheet_with(&name) } else { locale.sheet_without(&name) }
            }
            Condition::Aboard { kind, wanted: true } => locale.sheet_with_aboard(&self.kind(*kind)),
            Condition::Aboard { kind, wanted: false } => {
                locale.sheet_without_aboard(&self.kind(*kind))
            }
            Condition::Gear(id) => locale.sheet_with(&named(&words.gears, id)),
            Condition::Area(id) => locale.sheet_in_area(&named(&words.areas, id)),
            Condition::AreaOtherThan(id) => locale.sheet_outside_area(&named(&words.areas, id)),
            Condition::Permit(id) => locale.sheet_with(&named(&words.permits, id)),
            Condition::Months(first, last) => {
                let month = |number: u8| locale.sheet_month(u32::from(number));
                locale.sheet_months(&month(*first), &month(*last))
            }
            Condition::AnyOf(groups) => {
                let groups = groups.iter().map(|group| {
                    let all = group.iter().map(|condition| self.condition(condition));
                    figures::all_of(&all.collect::<Vec<_>>(), self.locale)
                });
                figures::any_of(&groups.collect::<Vec<_>>(), self.locale)
            }
        }
    }
}

/// A reading with its tape error on both sides.
fn span_of(reading: &FreeboardReading) -> Ends {
    let error = reading.error.as_ref().and_then(Figure::length).unwrap_or(Length::ZERO);
    Ends { low: reading.lowest().less(error), high: reading.highest().plus(error) }
}

/// The part of a span at which the conditions on the freeboard hold.
fn clip<'a>(span: Ends, conditions: impl Iterator<Item = &'a Condition>) -> Option<Ends> {
    let mut span = span;
    for condition in conditions {
        let Condition::Freeboard { side, threshold, .. } = condition else { continue };
        match side {
            Side::AtMost => span.high = span.high.min(*threshold),
            Side::LessThan => span.high = span.high.min(threshold.just_below()),
            Side::AtLeast => span.low = span.low.max(*threshold),
            Side::MoreThan => span.low = span.low.max(threshold.just_above()),
        }
    }
    (span.low <= span.high).then_some(span)
}

/// That nothing is asked of a thing, as far as this program knows.
pub(crate) fn not_asked(stubs: bool, locale: Locale) -> &'static str {
    if stubs { locale.sheet_not_encoded() } else { locale.sheet_not_asked() }
}

/// The freeboard of one station as it is listed.
pub(crate) fn listed_freeboard(station: &Station, locale: Locale) -> String {
    let figure = |figure: &Figure| figure.show_nearest(locale.units);
    let readings = station.readings.iter().map(|reading| match reading.low == reading.high {
        true => figure(&reading.high),
        false => locale.sheet_low_to_high(&figure(&reading.low), &figure(&reading.high)),
    });
    figures::any_of(&readings.collect::<Vec<_>>(), locale)
}

/// From where to the water the freeboard is to be measured on this sheet.
pub(crate) fn freeboard_box(from: FreeboardFrom, locale: Locale) -> &'static str {
    match from {
        FreeboardFrom::Rail => locale.sheet_freeboard_from_rail(),
        FreeboardFrom::Deck => locale.sheet_freeboard_from_deck(),
    }
}

/// A vessel in few words: name, register, port.
pub(crate) fn vessel_line(vessel: &Vessel) -> String {
    let more = [vessel.register.as_deref(), vessel.port.as_deref()].into_iter().flatten();
    std::iter::once(vessel.name.as_str()).chain(more).collect::<Vec<_>>().join(", ")
}

/// A profile with its edition, as a paper names it.
pub(crate) fn edition(profile: &Profile, locale: Locale) -> String {
    let Profile { title, source, edition, .. } = profile;
    match profile.standing {
        Standing::Rule => locale.sheet_edition(title, source, edition),
        Standing::GoodPractice => locale.sheet_edition_of_practice(title, source, edition),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::sample;

    #[test]
    fn a_span_is_clipped_to_where_the_requirement_binds() {
        let feet = |text: &str| sample::length(text);
        let four = || Condition::Freeboard {
            side: Side::MoreThan,
            threshold: feet("4 ft"),
            written: "4 ft".into(),
        };
        let span = Ends { low: feet("3 ft 10 in"), high: feet("4 ft 2 in") };
        let clipped = clip(span, std::iter::once(&four())).unwrap();
        assert_eq!(clipped, Ends { low: feet("4 ft").just_above(), high: feet("4 ft 2 in") });
        let below = Ends { low: feet("3 ft"), high: feet("4 ft") };
        assert_eq!(clip(below, std::iter::once(&four())), None);
    }
}
