//! What the time line shows and tells: until when what serves is good.
//!
//! Imports `engine::validity`, `model`, `measure`, the drawing and the words.

use crate::engine::validity::{self, End, Holding};
use crate::measure::{Day, DaySpan};
use crate::model::check::Judgement;
use crate::model::finding::{Asked, Because, Finding};
use crate::model::reason::Reason;
use crate::report::Locale;
use crate::report::draw::time::{self as drawing, letter};
use crate::report::render::base::{prose, shown};
use crate::report::words::{self, Words, figures, pages};
use maud::{Markup, html};

/// Things that are good over the same days.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Bar {
    span: DaySpan,
    end: End,
    certificate: bool,
    until: Day,
    names: Vec<String>,
}

/// The figure of one judgement; a sentence where nothing that serves has an
/// end; nothing where nothing serves.
pub(in crate::report) fn figure(
    words: &Words<'_>,
    judgement: &Judgement,
    asked: Asked,
    id: &str,
) -> Option<Markup> {
    let (bars, endless) = bars(words, judgement);
    match (bars.is_empty(), endless.is_empty()) {
        (true, true) => None,
        (true, false) => Some(html! { p { (words.locale.picture_all_endless()) } }),
        (false, _) => Some(drawn(words, judgement, asked, (&bars, &endless), id)),
    }
}

fn drawn(
    words: &Words<'_>,
    judgement: &Judgement,
    asked: Asked,
    (bars, endless): (&[Bar], &[String]),
    id: &str,
) -> Markup {
    let say = words.locale;
    let until = pages::ready_until(judgement.ready_until, say);
    let span = DaySpan { from: Some(asked.departure), until: Some(asked.back) };
    let trip = say.picture_trip(&words::span(span, say));
    let told: Vec<String> = bars.iter().map(|bar| told(bar, say)).collect();
    let facts = [trip.clone(), until.clone()].into_iter().chain(told.iter().cloned());
    let ready = judgement.ready_until.day();
    let bar = |bar: &Bar| drawing::Bar { from: bar.span.from, until: bar.until };
    let all: Vec<_> = bars.iter().map(bar).collect();
    let facts = facts.collect::<Vec<_>>().join("; ");
    let texts = (say.picture_good(), facts.as_str());
    let picture = drawing::picture(id, texts, ready, asked, &all, say);
    html! {
        figure.wide {
            (picture)
            figcaption {
                (prose(&trip)) "; " (prose(&until)) "."
                ul.keyed {
                    @for (index, text) in told.iter().enumerate() {
                        li { b { (letter(index)) } " " (prose(text)) }
                    }
                }
                @if !endless.is_empty() {
                    (shown(&say.picture_endless(&endless.join(", "))))
                }
            }
        }
    }
}

fn told(bar: &Bar, locale: Locale) -> String {
    let names = figures::all_of(&bar.names, locale);
    pages::good_through(&names, bar.certificate, bar.end, bar.until, locale)
}

/// What ends, the first to end first, and the marks of what does not.
fn bars(words: &Words<'_>, judgement: &Judgement) -> (Vec<Bar>, Vec<String>) {
    let (mut bars, mut endless): (Vec<Bar>, Vec<String>) = (Vec::new(), Vec::new());
    for finding in &judgement.findings {
        let Some(requirement) = words.requirement(finding.requirement) else { continue };
        let (vocabulary, vessel) = (words.vocabulary, words.vessel);
        let mut all = validity::validities(vocabulary, vessel, requirement, finding);
        let run_out = run_out(finding).into_iter();
        all.extend(run_out.filter_map(|t| validity::of_tool(vocabulary, vessel, requirement, t)));
        for valid in all {
            let (name, certificate) = name(words, valid.holding);
            let Some((until, end)) = valid.span.until.zip(valid.end) else {
                if !endless.contains(&name) {
                    endless.push(name);
                }
                continue;
            };
            let same = |bar: &&mut Bar| {
                bar.span == valid.span && bar.end == end && bar.certificate == certificate
            };
            match bars.iter_mut().find(same) {
                Some(bar) if bar.names.contains(&name) => {}
                Some(bar) => bar.names.push(name),
                None => {
                    bars.push(Bar { span: valid.span, end, certificate, until, names: vec![name] })
                }
            }
        }
    }
    bars.sort_by_key(|bar| bar.until);
    endless.retain(|name| !bars.iter().any(|bar| bar.names.contains(name)));
    (bars, endless)
}

/// The tools that do not serve because they have run out or will at sea.
fn run_out(finding: &Finding) -> Vec<usize> {
    let over = |because: &&Because| {
        matches!(
            because.reason,
            Reason::InspectionLapsed { .. }
                | Reason::Expired { .. }
                | Reason::LapsesDuringTrip { .. }
        )
    };
    finding.reasons.iter().filter(over).filter_map(|because| because.tool).collect()
}

fn name(words: &Words<'_>, holding: Holding) -> (String, bool) {
    match holding {
        Holding::Tool(tool) => (words.mark(tool).to_owned(), false),
        Holding::Certificate(person, _) => {
            let people = words.vessel.people.as_deref().unwrap_or_default();
            (people.get(person).map(|p| p.name.clone()).unwrap_or_default(), true)
        }
    }
}
