//! From a profile as written, with what it is built on, to the profile that
//! is used.

use crate::load::check::condition::{conditions, tag};
use crate::load::check::requirement::{Around, Drafted, check_requirement, links, worded};
use crate::load::check::value::copied;
use crate::load::check::vocabulary::check_id;
use crate::load::form::loose::Texts;
use crate::load::form::profile::{
    BindsForm, FREEBOARD_FROM, MOST_REQUIREMENTS, ProfileFile, STANDINGS,
};
use crate::load::read::fault::Fault;
use crate::load::read::problem::Problems;
use crate::load::read::spot::{Spot, filled};
use crate::measure::DaySpan;
use crate::model::place::Place;
use crate::model::profile::{Binds, FreeboardFrom, Profile, Requirement, Standing};
use crate::model::rule::{Condition, Need, Spec};
use crate::model::vocabulary::{KindId, Tags, Vocabulary};
use std::sync::Arc;

/// A profile as written, with everything that it takes over from others.
pub(crate) struct Merged<'a> {
    /// Its own file.
    pub(crate) file: &'a ProfileFile,
    /// The files of the profiles that it is built on, nearest first.
    pub(crate) bases: Vec<&'a ProfileFile>,
    /// The requirements, in order.
    pub(crate) requirements: Vec<Drafted>,
}

impl Merged<'_> {
    /// What is written after a key, here or in the nearest base.
    fn taken(&self, own: fn(&ProfileFile) -> &Option<String>) -> Option<String> {
        let files = std::iter::once(&self.file).chain(&self.bases);
        files.map(|file| own(file)).find_map(copied)
    }
}

/// Checks a profile against the vocabulary.
pub(crate) fn check_profile(
    merged: &Merged<'_>,
    words: &Vocabulary,
    top: &Spot<'_>,
) -> Option<Profile> {
    let file = merged.file;
    let yes = |key: &str, text: &Option<String>| top.flag(key, text);
    let language = merged.taken(|file| &file.language).unwrap_or_else(|| "en".to_owned());
    let standing = top.word("standing", &file.standing, &STANDINGS).unwrap_or(Standing::Rule);
    let base = yes("base", &file.base).unwrap_or(false);
    let encoded = yes("encoded", &file.encoded).unwrap_or(true);
    let source = merged.taken(|file| &file.source);
    if source.is_none() && standing == Standing::Rule {
        top.missing("source", Fault::NoSource);
    }
    let id = top.must("id", filled(&file.id), Fault::NoProfileId).unwrap_or_default().to_owned();
    if !id.is_empty() {
        check_id(&id, &top.key("id"));
    }
    let rule = copied(&file.rule).or_else(|| base.then(|| id.clone()));
    let rule = top.must("rule", rule, Fault::NoRule);
    let edition = copied(&file.edition);
    if edition.is_none() && !base {
        top.missing("edition", Fault::NoEdition);
    }
    let title = file.title.as_ref().and_then(|text| worded(text, &language, &top.key("title")));
    let title = top.must("title", title, Fault::NoRuleTitle);
    let binds = file.binds.as_ref().map(|form| binds(form, words, &top.key("binds")));
    let due = merged.taken(|file| &file.inspection_due).filter(|due| due != "none");
    let around = Around {
        words,
        ids: &merged.requirements.iter().map(|one| one.id().to_owned()).collect::<Vec<_>>(),
        inspection: top.interval("inspection due", &due),
        language: &language,
    };
    let encoding = top.count("encoding", &file.encoding, 1, 9999).unwrap_or(1);
    let in_force = file.in_force.as_ref();
    let in_force = in_force.map(|form| top.key("in force").span(&form.from, &form.until));
    let fallback = yes("fallback", &file.fallback).unwrap_or(false);
    let deck = merged.taken(|file| &file.freeboard_from);
    let freeboard_from = top.word("freeboard from", &deck, &FREEBOARD_FROM);
    let shared = merged.taken(|file| &file.parts_may_be_shared);
    let parts_shared = yes("parts may be shared", &shared).unwrap_or(false);
    let notes = file.notes.iter().flatten();
    let notes = top.each("notes", notes, |at, note| worded(note, &language, at));
    let profile = Profile {
        requirements: requirements(&merged.requirements, &around, top)?,
        id,
        rule: rule.unwrap_or_default(),
        edition: edition.unwrap_or_default(),
        encoding,
        title: title.unwrap_or_default(),
        source: source.unwrap_or_default(),
        standing,
        in_force: in_force.unwrap_or(DaySpan::ALWAYS),
        encoded,
        base,
        fallback,
        freeboard_from: freeboard_from.unwrap_or(FreeboardFrom::Rail),
        parts_shared,
        notes,
        language,
        place: top.place(),
        binds: binds.unwrap_or_default(),
    };
    judge_whole(&profile, top);
    Some(profile)
}

fn binds(form: &BindsForm, words: &Vocabulary, spot: &Spot<'_>) -> Binds {
    let when = form.when.as_ref();
    let when = when.map(|group| conditions(group, words, &spot.key("when")));
    let tags = |key, written: &Option<Texts>, known: &Tags| {
        spot.each(key, written.iter().flatten(), |at, text| tag(text, known, at))
    };
    Binds {
        permits: tags("permits", &form.permits, &words.permits),
        gears: tags("gear", &form.gear, &words.gears),
        areas: tags("areas", &form.areas, &words.areas),
        when: when.unwrap_or_default(),
    }
}

