//! The rows of a sheet: one for each thing that an inspector takes in hand,
//! in the order of the walk around the deck, numbered from one.
//!
//! Imports `model` and the words beside it. The same inputs give the same
//! rows with the same numbers.

use super::asks::{Ask, Asks, Placed, of_kind};
use super::shared::{by_rules, of_rules, rule_of, take_in};
use crate::model::check::{Check, Judgement};
use crate::model::finding::Finding;
use crate::model::profile::{Level, Requirement};
use crate::model::rule::{Holders, Need};
use crate::model::vessel::{GearPiece, Tool, Whereabouts};
use crate::model::vocabulary::{AttributeId, Class};
use crate::report::words::{Words, figures};
use crate::report::{Locale, Subject};

/// What a row is about.
#[derive(Debug, Clone, Copy)]
pub(super) enum Thing<'a> {
    /// A tool or document of the list.
    Tool(&'a Tool),
    /// A hook or line aboard.
    Gear(&'a GearPiece),
    /// The certificates of people, with the roles that are asked.
    Holders(&'a Holders),
    /// Something that is not on the list, or not enough of it.
    LookFor,
}

/// Which requirement a thing may serve.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Serves {
    /// What the requirement is called.
    pub(super) title: String,
    /// Its clause.
    pub(super) clause: String,
    /// The numbers of the rules whose clause it is; none where the paper is of one rule.
    pub(super) rules: Vec<String>,
    /// Whether its title stands in a row before.
    pub(super) again: bool,
    /// What else is to be said: where it is asked, what it is a part of.
    pub(super) more: Vec<String>,
}

impl Serves {
    /// The clause, with its rules where the paper is of several.
    pub(super) fn cited(&self, locale: Locale) -> String {
        of_rules(&self.rules, &self.clause, locale)
    }
}

/// One row.
#[derive(Debug)]
pub(super) struct Row<'a> {
    /// Its number on the sheet.
    pub(super) number: usize,
    /// What it is about.
    pub(super) thing: Thing<'a>,
    /// What it may serve; nothing where no rule asks for it.
    pub(super) serves: Vec<Serves>,
    /// What is asked of it.
    pub(super) asks: Asks,
    /// Whether there are several of it, or are to be: they are counted.
    pub(super) several: bool,
}

impl Row<'_> {
    /// What else it serves; the same clause of another rule is named with the
    /// one that stands there already.
    pub(super) fn serve(&mut self, serves: Serves) {
        let same = |known: &&mut Serves| {
            known.title == serves.title
                && known.clause == serves.clause
                && known.more == serves.more
        };
        match self.serves.iter_mut().find(same) {
            Some(known) => take_in(&mut known.rules, serves.rules),
            None => self.serves.push(serves),
        }
    }

    /// Which rules ask it, where not every rule of the row does.
    pub(super) fn only(&self, ask: &Ask, locale: Locale) -> Option<String> {
        let asks = |rule: &String| ask.rules.contains(rule);
        let all = self.serves.iter().flat_map(|serves| &serves.rules).all(asks);
        (!all && !ask.rules.is_empty()).then(|| by_rules(&ask.rules, locale))
    }

    /// Whether another row is of the same thing, by other rules that ask the
    /// same of it. What one rule asks twice is asked for twice.
    fn same(&self, other: &Self) -> bool {
        let same_thing = match (self.thing, other.thing) {
            (Thing::LookFor, Thing::LookFor) => true,
            (Thing::Holders(one), Thing::Holders(another)) => one == another,
            _ => false,
        };
        let of = |rule: &String| self.serves.iter().any(|serves| serves.rules.contains(rule));
        let other_rules = other.serves.iter().all(|serves| !serves.rules.iter().any(of));
        let ruled = other.serves.iter().all(|serves| !serves.rules.is_empty());
        same_thing && ruled && other_rules && self.asks.same(&other.asks)
    }
}

/// Rows of which those that are the same are one.
pub(super) fn merged<'a>(rows: impl Iterator<Item = Row<'a>>) -> Vec<Row<'a>> {
    let mut all: Vec<Row<'a>> = Vec::new();
    for row in rows {
        match all.iter_mut().find(|known| known.same(&row)) {
            Some(known) => {
                row.serves.into_iter().for_each(|serves| known.serve(serves));
                known.asks.join(&row.asks);
            }
            None => all.push(row),
        }
    }
    all
}

