//! What an audit tells of ways of freeing a turtle, where it is asked.
//!
//! Imports `engine`, `fleet` and `options`. Leaves verdicts and exit code as
//! they are.

use super::super::arguments::{AuditArguments, FleetFormat};
use super::super::quote;
use super::super::stop::Stop;
use crate::fleet::{Audit, Row};
use crate::freeing::Prepared;
use crate::freeing::{Options, Terms, of_check};
use crate::load::Library;
use crate::model::catalogue::Catalogue;
use crate::model::technique::Practice;
use crate::report::audit::Freeing;
use crate::report::desk;
use rayon::prelude::*;
use std::sync::Arc;

/// What the kits of a fleet leave open, vessel by vessel.
pub(super) struct Outcomes {
    practice: Arc<Practice>,
    options: Vec<Options>,
    catalogues: Vec<Catalogue>,
}

impl Outcomes {
    pub(super) fn shown(&self) -> Freeing<'_> {
        Freeing { practice: &self.practice, options: &self.options, catalogues: &self.catalogues }
    }
}

/// Refuses what makes no sense before anything is judged.
pub(super) fn sensible(arguments: &AuditArguments) -> Result<(), Stop> {
    let format = match arguments.format {
        FleetFormat::Lines => Some("lines"),
        FleetFormat::Csv => Some("csv"),
        FleetFormat::Table | FleetFormat::Json | FleetFormat::Html => None,
    };
    if let Some(format) = format.filter(|_| arguments.outcomes) {
        return Err(Stop::usage(
            desk::command_outcomes_format(&format),
            desk::command_outcomes_choose(),
        ));
    }
    quote::once_believed(&arguments.catalogue, arguments.trust.into())
}

/// The catalogues that were named, read before anything is judged.
pub(super) fn catalogues(
    arguments: &AuditArguments,
    library: &Library,
) -> Result<Vec<Catalogue>, Stop> {
    let mut refusals = Vec::new();
    let catalogues = quote::catalogues(&arguments.catalogue, library, &mut refusals);
    if !refusals.is_empty() {
        return Err(Stop::Refused(refusals));
    }
    quote::one_currency(&catalogues)?;
    Ok(catalogues)
}

/// What every vessel that is shown leaves open.
pub(super) fn outcomes(
    library: &Library,
    audit: &Audit,
    catalogues: Vec<Catalogue>,
) -> Result<Outcomes, Stop> {
    let Some(practice) = library.practice.clone() else {
        return Err(Stop::no_techniques(desk::command_no_outcomes()));
    };
    let prepared = Prepared::new(&practice);
    let terms =
        Terms { vocabulary: &library.vocabulary, prepared: &prepared, catalogues: &catalogues };
    let judged: Vec<_> = audit
        .rows
        .iter()
        .filter_map(|row| match row {
            Row::Vessel(judged) => Some(judged),
            Row::Refused(_) => None,
        })
        .collect();
    let options = judged.par_iter().map(|judged| of_check(&terms, &judged.check)).collect();
    Ok(Outcomes { practice, options, catalogues })
}
