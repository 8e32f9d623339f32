//! What each vessel gets of an order and what stays open on it. A vessel that
//! needs nothing stands on one line, unless there is something to note of it.

use crate::measure::Day;
use crate::model::catalogue::Gives;
use crate::model::finding::{Outcome, Verdict};
use crate::model::vessel::Tool;
use crate::quote::{Bought, Nearest, Unmet, VesselQuote};
use crate::report::Locale;
use crate::report::content::check::named;
use crate::report::content::{Block, Column, Item, Lead, Line, Role, Row, Section, Table, Tone};
use crate::report::subject::{QuoteShown, finding, requirement};
use crate::report::words::{self, Words, figures, quote as said};

/// The most reasons of one finding that are told.
const MOST_REASONS: usize = 3;

/// The vessels, in their order.
pub(super) fn all(shown: &QuoteShown<'_>) -> Vec<Block> {
    let all: Vec<_> = shown.quote.vessels.iter().enumerate().collect();
    let is_long = |(index, vessel): &(usize, &VesselQuote)| is_long(shown, *index, vessel);
    let runs = all.chunk_by(|one, next| !is_long(one) && !is_long(next));
    let part = |run: &[(usize, &VesselQuote)]| match run {
        [one] if is_long(one) => whole(shown, one.0, one.1),
        _ => in_short(run.iter().map(|(_, vessel)| *vessel), shown.locale),
    };
    runs.map(part).collect()
}

/// Whether there is more to tell of a vessel than that it needs nothing.
fn is_long(shown: &QuoteShown<'_>, index: usize, vessel: &VesselQuote) -> bool {
    vessel.after.verdict != Verdict::Ready
        || !vessel.lines.is_empty()
        || !vessel.unmet.is_empty()
        || !vessel.after.notices.is_empty()
        || said::departure(shown, index, vessel).is_some()
        || shown.quote.vessels.len() == 1
}

/// Vessels that need nothing.
fn in_short<'a>(vessels: impl Iterator<Item = &'a VesselQuote>, locale: Locale) -> Block {
    let row = |vessel: &VesselQuote| {
        let text = locale.quote_needs_nothing(&named(&vessel.before.vessel));
        Row::new(Some(Lead::Verdict(Verdict::Ready)), vec![text.into()])
    };
    let body = vec![Block::Table(Table {
        role: Role::List,
        caption: locale.quote_none_needed().to_owned(),
        columns: vec![Column::default()],
        rows: vessels.map(row).collect(),
        sums: Vec::new(),
    })];
    Block::Section(Section { role: Role::List, id: None, verdict: None, heading: None, body })
}

fn whole(shown: &QuoteShown<'_>, index: usize, vessel: &VesselQuote) -> Block {
    let (after, locale) = (&vessel.after, shown.locale);
    let note = |text: String| Item::new(Lead::Note(Tone::Open), text).into();
    let mut body = vec![
        Block::Paragraph(leaves(vessel, locale).into()),
        Block::Paragraph(Line::from(judged(vessel, locale)).toned(Tone::Soft)),
    ];
    body.extend(said::departure(shown, index, vessel).map(note));
    body.extend(after.notices.iter().map(|one| note(words::notice(one, locale))));
    body.extend(vessel.lines.iter().map(|line| bought(shown, vessel, line)));
    let stubs = after.judgements.iter().filter(|judgement| !judgement.profile.encoded);
    body.extend(stubs.map(|stub| {
        let text = locale.quote_not_encoded(&stub.profile.id);
        Item::new(Lead::LeftOpen(Outcome::CannotTell), text).into()
    }));
    body.extend(vessel.unmet.iter().map(|unmet| open(shown, vessel, unmet)));
    Block::Section(Section {
        role: Role::Part,
        id: None,
        verdict: Some(after.verdict),
        heading: Some(named(&vessel.before.vessel).into()),
        body,
    })
}

/// What the vessel was before the order, and when it leaves; where things for
/// it come on several days, when the last of them is there.
fn leaves(vessel: &VesselQuote, locale: Locale) -> String {
    let departure = vessel.before.asked.departure;
    let arrivals = || vessel.lines.iter().map(|line| line.arrives);
    let days = match (arrivals().min(), arrivals().max()) {
        (Some(first), Some(last)) if first < last => {
            let ahead = ahead(last, departure, locale);
            locale.quote_last_is_there(&departure, &last, &ahead)
        }
        _ => departure.to_string(),
    };
    let verdict = locale.verdict(vessel.before.verdict);
    let before = match vessel.before.verdict == vessel.after.verdict {
        true if vessel.lines.is_empty() => return locale.quote_leaves_on(&days),
        true => locale.quote_before_either(&verdict),
        false => locale.quote_before(&verdict),
    };
    locale.quote_before_leaves_on(&before, &days)
}

/// By which profiles the vessel is judged, and in which file it is.
fn judged(vessel: &VesselQuote, locale: Locale) -> String {
    let ids = vessel.after.judgements.iter().map(|judged| format!("`{}`", judged.profile.id));
    match figures::all_of(&ids.collect::<Vec<_>>(), locale) {
        ids if ids.is_empty() => vessel.file.to_string(),
        ids => locale.quote_judged_by(&vessel.file, &ids),
    }
}

