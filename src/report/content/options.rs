//! Which ways of freeing a turtle a kit leaves open: situation by situation the
//! best way that is open and the better ones that are closed, then what is
//! closed, why, and what opens it.
//!
//! Decides nothing. The steps of the techniques stand on the card, not here.

use super::check;
use super::closed::Closed;
use super::situations::{Case, Group, Place, places};
use super::{Block, Document, Headline, Item, Lead, Line, Role, Section, Tone};
use crate::freeing::{Prospect, Way};
use crate::measure::Answer;
use crate::model::options::{Access, Standing};
use crate::report::Locale;
use crate::report::subject::OptionsShown as Shown;
use crate::report::words::locale::Fixed;
use crate::report::words::options as said;
use crate::report::words::pages::sentence;

/// What is open as a page.
pub(crate) fn document(shown: &Shown<'_>) -> Document {
    let mut blocks = headline(shown);
    blocks.push(worth(shown));
    let mut closed = Closed::default();
    for place in places(shown) {
        blocks.extend(place.groups.iter().map(|of| group(shown, &place, of, &mut closed)));
    }
    blocks.extend(closed.section(shown.locale));
    blocks.extend(minded(shown));
    blocks.extend(foot(shown));
    Document { title: shown.options.vessel.name.clone(), blocks }
}

/// Whose kit it is, on which trip, at which rail, and what bears on all of it.
fn headline(shown: &Shown<'_>) -> Vec<Block> {
    let (options, vessel, locale) = (shown.options, &shown.options.vessel, shown.locale);
    let told = (shown.sources, shown.notices);
    let below = check::particulars(vessel, options.asked, told, Vec::new(), locale);
    let lead = Lead::Word(locale.options_ways_open().to_owned(), Tone::Strong);
    let text = check::named(vessel).into();
    let mut blocks =
        vec![Block::Headline(Headline { lead, beside: None, text, more: None, below })];
    blocks.extend(check::notices(shown.notices, locale));
    if options.outlook.hooks_not_said() {
        let note = Item::new(Lead::Note(Tone::Strong), locale.options_hooks_not_said());
        blocks.push(note.into());
    }
    blocks
}

/// What the kit is worth, and the single tool that lifts most.
fn worth(shown: &Shown<'_>) -> Block {
    let locale = shown.locale;
    let worth = shown.options.outlook.worth();
    let mut body = vec![Block::Paragraph(Line::strong(sentence(&said::worth(&worth, locale))))];
    let even_so = said::even_so(shown);
    body.extend(
        even_so.map(|text| Item::labelled(locale.options_even_so(), Tone::Bad, Line::strong(text))),
    );
    match shown.lift().zip(shown.lifts()) {
        Some((lift, lifts)) => {
            let text = locale.options_lift(&sentence(&lift), &lifts);
            body.push(Item::labelled(locale.options_lifts_most(), Tone::Strong, text));
            let none = || (!shown.catalogues.is_empty()).then(|| locale.options_no_offer().into());
            let price = shown.price().or_else(none).map(|text| sentence(&text));
            body.extend(
                price.map(|text| Item::labelled(locale.options_to_buy(), Tone::Strong, text)),
            );
        }
        None if worth.is_best() => {}
        None => body.push(Block::Paragraph(locale.options_no_lift().into())),
    }
    unheaded(Role::Part, body)
}

/// A part without a heading.
fn unheaded(role: Role, body: Vec<Block>) -> Block {
    Block::Section(Section { role, id: None, verdict: None, heading: None, body })
}

/// A group of situations; what is closed is noted for the list behind.
fn group<'a>(
    shown: &Shown<'a>,
    place: &Place<'a>,
    group: &Group<'a>,
    closed: &mut Closed,
) -> Block {
    let locale = shown.locale;
    let (left_out, counted): (Vec<_>, Vec<_>) =
        group.cases.iter().partition(|case| case.of.answered.is_left_out());
    let mut body: Vec<_> = counted.into_iter().map(|case| situation(shown, case, closed)).collect();
    if !left_out.is_empty() {
        let titles: Vec<_> = left_out.iter().map(|case| case.title.as_str()).collect();
        let text = format!("{}.", titles.join("; "));
        body.push(Item::labelled(locale.options_left_out(), Tone::Plain, text));
    }
    let heading = match &group.title {
        Some(title) => locale.options_group(&place.title, &said::small(title)),
        None => place.title.clone(),
    };
    Section::block(Role::Part, heading, body)
}

