//! Facts of the vessel that are missing, and how to find them out.
//!
//! Imports `model` only.

use super::{Words, taken_from};
use crate::model::reason::VesselFact;

impl Words<'_> {
    /// That the fact is not known.
    pub(crate) fn unknown(&self, fact: &VesselFact) -> String {
        match fact {
            VesselFact::Freeboard => "the freeboard was not measured".to_owned(),
            VesselFact::FreeboardFrom => format!(
                "the freeboard was taken from {}, the rule takes it from {}",
                taken_from(self.vessel.freeboard.from),
                taken_from(self.profile.freeboard_from)
            ),
            VesselFact::FreeboardDisputed => "the readings of the freeboard differ".to_owned(),
            VesselFact::Permits => match self.vessel.permits {
                None => "nobody said which permits the vessel holds".to_owned(),
                Some(_) => "one of the vessel's permits is not known here".to_owned(),
            },
            VesselFact::Gear => match self.vessel.gears {
                None => "nobody said which fishing gear is aboard".to_owned(),
                Some(_) => "one of the gears aboard is not known here".to_owned(),
            },
            VesselFact::Areas => match self.vessel.areas {
                None => "nobody said to which areas the trip goes".to_owned(),
                Some(_) => "one of the trip's areas is not known here".to_owned(),
            },
            VesselFact::Feature(id) => {
                format!("nobody said whether the vessel has {}", self.feature(id))
            }
            VesselFact::Hooks => {
                "the hooks aboard, or type or wire of one, are not known".to_owned()
            }
            VesselFact::Lines => {
                "the lines aboard, or the diameter of one, are not known".to_owned()
            }
            VesselFact::People => {
                "nobody said who is aboard, with what roles and certificates".to_owned()
            }
            VesselFact::Aboard(kind) => {
                format!("nobody can tell whether a working {} is aboard", self.kind(*kind))
            }
        }
    }

    /// What to do to find it out, in the imperative.
    pub(crate) fn find_out(&self, fact: &VesselFact) -> String {
        match fact {
            VesselFact::Freeboard | VesselFact::FreeboardFrom => format!(
                "measure the freeboard from {} to the water, where the gear is hauled",
                taken_from(self.profile.freeboard_from)
            ),
            VesselFact::FreeboardDisputed => format!(
                "measure the freeboard again from {} to the water, and strike out the wrong reading",
                taken_from(self.profile.freeboard_from)
            ),
            VesselFact::Permits => {
                written_down("the permits that the vessel holds", self.vessel.permits.as_ref())
            }
            VesselFact::Gear => {
                written_down("the fishing gear that is aboard", self.vessel.gears.as_ref())
            }
            VesselFact::Areas => written_down("the areas of the trip", self.vessel.areas.as_ref()),
            VesselFact::Feature(id) => {
                format!("write down whether the vessel has {}", self.feature(id))
            }
            VesselFact::Hooks => {
                "write down every kind of hook aboard, with type and wire of each".to_owned()
            }
            VesselFact::Lines => {
                "write down every kind of line aboard, with the diameter of each".to_owned()
            }
            VesselFact::People => {
                "write down who is aboard, with roles and certificates".to_owned()
            }
            VesselFact::Aboard(kind) => {
                format!("look whether a {} is aboard and works", self.kind(*kind))
            }
        }
    }

    fn feature(&self, id: &str) -> String {
        self.vocabulary.vessel_features.get(id).cloned().unwrap_or_else(|| format!("`{id}`"))
    }
}

/// What is written already is by a name that nobody knows.
fn written_down(what: &str, so_far: Option<&Vec<String>>) -> String {
    let by_name = if so_far.is_some() { " by a name that `kitmuster words` lists" } else { "" };
    format!("write down {what}{by_name}")
}
