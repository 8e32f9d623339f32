//! From a profile as written, with what it is built on, to the profile that
//! is used.

use crate::load::check::condition::{LineReader, tag};
use crate::load::check::requirement::{Around, check_requirement, links, worded};
use crate::load::check::value::{choice, count, filled, flag, interval, missing, span};
use crate::load::check::vocabulary::check_id;
use crate::load::form::loose::Texts;
use crate::load::form::profile::FREEBOARD_FROM;
use crate::load::form::profile::MOST_REQUIREMENTS;
use crate::load::form::profile::STANDINGS;
use crate::load::form::profile::{BindsForm, ProfileFile};
use crate::load::library::merge::{Draft, Drafted, merged};
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::measure::DaySpan;
use crate::model::profile::{Binds, FreeboardFrom, Profile, Requirement, Standing};
use crate::model::rule::Need;
use crate::model::text::Text;
use crate::model::vocabulary::{KindId, Tag, Vocabulary};
use std::collections::BTreeMap;

/// Checks the draft at `index` against the vocabulary and the other drafts.
pub(crate) fn check_profile(
    drafts: &[Draft],
    index: usize,
    vocabulary: &Vocabulary,
    problems: &mut Problems,
) -> Option<Profile> {
    let draft = &drafts[index];
    let file = &draft.file;
    let top = Spot::top(&draft.source.file);
    let merged = merged(drafts, index, problems);
    let taken = |own: fn(&ProfileFile) -> Option<&str>| {
        let bases = merged.bases.iter().map(|base| &drafts[*base].file);
        std::iter::once(file).chain(bases).find_map(|file| filled(own(file)))
    };
    let mut desk = Desk { file, vocabulary, top: &top, problems };
    let language = taken(|file| file.language.as_deref()).unwrap_or("en").to_owned();
    let standing = desk.word(file.standing.as_deref(), "standing", &STANDINGS);
    let standing = standing.unwrap_or(Standing::Rule);
    let base = desk.yes(file.base.as_deref(), "base", false);
    let encoded = desk.yes(file.encoded.as_deref(), "encoded", true);
    let source = taken(|file| file.source.as_deref()).map(str::to_owned);
    if source.is_none() && standing == Standing::Rule {
        desk.missing("source", "write the publication that this profile encodes");
    }
    let id = desk.id();
    let rule = filled(file.rule.as_deref()).map(str::to_owned).or_else(|| base.then(|| id.clone()));
    if rule.is_none() {
        desk.missing("rule", "write the id of the rule of which this is an edition");
    }
    let edition = filled(file.edition.as_deref()).map(str::to_owned);
    if edition.is_none() && !base {
        desk.missing("edition", "write the law's edition, in words");
    }
    let title = file.title.as_ref();
    let title = title.and_then(|t| worded(t, &language, &top.key("title"), desk.problems));
    if title.is_none() {
        desk.missing("title", "write what the rule is called");
    }
    let binds = desk.binds();
    let deck = taken(|file| file.freeboard_from.as_deref());
    let due = taken(|file| file.inspection_due.as_deref());
    let shared = taken(|file| file.parts_may_be_shared.as_deref());
    let around = Around {
        vocabulary,
        ids: &merged.requirements.iter().map(|r| r.id().to_owned()).collect::<Vec<_>>(),
        inspection: due
            .filter(|due| *due != "none")
            .and_then(|due| interval(due, &top.key("inspection due"), desk.problems)),
        language: &language,
    };
    let profile = Profile {
        id,
        rule: rule.unwrap_or_default(),
        edition: edition.unwrap_or_default(),
        encoding: desk.encoding(),
        title: title.unwrap_or_default(),
        source: source.unwrap_or_default(),
        standing,
        in_force: desk.in_force(),
        encoded,
        base,
        fallback: desk.yes(file.fallback.as_deref(), "fallback", false),
        freeboard_from: desk
            .word(deck, "freeboard from", &FREEBOARD_FROM)
            .unwrap_or(FreeboardFrom::Rail),
        parts_shared: desk.yes(shared, "parts may be shared", false),
        notes: desk.notes(&language),
        requirements: requirements(&merged.requirements, &around, &top, desk.problems)?,
        language,
        place: top.place(),
        binds,
    };
    judge_whole(&profile, &top, desk.problems);
    Some(profile)
}

/// What the readers of single keys share.
struct Desk<'a> {
    file: &'a ProfileFile,
    vocabulary: &'a Vocabulary,
    top: &'a Spot<'a>,
    problems: &'a mut Problems,
}

