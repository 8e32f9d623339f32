//! Small orders for the tests of this room. All of it is invented.

use super::needs::Needs;
use super::order::{OneVessel, Order};
use super::unmet;
use crate::load::{self, Library};
use crate::measure::Day;
use crate::model::catalogue::Catalogue;
use crate::model::profile::Profile;
use std::sync::Arc;
use std::time::Duration;

/// What an order is made of.
pub(super) struct Sample {
    library: Library,
    asked: [Arc<Profile>; 1],
    catalogues: [Catalogue; 1],
    pub(super) vessels: Vec<OneVessel>,
}

impl Sample {
    /// Vessels with these kits, what is asked of each of them, and a catalogue
    /// of these items.
    pub(super) fn new(asked: &[&str], kits: &[&str], delivery: &str, items: &[&str]) -> Self {
        let library = Library::shipped().unwrap();
        let listed = |lines: &[&str], line: &dyn Fn(usize, &str) -> String| -> String {
            lines.iter().enumerate().map(|(at, text)| line(at, text)).collect()
        };
        let requirements = listed(asked, &|at, text| {
            format!("  - {{ id: r{at}, title: r{at}, verified: common practice, {text} }}\n")
        });
        let profile = format!(
            "format: profile/1\nid: sample\nrule: sample\nedition: invented for tests\n\
             title: Sample\nstanding: good practice\nrequirements:\n{requirements}"
        );
        let items = listed(items, &|at, text| {
            format!("  - {{ number: I-{at}, description: sample, {text} }}\n")
        });
        let catalogue = format!(
            "format: catalogue/1\nsupplier: Sample\ncurrency: USD\ntax: 0%\n\
             delivery: {delivery}\nlead: 2 days\nitems:\n{items}"
        );
        let vessel = |kit: &&str| {
            let text = format!(
                "format: vessel/1\nname: Sample\nfreeboard: 5 ft\npermits: []\n\
                 gear: [pelagic-longline]\nareas: []\nkit: [{kit}]\n"
            );
            OneVessel {
                file: "v.yaml".into(),
                vessel: load::read_vessel("v.yaml", &text, &library.vocabulary).unwrap().0,
                inspections: Vec::new(),
                departure: Day::parse("2026-03-05").unwrap(),
                back: None,
            }
        };
        Self {
            asked: [library.draft_text("sample.yaml", &profile).unwrap()],
            catalogues: [load::read_catalogue("c.yaml", &catalogue, &library.vocabulary)
                .unwrap()
                .0],
            vessels: kits.iter().map(vessel).collect(),
            library,
        }
    }

    pub(super) fn order(&self) -> Order<'_> {
        Order {
            vocabulary: &self.library.vocabulary,
            profiles: &self.library.profiles,
            asked: &self.asked,
            catalogues: &self.catalogues,
            vessels: &self.vessels,
            ordered: Day::parse("2026-03-01").unwrap(),
            with_recommended: true,
            one_supplier: false,
            explain: false,
            patience: Duration::from_secs(60),
        }
    }

    /// What the vessels need.
    pub(super) fn needs(&self) -> Vec<Needs> {
        let order = self.order();
        let offers = unmet::everything(&order);
        let of = |one: &OneVessel| Needs::of(&order, one, &one.vessel, &offers, &[]);
        self.vessels.iter().map(of).collect()
    }
}
