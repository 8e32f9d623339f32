//! What a tool that is to be brought must be like, in few words.
//!
//! Imports `model` and `measure` only. Percentages of the freeboard are
//! worked out here for print; whether a tool fits is never decided here.

use super::Words;
use super::figures;
use crate::measure::{Figure, Length, Quantity, Rounding};
use crate::model::profile::Requirement;
use crate::model::reason::Demand;
use crate::model::rule::{Base, Bound, Condition, Limit, Need, Spec, Test};
use crate::model::vocabulary::{AttributeId, KindId};
use crate::report::Locale;

/// How many properties a remedy names before it points to the clause.
const NAMED: usize = 3;

impl Words<'_> {
    /// `a handle of at least 6 ft (1.829 m)`, for something to lengthen.
    pub(super) fn wish(&self, attribute: AttributeId, demand: &Demand) -> String {
        let name = article(self.attribute(attribute), self.locale);
        self.locale.wish(&name, &figures::demand(demand, self.locale))
    }

    /// `handle at least 6 ft (1.829 m)`, `material 316l or 304l`, `protected
    /// blade`: a line of a list.
    pub(super) fn term(&self, attribute: AttributeId, demand: &Demand) -> String {
        let name = self.attribute(attribute);
        match demand {
            Demand::Is(true) | Demand::Open => name.to_owned(),
            Demand::Is(false) => self.locale.term_not(&name),
            demand => self.locale.term(&name, &figures::demand(demand, self.locale)),
        }
    }

    /// The kind with the first few things that the rule asks of it.
    pub(super) fn kind_as_asked(
        &self,
        kind: KindId,
        requirement: &Requirement,
        freeboard: Option<Length>,
    ) -> String {
        match specs(requirement).into_iter().find(|spec| spec.kind == kind) {
            Some(spec) => self.spec_as_asked(spec, requirement, freeboard),
            None => self.kind(kind).to_owned(),
        }
    }

    /// One alternative with the first few things that the rule asks of it.
    pub(super) fn spec_as_asked(
        &self,
        spec: &Spec,
        requirement: &Requirement,
        freeboard: Option<Length>,
    ) -> String {
        let name = self.kind(spec.kind);
        let terms = self.terms(&spec.tests, freeboard);
        let shown = terms.iter().take(NAMED).cloned().collect::<Vec<_>>().join(", ");
        let clause = spec.clause.as_deref().unwrap_or(&requirement.clause);
        let more = terms.len() > NAMED || spec.tests.len() > terms.len();
        match (shown.is_empty(), more) {
            (true, false) => name.to_owned(),
            (true, true) => self.locale.asked_by_clause(&name, &clause),
            (false, false) => self.locale.asked_terms(&name, &shown),
            (false, true) => self.locale.asked_terms_and_rest(&name, &shown, &clause),
        }
    }

    /// What can be said of each test in a few words: figures first, since
    /// they decide what is bought.
    pub(super) fn terms(&self, tests: &[Test], freeboard: Option<Length>) -> Vec<String> {
        let (mut limits, mut others) = (Vec::new(), Vec::new());
        for test in tests {
            match test {
                Test::Limit { attribute, limit, .. } => {
                    limits.push(match self.worked_out(limit, freeboard) {
                        Some(demand) => self.term(*attribute, &demand),
                        None => {
                            let open = figures::open_limit(limit, self.locale);
                            self.locale.term(&self.attribute(*attribute), &open)
                        }
                    });
                }
                Test::Feature { attribute, wanted } => {
                    others.push(self.term(*attribute, &Demand::Is(*wanted)));
                }
                Test::Choice { attribute, allowed } => {
                    others.push(self.term(*attribute, &Demand::OneOf(allowed.clone())));
                }
                Test::AcquiredBefore(_) | Test::AnyOf(_) | Test::Readings(_) => {}
            }
        }
        limits.append(&mut others);
        limits
    }

    /// What a limit comes to at a freeboard; nothing where a fact is missing.
    pub(crate) fn worked_out(&self, limit: &Limit, freeboard: Option<Length>) -> Option<Demand> {
        let figure = |bound, rounding| self.bound(bound, freeboard, rounding);
        Some(match limit {
            Limit::Any => Demand::Open,
            Limit::AtLeast(bound) => Demand::Least(figure(bound, Rounding::Up)?),
            Limit::MoreThan(bound) => Demand::Above(figure(bound, Rounding::Down)?),
            Limit::AtMost(bound) => Demand::Most(figure(bound, Rounding::Down)?),
            Limit::LessThan(bound) => Demand::Below(figure(bound, Rounding::Up)?),
            Limit::Within(low, high) => {
                Demand::Between(figure(low, Rounding::Up)?, figure(high, Rounding::Down)?)
            }
            Limit::About { .. } => Demand::About(std::sync::Arc::new(limit.clone())),
        })
    }

    fn bound(
        &self,
        bound: &Bound,
        freeboard: Option<Length>,
        rounding: Rounding,
    ) -> Option<Figure> {
        let all = |limbs: &[Bound]| {
            let figures = limbs.iter().map(|limb| self.bound(limb, freeboard, rounding));
            figures.collect::<Option<Vec<_>>>()
        };
        let steps = |figure: &Figure| figure.quantity.steps();
        match bound {
            Bound::Fixed { figure, .. } => Some(figure.clone()),
            Bound::Share(percent, Base::Freeboard) => {
                let length = match rounding {
                    Rounding::Up => freeboard?.percent_up(*percent),
                    Rounding::Down => freeboard?.percent_down(*percent),
                };
                Some(Figure::reckoned(Quantity::Length(length), self.system(), rounding))
            }
            Bound::Share(..) => None,
            Bound::Greater(limbs) => all(limbs)?.into_iter().max_by_key(steps),
            Bound::Lesser(limbs) => all(limbs)?.into_iter().min_by_key(steps),
        }
    }
}

