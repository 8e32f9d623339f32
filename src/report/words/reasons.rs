//! Why a requirement is not met, or what is missing, in trade words.
//!
//! Imports `model` and `measure` only. One sentence part for each reason,
//! without the tool's mark in front.

use super::Words;
use super::figures;
use crate::measure::{Day, Figure, Length, Quantity, Rounding};
use crate::model::finding::{Because, Finding};
use crate::model::reason::{Demand, DisputedReading, Has, Reason};
use crate::model::vessel::How;
use crate::model::vocabulary::{AttributeId, AttributeShape};
use crate::report::Locale;

impl Words<'_> {
    /// The reason, of a lot of which some are broken with how many they are.
    pub(crate) fn reason_of(&self, because: &Because) -> String {
        match (because.tool.and_then(|tool| self.broken_of(tool)), &because.reason) {
            (Some((_, broken, all)), Reason::NotServiceable) => {
                self.locale.reason_part_broken(broken, &all)
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
        let say = self.locale;
        match reason {
            Reason::NothingAboard { kinds } => say.reason_nothing_aboard(&self.kinds(kinds)),
            Reason::TooFew { kind, have, need } => {
                say.reason_too_few(&self.kind(*kind), *have, need)
            }
            Reason::TooFewTypes { have, need, complete, incomplete } => {
                self.too_few_types(*have, *need, complete, incomplete)
            }
            Reason::TooShortForRail { attribute, has, least, short, freeboard, overruled } => {
                let text = self.too_short(*attribute, has, least, *short, *freeboard);
                self.against(text, overruled)
            }
            Reason::OutOfSpecification { attribute, has, demand, by, overruled } => {
                self.against(self.out_of_specification(*attribute, has, demand, *by), overruled)
            }
            Reason::NoAlternative { attributes } => {
                say.reason_no_alternative(&self.attributes(attributes))
            }
            Reason::AcquiredTooLate { acquired, before } => {
                say.reason_acquired_too_late(acquired, before)
            }
            Reason::NotServiceable => say.reason_not_serviceable().to_owned(),
            Reason::NotAboard { lent_to: Some(vessel) } => say.reason_lent(vessel),
            Reason::NotAboard { lent_to: None } => say.reason_not_aboard().to_owned(),
            Reason::Missing => say.reason_missing().to_owned(),
            Reason::InspectionLapsed { since } => say.reason_inspection_lapsed(since),
            Reason::Expired { since } => say.reason_expired(since),
            Reason::LapsesDuringTrip { on, inspection: true } => {
                say.reason_inspection_lapses(on, &on.previous())
            }
            Reason::LapsesDuringTrip { on, inspection: false } => {
                say.reason_expires(on, &on.previous())
            }
            Reason::Taken { requirement } => say.reason_taken(&self.title(*requirement)),
            Reason::OneOfThese { requirements } => {
                let titles: Vec<_> = requirements.iter().map(|one| self.title(*one)).collect();
                say.reason_one_of_these(&figures::all_of(&titles, say))
            }
            Reason::InEveryCase => say.reason_in_every_case().to_owned(),
            Reason::PartTaken { part } => say.reason_part_taken(part),
            Reason::FitsNothing { requirement } => {
                say.reason_fits_nothing(&self.title(*requirement))
            }
            Reason::NoCertificate { role, have, need, lapsed } => {
                self.no_certificate(role.as_deref(), *have, *need, *lapsed)
            }
            Reason::GearOutside { piece, why } => format!("{piece}: {}", self.reason(why)),
            Reason::Unmeasured { attribute, has, demand } => {
                self.unmeasured(*attribute, has.as_ref(), demand)
            }
            Reason::Disputed { attribute, readings, demand } => {
                let readings = readings_told(readings, say);
                self.with_demand(
                    say.reason_disputed(&self.attribute(*attribute), &readings),
                    demand,
                )
            }
            Reason::Approximate { attribute, has, limit } => say.reason_approximate(
                &self.attribute(*attribute),
                &has.show(say.units, Rounding::Down),
                &figures::about(limit, say),
            ),
            Reason::WordingDisputed { attributes } => {
                say.reason_wording_disputed(&self.attributes(attributes))
            }
            Reason::StateUnknown => say.reason_state_unknown().to_owned(),
            Reason::ExpiryDisputed { sure, last } => say.reason_expiry_disputed(sure, last),
            Reason::KindDisputed { kinds, by_name: true } => {
                say.reason_kind_open(&self.kinds(kinds))
            }
            Reason::KindDisputed { kinds, by_name: false } => {
                say.reason_kind_disputed(&self.kinds(kinds))
            }
            Reason::WhereaboutsUnknown => say.reason_whereabouts_unknown().to_owned(),
            Reason::InspectionUndated => say.reason_inspection_undated().to_owned(),
            Reason::AcquiredUnknown { before } => say.reason_acquired_unknown(before),
            Reason::NotListed { kinds } => say.reason_not_listed(&self.kinds(kinds)),
            Reason::SpareFitUnknown => say.reason_spare_fit_unknown().to_owned(),
            Reason::CertificateDisputed { person } => say.reason_certificate_disputed(person),
            Reason::PersonDisputed { person } => say.reason_person_disputed(person),
            Reason::CertificateUndated { person } => say.reason_certificate_undated(person),
            Reason::BindingUnknown { fact } => say.reason_binding_unknown(&self.unknown(fact)),
            Reason::VesselFactUnknown { fact } => self.unknown(fact),
            Reason::HangsOn { requirement } => say.reason_hangs_on(&self.title(*requirement)),
            Reason::TooManyWays => say.reason_too_many_ways().to_owned(),
            Reason::TooManyFacts => say.reason_too_many_facts().to_owned(),
            Reason::NotEncoded => say.reason_not_encoded().to_owned(),
            Reason::NoEdition { day } => say.reason_no_edition(day),
        }
    }

    fn too_few_types(
        &self,
        have: u32,
        need: u32,
        complete: &[String],
        incomplete: &[String],
    ) -> String {
        let mut text = self.locale.reason_too_few_types(need, &have);
        if !complete.is_empty() {
            text += &format!(": {}", figures::all_of(complete, self.locale));
        }
        if !incomplete.is_empty() {
            let begun = figures::all_of(incomplete, self.locale);
            text += &format!("; {}", self.locale.reason_types_begun(&begun));
        }
        text
    }

    fn too_short(
        &self,
        attribute: AttributeId,
        has: &Figure,
        least: &Figure,
        short: Length,
        freeboard: Length,
    ) -> String {
        self.locale.reason_too_short_for_rail(
            &self.attribute(attribute),
            &has.show(self.locale.units, Rounding::Down),
            &figures::difference(short, has.system, self.locale),
            &self.freeboard(freeboard),
            &least.show(self.locale.units, Rounding::Up),
        )
    }

    fn out_of_specification(
        &self,
        attribute: AttributeId,
        has: &Has,
        demand: &Demand,
        by: Option<Quantity>,
    ) -> String {
        let name = self.attribute(attribute);
        let (aboard, asked) =
            (figures::aboard(has, self.locale), figures::demand(demand, self.locale));
        match (has, by) {
            (Has::Figure(figure), Some(by)) => {
                let by = figures::quantity_difference(by, figure.system, self.locale);
                if is_over(figure, demand) {
                    self.locale.reason_figure_over(&name, &aboard, &asked, &by)
                } else {
                    self.locale.reason_figure_short(&name, &aboard, &asked, &by)
                }
            }
            (Has::Figure(_), None) => self.locale.reason_figure_outside(&name, &aboard, &asked),
            _ => self.locale.reason_property_outside(&name, &aboard, &asked),
        }
    }

    /// Whether the attribute is told by a quantity.
    pub(super) fn is_quantity(&self, attribute: AttributeId) -> bool {
        matches!(self.vocabulary.attribute(attribute).shape, AttributeShape::Quantity(_))
    }

    fn unmeasured(&self, attribute: AttributeId, has: Option<&Has>, demand: &Demand) -> String {
        let name = self.attribute(attribute);
        let open = match has {
            Some(has) => self.locale.reason_left_open(&name, &figures::aboard(has, self.locale)),
            None if self.is_quantity(attribute) => self.locale.reason_not_measured(&name),
            None => self.locale.reason_not_said(&name),
        };
        self.with_demand(open, demand)
    }

    /// What is open, and what is asked, where that is not open too.
    fn with_demand(&self, open: String, demand: &Demand) -> String {
        match demand {
            Demand::Open => open,
            demand => {
                let asked = figures::demand(demand, self.locale);
                format!("{open}, {}", self.locale.must_be(&asked))
            }
        }
    }

    /// A reason by what was measured, with the readings that say otherwise.
    fn against(&self, reason: String, overruled: &[DisputedReading]) -> String {
        match overruled {
            [] => reason,
            all => self.locale.reason_overruled(&reason, &readings_told(all, self.locale)),
        }
    }

    fn no_certificate(
        &self,
        role: Option<&str>,
        have: u32,
        need: u32,
        lapsed: Option<Day>,
    ) -> String {
        let wanting = match role {
            Some(role) => self.locale.reason_role_uncertified(&role),
            None => self.locale.reason_too_few_certified(&need, &have),
        };
        match lapsed {
            Some(day) => format!("{wanting}; {}", self.locale.reason_certificate_lapsed(&day)),
            None => wanting,
        }
    }
}

/// Several readings, with who read them and when.
pub(super) fn readings_told(readings: &[DisputedReading], locale: Locale) -> String {
    let told = readings.iter().map(|reading| {
        let value = figures::aboard(&reading.has, locale);
        let value = match reading.how {
            How::Label => locale.reading_label(&value),
            How::Stated | How::Measured => value,
        };
        match (&reading.by, reading.on) {
            (Some(person), Some(day)) => locale.reading_by_on(&value, person, &day),
            (Some(person), None) => locale.reading_by(&value, person),
            (None, Some(day)) => locale.reading_on(&value, &day),
            (None, None) => value,
        }
    });
    figures::all_of(&told.collect::<Vec<_>>(), locale)
}

/// Whether a figure outside what is asked is too large, not too small.
fn is_over(figure: &Figure, demand: &Demand) -> bool {
    match demand {
        Demand::Most(_) | Demand::Below(_) => true,
        Demand::Between(_, high) => figure.quantity.steps() > high.quantity.steps(),
        _ => false,
    }
}
