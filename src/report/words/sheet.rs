//! The words of the papers for the deck: what is asked, worked out for this
//! vessel, and what stands over each part of a paper.
//!
//! Imports `model` and `measure` only. A least is worked out at the highest
//! freeboard at which it is asked, a most at the lowest, and the text says so
//! where the vessel has more than one; whether a tool fits is never decided
//! here.

use super::figures;
use super::{Words, taken_from};
use crate::measure::{Day, Figure, Length, Rounding, System};
use crate::model::profile::{FreeboardFrom, Profile, Requirement, Standing};
use crate::model::reason::Demand;
use crate::model::rule::{Condition, Limit, Side, Spec};
use crate::model::vessel::{FreeboardReading, Station, Vessel};
use crate::model::vocabulary::{AttributeId, AttributeShape};
use crate::report::Locale;

/// What the inspector is to know before the walk.
pub(crate) const HOW_TO: &str = "Walk the rows in order. Boxes: write what you measure, with its unit. \
    Squares: tick for yes, cross for no. Not looked at: leave empty. (a): how to measure, at the end. \
    *: by label or dated statement. To key it in: `kitmuster sheet --record-form`.";

/// That the figures stand and fall with the freeboard.
pub(crate) const WORKED_OUT: &str = "Reaches are worked out for the listed freeboard. If you measure \
    another, key it in and go by the check, not by this paper.";

/// That no figure could be worked out.
pub(crate) const NO_FREEBOARD: &str = "Measure the freeboard first: it is not known, so the \
    figures that hang on it stand in the rule's own words.";

/// How an empty record is filled in.
pub(crate) const RECORD: &str = "Key in what stands on the paper, row by row, each figure with its \
    unit; what stays empty adds nothing. What has no key here (hooks, certificates, a wheelhouse) goes \
    into the vessel's file. Then: kitmuster check VESSEL.yaml --inspection THIS.yaml";

/// What stands beside the day of an empty record. No day is filled in for
/// the inspector: which of two statements is the later one hangs on it.
pub(crate) const DAY_OF_THE_WALK: &str =
    "write the day of the walk, like 2026-12-01; without it the record is refused";

/// What an inspection record has no place for.
pub(crate) const IN_THE_FILE: &str = "a record has no place for it; it goes into the vessel's file";

/// How an empty inventory is filled in.
pub(crate) const FILL_IN: &str = "Write behind each colon. What you do not know stays empty: it \
    gives \"can't tell\", never \"ready\". A length has its unit: 6 ft 4 1/2 in, 1.83 m, 48 mm. \
    Delete what is not aboard; `kitmuster words` lists all kinds and keys. Then: kitmuster check \
    THIS.yaml";

/// When a list speaks for the whole kit.
pub(crate) const COVERS: &str = "write `whole kit` once everything aboard stands here";

/// In front of a type that is not needed where enough others are there.
pub(crate) const OR_INSTEAD: &str = "or instead, with the # taken away, ";

/// In front of an alternative.
pub(crate) const OR_THIS: &str = "or instead of it, with the # taken away:";

/// What settles what no tape and no eye can show.
pub(crate) const STATEMENTS: &str = "What no tape and no eye can show on deck is also settled by a \
    dated statement that the tool conforms to the clause (*); write it under the tool:";

/// What every tool of an empty inventory has.
pub(crate) const KIT: &str = "Each tool has the mark that is on it and on no other; its condition, \
    serviceable or broken; where it is stowed.";

/// What every document of an empty inventory has.
pub(crate) const DOCUMENTS: &str =
    "Each paper has a mark too; state: aboard, posted, copy or lost.";

/// That a ready vessel has nothing left to do.
pub(crate) const NOTHING_TO_DO: &str = "Nothing that the rules above ask for is left to do.";

/// That no step is known and the vessel is not ready all the same.
pub(crate) const NOT_SETTLED: &str =
    "No step is known here that settles it: go by the notes above, and ask the port office.";

/// What stands behind a finding that measured figures alone do not meet.
pub(crate) const STATED: &str = "stated, not measured";

/// How what is met came to be met.
pub(crate) fn met(laid_over: bool) -> &'static str {
    if laid_over {
        "As it is written in the list and in what is laid over it; nobody looked for this paper."
    } else {
        "As it is written in the list; nobody looked for this paper."
    }
}

/// What it means that something is called stated.
pub(crate) const MET_STATED: &str = "\"Stated, not measured\": with measured figures alone it is \
    not met; it rests on a figure that was stated or stands on a label.";

/// What is good to have and no part of a verdict.
pub(crate) const RECOMMENDED: &str = "Advice, no part of the verdict.";

/// How far above the highest listed freeboard a threshold may lie, for the
/// rows of what is asked above it: this program's own choice, no rule's.
pub(crate) const NEAR_ABOVE: Length = Length::from_nanometres(304_800_000).unwrap();

/// That the rows serve only where the inspector measures more than is listed.
pub(crate) fn near_above(locale: Locale) -> String {
    let near = figures::length(NEAR_ABOVE, System::Customary, locale, Rounding::Up);
    format!("for when you measure more than is listed; told within {near} of it, our own choice")
}

/// That measuring may turn out badly.
pub(crate) const TURNS_OUT_WELL: &str = "What is to be measured or looked up is taken to turn out \
    well; check again once it is written down.";

/// That nothing lapses at sea.
pub(crate) const NOTHING_LAPSES: &str = "Nothing on the list runs out before the return.";

/// That no change was found.
pub(crate) const NO_WAY: &str =
    "no set of changes was found that makes it ready: ask the port office";

/// What to look for by eye.
pub(crate) const BY_EYE: &str = "Tick what is in its place, whole and working; blades and points \
    covered; each pole drawn out and locked to try it.";

