//! Judges that profiles name no permit, gear or area that the vocabulary does
//! not know: no vessel could have it, so that the profile would bind nobody,
//! or the requirement never be asked, without a word.
//!
//! Imports `model` only.

use crate::load::read::problem::Problems;
use crate::load::read::suggest::{did_you_mean, nearest, or_list};
use crate::model::place::Place;
use crate::model::profile::{Profile, Requirement};
use crate::model::rule::{Condition, Need, Spec};
use crate::model::vocabulary::{Tag, Vocabulary};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Judges the tags of all these profiles.
pub(crate) fn judge_tags(profiles: &[Arc<Profile>], vocabulary: &Vocabulary, problems: &Problems) {
    let judge = Judge { vocabulary, problems };
    for profile in profiles {
        let place = profile.place.below("binds");
        for (key, tags, known) in [
            ("permits", &profile.binds.permits, &vocabulary.permits),
            ("gear", &profile.binds.gears, &vocabulary.gears),
            ("areas", &profile.binds.areas, &vocabulary.areas),
        ] {
            tags.iter().for_each(|tag| judge.tag(tag, known, &place.below(key)));
        }
        judge.conditions(&profile.binds.when, &place.below("when"));
        profile.requirements.iter().for_each(|requirement| judge.requirement(requirement));
    }
}

struct Judge<'a> {
    vocabulary: &'a Vocabulary,
    problems: &'a Problems,
}

impl Judge<'_> {
    fn requirement(&self, requirement: &Requirement) {
        let place = &requirement.place;
        self.conditions(&requirement.when, &place.below("when"));
        for group in &requirement.unless {
            self.conditions(group, &place.below("unless"));
        }
        for spec in specs(&requirement.need) {
            self.conditions(&spec.when, place);
        }
    }

    fn conditions(&self, conditions: &[Condition], place: &Place) {
        let words = self.vocabulary;
        for condition in conditions {
            match condition {
                Condition::Gear(tag) => self.tag(tag, &words.gears, place),
                Condition::Area(tag) | Condition::AreaOtherThan(tag) => {
                    self.tag(tag, &words.areas, place);
                }
                Condition::Permit(tag) => self.tag(tag, &words.permits, place),
                Condition::AnyOf(groups) => {
                    groups.iter().for_each(|group| self.conditions(group, place));
                }
                Condition::Freeboard { .. }
                | Condition::Feature { .. }
                | Condition::Aboard { .. }
                | Condition::Months(..) => {}
            }
        }
    }

    fn tag(&self, tag: &str, known: &BTreeMap<String, Tag>, place: &Place) {
        if known.contains_key(tag) {
            return;
        }
        let ids: Vec<&str> = known.keys().map(String::as_str).collect();
        let meant = did_you_mean(nearest(tag, ids.iter().copied()));
        let mend =
            "write one of these, or add it to a `vocabulary.yaml` given with `--requirements`";
        self.problems
            .wrong(place.clone(), "the vocabulary has no such tag")
            .of(tag)
            .expected(or_list(&ids))
            .mend(meant.unwrap_or_else(|| mend.to_owned()))
            .tell();
    }
}

fn specs(need: &Need) -> Vec<&Spec> {
    match need {
        Need::Tools { types, .. } => {
            let members = types.iter().flat_map(|of_type| &of_type.members);
            members.flat_map(|member| &member.choices).collect()
        }
        Need::Gear { choices, .. } => choices.iter().collect(),
        Need::Certificates { .. } => Vec::new(),
    }
}
