//! What is shipped, as the coverage reads it: the loaded profiles with their
//! parts, which edition is built on which, what the techniques cite.

use super::parts::{self, EDITION, Part};
use crate::{kit, run};
use kitmuster::load::Library;
use kitmuster::model::profile::{Profile, Requirement};
use serde_yaml::Value;
use std::collections::BTreeMap;

/// Everything that is shipped.
pub(super) struct Shipped {
    pub(super) library: Library,
    /// An edition and the one that it is built on.
    built_on: BTreeMap<String, String>,
    /// A clause that the techniques cite, and what cites it.
    pub(super) cited: Vec<(String, String)>,
}

fn yaml(file: &str) -> Value {
    let text = std::fs::read_to_string(run::home().join("requirements").join(file)).unwrap();
    serde_yaml::from_str(&text).unwrap()
}

impl Shipped {
    pub(super) fn read() -> Self {
        let library = kit::library();
        let mut built_on = BTreeMap::new();
        for profile in &library.profiles {
            let file = yaml(&format!("{}.yaml", profile.id));
            if let Some(base) = file["built on"].as_str() {
                built_on.insert(profile.id.clone(), base.to_owned());
            }
        }
        let mut cited = Vec::new();
        citations(&yaml("techniques.yaml"), "the file", &mut cited);
        Self { library, built_on, cited }
    }

    pub(super) fn profile(&self, id: &str) -> &Profile {
        self.library.find(id).unwrap_or_else(|| panic!("no profile `{id}` is shipped"))
    }

    /// The edition at the bottom of what this one is built on.
    pub(super) fn root<'a>(&'a self, profile: &'a str) -> &'a str {
        self.built_on.get(profile).map_or(profile, |base| self.root(base))
    }

    /// The parts of every requirement, and those of the edition as a whole.
    pub(super) fn parts(&self, profile: &Profile) -> Vec<(String, Part)> {
        let mut all = Vec::new();
        let edition = parts::of_edition(profile).into_iter();
        all.extend(edition.map(|part| (EDITION.to_owned(), part)));
        for requirement in &profile.requirements {
            let parts = self.parts_of(profile, requirement).into_iter();
            all.extend(parts.map(|part| (requirement.id.clone(), part)));
        }
        all
    }

    /// What a requirement asks, in words, with what can never decide.
    pub(super) fn words_of(&self, profile: &Profile, requirement: &Requirement) -> Vec<String> {
        let parts = parts::whole(&self.library.vocabulary, profile, requirement).into_iter();
        parts.map(|part| part.says).collect()
    }

    pub(super) fn parts_of(&self, profile: &Profile, requirement: &Requirement) -> Vec<Part> {
        parts::of_requirement(&self.library.vocabulary, profile, requirement)
    }
}

/// Every text that stands in the notes of a profile and of its requirements.
pub(super) fn notes(profile: &Profile) -> String {
    let own =
        profile.notes.iter().chain(profile.requirements.iter().filter_map(|r| r.note.as_ref()));
    own.map(|text| text.to_string()).collect::<Vec<_>>().join("\n")
}

/// Collects what every `clause` of a file of techniques cites.
fn citations(value: &Value, owner: &str, into: &mut Vec<(String, String)>) {
    match value {
        Value::Mapping(map) => {
            let name = |key: &str| map.get(key).and_then(Value::as_str);
            let owner = name("id").or(name("word")).unwrap_or(owner);
            if let Some(clause) = name("clause") {
                into.extend(clauses_in(clause).into_iter().map(|one| (one, owner.to_owned())));
            }
            map.iter().for_each(|(_, inner)| citations(inner, owner, into));
        }
        Value::Sequence(list) => list.iter().for_each(|inner| citations(inner, owner, into)),
        _ => {}
    }
}

/// The clauses that a citation names: `635.21(b)(3)`, `Appendix F, A.12`, `50
/// CFR 223.206(d)(1)`, and the house's own lines.
fn clauses_in(text: &str) -> Vec<String> {
    let mut found = Vec::new();
    for (opening, before) in
        [("635.21(", "635.21("), ("Appendix F, ", "Appendix F, "), ("223.206(", "50 CFR 223.206(")]
    {
        for (at, _) in text.match_indices(opening) {
            let rest = &text[at + opening.len()..];
            let of_it = |c: char| c.is_ascii_alphanumeric() || "().".contains(c);
            let end = rest.find(|c| !of_it(c)).unwrap_or(rest.len());
            let clause = format!("{before}{}", rest[..end].trim_end_matches('.'));
            // `(i)(D) and (M)` names two.
            if let Some(next) = rest[end..].strip_prefix(" and (") {
                let last = clause.rfind('(').unwrap();
                let letter = next.split(')').next().unwrap();
                found.push(format!("{}({letter})", &clause[..last]));
            }
            found.push(clause);
        }
    }
    let house = text.split(';').map(str::trim).filter(|one| one.starts_with("good practice, "));
    found.extend(house.map(str::to_owned));
    found
}
