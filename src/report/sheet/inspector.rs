//! The inspector's sheet: a form in HTML to walk the deck with.
//!
//! Imports `model` and the words beside it. One row is one thing in hand,
//! with a box for each figure that any binding requirement asks of it.

use super::asks::Ask;
use super::boxes::{entry, extras, letter, signatures, square};
use super::digest::Digest;
use super::rows::{Group, Row, Serves, Thing};
use super::{STYLE, editions, laid_over, notices, rule_of, stubs};
use crate::model::check::Check;
use crate::model::profile::FreeboardFrom;
use crate::model::rule::{Base, Bound, Condition, Limit, Test};
use crate::model::vocabulary::{AttributeId, AttributeShape, Class, Vocabulary};
use crate::report::render::base::{document, shown};
use crate::report::words::{self, sheet as said, specs};
use crate::report::{Locale, Subject, sheet::rows};
use maud::{Markup, html};

/// The sheet as one document of HTML.
pub(super) fn page(subject: &Subject<'_>, above: Option<&Check>, digest: &Digest) -> String {
    let groups = rows::groups(subject, above);
    let legend = rows::legend(subject, &groups);
    let vessel = &subject.check.vessel;
    let form = Form { subject, legend: &legend };
    let body = html! {
        main.sheet.deck {
            h1.rail { "Deck sheet for the inspector: " (shown(&vessel.name)) }
            (form.head())
            (notices(subject))
            (stubs(subject))
            table.walk {
                colgroup { col.numbers; col; }
                thead { tr { th colspan="2" { (form.running(digest)) } } }
                @for group in &groups { (form.group(group)) }
                tbody.foot { tr { td colspan="2" { (form.legend()) (signatures()) (foot(subject.locale)) } } }
            }
        }
    };
    document(&format!("Deck sheet, {}", vessel.name), STYLE, &body)
}

struct Form<'a> {
    subject: &'a Subject<'a>,
    legend: &'a [AttributeId],
}

