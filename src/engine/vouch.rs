//! Statements of conformity: whether a dated one speaks for a tool.

use super::scene::Scene;
use crate::model::profile::Requirement;
use crate::model::rule::Spec;
use crate::model::vessel::Tool;
use crate::model::vocabulary::AttributeId;

/// The clauses of one choice; a statement of conformity to any of them
/// speaks for the tool.
#[derive(Debug, Clone, Copy)]
pub(super) struct Clauses<'a>([Option<&'a str>; 3]);

impl<'a> Clauses<'a> {
    /// No statement speaks for the tool.
    pub(super) const NONE: Self = Self([None; 3]);

    /// The clauses of the spec, of its type and of the requirement.
    pub(super) fn of(
        spec: &'a Spec,
        of_type: Option<&'a str>,
        requirement: &'a Requirement,
    ) -> Self {
        Self([spec.clause.as_deref(), of_type, Some(requirement.clause.as_str())])
    }

    /// Whether a statement made by the day settles an attribute that nobody
    /// measured: one that neither a tape nor an eye can show.
    pub(super) fn settle(self, attribute: AttributeId, tool: &Tool, scene: &Scene<'_>) -> bool {
        if tool.conforms.is_empty() || scene.vocabulary.attribute(attribute).shown {
            return false;
        }
        let source = scene.profile.source.as_str();
        let mut made = tool.conforms.iter().filter(|statement| statement.on <= scene.day);
        made.any(|statement| {
            let names = |clause: &&str| {
                let (to, plain_clause) = (statement.to.as_str(), || plain(clause));
                to == *clause
                    || plain(to).eq(plain_clause())
                    || plain(to).eq(plain(source).chain(plain_clause()))
            };
            self.0.iter().flatten().any(names)
        })
    }
}

/// A clause without case, commas and spaces, so that two ways to write it
/// are the same.
fn plain(clause: &str) -> impl Iterator<Item = char> {
    clause.chars().filter(|c| !c.is_whitespace() && *c != ',').flat_map(char::to_lowercase)
}
