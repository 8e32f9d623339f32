//! The clauses of the rules as `clauses.yaml` lists them, laid against what is
//! shipped: which requirements encode one, and what is wrong with the list.

use super::parts::{EDITION, Part};
use super::shipped::{Shipped, notes};
use crate::run;
use kitmuster::model::profile::{Profile, Verified};
use serde::Deserialize;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    rules: Vec<Rule>,
}

/// One rule in one edition.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Rule {
    /// The profile that encodes it; none where no profile does.
    pub(super) profile: Option<String>,
    pub(super) heading: String,
    /// The edition whose list it takes over.
    #[serde(rename = "as in")]
    pub(super) as_in: Option<String>,
    pub(super) clauses: Vec<Clause>,
}

/// One clause.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Clause {
    pub(super) clause: String,
    #[serde(default)]
    pub(super) asks: String,
    #[serde(default)]
    pub(super) verified: String,
    pub(super) within: Option<String>,
    #[serde(rename = "not encoded")]
    pub(super) not_encoded: Option<String>,
    noted: Option<String>,
    #[serde(default)]
    techniques: bool,
    #[serde(default, rename = "nothing given")]
    pub(super) nothing_given: bool,
}

/// What becomes of a clause.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Fate {
    /// A requirement, or what the edition says of whom and when.
    Encoded,
    /// The reader is told, in a note or by the techniques; no requirement.
    Told,
    NotEncoded,
    NotRead,
}

const VERIFIED: [&str; 5] = ["read", "excerpt", "inferred", "memory", "common practice"];

/// How a requirement was verified, as the list writes it.
pub(super) fn verified(of: Verified) -> &'static str {
    match of {
        Verified::Read => "read",
        Verified::Excerpt => "excerpt",
        Verified::Inferred => "inferred",
        Verified::Memory => "memory",
        Verified::CommonPractice => "common practice",
    }
}

/// The list of clauses.
pub(super) fn listed() -> Vec<Rule> {
    let path = run::home().join("tests/it/coverage/clauses.yaml");
    let text = std::fs::read_to_string(path).unwrap();
    let file: File = serde_yaml::from_str(&text).unwrap_or_else(|e| panic!("clauses.yaml: {e}"));
    file.rules
}