/// One situation: the best way that is open, and the better ones that are not.
fn situation<'a>(shown: &Shown<'a>, case: &Case<'a>, closed: &mut Closed) -> Block {
    let (of, locale) = (&case.of, shown.locale);
    let (sign, tone, end) = match of.answered.standing() {
        Standing::First => ("+", Tone::Good, locale.options_first_choice()),
        Standing::Fallback => ("-", Tone::Bad, locale.options_fallback()),
        Standing::Unclear => ("?", Tone::Open, locale.options_cannot_tell()),
        Standing::Nothing => ("!", Tone::Bad, said::no_way(locale, of)),
    };
    let better = better(shown, of, closed);
    let mut below = match of.best() {
        Some(best) => open(shown, of, &best),
        None => get_first(shown, of, better.iter().map(|(_, titles)| titles.len()).sum()),
    };
    below.extend(said::at_stations(shown, of).into_iter().map(|text| {
        Item::labelled(locale.options_yet(), Tone::Strong, Line::strong(format!("{text}.")))
    }));
    below.extend(
        better
            .into_iter()
            .map(|(label, titles)| Item::labelled(label, Tone::Plain, titles.join("; "))),
    );
    let item = Item::new(Lead::Word(sign.to_owned(), tone), case.title.clone()).with(below);
    Item { end: Some(end.into()), ..item }.into()
}

/// The best way with its tools, and what is left should it fail.
fn open<'a>(shown: &Shown<'a>, of: &Prospect<'a>, best: &Way<'a>) -> Vec<Block> {
    let way = shown.choice(best.techniques);
    let text = match shown.uses(best.choice).as_str() {
        "" => way,
        uses => format!("{way}: {uses}"),
    };
    let next = said::if_it_fails(shown, of);
    let next =
        next.map(|next| Item::labelled(shown.locale.options_if_it_fails(), Tone::Plain, next));
    std::iter::once(Block::Paragraph(text.into())).chain(next).collect()
}

/// What to do first where nothing is open. Which choice that opens is told
/// where several are closed.
fn get_first<'a>(shown: &Shown<'a>, of: &Prospect<'a>, closed: usize) -> Vec<Block> {
    let locale = shown.locale;
    let Some(first) = of.first_to_open() else {
        let text = sentence(locale.options_nothing_opens_any());
        return vec![Block::Paragraph(Line::strong(text))];
    };
    let (label, opens) = match first.choice.answer {
        Answer::Unknown => (locale.options_find_out_first(), locale.options_may_open()),
        _ => (locale.options_get_first(), locale.options_opens()),
    };
    let steps = said::steps(&shown.opens(first.choice));
    let mut told = vec![Item::labelled(label, Tone::Bad, Line::strong(steps))];
    if closed > 1 {
        let way = said::small(&shown.choice(first.techniques));
        told.push(Item::labelled(opens, Tone::Plain, way));
    }
    told
}

/// What keeps a better choice from being the one that is taken, with its label.
const KEPT: [(Access, Fixed); 3] = [
    (Access::Short, Locale::options_short),
    (Access::Closed, Locale::options_closed),
    (Access::Unknown, Locale::options_not_told),
];

/// The better choices that are closed, and those of which nobody can tell,
/// each behind its label.
fn better<'a>(
    shown: &Shown<'a>,
    of: &Prospect<'a>,
    closed: &mut Closed,
) -> Vec<(&'static str, Vec<String>)> {
    let told = KEPT.map(|(access, label)| {
        let ways = of.better().filter(|way| way.choice.access() == access);
        // What a high rail closes nothing opens: it is told once, behind.
        let texts = ways.filter_map(|way| {
            let title = said::small(&shown.choice(way.techniques));
            let numbers = closed.note(shown, way.choice, &title)?;
            Some(format!("{title} ({numbers})"))
        });
        (label(shown.locale), texts.collect::<Vec<String>>())
    });
    closed.next_situation();
    told.into_iter().filter(|(_, titles)| !titles.is_empty()).collect()
}

/// What is to be minded with the ways that are shown as open, each once.
fn minded(shown: &Shown<'_>) -> Option<Block> {
    let minded = said::minded(shown).into_iter();
    let told = minded.map(|(says, techniques)| bullet(format!("{says} ({techniques})")));
    let told: Vec<_> = told.collect();
    let heading = shown.locale.options_mind();
    (!told.is_empty()).then(|| Section::block(Role::Part, heading, told))
}

fn bullet(text: String) -> Block {
    Item::new(Lead::Bullet(Tone::Plain), text).into()
}

fn foot(shown: &Shown<'_>) -> [Block; 3] {
    let (practice, locale) = (shown.practice, shown.locale);
    let cautions: Vec<_> = practice.cautions.iter().map(ToString::to_string).collect();
    let care = vec![Block::Paragraph(cautions.join(" ").into())];
    let notes = practice.notes.iter().map(|note| bullet(note.to_string())).collect();
    let source = sentence(&format!("{}: {}", practice.title, practice.source));
    let last = [locale.options_steps_on_card(), &source, locale.options_foot()];
    [
        Section::block(Role::Part, locale.options_take_care(), care),
        Section::block(Role::Part, locale.options_how_judged(), notes),
        unheaded(Role::Foot, last.map(|text| Block::Paragraph(text.into())).into()),
    ]
}
