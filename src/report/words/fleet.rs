//! Words for a fleet: counts, what lapses, what is missed most, marks.
//!
//! Imports `fleet`, `model` and `measure` only.

use super::figures;
use crate::engine::validity::End;
use crate::fleet::{After, Counts, Doubt, Lapse, LeftOut, Missed, SameMark, What};
use crate::measure::{Length, System};
use crate::report::Locale;

/// `18 vessels`, `1 vessel`.
pub(crate) fn count(number: usize, noun: &str) -> String {
    let ending = if number == 1 { "" } else { "s" };
    format!("{number} {noun}{ending}")
}

/// `7 ready (2 by good practice only), 8 not ready, 3 can't tell`.
pub(crate) fn counts(counts: &Counts) -> String {
    let practice = match counts.ready_by_practice {
        0 => String::new(),
        number => format!(" ({number} by good practice only)"),
    };
    format!(
        "{} ready{practice}, {} not ready, {} can't tell",
        counts.ready, counts.not_ready, counts.cannot_tell
    )
}

/// On how many vessels a requirement is missed.
pub(crate) fn missed_on(missed: &Missed) -> String {
    let parts = [(missed.not_met, "not met on"), (missed.cannot_tell, "can't tell on")];
    let told = parts.iter().filter(|(number, _)| *number > 0);
    told.map(|(number, what)| format!("{what} {number}")).collect::<Vec<_>>().join(", ")
}

/// The median and the worst shortfall, where there is one.
pub(crate) fn shortfalls(missed: &Missed, locale: Locale) -> Option<String> {
    let (median, worst) = (missed.median?, missed.worst.as_ref()?);
    let by = |length: Length, system: System| figures::difference(length, system, locale);
    let at_worst = format!("{} ({})", by(worst.short, worst.system), worst.vessel);
    let on = if missed.short_on == missed.not_met {
        String::new()
    } else {
        format!("on {} ", missed.short_on)
    };
    Some(if missed.short_on == 1 || median == worst.short {
        format!("too short {on}by {at_worst}")
    } else {
        format!("too short {on}by {} in the median, {at_worst} at worst", by(median, worst.system))
    })
}

/// What lapses: `the inspection of LC-1 falls due after 2026-12-14`.
pub(crate) fn lapse(lapse: &Lapse) -> String {
    let day = lapse.through;
    match (&lapse.what, lapse.end) {
        (What::Tool(mark), End::Expiry) => format!("{mark} is good through {day}"),
        (What::Tool(mark), End::Inspection) => {
            format!("the inspection of {mark} is good through {day}")
        }
        (What::Certificate(person), _) => {
            format!("the certificate of {person} is good through {day}")
        }
    }
}

/// What a lapse does to what it serves.
pub(crate) fn after_lapse(lapse: &Lapse) -> &'static str {
    match lapse.after {
        After::NotAsked => "nothing asks for it after that",
        After::Served => "something else serves after it",
        After::Open => "what it serves is open by then anyway",
        After::Advice => "nothing else aboard serves after it; it is recommended only",
        After::Decides => "nothing else aboard serves after it",
    }
}

/// Why a record was laid over no vessel.
pub(crate) fn left_out(left_out: &LeftOut) -> String {
    let vessel = &left_out.vessel;
    match left_out.called_so {
        0 => match &left_out.near {
            Some(near) => {
                format!("no vessel here is called `{vessel}`; is it of `{near}`? mend the name")
            }
            None => format!("no vessel here is called `{vessel}`"),
        },
        _ => format!(
            "{} vessels here are called `{vessel}`; of which it is cannot be told",
            left_out.called_so
        ),
    }
}

/// What a mark on several vessels means.
pub(crate) const SAME_MARK: &str = "the same mark, with nothing written that tells the tools \
    apart, on vessels that are at sea on the same days: look whether it is one tool";

/// The vessels on which a mark stands.
pub(crate) fn vessels_of(mark: &SameMark) -> String {
    names(&mark.vessels)
}

/// Vessels by their names, with the file where two are called the same.
fn names(vessels: &[(String, String)]) -> String {
    let alone = |name: &str| vessels.iter().filter(|(_, other)| other == name).count() == 1;
    let named = vessels
        .iter()
        .map(|(file, name)| if alone(name) { name.clone() } else { format!("{name} ({file})") });
    figures::all_of(&named.collect::<Vec<_>>())
}

/// What makes the totals doubtful, and what to do about it.
pub(crate) fn doubt(doubt: &Doubt) -> String {
    match doubt {
        Doubt::TripsOver { vessels } => {
            let trips =
                if vessels.len() == 1 { "trip is over, its" } else { "trips are over, their" };
            format!(
                "{} {trips} verdict speaks of the past: {}; `--on DATE` judges another day",
                vessels.len(),
                names(vessels)
            )
        }
        Doubt::SameRegister { register, vessels } => {
            let files: Vec<_> =
                vessels.iter().map(|(file, name)| format!("{name} ({file})")).collect();
            format!(
                "the register number {register} stands in {} files, a vessel may be counted \
                 twice: {}",
                vessels.len(),
                figures::all_of(&files)
            )
        }
    }
}