/// What stands over a rule that is not in this program.
pub(crate) const STUB: &str = "this rule binds or may bind, but what it asks is not in this \
    program: this paper cannot tell what to look for under it.";

/// That the whole was met for a part of the trip.
pub(crate) fn met_until(day: Day, back: Day) -> String {
    format!("met until {day}; the trip goes on to {back}")
}

/// That a tool was good no longer when the trip began.
pub(crate) fn ended(inspection: bool, last: Day) -> String {
    let what = if inspection { "its inspection ran out" } else { "it went out of date" };
    format!("{what} before the trip (good through {last})")
}

/// That a certificate ends before the return, or before the trip.
pub(crate) fn certificate_ends(name: &str, kind: &str, last: Day, early: bool) -> String {
    let when = if early { "ran out before the trip" } else { "runs out during the trip" };
    format!("the {kind} of {name} {when} (good through {last})")
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
            return "any".to_owned();
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
                format!("{} at every freeboard", text(&Demand::Between(least, most)))
            }
            (Demand::Most(_) | Demand::Below(_), _) => {
                let lowest = self.worked_out(limit, Some(low)).map(|demand| text(&demand));
                format!("{} (at {})", lowest.unwrap_or_default(), self.freeboard(low))
            }
            (_, highest) => format!("{} (at {})", text(&highest), self.freeboard(high)),
        }
    }

    /// Above which freeboard a requirement is asked that is not asked at this
    /// one: `asked if the freeboard is more than 4 ft (1.219 m)`.
    pub(crate) fn asked_above(&self, requirement: &Requirement, listed: Length) -> String {
        let whens = requirement.when.iter().chain(&self.profile.binds.when);
        let thresholds = whens.filter_map(|condition| match condition {
            Condition::Freeboard { side, threshold, written } if *threshold >= listed => {
                let system = Length::parse(written).map_or(self.system(), |(_, system)| system);
                let at = figures::freeboard(*threshold, system, self.locale);
                match side {
                    Side::MoreThan => Some(format!("more than {at}")),
                    Side::AtLeast => Some(format!("{at} or more")),
                    Side::AtMost | Side::LessThan => None,
                }
            }
            _ => None,
        });
        let threshold = thresholds.into_iter().next();
        let threshold =
            threshold.unwrap_or_else(|| format!("more than {}", self.freeboard(listed)));
        format!("asked if the freeboard is {threshold}")
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
        let named = |known: Option<&crate::model::vocabulary::Tag>, id: &str| {
            known.map_or_else(|| format!("`{id}`"), |tag| tag.name.clone())
        };
        let with = |wanted: &bool| if *wanted { "with" } else { "without" };
        let words = self.vocabulary;
        match condition {
            Condition::Freeboard { side, written, .. } => {
                format!("at a freeboard of {}", side_of(*side, written))
            }
            Condition::Feature { feature, wanted } => {
                let name = words.vessel_features.get(feature).cloned();
                format!("{} {}", with(wanted), name.unwrap_or_else(|| format!("`{feature}`")))
            }
            Condition::Aboard { kind, wanted } => {
                format!("{} a working {} aboard", with(wanted), self.kind(*kind))
            }
            Condition::Gear(id) => format!("with {}", named(words.gears.get(id), id)),
            Condition::Area(id) => format!("in the {}", named(words.areas.get(id), id)),
            Condition::AreaOtherThan(id) => {
                format!("outside the {}", named(words.areas.get(id), id))
            }
            Condition::Permit(id) => format!("with {}", named(words.permits.get(id), id)),
            Condition::Months(first, last) => {
                format!("from {} to {}", month(*first), month(*last))
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

/// Which side of a threshold.
fn side_of(side: Side, written: &str) -> String {
    match side {
        Side::AtMost => format!("{written} or less"),
        Side::MoreThan => format!("more than {written}"),
        Side::LessThan => format!("less than {written}"),
        Side::AtLeast => format!("{written} or more"),
    }
}

fn month(number: u8) -> &'static str {
    const MONTHS: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    MONTHS.get(usize::from(number).wrapping_sub(1)).copied().unwrap_or("another month")
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
pub(crate) fn not_asked(stubs: bool) -> &'static str {
    if stubs { "what is asked of it is not in this program" } else { "no rule here asks for it" }
}

/// The freeboard of one station as it is listed.
pub(crate) fn listed_freeboard(station: &Station, locale: Locale) -> String {
    let readings = station.readings.iter().map(|reading| {
        let figure = |figure: &Figure| figure.show_nearest(locale.units);
        if reading.low == reading.high {
            figure(&reading.high)
        } else {
            format!("{} to {}", figure(&reading.low), figure(&reading.high))
        }
    });
    readings.collect::<Vec<_>>().join(" or ")
}

/// From where to the water the freeboard is to be measured on this sheet.
pub(crate) fn freeboard_box(from: FreeboardFrom) -> String {
    format!(
        "freeboard from {} to the water, where gear is hauled",
        taken_from(from, Locale::default())
    )
}

/// A vessel in few words: name, register, port.
pub(crate) fn vessel_line(vessel: &Vessel) -> Vec<&str> {
    let more = [vessel.register.as_deref(), vessel.port.as_deref()];
    std::iter::once(vessel.name.as_str()).chain(more.into_iter().flatten()).collect()
}

/// A profile with its edition, as a paper names it.
pub(crate) fn edition(profile: &Profile) -> String {
    let practice = match profile.standing {
        Standing::GoodPractice => "; good practice, no rule",
        Standing::Rule => "",
    };
    format!("{}: {}, edition {}{practice}", profile.title, profile.source, profile.edition)
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