impl Form<'_> {
    fn vocabulary(&self) -> &Vocabulary {
        self.subject.vocabulary
    }

    /// What stands on every page, so that a loose one finds its way back.
    fn running(&self, digest: &Digest) -> Markup {
        let check = self.subject.check;
        let ids = check.judgements.iter().map(|judgement| {
            let number = rule_of(check, judgement).map(|number| format!("rule {number}: "));
            format!("{}{}", number.unwrap_or_default(), judgement.profile.id)
        });
        let ids: Vec<_> = ids.collect();
        html! {
            div.running {
                span { (shown(&said::vessel_line(&check.vessel).join(", "))) }
                span { "trip " (check.asked.departure) " to " (check.asked.back) }
                span { "sheet " b.digest { (digest) } }
                span { (shown(&ids.join(", "))) }
            }
        }
    }

    /// What is known of the vessel, and the boxes for it.
    fn head(&self) -> Markup {
        let vessel = &self.subject.check.vessel;
        let stations = &vessel.freeboard.stations;
        html! {
            (editions(self.subject.check))
            @if let Some(laid) = laid_over(self.subject) { p.laid { b { (shown(&laid)) } } }
            p.soft { (said::HOW_TO) @if !stations.is_empty() { " " (said::WORKED_OUT) } }
            div.facts {
                @if stations.is_empty() {
                    p.first { strong { (said::NO_FREEBOARD) } }
                    (entry(&html! { strong { (said::freeboard_box(self.rule_takes_from())) } }))
                }
                @for station in stations {
                    (entry(&html! {
                        strong { (said::freeboard_box(vessel.freeboard.from)) }
                        @if let Some(name) = &station.name { ", at " (shown(name)) }
                        "; listed: " (said::listed_freeboard(station, self.subject.locale))
                    }))
                }
                @if self.other_place() {
                    (entry(&html! {
                        strong { (said::freeboard_box(self.rule_takes_from())) }
                        ": the list measured it from " (words::taken_from(vessel.freeboard.from, self.subject.locale))
                    }))
                }
                @for id in self.features() {
                    @let name = self.vocabulary().vessel_features.get(&id).cloned();
                    (square(&html! { (shown(&name.unwrap_or(id))) }))
                }
                @for fact in self.gear_facts() { (entry(&html! { (fact) })) }
            }
        }
    }

    /// From where the rules take the freeboard; the first one's word, since a
    /// list of two places has two boxes.
    fn rule_takes_from(&self) -> FreeboardFrom {
        let first = self.subject.check.judgements.first();
        first.map_or(self.subject.check.vessel.freeboard.from, |j| j.profile.freeboard_from)
    }

    fn other_place(&self) -> bool {
        let from = self.subject.check.vessel.freeboard.from;
        let listed = !self.subject.check.vessel.freeboard.stations.is_empty();
        listed && self.subject.check.judgements.iter().any(|j| j.profile.freeboard_from != from)
    }

    /// Features of the vessel on which something hangs.
    fn features(&self) -> Vec<String> {
        let mut ids: Vec<String> = Vec::new();
        let mut conditions: Vec<&Condition> = Vec::new();
        for judgement in &self.subject.check.judgements {
            for finding in &judgement.findings {
                let requirement = judgement.profile.requirements.get(finding.requirement);
                let Some(requirement) = requirement else { continue };
                conditions.extend(&requirement.when);
                conditions.extend(requirement.unless.iter().flatten());
                conditions.extend(specs(requirement).into_iter().flat_map(|spec| &spec.when));
            }
        }
        for condition in conditions {
            if let Condition::Feature { feature, .. } = condition
                && !ids.contains(feature)
            {
                ids.push(feature.clone());
            }
        }
        ids
    }

    /// Figures of the fishing gear on which a limit hangs.
    fn gear_facts(&self) -> Vec<&'static str> {
        let mut facts = Vec::new();
        for judgement in &self.subject.check.judgements {
            for finding in &judgement.findings {
                let requirement = judgement.profile.requirements.get(finding.requirement);
                let tests = requirement.into_iter().flat_map(specs).flat_map(|spec| &spec.tests);
                for base in tests.flat_map(bases) {
                    let fact = match base {
                        Base::HeaviestHook => "wire of the heaviest hook aboard",
                        Base::ThickestLine => "diameter of the thickest fishing line aboard",
                        Base::ThickestLeader => "diameter of the thickest leader aboard",
                        Base::Freeboard => continue,
                    };
                    if !facts.contains(&fact) {
                        facts.push(fact);
                    }
                }
            }
        }
        facts
    }

    fn group(&self, group: &Group<'_>) -> Markup {
        html! {
            tbody {
                @for (index, row) in group.rows.iter().enumerate() {
                    @if index == 0 {
                        tr.place { th colspan="2" scope="rowgroup" { (shown(&group.place)) } }
                    }
                    (self.row(row))
                }
            }
        }
    }

    fn row(&self, row: &Row<'_>) -> Markup {
        html! {
            tr.thing {
                th.number scope="row" { (row.number) }
                td {
                    div.flow {
                        div.what { (self.what(row)) }
                        (self.state(&row.thing))
                        @for ask in row.asks.list.iter().filter(|ask| self.is_figure(ask)) { (self.ask(row, ask)) }
                        @for ask in row.asks.list.iter().filter(|ask| !self.is_figure(ask)) { (self.ask(row, ask)) }
                        (extras(row))
                        @if row.serves.is_empty() && self.stubs() {
                            div.ask { span.said { "its figures" } span.box.wide {} }
                        }
                    }
                }
            }
        }
    }

    /// Whether a rule binds that is not in this program.
    fn stubs(&self) -> bool {
        self.subject.check.judgements.iter().any(|judgement| !judgement.profile.encoded)
    }

    /// Whether it is there and works; a paper only whether it is there.
    fn state(&self, thing: &Thing<'_>) -> Markup {
        let words: &[&str] = match thing {
            Thing::Tool(tool) if self.vocabulary().kind(tool.kind).class == Class::Document => {
                &["there"]
            }
            Thing::Tool(_) | Thing::LookFor => &["there", "works"],
            Thing::Gear(_) | Thing::Holders(_) => &[],
        };
        html! {
            @if !words.is_empty() {
                div.state { @for word in words { (square(&html! { (word) })) } }
            }
        }
    }

    fn is_figure(&self, ask: &Ask) -> bool {
        matches!(self.vocabulary().attribute(ask.attribute).shape, AttributeShape::Quantity(_))
    }

    /// What it is, what it is for, and what the list says of it.
    fn what(&self, row: &Row<'_>) -> Markup {
        let name = match row.thing {
            Thing::Tool(tool) => {
                let kind = &self.vocabulary().kind(tool.kind).name;
                Some((&tool.mark, tool.name.as_ref().unwrap_or(kind)))
            }
            Thing::Gear(piece) => {
                Some((&piece.name, &self.vocabulary().kind(piece.tool.kind).name))
            }
            Thing::Holders(_) | Thing::LookFor => None,
        };
        html! {
            @if let Some((mark, kind)) = name { b.mark { (shown(mark)) } " " (shown(kind)) }
            @if row.serves.is_empty() { ": " (said::not_asked(self.stubs())) }
            @for (index, serves) in row.serves.iter().enumerate() {
                @let same = name.is_some_and(|(_, kind)| same_words(kind, &serves.title));
                @match (index, same) {
                    (0, true) => { " " }
                    (0, false) if name.is_none() => {}
                    (0, false) if serves.again => { ", for " }
                    (0, false) => { ", for: " }
                    _ => { " / " }
                }
                (serving(serves, same || (serves.again && name.is_some())))
            }
            @if !row.asks.notes.is_empty() { i.note { ". " (shown(&row.asks.notes.join("; "))) } }
        }
    }

    /// A box for a figure, squares for a feature or for words.
    fn ask(&self, row: &Row<'_>, ask: &Ask) -> Markup {
        let attribute = self.vocabulary().attribute(ask.attribute);
        let name = html! {
            @if ask.or { "or: " }
            span.asked { (shown(&attribute.name)) } (self.letter(ask.attribute))
            @if !attribute.shown { "*" }
            @if let Some(only) = row.only(ask) { " (" (only) ")" }
        };
        let text = ask.text();
        match attribute.shape {
            AttributeShape::Quantity(_) => entry(&html! { (name) " " (shown(&text)) }),
            AttributeShape::Feature => square(&html! {
                (name) @if !ask.is_plain() { ": must be " (shown(&text)) }
            }),
            AttributeShape::Choice(_) | AttributeShape::Name => html! {
                div.yesno.choice {
                    span.name { (name) }
                    @for word in ask.words() { span.word-box { span.square {} (shown(&word)) } }
                }
            },
        }
    }

    /// The letter of the legend that tells how it is measured.
    fn letter(&self, attribute: AttributeId) -> Markup {
        let at = self.legend.iter().position(|id| *id == attribute);
        html! { @if let Some(at) = at { " " span.letter { "(" (letter(at)) ")" } } }
    }

    fn legend(&self) -> Markup {
        html! {
            @if !self.legend.is_empty() {
                section.legend {
                    h2 { "How to measure" }
                    ul {
                        @for (at, id) in self.legend.iter().enumerate() {
                            @let attribute = self.vocabulary().attribute(*id);
                            @let measure = attribute.measure.clone().unwrap_or_default();
                            li { b { "(" (letter(at)) ") " (shown(&attribute.name)) } ": " (shown(&measure)) ". " }
                        }
                    }
                }
            }
        }
    }
}

