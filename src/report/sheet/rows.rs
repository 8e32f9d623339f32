//! The rows of a sheet: one for each thing that an inspector takes in hand,
//! in the order of the walk around the deck, numbered from one.
//!
//! Imports `model` and the words beside it. The same inputs give the same
//! rows with the same numbers.

use super::asks::{Ask, Asks, Placed, of_kind, placed};
use crate::model::check::{Check, Judgement};
use crate::model::finding::{Finding, Outcome};
use crate::model::profile::{Level, Requirement};
use crate::model::reason::Reason;
use crate::model::rule::{Holders, Need};
use crate::model::vessel::{GearPiece, Tool, Whereabouts};
use crate::model::vocabulary::{AttributeId, Class};
use crate::report::Subject;
use crate::report::words::{Words, figures};

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
    /// Whether its title stands in a row before.
    pub(super) again: bool,
    /// What else is to be said: where it is asked, what it is a part of.
    pub(super) more: Vec<String>,
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
}

/// Rows that lie together on the walk.
#[derive(Debug)]
pub(super) struct Group<'a> {
    /// Where, in words.
    pub(super) place: String,
    /// The rows.
    pub(super) rows: Vec<Row<'a>>,
}

/// All rows, group by group.
pub(super) fn groups<'a>(subject: &Subject<'a>) -> Vec<Group<'a>> {
    let plan = Plan { subject, check: subject.check };
    let mut groups = plan.tools();
    groups.extend(plan.gear());
    groups.extend(plan.people());
    groups.extend(plan.look_for());
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

struct Plan<'a, 'b> {
    subject: &'b Subject<'a>,
    check: &'a Check,
}

