//! Profiles built on another: the other's requirements as they are written,
//! with some dropped, some changed key by key, and own ones added.

use crate::load::check::value::filled;
use crate::load::form::group::{Group, Line, With};
use crate::load::form::loose::{DROPPED, Single, Slot};
use crate::load::form::profile::{ProfileFile, RequirementForm};
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::source::Source;
use crate::load::read::spot::{Origin, Spot};
use crate::load::read::suggest::{did_you_mean, nearest};
use crate::model::place::Place;
use std::sync::Arc;

/// A profile file that was read, not yet checked.
#[derive(Debug, Clone)]
pub(crate) struct Draft {
    /// Its text.
    pub(crate) source: Source,
    /// What is written in it, without the parts that were wrong.
    pub(crate) file: ProfileFile,
    /// What was wrong with its shape.
    pub(crate) problems: Vec<Problem>,
    /// The key paths that were cut out.
    pub(crate) pruned: Vec<String>,
}

impl Draft {
    /// The id as written; empty if there is none.
    pub(crate) fn id(&self) -> &str {
        filled(self.file.id.as_deref()).unwrap_or("")
    }
}

/// A requirement as it is written, all changes made.
#[derive(Debug, Clone)]
pub(crate) struct Drafted {
    /// What is written.
    pub(crate) form: RequirementForm,
    /// Where.
    pub(crate) origin: Origin,
}

impl Drafted {
    /// The id as written; empty if there is none.
    pub(crate) fn id(&self) -> &str {
        filled(self.form.id.as_deref()).unwrap_or("")
    }
}

/// A profile with everything that it takes over from others.
pub(crate) struct Merged {
    /// The requirements, in order.
    pub(crate) requirements: Vec<Drafted>,
    /// The files of the profiles that it is built on, nearest first.
    pub(crate) bases: Vec<usize>,
}

/// Merges the profile at `index` with the ones that it is built on.
pub(crate) fn merged(drafts: &[Draft], index: usize, problems: &mut Problems) -> Merged {
    let mut bases = vec![];
    let mut chain = vec![index];
    let mut at = index;
    while let Some(base) = filled(drafts[at].file.built_on.as_deref()) {
        let file = &drafts[at].source.file;
        let place = Place::new(file, "built on");
        let Some(found) = drafts.iter().position(|draft| draft.id() == base) else {
            let ids = drafts.iter().map(Draft::id);
            problems.add(
                Problem::new(place, "no profile of this id is known")
                    .offending(base)
                    .mend_if(did_you_mean(nearest(base, ids))),
            );
            break;
        };
        if chain.contains(&found) {
            problems.add(
                Problem::new(place, "profiles are built on each other in a circle").offending(base),
            );
            break;
        }
        chain.push(found);
        bases.push(found);
        at = found;
    }
    let mut requirements = Vec::new();
    for draft in chain.iter().rev().map(|index| &drafts[*index]) {
        lay_over(&mut requirements, draft, problems);
    }
    Merged { requirements, bases }
}

/// Lays one file's drops, changes and own requirements over what it takes
/// over.
fn lay_over(requirements: &mut Vec<Drafted>, draft: &Draft, problems: &mut Problems) {
    let top = Spot::top(&draft.source.file);
    let (drops, changes) = (top.key("drop"), top.key("change"));
    for (index, id) in draft.file.drop.iter().flatten().enumerate() {
        match find(requirements, id, &drops.entry(index), problems) {
            Some(found) => drop(requirements.remove(found)),
            None => continue,
        }
    }
    for (index, change) in draft.file.change.iter().flatten().enumerate() {
        let spot = changes.entry(index);
        let Some(id) = filled(change.id.as_deref()) else {
            crate::load::check::value::missing(
                &spot,
                "id",
                problems,
                "name the requirement that changes",
            );
            continue;
        };
        if let Some(found) = find(requirements, id, &spot.key("id"), problems) {
            apply(&mut requirements[found], change, &spot, problems);
        }
    }
    add_own(requirements, draft, problems);
}

fn add_own(requirements: &mut Vec<Drafted>, draft: &Draft, problems: &mut Problems) {
    let file = &draft.source.file;
    let top = Spot::top(file);
    let own = top.key("requirements");
    for (index, form) in draft.file.requirements.iter().flatten().enumerate() {
        let spot = own.entry(index);
        let place = spot.place();
        let drafted = Drafted { form: form.clone(), origin: Origin { place, changed: Vec::new() } };
        let anchor = filled(form.after.as_deref())
            .and_then(|id| find(requirements, id, &spot.key("after"), problems));
        match anchor {
            Some(anchor) => {
                let mut at = anchor + 1;
                // Several that follow the same one keep their own order.
                while requirements.get(at).is_some_and(|other| follows(other, form, file)) {
                    at += 1;
                }
                requirements.insert(at, drafted);
            }
            None => requirements.push(drafted),
        }
    }
}