impl Words<'_> {
    /// Whether what is asked changes with the freeboard.
    pub(crate) fn hangs_on_freeboard(&self, requirement: usize) -> bool {
        self.requirement(requirement).is_some_and(|requirement| {
            let tests = specs(requirement).into_iter().flat_map(|spec| &spec.tests);
            let whens = specs(requirement).into_iter().flat_map(|spec| &spec.when);
            tests.into_iter().any(test_of_freeboard)
                || requirement.when.iter().chain(whens).any(of_freeboard)
                || requirement.unless.iter().flatten().any(of_freeboard)
        })
    }
}

fn of_freeboard(condition: &Condition) -> bool {
    match condition {
        Condition::Freeboard { .. } => true,
        Condition::AnyOf(groups) => groups.iter().flatten().any(of_freeboard),
        _ => false,
    }
}

fn test_of_freeboard(test: &Test) -> bool {
    fn of_bound(bound: &Bound) -> bool {
        match bound {
            Bound::Fixed { .. } => false,
            Bound::Share(_, base) => *base == Base::Freeboard,
            Bound::Greater(limbs) | Bound::Lesser(limbs) => limbs.iter().any(of_bound),
        }
    }
    match test {
        Test::Limit { limit, .. } => match limit {
            Limit::Any | Limit::About { .. } => false,
            Limit::AtLeast(b) | Limit::MoreThan(b) | Limit::AtMost(b) | Limit::LessThan(b) => {
                of_bound(b)
            }
            Limit::Within(low, high) => of_bound(low) || of_bound(high),
        },
        Test::AnyOf(groups) | Test::Readings(groups) => {
            groups.iter().flatten().any(test_of_freeboard)
        }
        Test::Feature { .. } | Test::Choice { .. } | Test::AcquiredBefore(_) => false,
    }
}

/// Everything that can serve, in order.
pub(crate) fn specs(requirement: &Requirement) -> Vec<&Spec> {
    match &requirement.need {
        Need::Tools { types, .. } => {
            types.iter().flat_map(|t| &t.members).flat_map(|m| &m.choices).collect()
        }
        Need::Gear { choices, .. } => choices.iter().collect(),
        Need::Certificates { .. } => Vec::new(),
    }
}

/// The name with `a` or `an` in front; plurals (`pliers`) stay as they are.
pub(super) fn article(name: &str, locale: Locale) -> String {
    const AFTER_THE_NOUN: [&str; 8] =
        [":", " of ", " for ", " to ", " with", " as ", " covered ", " used "];
    let ends = AFTER_THE_NOUN.iter().filter_map(|mark| name.find(mark));
    let noun = &name[..ends.min().unwrap_or(name.len())];
    let plural = noun.ends_with('s') && !noun.ends_with("ss");
    match name.chars().next() {
        _ if plural => name.to_owned(),
        Some(first) if "aeio".contains(first.to_ascii_lowercase()) => locale.article_an(&name),
        _ => locale.article_a(&name),
    }
}

#[cfg(test)]
mod tests {
    use super::{Locale, article};

    #[test]
    fn plurals_take_no_article() {
        for (name, with) in [
            ("pliers: overall length at least 11 in", "pliers: overall length at least 11 in"),
            ("set of replacement blades", "a set of replacement blades"),
            ("dehooker for internal hooks", "a dehooker for internal hooks"),
            ("avian oral speculum", "an avian oral speculum"),
            ("overall length", "an overall length"),
        ] {
            assert_eq!(article(name, Locale::default()), with);
        }
    }
}
