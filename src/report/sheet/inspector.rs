//! The inspector's sheet: a form in HTML to walk the deck with.
//!
//! Imports `model` and the words beside it. One row is one thing in hand,
//! with a box for each figure that any binding requirement asks of it.

use super::asks::Ask;
use super::boxes::{entry, extras, figures, letter, signatures, square};
use super::digest::Digest;
use super::rows::{self, Group, Row, Serves, Thing};
use super::shared::{STYLE, editions, foot, has_stubs, laid_over, notices, rule_of, stubs};
use crate::model::check::Check;
use crate::model::profile::{FreeboardFrom, Requirement};
use crate::model::rule::{Base, Bound, Condition, Test};
use crate::model::vocabulary::{AttributeId, AttributeShape, Class, Vocabulary};
use crate::report::render::base::{document, shown};
use crate::report::words::{sheet as said, specs};
use crate::report::{Locale, Subject};
use maud::{Markup, html};

/// The sheet as one document of HTML.
pub(super) fn page(subject: &Subject<'_>, above: Option<&Check>, digest: &Digest) -> String {
    let groups = rows::groups(subject, above);
    let legend = rows::legend(subject, &groups);
    let vessel = &subject.check.vessel;
    let locale = subject.locale;
    let form = Form { subject, legend: &legend };
    let body = html! {
        main.sheet.deck {
            h1.rail { (shown(&locale.sheet_inspector(&vessel.name))) }
            (form.head())
            (notices(subject))
            (stubs(subject))
            table.walk {
                colgroup { col.numbers; col; }
                thead { tr { th colspan="2" { (form.running(digest)) } } }
                @for group in &groups { (form.group(group)) }
                tbody.foot {
                    tr { td colspan="2" { (form.legend()) (signatures(locale)) (foot(locale)) } }
                }
            }
        }
    };
    document(&locale.sheet_inspector_title(&vessel.name), STYLE, &body)
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
        let (check, locale) = (self.subject.check, self.subject.locale);
        let ids = check.judgements.iter().map(|judgement| match rule_of(check, judgement) {
            Some(number) => locale.sheet_rule(&number, &judgement.profile.id),
            None => judgement.profile.id.clone(),
        });
        let ids: Vec<_> = ids.collect();
        html! {
            div.running {
                span { (shown(&said::vessel_line(&check.vessel))) }
                span { (locale.sheet_trip(&check.asked.departure, &check.asked.back)) }
                span { (locale.sheet_digest()) " " b.digest { (digest) } }
                span { (shown(&ids.join(", "))) }
            }
        }
    }

    /// What is known of the vessel, and the boxes for it.
    fn head(&self) -> Markup {
        let (vessel, locale) = (&self.subject.check.vessel, self.subject.locale);
        let stations = &vessel.freeboard.stations;
        html! {
            (editions(self.subject))
            @if let Some(laid) = laid_over(self.subject) { p.laid { b { (shown(&laid)) } } }
            p.soft {
                (locale.sheet_how_to())
                @if !stations.is_empty() { " " (locale.sheet_worked_out()) }
            }
            div.facts {
                @if stations.is_empty() {
                    p.first { strong { (locale.sheet_no_freeboard()) } }
                    (entry(&html! { strong { (said::freeboard_box(self.rule_takes_from(), locale)) } }))
                }
                @for station in stations {
                    (entry(&html! {
                        strong { (said::freeboard_box(vessel.freeboard.from, locale)) }
                        @if let Some(name) = &station.name {
                            ", " (shown(&locale.sheet_at_station(name)))
                        }
                        "; "
                        (locale.sheet_listed_figure(&said::listed_freeboard(station, locale)))
                    }))
                }
                @if self.other_place() {
                    (entry(&html! {
                        strong { (said::freeboard_box(self.rule_takes_from(), locale)) }
                        ": "
                        (match vessel.freeboard.from {
                            FreeboardFrom::Rail => locale.sheet_measured_from_rail(),
                            FreeboardFrom::Deck => locale.sheet_measured_from_deck(),
                        })
                    }))
                }
                @for id in self.features() {
                    @let name = self.vocabulary().vessel_features.get(&id).map(|tag| tag.name.clone());
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

    /// The requirements that bind or may bind.
    fn requirements(&self) -> impl Iterator<Item = &Requirement> {
        self.subject.check.judgements.iter().flat_map(|judgement| {
            let requirements = &judgement.profile.requirements;
            let findings = judgement.findings.iter();
            findings.filter_map(|finding| requirements.get(finding.requirement))
        })
    }

    /// Features of the vessel on which something hangs.
    fn features(&self) -> Vec<String> {
        let conditions = self.requirements().flat_map(|requirement| {
            let of_specs = specs(requirement).into_iter().flat_map(|spec| &spec.when);
            requirement.when.iter().chain(requirement.unless.iter().flatten()).chain(of_specs)
        });
        let mut ids: Vec<String> = Vec::new();
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
        let locale = self.subject.locale;
        let mut bases = Vec::new();
        let mut see = |test: &Test| {
            if let Test::Limit { limit, .. } = test {
                bases.extend(limit.bounds().flat_map(Bound::bases));
            }
        };
        let specs = self.requirements().flat_map(specs);
        specs.for_each(|spec| Test::each(&spec.tests, &mut see));
        let mut facts = Vec::new();
        for base in bases {
            let fact = match base {
                Base::HeaviestHook => locale.sheet_heaviest_hook(),
                Base::ThickestLine => locale.sheet_thickest_line(),
                Base::ThickestLeader => locale.sheet_thickest_leader(),
                Base::Freeboard => continue,
            };
            if !facts.contains(&fact) {
                facts.push(fact);
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
                        (extras(row, self.subject.locale))
                        @if row.serves.is_empty() && has_stubs(self.subject.check) {
                            (figures(self.subject.locale))
                        }
                    }
                }
            }
        }
    }

    /// Whether it is there and works; a paper only whether it is there.
    fn state(&self, thing: &Thing<'_>) -> Markup {
        let locale = self.subject.locale;
        let works = match thing {
            Thing::Tool(tool) => self.vocabulary().kind(tool.kind).class != Class::Document,
            Thing::LookFor => true,
            Thing::Gear(_) | Thing::Holders(_) => return html! {},
        };
        html! {
            div.state {
                (square(&html! { (locale.sheet_there()) }))
                @if works { (square(&html! { (locale.sheet_works()) })) }
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
        let locale = self.subject.locale;
        html! {
            @if let Some((mark, kind)) = name { b.mark { (shown(mark)) } " " (shown(kind)) }
            @if row.serves.is_empty() {
                ": " (said::not_asked(has_stubs(self.subject.check), locale))
            }
            @for (index, serves) in row.serves.iter().enumerate() {
                @let same = name.is_some_and(|(_, kind)| same_words(kind, &serves.title));
                @match (index, same) {
                    (0, true) => { " " }
                    (0, false) if name.is_none() => {}
                    (0, false) if serves.again => { ", " (locale.sheet_for()) " " }
                    (0, false) => { ", " (locale.sheet_for_these()) " " }
                    _ => { " / " }
                }
                (serving(serves, same || (serves.again && name.is_some()), locale))
            }
            @if !row.asks.notes.is_empty() { i.note { ". " (shown(&row.asks.notes.join("; "))) } }
        }
    }

    /// A box for a figure, squares for a feature or for words.
    fn ask(&self, row: &Row<'_>, ask: &Ask) -> Markup {
        let attribute = self.vocabulary().attribute(ask.attribute);
        let locale = self.subject.locale;
        let name = html! {
            @if ask.or { (locale.sheet_or()) " " }
            span.asked { (shown(&attribute.name)) } (self.letter(ask.attribute))
            @if !attribute.shown { "*" }
            @if let Some(only) = row.only(ask, locale) { " (" (only) ")" }
        };
        let text = ask.text(locale);
        match attribute.shape {
            AttributeShape::Quantity(_) => entry(&html! { (name) " " (shown(&text)) }),
            AttributeShape::Feature => square(&html! {
                (name)
                @if !ask.is_plain(locale) { ": " (shown(&locale.sheet_must_be(&text))) }
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
                    h2 { (self.subject.locale.sheet_how_to_measure()) }
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
fn serving(serves: &Serves, untitled: bool, locale: Locale) -> Markup {
    html! {
        @if !untitled { (shown(&serves.title)) " " }
        "(" (shown(&serves.cited(locale))) @for more in &serves.more { "; " (shown(more)) } ")"
    }
}

fn same_words(one: &str, other: &str) -> bool {
    one.to_lowercase() == other.to_lowercase()
}
