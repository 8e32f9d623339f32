//! From a text to the as-written type of its kind of file.
//!
//! There is one reader of YAML: the tree that knows where everything stands.
//! Where nothing is odd about it, it is read into the form at once; else it is
//! first compared with the form's schema, so that all is told.

use crate::load::read::fault::{Fault, FileKind, KINDS};
use crate::load::read::problem::{Aim, Position, Problem, Problems, Refusal, Told};
use crate::load::read::shape::judge_shape;
use crate::load::read::spot::{Positions, Source, Spot, push_entry, push_key};
use crate::load::read::tree::{Content, Node, Tree, read_tree};
use crate::model::place::Place;
use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde::Deserialize;
use std::sync::Arc;
use validator::{Validate, ValidationErrors, ValidationErrorsKind};

/// A file as it is written.
pub(crate) trait WrittenFile: for<'de> Deserialize<'de> + JsonSchema + Validate {
    /// Its kind.
    const KIND: FileKind;

    /// The `format` line as written.
    fn format(&self) -> &Option<String>;
}

/// What could be read of a file, and what was wrong so far.
pub(crate) struct Parsed<T> {
    /// The file as written, without the parts that were wrong.
    pub(crate) written: T,
    /// What was wrong.
    pub(crate) problems: Vec<Problem>,
    /// The key paths that were cut out.
    pub(crate) pruned: Vec<String>,
    /// Where everything stands; nothing where nothing was wrong.
    positions: Positions,
}

