//! What mends a reason: the deed that puts it right, if any deed on the
//! same thing can.

use super::fit;
use super::scene::Scene;
use crate::model::finding::Deed;
use crate::model::profile::Requirement;
use crate::model::reason::{Demand, Reason};
use crate::model::rule::{Need, Spec};
use crate::model::vessel::Tool;
use crate::model::vocabulary::{Class, Vocabulary};

/// The deed that mends the reason on the tool it speaks of; `None` where
/// only another tool will do.
fn deed(reason: &Reason, tool: &Tool, vocabulary: &Vocabulary) -> Option<Deed> {
    if vocabulary.kind(tool.kind).class == Class::Document {
        return document(reason);
    }
    let lengthens = |attribute| vocabulary.attribute(attribute).lengthens;
    match reason {
        Reason::Unmeasured { .. }
        | Reason::Disputed { .. }
        | Reason::StateUnknown
        | Reason::WhereaboutsUnknown
        | Reason::AcquiredUnknown { .. }
        | Reason::SpareFitUnknown => Some(Deed::Measure),
        Reason::InspectionLapsed { .. }
        | Reason::InspectionUndated
        | Reason::LapsesDuringTrip { inspection: true, .. } => Some(Deed::Reinspect),
        Reason::NotServiceable => Some(Deed::Repair),
        Reason::TooShortForRail { attribute, .. } if lengthens(*attribute) => Some(Deed::Lengthen),
        Reason::OutOfSpecification {
            attribute,
            demand: Demand::Least(_) | Demand::Above(_),
            ..
        } if lengthens(*attribute) => Some(Deed::Lengthen),
        Reason::NotAboard { .. } => Some(Deed::BringAboard),
        _ => None,
    }
}

/// A document is posted or carried, whatever was wrong with the one aboard.
fn document(reason: &Reason) -> Option<Deed> {
    match reason {
        Reason::Unmeasured { .. } | Reason::Disputed { .. } | Reason::WhereaboutsUnknown => {
            Some(Deed::Measure)
        }
        _ => Some(Deed::Document),
    }
}

/// What makes a tool serve: the deed that costs most, and all it mends.
#[derive(Debug, Clone)]
pub(super) struct Mend {
    pub(super) deed: Deed,
    pub(super) reasons: Vec<Reason>,
}

/// What has to be done so that the tool serves the spec in all the scenes:
/// `Ok(None)` if nothing, `Err(())` if only another tool will do.
pub(super) fn mend(
    tool: &Tool,
    spec: &Spec,
    type_clause: Option<&str>,
    requirement: &Requirement,
    scenes: &[Scene<'_>],
) -> Result<Option<Mend>, ()> {
    let mut mend: Option<Mend> = None;
    for scene in scenes.iter().filter(|scene| scene.binds(requirement) != Ok(false)) {
        if scene.holds_all(&spec.when) == Ok(false) {
            return Err(());
        }
        for reason in fit::fit(tool, spec, type_clause, requirement, scene) {
            let deed = deed(&reason, tool, scene.vocabulary).ok_or(())?;
            let mend = mend.get_or_insert(Mend { deed, reasons: Vec::new() });
            mend.deed = mend.deed.max(deed);
            add(&mut mend.reasons, reason);
        }
        // What a spare fits is no matter of the spare alone, so `fit` does
        // not ask.
        if matches!(requirement.need, Need::Tools { spare_for: Some(_), .. })
            && tool.fits.is_empty()
        {
            let deed = Deed::Measure;
            let mend = mend.get_or_insert(Mend { deed, reasons: Vec::new() });
            mend.deed = mend.deed.max(deed);
            add(&mut mend.reasons, Reason::SpareFitUnknown);
        }
    }
    Ok(mend)
}

/// Keeps one reason of each sort, the larger shortfall of two.
pub(super) fn add(reasons: &mut Vec<Reason>, reason: Reason) {
    let subject = |reason: &Reason| match reason {
        Reason::TooShortForRail { attribute, .. }
        | Reason::OutOfSpecification { attribute, .. } => Some((reason.code(), Some(*attribute))),
        Reason::Unmeasured { attribute, .. } | Reason::Disputed { attribute, .. } => {
            Some((reason.code(), Some(*attribute)))
        }
        _ => Some((reason.code(), None)),
    };
    match reasons.iter_mut().find(|old| subject(old) == subject(&reason)) {
        Some(old) => {
            if short_of(&reason) > short_of(old) {
                *old = reason;
            }
        }
        None => reasons.push(reason),
    }
}

fn short_of(reason: &Reason) -> i64 {
    match reason {
        Reason::TooShortForRail { short, .. } => short.nanometres(),
        Reason::OutOfSpecification { by: Some(by), .. } => by.steps(),
        Reason::Unmeasured { demand: Demand::Least(figure), .. } => figure.quantity.steps(),
        _ => 0,
    }
}