/// All the requirements, linked to each other. None where one could not be
/// read, since the indices of the others would be off.
fn requirements(
    drafted: &[Drafted],
    around: &Around<'_>,
    top: &Spot<'_>,
) -> Option<Vec<Requirement>> {
    let problems = top.problems();
    if drafted.len() > MOST_REQUIREMENTS {
        let (requirements, most) = (drafted.len(), MOST_REQUIREMENTS);
        let fault = Fault::TooManyRequirements { requirements, most };
        return top.key("requirements").wrong(fault).none();
    }
    for (index, one) in drafted.iter().enumerate() {
        if !one.id().is_empty() && around.ids[..index].iter().any(|id| id == one.id()) {
            let spot = one.spot(problems);
            spot.key("id").wrong(Fault::RequirementTwin).of(one.id()).tell();
        }
    }
    let read: Vec<Option<Requirement>> =
        drafted.iter().map(|one| check_requirement(one, around, problems)).collect();
    let kinds: Vec<Vec<KindId>> =
        read.iter().map(|one| one.as_ref().map(Requirement::kinds).unwrap_or_default()).collect();
    let links: Vec<_> = drafted.iter().map(|one| links(one, around, &kinds, problems)).collect();
    let mut requirements = read.into_iter().collect::<Option<Vec<Requirement>>>()?;
    for (one, links) in requirements.iter_mut().zip(links) {
        (one.deemed, one.shares) = links;
    }
    for (index, one) in drafted.iter().enumerate() {
        judge_links(&requirements, index, &one.spot(problems));
    }
    Some(requirements)
}

/// Whether it carries a number of one kind or of alternatives.
fn is_plain(requirement: &Requirement) -> bool {
    match &requirement.need {
        Need::Tools { types, spare_for, .. } => {
            spare_for.is_none() && matches!(types.as_slice(), [one] if one.members.len() == 1)
        }
        Need::Certificates { .. } | Need::Gear { .. } => false,
    }
}

/// Judges whether the links of one requirement can mean anything.
fn judge_links(requirements: &[Requirement], index: usize, spot: &Spot<'_>) {
    let one = &requirements[index];
    let add = |key: &str, fault: Fault| spot.key(key).wrong(fault).of(&one.id).tell();
    let met_by = "met by the tool of";
    if !one.deemed.is_empty() && !is_plain(one) {
        add(met_by, Fault::MetOtherwise);
    }
    for deemed in &one.deemed {
        let other = &requirements[deemed.requirement];
        if !is_plain(other) {
            add(met_by, Fault::NoSingleTool(other.id.clone()));
        }
        if leads_to(requirements, deemed.requirement, index) {
            add(met_by, Fault::MetInTurn(other.id.clone()));
        }
    }
    for other in &one.shares {
        if *other == index || !requirements[*other].wants_tools() || !one.wants_tools() {
            let fault = Fault::NothingToShare(requirements[*other].id.clone());
            add("may share the tool of", fault);
        }
    }
    if let Need::Tools { spare_for: Some(other), .. } = &one.need {
        let served = &requirements[*other];
        let spare = matches!(&served.need, Need::Tools { spare_for: Some(_), .. });
        if *other == index || spare || !served.wants_tools() {
            add("spare for", Fault::WantsNoTool(served.id.clone()));
        }
    }
}

/// Whether the lines `met by the tool of` lead from one requirement to
/// another.
fn leads_to(requirements: &[Requirement], from: usize, to: usize) -> bool {
    let mut seen = vec![false; requirements.len()];
    let mut open = vec![from];
    while let Some(at) = open.pop() {
        if at == to {
            return true;
        }
        if !std::mem::replace(&mut seen[at], true) {
            open.extend(requirements[at].deemed.iter().map(|deemed| deemed.requirement));
        }
    }
    false
}

/// Judges the profile as a whole.
fn judge_whole(profile: &Profile, top: &Spot<'_>) {
    let add = |key: &str, fault: Fault| top.wrong_key(key, fault).tell();
    match (profile.encoded, profile.requirements.is_empty()) {
        (true, true) => add("requirements", Fault::NoRequirements),
        (false, false) => add("requirements", Fault::RequirementsNotEncoded),
        _ => {}
    }
    if !profile.encoded && profile.binds.is_nobody() {
        add("binds", Fault::StubBindsNobody);
    }
    if profile.base && (!profile.binds.is_nobody() || profile.fallback) {
        add("base", Fault::BaseBindsNobody);
    }
}

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

    /// A rule names what is meant: a word that may be several is none.
    fn tag(&self, tag: &str, known: &Tags, place: &Place) {
        let narrow = |id: &str| known.get(id).is_some_and(|tag| tag.may_be.is_empty());
        if narrow(tag) {
            return;
        }
        let wrong = self.problems.wrong(place.clone(), Fault::UnknownTag);
        wrong.none_of(tag, known.keys().map(String::as_str).filter(|id| narrow(id))).tell();
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
