//! What the fleet adds up to: totals, vessels by verdict, what is missed
//! most, what lapses soon, what was not read.
//!
//! Imports `fleet`, `load` for refusals, and the words. Counts nothing that
//! was not counted below.

use super::super::freeing;
use super::{EACH_ITS_PAGE, Page};
use crate::fleet::{After, HORIZONS, Judged, Lapse, Missed};
use crate::load::{Problem, Refusal};
use crate::model::check::Check;
use crate::model::finding::{Outcome, ReadyUntil, Verdict};
use crate::model::profile::{Level, Profile, Standing};
use crate::model::vessel::Trust;
use crate::report::Locale;
use crate::report::html::{self as base, shown};
use crate::report::words::{Words, figures, fleet, pages};
use maud::{Markup, html};

/// The most of one list that is shown here; the JSON has them all.
const MOST: usize = 24;

/// That a list goes on, and where it is whole.
fn more(all: usize, noun: &str) -> Markup {
    html! {
        @if let Some(left) = all.checked_sub(MOST).filter(|left| *left > 0) {
            " and " (fleet::count(left, noun)) " more; the JSON of the audit has them all"
        }
    }
}

/// The overview.
pub(super) fn overview(page: &Page<'_>) -> Markup {
    html! {
        section id="overview" aria-label="Overview" {
            (totals(page))
            (counted(page))
            (page.beside)
            (not_read(page))
            (left_out(page))
            (by_verdict(page))
            (missed(page))
            (lapses(page))
            (marks(page))
            (freeing::section(&page.fleet))
            (editions(page))
            div.caution { p { (page.locale.caution()) } p { (page.locale.foot()) } }
        }
    }
}

fn totals(page: &Page<'_>) -> Markup {
    let counts = &page.audit.counts;
    let tiles = [
        (counts.not_ready, Verdict::NotReady),
        (counts.cannot_tell, Verdict::CannotTell),
        (counts.ready, Verdict::Ready),
    ];
    html! {
        p.headline { (fleet::count(counts.vessels(), "vessel")) ": " (fleet::counts(counts, page.locale)) }
        ul.tiles {
            @for (number, verdict) in tiles {
                li { b { (number) } " " (base::verdict(verdict, page.locale)) }
            }
            @if counts.refused > 0 {
                li { b { (counts.refused) } " " span class="word bad" { "✕ not read" } }
            }
        }
    }
}

/// Who counts, and what was left aside.
fn counted(page: &Page<'_>) -> Markup {
    let audit = page.audit;
    let (shown, all) = (page.judged.len(), audit.counts.vessels());
    html! {
        p {
            "Each vessel is judged for its trip by every rule that binds it or was asked for; its \
             verdict is the worst of them."
            @if audit.trust == Trust::Measured { " Only figures that were measured are believed." }
            @if audit.outside > 0 {
                " " (fleet::count(audit.outside, "vessel")) " outside the selection, not counted."
            }
            @if shown < all { " " (shown) " of " (fleet::count(all, "vessel")) " shown here." }
        }
        @for doubt in &audit.doubts { p.caution { (base::prose(&fleet::doubt(doubt, page.locale))) } }
        @if shown > EACH_ITS_PAGE {
            p.caution {
                "More than " (EACH_ITS_PAGE) " vessels: only those that are not ready or of which \
                 nobody can tell have a page of their own here. "
                code { "kitmuster check VESSEL.yaml --format html" }
                " makes the page of any other."
            }
        }
    }
}

fn not_read(page: &Page<'_>) -> Markup {
    html! {
        @if !page.refused.is_empty() {
            h2 { "Not read (" (page.refused.len()) ")" }
            p { "These files could not be read. What is in them is not judged; the rest is complete." }
            ul { @for refusal in &page.refused { li { (refused(refusal)) } } }
        }
    }
}

/// Everything that is wrong in a file.
fn refused(refusal: &Refusal) -> Markup {
    html! {
        b { (shown(&refusal.file)) }
        ul { @for problem in refusal.problems.iter().take(MOST) { li { (wrong(problem)) } } }
        (more(refusal.problems.len(), "problem"))
    }
}

fn wrong(problem: &Problem) -> Markup {
    html! {
        @if let Some(position) = problem.position {
            "line " (position.line) ", column " (position.column) ": "
        } @else if !problem.place.key.is_empty() {
            code { (shown(&problem.place.key)) } ": "
        }
        (shown(&problem.what))
        @if let Some(offending) = &problem.offending { ": " code { (shown(offending)) } }
        @if let Some(expected) = &problem.expected { "; expected " (shown(expected)) }
        @if let Some(mend) = &problem.mend { ". " b { "Mend: " } (shown(mend)) }
    }
}

