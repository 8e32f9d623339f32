//! Profiles as they are written: read from their texts before any is checked
//! against the others, and the refusal of a set of them.
//!
//! Judges nothing; the checks work on what is read here.

use crate::load::form::profile::ProfileFile;
use crate::load::library::merge::Draft;
use crate::load::read::parse::{is_pruned, parse_quickly, parse_slowly, place, positions_of};
use crate::load::read::problem::{Problem, Problems, Refusal, Told};
use crate::load::read::source::{Positions, Source};
use std::collections::BTreeMap;
use std::sync::Arc;

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
    if let Some(file) = parse_quickly::<ProfileFile>(&source) {
        return Ok(Draft { source, file, problems: Vec::new(), pruned: Vec::new() });
    }
    let parsed = parse_slowly::<ProfileFile>(&source)?;
    let (file, problems, pruned) = (parsed.written, parsed.problems, parsed.pruned);
    Ok(Draft { source, file, problems, pruned })
}

/// The refusal of a set of profiles, every problem placed in its file.
pub(crate) fn refusal(problems: Problems, drafts: &[Draft]) -> Refusal {
    let mut known: BTreeMap<Arc<str>, Told<Positions>> = BTreeMap::new();
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
                draft.map_or_else(|| Ok(Positions::default()), |draft| positions_of(&draft.source))
            });
            // What the quick parser lets pass may still be no good YAML; then
            // that is what is wrong.
            match positions {
                Ok(positions) => place(problem, aim, positions),
                Err(wrong) => (**wrong).clone(),
            }
        })
        .collect();
    let file = placed.first().map(|problem| Arc::clone(&problem.place.file)).unwrap_or_default();
    Refusal::new(&file, placed)
}