impl<'a> Plan<'a, '_> {
    fn words(&self, judgement: &'a Judgement) -> Words<'a> {
        Words {
            vocabulary: self.subject.vocabulary,
            vessel: &self.check.vessel,
            profile: &judgement.profile,
            units: self.subject.units,
        }
    }

    /// Every requirement that binds or may bind, with the words for it.
    fn asked(&self) -> impl Iterator<Item = (Words<'a>, &'a Requirement, &'a Finding)> {
        self.check.judgements.iter().flat_map(|judgement| {
            let words = self.words(judgement);
            judgement.findings.iter().filter_map(move |finding| {
                let requirement = judgement.profile.requirements.get(finding.requirement)?;
                Some((words, requirement, finding))
            })
        })
    }

    fn row(&self, thing: Thing<'a>) -> Row<'a> {
        Row { number: 0, thing, serves: Vec::new(), asks: Asks::default() }
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
        stowed.push(Group { place: "the list names no place for these".to_owned(), rows: nowhere });
        stowed.push(Group { place: "papers".to_owned(), rows: papers });
        stowed
    }

    /// The broken rest of a lot is seen with the lot.
    fn is_rest_of_a_lot(&self, tool: usize) -> bool {
        let any = self.check.judgements.first();
        any.is_some_and(|judgement| self.words(judgement).broken_of(tool).is_some())
    }

    fn tool(&self, index: usize, tool: &'a Tool) -> Row<'a> {
        let mut row = self.row(Thing::Tool(tool));
        for (words, requirement, _) in self.asked() {
            let own = of_kind(requirement, tool.kind);
            let mut more = Vec::new();
            if let Need::Tools { least, types, spare_for } = &requirement.need {
                if types.len() > 1 {
                    more.extend(types_of(&own, *least));
                }
                more.extend(spare_for.map(|of| format!("fits the tool of: {}", words.title(of))));
            }
            for placed in &own {
                row.asks.add(&words, requirement, *placed);
            }
            let mut serves = !own.is_empty();
            for deemed in &requirement.deemed {
                let Some(other) = words.requirement(deemed.requirement) else { continue };
                if !of_kind(other, tool.kind).is_empty() && own.is_empty() {
                    row.asks.counts_for(&words, &deemed.tests, &requirement.clause);
                    more.push(format!("counts as the tool of {}", other.clause));
                    serves = true;
                }
            }
            if serves {
                row.serves.push(serves_for(&words, requirement, more));
            }
        }
        row.asks.notes.extend(self.state_of(index, tool));
        row
    }

    /// What the list says that an inspector has to know at the spot.
    fn state_of(&self, index: usize, tool: &Tool) -> Vec<String> {
        let mut notes = Vec::new();
        let rest = self.check.vessel.kit.get(index + 1);
        let rest = rest.filter(|rest| rest.mark == format!("{} (broken)", tool.mark));
        match (tool.count, rest) {
            (good, Some(rest)) => {
                notes.push(format!("listed: {}, {} of them broken", good + rest.count, rest.count))
            }
            (1, None) => {}
            (count, None) => notes.push(format!("listed: {count}")),
        }
        match &tool.whereabouts {
            Whereabouts::Aboard => {}
            Whereabouts::Ashore => notes.push("listed as ashore".to_owned()),
            Whereabouts::Lent { to, span } => {
                let until = span.until.map(|day| format!(" until {day}")).unwrap_or_default();
                notes.push(format!("listed as lent to {to}{until}"));
            }
            Whereabouts::Missing => notes.push("listed as lost".to_owned()),
            Whereabouts::Unknown => notes.push("the list does not say where it is".to_owned()),
        }
        if !tool.fits.is_empty() {
            notes.push(format!("listed as fitting {}", figures::all_of(&tool.fits)));
        }
        notes.extend(tool.expires.map(|day| format!("listed as good through {day}")));
        notes.extend(tool.inspected.map(|day| format!("listed as inspected on {day}")));
        notes
    }

    /// The hooks and lines of which a rule asks something.
    fn gear(&self) -> Vec<Group<'a>> {
        let vessel = &self.check.vessel;
        let pieces = vessel.hooks.iter().chain(&vessel.lines).flatten();
        let rows = pieces.filter_map(|piece| {
            let mut row = self.row(Thing::Gear(piece));
            for (words, requirement, _) in self.asked() {
                if !matches!(requirement.need, Need::Gear { .. }) {
                    continue;
                }
                let own = of_kind(requirement, piece.tool.kind);
                own.iter().for_each(|placed| row.asks.add(&words, requirement, *placed));
                if !own.is_empty() {
                    row.serves.push(serves_for(&words, requirement, Vec::new()));
                }
            }
            (!row.serves.is_empty()).then_some(row)
        });
        vec![Group { place: "hooks and lines aboard".to_owned(), rows: rows.collect() }]
    }

    fn people(&self) -> Vec<Group<'a>> {
        let rows = self.asked().filter_map(|(words, requirement, _)| {
            let Need::Certificates { kind, holders, valid } = &requirement.need else {
                return None;
            };
            let mut row = self.row(Thing::Holders(holders));
            row.asks.notes.push(words.vocabulary.kind(*kind).name.clone());
            row.asks.notes.extend(valid.map(|span| format!("good for {span} from its issue")));
            row.serves.push(serves_for(&words, requirement, Vec::new()));
            Some(row)
        });
        vec![Group { place: "people and their certificates".to_owned(), rows: rows.collect() }]
    }

    /// What is asked and not on the list, or not often enough.
    fn look_for(&self) -> Vec<Group<'a>> {
        let rows = self
            .asked()
            .filter(|(_, _, finding)| finding.outcome != Outcome::Met)
            .filter_map(|(words, requirement, finding)| {
                let wanting = |reason: &Reason| {
                    matches!(
                        reason,
                        Reason::NothingAboard { .. }
                            | Reason::TooFew { .. }
                            | Reason::TooFewTypes { .. }
                            | Reason::NotListed { .. }
                    )
                };
                let certificates = matches!(requirement.need, Need::Certificates { .. });
                let reason = finding.reasons.iter().find(|because| wanting(&because.reason));
                let nothing = self.nothing_listed(requirement);
                if certificates || (reason.is_none() && !nothing) {
                    return None;
                }
                let mut row = self.row(Thing::LookFor);
                row.serves.push(serves_for(&words, requirement, Vec::new()));
                let complete = match reason.map(|because| &because.reason) {
                    Some(Reason::TooFewTypes { complete, .. }) => complete.as_slice(),
                    _ => &[],
                };
                row.asks.notes.extend(choices(&words, requirement, complete, &mut row.asks.list));
                Some(row)
            });
        let place = "not on the list, or not enough of it: look for".to_owned();
        vec![Group { place, rows: rows.collect() }]
    }

    fn nothing_listed(&self, requirement: &Requirement) -> bool {
        let vessel = &self.check.vessel;
        let kinds = requirement.kinds();
        match requirement.need {
            Need::Tools { .. } => !vessel.kit.iter().any(|tool| kinds.contains(&tool.kind)),
            Need::Gear { .. } => {
                let mut pieces = vessel.hooks.iter().chain(&vessel.lines).flatten();
                !pieces.any(|piece| kinds.contains(&piece.tool.kind))
            }
            Need::Certificates { .. } => false,
        }
    }
}

