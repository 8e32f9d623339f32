//! Facts of the vessel that are missing, and how to find them out.
//!
//! Imports `model` only.

use super::{Words, figures, taken_from};
use crate::model::reason::VesselFact;

impl Words<'_> {
    /// That the fact is not known.
    pub(crate) fn unknown(&self, fact: &VesselFact) -> String {
        let (say, vessel) = (self.locale, self.vessel);
        if let Some((word, others)) = self.too_wide(fact) {
            return say.unknown_which(&word, &others);
        }
        let text = match fact {
            VesselFact::Freeboard => say.unknown_freeboard(),
            VesselFact::FreeboardFrom => {
                let asked = taken_from(self.profile.freeboard_from, say);
                let taken = taken_from(vessel.freeboard.from, say);
                return say.unknown_freeboard_taken_from(&taken, &asked);
            }
            VesselFact::FreeboardDisputed => say.unknown_freeboard_disputed(),
            VesselFact::Permits if vessel.permits.is_none() => say.unknown_permits(),
            VesselFact::Permits => say.unknown_permit_name(),
            VesselFact::Gear if vessel.gears.is_none() => say.unknown_gear(),
            VesselFact::Gear => say.unknown_gear_name(),
            VesselFact::Areas if vessel.areas.is_none() => say.unknown_areas(),
            VesselFact::Areas => say.unknown_area_name(),
            VesselFact::Feature(id) => return say.unknown_feature(&self.feature(id)),
            VesselFact::Hooks => say.unknown_hooks(),
            VesselFact::Lines => say.unknown_lines(),
            VesselFact::People if vessel.people.is_none() => say.unknown_people(),
            VesselFact::People => self.role_or(say.unknown_role(), say.unknown_people()),
            VesselFact::Aboard(kind) => return say.unknown_aboard(&self.kind(*kind)),
        };
        text.to_owned()
    }

    /// What to do to find it out, in the imperative. What is written already
    /// is by a name that nobody knows.
    pub(crate) fn find_out(&self, fact: &VesselFact) -> String {
        let (say, vessel) = (self.locale, self.vessel);
        if let Some((word, others)) = self.too_wide(fact) {
            return say.find_which(&word, &others);
        }
        let place = taken_from(self.profile.freeboard_from, say);
        let text = match fact {
            VesselFact::Freeboard | VesselFact::FreeboardFrom => return say.find_freeboard(&place),
            VesselFact::FreeboardDisputed => return say.find_freeboard_again(&place),
            VesselFact::Permits if vessel.permits.is_none() => say.find_permits(),
            VesselFact::Permits => say.find_permit_name(),
            VesselFact::Gear if vessel.gears.is_none() => say.find_gear(),
            VesselFact::Gear => say.find_gear_name(),
            VesselFact::Areas if vessel.areas.is_none() => say.find_areas(),
            VesselFact::Areas => say.find_area_name(),
            VesselFact::Feature(id) => return say.find_feature(&self.feature(id)),
            VesselFact::Hooks => say.find_hooks(),
            VesselFact::Lines => say.find_lines(),
            VesselFact::People => self.role_or(say.find_role(), say.find_people()),
            VesselFact::Aboard(kind) => return say.find_aboard(&self.kind(*kind)),
        };
        text.to_owned()
    }

    /// The first word of a list that may be several, with those, where every
    /// word of it is known.
    fn too_wide(&self, fact: &VesselFact) -> Option<(String, String)> {
        let (vessel, words) = (self.vessel, self.vocabulary);
        let (written, known) = match fact {
            VesselFact::Permits => (&vessel.permits, &words.permits),
            VesselFact::Gear => (&vessel.gears, &words.gears),
            VesselFact::Areas => (&vessel.areas, &words.areas),
            _ => return None,
        };
        let written = written.as_ref()?;
        let wide = |word: &&String| known.get(*word).is_some_and(|tag| !tag.may_be.is_empty());
        let word = written
            .iter()
            .find(wide)
            .filter(|_| written.iter().all(|word| known.contains_key(word)))?;
        let others: Vec<_> = known[word].may_be.iter().map(|one| format!("`{one}`")).collect();
        Some((word.clone(), figures::any_of(&others, self.locale)))
    }

    /// The one text where somebody aboard has a role that nobody knows.
    fn role_or<'t>(&self, role: &'t str, other: &'t str) -> &'t str {
        let roles = self.vessel.people.iter().flatten().flat_map(|person| &person.roles);
        let mut known = roles.map(|role| self.vocabulary.roles.contains_key(role));
        if known.any(|known| !known) { role } else { other }
    }

    fn feature(&self, id: &str) -> String {
        let known = self.vocabulary.vessel_features.get(id);
        known.map_or_else(|| format!("`{id}`"), |feature| feature.name.clone())
    }
}