/// Rows that lie together on the walk.
#[derive(Debug)]
pub(super) struct Group<'a> {
    /// Where, in words.
    pub(super) place: String,
    /// The rows.
    pub(super) rows: Vec<Row<'a>>,
}

/// All rows, group by group; those of what is asked above the listed
/// freeboard come last.
pub(super) fn groups<'a>(subject: &Subject<'a>, above: Option<&'a Check>) -> Vec<Group<'a>> {
    let plan = Plan { subject, check: subject.check };
    let mut groups = plan.tools();
    groups.extend(plan.gear());
    groups.extend(plan.people());
    groups.push(plan.look_for());
    groups.extend(above.map(|above| plan.above(above)).unwrap_or_default());
    groups.retain(|group| !group.rows.is_empty());
    let rows = groups.iter_mut().flat_map(|group| &mut group.rows);
    let mut titles: Vec<(String, String)> = Vec::new();
    for (index, row) in rows.enumerate() {
        row.number = index + 1;
        for serves in &mut row.serves {
            let title = (serves.title.clone(), serves.clause.clone());
            serves.again = titles.contains(&title);
            titles.push(title);
        }
    }
    groups
}

/// The attributes that are told how to measure, in the order of the rows.
pub(super) fn legend(subject: &Subject<'_>, groups: &[Group<'_>]) -> Vec<AttributeId> {
    let mut ids = Vec::new();
    for ask in groups.iter().flat_map(|group| &group.rows).flat_map(|row| &row.asks.list) {
        let told = subject.vocabulary.attribute(ask.attribute).measure.is_some();
        if told && !ids.contains(&ask.attribute) {
            ids.push(ask.attribute);
        }
    }
    ids
}

pub(super) struct Plan<'a, 'b> {
    pub(super) subject: &'b Subject<'a>,
    pub(super) check: &'a Check,
}

/// A requirement that binds or may bind, with the words for it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Asked<'a> {
    pub(super) words: Words<'a>,
    pub(super) judgement: &'a Judgement,
    pub(super) requirement: &'a Requirement,
    pub(super) finding: &'a Finding,
}

