//! From a text to the as-written type: quickly where nothing is wrong,
//! slowly through the marked tree where something has to be placed.

use crate::load::form::WrittenFile;
use crate::load::read::bounds::judge_bounds;
use crate::load::read::problem::{Aim, Position, Problem, Problems, Refusal, Told};
use crate::load::read::shape::judge_shape;
use crate::load::read::source::{Positions, Source};
use crate::load::read::tree::{Content, Node, read_tree};
use crate::load::read::tree_de::Misfit;
use crate::load::read::usual::is_unusual;
use crate::model::place::Place;

/// Every kind of file that is read, by its `format` line.
const FORMATS: [(&str, &str); 6] = [
    ("vessel/1", "a vessel's inventory"),
    ("inspection/1", "an inspection record"),
    ("catalogue/1", "a supplier's catalogue"),
    ("profile/1", "a profile"),
    ("vocabulary/1", "a vocabulary"),
    ("techniques/1", "a file of techniques"),
];

/// What could be read of a file, and what was wrong so far.
pub(crate) struct Parsed<T> {
    /// The file as written, without the parts that were wrong.
    pub(crate) written: T,
    /// What was wrong.
    pub(crate) problems: Vec<Problem>,
    /// The key paths that were cut out.
    pub(crate) pruned: Vec<String>,
    /// Where everything stands.
    pub(crate) positions: Positions,
}

/// Reads a text that has nothing unusual in it; none if it has.
pub(crate) fn parse_quickly<T: WrittenFile>(source: &Source) -> Option<T> {
    if is_unusual(&source.text) {
        return None;
    }
    let written: T = serde_yaml::from_str(&source.text).ok()?;
    (written.format().map(str::trim) == Some(T::FORMAT)).then_some(written)
}

/// Reads a text through the marked tree, with every problem of its shape.
///
/// # Errors
/// It is no YAML, or another kind of file.
pub(crate) fn parse_slowly<T: WrittenFile>(source: &Source) -> Result<Parsed<T>, Refusal> {
    let place = || Place::new(&source.file, "");
    let refuse = |problem: Problem| Refusal::new(&source.file, vec![problem]);
    let mut root = tree_of(source).map_err(|problem| refuse(*problem))?;
    let positions = Positions::of(&root);
    let mut problems = Vec::new();
    match judge_format::<T>(&root, source) {
        Ok(None) => {}
        Ok(Some(missing)) => problems.push(missing),
        Err(fatal) => return Err(refuse(*fatal)),
    }
    let schema = schemars::generate::SchemaSettings::draft2020_12()
        .into_generator()
        .into_root_schema_for::<T>()
        .to_value();
    let report = judge_shape(&mut root, &schema, &source.file);
    problems.extend(report.problems);
    let written = T::deserialize(&root).map_err(|_: Misfit| {
        if problems.is_empty() {
            problems.push(Problem::new(place(), format!("this cannot be read as {}", T::CALLED)));
        }
        Refusal::new(&source.file, problems.clone())
    })?;
    Ok(Parsed { written, problems, pruned: report.pruned, positions })
}

/// The marked tree of a text.
fn tree_of(source: &Source) -> Told<Node> {
    let whole = Place::new(&source.file, "");
    read_tree(&source.text)
        .or_else(|none| Problem::new(whole, none.what).at(none.at).mend_if(none.mend).refused())
}

/// Where everything in a text stands, or why it cannot be told.
pub(crate) fn positions_of(source: &Source) -> Told<Positions> {
    tree_of(source).map(|root| Positions::of(&root))
}

/// Judges the `format` line: fine, missing, or another kind of file.
fn judge_format<T: WrittenFile>(root: &Node, source: &Source) -> Told<Option<Problem>> {
    let place = Place::new(&source.file, "format");
    let mend = format!("write `format: {}` as the first line", T::FORMAT);
    let Content::Map(pairs) = &root.content else {
        return Problem::new(Place::new(&source.file, ""), format!("this is not {}", T::CALLED))
            .at(root.at)
            .expected("a group of `key: value` lines")
            .mend(mend)
            .refused();
    };
    let Some(pair) = pairs.iter().find(|pair| pair.key == "format") else {
        return Ok(Some(
            Problem::new(place, "`format` is missing")
                .at(Position { line: 1, column: 1 })
                .mend(mend),
        ));
    };
    let written = pair.value.text().unwrap_or_default().trim();
    if written == T::FORMAT {
        return Ok(None);
    }
    let problem = match FORMATS.iter().find(|(format, _)| *format == written) {
        Some((_, called)) => {
            Problem::new(place, format!("this is {called}")).expected(T::CALLED).offending(written)
        }
        None => Problem::new(place, "this format is not known here")
            .offending(written)
            .expected(format!("`{}`", T::FORMAT))
            .mend("correct the line, or use the version of this program that knows it"),
    };
    problem.at(pair.value.at).refused()
}

/// Reads a file and checks it: quickly if nothing is wrong, else again with
/// every problem placed.
///
/// # Errors
/// Everything that is wrong with it.
pub(crate) fn read<T: WrittenFile, M>(
    source: &Source,
    check: impl Fn(T, &mut Problems) -> Option<M>,
) -> Result<M, Refusal> {
    if let Some(written) = parse_quickly::<T>(source) {
        let mut problems = Problems::default();
        judge_bounds(&written, &source.file, &mut problems);
        let model = check(written, &mut problems);
        if let (0, Some(model)) = (problems.count(), model) {
            return Ok(model);
        }
    }
    let parsed = parse_slowly::<T>(source)?;
    let mut found = Problems::default();
    judge_bounds(&parsed.written, &source.file, &mut found);
    let model = check(parsed.written, &mut found);
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
                problems.push(Problem::new(whole, format!("this cannot be read as {}", T::CALLED)));
            }
            Err(Refusal::new(&source.file, problems))
        }
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