/// How long before departure something arrives.
fn ahead(arrives: Day, departure: Day, locale: Locale) -> String {
    let days = departure.days_since(arrives);
    match days {
        0 => locale.quote_day_of_departure().to_owned(),
        1.. => locale.quote_days_before(days.unsigned_abs()),
        _ => locale.quote_days_after(days.unsigned_abs()),
    }
}

/// Something that is bought for the vessel, and what for.
fn bought(shown: &QuoteShown<'_>, vessel: &VesselQuote, line: &Bought) -> Block {
    let locale = shown.locale;
    let mut text = format!("{}, {}", pieces(shown, vessel, line), arrival(shown, vessel, line));
    if shown.quote.vessels.len() > 1 {
        text.push_str(&format!("; {}", locale.quote_share(&shown.money(line.share))));
    }
    let cures = line.cures.iter().map(|cured| {
        let lead = Lead::Word(locale.quote_for().to_owned(), Tone::Plain);
        Item::new(lead, said::asked(&vessel.after, *cured, locale)).into()
    });
    let below = [Block::Paragraph(text.into())].into_iter().chain(cures).collect();
    let item = Line::strong(said::item(shown.item(line.offer)));
    Item::new(Lead::Better, item).with(below).into()
}

/// How many pieces, and on which tool: `2 pieces`, `1 piece on LC-1
/// (long-handled line cutter)`, `work on 2 of the 3 PL-1 (pliers)`.
fn pieces(shown: &QuoteShown<'_>, vessel: &VesselQuote, bought: &Bought) -> String {
    let locale = shown.locale;
    let gives = &shown.item(bought.offer).gives;
    let pieces = match gives {
        Gives::Tools(given) if given.len() > 1 => locale.quote_sets(bought.pieces),
        _ => locale.quote_pieces(bought.pieces),
    };
    let old = bought.on.and_then(|tool| vessel.before.vessel.kit.get(tool));
    let Some(old) = old else { return pieces };
    let kind = &shown.vocabulary.kind(old.kind).name;
    let tool = format!("{} ({kind})", which(vessel, bought, old, locale));
    match gives {
        Gives::Service { .. } => locale.quote_work_on(&tool),
        _ => locale.quote_pieces_on(&pieces, &tool),
    }
}

/// The tool that is worked on, of a lot with how many of it.
fn which(vessel: &VesselQuote, bought: &Bought, old: &Tool, locale: Locale) -> String {
    let new = bought.tools.first().and_then(|tool| vessel.after.vessel.kit.get(*tool));
    match new.map(|new| new.count) {
        Some(some) if old.count > 1 => locale.quote_some_of_lot(&some, &old.count, &old.mark),
        _ => old.mark.clone(),
    }
}

/// When a line is there, or the work is done.
fn arrival(shown: &QuoteShown<'_>, vessel: &VesselQuote, bought: &Bought) -> String {
    let locale = shown.locale;
    let ahead = ahead(bought.arrives, vessel.before.asked.departure, locale);
    match shown.item(bought.offer).gives {
        Gives::Service { .. } => locale.quote_done_on(&bought.arrives, &ahead),
        _ => locale.quote_there_on(&bought.arrives, &ahead),
    }
}

/// What stays open: why, the nearest offer and what it lacks, and what to do.
fn open(shown: &QuoteShown<'_>, vessel: &VesselQuote, unmet: &Unmet) -> Block {
    let (after, cured, locale) = (&vessel.after, unmet.finding, shown.locale);
    let words = shown.words(after, cured.judgement);
    let found = finding(after, cured);
    let mut told: Vec<String> = Vec::new();
    for because in found.iter().flat_map(|finding| &finding.reasons) {
        let why = words.told(because);
        if !told.contains(&why) && told.len() < MOST_REASONS {
            told.push(why);
        }
    }
    told.push(match &unmet.nearest {
        Some(nearest) => near(shown, nearest, &words),
        None if !requirement(after, cured).wants_tools() => locale.quote_no_goods().to_owned(),
        None => locale.quote_nothing_near().to_owned(),
    });
    let remedy = found.and_then(|finding| words.remedy(finding, &[]));
    let remedy = remedy.map(|remedy| Item::new(Lead::Do, remedy).into());
    let below = [Block::Lines(told.into_iter().map(Line::from).collect())];
    let text = Line::strong(locale.quote_open(&said::asked(after, cured, locale)));
    let outcome = found.map_or(Outcome::NotMet, |finding| finding.outcome);
    let item = Item::new(Lead::LeftOpen(outcome), text);
    item.with(below.into_iter().chain(remedy).collect()).into()
}

/// The nearest offer and what it lacks.
fn near(shown: &QuoteShown<'_>, nearest: &Nearest, words: &Words<'_>) -> String {
    let lacks = nearest.lacks.iter().map(|reason| words.reason(reason));
    let hindrances = nearest.hindrances.iter().map(|one| said::hindrance(*one, shown.locale));
    let mut lacks: Vec<_> = lacks.chain(hindrances).collect();
    if lacks.is_empty() {
        lacks.push(shown.locale.quote_would_do().to_owned());
    }
    let supplier = &shown.catalogue(nearest.offer).supplier;
    let item = said::item(shown.item(nearest.offer));
    shown.locale.quote_nearest(&item, supplier, &lacks.join("; "))
}