/// What a thing serves, with its clause; the title is left out where it is
/// the thing's own name, or stands on the sheet already.
fn serving(serves: &Serves, untitled: bool) -> Markup {
    html! {
        @if !untitled { (shown(&serves.title)) " " }
        "(" (shown(&serves.cited())) @for more in &serves.more { "; " (shown(more)) } ")"
    }
}

fn same_words(one: &str, other: &str) -> bool {
    one.to_lowercase() == other.to_lowercase()
}

/// The cautions that stand under every paper.
pub(super) fn foot(locale: Locale) -> Markup {
    html! { footer { p { (locale.caution()) } p { (locale.foot()) } } }
}

/// What a test's figures are a percentage of.
fn bases(test: &Test) -> Vec<Base> {
    fn of(bound: &Bound) -> Vec<Base> {
        match bound {
            Bound::Fixed { .. } => Vec::new(),
            Bound::Share(_, base) => vec![*base],
            Bound::Greater(limbs) | Bound::Lesser(limbs) => limbs.iter().flat_map(of).collect(),
        }
    }
    match test {
        Test::Limit { limit, .. } => match limit {
            Limit::Any | Limit::About { .. } => Vec::new(),
            Limit::AtLeast(b) | Limit::MoreThan(b) | Limit::AtMost(b) | Limit::LessThan(b) => of(b),
            Limit::Within(low, high) => of(low).into_iter().chain(of(high)).collect(),
        },
        Test::AnyOf(groups) | Test::Readings(groups) => {
            groups.iter().flatten().flat_map(bases).collect()
        }
        Test::Feature { .. } | Test::Choice { .. } | Test::AcquiredBefore(_) => Vec::new(),
    }
}