impl<'a> Plan<'a, '_> {
    fn words(&self, check: &'a Check, judgement: &'a Judgement) -> Words<'a> {
        Words { vessel: &check.vessel, ..self.subject.words(judgement) }
    }

    /// Every requirement that binds or may bind in the check of this plan.
    pub(super) fn asked(&self) -> impl Iterator<Item = Asked<'a>> {
        self.asked_in(self.check)
    }

    pub(super) fn asked_in(&self, check: &'a Check) -> impl Iterator<Item = Asked<'a>> {
        check.judgements.iter().flat_map(move |judgement| {
            let words = self.words(check, judgement);
            judgement.findings.iter().filter_map(move |finding| {
                let requirement = judgement.profile.requirements.get(finding.requirement)?;
                Some(Asked { words, judgement, requirement, finding })
            })
        })
    }

    pub(super) fn row(&self, thing: Thing<'a>) -> Row<'a> {
        Row { number: 0, thing, serves: Vec::new(), asks: Asks::default(), several: false }
    }

    /// What a row serves, with where it is asked and at which level.
    pub(super) fn serves(&self, asked: &Asked<'a>, more: Vec<String>) -> Serves {
        let only = asked.words.only_where(&asked.requirement.when);
        self.serves_where(asked, only, more)
    }

    /// The same, where it was said otherwise when it is asked.
    pub(super) fn serves_where(
        &self,
        asked: &Asked<'a>,
        only: Option<String>,
        more: Vec<String>,
    ) -> Serves {
        let (requirement, locale) = (asked.requirement, self.subject.locale);
        let mut all: Vec<String> = Vec::new();
        all.extend(only.map(|only| locale.sheet_asked(&only)));
        if requirement.level == Level::Recommended {
            all.push(locale.sheet_recommended().to_owned());
        }
        all.extend(requirement.inspection.map(|every| locale.sheet_inspection_due(&every)));
        all.extend(more);
        Serves {
            title: requirement.title.to_string(),
            clause: requirement.clause.clone(),
            rules: rule_of(self.check, asked.judgement).into_iter().collect(),
            again: false,
            more: all,
        }
    }

    /// The tools by where they are stowed, in the order of first mention;
    /// then those without a place, then the papers.
    fn tools(&self) -> Vec<Group<'a>> {
        let vessel = &self.check.vessel;
        let mut stowed: Vec<Group<'a>> = Vec::new();
        let (mut nowhere, mut papers) = (Vec::new(), Vec::new());
        for (index, tool) in vessel.kit.iter().enumerate() {
            if self.is_rest_of_a_lot(index) {
                continue;
            }
            let row = self.tool(index, tool);
            let document = self.subject.vocabulary.kind(tool.kind).class == Class::Document;
            match &tool.stowed {
                Some(place) => match stowed.iter_mut().find(|group| group.place == *place) {
                    Some(group) => group.rows.push(row),
                    None => stowed.push(Group { place: place.clone(), rows: vec![row] }),
                },
                None if document => papers.push(row),
                None => nowhere.push(row),
            }
        }
        let locale = self.subject.locale;
        stowed.push(Group { place: locale.sheet_no_place().to_owned(), rows: nowhere });
        stowed.push(Group { place: locale.sheet_papers().to_owned(), rows: papers });
        stowed
    }

    /// The broken rest of a lot is seen with the lot.
    fn is_rest_of_a_lot(&self, tool: usize) -> bool {
        let any = self.check.judgements.first();
        any.is_some_and(|judgement| self.words(self.check, judgement).broken_of(tool).is_some())
    }

    fn tool(&self, index: usize, tool: &'a Tool) -> Row<'a> {
        let locale = self.subject.locale;
        let mut row = self.row(Thing::Tool(tool));
        for asked in self.asked() {
            let Asked { words, judgement, requirement, .. } = asked;
            row.asks.rule = rule_of(self.check, judgement);
            let own = of_kind(requirement, tool.kind);
            let mut more = Vec::new();
            if let Need::Tools { least, types, spare_for } = &requirement.need {
                if types.len() > 1 {
                    more.extend(types_of(&own, *least, locale));
                }
                more.extend(spare_for.map(|of| locale.sheet_fits_tool_of(&words.title(of))));
            }
            for placed in &own {
                row.asks.add(&words, requirement, *placed);
            }
            let mut serves = !own.is_empty();
            for deemed in &requirement.deemed {
                let Some(other) = words.requirement(deemed.requirement) else { continue };
                if !of_kind(other, tool.kind).is_empty() && own.is_empty() {
                    row.asks.counts_for(&words, &deemed.tests, &requirement.clause);
                    more.push(locale.sheet_counts_as(&other.clause));
                    serves = true;
                }
            }
            if serves {
                row.serve(self.serves(&asked, more));
            }
        }
        let rest = self.check.vessel.kit.get(index + 1);
        row.several = tool.count > 1 || rest.is_some_and(|rest| is_rest(tool, rest));
        row.asks.notes.extend(self.state_of(index, tool));
        row
    }

    /// What the list says that an inspector has to know at the spot.
    fn state_of(&self, index: usize, tool: &Tool) -> Vec<String> {
        let locale = self.subject.locale;
        let mut notes = Vec::new();
        let rest = self.check.vessel.kit.get(index + 1);
        let rest = rest.filter(|rest| is_rest(tool, rest));
        match (tool.count, rest) {
            (good, Some(rest)) => {
                notes.push(locale.sheet_listed_broken(&(good + rest.count), &rest.count));
            }
            (1, None) => {}
            (count, None) => notes.push(locale.sheet_listed_count(&count)),
        }
        match &tool.whereabouts {
            Whereabouts::Aboard => {}
            Whereabouts::Ashore => notes.push(locale.sheet_listed_ashore().to_owned()),
            Whereabouts::Lent { to, span } => notes.push(match span.until {
                Some(until) => locale.sheet_listed_lent_until(to, &until),
                None => locale.sheet_listed_lent(to),
            }),
            Whereabouts::Missing => notes.push(locale.sheet_listed_lost().to_owned()),
            Whereabouts::Unknown => notes.push(locale.sheet_listed_nowhere().to_owned()),
        }
        if !tool.fits.is_empty() {
            notes.push(locale.sheet_listed_fitting(&figures::all_of(&tool.fits, locale)));
        }
        notes.extend(tool.expires.map(|day| locale.sheet_listed_good(&day)));
        notes.extend(tool.inspected.map(|day| locale.sheet_listed_inspected(&day)));
        notes
    }

    /// The hooks and lines of which a rule asks something.
    fn gear(&self) -> Vec<Group<'a>> {
        let vessel = &self.check.vessel;
        let pieces = vessel.hooks.iter().chain(&vessel.lines).flatten();
        let rows = pieces.filter_map(|piece| {
            let mut row = self.row(Thing::Gear(piece));
            for asked in self.asked() {
                let Asked { words, judgement, requirement, .. } = asked;
                if !matches!(requirement.need, Need::Gear { .. }) {
                    continue;
                }
                row.asks.rule = rule_of(self.check, judgement);
                let own = of_kind(requirement, piece.tool.kind);
                own.iter().for_each(|placed| row.asks.add(&words, requirement, *placed));
                if !own.is_empty() {
                    row.serve(self.serves(&asked, Vec::new()));
                }
            }
            (!row.serves.is_empty()).then_some(row)
        });
        let place = self.subject.locale.sheet_gear().to_owned();
        vec![Group { place, rows: rows.collect() }]
    }

    fn people(&self) -> Vec<Group<'a>> {
        let rows = self.asked().filter_map(|asked| {
            let mut row = self.holders(&asked)?;
            row.serve(self.serves(&asked, Vec::new()));
            Some(row)
        });
        let place = self.subject.locale.sheet_people().to_owned();
        vec![Group { place, rows: merged(rows) }]
    }

    /// A row for the certificates that a requirement asks.
    pub(super) fn holders(&self, asked: &Asked<'a>) -> Option<Row<'a>> {
        let Need::Certificates { kind, holders, valid } = &asked.requirement.need else {
            return None;
        };
        let mut row = self.row(Thing::Holders(holders));
        row.asks.notes.push(asked.words.vocabulary.kind(*kind).name.clone());
        row.asks.notes.extend(valid.map(|span| self.subject.locale.sheet_good_for(&span)));
        Some(row)
    }
}

