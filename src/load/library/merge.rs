//! Profiles built on another: the other's requirements as they are written,
//! with some dropped, some changed key by key, and own ones added.

use crate::load::check::profile::Merged;
use crate::load::check::requirement::Drafted;
use crate::load::form::loose::{DROPPED, Loose, Single, Slot, Words};
use crate::load::form::open::{Group, Line, With};
use crate::load::form::profile::{ProfileFile, RequirementForm};
use crate::load::read::fault::Fault;
use crate::load::read::parse::{is_pruned, parse, place};
use crate::load::read::problem::{Problem, Problems, Refusal};
use crate::load::read::spot::{Origin, Positions, Source, Spot, filled};
use std::collections::BTreeMap;
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
    pruned: Vec<String>,
}

impl Draft {
    /// The id as written; empty if there is none.
    pub(crate) fn id(&self) -> &str {
        filled(&self.file.id).unwrap_or("")
    }
}

/// Reads profiles as they are written; what is wrong with their shape is
/// kept, to be told with what the checks find.
pub(crate) fn drafts(sources: impl Iterator<Item = Source>) -> Result<Vec<Draft>, Refusal> {
    let mut drafts = Vec::new();
    let mut problems = Vec::new();
    let mut first: Option<Arc<str>> = None;
    for source in sources {
        let file = Arc::clone(&source.file);
        match draft(source) {
            Ok(draft) => drafts.push(draft),
            Err(refusal) => {
                problems.extend(refusal.problems);
                first.get_or_insert(file);
            }
        }
    }
    match first {
        Some(file) => Err(Refusal::new(&file, problems)),
        None => Ok(drafts),
    }
}

fn draft(source: Source) -> Result<Draft, Refusal> {
    let parsed = parse::<ProfileFile>(&source)?;
    let (file, problems, pruned) = (parsed.written, parsed.problems, parsed.pruned);
    Ok(Draft { source, file, problems, pruned })
}

/// The refusal of a set of profiles, every problem placed in its file.
pub(crate) fn refusal(problems: Problems, drafts: &[Draft]) -> Refusal {
    let mut known: BTreeMap<Arc<str>, Positions> = BTreeMap::new();
    // What a check misses in a part that was cut out was told with the cut.
    let is_told = |problem: &Problem| {
        problem.position.is_none()
            && drafts.iter().any(|draft| {
                draft.source.file == problem.place.file
                    && is_pruned(&problem.place.key, &draft.pruned)
            })
    };
    let placed: Vec<Problem> = problems
        .into_found()
        .into_iter()
        .filter(|(problem, _)| !is_told(problem))
        .map(|(problem, aim)| {
            let file = Arc::clone(&problem.place.file);
            let positions = known.entry(file).or_insert_with_key(|file| {
                let draft = drafts.iter().rev().find(|draft| draft.source.file == *file);
                draft.map(|draft| draft.source.positions()).unwrap_or_default()
            });
            place(problem, aim, positions)
        })
        .collect();
    let file = placed.first().map(|problem| Arc::clone(&problem.place.file)).unwrap_or_default();
    Refusal::new(&file, placed)
}

/// Merges the profile at `index` with the ones that it is built on.
pub(crate) fn merged<'d>(drafts: &'d [Draft], index: usize, problems: &Problems) -> Merged<'d> {
    let mut chain = vec![index];
    let mut at = index;
    while let Some(base) = filled(&drafts[at].file.built_on) {
        let top = Spot::top(&drafts[at].source.file, problems);
        let spot = top.key("built on");
        let Some(found) = drafts.iter().position(|draft| draft.id() == base) else {
            let ids = drafts.iter().map(Draft::id);
            spot.wrong(Fault::UnknownBase).unlike(base, ids).tell();
            break;
        };
        if chain.contains(&found) {
            spot.wrong(Fault::BasesInCircle).of(base).tell();
            break;
        }
        chain.push(found);
        at = found;
    }
    let mut requirements = Vec::new();
    for draft in chain.iter().rev().map(|index| &drafts[*index]) {
        lay_over(&mut requirements, draft, &Spot::top(&draft.source.file, problems));
    }
    let bases = chain[1..].iter().map(|base| &drafts[*base].file).collect();
    Merged { file: &drafts[index].file, bases, requirements }
}

/// Lays one file's drops, changes and own requirements over what it takes
/// over.
fn lay_over(requirements: &mut Vec<Drafted>, draft: &Draft, top: &Spot<'_>) {
    top.each("drop", draft.file.drop.iter().flatten(), |at, id| {
        requirements.remove(find(requirements, id, at)?);
        Some(())
    });
    top.each("change", draft.file.change.iter().flatten(), |at, change| {
        let id = at.must("id", filled(&change.id), Fault::NoChangedId)?;
        let found = find(requirements, id, &at.key("id"))?;
        apply(&mut requirements[found], change, at);
        Some(())
    });
    top.each("requirements", draft.file.requirements.iter().flatten(), |at, form| {
        let origin = Origin { place: at.place(), changed: Vec::new() };
        let drafted = Drafted { form: form.clone(), origin };
        let anchor = at.read("after", &form.after, |at, id| find(requirements, id, at));
        let Some(anchor) = anchor else {
            requirements.push(drafted);
            return Some(());
        };
        // Several that follow the same one keep their own order.
        let follows = |other: &&Drafted| {
            other.form.after == form.after && other.origin.place.file == draft.source.file
        };
        let behind = requirements[anchor + 1..].iter().take_while(follows).count();
        requirements.insert(anchor + 1 + behind, drafted);
        Some(())
    });
}

fn find(requirements: &[Drafted], id: &str, spot: &Spot<'_>) -> Option<usize> {
    requirements.iter().position(|drafted| drafted.id() == id.trim()).or_else(|| {
        let ids = requirements.iter().map(Drafted::id);
        spot.wrong(Fault::NothingToTakeOver).unlike(id, ids).none()
    })
}

/// Replaces each key that the change writes.
fn apply(drafted: &mut Drafted, change: &RequirementForm, spot: &Spot<'_>) {
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
    let words = |value: &Words| matches!(value, Words::One(text) if text == DROPPED);
    replace! {
        "formerly" => formerly, words;
        "held by" => held_by, words;
        "may share the tool of" => may_share, words;
        "met by the tool of" => met_by, |value: &Loose<_>| matches!(
            value,
            Loose::One(Single::Plain(text)) if text == DROPPED
        );
    }
    if change.after.is_some() {
        spot.key("after").wrong(Fault::ChangeMoves).tell();
    }
    match &change.with {
        Some(Slot::Dropped) => {
            form.with = None;
            note("with");
        }
        Some(Slot::Is(lines)) => change_lines(form, lines, origin, &spot.key("with")),
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
) {
    let mut group = match form.with.take() {
        Some(Slot::Is(group)) => group,
        _ => Group::default(),
    };
    for (key, line) in &lines.lines {
        let known = group.lines.iter().position(|(known, _)| known == key);
        match (known, line) {
            (Some(known), Line::Text(text)) if text.trim() == DROPPED => {
                group.lines.remove(known);
            }
            (None, Line::Text(text)) if text.trim() == DROPPED => {
                let known = group.lines.iter().map(|(key, _)| key.as_str());
                spot.wrong_key(key, Fault::NothingToDrop).unlike(key, known).tell();
                continue;
            }
            (Some(known), _) => group.lines[known].1 = line.clone(),
            (None, _) => group.lines.push((key.clone(), line.clone())),
        }
        origin.changed.push((format!("with.{key}"), spot.key(key).place()));
    }
    form.with = (!group.lines.is_empty()).then_some(Slot::Is(group));
}
