//! The library of profiles that a command works with, and the profiles that
//! were asked for by id or file.
//!
//! Imports `load`.

use super::output::{self, Terminal};
use super::stop::Stop;
use crate::load::{Library, Refusal};
use crate::measure::DaySpan;
use crate::model::profile::Profile;
use crate::report::{self, desk};
use std::path::Path;
use std::sync::Arc;

/// The shipped profiles, with those of a folder laid over them. A folder
/// that is refused leaves the shipped ones, so that the other files can be
/// looked through all the same; its refusal is noted.
pub(super) fn open(folder: Option<&Path>, refusals: &mut Vec<Refusal>) -> Result<Library, Stop> {
    let shipped = Library::shipped().map_err(|refusal| Stop::Refused(vec![refusal]))?;
    let Some(folder) = folder else { return Ok(shipped) };
    match shipped.with_folder(folder) {
        Ok(library) => {
            warn(&library, &library.profiles);
            Ok(library)
        }
        Err(refusal) => {
            refusals.push(refusal);
            Library::shipped().map_err(|refusal| Stop::Refused(vec![refusal]))
        }
    }
}

/// What `--profile` names.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Named<'a> {
    /// A file.
    File(&'a Path),
    /// An id.
    Id(&'a str),
}

/// A path that exists, or what ends like a profile's file, is a file.
pub(super) fn named(text: &str) -> Named<'_> {
    let path = Path::new(text);
    let extension = path.extension().and_then(|extension| extension.to_str());
    let yaml =
        extension.is_some_and(|e| e.eq_ignore_ascii_case("yaml") || e.eq_ignore_ascii_case("yml"));
    if yaml || path.is_file() { Named::File(path) } else { Named::Id(text) }
}

/// Reads the files among the named profiles into the library, in the order
/// given. What is refused is noted.
pub(super) fn add_files(
    library: &mut Library,
    asked: &[String],
    refusals: &mut Vec<Refusal>,
) -> Vec<Arc<Profile>> {
    let mut added = Vec::new();
    for text in asked {
        if let Named::File(path) = named(text) {
            match library.add_file(path) {
                Ok(profile) => added.push(profile),
                Err(refusal) => refusals.push(refusal),
            }
        }
    }
    warn(library, &added);
    added
}

/// Tells of slips in profiles of one's own; they are used as they are written.
pub(super) fn warn(library: &Library, profiles: &[Arc<Profile>]) {
    if let Some(slips) = library.slips(profiles) {
        output::complain(&report::slips(&slips, Terminal::of_this_process().width_of_errors));
    }
}

/// The profiles that were asked for, in the order typed, each once.
pub(super) fn asked(
    library: &Library,
    typed: &[String],
    files: Vec<Arc<Profile>>,
    days: DaySpan,
) -> Result<Vec<Arc<Profile>>, Stop> {
    let mut files = files.into_iter();
    let mut asked: Vec<Arc<Profile>> = Vec::new();
    for text in typed {
        let found = match named(text) {
            Named::File(_) => files.next().into_iter().collect(),
            Named::Id(id) => of_id(library, id, days)?,
        };
        for profile in found {
            if asked.iter().all(|other| other.id != profile.id) {
                asked.push(profile);
            }
        }
    }
    Ok(asked)
}

/// The profiles of that id: an edition, or the editions of a rule that are in
/// force on a day of the trip, or all of them if none is.
pub(super) fn of_id(library: &Library, id: &str, days: DaySpan) -> Result<Vec<Arc<Profile>>, Stop> {
    if let Some(profile) = library.find(id) {
        return Ok(vec![Arc::clone(profile)]);
    }
    let editions: Vec<_> = library.editions(id).into_iter().map(Arc::clone).collect();
    if editions.is_empty() {
        return Err(unknown(library, id));
    }
    let now: Vec<_> = editions.iter().filter(|e| e.in_force.meets(days)).cloned().collect();
    Ok(if now.is_empty() { editions } else { now })
}

/// That no profile has this id, with the nearest one that there is.
fn unknown(library: &Library, id: &str) -> Stop {
    let rules: Vec<&str> = library.profiles.iter().map(|profile| profile.rule.as_str()).collect();
    let near = library.suggest(id).or_else(|| near_rule(id, &rules).map(str::to_owned));
    match near {
        Some(near) => Stop::usage(desk::command_no_profile_but(&id, &near), ""),
        None => Stop::usage(desk::command_no_profile(&id), ""),
    }
}

/// The rule that was misspelled by a few strokes, or of which a part was
/// typed.
fn near_rule<'a>(id: &str, rules: &[&'a str]) -> Option<&'a str> {
    let typed = id.to_lowercase();
    let slip = rules
        .iter()
        .map(|rule| (strsim::osa_distance(&typed, rule), *rule))
        .filter(|(distance, _)| *distance <= 3)
        .min_by_key(|(distance, _)| *distance);
    let part = || rules.iter().copied().find(|rule| typed.len() >= 4 && rule.contains(&typed));
    slip.map(|(_, rule)| rule).or_else(part)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_looks_like_a_file_is_a_file_even_if_it_is_not_there() {
        assert_eq!(named("mine/rule.yaml"), Named::File(Path::new("mine/rule.yaml")));
        assert_eq!(named("RULE.YML"), Named::File(Path::new("RULE.YML")));
        assert_eq!(named("us-gulf-reef-fish"), Named::Id("us-gulf-reef-fish"));
        assert_eq!(named("Cargo.toml"), Named::File(Path::new("Cargo.toml")));
    }

    #[test]
    fn a_slip_or_a_part_of_a_rules_name_finds_the_rule() {
        let rules = ["us-gulf-reef-fish", "us-atlantic-longline"];
        assert_eq!(near_rule("us-gulf-reef-fsh", &rules), Some("us-gulf-reef-fish"));
        assert_eq!(near_rule("reef-fish", &rules), Some("us-gulf-reef-fish"));
        assert_eq!(near_rule("us", &rules), None);
        assert_eq!(near_rule("something-else", &rules), None);
    }
}