/// Whether a tool is the broken part of the lot before it.
fn is_rest(lot: &Tool, rest: &Tool) -> bool {
    rest.broken_part_of() == Some(&lot.mark)
}

/// `part of set of three canine mouth gags; 2 types asked`.
fn types_of(own: &[Placed<'_>], least: u32, locale: Locale) -> Option<String> {
    let mut names: Vec<String> = Vec::new();
    for of_type in own.iter().filter_map(|placed| placed.of_type) {
        let name = of_type.name.clone().unwrap_or_default();
        let count: u32 = of_type.members.iter().map(|member| member.count).sum();
        let text = if count > 1 { locale.sheet_part_of(&name) } else { name };
        if !text.is_empty() && !names.contains(&text) {
            names.push(text);
        }
    }
    (!names.is_empty()).then(|| locale.sheet_types_asked(&figures::any_of(&names, locale), least))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn serves(title: &str, clause: &str, rule: &str) -> Serves {
        let rules = Some(rule.to_owned()).filter(|rule| !rule.is_empty()).into_iter().collect();
        let (title, clause) = (title.to_owned(), clause.to_owned());
        Serves { title, clause, rules, again: false, more: Vec::new() }
    }

    fn row(rule: &str) -> Row<'static> {
        let serves = vec![serves("Pliers", "A.9", rule)];
        Row { number: 0, thing: Thing::LookFor, serves, asks: Asks::default(), several: false }
    }

    #[test]
    fn the_same_clause_of_another_rule_is_named_with_the_one_that_is_there() {
        let mut row = row("1");
        row.serve(serves("Pliers", "A.9", "2"));
        row.serve(serves("Cutters", "A.9", "1"));
        row.serve(serves("Pliers", "A.10", "1"));
        row.serve(Serves { more: vec!["recommended".into()], ..serves("Pliers", "A.9", "3") });
        let rules: Vec<_> = row.serves.iter().map(|serves| serves.rules.join(" ")).collect();
        assert_eq!(rules, ["1 2", "1", "1", "3"]);
    }

    #[test]
    fn rows_of_other_rules_that_ask_the_same_are_one() {
        let noted = |rule, note: &str| {
            let mut row = row(rule);
            row.asks.notes.push(note.to_owned());
            row
        };
        let holders = |rule| Row { thing: Thing::Holders(&Holders::People(1)), ..row(rule) };
        let count = |rows: Vec<Row<'static>>| merged(rows.into_iter()).len();
        assert_eq!(count(vec![row("1"), row("2")]), 1);
        // What one rule asks twice is asked for twice, and so where there is one.
        assert_eq!(count(vec![row("1"), row("1")]), 2);
        assert_eq!(count(vec![row(""), row("")]), 2);
        assert_eq!(count(vec![noted("1", "pliers"), noted("2", "cutters")]), 2);
        assert_eq!(count(vec![row("1"), holders("2")]), 2);
        assert_eq!(count(vec![holders("1"), holders("2")]), 1);
    }
}
