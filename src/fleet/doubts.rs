//! What makes a verdict or the totals of an audit doubtful though every file
//! was read: trips that are over, old lists, and one vessel written down twice.

use super::judge::{Judged, Row};
use crate::measure::{Day, Interval};
use crate::model::check::{Check, Notice};
use crate::model::stable::stable_words;
use std::collections::BTreeMap;

/// One doubt about the fleet as a whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Doubt {
    /// The trips of these vessels were over on the day of the audit: their
    /// verdicts speak of the past.
    TripsOver {
        /// The vessels' files and names, in the order of the rows.
        vessels: Vec<(String, String)>,
    },
    /// The lists of these vessels were declared more than a year before they
    /// depart.
    ListsOld {
        /// The vessels' files and names, in the order of the rows.
        vessels: Vec<(String, String)>,
    },
    /// One register number stands in several files: a vessel may be counted
    /// twice.
    SameRegister {
        /// The number as it is written first.
        register: String,
        /// The files and names, in the order of the rows.
        vessels: Vec<(String, String)>,
    },
}

impl Doubt {
    /// The stable code, part of the JSON format.
    pub fn code(&self) -> &'static str {
        code(self)
    }

    /// The stable codes of all doubts.
    pub const CODES: &'static [&'static str] = CODES;

    /// The files and names of the vessels.
    pub fn vessels(&self) -> &[(String, String)] {
        match self {
            Self::TripsOver { vessels }
            | Self::ListsOld { vessels }
            | Self::SameRegister { vessels, .. } => vessels,
        }
    }
}

stable_words! {
    fn code(&Doubt) in CODES {
            Doubt::TripsOver { .. } => "trips-over",
            Doubt::ListsOld { .. } => "lists-old",
            Doubt::SameRegister { .. } => "same-register",
    }
}

/// What is doubtful of one vessel that was judged on that day.
pub fn notices(check: &Check, date: Day) -> Vec<Notice> {
    let over = (check.asked.back < date).then_some(Notice::TripOver { back: check.asked.back });
    let year = Interval::parse("1 year").ok();
    let old = |declared: &Day| year.is_some_and(|y| declared.through(y) < check.asked.departure);
    let declared = check.vessel.declared.filter(old);
    over.into_iter().chain(declared.map(|declared| Notice::ListOld { declared })).collect()
}

/// The doubts about these rows.
pub(super) fn doubts(rows: &[Row], date: Day) -> Vec<Doubt> {
    let judged: Vec<&Judged> = rows
        .iter()
        .filter_map(|row| match row {
            Row::Vessel(judged) => Some(&**judged),
            Row::Refused(_) => None,
        })
        .collect();
    let named = |judged: &Judged| (judged.file.to_string(), judged.check.vessel.name.clone());
    let told = |is: fn(&Notice) -> bool| -> Vec<_> {
        let of = |judged: &&&Judged| notices(&judged.check, date).iter().any(is);
        judged.iter().filter(of).map(|judged| named(judged)).collect()
    };
    let over = told(|notice| matches!(notice, Notice::TripOver { .. }));
    let old = told(|notice| matches!(notice, Notice::ListOld { .. }));
    let mut by_register: BTreeMap<String, Vec<&Judged>> = BTreeMap::new();
    for judged in judged {
        if let Some(register) = &judged.check.vessel.register {
            by_register.entry(super::bare(register)).or_default().push(judged);
        }
    }
    let several = by_register.into_values().filter(|same| same.len() > 1);
    let twice = several.map(|same| Doubt::SameRegister {
        register: same[0].check.vessel.register.clone().unwrap_or_default(),
        vessels: same.iter().map(|judged| named(judged)).collect(),
    });
    let over = (!over.is_empty()).then_some(Doubt::TripsOver { vessels: over });
    let old = (!old.is_empty()).then_some(Doubt::ListsOld { vessels: old });
    over.into_iter().chain(old).chain(twice).collect()
}
