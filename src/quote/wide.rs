//! A vessel with everything aboard that it could buy: its own tools, the
//! same tools lengthened or mended, and one of every item on offer. What the
//! profiles want of that kit says what each item could serve.

use super::order::{OneVessel, Order};
use super::outcome::Offer;
use crate::engine::supply;
use crate::measure::Day;
use crate::model::catalogue::{Fits, Given, Gives, Item};
use crate::model::vessel::{State, Tool, Vessel, Whereabouts};
use crate::model::vocabulary::KindId;

/// Where a tool of the wide kit comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Origin {
    /// It is aboard, with that index in the vessel's own kit.
    Own(usize),
    /// It is a tool of the own kit, changed.
    Changed(Changed),
    /// It comes with an item, as the tool of that index of a set, so many of
    /// it in a piece.
    Bought {
        /// The item.
        offer: Offer,
        /// Which tool of the set.
        part: usize,
        /// How many of it a piece gives.
        count: u32,
    },
}

/// What is done to a tool of the own kit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Changed {
    /// The tool, by index into the own kit.
    pub(super) tool: usize,
    /// The items that do it, with how many pieces of each one tool takes.
    pub(super) by: Vec<(Offer, u32)>,
}

/// A vessel with everything that it could buy, and where each tool is from.
#[derive(Debug, Clone)]
pub(super) struct Wide {
    /// The vessel.
    pub(super) vessel: Vessel,
    /// For each tool of its kit.
    pub(super) origins: Vec<Origin>,
}

impl Wide {
    /// The vessel as judged, with these items; changes and goods of which
    /// `allows` says no are left out, asked by kind and by whether they last
    /// through the trip.
    pub(super) fn new(
        order: &Order<'_>,
        one: &OneVessel,
        own: &Vessel,
        offers: &[Offer],
        allows: impl Fn(KindId, bool) -> bool,
    ) -> Self {
        let mut vessel = own.clone();
        let mut origins: Vec<Origin> = (0..own.kit.len()).map(Origin::Own).collect();
        for changed in changes(order, own, offers) {
            let tool = change(order, own, &changed);
            if allows(tool.kind, true) || tool.state == own.kit[changed.tool].state {
                vessel.kit.push(tool);
                origins.push(Origin::Changed(changed));
            }
        }
        for offer in offers {
            let item = item(order, *offer);
            let Gives::Tools(given) = &item.gives else { continue };
            let arrives = arrival(order.ordered, item).min(one.departure);
            let back = one.back.unwrap_or(one.departure);
            let lasts = |given: &Given| given.lasts.is_none_or(|l| arrives.through(l) >= back);
            if !given.iter().all(|given| allows(given.tool.kind, lasts(given))) {
                continue;
            }
            for (part, given) in given.iter().enumerate() {
                let mut tool = bought(order, *offer, given, arrives);
                tool.mark = wide_mark(*offer, part);
                vessel.kit.push(tool);
                origins.push(Origin::Bought { offer: *offer, part, count: given.tool.count });
            }
        }
        let fits: Vec<_> =
            (0..vessel.kit.len()).map(|index| wide_fits(order, &vessel, &origins, index)).collect();
        for (tool, fits) in vessel.kit.iter_mut().zip(fits) {
            tool.fits = fits;
        }
        Self { vessel, origins }
    }
}

/// The item.
pub(super) fn item<'a>(order: &Order<'a>, offer: Offer) -> &'a Item {
    &order.catalogues[offer.catalogue].items[offer.item]
}

/// The day on which the item arrives.
pub(super) fn arrival(ordered: Day, item: &Item) -> Day {
    (0..item.lead).fold(ordered, |day, _| day.next())
}

fn wide_mark(offer: Offer, part: usize) -> String {
    // No mark in a file holds a line break, so this one is nobody's.
    format!("\n{}.{}.{part}", offer.catalogue, offer.item)
}

/// The marks that a tool of the wide kit fits: those that the vessel's file
/// names, with the same tools changed; for bought spares the tools of the
/// items and kinds that the catalogue names.
fn wide_fits(order: &Order<'_>, vessel: &Vessel, origins: &[Origin], index: usize) -> Vec<String> {
    let kit = &vessel.kit;
    let marks = |fits: &dyn Fn(usize) -> bool| -> Vec<String> {
        (0..kit.len()).filter(|i| fits(*i)).map(|i| kit[i].mark.clone()).collect()
    };
    match &origins[index] {
        // What is no spare fits nothing, and is most of a wide kit.
        Origin::Own(_) | Origin::Changed(_) if kit[index].fits.is_empty() => Vec::new(),
        Origin::Own(_) | Origin::Changed(_) => {
            let own = &kit[index].fits;
            let mut all = own.clone();
            all.extend(marks(&|i| match &origins[i] {
                Origin::Changed(changed) => own.contains(&kit[changed.tool].mark),
                _ => false,
            }));
            all
        }
        Origin::Bought { offer, part, .. } => {
            let Gives::Tools(given) = &item(order, *offer).gives else { return Vec::new() };
            given[*part].fits.iter().fold(Vec::new(), |mut all, fits| {
                all.extend(marks(&|i| {
                    i != index && fits_tool(order, fits, *offer, &origins[i], &kit[i])
                }));
                all
            })
        }
    }
}

