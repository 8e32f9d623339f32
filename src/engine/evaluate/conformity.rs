//! Statements of conformity: whether a dated one speaks for a tool.

use super::point::Point;
use crate::model::profile::Requirement;
use crate::model::rule::Spec;
use crate::model::vessel::Tool;
use crate::model::vocabulary::AttributeId;

/// The clauses of one choice; a statement of conformity to any of them
/// speaks for the tool.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Clauses<'a>([Option<&'a str>; 3]);

impl<'a> Clauses<'a> {
    /// No statement speaks for the tool.
    pub(crate) const NONE: Self = Self([None; 3]);

    /// The clauses of the spec, of its type and of the requirement.
    pub(crate) fn of(
        spec: &'a Spec,
        of_type: Option<&'a str>,
        requirement: &'a Requirement,
    ) -> Self {
        Self([spec.clause.as_deref(), of_type, Some(requirement.clause.as_str())])
    }

    /// Whether a statement made by the day settles an attribute that nobody
    /// measured: one that neither a tape nor an eye can show.
    pub(crate) fn settle(self, attribute: AttributeId, tool: &Tool, point: &Point<'_>) -> bool {
        if tool.conforms.is_empty() || point.vocabulary.attribute(attribute).shown {
            return false;
        }
        let source = point.profile.source.as_str();
        let mut made = tool.conforms.iter().filter(|statement| statement.on <= point.day);
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