/// What a row serves, with where it is asked and at which level.
fn serves_for(words: &Words<'_>, requirement: &Requirement, more: Vec<String>) -> Serves {
    let mut all: Vec<String> = Vec::new();
    all.extend(words.only_where(&requirement.when).map(|only| format!("asked {only}")));
    if requirement.level == Level::Recommended {
        all.push("recommended".to_owned());
    }
    all.extend(requirement.inspection.map(|every| format!("inspection due every {every}")));
    all.extend(more);
    let title = requirement.title.to_string();
    Serves { title, clause: requirement.clause.clone(), again: false, more: all }
}

/// `part of set of three canine mouth gags; 2 types asked`.
fn types_of(own: &[Placed<'_>], least: u32) -> Option<String> {
    let mut names: Vec<String> = Vec::new();
    for of_type in own.iter().filter_map(|placed| placed.of_type) {
        let name = of_type.name.clone().unwrap_or_default();
        let count: u32 = of_type.members.iter().map(|member| member.count).sum();
        let text = if count > 1 { format!("part of {name}") } else { name };
        if !text.is_empty() && !names.contains(&text) {
            names.push(text);
        }
    }
    let types = if least == 1 { "type" } else { "types" };
    (!names.is_empty()).then(|| format!("{}; {least} {types} asked", figures::any_of(&names)))
}

/// What will do, where something has to be looked for: boxes for a single
/// thing, texts for several to choose from.
fn choices(
    words: &Words<'_>,
    requirement: &Requirement,
    complete: &[String],
    boxes: &mut Vec<Ask>,
) -> Vec<String> {
    if let Need::Tools { least, types, .. } = &requirement.need
        && types.len() > 1
    {
        let open = types.iter().filter_map(|of_type| of_type.name.clone());
        let open: Vec<_> = open.filter(|name| !complete.contains(name)).collect();
        let wanting = least.saturating_sub(u32::try_from(complete.len()).unwrap_or(u32::MAX));
        return vec![format!("at least {wanting} more of: {}", open.join("; "))];
    }
    let all = placed(requirement);
    if let [only] = all.as_slice() {
        let mut asks = Asks::default();
        asks.add(words, requirement, *only);
        boxes.append(&mut asks.list);
        let kind = words.vocabulary.kind(only.spec.kind).name.clone();
        let count = only.member.map_or(1, |member| member.count);
        let kind = if count > 1 { format!("{count} of: {kind}") } else { kind };
        return std::iter::once(kind).chain(asks.notes).collect();
    }
    let texts = all.iter().map(|placed| {
        let mut asks = Asks::default();
        asks.add(words, requirement, *placed);
        let kind = &words.vocabulary.kind(placed.spec.kind).name;
        let asked = asks.in_words(words.vocabulary);
        if asked.is_empty() { kind.clone() } else { format!("{kind}: {asked}") }
    });
    vec![texts.collect::<Vec<_>>().join("; or ")]
}