impl Clause {
    /// The parts of the profile that encode it, each with its requirement.
    pub(super) fn parts<'a>(&self, parts: &'a [(String, Part)]) -> Vec<&'a (String, Part)> {
        let own = parts.iter().filter(|(_, part)| part.clause == self.clause);
        let within = parts.iter().filter(|(requirement, part)| {
            let says = part.says.as_str();
            match self.within.as_deref() {
                None => false,
                Some("freeboard from") => {
                    requirement == EDITION && says.starts_with("freeboard from")
                }
                Some("binds") => {
                    requirement == EDITION
                        && ["permit ", "gear ", "area "].iter().any(|start| says.starts_with(start))
                }
                Some("in force") => requirement == EDITION && says.starts_with("in force"),
                Some("inspection due") => {
                    requirement == EDITION && says.starts_with("inspection due")
                }
                Some(what) if what.starts_with("when ") => says.starts_with(what),
                Some(attribute) => part.of.1 == attribute,
            }
        });
        own.chain(within).collect()
    }

    pub(super) fn fate(&self, parts: &[(String, Part)]) -> Fate {
        if self.nothing_given {
            Fate::NotRead
        } else if !self.parts(parts).is_empty() {
            Fate::Encoded
        } else if self.techniques || self.noted.is_some() {
            Fate::Told
        } else {
            Fate::NotEncoded
        }
    }

    /// Where a reader is told of it, if it is no requirement.
    pub(super) fn told(&self, shipped: &Shipped) -> String {
        let mut told = Vec::new();
        if self.noted.is_some() {
            told.push("told in a note".to_owned());
        }
        if self.techniques {
            let mut by: Vec<&str> = Vec::new();
            for (_, owner) in shipped.cited.iter().filter(|(clause, _)| self.is_cited_as(clause)) {
                if !by.contains(&owner.as_str()) {
                    by.push(owner);
                }
            }
            told.push(format!("cited by the techniques ({})", by.join(", ")));
        }
        told.join(", ")
    }

    fn is_cited_as(&self, clause: &str) -> bool {
        self.clause == clause
            || self.clause.starts_with("good practice") && clause.starts_with(&self.clause)
    }

    /// What is wrong with it.
    fn wrong(&self, shipped: &Shipped, rule: &Rule, parts: &[(String, Part)]) -> Vec<String> {
        let mut wrong = Vec::new();
        let encoded = self.parts(parts);
        if self.nothing_given {
            let more = self.not_encoded.is_some() || self.within.is_some() || !self.asks.is_empty();
            if more || !encoded.is_empty() {
                wrong.push("says `nothing given` and something beside it".to_owned());
            }
            return wrong;
        }
        if self.asks.is_empty() || self.asks.chars().count() > 76 {
            wrong.push("wants `asks:` in at most 76 characters".to_owned());
        }
        if !VERIFIED.contains(&self.verified.as_str()) {
            wrong.push(format!("`verified: {}` is none of {VERIFIED:?}", self.verified));
        }
        let of_profile = rule.profile(shipped).map_or(&[][..], |profile| &profile.requirements);
        let citing = of_profile.iter().filter(|one| one.clause == self.clause);
        for requirement in citing {
            let seen = verified(requirement.verified);
            if seen != self.verified {
                let id = &requirement.id;
                wrong.push(format!("is `{}` here and `{seen}` in `{id}`", self.verified));
            }
        }
        match (encoded.is_empty(), &self.not_encoded) {
            (true, None) => wrong.push("is encoded by no requirement and has no reason".to_owned()),
            (false, Some(_)) => wrong.push("is encoded and says `not encoded`".to_owned()),
            _ => {}
        }
        if let Some(words) = &self.noted {
            let profile = rule.profile.as_deref().map(|id| shipped.profile(id));
            if !profile.is_some_and(|profile| notes(profile).contains(words.as_str())) {
                wrong.push(format!("no note of the profile says `{words}`"));
            }
        }
        if self.techniques && !shipped.cited.iter().any(|(clause, _)| self.is_cited_as(clause)) {
            wrong.push("says `techniques: true`, and techniques.yaml does not cite it".to_owned());
        }
        wrong
    }
}

impl Rule {
    pub(super) fn profile<'a>(&self, shipped: &'a Shipped) -> Option<&'a Profile> {
        self.profile.as_deref().map(|id| shipped.profile(id))
    }

    pub(super) fn parts(&self, shipped: &Shipped) -> Vec<(String, Part)> {
        self.profile(shipped).map_or_else(Vec::new, |profile| shipped.parts(profile))
    }
}

/// Every fault of the list: a clause without requirement and reason, a
/// requirement without clause, a profile that is not listed, a citation of the
/// techniques that is not listed.
pub(super) fn faults(shipped: &Shipped, rules: &[Rule]) -> Vec<String> {
    let mut faults = Vec::new();
    for rule in rules {
        let parts = rule.parts(shipped);
        for clause in &rule.clauses {
            for wrong in clause.wrong(shipped, rule, &parts) {
                faults.push(format!("{}: clause `{}` {wrong}", rule.heading, clause.clause));
            }
        }
        let listed = |clause: &str| {
            let base =
                rules.iter().filter(|one| one.profile.is_some() && one.profile == rule.as_in);
            base.chain([rule]).flat_map(|one| &one.clauses).any(|one| one.clause == clause)
        };
        for (requirement, part) in &parts {
            if !part.clause.is_empty() && !listed(&part.clause) {
                faults.push(format!(
                    "{}: `{requirement}` cites clause `{}`, which clauses.yaml does not list",
                    rule.heading, part.clause
                ));
            }
        }
    }
    for profile in &shipped.library.profiles {
        if !rules.iter().any(|rule| rule.profile.as_ref() == Some(&profile.id)) {
            faults.push(format!("profile `{}` is not in clauses.yaml", profile.id));
        }
    }
    for (cited, owner) in &shipped.cited {
        let of_rule = !cited.starts_with("good practice");
        let mut all = rules.iter().flat_map(|rule| &rule.clauses);
        if of_rule && !all.any(|one| one.clause == *cited && one.techniques) {
            faults.push(format!(
                "techniques.yaml cites `{cited}` ({owner}), which clauses.yaml does not list with `techniques: true`"
            ));
        }
    }
    faults.dedup();
    faults
}