impl Desk<'_> {
    fn missing(&mut self, key: &str, mend: &str) {
        missing(self.top, key, self.problems, mend);
    }

    fn word<T: Copy>(&mut self, text: Option<&str>, key: &str, words: &[(&str, T)]) -> Option<T> {
        choice(filled(text)?, words, &self.top.key(key), self.problems)
    }

    fn yes(&mut self, text: Option<&str>, key: &str, otherwise: bool) -> bool {
        filled(text)
            .and_then(|text| flag(text, &self.top.key(key), self.problems))
            .unwrap_or(otherwise)
    }

    fn id(&mut self) -> String {
        let Some(id) = filled(self.file.id.as_deref()) else {
            self.missing("id", "write the id of this edition, like `example-2024`");
            return String::new();
        };
        check_id(id, &self.top.key("id"), self.problems);
        id.to_owned()
    }

    fn encoding(&mut self) -> u32 {
        filled(self.file.encoding.as_deref())
            .and_then(|text| count(text, 1, 9999, &self.top.key("encoding"), self.problems))
            .unwrap_or(1)
    }

    fn in_force(&mut self) -> DaySpan {
        let Some(form) = &self.file.in_force else { return DaySpan::ALWAYS };
        let spot = self.top.key("in force");
        span(form.from.as_deref(), form.until.as_deref(), &spot, self.problems)
    }

    fn notes(&mut self, language: &str) -> Vec<Text> {
        let spot = self.top.key("notes");
        let notes = self.file.notes.iter().flatten().enumerate();
        notes
            .filter_map(|(i, note)| worded(note, language, &spot.entry(i), self.problems))
            .collect()
    }

    fn binds(&mut self) -> Binds {
        let Some(form) = &self.file.binds else { return Binds::default() };
        let spot = self.top.key("binds");
        let BindsForm { permits, gear, areas, when } = form;
        let when = when.as_ref().map(|group| {
            LineReader { vocabulary: self.vocabulary, problems: self.problems }
                .conditions(group, &spot.key("when"))
        });
        Binds {
            permits: self.tags(permits, &self.vocabulary.permits, &spot.key("permits")),
            gears: self.tags(gear, &self.vocabulary.gears, &spot.key("gear")),
            areas: self.tags(areas, &self.vocabulary.areas, &spot.key("areas")),
            when: when.unwrap_or_default(),
        }
    }

    fn tags(
        &mut self,
        written: &Option<Texts>,
        known: &BTreeMap<String, Tag>,
        spot: &Spot<'_>,
    ) -> Vec<String> {
        let written = written.iter().flatten().enumerate();
        written
            .filter_map(|(index, text)| tag(text, known, &spot.entry(index), self.problems))
            .collect()
    }
}

/// All the requirements, linked to each other. None where one could not be
/// read, since the indices of the others would be off.
fn requirements(
    drafted: &[Drafted],
    around: &Around<'_>,
    top: &Spot<'_>,
    problems: &mut Problems,
) -> Option<Vec<Requirement>> {
    if drafted.len() > MOST_REQUIREMENTS {
        problems.add(
            Problem::new(
                top.key("requirements").place(),
                format!("{} requirements are too many", drafted.len()),
            )
            .expected(format!("at most {MOST_REQUIREMENTS} in a profile")),
        );
        return None;
    }
    for (index, one) in drafted.iter().enumerate() {
        if !one.id().is_empty() && around.ids[..index].iter().any(|id| id == one.id()) {
            let spot = Spot::requirement(&one.origin);
            problems.add(
                Problem::new(spot.key("id").place(), "two requirements have this id")
                    .offending(one.id())
                    .mend("give one of them another id"),
            );
        }
    }
    let read: Vec<Option<Requirement>> =
        drafted.iter().map(|one| check_requirement(one, around, problems)).collect();
    let kinds: Vec<Vec<KindId>> =
        read.iter().map(|one| one.as_ref().map(Requirement::kinds).unwrap_or_default()).collect();
    let links: Vec<_> = drafted.iter().map(|one| links(one, around, &kinds, problems)).collect();
    let mut requirements = Vec::with_capacity(read.len());
    for (one, links) in read.into_iter().zip(links) {
        let mut one = one?;
        one.deemed = links.deemed;
        one.shares = links.shares;
        requirements.push(one);
    }
    for (index, one) in drafted.iter().enumerate() {
        judge_links(&requirements, index, one, problems);
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
fn judge_links(
    requirements: &[Requirement],
    index: usize,
    drafted: &Drafted,
    problems: &mut Problems,
) {
    let one = &requirements[index];
    let spot = Spot::requirement(&drafted.origin);
    let met_by = spot.key("met by the tool of");
    let mut add = |spot: &Spot<'_>, what: String| {
        problems.add(Problem::new(spot.place(), what).offending(&one.id));
    };
    if !one.deemed.is_empty() && !is_plain(one) {
        add(&met_by, "only a number of one kind or of alternatives can be met so".to_owned());
    }
    for deemed in &one.deemed {
        let other = &requirements[deemed.requirement];
        if !is_plain(other) {
            add(&met_by, format!("`{}` has no single tool that could serve", other.id));
        }
        if leads_to(requirements, deemed.requirement, index) {
            add(&met_by, format!("`{}` is met by this one in turn", other.id));
        }
    }
    for other in &one.shares {
        if *other == index || !requirements[*other].wants_tools() || !one.wants_tools() {
            let what = format!("no tool can be shared with `{}`", requirements[*other].id);
            add(&spot.key("may share the tool of"), what);
        }
    }
    if let Need::Tools { spare_for: Some(other), .. } = &one.need {
        let served = &requirements[*other];
        let spare = matches!(&served.need, Need::Tools { spare_for: Some(_), .. });
        if *other == index || spare || !served.wants_tools() {
            add(&spot.key("spare for"), format!("`{}` wants no tool", served.id));
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
fn judge_whole(profile: &Profile, top: &Spot<'_>, problems: &mut Problems) {
    let mut add = |key: &str, what: &str, mend: &str| {
        problems.add_at_key(Problem::new(top.key(key).place(), what).mend(mend));
    };
    match (profile.encoded, profile.requirements.is_empty()) {
        (true, true) => add(
            "requirements",
            "a profile without requirements",
            "list them, or write `encoded: no` if the rule is known but not encoded",
        ),
        (false, false) => add(
            "requirements",
            "requirements of a rule that is not encoded",
            "take them away, or take `encoded: no` away",
        ),
        _ => {}
    }
    if !profile.encoded && profile.binds.is_nobody() {
        add("binds", "a stub that binds nobody", "write whom the rule binds");
    }
    if profile.base && (!profile.binds.is_nobody() || profile.fallback) {
        add("base", "a list that others build on binds nobody", "take `base` or `binds` away");
    }
}