fn follows(other: &Drafted, form: &RequirementForm, file: &Arc<str>) -> bool {
    other.form.after == form.after && other.origin.place.file == *file
}

fn find(
    requirements: &[Drafted],
    id: &str,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<usize> {
    let found = requirements.iter().position(|drafted| drafted.id() == id.trim());
    if found.is_none() {
        let ids = requirements.iter().map(Drafted::id);
        problems.add(
            Problem::new(spot.place(), "there is no requirement of this id to take over")
                .offending(id)
                .mend_if(did_you_mean(nearest(id, ids))),
        );
    }
    found
}

/// Replaces each key that the change writes.
fn apply(
    drafted: &mut Drafted,
    change: &RequirementForm,
    spot: &Spot<'_>,
    problems: &mut Problems,
) {
    let Drafted { form, origin } = drafted;
    let mut note = |key: &str| {
        origin.changed.retain(|(known, _)| known != key && !known.starts_with(&format!("{key}.")));
        origin.changed.push((key.to_owned(), spot.key(key).place()));
    };
    macro_rules! replace {
        ($($key:literal => $field:ident, $dropped:expr;)*) => {
            $(if let Some(value) = &change.$field {
                form.$field = if $dropped(value) { None } else { Some(value.clone()) };
                note($key);
            })*
        };
    }
    let text = |value: &String| value.trim() == DROPPED;
    let never = |_: &_| false;
    replace! {
        "title" => title, never;
        "level" => level, text;
        "clause" => clause, text;
        "verified" => verified, text;
        "note" => note, |value: &Single<_>| matches!(value, Single::Plain(text) if text == DROPPED);
        "from" => from, text;
        "until" => until, text;
        "when" => when, is_dropped;
        "unless" => unless, is_dropped;
        "inspection due" => inspection_due, text;
        "carry" => carry, text;
        "one of" => one_of, is_dropped;
        "types" => types, is_dropped;
        "spare for" => spare_for, text;
        "certificate" => certificate, text;
        "valid" => valid, text;
        "every" => every, text;
    }
    let words = |value: &crate::load::form::loose::Words| matches!(value, crate::load::form::loose::Words::One(text) if text == DROPPED);
    replace! {
        "formerly" => formerly, words;
        "held by" => held_by, words;
        "may share the tool of" => may_share, words;
        "met by the tool of" => met_by, |value: &crate::load::form::loose::Loose<_>| matches!(
            value,
            crate::load::form::loose::Loose::One(Single::Plain(text)) if text == DROPPED
        );
    }
    if change.after.is_some() {
        let place = spot.key("after").place();
        problems.add(Problem::new(place, "a change cannot move a requirement"));
    }
    match &change.with {
        Some(Slot::Dropped) => {
            form.with = None;
            note("with");
        }
        Some(Slot::Is(lines)) => change_lines(form, lines, origin, spot, problems),
        None => {}
    }
}

fn is_dropped<T>(slot: &Slot<T>) -> bool {
    matches!(slot, Slot::Dropped)
}

/// Changes the lines under `with:` one by one.
fn change_lines(
    form: &mut RequirementForm,
    lines: &Group<With>,
    origin: &mut Origin,
    spot: &Spot<'_>,
    problems: &mut Problems,
) {
    let mut group = match form.with.take() {
        Some(Slot::Is(group)) => group,
        _ => Group::default(),
    };
    let with = spot.key("with");
    for (key, line) in &lines.lines {
        let place = with.key(key).place();
        let known = group.lines.iter().position(|(known, _)| known == key);
        match (known, line) {
            (Some(known), Line::Text(text)) if text.trim() == DROPPED => {
                group.lines.remove(known);
            }
            (None, Line::Text(text)) if text.trim() == DROPPED => {
                problems.add_at_key(
                    Problem::new(place, "there is no such line to drop").offending(key).mend_if(
                        did_you_mean(nearest(key, group.lines.iter().map(|(key, _)| key.as_str()))),
                    ),
                );
                continue;
            }
            (Some(known), _) => group.lines[known].1 = line.clone(),
            (None, _) => group.lines.push((key.clone(), line.clone())),
        }
        origin.changed.push((format!("with.{key}"), place));
    }
    form.with = (!group.lines.is_empty()).then_some(Slot::Is(group));
}