fn left_out(page: &Page<'_>) -> Markup {
    html! {
        @if !page.audit.left_out.is_empty() {
            h2 { "Records laid over no vessel (" (page.audit.left_out.len()) ")" }
            ul {
                @for left_out in &page.audit.left_out {
                    li { b { (shown(&left_out.file)) } ": " (shown(&fleet::left_out(left_out, page.locale))) }
                }
            }
        }
    }
}

fn by_verdict(page: &Page<'_>) -> Markup {
    html! {
        h2 { "Vessels by verdict" }
        @for verdict in [Verdict::NotReady, Verdict::CannotTell, Verdict::Ready] {
            @let some: Vec<_> = page.judged.iter().enumerate()
                .filter(|(_, judged)| judged.check.verdict == verdict).collect();
            @if !some.is_empty() {
                h3 { (base::verdict(verdict, page.locale)) " " (some.len()) }
                ul.vessels.short[verdict == Verdict::Ready] {
                    @for (index, judged) in some { li { (vessel(page, index, judged)) } }
                }
            }
        }
    }
}

/// A vessel in one line: who, of where, and the first thing to know.
fn vessel(page: &Page<'_>, index: usize, judged: &Judged) -> Markup {
    let vessel = &judged.check.vessel;
    let about = [vessel.register.as_deref(), vessel.port.as_deref()];
    let about: Vec<_> = about.into_iter().flatten().collect();
    html! {
        b { (link(page, index)) }
        @if judged.check.standing() == Standing::GoodPractice { " " (page.locale.only_practice()) }
        @if !about.is_empty() { " " span.soft { (shown(&about.join(", "))) } }
        @if let Some(first) = first(page, judged) { " – " (base::prose(&first)) }
    }
}

/// The first required finding that is not met or cannot be told; of a ready
/// vessel until when.
fn first(page: &Page<'_>, judged: &Judged) -> Option<String> {
    let check = &judged.check;
    let worst = check.judgements.iter().find(|judgement| judgement.verdict == check.verdict)?;
    let words = Words {
        vocabulary: page.vocabulary,
        vessel: &check.vessel,
        profile: &worst.profile,
        locale: page.locale,
    };
    if check.verdict == Verdict::Ready {
        return Some(first_end(check, page.locale));
    }
    if !worst.profile.encoded {
        return Some(format!("bound by `{}`, which is known but not encoded", worst.profile.id));
    }
    let wanted =
        if check.verdict == Verdict::NotReady { Outcome::NotMet } else { Outcome::CannotTell };
    let required =
        |index: usize| words.requirement(index).is_some_and(|r| r.level == Level::Required);
    let open: Vec<_> = worst
        .findings
        .iter()
        .filter(|finding| finding.outcome != Outcome::Met && required(finding.requirement))
        .collect();
    let first = open.iter().find(|finding| finding.outcome == wanted).or(open.first())?;
    let text = format!("{}: {}", words.title(first.requirement), words.first_reason(first));
    Some(match open.len() {
        1 => text,
        many => format!("{text}; and {} more", many - 1),
    })
}

/// Until when a vessel stays ready under every rule.
fn first_end(check: &Check, locale: Locale) -> String {
    let days = check.judgements.iter().filter_map(|judgement| match judgement.ready_until {
        ReadyUntil::Day(day) => Some(day),
        ReadyUntil::None | ReadyUntil::NoEnd => None,
    });
    let first = days.min().map_or(ReadyUntil::NoEnd, ReadyUntil::Day);
    pages::ready_until(first, locale)
}

/// The vessel's name, leading to its page if it has one.
fn link(page: &Page<'_>, index: usize) -> Markup {
    let judged = page.judged[index];
    let name = shown(&judged.check.vessel.name);
    html! {
        @if page.has_own(judged) { a href={ "#" (Page::id(index)) } { (name) } } @else { (name) }
    }
}

/// A vessel out of a list below, by its file.
fn of_file(page: &Page<'_>, file: &str, name: &str) -> Markup {
    match page.judged.iter().position(|judged| *judged.file == *file) {
        Some(index) => link(page, index),
        None => html! { (shown(name)) },
    }
}

