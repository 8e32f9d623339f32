//! What mends a reason: the action that puts it right, if any action on the
//! same thing can.

use crate::engine::evaluate::fit;
use crate::engine::evaluate::point::Point;
use crate::model::finding::{Action, FilledSlot};
use crate::model::profile::{Level, Profile, Requirement};
use crate::model::reason::{Demand, Reason};
use crate::model::rule::{Need, Spec};
use crate::model::vessel::Tool;
use crate::model::vocabulary::{Class, Vocabulary};

/// Whether the requirement counts towards the verdict in any of the points.
pub(super) fn counts(requirement: &Requirement, points: &[Point<'_>]) -> bool {
    requirement.level == Level::Required
        && points.iter().any(|point| point.binds(requirement) != Ok(false))
}

/// The action that mends the reason on the tool it speaks of; `None` where
/// only another tool will do.
fn action(reason: &Reason, tool: &Tool, vocabulary: &Vocabulary) -> Option<Action> {
    if vocabulary.kind(tool.kind).class == Class::Document {
        return document(reason);
    }
    let lengthens = |attribute| vocabulary.attribute(attribute).lengthens;
    match reason {
        Reason::Unmeasured { .. }
        | Reason::Disputed { .. }
        | Reason::StateUnknown
        | Reason::WhereaboutsUnknown
        | Reason::ExpiryDisputed { .. }
        | Reason::KindDisputed { .. }
        | Reason::AcquiredUnknown { .. }
        | Reason::SpareFitUnknown => Some(Action::Measure),
        Reason::InspectionLapsed { .. }
        | Reason::InspectionUndated
        | Reason::LapsesDuringTrip { inspection: true, .. } => Some(Action::Reinspect),
        Reason::NotServiceable => Some(Action::Repair),
        Reason::TooShortForRail { attribute, .. } if lengthens(*attribute) => {
            Some(Action::Lengthen)
        }
        Reason::OutOfSpecification {
            attribute,
            demand: Demand::Least(_) | Demand::Above(_),
            ..
        } if lengthens(*attribute) => Some(Action::Lengthen),
        Reason::NotAboard { .. } => Some(Action::BringAboard),
        Reason::NothingAboard { .. }
        | Reason::TooFew { .. }
        | Reason::TooFewTypes { .. }
        | Reason::TooShortForRail { .. }
        | Reason::OutOfSpecification { .. }
        | Reason::NoAlternative { .. }
        | Reason::AcquiredTooLate { .. }
        | Reason::Missing
        | Reason::Expired { .. }
        | Reason::LapsesDuringTrip { .. }
        | Reason::Taken { .. }
        | Reason::OneOfThese { .. }
        | Reason::InEveryCase
        | Reason::PartTaken { .. }
        | Reason::FitsNothing { .. }
        | Reason::NoCertificate { .. }
        | Reason::GearOutside { .. }
        | Reason::Approximate { .. }
        | Reason::WordingDisputed { .. }
        | Reason::NotListed { .. }
        | Reason::CertificateUndated { .. }
        | Reason::CertificateDisputed { .. }
        | Reason::PersonDisputed { .. }
        | Reason::BindingUnknown { .. }
        | Reason::VesselFactUnknown { .. }
        | Reason::HangsOn { .. }
        | Reason::TooManyWays
        | Reason::TooManyFacts
        | Reason::NotEncoded
        | Reason::NoEdition { .. } => None,
    }
}

/// A document is posted or carried, whatever was wrong with the one aboard.
fn document(reason: &Reason) -> Option<Action> {
    match reason {
        Reason::Unmeasured { .. }
        | Reason::Disputed { .. }
        | Reason::ExpiryDisputed { .. }
        | Reason::KindDisputed { .. }
        | Reason::WhereaboutsUnknown => Some(Action::Measure),
        _ => Some(Action::Document),
    }
}

/// What makes a tool serve: the action that costs most, and all it mends.
#[derive(Debug, Clone)]
pub(super) struct Mend {
    pub(super) action: Action,
    pub(super) reasons: Vec<Reason>,
}

/// A tool of the kit that fills a slot of a requirement, as it is or once it
/// is mended.
pub(super) struct Service {
    pub(super) requirement: usize,
    pub(super) tool: usize,
    pub(super) slot: FilledSlot,
    /// What has to be done, if anything.
    pub(super) mend: Option<Mend>,
}

impl Service {
    /// Whether it fills that slot.
    pub(super) fn fills(&self, requirement: usize, of_type: usize, member: usize) -> bool {
        (self.requirement, self.slot.of_type, self.slot.member) == (requirement, of_type, member)
    }
}

/// Every tool that comes to serve at all the points, slot by slot, by the
/// alternative that takes the least.
pub(super) fn services(profile: &Profile, points: &[Point<'_>]) -> Vec<Service> {
    let mut services = Vec::new();
    for (requirement, asked) in profile.requirements.iter().enumerate() {
        let Need::Tools { types, .. } = &asked.need else { continue };
        if !counts(asked, points) {
            continue;
        }
        for (of_type, the_type) in types.iter().enumerate() {
            for (at, member) in the_type.members.iter().enumerate() {
                let slot = FilledSlot { of_type, member: at, choice: 0, count: 1 };
                for (tool, listed) in points[0].vessel.kit.iter().enumerate() {
                    let clause = the_type.clause.as_deref();
                    let of_kind = |(_, spec): &(_, &Spec)| spec.kind == listed.kind;
                    let choices = member.choices.iter().enumerate().filter(of_kind);
                    let mends = choices.filter_map(|(choice, spec)| {
                        Some((choice, mend(listed, spec, clause, asked, points).ok()?))
                    });
                    let least = mends.min_by_key(|(_, mend)| mend.as_ref().map(|mend| mend.action));
                    services.extend(least.map(|(choice, mend)| {
                        let slot = FilledSlot { choice, ..slot };
                        Service { requirement, tool, slot, mend }
                    }));
                }
            }
        }
    }
    services
}

/// What has to be done so that the tool serves the spec at all the points:
/// `Ok(None)` if nothing, `Err(())` if only another tool will do.
fn mend(
    tool: &Tool,
    spec: &Spec,
    type_clause: Option<&str>,
    requirement: &Requirement,
    points: &[Point<'_>],
) -> Result<Option<Mend>, ()> {
    let mut mend: Option<Mend> = None;
    for point in points.iter().filter(|point| point.binds(requirement) != Ok(false)) {
        if point.holds_all(&spec.when) == Ok(false) {
            return Err(());
        }
        for reason in fit::fit(tool, spec, type_clause, requirement, point) {
            let action = action(&reason, tool, point.vocabulary).ok_or(())?;
            let mend = mend.get_or_insert(Mend { action, reasons: Vec::new() });
            mend.action = mend.action.max(action);
            add(&mut mend.reasons, reason);
        }
        // What a spare fits is no matter of the spare alone, so `fit` does
        // not ask.
        if matches!(requirement.need, Need::Tools { spare_for: Some(_), .. })
            && tool.fits.is_empty()
        {
            let action = Action::Measure;
            let mend = mend.get_or_insert(Mend { action, reasons: Vec::new() });
            mend.action = mend.action.max(action);
            add(&mut mend.reasons, Reason::SpareFitUnknown);
        }
    }
    Ok(mend)
}

/// Keeps one reason of each sort, the larger shortfall of two.
pub(crate) fn add(reasons: &mut Vec<Reason>, reason: Reason) {
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
