//! What each vessel needs: what the profiles want of its kit and of
//! everything that could come aboard.

use super::order::{OneVessel, Order};
use super::outcome::{Cured, Offer};
use super::small::Reduced;
use super::wide::{self, Origin, Wide};
use crate::engine::demand::{self, Demands};
use crate::engine::{Depth, Terms};
use crate::measure::Length;
use crate::model::catalogue::Gives;
use crate::model::profile::Level;
use crate::model::vessel::{State, Trust, Vessel, Whereabouts};
use crate::model::vocabulary::KindId;

/// What one vessel needs.
#[derive(Debug, Clone, Default)]
pub(super) struct Needs {
    /// None where nothing is wanted; one; or, where it depends on what is aboard what else is
    /// wanted, one for each case.
    pub(super) branches: Vec<Branch>,
}

/// What is wanted where these kinds come aboard and those do not.
#[derive(Debug, Clone)]
pub(super) struct Branch {
    pub(super) wide: Wide,
    pub(super) demands: Vec<Demands>,
    /// Kinds of which something has to come aboard.
    pub(super) with: Vec<KindId>,
}

/// The most kinds whose coming aboard is looked at both ways.
const MOST_DECIDING: usize = 4;

/// The terms on which a vessel is judged.
pub(super) fn terms<'a>(order: &Order<'a>, one: &OneVessel, depth: Depth) -> Terms<'a> {
    Terms {
        vocabulary: order.vocabulary,
        profiles: order.profiles,
        asked: order.asked,
        departure: one.departure,
        back: one.back,
        trust: Trust::All,
        depth,
    }
}

impl Needs {
    /// What the vessel needs, as judged, with these offers; `further` are
    /// freeboards to look at besides the usual ones.
    pub(super) fn of(
        order: &Order<'_>,
        one: &OneVessel,
        own: &Vessel,
        offers: &[Offer],
        further: &[Length],
    ) -> Self {
        let terms = terms(order, one, Depth::Findings);
        let mut kinds = demand::deciding_kinds(&terms, own);
        kinds.retain(|kind| !is_aboard(own, *kind) && comes(order, own, offers, *kind));
        kinds.truncate(MOST_DECIDING);
        let branches = (0..1_usize << kinds.len()).map(|case| {
            let comes = |kind: &KindId| {
                kinds.iter().position(|k| k == kind).is_none_or(|at| case >> at & 1 == 1)
            };
            let allows = |kind, through: bool| comes(&kind) && (through || !kinds.contains(&kind));
            let wide = Wide::new(order, one, own, offers, allows);
            let demands = demand::demands(&terms, &wide.vessel, further);
            Branch { wide, demands, with: kinds.iter().copied().filter(comes).collect() }
        });
        Self { branches: branches.collect() }
    }
}

/// Whether something of the kind is aboard for certain, whatever is bought.
fn is_aboard(own: &Vessel, kind: KindId) -> bool {
    own.kit.iter().any(|tool| {
        tool.kind == kind
            && tool.state == State::Serviceable
            && tool.whereabouts == Whereabouts::Aboard
            && tool.expires.is_none()
            && tool.acquired.is_none()
    })
}

/// Whether an order can bring something of the kind aboard, or mend it.
fn comes(order: &Order<'_>, own: &Vessel, offers: &[Offer], kind: KindId) -> bool {
    let mendable = || own.kit.iter().any(|t| t.kind == kind && t.state != State::Serviceable);
    offers.iter().any(|offer| match &wide::item(order, *offer).gives {
        Gives::Tools(given) => given.iter().any(|given| given.tool.kind == kind),
        Gives::Service { kinds, mends, .. } => *mends && kinds.contains(&kind) && mendable(),
        Gives::Extension { .. } => false,
    })
}

impl Branch {
    /// Its points with what matters in them only, each once.
    pub(super) fn points(
        &self,
        takes: impl Fn(Cured, Level) -> bool,
        believed: impl Fn(usize) -> bool,
    ) -> Vec<Reduced> {
        let mut points: Vec<Reduced> = Vec::new();
        for (judgement, demands) in self.demands.iter().enumerate() {
            for point in &demands.points {
                let reduced = Reduced::of(point, judgement, &self.wide, &takes, &believed);
                if !reduced.is_empty() && !points.contains(&reduced) {
                    points.push(reduced);
                }
            }
        }
        points
    }

    /// Whether a tool of the wide kit brings something of a kind aboard that
    /// is not there yet.
    pub(super) fn brings(&self, tool: usize, kind: KindId) -> bool {
        let kit = &self.wide.vessel.kit;
        let works = |tool: usize| kit[tool].state == State::Serviceable;
        kit[tool].kind == kind
            && match &self.wide.origins[tool] {
                Origin::Own(_) => false,
                Origin::Changed(changed) => works(tool) && !works(changed.tool),
                Origin::Bought { .. } => true,
            }
    }
}
