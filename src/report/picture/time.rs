//! The time line: until when what serves is good, against the trip and the
//! last day on which the kit is ready.
//!
//! Imports `engine::validity`, `model`, `measure` and the words beside it.

use super::{Drawing, WIDTH, area, label, label_at, label_to, line, places};
use crate::engine::validity::{self, End, Holding};
use crate::measure::{Day, DaySpan};
use crate::model::check::Judgement;
use crate::model::finding::{Asked, Because, Finding, ReadyUntil};
use crate::model::reason::Reason;
use crate::report::Locale;
use crate::report::render::base::{prose, shown};
use crate::report::words::{self, Words, figures, pages};
use maud::{Markup, html};

/// Where the line begins and ends, from the left.
const LEFT: f64 = 26.0;
const RIGHT: f64 = WIDTH - 8.0;
/// Where the first row begins and how tall a row is.
const TOP: f64 = 30.0;
const ROW: f64 = 40.0;
/// How many days before departure are drawn, and how many after the return at
/// most: a certificate of years would make a week at sea a hair.
const BEFORE: i64 = 14;
const AFTER: i64 = 200;

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
        (true, false) => Some(html! { p { "Nothing that serves has a last day." } }),
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
    let until = pages::ready_until(judgement.ready_until, words.locale);
    let span = DaySpan { from: Some(asked.departure), until: Some(asked.back) };
    let trip = format!("Trip {}", words::span(span, words.locale));
    let told: Vec<String> = bars.iter().map(|bar| told(bar, words.locale)).collect();
    let facts = [trip.clone(), until.clone()].into_iter().chain(told.iter().cloned());
    let drawing = Drawing {
        id: id.to_owned(),
        height: TOP + places(bars.len()) * ROW + 50.0,
        title: "Until when what serves is good".to_owned(),
        facts: facts.collect::<Vec<_>>().join("; "),
        body: body(judgement, asked, bars),
    };
    html! {
        figure.wide {
            (drawing.svg())
            figcaption {
                (prose(&trip)) "; " (prose(&until)) "."
                ul.keyed {
                    @for (index, text) in told.iter().enumerate() {
                        li { b { (letter(index)) } " " (prose(text)) }
                    }
                }
                @if !endless.is_empty() {
                    "Without a last day: " (shown(&endless.join(", "))) "."
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

/// A, B, … Z, then 27, 28.
fn letter(index: usize) -> String {
    match u8::try_from(index) {
        Ok(index) if index < 26 => char::from(b'A' + index).to_string(),
        _ => (index + 1).to_string(),
    }
}

/// The days that are drawn.
struct Axis {
    first: Day,
    last: Day,
}

impl Axis {
    fn new(judgement: &Judgement, asked: Asked, bars: &[Bar]) -> Self {
        let mut last = asked.back;
        let ends = bars.iter().map(|bar| bar.until);
        let ready = match judgement.ready_until {
            ReadyUntil::Day(day) => Some(day),
            ReadyUntil::None | ReadyUntil::NoEnd => None,
        };
        for day in ends.chain(ready) {
            if day > last && day.days_since(asked.back) <= AFTER {
                last = day;
            }
        }
        for _ in 0..BEFORE {
            last = last.next();
        }
        let mut first = asked.departure;
        for _ in 0..BEFORE {
            first = first.previous();
        }
        Self { first, last }
    }

    /// Where the trip begins and ends.
    fn trip(&self, asked: Asked) -> (f64, f64) {
        let out = self.at(asked.departure);
        (out, self.at(asked.back.next()).max(out + 2.0))
    }

    /// Where a day begins, within what is drawn.
    #[allow(clippy::cast_precision_loss, reason = "a place on the page, never a verdict")]
    fn at(&self, day: Day) -> f64 {
        let all = self.last.days_since(self.first).max(1) as f64;
        let share = day.days_since(self.first) as f64 / all;
        LEFT + share.clamp(0.0, 1.0) * (RIGHT - LEFT)
    }
}

fn body(judgement: &Judgement, asked: Asked, bars: &[Bar]) -> Markup {
    let axis = Axis::new(judgement, asked, bars);
    let bottom = TOP + places(bars.len()) * ROW;
    let (out, home) = axis.trip(asked);
    let ready = match judgement.ready_until {
        ReadyUntil::Day(day) => Some((day, axis.at(day.next()))),
        ReadyUntil::None | ReadyUntil::NoEnd => None,
    };
    html! {
        (label_at("strong", ((out + home) / 2.0, TOP - 12.0), "trip"))
        (area("trip-bar", (out, TOP - 6.0), (home - out, 5.0)))
        @for (index, bar) in bars.iter().enumerate() {
            @let y = TOP + places(index) * ROW;
            // Behind the bars alone, so that nothing runs through a label.
            (area("trip", (out, y + 18.0), (home - out, 19.0)))
            (row(&axis, bar, asked, index))
            @if let Some((_, x)) = ready { (line("own", (x, y + 16.0), (x, y + 38.0))) }
        }
        (line("axis", (LEFT, bottom + 4.0), (RIGHT, bottom + 4.0)))
        @if let Some((day, x)) = ready {
            (line("own", (x, bottom), (x, bottom + 8.0)))
            @let beyond = if day >= axis.last { " →" } else { "" };
            (label_at("strong", (x, bottom + 44.0), &format!("ready until {day}{beyond}")))
        }
        (label("", (LEFT, bottom + 23.0), 120.0, &axis.first.to_string()))
        (label_to("", (RIGHT, bottom + 23.0), 120.0, &axis.last.to_string()))
    }
}

/// One bar under its letter and its last day: what runs on beyond the drawing
/// has an arrow, what ends before the return says so.
fn row(axis: &Axis, bar: &Bar, asked: Asked, index: usize) -> Markup {
    let y = TOP + places(index) * ROW;
    let from = bar.span.from.map_or(LEFT, |day| axis.at(day));
    let to = axis.at(bar.until.next());
    let (class, text) = match bar.until {
        until if until < asked.departure => ("bar over", format!("✕ to {until}, before the trip")),
        until if until < asked.back => ("bar over", format!("✕ to {until}, during the trip")),
        until if until >= axis.last => ("bar", format!("to {until} →")),
        until => ("bar", format!("to {until}")),
    };
    html! {
        (label("strong", (4.0, y + 31.0), LEFT - 6.0, &letter(index)))
        (label("", (LEFT + 2.0, y + 15.0), RIGHT - LEFT, &text))
        (area(class, (from.min(RIGHT - 2.0), y + 20.0), ((to - from).max(2.0), 12.0)))
    }
}
