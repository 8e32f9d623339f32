//! Why a requirement is not met, or what is missing, in trade words.
//!
//! Imports `model` and `measure` only. One sentence part for each reason,
//! without the tool's mark in front.

use super::Words;
use super::figures;
use crate::measure::{Day, Figure, Length, Quantity, System};
use crate::model::finding::{Because, Finding};
use crate::model::reason::{Demand, DisputedReading, Has, Reason};
use crate::model::vocabulary::{AttributeId, AttributeShape};

impl Words<'_> {
    /// The reason, of a lot of which some are broken with how many they are.
    pub(crate) fn reason_of(&self, because: &Because) -> String {
        match (because.tool.and_then(|tool| self.broken_of(tool)), &because.reason) {
            (Some((_, 1, all)), Reason::NotServiceable) => format!("1 of {all} does not work"),
            (Some((_, broken, all)), Reason::NotServiceable) => {
                format!("{broken} of {all} do not work")
            }
            _ => self.reason(&because.reason),
        }
    }

    /// The reason with the mark of the tool that it speaks of.
    pub(crate) fn told(&self, because: &Because) -> String {
        let reason = self.reason_of(because);
        match because.tool {
            Some(tool) => format!("{}: {reason}", self.lot(tool)),
            None => reason,
        }
    }

    /// Why a finding is not met or cannot be told, in one sentence: the first
    /// reason, which speaks of the nearest tool.
    pub(crate) fn first_reason(&self, finding: &Finding) -> String {
        finding.reasons.first().map(|because| self.told(because)).unwrap_or_default()
    }

    /// The reason, without the tool that it speaks of. Every reason has its
    /// words here: one without does not compile.
    pub(crate) fn reason(&self, reason: &Reason) -> String {
        match reason {
            Reason::NothingAboard { kinds } => format!("no {} aboard", self.kinds(kinds)),
            Reason::TooFew { kind, have, need } => {
                format!("{}: {}", self.kind(*kind), too_few(*have, *need))
            }
            Reason::TooFewTypes { have, need, complete, incomplete } => {
                too_few_types(*have, *need, complete, incomplete)
            }
            Reason::TooShortForRail { attribute, has, least, short, freeboard } => {
                self.too_short(*attribute, has, least, *short, *freeboard)
            }
            Reason::OutOfSpecification { attribute, has, demand, by } => {
                self.out_of_specification(*attribute, has, demand, *by)
            }
            Reason::NoAlternative { attributes } => {
                format!("fits none of the ways left open ({})", self.attributes(attributes))
            }
            Reason::AcquiredTooLate { acquired, before } => {
                format!("acquired on {acquired}; tolerated only if acquired before {before}")
            }
            Reason::NotServiceable => "does not work".to_owned(),
            Reason::NotAboard { lent_to: Some(vessel) } => format!("lent to {vessel}"),
            Reason::NotAboard { lent_to: None } => "not aboard".to_owned(),
            Reason::Missing => "lost, or looked for and not found".to_owned(),
            Reason::InspectionLapsed { since } => format!("inspection overdue since {since}"),
            Reason::Expired { since } => format!("out of date since {since}"),
            Reason::LapsesDuringTrip { on, inspection } => lapses(*on, *inspection),
            Reason::Taken { requirement } => {
                format!("would do, but is needed for {}", self.title(*requirement))
            }
            Reason::PartTaken { part } => format!("its part {part} is needed for another tool"),
            Reason::FitsNothing { requirement } => {
                format!("fits no tool that serves for {}", self.title(*requirement))
            }
            Reason::NoCertificate { role, have, need, lapsed } => {
                no_certificate(role.as_deref(), *have, *need, *lapsed)
            }
            Reason::GearOutside { piece, why } => format!("{piece}: {}", self.reason(why)),
            Reason::Unmeasured { attribute, has, demand } => {
                self.unmeasured(*attribute, has.as_ref(), demand)
            }
            Reason::Disputed { attribute, readings, demand } => {
                self.disputed(*attribute, readings, demand)
            }
            Reason::Approximate { attribute, has, limit } => format!(
                "{} {}, the rule says {}, and outside that nobody can tell",
                self.attribute(*attribute),
                figures::aboard(&Has::Figure(has.clone()), self.locale),
                figures::about(limit, self.locale)
            ),
            Reason::WordingDisputed { attributes } => format!(
                "the rule's wording can be read in ways that differ here ({})",
                self.attributes(attributes)
            ),
            Reason::StateUnknown => "nobody said whether it works".to_owned(),
            Reason::WhereaboutsUnknown => "nobody said where it is".to_owned(),
            Reason::InspectionUndated => "no day of its last inspection is known".to_owned(),
            Reason::AcquiredUnknown { before } => {
                format!("no day of acquisition is known; tolerated only if before {before}")
            }
            Reason::NotListed { kinds } => {
                format!("no {} listed, but not everything aboard is listed", self.kinds(kinds))
            }
            Reason::SpareFitUnknown => "nobody said which tool it fits".to_owned(),
            Reason::CertificateUndated { person } => {
                format!("the certificate of {person} has no date")
            }
            Reason::BindingUnknown { fact } => {
                format!("whether this is asked of the vessel is open: {}", self.unknown(fact))
            }
            Reason::VesselFactUnknown { fact } => self.unknown(fact),
            Reason::HangsOn { requirement } => {
                format!("met once `{}` is settled", self.title(*requirement))
            }
            Reason::TooManyWays => {
                "there are too many ways to share out the kit; the search was stopped".to_owned()
            }
            Reason::NotEncoded => "the rule is known, not encoded".to_owned(),
            Reason::NoEdition { day } => format!("no edition of the rule is known for {day}"),
        }
    }

    fn too_short(
        &self,
        attribute: AttributeId,
        has: &Figure,
        least: &Figure,
        short: Length,
        freeboard: Length,
    ) -> String {
        format!(
            "{} {} is {} too short for the rail; at a freeboard of {} it must be {}",
            self.attribute(attribute),
            figures::aboard(&Has::Figure(has.clone()), self.locale),
            figures::difference(short, has.system, self.locale),
            self.freeboard(freeboard),
            figures::demand(&Demand::Least(least.clone()), self.locale)
        )
    }

    fn out_of_specification(
        &self,
        attribute: AttributeId,
        has: &Has,
        demand: &Demand,
        by: Option<Quantity>,
    ) -> String {
        let head = format!(
            "{}{} {}, must be {}",
            self.attribute(attribute),
            if matches!(has, Has::Figure(_)) { "" } else { ":" },
            figures::aboard(has, self.locale),
            figures::demand(demand, self.locale)
        );
        let Some(by) = by else { return head };
        let lead = match has {
            Has::Figure(figure) => figure.system,
            _ => figures::system_of(demand).unwrap_or(System::Metric),
        };
        let difference = figures::quantity_difference(by, lead, self.locale);
        format!("{head}: {difference} {}", direction(has, demand))
    }

    /// Whether the attribute is told by a quantity.
    pub(super) fn is_quantity(&self, attribute: AttributeId) -> bool {
        matches!(self.vocabulary.attribute(attribute).shape, AttributeShape::Quantity(_))
    }

    fn unmeasured(&self, attribute: AttributeId, has: Option<&Has>, demand: &Demand) -> String {
        let name = self.attribute(attribute);
        if let Some(has) = has {
            let has = figures::aboard(has, self.locale);
            return format!("{name}: {has} leaves it open{}", self.must(demand));
        }
        let head = if self.is_quantity(attribute) {
            format!("{name} not measured")
        } else {
            format!("{name}: nobody said")
        };
        format!("{head}{}", self.must(demand))
    }

    /// `, must be at least 6 ft`; nothing where that is open too.
    fn must(&self, demand: &Demand) -> String {
        match demand {
            Demand::Open => String::new(),
            demand => format!(", must be {}", figures::demand(demand, self.locale)),
        }
    }

    fn disputed(
        &self,
        attribute: AttributeId,
        readings: &[DisputedReading],
        demand: &Demand,
    ) -> String {
        let texts: Vec<_> = readings.iter().map(|reading| self.reading(reading)).collect();
        format!(
            "{}: the readings {} lie on both sides of the limit{}",
            self.attribute(attribute),
            figures::all_of(&texts),
            self.must(demand)
        )
    }

    fn reading(&self, reading: &DisputedReading) -> String {
        let value = figures::aboard(&reading.has, self.locale);
        let by = reading.by.as_ref().map(|by| format!("by {by}"));
        let on = reading.on.map(|on| format!("on {on}"));
        let source: Vec<_> = [by, on].into_iter().flatten().collect();
        if source.is_empty() { value } else { format!("{value} {}", source.join(" ")) }
    }
}