fn missed(page: &Page<'_>) -> Markup {
    html! {
        @if !page.audit.missed.is_empty() {
            h2 id="missed" { "Most often missed" }
            div.scroll tabindex="0" role="region" aria-labelledby="missed" {
                table {
                    thead {
                        tr {
                            th scope="col" { "Requirement" }
                            th scope="col" { "Not met" }
                            th scope="col" { "Can't tell" }
                            th scope="col" { "Too short, median" }
                            th scope="col" { "Too short, worst" }
                        }
                    }
                    tbody { @for missed in &page.audit.missed { (missed_row(page, missed)) } }
                }
            }
        }
    }
}

fn missed_row(page: &Page<'_>, missed: &Missed) -> Markup {
    let Some(requirement) = missed.requirement() else { return html! {} };
    let system = missed.worst.as_ref().map(|worst| worst.system);
    let by = |length| system.map(|system| figures::difference(length, system, page.locale));
    html! {
        tr {
            th scope="row" {
                (shown(&requirement.title.to_string())) br;
                span.soft {
                    (shown(&requirement.clause)) "; " code { (shown(&missed.profile.id)) }
                }
            }
            td { (missed.not_met) }
            td { (missed.cannot_tell) }
            td { (base::prose(&missed.median.and_then(by).unwrap_or_else(|| "–".to_owned()))) }
            td {
                @match &missed.worst {
                    Some(worst) => {
                        (base::prose(&by(worst.short).unwrap_or_default())) ", " (shown(&worst.vessel))
                    },
                    None => { "–" },
                }
            }
        }
    }
}

fn lapses(page: &Page<'_>) -> Markup {
    let within = |days: i64| page.audit.lapses.iter().filter(move |lapse| lapse.within == days);
    html! {
        h2 { "What lapses in " (HORIZONS[2]) " days" }
        @if page.audit.lapses.is_empty() {
            p { "Nothing that serves today lapses within " (HORIZONS[2]) " days of the audit." }
        }
        @for (index, days) in HORIZONS.into_iter().enumerate() {
            @if within(days).next().is_some() {
                h3 {
                    @if let Some(before) = index.checked_sub(1) { "After " (HORIZONS[before]) " and within " }
                    @else { "Within " }
                    (days) " days"
                }
                ul { @for lapse in within(days) { (lapse_line(page, lapse)) } }
            }
        }
    }
}

fn lapse_line(page: &Page<'_>, lapse: &Lapse) -> Markup {
    html! {
        li {
            b { (of_file(page, &lapse.file, &lapse.vessel)) } ": " (base::prose(&fleet::lapse(lapse, page.locale))) "; "
            @if lapse.after == After::Decides { b { (fleet::after_lapse(lapse, page.locale)) } } @else { (fleet::after_lapse(lapse, page.locale)) }
        }
    }
}

fn marks(page: &Page<'_>) -> Markup {
    html! {
        @if !page.audit.marks.is_empty() {
            h2 { "The same mark on several vessels at sea together" }
            p { (pages::sentence(page.locale.same_mark())) }
            ul {
                @for mark in &page.audit.marks {
                    li {
                        b { (shown(&mark.mark)) } " ("
                        (shown(&page.vocabulary.kind(mark.kind).name)) "): "
                        @for (number, (file, name)) in mark.vessels.iter().take(MOST).enumerate() {
                            @if number > 0 { ", " }
                            (of_file(page, file, name))
                        }
                        (more(mark.vessels.len(), "vessel"))
                    }
                }
            }
        }
    }
}

fn editions(page: &Page<'_>) -> Markup {
    html! {
        @if !page.profiles.is_empty() {
            h2 id="editions" { "Editions used" }
            div.scroll tabindex="0" role="region" aria-labelledby="editions" {
                table {
                    thead {
                        tr {
                            th scope="col" { "Profile" }
                            th scope="col" { "Edition" }
                            th scope="col" { "Source" }
                            th scope="col" { "Encoding" }
                            th scope="col" { "Vessels" }
                        }
                    }
                    tbody { @for profile in &page.profiles { (edition(page, profile)) } }
                }
            }
        }
    }
}

fn edition(page: &Page<'_>, profile: &Profile) -> Markup {
    html! {
        tr {
            th scope="row" {
                (shown(&profile.title.to_string())) br;
                code { (shown(&profile.id)) }
                @if profile.standing == Standing::GoodPractice { br; span.soft { "good practice, no rule" } }
            }
            td { (shown(&profile.edition)) }
            td { (shown(&profile.source)) }
            td { @if profile.encoded { (profile.encoding) } @else { (profile.encoding) ", not encoded" } }
            td { (page.judged_by(profile).count()) }
        }
    }
}
