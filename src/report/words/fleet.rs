//! Words for a fleet: counts, what lapses, what is missed most, marks.
//!
//! Imports `fleet`, `model` and `measure` only.

use super::figures;
use crate::engine::validity::End;
use crate::fleet::{After, Counts, Doubt, Lapse, LeftOut, Missed, What};
use crate::measure::Length;
use crate::report::Locale;

/// `7 ready (2 by good practice only), 8 not ready, 3 can't tell`.
pub(crate) fn counts(counts: &Counts, locale: Locale) -> String {
    let Counts { ready, not_ready, cannot_tell, .. } = counts;
    match &counts.ready_by_practice {
        0 => locale.fleet_counts(ready, not_ready, cannot_tell),
        practice => locale.fleet_counts_practice(ready, practice, not_ready, cannot_tell),
    }
}

/// On how many vessels a requirement is missed.
pub(crate) fn missed_on(missed: &Missed, locale: Locale) -> String {
    let mut told = Vec::new();
    if missed.not_met > 0 {
        told.push(locale.missed_not_met(&missed.not_met));
    }
    if missed.cannot_tell > 0 {
        told.push(locale.missed_cannot_tell(&missed.cannot_tell));
    }
    told.join(", ")
}

/// The median and the worst shortfall, where there is one.
pub(crate) fn shortfalls(missed: &Missed, locale: Locale) -> Option<String> {
    let (median, worst) = (missed.median?, missed.worst.as_ref()?);
    let by = |length: Length| figures::difference(length, worst.system, locale);
    let (short, vessel, on) = (by(worst.short), &worst.vessel, missed.short_on);
    Some(match (on == missed.not_met, on == 1 || median == worst.short) {
        (true, true) => locale.short_by(&short, vessel),
        (true, false) => locale.short_median(&by(median), &short, vessel),
        (false, true) => locale.short_on_by(&on, &short, vessel),
        (false, false) => locale.short_on_median(&on, &by(median), &short, vessel),
    })
}

/// What lapses: `the inspection of LC-1 is good through 2026-12-14`.
pub(crate) fn lapse(lapse: &Lapse, locale: Locale) -> String {
    match (&lapse.what, lapse.end) {
        (What::Tool(mark), End::Expiry) => locale.lapse_tool(mark, &lapse.through),
        (What::Tool(mark), End::Inspection) => locale.lapse_inspection(mark, &lapse.through),
        (What::Certificate(person), _) => locale.lapse_certificate(person, &lapse.through),
    }
}

/// What a lapse does to what it serves.
pub(crate) fn after_lapse(lapse: &Lapse, locale: Locale) -> &'static str {
    match lapse.after {
        After::NotAsked => locale.after_lapse_not_asked(),
        After::Served => locale.after_lapse_served(),
        After::Open => locale.after_lapse_open(),
        After::Advice => locale.after_lapse_advice(),
        After::Decides => locale.after_lapse_decides(),
    }
}

/// Why a record was laid over no vessel.
pub(crate) fn left_out(left_out: &LeftOut, locale: Locale) -> String {
    let vessel = &left_out.vessel;
    match (left_out.called_so, &left_out.near) {
        (0, Some(near)) => locale.left_out_near(vessel, near),
        (0, None) => locale.left_out_unknown(vessel),
        (number, _) => locale.left_out_ambiguous(vessel, &number),
    }
}

/// Vessels by their names, with the file where two are called the same.
pub(crate) fn names(vessels: &[(String, String)], locale: Locale) -> String {
    let alone = |name: &str| vessels.iter().filter(|(_, other)| other == name).count() == 1;
    let named = vessels
        .iter()
        .map(|(file, name)| if alone(name) { name.clone() } else { format!("{name} ({file})") });
    figures::all_of(&named.collect::<Vec<_>>(), locale)
}

/// What makes the totals doubtful, and what to do about it.
pub(crate) fn doubt(doubt: &Doubt, locale: Locale) -> String {
    match doubt {
        Doubt::TripsOver { vessels } => {
            locale.doubt_trips_over(vessels.len(), &names(vessels, locale))
        }
        Doubt::ListsOld { vessels } => {
            locale.doubt_lists_old(vessels.len(), &names(vessels, locale))
        }
        Doubt::SameRegister { register, vessels } => {
            let files = vessels.iter().map(|(file, name)| format!("{name} ({file})"));
            let files = figures::all_of(&files.collect::<Vec<_>>(), locale);
            locale.doubt_same_register(register, &vessels.len(), &files)
        }
    }
}