fn direction(has: &Has, demand: &Demand) -> &'static str {
    let over = match (demand, has) {
        (Demand::Most(_) | Demand::Below(_), _) => true,
        (Demand::Between(_, high), Has::Figure(figure)) => {
            figure.quantity.steps() > high.quantity.steps()
        }
        _ => false,
    };
    if over { "too much" } else { "short" }
}

fn too_few(have: u32, need: u32) -> String {
    match have {
        0 => format!("none counts of the {need} asked"),
        1 => format!("only 1 of the {need} asked counts"),
        have => format!("only {have} of the {need} asked count"),
    }
}

fn too_few_types(have: u32, need: u32, complete: &[String], incomplete: &[String]) -> String {
    let mut text = match need {
        1 => format!("1 complete type asked, {have} there"),
        _ => format!("{need} different types asked, {have} complete"),
    };
    if !complete.is_empty() {
        text.push_str(&format!(": {}", figures::all_of(complete)));
    }
    if !incomplete.is_empty() {
        text.push_str(&format!("; begun but not complete: {}", figures::all_of(incomplete)));
    }
    text
}

fn lapses(on: Day, inspection: bool) -> String {
    let what = if inspection { "its inspection runs out" } else { "it goes out of date" };
    format!("{what} during the trip, on {on} (good through {})", on.previous())
}

fn no_certificate(role: Option<&str>, have: u32, need: u32, lapsed: Option<Day>) -> String {
    let head = match role {
        Some(role) => format!("no {role} holds a valid certificate"),
        None => format!("{need} people with a valid certificate asked, {have} there"),
    };
    match lapsed {
        Some(day) => format!("{head}; the latest one is out of date since {day}"),
        None => head,
    }
}