/// Whether spares of an offer fit a tool.
pub(super) fn fits_tool(
    order: &Order<'_>,
    fits: &Fits,
    spares: Offer,
    origin: &Origin,
    tool: &Tool,
) -> bool {
    match fits {
        Fits::Kind(kind) => tool.kind == *kind,
        Fits::Item(number) => match origin {
            Origin::Bought { offer, .. } => {
                offer.catalogue == spares.catalogue && item(order, *offer).number == *number
            }
            _ => false,
        },
    }
}

/// The tool as it is aboard once it is delivered on that day.
pub(super) fn bought(order: &Order<'_>, offer: Offer, given: &Given, arrives: Day) -> Tool {
    let supplier = &order.catalogues[offer.catalogue].supplier;
    supply::delivered(given, supplier, arrives, order.ordered.min(arrives))
}

/// Everything that can be done to the tools of the kit with these items: at
/// most one repair, one inspection and one sort of extension for each.
fn changes(order: &Order<'_>, own: &Vessel, offers: &[Offer]) -> Vec<Changed> {
    let mut all = Vec::new();
    for (index, tool) in own.kit.iter().enumerate() {
        if tool.whereabouts != Whereabouts::Aboard {
            continue;
        }
        let (mut works, mut pieces): (Vec<_>, Vec<_>) = (vec![vec![]], vec![None]);
        for offer in offers {
            match &item(order, *offer).gives {
                Gives::Service { kinds, mends, inspects } if kinds.contains(&tool.kind) => {
                    // A mere repair is for what does not work.
                    if *mends && !inspects && tool.state == State::Serviceable {
                        continue;
                    }
                    let more: Vec<Vec<(Offer, u32)>> = works
                        .iter()
                        .filter(|works: &&Vec<_>| !does_already(order, works, *offer))
                        .map(|works| works.iter().copied().chain([(*offer, 1)]).collect())
                        .collect();
                    works.extend(more);
                }
                Gives::Extension { kinds, per_tool, .. }
                    if kinds.contains(&tool.kind)
                        && supply::lengths(tool, order.vocabulary).next().is_some() =>
                {
                    pieces.extend((1..=*per_tool).map(|count| Some((*offer, count))));
                }
                _ => {}
            }
        }
        for works in &works {
            for piece in &pieces {
                let by: Vec<_> = works.iter().copied().chain(*piece).collect();
                if !by.is_empty() {
                    all.push(Changed { tool: index, by });
                }
            }
        }
    }
    all
}

/// Whether one of the works does what this one would do.
fn does_already(order: &Order<'_>, works: &[(Offer, u32)], offer: Offer) -> bool {
    let does = |offer: Offer| match item(order, offer).gives {
        Gives::Service { mends, inspects, .. } => (mends, inspects),
        _ => (false, false),
    };
    let (mends, inspects) = does(offer);
    works.iter().any(|(other, _)| {
        let (mended, inspected) = does(*other);
        mends && mended || inspects && inspected
    })
}

/// The tool after it was changed.
pub(super) fn change(order: &Order<'_>, own: &Vessel, changed: &Changed) -> Tool {
    let mut tool = own.kit[changed.tool].clone();
    for (offer, count) in &changed.by {
        let item = item(order, *offer);
        let day = arrival(order.ordered, item);
        match &item.gives {
            Gives::Service { mends, inspects, .. } => {
                if *mends {
                    supply::mend(&mut tool, day, order.vocabulary);
                }
                if *inspects {
                    tool.inspected = tool.inspected.max(Some(day));
                }
            }
            Gives::Extension { by, .. } => {
                supply::lengthen(&mut tool, (*by, *count), day, order.vocabulary);
            }
            Gives::Tools(_) => {}
        }
    }
    // Each change needs a mark of its own.
    tool.mark = changed_mark(&tool.mark, changed);
    tool
}

fn changed_mark(mark: &str, changed: &Changed) -> String {
    let by = changed.by.iter().map(|(o, n)| format!("\n{}.{}.{n}", o.catalogue, o.item));
    std::iter::once(mark.to_owned()).chain(by).collect()
}