/// Reads a file and checks it.
///
/// # Errors
/// Everything that is wrong with it.
pub(crate) fn read<T: WrittenFile, M>(
    source: &Source,
    check: impl Fn(T, &Spot<'_>) -> Option<M>,
) -> Result<M, Refusal> {
    let tree = tree_of(source).map_err(|problem| refused(source, *problem))?;
    if let Some(written) = at_once::<T>(&tree) {
        let (problems, model) = checked(source, written, &check);
        if let (0, Some(model)) = (problems.count(), model) {
            return Ok(model);
        }
    }
    let parsed = part_by_part::<T>(source, tree)?;
    let (found, model) = checked(source, parsed.written, &check);
    let mut problems = parsed.problems;
    let placed = found
        .into_found()
        .into_iter()
        .filter(|(problem, aim)| !is_cut(problem, *aim, &parsed.pruned));
    problems.extend(placed.map(|(problem, aim)| place(problem, aim, &parsed.positions)));
    match model {
        Some(model) if problems.is_empty() => Ok(model),
        _ => {
            if problems.is_empty() {
                let whole = Place::new(&source.file, "");
                problems.push(Problem::new(whole, Fault::Unreadable(T::KIND)));
            }
            Err(Refusal::new(&source.file, problems))
        }
    }
}

/// Reads a file as it is written, with every problem of its shape.
///
/// # Errors
/// It is no YAML, or another kind of file.
pub(crate) fn parse<T: WrittenFile>(source: &Source) -> Result<Parsed<T>, Refusal> {
    let tree = tree_of(source).map_err(|problem| refused(source, *problem))?;
    match at_once(&tree) {
        Some(written) => {
            let (problems, pruned) = (Vec::new(), Vec::new());
            Ok(Parsed { written, problems, pruned, positions: Positions::default() })
        }
        None => part_by_part(source, tree),
    }
}

fn refused(source: &Source, problem: Problem) -> Refusal {
    Refusal::new(&source.file, vec![problem])
}

fn checked<T: WrittenFile, M>(
    source: &Source,
    written: T,
    check: impl Fn(T, &Spot<'_>) -> Option<M>,
) -> (Problems, Option<M>) {
    let problems = Problems::default();
    judge_bounds(&written, &source.file, &problems);
    let model = check(written, &Spot::top(&source.file, &problems));
    (problems, model)
}

/// Reads a tree that has nothing odd in it; none if it has.
fn at_once<T: WrittenFile>(tree: &Tree<'_>) -> Option<T> {
    let written = (!tree.is_odd).then(|| T::deserialize(&tree.root).ok()).flatten()?;
    (written.format().as_deref().map(str::trim) == Some(T::KIND.format())).then_some(written)
}

/// Reads a tree with every problem of its shape.
fn part_by_part<T: WrittenFile>(source: &Source, tree: Tree<'_>) -> Result<Parsed<T>, Refusal> {
    let mut root = tree.root;
    let positions = Positions::of(&root);
    let missing = judge_format(&root, T::KIND, source).map_err(|fatal| refused(source, *fatal))?;
    let mut problems = Vec::from_iter(missing);
    let schema = SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<T>();
    let report = judge_shape(&mut root, &schema.to_value(), &source.file);
    problems.extend(report.problems);
    let written = T::deserialize(&root).map_err(|_| {
        if problems.is_empty() {
            let whole = Place::new(&source.file, "");
            problems.push(Problem::new(whole, Fault::Unreadable(T::KIND)));
        }
        Refusal::new(&source.file, problems.clone())
    })?;
    Ok(Parsed { written, problems, pruned: report.pruned, positions })
}

/// The tree of a text.
fn tree_of(source: &Source) -> Told<Tree<'_>> {
    let whole = Place::new(&source.file, "");
    read_tree(&source.text).or_else(|none| Problem::new(whole, none.fault).at(none.at).refused())
}

/// Judges the `format` line: fine, missing, or another kind of file.
fn judge_format(root: &Node<'_>, kind: FileKind, source: &Source) -> Told<Option<Problem>> {
    let place = Place::new(&source.file, "format");
    let Content::Map(pairs) = &root.content else {
        let whole = Place::new(&source.file, "");
        return Problem::new(whole, Fault::OtherThanKind(kind)).at(root.at).refused();
    };
    let Some(pair) = pairs.iter().find(|pair| pair.key == "format") else {
        let missing = Problem::new(place, Fault::NoFormat(kind));
        return Ok(Some(missing.at(Position { line: 1, column: 1 })));
    };
    let written = pair.value.text().unwrap_or_default().trim();
    if written == kind.format() {
        return Ok(None);
    }
    let fault = match KINDS.iter().find(|(_, format)| *format == written) {
        Some((is, _)) => Fault::OtherKind { is: *is, wanted: kind },
        None => Fault::UnknownFormat(kind),
    };
    Problem::new(place, fault).offending(written).at(pair.value.at).refused()
}

/// Tells of every text that is longer than its form allows, by key path.
pub(crate) fn judge_bounds(written: &impl Validate, file: &Arc<str>, problems: &Problems) {
    let Err(errors) = written.validate() else { return };
    let mut found = Vec::new();
    collect(&errors, &mut String::new(), &mut found);
    // The validator keeps its errors in an order that changes between runs.
    found.sort();
    for (key, most) in found {
        problems.wrong(Place::new(file, key), Fault::TextTooLong(most)).tell();
    }
}

#[allow(clippy::iter_over_hash_type)] // the outcome is sorted above
fn collect(errors: &ValidationErrors, path: &mut String, found: &mut Vec<(String, u64)>) {
    let length = path.len();
    for (field, kind) in errors.errors() {
        push_key(path, field);
        match kind {
            ValidationErrorsKind::Struct(inner) => collect(inner, path, found),
            ValidationErrorsKind::List(entries) => {
                let list = path.len();
                for (index, inner) in entries {
                    push_entry(path, *index);
                    collect(inner, path, found);
                    path.truncate(list);
                }
            }
            ValidationErrorsKind::Field(broken) => {
                let most = broken.iter().filter_map(|one| one.params.get("max")?.as_u64()).min();
                found.push((path.clone(), most.unwrap_or_default()));
            }
        }
        path.truncate(length);
    }
}

/// Whether a problem comes from a part that was cut out.
fn is_cut(problem: &Problem, aim: Aim, pruned: &[String]) -> bool {
    let key = &problem.place.key;
    let keys: &[&str] = if let Aim::OneOf(keys) = aim { keys } else { &[] };
    is_pruned(key, pruned) || keys.iter().any(|one| is_pruned(&format!("{key}.{one}"), pruned))
}

/// Whether a key path lies in a part that was cut out.
pub(crate) fn is_pruned(key: &str, pruned: &[String]) -> bool {
    pruned.iter().any(|cut| {
        key.strip_prefix(cut.as_str())
            .is_some_and(|rest| rest.is_empty() || cut.is_empty() || rest.starts_with(['.', '[']))
    })
}

/// Gives a problem its line and column.
pub(crate) fn place(problem: Problem, aim: Aim, positions: &Positions) -> Problem {
    if problem.position.is_some() {
        return problem;
    }
    let position = match aim {
        Aim::Value | Aim::OneOf(_) => positions.locate(&problem.place.key),
        Aim::Key => positions.locate_key(&problem.place.key),
    };
    match position {
        Some(position) => problem.at(position),
        None => problem,
    }
}

/// Whether a text that is read into its form at once is read alike part by
/// part, with nothing found wrong.
#[cfg(test)]
pub(crate) fn is_read_alike<T: WrittenFile + std::fmt::Debug>(source: &Source) -> bool {
    let tree = || tree_of(source).unwrap();
    let Some(written) = at_once::<T>(&tree()) else { return true };
    part_by_part::<T>(source, tree()).is_ok_and(|slow| {
        slow.problems.is_empty() && format!("{written:?}") == format!("{:?}", slow.written)
    })
}
